"""Yields against published records: spinners' own weighings, stage by stage."""

import pytest

from yarnsheets.formulas import fibre_needed, noil_share, overall_yield, share_left
from yarnsheets.published import yields

POUND = 453.59237  # grams, NIST Handbook 44


def test_a_fleece_from_raw_to_top() -> None:
    # published: a spinner's own record, 3.0 lb raw, 1.7 lb washed, 673 g of top, 109 g of waste
    combed = share_left(109 / (673 + 109))
    assert combed == pytest.approx(0.860613810741688, abs=5e-16)
    # the record closes to 1.4126 %: top and waste weigh more than the washed wool, damp or scale
    stages = (0.566666666666667, 1.0141264060504369, combed)
    overall = overall_yield(stages)
    assert overall == pytest.approx(0.494570341501409, abs=2e-15)
    assert fibre_needed(673 / POUND, 1, stages) == pytest.approx(3.0, rel=1e-14)
    # adding the losses up is wrong by far more than the record's own gap
    added = share_left((1 - 1.7 / 3.0) + 109 / (673 + 109))
    assert overall - added > 0.06


def test_a_fleece_of_fine_alpaca() -> None:
    # published: a spinner's own record, 135 g of fibre, 110 g spun and 25 g of waste, 95 g washed
    stages = (110 / 135, 95 / 110)
    assert stages[0] == pytest.approx(0.814814814814815, abs=5e-16)
    assert stages[1] == pytest.approx(0.863636363636364, abs=5e-16)
    assert overall_yield(stages) == pytest.approx(0.703703703703704, abs=5e-16)


def test_batts_from_a_fleece() -> None:
    # published: a spinner's own record, 3 lb of fleece made 1 lb 12 oz of batts, 0.583333333333333
    assert fibre_needed(1.75, 1, (0.583333333333333,)) == pytest.approx(3.0, rel=1e-14)
    low, high = yields.ANY_WOOL.shares
    assert low < 1.75 / 3 < high


@pytest.mark.parametrize(("tear", "noil"), [(9.4, 0.0962), (13.5, 0.0690)])
def test_noil_from_the_tear_of_a_comb(tear: float, noil: float) -> None:
    # published: Journal of the Textile Institute, Effect of Staple Strength on Worsted Processing,
    # Part II: tears of 9.4 to 13.5 to 1
    assert noil_share(tear) == pytest.approx(noil, abs=5e-5)


# What the sources print, in per cent, written down a second time.
PRINTED = [
    # published: Wollner and Tanner, 1941, page 883
    (yields.ANY_WOOL, 20, 80),
    # published: American Sheep Industry Association, Michigan State Fair, breed associations
    (yields.AWASSI, 60, 70),
    (yields.CORRIEDALE, 50, 60),
    (yields.DORSET, 50, 70),
    (yields.RAMBOUILLET, 35, 55),
    (yields.SOUTHDOWN, 55, 65),
    (yields.TARGHEE, 50, 55),
    # published: an Australian wool seller
    (yields.MERINO_AUSTRALIA, 62, 70),
    (yields.CROSSBRED_AUSTRALIA, 70, 77),
    # published: an alpaca mill, losses of 3 to 7 and of 30 to 60
    (yields.ALPACA, 93, 97),
    (yields.ALPACA_MILL_TOTAL, 40, 70),
    # published: Journal of the Textile Institute, noil of 9.62 and 6.90
    (yields.MILL_COMBING, 90.38, 93.10),
    # from memory
    (yields.MERINO_UNITED_STATES, 45, 55),
    (yields.LONGWOOL, 60, 75),
    # common practice, no source: what the waste leaves of 100
    (yields.PRIMITIVE, 65, 80),
    (yields.HAND_CARDING, 85, 95),
    (yields.HAND_COMBING, 65, 90),
    (yields.SPINNING, 92, 98),
    (yields.SKEIN_LENGTH, 90, 98),
    (yields.CLOTH_LENGTH, 80, 95),
]


@pytest.mark.parametrize(("each", "low", "high"), PRINTED, ids=lambda it: getattr(it, "name", None))
def test_a_yield_is_what_its_source_prints(each: yields.Yield, low: float, high: float) -> None:
    assert (each.low, each.high) == pytest.approx((low, high), abs=5e-3)
    assert each.shares == pytest.approx((low / 100, high / 100), abs=5e-5)


def test_every_yield_is_held_against_its_source_and_says_it() -> None:
    assert {each.name for each, _, _ in PRINTED} == {each.name for each in yields.YIELDS}
    for each in yields.YIELDS:
        assert each.reading in str(each)
        assert str(each.source) in str(each)


def test_contradictory_merinos_stand_side_by_side() -> None:
    assert yields.MERINO_UNITED_STATES.high < yields.MERINO_AUSTRALIA.low
    assert {yields.MERINO_UNITED_STATES, yields.MERINO_AUSTRALIA} <= set(yields.FLEECES)

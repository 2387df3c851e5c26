"""Dyeing as it is printed, and a printed answer that is wrong.

A printed number is met within half its last digit.

Sources:

Dyer        published: dyers' own worked examples; four of them agree on the rule.
Moisture    hand-worked: exact, from regains of 9 % and 16 %.
exact       hand-worked: from the definitions, to 15 figures.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.published.test_tables import printed
from yarnsheets import formulas

fibres = st.floats(1, 20000)
depths = st.floats(0.0005, 0.1)
strengths = st.floats(0.001, 0.1)


@pytest.mark.parametrize(
    ("fibre", "depth", "stock", "volume"),
    [
        (454, 1, 1, "454"),
        (454, 2, 1, "908"),
        (454, 0.1, 0.1, "454"),
        (100, 0.5, 1, "50"),
        (100, 5, 1, "500"),
    ],
)
def test_stock_as_dyers_work_it_out(fibre: float, depth: float, stock: float, volume: str) -> None:
    """Dyer: depth and stock in per cent, weight in volume."""
    assert formulas.stock_volume(fibre, depth / 100, stock / 100) == printed(volume)


def test_1100_grams_at_2_per_cent_from_a_stock_of_one_and_a_half() -> None:
    """Exact: 22 / 0.015 mL. Dyer: 1466, cut off rather than rounded."""
    volume = formulas.stock_volume(1100, 0.02, 0.015)
    assert volume == printed("1466.66666666667")
    assert int(volume) == 1466


def test_the_printed_50_grams_divides_by_100_twice() -> None:
    """A published page has 100 g at 50 % from a stock of 10 % take "50 g". Exact: 500 mL."""
    volume = formulas.stock_volume(100, 0.50, 0.10)
    assert volume == printed("500")
    # 50 g is the dry dye in it, not the stock
    assert formulas.mass_on_fibre(100, 0.50) == printed("50")


def test_damp_moves_the_weight_of_fibre() -> None:
    """Moisture: 1.16 / 1.09 - 1 is 0.0642 to four places."""
    moved = formulas.mass_at_regain(1.0, 0.09, 0.16) - 1
    assert moved == printed("0.0642")


def test_weight_in_weight_differs_by_a_hundredth_at_1_per_cent() -> None:
    """Exact: 1 g with 99 g of water fills at least the water's 99 mL, so 449.46 mL for 454."""
    assert formulas.stock_volume(454, 0.01, 1 / 99) == printed("449.46")


@given(fibre=fibres, depth=depths, strength=strengths)
def test_the_dye_in_the_stock_is_the_dye_on_the_fibre(
    fibre: float, depth: float, strength: float
) -> None:
    in_stock = formulas.stock_volume(fibre, depth, strength) * strength
    assert in_stock == pytest.approx(depth * fibre, rel=1e-12)
    assert formulas.mass_on_fibre(fibre, depth) == pytest.approx(in_stock, rel=1e-12)


@given(goods=fibres, spare=st.floats(0, 1), lots=st.integers(1, 12))
def test_the_lots_add_up(goods: float, spare: float, lots: int) -> None:
    together = sum(formulas.lot_weight(goods, spare, lots) for _ in range(lots))
    assert together == pytest.approx(goods + goods * spare, rel=1e-12)

"""Weaving as it is printed, and two printed answers that are wrong.

A printed decimal is met within half its last digit.

Sources:

Article     published: an article of a regional handweavers' conference, on planning for shrinkage.
Weaver      published: weavers' own worked examples.
GATE        published: Graduate Aptitude Test in Engineering, Textile Engineering, by question.
exact       hand-worked: from the exact yard, inch and pound, to 15 figures.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.published.test_tables import printed
from yarnsheets import formulas
from yarnsheets.units import convert

losses = st.floats(0, 0.5)
lengths = st.floats(0.5, 2000)


def tex(number: float) -> float:
    """Return a grist in metres to the gram, as the formulas want length over mass."""
    return 1000 / number


def metric(cotton_count: float) -> float:
    return float(convert(cotton_count, "cotton_count", "m/g"))


# --- shares divide ---


def test_ten_inches_that_shrink_by_a_fifth_are_woven_twelve_and_a_half() -> None:
    """Article: weave 12.5 in."""
    assert formulas.length_before_loss(10, 0.20) == printed("12.5")


def test_a_fifth_added_to_ten_inches_does_not_come_out() -> None:
    """Article: 10 in plus 20 % is 12 in, which ends at 9.6 in."""
    added = 10 * (1 + 0.20)
    assert formulas.length_before_loss(9.6, 0.20) == pytest.approx(added, rel=1e-15)


@given(length=lengths, first=losses, second=losses)
def test_two_losses_take_their_shares_one_after_the_other(
    length: float, first: float, second: float
) -> None:
    before = formulas.length_before_loss(formulas.length_before_loss(length, first), second)
    # taken away again by hand, the last put on first
    assert before - before * second - (before - before * second) * first == pytest.approx(length)


@given(length=lengths, loss=losses)
def test_take_up_counts_on_the_yarn_and_crimp_on_the_cloth(length: float, loss: float) -> None:
    """Exact: of a yarn of 1 a take-up of t leaves 1 - t, so the crimp is t / (1 - t)."""
    yarn = formulas.length_before_loss(length, loss)
    assert formulas.crimp(yarn, length) == pytest.approx(loss / (1 - loss), abs=1e-12)


# --- ends, yards and pounds ---


def test_a_warp_of_528_ends() -> None:
    """Weaver: 22 in at 24 to the inch, 528 ends of 4 yd; exact: pounds at 3360 yd/lb."""
    ends = formulas.thread_count(24, 22)
    assert ends == printed("528")
    yards = formulas.yarn_in_threads(ends, 4)
    assert yards == printed("2112")
    assert formulas.mass(yards, 3360) == printed("0.628571428571429")


def test_a_warp_of_2304_ends_and_as_much_weft() -> None:
    """Weaver: 48 in at 48 to the inch, 7.5 yd, 8400 yd/lb; exact: pounds, and twice as many."""
    ends = formulas.thread_count(48, 48)
    assert ends == printed("2304")
    yards = formulas.yarn_in_threads(ends, 7.5)
    assert yards == printed("17280")
    assert formulas.mass(yards, 8400) == printed("2.05714285714286")
    assert formulas.mass(2 * yards, 8400) == printed("4.11428571428571")


# --- the weight of cloth ---


def test_cloth_of_30_and_20_tex() -> None:
    """GATE 2009, question 37: 40 and 30 to the cm, both crimped by 10 %: 132 + 66 = 198 g/m2."""
    cloth = (4000, tex(30), 0.10, 3000, tex(20), 0.10)
    assert formulas.cloth_mass_per_area(*cloth) == printed("198")
    assert formulas.cloth_mass_per_area(*cloth[:3], 0, tex(20), 0.10) == printed("132")
    assert formulas.cloth_mass_per_area(0, tex(30), 0.10, *cloth[3:]) == printed("66")


def test_the_printed_112_grams_counts_a_thousand_picks_too_few() -> None:
    """GATE 2003, question 74: 30s and 35s cotton, 35 and 30 to the cm, crimps of 6.5 and 13 %.

    A published working has 2000 picks to the metre, where 30 to the cm is 3000, and prints 112.
    Exact, from hanks of 840 yd to the pound: 130.572887962572.
    """
    warp, weft = (3500, metric(30), 0.065), (metric(35), 0.13)
    assert formulas.cloth_mass_per_area(*warp, 3000, *weft) == printed("130.572887962572")
    assert formulas.cloth_mass_per_area(*warp, 2000, *weft) == pytest.approx(
        112, abs=0.5
    )  # as printed, to the gram

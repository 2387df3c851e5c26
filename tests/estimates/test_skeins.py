"""Weighed skeins: their error budget, the build-up on the reel, and several skeins together.

Values to 15 figures are hand-worked from 100 turns of 54 in that weigh 56.7 g.
"""

import math
import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from yarnsheets import formulas
from yarnsheets.estimates import grist_from_skeins, skein_budget, wound_circumference
from yarnsheets.units import convert

FIGURES = 5e-15
"""Half of the fifteenth figure of a hand-worked value."""

skeins = st.lists(
    st.tuples(st.floats(50, 500), st.floats(300, 3000)), min_size=2, max_size=12
)  # yards, and yards per pound


def test_scale_of_one_gram_read_once() -> None:
    budget = skein_budget(100, 54, 56.7, resolution_of_scale=1)
    assert budget.relative == pytest.approx(0.00509127221507607, rel=FIGURES)
    grist = formulas.grist(convert(5400, "in", "yd"), convert(56.7, "g", "lb"))
    assert grist == pytest.approx(1199.97981481481, rel=FIGURES)


def test_scale_of_a_tenth_read_gross_and_tare() -> None:
    budget = skein_budget(100, 54, 56.7, resolution_of_scale=0.1, tare=True)
    assert budget.relative == pytest.approx(0.000720014621629388, rel=FIGURES)


def test_one_turn_in_a_hundred_and_an_eighth_in_54_inches() -> None:
    budget = skein_budget(
        100, 54, 56.7, resolution_of_scale=0, miscount=1, error_of_circumference=1 / 8
    )
    turns, reel = 0.01 / math.sqrt(3), 0.00231481481481481 / math.sqrt(3)
    assert budget.relative == pytest.approx(math.hypot(turns, reel), rel=FIGURES)
    assert budget.shares["count of turns"] == pytest.approx(turns**2 / (turns**2 + reel**2))


def test_build_up_of_a_sixteenth() -> None:
    # the last turn is 2 pi / 16 in longer than the first, 0.727220521664304 %; the mean half of it
    outermost = 54 * 1.00727220521664304
    assert wound_circumference(54, 1 / 16) == pytest.approx((54 + outermost) / 2, rel=FIGURES)
    assert wound_circumference(54, 0) == 54
    budget = skein_budget(100, 54, 56.7, resolution_of_scale=0, build_up=1 / 16)
    # the mean turn is between the first and the last: bounds 0.36 % to either side
    assert budget.relative == pytest.approx(0.0036361026 / 1.0036361026 / math.sqrt(3), rel=1e-8)


def test_budget_agrees_with_the_uncertainties_package() -> None:
    turns, around, mass = ufloat(100, 0.5 / 3**0.5), ufloat(54, 0.1 / 3**0.5), ufloat(50, 12**-0.5)
    grist = turns * around / mass
    budget = skein_budget(
        100, 54, 50, resolution_of_scale=1, miscount=0.5, error_of_circumference=0.1
    )
    assert budget.relative == pytest.approx(grist.s / grist.n)


def test_several_skeins_of_one_length_are_averaged_by_mass() -> None:
    masses = [0.120, 0.125, 0.131, 0.124]
    found = grist_from_skeins([150] * 4, masses)
    mean_mass = statistics.mean(masses)
    assert found.value == pytest.approx(150 / mean_mass)
    assert found.relative == pytest.approx(statistics.stdev(masses) / 2 / mean_mass)
    assert found.dof == pytest.approx(3)


@given(skeins)
def test_together_they_are_one_long_skein(parts: list[tuple[float, float]]) -> None:
    lengths = [length for length, _ in parts]
    masses = [length / grist for length, grist in parts]
    found = grist_from_skeins(lengths, masses)
    assert found.value == pytest.approx(sum(lengths) / sum(masses))
    low, high = found.interval()
    assert low <= found.value <= high
    in_grams = grist_from_skeins(lengths, [convert(mass, "lb", "g") for mass in masses])
    assert in_grams.relative == pytest.approx(found.relative, abs=1e-12)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="2 readings of one kind"):
        grist_from_skeins([100, 200], [0.1, 0.2, 0.3])
    with pytest.raises(ValueError, match="Give at least 2"):
        grist_from_skeins([100], [0.1])
    with pytest.raises(ValueError, match="mass in place 2 is 0"):
        grist_from_skeins([100, 100], [0.1, 0])
    with pytest.raises(ValueError, match="build-up is -1"):
        wound_circumference(54, -1)
    with pytest.raises(ValueError, match="circumference is 0"):
        wound_circumference(0, 0)
    for turns, mass, words in [(0, 56.7, "number of turns is 0"), (100, 0, "mass is 0")]:
        with pytest.raises(ValueError, match=words):
            skein_budget(turns, 54, mass, resolution_of_scale=1)

"""The chance that yarn is enough: against a simulation, and which way it moves."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import (
    PositiveEstimate,
    chance_enough,
    doubt_for_chance,
    length_for_chance,
)

DRAWS = 1_000_000

length = st.floats(10, 10_000)
relative = st.floats(0.005, 0.3)
dof = st.sampled_from([2.0, 4.0, 19.0, math.inf])


def estimate(value: float, relative: float, dof: float = math.inf) -> PositiveEstimate:
    return PositiveEstimate(value, value * relative, dof)


@pytest.mark.parametrize(
    ("have", "need"),
    [
        (estimate(600, 0.05), estimate(570, 0.07)),
        (estimate(600, 0.02), estimate(640, 0.10)),
        (estimate(1200, 0.15), estimate(900, 0.20)),
    ],
)
def test_chance_is_that_of_a_million_draws(have: PositiveEstimate, need: PositiveEstimate) -> None:
    # numpy's normal draws of both logarithms, counted; half a per cent is ten of its own errors
    draw = np.random.default_rng(20261125)
    there = have.value * np.exp(draw.normal(0, have.relative, DRAWS))
    takes = need.value * np.exp(draw.normal(0, need.relative, DRAWS))
    assert chance_enough(have, need) == pytest.approx(np.mean(there >= takes), abs=0.005)


def test_chance_from_five_cuts_is_that_of_a_million_draws() -> None:
    # numpy's Student t with four degrees of freedom, beside a need that is known exactly
    have = estimate(600, 0.05, 4)
    draw = np.random.default_rng(20261125).standard_t(4, DRAWS)
    counted = np.mean(600 * np.exp(0.05 * draw) >= 560)
    assert chance_enough(have, estimate(560, 0)) == pytest.approx(counted, abs=0.005)


def test_as_much_as_is_needed_is_enough_every_second_time() -> None:
    assert chance_enough(estimate(500, 0.1, 4), estimate(500, 0.05)) == pytest.approx(0.5)


@pytest.mark.parametrize(("yards", "chance"), [(499.0, 0.0), (500.0, 1.0), (501.0, 1.0)])
def test_without_doubt_it_is_enough_or_not(yards: float, chance: float) -> None:
    assert chance_enough(estimate(yards, 0), estimate(500, 0)) == chance


@given(length, length, length, relative, relative, dof)
def test_more_yarn_never_lowers_the_chance_and_more_need_never_raises_it(
    a: float, b: float, other: float, u: float, w: float, nu: float
) -> None:
    less, more = sorted([a, b])
    fixed = estimate(other, w)
    assert chance_enough(estimate(less, u, nu), fixed) <= chance_enough(
        estimate(more, u, nu), fixed
    )
    assert chance_enough(fixed, estimate(less, u, nu)) >= chance_enough(
        fixed, estimate(more, u, nu)
    )


@given(st.floats(0.05, 0.99), length, length, relative, relative, dof)
def test_a_length_for_a_chance_has_that_chance(
    chance: float, have: float, need: float, u: float, w: float, nu: float
) -> None:
    at_hand, needed = estimate(have, u, nu), estimate(need, w)
    enough = length_for_chance(chance, at_hand, needed)
    assert chance_enough(estimate(enough, u, nu), needed) == pytest.approx(chance, abs=1e-9)


def test_a_length_without_doubt_is_the_need() -> None:
    assert length_for_chance(0.95, estimate(600, 0), estimate(500, 0)) == 500


@pytest.mark.parametrize("chance", [0, 1, 1.5, -0.1, math.nan])
def test_a_chance_that_is_none_is_refused(chance: float) -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        length_for_chance(chance, estimate(600, 0.1), estimate(500, 0.1))


@pytest.mark.parametrize("chance", [0.6, 0.8, 0.95, 0.99])
@pytest.mark.parametrize("at_hand", [610.0, 700.0, 900.0])
def test_the_doubt_for_a_chance_leaves_that_chance(chance: float, at_hand: float) -> None:
    needed = PositiveEstimate(600.0, 600 * 0.004)
    doubt = doubt_for_chance(chance, at_hand, needed)
    z = math.log(at_hand / 600) / math.hypot(doubt, 0.004)
    assert stats.norm.cdf(z) == pytest.approx(chance, abs=1e-9)


def test_no_doubt_is_little_enough_for_too_little_yarn() -> None:
    needed = PositiveEstimate(600.0, 30.0)
    assert doubt_for_chance(0.95, 600.0, needed) < 0
    assert doubt_for_chance(0.95, 630.0, needed) < 0  # the need's own doubt is too much
    assert doubt_for_chance(0.5, 600.0, needed) == math.inf
    assert doubt_for_chance(0.5, 599.0, needed) < 0
    with pytest.raises(ValueError, match="between 0 and 1"):
        doubt_for_chance(1.0, 600.0, needed)

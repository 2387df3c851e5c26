"""Error budgets.

GUM          published: JCGM 100:2008, worked example G.4.1 (from memory).
hand-worked  from the root of the sum of squares, by hand calculator to 15 figures.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from yarnsheets.estimates import (
    Budget,
    Component,
    balance_budget,
    rectangular,
    resolution,
    t_factor,
    unevenness,
)

FIGURES = 5e-15
"""Half of the fifteenth figure of a hand-worked value."""

components = st.lists(
    st.builds(
        Component,
        st.sampled_from(["scale", "reel", "cuts", "air"]),
        st.floats(0, 0.2),
        st.integers(1, 100),
    ),
    min_size=1,
    max_size=6,
)


def test_gum_g_4_1() -> None:
    """Three factors, relative uncertainties 0.25, 0.57 and 0.82 % from 10, 5 and 15 readings."""
    budget = Budget(
        (
            Component("b", 0.0025, 9),
            Component("x1", 0.0057, 4),
            Component("x2", 0.0082, 14),
        )
    )
    assert 100 * budget.relative == pytest.approx(1.03, abs=0.005)
    assert budget.dof == pytest.approx(19.0, abs=0.05)
    assert t_factor(budget.dof) == pytest.approx(2.09, abs=0.005)
    assert 100 * budget.expanded() == pytest.approx(2.2, abs=0.05)
    # the same, hand-worked to 15 figures
    assert 100 * budget.relative == pytest.approx(1.02946588093049, rel=FIGURES)
    assert budget.dof == pytest.approx(18.998742314268, rel=FIGURES)


def test_five_cuts_on_a_balance() -> None:
    """10 in, trimmed to 1/16 in, weight to 1 mg, stretch to 0.5 %, spread 8 %; hand-worked."""
    factor_of_100 = 1000 * 453.59237 / 3600  # the counterweight in mg
    budget = balance_budget(10, 0.08, 5, counterweight=1 / factor_of_100)
    assert budget.relative == pytest.approx(0.036364143407693, rel=FIGURES)
    sampling = math.sqrt(budget.shares["unevenness of the yarn"]) * budget.relative
    assert sampling == pytest.approx(0.0357770876399966, rel=FIGURES)
    assert budget.dof == pytest.approx(4 / budget.shares["unevenness of the yarn"] ** 2)


def test_trimming_alone_is_the_same_in_yards_per_pound_for_any_grist() -> None:
    # a sixteenth of an inch at 100 to the inch: 6.25 yd/lb at most, 6.25 / 3**0.5 of it standard
    for cut in (5, 10, 20):
        budget = balance_budget(cut, 0, 2, stretch=0, counterweight=0)
        assert budget.of(100 * cut).uncertainty == pytest.approx(3.60843918243516, rel=FIGURES)
        assert budget.shares["trimming"] == pytest.approx(1)


def test_skein_length_and_mass() -> None:
    # 150 yd to 0.5 %, 56.7 g to 0.51 %, standard; hand-worked
    budget = Budget((Component("length", 0.005), Component("mass", 0.0051)))
    assert budget.relative == pytest.approx(0.00714212853426764, rel=FIGURES)


def test_scale_read_once_and_twice() -> None:
    # 56.7 g on a scale of 1 g, and gross and tare on one of 0.1 g; hand-worked
    assert resolution("skein", 1 / 56.7).relative == pytest.approx(0.00509127221507607, rel=FIGURES)
    twice = resolution("skein", 0.1 / 56.7, tare=True)
    assert twice.relative == pytest.approx(0.000720014621629388, rel=FIGURES)


def test_a_product_agrees_with_the_uncertainties_package() -> None:
    length, mass = ufloat(150, 0.75), ufloat(0.125, 0.0006)
    grist = length / mass
    budget = Budget((Component("length", 0.75 / 150), Component("mass", 0.0006 / 0.125)))
    assert budget.of(grist.n).uncertainty == pytest.approx(grist.s)


@given(components)
def test_shares_are_those_of_the_squares_and_sum_to_one(found: list[Component]) -> None:
    budget = Budget(tuple(found))
    assert sum(budget.shares.values()) == pytest.approx(1)
    for name, share in budget.shares.items():
        squares = sum(each.relative**2 for each in found if each.name == name)
        if budget.relative > 1e-100:  # below that a square is lost
            assert share == pytest.approx(squares / budget.relative**2, abs=1e-9)


@given(components)
def test_degrees_of_freedom_lie_between_the_fewest_and_all(found: list[Component]) -> None:
    budget = Budget(tuple(found))
    assert budget.dof >= min(each.dof for each in found) * (1 - 1e-12)
    assert budget.dof <= sum(each.dof for each in found) * (1 + 1e-12)


@given(components, st.floats(0, 0.2))
def test_one_more_source_never_makes_a_result_surer(found: list[Component], more: float) -> None:
    before = Budget(tuple(found))
    after = Budget((*found, Component("more", more)))
    assert after.relative >= before.relative
    assert after.relative >= more


def test_without_any_error_there_is_no_range() -> None:
    budget = Budget((Component("scale", 0.0), Component("reel", 0.0)))
    assert budget.relative == 0
    assert budget.dof == math.inf
    assert budget.shares == {"scale": 0.5, "reel": 0.5}
    assert budget.of(1000).interval() == (1000, 1000)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match=r"error of stretch is -0\.01"):
        rectangular("stretch", -0.01)
    with pytest.raises(ValueError, match="error of skein is nan"):
        resolution("skein", math.nan)
    with pytest.raises(ValueError, match=r"spread is -0\.1"):
        unevenness(-0.1, 5)
    with pytest.raises(ValueError, match="at least two"):
        unevenness(0.1, 1)
    with pytest.raises(ValueError, match="cut is 0"):
        balance_budget(0, 0.1, 5)

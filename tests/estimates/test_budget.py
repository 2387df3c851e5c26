"""Error budgets.

GUM          published: JCGM 100:2008, worked example G.4.1, and G.6.5 on one rectangular source,
             whose range is 0.95 of its half width (both from memory).
scipy        the quantiles of the normal curve and of Student's t.
hand-worked  from the root of the sum of squares, by hand calculator to 15 figures.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from uncertainties import ufloat

from yarnsheets.estimates import (
    Budget,
    Component,
    balance_budget,
    rectangular,
    resolution,
    stated,
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
        st.one_of(st.integers(1, 100), st.just(math.inf)),
    )
    | st.builds(rectangular, st.sampled_from(["trimming", "damp"]), st.floats(0, 0.2)),
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
    assert 100 * t_factor(budget.dof) * budget.relative == pytest.approx(2.2, abs=0.05)
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
        assert 100 * cut * budget.relative == pytest.approx(3.60843918243516, rel=FIGURES)
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
    assert grist.n * budget.relative == pytest.approx(grist.s)


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
    if budget.relative:
        assert budget.dof <= sum(each.dof for each in found) * (1 + 1e-12)


@given(components, st.floats(0, 0.2))
def test_one_more_source_never_makes_a_result_surer(found: list[Component], more: float) -> None:
    before = Budget(tuple(found))
    after = Budget((*found, Component("more", more)))
    assert after.relative >= before.relative
    assert after.relative >= more


# ---- ranges ------------------------------------------------------------------------------------


def test_few_readings_and_the_rest_are_combined_by_squares() -> None:
    budget = Budget((Component("cuts", 0.03, 2), Component("air", 0.02), Component("reel", 0.01)))
    for confidence in (0.5, 0.9, 0.95, 0.99):
        share = (1 + confidence) / 2
        few = stats.t.ppf(share, 2) * 0.03
        rest = stats.norm.ppf(share) * math.hypot(0.02, 0.01)
        wanted = math.hypot(few, rest)
        assert budget.expanded(confidence) == pytest.approx(wanted, rel=1e-9)
        low, high = budget.range_of(800, confidence)
        assert (low, high) == pytest.approx((800 / math.exp(wanted), 800 * math.exp(wanted)))
        assert budget.either_way(confidence) == pytest.approx(math.expm1(wanted), rel=1e-9)


def test_sources_of_few_readings_keep_their_own_degrees_of_freedom() -> None:
    budget = Budget((Component("cuts", 0.03, 2), Component("weighings", 0.02, 4)))
    wanted = math.hypot(stats.t.ppf(0.975, 2) * 0.03, stats.t.ppf(0.975, 4) * 0.02)
    assert budget.expanded() == pytest.approx(wanted, rel=1e-9)


@given(st.floats(0, 0.5), st.floats(0.5, 0.999))
def test_one_error_within_bounds_is_its_share_of_them(half_width: float, confidence: float) -> None:
    # JCGM 100:2008, G.6.5: of a rectangle, the middle 95 % are as wide as 95 % of it
    found = Budget((rectangular("stretch", half_width),)).expanded(confidence)
    normal = stats.norm.ppf((1 + confidence) / 2) / math.sqrt(3) * half_width
    assert found == pytest.approx(min(confidence * half_width, normal), rel=1e-9)
    assert found <= half_width


def test_the_steps_of_a_scale_are_off_by_half_a_step_or_a_whole_one() -> None:
    # by hand: once, a rectangle of half a step; gross less tare, two of them
    assert Budget((resolution("skein", 0.02),)).expanded() == pytest.approx(0.95 * 0.01)
    twice = Budget((resolution("skein", 0.02, tare=True),)).expanded()
    assert twice == pytest.approx(stats.norm.ppf(0.975) * 0.02 / math.sqrt(6), rel=1e-9)
    assert twice < 0.02


@given(components, st.data())
def test_a_range_never_narrows_when_any_doubt_grows(
    found: list[Component], data: st.DataObject
) -> None:
    at = data.draw(st.integers(0, len(found) - 1))
    times = data.draw(st.floats(1, 100))
    old = found[at]
    more = Component(old.name, old.relative * times, old.dof, old.bound * times)
    grown = [*found[:at], more, *found[at + 1 :]]
    for confidence in (0.5, 0.95, 0.99):
        before = Budget(tuple(found)).expanded(confidence)
        assert Budget(tuple(grown)).expanded(confidence) >= before * (1 - 1e-12)


@given(components, components)
def test_a_range_never_narrows_when_a_source_is_added(
    found: list[Component], others: list[Component]
) -> None:
    before = Budget(tuple(found)).expanded()
    assert Budget((*found, *others)).expanded() >= before * (1 - 1e-12)


@given(st.lists(st.builds(rectangular, st.just("air"), st.floats(0, 0.2)), min_size=1, max_size=6))
def test_no_range_is_wider_than_the_errors_can_be(found: list[Component]) -> None:
    assert Budget(tuple(found)).expanded(0.999) <= sum(each.bound for each in found) * (1 + 1e-12)


def test_a_spread_known_beforehand_serves_one_cut() -> None:
    budget = balance_budget(10, 0.1, 1, spread_known=True, trimming=0, stretch=0, counterweight=0)
    assert budget.expanded() == pytest.approx(stats.norm.ppf(0.975) * 0.1, rel=1e-9)


def test_without_any_error_there_is_no_range() -> None:
    budget = Budget((Component("scale", 0.0), Component("reel", 0.0)))
    assert budget.relative == 0
    assert budget.dof == math.inf
    assert budget.shares == {"scale": 0.5, "reel": 0.5}
    assert budget.range_of(1000) == (1000, 1000)


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


def test_a_stated_range_is_the_normal_curves() -> None:
    # scipy: 95 of 100 lie within 1.96 standard uncertainties; and its own range is as stated
    one = stated("length on the label", 0.05)
    assert one.relative == pytest.approx(0.05 / stats.norm.ppf(0.975), rel=1e-12)
    assert Budget((one,)).expanded() == pytest.approx(0.05, rel=1e-12)


def test_a_source_grows_with_its_half_width() -> None:
    # GUM 4.3.7 and F.2.2.1: both uncertainties go with the half width, as the bounds do
    for unit, scaled in (
        (rectangular("trimming", 1.0), rectangular("trimming", 0.03)),
        (resolution("scale", 1.0), resolution("scale", 0.03)),
    ):
        grown = unit.scaled(0.03)
        assert (grown.relative, grown.bound) == pytest.approx((scaled.relative, scaled.bound))

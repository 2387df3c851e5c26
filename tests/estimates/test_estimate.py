"""Student's t and the ranges made with it.

GUM      JCGM 100:2008, table G.2, the 95 % column (from memory, as the table is in every textbook).
scipy    outside check: scipy.stats, which works its t out apart from what the package calls.
"""

import math

import mpmath
import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import Estimate, PositiveEstimate, t_factor, t_probability
from yarnsheets.units import scale

# degrees of freedom and t at 95 %, GUM table G.2
TABLE = """
1 12.71    2 4.30    3 3.18    4 2.78    5 2.57    6 2.45    7 2.36    8 2.31    9 2.26    10 2.23
11 2.20   12 2.18   13 2.16   14 2.14   15 2.13   16 2.12   17 2.11   18 2.10   19 2.09   20 2.09
25 2.06   30 2.04   35 2.03   40 2.02   45 2.01   50 2.01   100 1.984   inf 1.960
"""

positive = st.floats(1e-6, 1e6)
relative = st.floats(0, 0.5)
freedom = st.integers(1, 200)
share = st.floats(0.5, 0.999)


@pytest.mark.parametrize(
    ("dof", "printed"), list(zip(TABLE.split()[::2], TABLE.split()[1::2], strict=True))
)
def test_t_of_the_printed_table(dof: str, printed: str) -> None:
    half_digit = 0.5 * 10 ** -len(printed.partition(".")[2])
    assert t_factor(float(dof)) == pytest.approx(float(printed), rel=0, abs=half_digit)


@pytest.mark.parametrize("dof", [1, 2, 3.7, 18.998742314268, 30, 1e4])
@pytest.mark.parametrize("confidence", [0.5, 0.9, 0.95, 0.99, 0.9973])
def test_t_agrees_with_scipy_stats(dof: float, confidence: float) -> None:
    assert t_factor(dof, confidence) == pytest.approx(stats.t.ppf((1 + confidence) / 2, dof))


def test_coverage_of_two_and_three_deviations() -> None:
    # JCGM 100:2008, table G.1: 95.45 % and 99.73 %
    assert t_factor(math.inf, 0.9545) == pytest.approx(2, abs=5e-4)
    assert t_factor(math.inf, 0.9973) == pytest.approx(3, abs=5e-3)


@given(t=st.floats(-50, 50), dof=freedom)
@example(t=1.7118106037344722e-08, dof=1)  # scipy's own answer is off by 2e-9 here
def test_probability_agrees_with_mpmath(t: float, dof: int) -> None:
    # by the incomplete beta function, Abramowitz and Stegun 26.7.1 and 26.5.27
    with mpmath.workdps(30):
        square = mpmath.mpf(t) ** 2
        tails = mpmath.betainc(mpmath.mpf(dof) / 2, 0.5, 0, dof / (dof + square), regularized=True)
    assert t_probability(t, dof) == pytest.approx(float(tails), rel=1e-9)


@given(dof=freedom, confidence=share)
def test_probability_undoes_the_factor(dof: int, confidence: float) -> None:
    t = t_factor(dof, confidence)
    assert t_probability(t, dof) == pytest.approx(1 - confidence, rel=1e-8)


@given(positive, relative, freedom, share)
def test_a_range_holds_its_value(
    value: float, uncertainty: float, dof: int, confidence: float
) -> None:
    for kind in (Estimate, PositiveEstimate):
        low, high = kind(value, value * uncertainty, dof).interval(confidence)
        assert low <= value <= high


@given(positive, relative, freedom, share)
def test_a_positive_range_never_reaches_nought(
    value: float, uncertainty: float, dof: int, confidence: float
) -> None:
    low, high = PositiveEstimate(value, value * uncertainty, dof).interval(confidence)
    assume(math.isfinite(high))
    assert low > 0
    assert low * high == pytest.approx(value * value)


@given(positive, relative, freedom)
def test_the_range_is_the_same_in_any_unit(value: float, uncertainty: float, dof: int) -> None:
    in_yards = PositiveEstimate(value, value * uncertainty, dof)
    in_tex = in_yards.converted(scale("yd/lb", "tex"))
    low, high = in_yards.interval()
    assume(math.isfinite(high))
    to_tex = scale("yd/lb", "tex").apply
    assert in_tex.interval() == pytest.approx((to_tex(high), to_tex(low)))
    assert in_tex.relative == pytest.approx(in_yards.relative)


@given(positive, relative, freedom)
def test_fewer_degrees_of_freedom_and_more_confidence_widen(
    value: float, uncertainty: float, dof: int
) -> None:
    few, many = (Estimate(value, value * uncertainty, each) for each in (dof, dof + 1))
    assert few.expanded() >= many.expanded()
    assert few.expanded(0.99) >= few.expanded(0.95)


def test_a_tiny_range_is_nearly_plus_or_minus() -> None:
    plain, factor = (kind(1000.0, 1.0, 10).interval() for kind in (Estimate, PositiveEstimate))
    assert factor == pytest.approx(plain, abs=0.003)  # they part by half of the square, 2.5e-6


def test_two_readings_have_a_wide_range_with_two_ends() -> None:
    # t of 1 degree of freedom is 12.706205: e**1.2706205 = 3.56306, hand-worked
    low, high = PositiveEstimate(1000.0, 100.0, 1).interval()
    assert (low, high) == pytest.approx((1000 / 3.56306, 3563.06), rel=2e-6)
    wide = PositiveEstimate(1000.0, 5000.0, 1).interval()
    assert wide.high == pytest.approx(1000 * math.exp(63.531), rel=1e-3)


def test_a_range_too_wide_for_a_number_has_no_upper_end() -> None:
    assert PositiveEstimate(1000.0, 1e6, 1).interval() == (0.0, math.inf)


@pytest.mark.parametrize("dof", [0, -1, math.nan])
def test_no_degrees_of_freedom_are_refused(dof: float) -> None:
    with pytest.raises(ValueError, match="Take at least two"):
        t_factor(dof)
    with pytest.raises(ValueError, match="one more reading"):
        t_probability(1, dof)


@pytest.mark.parametrize("confidence", [0, 1, 95, -0.1, math.nan])
def test_a_confidence_that_is_no_share_is_refused(confidence: float) -> None:
    with pytest.raises(ValueError, match="between 0 and 1"):
        t_factor(4, confidence)


@pytest.mark.parametrize("value", [0, -5, math.inf, math.nan])
def test_a_positive_value_must_be_one(value: float) -> None:
    with pytest.raises(ValueError, match="more than 0"):
        PositiveEstimate(value, 1.0)

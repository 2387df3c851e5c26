"""Whether two results for one skein differ by more than their noise.

scipy  outside check: Welch's test of scipy.stats, asked of the logarithms.
"""

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats
from uncertainties import ufloat, umath

from yarnsheets.estimates import PositiveEstimate, Verdict, compare, compare_all

results = st.builds(
    lambda value, relative, dof: PositiveEstimate(value, value * relative, dof),
    st.floats(200, 5000),
    st.floats(0.001, 0.2),
    st.integers(1, 30),
)


@given(results, results)
def test_t_and_probability_are_those_of_welch(
    first: PositiveEstimate, second: PositiveEstimate
) -> None:
    found = compare(first, second)
    n, m = int(first.dof) + 1, int(second.dof) + 1
    welch = stats.ttest_ind_from_stats(
        math.log(first.value),
        first.relative * math.sqrt(n),
        n,
        math.log(second.value),
        second.relative * math.sqrt(m),
        m,
        equal_var=False,
    )
    assert found.t == pytest.approx(welch.statistic, rel=1e-12, abs=1e-12)
    assert found.probability == pytest.approx(welch.pvalue, rel=1e-7, abs=1e-14)


@given(results, results)
def test_the_verdict_the_probability_and_the_range_say_the_same(
    first: PositiveEstimate, second: PositiveEstimate
) -> None:
    found = compare(first, second)
    low, high = found.ratio.interval()
    assume(abs(found.probability - 0.05) > 1e-6)
    beyond = found.verdict is Verdict.BEYOND_NOISE
    assert beyond == (found.probability < 0.05)
    assert beyond == (not low <= 1 <= high)


@given(results, results)
def test_the_other_way_round_says_the_same(
    first: PositiveEstimate, second: PositiveEstimate
) -> None:
    one, other = compare(first, second), compare(second, first)
    assert one.verdict is other.verdict
    assert one.ratio.value * other.ratio.value == pytest.approx(1)
    assert one.t == pytest.approx(-other.t, rel=1e-12, abs=1e-12)


def test_ratio_by_the_uncertainties_package() -> None:
    first, second = ufloat(1050, 20), ufloat(1000, 8)
    found = compare(PositiveEstimate(1050, 20), PositiveEstimate(1000, 8))
    ratio = first / second
    assert found.ratio.value == pytest.approx(ratio.n)
    assert found.ratio.uncertainty == pytest.approx(ratio.s)
    difference = umath.log(first / second)
    assert found.t == pytest.approx(difference.n / difference.s)


def test_known_noise_is_judged_by_the_normal_curve() -> None:
    # ln 1.04 = 0.03922 is 1.961 uncertainties of 0.02 away: just beyond 1.960; 1.039 is within
    target = PositiveEstimate(1000, 0)
    assert compare(PositiveEstimate(1040, 20.8), target).verdict is Verdict.BEYOND_NOISE
    assert compare(PositiveEstimate(1039, 20.78), target).verdict is Verdict.WITHIN_NOISE


def test_the_words_of_a_verdict() -> None:
    assert Verdict.WITHIN_NOISE.value == "no more than their noise"
    assert Verdict.BEYOND_NOISE.value == "more than their noise"


def test_several_methods_are_judged_the_more_strictly() -> None:
    results = {
        "balance": PositiveEstimate(1000, 10),
        "skein": PositiveEstimate(1030, 10),
        "counter": PositiveEstimate(1000, 10),
    }
    # t = 0.02956 / 0.01394 = 2.12: beyond 1.960, but within 2.394, the normal curve's for 0.05 / 3
    alone = compare(results["balance"], results["skein"])
    among_three = compare_all(results)["balance", "skein"]
    assert alone.verdict is Verdict.BEYOND_NOISE
    assert among_three.verdict is Verdict.WITHIN_NOISE
    assert among_three.probability == alone.probability
    pair = {name: results[name] for name in ("balance", "skein")}
    assert compare_all(pair) == {("balance", "skein"): alone}


def test_nothing_to_compare_is_refused() -> None:
    with pytest.raises(ValueError, match="two methods or more"):
        compare_all({"balance": PositiveEstimate(1000, 10)})
    with pytest.raises(ValueError, match="no noise to judge by"):
        compare(PositiveEstimate(1000, 0), PositiveEstimate(1001, 0))

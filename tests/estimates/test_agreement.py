"""Agreement of two methods over several skeins.

Lancet  published: J. M. Bland and D. G. Altman, Statistical methods for assessing agreement between
        two methods of clinical measurement, Lancet 1986; 327: 307-310. The table of peak expiratory
        flow in l/min, and the results -2.1, 38.8, -79.7 and 75.5; the ranges of the limits are from
        memory. The paper works on from its rounded mean and deviation, and so does the second test.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import (
    absolute_agreement,
    limits_of_agreement,
    relative_agreement,
)

# first readings of the large Wright meter, then of the mini meter, on 17 people
LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]

skeins = st.lists(st.tuples(st.floats(300, 3000), st.floats(0.8, 1.25)), min_size=3, max_size=20)


def test_lancet_data() -> None:
    found = absolute_agreement(LARGE, MINI, multiple=2)
    assert found.difference.value == pytest.approx(-2.1, abs=0.05)
    assert found.deviation == pytest.approx(38.8, abs=0.05)
    assert found.difference.dof == 16


def test_lancet_limits() -> None:
    found = limits_of_agreement(-2.1, 38.8, 17, multiple=2)
    assert found.lower.value == pytest.approx(-79.7, abs=0.05)
    assert found.upper.value == pytest.approx(75.5, abs=0.05)
    # from memory: 9.4 and 16.3 uncertain, so -22.0 to 17.8, -114.3 to -45.1 and 40.9 to 110.1,
    # which the paper works out with 2.12 and the rounded 9.4 and 16.3
    assert found.difference.uncertainty == pytest.approx(9.4, abs=0.05)
    assert found.lower.uncertainty == pytest.approx(16.3, abs=0.05)
    rounding = 2.12 * 0.05 + 0.05
    assert found.difference.interval() == pytest.approx((-22.0, 17.8), abs=rounding)
    assert found.lower.interval() == pytest.approx((-114.3, -45.1), abs=rounding)
    assert found.upper.interval() == pytest.approx((40.9, 110.1), abs=rounding)


def test_mean_difference_is_that_of_the_paired_t_test() -> None:
    found = absolute_agreement(LARGE, MINI).difference
    paired = stats.ttest_rel(LARGE, MINI)
    assert found.value / found.uncertainty == pytest.approx(paired.statistic)
    assert found.interval() == pytest.approx(tuple(paired.confidence_interval(0.95)))


def test_limits_hold_about_95_per_cent_of_many_differences() -> None:
    chance = np.random.default_rng(1986)
    truth = chance.uniform(300, 3000, 20000)
    first, second = (truth * np.exp(chance.normal(0, 0.05, truth.size)) for _ in range(2))
    found = relative_agreement(first.tolist(), second.tolist())
    within = (found.lower.value < first / second) & (first / second < found.upper.value)
    # of 20000 the share is known to 0.15 % of them; 0.6 % is four times that
    assert within.mean() == pytest.approx(0.95, abs=0.006)


@given(skeins)
def test_ratios_are_the_logarithms_turned_back(parts: list[tuple[float, float]]) -> None:
    second = [grist for grist, _ in parts]
    first = [grist * ratio for grist, ratio in parts]
    ratios = relative_agreement(first, second)
    logs = absolute_agreement(
        [math.log(each) for each in first], [math.log(each) for each in second]
    )
    assert ratios.deviation == pytest.approx(logs.deviation, abs=1e-9)
    for ratio, log in [
        (ratios.difference, logs.difference),
        (ratios.lower, logs.lower),
        (ratios.upper, logs.upper),
    ]:
        assert ratio.value == pytest.approx(math.exp(log.value))
        expected = [math.exp(end) for end in log.interval()]
        assert ratio.interval() == pytest.approx(expected, rel=1e-8)


@given(skeins, st.floats(0.1, 10))
def test_a_change_of_unit_leaves_the_ratios(
    parts: list[tuple[float, float]], factor: float
) -> None:
    second = [grist for grist, _ in parts]
    first = [grist * ratio for grist, ratio in parts]
    before = relative_agreement(first, second)
    after = relative_agreement(
        [factor * each for each in first], [factor * each for each in second]
    )
    assert after.lower.value == pytest.approx(before.lower.value)
    assert after.upper.value == pytest.approx(before.upper.value)


def test_one_method_always_a_tenth_high() -> None:
    found = relative_agreement([550, 1100, 4400], [500, 1000, 4000])
    assert found.difference.value == pytest.approx(1.1)
    assert found.lower.value == pytest.approx(1.1)
    assert found.upper.value == pytest.approx(1.1)


def test_what_cannot_be_paired_is_refused() -> None:
    with pytest.raises(ValueError, match="Give one of each for every skein"):
        absolute_agreement([1, 2, 3], [1, 2])
    with pytest.raises(ValueError, match="Give at least 2"):
        relative_agreement([1], [1])
    with pytest.raises(ValueError, match="second method in place 1 is 0"):
        relative_agreement([1, 2], [0, 2])

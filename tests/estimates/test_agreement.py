"""Agreement of two methods over several skeins.

Lancet  published: J. M. Bland and D. G. Altman, Statistical methods for assessing agreement between
        two methods of clinical measurement, Lancet 1986; 327: 307-310. The table of peak expiratory
        flow in l/min, and the results -2.1 and 38.8; the mean's 9.4 and its range are from memory.
numpy   the range for one further skein, over many imagined sets of skeins.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import absolute_agreement, relative_agreement

# first readings of the large Wright meter, then of the mini meter, on 17 people
LARGE = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427]
MINI = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451]

skeins = st.lists(st.tuples(st.floats(300, 3000), st.floats(0.8, 1.25)), min_size=3, max_size=20)


def test_lancet_mean_and_deviation() -> None:
    found = absolute_agreement(LARGE, MINI)
    assert found.difference.value == pytest.approx(-2.1, abs=0.05)
    assert found.deviation == pytest.approx(38.8, abs=0.05)
    assert found.difference.dof == 16
    assert found.difference.uncertainty == pytest.approx(9.4, abs=0.05)
    # the paper's range of the mean is worked out with 2.12 and its rounded 9.4
    rounding = 2.12 * 0.05 + 0.05
    assert found.difference.interval() == pytest.approx((-22.0, 17.8), abs=rounding)


def test_mean_difference_is_that_of_the_paired_t_test() -> None:
    found = absolute_agreement(LARGE, MINI).difference
    paired = stats.ttest_rel(LARGE, MINI)
    assert found.value / found.uncertainty == pytest.approx(paired.statistic)
    assert found.interval() == pytest.approx(tuple(paired.confidence_interval(0.95)))


def ends_for_the_next(differences: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Give the range of one further difference, for each row of differences."""
    n = differences.shape[1]
    centre = differences.mean(axis=1)
    reach = stats.t.ppf(0.975, n - 1) * differences.std(axis=1, ddof=1) * np.sqrt(1 + 1 / n)
    return centre - reach, centre + reach


@pytest.mark.parametrize("skeins", [2, 5, 8, 20])
def test_the_range_for_the_next_skein_holds_it_95_times_of_100(skeins: int) -> None:
    chance = np.random.default_rng([1986, skeins])
    drawn = chance.normal(0.01, 0.05, (40_000, skeins + 1))
    seen, further = drawn[:, :-1], drawn[:, -1]
    low, high = ends_for_the_next(seen)
    for row, wanted in zip(seen[:50], zip(low, high, strict=False), strict=False):
        second = np.full(skeins, 1000.0)
        found = relative_agreement((second * np.exp(row)).tolist(), second.tolist())
        assert np.log(found.next_skein.interval()) == pytest.approx(wanted, abs=1e-9)
    # of 40000 the share is known to 0.11 % of them; 0.5 % is more than four times that
    assert np.mean((low < further) & (further < high)) == pytest.approx(0.95, abs=0.005)


def test_with_five_skeins_mean_and_1_96_deviations_hold_the_next_85_times_of_100() -> None:
    # as the module says; by hand: P(|t| < 1.96 / (1 + 1/5)**0.5) with 4 degrees of freedom (scipy)
    share = 1 - 2 * stats.t.sf(1.96 / math.sqrt(1 + 1 / 5), 4)
    assert share == pytest.approx(0.85, abs=0.005)


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
        (ratios.next_skein, logs.next_skein),
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
    assert after.difference.value == pytest.approx(before.difference.value)
    assert after.next_skein.interval() == pytest.approx(before.next_skein.interval(), rel=1e-6)


def test_one_method_always_a_tenth_high() -> None:
    found = relative_agreement([550, 1100, 4400], [500, 1000, 4000])
    assert found.difference.value == pytest.approx(1.1)
    assert found.next_skein.interval() == pytest.approx((1.1, 1.1))


def test_what_cannot_be_paired_is_refused() -> None:
    with pytest.raises(ValueError, match="Give one of each for every skein"):
        absolute_agreement([1, 2, 3], [1, 2])
    with pytest.raises(ValueError, match="Give at least 2"):
        relative_agreement([1], [1])
    with pytest.raises(ValueError, match="second method in place 1 is 0"):
        relative_agreement([1, 2], [0, 2])

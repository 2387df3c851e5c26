"""A counter's factor and the length behind a reading, hand-worked and against scipy.stats."""

import math
import statistics

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import corrected_length, counter_factor

runs = st.lists(st.tuples(st.floats(20, 800), st.floats(0.8, 1.25)), min_size=2, max_size=12)


def test_hand_worked() -> None:
    # ratios 1.05, 1.00, 1.10: mean 1.05, s 0.05, so u 0.05 / 3**0.5
    known, shown = [105, 200, 330], [100, 200, 300]
    factor = counter_factor(known, shown)
    assert factor.value == pytest.approx(1.05)
    assert factor.uncertainty == pytest.approx(0.05 / math.sqrt(3))
    assert factor.dof == 2
    length = corrected_length(400, known, shown)
    assert length.value == pytest.approx(420)
    # one more ratio errs by 0.05, the factor by 0.05 / 3**0.5: 0.05 * (4 / 3)**0.5 of 400
    assert length.uncertainty == pytest.approx(400 * 0.05 * math.sqrt(4 / 3))


@given(runs)
def test_by_scipy_stats(parts: list[tuple[float, float]]) -> None:
    shown = [length for length, _ in parts]
    known = [length * ratio for length, ratio in parts]
    ratios = np.divide(known, shown)
    factor = counter_factor(known, shown)
    assert factor.value == pytest.approx(statistics.fmean(ratios))
    assert factor.uncertainty == pytest.approx(stats.sem(ratios), abs=1e-12)


@given(runs, st.floats(1, 1000))
def test_a_length_is_less_sure_than_the_factor_and_scales_with_the_reading(
    parts: list[tuple[float, float]], reading: float
) -> None:
    shown = [length for length, _ in parts]
    known = [length * ratio for length, ratio in parts]
    factor, length = counter_factor(known, shown), corrected_length(reading, known, shown)
    assert length.value == pytest.approx(reading * factor.value)
    assert length.relative >= factor.relative
    low, high = length.interval()
    assert low <= length.value <= high


def test_ranges_hold_the_next_length_as_often_as_promised() -> None:
    chance = np.random.default_rng(16269)
    tries, n = 4000, 6
    ratios = 1.03 * (1 + 0.02 * chance.normal(size=(tries, n + 1)))
    held = 0
    for row in ratios:
        low, high = corrected_length(100, row[:n].tolist(), [1.0] * n).interval()
        held += low <= 100 * row[n] <= high
    # of 4000 the share is known to 0.35 %; 1.4 % is four times that
    assert held / tries == pytest.approx(0.95, abs=0.014)


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(ValueError, match="Give at least 2"):
        counter_factor([100], [98])
    with pytest.raises(ValueError, match="Give one of each"):
        counter_factor([100, 200], [98])
    with pytest.raises(ValueError, match="counter's reading in place 2 is 0"):
        counter_factor([100, 200], [98, 0])
    with pytest.raises(ValueError, match="counter's reading is 0"):
        corrected_length(0, [100, 200], [98, 197])

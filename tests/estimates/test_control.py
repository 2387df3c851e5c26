"""Control charts and drift.

NIST   published: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2, flow rate of ten
       batches; centre 50.81, mean moving range 1.8778, limits 55.8041 and 45.8159.
       Statistical Reference Datasets, linear regression, Norris, certified values; the data file
       is the one that scipy carries.
"""

import re
from importlib.resources import files

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import Signal, control_chart, drift

FLOW_RATE = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]

readings = st.lists(st.floats(500, 2000), min_size=3, max_size=30)


def test_nist_flow_rate() -> None:
    chart = control_chart(FLOW_RATE)
    assert chart.centre == pytest.approx(50.81, abs=0.005)
    assert chart.moving_ranges == pytest.approx([2.0, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5])
    assert chart.mean_range == pytest.approx(1.8778, abs=5e-5)
    assert chart.limits.high == pytest.approx(55.8041, abs=5e-5)
    assert chart.limits.low == pytest.approx(45.8159, abs=5e-5)
    assert chart.signals == ()  # "the process is in control", says the handbook


def test_factors_of_the_chart() -> None:
    # ISO 7870-2, constants for two readings: 2.66 mean ranges to a limit, 3.267 to the range's
    chart = control_chart([0, 1, 0, 1])
    assert chart.limits.high - chart.centre == pytest.approx(2.66, abs=0.005)
    assert chart.range_limit == pytest.approx(3.267)


def test_factors_by_simulation() -> None:
    # d2 is the mean range of two readings in standard deviations; D4 = 1 + 3 d3 / d2
    chance = np.random.default_rng(2660)
    ranges = np.abs(np.diff(chance.normal(size=(1_000_000, 2)))).ravel()
    assert ranges.mean() == pytest.approx(1.128, abs=0.004)  # of a million, known to 0.0009
    assert 1 + 3 * ranges.std() / ranges.mean() == pytest.approx(3.267, abs=0.012)


def test_nist_norris() -> None:
    text = files("scipy.stats").joinpath("tests/data/nist_linregress/Norris.dat").read_text()
    rows = re.findall(r"^\s+([\d.]+)\s+([\d.]+)$", text.split("Data:")[-1], re.MULTILINE)
    assert len(rows) == 36
    found = drift([float(x) for _, x in rows], [float(y) for y, _ in rows])
    # as printed to 15 figures; the sum of 36 squares up to 10**6 costs two of them
    assert found.value == pytest.approx(1.00211681802045, rel=1e-13)
    assert found.uncertainty == pytest.approx(0.429796848199937e-03, rel=1e-11)
    assert found.dof == 34


@given(readings)
def test_drift_is_that_of_scipy_stats(grists: list[float]) -> None:
    assume(np.ptp(grists) > 1)
    places = list(range(1, len(grists) + 1))
    found, line = drift(places, grists), stats.linregress(places, grists)
    assert found.value == pytest.approx(line.slope, abs=1e-9)
    assert found.uncertainty == pytest.approx(line.stderr, rel=1e-5, abs=1e-6)
    assert found.dof == len(grists) - 2


def test_drift_with_its_range() -> None:
    # residuals 1, -2, 1 about a line of slope 5: s**2 = 6, and u = (6 / 2)**0.5 with t = 12.706
    found = drift([1, 2, 3], [106, 108, 116])
    assert found.value == pytest.approx(5)
    assert found.uncertainty == pytest.approx(3**0.5)
    assert found.interval() == pytest.approx((5 - 22.008, 5 + 22.008), abs=0.0005)


def words(signals: tuple[Signal, ...]) -> list[str]:
    return [each.words for each in signals]


def test_a_point_outside_and_the_jumps_beside_it() -> None:
    chart = control_chart([*[1000, 1010] * 8, 1100, *[1000, 1010] * 8])
    assert words(chart.signals) == [
        "cut 17 is above the limits",
        "the yarn jumps between cuts 16 and 17",
        "the yarn jumps between cuts 17 and 18",
    ]
    below = control_chart([*[1000, 1010] * 8, 900, *[1000, 1010] * 8])
    assert below.signals[0] == Signal(17, 17, "cut 17 is below the limits")


def test_a_run_of_eight_on_one_side() -> None:
    seven = control_chart([1004, 1009, 1003, 1008, 1003, 1008, 1004, 990, 1010], target=1000)
    assert seven.signals == ()
    eight = control_chart([1004, 1009, 1003, 1008, 1003, 1008, 1004, 1010, 990], target=1000)
    assert eight.signals == (Signal(1, 8, "cuts 1 to 8 are all above the centre line"),)
    other = control_chart([990, 1010, *[996, 991, 997, 992] * 2], target=1000)
    assert other.signals == (Signal(3, 10, "cuts 3 to 10 are all below the centre line"),)


def test_a_trend_of_six() -> None:
    five = control_chart([1010, 990, 995, 1000, 1005, 1010, 1000])
    assert five.signals == ()
    six = control_chart([1010, 985, 991, 997, 1003, 1009, 1015, 1000])
    assert six.signals == (Signal(2, 7, "cuts 2 to 7 rise one after the other"),)
    falling = control_chart([1000, 1015, 1009, 1003, 997, 991, 985, 1000])
    assert falling.signals == (Signal(2, 7, "cuts 2 to 7 fall one after the other"),)


def test_two_equal_readings_break_a_trend_and_the_centre_line_a_run() -> None:
    rising_but_once = control_chart([985, 991, 997, 997, 1003, 1009, 1015])
    assert not [each for each in words(rising_but_once.signals) if "rise" in each]
    on_the_line = [1004, 1009, 1003, 1008, 1000, 1003, 1008, 1004, 1010]
    assert control_chart(on_the_line, target=1000).signals == ()


def test_a_steady_yarn_is_outside_one_time_in_370() -> None:
    # 2 P(Z > 3) = 1 / 370.4, with the limits known; judged here from 20000 readings
    chart = control_chart(np.random.default_rng(7870).normal(1000, 80, 20000).tolist())
    outside = sum("the limits" in each.words for each in chart.signals)
    assert outside / 20000 == pytest.approx(1 / 370.4, abs=0.0015)  # four times its own noise


@given(readings, st.sampled_from([-4, 0.25, 0.5, 2, 8]))
def test_a_change_of_scale_changes_no_signal(grists: list[float], factor: float) -> None:
    # by powers of two, which leave every tie a tie; a negative one turns high and low about
    before, after = control_chart(grists), control_chart([factor * each for each in grists])
    assert sorted(after.limits) == pytest.approx(sorted(factor * end for end in before.limits))
    places = [(each.first, each.last) for each in before.signals]
    assert [(each.first, each.last) for each in after.signals] == places


@given(readings)
def test_the_centre_lies_between_the_limits(grists: list[float]) -> None:
    chart = control_chart(grists)
    assert chart.limits.low <= chart.centre <= chart.limits.high
    assert len(chart.moving_ranges) == len(grists) - 1


def test_too_few_are_refused() -> None:
    with pytest.raises(ValueError, match="Give at least 3"):
        control_chart([1000, 1010])
    with pytest.raises(ValueError, match="three cuts or more"):
        drift([1, 2], [1000, 1010])
    with pytest.raises(ValueError, match="at different places"):
        drift([5, 5, 5], [1000, 1010, 1020])
    with pytest.raises(ValueError, match="Give one of each"):
        drift([1, 2, 3], [1000, 1010])

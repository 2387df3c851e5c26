"""Means, spreads and the grist of a yarn from its cuts.

NIST  published: Statistical Reference Datasets, univariate summary statistics, certified values.
      Michelso is A. A. Michelson's speed of light of 1879, in km/s less 299000 (data from memory:
      they reproduce both certified values to the last digit).
GUM   published: JCGM 100:2008, 4.4.3, table 1 (from memory).
"""

import math
import statistics

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats
from uncertainties import ufloat

from yarnsheets.estimates import (
    grist_from_cuts,
    mean,
    spread_of_cuts,
    standard_deviation,
)

FIVE_CUTS = [9.6, 10.1, 10.4, 9.8, 10.6]

MICHELSO = """
850 740 900 1070 930 850 950 980 980 880 1000 980 930 650 760 810 1000 1000 960 960
960 940 960 940 880 800 850 880 900 840 830 790 810 880 880 830 800 790 760 800
880 880 880 860 720 720 620 860 970 950 880 910 850 870 840 840 850 840 840 840
890 810 810 820 800 770 760 740 750 760 910 920 890 860 880 720 840 850 850 780
890 840 780 810 760 810 790 810 820 850 870 870 810 740 810 940 950 800 810 870
"""

TEMPERATURES = """
96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07
100.33 100.42 100.68 100.95 101.11 101.20 101.57 101.84 102.36 102.72
"""

lengths = st.floats(1, 60)
several = st.lists(lengths, min_size=2, max_size=30)


def numbers(text: str) -> list[float]:
    return [float(each) for each in text.split()]


def alternating(first: float, one: float, other: float) -> list[float]:
    return [first, *[one, other] * 500]


@pytest.mark.parametrize(
    ("readings", "certified_mean", "certified_deviation"),
    [
        pytest.param([10000001, 10000003, 10000002], 10000002, 1, id="NumAcc1"),
        pytest.param(alternating(1.2, 1.1, 1.3), 1.2, 0.1, id="NumAcc2"),
        pytest.param(alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, id="NumAcc3"),
        pytest.param(
            alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, id="NumAcc4"
        ),
    ],
)
def test_nist_numerical_accuracy(
    readings: list[float], certified_mean: float, certified_deviation: float
) -> None:
    # a double holds such a reading only to half a unit in its last place: no result can be nearer
    held = math.ulp(max(readings))
    assert mean(readings).value == pytest.approx(certified_mean, rel=0, abs=held)
    assert standard_deviation(readings) == pytest.approx(certified_deviation, rel=0, abs=held)


def test_nist_michelso() -> None:
    speeds = numbers(MICHELSO)
    assert len(speeds) == 100
    assert 299.0 + mean(speeds).value / 1000 == pytest.approx(299.852400000000, rel=1e-15)
    assert standard_deviation(speeds) / 1000 == pytest.approx(0.0790105478190518, abs=5e-17)


def test_gum_twenty_temperatures() -> None:
    found = mean(numbers(TEMPERATURES))
    assert found.value == pytest.approx(100.145, abs=0.0005)
    assert standard_deviation(numbers(TEMPERATURES)) == pytest.approx(1.489, abs=0.0005)
    assert found.uncertainty == pytest.approx(0.333, abs=0.0005)
    assert found.dof == 19


def test_five_cuts_by_the_arithmetic_mean() -> None:
    # hand-worked to 15 figures, t of 4 degrees of freedom 2.776445
    found = mean([100 * cut for cut in FIVE_CUTS])
    assert found.value == pytest.approx(1010, rel=1e-15)
    assert found.uncertainty * math.sqrt(5) == pytest.approx(41.2310562561766, abs=5e-14)
    assert found.expanded() == pytest.approx(51.1951181612085, abs=5e-14)


def test_five_cuts_by_the_harmonic_mean() -> None:
    found = grist_from_cuts(FIVE_CUTS, 100)
    assert found.value == pytest.approx(1008.65251829228, abs=5e-12)
    assert found.dof == 4


@pytest.mark.parametrize(
    ("cuts", "harmonic"),
    # hand-worked: 3 / (1/9 + 1/10 + 1/11) and 2 / (1/8 + 1/12), times 100
    [([9, 10, 11], 993.311036789298), ([8, 12], 960)],
)
def test_the_arithmetic_mean_is_high_by_the_square_of_the_spread(
    cuts: list[float], harmonic: float
) -> None:
    found = grist_from_cuts(cuts, 100).value
    assert found == pytest.approx(harmonic, abs=5e-13)
    arithmetic = 100 * statistics.mean(cuts)
    assert arithmetic == 1000
    # exact for the spread over all the cuts there are (n in place of n - 1), to the square
    square = spread_of_cuts(cuts) ** 2 * (len(cuts) - 1) / len(cuts)
    assert arithmetic / found - 1 == pytest.approx(square, rel=0.05)


def test_the_grist_is_that_of_the_pieces_laid_end_to_end_by_length() -> None:
    """A yarn of equal lengths of each thickness: its mass over its length, by first principles."""
    cuts, counterweight = [6.0, 10.0, 15.0], 1 / 3600  # in, and lb at 100 yd/lb to the inch
    yards_of_each = 5.0
    pounds = sum(yards_of_each * counterweight / (cut / 36) for cut in cuts)
    assert grist_from_cuts(cuts, 100).value == pytest.approx(3 * yards_of_each / pounds)


def test_uncertainty_by_the_uncertainties_package() -> None:
    inverse = [1 / cut for cut in FIVE_CUTS]
    grist = 100 / ufloat(statistics.mean(inverse), statistics.stdev(inverse) / math.sqrt(5))
    found = grist_from_cuts(FIVE_CUTS, 100)
    assert found.value == pytest.approx(grist.n)
    assert found.uncertainty == pytest.approx(grist.s)


def test_spread_and_mean_by_scipy_stats() -> None:
    assert spread_of_cuts(FIVE_CUTS) == pytest.approx(
        stats.variation(1 / np.array(FIVE_CUTS), ddof=1)
    )
    assert grist_from_cuts(FIVE_CUTS, 100).value == pytest.approx(100 * stats.hmean(FIVE_CUTS))
    found = mean(FIVE_CUTS)
    assert found.interval() == pytest.approx(
        stats.t.interval(0.95, 4, loc=found.value, scale=stats.sem(FIVE_CUTS))
    )


@given(several)
def test_the_range_holds_the_grist_and_lies_below_the_arithmetic_mean(cuts: list[float]) -> None:
    found = grist_from_cuts(cuts, 100)
    low, high = found.interval()
    assert low <= found.value <= high
    assert found.value <= 100 * statistics.fmean(cuts) * (1 + 1e-12)
    assert 100 * min(cuts) * (1 - 1e-12) <= found.value <= 100 * max(cuts) * (1 + 1e-12)


@given(several)
def test_inches_and_centimetres_give_one_grist(cuts: list[float]) -> None:
    inches = grist_from_cuts(cuts, 100)
    centimetres = grist_from_cuts([2.54 * cut for cut in cuts], 100 / 2.54)
    assert centimetres.value == pytest.approx(inches.value)
    assert centimetres.relative == pytest.approx(inches.relative, abs=1e-12)
    assert spread_of_cuts([2.54 * cut for cut in cuts]) == pytest.approx(
        spread_of_cuts(cuts), abs=1e-12
    )


@given(several)
def test_the_same_cuts_once_more_narrow_the_range(cuts: list[float]) -> None:
    once, twice = grist_from_cuts(cuts, 100), grist_from_cuts(cuts * 2, 100)
    assert twice.value == pytest.approx(once.value)
    assert twice.relative <= once.relative + 1e-12
    assert twice.interval().high <= once.interval().high * (1 + 1e-9)


@given(several)
def test_the_order_of_the_cuts_does_not_matter(cuts: list[float]) -> None:
    shuffled = sorted(cuts)
    assert grist_from_cuts(shuffled, 100).value == pytest.approx(grist_from_cuts(cuts, 100).value)
    assert spread_of_cuts(shuffled) == pytest.approx(spread_of_cuts(cuts), abs=1e-12)


@pytest.mark.parametrize(
    ("cuts", "words"),
    [
        ([10.0], "Give at least 2"),
        ([], "Give at least 2"),
        ([10, 0], "cut in place 2 is 0"),
        ([-1, 10], "cut in place 1 is -1"),
        ([10, 11, math.nan], "cut in place 3 is nan"),
        ([10, math.inf], "cut in place 2 is inf"),
    ],
)
def test_what_is_no_cut_is_refused(cuts: list[float], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        grist_from_cuts(cuts, 100)
    with pytest.raises(ValueError, match=words):
        spread_of_cuts(cuts)


def test_what_is_no_reading_or_factor_is_refused() -> None:
    with pytest.raises(ValueError, match="must be a number"):
        mean([1, math.nan])
    with pytest.raises(ValueError, match="balance factor is 0"):
        grist_from_cuts([10, 11], 0)
    assert mean([-1, 1]).value == 0

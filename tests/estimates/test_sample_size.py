"""How many cuts are enough.

The table is worked out beforehand from the definition, with tables of the normal curve and of
Student's t, and again below with scipy.stats by trying one number after another. The form of its z
column is that of the sampling clauses of ASTM D2258 and ISO 2060 (from memory).
"""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import (
    cuts_needed,
    cuts_needed_if_spread_known,
    further_cuts,
    grist_from_cuts,
    half_width,
    spread_of_cuts,
)

# spread %   within 5 %: z / t   within 3 %: z / t   within 2 %: z / t   within 1 %: z / t
TABLE = """
3            2 / 4               4 / 7               9 / 12              35 / 38
5            4 / 7               11 / 14             25 / 27             97 / 99
8            10 / 13             28 / 30             62 / 64             246 / 249
10           16 / 18             43 / 46             97 / 99             385 / 387
15           35 / 38             97 / 99             217 / 219           865 / 867
20           62 / 64             171 / 174           385 / 387           1537 / 1540
"""
ROWS = [re.findall(r"\d+", row) for row in TABLE.strip().splitlines()]
CELLS = [
    (int(spread), within, int(z), int(t))
    for spread, *numbers in ROWS
    for within, z, t in zip((5, 3, 2, 1), numbers[::2], numbers[1::2], strict=True)
]

spreads = st.floats(0.005, 0.4)
widths = st.floats(0.01, 0.2)


def test_the_table_is_read_whole() -> None:
    assert len(CELLS) == 24


@pytest.mark.parametrize(("spread", "within", "z", "t"), CELLS)
def test_table(spread: int, within: int, z: int, t: int) -> None:
    assert cuts_needed_if_spread_known(spread / 100, within / 100) == z
    assert cuts_needed(spread / 100, within / 100) == t


def test_eighteen_cuts_bring_a_spread_of_ten_within_five_per_cent() -> None:
    assert cuts_needed(0.10, 0.05) == 18
    assert half_width(0.10, 18) <= 0.05 < half_width(0.10, 17)


@pytest.mark.parametrize(("within", "factor"), [(5, 0.1537), (2, 0.9604), (1, 3.8415)])
def test_the_short_rule(within: int, factor: float) -> None:
    # n = 0.1537 v**2 and so on, v in per cent: printed to four decimals
    exact = (stats.norm.ppf(0.975) / within) ** 2
    assert exact == pytest.approx(factor, abs=5e-5)
    for v in (3, 7, 12, 25):
        assert cuts_needed_if_spread_known(v / 100, within / 100) == math.ceil(exact * v**2)


@given(spreads, widths, st.sampled_from([0.9, 0.95, 0.99]))
def test_it_is_the_smallest_that_scipy_finds(spread: float, wanted: float, share: float) -> None:
    def reach(n: int) -> float:
        return float(stats.t.ppf((1 + share) / 2, n - 1)) * spread / math.sqrt(n)

    found = cuts_needed(spread, wanted, share)
    assert reach(found) <= wanted * (1 + 1e-9)
    assert found == 2 or reach(found - 1) > wanted * (1 - 1e-9)


@given(spreads, st.integers(2, 500))
def test_more_cuts_never_widen_at_equal_spread(spread: float, cuts: int) -> None:
    assert half_width(spread, cuts + 1) < half_width(spread, cuts)


@given(spreads, widths)
def test_a_narrower_wish_never_takes_fewer(spread: float, wanted: float) -> None:
    assert cuts_needed(spread, wanted * 0.9) >= cuts_needed(spread, wanted)
    assert cuts_needed(spread * 1.1, wanted) >= cuts_needed(spread, wanted)
    assert cuts_needed(spread, wanted) > cuts_needed_if_spread_known(spread, wanted)


@given(st.lists(st.floats(5, 20), min_size=2, max_size=12), widths)
def test_further_cuts_are_enough_if_the_spread_stays(cuts: list[float], wanted: float) -> None:
    more = further_cuts(cuts, wanted)
    spread = spread_of_cuts(cuts)
    assert half_width(spread, len(cuts) + more) <= wanted * (1 + 1e-12)
    assert more == 0 or half_width(spread, len(cuts) + more - 1) > wanted


def test_the_half_width_is_that_of_the_grist() -> None:
    cuts = [9.6, 10.1, 10.4, 9.8, 10.6]
    grist = grist_from_cuts(cuts, 100)
    assert half_width(spread_of_cuts(cuts), 5) == pytest.approx(grist.expanded() / grist.value)


def test_a_few_more_cuts() -> None:
    # spread 4.09 %: t 2.776 * 4.09 / 5**0.5 = 5.1 % now, and 2.571 * 4.09 / 6**0.5 = 4.3 % with one
    cuts = [9.6, 10.1, 10.4, 9.8, 10.6]
    assert further_cuts(cuts, 0.06) == 0
    assert further_cuts(cuts, 0.05) == 1
    # within 3 % takes 10: 2.262 * 4.09 / 10**0.5 = 2.93 %, but 2.306 * 4.09 / 9**0.5 = 3.14 %
    assert further_cuts(cuts, 0.03) == 5


def test_yarn_without_spread_needs_two_cuts_to_show_it() -> None:
    assert cuts_needed(0, 0.05) == 2
    assert cuts_needed_if_spread_known(0, 0.05) == 1


@pytest.mark.parametrize(
    ("spread", "wanted"), [(-0.1, 0.05), (0.1, 0), (0.1, -0.05), (math.nan, 0.05), (0.1, math.nan)]
)
def test_a_wish_that_cannot_be_met_is_refused(spread: float, wanted: float) -> None:
    with pytest.raises(ValueError, match="Give the spread as 0 or more"):
        cuts_needed(spread, wanted)


def test_one_cut_has_no_range() -> None:
    with pytest.raises(ValueError, match="Take at least two"):
        half_width(0.1, 1)
    with pytest.raises(ValueError, match="Give at least 2"):
        further_cuts([10], 0.05)

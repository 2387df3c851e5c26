"""The worksheet on how sure a grist is: its ranges in Python, and on the page."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

import pytest
from scipy import stats

from tests.browser import open_sheet
from tests.reader import rows, said, type_in
from yarnsheets.sheets import HowSureIsTheGrist
from yarnsheets.units import convert

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

CUTS = [9.6, 10.1, 10.4, 9.8, 10.6]
# All the tools' errors as small as they can be typed, so that the cuts' own spread is left.
CUTS_ALONE = {
    "trimming": 0.001,
    "stretch": 0.0001,
    "counterweight": 0.0001,
    "humidity": 0.0001,
}


def test_the_grist_is_the_harmonic_mean() -> None:
    # hand-worked: 5 / (1/960 + 1/1010 + 1/1040 + 1/980 + 1/1060)
    assert HowSureIsTheGrist(cuts=CUTS).grist == pytest.approx(1008.65251829228, abs=5e-12)


def test_the_range_of_the_cuts_alone_is_students_t() -> None:
    # scipy's t on the mass per length of each cut; the range is a factor either way
    sheet = HowSureIsTheGrist(cuts=CUTS, **CUTS_ALONE)
    thickness = [1 / cut for cut in CUTS]
    t = stats.t.ppf(0.975, 4)
    relative = stats.sem(thickness) / (sum(thickness) / 5)
    assert sheet.half_width == pytest.approx(t * relative, rel=1e-3)
    assert sheet.grist_high / sheet.grist == pytest.approx(math.exp(t * relative), rel=1e-4)


def test_further_cuts_are_as_many_as_bring_the_range_within_what_is_wanted() -> None:
    # the smallest n whose own Student t range is within 3 % at the spread of these cuts (scipy)
    sheet = HowSureIsTheGrist(cuts=CUTS, wanted=0.03, **CUTS_ALONE)
    n = next(
        n for n in range(2, 100) if stats.t.ppf(0.975, n - 1) * sheet.spread / math.sqrt(n) <= 0.03
    )
    assert sheet.is_reachable
    assert sheet.further == n - len(CUTS)


def test_no_number_of_cuts_mends_a_stretch() -> None:
    sheet = HowSureIsTheGrist(cuts=CUTS, wanted=0.02, stretch=0.05)
    assert sheet.is_out_of_reach
    assert "look at stretch first" in sheet.sentence


def test_the_parts_of_the_doubt_make_the_whole() -> None:
    sheet = HowSureIsTheGrist(cuts=CUTS)
    assert sum(row["share"] for row in sheet.sources) == pytest.approx(1, rel=1e-12)


@pytest.mark.parametrize(
    ("cuts", "said"),
    [
        ([], "There are no cuts yet"),
        ([10], "One cut is a guess"),
        ([0, 10, 10.2], "The cut is 0, which cannot be"),
        ([10, 10.2, 25.6], "centimetres"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(cuts: list[float], said: str) -> None:
    sheet = HowSureIsTheGrist(cuts=cuts)
    assert said in sheet.sentence
    assert "19 skeins of 20" not in sheet.sentence
    assert not sheet.has_range


def test_a_range_is_said_low_end_first_in_every_unit() -> None:
    # 1000 yd/lb is 496.05 tex: the finer end of a range is the lower one there
    sheet = HowSureIsTheGrist(cuts=CUTS, grist_unit="tex")
    low, high = re.findall(r"between (\d+) and (\d+) in 19", sheet.sentence)[0]
    assert int(low) == round(convert(sheet.grist_high, "yd/lb", "tex"))
    assert int(high) == round(convert(sheet.grist_low, "yd/lb", "tex"))
    assert int(low) < int(high)


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "how-sure-is-the-grist")


def cuts(page: Page, *lines: str) -> None:
    type_in(page, "cuts", "\n".join(lines))


def band(page: Page) -> float:
    """Give the height of the band at the end of the chart, as a part of the line there."""
    end = next(table[-1] for table in rows(page, "yards_with_range", "high"))
    return abs(end["high"] - end["yards"]) / max(end["high"], end["yards"])


def test_one_more_cut_narrows_the_band(sheet: Page) -> None:
    wide = band(sheet)
    cuts(sheet, "9.6", "10 1/10", "10.4", "9.8", "10 3/5", "10.1")
    python = HowSureIsTheGrist(cuts=[*CUTS, 10.1])
    assert said(sheet) == python.sentence
    narrow = band(sheet)
    assert narrow < wide
    assert narrow == pytest.approx(1 - python.yards_low / python.yards_high, rel=1e-9)


def test_the_band_spans_all_cuts_after_one_more(sheet: Page) -> None:
    cuts(sheet, "9.6", "10.1", "10.4", "9.8", "10.6", "10.1")
    [spread] = rows(sheet, "readings_of_grist", "high")
    assert [row["place"] for row in spread] == [0.5, 6.5]


def test_a_line_that_is_no_number_is_named_and_kept(sheet: Page) -> None:
    before = said(sheet)
    cuts(sheet, "9.6", "ten", "10.4")
    assert (
        "Line 2: “ten” is not a number" in sheet.locator("[data-name=cuts] .ys-error").inner_text()
    )
    assert sheet.locator("[data-name=cuts] textarea").input_value() == "9.6\nten\n10.4"
    assert said(sheet) == before


def test_the_same_cuts_are_listed_in_centimetres(sheet: Page) -> None:
    sheet.get_by_label("Length, weight", exact=True).select_option("metres, grams")
    lines = sheet.locator("[data-name=cuts] textarea").input_value().split()
    assert [float(line) for line in lines] == pytest.approx([cut * 2.54 for cut in CUTS], abs=5e-4)

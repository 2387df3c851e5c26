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
DEFAULTS = (1 / 16 / 10.1, 0.005, 0.008, 0.01)  # trimming of the mean cut, stretch, weight, damp
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
    assert sheet.half_width == pytest.approx(math.expm1(t * relative), rel=1e-3)
    assert sheet.grist_high / sheet.grist == pytest.approx(math.exp(t * relative), rel=1e-4)


def spread_and_rest(sheet: HowSureIsTheGrist) -> float:
    """Give the half width by hand: Student's t of the cuts, and the rest by the normal curve."""
    inverse = [1 / cut for cut in sheet.cuts]
    few = stats.t.ppf(0.975, len(inverse) - 1) * stats.sem(inverse) / (sum(inverse) / len(inverse))
    mean = sum(sheet.cuts) / len(inverse)
    bounds = [sheet.trimming / mean, sheet.stretch, sheet.counterweight, sheet.humidity]
    rest = stats.norm.ppf(0.975) * math.hypot(*bounds) / math.sqrt(3)
    return math.hypot(few, min(rest, 0.95 * sum(bounds)))


@pytest.mark.parametrize("cuts", [[10, 10.2], [9.6, 10, 10.4], CUTS, [9.6, 10.1, 10.4] * 5])
def test_the_range_joins_the_cuts_and_all_else_by_squares(cuts: list[float]) -> None:
    sheet = HowSureIsTheGrist(cuts=cuts)
    exponent = spread_and_rest(sheet)
    assert sheet.exponent == pytest.approx(exponent, rel=1e-9)
    assert math.hypot(sheet.from_cuts, sheet.from_rest) == pytest.approx(exponent, rel=1e-9)
    assert sheet.grist_high / sheet.grist == pytest.approx(math.exp(exponent), rel=1e-9)
    assert sheet.grist / sheet.grist_low == pytest.approx(math.exp(exponent), rel=1e-9)
    assert sheet.half_width == pytest.approx(math.expm1(exponent), rel=1e-9)


@pytest.mark.parametrize("cuts", [[9.6], [9.6, 10.1], CUTS])
@pytest.mark.parametrize("doubt", ["trimming", "stretch", "counterweight", "humidity"])
def test_no_range_narrows_when_a_doubt_grows(cuts: list[float], doubt: str) -> None:
    widths = [
        HowSureIsTheGrist(cuts=cuts, **{doubt: 0.002 * 2**step}).half_width for step in range(6)
    ]
    assert widths == sorted(widths)


def test_both_ends_are_within_what_one_can_live_with_when_that_is_said() -> None:
    # with 2 cuts the range is wide, and its upper end is farther off than its lower one
    sheet = HowSureIsTheGrist(cuts=[9, 11])
    off = sheet.grist_high / sheet.grist - 1
    assert off > 1 - sheet.grist_low / sheet.grist
    for wanted in (0.99 * off, 1.01 * off):
        if wanted < 0.5:
            said = HowSureIsTheGrist(cuts=[9, 11], wanted=wanted).is_reached
            assert said == (off <= wanted)
    assert not HowSureIsTheGrist(cuts=[9.6, 10.4], wanted=0.5).is_reached
    assert sheet.half_width == pytest.approx(off, rel=1e-12)


def test_a_range_shown_as_the_one_wanted_asks_for_no_more() -> None:
    off = HowSureIsTheGrist().half_width
    shown = float(f"{100 * off:.3g}") / 100  # as it is written in per cent, to three figures
    sheet = HowSureIsTheGrist(wanted=shown)
    assert sheet.say("{half_width}") == sheet.say("{wanted}")
    assert sheet.is_reached


def test_one_cut_has_the_range_of_a_usual_yarn() -> None:
    # scipy's normal quantile: a spread taken as known, beside the sheet's own other errors
    sheet = HowSureIsTheGrist(cuts=[10], usual_spread=0.12)
    rest = math.hypot(1 / 16 / 10, *DEFAULTS[1:]) / math.sqrt(3)
    exponent = stats.norm.ppf(0.975) * math.hypot(0.12, rest)
    assert sheet.grist == 1000
    assert sheet.grist_high == pytest.approx(1000 * math.exp(exponent), rel=1e-9)
    assert sheet.grist_low == pytest.approx(1000 / math.exp(exponent), rel=1e-9)
    assert sheet.is_reachable_from_one
    assert "a second cut begins to show your yarn’s own" in sheet.sentence
    # what two and five cuts of that spread would bring, by Student's t
    few = stats.t.ppf(0.975, 1) * 0.12 / math.sqrt(2)
    normal = stats.norm.ppf(0.975) * rest
    assert sheet.two_cuts == pytest.approx(math.expm1(math.hypot(few, normal)), rel=1e-9)
    few = stats.t.ppf(0.975, 4) * 0.12 / math.sqrt(5)
    assert sheet.several_cuts == pytest.approx(math.expm1(math.hypot(few, normal)), rel=1e-9)


@pytest.mark.parametrize("given", [[10], [9.6, 10], CUTS, [9, 10, 11] * 6])
def test_every_cut_and_the_whole_band_are_inside_the_axis(given: list[float]) -> None:
    sheet = HowSureIsTheGrist(cuts=given)
    assert sheet.least <= min(*given, given[0]) * 100
    assert sheet.most >= max(*given, given[0]) * 100
    assert sheet.least <= sheet.grist_low < sheet.grist_high <= sheet.most


def test_how_uneven_such_yarn_usually_is_is_asked_for_one_cut_alone() -> None:
    assert HowSureIsTheGrist(cuts=[10]).unused() == []
    for cuts in ([], [10, 10.2]):
        assert HowSureIsTheGrist(cuts=cuts).unused() == ["usual_spread"]
        one, other = (HowSureIsTheGrist(cuts=cuts, usual_spread=s) for s in (0.05, 0.3))
        assert one.sentence == other.sentence
        assert one.arithmetic == other.arithmetic


def test_a_narrow_range_is_not_written_with_two_ends_alike() -> None:
    sheet = HowSureIsTheGrist(cuts=[10, 10], **CUTS_ALONE | {"trimming": 0.01})
    assert sheet.say("{grist_low!}") == "999"  # by hand: 0.95 of 0.001 and a little
    narrow = HowSureIsTheGrist(cuts=[10, 10], **CUTS_ALONE)
    assert "between" not in narrow.sentence
    assert "right to within" in narrow.sentence


@pytest.mark.parametrize("cuts", [[5e-324], [5e-324, 1, 1], [10, 5e-324]])
def test_a_cut_of_next_to_nothing_is_met_as_none(cuts: list[float]) -> None:
    assert "cannot be" in HowSureIsTheGrist(cuts=cuts).sentence


def test_a_skein_lighter_than_a_step_of_the_scale() -> None:
    sheet = HowSureIsTheGrist(weight=0.06 / 16, scale_step=0.1 / 16)
    assert "steps of 0.1\N{NO-BREAK SPACE}oz and the skein weighs 0.06" in sheet.sentence
    sheet.measure = "metres, grams"
    assert "steps of 2.83\N{NO-BREAK SPACE}g" in sheet.sentence


def test_a_warning_follows_the_units() -> None:
    sheet = HowSureIsTheGrist(cuts=[10, 10.2, 25.6], measure="metres, grams")
    assert "A cut of 65\N{NO-BREAK SPACE}cm is 2.5 times the 25.7" in sheet.sentence


def test_further_cuts_are_as_many_as_bring_the_range_within_what_is_wanted() -> None:
    # the smallest n whose own Student t range is within 3 % at the spread of these cuts (scipy)
    sheet = HowSureIsTheGrist(cuts=CUTS, wanted=0.03, **CUTS_ALONE)
    n = next(
        n
        for n in range(2, 100)
        if math.expm1(stats.t.ppf(0.975, n - 1) * sheet.spread / math.sqrt(n)) <= 0.03
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
        ([0, 10, 10.2], "The cut is 0, which cannot be"),
        ([10, 10.2, 25.6], "centimetres"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(cuts: list[float], said: str) -> None:
    sheet = HowSureIsTheGrist(cuts=cuts)
    assert said in sheet.sentence
    assert "95% sure" not in sheet.sentence
    assert not sheet.has_range


def test_a_range_is_said_low_end_first_in_every_unit() -> None:
    # 1000 yd/lb is 496.05 tex: the finer end of a range is the lower one there
    sheet = HowSureIsTheGrist(cuts=CUTS, grist_unit="tex")
    low, high = re.findall(r"between (\d+) and (\d+), 95% sure", sheet.sentence)[0]
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
        "Number 2: “ten” is not a number"
        in sheet.locator("[data-name=cuts] .ys-error").inner_text()
    )
    assert sheet.locator("[data-name=cuts] textarea").input_value() == "9.6\nten\n10.4"
    assert said(sheet) == before


def test_the_same_cuts_are_listed_in_centimetres(sheet: Page) -> None:
    sheet.get_by_label("Length, weight", exact=True).select_option("metres, grams")
    lines = sheet.locator("[data-name=cuts] textarea").input_value().split()
    assert [float(line) for line in lines] == pytest.approx([cut * 2.54 for cut in CUTS], abs=5e-4)

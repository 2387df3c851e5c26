"""The worksheet on a weighed skein: length, grist and ranges in Python, and on the page."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import pytest
from scipy import stats

from tests.browser import open_sheet
from tests.reader import type_in
from yarnsheets.sheets import WhatDoesAWeighedSkeinSay

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

GRAM = 1 / 453.59237  # exact: NIST Handbook 44, appendix C
SKEIN = {"turns": 100, "circumference": 54, "gross": 56.7 * GRAM, "scale_step": 1 * GRAM}
# all but the scale as sure as can be typed, so that the scale's own doubt is left
SCALE = 0.005091272215076065
# one rectangle: 0.95 of half a gram in 56.7 (JCGM 100:2008, G.6.5), and of 0.001 in beside it
REACH = 0.95 * (0.5 / 56.7 + 0.001 / 54)
SCALE_ALONE = SKEIN | {"circumference_error": 0.001}


def as_shown(share: float) -> float:
    """Give a share as its three figures in per cent say it."""
    return float(f"{100 * share:.3g}") / 100


def test_a_hundred_turns_of_54_inches_weighing_56_7_grams() -> None:
    # hand-worked from exact definitions: 5400 / 36 yd; 150 * 453.59237 / 56.7 yd/lb
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN)
    assert sheet.yards == 150
    assert sheet.grist == pytest.approx(1199.97981481481, abs=5e-12)


def test_a_step_of_a_gram_is_half_a_per_cent_of_that_skein() -> None:
    # hand-worked: 1 / sqrt(12) / 56.7, JCGM 100:2008, F.2.2.1; tolerance: a double's own precision
    assert WhatDoesAWeighedSkeinSay(**SKEIN).scale_relative == pytest.approx(SCALE, rel=1e-15)


def test_gross_and_tare_are_two_readings_of_the_scale() -> None:
    # hand-worked: the difference of two such readings has sqrt(2) times the doubt of one
    sheet = WhatDoesAWeighedSkeinSay(
        **SKEIN | {"gross": 60.7 * GRAM}, weighing="twice", tare=4 * GRAM, build_up=0
    )
    assert sheet.mass == pytest.approx(56.7 * GRAM, rel=1e-14)
    assert sheet.scale_relative == pytest.approx(SCALE * math.sqrt(2), rel=1e-13)


def test_the_tare_is_left_alone_if_weighed_once() -> None:
    assert WhatDoesAWeighedSkeinSay(**SKEIN, tare=4 * GRAM).mass == 56.7 * GRAM


def test_the_range_of_the_scale_alone_is_95_of_100_parts_of_half_a_step() -> None:
    # by hand; the range is a factor either way
    sheet = WhatDoesAWeighedSkeinSay(**SCALE_ALONE)
    assert sheet.half_width == pytest.approx(math.expm1(REACH), rel=1e-9)
    assert sheet.half_width < 0.5 / 56.7
    assert sheet.grist_high / sheet.grist == pytest.approx(math.exp(REACH), rel=1e-12)
    assert sheet.grist / sheet.grist_low == pytest.approx(math.exp(REACH), rel=1e-12)


def test_the_range_of_two_readings_is_the_normal_curves() -> None:
    # scipy's normal quantile on the difference of two readings, which a triangle describes
    sheet = WhatDoesAWeighedSkeinSay(
        **SCALE_ALONE | {"gross": 60.7 * GRAM}, weighing="twice", tare=4 * GRAM
    )
    reel = 0.001 / 54 / math.sqrt(3)
    exponent = stats.norm.ppf(0.975) * math.hypot(SCALE * math.sqrt(2), reel)
    assert math.log(sheet.grist_high / sheet.grist) == pytest.approx(exponent, rel=1e-9)


def test_an_eighth_of_an_inch_of_the_reel_is_all_the_doubt_of_the_length() -> None:
    # hand-worked: 1/8 in 54 is 0.00231481481481481; a rectangular error, JCGM 100:2008, 4.3.7
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, circumference_error=1 / 8)
    exponent = 0.95 * 0.00231481481481481
    assert math.log(sheet.yards_high / sheet.yards) == pytest.approx(exponent, rel=1e-12)


def test_a_miscount_is_its_part_of_the_turns() -> None:
    # hand-worked: one turn in a hundred is 1 %
    sheet = WhatDoesAWeighedSkeinSay(**SCALE_ALONE, miscount=1)
    exponent = 0.95 * (0.01 + 0.001 / 54)
    assert math.log(sheet.yards_high / sheet.yards) == pytest.approx(exponent, rel=1e-9)
    assert sheet.worst == "the count of turns"


def test_a_sixteenth_of_build_up_makes_the_last_turn_longer() -> None:
    # hand-worked: 2 pi / 16 / 54 for the outermost layer, half of that on average
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, build_up=1 / 16)
    assert sheet.last_turn_longer == pytest.approx(0.00727220521664304, abs=5e-17)
    assert sheet.yards == pytest.approx(150 * (1 + 0.00727220521664304 / 2), rel=1e-14)


@pytest.mark.parametrize("wanted", [0.005, 0.01, 0.03])
def test_enough_turns_are_as_many_as_bring_the_scale_within_what_is_wanted(wanted: float) -> None:
    # by hand, every number of turns: 0.95 of half a gram goes by 1 / turns
    sheet = WhatDoesAWeighedSkeinSay(**SCALE_ALONE, wanted=wanted)
    reaches = (0.95 * (50 / 56.7 / turns + 0.001 / 54) for turns in range(2, 1501))
    assert sheet.enough == 2 + next(
        at for at, reach in enumerate(reaches) if as_shown(math.expm1(reach)) <= wanted
    )
    assert sheet.is_reached == (sheet.enough <= 100)
    assert sheet.is_reachable == (sheet.enough > 100)


def test_enough_turns_are_found_where_more_of_them_are_too_many() -> None:
    # by hand, every number of turns in turn: what the scale adds falls with them, build-up grows
    def half_width(turns: int) -> float:
        piled = math.pi * 0.2 * turns / 100
        bounds = [50 / 56.7 / turns, 1 / 8 / (54 + piled), piled / (54 + piled)]
        normal = float(stats.norm.ppf(0.975)) * math.hypot(*bounds) / math.sqrt(3)
        return math.expm1(min(normal, 0.95 * sum(bounds)))

    will_do = [turns for turns in range(2, 1501) if as_shown(half_width(turns)) <= 0.017]
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, circumference_error=1 / 8, build_up=0.2, wanted=0.017)
    assert sheet.enough == will_do[0]
    assert will_do[-1] < 150


def test_no_number_of_turns_mends_the_reel() -> None:
    # by hand: 0.95 * (1/8) / 54 is 0.22 %, and no turn more makes it less
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, circumference_error=1 / 8, wanted=0.002)
    assert sheet.is_out_of_reach
    assert "look at the circumference first" in sheet.sentence


def test_the_parts_of_the_doubt_make_the_whole() -> None:
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, miscount=1, build_up=0.1)
    assert sum(row["share"] for row in sheet.sources) == pytest.approx(1, rel=1e-12)
    assert all(row["share"] > 0 for row in sheet.sources)


def test_the_band_of_the_chart_narrows_as_the_weight_grows() -> None:
    # by hand: with the scale alone in doubt, the range goes by 1 / turns
    sheet = WhatDoesAWeighedSkeinSay(**SCALE_ALONE)
    assert sheet.windings[0]["turns"] < 100 < sheet.windings[-1]["turns"]
    for row in sheet.windings:
        # a thousandth of an inch is the least the reel can be off by: 1 in 54,000
        exponent = 0.95 * (50 / 56.7 / row["turns"] + 0.001 / 54)
        assert math.log(row["high"]) == pytest.approx(exponent, rel=1e-9)
        assert math.log(row["low"]) == pytest.approx(-exponent, rel=1e-9)


def test_turns_piled_higher_make_the_range_wider_again() -> None:
    # by hand: build-up grows with the turns, so past some number it outweighs the scale
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, build_up=0.2)
    widths = [row["high"] / row["low"] for row in sheet.windings]
    narrowest = widths.index(min(widths))
    assert 0 < narrowest < len(widths) - 1


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"turns": 99.5}, "99.5 turns are not a whole number"),
        ({"weighing": "twice", "tare": 60 * GRAM}, "The tare, 2.116, is not less than the gross"),
        ({"weighing": "twice", "tare": 56.7 * GRAM}, "no mass is left"),
        ({"gross": 56.7 / 16}, "the mass looks like grams"),
        ({"gross": 0.9 * GRAM}, "less than one of them"),
        ({"weighing": "twice", "tare": 56 * GRAM}, "less than one of them"),
        ({"gross": 2 * GRAM, "measure": "metres, grams"}, "the mass looks like ounces"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    given: dict[str, float | str], said: str
) -> None:
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN | given)
    assert said in sheet.sentence
    assert "95% sure" not in sheet.sentence
    assert not sheet.has_range
    assert not sheet.arithmetic


def test_a_warning_speaks_in_the_readers_unit() -> None:
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN, weighing="twice", tare=60 * GRAM)
    sheet.measure = "metres, grams"
    assert "The tare, 60, is not less than the gross, 56.7" in sheet.sentence


def test_the_tare_is_asked_only_if_weighed_twice() -> None:
    assert WhatDoesAWeighedSkeinSay(weighing="twice").unused() == []
    assert WhatDoesAWeighedSkeinSay().unused() == ["tare"]


def test_a_narrow_range_is_not_written_with_two_ends_alike() -> None:
    # by hand: 0.95 of 0.001 in 54 is 0.0018 % either way
    sheet = WhatDoesAWeighedSkeinSay(**SCALE_ALONE)
    assert "150\N{NO-BREAK SPACE}yd, right to within 0.0018%" in sheet.sentence
    fine = WhatDoesAWeighedSkeinSay(**SCALE_ALONE | {"scale_step": 0.1 * GRAM})
    assert "between" not in fine.sentence


def test_a_range_too_wide_to_write_for_two_turns_does_no_harm() -> None:
    # 1500 turns in 2 oz on steps of a quarter ounce: two turns of it are a hundredth of a step
    sheet = WhatDoesAWeighedSkeinSay(turns=1500, weighing="twice", scale_step=0.25 / 16)
    assert sheet.has_range
    assert sheet.enough == 0
    assert "No number of turns" in sheet.sentence


def test_both_ends_are_within_what_one_can_live_with_when_that_is_said() -> None:
    # half of 1 g in 2.2 g is 0.23, and e**(0.95 * 0.23) is 1.24: the upper end is the farther off
    light = SKEIN | {"gross": 2.2 * GRAM, "turns": 5}
    for wanted in (0.22, 0.23, 0.24, 0.25):
        sheet = WhatDoesAWeighedSkeinSay(**light, wanted=wanted)
        off = sheet.grist_high / sheet.grist - 1
        assert sheet.is_reached == (off <= wanted)
        assert off > 1 - sheet.grist_low / sheet.grist


def test_a_warning_of_grist_follows_the_units() -> None:
    # 150 yd in 32 oz: 75 yd/lb, and 496055 / 75 is 6614 tex (by hand)
    sheet = WhatDoesAWeighedSkeinSay(**SKEIN | {"gross": 2.0}, grist_unit="tex")
    assert "6,614\N{NO-BREAK SPACE}tex, which is thicker" in sheet.sentence
    assert "yd/lb" not in sheet.sentence


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "what-does-a-weighed-skein-say")


def band(page: Page) -> list[float]:
    """Give the upper edge of the range against turns, as the chart has drawn it."""
    edge: list[float] = page.evaluate(
        """async () => {
            const view = document.querySelector(
                "figure[data-name=range_against_turns] .ys-picture").view;
            await view.runAsync();
            return view.data("data_0").map((row) => row.top);
        }"""
    )
    return edge


def test_the_band_on_the_chart_is_pythons_however_often_it_moves(sheet: Page) -> None:
    for ounces in (2, 2.25, 2.5, 3):
        type_in(sheet, "gross", str(ounces))
        python = WhatDoesAWeighedSkeinSay(gross=ounces / 16)
        edge = [python.grist * row["high"] for row in python.windings]
        assert band(sheet) == pytest.approx(edge, rel=1e-9)

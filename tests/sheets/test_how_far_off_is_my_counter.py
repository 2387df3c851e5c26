"""The worksheet on a counter: its factor by hand and by scipy, and the page."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from scipy import optimize, stats

from tests.browser import open_sheet
from tests.emitted import names_in, run
from tests.reader import box, centre, rows, said, type_in
from yarnsheets import units
from yarnsheets.sheets import HowFarOffIsMyCounter

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

KNOWN = [50, 100, 150, 200, 300]
SHOWN = [48.2, 95.1, 144, 190.5, 288]
# the known lengths as right as can be typed, so that the counter's own spread is left
COUNTER_ALONE = {"known_within": 0.0001}


def test_95_shown_for_100_at_every_length() -> None:
    # hand-worked: the factor is 100 / 95 = 1.0526..., and the counter shows 5 % too little; all
    # that is left of the range is 0.95 of the known lengths' 0.5 % (JCGM 100:2008, G.6.5)
    sheet = HowFarOffIsMyCounter(known=[100, 200, 300], shown=[95, 190, 285], reading=190)
    assert sheet.factor == pytest.approx(100 / 95, rel=1e-15)
    assert sheet.yards == pytest.approx(200, rel=1e-15)
    assert sheet.off == pytest.approx(0.05, rel=1e-12)
    half = math.log(sheet.factor_high / sheet.factor)
    assert half == pytest.approx(0.95 * 0.005, rel=1e-9)
    assert sheet.sentence.startswith(
        "Multiply what your counter shows by 1.053: it shows 5% too little."
    )


def test_105_shown_for_100_is_too_much() -> None:
    sheet = HowFarOffIsMyCounter(known=[100, 200], shown=[105, 210], reading=210)
    assert sheet.yards == pytest.approx(200, rel=1e-15)
    assert "5% too much" in sheet.sentence


def test_the_factor_is_the_line_through_the_origin_by_scipy() -> None:
    # weighted least squares: errors in proportion to the length
    (factor,), ((variance,),) = optimize.curve_fit(
        lambda shown, factor: factor * shown, SHOWN, KNOWN, p0=[1.0], sigma=SHOWN
    )
    sheet = HowFarOffIsMyCounter(known=KNOWN, shown=SHOWN, **COUNTER_ALONE)
    assert sheet.factor == pytest.approx(factor, rel=1e-9)
    half = stats.t.ppf(0.975, 4) * math.sqrt(variance) / factor
    assert math.log(sheet.factor_high / sheet.factor) == pytest.approx(half, rel=1e-3)


def test_a_new_reading_has_the_range_of_one_further_observation() -> None:
    # t s (1 + 1/n)**0.5 on the ratios, by numpy and scipy
    ratios = np.divide(KNOWN, SHOWN)
    half = stats.t.ppf(0.975, 4) * ratios.std(ddof=1) * math.sqrt(1 + 1 / 5) / ratios.mean()
    sheet = HowFarOffIsMyCounter(known=KNOWN, shown=SHOWN, reading=250, **COUNTER_ALONE)
    assert sheet.yards == pytest.approx(250 * ratios.mean(), rel=1e-12)
    assert math.log(sheet.yards_high / sheet.yards) == pytest.approx(half, rel=1e-3)
    assert math.log(sheet.yards / sheet.yards_low) == pytest.approx(half, rel=1e-3)


def test_lengths_wrong_together_are_not_mended_by_more_of_them() -> None:
    one = HowFarOffIsMyCounter(known=KNOWN, shown=SHOWN, known_within=0.03)
    many = HowFarOffIsMyCounter(known=KNOWN * 20, shown=SHOWN * 20, known_within=0.03)
    least = math.exp(0.95 * 0.03)
    assert one.factor_high / one.factor > many.factor_high / many.factor > least


@pytest.mark.parametrize(
    ("shown", "flag"),
    [
        ([50.5, 99.5, 150.5, 199, 301], "is_true"),
        (SHOWN, "is_low"),
        ([52, 104.2, 155, 208, 311], "is_high"),
    ],
)
def test_only_one_of_low_high_and_true_is_said(shown: list[float], flag: str) -> None:
    sheet = HowFarOffIsMyCounter(known=KNOWN, shown=shown)
    assert [name for name in ("is_low", "is_high", "is_true") if getattr(sheet, name)] == [flag]


@pytest.mark.parametrize(
    ("unit", "of_known", "words"),
    [("yd", "m", "counter of yards shows"), ("m", "yd", "counter of metres shows")],
)
def test_the_other_unit_is_named(unit: str, of_known: str, words: str) -> None:
    # a yard is 0.9144 m, exactly (1959)
    shown = [yards * (0.9144 if unit == "m" else 1 / 0.9144) for yards in KNOWN]
    shown[0] *= 1.003
    sheet = HowFarOffIsMyCounter(known=KNOWN, shown=shown)
    assert f"{words} for lengths in {'metres' if of_known == 'm' else 'yards'}" in sheet.sentence
    assert sheet.has_range
    assert "look at what it counts" not in HowFarOffIsMyCounter().sentence


@pytest.mark.parametrize(
    ("known", "shown", "words"),
    [
        ([], [], "two lengths you know at least"),
        ([100], [97], "two lengths you know at least"),
        (KNOWN, [48.2, 95.1], "Lengths you know: 5; readings of the counter: 2"),
        (
            [100, 200],
            [97, 1950],
            "Line 2: The counter shows 1,950\N{NO-BREAK SPACE}yd, 9.8 times the 200",
        ),
        ([100, 200], [9.7, 19.5], "Check the place of its decimal point"),
        ([100, 200], [291, 580], "Check whether it counts feet"),
        ([100, 200], [60, 195], "the yarn did not slip"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    known: list[float], shown: list[float], words: str
) -> None:
    sheet = HowFarOffIsMyCounter(known=known, shown=shown)
    assert words in sheet.sentence
    assert not sheet.has_range
    assert "too little" not in sheet.sentence


def test_a_reading_far_beyond_the_check_is_said_to_be() -> None:
    charts = {chart["name"]: chart for chart in HowFarOffIsMyCounter.describe()["charts"]}
    caption = charts["length_behind_reading"]["caption"]
    for reading, is_beyond in ((433, True), (431, False)):  # half as much again as 288 is 432
        sheet = HowFarOffIsMyCounter(known=KNOWN, shown=SHOWN, reading=reading)
        assert ("far beyond" in " ".join(sheet.said(caption))) == is_beyond


def test_the_range_joins_counter_and_known_lengths_by_squares() -> None:
    # scipy: t on the ratios, and 0.95 of what the known lengths may be off together
    sheet = HowFarOffIsMyCounter(known=KNOWN, shown=SHOWN, known_within=0.02)
    ratios = np.divide(KNOWN, SHOWN)
    few = stats.t.ppf(0.975, 4) * stats.sem(ratios) / ratios.mean()
    exponent = math.hypot(few, 0.95 * 0.02)
    assert math.log(sheet.factor_high / sheet.factor) == pytest.approx(exponent, rel=1e-9)
    assert sheet.factor_half == pytest.approx(math.expm1(exponent), rel=1e-9)


def test_a_narrow_range_is_not_written_with_two_ends_alike() -> None:
    sheet = HowFarOffIsMyCounter(known=[100, 200], shown=[95, 190], known_within=0.0001)
    assert "between" not in sheet.sentence
    assert sheet.sentence.count("right to within 0.0095%") == 2


def test_a_range_that_is_written_as_ending_at_one_does_not_leave_it_out() -> None:
    # by hand: 0.95 of 2 % is 1.9 %, and 1.01904 over e**0.019 is 1.00002
    shown = [known / 1.0192 for known in (100, 200)]
    sheet = HowFarOffIsMyCounter(known=[100, 200], shown=shown, known_within=0.02)
    assert sheet.factor_low > 1
    assert sheet.is_true


def test_a_warning_follows_the_units() -> None:
    sheet = HowFarOffIsMyCounter(known=[100, 200], shown=[97, 1950], measure="metres, grams")
    assert "The counter shows 1,783\N{NO-BREAK SPACE}m, 9.8 times the 183" in sheet.sentence


def test_the_answer_in_metres_is_the_same_length() -> None:
    yards, metres = HowFarOffIsMyCounter(), HowFarOffIsMyCounter(measure="metres, grams")
    assert yards.yards == metres.yards
    assert f"about {yards.yards * 0.9144:.0f}\N{NO-BREAK SPACE}m" in metres.sentence
    assert f"by {yards.factor:.3f}" in metres.sentence


# ---- what the charts compute ---------------------------------------------------------------------


def test_the_charts_lines_are_the_factor_in_metres() -> None:
    sheet = HowFarOffIsMyCounter(known=KNOWN, shown=SHOWN)
    charts = {chart["name"]: chart for chart in sheet.describe()["charts"]}
    values = sheet.all_known() | {
        "length_factor": units.scale("yd", "m").factor,
        "known_top": 400,
        "reading_top": 400,
    }

    def end(chart: str, layer: int) -> dict[str, Any]:
        row: dict[str, Any] = {"at": 1}
        for step in charts[chart]["spec"]["layer"][layer]["transform"]:
            assert names_in(step["calculate"]) <= set(values)
            row[step["as"]] = run(step["calculate"], values, row)
        return row

    assert end("shown_against_known", 0) == {"at": 1, "known": 400, "shown": 400}
    assert end("shown_against_known", 1)["shown"] == pytest.approx(400 / sheet.factor, rel=1e-12)
    band = end("length_behind_reading", 0)
    assert band["yards"] == pytest.approx(
        400 * sheet.factor * sheet.yards_low / sheet.yards, rel=1e-12
    )
    assert band["high"] == pytest.approx(
        400 * sheet.factor * sheet.yards_high / sheet.yards, rel=1e-12
    )


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "how-far-off-is-my-counter")


def lines(page: Page, name: str, *each: str) -> None:
    type_in(page, name, "\n".join(each))


def test_dragging_the_reading_moves_sentence_box_and_point(sheet: Page) -> None:
    grip = sheet.locator("figure[data-name=length_behind_reading] .ys-grip")
    grip.scroll_into_view_if_needed()
    x, y = centre(grip)
    sheet.mouse.move(x, y)
    sheet.mouse.down()
    sheet.mouse.move(x + 50, y, steps=6)
    reading = float(box(sheet, "reading").input_value())
    python = HowFarOffIsMyCounter(reading=reading)
    assert reading > 260
    assert said(sheet) == python.sentence
    assert centre(grip)[0] == pytest.approx(x + 50, abs=5)
    points = [t[0] for t in rows(sheet, "length_behind_reading", "yards") if len(t) == 1]
    assert points
    for point in points:
        assert point["yards"] == pytest.approx(python.yards, rel=1e-12)
    sheet.mouse.up()


def test_another_list_has_another_factor_in_the_charts(sheet: Page) -> None:
    lines(sheet, "known", "100", "200", "300")
    assert "Lengths you know: 3; readings of the counter: 5" in said(sheet)
    assert sheet.locator("figure[data-name=length_behind_reading] .ys-grip").is_hidden()
    lines(sheet, "shown", "95", "190", "285")
    python = HowFarOffIsMyCounter(known=[100, 200, 300], shown=[95, 190, 285])
    assert said(sheet) == python.sentence
    line = max(rows(sheet, "length_behind_reading", "yards"), key=lambda t: t[-1]["yards"])[-1]
    assert line["yards"] / line["reading"] == pytest.approx(100 / 95, rel=1e-12)


def test_grist_is_not_asked(sheet: Page) -> None:
    assert sheet.get_by_label("Length, weight", exact=True).count() == 1
    assert sheet.get_by_label("Grist", exact=True).count() == 0

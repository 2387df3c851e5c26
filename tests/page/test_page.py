"""The class worksheet in a real browser, beside the same sheet in Python."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

import altair as alt
import pytest

from tests.browser import open_sheet
from tests.reader import box, centre, drag_from, pick, rows, said, slider, thumb, type_in, unfold
from yarnsheets import units
from yarnsheets.page import choices
from yarnsheets.sheets import HowManyYards

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "how-many-yards")


# ---- the answer ------------------------------------------------------------------------------


def test_1200_yards_per_pound_and_8_oz_reads_600_and_moves_with_the_slider(sheet: Page) -> None:
    type_in(sheet, "grist", "1200")
    type_in(sheet, "weight", "8")
    assert "about 600\N{NO-BREAK SPACE}yd" in said(sheet)
    point = [t[0] for t in rows(sheet, "yards_against_weight", "yards")]
    assert {"weight": 8, "yards": 600}.items() <= min(
        point, key=lambda row: abs(row["weight"] - 8) + abs(row["yards"] - 600)
    ).items()

    slider(sheet, "grist").focus()
    for _ in range(5):
        sheet.keyboard.press("ArrowRight")
        grist = float(box(sheet, "grist").input_value())
        python = HowManyYards(grist=grist)
        assert said(sheet) == python.sentence
        lengths = [row["yards"] for t in rows(sheet, "yards_against_weight", "yards") for row in t]
        assert any(length == pytest.approx(python.yards, rel=1e-12) for length in lengths)
    assert grist == 1250


def test_two_ply_of_2400_singles_at_take_up_1_05_reads_1143(sheet: Page) -> None:
    for name, text in {"grist": "2400", "plies": "2", "take_up": "1.05"}.items():
        type_in(sheet, name, text)
    assert "1,143\N{NO-BREAK SPACE}yd/lb" in said(sheet)
    table = max(rows(sheet, "grist_against_plies", "plies"), key=len)
    assert table[1]["grist"] == pytest.approx(2400 / 2.1, rel=1e-12)


@pytest.mark.parametrize(
    ("measure", "grist_unit", "typed"),
    [
        ("yards, ounces", "yd/lb", {"grist": 963.5, "weight": 3.25, "project": 410}),
        ("yards, ounces", "worsted_count", {"grist": 12.5, "plies": 3, "weight": 14}),
        ("metres, grams", "m/100g", {"grist": 412, "plies": 2, "take_up": 1.035, "weight": 250}),
        ("metres, grams", "tex", {"grist": 118, "plies": 4, "take_up": 0.99, "project": 1350}),
        ("metres, grams", "metric_count", {"grist": 9.25, "weight": 62.5, "project": 240}),
        ("yards, ounces", "denier", {"grist": 4444, "weight": 20, "project": 2222}),
    ],
)
def test_typed_numbers_give_pythons_sentence_arithmetic_and_charts(
    sheet: Page, measure: str, grist_unit: str, typed: dict[str, float]
) -> None:
    chosen = next(m for m in choices.MEASURES if m.name == measure)
    shown = {**chosen.units, "grist": grist_unit}
    pick(sheet, measure, grist_unit)
    for name, value in typed.items():
        type_in(sheet, name, str(value))
    own = {}
    for name, value in typed.items():
        dimension = HowManyYards.inputs()[name].dimension
        own[name] = (
            units.convert(value, shown[dimension], choices.OWN_UNITS[dimension])
            if dimension in shown
            else value
        )
    python = HowManyYards(measure=measure, grist_unit=grist_unit, **own)
    assert said(sheet) == python.sentence

    unfold(sheet)
    assert sheet.locator(".ys-worked li").all_text_contents() == python.arithmetic

    tables = rows(sheet, "fibre_against_grist", "fibre")
    curve = max(tables, key=len)
    here = units.convert(python.weight_needed, "lb", shown["mass"])
    assert any(row["fibre"] == pytest.approx(here, rel=1e-9) for t in tables for row in t)
    for row in curve[:: len(curve) // 5]:
        grist = units.convert(row["grist"], grist_unit, "yd/lb")
        takes = python.project * python.plies * python.take_up_used / grist
        assert row["fibre"] == pytest.approx(units.convert(takes, "lb", shown["mass"]), rel=1e-9)


# ---- moving things -----------------------------------------------------------------------------


def test_dragging_a_slider_moves_sentence_box_and_charts(sheet: Page) -> None:
    before = box(sheet, "weight").input_value()
    drag_from(sheet, thumb(sheet, "weight"), 40)
    weight = float(box(sheet, "weight").input_value())
    assert weight > float(before)
    assert said(sheet) == HowManyYards(weight=weight / 16).sentence


@pytest.mark.parametrize(
    ("chart", "name"),
    [
        ("yards_against_weight", "weight"),
        ("fibre_against_grist", "grist"),
        ("grist_against_plies", "plies"),
    ],
)
def test_dragging_the_point_on_a_chart_moves_the_slider(sheet: Page, chart: str, name: str) -> None:
    grip = sheet.locator(f"figure[data-name={chart}] .ys-grip")
    grip.scroll_into_view_if_needed()
    before = float(box(sheet, name).input_value())
    stood = thumb(sheet, name)[0]
    x, y = centre(grip)
    sheet.mouse.move(x, y)
    sheet.mouse.down()
    sheet.mouse.move(x + 60, y, steps=6)
    value = float(box(sheet, name).input_value())
    assert value > before
    assert thumb(sheet, name)[0] > stood
    # the point keeps under the hand, to within half a step
    assert centre(grip)[0] == pytest.approx(x + 60, abs=30 if name == "plies" else 5)
    own = value / 16 if name == "weight" else value
    assert said(sheet) == HowManyYards(**{name: own}).sentence
    sheet.mouse.up()
    assert float(box(sheet, name).input_value()) == value


def test_a_chart_is_never_replaced_on_a_change(sheet: Page) -> None:
    sheet.evaluate("document.querySelectorAll('.ys-picture svg').forEach(s => s.mine = true)")
    drag_from(sheet, thumb(sheet, "grist"), 50)
    type_in(sheet, "plies", "3")
    kept = "[...document.querySelectorAll('.ys-picture svg')].map(s => s.mine === true)"
    assert sheet.evaluate(kept) == [True, True, True]


def test_keys_step_by_round_numbers_and_reach_the_ends(sheet: Page) -> None:
    slider(sheet, "project").focus()
    for key, text in [
        ("ArrowRight", "805"),
        ("ArrowDown", "800"),
        ("PageUp", "850"),
        ("Home", "5"),
        ("End", "20000"),
    ]:
        sheet.keyboard.press(key)
        assert box(sheet, "project").input_value() == text
    assert slider(sheet, "project").get_attribute("aria-valuetext") == "20,000 yd"


def test_the_page_goes_on_with_the_network_pulled(sheet: Page) -> None:
    sheet.context.set_offline(True)
    type_in(sheet, "weight", "4")
    pick(sheet, "metres, grams", "tex")
    python = HowManyYards(weight=4 / 16, measure="metres, grams", grist_unit="tex")
    assert said(sheet) == python.sentence
    sheet.context.set_offline(False)


def test_switching_units_there_and_back_loses_nothing(sheet: Page) -> None:
    type_in(sheet, "grist", "1234.5")
    names = list(HowManyYards.inputs())
    before = [box(sheet, name).input_value() for name in names]
    sentence = said(sheet)
    for grist in choices.GRIST_UNITS:
        pick(sheet, "metres, grams", grist.unit)
    pick(sheet, "yards, ounces", "yd/lb")
    assert [box(sheet, name).input_value() for name in names] == before
    assert said(sheet) == sentence


# ---- what is wrong -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "text", "message"),
    [
        ("grist", "12", "12\N{NO-BREAK SPACE}yd/lb is outside the range"),
        ("grist", "fine", "“fine” is not a number"),
        ("weight", "", "Type a number here"),
        ("take_up", "10%", "can mean two things"),
        ("plies", "99", "can be 1 to 8"),
        ("plies", "2.5", "2.5 is not a whole number"),
        ("weight", "3 ft", "“ft” is not a unit of this number"),
    ],
)
def test_bad_input_is_explained_and_nothing_typed_is_lost(
    sheet: Page, name: str, text: str, message: str
) -> None:
    if name == "take_up":
        type_in(sheet, "plies", "2")
    before = said(sheet)
    type_in(sheet, name, text)
    box(sheet, name).blur()
    assert message in sheet.locator(f"[data-name={name}] .ys-error").inner_text()
    assert box(sheet, name).input_value() == text
    assert said(sheet) == before
    assert "last good numbers" in sheet.locator(".ys-stale").inner_text()
    assert box(sheet, name).get_attribute("aria-invalid") == "true"
    slider(sheet, name).focus()
    sheet.keyboard.press("ArrowRight")
    assert sheet.locator(".ys-stale").is_hidden()


def test_half_a_number_is_never_an_answer(sheet: Page) -> None:
    before, link = said(sheet), sheet.url
    box(sheet, "weight").focus()
    box(sheet, "weight").select_text()
    for letter in "85 g":
        sheet.keyboard.type(letter)
        assert said(sheet) == before
        assert "press enter" in sheet.locator(".ys-stale").inner_text().lower()
    sheet.wait_for_timeout(400)  # longer than a hand rests
    assert said(sheet) == before
    assert sheet.url == link
    sheet.keyboard.press("Enter")
    assert sheet.locator(".ys-stale").is_hidden()
    # 85 g by the pound of 453.59237 g (NIST Special Publication 811, B.8)
    assert said(sheet) == HowManyYards(weight=85 / 453.59237).sentence
    assert float(box(sheet, "weight").input_value()) == pytest.approx(85 / 28.349523125, abs=5e-6)


def test_a_long_entry_neither_widens_the_page_nor_fills_it(sheet: Page) -> None:
    wide = sheet.evaluate("document.documentElement.scrollWidth")
    type_in(sheet, "weight", "m" * 3000)
    assert sheet.evaluate("document.documentElement.scrollWidth") == wide
    assert len(sheet.locator("[data-name=weight] .ys-error").inner_text()) < 200


def test_a_number_that_makes_no_difference_is_not_asked_for(sheet: Page) -> None:
    take_up = sheet.locator("[data-name=take_up]")
    assert take_up.is_hidden()
    type_in(sheet, "plies", "2")
    assert take_up.is_visible()


def test_grist_goes_with_the_other_units_unless_another_was_chosen(sheet: Page) -> None:
    measure, grist = (sheet.get_by_label(each, exact=True) for each in ("Length, weight", "Grist"))
    measure.select_option("metres, grams")
    assert "m/100 g" in said(sheet)
    grist.select_option("tex")
    measure.select_option("yards, ounces")
    assert "tex" in said(sheet)


def test_what_one_unit_refuses_another_may_take(sheet: Page) -> None:
    type_in(sheet, "grist", "12")
    pick(sheet, "yards, ounces", "worsted_count")
    assert box(sheet, "grist").input_value() == "12"
    assert sheet.locator("[data-name=grist] .ys-error").is_hidden()
    assert said(sheet) == HowManyYards(grist=12 * 560, grist_unit="worsted_count").sentence


# ---- the page itself ------------------------------------------------------------------------


def test_every_control_and_chart_has_a_name(sheet: Page) -> None:
    for name, described in HowManyYards.inputs().items():
        assert slider(sheet, name).get_attribute("aria-label") == described.title
        assert sheet.get_by_label(described.title, exact=True).count() == 2
    assert sheet.locator(".ys-frame").count() == 3
    for picture in sheet.locator(".ys-frame").all():
        assert picture.get_attribute("role") == "img"
        assert re.search(r"\d", picture.get_attribute("aria-label") or "")
    assert sheet.locator(".ys-sheet [title='null']").count() == 0


@pytest.mark.parametrize("width", [320, 360, 768, 1280, 1920])
def test_nothing_is_wider_than_the_screen(sheet: Page, width: int) -> None:
    sheet.set_viewport_size({"width": width, "height": 800})
    sheet.wait_for_function(
        """() => [...document.querySelectorAll('.ys-frame')].every(
            (f) => Math.abs(f.clientWidth - f.querySelector('svg').clientWidth) < 2)"""
    )
    assert sheet.evaluate("document.documentElement.scrollWidth") <= width


def test_the_chart_bundle_is_of_the_vega_lite_that_altair_writes_for(sheet: Page) -> None:
    sheet.wait_for_function("globalThis.yarnsheet_charts")
    version = sheet.evaluate("yarnsheet_charts.vegaLiteVersion")
    assert f"v{version}" == alt.SCHEMA_VERSION

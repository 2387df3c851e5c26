"""A grist given by a cut on the balance, or by yards of a known weight."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.browser import open_sheet
from tests.reader import box, pick, said, slider, type_in
from yarnsheets.sheets import HowManyYards

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page

    from tests.browser import Server


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    return open_sheet(page, server, "how-many-yards")


def have(page: Page, way: str) -> None:
    page.get_by_label("I have", exact=True).select_option(way)


def field(page: Page, title: str) -> Locator:
    return page.locator(".ys-way").get_by_label(title, exact=True)


def enter(page: Page, title: str, text: str) -> None:
    field(page, title).fill(text)
    field(page, title).press("Enter")


def test_a_cut_is_enough_and_no_sum_is_asked(sheet: Page) -> None:
    # common practice, no source: inches of a level cut times the balance's factor are yd/lb
    have(sheet, "a cut on the balance")
    enter(sheet, "It hangs level at", "8 3/8")
    assert box(sheet, "grist").input_value() == "837.5"
    assert said(sheet) == HowManyYards(grist=837.5).sentence
    enter(sheet, "Balance factor", "50")
    assert field(sheet, "It hangs level at").input_value() == "8.375"
    assert said(sheet) == HowManyYards(grist=418.75).sentence


def test_a_cut_in_centimetres_follows_the_units(sheet: Page) -> None:
    pick(sheet, "metres, grams", "m/100g")
    have(sheet, "a cut on the balance")
    enter(sheet, "It hangs level at", "21.2725")  # 8 3/8 in of 2.54 cm
    own = HowManyYards(grist=837.5, measure="metres, grams", grist_unit="m/100g")
    assert said(sheet) == own.sentence


def test_yards_of_a_known_weight_are_enough(sheet: Page) -> None:
    have(sheet, "a length and its weight")
    enter(sheet, "weighs", "2 oz")
    enter(sheet, "Length", "150")
    assert said(sheet) == HowManyYards(grist=150 * 16 / 2).sentence
    enter(sheet, "weighs", "3 oz")  # the length stays
    assert field(sheet, "Length").input_value() == "150"
    assert said(sheet) == HowManyYards(grist=150 * 16 / 3).sentence


def test_the_cut_follows_when_the_grist_is_moved(sheet: Page) -> None:
    have(sheet, "a cut on the balance")
    slider(sheet, "grist").focus()
    sheet.keyboard.press("ArrowRight")
    grist = float(box(sheet, "grist").input_value())
    assert grist != 1200
    assert float(field(sheet, "It hangs level at").input_value()) == pytest.approx(grist / 100)


def test_way_and_factor_are_kept_from_page_to_page(sheet: Page, server: Server) -> None:
    have(sheet, "a cut on the balance")
    enter(sheet, "Balance factor", "80")
    open_sheet(sheet, server, "is-this-enough")
    assert field(sheet, "Balance factor").input_value() == "80"
    grist = float(box(sheet, "grist").input_value())
    assert float(field(sheet, "It hangs level at").input_value()) == pytest.approx(grist / 80)


def test_a_cut_that_no_yarn_has_is_refused_and_stays(sheet: Page) -> None:
    before = said(sheet)
    have(sheet, "a cut on the balance")
    enter(sheet, "It hangs level at", "0.5")
    assert "50 yd/lb is outside the range" in (
        sheet.locator("[data-name=grist] .ys-error").inner_text().replace("\xa0", " ")
    )
    assert field(sheet, "It hangs level at").input_value() == "0.5"
    assert said(sheet) == before


def test_a_sheet_that_asks_for_the_factor_asks_once(page: Page, server: Server) -> None:
    sheet = open_sheet(page, server, "which-singles-make-this-yarn")
    have(sheet, "a cut on the balance")
    assert field(sheet, "Balance factor").is_hidden()
    enter(sheet, "It hangs level at", "9 1/2")
    assert box(sheet, "grist_wanted").input_value() == "950"
    type_in(sheet, "balance_factor", "50")  # the grist stays, and its cut follows
    assert box(sheet, "grist_wanted").input_value() == "950"
    assert field(sheet, "It hangs level at").input_value() == "19"

"""What a reader takes along: ways on to other worksheets, a link that reopens, a file, paper."""

from __future__ import annotations

import csv
import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
import traitlets

from tests.browser import open_sheet
from tests.reader import box, pick, said, type_in
from tests.test_contract import trials
from yarnsheets import sheets
from yarnsheets.page.inputs import Input, Pairs, Readings
from yarnsheets.page.sheet import name_of
from yarnsheets.sheets import HowManyYards, HowSureIsTheGrist, WhatDoesThisSpinTake

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server
    from yarnsheets.page.onward import Onward
    from yarnsheets.page.sheet import Sheet

ALL = {name_of(sheet): sheet for sheet in (getattr(sheets, name) for name in sheets.__all__)}
EVERY_WAY = [(here, way) for here in ALL.values() for way in here.onward]
# two lists of readings of any kind, and numbers that are drawn: no other worksheet has them
APART = {"can-i-work-it-out", "do-two-methods-agree"}

each_way = pytest.mark.parametrize(
    ("here", "way"),
    EVERY_WAY,
    ids=lambda part: getattr(part, "worksheet", getattr(part, "__name__", "")),
)


# ---- ways on -------------------------------------------------------------------------------------


@each_way
def test_a_way_on_carries_what_is_there_and_of_the_same_kind(
    here: type[Sheet], way: Onward
) -> None:
    there = ALL[way.worksheet]
    assert there is not here
    assert way.carries
    for asked, name in way.carries.items():
        takes = there.inputs()[asked]
        if name:
            known = {**here.inputs(), **here.finds()}[name]
            assert isinstance(takes, Input | Readings)  # one number is a list of one
            assert takes.dimension == known.dimension
        else:
            assert isinstance(takes, Readings | Pairs)


def carried(here: Sheet, way: Onward) -> dict[str, Any]:
    """Give what the next worksheet is opened with; what has no number is left as it is there."""
    there = ALL[way.worksheet].inputs()
    known = here.all_known() | {"": []}
    given = {asked: known[name] for asked, name in way.carries.items()}
    return {
        asked: [value] if isinstance(there[asked], Readings) and value != [] else value
        for asked, value in given.items()
        if value == [] or math.isfinite(value)
    }


@each_way
def test_the_example_goes_on_to_an_answer(here: type[Sheet], way: Onward) -> None:
    given = carried(here(), way)
    assert given.keys() == way.carries.keys()
    assert not ALL[way.worksheet](**given).warnings


@each_way
def test_what_does_not_fit_there_is_refused_in_words(here: type[Sheet], way: Onward) -> None:
    there = ALL[way.worksheet]
    for trial in trials(here)[:100]:
        for asked, value in carried(here(**trial["values"]), way).items():
            try:
                there(**{asked: value})
            except traitlets.TraitError as refusal:
                title = there.inputs()[asked].title
                assert f"is outside the range. {title} can be" in str(refusal)  # noqa: PT017


@pytest.mark.parametrize("worksheet", sorted(ALL.keys() - APART))
def test_every_worksheet_leads_on_and_is_led_to(worksheet: str) -> None:
    assert ALL[worksheet].onward
    assert worksheet in {way.worksheet for _, way in EVERY_WAY}


def test_a_link_opens_the_next_worksheet_with_these_numbers(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-many-yards")
    type_in(page, "weight", "6.5")
    pick(page, "metres, grams", "tex")
    page.get_by_role("link", name="How sure is the grist?").click()
    page.wait_for_url("**/how-sure-is-the-grist.ipynb#**")
    page.wait_for_selector(".ys-sheet .ys-sentence")
    there = HowSureIsTheGrist(weight=6.5 / 16, measure="metres, grams", grist_unit="tex")
    assert said(page) == there.sentence
    assert box(page, "weight").input_value() == "184.272"  # 6.5 oz, NIST Handbook 44


def test_a_link_carries_nothing_that_is_hidden(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-does-this-spin-take")
    way = page.get_by_role("link", name="Which singles make this yarn?")
    assert "take_up=" in str(way.get_attribute("href"))
    type_in(page, "plies", "1")  # nothing is plied, and no take-up asked for
    way.hover()
    assert "take_up=" not in str(way.get_attribute("href"))


# ---- a link that reopens -------------------------------------------------------------------------


def test_the_address_reopens_the_page_with_all_inputs(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-sure-is-the-grist")
    type_in(page, "cuts", "12\n12 1/2\n11.8")
    type_in(page, "weight", "3")
    python = HowSureIsTheGrist(cuts=[12, 12.5, 11.8], weight=3 / 16)
    assert said(page) == python.sentence
    page.wait_for_url("**#*weight=0.1875*")
    page.reload()
    page.wait_for_selector(".ys-sheet .ys-sentence")
    assert said(page) == python.sentence
    lines = page.locator("[data-name=cuts] textarea").input_value()
    assert lines.split("\n") == ["12", "12.5", "11.8"]
    page.get_by_role("button", name="Copy a link").click()
    assert page.get_by_label("Link to these numbers").input_value() == page.url


def test_what_a_link_gives_out_of_range_is_told_and_kept(page: Page, server: Server) -> None:
    address = f"{server.address}voila/render/how-many-yards.ipynb#"
    page.goto(f"{address}weight=1&grist=5&plies=2&nonsense=1&take_up=x&measure=leagues")
    page.wait_for_selector(".ys-sheet .ys-sentence")
    assert said(page) == HowManyYards(weight=1, plies=2).sentence
    assert box(page, "grist").input_value() == "5"
    told = page.locator("[data-name=grist] .ys-error").inner_text()
    assert "5\N{NO-BREAK SPACE}yd/lb is outside the range" in told
    assert "2.5 is not a whole number" not in page.locator(".ys-inputs").inner_text()
    page.evaluate("location.hash = 'grist=1500&plies=2.5'")
    page.get_by_text("2.5 is not a whole number").wait_for()
    assert said(page) == HowManyYards(grist=1500, weight=1, plies=2).sentence
    page.evaluate("location.hash = 'grist=1500&plies=2'")  # a link pasted over the one that is open
    wanted = HowManyYards(grist=1500, weight=1, plies=2).sentence
    page.wait_for_function(
        "(said) => document.querySelector('.ys-sentence').textContent === said", arg=wanted
    )


# ---- a file, and paper ---------------------------------------------------------------------------


def saved(page: Page) -> tuple[str, dict[str, tuple[str, str, str]]]:
    """Save the file; give its name, and its rows by what they are."""
    with page.expect_download() as download:
        page.get_by_role("button", name="CSV").click()
    text = Path(download.value.path()).read_text("utf-8-sig")
    rows = csv.reader(text.splitlines(keepends=True), strict=True)
    return download.value.suggested_filename, {what: (part, *rest) for part, what, *rest in rows}


def test_the_file_holds_every_number_as_the_page_shows_it(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-many-yards")
    pick(page, "metres, grams", "m/100g")
    name, rows = saved(page)
    assert name == "how-many-yards.csv"
    # 600 yd and 800 yd of 0.9144 m, half a pound of 453.59237 g (NIST Handbook 44)
    assert rows["Weight of yarn or fibre"] == ("asked", "226.796185", "g")
    assert rows["Yarn the project takes"] == ("asked", "731.52", "m")
    assert rows["length of the yarn that the weight makes"] == ("found", "548.64", "m")
    assert rows[said(page)] == ("answer", "", "")
    for found in HowManyYards.finds().values():
        assert (found.help in rows) == (found.dimension != "flag")


def test_the_reader_s_own_words_are_no_formula_in_a_spreadsheet(page: Page, server: Server) -> None:
    # RFC 4180, section 2, rules 6 and 7: a cell with a comma or a quotation mark is quoted
    open_sheet(page, server, "what-does-this-spin-take")
    type_in(page, "currency", '=1,"2"')
    _, rows = saved(page)
    assert rows[WhatDoesThisSpinTake.currency.title] == ("asked", '\'=1,"2"', "")

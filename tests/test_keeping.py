"""What a reader takes along: ways on, a link that reopens, a file, a printed page."""

from __future__ import annotations

import ast
import csv
import json
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.browser import open_sheet
from tests.test_page import box, call, pick, said, settled
from yarnsheets import sheets
from yarnsheets.serve.worksheets import worksheets_in
from yarnsheets.sheets import HowManyYards, HowSureIsTheGrist
from yarnsheets.sheets.onward import QUESTIONS, WAYS, Onward
from yarnsheets.sheets.sheet import Sheet

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

WORKSHEETS = Path(__file__).parents[1] / "worksheets"


def sheet_of(worksheet: str) -> type[Sheet]:
    """Give the sheet that a worksheet shows."""
    book = json.loads((WORKSHEETS / f"{worksheet}.ipynb").read_text("utf-8"))
    code = "".join("".join(cell["source"]) for cell in book["cells"] if cell["cell_type"] == "code")
    imports = [node for node in ast.walk(ast.parse(code)) if isinstance(node, ast.ImportFrom)]
    (name,) = [name.name for node in imports for name in node.names]
    found = getattr(sheets, name)
    assert issubclass(found, Sheet)
    return found


ALL = {path.stem: sheet_of(path.stem) for path in sorted(WORKSHEETS.glob("*.ipynb"))}
WAYS_FROM = {name: WAYS.get(sheet.__name__, ()) for name, sheet in ALL.items()}
EVERY_WAY = [(here, way) for here, ways in WAYS_FROM.items() for way in ways]
# two lists of readings of any kind: no other worksheet asks or knows them
APART = {"do-two-methods-agree"}


# ---- ways on -------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("here", "way"), EVERY_WAY, ids=lambda part: getattr(part, "worksheet", part)
)
def test_a_way_on_carries_what_is_there_and_of_the_same_kind(here: str, way: Onward) -> None:
    there = ALL[way.worksheet].inputs()
    known = {**ALL[here].inputs(), **ALL[here].numbers(), **ALL[here].results()}
    assert way.worksheet != here
    assert way.carries
    assert all(there[asked].kind == "readings" for asked, name in way.carries.items() if not name)
    for asked, name in way.carries.items():
        if not name:
            continue
        assert there[asked].kind in {"number", "readings"}  # one number is a list of one
        assert there[asked].dimension == known[name].dimension


@pytest.mark.parametrize("worksheet", sorted(ALL.keys() - APART))
def test_every_worksheet_leads_on_and_is_led_to(worksheet: str) -> None:
    assert WAYS_FROM[worksheet]
    assert worksheet in {way.worksheet for _, way in EVERY_WAY}


def test_every_way_starts_at_a_worksheet() -> None:
    assert WAYS.keys() == {ALL[name].__name__ for name in ALL.keys() - APART}


def test_the_questions_are_the_titles_of_the_worksheets() -> None:
    folder = {worksheet.file: worksheet.title for worksheet in worksheets_in(WORKSHEETS)}
    assert {f"{name}.ipynb": question for name, question in QUESTIONS.items()} == folder


def test_a_link_opens_the_next_worksheet_with_these_numbers(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-many-yards")
    box(page, "weight").fill("6.5")
    pick(page, "metres, grams", "tex")
    page.get_by_role("link", name="How sure is the grist?").click()
    page.wait_for_url("**/how-sure-is-the-grist.ipynb#**")
    page.wait_for_function("document.querySelector('.ys-sentence')?.textContent")
    there = HowSureIsTheGrist(weight=6.5 / 16, measure="metres, grams", grist_unit="tex")
    page.wait_for_function(
        "(said) => document.querySelector('.ys-sentence').textContent === said", arg=there.sentence
    )
    assert box(page, "weight").input_value() == "184.272"  # 6.5 oz, NIST Handbook 44


# ---- a link that reopens -------------------------------------------------------------------------


def test_the_address_reopens_the_page_with_all_inputs(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-sure-is-the-grist")
    page.locator("[data-name=cuts] textarea").fill("12\n12 1/2\n11.8")
    box(page, "weight").fill("3")
    python = HowSureIsTheGrist(cuts=[12, 12.5, 11.8], weight=3 / 16)
    assert settled(page) == python.sentence
    page.wait_for_url("**#*weight=0.1875*")
    page.reload()
    page.wait_for_function("document.querySelector('.ys-sentence')?.textContent")
    page.wait_for_function(
        "(said) => document.querySelector('.ys-sentence').textContent === said",
        arg=python.sentence,
    )
    lines = page.locator("[data-name=cuts] textarea").input_value()
    assert lines.split("\n") == ["12", "12.5", "11.8"]
    page.get_by_role("button", name="Copy a link").click()
    assert page.get_by_label("Link to these numbers").input_value() == page.url


def test_what_a_link_gives_out_of_range_is_told_and_kept(page: Page, server: Server) -> None:
    address = f"{server.address}voila/render/how-many-yards.ipynb#"
    page.goto(f"{address}weight=1&grist=5&plies=2&nonsense=1&take_up=x&measure=leagues")
    page.wait_for_function("document.querySelector('.ys-sentence')?.textContent")
    assert said(page) == HowManyYards(weight=1, plies=2).sentence
    assert box(page, "grist").input_value() == "5"
    told = page.locator("[data-name=grist] .ys-error").inner_text()
    assert "5\N{NO-BREAK SPACE}yd/lb is outside the range" in told
    page.evaluate("location.hash = 'grist=1500'")  # a link pasted over the one that is open
    page.wait_for_function(
        "(said) => document.querySelector('.ys-sentence').textContent === said",
        arg=HowManyYards(grist=1500, weight=1, plies=2).sentence,
    )


# ---- a file, and paper ---------------------------------------------------------------------------


def test_the_file_holds_every_number_as_the_page_shows_it(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-many-yards")
    pick(page, "metres, grams", "m/100g")
    with page.expect_download() as download:
        page.get_by_role("button", name="CSV").click()
    assert download.value.suggested_filename == "how-many-yards.csv"
    text = Path(download.value.path()).read_text("utf-8-sig")
    rows = {what: (part, value, unit) for part, what, value, unit in csv.reader(text.splitlines())}
    # 600 yd and 800 yd of 0.9144 m, half a pound of 453.59237 g (NIST Handbook 44)
    assert rows["Weight of yarn or fibre"] == ("asked", "226.796185", "g")
    assert rows["Yarn the project takes"] == ("asked", "731.52", "m")
    assert rows["length of the yarn that the weight makes"] == ("found", "548.64", "m")
    assert rows[said(page)] == ("answer", "", "")
    for number in HowManyYards.numbers().values():
        assert (number.help in rows) == (number.dimension != "flag")


def test_a_page_prints_on_one_sheet_of_paper(page: Page, server: Server) -> None:
    open_sheet(page, server, "how-many-yards")
    printed = page.pdf(format="A4")
    assert printed.count(b"/Type /Page\n") == 1


@pytest.mark.parametrize(
    ("rows", "text"),
    [
        ([["a", 1.5]], "a,1.5\r\n"),
        ([['say "so"', "x,y"]], '"say ""so""","x,y"\r\n'),  # RFC 4180, section 2, rule 7
        ([["=1+1", "-2"]], "'=1+1,'-2\r\n"),
    ],
)
def test_rows_are_written_as_comma_separated_values(
    page: Page, rows: list[list[object]], text: str
) -> None:
    assert call(page, "writeRows", rows) == text

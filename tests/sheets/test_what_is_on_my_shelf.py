"""The shelf: its yards, the choice for a project, and the table that is typed into.

hand-worked  sums and chances in round numbers; 1 oz is 28.349523125 g (NIST Handbook 44).
scipy        the chance that what was chosen is enough.
openpyxl, csv  files that the page opens, and those it writes.
Each skein's own yards are held to the worksheets on each measurement in tests/shelf.
"""

from __future__ import annotations

import csv
import math
import re
from typing import TYPE_CHECKING, Any

import pandas as pd
import pytest
from hypothesis import given
from scipy import stats

from tests.browser import open_sheet
from tests.drawn import any_inputs, few
from tests.reader import pick, said, type_in
from tests.sheets.test_any_input import faults_of_words
from yarnsheets import shelf
from yarnsheets.page.text import fill
from yarnsheets.sheets import WhatIsOnMyShelf
from yarnsheets.shelf.invented import SHELF

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Locator, Page

    from tests.browser import Server

OZ = 1 / 16


# ---- the sheet -----------------------------------------------------------------------------------


def test_all_skeins_together_err_the_same_way() -> None:
    # hand-worked: two lengths, each 2 % either way, come to a sum that is 2 % either way
    sheet = WhatIsOnMyShelf(skeins=[{"length": 100}, {"length": 200}])
    assert sheet.total == 300
    assert [sheet.total_low, sheet.total_high] == pytest.approx(
        [300 * math.exp(-0.02), 300 * math.exp(0.02)]
    )


def test_the_chance_is_that_of_the_skeins_chosen() -> None:
    sheet = WhatIsOnMyShelf()
    assert sheet.chosen_names == "Marsh 1, Marsh 2 and Marsh 3"
    chosen = [row for row in sheet.reckoned if row["role"] == "chosen"]
    yards = sum(row["yards"] for row in chosen)
    doubt = sum(math.log(row["high"] / row["yards"]) * row["yards"] for row in chosen) / yards
    z = math.log(yards / 600) / (math.hypot(doubt, 0.1) / stats.norm.ppf(0.975))
    assert sheet.chance == pytest.approx(stats.norm.cdf(z))
    assert sheet.left == pytest.approx(yards - 600)


def test_the_sheet_says_what_pandas_says() -> None:
    sheet = WhatIsOnMyShelf()
    found = shelf.choose(shelf.reckon(shelf.demo()), 600).skeins
    for row, theirs in zip(sheet.reckoned, found.itertuples(), strict=True):
        for name in ("yards", "low", "high"):
            assert row[name] == pytest.approx(getattr(theirs, name), nan_ok=True)
        assert (row["evidence"], row["lacking"]) == (theirs.evidence, theirs.lacking)
        assert row["role"] == theirs.for_project


def test_what_is_missing_is_said() -> None:
    sheet = WhatIsOnMyShelf(project=1200)
    assert "No choice will do for 1,200\N{NO-BREAK SPACE}yd: spin 525\N{NO-BREAK SPACE}yd more" in (
        sheet.sentence
    )
    assert [row["skein"] for row in sheet.stack] == ["Marsh 1", "Marsh 2", "Marsh 3", "Marsh 4"]


@pytest.mark.parametrize(
    ("skeins", "words"),
    [
        ([], "The shelf is empty"),
        ([{"name": "x"}], "No skein has yards yet"),
        ([{"length": 700}], "weigh them: only skeins of like grist go together"),
        ([{"length": 700, "weight": 0.6}], "take row 1: 700"),
        ([{"length": 700, "weight": 0.6}, {"wraps": 9}], "1 skein has no yards yet"),
        ([{"wraps": 9}, {}, {"length": 700, "weight": 0.6}], "2 skeins have no yards yet"),
    ],
)
def test_what_a_shelf_lacks_is_said(skeins: list[dict[str, Any]], words: str) -> None:
    assert words in WhatIsOnMyShelf(skeins=skeins).sentence


def test_what_is_no_yarn_is_not_counted() -> None:
    # 2,000 yd of 1/4 oz is 128,000 yd/lb; 20 yd of a pound is a rope
    sheet = WhatIsOnMyShelf(
        skeins=[{"length": 2000, "weight": OZ / 4}, {"length": 20, "weight": 1}, {"length": 50}]
    )
    assert sheet.total == 50
    assert [row["lacking"][:11] for row in sheet.reckoned] == ["not counted", "not counted", ""]


@few
@given(inputs=any_inputs(WhatIsOnMyShelf))
def test_what_stands_beside_any_row_is_sound(inputs: dict[str, Any]) -> None:
    sheet = WhatIsOnMyShelf(**inputs)
    if sheet.warnings:
        return
    beside = WhatIsOnMyShelf.inputs()["skeins"].beside
    assert len(sheet.reckoned) == len(sheet.skeins)
    for row in sheet.reckoned:
        for lines in beside.columns.values():
            for when, text in lines:
                if when is None or row[when]:
                    words = fill(text, row, beside.dimensions, sheet.units_shown())
                    assert not list(faults_of_words(words)), words
        if row["is_reckoned"]:
            assert row["low"] <= row["yards"] <= row["high"]
        else:
            assert row["lacking"]


# ---- the table on the page -----------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    return open_sheet(page, server, "what-is-on-my-shelf")


def cell(page: Page, row: int, title: str) -> Locator:
    return page.get_by_label(f"Row {row}, {title}", exact=True)


def told(page: Page, row: int, title: str) -> str:
    row_of = page.locator(f".ys-cells tbody tr:nth-child({row})")
    return str(row_of.locator(f"[data-told='{title}']").inner_text())


def type_cell(page: Page, row: int, title: str, text: str) -> None:
    cell(page, row, title).fill(text)
    cell(page, row, title).press("Enter")


def test_the_page_says_what_python_says(sheet: Page) -> None:
    python = WhatIsOnMyShelf()
    assert said(sheet) == python.sentence
    assert told(sheet, 1, "Holds") == "285\N{NO-BREAK SPACE}yd"
    assert told(sheet, 4, "Known by") == "wraps"
    assert told(sheet, 9, "Known by") == "no measure: give its wraps, a cut, or its length"
    assert told(sheet, 5, "For the project") == "another colour"
    bars = sheet.locator("figure[data-name=for_the_project] .mark-rect path")
    bars.first.wait_for(state="attached")
    assert bars.count() == 3


def test_a_cell_is_read_as_typed(sheet: Page) -> None:
    type_cell(sheet, 9, "length", "100 m")
    assert cell(sheet, 9, "length").input_value() == "109.361"  # 100 / 0.9144, by hand
    changed = [dict(row) for row in SHELF]
    changed[8]["length"] = 100 / 0.9144
    assert said(sheet) == WhatIsOnMyShelf(skeins=changed).sentence
    type_cell(sheet, 9, "weight", "88,5 g")
    assert cell(sheet, 9, "weight").input_value() == "3.12175"  # 88.5 / 28.349523125


def test_a_bad_cell_is_named_and_the_good_rows_still_count(sheet: Page) -> None:
    type_cell(sheet, 2, "weight", "heavy")
    error = sheet.locator("[data-name=skeins] .ys-error").inner_text()
    assert error.startswith("Row 2, weight: “heavy” is not a number")
    assert "Weight can be" in error
    assert cell(sheet, 2, "weight").input_value() == "heavy"  # nothing typed is lost
    assert cell(sheet, 2, "weight").get_attribute("aria-invalid") == "true"
    assert told(sheet, 1, "Holds") == "285\N{NO-BREAK SPACE}yd"
    assert told(sheet, 2, "Known by") == "no weight: weigh it, and its cuts give yards"
    type_cell(sheet, 2, "weight", "3.8")
    assert sheet.locator("[data-name=skeins] .ys-error").is_hidden()
    assert said(sheet) == WhatIsOnMyShelf().sentence


def test_the_keys_lead_as_in_any_table(sheet: Page) -> None:
    def at() -> str:
        return str(sheet.evaluate("document.activeElement.getAttribute('aria-label')"))

    cell(sheet, 1, "name").focus()
    for key, place in (
        ("ArrowDown", "Row 2, name"),
        ("ArrowRight", "Row 2, fibre"),
        ("Tab", "Row 2, colour"),
        ("Enter", "Row 3, colour"),
        ("ArrowUp", "Row 2, colour"),
        ("Shift+Enter", "Row 1, colour"),
        ("ArrowLeft", "Row 1, fibre"),
        ("Shift+Tab", "Row 1, name"),
        ("ArrowUp", "Row 1, name"),
    ):
        sheet.keyboard.press(key)
        assert at() == place
    # inside what is typed, left and right move as in any box
    sheet.keyboard.type("ab")
    sheet.keyboard.press("ArrowLeft")
    assert at() == "Row 1, name"


def test_a_new_row_stands_ready(sheet: Page) -> None:
    type_cell(sheet, 10, "name", "Dale")
    type_cell(sheet, 10, "length", "120")
    assert told(sheet, 10, "Holds") == "120\N{NO-BREAK SPACE}yd"
    assert cell(sheet, 11, "name").is_visible()
    cell(sheet, 10, "length").focus()
    sheet.get_by_role("button", name="Remove this row").click()
    assert cell(sheet, 10, "name").input_value() == ""
    assert said(sheet) == WhatIsOnMyShelf().sentence


def test_units_change_what_is_shown_and_not_what_is_there(sheet: Page) -> None:
    pick(sheet, "metres, grams", "m/100g")
    assert cell(sheet, 1, "weight").input_value() == "116.233"  # 4.1 x 28.349523125
    assert told(sheet, 1, "Holds") == "260.6\N{NO-BREAK SPACE}m"  # 285 x 0.9144
    pick(sheet, "yards, ounces", "yd/lb")
    assert cell(sheet, 1, "weight").input_value() == "4.1"
    assert said(sheet) == WhatIsOnMyShelf().sentence


MESSY = (
    "\ufeffLabel;Fiber;Color;Weight (g);WPI;Yards;Shop\r\n"
    "Marsh 1;wool;grey;115;16;280;fair\r\n"
    "Marsh 2;wool;grey;3,8 oz;16;260;\r\n"
    "Marsh 3;wool;grey;62,4;17;155;\r\n"
    "Marsh 4;wool;grey;heavy;16;;\r\n"
    "=cmd;silk;;45,5;24;;\r\n"
)


def put(page: Page, path: Path, text: str) -> None:
    path.write_text(text, "utf-8")
    page.locator(".ys-sheet input[type=file]").set_input_files(path)
    page.wait_for_selector(".ys-bring:not([hidden])")


def test_a_messy_file_gives_yards_and_a_choice_in_a_few_clicks(sheet: Page, tmp_path: Path) -> None:
    put(sheet, tmp_path / "stash.csv", MESSY)  # the first click
    offered = sheet.locator(".ys-bring").inner_text()
    assert "5 rows" in offered
    assert sheet.get_by_label("What is Weight (g)?").input_value() == "3"
    assert (
        sheet.locator(".ys-meant tr", has_text="Weight (g)").locator("td").last.inner_text() == "g"
    )
    assert sheet.get_by_label("What is Shop?").input_value() == "-1"
    sheet.get_by_role("button", name="Put them in place of these").click()  # the second
    error = sheet.locator("[data-name=skeins] .ys-error").inner_text()
    assert error.startswith("Row 4, weight: “heavy” is not a number")
    g = 1 / 453.59237
    python = WhatIsOnMyShelf(
        skeins=[
            {
                "name": "Marsh 1",
                "fibre": "wool",
                "colour": "grey",
                "weight": 115 * g,
                "wraps": 16,
                "length": 280,
            },
            {
                "name": "Marsh 2",
                "fibre": "wool",
                "colour": "grey",
                "weight": 3.8 * OZ,
                "wraps": 16,
                "length": 260,
            },
            {
                "name": "Marsh 3",
                "fibre": "wool",
                "colour": "grey",
                "weight": 62.4 * g,
                "wraps": 17,
                "length": 155,
            },
            {"name": "Marsh 4", "fibre": "wool", "colour": "grey", "wraps": 16},
            {"name": "=cmd", "fibre": "silk", "weight": 45.5 * g, "wraps": 24},
        ]
    )
    assert said(sheet) == python.sentence
    assert "take Marsh 1, Marsh 2 and Marsh 3" in said(sheet)
    with sheet.expect_download() as saved:
        sheet.get_by_role("button", name="Save the table (CSV)").click()
    with open(saved.value.path(), encoding="utf-8-sig", newline="") as file:  # noqa: PTH123
        table = list(csv.DictReader(file))
    assert table[4]["Name"] == "'=cmd"
    assert table[0]["Holds"] == "280\N{NO-BREAK SPACE}yd"
    assert table[3]["Weight (oz)"] == "heavy"
    # and Python reads what the page wrote
    again = shelf.read(saved.value.path().rename(tmp_path / "again.csv"))
    assert again.skeins.length[1] == 260
    assert again.skeins.weight[0] == pytest.approx(115 * g, rel=1e-5)


SHEET = [
    ["Name", "Fibre", "Weight (g)", "WPI", None, "Length"],
    ["Möwe & Co", "wool", 115.1, 16, None, "280 yd"],
    [None, None, None, None, None, None],
    ["Dale", "silk", "3,8 oz", None, None, 4.1 * 10],
]


TITLES = ("name", "fibre", "weight", "wraps", "length")


@pytest.mark.parametrize("ending", ["xlsx", "ods"])
def test_a_spreadsheet_is_opened_by_the_browser_alone(
    sheet: Page, tmp_path: Path, ending: str
) -> None:
    file = tmp_path / f"stash.{ending}"
    pd.DataFrame(SHEET).to_excel(file, index=False, header=False)
    sheet.locator(".ys-sheet input[type=file]").set_input_files(file)
    sheet.get_by_role("button", name="Put them in place of these").click()
    values = [[cell(sheet, row, title).input_value() for title in TITLES] for row in (1, 2)]
    assert values == [
        ["Möwe & Co", "wool", "4.06003", "16", "280"],  # 115.1 / 28.349523125
        ["Dale", "silk", "3.8", "", "41"],
    ]
    assert not cell(sheet, 4, "name").count()


def test_texts_of_a_spreadsheet_made_cell_by_cell_are_read(sheet: Page, tmp_path: Path) -> None:
    file = tmp_path / "stash.xlsx"
    shelf.write(shelf.demo(), file)  # its texts are written in place, by openpyxl
    sheet.locator(".ys-sheet input[type=file]").set_input_files(file)
    sheet.get_by_role("button", name="Put them in place of these").click()
    assert said(sheet) == WhatIsOnMyShelf().sentence


def test_what_is_no_spreadsheet_is_refused(sheet: Page, tmp_path: Path) -> None:
    file = tmp_path / "stash.xlsx"
    file.write_bytes(b"PK" + bytes(range(256)) * 9)
    sheet.locator(".ys-sheet input[type=file]").set_input_files(file)
    sheet.wait_for_selector(".ys-bring:not([hidden])")
    assert "cannot be read" in sheet.locator(".ys-bring").inner_text()
    assert said(sheet) == WhatIsOnMyShelf().sentence


def paste(page: Page, row: int, title: str, text: str) -> None:
    cell(page, row, title).focus()
    page.evaluate(
        """(text) => {
            const clipboardData = new DataTransfer();
            clipboardData.setData("text/plain", text);
            const event = new ClipboardEvent("paste",
                { clipboardData, bubbles: true, cancelable: true });
            document.activeElement.dispatchEvent(event);
        }""",
        text,
    )


def test_cells_are_pasted_from_where_the_reader_is(sheet: Page) -> None:
    paste(sheet, 9, "weight", "2 oz\t18\t130\nx\t20\t90\n")
    assert cell(sheet, 9, "wraps").input_value() == "18"
    assert cell(sheet, 10, "length").input_value() == "90"
    assert "Row 10, weight: “x”" in sheet.locator("[data-name=skeins] .ys-error").inner_text()


def test_pasted_rows_with_headings_are_shown_first(sheet: Page) -> None:
    paste(sheet, 1, "name", "Length\tName\n120\tDale\n")
    sheet.get_by_role("button", name="Add them below").click()
    assert cell(sheet, 10, "name").input_value() == "Dale"
    assert told(sheet, 10, "Holds") == "120\N{NO-BREAK SPACE}yd"
    paste(sheet, 1, "name", "Name\tHow much\nDale 2\t75 m\n")
    sheet.get_by_label("What is How much?").select_option("Length")
    sheet.get_by_role("button", name="Put them in place of these").click()
    assert told(sheet, 1, "Holds") == "82.02\N{NO-BREAK SPACE}yd"  # 75 / 0.9144
    assert cell(sheet, 3, "name").count() == 0


def test_too_many_rows_are_not_taken(sheet: Page, tmp_path: Path) -> None:
    put(sheet, tmp_path / "many.csv", "Name,Length\n" + "Dale,120\n" * 101)
    sheet.get_by_role("button", name="Put them in place of these").click()
    assert "100 rows are the most here" in sheet.locator(".ys-bring").inner_text()
    assert said(sheet) == WhatIsOnMyShelf().sentence
    sheet.get_by_role("button", name="Leave it").click()
    assert sheet.locator(".ys-bring").is_hidden()


def test_an_older_spreadsheets_file_and_an_empty_one(sheet: Page, tmp_path: Path) -> None:
    file = tmp_path / "old.csv"
    file.write_bytes("Name;Länge;Yards\nMöwe;;120\n".encode("cp1252"))
    sheet.locator(".ys-sheet input[type=file]").set_input_files(file)
    sheet.get_by_role("button", name="Put them in place of these").click()
    assert cell(sheet, 1, "name").input_value() == "Möwe"
    put(sheet, tmp_path / "empty.csv", "")
    assert "There is nothing in it" in sheet.locator(".ys-bring").inner_text()


def test_a_link_holds_the_table(sheet: Page) -> None:
    type_cell(sheet, 9, "length", "100")
    sheet.wait_for_function("location.hash.includes('Oddment')")
    address = sheet.url
    answer = said(sheet)
    sheet.goto("about:blank")
    sheet.goto(address)
    sheet.wait_for_selector(".ys-cells")
    assert said(sheet) == answer
    assert cell(sheet, 9, "length").input_value() == "100"


def test_the_table_empties(sheet: Page) -> None:
    sheet.get_by_role("button", name="Empty the table").click()
    assert "The shelf is empty" in said(sheet)
    type_cell(sheet, 1, "length", "700")
    type_cell(sheet, 1, "weight", "9.6")
    assert said(sheet) == WhatIsOnMyShelf(skeins=[{"length": 700, "weight": 0.6}]).sentence
    type_in(sheet, "project", "800")
    assert re.search(r"No choice will do for 800", said(sheet))

"""A table that the reader fills: how text falls into cells, what headings mean, what cells hold.

csv          Python's own reader of RFC 4180, as the witness of quoted cells.
hand-worked  cells as people write them.
"""

from __future__ import annotations

import csv
import io
import json
from typing import TYPE_CHECKING, Any

import pytest
import traitlets
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.javascript import compiled, in_javascript
from yarnsheets.page import choices
from yarnsheets.page.rows import has_headings, match_column, read_cell, read_table, write_cell
from yarnsheets.sheets import WhatIsOnMyShelf
from yarnsheets.shelf.columns import COLUMNS

if TYPE_CHECKING:
    from yarnsheets.page.text import Shown

OUNCES = choices.shown(choices.MEASURES[0], choices.GRIST_UNITS[0])
GRAMS = choices.shown(choices.MEASURES[1], choices.GRIST_UNITS[2])
DESCRIBED = json.loads(json.dumps(WhatIsOnMyShelf.inputs()["skeins"].describe()))
BY_NAME = {each["name"]: each for each in DESCRIBED["columns"]}
NAMES = list(BY_NAME)


# ---- text into cells -----------------------------------------------------------------------------

words = st.text("ab ,;\"\t'é=", max_size=5).map(str.strip)
tables = st.lists(st.lists(words, min_size=2, max_size=4), min_size=1, max_size=5)


@settings(deadline=None, derandomize=True)
@given(rows=tables, between=st.sampled_from("\t;,"), end=st.sampled_from(["\n", "\r\n"]))
def test_a_written_table_is_read_as_python_reads_it(
    rows: list[list[str]], between: str, end: str
) -> None:
    rows = [["name", "b"], *rows]
    file = io.StringIO()
    csv.writer(file, delimiter=between, lineterminator=end).writerows(rows)
    theirs = csv.reader(io.StringIO(file.getvalue(), newline=""), delimiter=between)
    expected = [[cell.strip() for cell in row] for row in theirs]
    assert read_table(file.getvalue()) == [row for row in expected if any(row)]


@pytest.mark.parametrize(
    ("text", "rows"),
    [
        ("", []),
        ("\n\n", []),
        ("\ufeffname,weight\nMarsh,88 g", [["name", "weight"], ["Marsh", "88 g"]]),
        ("name;weight\nMarsh;3,1", [["name", "weight"], ["Marsh", "3,1"]]),
        ("name\tcuts\nMarsh\t9,6; 10,1", [["name", "cuts"], ["Marsh", "9,6; 10,1"]]),
        ('a,b\r\n"two\nlines","say ""hm"""\r\n', [["a", "b"], ["two\nlines", 'say "hm"']]),
        ('cut,b\n9 3/8",2', [["cut", "b"], ['9 3/8"', "2"]]),  # an inch sign is no quote
        ("a,b\n,\n1,2", [["a", "b"], ["1", "2"]]),
    ],
)
def test_text_falls_into_cells(text: str, rows: list[list[str]]) -> None:
    assert read_table(text) == rows


# ---- headings ------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("heading", "name", "unit"),
    [
        ("Name", "name", ""),
        ("Weight (g)", "weight", "g"),
        ("weight, oz", "weight", "oz"),
        ("Skein weight [grams]", "weight", "g"),
        ("GRAMS", "weight", "g"),
        ("Sample weight (g)", "sample_weight", "g"),
        ("Sample (yd)", "sample_length", "yd"),
        ("WPI", "wraps", "1/in"),
        ("Wraps (to the cm)", "wraps", "1/cm"),
        ("wraps/inch", "wraps", ""),
        ("Yardage", "length", ""),
        ("Length in metres", "length", "m"),
        ("Fiber content", "fibre", ""),
        ("Color", "colour", ""),
        ("Counter reading (yds)", "counter", "yd"),
        ("Turns", "turns", ""),
        ("Once round (in)", "around", "in"),
        ("Niddy-noddy", "around", ""),
        ("Cuts (cm)", "cuts", "cm"),
        ("Holds (yd)", "", ""),  # a unit alone does not make it a length that is known
        ("(oz)", "weight", "oz"),
        ("Shop", "", ""),
        ("", "", ""),
    ],
)
def test_a_heading_means_a_column(heading: str, name: str, unit: str) -> None:
    at, named = match_column(DESCRIBED["columns"], heading, OUNCES)
    assert (NAMES[at] if at >= 0 else "", named) == (name, unit)


@pytest.mark.parametrize(
    ("cells", "is_headed"),
    [
        (["Name", "How much"], True),
        (["", "wpi"], True),
        (["2 oz", "18", "130"], False),
        (["Dale", "wool", "2 oz"], False),
        (["Dale", "fair"], False),
        ([], False),
    ],
)
def test_a_row_of_headings_is_told_from_one_of_cells(cells: list[str], is_headed: bool) -> None:  # noqa: FBT001
    assert has_headings(DESCRIBED["columns"], cells, OUNCES) == is_headed


# ---- cells ---------------------------------------------------------------------------------------

G = 1 / 453.59237  # NIST Handbook 44


@pytest.mark.parametrize(
    ("name", "text", "unit", "shown", "value"),
    [
        ("weight", "88 g", "", OUNCES, 88 * G),
        ("weight", "3.1 oz", "g", GRAMS, 3.1 / 16),
        ("weight", "3,1", "", OUNCES, 3.1 / 16),
        ("weight", "88", "g", OUNCES, 88 * G),
        ("weight", "88,5", "", GRAMS, 88.5 * G),
        ("weight", "", "", OUNCES, None),
        ("weight", " N/A ", "", OUNCES, None),
        ("weight", "?", "", OUNCES, None),
        ("wraps", "14 wpi", "", OUNCES, 14),
        ("wraps", "6 to the cm", "", OUNCES, 6 * 2.54),
        ("length", "1,200", "yd", OUNCES, 1200),
        ("length", "100 m", "yd", OUNCES, 100 / 0.9144),
        ("turns", "120", "", OUNCES, 120),
        ("cuts", "9,6; 10,1", "", OUNCES, [9.6, 10.1]),
        ("cuts", "24.5 cm", "in", OUNCES, [24.5 / 2.54]),
        ("cuts", "–", "", OUNCES, []),
        ("name", " Marsh ", "", OUNCES, "Marsh"),
        ("name", "?", "", OUNCES, "?"),
    ],
)
def test_a_cell_is_read(name: str, text: str, unit: str, shown: Shown, value: Any) -> None:
    found, wrong = read_cell(BY_NAME[name], text, unit, shown)
    assert wrong == ""
    assert found == (pytest.approx(value) if isinstance(value, float | list) else value)


@pytest.mark.parametrize(
    ("name", "text", "said"),
    [
        ("weight", "heavy", "“heavy” is not a number"),
        ("weight", "88 m", "“m” is not a unit of this number"),
        ("weight", "9000 oz", "outside the range. Weight can be"),
        ("turns", "99.5", "not a whole number"),
        ("cuts", "9.6; x", "Number 2"),
        ("weight", "3,125,5", "not a number"),
    ],
)
def test_a_cell_that_cannot_be_is_refused_in_words(name: str, text: str, said: str) -> None:
    value, wrong = read_cell(BY_NAME[name], text, "", OUNCES)
    assert value is None
    assert said in wrong


@pytest.mark.parametrize("shown", [OUNCES, GRAMS])
def test_what_is_written_is_read_again(shown: Shown) -> None:
    for name, cell in {"weight": 0.25, "wraps": 14.0, "cuts": [9.6, 10.1], "name": "a"}.items():
        text = write_cell(BY_NAME[name], cell, shown)
        again, wrong = read_cell(BY_NAME[name], text, "", shown)
        assert wrong == ""
        assert again == (pytest.approx(cell, rel=1e-5) if name != "name" else cell)


# ---- the same in a page --------------------------------------------------------------------------

RULES = {rule.__name__: rule for rule in WhatIsOnMyShelf.inputs()["skeins"].rules}
TEXTS = (
    *("88 g", "3,1 oz", "", "n/a", "x", "9.6; 10,1", "1e9", "14 wpi", "é “x”", "=1+1", "9 3/8 in"),
    *('a,b\n"1,5",2', "a;b\n1,5;2", "\ufeffa\tb\n1\t2\n\n", '"', 'a,"b', "a,b\n\n,\n"),
    *("Weight (g)", "sample weight", "Yards", "Length, m", "Niddy-noddy", "nothing"),
)


def test_the_rules_of_tables_are_the_same_in_a_page() -> None:
    columns = DESCRIBED["columns"]
    calls: list[tuple[str, tuple[Any, ...]]] = [("read_table", (text,)) for text in TEXTS]
    for shown in (OUNCES, GRAMS):
        calls += [("match_column", (columns, text, vars(shown))) for text in TEXTS]
        calls += [("has_headings", (columns, [text, "x"], vars(shown))) for text in TEXTS]
        calls += [
            ("read_cell", (column, text, unit, vars(shown)))
            for column in columns
            for text in TEXTS
            for unit in ("", "g" if column["dimension"] == "mass" else "")
        ]
    answers = in_javascript(compiled(RULES), calls)
    for (name, arguments), answer in zip(calls, answers, strict=True):
        ours = RULES[name](*map(_as_python_has_it, arguments))
        assert answer["gives"] == _nearly(ours), (name, arguments[1:3])


def _as_python_has_it(argument: Any) -> Any:
    is_shown = isinstance(argument, dict) and "scales" in argument
    return choices.Shown(**argument) if is_shown else argument


def _nearly(value: Any) -> Any:
    if isinstance(value, list | tuple):
        return [_nearly(each) for each in value]
    return pytest.approx(value) if isinstance(value, float) else value


# ---- what Python may give ------------------------------------------------------------------------


def test_rows_may_be_given_by_column() -> None:
    sheet = WhatIsOnMyShelf(skeins=[{"name": "Marsh", "weight": 0.25, "wraps": 14}])
    assert sheet.skeins == [["Marsh", "", "", 0.25, 14.0, None, None, None, None, [], None, None]]
    sheet.skeins = [{"name": "Marsh", "weight": float("nan")}]
    assert sheet.skeins[0][3] is None


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ([{"wool": 1}], "no column wool"),
        ([["Marsh"]], "1 cells, of 12 columns"),
        ([{"weight": 400}], "outside the range"),
        ([{"turns": 2.5}], "not a whole number"),
        ([{"name": "x"}] * 500, "are the most"),
    ],
)
def test_rows_that_cannot_be_are_refused(rows: list[Any], said: str) -> None:
    with pytest.raises(traitlets.TraitError, match=said):
        WhatIsOnMyShelf(skeins=rows)


def test_every_column_is_a_kind_that_a_cell_can_hold() -> None:
    assert {each.kind for each in COLUMNS.values()} == {"words", "number", "readings"}

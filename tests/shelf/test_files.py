"""A shelf in from files and out to them: nothing is lost, and nothing becomes a formula.

openpyxl, pandas, odfpy  write the spreadsheets that are read, and read those that are written.
hand-worked              cells as people write them; 1 oz is 28.349523125 g (NIST Handbook 44).
"""

from __future__ import annotations

import csv
import math
from typing import TYPE_CHECKING, Any

import openpyxl
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from yarnsheets import shelf
from yarnsheets.page import choices
from yarnsheets.page.rows import read_cell
from yarnsheets.shelf.columns import COLUMNS

if TYPE_CHECKING:
    from pathlib import Path

G = 1 / 453.59237
MESSY = (
    "\ufeffSkein;Fiber;Color;Weight (g);WPI;Yardage;Cuts (in);Shop\r\n"
    'Marsh 1;wool;grey;"3,1 oz";14;;9,6; 10,1\r\n'
    "Marsh 2;wool;grey;88;n/a;285;;"
    "\r\n;;;;;;;\r\n"
    "Peat;Wool ;;heavy;10;?;;fair\r\n"
    '"Dale; dark";silk;;88,5;1.200,5;;;\r\n'
)


def test_a_messy_file_is_read_and_nothing_is_dropped(tmp_path: Path) -> None:
    file = tmp_path / "stash.csv"
    file.write_text(MESSY, "utf-8")
    found = shelf.read(file)
    assert found.headings["Skein"] == ("name", "")
    assert found.headings["Weight (g)"] == ("weight", "g")
    assert found.headings["Shop"] == ("", "")
    skeins = found.skeins
    assert skeins.name.to_list() == ["Marsh 1", "Marsh 2", "Peat", "Dale; dark"]
    assert skeins.weight.to_list() == pytest.approx(
        [3.1 / 16, 88 * G, float("nan"), 88.5 * G], nan_ok=True
    )
    assert skeins.length[1] == 285
    assert skeins.cuts[0] == [9.6]  # the semicolon parts cells here: what is behind it is not lost
    assert skeins.Shop[0] == "10,1"
    assert skeins.Shop[2] == "fair"
    problems = found.problems.problem.to_list()
    assert len(problems) == 2
    assert problems[0].startswith("Row 3 (Peat), Weight (g): “heavy” is not a number")
    assert problems[1].startswith("Row 4 (Dale; dark), WPI: “1.200,5” is not a number")
    reckoned = shelf.reckon(skeins)
    assert reckoned.evidence.to_list() == ["cuts", "length", "", ""]
    assert reckoned.lacking[2] == "no weight: weigh it, and its wraps give yards"


@pytest.mark.parametrize("ending", ["csv", "tsv", "xlsx", "ods"])
def test_every_kind_of_file_is_read_alike(ending: str, tmp_path: Path) -> None:
    cells = pd.DataFrame(
        {
            "Name": ["Marsh", "Peat"],
            "Weight": ["88 g", 3.5],
            "Wraps": [14, None],
            "Yards": [None, 210],
            "Cuts": ["9.6; 10.1", None],
        }
    )
    file = tmp_path / f"stash.{ending}"
    if ending in ("csv", "tsv"):
        cells.to_csv(file, sep="," if ending == "csv" else "\t", index=False)
    else:
        cells.to_excel(file, index=False)
    skeins = shelf.read(file).skeins
    assert skeins.weight.to_list() == pytest.approx([88 * G, 3.5 / 16])
    assert skeins.wraps.to_list() == pytest.approx([14, float("nan")], nan_ok=True)
    assert skeins.length.to_list() == pytest.approx([float("nan"), 210], nan_ok=True)
    assert skeins.cuts.to_list() == [[9.6, 10.1], []]
    assert shelf.read(file, measure="metres, grams").skeins.weight[1] == pytest.approx(3.5 * G)


def test_a_file_of_an_older_spreadsheet_is_read(tmp_path: Path) -> None:
    file = tmp_path / "old.csv"
    file.write_bytes("Name,Fibre,Yards\nMöwe,Fäden,120\n".encode("cp1252"))
    assert shelf.read(file).skeins.name[0] == "Möwe"


def test_columns_are_put_right_by_hand(tmp_path: Path) -> None:
    file = tmp_path / "stash.csv"
    file.write_text("Name,How much,Weight (g)\nMarsh,120,88\n", "utf-8")
    assert shelf.read(file).headings["How much"] == ("", "")
    told = shelf.read(file, columns={"How much": "length", "Weight (g)": ""})
    assert told.skeins.length[0] == 120
    assert told.skeins["Weight (g)"][0] == "88"


def test_two_headings_for_one_column_are_both_kept(tmp_path: Path) -> None:
    file = tmp_path / "stash.csv"
    file.write_text("Weight (oz),Weight (g),Weight (g)\n3.1,88,89\n", "utf-8")
    found = shelf.read(file)
    assert found.skeins.weight[0] == pytest.approx(3.1 / 16)
    assert found.headings["Weight (g)"] == ("", "")
    assert found.skeins["Weight (g)"][0] == "88"
    assert found.skeins["Weight (g), 2"][0] == "89"


@pytest.mark.parametrize("text", ["", "a,b\n1,2\n"])
def test_a_file_without_known_headings_is_refused(text: str, tmp_path: Path) -> None:
    file = tmp_path / "stash.csv"
    file.write_text(text, "utf-8")
    with pytest.raises(ValueError, match="No heading is known"):
        shelf.read(file)


def test_more_than_a_million_rows_are_refused() -> None:
    with pytest.raises(ValueError, match="1,000,001 rows, and 1,000,000 are the most"):
        shelf.read(pd.DataFrame({"weight": range(1_000_001)}))


TYPED = ("88", "88.5", "3,1", "3.1 oz", "88g", "88 G", "1,200", "9000", "0", "x", "", "n/a", "88 m")


@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    texts=st.lists(
        st.sampled_from(TYPED) | st.from_regex(r"[0-9.,]{1,5} ?(g|oz|kg|lb|x)?", fullmatch=True)
    ),
    unit=st.sampled_from(["g", "oz", ""]),
)
def test_many_cells_are_read_as_each_of_them(texts: list[str], unit: str) -> None:
    heading = f"Weight ({unit})" if unit else "Weight"
    found = shelf.read(pd.DataFrame({heading: texts}, dtype=object))
    shown = choices.shown(choices.MEASURES[0], choices.GRIST_UNITS[0])
    described = COLUMNS["weight"].describe()
    one_by_one = [read_cell(described, text, unit, shown) for text in texts]
    weights = [math.nan if value is None else value for value, _ in one_by_one]
    assert found.skeins.weight.to_list() == pytest.approx(weights, rel=1e-12, nan_ok=True)
    wrong = [at for at, (_, said) in enumerate(one_by_one, start=1) if said]
    assert found.problems.row.to_list() == wrong


# ---- out -----------------------------------------------------------------------------------------

EVIL = ["=1+1", "+2", "-3", "@SUM(A1)", "plain", 'say "hm", she said']


@pytest.mark.parametrize("measure", ["yards, ounces", "metres, grams"])
@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_what_is_written_is_read_again(ending: str, measure: str, tmp_path: Path) -> None:
    before = shelf.choose(shelf.reckon(shelf.demo()), 600).skeins
    file = tmp_path / f"out.{ending}"
    shelf.write(before, file, measure=measure)
    found = shelf.read(file)
    assert found.problems.empty
    again = found.skeins
    for name in ("weight", "wraps", "length", "counter", "turns", "sample_weight"):
        assert again[name].to_list() == pytest.approx(before[name].to_list(), rel=1e-5, nan_ok=True)
    assert [pytest.approx(cuts, rel=1e-5) for cuts in before.cuts] == again.cuts.to_list()
    # yards that were reckoned are no lengths that are known
    reckoned = shelf.reckon(again)
    assert reckoned.evidence.to_list() == before.evidence.to_list()
    assert reckoned.yards.to_list() == pytest.approx(before.yards.to_list(), rel=1e-4, nan_ok=True)


def test_no_cell_of_a_csv_begins_a_formula(tmp_path: Path) -> None:
    file = tmp_path / "out.csv"
    shelf.write(shelf.reckon(pd.DataFrame({"name": EVIL, "weight": 0.2, "length": 200.0})), file)
    with file.open(encoding="utf-8-sig", newline="") as opened:
        cells = [cell for row in csv.reader(opened) for cell in row]
    assert not [cell for cell in cells if cell[:1] in ("=", "+", "-", "@")]
    assert "'=1+1" in cells
    assert 'say "hm", she said' in cells


def test_no_cell_of_a_spreadsheet_is_a_formula(tmp_path: Path) -> None:
    file = tmp_path / "out.xlsx"
    shelf.write(shelf.reckon(pd.DataFrame({"name": EVIL, "weight": 0.2, "length": 200.0})), file)
    page = openpyxl.load_workbook(file)["Shelf"]
    by_heading = {column[0].value: column[1:] for column in page.iter_cols()}
    assert [cell.value for cell in by_heading["Name"]] == EVIL
    assert {cell.data_type for cell in by_heading["Name"]} == {"s"}
    assert by_heading["Holds (yd)"][0].value == 200
    assert by_heading["Weight (oz)"][0].value == 3.2


def test_another_ending_is_refused(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match=r"out\.doc ends neither"):
        shelf.write(shelf.demo(), tmp_path / "out.doc")


cells: Any = st.text(max_size=8) | st.floats(allow_nan=True) | st.none() | st.integers(-9, 9999)


@settings(max_examples=80, deadline=None, derandomize=True)
@given(of=st.lists(st.tuples(cells, cells, cells), max_size=4))
def test_whatever_stands_in_cells_every_row_is_there(of: list[Any]) -> None:
    found = shelf.read(pd.DataFrame(of, columns=["Name", "Weight", "Cuts"], dtype=object))
    assert len(found.skeins) == len(of)
    refused = found.problems.groupby("row").size().sum() if len(found.problems) else 0
    read = found.skeins.weight.notna().sum() + (found.skeins.cuts.map(len) > 0).sum()
    assert refused + read <= 2 * len(of)
    assert len(shelf.reckon(found.skeins)) == len(of)

"""What every sheet is, whatever it asks: light to import, and its numbers can be typed again."""

from __future__ import annotations

import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

from yarnsheets import sheets
from yarnsheets.page import choices
from yarnsheets.page.inputs import Input
from yarnsheets.page.reading import read_number, written

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

ALL = [getattr(sheets, name) for name in sheets.__all__]
each_sheet = pytest.mark.parametrize("sheet", ALL, ids=lambda sheet: sheet.__name__)
MOST_BESIDE_CHARTS = 7  # inputs: those of a column no longer than its charts
EVERY_UNIT = [choices.shown(m, g) for m in choices.MEASURES for g in choices.GRIST_UNITS]


def test_importing_a_sheet_loads_nothing_heavy() -> None:
    code = "import sys; from yarnsheets.sheets import HowManyYards; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split())
    assert "yarnsheets.sheets.how_many_yards.sheet" in loaded
    assert not {"altair", "anywidget", "ipywidgets", "pandas", "numpy", "scipy", "pint"} & loaded


@each_sheet
def test_inputs_stand_in_groups_that_a_reader_takes_in(sheet: type[Sheet]) -> None:
    groups = sheet.groups()
    grouped = [name for group in groups for name in group["inputs"]]
    beside_charts = [name for name in sheet.inputs() if name not in grouped]
    assert [*beside_charts, *grouped] == list(sheet.inputs())
    assert len(set(beside_charts) - set(sheet().unused())) <= MOST_BESIDE_CHARTS
    assert all(group["title"] and group["inputs"] for group in groups)


@each_sheet
def test_every_line_can_be_filled_when_its_condition_holds(sheet: type[Sheet]) -> None:
    blank, described = sheet(), sheet.describe()
    worked = [line for lines in described["worked"].values() for line in lines]
    captions = [line for chart in described["charts"] for line in chart["caption"]]
    for when, template in [*sheet.answer, *worked, *captions]:
        assert when is None or when.removeprefix("not ") in blank.all_known()
        assert "{" not in blank.say(template)
    assert not any("{" in blank.say(label) for label in sheet.labels.values())


@each_sheet
def test_what_stands_in_a_box_can_be_typed_there(sheet: type[Sheet]) -> None:
    for name, asked in sheet.inputs().items():
        if isinstance(asked, Input):
            described = asked.describe()
            for value in (asked.low, asked.high, described["default"]):
                for shown in EVERY_UNIT:
                    read, wrong = read_number(described, written(described, value, shown), shown)
                    assert (name, wrong) == (name, "")
                    # a box has six digits, and six decimals at most
                    assert read == pytest.approx(value, rel=5e-6, abs=1e-6)

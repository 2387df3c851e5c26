"""A whole shelf at once: the same as skein by skein, and as pint reckons it.

by definition  columns give what single skeins give, row by row.
pint           lengths by weight and grist, with its own units.
"""

from __future__ import annotations

import math
import subprocess
import sys
from typing import Any

import numpy as np
import pandas as pd
import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from yarnsheets import shelf
from yarnsheets.shelf.columns import COLUMNS
from yarnsheets.shelf.evidence import Doubts, Skein, lacking, reckoned

maybe = st.none() | st.just(math.nan)


def number(low: float, high: float) -> st.SearchStrategy[Any]:
    return maybe | st.floats(low, high)


rows = st.fixed_dictionaries(
    {
        "name": st.sampled_from(["", "Marsh", "=Peat"]),
        "weight": number(0.001, 2),
        "wraps": number(3, 70),
        "length": number(1, 3000),
        "counter": number(1, 3000),
        "turns": maybe | st.integers(2, 900).map(float),
        "around": number(6, 200),
        "cuts": st.lists(st.floats(1, 60), max_size=5),
        "sample_length": number(0.1, 40),
        "sample_weight": number(0.0001, 0.1),
    }
)
doubts = st.builds(
    Doubts,
    known_range=st.sampled_from([0.005, 0.02, 0.2]),
    counter_factor=st.sampled_from([0.9, 1.0, 1.1]),
    scale_step=st.sampled_from([0.0, 0.0002, 0.02]),
    usual_spread=st.sampled_from([0.05, 0.3]),
    balance_factor=st.sampled_from([50.0, 100.0]),
)


def skein(row: dict[str, Any]) -> Skein:
    cells = {name: math.nan if cell is None else cell for name, cell in row.items()}
    return Skein(**cells)


def frame(of: list[dict[str, Any]]) -> pd.DataFrame:
    numbers = [name for name, each in COLUMNS.items() if each.kind == "number"]
    return pd.DataFrame(of).astype(dict.fromkeys(numbers, float))


@settings(max_examples=150, deadline=None, derandomize=True)
@given(of=st.lists(rows, min_size=1, max_size=8), doubts=doubts)
def test_columns_give_what_single_skeins_give(of: list[dict[str, Any]], doubts: Doubts) -> None:
    found = shelf.reckon(frame(of), doubts)
    for at, row in enumerate(of):
        one = reckoned(skein(row), doubts)
        got = found.iloc[at]
        if one is None:
            assert math.isnan(got.yards)
            assert (got.evidence, got.disputed, got.lacking) == (
                "",
                "",
                lacking(skein(row), doubts),
            )
            continue
        assert (got.evidence, got.disputed, got.lacking) == (one.kind, one.disputed, "")
        for name in ("yards", "low", "high", "half", "grist"):
            assert got[name] == pytest.approx(getattr(one, name), rel=1e-12, nan_ok=True)


@pytest.mark.parametrize("count", [0, 1, 49_999, 50_001, 120_000])
def test_any_number_of_rows_is_reckoned_alike(count: int) -> None:
    many = pd.concat([shelf.demo()] * (count // 9 + 1), ignore_index=True).iloc[:count]
    found = shelf.reckon(many)
    assert len(found) == count
    one = shelf.reckon(shelf.demo())
    if count:
        place = (count - 1) % 9
        assert found.yards.iloc[-1] == pytest.approx(one.yards[place], nan_ok=True)
        assert found.evidence.iloc[-1] == one.evidence[place]


def test_a_shelf_is_what_pint_makes_of_it() -> None:
    ureg: pint.UnitRegistry[Any] = pint.UnitRegistry()
    grams, metres = [88.0, 130.5], [3.0, 4.2]
    found = shelf.read(
        pd.DataFrame(
            {"weight (g)": grams, "sample length (m)": metres, "sample weight (g)": [1.1, 1.3]}
        )
    )
    yards = shelf.reckon(found.skeins).yards
    for at, sample in enumerate((1.1, 1.3)):
        per_gram = metres[at] * ureg.metre / (sample * ureg.gram)
        theirs = (grams[at] * ureg.gram * per_gram).to("yard").magnitude
        assert yards[at] == pytest.approx(theirs, rel=1e-12)


def test_the_frame_given_is_left_as_it_was() -> None:
    given_frame = shelf.demo()
    before = given_frame.copy(deep=True)
    shelf.choose(shelf.reckon(given_frame), 600)
    pd.testing.assert_frame_equal(given_frame, before)


def test_a_choice_says_why_a_skein_was_left_out() -> None:
    found = shelf.choose(shelf.reckon(shelf.demo()), 600)
    said = dict(zip(found.skeins.name, found.skeins.for_project, strict=True))
    assert said["Marsh 1"] == said["Marsh 2"] == said["Marsh 3"] == "chosen"
    assert said["Marsh 4"] == "not needed"
    assert said["Heath 1"] == "another colour"
    assert said["Moonrise"] == "another fibre"
    assert said["Peat"] == "coarser than those chosen"
    assert said["Oddment"] == ""
    assert found.yards == pytest.approx(703.9, abs=0.1)  # 285 + 263.9 + 155, hand-worked
    assert shelf.choose(shelf.reckon(shelf.demo()), 1200).more > 0


def test_a_skein_without_a_weight_is_not_chosen() -> None:
    found = shelf.choose(shelf.reckon(pd.DataFrame({"length": [700.0]})), 600)
    assert found.skeins.for_project[0] == "weigh it: its grist is not known"


def test_too_many_to_choose_from_is_said() -> None:
    many = shelf.reckon(pd.DataFrame({"weight": np.full(301, 0.2), "length": 200.0}))
    with pytest.raises(ValueError, match=r"301 skeins.*Narrow them"):
        shelf.choose(many, 600)


def test_a_worksheet_loads_the_rules_alone() -> None:
    code = "import sys, yarnsheets.sheets, yarnsheets.shelf; print(*sys.modules)"
    loaded = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    ).stdout.split()
    assert "yarnsheets.shelf.evidence" in loaded
    assert not {"altair", "numpy", "openpyxl", "pandas", "pint", "scipy"} & set(loaded)
    with pytest.raises(AttributeError, match="no attribute 'label'"):
        _ = shelf.label

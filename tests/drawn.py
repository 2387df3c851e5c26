"""Inputs drawn from all that the boxes of a sheet take, and all that a sheet then says."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any

from hypothesis import settings
from hypothesis import strategies as st

from yarnsheets.page import choices
from yarnsheets.page.inputs import Asked, Blank, Input, Pairs, Pick, Readings
from yarnsheets.page.rows import Rows

if TYPE_CHECKING:
    from collections.abc import Sequence

    from yarnsheets.page.sheet import Sheet

_SLOT = re.compile(r"\{(\w+)")

# The same draws every time, and few: the sheets are many.
few = settings(max_examples=50, deadline=None, derandomize=True)

any_units = st.fixed_dictionaries(
    {
        "measure": st.sampled_from([each.name for each in choices.MEASURES]),
        "grist_unit": st.sampled_from([each.unit for each in choices.GRIST_UNITS]),
    }
)


def any_value(asked: Asked) -> st.SearchStrategy[Any]:
    """Draw what a box takes: the ends of its range, and what is near its example, among it."""
    if isinstance(asked, Input):
        return _number(asked.low, asked.high, [asked.default_value], whole=_is_count(asked))
    if isinstance(asked, Blank):
        return st.none() | _number(asked.low, asked.high, [1, 12, 250, 1200])
    if isinstance(asked, Readings):
        several = st.lists(_number(asked.low, asked.high, asked.values), max_size=6)
        return several | _nearly_alike(asked) | st.just(asked.values)
    if isinstance(asked, Pairs):
        pair = st.tuples(*map(any_value, asked.parts)).map(list)
        return st.lists(pair | st.sampled_from(asked.pairs), max_size=5) | st.just(asked.pairs)
    if isinstance(asked, Rows):
        drawn = {name: any_value(column) for name, column in asked.columns.items()}
        row = st.fixed_dictionaries({}, optional=drawn).map(asked.row)
        return st.lists(row | st.sampled_from(asked.rows), max_size=5) | st.just(asked.rows)
    if isinstance(asked, Pick):
        return st.sampled_from(list(asked.options))
    # blanks around it and none of it, but none twice: those a reader would mean
    return st.text("abc äß€$’", max_size=12).map(lambda text: re.sub(" +", " ", text))


def any_inputs(sheet: type[Sheet]) -> st.SearchStrategy[dict[str, Any]]:
    """Draw inputs of a sheet, some of them left as they are, and the units it is read in."""
    drawn = {name: any_value(asked) for name, asked in sheet.inputs().items()}
    return st.fixed_dictionaries({}, optional=drawn).flatmap(
        lambda inputs: any_units.map(lambda units: inputs | units)
    )


def two_in_order(sheet: type[Sheet], name: str) -> st.SearchStrategy[list[float]]:
    """Draw two numbers that the box of an input takes, the smaller first."""
    asked = sheet.inputs()[name]
    return st.tuples(any_value(asked), any_value(asked)).map(sorted)


def everything_said(sheet: Sheet) -> list[str]:
    """Read the whole page: the answer, the arithmetic and what the charts say below them.

    Without an answer a chart says only what a flag that holds calls for.
    """
    captions = [
        (when, text)
        for chart in sheet.describe()["charts"]
        for when, text in chart["caption"]
        if not sheet.warnings or (when and not when.startswith("not "))
    ]
    return [sheet.sentence, *sheet.arithmetic, *sheet.said(captions)]


def labels_written(sheet: Sheet) -> list[str]:
    """Read the labels of the charts: none without a number that has no place in a chart."""
    if sheet.warnings:
        return []
    known = sheet.all_known()
    missing = {name for name, value in known.items() if value != value}  # nan
    return [
        sheet.say(text) for text in sheet.labels.values() if missing.isdisjoint(_SLOT.findall(text))
    ]


def _is_count(asked: Input) -> bool:
    return asked.step == 1 and asked.dimension == "number"


def _number(
    low: float, high: float, usual: Sequence[float], *, whole: bool = False
) -> st.SearchStrategy[float]:
    """Draw a number of a range: anywhere in it, at its ends, at what is usual or near that."""
    if whole:
        low, high = math.ceil(low), math.floor(high)
        anywhere: st.SearchStrategy[float] = st.integers(int(low), int(high)).map(float)
    else:
        anywhere = st.floats(low, high)
    at = st.sampled_from([low, high, *usual]).map(float)
    near = st.builds(
        lambda value, far: _within(value * math.exp(far), low, high), at, st.floats(-1, 1)
    )
    return anywhere | at | (near.map(lambda value: float(round(value))) if whole else near)


def _within(value: float, low: float, high: float) -> float:
    return max(low, min(high, value))


def _nearly_alike(asked: Readings) -> st.SearchStrategy[list[float]]:
    """Draw readings of one thing, a tenth apart at most."""
    return st.sampled_from(asked.values or [asked.low, asked.high]).flatmap(
        lambda value: st.lists(
            st.floats(_within(0.9 * value, asked.low, asked.high), min(asked.high, 1.1 * value)),
            max_size=8,
        )
    )

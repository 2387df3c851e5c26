"""Inputs drawn from all that the boxes of a sheet take, and what is wrong with an answer."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any

from hypothesis import strategies as st

from yarnsheets.page import choices
from yarnsheets.page.inputs import Asked, Input, Pick, Readings

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

# Words that stand for a number that is none, a dash, or a slot that was not filled.
_NO_NUMBER = re.compile(r"\bnan\b|\binf\b|–|[{}]")
_ONE_OF_MANY = re.compile(r"(?<![\d.,])1 (?:lots|litres|colours|stitches|wraps)\b")


def a_value(asked: Asked) -> st.SearchStrategy[Any]:
    """Draw what one box takes, its ends among it."""
    if isinstance(asked, Input):
        ends = st.sampled_from([asked.low, asked.high, asked.default_value])
        return ends | st.floats(asked.low, asked.high)
    if isinstance(asked, Readings):
        return st.lists(st.floats(asked.low, asked.high), max_size=8)
    if isinstance(asked, Pick):
        return st.sampled_from(list(asked.options))
    return st.text("ab ’", max_size=5)


def all_inputs(sheet: type[Sheet]) -> st.SearchStrategy[dict[str, Any]]:
    """Draw inputs of a sheet, and the units it is shown in; some boxes stay as they are."""
    drawn = {name: a_value(asked) for name, asked in sheet.inputs().items()}
    drawn["measure"] = st.sampled_from([each.name for each in choices.MEASURES])
    drawn["grist_unit"] = st.sampled_from([each.unit for each in choices.GRIST_UNITS])
    return st.fixed_dictionaries({}, optional=drawn)


def wrong_with(sheet: Sheet) -> list[str]:
    """Say what is wrong with all that a sheet says: no number where one should be, or a range."""
    captions = [
        line for chart in sheet.describe()["charts"] for line in sheet.said(chart["caption"])
    ]
    said = [sheet.sentence, *sheet.arithmetic, *captions]
    odd = [line for line in said if _NO_NUMBER.search(line) or _ONE_OF_MANY.search(line)]
    known = sheet.all_known()
    for name, low in known.items():
        high = known.get(name.removesuffix("_low") + "_high")
        if (
            name.endswith("_low")
            and high is not None
            and not (math.isnan(low) and math.isnan(high))
        ):
            odd += [f"{name} of {low} is above {high}"] if not low <= high else []
    if not sheet.warnings and len(sheet.sentence.split(". ")) > 3:
        odd.append(f"more than three sentences: {sheet.sentence}")
    return odd

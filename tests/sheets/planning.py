"""What the tests of the planning sheets share: any input that a page takes, and all that is said.

By definition or common sense, no source: a page says no number that is none, no range whose ends
are turned round or written alike, and no plural of one.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from hypothesis import strategies as st

from yarnsheets.page.inputs import Input, Pick, Readings

if TYPE_CHECKING:
    from yarnsheets.page.inputs import Asked
    from yarnsheets.page.sheet import Sheet

MOST_WORDS = 14  # of a headline: "about a dozen"
UNITS = [
    {"measure": "yards, ounces", "grist_unit": "yd/lb"},
    {"measure": "metres, grams", "grist_unit": "m/100g"},
    {"measure": "metres, grams", "grist_unit": "tex"},
]

ALIKE = re.compile(r"(?<![\d.,])(\d[\d.,]*)(?:\N{NO-BREAK SPACE}\S+)? to \1(?![\d.,]*\d)")
ONE_OF_MANY = re.compile(
    r"(?<![\d.,])1 (bobbins|evenings|hours|plies|turns|treadles|times|fibres|singles|equal)\b"
)


def value_of(asked: Asked) -> st.SearchStrategy[Any]:
    """Give any value that the input's box takes, both ends of its range often among them."""
    if isinstance(asked, Input):
        if asked.step == 1:
            return st.integers(int(asked.low), int(asked.high)).map(float)
        ends = st.sampled_from([asked.low, asked.high])
        return st.one_of(st.floats(asked.low, asked.high), ends)
    if isinstance(asked, Readings):
        return st.lists(st.floats(asked.low, asked.high), max_size=6)
    if isinstance(asked, Pick):
        return st.sampled_from(list(asked.options))
    return st.sampled_from(["$", "kr", ""])


def any_of(sheet: type[Sheet]) -> st.SearchStrategy[dict[str, Any]]:
    """Give inputs of a sheet, as many as hypothesis likes; the rest stay as they are."""
    return st.fixed_dictionaries(
        {}, optional={name: value_of(asked) for name, asked in sheet.inputs().items()}
    )


def within(sheet: type[Sheet], name: str) -> st.SearchStrategy[Any]:
    """Give any value of one input of a sheet."""
    return value_of(sheet.inputs()[name])


def lines_said(sheet: Sheet) -> list[str]:
    """Give the arithmetic and the captions."""
    charts = sheet.describe()["charts"]
    captions = [line for chart in charts for line in sheet.said(chart["caption"])]
    return [*sheet.arithmetic, *captions]


def all_said(sheet: Sheet) -> list[str]:
    """Give everything that a page says beside the answer."""
    return [*lines_said(sheet), *(sheet.say(text) for text in sheet.labels.values())]


def check_words(sheet: Sheet) -> None:
    """Hold all that a sheet says, in every choice of units, to what any page must keep to."""
    for chosen in UNITS:
        sheet.set_trait("grist_unit", chosen["grist_unit"])
        sheet.set_trait("measure", chosen["measure"])
        answer = sheet.sentence
        assert answer
        # labels have no place in a chart then, but what stands beside a warning is read
        texts = [answer, *(lines_said(sheet) if sheet.warnings else all_said(sheet))]
        for text in texts:
            assert "nan" not in text
            assert "inf" not in text
            assert "\N{EN DASH}" not in text, text  # how no number is written
            assert "  " not in text
            assert not ALIKE.search(text), text
            assert not ONE_OF_MANY.search(text), text
        if not sheet.warnings:
            headline, *beside = re.split(r"(?<=[.:]) (?=[A-Z“])", answer)
            assert len(headline.replace("\N{NO-BREAK SPACE}", "").split()) <= MOST_WORDS, headline
            assert len(beside) <= 2, answer
        check_ranges(sheet)


def check_ranges(sheet: Sheet) -> None:
    """Hold every range that was found to run from its low end to its high one."""
    found = sheet.finds()
    for name in found:
        other = name.removesuffix("_low") + "_high"
        if name.endswith("_low") and other in found and not sheet.warnings:
            assert getattr(sheet, name) <= getattr(sheet, other), name


def check_unused(sheet: Sheet, name: str, value: Any) -> None:
    """Hold an input that the page hides to make no difference to what is said or goes on."""
    before = sheet.sentence, lines_said(sheet), gone_on(sheet)
    sheet.set_trait(name, value)
    assert (sheet.sentence, lines_said(sheet), gone_on(sheet)) == before


def gone_on(sheet: Sheet) -> list[str]:
    """Give what was found and goes on to another sheet, written out."""
    carried = {name for way in sheet.onward for name in way.carries.values()}
    return [repr(getattr(sheet, name)) for name in sorted(carried & sheet.finds().keys())]

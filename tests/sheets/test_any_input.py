"""Every sheet, on any input that its boxes take: it answers, in whole sentences, and truly so.

By definition or common sense, no source: a page says no number that is none, no range whose ends
are turned round or written alike, no plural of one, and no more than it needs to.
"""

from __future__ import annotations

import math
import re
from itertools import product
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.drawn import any_inputs, any_value, everything_said, few, labels_written
from yarnsheets import sheets
from yarnsheets.page import choices
from yarnsheets.page.inputs import Words
from yarnsheets.sheets import HowMuchTwistDoesItWant, WhatDoesThisSpinTake, WhichOfTwoPlans

if TYPE_CHECKING:
    from collections.abc import Iterator

    from yarnsheets.page.sheet import Sheet

ALL = [getattr(sheets, name) for name in sheets.__all__]
each_sheet = pytest.mark.parametrize("sheet", ALL, ids=lambda sheet: sheet.__name__)

# what no reader should see: an empty slot, a number that is none, a part of Python or JavaScript
NOT_WORDS = re.compile(r"[{}]|\bnan\b|\binf\b|\bNone\b|undefined|–|\bTrue\b|\bFalse\b|[ \xa0]{2}")
# one of a thing with the word for several
ONE_OF_MANY = re.compile(r"(?<![\d.,/])\b1[ \xa0](?!(?:is|as|less|weighs)\b)([a-z]+s|equal)\b")
# nothing more, nothing less
NONE_OF_IT = re.compile(r"(?<![\d.,])0[ \xa0]\S+ (?:more|less|longer|shorter)\b")
NUMBER = r"−?\d[\d,]*(?:\.\d+)?"
UNIT = r"(?:%|(?:\N{NO-BREAK SPACE}[^\s,.;:]+)*)"
RANGE = re.compile(
    rf"(?:\bbetween ({NUMBER}){UNIT} and|(?<![\d.,−])({NUMBER}){UNIT} to) ({NUMBER})(?![\d/])"
)
# of words: those of the example and those that any answer has
MOST_SENTENCES, MOST_IN_HEADLINE, MOST_BY_DEFAULT, MOST_WORDS = 3, 14, 50, 58


# ---- what a page keeps to ------------------------------------------------------------------------


def faults(sheet: Sheet) -> list[str]:
    """Say what is wrong with a sheet as it stands."""
    said = [*everything_said(sheet), *labels_written(sheet)]
    found = [fault for text in said for fault in faults_of_words(text)]
    found += [text for text in said if is_turned_round(text, sheet.grist_unit)]
    return [*found, *faults_of_length(sheet), *faults_of_ranges(sheet)]


def faults_of_words(text: str) -> Iterator[str]:
    if NOT_WORDS.search(text):
        yield f"no words: {text}"
    if ONE_OF_MANY.search(text):
        yield f"one of many: {text}"
    if NONE_OF_IT.search(text):
        yield f"none of it: {text}"
    for between, to, high in RANGE.findall(text):
        if number(between or to) >= number(high):
            yield f"no range: {text}"


def number(text: str) -> float:
    return float(text.replace(",", "").replace("−", "-"))


def is_turned_round(text: str, unit: str) -> bool:
    """Tell whether a grist is called high or low where a finer yarn is the smaller number."""
    runs_back = unit in {"tex", "denier"}
    return runs_back and bool(re.search(rf"{unit}[^.:]*\b(too|a little) (high|low)\b", text))


def faults_of_length(sheet: Sheet) -> Iterator[str]:
    """Tell whether an answer is more than a headline and two sentences, or a long headline."""
    sentences = re.split(r"(?<=[.?!]) (?=\S)", sheet.sentence)
    if not sheet.sentence.strip():
        yield "nothing is said"
    if len(sentences) > MOST_SENTENCES:
        yield f"too many sentences: {sheet.sentence}"
    if words(sheet, sheet.sentence) > MOST_WORDS:
        yield f"too long: {sheet.sentence}"
    if not sheet.warnings and words(sheet, sentences[0]) > MOST_IN_HEADLINE:
        yield f"a long headline: {sentences[0]}"


def words(sheet: Sheet, text: str) -> int:
    """Count words: as one a number with its unit, and what the reader calls something."""
    for name, asked in sheet.inputs().items():
        own = getattr(sheet, name).strip() if isinstance(asked, Words) else ""
        text = text.replace(own, own.replace(" ", "_"))
    return len(text.split(" "))


def faults_of_ranges(sheet: Sheet) -> Iterator[str]:
    known = sheet.all_known()
    for name, low in known.items():
        high = known.get(name.removesuffix("_low") + "_high") if name.endswith("_low") else None
        if high is None or isinstance(low, bool) or (math.isnan(low) and math.isnan(high)):
            continue
        if not low <= high:
            yield f"{name} of {low} is above {high}"


def gone_on(sheet: Sheet) -> list[str]:
    """Give what goes on to other sheets, written out, so that one nan is like another."""
    known, hidden = sheet.all_known(), sheet.unused()
    carried = {name for way in sheet.onward for name in way.carries.values() if name}
    return [f"{name} {known[name]!r}" for name in sorted(carried) if name not in hidden]


@pytest.mark.parametrize(
    "text",
    [
        *("About nan\xa0yd.", "About –\xa0yd.", "Has {yards}.", "Two  blanks.", "For \xa018.00."),
        *("1 skeins", "treadle 1 times", "1\xa0turns", "spin 0\xa0yd more"),
        *(
            "between 4 and 4\xa0oz",
            "between 5\xa0oz and 4\xa0oz",
            "9 to 9.0\xa0oz",
            "1,200 to 900",
            "5\xa0m/100\xa0g to 4",
        ),
    ],
)
def test_what_no_reader_should_see_is_seen(text: str) -> None:
    assert list(faults_of_words(text))


@pytest.mark.parametrize(
    "text",
    ["1 skein", "1.1 skeins", "11 skeins", "1 to the inch", "between −2% and 3%", "10\xa0yd more"],
)
def test_what_is_sound_is_let_pass(text: str) -> None:
    assert not list(faults_of_words(text))


# ---- every sheet keeps to it -----------------------------------------------------------------


@each_sheet
def test_its_example_is_answered_soundly_in_all_units(sheet: type[Sheet]) -> None:
    for measure, grist in product(choices.MEASURES, choices.GRIST_UNITS):
        one = sheet(measure=measure.name, grist_unit=grist.unit)
        assert not faults(one)
        assert words(one, one.sentence) <= MOST_BY_DEFAULT


# by hand: what makes many a count come out at one
ONES = (
    HowMuchTwistDoesItWant(grist=600, twist=1, ratio=9, draft=9, treadles=1),
    WhatDoesThisSpinTake(project=100, reserve=0, plies=1),
    WhichOfTwoPlans(project=100, reserve=0, plies_1=1, plies_2=1, spinning_speed_2=50),
)


@pytest.mark.parametrize("sheet", ONES, ids=lambda sheet: type(sheet).__name__)
def test_one_of_each_is_said_as_one(sheet: Sheet) -> None:
    assert re.search(r"\b1[ \xa0][a-z]", " ".join(everything_said(sheet)))
    assert not faults(sheet)


@each_sheet
@few
@given(data=st.data())
def test_whatever_a_box_takes_is_answered_soundly(sheet: type[Sheet], data: st.DataObject) -> None:
    assert not faults(sheet(**data.draw(any_inputs(sheet))))


@each_sheet
@few
@given(data=st.data())
def test_what_is_hidden_makes_no_difference(sheet: type[Sheet], data: st.DataObject) -> None:
    inputs = data.draw(any_inputs(sheet))
    one = sheet(**inputs)
    hidden = one.unused()
    assert set(hidden) <= sheet.inputs().keys()
    if not hidden:
        return
    other = sheet(**inputs | {name: data.draw(any_value(sheet.inputs()[name])) for name in hidden})
    assert other.unused() == hidden
    assert everything_said(other) == everything_said(one)
    assert gone_on(other) == gone_on(one)

"""Every sheet, on any input that its boxes take: it answers, in whole sentences, and truly so."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from yarnsheets import sheets
from yarnsheets.page import choices
from yarnsheets.page.inputs import Asked, Input, Pairs, Pick, Readings

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

ALL = [getattr(sheets, name) for name in sheets.__all__]
each_sheet = pytest.mark.parametrize("sheet", ALL, ids=lambda sheet: sheet.__name__)
any_units = st.tuples(
    st.sampled_from([m.name for m in choices.MEASURES]),
    st.sampled_from([g.unit for g in choices.GRIST_UNITS]),
)
few = settings(
    max_examples=60, deadline=None, derandomize=True, suppress_health_check=list(HealthCheck)
)

# what no reader should see: an empty slot, a number that is none, a part of Python or JavaScript
NOT_WORDS = re.compile(r"[{}]|\bnan\b|\binf\b|None|undefined|–(?! )|\bTrue\b|\bFalse\b")
# one of a thing with the word for several
ONE_OF_MANY = re.compile(r"(?<![\d.,/])\b1[ \xa0](?!(?:is|times|as|less|weighs)\b)([a-z]+s)\b")
MOST_SENTENCES, MOST_WORDS = 3, 56


def allowed(asked: Asked) -> st.SearchStrategy[Any]:
    """Give what an input's box takes, its ends among it."""
    if isinstance(asked, Input):
        if asked.step == 1 and asked.dimension == "number":
            return st.integers(math.ceil(asked.low), math.floor(asked.high)).map(float)
        return st.floats(asked.low, asked.high)
    if isinstance(asked, Readings):
        ends = st.floats(asked.low, asked.high)
        alike = st.sampled_from(asked.values or [asked.low, asked.high]).flatmap(
            lambda value: st.lists(
                st.floats(max(asked.low, 0.9 * value), min(asked.high, 1.1 * value)), max_size=8
            )
        )
        return st.lists(ends, max_size=6) | alike
    if isinstance(asked, Pairs):
        return st.lists(st.tuples(*map(allowed, asked.parts)).map(list), max_size=6)
    if isinstance(asked, Pick):
        return st.sampled_from(list(asked.options))
    return st.text("abc äß€$", max_size=12)


@st.composite
def filled(draw: st.DrawFn, sheet: type[Sheet]) -> Sheet:
    """Fill a sheet: some of its inputs with anything, the others as they were."""
    names = draw(st.lists(st.sampled_from(list(sheet.inputs())), unique=True))
    measure, grist = draw(any_units)
    values = {name: draw(allowed(sheet.inputs()[name]), label=name) for name in names}
    return sheet(**values, measure=measure, grist_unit=grist)


def everything_said(sheet: Sheet) -> list[str]:
    """Read the page; without an answer a chart says only what a flag that holds calls for."""
    captions = [
        (when, text)
        for chart in sheet.describe()["charts"]
        for when, text in chart["caption"]
        if not sheet.warnings or (when and not when.startswith("not "))
    ]
    return [sheet.sentence, *sheet.arithmetic, *sheet.said(captions)]


@each_sheet
@few
@given(data=st.data())
def test_it_answers_in_whole_sentences(sheet: type[Sheet], data: st.DataObject) -> None:
    said = everything_said(data.draw(filled(sheet)))
    assert said[0]
    for sentence in said:
        assert not NOT_WORDS.search(sentence), sentence
        assert not ONE_OF_MANY.search(sentence), sentence


@each_sheet
@few
@given(data=st.data())
def test_no_range_is_reversed(sheet: type[Sheet], data: st.DataObject) -> None:
    one = data.draw(filled(sheet))
    known = one.all_known()
    for name, low in known.items():
        if isinstance(low, bool):
            continue
        high = known.get(name.removesuffix("_low") + "_high") if name.endswith("_low") else None
        if high is not None and not math.isnan(low):
            assert low <= high, name


@each_sheet
def test_an_answer_is_a_headline_and_two_sentences_at_most(sheet: type[Sheet]) -> None:
    sentence = re.sub(r"(\d)[.,](\d)", r"\1\2", sheet().sentence)
    assert len(re.findall(r"[.?!](?= |$)", sentence)) <= MOST_SENTENCES, sentence
    assert len(sentence.split()) <= MOST_WORDS, sentence


@pytest.mark.parametrize("unit", ["tex", "denier"])
@each_sheet
def test_words_turn_round_with_the_number(sheet: type[Sheet], unit: str) -> None:
    """Where a finer yarn is the smaller number, nothing said of a grist calls it high or low."""
    one = sheet(grist_unit=unit)
    for sentence in everything_said(one):
        assert not re.search(rf"{unit}[^.:]*\b(too|a little) (high|low)\b", sentence), sentence

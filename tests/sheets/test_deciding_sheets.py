"""What holds for any input of the sheets that decide: words, ranges, and which way they move."""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import assume, example, given, settings
from hypothesis import strategies as st

from yarnsheets.page import choices
from yarnsheets.page.inputs import Asked, Input, Pairs, Pick, Readings
from yarnsheets.sheets import (
    HowManyYards,
    IsThisEnough,
    WhatDoesKnittingTake,
    WhatDoesThisBallMake,
    WhatDoesWeavingTake,
    WillTheBallLast,
)

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

DECIDING = (
    IsThisEnough,
    HowManyYards,
    WillTheBallLast,
    WhatDoesThisBallMake,
    WhatDoesKnittingTake,
    WhatDoesWeavingTake,
)
NO_NUMBER = re.compile("–|nan|None|inf(?![a-z])")
RANGE = re.compile(r"(?:between|from) ([\d,.]+?)[^\d,.]{0,4} (?:and|to) ([\d,.]*\d)")
MOST_WORDS = 14  # of a headline: about a dozen
each_sheet = pytest.mark.parametrize("kind", DECIDING, ids=lambda kind: kind.__name__)


def any_value(asked: Asked) -> st.SearchStrategy[Any]:
    """Draw whatever a box takes: more often near its example, sometimes an end of its range."""
    if isinstance(asked, Pick):
        return st.sampled_from(list(asked.options))
    if isinstance(asked, Pairs):
        near = [st.just(pair) for pair in asked.pairs]
        anything = st.tuples(*(any_value(part) for part in asked.parts)).map(list)
        return st.just(asked.pairs) | st.lists(st.one_of(anything, *near), max_size=5)
    if not isinstance(asked, Input | Readings):
        return st.just(asked.default_value)
    ends = [asked.low, asked.high]
    anywhere = st.one_of(st.floats(asked.low, asked.high), st.sampled_from(ends))
    if isinstance(asked, Readings):
        near = [st.just(value) for value in asked.values] or [anywhere]
        return st.one_of(st.just(asked.values), st.lists(st.one_of(anywhere, *near), max_size=5))
    if asked.step == 1:
        return st.integers(math.ceil(asked.low), math.floor(asked.high)).map(float)
    usual = asked.default_value
    near_it = (
        st.floats(-1, 1)
        .map(lambda far: usual * math.exp(far))
        .filter(lambda value: asked.low <= value <= asked.high)
    )
    return st.one_of(st.just(usual), near_it if usual else st.just(usual), anywhere)


def any_inputs(kind: type[Sheet]) -> st.SearchStrategy[dict[str, Any]]:
    """Draw inputs of a sheet, and the units it is read in."""
    asked = {name: any_value(each) for name, each in kind.inputs().items()}
    units = {
        "measure": st.sampled_from([m.name for m in choices.MEASURES]),
        "grist_unit": st.sampled_from([g.unit for g in choices.GRIST_UNITS]),
    }
    return st.fixed_dictionaries({}, optional=asked | units)


def sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.?!]) (?=\S)", text)


def captions(sheet: Sheet) -> list[str]:
    return [text for chart in sheet.describe()["charts"] for text in sheet.said(chart["caption"])]


def number(text: str) -> float:
    return float(text.replace(",", ""))


@each_sheet
@settings(max_examples=80, deadline=None)
@given(st.data())
def test_whatever_a_box_takes_is_answered_in_sound_words(
    kind: type[Sheet], data: st.DataObject
) -> None:
    sheet = kind(**data.draw(any_inputs(kind)))
    assert sheet.sentence
    for asked in sheet.unused():
        assert asked in kind.inputs()
    if sheet.warnings:
        assert not NO_NUMBER.search(sheet.sentence)
        return
    for text in (sheet.sentence, *sheet.arithmetic, *captions(sheet)):
        assert not NO_NUMBER.search(text)
    for low, high in RANGE.findall(sheet.sentence):
        assert number(low) < number(high)
    for name in kind.finds():
        if name.endswith("_low"):
            low, high = getattr(sheet, name), getattr(sheet, name.removesuffix("_low") + "_high")
            assert low <= high or (math.isnan(low) and math.isnan(high))
    said = sentences(sheet.sentence)
    assert len(said) <= 3
    assert len(said[0].split(" ")) <= MOST_WORDS
    assert " 0\N{NO-BREAK SPACE}yd more" not in sheet.sentence


@each_sheet
@settings(max_examples=40, deadline=None)
@given(st.data())
def test_what_is_hidden_makes_no_difference(kind: type[Sheet], data: st.DataObject) -> None:
    given_ = data.draw(any_inputs(kind))
    sheet = kind(**given_)
    hidden = {name: data.draw(any_value(kind.inputs()[name])) for name in sheet.unused()}
    other = kind(**given_ | hidden)
    assert other.sentence == sheet.sentence
    assert captions(other) == captions(sheet)


def said_times(text: str) -> float:
    """Read a chance as it is said."""
    if text.startswith(("more than", "less than")):
        return 99.5 if text.startswith("more") else 0.5
    return 1 if text.startswith("once") else number(text.split()[0])


# ---- which way trade sense says they move --------------------------------------------------------


def balls(left: float, **given_: Any) -> WillTheBallLast:
    return WillTheBallLast(weighings=[(70, left)], scale_step=0.0001, **given_)


shape = st.sampled_from(["point", "edge", "even", "centre", "trapezoid"])


@settings(max_examples=60, deadline=None)
@given(st.floats(0.001, 0.9), st.floats(0.001, 0.9), shape, st.floats(0.01, 0.2))
def test_a_lighter_ball_never_lasts_longer(
    a: float, b: float, shape: str, unevenness: float
) -> None:
    lighter, heavier = (
        balls(part * 0.2, weight=0.2, shape=shape, unevenness=unevenness) for part in sorted([a, b])
    )
    assume(not lighter.warnings and not heavier.warnings)
    assert said_times(lighter.count) <= said_times(heavier.count)
    assert lighter.stop_row <= heavier.stop_row
    assert not (heavier.may_go_on or heavier.must_stop) or lighter.may_go_on or lighter.must_stop


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.05, 3), min_size=1, max_size=4), st.floats(0.5, 0.99))
@example([0.25], 0.95)
def test_a_chance_that_is_written_as_the_one_wanted_asks_for_nothing(
    weights: list[float], safety: float
) -> None:
    sheet = IsThisEnough(weights=weights, safety=safety, project=sum(weights) * 1250)
    wanted = sheet.say("{safety:2}").removesuffix("%")
    reached = said_times(sheet.times) >= sheet.safe_times
    assert sheet.is_short != reached
    assert abs(number(wanted) - sheet.safe_times) <= 0.5 + 1e-9
    asks = re.search(r"spin ([\d.,]+)\N{NO-BREAK SPACE}yd more", sheet.sentence)
    assert bool(asks) == sheet.is_short
    assert not asks or number(asks[1]) >= 1


@settings(max_examples=60, deadline=None)
@given(st.floats(0.01, 5), st.floats(0.01, 5), st.floats(300, 5000), st.floats(10, 5000))
def test_more_yarn_never_lacks_more(a: float, b: float, grist: float, project: float) -> None:
    less, more = (HowManyYards(grist=grist, weight=w, project=project) for w in sorted([a, b]))
    assert more.is_enough >= less.is_enough
    assert more.spare >= less.spare


@settings(max_examples=60, deadline=None)
@given(
    st.floats(0.05, 5),
    st.floats(0.05, 5),
    st.sampled_from(["triangle", "rectangle", "steady", "circle", "hexagon"]),
)
def test_more_yarn_never_makes_a_smaller_piece(a: float, b: float, shape: str) -> None:
    less, more = (WhatDoesThisBallMake(shape=shape, weight=w) for w in sorted([a, b]))
    assert more.new_width * more.new_depth >= less.new_width * less.new_depth


@settings(max_examples=40, deadline=None)
@given(st.floats(2, 100), st.floats(2, 100), st.floats(0, 1), st.floats(0, 1))
def test_a_larger_piece_never_takes_less_and_a_reserve_never_counts_in(
    a: float, b: float, c: float, d: float
) -> None:
    small, large = sorted([a, b])
    for kind, measure in ((WhatDoesKnittingTake, "piece_length"), (WhatDoesWeavingTake, None)):
        name = measure or "finished_length"
        takes = "yards" if measure else "total_yards"
        less, more = (kind(**{name: size, "reserve": c}) for size in (small, large))
        assert getattr(less, takes) <= getattr(more, takes)
        assert getattr(kind(**{name: small, "reserve": d}), takes) == getattr(less, takes)

"""Sheets that decide, on any input: which way they move, and what they ask for."""

from __future__ import annotations

import re
from typing import Any

from hypothesis import assume, example, given
from hypothesis import strategies as st

from tests.drawn import few
from yarnsheets.sheets import (
    HowManyYards,
    IsThisEnough,
    WhatDoesKnittingTake,
    WhatDoesThisBallMake,
    WhatDoesWeavingTake,
    WillTheBallLast,
)


def number(text: str) -> float:
    return float(text.replace(",", ""))


def said_times(text: str) -> float:
    """Read a chance as it is said."""
    if text.startswith(("more than", "less than")):
        return 99.5 if text.startswith("more") else 0.5
    return 1 if text.startswith("once") else number(text.split()[0])


# ---- which way trade sense says they move --------------------------------------------------------


def balls(left: float, **given_: Any) -> WillTheBallLast:
    return WillTheBallLast(weighings=[(70, left)], scale_step=0.0001, **given_)


shape = st.sampled_from(["point", "edge", "even", "centre", "trapezoid"])


@few
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


@few
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


@few
@given(st.floats(0.01, 5), st.floats(0.01, 5), st.floats(300, 5000), st.floats(10, 5000))
def test_more_yarn_never_lacks_more(a: float, b: float, grist: float, project: float) -> None:
    less, more = (HowManyYards(grist=grist, weight=w, project=project) for w in sorted([a, b]))
    assert more.is_enough >= less.is_enough
    assert more.spare >= less.spare


@few
@given(
    st.floats(0.05, 5),
    st.floats(0.05, 5),
    st.sampled_from(["triangle", "rectangle", "steady", "circle", "hexagon"]),
)
def test_more_yarn_never_makes_a_smaller_piece(a: float, b: float, shape: str) -> None:
    less, more = (WhatDoesThisBallMake(shape=shape, weight=w) for w in sorted([a, b]))
    assert more.new_width * more.new_depth >= less.new_width * less.new_depth


@few
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

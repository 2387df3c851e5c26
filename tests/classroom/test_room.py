"""The cuts of a class in memory: read as pages read, counted once, bounded, and forgotten."""

from __future__ import annotations

import contextlib
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yarnsheets.classroom import room as rooms
from yarnsheets.classroom.room import CannotTake, Room, Wrong
from yarnsheets.sheets import WhatDoOurCutsSay


class Clock:
    now = 0.0

    def __call__(self) -> float:
        return self.now


def cut(own: str = "a", **sent: Any) -> dict[str, Any]:
    return {"id": own, "balance": "1", "cut": "9 3/8", "measure": "yards, ounces"} | sent


@pytest.mark.parametrize(
    ("sent", "inches"),
    [
        ({}, 9.375),
        ({"cut": "24 cm"}, 24 / 2.54),  # the international inch: NIST Handbook 44
        ({"cut": "24", "measure": "metres, grams"}, 24 / 2.54),
        ({"cut": "9,6"}, 9.6),
    ],
)
def test_a_cut_is_read_as_on_a_worksheet(sent: dict[str, str], inches: float) -> None:
    room = Room()
    room.take(cut(**sent))
    ((balance, read),) = room.seen()["cuts"]
    assert (balance, read) == (1, pytest.approx(inches, rel=1e-12))
    WhatDoOurCutsSay(cuts=room.seen()["cuts"])  # takes them


@pytest.mark.parametrize(
    ("sent", "field"),
    [({"cut": "nine"}, "cut"), ({"cut": ""}, "cut"), ({"balance": "2.5"}, "balance")],
)
def test_what_cannot_be_read_is_said_of_its_field(sent: dict[str, str], field: str) -> None:
    room = Room()
    with pytest.raises(Wrong) as wrong:
        room.take(cut(**sent))
    assert list(wrong.value.fields) == [field]
    assert room.seen()["cuts"] == []


def test_a_cut_sent_again_counts_once_and_has_the_same_answer() -> None:
    room = Room()
    first = room.take(cut())
    room.take(cut("b"))
    assert room.take(cut()) == first
    assert len(room.seen()["cuts"]) == 2


def test_the_teacher_leaves_out_and_clears() -> None:
    room = Room()
    for own in "abc":
        room.take(cut(own, name=own))
    before = room.version
    room.leave_out(2)
    assert [each["number"] for each in room.seen()["arrived"]] == [3, 1]
    room.clear()
    assert room.seen() == {"cuts": [], "arrived": []}
    assert room.version > before


def test_hours_later_all_is_forgotten() -> None:
    clock = Clock()
    room = Room(now=clock)
    room.take(cut())
    clock.now += rooms.LONGEST - 1
    assert room.seen()["cuts"]
    clock.now += 2
    assert room.seen()["cuts"] == []


def test_a_flood_is_refused_and_a_class_is_not() -> None:
    clock = Clock()
    room = Room(now=clock)
    for at in range(rooms.AT_ONCE):
        room.take(cut(str(at)))
    with pytest.raises(CannotTake, match="at once"):
        room.take(cut("more"))
    clock.now += 1
    for at in range(rooms.EACH_SECOND):
        room.take(cut(f"later {at}"))


def test_there_is_an_end_of_room() -> None:
    clock = Clock()
    room = Room(now=clock)
    for at in range(rooms.MOST_CUTS):
        clock.now += 1
        room.take(cut(str(at)))
    with pytest.raises(CannotTake, match="no room for more"):
        room.take(cut("one more"))
    room.take(cut("0", cut="9.5"))  # one that is there may still be put right


@given(
    st.dictionaries(
        st.sampled_from(["id", "balance", "cut", "measure", "name", "other"]),
        st.one_of(st.text(max_size=200), st.none(), st.integers(), st.lists(st.integers())),
    )
)
def test_anything_may_be_sent(sent: dict[str, Any]) -> None:
    room = Room()
    with contextlib.suppress(Wrong, CannotTake):
        room.take(sent)
    for each in room.seen()["arrived"]:
        assert len(each["name"]) <= rooms.MOST_LETTERS


def test_words_are_easily_typed() -> None:
    assert len(set(rooms.WORDS)) == len(rooms.WORDS) > 30
    assert all(word.isascii() and word.islower() and len(word) <= 8 for word in rooms.WORDS)

"""Ten exercises for paper, and their answers on another sheet, from the same draw."""

from collections.abc import Sequence

from yarnsheets.page.listing import Column, Listing
from yarnsheets.page.text import slot
from yarnsheets.sheets.can_i_work_it_out.exercise import Exercise

COUNT = 10
_DRAW = Column("Draw", "draw", "number")

LISTINGS = (
    Listing(
        "to_answer",
        "Ten exercises, from draw {draw} on: an answer within 2% is right",
        (
            _DRAW,
            Column("Exercise", "asks", "template"),
            Column("Your working and answer", "", "blank"),
        ),
    ),
    Listing(
        "answered",
        "The answers to ten exercises, from draw {draw} on",
        (_DRAW, Column("Answer", "right", "template"), Column("Step by step", "steps", "template")),
    ),
)

_DIMENSIONS = {"grist": "grist", "length": "length", "mass": "mass", "rows": "number"}


def to_answer(draw: float, exercise: Exercise) -> dict[str, str | float]:
    """Give the row of an exercise that is to be answered with a pencil."""
    asks = exercise.asks
    if exercise.span > 0:
        asks += " How much is over?"
    return {"draw": draw, "asks": asks}


def answered(draw: float, of: str, exercise: Exercise) -> dict[str, str | float]:
    """Give the row of its answer, with every step."""
    right = slot(exercise.right, _DIMENSIONS[of]) + (" rows" if of == "rows" else "")
    return {"draw": draw, "right": right, "steps": joined([s.worked for s in exercise.steps])}


def joined(sentences: Sequence[str]) -> str:
    """Write sentences one after another.

    >>> joined(["One.", "Two."])
    'One. Two.'
    """
    return " ".join(sentences)

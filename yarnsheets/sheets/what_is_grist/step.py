"""A step of the lesson: what it asks and tells, what it answers, and what is drawn of it."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from yarnsheets import formulas
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared.systems import System
from yarnsheets.sheets.shared.told import Bar

# The yarns of the lesson: a rug yarn and a lace (common practice, no source), and a firm yarn
# with its wraps, by whose density all strands are drawn.
RUG, LACE = 300, 6000
FIRM, WRAPS = 800, 14
GUESS_FIRST = "Set your guess, then show the answer."
DENSITY = formulas.bulk_density_from_wraps(WRAPS, FIRM)


class Strand(NamedTuple):
    """A strand as it is drawn: how thick, how dense beside the firm yarn, and its words."""

    thick: float
    dense: float
    words: str


@dataclass(frozen=True)
class Step:
    """A step, in templates.

    `asks` and `told` stand until the answer is shown, `says` and `why` after that; a step
    without a question has no `asks`. `found` is what takes the place of the question marks of the
    bars, and `numbers` has what is found, by its name on the sheet.
    """

    says: str
    why: str
    numbers: dict[str, float]
    bars: list[Bar]
    worked: list[str]
    asks: str = ""
    told: str = ""
    found: str = ""
    strands: list[Strand] = field(default_factory=list)


def strand(grist: float, words: str) -> Strand:
    """Give the strand of a yarn as dense as the firm one."""
    return Strand(formulas.diameter_from_grist(grist, DENSITY), 1, words)


def strands_drawn(strands: Sequence[Strand]) -> dict[str, Any]:
    """Give what the chart of strands draws."""
    said = {f"strand_{at + 1}": each.words for at, each in enumerate(strands)}
    rows = [{"at": at, "thick": each.thick, "dense": each.dense} for at, each in enumerate(strands)]
    return {**said, "strands": rows}


def whole(system: System) -> float:
    """Give the weight that grist is for: a pound, or 100 g, in pounds."""
    return system.parts * system.pounds


def capital(words: str) -> str:
    """Begin words with a capital.

    >>> capital("a pound"), capital("100 g")
    ('A pound', '100 g')
    """
    return words[:1].upper() + words[1:]


def bars(
    known: Sequence[tuple[float, str]],
    asked: str,
    right: float,
    guess: float,
    guess_written: str,
    *,
    is_shown: bool,
) -> list[Bar]:
    """Give what is known, what is asked and what was guessed as bars to one scale.

    What is asked for is as long as it gets until it is shown, and does not change the scale.
    """
    longest = max([guess, *(value for value, _ in known), *([right] if is_shown else [])])
    return [
        *(Bar(value / longest, said) for value, said in known),
        Bar(right / longest if is_shown else 1, asked),
        Bar(guess / longest, f"your guess: {guess_written}"),
    ]


def reach(system: System, grist: float) -> str:
    """Write how long a pound, or 100 g, of a yarn is."""
    return slot(formulas.length(whole(system), grist), "length")


def guessed(guess: float, right: float, dimension: str) -> str:
    """Say what was guessed, or that it was right."""
    if abs(guess - right) <= 0.03 * right:
        return f"You guessed it, with {slot(guess, dimension)}."
    return f"You guessed {slot(guess, dimension)}."

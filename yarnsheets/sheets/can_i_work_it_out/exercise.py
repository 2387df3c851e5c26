"""An exercise: what is asked, its right answer, and where the usual slips lead."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from yarnsheets.sheets.shared.told import Bar

TOLERANCE = 0.02  # of the answer: room for rounding on the way, and for no slip

_FAR = 32  # times too much, at the edge of the chart
_TO_THE_EDGE = 0.4  # of the chart's width, from the right answer in its middle


class Step(NamedTuple):
    """A step on the way: as a question, and worked."""

    question: str
    worked: str


class Slip(NamedTuple):
    """A slip: where it leads, its name, what it is, and the step to take instead."""

    answer: float
    name: str
    said: str
    step: int


@dataclass(frozen=True)
class Exercise:
    """An exercise, in the sheet's own units; its words are templates.

    The tolerance is a part of the answer, but `least` at least. `span` is how far wrong the chart
    of an answer that may be less than nothing goes; others are wrong by so many times.
    """

    right: float
    asks: str
    told: str
    steps: list[Step]
    slips: list[Slip]
    bars: list[Bar]
    least: float = 0.0
    span: float = 0.0

    def within(self, answer: float) -> float:
        """Give how far from an answer another is taken for the same."""
        return max(TOLERANCE * abs(answer), self.least)

    def is_right(self, given: float) -> bool:
        """Tell whether an answer is right."""
        return abs(given - self.right) <= self.within(self.right) * (1 + 1e-9)

    def is_sound(self) -> bool:
        """Tell whether no slip can be taken for the right answer, nor for another slip."""
        ends = [("", self.right), *((slip.said, slip.answer) for slip in self.slips)]
        for at, (said, answer) in enumerate(ends):
            for other_said, other in ends[:at]:
                apart = self.within(answer) + self.within(other)
                if said != other_said and abs(answer - other) <= apart:
                    return False
        return True

    def slip_of(self, given: float) -> Slip | None:
        """Give the slip that leads to an answer; none if it is nobody's."""
        for slip in self.slips:
            if abs(given - slip.answer) <= self.within(slip.answer):
                return slip
        return None

    def place(self, answer: float) -> float:
        """Give where an answer stands across the chart, the right one in the middle."""
        if self.span > 0:
            off = (answer - self.right) / self.span
        else:
            off = math.log(answer / self.right) / math.log(_FAR) if answer > 0 else -1
        return 0.5 + _TO_THE_EDGE * max(-1, min(1, off))


def named(slips: Sequence[Slip]) -> list[Slip]:
    """Give the slips that lead to different answers by their name: the first of each."""
    first: dict[str, Slip] = {}
    for slip in slips:
        first[slip.name] = first.get(slip.name, slip)
    return list(first.values())

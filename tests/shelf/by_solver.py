"""The same choice of skeins by a solver of mixed integer programs, scipy's: the witness.

A solver knows sums and bounds alone, and the chance is neither. But the more yarn, the more doubt
it may have: so the least doubt of all choices that hold so many yards says how many yards there
must be, and round by round that closes in on the fewest that are enough.
"""

import math
from collections.abc import Sequence
from typing import Any

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import bmat, coo_array, csr_array, eye_array

from yarnsheets.shelf.choosing import OnShelf, Wanted, counted, doubt_of, lots, most_doubt

_EXACT = {"mip_rel_gap": 0.0}


def places(shelf: Sequence[OnShelf], wanted: Wanted) -> list[int]:
    """Give the places of the skeins chosen; none if no choice is enough."""
    alike = lots(shelf, wanted)
    counts = np.array([counted(each, wanted) for each in shelf], float)
    doubts = np.array([doubt_of(each, int(n)) for each, n in zip(shelf, counts, strict=True)])
    program = _Program(len(shelf), alike)
    total = _enough_for(0.0, 1, wanted)
    while (least := program.solve(doubts, counts, total)) is not None:
        doubt = float(doubts @ least)
        if (needed := _enough_for(doubt, total, wanted)) > total:
            total = needed
            continue
        fewest = program.solve(counts, counts, total)
        assert fewest is not None  # the least doubt was of such a choice
        total = round(counts @ fewest)
        surest = program.solve(doubts, counts, total, total)
        assert surest is not None
        if doubts @ surest <= most_doubt(total, wanted):
            return [int(at) for at in np.flatnonzero(surest)]
        total += 1
    return []


def _enough_for(doubt: float, start: int, wanted: Wanted) -> int:
    """Give the fewest thousandths, from `start` on, that may have so much doubt."""
    below, at = start - 1, start
    while most_doubt(at, wanted) < doubt:
        below, at = at, 2 * at
    while at - below > 1:
        middle = (below + at) // 2
        if most_doubt(middle, wanted) < doubt:
            below = middle
        else:
            at = middle
    return at


class _Program:
    """Which skeins are taken, all of one lot: a variable a skein, and one a lot."""

    def __init__(self, count: int, alike: Sequence[Sequence[int]]) -> None:
        self.count = count
        self.alike = alike

    def solve(
        self, cost: Any, counts: Any, low: float, high: float = math.inf
    ) -> "np.ndarray[Any, Any] | None":
        """Give the cheapest choice whose total is from `low` to `high`; none if there is none."""
        if not self.alike:
            return None
        number = len(self.alike)
        pairs = [(at, lot) for lot, places in enumerate(self.alike) for at in places]
        of_lots = coo_array(
            (np.ones(len(pairs)), tuple(zip(*pairs, strict=True))), (self.count, number)
        )
        no_lots = np.zeros(number)
        found = milp(
            np.concatenate([cost, no_lots]),
            integrality=np.ones(self.count + number),
            bounds=Bounds(0, 1),
            constraints=[
                LinearConstraint(
                    csr_array(np.concatenate([counts, no_lots])[None, :]), low - 0.5, high + 0.5
                ),
                LinearConstraint(bmat([[eye_array(self.count), -of_lots]]), -np.inf, 0),
                LinearConstraint(np.concatenate([np.zeros(self.count), np.ones(number)]), 0, 1),
            ],
            options=_EXACT,
        )
        return None if found.x is None else np.round(found.x[: self.count])

"""How sure it is that the fibre bought is enough, from the doubts that the reader has of it."""

import math
from typing import Any

from yarnsheets.estimates import PositiveEstimate, chance_enough, length_for_chance
from yarnsheets.sheets.enough_doubt import standard

WANTED_CHANCE = 0.95
_MOST_ROWS = 40


def _estimate(value: float, *ranges: float) -> PositiveEstimate:
    """Give an estimate whose ranges, either way, each hold 19 times of 20."""
    relative = standard(math.hypot(*ranges))
    return PositiveEstimate(value, value * relative)


def chance(v: Any, yards_made: float) -> float:
    """Give the chance that fibre for that length of yarn is enough for the project."""
    made = _estimate(yards_made, v.grist_range, v.yield_range)
    return chance_enough(made, _estimate(v.project, v.project_range))


def sure_ratio(v: Any) -> float:
    """Give how many times the project's length the fibre must be for, to be enough at 95 %."""
    made = _estimate(v.project, v.grist_range, v.yield_range)
    needed = _estimate(v.project, v.project_range)
    return float(length_for_chance(WANTED_CHANCE, made, needed) / v.project)


def chances(v: Any, put_ups: int, yards_per_put_up: float) -> list[dict[str, float]]:
    """Give the chance that it is enough for put-ups from too few to plenty."""
    least = v.project / yards_per_put_up
    plenty = max(put_ups, math.ceil(least * sure_ratio(v))) + 1
    first = max(1, math.floor(least * 0.8))
    step = 1 + (plenty - first) // _MOST_ROWS
    counts = sorted({*range(first, plenty + 1, step), put_ups})
    return [{"packs": n, "chance": 100 * chance(v, n * yards_per_put_up)} for n in counts]

"""How sure it is that the fibre bought is enough, from the doubts that the reader has of it.

A chance counts the project's own yards: the reserve may be used up.
"""

import math

from yarnsheets.estimates import PositiveEstimate, chance_enough, length_for_chance
from yarnsheets.sheets.shared.doubt import standard

WANTED_CHANCE = 0.95
_MOST_ROWS = 40


def coin(currency: str) -> str:
    r"""Give what stands before a sum of money: nothing where the currency has no name.

    >>> coin("kr "), coin(" ")
    ('kr\xa0', '')
    """
    name = currency.strip()
    return f"{name}\N{NO-BREAK SPACE}" if name else ""


def in_doubt(yards: float, either_way: float) -> PositiveEstimate:
    """Give yards that are in doubt by a range either way, of which the reader is 95% sure.

    >>> round(in_doubt(1000, 0.1).uncertainty, 2)
    51.02
    """
    return PositiveEstimate(yards, yards * standard(either_way))


def sure_yards(needed: PositiveEstimate, made_range: float) -> float:
    """Give the yards that fibre must be for, to be enough with the chance that is wanted.

    `made_range` is the doubt of the yards that fibre makes.
    """
    return length_for_chance(WANTED_CHANCE, in_doubt(needed.value, made_range), needed)


def chances(
    put_ups: int, yards_per_put_up: float, needed: PositiveEstimate, made_range: float
) -> list[dict[str, float]]:
    """Give the chance that it is enough, for too few bought to plenty."""
    plenty = max(put_ups, math.ceil(sure_yards(needed, made_range) / yards_per_put_up)) + 1
    first = max(1, math.floor(needed.value / yards_per_put_up * 0.8))
    step = 1 + (plenty - first) // _MOST_ROWS
    counts = sorted({*range(first, plenty + 1, step), put_ups})
    return [
        {
            "packs": count,
            "chance": 100 * chance_enough(in_doubt(count * yards_per_put_up, made_range), needed),
        }
        for count in counts
    ]

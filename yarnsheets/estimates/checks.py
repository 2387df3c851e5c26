"""Checks at the edge: readings that no result can come from are refused in the reader's words."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence


def column(
    readings: Sequence[float], name: str, *, lowest: float = 0.0, fewest: int = 2
) -> list[float]:
    """Return readings as a column, all above `lowest` and not too few."""
    values = [float(value) for value in readings]
    if len(values) < fewest:
        msg = (
            f"{len(values)} of this: {name}. So few tell nothing of how they differ. "
            f"Give at least {fewest}."
        )
        raise ValueError(msg)
    for place, value in enumerate(values, start=1):
        if not lowest < value < math.inf:
            wanted = "a number" if lowest < 0 else "more than 0"
            msg = f"The {name} in place {place} is {value:g}. It must be {wanted}. Measure again."
            raise ValueError(msg)
    return values


def pairs(
    first: Sequence[float], second: Sequence[float], names: tuple[str, str], lowest: float = 0.0
) -> tuple[list[float], list[float]]:
    """Return two columns of the same number of readings."""
    if len(first) != len(second):
        msg = (
            f"There are {len(first)} readings of one kind ({names[0]}) and {len(second)} of the "
            f"other ({names[1]}). Give one of each for every skein."
        )
        raise ValueError(msg)
    return column(first, names[0], lowest=lowest), column(second, names[1], lowest=lowest)


def above_nought(name: str, value: float) -> float:
    """Return a value that must be more than 0."""
    if not 0 < value < math.inf:
        msg = f"The {name} is {value:g}. It must be more than 0: measure it again."
        raise ValueError(msg)
    return value


def nought_or_more(name: str, value: float) -> float:
    """Return a value that may be 0 but not less."""
    if not 0 <= value < math.inf:
        msg = f"The {name} is {value:g}. It must be 0 or more: give its size without a sign."
        raise ValueError(msg)
    return value

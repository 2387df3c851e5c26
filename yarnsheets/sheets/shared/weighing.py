"""Weights on a small scale: a gram in the unit that sheets compute in, and pounds as typed."""

from yarnsheets.published.sources import POUND
from yarnsheets.units import convert

GRAM = 1 / POUND.value


def typed(pounds: float, unit: str) -> float:
    """Give a weight in the unit that the reader types it in, "oz" or "g".

    >>> typed(0.125, "oz"), round(typed(0.125, "g"), 1)
    (2.0, 56.7)
    """
    if unit == "oz":
        return float(convert(pounds, "lb", "oz"))
    return float(convert(pounds, "lb", "g"))

"""Weights on a small scale: its steps, a gram in the sheets' own unit, and pounds as typed."""

from yarnsheets.page.inputs import Input
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


def steps(value: float, high: float, measure: str = "The last digit of the scale.") -> Input:
    """Ask for the steps of a scale."""
    return Input(
        "The scale shows steps of",
        "mass",
        value,
        low=0.001 * GRAM,
        high=high,
        measure=measure,
    )

"""A control chart of cuts in the order they were spun: whether the yarn is steady.

The limits are three standard deviations from the mean, with the standard deviation taken from how
neighbouring cuts differ, so that a slow drift does not widen them. A signal says where to look, not
what is wrong: of steady yarns too, one cut in about 370 falls outside the limits.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from statistics import fmean
from typing import TYPE_CHECKING

from yarnsheets.estimates.checks import column, pairs
from yarnsheets.estimates.estimate import Estimate, Interval

if TYPE_CHECKING:
    from collections.abc import Sequence

RANGE_TO_DEVIATION = 1.128
"""Mean range of two readings in standard deviations, d2 in ISO 7870-2:2013."""

RANGE_LIMIT = 3.267
"""Upper limit of a range of two in mean ranges, D4 in ISO 7870-2:2013."""

RUN = 8
"""Readings in a row on one side: Western Electric, Statistical Quality Control Handbook, 1956."""

TREND = 6
"""Readings in a row, each higher or each lower: L. S. Nelson, Journal of Quality Technology 16
(1984), pages 237-239."""


@dataclass(frozen=True)
class Signal:
    """What a steady yarn seldom does, in words, with the first and last reading, counted from 1."""

    first: int
    last: int
    words: str


@dataclass(frozen=True)
class ControlChart:
    """Readings in their order, with the centre line and the limits drawn for them."""

    readings: tuple[float, ...]
    centre: float
    limits: Interval
    moving_ranges: tuple[float, ...]
    mean_range: float
    range_limit: float

    @property
    def signals(self) -> tuple[Signal, ...]:
        """All that a steady yarn seldom does, in the order of the rules."""
        return (*self._outside(), *self._jumps(), *self._runs(), *self._trends())

    def _outside(self) -> list[Signal]:
        return [
            Signal(place, place, f"cut {place} is {side} the limits")
            for place, reading in enumerate(self.readings, start=1)
            for side, beyond in [
                ("below", reading < self.limits.low),
                ("above", reading > self.limits.high),
            ]
            if beyond
        ]

    def _jumps(self) -> list[Signal]:
        return [
            Signal(place, place + 1, f"the yarn jumps between cuts {place} and {place + 1}")
            for place, moving_range in enumerate(self.moving_ranges, start=1)
            if moving_range > self.range_limit
        ]

    def _runs(self) -> list[Signal]:
        sides = [_way(reading - self.centre, "above", "below") for reading in self.readings]
        return [
            Signal(first, last, f"cuts {first} to {last} are all {side} the centre line")
            for first, last, side in _stretches(sides, RUN)
        ]

    def _trends(self) -> list[Signal]:
        steps = [_way(after - before, "rise", "fall") for before, after in pairwise(self.readings)]
        return [
            Signal(first, last + 1, f"cuts {first} to {last + 1} {way} one after the other")
            for first, last, way in _stretches(steps, TREND - 1)
        ]


def control_chart(readings: Sequence[float], target: float | None = None) -> ControlChart:
    """Return the control chart of single readings and their moving ranges.

    ``limits = centre -+ 3 * mean(abs(reading - reading before)) / 1.128``

    Parameters
    ----------
    readings : Sequence
        Grist of the cuts, in the order spun, a sequence of at least three. [yd/lb]
    target : float
        Grist aimed at, which then is the centre line in place of the mean. [yd/lb]

    Returns
    -------
    ControlChart
        Readings, centre line, limits, moving ranges and their limit. [yd/lb]

    Raises
    ------
    ValueError
        If there are fewer than three readings, or one is not a number.

    Range
    -----
    With fewer than about 20 readings the limits are ill known, and a signal is only a hint.

    Source
    ------
    ISO 7870-2:2013, Control charts, Part 2: Shewhart control charts; NIST/SEMATECH e-Handbook of
    Statistical Methods, section 6.3.2.2, Individuals control charts.

    Examples
    --------
    >>> low, high = control_chart([1000, 1020, 990, 1010]).limits
    >>> round(low, 1), round(high, 1)
    (942.9, 1067.1)
    """
    values = column(readings, "reading", lowest=-math.inf, fewest=3)
    moving_ranges = [abs(after - before) for before, after in pairwise(values)]
    mean_range = fmean(moving_ranges)
    centre = fmean(values) if target is None else target
    reach = 3 * mean_range / RANGE_TO_DEVIATION
    return ControlChart(
        tuple(values),
        centre,
        Interval(centre - reach, centre + reach),
        tuple(moving_ranges),
        mean_range,
        RANGE_LIMIT * mean_range,
    )


def drift(places: Sequence[float], readings: Sequence[float]) -> Estimate:
    """Return how fast the readings drift along the yarn, by least squares.

    ``drift = sum((place - mean) * (reading - mean)) / sum((place - mean)**2)``

    Parameters
    ----------
    places : Sequence
        Where each cut was taken: its number in the order spun, or yards from the start. [yd]
    readings : Sequence
        Grist of each cut, in the same order, three at least. [yd/lb]

    Returns
    -------
    Estimate
        Change of the reading per unit of place, with two degrees of freedom fewer than the cuts.
        [yd/lb/yd]

    Raises
    ------
    ValueError
        If there are fewer than three cuts, the numbers differ, or all places are the same.

    Range
    -----
    A steady change; a yarn that thickens and thins again can have no drift.

    Source
    ------
    NIST/SEMATECH e-Handbook of Statistical Methods, section 4.4.3.1, Least squares.

    Examples
    --------
    >>> drift([1, 2, 3, 4], [1000, 990, 985, 975]).value
    -8.0
    """
    x, y = pairs(places, readings, ("place", "reading"), lowest=-math.inf)
    if len(x) < 3 or min(x) == max(x):
        msg = "A drift shows only from three cuts or more, at different places. Take another cut."
        raise ValueError(msg)
    mid_x, mid_y = fmean(x), fmean(y)
    offsets = [(a - mid_x, b - mid_y) for a, b in zip(x, y, strict=True)]
    sum_of_squares = math.fsum([a * a for a, _ in offsets])
    slope = math.fsum([a * b for a, b in offsets]) / sum_of_squares
    residual = math.fsum([(b - slope * a) ** 2 for a, b in offsets])
    dof = len(x) - 2
    return Estimate(slope, math.sqrt(residual / dof / sum_of_squares), dof)


def _way(difference: float, up: str, down: str) -> str:
    """Return the word for a difference, none for no difference."""
    if not difference:
        return ""
    return up if difference > 0 else down


def _stretches(ways: list[str], fewest: int) -> list[tuple[int, int, str]]:
    """Return where one word stands in a row at least `fewest` times, counted from 1."""
    found, start = [], 0
    for end in range(1, len(ways) + 1):
        if end == len(ways) or ways[end] != ways[start]:
            if ways[start] and end - start >= fewest:
                found.append((start + 1, end, ways[start]))
            start = end
    return found

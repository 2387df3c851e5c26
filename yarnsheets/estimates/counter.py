"""A yarn counter: its correction factor from known lengths, and the length behind a reading.

A counter's errors, slip of the wheel and stretch of the yarn, grow with the length that runs
through, so every known length tells as much of its factor as any other: the factor is the plain
mean of the ratios. A line through the origin by least squares would let the longest length decide
nearly alone.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from yarnsheets.estimates.checks import above_nought, pairs
from yarnsheets.estimates.estimate import PositiveEstimate
from yarnsheets.estimates.readings import mean

if TYPE_CHECKING:
    from collections.abc import Sequence


def counter_factor(known: Sequence[float], shown: Sequence[float]) -> PositiveEstimate:
    """Return the factor that a counter's readings must be multiplied by.

    ``factor = mean(known / shown)``

    Parameters
    ----------
    known : Sequence
        Lengths known by other means, a sequence of at least two. [yd]
    shown : Sequence
        What the counter showed for each, in the same order. [yd]

    Returns
    -------
    PositiveEstimate
        Factor, with one degree of freedom fewer than the lengths. [1]

    Raises
    ------
    ValueError
        If there are fewer than two lengths, the numbers differ, or one is not more than 0.

    Range
    -----
    The same yarn, speed and tension as in use. Known lengths of several sizes show whether the
    factor is the same for all; if it is not, the counter misses some yarn at the start.

    Source
    ------
    W. G. Cochran, Sampling Techniques, 3rd edition, 1977, chapter 6: weights for a ratio whose
    error grows with the length (from memory).

    Examples
    --------
    >>> round(counter_factor([100, 200, 400], [97, 200, 388]).value, 4)
    1.0206
    """
    lengths, readings = pairs(known, shown, ("known length", "counter's reading"))
    factor = mean([length / reading for length, reading in zip(lengths, readings, strict=True)])
    return PositiveEstimate(factor.value, factor.uncertainty, factor.dof)


def corrected_length(
    reading: float, known: Sequence[float], shown: Sequence[float]
) -> PositiveEstimate:
    """Return the length of yarn behind one reading of a counter.

    ``length = reading * factor, its relative uncertainty u * (n + 1)**0.5``

    One more reading errs as each of the n known lengths did, and by the factor's own uncertainty u
    besides.

    Parameters
    ----------
    reading : float
        What the counter shows. [yd]
    known : Sequence
        Lengths known by other means, a sequence of at least two. [yd]
    shown : Sequence
        What the counter showed for each, in the same order. [yd]

    Returns
    -------
    PositiveEstimate
        Length, with the factor's degrees of freedom. [yd]

    Raises
    ------
    ValueError
        If there are fewer than two lengths, the numbers differ, or one is not more than 0.

    Range
    -----
    Readings not far beyond those of the known lengths.

    Source
    ------
    The prediction interval of one further observation, ISO 16269-8:2004 (title from memory).

    Examples
    --------
    >>> length = corrected_length(200, [100, 200, 400], [97, 200, 388])
    >>> round(length.value, 2), round(length.uncertainty, 2)
    (204.12, 4.12)
    """
    factor = counter_factor(known, shown)
    value = above_nought("counter's reading", reading) * factor.value
    return PositiveEstimate(value, value * factor.relative * math.sqrt(len(known) + 1), factor.dof)

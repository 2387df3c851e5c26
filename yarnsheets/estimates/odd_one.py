"""Which of several balances disagrees with all the others, and whether by more than chance."""

from __future__ import annotations

import math
from statistics import fmean
from typing import TYPE_CHECKING, NamedTuple

from yarnsheets.estimates.checks import column
from yarnsheets.estimates.estimate import t_factor, t_probability

if TYPE_CHECKING:
    from collections.abc import Sequence

_SMALLEST = 1e-9  # relative: readings that differ by less are the same


class OddOne(NamedTuple):
    """The one that differs most: its ratio to the others, t, and how often chance does as much."""

    name: float
    ratio: float
    t: float
    probability: float
    is_beyond_chance: bool


def odd_one(readings: Sequence[tuple[float, float]], confidence: float = 0.95) -> OddOne | None:
    """Return the balance whose readings differ most from those of all the others.

    ``t = (mean(own) - mean(others)) / (s * (1 / n_own + 1 / n_others)**0.5)``

    The means and s are of the logarithms. Each balance is held against the rest as one group, with
    the spread within both groups; the farthest is judged the more strictly, the more balances
    there are, since the farthest of many is far by chance.

    Parameters
    ----------
    readings : Sequence
        Pairs of a balance's number and what was read on it, of one yarn. [1]
    confidence : float
        Share of classes with true balances in which none is said to be beyond chance. [1]

    Returns
    -------
    OddOne or None
        The balance that differs most; None with fewer than two balances or fewer than three
        readings, or where there is no spread to judge by. [1]

    Raises
    ------
    ValueError
        If a reading is not above 0.

    Range
    -----
    Readings independent of each other and alike spread on every balance. A second odd balance
    among the others widens their spread and may hide the first.

    Source
    ------
    Student, The Probable Error of a Mean, Biometrika 6 (1908), pages 1-25, as the two-sample test
    with one spread; O. J. Dunn, Multiple comparisons among means, Journal of the American
    Statistical Association 56 (1961), pages 52-64 (from memory), for the farthest of several.

    Examples
    --------
    >>> found = odd_one([(1, 9.6), (1, 9.8), (2, 9.7), (2, 9.9), (3, 11.0), (3, 11.2)])
    >>> found.name, round(found.ratio, 3), found.is_beyond_chance
    (3, 1.138, True)
    """
    column([reading for _, reading in readings], "reading")
    names = sorted({name for name, _ in readings})
    dof = len(readings) - 2
    if len(names) < 2 or dof < 1:
        return None
    strict = 1 - (1 - confidence) / len(names)
    farthest = None
    for name in names:
        own = [math.log(reading) for which, reading in readings if which == name]
        others = [math.log(reading) for which, reading in readings if which != name]
        spread = math.sqrt((_squares(own) + _squares(others)) / dof)
        if spread < _SMALLEST:
            return None
        apart = fmean(own) - fmean(others)
        t = apart / (spread * math.sqrt(1 / len(own) + 1 / len(others)))
        if farthest is None or abs(t) > abs(farthest.t):
            beyond = abs(t) > t_factor(dof, strict)
            farthest = OddOne(name, math.exp(apart), t, t_probability(t, dof), beyond)
    return farthest


def _squares(values: list[float]) -> float:
    centre = fmean(values)
    return math.fsum([(value - centre) ** 2 for value in values])

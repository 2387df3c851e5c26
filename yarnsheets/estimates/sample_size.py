"""How many cuts are enough.

The answer is the smallest number whose own range, by Student's t, is as narrow as wished. The
shorter rule with the normal curve's 1.96 gives too few, most of all where few are needed.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from yarnsheets.estimates.estimate import t_factor
from yarnsheets.estimates.readings import spread_of_cuts
from yarnsheets.estimates.searching import first_whole

if TYPE_CHECKING:
    from collections.abc import Sequence

_NO_END = 10**12  # more cuts than anyone takes: a search from below is over long before


def half_width(spread: float, cuts: int, confidence: float = 0.95) -> float:
    """Return how far the range reaches to either side of the mean, as a fraction of it.

    ``half_width = t_factor(cuts - 1) * spread / cuts**0.5``

    Parameters
    ----------
    spread : float
        Coefficient of variation of the cuts, as a fraction. [1]
    cuts : int
        How many cuts are averaged. [1]
    confidence : float
        Share of such ranges that hold the true value, between 0 and 1. [1]

    Returns
    -------
    float
        Relative half width. [1]

    Raises
    ------
    ValueError
        If there are fewer than two cuts, or the confidence is not between 0 and 1.

    Range
    -----
    A spread of 0.05 to 0.3 for handspun (common practice, no source).

    Source
    ------
    ISO 2602:1980, Statistical interpretation of test results, Estimation of the mean (title and
    rule from memory).

    Examples
    --------
    >>> round(half_width(0.10, 18), 4)
    0.0497
    """
    return t_factor(cuts - 1, confidence) * spread / math.sqrt(cuts)


def cuts_needed(spread: float, wanted: float, confidence: float = 0.95) -> int:
    """Return the fewest cuts whose range reaches no further than wanted to either side.

    ``cuts = smallest n with t_factor(n - 1) * spread / n**0.5 <= wanted``

    Parameters
    ----------
    spread : float
        Coefficient of variation expected of the cuts, as a fraction. [1]
    wanted : float
        Half width wanted, as a fraction of the mean. [1]
    confidence : float
        Share of such ranges that hold the true value, between 0 and 1. [1]

    Returns
    -------
    int
        Cuts, at least 2. [1]

    Raises
    ------
    ValueError
        If the spread is negative, or the half width is not more than 0.

    Range
    -----
    The spread is a forecast: cuts that turn out more uneven than it give a wider range.

    Source
    ------
    ISO 2602:1980 for the range of a mean (from memory); the textile standards' sampling clauses
    have the same form with 1.96 in place of t (from memory).

    Examples
    --------
    >>> cuts_needed(0.10, 0.05)
    18
    """
    # the spread judged from the cuts themselves asks for a few more than one known beforehand
    fewest = max(2, cuts_needed_if_spread_known(spread, wanted, confidence))
    return first_whole(fewest, _NO_END, lambda cuts: half_width(spread, cuts, confidence) <= wanted)


def cuts_needed_if_spread_known(spread: float, wanted: float, confidence: float = 0.95) -> int:
    """Return the fewest cuts by the rule for a spread that is known beforehand.

    ``cuts = (z * spread / wanted)**2, rounded up``

    Parameters
    ----------
    spread : float
        Coefficient of variation known from much of the same yarn, as a fraction. [1]
    wanted : float
        Half width wanted, as a fraction of the mean. [1]
    confidence : float
        Share of such ranges that hold the true value, between 0 and 1. [1]

    Returns
    -------
    int
        Cuts, at least 1. [1]

    Raises
    ------
    ValueError
        If the spread is negative, or the half width is not more than 0.

    Range
    -----
    Too few by two to four if the spread is judged from these same cuts; `cuts_needed` is for that.

    Source
    ------
    The form of the sampling clauses of ASTM D2258 and ISO 2060 (from memory).

    Examples
    --------
    >>> cuts_needed_if_spread_known(0.10, 0.05)
    16
    """
    if not (0 <= spread < math.inf and 0 < wanted < math.inf):
        msg = (
            f"A spread of {spread:g} and a range of {wanted:g} to either side cannot both be met. "
            "Give the spread as 0 or more and the range as more than 0, as 0.10 and 0.05."
        )
        raise ValueError(msg)
    return max(1, math.ceil((t_factor(math.inf, confidence) * spread / wanted) ** 2))


def further_cuts(cuts: Sequence[float], wanted: float, confidence: float = 0.95) -> int:
    """Return how many more cuts would bring the range within what is wanted.

    ``further = cuts_needed(spread of the cuts) - cuts taken, 0 if that is less``

    Parameters
    ----------
    cuts : Sequence
        Lengths of the cuts taken, a sequence of at least two. [in]
    wanted : float
        Half width wanted, as a fraction of the mean. [1]
    confidence : float
        Share of such ranges that hold the true value, between 0 and 1. [1]

    Returns
    -------
    int
        Cuts to take besides those taken; 0 if these are enough. [1]

    Raises
    ------
    ValueError
        If there are fewer than two cuts, one is not a length, or the half width is not more than 0.

    Range
    -----
    A forecast that the spread stays as found. A spread found from three cuts may easily be half
    or twice the yarn's own, so ask again when the further cuts are in.

    Source
    ------
    As `cuts_needed`.

    Examples
    --------
    >>> further_cuts([9.6, 10.1, 10.4, 9.8, 10.6], 0.05)
    1
    """
    return max(0, cuts_needed(spread_of_cuts(cuts), wanted, confidence) - len(cuts))

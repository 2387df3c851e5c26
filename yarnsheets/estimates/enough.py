"""Whether what is there is enough for what is needed, when neither is known exactly.

What is needed is what the project really takes. A reserve is no part of it: it is a margin for
buying or spinning, and may be used up. So a chance always counts the pattern's own yards.

Both are positive and multiplied together from what was measured, so it is the ratio of the two
that is in doubt: yarn is enough when its ratio to the need is one or more.
"""

import math

from yarnsheets.estimates import student
from yarnsheets.estimates.budget import Budget, Component
from yarnsheets.estimates.estimate import PositiveEstimate


def chance_enough(at_hand: PositiveEstimate, needed: PositiveEstimate) -> float:
    """Return the chance that what is at hand is no less than what is needed.

    ``chance = T(ln(at_hand / needed) / (u1**2 + u2**2)**0.5, dof)``

    Parameters
    ----------
    at_hand : PositiveEstimate
        Yarn that is there, with its uncertainty and degrees of freedom. [yd]
    needed : PositiveEstimate
        Yarn that the project takes, without any reserve, with the same. [yd]

    Returns
    -------
    float
        Chance that it is enough, between 0 and 1. [1]

    Raises
    ------
    ValueError
        Nothing of its own: an estimate that is not above 0 is refused when it is made.

    Range
    -----
    Relative uncertainties up to about 0.3. If neither is in doubt the chance is 0 or 1.

    Source
    ------
    Follows from the estimates: a difference of two logarithms, each with Student's t, by JCGM
    100:2008, 5.1.6 and G.4.1. Exact where both uncertainties are known.

    Examples
    --------
    >>> have, need = PositiveEstimate(600.0, 30.0), PositiveEstimate(570.0, 40.0)
    >>> round(chance_enough(have, need), 3)
    0.724
    """
    budget = _doubt_of_ratio(at_hand, needed)
    log_ratio = math.log(at_hand.value / needed.value)
    if not budget.relative:
        return float(log_ratio >= 0)
    return student.probability(log_ratio / budget.relative, budget.dof)


def length_for_chance(chance: float, at_hand: PositiveEstimate, needed: PositiveEstimate) -> float:
    """Return how much there must be for the chance that it is enough to be as wanted.

    ``length = needed * e**(t(chance, dof) * (u1**2 + u2**2)**0.5)``

    Parameters
    ----------
    chance : float
        Chance that is wanted, between 0 and 1. [1]
    at_hand : PositiveEstimate
        Yarn that is there; more of it is taken to be as uncertain, for its size. [yd]
    needed : PositiveEstimate
        Yarn that the project takes, without any reserve. [yd]

    Returns
    -------
    float
        Least amount, measured as well as what is there, that has this chance. [yd]

    Raises
    ------
    ValueError
        If the chance is not between 0 and 1.

    Range
    -----
    Chances from 0.5 to 0.99; beyond that the tails of measurements are seldom known.

    Source
    ------
    Follows from `chance_enough`, solved for the length, by JCGM 100:2008, 5.1.6 and G.4.1.

    Examples
    --------
    >>> have, need = PositiveEstimate(600.0, 30.0), PositiveEstimate(570.0, 40.0)
    >>> round(length_for_chance(0.95, have, need), 1)
    656.8
    """
    if not 0 < chance < 1:
        msg = f"The chance is {chance:g}. Choose one between 0 and 1, such as 0.95."
        raise ValueError(msg)
    budget = _doubt_of_ratio(at_hand, needed)
    if not budget.relative:
        return needed.value
    return needed.value * math.exp(student.quantile(chance, budget.dof) * budget.relative)


def doubt_for_chance(chance: float, at_hand: float, needed: PositiveEstimate) -> float:
    """Return how much the yarn at hand may be in doubt for the chance to be as wanted.

    ``doubt = ((ln(at_hand / needed) / z(chance))**2 - needed.relative**2)**0.5``

    Parameters
    ----------
    chance : float
        Chance that is wanted, between 0 and 1. [1]
    at_hand : float
        Yarn that is there. [yd]
    needed : PositiveEstimate
        Yarn that the project takes, without any reserve, its doubt known and not judged. [yd]

    Returns
    -------
    float
        Largest relative standard uncertainty of `at_hand`; below 0 if even none is too much. [1]

    Raises
    ------
    ValueError
        If the chance is not between 0 and 1.

    Range
    -----
    Chances from 0.5 to 0.99. Below a half, more doubt is more chance, and this does not hold.

    Source
    ------
    Follows from `length_for_chance`, solved for the doubt of the yarn.

    Examples
    --------
    >>> need = PositiveEstimate(570.0, 40.0)
    >>> u = doubt_for_chance(0.95, 700.0, need)
    >>> round(length_for_chance(0.95, PositiveEstimate(700.0, 700.0 * u), need), 9)
    700.0
    """
    if not 0 < chance < 1:
        msg = f"The chance is {chance:g}. Choose one between 0 and 1, such as 0.95."
        raise ValueError(msg)
    log_ratio = math.log(at_hand / needed.value)
    z = student.quantile(chance, math.inf)
    if not z > 0:
        return math.inf if log_ratio >= 0 else -1.0
    square = (log_ratio / z) ** 2 - needed.relative**2
    return math.sqrt(square) if log_ratio >= 0 and square >= 0 else -1.0


def _doubt_of_ratio(at_hand: PositiveEstimate, needed: PositiveEstimate) -> Budget:
    return Budget(
        (
            Component("what is there", at_hand.relative, at_hand.dof),
            Component("what is needed", needed.relative, needed.dof),
        )
    )

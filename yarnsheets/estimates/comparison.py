"""Whether results by two or more methods for one skein differ by more than their noise.

The ratio of two results is judged, and by the uncertainty of both: their ranges may overlap a
little and the results still differ by more than their noise.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum
from itertools import combinations
from typing import TYPE_CHECKING

from yarnsheets.estimates.budget import Budget, Component
from yarnsheets.estimates.estimate import PositiveEstimate, t_factor, t_probability

if TYPE_CHECKING:
    from collections.abc import Mapping


class Verdict(Enum):
    """What a comparison comes to, in words to follow "they differ by"."""

    WITHIN_NOISE = "no more than their noise"
    BEYOND_NOISE = "more than their noise"


@dataclass(frozen=True)
class Comparison:
    """Two results for one skein: their ratio, and whether their noise explains it.

    `t` is the difference in standard uncertainties, `probability` how often noise alone makes
    it so large.
    """

    ratio: PositiveEstimate
    t: float
    probability: float
    verdict: Verdict


def compare(
    first: PositiveEstimate, second: PositiveEstimate, confidence: float = 0.95
) -> Comparison:
    """Return whether two independent results for one quantity differ by more than their noise.

    ``t = log(first / second) / (relative_first**2 + relative_second**2)**0.5``

    Parameters
    ----------
    first : PositiveEstimate
        Result by one method, with its uncertainty. [yd/lb]
    second : PositiveEstimate
        Result by the other; a target is one with an uncertainty of 0. [yd/lb]
    confidence : float
        Share of true agreements that the verdict leaves standing, between 0 and 1. [1]

    Returns
    -------
    Comparison
        Ratio of first to second, t, probability and verdict. [1]

    Raises
    ------
    ValueError
        If neither result has any uncertainty.

    Range
    -----
    Nothing that can err in both at once, such as one scale that weighed for both. "No more than
    their noise" does not say that they agree: with few readings noise can hide much.

    Source
    ------
    B. L. Welch, The generalization of Student's problem when several different population
    variances are involved, Biometrika 34 (1947), pages 28-35; JCGM 100:2008, G.4.1.

    Examples
    --------
    >>> balance, skein = PositiveEstimate(1050, 20, 4), PositiveEstimate(1000, 8)
    >>> print(compare(balance, skein).verdict.value)
    no more than their noise
    """
    budget = Budget(
        (
            Component("first", first.relative, first.dof),
            Component("second", second.relative, second.dof),
        )
    )
    if not budget.relative:
        msg = "Neither result has an uncertainty, so there is no noise to judge by. Give one."
        raise ValueError(msg)
    t = math.log(first.value / second.value) / budget.relative
    noise = abs(t) <= t_factor(budget.dof, confidence)
    ratio = first.value / second.value
    return Comparison(
        PositiveEstimate(ratio, ratio * budget.relative, budget.dof),
        t,
        t_probability(t, budget.dof),
        Verdict.WITHIN_NOISE if noise else Verdict.BEYOND_NOISE,
    )


def compare_all(
    results: Mapping[str, PositiveEstimate], confidence: float = 0.95
) -> dict[tuple[str, str], Comparison]:
    """Return the comparison of each two of several results for one skein.

    ``confidence of each pair = 1 - (1 - confidence) / pairs``

    With many pairs one of them will differ by chance; each is judged the more strictly for it, so
    that the confidence holds for all the verdicts together.

    Parameters
    ----------
    results : Mapping
        Results by the name of their method, two or more. [yd/lb]
    confidence : float
        Share of true agreements in which every verdict leaves them standing. [1]

    Returns
    -------
    dict
        Comparison by the two names; the probability is that of the pair alone. [1]

    Raises
    ------
    ValueError
        If there are fewer than two results, or a pair has no uncertainty.

    Range
    -----
    Two to about six methods; with more the verdicts are too lenient.

    Source
    ------
    O. J. Dunn, Multiple comparisons among means, Journal of the American Statistical Association
    56 (1961), pages 52-64 (from memory), for Bonferroni's inequality.

    Examples
    --------
    >>> results = {name: PositiveEstimate(1000, 10) for name in ("balance", "skein", "counter")}
    >>> len(compare_all(results))
    3
    """
    couples = list(combinations(results, 2))
    if not couples:
        msg = "There is nothing to compare with. Give results by two methods or more."
        raise ValueError(msg)
    strict = 1 - (1 - confidence) / len(couples)
    return {
        (first, second): compare(results[first], results[second], strict)
        for first, second in couples
    }

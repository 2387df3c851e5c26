"""How far two methods of measuring differ over several skeins, and may on the next one.

What matters is the next skein, so the range of one further difference is given, and not a
correlation, which is high for any two methods that both tell lace from rug yarn. Mean and standard
deviation of the differences are those of Bland and Altman; their limits, mean -+ 1.96 s, describe
very many skeins, and with five they hold the next difference only 85 times of 100.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from yarnsheets.estimates.checks import pairs
from yarnsheets.estimates.estimate import Estimate, PositiveEstimate
from yarnsheets.estimates.readings import mean, standard_deviation

if TYPE_CHECKING:
    from collections.abc import Sequence


@dataclass(frozen=True)
class Agreement:
    """Two methods over several skeins: the mean difference, and that on the next skein.

    From `relative_agreement` both are ratios, first over second.
    """

    difference: Estimate
    next_skein: Estimate
    deviation: float


def absolute_agreement(first: Sequence[float], second: Sequence[float]) -> Agreement:
    """Return how far two methods differ over several skeins, in the unit measured.

    ``next skein = mean(first - second) -+ t * s(first - second) * (1 + 1 / n)**0.5``

    Parameters
    ----------
    first : Sequence
        Results by one method, one for each skein, two at least. [yd/lb]
    second : Sequence
        Results by the other, in the same order. [yd/lb]

    Returns
    -------
    Agreement
        Mean difference, difference on the next skein, and standard deviation. [yd/lb]

    Raises
    ------
    ValueError
        If there are fewer than two skeins, the numbers differ, or a result is not a number.

    Range
    -----
    Skeins of about the same grist, whose differences bunch about their mean; `relative_agreement`
    is for skeins from lace to rug yarn.

    Source
    ------
    The prediction interval of one further observation, ISO 16269-8:2004 (title from memory); for
    the differences J. M. Bland and D. G. Altman, Statistical methods for assessing agreement
    between two methods of clinical measurement, Lancet 1986; 327: 307-310.

    Examples
    --------
    >>> absolute_agreement([1000, 1100, 1200], [1010, 1080, 1180]).difference.value
    10.0
    """
    one, other = pairs(first, second, ("first method", "second method"), lowest=-math.inf)
    return _agreement([a - b for a, b in zip(one, other, strict=True)])


def relative_agreement(first: Sequence[float], second: Sequence[float]) -> Agreement:
    """Return how far two methods differ over several skeins, as a ratio.

    ``next skein = exp(mean(log ratio) -+ t * s(log ratio) * (1 + 1 / n)**0.5)``

    Parameters
    ----------
    first : Sequence
        Results by one method, one for each skein, two at least. [yd/lb]
    second : Sequence
        Results by the other, in the same order. [yd/lb]

    Returns
    -------
    Agreement
        Geometric mean ratio and ratio on the next skein; `deviation` is of the logarithms. [1]

    Raises
    ------
    ValueError
        If there are fewer than two skeins, the numbers differ, or a result is not more than 0.

    Range
    -----
    Methods whose errors are a share of what is measured, as those of a grist are.

    Source
    ------
    As `absolute_agreement`; J. M. Bland and D. G. Altman, Measuring agreement in method comparison
    studies, Statistical Methods in Medical Research 1999; 8: 135-160, on the logarithms.

    Examples
    --------
    >>> round(relative_agreement([1010, 2020, 505], [1000, 2000, 500]).difference.value, 9)
    1.01
    """
    one, other = pairs(first, second, ("first method", "second method"))
    logs = _agreement([math.log(a / b) for a, b in zip(one, other, strict=True)])
    return Agreement(_as_ratio(logs.difference), _as_ratio(logs.next_skein), logs.deviation)


def _agreement(differences: Sequence[float]) -> Agreement:
    centre, deviation = mean(differences), standard_deviation(differences)
    # the next skein errs as each of these did, and by what their mean errs besides
    one_more = math.hypot(deviation, centre.uncertainty)
    return Agreement(centre, Estimate(centre.value, one_more, centre.dof), deviation)


def _as_ratio(logarithm: Estimate) -> PositiveEstimate:
    """Return the ratio whose logarithm this is; its range is then exactly that of the logarithm."""
    ratio = math.exp(logarithm.value)
    return PositiveEstimate(ratio, ratio * logarithm.uncertainty, logarithm.dof)

"""How far two methods of measuring differ over several skeins.

What matters is how far they may differ on the next skein, so the limits of agreement are given and
not a correlation, which is high for any two methods that both tell lace from rug yarn.
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
    """Two methods over several skeins: the mean difference, and the limits of agreement.

    The limits hold about 95 % of the differences; each of the three has its own range. From
    `relative_agreement` all are ratios, first over second.
    """

    difference: Estimate
    lower: Estimate
    upper: Estimate
    deviation: float


def absolute_agreement(
    first: Sequence[float], second: Sequence[float], multiple: float = 1.96
) -> Agreement:
    """Return how far two methods differ over several skeins, in the unit measured.

    ``limits = mean(first - second) -+ multiple * s(first - second)``

    Parameters
    ----------
    first : Sequence
        Results by one method, one for each skein, two at least. [yd/lb]
    second : Sequence
        Results by the other, in the same order. [yd/lb]
    multiple : float
        Standard deviations from the mean difference to a limit. [1]

    Returns
    -------
    Agreement
        Mean difference, limits of agreement and standard deviation. [yd/lb]

    Raises
    ------
    ValueError
        If there are fewer than two skeins, the numbers differ, or a result is not a number.

    Range
    -----
    Skeins of about the same grist; `relative_agreement` is for skeins from lace to rug yarn. With
    fewer than about 20 skeins the limits are ill known: look at their ranges.

    Source
    ------
    J. M. Bland and D. G. Altman, Statistical methods for assessing agreement between two methods
    of clinical measurement, Lancet 1986; 327: 307-310 (where the multiple is 2).

    Examples
    --------
    >>> absolute_agreement([1000, 1100, 1200], [1010, 1080, 1180]).difference.value
    10.0
    """
    one, other = pairs(first, second, ("first method", "second method"), lowest=-math.inf)
    differences = [a - b for a, b in zip(one, other, strict=True)]
    return limits_of_agreement(
        mean(differences).value, standard_deviation(differences), len(differences), multiple
    )


def relative_agreement(
    first: Sequence[float], second: Sequence[float], multiple: float = 1.96
) -> Agreement:
    """Return how far two methods differ over several skeins, as a ratio.

    ``limits = exp(mean(log(first / second)) -+ multiple * s(log(first / second)))``

    Parameters
    ----------
    first : Sequence
        Results by one method, one for each skein, two at least. [yd/lb]
    second : Sequence
        Results by the other, in the same order. [yd/lb]
    multiple : float
        Standard deviations from the mean difference to a limit. [1]

    Returns
    -------
    Agreement
        Geometric mean ratio and limits of agreement; `deviation` is of the logarithms. [1]

    Raises
    ------
    ValueError
        If there are fewer than two skeins, the numbers differ, or a result is not more than 0.

    Range
    -----
    Methods whose errors are a share of what is measured, as those of a grist are.

    Source
    ------
    J. M. Bland and D. G. Altman, Measuring agreement in method comparison studies, Statistical
    Methods in Medical Research 1999; 8: 135-160, on the logarithmic transformation.

    Examples
    --------
    >>> round(relative_agreement([1010, 2020, 505], [1000, 2000, 500]).difference.value, 9)
    1.01
    """
    one, other = pairs(first, second, ("first method", "second method"))
    logs = [math.log(a / b) for a, b in zip(one, other, strict=True)]
    plain = limits_of_agreement(mean(logs).value, standard_deviation(logs), len(logs), multiple)
    return Agreement(
        _as_ratio(plain.difference), _as_ratio(plain.lower), _as_ratio(plain.upper), plain.deviation
    )


def limits_of_agreement(
    difference: float, deviation: float, skeins: int, multiple: float = 1.96
) -> Agreement:
    """Return the limits of agreement from the mean and standard deviation of the differences.

    ``limits = difference -+ multiple * deviation, each uncertain by (3 / n)**0.5 * deviation``

    Parameters
    ----------
    difference : float
        Mean of the differences. [yd/lb]
    deviation : float
        Standard deviation of the differences. [yd/lb]
    skeins : int
        How many skeins were measured by both methods. [1]
    multiple : float
        Standard deviations from the mean difference to a limit. [1]

    Returns
    -------
    Agreement
        Mean difference, limits of agreement and standard deviation. [yd/lb]

    Raises
    ------
    ZeroDivisionError
        If there are no skeins.

    Range
    -----
    Differences that bunch about their mean; the uncertainty of a limit is the authors' own
    approximation, good from about 10 skeins.

    Source
    ------
    J. M. Bland and D. G. Altman, Statistical methods for assessing agreement between two methods
    of clinical measurement, Lancet 1986; 327: 307-310.

    Examples
    --------
    >>> found = limits_of_agreement(-2.1, 38.8, 17, multiple=2)
    >>> round(found.lower.value, 1), round(found.upper.value, 1)
    (-79.7, 75.5)
    """
    of_mean, of_limit = deviation / math.sqrt(skeins), deviation * math.sqrt(3 / skeins)
    reach, dof = multiple * deviation, skeins - 1
    return Agreement(
        Estimate(difference, of_mean, dof),
        Estimate(difference - reach, of_limit, dof),
        Estimate(difference + reach, of_limit, dof),
        deviation,
    )


def _as_ratio(logarithm: Estimate) -> PositiveEstimate:
    """Return the ratio whose logarithm this is; its range is then exactly that of the logarithm."""
    ratio = math.exp(logarithm.value)
    return PositiveEstimate(ratio, ratio * logarithm.uncertainty, logarithm.dof)

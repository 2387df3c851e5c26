"""A value, how sure it is, and the range it lies in.

A range is by Student's t with the degrees of freedom that the value has, never a bare
plus-or-minus: a spread judged from five cuts is itself badly known, and the range says so.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from yarnsheets.estimates import student
from yarnsheets.estimates.checks import above_nought

if TYPE_CHECKING:
    from yarnsheets.units import Scale


class Interval(NamedTuple):
    """The two ends of a range, both within it."""

    low: float
    high: float


@dataclass(frozen=True)
class Estimate:
    """A value with its standard uncertainty and degrees of freedom; its range is a sum.

    The degrees of freedom are infinite where the uncertainty is known and not judged from a few
    readings. This kind serves what may be nought or negative, such as a difference.

    >>> low, high = Estimate(1010.0, 18.44, 4).interval()
    >>> round(low, 1), round(high, 1)
    (958.8, 1061.2)
    """

    value: float
    uncertainty: float
    dof: float = math.inf

    @property
    def relative(self) -> float:
        """The standard uncertainty as a fraction of the value."""
        return self.uncertainty / abs(self.value)

    def expanded(self, confidence: float = 0.95) -> float:
        """Return the half width of the range, in the value's unit."""
        return t_factor(self.dof, confidence) * self.uncertainty

    def interval(self, confidence: float = 0.95) -> Interval:
        """Return the range that holds the true value in that share of such ranges."""
        half_width = self.expanded(confidence)
        return Interval(self.value - half_width, self.value + half_width)


@dataclass(frozen=True)
class PositiveEstimate(Estimate):
    """An estimate of what is more than nought, such as a grist; its range is a factor either way.

    The range is Student's t on the logarithm of the value, so it never reaches nought and is the
    same range whether the yarn is spoken of in tex or in yards per pound. The two plain ones are
    neither: a plus-or-minus in tex, turned over, has no upper end for every seventh sample of
    three cuts at a spread of 30 %. In the simulations of `tests/estimates/test_coverage_study.py`
    all three hold the truth about as often; `grist_from_cuts` says for which yarns that is 95 %.

    >>> low, high = PositiveEstimate(1000.0, 20.0, 4).interval()
    >>> round(low, 1), round(high, 1)
    (946.0, 1057.1)
    """

    def __post_init__(self) -> None:
        """Refuse a value that has no logarithm."""
        above_nought("value", self.value)

    def interval(self, confidence: float = 0.95) -> Interval:
        """Return the range that holds the true value in that share of such ranges."""
        return factor_interval(self.value, t_factor(self.dof, confidence) * self.relative)

    def converted(self, scale: Scale) -> PositiveEstimate:
        """Return the same estimate in another unit; the relative uncertainty stays."""
        value = float(scale.apply(self.value))
        return PositiveEstimate(value, value * self.relative, self.dof)


def factor_interval(value: float, exponent: float) -> Interval:
    """Give the range from a value over a factor to the value times it, by the factor's logarithm.

    >>> low, high = factor_interval(1000.0, math.log(2))
    >>> round(low, 9), round(high, 9)
    (500.0, 2000.0)
    """
    # past e**700 a number overflows: a range so wide has no upper end
    factor = math.exp(exponent) if exponent < 700 else math.inf
    return Interval(value / factor, value * factor)


def t_factor(dof: float, confidence: float = 0.95) -> float:
    """Return how many standard uncertainties the range reaches to either side.

    ``t_factor = t((1 + confidence) / 2, dof)``

    Parameters
    ----------
    dof : float
        Degrees of freedom, one fewer than the readings; infinite gives the normal curve's. [1]
    confidence : float
        Share of such ranges that hold the true value, between 0 and 1. [1]

    Returns
    -------
    float
        Student's t, two-sided. [1]

    Raises
    ------
    ValueError
        If there are no degrees of freedom, or the confidence is not between 0 and 1.

    Range
    -----
    12.7 for two readings, 2.8 for five, 1.96 for very many, at a confidence of 0.95.

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, G.3 and table G.2.

    Examples
    --------
    >>> round(t_factor(4), 6)
    2.776445
    """
    if not dof > 0:
        msg = (
            "One reading tells nothing of how readings differ, so it has no range. "
            "Take at least two."
        )
        raise ValueError(msg)
    if not 0 < confidence < 1:
        msg = f"A confidence of {confidence:g} is not a share. Give one between 0 and 1, as 0.95."
        raise ValueError(msg)
    return student.quantile((1 + confidence) / 2, dof)


def t_probability(t: float, dof: float) -> float:
    """Return how often chance alone gives so large a t, of either sign.

    ``probability = 2 * P(T < -abs(t))``

    Parameters
    ----------
    t : float
        A difference divided by its standard uncertainty. [1]
    dof : float
        Degrees of freedom of that uncertainty. [1]

    Returns
    -------
    float
        Two-sided probability, 1 for a t of 0. [1]

    Raises
    ------
    ValueError
        If there are no degrees of freedom.

    Range
    -----
    Between 0 and 1.

    Source
    ------
    Student, The Probable Error of a Mean, Biometrika 6 (1908), pages 1-25.

    Examples
    --------
    >>> round(t_probability(1.0, 1), 9)
    0.5
    """
    if not dof > 0:
        msg = "A difference needs at least one degree of freedom. Take one more reading."
        raise ValueError(msg)
    return 2 * student.probability(-abs(t), dof)

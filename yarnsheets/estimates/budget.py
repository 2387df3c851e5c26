"""An error budget: what each source of error adds to the uncertainty of a grist.

A grist is a product and quotient of what was measured, so relative uncertainties add by their
squares; the largest one rules, and the budget shows which it is. The range that a budget gives
never narrows when any doubt in it grows, and is never wider than errors within bounds can be.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from yarnsheets.estimates.checks import above_nought, nought_or_more
from yarnsheets.estimates.estimate import Interval, factor_interval, t_factor


@dataclass(frozen=True)
class Component:
    """One source of error: its name, relative standard uncertainty and degrees of freedom.

    `bound` is the largest error it can make, as a fraction of the result; infinite where none is
    known. `relative` and `bound` may be columns, of many results with the same sources.
    """

    name: str
    relative: float
    dof: float = math.inf
    bound: float = math.inf

    def scaled(self, by: Any) -> Component:
        """Return the same source where its error is so many times as large, or a column of them.

        >>> rectangular("trimming", 0.5).scaled(0.02).bound
        0.01
        """
        return Component(self.name, self.relative * by, self.dof, self.bound * by)

    @property
    def is_judged(self) -> bool:
        """Whether it was judged from few readings, and so is itself badly known."""
        return math.isfinite(self.dof)


@dataclass(frozen=True)
class Budget:
    """All the sources of error of one result, each independent of the others.

    >>> budget = Budget((Component("scale", 0.03), Component("reel", 0.04)))
    >>> budget.relative
    0.05
    >>> {name: round(share, 2) for name, share in budget.shares.items()}
    {'scale': 0.36, 'reel': 0.64}
    """

    components: tuple[Component, ...]

    @property
    def relative(self) -> float:
        """The combined relative standard uncertainty, the root of the sum of the squares.

        JCGM 100:2008, 5.1.6, equation 12.
        """
        return math.hypot(*(each.relative for each in self.components))

    @property
    def dof(self) -> float:
        """The effective degrees of freedom, by the formula of Welch and Satterthwaite.

        For a test of a difference; `expanded` says why a range does not use them. JCGM 100:2008,
        G.4.1, equation G.2b.
        """
        fourth_powers = sum(
            share**2 / each.dof
            for each, share in zip(self.components, self._variance_shares(), strict=True)
        )
        return 1 / fourth_powers if fourth_powers else math.inf

    @property
    def shares(self) -> dict[str, float]:
        """The share of the variance that each source has, by name; together they are 1."""
        shares: dict[str, float] = {}
        for each, share in zip(self.components, self._variance_shares(), strict=True):
            shares[each.name] = shares.get(each.name, 0.0) + share
        return shares

    @property
    def largest(self) -> str:
        """The source with the largest share.

        >>> Budget((Component("scale", 0.03), Component("reel", 0.04))).largest
        'reel'
        """
        return max(self.shares.items(), key=lambda share: share[1])[0]

    def from_few(self, confidence: float = 0.95) -> float:
        """Return what sources judged from few readings make of the half width, by Student's t.

        >>> budget = Budget((Component("cuts", 0.03, 4), Component("reel", 0.04)))
        >>> round(budget.from_few(), 6)
        0.083293
        """
        parts = [t_factor(e.dof, confidence) * e.relative for e in self.components if e.is_judged]
        return _together(parts)

    def by_normal_curve(self, confidence: float = 0.95) -> float:
        """Return what the other sources make of it, by the normal curve.

        >>> budget = Budget((Component("cuts", 0.03, 4), Component("reel", 0.04)))
        >>> round(budget.by_normal_curve(), 6)
        0.078399
        """
        parts = [e.relative for e in self.components if not e.is_judged]
        return t_factor(math.inf, confidence) * _together(parts)

    def by_bounds(self, confidence: float = 0.95) -> float:
        """Return that share of their largest errors together; infinite if one has no bound.

        >>> Budget((rectangular("trimming", 0.01), rectangular("stretch", 0.02))).by_bounds(0.5)
        0.015
        """
        return confidence * sum(e.bound for e in self.components if not e.is_judged)

    def expanded(self, confidence: float = 0.95) -> float:
        """Return the half width of the range, of the result's logarithm.

        ``half width = (from_few**2 + min(by_normal_curve, by_bounds)**2)**0.5``

        A single error within bounds that rules the budget reaches 0.95 of its half width and not
        1.13 (JCGM 100:2008, G.6.5).

        Degrees of freedom for all sources together, by Welch and Satterthwaite, are not used: they
        grow with every source that is known well, so that a range would narrow when one such gets
        worse, and with two cuts it would hold the truth less than 90 times of 100. The sum of
        squares is an approximation: with the errors that worksheets begin with, it holds the truth
        95 to 97 times of 100, from 2 to 20 cuts (`tests/estimates/test_coverage_study.py`). It is
        cautious, 99 times, where a second error within bounds is a tenth of one that rules, and a
        little bold, 93 times, where many readings judge what is a third of it.

        >>> Budget((rectangular("scale", 0.01),)).expanded()
        0.0095
        """
        known = min(self.by_normal_curve(confidence), self.by_bounds(confidence))
        return math.hypot(self.from_few(confidence), known)

    def either_way(self, confidence: float = 0.95) -> float:
        """Return how far the farther end of the range lies from the result, as a fraction of it.

        >>> round(Budget((Component("scale", 0.03), Component("reel", 0.04))).either_way(), 6)
        0.102961
        """
        return self.range_of(1.0, confidence).high - 1

    def range_of(self, value: float, confidence: float = 0.95) -> Interval:
        """Return the range of a result, a factor either way, that holds the true value so often.

        >>> low, high = Budget((Component("scale", 0.03), Component("reel", 0.04))).range_of(1000)
        >>> round(low, 1), round(high, 1)
        (906.7, 1103.0)
        """
        return factor_interval(value, self.expanded(confidence))

    def _variance_shares(self) -> list[float]:
        """Return each component's share of the variance, equal ones if there is no error."""
        largest = max((each.relative for each in self.components), default=0.0)
        if not largest:
            return [1 / len(self.components) for _ in self.components]
        # by the largest first, so that the square of a very small one is not lost
        squares = [(each.relative / largest) ** 2 for each in self.components]
        return [square / sum(squares) for square in squares]


def _together(parts: list[float]) -> float:
    """Return the root of the sum of the squares, of numbers or of columns."""
    root: float = sum(part**2 for part in parts) ** 0.5
    return root


def stated(name: str, either_way: float) -> Component:
    """Return a source of error that is stated as a range, 95 % sure.

    ``relative = either_way / t(0.975, infinite)``

    Parameters
    ----------
    name : str
        What the error comes from. [1]
    either_way : float
        How far the result may be off to either side, as a fraction of it. [1]

    Returns
    -------
    Component
        Source with its relative standard uncertainty, and no bound. [1]

    Raises
    ------
    ValueError
        If the range is negative or not a number.

    Range
    -----
    From 0 to about 0.3; beyond that the two sides of a range are not alike.

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 4.3.4.

    Examples
    --------
    >>> round(stated("length on the label", 0.02).relative, 6)
    0.010204
    """
    return Component(name, nought_or_more(f"error of {name}", either_way) / t_factor(math.inf))


def rectangular(name: str, half_width: float) -> Component:
    """Return a source of error that is anywhere within bounds, each place as likely.

    ``relative = half_width / 3**0.5``

    Parameters
    ----------
    name : str
        What the error comes from. [1]
    half_width : float
        Largest error to either side, as a fraction of the result. [1]

    Returns
    -------
    Component
        Source with its relative standard uncertainty and its bound. [1]

    Raises
    ------
    ValueError
        If the half width is negative or not a number.

    Range
    -----
    From 0 to about 0.1; beyond that relative errors no longer add by their squares.

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 4.3.7.

    Examples
    --------
    >>> round(rectangular("stretch", 0.005).relative, 6)
    0.002887
    """
    bound = nought_or_more(f"error of {name}", half_width)
    return Component(name, bound / math.sqrt(3), bound=bound)


def resolution(name: str, step: float, *, tare: bool = False) -> Component:
    """Return the error of a scale that shows its result in whole steps.

    ``relative = step / 12**0.5``

    A reading is off by half a step at most, the difference of two by a whole one.

    Parameters
    ----------
    name : str
        What is weighed. [1]
    step : float
        One step of the display, as a fraction of the mass weighed. [1]
    tare : bool
        Whether two readings were taken, gross and tare: then 6 in place of 12. [1]

    Returns
    -------
    Component
        Source with its relative standard uncertainty and its bound. [1]

    Raises
    ------
    ValueError
        If the step is negative or not a number.

    Range
    -----
    A step of 1 g on a skein of 50 g is 0.02.

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, F.2.2.1.

    Examples
    --------
    >>> round(resolution("skein", 0.1 / 56.7, tare=True).relative, 9)
    0.000720015
    """
    nought_or_more(f"error of {name}", step)
    if tare:
        return Component(name, step / math.sqrt(6), bound=step)
    return Component(name, step / math.sqrt(12), bound=step / 2)


def unevenness(spread: float, cuts: int, *, spread_known: bool = False) -> Component:
    """Return the error of judging an uneven yarn from a few cuts.

    ``relative = spread / cuts**0.5``

    A spread that these same cuts tell has one degree of freedom fewer than they are; one known
    beforehand has no end of them, and serves a single cut too.

    Parameters
    ----------
    spread : float
        Coefficient of variation of the cuts, as a fraction. [1]
    cuts : int
        How many cuts were averaged. [1]
    spread_known : bool
        Whether the spread was known beforehand, and not judged from these cuts. [1]

    Returns
    -------
    Component
        Source with its relative standard uncertainty and degrees of freedom. [1]

    Raises
    ------
    ValueError
        If there are too few cuts, or the spread is negative or not a number.

    Range
    -----
    A spread of 0.05 to 0.3 for handspun (common practice, no source).

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 4.2.3.

    Examples
    --------
    >>> round(unevenness(0.08, 5).relative, 6)
    0.035777
    """
    if cuts < (1 if spread_known else 2):
        msg = (
            "One cut tells nothing of how uneven the yarn is. "
            "Take at least two, from different parts of the skein."
        )
        raise ValueError(msg)
    relative = nought_or_more("spread", spread) / math.sqrt(cuts)
    dof = math.inf if spread_known else cuts - 1
    return Component("unevenness of the yarn", relative, dof)


def balance_budget(
    cut: float,
    spread: float,
    cuts: int,
    *,
    spread_known: bool = False,
    trimming: float = 1 / 16,
    stretch: float = 0.005,
    counterweight: float = 1 / 126,
    scale: float = 0.0,
    humidity: float = 0.0,
) -> Budget:
    """Return the error budget of a grist measured by cuts on a yarn balance.

    ``relative = (trimming**2 + stretch**2 + counterweight**2 + spread**2 / cuts + ...)**0.5``

    All but the unevenness are taken as common to the cuts, so more cuts do not lessen them. That
    is cautious for the trimming, whose error also shows, in part, in the spread of the cuts.

    Parameters
    ----------
    cut : float
        Mean length of the cuts. [in]
    spread : float
        Coefficient of variation of the cuts, as a fraction. [1]
    cuts : int
        How many cuts were averaged. [1]
    spread_known : bool
        Whether the spread was known beforehand, and not judged from these cuts. [1]
    trimming : float
        Largest error of a cut's length, a rectangular half width. [in]
    stretch : float
        Largest stretch or slack while measuring, as a fraction of the length. [1]
    counterweight : float
        Largest error of the counterweight, as a fraction of its mass. [1]
    scale : float
        One step of the scale that weighed the counterweight, as a fraction of its mass. [1]
    humidity : float
        Largest change of the yarn's mass with the humidity of the air, as a fraction. [1]

    Returns
    -------
    Budget
        Sources of error by name. [1]

    Raises
    ------
    ValueError
        If the cut is not more than 0, there are too few cuts, or an error is negative.

    Range
    -----
    Cuts of about 4 to 40 in (common practice, no source). The defaults are what a careful spinner
    keeps to: a sixteenth of an inch, half a per cent of stretch, and a milligram in the 126 mg of
    the usual counterweight (common practice, no source).

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 5.1.6.

    Examples
    --------
    >>> round(balance_budget(10, 0.08, 5).relative, 4)
    0.0364
    """
    return Budget(
        (
            rectangular("trimming", trimming / above_nought("cut", cut)),
            rectangular("stretch", stretch),
            rectangular("counterweight", counterweight),
            resolution("scale", scale),
            unevenness(spread, cuts, spread_known=spread_known),
            rectangular("humidity", humidity),
        )
    )

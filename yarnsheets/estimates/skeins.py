"""The grist of a yarn from weighed skeins of counted turns.

One skein has its error budget: scale, count, reel and build-up. Several skeins of one yarn show
besides how skeins differ, which no budget of a single one can tell.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from yarnsheets import formulas
from yarnsheets.estimates.budget import Budget, rectangular, resolution
from yarnsheets.estimates.checks import above_nought, nought_or_more, pairs
from yarnsheets.estimates.estimate import PositiveEstimate

if TYPE_CHECKING:
    from collections.abc import Sequence


def wound_circumference(circumference: float, build_up: float) -> float:
    """Return the mean length of a turn, with the yarn that builds up under it.

    ``circumference = bare circumference + pi * build_up``

    Parameters
    ----------
    circumference : float
        Length of one turn on the bare reel. [in]
    build_up : float
        Thickness of the finished skein on the reel. [in]

    Returns
    -------
    float
        Mean length of a turn. [in]

    Raises
    ------
    ValueError
        If the circumference is not more than 0, or the build-up is negative.

    Range
    -----
    1/16 in on a reel of 54 in makes the last turn 0.7 % longer than the first, and the mean turn
    half of that.

    Source
    ------
    Geometry: the mean radius grows by half of the build-up.

    Examples
    --------
    >>> round(wound_circumference(54, 1 / 16), 4)
    54.1963
    """
    above_nought("circumference", circumference)
    return circumference + math.pi * nought_or_more("build-up", build_up)


def skein_budget(
    turns: float,
    circumference: float,
    mass: float,
    *,
    resolution_of_scale: float,
    tare: bool = False,
    miscount: float = 0.0,
    error_of_circumference: float = 0.0,
    build_up: float = 0.0,
) -> Budget:
    """Return the error budget of a weighed skein of counted turns.

    ``relative = (scale**2 + turns**2 + circumference**2 + build_up**2)**0.5``

    Parameters
    ----------
    turns : float
        Turns round the reel. [1]
    circumference : float
        Length of one turn on the bare reel. [in]
    mass : float
        Mass of the skein. [g]
    resolution_of_scale : float
        One step of the scale. [g]
    tare : bool
        Whether gross and tare were read apart. [1]
    miscount : float
        Turns that the count may be out by, to either side. [1]
    error_of_circumference : float
        Largest error of the circumference. [in]
    build_up : float
        Thickness of the finished skein on the reel. [in]

    Returns
    -------
    Budget
        Sources of error by name. [1]

    Raises
    ------
    ValueError
        If the turns, circumference or mass is not more than 0, or an error is negative.

    Range
    -----
    A mean turn may lie anywhere from the first to the last, so the build-up that
    `wound_circumference` corrects for leaves an error of up to the correction itself.

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 4.3.7, 5.1.6, F.2.2.1.

    Examples
    --------
    >>> budget = skein_budget(100, 54, 56.7, resolution_of_scale=0.1, tare=True)
    >>> round(budget.relative, 6)
    0.00072
    """
    above_nought("number of turns", turns)
    above_nought("mass", mass)
    wound = wound_circumference(circumference, build_up)
    return Budget(
        (
            resolution("scale", resolution_of_scale / mass, tare=tare),
            rectangular("count of turns", miscount / turns),
            rectangular("circumference", error_of_circumference / wound),
            rectangular("build-up on the reel", (wound - circumference) / wound),
        )
    )


def grist_from_skeins(lengths: Sequence[float], masses: Sequence[float]) -> PositiveEstimate:
    """Return the grist of a yarn from several weighed skeins of it.

    ``grist = sum(lengths) / sum(masses)``

    Parameters
    ----------
    lengths : Sequence
        Lengths of the skeins, a sequence of at least two. [yd]
    masses : Sequence
        Masses of the skeins, in the same order. [lb]

    Returns
    -------
    PositiveEstimate
        Grist, its uncertainty judged from how the skeins differ. [yd/lb]

    Raises
    ------
    ValueError
        If there are fewer than two skeins, the numbers differ, or one is not more than 0.

    Range
    -----
    Skeins of about the same length. They stand for a lot of yarn of which they are a few. What
    all of them share, as the reel's circumference, does not show in how they differ: a `Budget`
    joins it to this.

    Source
    ------
    W. G. Cochran, Sampling Techniques, 3rd edition, 1977, chapter 6, ratio estimates (formula from
    memory).

    Examples
    --------
    >>> grist_from_skeins([100, 300], [0.125, 0.375]).value
    800.0
    """
    length, mass = pairs(lengths, masses, ("length", "mass"))
    all_length, all_mass, count = math.fsum(length), math.fsum(mass), len(mass)
    per_length = all_mass / all_length
    residual = math.fsum([(m - per_length * n) ** 2 for n, m in zip(length, mass, strict=True)])
    between = math.sqrt(count / (count - 1) * residual) / all_mass
    grist = formulas.grist(all_length, all_mass)
    return PositiveEstimate(grist, grist * between, count - 1)

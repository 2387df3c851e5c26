"""What is probably wrong with an unlikely input, in a sentence; None if it is likely enough.

These are hints beside a result, not refusals: each names what is odd, what is usual, and what to
check. A slip of the unit is named where the other unit would make the input a likely one.

A number is written by `say`, in the unit of the hint's own or in whatever unit a page shows. Words
like finer or shorter hold in all of them, and so does one end of what is usual; both ends in a row
would be the wrong way round in a unit of mass to a length.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from statistics import median
from typing import TYPE_CHECKING

from yarnsheets.estimates.readings import spread_of_cuts
from yarnsheets.published.sources import GRIST, WRAPS_PER_INCH
from yarnsheets.units import convert

if TYPE_CHECKING:
    from collections.abc import Sequence

SHORT_CUT, LONG_CUT = 4, 40
"""Usual cuts on a balance, in inches (common practice, no source)."""

WIDEST_SPREAD = 0.40
"""A spread above this is seldom the yarn's own (common practice, no source)."""

Say = Callable[[float, str], str]
"""How a number of some dimension is written."""

# What is measured is never so small in any unit asked for; the arithmetic would lose it.
_NOTHING = 1e-9

NEAR = 0.10
"""How near to a unit's factor a ratio must be to look like that slip: the noise of a few cuts."""


_OWN_UNITS = {"grist": "yd/lb", "short": "in", "length": "yd", "mass": "lb", "wraps": "to the inch"}


def in_own_unit(value: float, dimension: str) -> str:
    """Write a number in the unit that hints compute in.

    >>> in_own_unit(9.6, "short")
    '9.6 in'
    """
    return f"{said(value)} {_OWN_UNITS[dimension]}"


def unlikely_grist(grist: float, say: Say = in_own_unit) -> str | None:
    """Return what is odd about a grist.

    Parameters
    ----------
    grist : float
        Grist found. [yd/lb]
    say : Callable
        How a number is written. [1]

    Returns
    -------
    str or None
        One or two sentences, or None for a grist from 100 to 30000 yd/lb.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_grist(10))
    A grist of 10 yd/lb is thicker than handspun yarn usually is, 100 yd/lb at the thickest. \
Check the unit of the length and of the mass, and the balance factor.
    """
    if odd := not_a_measure("grist", grist):
        return odd
    if GRIST.low <= grist <= GRIST.high:
        return None
    side, usual, end = (
        ("thicker", GRIST.low, "thickest") if grist < GRIST.low else ("finer", GRIST.high, "finest")
    )
    return (
        f"A grist of {say(grist, 'grist')} is {side} than handspun yarn usually is, "
        f"{say(usual, 'grist')} at the {end}. Check the unit of the length and of the mass, and "
        "the balance factor."
    )


def unlikely_cut(cut: float, expected: float | None = None, say: Say = in_own_unit) -> str | None:
    """Return what is odd about the length of a cut.

    Parameters
    ----------
    cut : float
        Length that balances. [in]
    expected : float
        Length expected from the other cuts, or from the grist by another method. [in]
    say : Callable
        How a number is written. [1]

    Returns
    -------
    str or None
        One or two sentences, or None for a cut of 4 to 40 in that is near what is expected.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_cut(25, expected=10))
    A cut of 25 in is 2.5 times the 10 in expected: it looks like centimetres. Check the ruler.
    """
    if odd := not_a_measure("cut", cut):
        return odd
    if expected is not None and not_a_measure("expected", expected) is None:
        ratio = cut / expected
        times = (
            f"A cut of {say(cut, 'short')} is {said(ratio, 2)} times the {say(expected, 'short')}"
        )
        rulers = {"centimetres": convert(1.0, "in", "cm"), "millimetres": convert(1.0, "in", "mm")}
        slip = unit_slip(ratio, rulers)
        if slip is not None:
            return f"{times} expected: it looks like {slip}. Check the ruler."
        if not 0.5 <= ratio <= 2:
            return (
                f"{times} expected. "
                "Check that the balance swings freely, and cut again from another place."
            )
    if SHORT_CUT <= cut <= LONG_CUT:
        return None
    side, usual, trouble = (
        ("shorter", SHORT_CUT, "trimming") if cut < SHORT_CUT else ("longer", LONG_CUT, "handling")
    )
    return (
        f"A cut of {say(cut, 'short')} is {side} than the usual {say(usual, 'short')}, and its "
        f"{trouble} spoils the result. Check the unit, or use another counterweight."
    )


def unlikely_cuts(cuts: Sequence[float], say: Say = in_own_unit) -> str | None:
    """Return what is odd about several cuts of one yarn.

    Parameters
    ----------
    cuts : Sequence
        Lengths that balance the same counterweight, a sequence of at least two. [in]
    say : Callable
        How a number is written. [1]

    Returns
    -------
    str or None
        One or two sentences about the first odd cut or the spread of them all, or None.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_cuts([10.0, 10.0, 10.0]))
    All 3 cuts are exactly 10 in, and yarn is seldom so even. Check that each was trimmed and \
measured anew.
    """
    for cut in cuts:
        if odd := not_a_measure("cut", cut):
            return odd
    for place, cut in enumerate(cuts):
        others = [*cuts[:place], *cuts[place + 1 :]]
        # of two cuts neither shows the other wrong, so it takes two others to expect by
        expected = median(others) if len(others) > 1 else None
        if odd := unlikely_cut(cut, expected, say):
            return odd
    if len(cuts) > 2 and len(set(cuts)) == 1:
        return (
            f"All {len(cuts)} cuts are exactly {say(cuts[0], 'short')}, and yarn is seldom so "
            "even. Check that each was trimmed and measured anew."
        )
    if len(cuts) > 1 and (spread := spread_of_cuts(cuts)) > WIDEST_SPREAD:
        return (
            f"The cuts spread by {spread:.0%}, more than a yarn usually does, 5 to 30%. "
            "Check that all are of one yarn and in one unit."
        )
    return None


def unlikely_wraps(wraps: float, say: Say = in_own_unit) -> str | None:
    """Return what is odd about wraps per inch.

    Parameters
    ----------
    wraps : float
        Wraps per inch, laid by hand. [1/in]
    say : Callable
        How a number is written. [1]

    Returns
    -------
    str or None
        One or two sentences, or None for 3 to 70.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_wraps(90))
    Wraps of 90 to the inch are more than usual, 70 to the inch at most. Check that the wraps \
touch without pressing, and were divided by the length they cover.
    """
    if odd := not_a_measure("number of wraps", wraps):
        return odd
    if WRAPS_PER_INCH.low <= wraps <= WRAPS_PER_INCH.high:
        return None
    side, usual, end = (
        ("fewer", WRAPS_PER_INCH.low, "least")
        if wraps < WRAPS_PER_INCH.low
        else ("more", WRAPS_PER_INCH.high, "most")
    )
    return (
        f"Wraps of {say(wraps, 'wraps')} are {side} than usual, {say(usual, 'wraps')} at {end}. "
        "Check that the wraps touch without pressing, and were divided by the length they cover."
    )


def not_a_measure(name: str, value: float) -> str | None:
    """Return a sentence if a value cannot be a length, a mass or a count, else None."""
    if _NOTHING < value < math.inf:
        return None
    size = "0" if 0 <= value <= _NOTHING else f"{value:g}"
    return f"The {name} is {size}, which cannot be. Measure again; it must be more than 0."


def unit_slip(ratio: float, units: dict[str, float]) -> str | None:
    """Return the name of the unit that a ratio to what is expected looks like, else None.

    `units` says of each how many of it make one of the unit meant.
    """
    for name, in_one in units.items():
        if math.exp(-NEAR) < ratio / in_one < math.exp(NEAR):
            return name
    return None


def said(value: float, figures: int = 4) -> str:
    """Return a number as a reader says it: so many figures and no power of ten."""
    if not value:
        return "0"
    decimals = figures - 1 - math.floor(math.log10(abs(value)))
    if decimals < 0:
        ten = 10**-decimals
        return f"{round(value / ten) * ten}"
    text = f"{value:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text

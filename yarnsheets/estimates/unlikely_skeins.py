"""What is probably wrong with an unlikely skein: its mass, its turns, the counter's reading.

As `unlikely` does for cuts and grist: a sentence that names what is odd, the usual range and what
to check, or None.
"""

from __future__ import annotations

import math

from yarnsheets import formulas
from yarnsheets.estimates.unlikely import (
    Say,
    in_own_unit,
    not_a_measure,
    said,
    unit_slip,
    unlikely_grist,
)
from yarnsheets.published.sources import GRIST
from yarnsheets.units import convert


def unlikely_mass(mass: float, unit: str, length: float, say: Say = in_own_unit) -> str | None:
    """Return what is odd about the mass of a skein of known length.

    Parameters
    ----------
    mass : float
        Mass as typed. [oz or g]
    unit : str
        Unit it was typed in, "oz" or "g". [1]
    length : float
        Length of the skein. [yd]
    say : Callable
        How a length or a grist is written; a mass stays in the unit it was typed in. [1]

    Returns
    -------
    str or None
        One or two sentences, or None for a mass that makes a usual grist.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_mass(56.7, "oz", 150))
    150 yd that weigh 56.7 oz have a grist of 42.33 yd/lb, which is thicker than handspun yarn \
usually is: the mass looks like grams. Check what the scale is set to; in g the grist is 1200 yd/lb.
    """
    for name, value in [("mass", mass), ("length", length)]:
        if odd := not_a_measure(name, value):
            return odd
    by_ounces = formulas.grist(length, convert(mass, "oz", "lb"))
    by_grams = formulas.grist(length, convert(mass, "g", "lb"))
    grist, swapped, other, name = (
        (by_ounces, by_grams, "g", "grams")
        if unit == "oz"
        else (by_grams, by_ounces, "oz", "ounces")
    )
    odd = unlikely_grist(grist, say)
    if odd is None or unlikely_grist(swapped) is not None:
        return odd
    side = "thicker" if grist < GRIST.low else "finer"
    return (
        f"{say(length, 'length')} that weigh {said(mass)} {unit} have a grist of "
        f"{say(grist, 'grist')}, which is {side} than handspun yarn usually is: the mass looks "
        f"like {name}. Check what the scale is set to; in {other} the grist is "
        f"{say(swapped, 'grist')}."
    )


def unlikely_step(mass: float, step: float, say: Say = in_own_unit) -> str | None:
    """Return what is odd about the mass of a skein beside the steps of the scale.

    Parameters
    ----------
    mass : float
        Mass weighed. [lb]
    step : float
        One step of the scale. [lb]
    say : Callable
        How a mass is written. [1]

    Returns
    -------
    str or None
        One or two sentences, or None for a mass of one step at least.

    Source
    ------
    Follows from the meaning of a step: less than one cannot be told from nothing.

    Examples
    --------
    >>> print(unlikely_step(0.01, 0.02))
    The scale shows steps of 0.02 lb and the skein weighs 0.01 lb, less than one of them. Weigh \
more of the yarn, or on a finer scale.
    """
    for name, value in [("mass", mass), ("step of the scale", step)]:
        if odd := not_a_measure(name, value):
            return odd
    if mass >= step:
        return None
    return (
        f"The scale shows steps of {say(step, 'mass')} and the skein weighs {say(mass, 'mass')}, "
        "less than one of them. Weigh more of the yarn, or on a finer scale."
    )


def unlikely_tare(gross: float, tare: float) -> str | None:
    """Return what is odd about a skein weighed in or on something.

    Parameters
    ----------
    gross : float
        Mass with the yarn. [g]
    tare : float
        Mass without it, in the same unit. [g]

    Returns
    -------
    str or None
        One or two sentences, or None for a gross above the tare.

    Source
    ------
    Follows from the meaning of gross and tare.

    Examples
    --------
    >>> print(unlikely_tare(40, 60))
    The tare, 60, is not less than the gross, 40, so no mass is left for the yarn. Check whether \
the two are in each other's place.
    """
    if odd := not_a_measure("gross", gross):
        return odd
    if not 0 <= tare < math.inf:
        return f"The tare is {tare:g}. It must be 0 or more: weigh the empty container again."
    if tare < gross:
        return None
    return (
        f"The tare, {said(tare)}, is not less than the gross, {said(gross)}, so no mass is left "
        "for the yarn. Check whether the two are in each other's place."
    )


def unlikely_turns(turns: float) -> str | None:
    """Return what is odd about the turns counted round a reel.

    Parameters
    ----------
    turns : float
        Turns counted. [1]

    Returns
    -------
    str or None
        One or two sentences, or None for a whole number of at least 2.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_turns(99.5))
    99.5 turns are not a whole number. Count the threads at one place, and whether the \
circumference is of a full turn.
    """
    if odd := not_a_measure("number of turns", turns):
        return odd
    if turns != round(turns):
        return (
            f"{said(turns)} turns are not a whole number. Count the threads at one place, and "
            "whether the circumference is of a full turn."
        )
    if turns < 2:
        return "One turn is too short to measure by. Wind more, a hundred or so."
    return None


def unlikely_counter(shown: float, expected: float, say: Say = in_own_unit) -> str | None:
    """Return what is odd about a counter's reading beside a length found otherwise.

    Parameters
    ----------
    shown : float
        What the counter shows. [yd]
    expected : float
        Length by turns, or by mass and grist. [yd]
    say : Callable
        How a length is written. [1]

    Returns
    -------
    str or None
        One or two sentences, or None if the two agree within a quarter and no unit explains the
        difference.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> print(unlikely_counter(2000, 200))
    The counter shows 2000 yd, 10 times the 200 yd expected. Check the place of its decimal point.
    """
    for name, value in [("counter's reading", shown), ("expected length", expected)]:
        if odd := not_a_measure(name, value):
            return odd
    ratio = shown / expected
    times = (
        f"The counter shows {say(shown, 'length')}, {said(ratio, 2)} times the "
        f"{say(expected, 'length')} expected."
    )
    if unit_slip(ratio, {"tenths": 10, "tens": 1 / 10}):
        return f"{times} Check the place of its decimal point."
    counted = {"feet": convert(1.0, "yd", "ft"), "inches": convert(1.0, "yd", "in")}
    if slip := unit_slip(ratio, counted):
        return f"{times} Check whether it counts {slip}."
    if not 0.75 <= ratio <= 1.25:
        return (
            f"{times} Counters are usually within a few per cent. Check that it was set to nought "
            "and that the yarn did not slip."
        )
    return None

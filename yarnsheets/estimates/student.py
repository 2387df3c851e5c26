"""Student's t and its inverse, on the standard library alone, so that a page can have them too.

The distribution is an incomplete beta function, worked out by its continued fraction. Above
50,000 degrees of freedom it would lose digits and take ever more terms, and the normal curve with
Fisher's corrections takes its place.
"""

from __future__ import annotations

import math
from functools import lru_cache

_MOST_DOF = 50_000  # past it by the normal curve; Fisher's terms are good to 1e-12 there
_MOST_TERMS = 20_000  # of a continued fraction; none in use takes a tenth of it
_LAST_BIT = 2.0**-52
_FARTHEST = 1e30  # past it nothing lies, and its powers would be too large for a number


def probability(t: float, dof: float) -> float:
    """Return how often Student's t lies below a value.

    ``probability = I(x; dof / 2, 1 / 2) / 2, x = dof / (dof + t**2), for t below 0``

    Parameters
    ----------
    t : float
        Any number. [1]
    dof : float
        Degrees of freedom, more than 0; infinite gives the normal curve. [1]

    Returns
    -------
    float
        Share of all that lies below `t`, between 0 and 1. [1]

    Raises
    ------
    ValueError
        If there are no degrees of freedom.

    Range
    -----
    Half a degree of freedom or more; within 3e-12 of its own size for `t` from -4 to 4.

    Source
    ------
    NIST Digital Library of Mathematical Functions, 8.17.22 (the continued fraction).
    R. A. Fisher, Expansion of Student's integral in powers of 1/n, Metron 5 (1925), 109-120.

    Examples
    --------
    >>> round(probability(-1.0, 1), 12), round(probability(1.959963985, math.inf), 9)
    (0.25, 0.975)
    """
    _refuse_none(dof)
    if t < 0:
        return _beyond(min(-t, _FARTHEST), dof)
    return 0.5 + _within(min(t, _FARTHEST), dof)


@lru_cache  # one page asks for the same again and again
def quantile(share: float, dof: float) -> float:
    """Return the value that Student's t lies below this often.

    ``quantile = t where probability(t, dof) = share``

    Parameters
    ----------
    share : float
        Between 0 and 1, without the ends. [1]
    dof : float
        Degrees of freedom, more than 0; infinite gives the normal curve. [1]

    Returns
    -------
    float
        Student's t, below 0 for a share under a half. [1]

    Raises
    ------
    ValueError
        If there are no degrees of freedom, or the share is not between 0 and 1.

    Range
    -----
    Within 1e-12 of its own size for shares from 1e-6 to 1 - 1e-6.

    Source
    ------
    The root of `probability`, by Halley's rule within a bracket.

    Examples
    --------
    >>> round(quantile(0.975, 4), 9), round(quantile(0.025, math.inf), 9)
    (2.776445105, -1.959963985)
    """
    _refuse_none(dof)
    if not 0 < share < 1:
        msg = f"A share of {share:g} is not between 0 and 1. Give one such as 0.975."
        raise ValueError(msg)
    if share == 0.5:
        return 0.0
    # what is asked for is measured from the nearer of middle and end, where no digit is lost
    inside = abs(share - 0.5)
    outside = min(share, 1 - share)
    size = _root(inside, outside, dof)
    return size if share > 0.5 else -size


def _root(inside: float, outside: float, dof: float) -> float:
    """Give the t with this much between nought and itself, and that much beyond."""
    low, high = 0.0, 1.0
    while _beyond(high, dof) > outside:
        low, high = high, high * 2
    t = (low + high) / 2
    for _ in range(200):
        missing = inside - _within(t, dof) if inside < 0.25 else _beyond(t, dof) - outside
        if missing > 0:
            low = t
        else:
            high = t
        step = missing / _density(t, dof)
        bend = 0.5 * step * _steepness(t, dof)
        halley = t + step / (1 - bend) if abs(bend) < 0.5 else t + step
        nearer = halley if low < halley < high else (low + high) / 2
        if abs(nearer - t) <= _LAST_BIT * nearer:
            return nearer
        t = nearer
    return t


def _refuse_none(dof: float) -> None:
    if not dof > 0:
        msg = "Student's t needs more than 0 degrees of freedom. Take one more reading."
        raise ValueError(msg)


def _density(t: float, dof: float) -> float:
    if dof > _MOST_DOF:
        return _normal_density(t)
    spread = math.exp(-(dof + 1) / 2 * math.log1p(t * t / dof))
    return _gamma_ratio(dof / 2) / math.sqrt(math.pi * dof) * spread


def _steepness(t: float, dof: float) -> float:
    """Give how fast the density falls, as a share of itself."""
    return t if dof > _MOST_DOF else (dof + 1) * t / (dof + t * t)


def _within(t: float, dof: float) -> float:
    """Give the share between nought and t."""
    if dof > _MOST_DOF:
        return _normal_within(t) - _fisher(t, dof)
    if _is_far(t, dof):
        return 0.5 - _tail(t, dof)
    return _middle(t, dof)


def _beyond(t: float, dof: float) -> float:
    """Give the share above t, which is not below nought."""
    if dof > _MOST_DOF:
        return _normal_beyond(t) + _fisher(t, dof)
    if _is_far(t, dof):
        return _tail(t, dof)
    return 0.5 - _middle(t, dof)


def _is_far(t: float, dof: float) -> bool:
    """Tell on which side of its mean x lies: there the continued fraction is quick."""
    half = dof / 2
    return dof / (dof + t * t) < (half + 1) / (half + 2.5)


def _tail(t: float, dof: float) -> float:
    x, y = dof / (dof + t * t), t * t / (dof + t * t)
    if x == 0:
        return 0.0
    return _front(t, dof) / dof * _fraction(x, dof / 2, 0.5) * math.sqrt(y)


def _middle(t: float, dof: float) -> float:
    y = t * t / (dof + t * t)
    return _front(t, dof) * _fraction(y, 0.5, dof / 2) * math.sqrt(y)


def _front(t: float, dof: float) -> float:
    """Give x**(dof / 2) / B(dof / 2, 1 / 2)."""
    power = math.exp(-dof / 2 * math.log1p(t * t / dof))
    return power * _gamma_ratio(dof / 2) / math.sqrt(math.pi)


def _fraction(x: float, a: float, b: float) -> float:
    """Give the continued fraction of the incomplete beta function, by Lentz's rule."""
    tiny = 1e-300
    value, c, d = 1.0, 1.0, 0.0
    for at in range(1, _MOST_TERMS):
        m = at // 2
        if at % 2:
            term = -(a + m) * (a + b + m) * x / ((a + at - 1) * (a + at))
        else:
            term = m * (b - m) * x / ((a + at - 1) * (a + at))
        d = 1 + term * d
        d = 1 / (d if abs(d) > tiny else tiny)
        c = 1 + term / c
        c = c if abs(c) > tiny else tiny
        value *= c * d
        if abs(c * d - 1) < _LAST_BIT:
            break
    return 1 / value


# gamma(a + 1/2) / gamma(a) = sqrt(a) * (1 - 1/(8 a) + 1/(128 a**2) + ...): DLMF 5.11.13.
_RATIO = (1, -1 / 8, 1 / 128, 5 / 1024, -21 / 32768, -399 / 262144, 869 / 4194304, 39325 / 33554432)


def _gamma_ratio(a: float) -> float:
    """Give gamma(a + 1/2) / gamma(a): by its series far out, from where it is stepped back."""
    stepped = 1.0
    while a < 30:
        stepped *= a / (a + 0.5)
        a += 1
    series = 0.0
    for factor in reversed(_RATIO):
        series = series / a + factor
    return stepped * math.sqrt(a) * series


def _normal_density(t: float) -> float:
    return math.exp(-t * t / 2) / math.sqrt(2 * math.pi)


def _normal_within(t: float) -> float:
    if t > 3:
        return 0.5 - _normal_beyond(t)
    # phi(t) * (t + t**3 / 3 + t**5 / (3 * 5) + ...): Abramowitz and Stegun, 26.2.11
    term, total, at = t, t, 1
    while term > _LAST_BIT * total:
        at += 2
        term *= t * t / at
        total += term
    return _normal_density(t) * total


def _normal_beyond(t: float) -> float:
    if t <= 3:
        return 0.5 - _normal_within(t)
    # phi(t) / (t + 1 / (t + 2 / (t + ...))): Abramowitz and Stegun, 26.2.14
    below = t
    for at in range(100, 0, -1):
        below = t + at / below
    return _normal_density(t) / below


def _fisher(t: float, dof: float) -> float:
    """Give what the normal curve has too little above t; more terms add nothing."""
    s = t * t
    first = (s + 1) / 4
    second = (((3 * s - 7) * s - 5) * s - 3) / 96
    third = (((((s - 11) * s + 14) * s + 6) * s - 3) * s - 15) / 384
    return _normal_density(t) * t * (first + (second + third / dof) / dof) / dof

"""Take-up in plying by the form for staple fibre, beside the plain one that worksheets use.

Short fibres wander between core and surface and share their tension, so that a twisted single
shortens a little less than one of endless fibres. The form has a logarithm, which formulas may not
have; below 30 degrees the two differ by less than 0.2 per cent of the length.
"""

import math

from yarnsheets import formulas


def staple_retraction(tangent: float) -> float:
    """Return the share of its length that a strand of staple fibre loses by twist.

    ``retraction = 1 + cos(a) * ln(cos(a)) / (1 - cos(a))``

    Parameters
    ----------
    tangent : float
        Tangent of the angle a at which outer fibres slant. [1]

    Returns
    -------
    float
        Share of the untwisted length; 0 without twist. [1]

    Raises
    ------
    OverflowError
        If the tangent is too large to be squared.

    Range
    -----
    Angles up to 40 degrees, either way; near 0 it is a quarter of the squared angle.

    Source
    ------
    Journal of the Textile Machinery Society of Japan, 14 (3-4), 115 (1968, the year from memory),
    abstract on the twist shrinkage of two-fold staple yarn.

    Examples
    --------
    >>> round(staple_retraction(math.tan(math.radians(20))), 6)
    0.030779
    """
    secant = math.hypot(1, tangent)
    if secant == 1:
        return 0.0
    return 1 - math.log(secant) / (secant - 1)


def staple_take_up(diameter: float, circle: float, twist: float, ply_twist: float) -> float:
    """Return the take-up of singles of staple fibre, plied against their twist.

    ``take_up = (1 - before) / (1 - after) * (1 + helix ** 2) ** 0.5``

    Parameters
    ----------
    diameter : float
        Diameter of each single. [in]
    circle : float
        Diameter of the circle that the singles' axes wind around. [in]
    twist : float
        Turns to a unit of length of each single. [1/in]
    ply_twist : float
        Turns to a unit of length of the plied yarn, the other way. [1/in]

    Returns
    -------
    float
        Length of each single used in a unit length of plied yarn. [1]

    Raises
    ------
    OverflowError
        If a twist is too large to be squared.

    Range
    -----
    From 0.98 to 1.15 (common practice, no source). `before` and `after` are the retractions of the
    single with its twist before plying and with the twist that plying leaves it. Thickness is
    taken to stay the same; the source has it change, which makes take-up less by under 0.001 up to
    a slant of 30 degrees, and by 0.002 at 36.

    Source
    ------
    As for `staple_retraction`, but for the thickness.

    Examples
    --------
    >>> round(staple_take_up(0.03, 0.03, 6.0, 4.0), 4)
    1.0098
    """
    helix = formulas.twist_tangent(circle, ply_twist)
    left = formulas.residual_twist(twist, ply_twist, helix)
    before = staple_retraction(formulas.twist_tangent(diameter, twist))
    after = staple_retraction(formulas.twist_tangent(diameter, left))
    return float((1 - before) / (1 - after) * formulas.helix_take_up(helix))

"""Twist in a strand: the slant that it gives, the trade's multipliers, and how a wheel puts it in.

Twist is counted in turns to a unit of length. What it does depends on thickness too: the same
twist slants the fibres of a thick strand more. The slant is given as its tangent, since a formula
here is arithmetic alone. How twist shortens is in `plied_twist`.
"""

from yarnsheets.formulas.value import Value


def twist_tangent(diameter: Value, twist: Value) -> Value:
    """Return the tangent of the angle at which outer fibres slant to the axis of a strand.

    ``tangent = pi * diameter * twist``

    Parameters
    ----------
    diameter : Value
        Diameter of the strand, or of the circle that it winds around, a number or a column. [in]
    twist : Value
        Turns to a unit of length, a number or a column. [1/in]

    Returns
    -------
    Value
        Tangent of the angle, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Angles of 5 to 40 degrees, tangents of 0.09 to 0.84, for yarn (common practice, no source).
    A handbook prints pi * diameter / twist: that fits only the length of one turn, 1 / twist.

    Source
    ------
    J. W. S. Hearle, P. Grosberg and S. Backer, Structural Mechanics of Fibers, Yarns, and Fabrics,
    Wiley, 1969, chapter 2, from memory; it follows from unrolling one turn of a round rod.

    Examples
    --------
    >>> twist_tangent(0.5, 2)
    3.141592653589793
    """
    return 3.141592653589793 * diameter * twist


def twist_for_tangent(tangent: Value, diameter: Value) -> Value:
    """Return the twist that slants the outer fibres of a strand at an angle.

    ``twist = tangent / (pi * diameter)``

    Parameters
    ----------
    tangent : Value
        Tangent of the angle, a number or a column. [1]
    diameter : Value
        Diameter of the strand, a number or a column. [in]

    Returns
    -------
    Value
        Turns to a unit of length, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `diameter` is a plain 0; a column gives infinity there.

    Range
    -----
    Tangents of 0.09 to 0.84, angles of 5 to 40 degrees (common practice, no source).

    Source
    ------
    As for `twist_tangent`: Hearle, Grosberg and Backer, 1969, from memory.

    Examples
    --------
    >>> twist_for_tangent(3.141592653589793, 0.5)
    2.0
    """
    return tangent / (3.141592653589793 * diameter)


def twist_multiplier(twist: Value, grist: Value) -> Value:
    """Return the twist multiplier of a strand, alike for strands that slant alike.

    ``multiplier = twist / grist ** 0.5``

    Parameters
    ----------
    twist : Value
        Turns to a unit of length, a number or a column. [1/in]
    grist : Value
        Grist of the strand, or its count, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Twist multiplier, of the inputs' shape. [lb**0.5/yd**0.5/in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` is a plain 0; a column gives infinity there.

    Range
    -----
    The units make the system: turns to the inch with a cotton or worsted count are those trades'
    multipliers, turns to the metre with a metric count the metric one, and turns to the cm with
    1 / tex the tex twist factor. Cotton has 2.1 to 5.0.

    Source
    ------
    The trade's definition, as in W. Klein, Technology of Short-staple Spinning, Textile Institute,
    page on twist; an examination question gives 36s cotton at 15 turns to the inch 2.5.

    Examples
    --------
    >>> twist_multiplier(15.0, 36)
    2.5
    """
    return twist / grist**0.5


def twist_from_multiplier(multiplier: Value, grist: Value) -> Value:
    """Return the twist of a strand from its twist multiplier.

    ``twist = multiplier * grist ** 0.5``

    Parameters
    ----------
    multiplier : Value
        Twist multiplier, a number or a column. [lb**0.5/yd**0.5/in]
    grist : Value
        Grist of the strand, or its count, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Turns to a unit of length, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    The multiplier and the grist must be of one system, as for `twist_multiplier`.

    Source
    ------
    The definition of the multiplier, as for `twist_multiplier`, read backwards.

    Examples
    --------
    >>> twist_from_multiplier(2.5, 36)
    15.0
    """
    return multiplier * grist**0.5


def length_per_treadle(ratio: Value, twist: Value) -> Value:
    """Return the length to let run in for each treadle.

    ``length = ratio / twist``

    Parameters
    ----------
    ratio : Value
        Turns put into the yarn by one treadle, the wheel's ratio, a number or a column. [1]
    twist : Value
        Turns to a unit of length, a number or a column. [1/in]

    Returns
    -------
    Value
        Length of yarn, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `twist` is a plain 0; a column gives infinity there.

    Range
    -----
    Ratios of 4 to 40 on treadle wheels (common practice, no source). A band that slips puts in
    less.

    Source
    ------
    Follows from the definition of twist.

    Examples
    --------
    >>> length_per_treadle(9, 6)
    1.5
    """
    return ratio / twist


def treadles_for_twist(twist: Value, draft: Value, ratio: Value) -> Value:
    """Return how often to treadle for a length of draft.

    ``treadles = twist * draft / ratio``

    Parameters
    ----------
    twist : Value
        Turns to a unit of length, a number or a column. [1/in]
    draft : Value
        Length drawn out before it runs in, a number or a column. [in]
    ratio : Value
        Turns put into the yarn by one treadle, the wheel's ratio, a number or a column. [1]

    Returns
    -------
    Value
        Treadles, of the inputs' shape; rarely a whole number. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `ratio` is a plain 0; a column gives infinity there.

    Range
    -----
    Ratios of 4 to 40 on treadle wheels (common practice, no source). A band that slips asks for
    more.

    Source
    ------
    Follows from the definition of twist.

    Examples
    --------
    >>> treadles_for_twist(6, 12, 9)
    8.0
    """
    return twist * draft / ratio


def twist_from_treadles(treadles: Value, ratio: Value, draft: Value) -> Value:
    """Return the twist that treadles counted over a length of draft put in.

    ``twist = treadles * ratio / draft``

    Parameters
    ----------
    treadles : Value
        Treadles counted, a number or a column. [1]
    ratio : Value
        Turns put into the yarn by one treadle, the wheel's ratio, a number or a column. [1]
    draft : Value
        Length drawn out before it runs in, a number or a column. [in]

    Returns
    -------
    Value
        Turns to a unit of length, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `draft` is a plain 0; a column gives infinity there.

    Range
    -----
    Ratios of 4 to 40 on treadle wheels (common practice, no source). A band that slips makes the
    true twist lower.

    Source
    ------
    Follows from the definition of twist.

    Examples
    --------
    >>> twist_from_treadles(8, 9, 12)
    6.0
    """
    return treadles * ratio / draft

"""The diameter of a yarn as it lies by itself, and the wraps that it makes round a ruler.

Wraps to the inch are laid by hand, side by side and not pressed, and a diameter here is the inch
shared among them. What weavers call diameters to the inch are more than twice as many for the same
yarn: they are another quantity, and have a module of their own, `sett`.

The yarn is taken for a round rod. The mass of a unit of its volume is its *bulk density*, air
included. Counted in lb/yd/in**2, pounds to a yard one inch square, it lets grist stay in yards to
the pound and wraps in inches; any other units that belong together will do.
"""

from yarnsheets.formulas.value import Value


def wraps_per_inch(wraps: Value, width: Value) -> Value:
    """Return the wraps to the inch from wraps counted over a width.

    ``wraps_per_inch = wraps / width``

    Parameters
    ----------
    wraps : Value
        Turns laid side by side, touching and not pressed, a number or a column. [1]
    width : Value
        Width that they cover, a number or a column. [in]

    Returns
    -------
    Value
        Wraps to the inch, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `width` is a plain 0; a column gives infinity there.

    Range
    -----
    From 3 to 70 to the inch for handspun (common practice, no source). No two hands lay a yarn
    alike, so wraps compare yarns wrapped by one person and tell a grist only roughly.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> wraps_per_inch(30, 2)
    15.0
    """
    return wraps / width


def diameter_from_wraps(wraps_per_inch: Value) -> Value:
    """Return the diameter of a yarn from its wraps to the inch.

    ``diameter = 1 / wraps_per_inch``

    Parameters
    ----------
    wraps_per_inch : Value
        Wraps to the inch, not pressed, a number or a column. [1/in]

    Returns
    -------
    Value
        Diameter as wrapped, of the input's shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `wraps_per_inch` is a plain 0; a column gives infinity there.

    Range
    -----
    From 3 to 70 wraps to the inch for handspun (common practice, no source).

    Source
    ------
    Follows from the definition of wraps: each takes one diameter.

    Examples
    --------
    >>> diameter_from_wraps(16)
    0.0625
    """
    return 1 / wraps_per_inch


def diameter_from_grist(grist: Value, bulk_density: Value) -> Value:
    """Return the diameter of a yarn from its grist and its bulk density.

    ``diameter = (4 / (pi * bulk_density * grist)) ** 0.5``

    Parameters
    ----------
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]
    bulk_density : Value
        Mass to a unit of the yarn's volume, air included, a number or a column. [lb/yd/in**2]

    Returns
    -------
    Value
        Diameter of the yarn as a round rod, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` or `bulk_density` is a plain 0; a column gives infinity there.

    Range
    -----
    Bulk density runs from 0.08 g/cm**3 to that of solid fibre, 1.31 for wool; handspun usually
    lies between 0.12 and 0.40 (an estimate, no authority).

    Source
    ------
    Follows from the definition of grist: a round rod of unit length has a mass of 1 / grist. F. T.
    Peirce, Journal of the Textile Institute, 1937, T45, from memory, takes a yarn for such a rod.

    Examples
    --------
    >>> diameter_from_grist(1.0, 5.092958178940651)
    0.5
    """
    return (4 / (3.141592653589793 * bulk_density * grist)) ** 0.5


def wraps_per_inch_from_grist(grist: Value, bulk_density: Value) -> Value:
    """Return the wraps to the inch that a yarn makes, from its grist and its bulk density.

    ``wraps_per_inch = (pi / 4 * bulk_density * grist) ** 0.5``

    Parameters
    ----------
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]
    bulk_density : Value
        Mass to a unit of the yarn's volume, air included, a number or a column. [lb/yd/in**2]

    Returns
    -------
    Value
        Wraps to the inch, not pressed, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Bulk density as for `diameter_from_grist`. With the density of solid fibre the result is the
    most wraps that a yarn of this grist could ever make: a higher count is wrong.

    Source
    ------
    Follows from the definition of grist and of wraps, as for `diameter_from_grist`.

    Examples
    --------
    >>> wraps_per_inch_from_grist(1.0, 5.092958178940651)
    2.0
    """
    return (0.7853981633974483 * bulk_density * grist) ** 0.5


def grist_from_wraps(wraps_per_inch: Value, bulk_density: Value) -> Value:
    """Return the grist of a yarn from its wraps to the inch and its bulk density.

    ``grist = wraps_per_inch ** 2 / (pi / 4 * bulk_density)``

    Parameters
    ----------
    wraps_per_inch : Value
        Wraps to the inch, not pressed, a number or a column. [1/in]
    bulk_density : Value
        Mass to a unit of the yarn's volume, air included, a number or a column. [lb/yd/in**2]

    Returns
    -------
    Value
        Grist, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `bulk_density` is a plain 0; a column gives infinity there.

    Range
    -----
    Bulk density as for `diameter_from_grist`. Wraps count twice over: a tenth too many is a fifth
    too much grist.

    Source
    ------
    Follows from the definition of grist and of wraps, as for `diameter_from_grist`.

    Examples
    --------
    >>> grist_from_wraps(4.0, 5.092958178940651)
    4.0
    """
    return wraps_per_inch**2 / (0.7853981633974483 * bulk_density)


def bulk_density_from_wraps(wraps_per_inch: Value, grist: Value) -> Value:
    """Return the bulk density of a yarn from its wraps to the inch and its grist.

    ``bulk_density = wraps_per_inch ** 2 / (pi / 4 * grist)``

    Parameters
    ----------
    wraps_per_inch : Value
        Wraps to the inch, not pressed, a number or a column. [1/in]
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Mass to a unit of the yarn's volume, air included, of the inputs' shape. [lb/yd/in**2]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` is a plain 0; a column gives infinity there.

    Range
    -----
    Handspun usually lies between 0.12 and 0.40 g/cm**3 (an estimate, no authority); a result
    above the density of solid fibre, 1.31 for wool, cannot be.

    Source
    ------
    Follows from the definition of grist and of wraps, as for `diameter_from_grist`.

    Examples
    --------
    >>> bulk_density_from_wraps(2.0, 1.0)
    5.092958178940651
    """
    return wraps_per_inch**2 / (0.7853981633974483 * grist)

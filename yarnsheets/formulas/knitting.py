"""Knitting: how much yarn lies in a piece, from its gauge, from a swatch, or on a machine.

From gauge it follows by the constants of plain knitting, which the module `loops` explains.
"""

from yarnsheets.formulas.value import Value


def yarn_per_area(stitches: Value, rows: Value, area_constant: Value) -> Value:
    """Return the yarn in a unit area of plain knitting, from both gauges.

    ``yarn_per_area = (area_constant * stitches * rows) ** 0.5``

    Parameters
    ----------
    stitches : Value
        Stitches to the inch, across, a number or a column. [1/in]
    rows : Value
        Rows to the inch, a number or a column. [1/in]
    area_constant : Value
        Stitches in a square of one loop length, for the state of the fabric, a number or a column.
        [1]

    Returns
    -------
    Value
        Inches of yarn in a square inch, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Plain knitting (stockinette), washed and left to lie, at tightness factors of about 9 to 19.
    Garter stitch, ribs, cables and crochet take more.

    Source
    ------
    Follows from stitches times `loop_length`: D. L. Munden, Journal of the Textile Institute 50,
    1959, T448, from memory.

    Examples
    --------
    >>> yarn_per_area(4.0, 9.0, 25.0)
    30.0
    """
    return (area_constant * stitches * rows) ** 0.5


def yarn_per_area_by_one_gauge(gauge: Value, constant: Value) -> Value:
    """Return the yarn in a unit area of plain knitting, from one gauge alone.

    ``yarn_per_area = constant * gauge``

    Parameters
    ----------
    gauge : Value
        Stitches or rows to the inch, a number or a column. [1/in]
    constant : Value
        The constant of the other gauge: of courses for stitches, of wales for rows, a number or a
        column. [1]

    Returns
    -------
    Value
        Inches of yarn in a square inch, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    As for `yarn_per_area`. The two answers agree where there are about 1.3 rows to a stitch; that
    from both gauges is then the same.

    Source
    ------
    D. L. Munden, Journal of the Textile Institute 50, 1959, T448, from memory. The rule of hand
    knitters that yards are length times width times stitches to the inch over 6 is this with a
    constant of 6 (common practice, no source).

    Examples
    --------
    >>> yarn_per_area_by_one_gauge(5.0, 5.3)
    26.5
    """
    return constant * gauge


def stitch_factor(yarn_per_area: Value, plain_yarn_per_area: Value) -> Value:
    """Return how many times the yarn of plain knitting a stitch pattern takes.

    ``stitch_factor = yarn_per_area / plain_yarn_per_area``

    Parameters
    ----------
    yarn_per_area : Value
        Yarn or weight in a unit area of the pattern, a number or a column. [1/in]
    plain_yarn_per_area : Value
        The same for plain knitting in the same yarn, a number or a column. [1/in]

    Returns
    -------
    Value
        Times as much yarn, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `plain_yarn_per_area` is a plain 0; a column gives infinity there.

    Range
    -----
    Published swatches range from 1.07 to 1.60.

    Source
    ------
    Follows from the definition of a ratio.

    Examples
    --------
    >>> stitch_factor(36.0, 24.0)
    1.5
    """
    return yarn_per_area / plain_yarn_per_area


def mass_from_swatch(swatch_mass: Value, swatch_area: Value, area: Value) -> Value:
    """Return the weight of a piece, from a weighed swatch of the same fabric.

    ``mass = swatch_mass * area / swatch_area``

    Parameters
    ----------
    swatch_mass : Value
        Weight of the swatch, a number or a column. [lb]
    swatch_area : Value
        Its area, washed and dry, a number or a column. [in**2]
    area : Value
        Area of the piece, a number or a column. [in**2]

    Returns
    -------
    Value
        Weight of the piece, of the inputs' shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `swatch_area` is a plain 0; a column gives infinity there.

    Range
    -----
    Any stitch: the swatch is of the same yarn and stitch, washed, and weighed in the same air.

    Source
    ------
    Follows from the definition of weight to the area; common practice, no source.

    Examples
    --------
    >>> mass_from_swatch(0.05, 25.0, 1000.0)
    2.0
    """
    return swatch_mass * area / swatch_area


def knitting_mass(
    courses: Value, across: Value, length: Value, take_up: Value, grist: Value
) -> Value:
    """Return the weight of yarn that a knitting machine takes for a length of fabric.

    ``mass = courses * across * length * take_up / grist``

    Parameters
    ----------
    courses : Value
        Rows to the inch, a number or a column. [1/in]
    across : Value
        Width of the row of needles, not of the relaxed fabric, a number or a column. [in]
    length : Value
        Length of fabric knitted, in yards for rows to the inch, a number or a column. [yd]
    take_up : Value
        Yarn in a row over its width on the needles, a number or a column. [1]
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Weight of yarn, of the inputs' shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up runs from 1.5 to 3. It counts on the width on the needles, so it is no constant of
    relaxed fabric.

    Source
    ------
    William Davis, Hosiery Manufacture, Pitman, c. 1920, chapters V and VI, Examples 11 to 17.

    Examples
    --------
    >>> knitting_mass(20.0, 30.0, 100.0, 2.0, 6000.0)
    20.0
    """
    return courses * across * length * take_up / grist

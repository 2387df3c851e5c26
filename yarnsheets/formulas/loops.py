"""Loops of plain knitting: how long one is, how many lie in an inch, and how tight they are.

In plain knitting that has been washed and left to lie, the length of a loop alone settles how many
stitches and rows lie in an inch. Three constants, of courses (rows), of wales (stitches) and of
both, say how; they are pure numbers and depend on how far the fabric has relaxed.
"""

from yarnsheets.formulas.value import Value


def loop_length(stitches: Value, rows: Value, area_constant: Value) -> Value:
    """Return the length of yarn in one stitch of plain knitting.

    ``loop_length = (area_constant / (stitches * rows)) ** 0.5``

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
        Yarn in one stitch, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `stitches` or `rows` is a plain 0; a column gives infinity there.

    Range
    -----
    Plain knitting (stockinette), washed and left to lie, at tightness factors of about 9 to 19.

    Source
    ------
    D. L. Munden, Journal of the Textile Institute 50, 1959, T448, from memory.

    Examples
    --------
    >>> loop_length(4.0, 6.0, 24.0)
    1.0
    """
    return (area_constant / (stitches * rows)) ** 0.5


def loops_per_area(course_constant: Value, wale_constant: Value, loop_length: Value) -> Value:
    """Return how many stitches lie in a unit area of plain knitting.

    ``loops_per_area = course_constant * wale_constant / loop_length ** 2``

    Parameters
    ----------
    course_constant : Value
        Rows in one loop length of fabric, a number or a column. [1]
    wale_constant : Value
        Stitches in one loop length of fabric, a number or a column. [1]
    loop_length : Value
        Yarn in one stitch, a number or a column. [in]

    Returns
    -------
    Value
        Stitches to the square inch, of the inputs' shape. [1/in**2]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `loop_length` is a plain 0; a column gives infinity there.

    Range
    -----
    Plain knitting (stockinette), washed and left to lie, at tightness factors of about 9 to 19.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2015, question 54; D. L. Munden,
    Journal of the Textile Institute 50, 1959, T448, from memory.

    Examples
    --------
    >>> loops_per_area(5.5, 4.0, 0.5)
    88.0
    """
    return course_constant * wale_constant / loop_length**2


def tightness_factor(grist: Value, loop_length: Value) -> Value:
    """Return how tight plain knitting is for its yarn.

    ``tightness_factor = (1 / grist) ** 0.5 / loop_length``

    Parameters
    ----------
    grist : Value
        Grist of the yarn, the inverse of its tex, a number or a column. [km/g]
    loop_length : Value
        Yarn in one stitch, a number or a column. [cm]

    Returns
    -------
    Value
        The root of the tex over the loop in centimetres, of the inputs' shape.
        [g**0.5/km**0.5/cm]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` or `loop_length` is a plain 0; a column gives infinity there.

    Range
    -----
    About 9 (loose) to 19 (tight), from memory.

    Source
    ------
    Follows its usual definition, the root of tex over loop length in centimetres.

    Examples
    --------
    >>> tightness_factor(0.0025, 2.0)
    10.0
    """
    return (1 / grist) ** 0.5 / loop_length

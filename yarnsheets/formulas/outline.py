"""Outlines: the area of the flat shapes that a knitted piece is made of."""

from math import pi

from yarnsheets.formulas.value import Value


def trapezoid_area(top: Value, bottom: Value, length: Value) -> Value:
    """Return the area of a piece that widens or narrows evenly.

    ``area = (top + bottom) / 2 * length``

    Parameters
    ----------
    top : Value
        Its width at one end, a number or a column. [in]
    bottom : Value
        Its width at the other end, a number or a column. [in]
    length : Value
        Its length between the two, a number or a column. [in]

    Returns
    -------
    Value
        Area, of the inputs' shape. [in**2]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    With both widths alike a rectangle, with one of them 0 a triangle.

    Source
    ------
    Geometry: follows from the definition of area.

    Examples
    --------
    >>> trapezoid_area(13.0, 8.0, 18.0)
    189.0
    """
    return (top + bottom) / 2 * length


def circle_area(across: Value) -> Value:
    """Return the area of a circle.

    ``area = pi / 4 * across ** 2``

    Parameters
    ----------
    across : Value
        Its diameter, a number or a column. [in]

    Returns
    -------
    Value
        Area, of the input's shape. [in**2]

    Raises
    ------
    TypeError
        If the value is missing (None).

    Range
    -----
    Any size; of a tube, the girth over pi is the diameter.

    Source
    ------
    Geometry: follows from the definition of pi.

    Examples
    --------
    >>> circle_area(0.0)
    0.0
    """
    return pi / 4 * across**2

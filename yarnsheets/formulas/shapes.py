"""How much of a piece is made when so many of its rows are, by the shape it grows in.

Rows grow evenly from a first width to a last one. A piece made from its point, or from its
centre outwards, starts at no width; one made from its wide edge ends at none; in a rectangle
both are alike. Every such piece follows one line, and its inverse another.
"""

from yarnsheets.formulas.value import Value


def share_made(rows_done: Value, first_width: Value, last_width: Value) -> Value:
    """Return the share of its cloth that a piece has when a share of its rows is done.

    ``share = r * (2 * first + (last - first) * r) / (first + last)``

    Parameters
    ----------
    rows_done : Value
        Rows done, or of rounds the radius, as a share of all, a number or a column. [1]
    first_width : Value
        Width of the first row, 0 from a point or the centre, a number or a column. [in]
    last_width : Value
        Width of the last row, 0 if it ends in a point, a number or a column. [in]

    Returns
    -------
    Value
        Share of the cloth, and so of the yarn, that is made, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Shares from 0 to 1, widths that are not both 0, and rows enough to make a slope, not steps.

    Source
    ------
    Geometry: a trapezoid's area, by definition.

    Examples
    --------
    >>> share_made(0.5, 0, 10)
    0.25
    """
    return (
        rows_done
        * (2 * first_width + (last_width - first_width) * rows_done)
        / (first_width + last_width)
    )


def rows_done(share_made: Value, first_width: Value, last_width: Value) -> Value:
    """Return the share of its rows that is done when a share of a piece's yarn is used.

    ``r = share * (first + last) / (first + (first**2 + share * (last**2 - first**2)) ** 0.5)``

    Parameters
    ----------
    share_made : Value
        Share of the cloth, and so of the yarn, that is made, a number or a column. [1]
    first_width : Value
        Width of the first row, 0 from a point or the centre, a number or a column. [in]
    last_width : Value
        Width of the last row, 0 if it ends in a point, a number or a column. [in]

    Returns
    -------
    Value
        Rows done, as a share of all rows, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Shares above 0, up to 1, and widths that are not both 0.

    Source
    ------
    Geometry: a trapezoid's area by definition, solved for the rows.

    Examples
    --------
    >>> rows_done(0.25, 0, 10)
    0.5
    """
    root = (first_width**2 + share_made * (last_width**2 - first_width**2)) ** 0.5
    return share_made * (first_width + last_width) / (first_width + root)


def stitches_in_rows(first_row: Value, increase: Value, rows: Value) -> Value:
    """Return the stitches of rows that each have so many more than the last.

    ``stitches = rows * first + increase * rows * (rows - 1) / 2``

    Parameters
    ----------
    first_row : Value
        Stitches of the first row, a number or a column. [1]
    increase : Value
        Stitches that each further row has more, or fewer if negative, a number or a column. [1]
    rows : Value
        How many rows, a number or a column. [1]

    Returns
    -------
    Value
        Stitches of all rows together, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Rows of one stitch or more, all the way.

    Source
    ------
    Geometry: the sum of an arithmetic series, by its definition.

    Examples
    --------
    >>> stitches_in_rows(7, 2, 10)
    160.0
    """
    return rows * first_row + increase * rows * (rows - 1) / 2


def similar_size(size: Value, yarn_ratio: Value) -> Value:
    """Return how large a measure of a piece becomes when it is made of more or less yarn.

    ``new_size = size * yarn_ratio ** 0.5``

    Parameters
    ----------
    size : Value
        Measure of the piece that was made, a number or a column. [in]
    yarn_ratio : Value
        Yarn for the new piece, of that for the old, a number or a column. [1]

    Returns
    -------
    Value
        The same measure of the new piece, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Pieces of the same shape, yarn and gauge, which grow alike in length and width.

    Source
    ------
    Geometry: areas of similar shapes go by the square of their size, by definition.

    Examples
    --------
    >>> similar_size(96.0, 0.25)
    48.0
    """
    return size * yarn_ratio**0.5

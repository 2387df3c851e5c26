"""Grist, length and mass: any two give the third."""

from yarnsheets.formulas.value import Value


def grist(length: Value, mass: Value) -> Value:
    """Return the grist of a yarn from a weighed length.

    ``grist = length / mass``

    Parameters
    ----------
    length : Value
        Length of the yarn, a number or a column. [yd]
    mass : Value
        Mass of that length, a number or a column. [lb]

    Returns
    -------
    Value
        Grist, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `mass` is a plain 0; a column gives infinity there.

    Range
    -----
    Handspun grist runs from about 100 to 30000 yd/lb (common practice, no source).

    Source
    ------
    C. P. Brooks, Cotton Manufacturing, 19th century, chapter "Wrapping": count is the hanks of
    yarn to the pound.

    Examples
    --------
    >>> grist(150.0, 0.125)
    1200.0
    """
    return length / mass


def length(mass: Value, grist: Value) -> Value:
    """Return the length of yarn in a mass.

    ``length = mass * grist``

    Parameters
    ----------
    mass : Value
        Mass of the yarn, a number or a column. [lb]
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Length, of the inputs' shape. [yd]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Handspun grist runs from about 100 to 30000 yd/lb (common practice, no source).

    Source
    ------
    William Davis, Hosiery Manufacture, Pitman, c. 1920, chapters V and VI, Example 10.

    Examples
    --------
    >>> length(0.25, 1200)
    300.0
    """
    return mass * grist


def mass(length: Value, grist: Value) -> Value:
    """Return the mass of a length of yarn.

    ``mass = length / grist``

    Parameters
    ----------
    length : Value
        Length of the yarn, a number or a column. [yd]
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Mass, of the inputs' shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` is a plain 0; a column gives infinity there.

    Range
    -----
    Handspun grist runs from about 100 to 30000 yd/lb (common practice, no source).

    Source
    ------
    American Correspondence School of Textiles, Calculations, Part IV, Lowell, 1898.

    Examples
    --------
    >>> mass(300, 1200)
    0.25
    """
    return length / grist

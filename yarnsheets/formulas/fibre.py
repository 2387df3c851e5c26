"""Fibre: what to buy for a length of yarn, and what yarn a fibre gives, after all the losses.

Each stage loses a share of what the stage before it left, so yields multiply. Losses of 10 % and
40 % leave 0.9 * 0.6 = 0.54, not 0.50.
"""

from yarnsheets.formulas.value import Value, Values


def overall_yield(yields: Values) -> Value:
    """Return the share of the fibre that is left after all the stages.

    ``overall_yield = yield_1 * yield_2 * ...``

    Parameters
    ----------
    yields : Values
        Share of the mass that each stage leaves, such as scouring, carding and spinning, a
        sequence of numbers or of columns. [1]

    Returns
    -------
    Value
        Share left, of the shape of one yield; 1 for no stages. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Each yield lies between 0 and 1; raw wool scours to 0.2-0.8 clean (Wollner and Tanner,
    Industrial and Engineering Chemistry, Analytical Edition, 1941, p. 883).

    Source
    ------
    Common practice, no source; each stage works on what the one before it left.

    Examples
    --------
    >>> overall_yield([0.5, 0.5])
    0.25
    """
    left = 1
    for stage in yields:
        left = left * stage
    return left


def fibre_needed(length: Value, grist: Value, yields: Values) -> Value:
    """Return the mass of fibre to start from for a length of yarn.

    ``fibre = length / (grist * overall_yield)``

    Parameters
    ----------
    length : Value
        Length of yarn wanted, a number or a column. [yd]
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]
    yields : Values
        Share of the mass that each stage leaves, such as scouring, carding and spinning, a
        sequence of numbers or of columns. [1]

    Returns
    -------
    Value
        Mass of fibre before the first stage, of the inputs' shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` or a yield is a plain 0; a column gives infinity there.

    Range
    -----
    Each yield lies between 0 and 1; raw wool scours to 0.2-0.8 clean (Wollner and Tanner,
    Industrial and Engineering Chemistry, Analytical Edition, 1941, p. 883).

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> fibre_needed(1000, 1000, [0.5, 0.8])
    2.5
    """
    return length / (grist * overall_yield(yields))


def length_from_fibre(fibre: Value, grist: Value, yields: Values) -> Value:
    """Return the length of yarn that a mass of fibre gives.

    ``length = fibre * overall_yield * grist``

    Parameters
    ----------
    fibre : Value
        Mass of fibre before the first stage, a number or a column. [lb]
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]
    yields : Values
        Share of the mass that each stage leaves, such as scouring, carding and spinning, a
        sequence of numbers or of columns. [1]

    Returns
    -------
    Value
        Length of yarn, of the inputs' shape. [yd]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Each yield lies between 0 and 1; raw wool scours to 0.2-0.8 clean (Wollner and Tanner,
    Industrial and Engineering Chemistry, Analytical Edition, 1941, p. 883).

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> length_from_fibre(2.5, 1000, [0.5, 0.8])
    1000.0
    """
    return fibre * overall_yield(yields) * grist


def grist_for_fibre(length: Value, fibre: Value, yields: Values) -> Value:
    """Return the grist to spin to, for the fibre at hand to reach a length.

    ``grist = length / (fibre * overall_yield)``

    Parameters
    ----------
    length : Value
        Length of yarn wanted, a number or a column. [yd]
    fibre : Value
        Mass of fibre before the first stage, a number or a column. [lb]
    yields : Values
        Share of the mass that each stage leaves, such as scouring, carding and spinning, a
        sequence of numbers or of columns. [1]

    Returns
    -------
    Value
        Grist, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `fibre` or a yield is a plain 0; a column gives infinity there.

    Range
    -----
    Each yield lies between 0 and 1; raw wool scours to 0.2-0.8 clean (Wollner and Tanner,
    Industrial and Engineering Chemistry, Analytical Edition, 1941, p. 883).

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> grist_for_fibre(1000, 2.5, [0.5, 0.8])
    1000.0
    """
    return length / (fibre * overall_yield(yields))

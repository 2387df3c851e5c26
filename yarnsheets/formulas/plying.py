"""Plying: the grist and the length of a plied (folded) yarn from those of its singles.

Take-up is the length of a single used in a unit length of plied yarn: 1.05 is 5 % more.
"""

from yarnsheets.formulas.value import Value


def plied_grist(singles_grist: Value, plies: Value, take_up: Value) -> Value:
    """Return the grist of a yarn plied from equal singles.

    ``plied_grist = singles_grist / (plies * take_up)``

    Parameters
    ----------
    singles_grist : Value
        Grist of each single, a number or a column. [yd/lb]
    plies : Value
        Number of singles, a number or a column. [1]
    take_up : Value
        Length of each single used in a unit length of plied yarn, 1 when none is taken up, a
        number or a column. [1]

    Returns
    -------
    Value
        Grist of the plied yarn, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `plies` or `take_up` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). Take-up
    counts on the plied length: 1.10 means 110 yd of each single in 100 yd of plied yarn.

    Source
    ------
    William Davis, Hosiery Manufacture, Pitman, c. 1920, chapters V and VI: 2/40s is a folded yarn
    of 20; take-up by its definition.

    Examples
    --------
    >>> plied_grist(2400.0, 2, 1.2)
    1000.0
    """
    return singles_grist / (plies * take_up)


def singles_grist(plied_grist: Value, plies: Value, take_up: Value) -> Value:
    """Return the grist to spin equal singles to, for a plied yarn aimed at.

    ``singles_grist = plied_grist * plies * take_up``

    Parameters
    ----------
    plied_grist : Value
        Grist of the plied yarn aimed at, a number or a column. [yd/lb]
    plies : Value
        Number of singles, a number or a column. [1]
    take_up : Value
        Length of each single used in a unit length of plied yarn, 1 when none is taken up, a
        number or a column. [1]

    Returns
    -------
    Value
        Grist of each single, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). Take-up
    counts on the plied length: 1.10 means 110 yd of each single in 100 yd of plied yarn.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 1992, question 3: 16s two-fold at a
    take-up of 1.10 needs 35.2s singles.

    Examples
    --------
    >>> singles_grist(1000, 2, 1.25)
    2500.0
    """
    return plied_grist * plies * take_up


def take_up(singles_grist: Value, plied_grist: Value, plies: Value) -> Value:
    """Return the take-up from the grist before and after plying.

    ``take_up = singles_grist / (plied_grist * plies)``

    Parameters
    ----------
    singles_grist : Value
        Grist of each single, a number or a column. [yd/lb]
    plied_grist : Value
        Grist of the plied yarn, a number or a column. [yd/lb]
    plies : Value
        Number of singles, a number or a column. [1]

    Returns
    -------
    Value
        Length of each single used in a unit length of plied yarn, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `plied_grist` or `plies` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). A value
    below 1 says that the singles lost twist and grew longer.

    Source
    ------
    Follows from the definition of grist.

    Examples
    --------
    >>> take_up(2500, 1000, 2)
    1.25
    """
    return singles_grist / (plied_grist * plies)


def ply_count(singles_grist: Value, plied_grist: Value, take_up: Value) -> Value:
    """Return how many equal singles ply to a grist aimed at.

    ``plies = singles_grist / (plied_grist * take_up)``

    Parameters
    ----------
    singles_grist : Value
        Grist of each single, a number or a column. [yd/lb]
    plied_grist : Value
        Grist of the plied yarn aimed at, a number or a column. [yd/lb]
    take_up : Value
        Length of each single used in a unit length of plied yarn, 1 when none is taken up, a
        number or a column. [1]

    Returns
    -------
    Value
        Number of singles, of the inputs' shape; rarely a whole number. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `plied_grist` or `take_up` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). Take-up
    counts on the plied length: 1.10 means 110 yd of each single in 100 yd of plied yarn.

    Source
    ------
    Follows from the definition of grist.

    Examples
    --------
    >>> ply_count(2500, 1000, 1.25)
    2.0
    """
    return singles_grist / (plied_grist * take_up)


def singles_length(plied_length: Value, plies: Value, take_up: Value) -> Value:
    """Return the length of singles, all plies together, in a length of plied yarn.

    ``singles_length = plied_length * plies * take_up``

    Parameters
    ----------
    plied_length : Value
        Length of plied yarn, a number or a column. [yd]
    plies : Value
        Number of singles, a number or a column. [1]
    take_up : Value
        Length of each single used in a unit length of plied yarn, 1 when none is taken up, a
        number or a column. [1]

    Returns
    -------
    Value
        Length of all the singles together, of the inputs' shape. [yd]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). Take-up
    counts on the plied length: 1.10 means 110 yd of each single in 100 yd of plied yarn.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2014, question 37: 100000 km
    twisted take 106000 km untwisted at 1.06.

    Examples
    --------
    >>> singles_length(400, 2, 1.25)
    1000.0
    """
    return plied_length * plies * take_up


def plied_length(singles_length: Value, plies: Value, take_up: Value) -> Value:
    """Return the length of plied yarn that a length of singles gives.

    ``plied_length = singles_length / (plies * take_up)``

    Parameters
    ----------
    singles_length : Value
        Length of all the singles together, a number or a column. [yd]
    plies : Value
        Number of singles, a number or a column. [1]
    take_up : Value
        Length of each single used in a unit length of plied yarn, 1 when none is taken up, a
        number or a column. [1]

    Returns
    -------
    Value
        Length of plied yarn, of the inputs' shape. [yd]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `plies` or `take_up` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). Take-up
    counts on the plied length: 1.10 means 110 yd of each single in 100 yd of plied yarn.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2014, question 37, read backwards.

    Examples
    --------
    >>> plied_length(1000, 2, 1.25)
    400.0
    """
    return singles_length / (plies * take_up)

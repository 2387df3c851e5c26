"""Weaving: from a finished cloth to its size on the loom, its threads, and its weight.

Every loss is a share of what was there before it, so going back to the loom divides; a share is
never added. *Take-up* is the share of a yarn's own length that bending over and under takes, and
*crimp* the same extra length counted on the cloth.
"""

from yarnsheets.formulas.value import Value


def length_before_loss(length: Value, loss: Value) -> Value:
    """Return how long or wide a thing was, before a share of that was lost.

    ``length_before = length / (1 - loss)``

    Parameters
    ----------
    length : Value
        Length or width that is left, or that is wanted in the end, a number or a column. [in]
    loss : Value
        Share of the length before that goes: by shrinkage of the cloth off the loom, by draw-in of
        the width in the reed, by take-up of a yarn's own length, a number or a column. [1]

    Returns
    -------
    Value
        Length or width before, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Losses of 0 to 0.25 are usual; felted cloth loses more (common practice, no source). A loss of
    1 leaves nothing and divides by zero. For losses one after another divide by each in turn.

    Source
    ------
    Follows from the definition of a share. An article of a regional handweavers' conference: for
    10 in with 20 % shrinkage weave 12.5 in.

    Examples
    --------
    >>> length_before_loss(10.0, 0.2)
    12.5
    """
    return length / (1 - loss)


def warp_length(
    woven_length: Value, take_up: Value, pieces: Value, between: Value, waste: Value
) -> Value:
    """Return how long to wind a warp.

    ``warp_length = pieces * woven_length / (1 - take_up) + (pieces - 1) * between + waste``

    Parameters
    ----------
    woven_length : Value
        Length to weave of one piece, a number or a column. [in]
    take_up : Value
        Share of the warp's own length that bending around the weft takes, a number or a column.
        [1]
    pieces : Value
        Pieces woven one after another on this warp, a number or a column. [1]
    between : Value
        Warp left bare between two pieces, a number or a column. [in]
    waste : Value
        Warp that the loom keeps, at both ends together, a number or a column. [in]

    Returns
    -------
    Value
        Length of each end of the warp, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Take-up of 0.05 to 0.15 and waste of 18 to 36 in are usual (common practice, no source). A
    take-up of 1 divides by zero.

    Source
    ------
    Follows from the definition of take-up; the plan itself is common practice, no source.

    Examples
    --------
    >>> warp_length(72.0, 0.1, 2, 6.0, 24.0)
    190.0
    """
    return pieces * woven_length / (1 - take_up) + (pieces - 1) * between + waste


def thread_count(sett: Value, extent: Value) -> Value:
    """Return how many threads lie across a cloth.

    ``threads = sett * extent``

    Parameters
    ----------
    sett : Value
        Ends or picks to the inch, a number or a column. [1/in]
    extent : Value
        Width in the reed for ends, length woven for picks, a number or a column. [in]

    Returns
    -------
    Value
        Threads, of the inputs' shape; a loom takes the next whole number. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    The sett and the extent belong to one state of the cloth: both in the reed, or both finished.

    Source
    ------
    Follows from the definition of sett. A weaver's own published example: 22 in at 24 to
    the inch are 528 ends.

    Examples
    --------
    >>> thread_count(24.0, 22.0)
    528.0
    """
    return sett * extent


def yarn_in_threads(threads: Value, thread_length: Value) -> Value:
    """Return the yarn in threads of one length.

    ``yarn = threads * thread_length``

    Parameters
    ----------
    threads : Value
        Ends or picks, a number or a column. [1]
    thread_length : Value
        Length of each, a number or a column. [yd]

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
    Any lengths; ends all have one length, and so have picks.

    Source
    ------
    Common practice, no source. A weaver's own published example: 528 ends of 4 yd are 2,112 yd.

    Examples
    --------
    >>> yarn_in_threads(528.0, 4.0)
    2112.0
    """
    return threads * thread_length


def crimp(yarn_length: Value, cloth_length: Value) -> Value:
    """Return how much longer a yarn is than the cloth it lies in.

    ``crimp = yarn_length / cloth_length - 1``

    Parameters
    ----------
    yarn_length : Value
        Length of the yarn, pulled straight, a number or a column. [in]
    cloth_length : Value
        Length of the cloth it lies in, a number or a column. [in]

    Returns
    -------
    Value
        Extra length as a share of the cloth's, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `cloth_length` is a plain 0; a column gives infinity there.

    Range
    -----
    From 0 up. A take-up of 0.20 is a crimp of 0.25: one counts on the yarn, one on the cloth.

    Source
    ------
    F. T. Peirce, Journal of the Textile Institute, 1937, T45, from memory.

    Examples
    --------
    >>> crimp(12.5, 10.0)
    0.25
    """
    return yarn_length / cloth_length - 1


def cloth_mass_per_area(
    warp_sett: Value,
    warp_grist: Value,
    warp_crimp: Value,
    weft_sett: Value,
    weft_grist: Value,
    weft_crimp: Value,
) -> Value:
    """Return the mass of a unit area of cloth.

    ``mass = warp_sett * (1 + warp_crimp) / warp_grist + weft_sett * (1 + weft_crimp) / weft_grist``

    Parameters
    ----------
    warp_sett : Value
        Ends to the yard of the cloth, a number or a column. [1/yd]
    warp_grist : Value
        Grist of the warp, a number or a column. [yd/lb]
    warp_crimp : Value
        Extra length of the warp, as a share of the cloth's, a number or a column. [1]
    weft_sett : Value
        Picks to the yard of the cloth, a number or a column. [1/yd]
    weft_grist : Value
        Grist of the weft, a number or a column. [yd/lb]
    weft_crimp : Value
        Extra length of the weft, as a share of the cloth's, a number or a column. [1]

    Returns
    -------
    Value
        Mass to the square yard, of the inputs' shape. [lb/yd**2]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If a grist is a plain 0; a column gives infinity there.

    Range
    -----
    Setts and crimps of one state of the cloth: all as woven, or all finished.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2009, question 37.

    Examples
    --------
    >>> cloth_mass_per_area(400.0, 1000.0, 0.25, 300.0, 600.0, 0.5)
    1.25
    """
    warp = warp_sett * (1 + warp_crimp) / warp_grist
    return warp + weft_sett * (1 + weft_crimp) / weft_grist

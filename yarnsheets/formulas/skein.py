"""A skein of counted turns on a reel of known circumference."""

from yarnsheets.formulas.value import Value


def skein_length(turns: Value, circumference: Value) -> Value:
    """Return the length of yarn in a skein.

    ``length = turns * circumference``

    Parameters
    ----------
    turns : Value
        Turns round the reel, niddy-noddy or swift, a number or a column. [1]
    circumference : Value
        Length of one turn, a number or a column. [yd]

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
    Outer turns are longer: yarn that builds up 1/16 in on a 54 in reel makes the last turn 0.7 %
    too long.

    Source
    ------
    Thomas Woodhouse and Peter Kilgour, The Jute Industry: from Seed to Finished Cloth, table of
    yarns: 120 turns of 2 1/2 yd are a cut of 300 yd.

    Examples
    --------
    >>> skein_length(120, 2.5)
    300.0
    """
    return turns * circumference


def skein_turns(length: Value, circumference: Value) -> Value:
    """Return the turns that wind a length of yarn.

    ``turns = length / circumference``

    Parameters
    ----------
    length : Value
        Length to wind, a number or a column. [yd]
    circumference : Value
        Length of one turn, a number or a column. [yd]

    Returns
    -------
    Value
        Turns, of the inputs' shape; rarely a whole number. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `circumference` is a plain 0; a column gives infinity there.

    Range
    -----
    Any positive length and circumference.

    Source
    ------
    C. P. Brooks, Cotton Manufacturing, 19th century, chapter "Wrapping": a lea of 120 yd is 80
    turns of 1 1/2 yd.

    Examples
    --------
    >>> skein_turns(120, 1.5)
    80.0
    """
    return length / circumference


def skein_circumference(length: Value, turns: Value) -> Value:
    """Return the length of one turn from the length and the turns of a skein.

    ``circumference = length / turns``

    Parameters
    ----------
    length : Value
        Length of yarn in the skein, a number or a column. [yd]
    turns : Value
        Turns round the reel, niddy-noddy or swift, a number or a column. [1]

    Returns
    -------
    Value
        Length of one turn, of the inputs' shape. [yd]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `turns` is a plain 0; a column gives infinity there.

    Range
    -----
    Any positive length and number of turns.

    Source
    ------
    Thomas Woodhouse and Peter Kilgour, The Jute Industry: from Seed to Finished Cloth, table of
    yarns: a cut of 300 yd is 120 turns of 2 1/2 yd.

    Examples
    --------
    >>> skein_circumference(300, 120)
    2.5
    """
    return length / turns


def grist_from_skein(turns: Value, circumference: Value, mass: Value) -> Value:
    """Return the grist of a yarn from a skein of counted turns, weighed.

    ``grist = turns * circumference / mass``

    Parameters
    ----------
    turns : Value
        Turns round the reel, niddy-noddy or swift, a number or a column. [1]
    circumference : Value
        Length of one turn, a number or a column. [yd]
    mass : Value
        Mass of the skein, a number or a column. [lb]

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
    Yarn no coarser than 2000 tex, about 248 yd/lb, is what ASTM D1907 and ISO 2060 reel by the
    skein.

    Source
    ------
    C. P. Brooks, Cotton Manufacturing, 19th century, chapter "Wrapping".

    Examples
    --------
    >>> grist_from_skein(100, 1.5, 0.125)
    1200.0
    """
    return turns * circumference / mass

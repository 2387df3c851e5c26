"""A cut trimmed on a yarn balance until it hangs level: its length is its grist."""

from yarnsheets.formulas.value import Value


def grist_from_cut(cut: Value, balance_factor: Value) -> Value:
    """Return the grist of a yarn from a cut trimmed until it balances.

    ``grist = cut * balance_factor``

    Parameters
    ----------
    cut : Value
        Length that balances the counterweight, a number or a column. [in]
    balance_factor : Value
        Factor of the balance, the grist to a unit of cut, a number or a column. [yd/lb/in]

    Returns
    -------
    Value
        Grist, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Below a cut of about 4 in the trimming, above about 40 in the handling spoils the result
    (common practice, no source).

    Source
    ------
    Follows from the definition of grist: the cut's own mass is known, so its length tells its
    grist.

    Examples
    --------
    >>> grist_from_cut(10.5, 100)
    1050.0
    """
    return cut * balance_factor


def cut_from_grist(grist: Value, balance_factor: Value) -> Value:
    """Return the length of cut that balances for a grist aimed at.

    ``cut = grist / balance_factor``

    Parameters
    ----------
    grist : Value
        Grist aimed at, a number or a column. [yd/lb]
    balance_factor : Value
        Factor of the balance, the grist to a unit of cut, a number or a column. [yd/lb/in]

    Returns
    -------
    Value
        Length of the cut, of the inputs' shape. [in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `balance_factor` is a plain 0; a column gives infinity there.

    Range
    -----
    Below a cut of about 4 in the trimming, above about 40 in the handling spoils the result
    (common practice, no source).

    Source
    ------
    Follows from the definition of grist.

    Examples
    --------
    >>> cut_from_grist(1050, 100)
    10.5
    """
    return grist / balance_factor


def balance_factor(grist: Value, cut: Value) -> Value:
    """Return the factor of a balance from a yarn whose grist is known.

    ``balance_factor = grist / cut``

    Parameters
    ----------
    grist : Value
        Grist, known from a weighed skein, a number or a column. [yd/lb]
    cut : Value
        Length that balances the counterweight, a number or a column. [in]

    Returns
    -------
    Value
        Factor, of the inputs' shape. [yd/lb/in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `cut` is a plain 0; a column gives infinity there.

    Range
    -----
    Usually 100 yd/lb to the inch (common practice, no source).

    Source
    ------
    Follows from the definition of grist.

    Examples
    --------
    >>> balance_factor(1050, 10.5)
    100.0
    """
    return grist / cut


def counterweight(balance_factor: Value) -> Value:
    """Return the mass that a balance weighs the cut against.

    ``counterweight = 1 / balance_factor``

    Parameters
    ----------
    balance_factor : Value
        Factor with grist and cut in the same unit of length, which then cancels: 100 yd/lb to the
        inch is 3600 to the pound, a number or a column. [1/lb]

    Returns
    -------
    Value
        Mass of the counterweight, of the input's shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `balance_factor` is a plain 0; a column gives infinity there.

    Range
    -----
    About 0.126 g, or 35/18 grains, at 100 yd/lb to the inch.

    Source
    ------
    Follows from the definition of grist: the cut that balances has the counterweight's mass.

    Examples
    --------
    >>> counterweight(4000.0)
    0.00025
    """
    return 1 / balance_factor


def balance_factor_from_counterweight(counterweight: Value) -> Value:
    """Return the factor of a balance from the mass of its counterweight.

    ``balance_factor = 1 / counterweight``

    Parameters
    ----------
    counterweight : Value
        Mass that the cut is weighed against, a number or a column. [lb]

    Returns
    -------
    Value
        Factor with grist and cut in the same unit of length, of the input's shape. [1/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `counterweight` is a plain 0; a column gives infinity there.

    Range
    -----
    A counterweight of 0.126 g is usual, 100 yd/lb to the inch (common practice, no source).

    Source
    ------
    Follows from the definition of grist: the cut that balances has the counterweight's mass.

    Examples
    --------
    >>> balance_factor_from_counterweight(0.00025)
    4000.0
    """
    return 1 / counterweight

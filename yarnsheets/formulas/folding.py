"""Singles of different grist, plied or folded together."""

from yarnsheets.formulas.value import Value, Values


def plied_grist_unequal(singles_grists: Values, take_ups: Values) -> Value:
    """Return the grist of a yarn plied from unlike singles.

    ``plied_grist = 1 / sum(take_up / singles_grist)``

    Parameters
    ----------
    singles_grists : Values
        Grist of each single, a sequence of numbers or of columns. [yd/lb]
    take_ups : Values
        Length of each single used in a unit length of plied yarn, in the same order, a sequence of
        numbers or of columns. [1]

    Returns
    -------
    Value
        Grist of the plied yarn, of the shape of one single's. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If a single's grist is a plain 0, or all the take-ups are.

    Range
    -----
    Take-up runs from 0.98 to 1.15 and plies from 1 to 8 (common practice, no source). Each single
    needs its take-up: a ValueError says that one is missing.

    Source
    ------
    William Davis, Hosiery Manufacture, Pitman, c. 1920, chapters V and VI, Examples 27 to 36; J. T.
    Taylor, Cotton Weaving and Designing, 6th edition.

    Examples
    --------
    >>> plied_grist_unequal([1500.0, 3000.0], [1, 1])
    1000.0
    """
    return 1 / sum(taken / grist for grist, taken in zip(singles_grists, take_ups, strict=True))


def missing_single_grist(
    plied_grist: Value, other_grists: Values, other_take_ups: Values, take_up: Value
) -> Value:
    """Return the grist of the one single that completes a plied yarn aimed at.

    ``missing_grist = take_up / (1 / plied_grist - sum(other_take_up / other_grist))``

    Parameters
    ----------
    plied_grist : Value
        Grist of the plied yarn aimed at, a number or a column. [yd/lb]
    other_grists : Values
        Grist of each other single, a sequence of numbers or of columns. [yd/lb]
    other_take_ups : Values
        Take-up of each other single, in the same order, a sequence of numbers or of columns. [1]
    take_up : Value
        Take-up of the missing single, a number or a column. [1]

    Returns
    -------
    Value
        Grist of the missing single, of the shape of one single's. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If a grist is a plain 0, or the others leave no mass for the missing single.

    Range
    -----
    A result below 0 says that the others together are already heavier than the plied yarn aimed
    at.

    Source
    ------
    William Davis, Hosiery Manufacture, Pitman, c. 1920, chapters V and VI, Example 45 read
    backwards: a 60s that folds to 12s wants a 15s beside it.

    Examples
    --------
    >>> missing_single_grist(1000.0, [2000.0], [1], 1)
    2000.0
    """
    others = sum(taken / grist for grist, taken in zip(other_grists, other_take_ups, strict=True))
    return take_up / (1 / plied_grist - others)


def mass_share(singles_grist: Value, take_up: Value, plied_grist: Value) -> Value:
    """Return the share of a plied yarn's mass that one of its singles has.

    ``mass_share = take_up * plied_grist / singles_grist``

    Parameters
    ----------
    singles_grist : Value
        Grist of that single, a number or a column. [yd/lb]
    take_up : Value
        Length of that single used in a unit length of plied yarn, a number or a column. [1]
    plied_grist : Value
        Grist of the plied yarn, a number or a column. [yd/lb]

    Returns
    -------
    Value
        Share of the mass, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `singles_grist` is a plain 0; a column gives infinity there.

    Range
    -----
    The shares of all the singles sum to 1; if they do not, a grist or a take-up is wrong.

    Source
    ------
    William Davis, Hosiery Manufacture, Pitman, c. 1920, chapters V and VI, Examples 31, 33 and 45.

    Examples
    --------
    >>> mass_share(3000, 1, 1500)
    0.5
    """
    return take_up * plied_grist / singles_grist

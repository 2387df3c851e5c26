"""Contraction in plying, said in its two ways.

"10 % take-up" has two meanings. Here *take-up* is the length of a single used in a unit length of
plied yarn (1.10), and *retraction* the share of a single's length lost in plying (0.10, which is
a take-up of 1.11). Every formula asks for take-up; two formulas turn one into the other.
"""

from yarnsheets.formulas.value import Value


def take_up_from_retraction(retraction: Value) -> Value:
    """Return the take-up from the share of a single's length that plying loses.

    ``take_up = 1 / (1 - retraction)``

    Parameters
    ----------
    retraction : Value
        Share of the single's own length lost, 0.10 for 90 yd plied from 100 yd of each single, a
        number or a column. [1]

    Returns
    -------
    Value
        Length of each single used in a unit length of plied yarn, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `retraction` is a plain 1; a column gives infinity there.

    Range
    -----
    Retraction runs from -0.02 to 0.13, a take-up of 0.98 to 1.15 (common practice, no source).
    0.10 is a take-up of 1.11, not of 1.10.

    Source
    ------
    J. W. S. Hearle, P. Grosberg and S. Backer, Structural Mechanics of Fibers, Yarns, and Fabrics,
    Wiley, 1969, chapter 2, from memory.

    Examples
    --------
    >>> take_up_from_retraction(0.2)
    1.25
    """
    return 1 / (1 - retraction)


def retraction(take_up: Value) -> Value:
    """Return the share of a single's length that plying loses, from the take-up.

    ``retraction = 1 - 1 / take_up``

    Parameters
    ----------
    take_up : Value
        Length of each single used in a unit length of plied yarn, 1 when none is taken up, a
        number or a column. [1]

    Returns
    -------
    Value
        Share of the single's own length lost, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `take_up` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up runs from 0.98 to 1.15 (common practice, no source). 1.10 is a retraction of 0.091, not
    of 0.10.

    Source
    ------
    J. W. S. Hearle, P. Grosberg and S. Backer, Structural Mechanics of Fibers, Yarns, and Fabrics,
    Wiley, 1969, chapter 2, from memory.

    Examples
    --------
    >>> retraction(1.6)
    0.375
    """
    return 1 - 1 / take_up

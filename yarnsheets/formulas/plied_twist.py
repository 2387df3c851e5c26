"""How twist shortens: a single by its own twist, and singles by being plied.

In plying each single winds around the others, which takes up length, and loses twist of its own,
which gives some back. Slants are tangents, as `twist.twist_tangent` gives them; the model takes a
single for a round rod that keeps its thickness, and its fibres for endless.
"""

from yarnsheets.formulas.value import Value


def twist_take_up(tangent: Value) -> Value:
    """Return the length of untwisted strand in a unit length of a twisted single.

    ``take_up = (1 + (1 + tangent ** 2) ** 0.5) / 2``

    Parameters
    ----------
    tangent : Value
        Tangent of the angle at which outer fibres slant, a number or a column. [1]

    Returns
    -------
    Value
        Length of untwisted strand, of the input's shape; 1 without twist. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    From 1.00 at 5 degrees to 1.15 at 40. Fibres lie everywhere between axis and surface, so this
    is the mean of their lengths.

    Source
    ------
    J. W. S. Hearle, P. Grosberg and S. Backer, Structural Mechanics of Fibers, Yarns, and Fabrics,
    Wiley, 1969, chapter 2, from memory: half of 1 and the secant of the angle together.

    Examples
    --------
    >>> twist_take_up(0.75)
    1.125
    """
    return (1 + (1 + tangent**2) ** 0.5) / 2


def helix_take_up(tangent: Value) -> Value:
    """Return the take-up of singles that wind around each other and keep their length.

    ``take_up = (1 + tangent ** 2) ** 0.5``

    Parameters
    ----------
    tangent : Value
        Tangent of the angle at which the singles slant to the yarn, a number or a column. [1]

    Returns
    -------
    Value
        Length of each single used in a unit length of plied yarn, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    More than plying really takes up, because singles that lose twist grow longer: see
    `plying_take_up`.

    Source
    ------
    Follows from the definition of the tangent, with one turn of the helix unrolled.

    Examples
    --------
    >>> helix_take_up(0.75)
    1.25
    """
    return (1 + tangent**2) ** 0.5


def residual_twist(twist: Value, ply_twist: Value, tangent: Value) -> Value:
    """Return the twist that a single keeps when it is plied the other way.

    ``residual = twist - ply_twist / (1 + tangent ** 2)``

    Parameters
    ----------
    twist : Value
        Turns to a unit of length of the single before plying, a number or a column. [1/in]
    ply_twist : Value
        Turns to a unit of length of the plied yarn, the other way, a number or a column. [1/in]
    tangent : Value
        Tangent of the angle at which the singles slant to the yarn, a number or a column. [1]

    Returns
    -------
    Value
        Turns to a unit of length of the single in the yarn, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Below 0 the single has lost all its twist and taken some the other way. The thickness is taken
    to stay the same; the source has the single thinner as it grows, which leaves a little less.

    Source
    ------
    Journal of the Textile Machinery Society of Japan, 14 (3-4), 115 (1968, the year from memory),
    abstract on the twist shrinkage of two-fold staple yarn: the share of the twist that is left is
    1 less the ratio of ply twist to twist times the squared cosine.

    Examples
    --------
    >>> residual_twist(6.0, 5.0, 0.5)
    2.0
    """
    return twist - ply_twist / (1 + tangent**2)


def plying_take_up(before: Value, after: Value, helix: Value) -> Value:
    """Return the take-up of singles that wind around each other and lose twist.

    ``take_up = helix * after / before``

    Parameters
    ----------
    before : Value
        Take-up of the single by its own twist before plying, a number or a column. [1]
    after : Value
        Take-up of the single by the twist that plying leaves it, a number or a column. [1]
    helix : Value
        Take-up of the singles by winding around each other alone, a number or a column. [1]

    Returns
    -------
    Value
        Length of each single used in a unit length of plied yarn, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `before` is a plain 0; a column gives infinity there.

    Range
    -----
    From 0.98 to 1.15, and usually 1.00 to 1.05 (common practice, no source). Below 1 the singles
    grew by more than winding took up.

    Source
    ------
    Journal of the Textile Machinery Society of Japan, 14 (3-4), 115 (1968, the year from memory),
    abstract on the twist shrinkage of two-fold staple yarn.

    Examples
    --------
    >>> plying_take_up(1.25, 1.0, 1.5)
    1.2
    """
    return helix * after / before


def ply_twist_same_multiplier(twist: Value, plies: Value) -> Value:
    """Return the ply twist that keeps the singles' twist multiplier in the plied yarn.

    ``ply_twist = twist / plies ** 0.5``

    Parameters
    ----------
    twist : Value
        Turns to a unit of length of each single, a number or a column. [1/in]
    plies : Value
        Number of singles, a number or a column. [1]

    Returns
    -------
    Value
        Turns to a unit of length of the plied yarn, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `plies` is a plain 0; a column gives infinity there.

    Range
    -----
    Take-up is left out of the plied grist. A balanced yarn of two singles has about two thirds of
    their twist (common practice, no source), nearly the same as this, 0.71. From three plies on
    this is less than two thirds, 0.58 and 0.50, and a balanced yarn has between the two: singles
    wind around a wider circle, so that fewer turns slant them as much.

    Source
    ------
    Follows from the definition of the multiplier: the grist of n equal singles is a nth.

    Examples
    --------
    >>> ply_twist_same_multiplier(6, 4)
    3.0
    """
    return twist / plies**0.5

"""The fibres in a yarn's cross-section: how many there are, and how fine a yarn they allow.

A yarn holds together by the fibres that lie side by side in it. Fibres are taken for round rods;
their diameters vary, and `spread` is the coefficient of variation of them, as a share.
"""

from yarnsheets.formulas.value import Value


def fibre_linear_density(diameter: Value, density: Value, spread: Value) -> Value:
    """Return the mean mass of a unit length of a fibre.

    ``linear_density = pi / 4 * diameter ** 2 * density * (1 + spread ** 2)``

    Parameters
    ----------
    diameter : Value
        Mean diameter of the fibres, a number or a column. [in]
    density : Value
        Mass to a unit of volume of solid fibre, a number or a column. [lb/yd/in**2]
    spread : Value
        Coefficient of variation of the diameters, 0 when all are alike, a number or a column. [1]

    Returns
    -------
    Value
        Mass to a unit of length, of the inputs' shape. [lb/yd]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Wool runs from about 15 to 40 micron, with a spread of 0.2 to 0.3. Cotton and flax are not
    round: the diameter is then that of a round rod of the same section.

    Source
    ------
    Follows from the definition of density: the mean square of diameters is the square of their
    mean times 1 + spread ** 2. W. E. Morton and J. W. S. Hearle, Physical Properties of Textile
    Fibres, from memory.

    Examples
    --------
    >>> fibre_linear_density(2.0, 1.0, 0.0)
    3.141592653589793
    """
    return 0.7853981633974483 * diameter**2 * density * (1 + spread**2)


def fibres_in_section(grist: Value, fibre_linear_density: Value) -> Value:
    """Return the mean number of fibres in the cross-section of a yarn.

    ``fibres = 1 / (grist * fibre_linear_density)``

    Parameters
    ----------
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]
    fibre_linear_density : Value
        Mass of a unit length of a fibre, a number or a column. [lb/yd]

    Returns
    -------
    Value
        Number of fibres, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `grist` or `fibre_linear_density` is a plain 0; a column gives infinity there.

    Range
    -----
    From about 30 up for a single that can be spun; hundreds for a yarn to knit with.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2021, question 53: 50 tex of
    4.5 denier fibre has 100 fibres.

    Examples
    --------
    >>> fibres_in_section(1000.0, 1e-5)
    100.0
    """
    return 1 / (grist * fibre_linear_density)


def finest_grist(least_fibres: Value, fibre_linear_density: Value) -> Value:
    """Return the finest grist that keeps a least number of fibres in the cross-section.

    ``finest_grist = 1 / (least_fibres * fibre_linear_density)``

    Parameters
    ----------
    least_fibres : Value
        Least number of fibres that hold together, a number or a column. [1]
    fibre_linear_density : Value
        Mass of a unit length of a fibre, a number or a column. [lb/yd]

    Returns
    -------
    Value
        Grist, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `least_fibres` or `fibre_linear_density` is a plain 0; a column gives infinity there.

    Range
    -----
    Handspinning keeps 20 to 40 fibres (common practice, no source); combed cotton spun on rings
    33, carded cotton 75, synthetics 50 (W. Klein, Technology of Short-staple Spinning, Textile
    Institute).

    Source
    ------
    Follows from the definition of the number of fibres in the section.

    Examples
    --------
    >>> finest_grist(40, 0.0005)
    50.0
    """
    return 1 / (least_fibres * fibre_linear_density)


def limit_irregularity(fibres: Value, spread: Value) -> Value:
    """Return the unevenness that even the best spinning leaves, fibres lying at random.

    ``limit = ((1 + 4 * spread ** 2) / fibres) ** 0.5``

    Parameters
    ----------
    fibres : Value
        Mean number of fibres in the cross-section, a number or a column. [1]
    spread : Value
        Coefficient of variation of the fibres' diameters, a number or a column. [1]

    Returns
    -------
    Value
        Coefficient of variation of the yarn's mass from place to place, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `fibres` is a plain 0; a column gives infinity there.

    Range
    -----
    With 100 fibres 0.100 for fibres all alike, 0.106 for cotton, 0.112 for wool.

    Source
    ------
    J. G. Martindale, Journal of the Textile Institute, 1945, 36, T35, from memory.

    Examples
    --------
    >>> limit_irregularity(100, 0.0)
    0.1
    """
    return ((1 + 4 * spread**2) / fibres) ** 0.5


def irregularity_index(irregularity: Value, limit_irregularity: Value) -> Value:
    """Return how many times as uneven a yarn is as the best spinning could make it.

    ``index = irregularity / limit_irregularity``

    Parameters
    ----------
    irregularity : Value
        Coefficient of variation of the yarn's mass from place to place, a number or a column. [1]
    limit_irregularity : Value
        That of the best spinning, a number or a column. [1]

    Returns
    -------
    Value
        Index of irregularity, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `limit_irregularity` is a plain 0; a column gives infinity there.

    Range
    -----
    1 or more: less than 1 says that a number is wrong.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2021, question 53: a coefficient of
    variation of 12.5 % over a limit of 10 % is 1.25.

    Examples
    --------
    >>> irregularity_index(0.125, 0.1)
    1.25
    """
    return irregularity / limit_irregularity

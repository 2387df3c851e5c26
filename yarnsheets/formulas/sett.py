"""A yarn in cloth: diameters to the inch by Ashenhurst's rule, sett and cover.

The rule was made for mill-spun yarn as close as it can lie, and its factors mean a yarn far denser
than handspun laid round a ruler by hand: wraps are less than half as many. They are another
quantity, in the module `diameter`, and neither may stand in for the other.
"""

from yarnsheets.formulas.value import Value


def ashenhurst_diameters(grist: Value, factor: Value) -> Value:
    """Return the diameters to the inch of a yarn in cloth, by Ashenhurst's rule.

    ``diameters = factor * grist ** 0.5``

    Parameters
    ----------
    grist : Value
        Grist of the yarn, a number or a column. [yd/lb]
    factor : Value
        Factor of the rule; each author has his own for each kind of yarn, and it belongs to the
        units of the grist and of the result, a number or a column. [lb**0.5/yd**0.5/in]

    Returns
    -------
    Value
        Diameters to the inch in cloth, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    The factor runs from 0.84 for soft woollen to 0.97 for cotton. It is no factor for wraps laid
    by hand, which make 0.37 to 0.41 in printed charts.

    Source
    ------
    T. R. Ashenhurst, 1880s, as J. T. Taylor, Cotton Weaving and Designing, 6th edition, uses the
    rule. F. T. Peirce, Journal of the Textile Institute, 1937, T45, from memory, has the same rule
    with a factor of 28 for grist in hanks of 840 yd to the pound.

    Examples
    --------
    >>> ashenhurst_diameters(3600.0, 0.9)
    54.0
    """
    return factor * grist**0.5


def grist_from_ashenhurst_diameters(diameters: Value, factor: Value) -> Value:
    """Return the grist of a yarn from its diameters to the inch in cloth.

    ``grist = (diameters / factor) ** 2``

    Parameters
    ----------
    diameters : Value
        Diameters to the inch in cloth, not wraps laid by hand, a number or a column. [1/in]
    factor : Value
        Factor of Ashenhurst's rule, as for `ashenhurst_diameters`, a number or a column.
        [lb**0.5/yd**0.5/in]

    Returns
    -------
    Value
        Grist, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `factor` is a plain 0; a column gives infinity there.

    Range
    -----
    As for `ashenhurst_diameters`. Wraps laid by hand, put in here, give a grist four to six times
    too coarse.

    Source
    ------
    T. R. Ashenhurst, 1880s, as J. T. Taylor, Cotton Weaving and Designing, 6th edition, uses the
    rule.

    Examples
    --------
    >>> grist_from_ashenhurst_diameters(54.0, 0.9)
    3600.0
    """
    return (diameters / factor) ** 2


def ashenhurst_factor(bulk_density: Value) -> Value:
    """Return the factor of Ashenhurst's rule from the bulk density of the yarn in cloth.

    ``factor = (pi / 4 * bulk_density) ** 0.5``

    Parameters
    ----------
    bulk_density : Value
        Mass to a unit of the yarn's volume in cloth, air included, a number or a column.
        [lb/yd/in**2]

    Returns
    -------
    Value
        Factor of the rule, of the input's shape. [lb**0.5/yd**0.5/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    The published factors mean a bulk density in cloth of 0.69 to 0.91 g/cm**3.

    Source
    ------
    Follows from the definition of grist, for a round yarn. F. T. Peirce, Journal of the Textile
    Institute, 1937, T45, from memory: his factor is that of a yarn of 1.1 cm**3/g.

    Examples
    --------
    >>> ashenhurst_factor(5.092958178940651)
    2.0
    """
    return (0.7853981633974483 * bulk_density) ** 0.5


def bulk_density_from_ashenhurst_factor(factor: Value) -> Value:
    """Return the bulk density in cloth that a factor of Ashenhurst's rule means.

    ``bulk_density = factor ** 2 / (pi / 4)``

    Parameters
    ----------
    factor : Value
        Factor of the rule, a number or a column. [lb**0.5/yd**0.5/in]

    Returns
    -------
    Value
        Mass to a unit of the yarn's volume in cloth, of the input's shape. [lb/yd/in**2]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    The published factors mean 0.69 to 0.91 g/cm**3.

    Source
    ------
    Follows from the definition of grist, for a round yarn.

    Examples
    --------
    >>> bulk_density_from_ashenhurst_factor(2.0)
    5.092958178940651
    """
    return factor**2 / 0.7853981633974483


def sett_maximum(diameters: Value, ends: Value, intersections: Value) -> Value:
    """Return the closest sett of a weave, in ends to the inch.

    ``sett = diameters * ends / (ends + intersections)``

    Parameters
    ----------
    diameters : Value
        Diameters to the inch in cloth, not wraps laid by hand, a number or a column. [1/in]
    ends : Value
        Ends in one repeat of the weave, a number or a column. [1]
    intersections : Value
        Times the weft passes from one face to the other in that repeat, a number or a column. [1]

    Returns
    -------
    Value
        Closest ends to the inch, of the inputs' shape. [1/in]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Plain weave has 2 ends and 2 intersections, a twill of 4 ends has 4 and 2, a satin of 5 ends
    5 and 2. Both 0 is no weave and divides by zero. A working sett is about three quarters of the
    closest (medievaltextiles.org, 1999).

    Source
    ------
    T. R. Ashenhurst, 1880s, as J. T. Taylor, Cotton Weaving and Designing, 6th edition, uses the
    rule.

    Examples
    --------
    >>> sett_maximum(54.0, 4, 2)
    36.0
    """
    return diameters * ends / (ends + intersections)


def cloth_cover(
    warp_sett: Value, warp_diameter: Value, weft_sett: Value, weft_diameter: Value
) -> Value:
    """Return the share of a cloth's area that its yarns cover.

    ``cover = 1 - (1 - warp_sett * warp_diameter) * (1 - weft_sett * weft_diameter)``

    Parameters
    ----------
    warp_sett : Value
        Ends to the inch, a number or a column. [1/in]
    warp_diameter : Value
        Diameter of the warp in the cloth, a number or a column. [in]
    weft_sett : Value
        Picks to the inch, a number or a column. [1/in]
    weft_diameter : Value
        Diameter of the weft in the cloth, a number or a column. [in]

    Returns
    -------
    Value
        Share of the area covered, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    From 0 to 1; neither sett times its diameter may exceed 1, where the threads touch.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2007, question 85.

    Examples
    --------
    >>> cloth_cover(10.0, 0.05, 10.0, 0.025)
    0.625
    """
    return 1 - (1 - warp_sett * warp_diameter) * (1 - weft_sett * weft_diameter)

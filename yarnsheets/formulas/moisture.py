"""Moisture: the water in fibre and yarn, and what it does to mass and grist.

The same water is said in two ways. *Regain* is the water as a share of the bone-dry mass, *content*
the water as a share of the whole: 16 g of water in 116 g of wool is a regain of 0.16 and a content
of 0.138. Every formula asks for regain; two formulas turn one into the other.
"""

from yarnsheets.formulas.value import Value, Values


def regain(mass: Value, dry_mass: Value) -> Value:
    """Return the regain of fibre or yarn that was weighed as it is and again bone dry.

    ``regain = mass / dry_mass - 1``

    Parameters
    ----------
    mass : Value
        Mass as it is, water included, a number or a column. [lb]
    dry_mass : Value
        Mass of the same fibre dried until it loses no more, a number or a column. [lb]

    Returns
    -------
    Value
        Water as a share of the dry mass, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `dry_mass` is a plain 0; a column gives infinity there.

    Range
    -----
    Wool runs from 0 to about 0.33, where it holds no more (from memory).

    Source
    ------
    W. E. Morton and J. W. S. Hearle, Physical Properties of Textile Fibres, 2008, from memory: the
    definition of regain.

    Examples
    --------
    >>> regain(1.25, 1.0)
    0.25
    """
    return mass / dry_mass - 1


def regain_from_content(content: Value) -> Value:
    """Return the regain from the moisture content.

    ``regain = content / (1 - content)``

    Parameters
    ----------
    content : Value
        Water as a share of the whole mass, water included, a number or a column. [1]

    Returns
    -------
    Value
        Water as a share of the dry mass, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `content` is a plain 1, water and nothing else; a column gives infinity there.

    Range
    -----
    Content runs from 0 to 0.25 for wool (from memory). 0.12 is a regain of 0.136, not of 0.12.

    Source
    ------
    W. E. Morton and J. W. S. Hearle, Physical Properties of Textile Fibres, 2008, from memory:
    follows from the two definitions.

    Examples
    --------
    >>> regain_from_content(0.2)
    0.25
    """
    return content / (1 - content)


def content_from_regain(regain: Value) -> Value:
    """Return the moisture content from the regain.

    ``content = regain / (1 + regain)``

    Parameters
    ----------
    regain : Value
        Water as a share of the dry mass, a number or a column. [1]

    Returns
    -------
    Value
        Water as a share of the whole mass, water included, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Regain runs from 0 to 0.33 for wool (from memory). 0.136 is a content of 0.12, not of 0.136.

    Source
    ------
    W. E. Morton and J. W. S. Hearle, Physical Properties of Textile Fibres, 2008, from memory:
    follows from the two definitions.

    Examples
    --------
    >>> content_from_regain(0.25)
    0.2
    """
    return regain / (1 + regain)


def dry_mass(mass: Value, regain: Value) -> Value:
    """Return the bone-dry mass of fibre or yarn whose regain is known.

    ``dry_mass = mass / (1 + regain)``

    Parameters
    ----------
    mass : Value
        Mass as it is, water included, a number or a column. [lb]
    regain : Value
        Water as a share of the dry mass, a number or a column. [1]

    Returns
    -------
    Value
        Mass without the water, of the inputs' shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Regain runs from 0 to 0.33 for wool (from memory). A content is no regain: turn it into one
    first.

    Source
    ------
    Follows from the definition of regain.

    Examples
    --------
    >>> dry_mass(2.5, 0.25)
    2.0
    """
    return mass / (1 + regain)


def mass_at_regain(mass: Value, regain: Value, wanted_regain: Value) -> Value:
    """Return the mass that fibre or yarn has at another regain, as for an invoice.

    ``mass_at_regain = mass * (1 + wanted_regain) / (1 + regain)``

    Parameters
    ----------
    mass : Value
        Mass as it is, water included, a number or a column. [lb]
    regain : Value
        Water now, as a share of the dry mass, a number or a column. [1]
    wanted_regain : Value
        Regain to restate the mass at, such as the commercial one, a number or a column. [1]

    Returns
    -------
    Value
        Mass at the wanted regain, of the inputs' shape. [lb]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Regain runs from 0 to 0.33 for wool (from memory). Commercial regains differ from one authority
    to another, so the one used belongs beside the result.

    Source
    ------
    ASTM International, D1909, 2013, for what a commercial regain is: agreed by the trade, and not
    the regain that fibre comes to by itself.

    Examples
    --------
    >>> mass_at_regain(2.5, 0.25, 0.5)
    3.0
    """
    return mass * (1 + wanted_regain) / (1 + regain)


def grist_at_regain(grist: Value, regain: Value, wanted_regain: Value) -> Value:
    """Return the grist that a yarn has at another regain.

    ``grist_at_regain = grist * (1 + regain) / (1 + wanted_regain)``

    Parameters
    ----------
    grist : Value
        Grist as measured, a number or a column. [yd/lb]
    regain : Value
        Water when it was measured, as a share of the dry mass, a number or a column. [1]
    wanted_regain : Value
        Regain to restate the grist at, a number or a column. [1]

    Returns
    -------
    Value
        Grist at the wanted regain, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Regain runs from 0 to 0.33 for wool (from memory). Water is taken to change the mass alone and
    not the length.

    Source
    ------
    Follows from the definition of regain: a wetter yarn has the same yards and more mass.

    Examples
    --------
    >>> grist_at_regain(1000, 0.5, 0.25)
    1200.0
    """
    return grist * (1 + regain) / (1 + wanted_regain)


def blend_regain(dry_shares: Values, regains: Values) -> Value:
    """Return the regain of a blend from the regains of its fibres.

    ``blend_regain = sum(dry_share * regain)``

    Parameters
    ----------
    dry_shares : Values
        Share that each fibre has of the dry mass, a sequence of numbers or of columns. [1]
    regains : Values
        Regain of each fibre, in the same order, a sequence of numbers or of columns. [1]

    Returns
    -------
    Value
        Regain of the blend, of the shape of one fibre's. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    The shares are of dry mass and sum to 1. Each share needs its regain: a ValueError says that
    one is missing.

    Source
    ------
    Graduate Aptitude Test in Engineering, Textile Engineering, 2007, question 70.

    Examples
    --------
    >>> blend_regain([0.5, 0.5], [0.25, 0.125])
    0.1875
    """
    return sum(share * regain for share, regain in zip(dry_shares, regains, strict=True))

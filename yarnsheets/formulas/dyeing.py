"""Dyeing by the weight of the fibre: lots, dye, stock, what is added, and the bath.

A depth of shade and what is added to the bath are shares of the weight of clean fibre. A stock's
strength is weight in volume: 1 g of dye made up to 100 mL with water is 0.01 g/mL.
"""

from yarnsheets.formulas.value import Value


def lot_weight(goods: Value, spare: Value, lots: Value) -> Value:
    """Return the weight of one of several lots that are all alike.

    ``lot_weight = goods * (1 + spare) / lots``

    Parameters
    ----------
    goods : Value
        Weight of the yarn or fibre that is needed, a number or a column. [g]
    spare : Value
        What is dyed beyond that, as a share of it, a number or a column. [1]
    lots : Value
        How many lots it is dyed in, a number or a column. [1]

    Returns
    -------
    Value
        Weight of a lot, of the inputs' shape. [g]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `lots` is a plain 0; a column gives infinity there.

    Range
    -----
    A spare of 0 to 0.5, often 0.1 (common practice, no source); a whole number of lots.

    Source
    ------
    Follows from the definition of a share.

    Examples
    --------
    >>> lot_weight(400, 0.25, 2)
    250.0
    """
    return goods * (1 + spare) / lots


def mass_on_fibre(fibre: Value, share: Value) -> Value:
    """Return the mass of dye, or of what is added with it, from the weight of the fibre.

    ``mass_on_fibre = fibre * share``

    Parameters
    ----------
    fibre : Value
        Weight of the clean, dry fibre, a number or a column. [g]
    share : Value
        Depth of shade, or the share that is added, a number or a column. [1]

    Returns
    -------
    Value
        Mass of dye powder, acid or salt, of the inputs' shape. [g]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Depths of 0.0005 to 0.1; above about 0.04 dye may be left in the bath (common practice, no
    source).

    Source
    ------
    Follows from the definition of depth of shade.

    Examples
    --------
    >>> mass_on_fibre(250, 0.02)
    5.0
    """
    return fibre * share


def stock_volume(fibre: Value, depth: Value, strength: Value) -> Value:
    """Return the volume of stock solution that holds the dye for a depth of shade.

    ``stock_volume = fibre * depth / strength``

    Parameters
    ----------
    fibre : Value
        Weight of the clean, dry fibre, a number or a column. [g]
    depth : Value
        Depth of shade: dye as a share of the fibre, a number or a column. [1]
    strength : Value
        Dye in a volume of stock, a number or a column. [g/mL]

    Returns
    -------
    Value
        Volume of stock, of the inputs' shape. [mL]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `strength` is a plain 0; a column gives infinity there.

    Range
    -----
    Strengths of 0.001 to 0.1 g/mL, usually 0.01 (common practice, no source).

    Source
    ------
    Follows from the definitions of depth and strength; dyers' own worked examples agree: 454 g at
    1 % from a stock of 1 % take 454 mL.

    Examples
    --------
    >>> stock_volume(100, 0.25, 0.5)
    50.0
    """
    return fibre * depth / strength


def bath_volume(fibre: Value, liquor_ratio: Value) -> Value:
    """Return the volume of a dye bath.

    ``bath_volume = fibre * liquor_ratio``

    Parameters
    ----------
    fibre : Value
        Weight of the clean, dry fibre, a number or a column. [g]
    liquor_ratio : Value
        Volume of bath to a weight of fibre, a number or a column. [mL/g]

    Returns
    -------
    Value
        Volume of the bath, stock and all, of the inputs' shape. [mL]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Ratios of 10 to 100, by hand often 30 to 40 (common practice, no source).

    Source
    ------
    Follows from the definition of the liquor ratio; a bath is taken to weigh 1 g/mL.

    Examples
    --------
    >>> bath_volume(250, 40.0)
    10000.0
    """
    return fibre * liquor_ratio

"""Planning a spin: shares left by a loss, what a wash does to grist, hours and cost.

The stages of fibre are in `fibre` and those of plying in `plying`; here is what joins them to a
plan. A loss is always turned into the share it leaves first, since shares multiply.
"""

from yarnsheets.formulas.value import Value


def share_left(loss: Value) -> Value:
    """Return the share that a loss leaves.

    ``share_left = 1 - loss``

    Parameters
    ----------
    loss : Value
        Share of the mass or length that goes: waste, noil, shrinkage, a number or a column. [1]

    Returns
    -------
    Value
        Share that is left, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Losses run from 0 to below 1; spinning and plying lose 0.02-0.08, carding by hand 0.05-0.15
    (common practice, no source).

    Source
    ------
    Follows from the definition of a share.

    Examples
    --------
    >>> share_left(0.25)
    0.75
    """
    return 1 - loss


def noil_share(tear: Value) -> Value:
    """Return the share of combed wool that goes into the noil, from the tear.

    ``noil_share = 1 / (1 + tear)``

    Parameters
    ----------
    tear : Value
        Mass of top to one of noil, a number or a column. [1]

    Returns
    -------
    Value
        Noil as a share of top and noil together, of the input's shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Tears of 9.4 to 13.5 in worsted mills; by hand from 2 (common practice, no source).

    Source
    ------
    Effect of Staple Strength on Worsted Processing, Part II, Journal of the Textile Institute,
    abstract, whose tears run from 9.4 to 13.5 to 1; the share by its definition.

    Examples
    --------
    >>> noil_share(9)
    0.1
    """
    return 1 / (1 + tear)


def washed_grist(grist: Value, length_left: Value, mass_left: Value) -> Value:
    """Return the grist of a yarn after its wash.

    ``washed_grist = grist * length_left / mass_left``

    Parameters
    ----------
    grist : Value
        Grist before the wash, a number or a column. [yd/lb]
    length_left : Value
        Share of its length that the skein keeps, a number or a column. [1]
    mass_left : Value
        Share of its mass that the skein keeps, a number or a column. [1]

    Returns
    -------
    Value
        Grist after the wash, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `mass_left` is a plain 0; a column gives infinity there.

    Range
    -----
    A skein keeps 0.90-0.98 of its length, woollen yarn less (common practice, no source).

    Source
    ------
    Follows from the definition of grist.

    Examples
    --------
    >>> washed_grist(1000, 0.75, 0.75)
    1000.0
    """
    return grist * length_left / mass_left


def unwashed_grist(grist: Value, length_left: Value, mass_left: Value) -> Value:
    """Return the grist to ply to, for a yarn that is to have a grist after its wash.

    ``unwashed_grist = grist * mass_left / length_left``

    Parameters
    ----------
    grist : Value
        Grist after the wash, a number or a column. [yd/lb]
    length_left : Value
        Share of its length that the skein keeps, a number or a column. [1]
    mass_left : Value
        Share of its mass that the skein keeps, a number or a column. [1]

    Returns
    -------
    Value
        Grist before the wash, of the inputs' shape. [yd/lb]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `length_left` is a plain 0; a column gives infinity there.

    Range
    -----
    A skein keeps 0.90-0.98 of its length, woollen yarn less (common practice, no source).

    Source
    ------
    Follows from the definition of grist.

    Examples
    --------
    >>> unwashed_grist(750, 0.75, 1)
    1000.0
    """
    return grist * mass_left / length_left


def hours(length: Value, speed: Value) -> Value:
    """Return the hours that a length takes at a speed.

    ``hours = length / speed``

    Parameters
    ----------
    length : Value
        Length to spin or to ply, a number or a column. [yd]
    speed : Value
        Length made in an hour, from a timed sample, a number or a column. [yd/hour]

    Returns
    -------
    Value
        Time, of the inputs' shape. [hour]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `speed` is a plain 0; a column gives infinity there.

    Range
    -----
    Spinning by hand makes 20 to 300 yd of single an hour (common practice, no source).

    Source
    ------
    Follows from the definition of speed.

    Examples
    --------
    >>> hours(600, 150)
    4.0
    """
    return length / speed


def cost(put_ups: Value, price: Value) -> Value:
    """Return what a number of put-ups costs.

    ``cost = put_ups * price``

    Parameters
    ----------
    put_ups : Value
        How many bumps, braids or fleeces, a number or a column. [1]
    price : Value
        Price of one, in any currency, a number or a column. [1]

    Returns
    -------
    Value
        Cost in that currency, of the inputs' shape. [1]

    Raises
    ------
    TypeError
        If a value is missing (None).

    Range
    -----
    Put-ups are bought whole; any price.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> cost(3, 12.5)
    37.5
    """
    return put_ups * price


def cost_per_length(cost: Value, length: Value) -> Value:
    """Return what a unit length of yarn costs.

    ``cost_per_length = cost / length``

    Parameters
    ----------
    cost : Value
        Cost of the fibre, in any currency, a number or a column. [1]
    length : Value
        Length of yarn made of it, a number or a column. [yd]

    Returns
    -------
    Value
        Cost of a unit length, of the inputs' shape. [1/yd]

    Raises
    ------
    TypeError
        If a value is missing (None).
    ZeroDivisionError
        If `length` is a plain 0; a column gives infinity there.

    Range
    -----
    Any cost; the length above 0.

    Source
    ------
    Common practice, no source.

    Examples
    --------
    >>> cost_per_length(60, 1200)
    0.05
    """
    return cost / length

"""The uncertainty of a product of two values that err together.

A length and a mass taken from one reading share its error; in a quotient the shared part cancels,
in a product it adds. An error budget takes its sources as independent and cannot say so.
"""

from __future__ import annotations

import math


def correlated_relative(
    first: float, second: float, correlation: float, powers: tuple[float, float]
) -> float:
    """Return the relative uncertainty of a product of two values that err together.

    ``relative = ((p * u)**2 + (q * v)**2 + 2 * p * q * correlation * u * v)**0.5``

    Parameters
    ----------
    first : float
        Relative standard uncertainty of one value. [1]
    second : float
        Relative standard uncertainty of the other. [1]
    correlation : float
        Their correlation coefficient, from -1 to 1. [1]
    powers : tuple
        Power that each value has in the product: (1, -1) for a quotient. [1]

    Returns
    -------
    float
        Relative standard uncertainty of the product. [1]

    Raises
    ------
    ValueError
        If the correlation is not between -1 and 1.

    Range
    -----
    A positive correlation makes a quotient surer and a product less sure.

    Source
    ------
    JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, 5.2.2, equation 16.

    Examples
    --------
    >>> correlated_relative(0.01, 0.01, 1.0, (1, -1))
    0.0
    """
    if not -1 <= correlation <= 1:
        msg = f"A correlation of {correlation:g} cannot be. It lies between -1 and 1."
        raise ValueError(msg)
    u, v = powers[0] * first, powers[1] * second
    return math.sqrt(max(u**2 + v**2 + 2 * correlation * u * v, 0.0))

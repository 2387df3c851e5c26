"""Densities: printed in g/cm3, reckoned with in pounds to a yard one inch square."""

from yarnsheets.units import convert


def in_own_units(grams: float) -> float:
    """Give a density in g/cm3 in pounds to a yard one inch square.

    >>> round(in_own_units(1.0), 4)
    1.3006
    """
    return float(convert(grams, "g/cm**3", "lb/yd/in**2"))


def in_grams(own: float) -> float:
    """Give a density in pounds to a yard one inch square in g/cm3.

    >>> round(in_grams(in_own_units(1.31)), 9)
    1.31
    """
    return float(convert(own, "lb/yd/in**2", "g/cm**3"))

"""The two systems that exercises are drawn in: round numbers of its own for each."""

from dataclasses import dataclass

from yarnsheets.units import convert

# Where a draw begins, how far its steps go, and how many there are.
Range = tuple[float, float, int]


@dataclass(frozen=True)
class System:
    """A system of units: how it is written, what one of each is in the sheet's own, and ranges.

    Grist is length to the `whole`, and weights are in `parts` of it: ounces of a pound, or
    grams of 100 g. The ranges are those of yarns and projects as handspinners make them (common
    practice, no source).
    """

    length: str
    lengths: str
    mass: str
    short: str
    grist: str
    whole: str
    whole_short: str
    part: str
    part_short: str
    parts: float
    short_in_length: float
    yards: float
    pounds: float
    inches: float
    yards_per_pound: float
    factor: float
    cuts: Range
    factors: list[float]
    grists: Range
    weights: Range
    projects: Range
    singles: Range
    wanted: Range
    yarns: Range
    skeins: Range
    used: Range
    left: Range


YARDS = System(
    length="yd",
    lengths="yards",
    mass="oz",
    short="in",
    grist="yd/lb",
    whole="a pound",
    whole_short="pounds",
    part="an ounce",
    part_short="ounces",
    parts=16,
    short_in_length=36,
    yards=1,
    pounds=convert(1, "oz", "lb"),
    inches=1,
    yards_per_pound=1,
    factor=1,
    cuts=(6, 0.5, 37),
    factors=[50, 100, 100, 150, 200],
    grists=(500, 50, 51),
    weights=(1.5, 0.1, 66),
    projects=(200, 20, 71),
    singles=(1200, 100, 49),
    wanted=(400, 50, 33),
    yarns=(4, 1, 29),
    skeins=(1.5, 0.5, 8),
    used=(0.6, 0.1, 25),
    left=(0.5, 0.1, 26),
)

METRES = System(
    length="m",
    lengths="metres",
    mass="g",
    short="cm",
    grist="m/100 g",
    whole="100 g",
    whole_short="hundreds of grams",
    part="a gram",
    part_short="grams",
    parts=100,
    short_in_length=100,
    yards=convert(1, "m", "yd"),
    pounds=convert(1, "g", "lb"),
    inches=convert(1, "cm", "in"),
    yards_per_pound=convert(1, "m/100g", "yd/lb"),
    factor=convert(1, "m/100g/cm", "yd/lb/in"),
    cuts=(15, 0.5, 91),
    factors=[5, 8, 10, 10, 20],
    grists=(100, 10, 51),
    weights=(40, 5, 43),
    projects=(200, 20, 71),
    singles=(240, 20, 49),
    wanted=(80, 10, 33),
    yarns=(100, 25, 33),
    skeins=(50, 10, 11),
    used=(15, 5, 16),
    left=(15, 5, 16),
)

"""The two systems in which a learner reckons: how each is written, in words and in numbers."""

from dataclasses import dataclass

from yarnsheets.page import choices
from yarnsheets.page.text import show
from yarnsheets.published.sources import INCH, POUND, YARD

_DIGITS = 4  # of numbers on the way

# Metric units in the sheets' own; pint, which is slow to load, is their witness in the tests.
_METRE = 1 / YARD.value
_GRAM = 1 / POUND.value
_CENTIMETRE = 10 / INCH.value
_METRES_PER_100_GRAMS = _METRE / (100 * _GRAM)


@dataclass(frozen=True)
class System:
    """A system of units: how it is written, and what one of each is in the sheets' own unit.

    Grist is length to the `whole`, and weights are in `parts` of it: ounces of a pound, or
    grams of 100 g.
    """

    length: str
    lengths: str
    mass: str
    short: str
    short_name: str
    grist: str
    whole: str
    wholes: str
    part: str
    part_names: str
    parts: float
    short_in_length: float
    yards: float
    pounds: float
    inches: float
    yards_per_pound: float
    factor: float


YARDS = System(
    length="yd",
    lengths="yards",
    mass="oz",
    short="in",
    short_name="inch",
    grist="yd/lb",
    whole="a pound",
    wholes="pounds",
    part="an ounce",
    part_names="ounces",
    parts=16,
    short_in_length=36,
    yards=1,
    pounds=1 / 16,
    inches=1,
    yards_per_pound=1,
    factor=1,
)

METRES = System(
    length="m",
    lengths="metres",
    mass="g",
    short="cm",
    short_name="centimetre",
    grist="m/100 g",
    whole="100 g",
    wholes="hundreds of grams",
    part="a gram",
    part_names="grams",
    parts=100,
    short_in_length=100,
    yards=_METRE,
    pounds=_GRAM,
    inches=_CENTIMETRE,
    yards_per_pound=_METRES_PER_100_GRAMS,
    factor=_METRES_PER_100_GRAMS / _CENTIMETRE,
)


def is_in_yards(measure: str) -> bool:
    """Tell whether lengths are in yards, by the name of what the reader chose.

    >>> is_in_yards("metres, grams")
    False
    """
    return measure == choices.MEASURES[0].name


def number(value: float) -> str:
    """Write a number on the way.

    >>> number(0.66667), number(1142.857)
    ('0.6667', '1,143')
    """
    return show(value, _DIGITS)


def amount(value: float, unit: str) -> str:
    r"""Write a number on the way with its unit.

    >>> amount(0.15, "lb")
    '0.15\xa0lb'
    """
    return f"{number(value)}\N{NO-BREAK SPACE}{unit}"


def percent(share: float) -> str:
    """Write a share.

    >>> percent(0.35)
    '35%'
    """
    return f"{number(100 * share)}%"


def of_whole(wholes: float, system: System) -> str:
    r"""Write so many pounds, or so many times 100 g.

    >>> of_whole(0.5, YARDS), of_whole(0.5, METRES)
    ('0.5\xa0lb', '0.5 × 100 g')
    """
    return amount(wholes, "lb") if system.parts == 16 else f"{number(wholes)} × {system.whole}"

"""The units a page offers, and what each is called there."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache

from yarnsheets import units
from yarnsheets.page.text import Shown

# What a sheet computes in, whatever the page shows: one consistent set. A "short" length is one
# laid along a ruler; a "factor" turns it into grist; a "share" is a part of one; "gauge" counts
# stitches, rows, ends or picks.
OWN_UNITS = {
    "length": "yd",
    "mass": "lb",
    "grist": "yd/lb",
    "short": "in",
    "factor": "yd/lb/in",
    "wraps": "1/in",
    "share": "1",
    "area": "in**2",
    "gauge": "1/in",
    "sett": "1/in",
    "twist": "1/in",
    "thickness": "in",
    "speed": "yd/hour",
    "volume": "mL",
}


@dataclass(frozen=True)
class Measure:
    """How everything but grist is shown: the unit of each dimension.

    `grist` is the unit that goes with it, until the reader chooses another.
    """

    name: str
    grist: str
    units: Mapping[str, str]


@dataclass(frozen=True)
class GristUnit:
    """How grist is shown, and how its arithmetic is worked by hand.

    `base` is the unit the hand arithmetic runs in, with its own length and mass; `reason`
    says how to come from this unit to that one.
    """

    unit: str
    name: str
    base: str
    reason: str = ""


MEASURES = (
    Measure(
        "yards, ounces",
        "yd/lb",
        {
            "length": "yd",
            "mass": "oz",
            "short": "in",
            "factor": "yd/lb/in",
            "wraps": "1/in",
            "share": "percent",
            "area": "in**2",
            "gauge": "per_four_inches",
            "sett": "1/in",
            "twist": "1/in",
            "thickness": "mm",
            "speed": "yd/hour",
            "volume": "mL",
        },
    ),
    Measure(
        "metres, grams",
        "m/100g",
        {
            "length": "m",
            "mass": "g",
            "short": "cm",
            "factor": "m/100g/cm",
            "wraps": "1/cm",
            "share": "percent",
            "area": "cm**2",
            "gauge": "per_ten_centimetres",
            "sett": "1/cm",
            "twist": "1/cm",
            "thickness": "mm",
            "speed": "m/hour",
            "volume": "mL",
        },
    ),
)

GRIST_UNITS = (
    GristUnit("yd/lb", "yards per pound", "yd/lb"),
    GristUnit("yd/oz", "yards per ounce", "yd/oz"),
    GristUnit("m/100g", "metres per 100 g", "m/100g"),
    GristUnit("tex", "tex", "tex"),
    GristUnit("denier", "denier", "tex", "9 denier is 1 tex"),
    GristUnit("metric_count", "metric count", "m/g", "metric count is metres per gram"),
    GristUnit("worsted_count", "worsted count", "yd/lb", "a worsted hank is 560 yd"),
    GristUnit("cotton_count", "cotton count", "yd/lb", "a cotton hank is 840 yd"),
    GristUnit("linen_lea", "linen lea", "yd/lb", "a linen lea is 300 yd"),
    GristUnit("woollen_run", "woollen run", "yd/lb", "a woollen run is 1,600 yd"),
    GristUnit("woollen_cut", "woollen cut", "yd/lb", "a woollen cut is 300 yd"),
    GristUnit(
        "yorkshire_skein", "Yorkshire skein", "yd/lb", "a Yorkshire skein is 256 yd to the lb"
    ),
    GristUnit("galashiels_cut", "Galashiels cut", "yd/lb", "a Galashiels cut is 200 yd to the lb"),
    GristUnit("typp", "typp", "yd/lb", "1 typp is 1,000 yd/lb"),
)

# The length and mass that a base unit is made of; tex is grams *per* kilometre.
BASES = {
    "yd/lb": ("yd", "lb"),
    "yd/oz": ("yd", "oz"),
    "m/100g": ("m", "hectogram"),
    "m/g": ("m", "g"),
    "tex": ("km", "g"),
}

_LABELS = {choice.unit: choice.unit.replace("_", " ") for choice in GRIST_UNITS} | {
    "m/100g": "m/100 g",
    "hectogram": "× 100 g",
    "yorkshire_skein": "Yorkshire skein",
    "galashiels_cut": "Galashiels cut",
    "yd/lb/in": "yd/lb per in",
    "m/100g/cm": "m/100 g per cm",
    "1/in": "to the inch",
    "1/cm": "to the cm",
    "percent": "%",
    "in**2": "sq in",
    "cm**2": "sq cm",
    "per_four_inches": "to 4 in",
    "per_ten_centimetres": "to 10 cm",
    "yd/hour": "yd an hour",
    "m/hour": "m an hour",
}

# Every unit of each dimension that a page may show, or a reader type.
SHOWN = {
    dimension: tuple(dict.fromkeys(measure.units[dimension] for measure in MEASURES))
    for dimension in MEASURES[0].units
} | {"grist": (*(choice.unit for choice in GRIST_UNITS), "m/g")}
SHOWN["length"] += ("km", "ft", "in", "cm")
SHOWN["short"] += ("mm", "ft", "yd", "m")
SHOWN["mass"] += ("lb", "hectogram", "kg")


def label(unit: str) -> str:
    """Say a unit as the page writes it behind a number.

    >>> label("m/100g"), label("worsted_count"), label("yd")
    ('m/100 g', 'worsted count', 'yd')
    """
    return _LABELS.get(unit, unit)


@cache
def scales() -> dict[str, dict[str, tuple[float, int]]]:
    """Give each shown unit's factor and power from the unit a sheet computes in."""
    return {
        dimension: {unit: _scale(OWN_UNITS[dimension], unit) for unit in shown}
        for dimension, shown in SHOWN.items()
    }


def _scale(own: str, unit: str) -> tuple[float, int]:
    found = units.scale(own, unit)
    return found.factor, found.power


@cache
def labels() -> dict[str, str]:
    """Give what each unit is called behind a number."""
    return {unit: label(unit) for shown in SHOWN.values() for unit in shown}


def unit_of(dimension: str, measure: str) -> str:
    """Give the unit in which the reader sees a dimension, by the name of what was chosen.

    >>> unit_of("mass", "metres, grams")
    'g'
    """
    return next(each.units[dimension] for each in MEASURES if each.name == measure)


def shown(measure: Measure, grist: GristUnit) -> Shown:
    """Give the units of a page by what the reader chose."""
    return Shown({**measure.units, "grist": grist.unit}, scales(), labels())


# The units a sheet computes in, as they are said in a refusal.
OWN = Shown(
    OWN_UNITS,
    {dimension: {unit: (1.0, 1)} for dimension, unit in OWN_UNITS.items()},
    {unit: label(unit) for unit in OWN_UNITS.values()},
)

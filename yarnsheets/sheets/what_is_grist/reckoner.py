"""A ready-reckoner for a balance: what each cut says, in both systems, on a page of paper."""

from yarnsheets import formulas
from yarnsheets.page.listing import Column, Listing
from yarnsheets.sheets.shared.systems import METRES, YARDS
from yarnsheets.sheets.shared.weighing import GRAM

_COUNT = 41
_FIRST_INCHES, _INCHES = 4, 0.5
_FIRST_CENTIMETRES, _CENTIMETRES = 10, 1
_BALL = 50 * GRAM

LISTING = Listing(
    "reckoner",
    "What a cut says, on a balance of factor {balance_factor@yd/lb/in}"
    " ({balance_factor@m/100g/cm})",
    (
        Column("Cut", "inches", "short", "in"),
        Column("Grist", "by_inches", "grist", "yd/lb"),
        Column("Grist", "by_inches", "grist", "yd/oz"),
        Column("Cut", "centimetres", "short", "cm"),
        Column("Grist", "by_centimetres", "grist", "m/100g"),
        Column("In a ball of 50 g", "ball", "length", "m"),
    ),
)


def rows(factor: float) -> list[dict[str, float]]:
    """Give the rows: half inches on the left, and on the right centimetres."""
    made = []
    for at in range(_COUNT):
        inches = (_FIRST_INCHES + at * _INCHES) * YARDS.inches
        centimetres = (_FIRST_CENTIMETRES + at * _CENTIMETRES) * METRES.inches
        by_centimetres = formulas.grist_from_cut(centimetres, factor)
        made.append(
            {
                "inches": inches,
                "by_inches": formulas.grist_from_cut(inches, factor),
                "centimetres": centimetres,
                "by_centimetres": by_centimetres,
                "ball": formulas.length(_BALL, by_centimetres),
            }
        )
    return made

"""The outlines a knitted piece may have: how their area adds up, and how they are drawn flat.

An outline is a set of shares: of the measures that the reader types, how much of each makes up an
area, a width or a corner. Areas leave out what is small
beside the reserve: a thumb, the turn of a heel, a neckline cut out of a front.
"""

from dataclasses import dataclass
from math import cos, pi

Row = dict[str, str | float]

_GAP = 0.04  # between two pieces laid flat, of the measure around
_SLICES = 32  # that a circle is drawn with
_WEDGES = 4  # that the crown of a hat is drawn with


@dataclass(frozen=True)
class Outline:
    """An outline, in shares of what the reader types.

    The area is so many times around by length, so many circles, so many sleeves. `disc` is the
    diameter of a circle and `wide` the width of the first piece, of the measure around. Laid flat,
    all pieces span `span` of that and `sleeves` sleeves, and rise by length and around.
    """

    name: str
    slices: tuple[Row, ...]
    bodies: float = 1
    discs: int = 0
    disc: float = 0
    sleeves: int = 0
    wide: float = 1
    span: float = 1
    rise_length: float = 1
    rise_around: float = 0


def _slice(piece: str, **shares: float) -> Row:
    """Give a level of a piece: its middle, half its width, and how far up, all in shares."""
    names = ("middle_around", "middle_wide", "half_around", "half_top", "half_cuff")
    return {"piece": piece} | {
        name: shares.get(name, 0.0) for name in (*names, "up_length", "up_around", "up_sleeve")
    }


def _strip(piece: str, middle: float, half: float, wide: float = 0) -> tuple[Row, Row]:
    """Give a rectangle as long as the length."""
    place = {"middle_around": middle, "middle_wide": wide, "half_around": half}
    return _slice(piece, **place), _slice(piece, **place, up_length=1.0)


def _sleeve(piece: str, around: float, wide: float) -> tuple[Row, Row]:
    """Give a sleeve, its cuff at the foot."""
    place = {"middle_around": around, "middle_wide": wide}
    return (
        _slice(piece, **place, half_cuff=0.5),
        _slice(piece, **place, half_top=0.5, up_sleeve=1.0),
    )


def _circle() -> tuple[Row, ...]:
    heights = [(1 - cos(pi * at / _SLICES)) / 2 for at in range(_SLICES + 1)]
    return tuple(
        _slice("circle", middle_around=0.5, half_around=(up * (1 - up)) ** 0.5, up_around=up)
        for up in heights
    )


def _crown() -> tuple[Row, ...]:
    """Give wedges of as much area as a circle of the hat's girth: half the girth times radius."""
    half = 1 / (2 * _WEDGES)
    rows: list[Row] = []
    for at in range(_WEDGES):
        place = {"middle_around": (2 * at + 1) * half, "up_length": 1.0}
        rows.append(_slice(f"wedge {at}", **place, half_around=half))
        rows.append(_slice(f"wedge {at}", **place, up_around=1 / (2 * pi)))
    return tuple(rows)


_FRONT = _GAP + 0.25
_BACK = _FRONT + 0.5 + _GAP

OUTLINES = {
    "pullover": Outline(
        "pullover",
        (
            *_sleeve("one sleeve", 0, 0.5),
            *_strip("front", _FRONT, 0.25, 1),
            *_strip("back", _BACK, 0.25, 1),
            *_sleeve("other sleeve", _BACK + 0.25 + _GAP, 1.5),
        ),
        sleeves=2,
        wide=0.5,
        span=1 + 3 * _GAP,
    ),
    "rectangle": Outline("rectangle", _strip("piece", 0.5, 0.5)),
    "triangle": Outline(
        "triangle",
        (
            _slice("piece", middle_around=0.5),
            _slice("piece", middle_around=0.5, half_around=0.5, up_length=1.0),
        ),
        bodies=0.5,
    ),
    "circle": Outline(
        "round piece", _circle(), bodies=0, discs=1, disc=1, rise_length=0, rise_around=1
    ),
    "hat": Outline(
        "hat",
        (*_strip("tube", 0.5, 0.5), *_crown()),
        discs=1,
        disc=1 / pi,
        rise_around=1 / (2 * pi),
    ),
    "pair": Outline(
        "pair of tubes",
        (*_strip("one", 0.5, 0.5), *_strip("other", 1.5 + 2 * _GAP, 0.5)),
        bodies=2,
        span=2 + 2 * _GAP,
    ),
}

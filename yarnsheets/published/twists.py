"""How much twist yarns are given: published and practised values, each with its source.

Hand spinners go by the slant of the fibres, which is alike for all grists. The multipliers are
those of cotton mills, turns to the inch over the root of the cotton count. They are no rule for
wool spun by hand, but the only ranges in print that go by use.
"""

from yarnsheets.published.sources import COMMON_PRACTICE, Constant, Source

TWIST_IN_SPINNING = Source(
    "W. Klein",
    "Technology of Short-staple Spinning",
    "Textile Institute",
    "online edition, page on twist; its table is badly scanned, so ranges only",
)


def _cotton(low: float, high: float, use: str) -> Constant:
    middle = (low + high) / 2
    note = f"cotton {use}, by length of staple; the middle is ours"
    return Constant(middle, "1/in/cotton_count**0.5", low, high, TWIST_IN_SPINNING, note)


COTTON_TO_KNIT = _cotton(2.1, 3.5, "to knit")
COTTON_WEFT = _cotton(3.0, 3.8, "weft")
COTTON_WARP = _cotton(3.4, 5.0, "warp")

PRIMARY_STRUCTURES = Source(
    "Irene Emery", "The Primary Structures of Fabrics", "1966", "on the tightness of twist"
)
_SLANT = "slant of outer fibres in hand-made yarn, from memory; the middle is ours"
LOOSE_TWIST = Constant(5, "degree", 0, 10, PRIMARY_STRUCTURES, f"loose: {_SLANT}")
MEDIUM_TWIST = Constant(17.5, "degree", 10, 25, PRIMARY_STRUCTURES, f"medium: {_SLANT}")
TIGHT_TWIST = Constant(35, "degree", 25, 45, PRIMARY_STRUCTURES, f"tight: {_SLANT}")

TWIST_ANGLE = Constant(20, "degree", 5, 40, COMMON_PRACTICE, "slant of outer fibres in a yarn")
BALANCED_PLY = Constant(
    2 / 3,
    "1",
    0.60,
    0.70,
    COMMON_PRACTICE,
    "ply twist of a balanced yarn of two singles, of the singles' twist",
)
TWISTED_BULK_DENSITY = Constant(
    0.5,
    "g/cm**3",
    0.20,
    0.80,
    COMMON_PRACTICE,
    "a single under its twist, an estimate: soft 0.2 to 0.4, hard-spun or pressed 0.5 to 0.8",
)

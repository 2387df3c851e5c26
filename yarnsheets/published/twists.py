"""How much twist yarns are given: published and practised values, each with its source.

The multipliers are those of cotton mills, turns to the inch over the root of the cotton count.
They are no rule for wool spun by hand, but the only ranges in print that go by use.
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

TWIST_ANGLE = Constant(20, "degree", 5, 40, COMMON_PRACTICE, "slant of outer fibres in a yarn")
BALANCED_PLY = Constant(
    2 / 3, "1", 0.60, 0.70, COMMON_PRACTICE, "ply twist of a balanced yarn, of the singles' twist"
)
TWISTED_BULK_DENSITY = Constant(
    0.5,
    "g/cm**3",
    0.20,
    0.80,
    COMMON_PRACTICE,
    "a single under its twist, an estimate: soft 0.2 to 0.4, hard-spun or pressed 0.5 to 0.8",
)

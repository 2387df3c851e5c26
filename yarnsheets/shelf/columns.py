"""The columns of a shelf: what each holds, and what a heading may call it."""

from collections.abc import Mapping, Sequence

from yarnsheets.page.inputs import Asked, Input, Readings, Words
from yarnsheets.published.sources import POUND, WRAPS_PER_INCH

_GRAM = 1 / POUND.value


def _mass(title: str, measure: str) -> Input:
    return Input(title, "mass", 0.25, low=0.01 * _GRAM, high=20, measure=measure)


def _length(title: str, measure: str, *, low: float = 1) -> Input:
    return Input(title, "length", 100, low=low, high=20000, measure=measure)


COLUMNS: Mapping[str, Asked] = {
    "name": Words("Name", "", measure="What you call the skein."),
    "fibre": Words("Fibre", "", measure="As wool, or silk and wool."),
    "colour": Words("Colour", "", measure="Or the dye lot."),
    "weight": _mass("Weight", "Of the skein, without its ties."),
    "wraps": Input(
        "Wraps",
        "wraps",
        14,
        low=WRAPS_PER_INCH.low,
        high=WRAPS_PER_INCH.high,
        measure="Laid by hand, turns touching.",
    ),
    "length": _length("Length", "Where it is known."),
    "counter": _length("Counter", "What the yarn counter showed."),
    "turns": Input(
        "Turns", "number", 100, low=2, high=20000, step=1, measure="Round a reel or niddy-noddy."
    ),
    "around": Input(
        "Once round",
        "short",
        54,
        low=6,
        high=200,
        measure="Of that reel; else the one named below.",
    ),
    "cuts": Readings(
        "Cuts", "short", [], low=0.1, high=400, measure="On the balance, with a semicolon between."
    ),
    "sample_length": _length("Sample length", "Of a piece that was measured.", low=0.05),
    "sample_weight": _mass("Sample weight", "Of that piece."),
}

# Other words for a column; the longest that stands in a heading counts.
CALLED: Mapping[str, Sequence[str]] = {
    "name": ("skein", "label", "yarn", "what", "title", "id", "number", "no"),
    "fibre": ("fiber", "material", "content", "breed", "made of", "composition"),
    "colour": ("color", "colourway", "colorway", "dye", "dye lot", "shade"),
    "weight": ("weighs", "mass", "wt", "grams", "ounces", "oz", "g"),
    "wraps": ("wpi", "wraps per inch", "wraps to the inch", "thickness"),
    "length": ("yards", "yardage", "yds", "yd", "metres", "meters", "metreage", "m", "long"),
    "counter": ("counter reading", "yarn counter", "counted", "meter reading"),
    "turns": ("rounds", "wound", "winds", "turns of reel", "turns of the niddy noddy"),
    "around": (
        *("circumference", "reel", "niddy noddy", "niddy", "one turn", "turn", "once round reel"),
        "length of a turn",
    ),
    "cuts": ("cut", "balance", "cut lengths", "cut length", "balance cuts"),
    "sample_length": ("sample", "length of sample", "sample yards", "sample metres"),
    "sample_weight": ("weight of sample", "sample grams", "sample mass", "sample weighs"),
}

# These are asked of every skein; the others where they are known.
FIRST = ("name", "fibre", "colour", "weight", "wraps", "length")

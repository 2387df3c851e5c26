"""Published yields: the share of fibre, or of yarn, that each stage of the work leaves.

Each is the range that its source gives, in per cent of what went into the stage. Where two sources
contradict each other both are here. Printing one tells where it is from and how it was come by.
"""

from dataclasses import dataclass
from typing import Literal

from yarnsheets import formulas
from yarnsheets.published.sources import COMMON_PRACTICE, Source

Reading = Literal["read", "from memory", "no source"]
Stage = Literal["scouring", "preparing", "spinning", "finishing", "whole"]


@dataclass(frozen=True)
class Yield:
    """What a stage leaves of what went into it, in per cent.

    >>> print(HAND_CARDING)
    carding by hand or on a drum: 85 to 95 % left (common practice, no source)
    """

    name: str
    stage: Stage
    low: float
    high: float
    source: Source
    reading: Reading
    note: str = ""

    @property
    def shares(self) -> tuple[float, float]:
        """The two ends as the shares that formulas take."""
        return self.low / 100, self.high / 100

    def __str__(self) -> str:
        """Return the yield in one line, with where it is from and how it was come by."""
        known = () if self.reading == "no source" else (self.reading,)
        origin = "; ".join(filter(None, [str(self.source), *known, self.note]))
        return f"{self.name}: {self.low:.4g} to {self.high:.4g} % left ({origin})"


WOLLNER_TANNER = Source(
    "H. J. Wollner and L. Tanner",
    "Industrial and Engineering Chemistry, Analytical Edition",
    "1941",
    "page 883",
)
BREED_PAGES = Source(
    "American Sheep Industry Association, Michigan State Fair and breed associations",
    "breed directory, sheep page and the associations' own texts",
    "",
)
UNITED_STATES_TABLES = Source("", "tables of the United States, not recorded which", "")
WOOL_SELLER = Source("", "an Australian wool seller's public page", "")
ALPACA_MILL = Source("", "an alpaca mill's public page", "")
STAPLE_STRENGTH = Source(
    "Journal of the Textile Institute",
    "Effect of Staple Strength on Worsted Processing, Part II",
    "",
    "abstract",
)


def _breed(name: str, low: float, high: float) -> Yield:
    return Yield(name, "scouring", low, high, BREED_PAGES, "read")


def _recalled(name: str, low: float, high: float) -> Yield:
    return Yield(name, "scouring", low, high, UNITED_STATES_TABLES, "from memory")


def _sold(name: str, low: float, high: float) -> Yield:
    note = "skirting and regain may not be as in other tables"
    return Yield(name, "scouring", low, high, WOOL_SELLER, "read", note)


def _usual(name: str, stage: Stage, low: float, high: float) -> Yield:
    return Yield(name, stage, low, high, COMMON_PRACTICE, "no source")


def _left_in_top(tear: float) -> float:
    return float(100 * formulas.share_left(formulas.noil_share(tear)))


ANY_WOOL = Yield(
    "any raw wool", "scouring", 20, 80, WOLLNER_TANNER, "read", "clean content, mean about 50 %"
)
AWASSI = _breed("Awassi", 60, 70)
CORRIEDALE = _breed("Corriedale", 50, 60)
DORSET = _breed("Dorset", 50, 70)
RAMBOUILLET = _breed("Rambouillet", 35, 55)
SOUTHDOWN = _breed("Southdown", 55, 65)
TARGHEE = _breed("Targhee", 50, 55)
MERINO_UNITED_STATES = _recalled("Merino, United States", 45, 55)
MERINO_AUSTRALIA = _sold("Merino, Australia", 62, 70)
CROSSBRED_AUSTRALIA = _sold("crossbred, Australia", 70, 77)
LONGWOOL = Yield(
    "Romney, Border Leicester or Lincoln",
    "scouring",
    60,
    75,
    UNITED_STATES_TABLES,
    "from memory",
)
PRIMITIVE = _usual("Shetland, Icelandic or Jacob", "scouring", 65, 80)
ALPACA = Yield("alpaca", "scouring", 93, 97, ALPACA_MILL, "read", "washing loses 3 to 7 %")

FLEECES = (
    ANY_WOOL, AWASSI, CORRIEDALE, CROSSBRED_AUSTRALIA, DORSET, MERINO_AUSTRALIA,
    MERINO_UNITED_STATES, RAMBOUILLET, LONGWOOL, PRIMITIVE, SOUTHDOWN, TARGHEE, ALPACA,
)  # fmt: skip

HAND_CARDING = _usual("carding by hand or on a drum", "preparing", 85, 95)
HAND_COMBING = _usual("combing by hand", "preparing", 65, 90)
MILL_COMBING = Yield(
    "combing in a worsted mill",
    "preparing",
    _left_in_top(9.4),
    _left_in_top(13.5),
    STAPLE_STRENGTH,
    "read",
    "as tears of 9.4 and 13.5 to 1",
)
SPINNING = _usual("spinning and plying, with knots and samples", "spinning", 92, 98)
SKEIN_LENGTH = _usual("length of a skein in its wash", "finishing", 90, 98)
CLOTH_LENGTH = _usual("length of cloth in its finish", "finishing", 80, 95)
ALPACA_MILL_TOTAL = Yield(
    "alpaca, all of a mill's work",
    "whole",
    40,
    70,
    ALPACA_MILL,
    "read",
    "processing loses 30 to 60 %",
)

YIELDS = (
    *FLEECES, HAND_CARDING, HAND_COMBING, MILL_COMBING, SPINNING, SKEIN_LENGTH, CLOTH_LENGTH,
    ALPACA_MILL_TOTAL,
)  # fmt: skip

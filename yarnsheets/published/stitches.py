"""Published numbers of knitted fabric: loop constants, and how much more yarn stitches take.

Washing and drying let knitting relax, and each state has constants of its own. What a stitch
pattern takes is a ratio to plain knitting in the same yarn, over the same area; published swatches
differ so far that only ranges are honest, and your own swatch is better than any of them.
"""

from dataclasses import dataclass

from yarnsheets import formulas
from yarnsheets.published.sources import COMMON_PRACTICE, Constant, Source

MUNDEN = Source(
    "D. L. Munden",
    "The Geometry and Dimensional Properties of Plain-knit Fabrics, Journal of the Textile "
    "Institute 50",
    "1959",
    "T448",
)
APTITUDE_TEST_2015 = Source(
    "Graduate Aptitude Test in Engineering", "Textile Engineering", "2015", "question 54"
)
MAGAZINE_SWATCHES = Source("a magazine", "weighed swatches, knitting beside crochet", "")
UNRAVELLED_SWATCHES = Source("a public page", "swatches unravelled to equal lengths of yarn", "")


@dataclass(frozen=True)
class State:
    """How far plain knitting in wool has relaxed, with its loop constants.

    Rows to the inch are `courses` over the loop length, stitches `wales` over it, and stitches to
    the square inch `area` over its square. `area` is published for itself, rounded, and so may
    differ a little from the product of the two.
    """

    name: str
    courses: Constant
    wales: Constant
    area: Constant


def _recalled(value: float, what: str) -> Constant:
    return Constant(value, "1", value, value, MUNDEN, f"{what}, from memory")


def _published(value: float, what: str) -> Constant:
    return Constant(value, "1", value, value, APTITUDE_TEST_2015, f"{what}, published")


DRY = State(
    "off the needles, not washed",
    _recalled(5.0, "courses, dry relaxed"),
    _recalled(3.8, "wales, dry relaxed"),
    _recalled(19.0, "both, dry relaxed"),
)
WET = State(
    "washed and dried flat",
    _recalled(5.3, "courses, wet relaxed"),
    _recalled(4.1, "wales, wet relaxed"),
    _recalled(21.6, "both, wet relaxed"),
)
FULL = State(
    "washed and tumbled",
    _published(5.5, "courses, fully relaxed"),
    _published(4.2, "wales, fully relaxed"),
    _published(23.1, "both, fully relaxed: the product of the two"),
)
STATES = {"wet": WET, "dry": DRY, "full": FULL}

# root of tex over loop length in centimetres, between which the constants are used
LOOSEST = Constant(9, "g**0.5/km**0.5/cm", 9, 9, COMMON_PRACTICE, "usual from here, from memory")
TIGHTEST = Constant(19, "g**0.5/km**0.5/cm", 19, 19, COMMON_PRACTICE, "usual to here, from memory")


@dataclass(frozen=True)
class SwatchArea:
    """What a gram of yarn covered in a published swatch.

    >>> print(PLAIN_TEST)
    plain knitting: 3.0347 sq in to the gram (a magazine, weighed swatches, knitting beside \
crochet; published)
    """

    name: str
    area_per_gram: float
    source: Source = MAGAZINE_SWATCHES

    def __str__(self) -> str:
        """Return the area with its source."""
        return f"{self.name}: {self.area_per_gram:g} sq in to the gram ({self.source}; published)"

    def factor(self, plain: "SwatchArea") -> float:
        """Return how many times the yarn of plain knitting it took, over the same area."""
        return float(formulas.stitch_factor(1 / self.area_per_gram, 1 / plain.area_per_gram))


PLAIN_TEST = SwatchArea("plain knitting", 3.0347)
GARTER_TEST = SwatchArea("garter stitch", 2.0764)
SINGLE_CROCHET_TEST = SwatchArea("single crochet", 1.8914)
HALF_DOUBLE_TEST = SwatchArea("half double crochet", 2.2299)

# the other test prints no areas, only what follows from them
GARTER_UNRAVELLED = 1.3493
SINGLE_CROCHET_UNRAVELLED = 1.2650
DOUBLE_CROCHET_UNRAVELLED = 1.0653

# Where there is one test only, this much either way: those of single crochet are 24 % apart.
ONE_TEST = 0.15


@dataclass(frozen=True)
class Stitch:
    """A stitch pattern, and between how many times the yarn of plain knitting it takes."""

    name: str
    low: float
    high: float
    origin: str

    @property
    def middle(self) -> float:
        """Return the middle of the range.

        >>> STITCHES["rib"].middle
        1.25
        """
        return (self.low + self.high) / 2


def _one_test(name: str, factor: float, origin: str) -> Stitch:
    note = f"published, one test, {origin}; 15% either way, common practice, no source"
    return Stitch(name, factor * (1 - ONE_TEST), factor * (1 + ONE_TEST), note)


_TWO_TESTS = "published, two tests: a magazine’s and one that unravelled swatches"
STITCHES = {
    "plain": Stitch("plain knitting", 1, 1, "what the loop constants are for"),
    "garter": Stitch(
        "garter stitch", GARTER_UNRAVELLED, GARTER_TEST.factor(PLAIN_TEST), _TWO_TESTS
    ),
    "rib": Stitch("ribs", 1.0, 1.5, "common practice, no source"),
    "cable": Stitch("cables", 1.1, 1.6, "common practice, no source"),
    "single": Stitch(
        "single crochet",
        SINGLE_CROCHET_UNRAVELLED,
        SINGLE_CROCHET_TEST.factor(PLAIN_TEST),
        _TWO_TESTS,
    ),
    "half": _one_test("half double crochet", HALF_DOUBLE_TEST.factor(PLAIN_TEST), "a magazine’s"),
    "double": _one_test(
        "double crochet", DOUBLE_CROCHET_UNRAVELLED, "one that unravelled swatches"
    ),
}

"""Categories of yarn by gauge, and what wraps to the inch can honestly say of grist.

The Craft Yarn Council sorts yarn by the stitches it makes in four inches and by nothing else: it
gives neither wraps nor yards to the pound. Bands of those are a spinning magazine's, and are kept
apart under its name. All are guidelines.
"""

import math
from dataclasses import dataclass

from yarnsheets import formulas
from yarnsheets.published.sources import BULK_DENSITY, HANDSPUN_BULK_DENSITY, WOOL_DENSITY, Constant
from yarnsheets.units import convert


@dataclass(frozen=True)
class Band:
    """A range that takes in both its ends; an open end is infinite or 0.

    >>> 24 in Band(21, 24), 24 in Band(23, 26), 24 in Band(16, 20)
    (True, True, False)
    """

    low: float
    high: float = math.inf

    def __contains__(self, value: float) -> bool:
        """Tell whether a value lies in the band."""
        return self.low <= value <= self.high


@dataclass(frozen=True)
class YarnWeight:
    """A category of the Standard Yarn Weight System.

    `knit` counts stitches of stockinette in 4 inches, `crochet` single crochets in 4 inches.
    """

    number: int
    name: str
    knit: Band
    crochet: Band | None
    needle_mm: Band
    hook_mm: Band


# Craft Yarn Council, Standard Yarn Weight System: read in two copies of 2018-2019. The Council
# gives lace its crochet in double crochets, 32 to 42, another stitch and so no band here; its
# steel hooks for lace, 1.4 to 1.6 mm, are joined to the regular 2.25 mm. The least needle of
# category 6 is lost in the copies: 8 mm, where category 5 ends, is from memory.
YARN_WEIGHTS = (
    YarnWeight(0, "lace", Band(33, 40), None, Band(1.5, 2.25), Band(1.4, 2.25)),
    YarnWeight(1, "super fine", Band(27, 32), Band(21, 32), Band(2.25, 3.25), Band(2.25, 3.5)),
    YarnWeight(2, "fine", Band(23, 26), Band(16, 20), Band(3.25, 3.75), Band(3.5, 4.5)),
    YarnWeight(3, "light", Band(21, 24), Band(12, 17), Band(3.75, 4.5), Band(4.5, 5.5)),
    YarnWeight(4, "medium", Band(16, 20), Band(11, 14), Band(4.5, 5.5), Band(5.5, 6.5)),
    YarnWeight(5, "bulky", Band(12, 15), Band(8, 11), Band(5.5, 8), Band(6.5, 9)),
    YarnWeight(6, "super bulky", Band(7, 11), Band(6, 9), Band(8, 12.75), Band(9, 16)),
    YarnWeight(7, "jumbo", Band(0, 6), Band(0, 5), Band(12.75), Band(16)),
)

# The same two categories as other copies have them: never mixed with those above.
SUPER_BULKY_BEFORE_JUMBO = YarnWeight(  # read in the magazine's chart, before category 7 existed
    6, "super bulky", Band(6, 11), Band(5, 9), Band(8), Band(9)
)
SUPER_BULKY_RECALLED = YarnWeight(  # from memory of a later chart, as is the next
    6, "super bulky", Band(7, 11), Band(7, 9), Band(8, 12.75), Band(9, 15)
)
JUMBO_RECALLED = YarnWeight(7, "jumbo", Band(0, 6), Band(0, 6), Band(12.75), Band(15))


def categories(stitches: float) -> frozenset[int]:
    """Return the categories whose knitting gauge takes in so many stitches to 4 inches.

    Bands overlap, so there may be two; beyond 40 stitches there is none. The bands are whole
    stitches with holes between them, so a part of a stitch is rounded first, a half upwards.

    Parameters
    ----------
    stitches : float
        Stitches of stockinette in 4 inches. [1]

    Raises
    ------
    ValueError
        If the stitches are not a number above 0.

    Source
    ------
    Craft Yarn Council, Standard Yarn Weight System, copies of 2018-2019.

    Examples
    --------
    >>> categories(22), sorted(categories(23.5)), categories(20.5)
    (frozenset({3}), [2, 3], frozenset({3}))
    """
    whole = _whole(stitches)
    return frozenset(each.number for each in YARN_WEIGHTS if whole in each.knit)


def crochet_categories(stitches: float) -> frozenset[int]:
    """Return the categories whose crochet gauge takes in so many single crochets to 4 inches.

    As for `categories`; category 0, whose gauge is in double crochets, is never among them.

    >>> sorted(crochet_categories(11)), crochet_categories(40)
    ([4, 5], frozenset())
    """
    whole = _whole(stitches)
    return frozenset(each.number for each in YARN_WEIGHTS if each.crochet and whole in each.crochet)


def _whole(stitches: float) -> int:
    _check(stitches, "stitches to 4 inches", "Count the stitches in 4 inches (10 cm) of a swatch")
    return math.floor(stitches + 0.5)


@dataclass(frozen=True)
class ChartBand:
    """A column of the spinning magazine's chart, for the Council's category of that number.

    `grist` is in yd/lb and `plain_weave_sett` in ends to the inch.
    """

    number: int
    wraps_per_inch: Band
    grist: Band
    plain_weave_sett: Band


# Spin Off, Yarn Standards, a chart of one page, read: the magazine calls its additions rough
# guidelines drawn from experience. It has 18 wraps in two columns.
SPINNERS_BANDS = (
    ChartBand(0, Band(18), Band(2401), Band(15)),
    ChartBand(1, Band(16, 18), Band(1901, 2400), Band(12, 15)),
    ChartBand(2, Band(14, 15), Band(1201, 1900), Band(10, 12)),
    ChartBand(3, Band(12, 13), Band(901, 1200), Band(8, 10)),
    ChartBand(4, Band(10, 11), Band(601, 900), Band(6, 8)),
    ChartBand(5, Band(8, 9), Band(401, 600), Band(4, 6)),
    ChartBand(6, Band(0, 7), Band(0, 400), Band(0, 4)),
)


@dataclass(frozen=True)
class GristFromWraps:
    """What wraps alone say of grist, in yd/lb: what it may be at all, and what it usually is."""

    possible: Band
    usual: Band


def grist_from_wraps(wraps_per_inch: float) -> GristFromWraps:
    """Return the grists that a yarn of so many wraps to the inch may have.

    Wraps give a diameter and grist a mass; between them stands the bulk density, which wraps do not
    tell. So the answer is wide, and this is the honest width of it.

    Parameters
    ----------
    wraps_per_inch : float
        Wraps laid by hand, touching and not pressed. [1/in]

    Raises
    ------
    ValueError
        If the wraps are not a number above 0.

    Range
    -----
    Possible: bulk density from 0.08 g/cm**3 to that of solid wool. Usual: 0.12 to 0.40, an
    estimate with no authority behind it; printed charts lie at its loose end.

    Examples
    --------
    >>> found = grist_from_wraps(12)
    >>> round(found.usual.low), round(found.usual.high)
    (352, 1175)
    """
    _check(wraps_per_inch, "wraps to the inch", "Count the wraps over an inch or more")
    return GristFromWraps(
        possible=_grists(wraps_per_inch, BULK_DENSITY),
        usual=_grists(wraps_per_inch, HANDSPUN_BULK_DENSITY),
    )


def most_wraps_per_inch(grist: float) -> float:
    """Return the wraps to the inch above which no wool yarn of this grist can lie.

    There the yarn would be solid wool, without air; a count above it was pressed, or the grist is
    wrong.

    >>> round(most_wraps_per_inch(1200), 2)
    40.07
    """
    _check(grist, "yards to the pound", "Measure the grist by weighing a known length")
    return float(formulas.wraps_per_inch_from_grist(grist, _density(WOOL_DENSITY.value)))


def _check(value: float, of: str, advice: str) -> None:
    if not 0 < value < math.inf:
        msg = f"{value:g} {of} cannot be. {advice}, and give a number above 0."
        raise ValueError(msg)


def _grists(wraps_per_inch: float, density: Constant) -> Band:
    """Return the grists from the densest yarn, the coarsest for its wraps, to the loosest."""
    return Band(
        formulas.grist_from_wraps(wraps_per_inch, _density(density.high)),
        formulas.grist_from_wraps(wraps_per_inch, _density(density.low)),
    )


def _density(grams_per_cubic_centimetre: float) -> float:
    return float(convert(grams_per_cubic_centimetre, "g/cm**3", "lb/yd/in**2"))

"""Published constants, each an object that knows its unit, its range and where it was printed.

A published value is never edited: a revised one is added under a new name with its year. What the
trade does without a book to show for it says "common practice, no source".
"""

from dataclasses import dataclass


@dataclass(frozen=True)
class Source:
    """Where a value was printed.

    >>> print(Source("William Davis", "Hosiery Manufacture", "c. 1920", "chapters V and VI"))
    William Davis, Hosiery Manufacture (c. 1920), chapters V and VI
    """

    author: str
    title: str
    year: str
    where: str = ""

    def __str__(self) -> str:
        """Return the reference in one line."""
        year = f" ({self.year})" if self.year else ""
        return ", ".join(filter(None, [self.author, f"{self.title}{year}", self.where]))


@dataclass(frozen=True)
class Constant:
    """A value with its unit, the range it may take, and its source.

    `low` and `high` bound what is plausible; a defined value has both equal to itself.

    >>> print(YARD)
    0.9144 m (exact, since the international agreement of 1959; NIST, Guide for the Use of the \
International System of Units, Special Publication 811 (2008), appendix B)
    """

    value: float
    unit: str
    low: float
    high: float
    source: Source
    note: str = ""

    def __str__(self) -> str:
        """Return the value with its unit, then its note and its source."""
        origin = "; ".join(filter(None, [self.note, str(self.source)]))
        return f"{self.value:.15g} {self.unit} ({origin})"


def _exact(value: float, unit: str, source: Source, note: str) -> Constant:
    return Constant(value, unit, value, value, source, note)


COMMON_PRACTICE = Source("", "common practice, no source", "")

NIST_SP_811 = Source(
    "NIST",
    "Guide for the Use of the International System of Units, Special Publication 811",
    "2008",
    "appendix B",
)
NIST_HANDBOOK_44 = Source(
    "NIST",
    "Specifications, Tolerances, and Other Technical Requirements for Weighing and Measuring "
    "Devices, Handbook 44",
    "",
    "appendix C, general tables of units of measurement",
)
ASTM_D2260 = Source(
    "ASTM International",
    "D2260, Standard Tables of Conversion Factors and Equivalent Yarn Numbers",
    "2003, reapproved 2013",
    "table 1 as printed on the standard's public page",
)
ASTM_D1907 = Source(
    "ASTM International",
    "D1907, Standard Test Method for Linear Density of Yarn by the Skein Method",
    "",
    "scope; ISO 2060:1994 has the same limit",
)
CALCULATIONS = Source(
    "American Correspondence School of Textiles", "Calculations, Part IV", "Lowell, 1898"
)
ASTM_D1909 = Source(
    "ASTM International",
    "D1909, Standard Tables of Commercial Moisture Regains and Commercial Allowances for Textile "
    "Fibers",
    "2013",
)
ASTM_D2118 = Source(
    "ASTM International",
    "D2118, Standard Practice for Assigning a Standard Commercial Moisture Content for Wool and "
    "its Products",
    "2018",
    "scope, as printed on the standard's public page",
)
EU_1007_2011 = Source(
    "European Union", "Regulation (EU) No 1007/2011 on textile fibre names", "2011", "annex IX"
)
AWTA_GLOSSARY = Source(
    "Australian Wool Testing Authority", "Glossary of terms", "", 'public page, entry "Regain"'
)
TEXTILE_FIBRES = Source(
    "W. E. Morton and J. W. S. Hearle", "Physical Properties of Textile Fibres", "2008"
)
CRITICAL_TABLES = Source(
    "National Research Council",
    "International Critical Tables",
    "McGraw-Hill, 1926-1930",
    "regain of hygroscopic materials, as reprinted in ASHRAE handbooks",
)
COTTON_MANUFACTURING = Source(
    "C. P. Brooks", "Cotton Manufacturing", "19th century", 'chapter "Wrapping"'
)
COTTON_WEAVING = Source("J. T. Taylor", "Cotton Weaving and Designing", "6th edition")
HOSIERY_MANUFACTURE = Source(
    "William Davis", "Hosiery Manufacture", "Pitman, c. 1920", "chapters V and VI"
)
SETT_PAGE = Source(
    "medievaltextiles.org", "Ashenhurst's formula for maximum sett", "1999", "public page"
)
CLOTH_GEOMETRY = Source(
    "F. T. Peirce",
    "The Geometry of Cloth Structure, Journal of the Textile Institute",
    "1937",
    "T45",
)
YARN_WEIGHT_SYSTEM = Source(
    "Craft Yarn Council", "Standard Yarn Weight System", "", "public chart, in copies of 2018-2019"
)
SPINNERS_CHART = Source(
    "Spin Off",
    "Yarn Standards",
    "",
    "one-page chart of a spinning magazine, wraps and yards its own",
)
JUTE_INDUSTRY = Source(
    "Thomas Woodhouse and Peter Kilgour",
    "The Jute Industry: from Seed to Finished Cloth",
    "Project Gutenberg 12443",
    "table of yarns",
)

_AGREED = "exact, since the international agreement of 1959"
YARD = _exact(0.9144, "m", NIST_SP_811, _AGREED)
INCH = _exact(25.4, "mm", NIST_SP_811, _AGREED)
POUND = _exact(453.59237, "g", NIST_SP_811, _AGREED)
OUNCE = _exact(28.349523125, "g", NIST_HANDBOOK_44, "exact, a sixteenth of the pound")
DRAM = _exact(1.7718451953125, "g", NIST_HANDBOOK_44, "exact, a sixteenth of the ounce")
GRAIN = _exact(64.79891, "mg", NIST_HANDBOOK_44, "exact, 7000 to the pound")

COTTON_HANK = _exact(840, "yd", ASTM_D2260, "cotton count, hanks to the pound")
WORSTED_HANK = _exact(560, "yd", ASTM_D2260, "worsted count, hanks to the pound")
LINEN_LEA = _exact(300, "yd", ASTM_D2260, "linen lea, leas to the pound")
WOOLLEN_RUN = _exact(1600, "yd", CALCULATIONS, "woollen run, runs to the pound")
WOOLLEN_CUT = _exact(300, "yd", ASTM_D2260, "American woollen cut, cuts to the pound")
YORKSHIRE_SKEIN = _exact(
    256, "yd", HOSIERY_MANUFACTURE, "Yorkshire skein, skeins to the pound or yards to the dram"
)
GALASHIELS_CUT = _exact(
    300, "yd", HOSIERY_MANUFACTURE, "Galashiels cut, cuts to 24 oz, so 200 yd to the pound"
)
FRENCH_COTTON_HANK = _exact(1000, "m", COTTON_MANUFACTURING, "French cotton count, hanks to 500 g")
JUTE_SPYNDLE = _exact(14400, "yd", JUTE_INDUSTRY, "jute count, pounds to the spyndle")
SILK_DRAM_LENGTH = _exact(1000, "yd", COTTON_WEAVING, "silk dram count, drams to this length")
AMERICAN_GRAIN_LENGTH = _exact(120, "yd", ASTM_D2260, "American grain count, grains to this length")

BALANCE_FACTOR = Constant(
    100, "yd/lb/in", 10, 1000, COMMON_PRACTICE, "the usual balance: inches of cut times 100"
)
GRIST = Constant(1000, "yd/lb", 100, 30000, COMMON_PRACTICE, "handspun yarn")
PLIES = Constant(2, "1", 1, 8, COMMON_PRACTICE, "singles in a plied yarn")
TAKE_UP = Constant(
    1.03, "1", 0.98, 1.15, COMMON_PRACTICE, "length of a single in a unit length of plied yarn"
)
SKEIN_METHOD_LIMIT = _exact(
    2000, "tex", ASTM_D1907, "the coarsest yarn that the standard skein methods measure"
)

_FIBRE = "solid fibre, dry and in air of 65 % relative humidity"
WOOL_DENSITY = Constant(1.31, "g/cm**3", 1.30, 1.31, TEXTILE_FIBRES, f"wool, {_FIBRE}; table 5.1")
SILK_DENSITY = Constant(1.34, "g/cm**3", 1.34, 1.34, TEXTILE_FIBRES, f"silk, {_FIBRE}; table 5.1")
COTTON_DENSITY = Constant(
    1.52, "g/cm**3", 1.52, 1.55, TEXTILE_FIBRES, f"cotton, {_FIBRE}; table 5.1"
)
NYLON_DENSITY = Constant(1.14, "g/cm**3", 1.14, 1.14, TEXTILE_FIBRES, f"nylon, {_FIBRE}; table 5.1")
FLAX_DENSITY = Constant(1.5, "g/cm**3", 1.45, 1.55, COMMON_PRACTICE, "flax, from memory")
BULK_DENSITY = Constant(
    0.2, "g/cm**3", 0.08, 1.31, COMMON_PRACTICE, "yarn with its air: the least, and solid wool"
)
HANDSPUN_BULK_DENSITY = Constant(
    0.2,
    "g/cm**3",
    0.12,
    0.40,
    COMMON_PRACTICE,
    "handspun usually, an estimate; printed charts of wraps and grist lie at its loose end",
)
WRAPS_PER_INCH = Constant(12, "1/in", 3, 70, COMMON_PRACTICE, "handspun, laid by hand, not pressed")

# Ashenhurst's rule, diameters to the inch from the root of yards to the pound: each its author's
_RULE = "lb**0.5/yd**0.5/in"
ASHENHURST_SOFT_1999 = _exact(0.84, _RULE, SETT_PAGE, "soft woollen and tweed yarns")
ASHENHURST_FIRM_1999 = _exact(0.90, _RULE, SETT_PAGE, "firm worsted and cotton yarns")
ASHENHURST_COTTON = _exact(0.95, _RULE, COTTON_WEAVING, "cotton, the root less 5 per cent")
PEIRCE_COTTON = _exact(
    28, "1/in/cotton_count**0.5", CLOTH_GEOMETRY, "cotton, for grist in cotton count, from memory"
)

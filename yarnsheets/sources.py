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
COTTON_MANUFACTURING = Source(
    "C. P. Brooks", "Cotton Manufacturing", "19th century", 'chapter "Wrapping"'
)
COTTON_WEAVING = Source("J. T. Taylor", "Cotton Weaving and Designing", "6th edition")
HOSIERY_MANUFACTURE = Source(
    "William Davis", "Hosiery Manufacture", "Pitman, c. 1920", "chapters V and VI"
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

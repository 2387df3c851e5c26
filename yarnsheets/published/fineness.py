"""How fine fibres are and how few of them make a yarn: published values, each with its source.

The American grades of wool keep the names of old spinning counts: the hanks of 560 yd to the pound
that such wool was supposed to reach. The names are no spinning limit: at the middle of its grade
80s would leave 32 fibres in the section and 36s only 16. Go by the micron and a least number of
fibres instead.
"""

from dataclasses import dataclass

from yarnsheets.published.sources import (
    COMMON_PRACTICE,
    COTTON_DENSITY,
    FLAX_DENSITY,
    NYLON_DENSITY,
    SILK_DENSITY,
    WOOL_DENSITY,
    Constant,
    Source,
)

SHORT_STAPLE_SPINNING = Source(
    "W. Klein",
    "Technology of Short-staple Spinning",
    "Textile Institute",
    "online edition, page on the number of fibres in the cross-section",
)
WOOL_GRADES_CFR = Source(
    "United States",
    "Code of Federal Regulations, title 7, part 31, grades of wool",
    "",
    "as tabulated in New Mexico State University's Guide B-409",
)

# Mass to a unit of volume of solid fibre.
FIBRE_DENSITIES = {
    "wool": WOOL_DENSITY,
    "silk": SILK_DENSITY,
    "cotton": COTTON_DENSITY,
    "flax": FLAX_DENSITY,
    "nylon": NYLON_DENSITY,
}


def _least(value: float, low: float, high: float, source: Source, note: str) -> Constant:
    return Constant(value, "1", low, high, source, f"least fibres in the section, {note}")


LEAST_HANDSPUN = _least(30, 20, 40, COMMON_PRACTICE, "handspun")
LEAST_COMBED_COTTON = _least(33, 33, 33, SHORT_STAPLE_SPINNING, "combed cotton spun on rings")
LEAST_CARDED_COTTON = _least(75, 75, 75, SHORT_STAPLE_SPINNING, "carded cotton spun on rings")
LEAST_SYNTHETIC = _least(50, 50, 50, SHORT_STAPLE_SPINNING, "synthetic fibre spun on rings")
LEAST_WORSTED = _least(35, 35, 40, COMMON_PRACTICE, "worsted spun in a mill, from memory")


@dataclass(frozen=True)
class WoolGrade:
    """A grade of wool: from and to which mean diameter, and how much diameters may differ.

    `count` is the number in the grade's name, `low`, `high` and `most_deviation`, the greatest
    standard deviation, are in micron.

    >>> WOOL_GRADES[2].name
    '64s'
    """

    count: int
    low: float
    high: float
    most_deviation: float

    @property
    def name(self) -> str:
        """Return the grade as the trade calls it."""
        return f"{self.count}s"


# WOOL_GRADES_CFR, read; the last deviation, 11.19, is from memory.
WOOL_GRADES = (
    WoolGrade(80, 17.70, 19.14, 4.09),
    WoolGrade(70, 19.15, 20.59, 4.59),
    WoolGrade(64, 20.60, 22.04, 5.19),
    WoolGrade(62, 22.05, 23.49, 5.89),
    WoolGrade(60, 23.50, 24.94, 6.49),
    WoolGrade(58, 24.95, 26.39, 7.09),
    WoolGrade(56, 26.40, 27.84, 7.59),
    WoolGrade(54, 27.85, 29.29, 8.19),
    WoolGrade(50, 29.30, 30.99, 8.69),
    WoolGrade(48, 31.00, 32.69, 9.09),
    WoolGrade(46, 32.70, 34.39, 9.59),
    WoolGrade(44, 34.40, 36.19, 10.09),
    WoolGrade(40, 36.20, 38.09, 10.69),
    WoolGrade(36, 38.10, 40.20, 11.19),
)


def wool_grade(micron: float) -> WoolGrade | None:
    """Return the grade of wool of a mean diameter in micron; none outside the table.

    The table is in hundredths, with holes between its grades, so the diameter is rounded first.

    >>> wool_grade(21).name, wool_grade(20.594).name, wool_grade(15)
    ('64s', '70s', None)
    """
    hundredths = round(micron, 2)
    return next((each for each in WOOL_GRADES if each.low <= hundredths <= each.high), None)

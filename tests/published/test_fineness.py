"""Fibres in the cross-section, against published and hand-worked values.

Grades    published: United States Code of Federal Regulations, title 7, part 31, grades of wool,
          as tabulated in New Mexico State University's Guide B-409; the last greatest deviation is
          from memory.
GATE      published: Graduate Aptitude Test in Engineering, Textile Engineering, 2021, question 53.
Martindale  from memory: J. G. Martindale, Journal of the Textile Institute, 1945, 36, T35.
Klein     published: W. Klein, Technology of Short-staple Spinning, Textile Institute.
exact     hand-worked: a round rod of wool, 1.31 g/cm3, with the exact yard and pound.
"""

import pytest

from tests.published.test_tables import printed
from yarnsheets import formulas
from yarnsheets.published import fineness
from yarnsheets.published.fineness import FIBRE_DENSITIES, WOOL_GRADES, wool_grade
from yarnsheets.units import convert

WOOL = 1.31


def one_fibre(micron: float, spread: float = 0, density: float = WOOL) -> float:
    """Return pounds to the yard of one fibre."""
    solid = convert(density, "g/cm**3", "lb/yd/in**2")
    return float(formulas.fibre_linear_density(convert(micron, "micron", "in"), solid, spread))


# micron  spread  tex of one fibre: exact
@pytest.mark.parametrize(
    ("micron", "spread", "tex"),
    [
        (21, 0, "0.45373237297634"),
        (30, 0, "0.925984434645592"),
        (21, 0.24, "0.479867357659777"),
    ],
)
def test_the_mass_of_one_fibre(micron: float, spread: float, tex: str) -> None:
    assert convert(one_fibre(micron, spread), "lb/yd", "tex") == printed(tex)


# micron  spread  fibres  yd/lb: exact
@pytest.mark.parametrize(
    ("micron", "spread", "least", "grist"),
    [
        (21, 0, 20, "54663.7927334298"),
        (21, 0, 40, "27331.8963667149"),
        (30, 0, 20, "26785.2584393806"),
        (30, 0, 40, "13392.6292196903"),
        (21, 0.24, 40, "25843.321072915"),
    ],
)
def test_the_finest_single(micron: float, spread: float, least: float, grist: str) -> None:
    assert formulas.finest_grist(least, one_fibre(micron, spread)) == printed(grist)


@pytest.mark.parametrize(
    ("least", "tex", "worsted"),
    [(20, "9.0746474595268", "97.6139155954103"), (40, "18.1492949190536", "48.8069577977051")],
)
def test_the_finest_single_in_other_counts(least: float, tex: str, worsted: str) -> None:
    """Exact, 21 micron."""
    finest = formulas.finest_grist(least, one_fibre(21))
    assert convert(finest, "yd/lb", "tex") == printed(tex)
    assert convert(finest, "yd/lb", "worsted_count") == printed(worsted)


def test_the_fibres_of_a_yarn_to_knit_with() -> None:
    """Exact: 1200 yd/lb of 25 micron."""
    assert formulas.fibres_in_section(1200, one_fibre(25)) == printed("642.846202545134")


def test_the_exam_on_irregularity() -> None:
    """GATE: 50 tex of 4.5 denier with a coefficient of variation of 12.5 %."""
    fibre = convert(4.5, "denier", "tex")
    fibres = formulas.fibres_in_section(1 / 50, fibre)  # km/g and g/km
    assert fibres == pytest.approx(100, rel=1e-14)
    limit = formulas.limit_irregularity(fibres, 0)
    assert limit == pytest.approx(0.10, rel=1e-14)
    assert formulas.irregularity_index(0.125, limit) == pytest.approx(1.25, rel=1e-14)


# Martindale's limit of 100 fibres in tenths of a per cent; the spread that each fibre then has is
# worked backwards by hand, the root of (1.06**2 - 1) / 4 and of (1.12**2 - 1) / 4.
@pytest.mark.parametrize(
    ("spread", "limit"), [(0, "100"), (0.1757839582, "106"), (0.2521904043, "112")]
)
def test_martindales_limits(spread: float, limit: str) -> None:
    found = 1000 * formulas.limit_irregularity(100, spread)
    assert found == pytest.approx(float(limit), rel=1e-9)


def test_wool_that_varies_by_a_quarter() -> None:
    """Exact: 100 times the root of 1.25 is 111.803398874989; Martindale's wool rounds to 112.

    A handbook's constant for wool, 118, is not that.
    """
    limit = 1000 * formulas.limit_irregularity(100, 0.25)
    assert limit == printed("111.803398874989")
    assert limit == pytest.approx(112, abs=0.5)


def test_solid_wool_is_the_thinnest_that_1200_yards_to_the_pound_can_be() -> None:
    """Exact."""
    solid = convert(WOOL, "g/cm**3", "lb/yd/in**2")
    inches = formulas.diameter_from_grist(1200, solid)
    assert convert(inches, "in", "mm") == printed("0.633860297376882")
    assert formulas.wraps_per_inch_from_grist(1200, solid) == printed("40.0719213762297")
    assert formulas.wraps_per_inch_from_grist(1, solid) == printed("1.15677672967559")


# grade  micron         most sd  yd/lb  tex      fibres at mid-range: the last three by hand
GRADES = """
80   17.70 19.14   4.09   44800   11.073   31.7
70   19.15 20.59   4.59   39200   12.654   31.2
64   20.60 22.04   5.19   35840   13.841   29.6
62   22.05 23.49   5.89   34720   14.287   26.8
60   23.50 24.94   6.49   33600   14.764   24.5
58   24.95 26.39   7.09   32480   15.273   22.5
56   26.40 27.84   7.59   31360   15.818   20.9
54   27.85 29.29   8.19   30240   16.404   19.5
50   29.30 30.99   8.69   28000   17.716   18.9
48   31.00 32.69   9.09   26880   18.454   17.7
46   32.70 34.39   9.59   25760   19.257   16.6
44   34.40 36.19   10.09  24640   20.132   15.7
40   36.20 38.09   10.69  22400   22.145   15.6
36   38.10 40.20   11.19  20160   24.606   15.6
"""


@pytest.mark.parametrize(
    ("row", "grade"), list(zip(GRADES.strip().splitlines(), WOOL_GRADES, strict=True))
)
def test_grades_of_wool(row: str, grade: fineness.WoolGrade) -> None:
    count, low, high, deviation, yards, tex, fibres = row.split()
    assert grade == fineness.WoolGrade(int(count), float(low), float(high), float(deviation))
    grist = convert(grade.count, "worsted_count", "yd/lb")
    assert grist == printed(yards)
    assert convert(grist, "yd/lb", "tex") == printed(tex)
    middle = (grade.low + grade.high) / 2
    assert formulas.fibres_in_section(grist, one_fibre(middle)) == printed(fibres)


def test_a_grade_is_no_spinning_limit() -> None:
    """By its name the finest grade keeps twice the fibres of the coarsest, and none keeps 35."""

    def implied(grade: fineness.WoolGrade) -> float:
        grist = convert(grade.count, "worsted_count", "yd/lb")
        return float(formulas.fibres_in_section(grist, one_fibre((grade.low + grade.high) / 2)))

    assert implied(WOOL_GRADES[0]) / implied(WOOL_GRADES[-1]) == pytest.approx(2, abs=0.05)
    assert max(map(implied, WOOL_GRADES)) < fineness.LEAST_WORSTED.low


def test_the_grade_of_a_diameter() -> None:
    # the ends of the table, and of one grade in it
    assert wool_grade(17.69) is None
    assert wool_grade(40.21) is None
    assert [wool_grade(micron).name for micron in (17.70, 20.59, 20.60, 40.20)] == [
        "80s",
        "70s",
        "64s",
        "36s",
    ]
    # the next grade begins a hundredth on: a diameter between is in the nearer
    assert [wool_grade(micron).name for micron in (19.144, 19.146)] == ["80s", "70s"]


def test_fewest_fibres() -> None:
    # Klein: combed cotton 33, carded 75, synthetic 50; common practice: handspun 20 to 40
    assert fineness.LEAST_COMBED_COTTON.value == 33
    assert fineness.LEAST_CARDED_COTTON.value == 75
    assert fineness.LEAST_SYNTHETIC.value == 50
    assert (fineness.LEAST_HANDSPUN.low, fineness.LEAST_HANDSPUN.high) == (20, 40)
    assert "common practice, no source" in str(fineness.LEAST_HANDSPUN)


def test_densities_of_fibres() -> None:
    # Morton and Hearle, Physical Properties of Textile Fibres, table 5.1; flax from memory
    grams = {name: density.value for name, density in FIBRE_DENSITIES.items()}
    assert grams == {"wool": 1.31, "silk": 1.34, "cotton": 1.52, "flax": 1.5, "nylon": 1.14}


def test_a_denser_fibre_of_the_same_thickness_spins_less_fine() -> None:
    """Exact: the finest grists are as the densities, the other way round."""
    wool = formulas.finest_grist(30, one_fibre(20))
    cotton = formulas.finest_grist(30, one_fibre(20, density=1.52))
    assert wool / cotton == pytest.approx(1.52 / 1.31, rel=1e-14)

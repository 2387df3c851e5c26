"""Twist, against published and hand-worked values.

GATE    published: Graduate Aptitude Test in Engineering, Textile Engineering, by year, question.
Exam    published: a bank of examination questions on cotton spinning.
Kappa   published: a value of twist contraction, 0.0605 at a tangent of 0.5236.
Japan   published: Journal of the Textile Machinery Society of Japan, 14 (3-4), 115, abstract: the
        form for staple fibre and what plying leaves of a slant; numbers here are hand-worked.
Hearle  from memory: J. W. S. Hearle, P. Grosberg and S. Backer, Structural Mechanics of Fibers,
        Yarns, and Fabrics, 1969, chapter 2; its numbers here are hand-worked from the secant.
Emery   from memory: Irene Emery, The Primary Structures of Fabrics, 1966.
Klein   published: W. Klein, Technology of Short-staple Spinning, Textile Institute.
exact   hand-worked: with the exact yard (0.9144 m) and pound (453.59237 g).
"""

import math

import pytest

from tests.published.test_tables import printed
from yarnsheets import formulas
from yarnsheets.estimates.plying_take_up import staple_retraction, staple_take_up
from yarnsheets.published import twists
from yarnsheets.sheets.how_much_twist_does_it_want.plied import plied
from yarnsheets.sheets.how_much_twist_does_it_want.sheet import HowMuchTwistDoesItWant
from yarnsheets.units import convert


def tangent(degrees: float) -> float:
    return math.tan(math.radians(degrees))


def degrees(tangent: float) -> float:
    return math.degrees(math.atan(tangent))


def millimetres_thick(grist: float, grams: float) -> float:
    """Return the diameter of a single as a round rod of so many g/cm3, in millimetres."""
    density = convert(grams, "g/cm**3", "lb/yd/in**2")
    return float(convert(formulas.diameter_from_grist(grist, density), "in", "mm"))


# --- the slant ---


def test_the_slant_of_a_cotton_single() -> None:
    """GATE 2022, 47: tex factor 6000 per metre, 700 kg/m3; in metres and kilograms."""
    kilograms = 25e-6  # to the metre, any count: the factor has done away with it
    twist = formulas.twist_from_multiplier(6000, 1 / 25)
    diameter = formulas.diameter_from_grist(1 / kilograms, 700)
    slant = formulas.twist_tangent(diameter, twist)
    assert slant == printed("0.803909502828814")
    assert degrees(slant) == pytest.approx(38.796132170192, abs=5e-13)
    assert degrees(slant) == pytest.approx(39, abs=0.5)  # as printed


def test_the_slant_of_a_knitting_yarn() -> None:
    """Exact: 1200 yd/lb at 5 to the inch, 0.4 g/cm3."""
    thick = millimetres_thick(1200, 0.4)
    assert degrees(formulas.twist_tangent(thick, 5 / 25.4)) == pytest.approx(
        35.3515270929681, abs=5e-13
    )


def test_a_handbooks_slant_is_upside_down() -> None:
    """A handbook prints tan a = pi d / L with L "turns per unit length": more twist, less slant.

    With L the length of one turn, which is 1 / twist, it is right.
    """
    diameter, twist = 0.03, 6.0
    ours = formulas.twist_tangent(diameter, twist)
    assert ours == pytest.approx(math.pi * diameter / (1 / twist), rel=1e-14)
    assert formulas.twist_tangent(diameter, 2 * twist) > ours


# --- multipliers ---


def test_an_exam_on_multipliers() -> None:
    """GATE 2006, 31: a tex factor of 38.28 at 29.5 tex; its twist in a 30s cotton is 3.27."""
    to_cm = formulas.twist_from_multiplier(38.28, 1 / 29.5)
    assert to_cm == printed("7.04791927462956")
    to_inch = convert(to_cm, "1/cm", "1/in")
    assert to_inch == printed("17.9017149575591")
    cotton = formulas.twist_multiplier(to_inch, 30)
    assert cotton == printed("3.26839103342758")
    assert cotton == printed("3.27")


def test_a_cotton_multiplier() -> None:
    """Exam: 36s at 15 turns to the inch."""
    assert formulas.twist_multiplier(15, 36) == 2.5


# grist unit, twist unit, tex factor of a multiplier of 1: exact; 9.57 is published twice
@pytest.mark.parametrize(
    ("count", "factor"),
    [
        ("cotton_count", "9.56734427219118"),
        ("worsted_count", "11.7175558302038"),
        ("yd/lb", "277.28798061764"),
    ],
)
def test_the_tex_factor_of_a_multiplier(count: str, factor: str) -> None:
    grist = 7.0
    twist = formulas.twist_from_multiplier(1, grist)
    tex = convert(grist, count, "tex")
    found = formulas.twist_multiplier(convert(twist, "1/in", "1/cm"), 1 / tex)
    assert found == printed(factor)


def test_the_published_factor_is_rounded() -> None:
    tex = convert(1, "cotton_count", "tex")
    assert formulas.twist_multiplier(1 / 2.54, 1 / tex) == printed("9.57")


def test_the_metric_multiplier() -> None:
    """Exact: of a cotton multiplier of 1; and the root of 1000 between it and tex per metre."""
    count = convert(1, "cotton_count", "metric_count")
    metric = formulas.twist_multiplier(100 / 2.54, count)
    assert metric == printed("30.2545990590901")
    per_metre = formulas.twist_multiplier(100 / 2.54, 1 / convert(1, "cotton_count", "tex"))
    assert per_metre / metric == pytest.approx(31.6227766016838, abs=5e-14)


def test_the_ranges_of_cotton_mills() -> None:
    """Klein."""
    mills = (twists.COTTON_TO_KNIT, twists.COTTON_WEFT, twists.COTTON_WARP)
    assert [(each.low, each.high) for each in mills] == [(2.1, 3.5), (3.0, 3.8), (3.4, 5.0)]
    assert "Klein" in str(twists.COTTON_WARP)


def test_what_a_slant_is_called() -> None:
    """Emery, from memory: loose to 10 degrees, medium to 25, tight to 45."""
    called = (twists.LOOSE_TWIST, twists.MEDIUM_TWIST, twists.TIGHT_TWIST)
    assert [(each.low, each.high) for each in called] == [(0, 10), (10, 25), (25, 45)]
    assert all("from memory" in str(each) and "Emery" in str(each) for each in called)


def test_what_is_only_practice_says_so() -> None:
    for each in (twists.TWIST_ANGLE, twists.BALANCED_PLY, twists.TWISTED_BULK_DENSITY):
        assert "common practice, no source" in str(each)
        assert each.low < each.value < each.high


# --- a single by its own twist ---

# degrees  secant form, Hearle   share lost         staple form, Japan
CONTRACTION = """
10         1.00771330594287      0.00765426624555254   0.0076348857825389
15         1.01763809020504      0.0173323801209992    0.0172339608619396
20         1.03208888623796      0.0310912041257634    0.0307788201710207
25         1.05168895948125      0.049148523444367     0.048381793447699
30         1.07735026918963      0.0717967697244908    0.0701969254091331
"""


@pytest.mark.parametrize("row", CONTRACTION.strip().splitlines())
def test_the_contraction_of_a_single(row: str) -> None:
    angle, secant_form, lost, staple = row.split()
    slant = tangent(float(angle))
    taken_up = formulas.twist_take_up(slant)
    assert taken_up == printed(secant_form)
    assert formulas.retraction(taken_up) == printed(lost)
    assert formulas.retraction(taken_up) == pytest.approx(
        math.tan(math.radians(float(angle)) / 2) ** 2, rel=1e-12
    )
    assert staple_retraction(slant) == printed(staple)


def test_a_published_contraction() -> None:
    """Kappa."""
    assert formulas.retraction(formulas.twist_take_up(0.5236)) == printed("0.0605")


def test_both_forms_begin_alike() -> None:
    """Hearle and Japan: a quarter of the squared angle, for a small one."""
    small = math.radians(0.5)
    for lost in (
        formulas.retraction(formulas.twist_take_up(math.tan(small))),
        staple_retraction(math.tan(small)),
    ):
        assert lost == pytest.approx(small**2 / 4, rel=1e-4)
    assert staple_retraction(0.0) == 0


def test_the_contraction_factor_is_the_take_up() -> None:
    """GATE 2014, 37: 100,000 km twisted are 106,000 km untwisted at 1.06."""
    slant = ((2 * 1.06 - 1) ** 2 - 1) ** 0.5  # by hand: a secant of 1.12
    assert formulas.singles_length(100000, 1, formulas.twist_take_up(slant)) == pytest.approx(
        106000, rel=1e-12
    )


# --- plying ---

THICK = 0.725486270258665  # exact: mm, 206.6894 tex as a round rod of 0.5 g/cm3


def test_take_up_of_two_singles() -> None:
    """Hand-worked: 2400 yd/lb, 0.5 g/cm3, 6 to the inch, plied 4 to the inch.

    By the steps of Japan, but for a single that keeps its thickness.
    """
    thick = millimetres_thick(2400, 0.5)
    assert thick == printed(str(THICK))
    ply = formulas.twist_tangent(thick, 4 / 25.4)
    assert degrees(ply) == pytest.approx(19.7443999727774, abs=5e-13)
    assert formulas.retraction(formulas.helix_take_up(ply)) == printed("0.0587909616263781")
    left = formulas.residual_twist(6, 4, ply)
    assert left == printed("2.45650218433521")
    assert staple_retraction(formulas.twist_tangent(thick, 6 / 25.4)) == printed(
        "0.0622846576891742"
    )
    assert staple_retraction(formulas.twist_tangent(thick, left / 25.4)) == printed(
        "0.0118141233333988"
    )
    take_up = staple_take_up(thick, thick, 6 / 25.4, 4 / 25.4)
    assert formulas.retraction(take_up) == printed("0.00813238650896653")


@pytest.mark.parametrize(("twist", "ply_twist"), [(3, 2), (4, 2.5), (6, 4), (6.4, 4.3)])
def test_a_single_that_keeps_its_thickness_is_near_enough(twist: float, ply_twist: float) -> None:
    """Japan: q(after) = (1 - ply twist / twist * cos(b)**2) * q(before), solved by halving.

    There q = tan(a) * (1 - k)**0.5, k the share of length lost. Up to a slant of 30 degrees the two
    take-ups are within 0.001.
    """

    def q(slant: float) -> float:
        return slant * math.sqrt(1 - staple_retraction(slant))

    before, helix = (math.pi * THICK * turns / 25.4 for turns in (twist, ply_twist))
    wanted = (1 - ply_twist / twist / (1 + helix**2)) * q(before)
    low, high = 0.0, before
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if q(middle) < wanted else (low, middle)
    k, k_after = staple_retraction(before), staple_retraction(low)
    theirs = (1 - k_after) / (1 - k) / math.sqrt(1 + helix**2)  # plied length to single length
    ours = staple_take_up(THICK / 25.4, THICK / 25.4, twist, ply_twist)
    assert ours == pytest.approx(1 / theirs, abs=0.001)
    assert ours > 1 / theirs


def test_the_secant_form_of_the_same() -> None:
    """By hand from Hearle's secants: 1.13572 before, 1.02401 after, 1.06246 of the helix."""
    thick = millimetres_thick(2400, 0.5)
    found = plied(thick, 1, 6 / 25.4, 4 / 25.4)
    before, after, helix = (
        math.sqrt(1 + (math.pi * THICK * turns / 25.4) ** 2) for turns in (6, 2.45650218433521, 4)
    )
    assert (before, after, helix) == pytest.approx((1.13572, 1.02401, 1.06246), abs=5e-6)
    assert found["take_up"] == pytest.approx(helix * (1 + after) / (1 + before), rel=1e-12)


# plies, diameter of the circle in diameters of a single: exact
@pytest.mark.parametrize(
    ("plies", "circle"), [(2, "1"), (3, "1.15470053837925"), (4, "1.4142135623731")]
)
def test_the_circle_that_singles_wind_around(plies: int, circle: str) -> None:
    assert HowMuchTwistDoesItWant(plies=plies).lay == pytest.approx(float(circle), abs=5e-14)


# plies, ply twist of the singles' twist: exact
@pytest.mark.parametrize(
    ("plies", "share"), [(2, "0.707106781186547"), (3, "0.577350269189626"), (4, "0.5")]
)
def test_the_same_multiplier_in_yarn_and_single(plies: int, share: str) -> None:
    ply_twist = formulas.ply_twist_same_multiplier(6, plies)
    assert ply_twist / 6 == pytest.approx(float(share), abs=6e-16)
    plied = formulas.plied_grist(2400, plies, 1)
    assert formulas.twist_multiplier(ply_twist, plied) == pytest.approx(
        formulas.twist_multiplier(6, 2400), rel=1e-14
    )


def test_practice_is_near_the_same_multiplier_for_two_singles_only() -> None:
    """Common practice, no source: 60 % to 70 %; exact shares of 0.707 and 0.577."""
    practice = twists.BALANCED_PLY
    assert (practice.low, practice.high) == (0.60, 0.70)
    assert formulas.ply_twist_same_multiplier(1, 2) == pytest.approx(practice.high, abs=0.01)
    assert formulas.ply_twist_same_multiplier(1, 3) < practice.low

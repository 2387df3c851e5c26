"""Yarn in knitting as it is printed, and the loop constants against tables worked by hand.

A printed decimal is met within half its last digit.

Sources:

GATE        published: Graduate Aptitude Test in Engineering, Textile Engineering, by question.
Davis       published: William Davis, Hosiery Manufacture, c. 1920, exercises by number.
Munden      from memory: D. L. Munden, Journal of the Textile Institute 50, 1959, T448, constants.
hand-worked the roots of Munden's products, to the digits given.
Magazine    published: a magazine's weighed swatches, square inches to the gram.
Unravelled  published: a public page's swatches, unravelled: ratios only.
practice    common practice, no source: rules of hand knitters.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.published.test_tables import printed
from yarnsheets import formulas
from yarnsheets.published import stitches
from yarnsheets.units import convert

# Gauge over 4 in, stitches to the square inch, inches in a loop at 21.6, inches of yarn in a square
# inch at 19.0, 21.6 and 23.1, yards in 1000 square inches at 21.6. Munden; hand-worked.
TABLE = [
    (16, 22, "22.0", "0.99087", ("20.4450", "21.7991", "22.5433"), "605.530"),
    (20, 28, "35.0", "0.78558", ("25.7876", "27.4955", "28.4341"), "763.763"),
    (24, 32, "48.0", "0.67082", ("30.1993", "32.1994", "33.2986"), "894.427"),
]
gauges = pytest.mark.parametrize(
    ("across", "along", "square", "loop", "inches", "yards"), TABLE, ids=lambda value: str(value)
)


@gauges
def test_yarn_by_both_gauges(
    across: float, along: float, square: str, loop: str, inches: tuple[str, ...], yards: str
) -> None:
    """Hand-worked from Munden's constants: the table above."""
    near, far = across / 4, along / 4
    assert near * far == printed(square)
    assert formulas.loop_length(near, far, 21.6) == printed(loop)
    constants = (stitches.DRY, stitches.WET, stitches.FULL)
    for state, expected in zip(constants, inches, strict=True):
        assert formulas.yarn_per_area(near, far, state.area.value) == printed(expected)
    assert formulas.yarn_per_area(near, far, 21.6) * 1000 / 36 == printed(yards)


def test_92_loops_to_the_square_centimetre() -> None:
    """GATE 2015, question 54: constants 4.2 and 5.5, loop of 0.5 cm: 92; hand-worked: 92.4."""
    loops = formulas.loops_per_area(stitches.FULL.courses.value, stitches.FULL.wales.value, 0.5)
    assert loops == printed("92.4")
    assert loops == pytest.approx(92, abs=0.5)


@pytest.mark.parametrize(
    ("state", "area", "ratio"),
    [
        (stitches.DRY, "19.0", "1.3158"),
        (stitches.WET, "21.73", "1.2927"),  # while 21.6 is given for itself
        (stitches.FULL, "23.1", "1.3095"),
    ],
)
def test_constants_fit_one_another(state: stitches.State, area: str, ratio: str) -> None:
    """Munden (dry and wet) and GATE 2015 (full): hand-worked product and ratio of the two."""
    assert state.courses.value * state.wales.value == printed(area)
    assert state.courses.value / state.wales.value == printed(ratio)


def test_1200_yards_per_pound_at_20_by_28_is_loose_but_usual() -> None:
    """Hand-worked: tightness factor 10.189, with 453.59237 g and 914.4 m to 1000 yd."""
    centimetres = convert(formulas.loop_length(5, 7, 21.6), "in", "cm")
    factor = formulas.tightness_factor(convert(1200, "yd/lb", "km/g"), centimetres)
    assert factor == printed("10.189")
    assert stitches.LOOSEST.value < factor < stitches.TIGHTEST.value


def test_stitches_to_10_centimetres_read_as_to_4_inches() -> None:
    """Hand-worked: 4 in is 10.16 cm, so yarn is 0.016 of itself too little."""
    right = formulas.yarn_per_area(20 / 10, 28 / 10, 21.6) * 2.54
    wrong = formulas.yarn_per_area(20 / 4, 28 / 4, 21.6)
    assert right / wrong - 1 == printed("0.016")


@given(stitch=st.floats(1, 20), row=st.floats(1, 30), state=st.sampled_from(list(stitches.STATES)))
def test_both_gauges_are_the_middle_of_the_two_alone(stitch: float, row: float, state: str) -> None:
    """Exact: the root of the product, for a constant of both that is the product of the two."""
    constants = stitches.STATES[state]
    courses, wales = constants.courses.value, constants.wales.value
    both = formulas.yarn_per_area(stitch, row, courses * wales)
    alone = (courses * stitch) * (wales * row)  # written out here, as the rule has it
    assert both**2 == pytest.approx(alone, rel=1e-12)
    loop = formulas.loop_length(stitch, row, courses * wales)
    assert formulas.loops_per_area(courses, wales, loop) == pytest.approx(stitch * row, rel=1e-12)
    assert stitch * row * loop == pytest.approx(both, rel=1e-12)


# --- rules of hand knitters ---


def test_the_rule_of_six_is_a_loop_constant_with_an_allowance() -> None:
    """Practice: 48 by 8 in at 5 to the inch, over 6, is 320 yd; hand-worked at 5.3 and 5.5."""
    area = 48 * 8
    by = formulas.yarn_per_area_by_one_gauge
    assert area * by(5, 6) / 36 == printed("320")
    assert area * by(5, 5.3) / 36 == printed("282.666666666667")
    assert area * by(5, stitches.FULL.courses.value) / 36 == printed("293.333333333333")
    # so the rule allows 9 to 13 in 100 over knitting that has relaxed
    assert 6 / stitches.FULL.courses.value - 1 == printed("0.091")
    assert 6 / stitches.WET.courses.value - 1 == printed("0.132")


def test_a_stitch_around_the_needle() -> None:
    """Practice: 1.5 pi needle diameters, 4.5 mm; hand-worked: Munden at 20 to 4 in, 20.828 mm."""
    around = 1.5 * 4.0 * formulas.circle_area(1.0) * 4.5  # pi is four circles of diameter 1
    assert around == printed("21.2057504117311")
    assert around == pytest.approx(20.828, rel=0.02)


# --- a machine's take-up ---


@pytest.mark.parametrize(
    ("courses", "across", "yards", "take_up", "grist", "pounds"),
    [
        (28, 48, 200, 1.75, 20 * 560, "42"),  # Davis 14: 20s worsted
        (18, 32, 10, 2, 10 * 560, "2.05714285714286"),  # Davis 11, exact: 10s worsted
        (24, 60, 320, 1.75, 40 * 840, "24"),  # Davis 16: 40s spun silk
        (24, 60, 320, 2.25, 16 * 840, "77.1428571428571"),  # Davis 16, exact: 16s cotton count
        (18, 56, 72, 2.5, 9 * 840, "24"),  # Davis 17, backwards: 9s cotton count
    ],
)
def test_a_machines_yarn(
    courses: float, across: float, yards: float, take_up: float, grist: float, pounds: str
) -> None:
    assert formulas.knitting_mass(courses, across, yards, take_up, grist) == printed(pounds)


def test_the_printed_2_06_pounds_rounds_on_the_way() -> None:
    """Davis 11: the book doubles 1.03, which is 1.02857 rounded, and prints 2.06."""
    half = formulas.knitting_mass(18, 32, 10, 1, 10 * 560)
    assert half == printed("1.03")
    whole = formulas.knitting_mass(18, 32, 10, 2, 10 * 560)
    assert whole == pytest.approx(2 * 1.02857, abs=0.00001)


# --- stitches against plain knitting ---


@pytest.mark.parametrize(
    ("name", "end", "ratio"),
    [
        ("garter", "high", 3.0347 / 2.0764),  # Magazine
        ("single", "high", 3.0347 / 1.8914),  # Magazine
        ("garter", "low", 1.3493),  # Unravelled
        ("single", "low", 1.2650),  # Unravelled
    ],
)
def test_two_published_swatches_are_the_ends_of_a_range(name: str, end: str, ratio: float) -> None:
    assert getattr(stitches.STITCHES[name], end) == pytest.approx(ratio, abs=0.00005)


@pytest.mark.parametrize(
    ("name", "ratio"),
    [
        ("half", 3.0347 / 2.2299),  # Magazine
        ("double", 1.0653),  # Unravelled
    ],
)
def test_one_published_swatch_lies_in_the_middle_of_a_range(name: str, ratio: float) -> None:
    stitch = stitches.STITCHES[name]
    assert stitch.middle == pytest.approx(ratio, abs=0.00005)
    assert stitch.low < ratio < stitch.high


def test_one_third_more_is_one_figure_of_many() -> None:
    """Practice: a third more; the published swatches run from 1.07 to 1.60."""
    ratios = [
        stitches.DOUBLE_CROCHET_UNRAVELLED,
        stitches.GARTER_UNRAVELLED,
        stitches.SINGLE_CROCHET_UNRAVELLED,
        *(
            test.factor(stitches.PLAIN_TEST)
            for test in (
                stitches.GARTER_TEST, stitches.SINGLE_CROCHET_TEST, stitches.HALF_DOUBLE_TEST,
            )
        ),
    ]  # fmt: skip
    assert min(ratios) == printed("1.07")
    assert max(ratios) == printed("1.60")
    assert min(ratios) < 4 / 3 < max(ratios)


@pytest.mark.parametrize("name", list(stitches.STITCHES))
def test_every_stitch_says_where_it_is_from(name: str) -> None:
    stitch = stitches.STITCHES[name]
    assert stitch.low <= stitch.high
    assert any(word in stitch.origin for word in ("published", "common practice", "loop constants"))

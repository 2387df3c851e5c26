"""Categories of yarn by gauge: the Council's chart, and what wraps may and may not be asked."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yarnsheets.published import yarn_weights
from yarnsheets.published.yarn_weights import (
    SPINNERS_BANDS,
    YARN_WEIGHTS,
    Band,
    categories,
    crochet_categories,
    grist_from_wraps,
    most_wraps_per_inch,
)
from yarnsheets.units import convert

# --- the chart, written down a second time ---

# Craft Yarn Council, Standard Yarn Weight System, copies of 2018-2019: stitches of stockinette and
# single crochets to 4 inches, needle and hook in mm. Lace is crocheted in another stitch.
CHART = """
0  lace         33-40  -      1.5-2.25   1.4-2.25
1  super fine   27-32  21-32  2.25-3.25  2.25-3.5
2  fine         23-26  16-20  3.25-3.75  3.5-4.5
3  light        21-24  12-17  3.75-4.5   4.5-5.5
4  medium       16-20  11-14  4.5-5.5    5.5-6.5
5  bulky        12-15  8-11   5.5-8      6.5-9
6  super bulky  7-11   6-9    8-12.75    9-16
7  jumbo        0-6    0-5    12.75-inf  16-inf
"""


def band(text: str) -> Band | None:
    return None if text == "-" else Band(*map(float, text.split("-")))


def test_the_council_s_chart() -> None:
    rows = [[cell for cell in row.split("  ") if cell] for row in CHART.strip().splitlines()]
    assert len(rows) == len(YARN_WEIGHTS)
    for (number, name, *bands), each in zip(rows, YARN_WEIGHTS, strict=True):
        assert (each.number, each.name) == (int(number), name.strip())
        held = [each.knit, each.crochet, each.needle_mm, each.hook_mm]
        assert held == [band(text.strip()) for text in bands]


# --- knitting ---


@pytest.mark.parametrize(
    ("stitches", "numbers"),
    [
        (22, {3}), (20, {4}), (33, {0}), (11, {6}), (12, {5}), (6, {7}), (7, {6}),
        (15, {5}), (16, {4}), (21, {3}), (25, {2}), (26, {2}), (27, {1}), (32, {1}), (40, {0}),
        (1, {7}),
        (23, {2, 3}), (24, {2, 3}),  # the only stitches in two bands
        (41, set()), (100, set()),  # finer than the chart goes
    ],
)  # fmt: skip
def test_categories(stitches: float, numbers: set[int]) -> None:
    assert categories(stitches) == numbers


@pytest.mark.parametrize(
    ("stitches", "whole"),
    [(20.5, 21), (20.49, 20), (22.5, 23), (24.5, 25), (24.4, 24), (26.5, 27), (11.5, 12), (6.5, 7)],
)
def test_a_part_of_a_stitch_is_rounded_first_and_a_half_upwards(
    stitches: float, whole: int
) -> None:
    """The bands have holes, as between 20 and 21: without rounding there would be no category."""
    assert categories(stitches) == categories(whole)
    assert categories(stitches)


@given(st.floats(0.01, 40.49))
def test_every_gauge_the_chart_reaches_has_one_or_two_categories(stitches: float) -> None:
    found = sorted(categories(stitches))
    assert len(found) == 1 or found == [2, 3]


@given(st.floats(0.01, 40.49), st.floats(0.01, 40.49))
def test_more_stitches_are_never_a_heavier_category(one: float, other: float) -> None:
    fewer, more = sorted((one, other))
    assert max(categories(more)) <= max(categories(fewer))
    assert min(categories(more)) <= min(categories(fewer))


# --- crochet ---


@pytest.mark.parametrize(
    ("stitches", "numbers"),
    [
        (32, {1}), (21, {1}), (20, {2}), (18, {2}), (15, {3}), (10, {5}), (7, {6}), (5, {7}),
        (16, {2, 3}), (17, {2, 3}), (12, {3, 4}), (13, {3, 4}), (14, {3, 4}), (11, {4, 5}),
        (8, {5, 6}), (9, {5, 6}),
        (33, set()),  # lace is not counted in single crochets
        (17.5, {2}), (5.5, {6}),
    ],
)  # fmt: skip
def test_crochet_categories(stitches: float, numbers: set[int]) -> None:
    assert crochet_categories(stitches) == numbers


def test_the_same_count_is_another_yarn_in_crochet() -> None:
    assert categories(16) == {4}
    assert crochet_categories(16) == {2, 3}


def test_copies_that_differ_are_kept_apart() -> None:
    """Read: 6-9 and 5 or fewer; from memory: 7-9 and 6 or fewer; before category 7: 5-9."""
    chart = YARN_WEIGHTS[6], YARN_WEIGHTS[7]
    recalled = yarn_weights.SUPER_BULKY_RECALLED, yarn_weights.JUMBO_RECALLED
    assert [each.crochet for each in chart] == [Band(6, 9), Band(0, 5)]
    assert [each.crochet for each in recalled] == [Band(7, 9), Band(0, 6)]
    assert yarn_weights.SUPER_BULKY_BEFORE_JUMBO.knit == Band(6, 11)
    assert yarn_weights.SUPER_BULKY_BEFORE_JUMBO.crochet == Band(5, 9)
    assert crochet_categories(6) == {6}


@pytest.mark.parametrize("lookup", [categories, crochet_categories])
@pytest.mark.parametrize("stitches", [0, -3, math.nan, math.inf])
def test_no_gauge_no_category(lookup: object, stitches: float) -> None:
    assert callable(lookup)
    with pytest.raises(ValueError, match=r"Count the stitches in 4 inches .* number above 0"):
        lookup(stitches)


# --- the spinning magazine's chart ---

# Spin Off, Yarn Standards: wraps to the inch, yd/lb and ends to the inch in plain weave.
MAGAZINE = """
0  18-inf  2401-inf   15-inf
1  16-18   1901-2400  12-15
2  14-15   1201-1900  10-12
3  12-13   901-1200   8-10
4  10-11   601-900    6-8
5  8-9     401-600    4-6
6  0-7     0-400      0-4
"""


def test_the_magazine_s_chart() -> None:
    rows = [row.split() for row in MAGAZINE.strip().splitlines()]
    for (number, *bands), each in zip(rows, SPINNERS_BANDS, strict=True):
        assert each.number == int(number)
        held = [each.wraps_per_inch, each.grist, each.plain_weave_sett]
        assert held == [band(text) for text in bands]


def test_the_magazine_s_wraps_and_grist_are_no_part_of_the_council_s_chart() -> None:
    assert not {"wraps_per_inch", "grist"} & set(vars(YARN_WEIGHTS[0]))
    assert [each.number for each in SPINNERS_BANDS if 18 in each.wraps_per_inch] == [0, 1]
    assert 7 not in {each.number for each in SPINNERS_BANDS}


def test_the_magazine_s_grist_has_no_hole() -> None:
    for finer, coarser in itertools.pairwise(SPINNERS_BANDS):
        assert finer.grist.low == coarser.grist.high + 1


# --- grist from wraps alone ---


# Exact: wraps**2 / (pi / 4 * density), 1 g/cm3 being 1.30058251200301 lb to a yard one inch square.
def test_wraps_alone_leave_grist_wide_open() -> None:
    unit = 91.44 * 2.54**2 / 453.59237
    found = grist_from_wraps(12)
    for limit, grams in [
        (found.possible.low, 1.31),
        (found.usual.low, 0.40),
        (found.usual.high, 0.12),
        (found.possible.high, 0.08),
    ]:
        assert limit == pytest.approx(144 * 4 / math.pi / (grams * unit), rel=1e-14)
    assert found.usual.high / found.usual.low == pytest.approx(0.40 / 0.12)
    assert found.possible.high / found.possible.low == pytest.approx(1.31 / 0.08)


def test_the_magazine_s_yarns_are_usual_ones_but_for_one_edge() -> None:
    """15 wraps of 1900 yd/lb is a yarn of 0.116 g/cm3, just looser than the usual 0.12."""
    edges = [
        (wraps, grist)
        for each in SPINNERS_BANDS[1:6]
        for wraps, grist in [
            (each.wraps_per_inch.low, each.grist.low),
            (each.wraps_per_inch.high, each.grist.high),
        ]
    ]
    assert [edge for edge in edges if edge[1] not in grist_from_wraps(edge[0]).usual] == [
        (15, 1900)
    ]
    assert all(grist in grist_from_wraps(wraps).possible for wraps, grist in edges)


@given(st.floats(3, 70))
def test_usual_lies_within_possible(wraps: float) -> None:
    found = grist_from_wraps(wraps)
    assert found.possible.low < found.usual.low < found.usual.high < found.possible.high


@given(st.floats(3, 70))
def test_the_most_wraps_of_the_coarsest_possible_grist_are_those_wraps(wraps: float) -> None:
    assert most_wraps_per_inch(grist_from_wraps(wraps).possible.low) == pytest.approx(wraps)


@given(st.floats(100, 30000))
def test_no_printed_chart_or_rule_is_in_the_impossible_region(grist: float) -> None:
    """Peirce's 28 over the root of 840 is the densest of the rules, from memory."""
    assert 28 / 840**0.5 * grist**0.5 < most_wraps_per_inch(grist)


def test_a_pressed_count_is_found_out() -> None:
    """41 wraps of 1200 yd/lb: more than solid wool could make, exact 40.07."""
    assert most_wraps_per_inch(1200) < 41
    assert 1200 not in grist_from_wraps(41).possible
    assert 1200 in grist_from_wraps(40).possible
    assert 1200 in grist_from_wraps(13).usual


def test_metric_wraps_are_the_same_yarn() -> None:
    inch = grist_from_wraps(12)
    centimetre = grist_from_wraps(convert(12 / 2.54, "1/cm", "1/in"))
    assert centimetre.usual.low == pytest.approx(inch.usual.low)


@pytest.mark.parametrize("value", [0, -1, math.nan, math.inf])
def test_what_is_no_measurement_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match=r"wraps to the inch cannot be\. Count the wraps"):
        grist_from_wraps(value)
    with pytest.raises(ValueError, match=r"yards to the pound cannot be\. Measure the grist"):
        most_wraps_per_inch(value)

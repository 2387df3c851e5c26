"""Shapes row by row: the closed forms against worked examples and sums stitch by stitch."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yarnsheets.formulas import rows_done, share_made, similar_size, stitches_in_rows

POINT, EDGE, EVEN = (0, 1), (1, 0), (1, 1)
widths = st.tuples(st.floats(0, 100), st.floats(0.1, 100)).flatmap(st.permutations)


@pytest.mark.parametrize(
    ("used", "shape", "rows"),
    [
        # hand-worked: the root of one half, and of nine tenths
        (0.5, POINT, math.sqrt(0.5)),
        (0.9, POINT, math.sqrt(0.9)),
        # hand-worked: from the wide edge, 1 less the root of one half
        (0.5, EDGE, 1 - math.sqrt(0.5)),
        (0.5, EVEN, 0.5),
    ],
)
def test_rows_done_when_a_share_of_the_yarn_is_used(
    used: float, shape: tuple[float, float], rows: float
) -> None:
    assert rows_done(used, *shape) == pytest.approx(rows, rel=1e-15)
    assert share_made(rows, *shape) == pytest.approx(used, abs=5e-15)


def test_two_thirds_of_the_radius_are_four_ninths_of_the_yarn() -> None:
    # published: a knitter's own worked example of similar triangles of 2 to 3
    assert share_made(2 / 3, *POINT) == pytest.approx(4 / 9, rel=1e-15)


def test_the_last_tenth_of_a_growing_triangle_takes_nineteen_hundredths() -> None:
    # hand-worked: 1 - 0.9 squared
    assert 1 - share_made(0.9, *POINT) == pytest.approx(0.19, abs=1e-15)


@given(st.floats(0.001, 1), widths)
def test_rows_and_cloth_are_each_others_inverse(share: float, ends: list[float]) -> None:
    assert share_made(rows_done(share, *ends), *ends) == pytest.approx(share, rel=1e-9)


@given(st.floats(0, 1), st.floats(0, 1), widths)
def test_more_rows_are_never_less_cloth(a: float, b: float, ends: list[float]) -> None:
    fewer, more = sorted([a, b])
    assert share_made(fewer, *ends) <= share_made(more, *ends) + 1e-12


@given(st.integers(1, 60), st.integers(-3, 8), st.integers(1, 60))
def test_stitches_are_those_counted_row_by_row(first: int, increase: int, rows: int) -> None:
    counted = sum(first + increase * row for row in range(rows))
    assert stitches_in_rows(first, increase, rows) == counted


def test_ten_rows_from_7_to_25_are_160_stitches() -> None:
    # published: a knitter's own worked example counts the sum as rows squared plus five times
    # the rows, 150, with bases of 7 and 23: one row too few at the wide end
    assert stitches_in_rows(7, 2, 10) == 160
    assert stitches_in_rows(7, 2, 10) != 10**2 + 5 * 10


def test_a_hexagon_of_six_increases_is_half_done_after_fourteen_rounds_of_twenty() -> None:
    # hand-worked: 6 + 12 + ... + 84 = 630 of 1260 stitches
    assert stitches_in_rows(6, 6, 20) == 1260
    assert stitches_in_rows(6, 6, 14) == 630


@pytest.mark.parametrize(("first", "increase"), [(1, 2), (7, 2), (6, 6), (40, 0)])
def test_sums_stitch_by_stitch_come_to_the_closed_form(first: int, increase: int) -> None:
    """The more rows, the nearer: the closed form is for a slope, a piece has steps."""
    off = []
    for rows in (20, 200):
        made, whole = rows * 7 // 10, stitches_in_rows(first, increase, rows)
        counted = stitches_in_rows(first, increase, made) / whole
        last = first + increase * (rows - 1)
        off.append(abs(counted - share_made(0.7, first, last)))
    assert off[1] <= off[0]
    assert off[1] < 0.002


def test_a_third_of_the_yarn_makes_a_triangle_of_55_by_24() -> None:
    # hand-worked: 96 and 42 in over the root of 3
    assert similar_size(96, 300 / 900) == pytest.approx(55.4256258422041, abs=5e-14)
    assert similar_size(42, 300 / 900) == pytest.approx(24.2487113059643, abs=5e-14)
    # published: a knitter's own worked example gives the same area twice as wide as deep, 26 by 52
    depth = math.sqrt(96 * 42 / 2 / 3)
    assert (round(depth), round(2 * depth)) == (26, 52)

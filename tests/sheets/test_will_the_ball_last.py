"""Whether a ball lasts: the course of its weighings in Python, and on the page."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.reader import said, type_in
from yarnsheets.estimates import Course, course
from yarnsheets.sheets import WillTheBallLast

if TYPE_CHECKING:
    from collections.abc import Sequence

    from playwright.sync_api import Page

    from tests.browser import Server

DRAWS = 1_000_000
GRAM = 1 / 453.59237


def sheet_at(
    rows_at: Sequence[float] = (48, 68, 84),
    left: Sequence[float] = (2.95 / 16, 2.4 / 16, 1.85 / 16),
    **inputs: object,
) -> WillTheBallLast:
    """Give a sheet with these rows, and what was left at each."""
    return WillTheBallLast(weighings=list(zip(rows_at, left, strict=True)), **inputs)


# ---- the course ----------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "now",
    [
        Course(100.0, 4.0, math.inf, 0.5, 52.0, 0.0),
        Course(100.0, 8.0, math.inf, 0.2, 75.0, 0.0),
        Course(100.0, 3.0, math.inf, 0.9, 9.5, 0.0),
    ],
)
def test_the_chance_is_that_of_a_million_draws(now: Course) -> None:
    # numpy: the true rate is the one seen but for the wander so far; the rest wanders anew
    draw = np.random.default_rng(20261126)
    seen = now.wander * math.sqrt(now.made)
    rate = now.total + draw.normal(0, seen, DRAWS) / now.made
    rest = rate * (1 - now.made) + draw.normal(0, now.wander * math.sqrt(1 - now.made), DRAWS)
    assert now.chance() == pytest.approx(np.mean(rest <= now.left), abs=0.005)


def test_the_scales_steps_alone_are_those_of_a_million_draws() -> None:
    # numpy: both weighings are anywhere within their step
    now = Course(100.0, 0.0, math.inf, 0.5, 50.0, 4.0)
    draw = np.random.default_rng(20261126)
    start, left = 100 + draw.uniform(-2, 2, DRAWS), 50 + draw.uniform(-2, 2, DRAWS)
    spare = left - (start - left) * (1 - now.made) / now.made
    assert now.spare().uncertainty == pytest.approx(np.std(spare), rel=0.005)


def test_the_total_is_what_was_used_over_what_was_made() -> None:
    # hand-worked: 40 used for 0.25 of the piece is 160 for the whole
    found = course(100.0, [80.0, 60.0], [0.1, 0.25], 0.03, 0.0)
    assert found.total == pytest.approx(160, rel=1e-15)
    # hand-worked: stretches of 20 for 0.1 and 20 for 0.15, where 16 and 24 were due
    guessed = 4 * (0.03 * 160) ** 2
    seen = (20 - 16) ** 2 / 0.1 + (20 - 24) ** 2 / 0.15
    assert found.wander**2 == pytest.approx((guessed + seen) / 5, rel=1e-12)


@given(st.floats(20, 79), st.floats(0.1, 0.9), st.floats(0.001, 0.1), st.floats(0, 10))
def test_the_end_is_safe_to_reach_just_where_the_ball_is_safe_to_last(
    left: float, made: float, unevenness: float, step: float
) -> None:
    now = course(100.0, [left], [made], unevenness, step)
    assert now.is_safe(2.0, 1.0, 0.95) == (now.chance(2.0) >= 0.95)


@given(st.floats(20, 79), st.floats(20, 79), st.floats(0, 5))
def test_more_yarn_left_never_lowers_the_chance(a: float, b: float, reserve: float) -> None:
    less, more = sorted([a, b])
    chances = [course(100.0, [left], [0.4], 0.03, 1.0).chance(reserve) for left in (less, more)]
    assert chances[0] <= chances[1]


def test_the_range_narrows_as_the_work_goes_on() -> None:
    widths = [
        course(100.0, [100 - 80 * made], [made], 0.03, 0.5).still_to_use().expanded()
        for made in (0.2, 0.4, 0.6, 0.8, 0.95)
    ]
    assert widths == sorted(widths, reverse=True)


@pytest.mark.parametrize(
    ("left", "made"), [([80.0], [0.1, 0.2]), ([80.0, 85.0], [0.1, 0.2]), ([80.0, 70.0], [0.2, 0.1])]
)
def test_weighings_that_do_not_run_one_way_are_refused(
    left: list[float], made: list[float]
) -> None:
    with pytest.raises(ValueError, match=r"weight for each|must go on"):
        course(100.0, left, made, 0.03, 0.0)


# ---- the sheet -----------------------------------------------------------------------------------


def test_a_triangle_with_half_its_yarn_gone_stands_at_70_7_per_cent_of_its_rows() -> None:
    # hand-worked: the root of one half
    sheet = sheet_at(weight=200 * GRAM, left=[100 * GRAM], rows_at=[70.7107], rows_all=100)
    assert sheet.halfway == pytest.approx(math.sqrt(0.5), rel=1e-15)
    assert sheet.made == pytest.approx(0.5, abs=1e-6)
    assert any("70.7% of the rows" in line for line in sheet.arithmetic)


def test_yarn_enough_is_said_to_be_enough() -> None:
    even = {"shape": "even", "rows_all": 100, "rows_at": [50], "weight": 0.25}
    assert "almost surely enough" in sheet_at(**even, left=[0.18]).sentence.lower()
    short = sheet_at(**even, left=[0.1])
    assert short.may_go_on
    assert "start binding off after row" in short.sentence


@pytest.mark.parametrize(("left", "unevenness"), [(0.10, 0.03), (0.04, 0.1), (0.06, 0.1)])
def test_the_row_to_bind_off_after_is_reached_95_times_of_100(
    left: float, unevenness: float
) -> None:
    # numpy: a million pieces that go on from here to the row named, and to the one after it
    sheet = sheet_at(
        shape="even", rows_all=200, rows_at=[60], weight=0.2, left=[left], unevenness=unevenness
    )
    now = course(0.2, [left], [0.3], unevenness, sheet.scale_step)
    draw = np.random.default_rng(20261126)
    spread = now.wander / np.sqrt(draw.chisquare(now.dof, DRAWS) / now.dof)
    behind, ahead = draw.normal(0, 1, (2, DRAWS)) * spread
    start, end = draw.normal(0, sheet.scale_step / math.sqrt(12), (2, DRAWS))

    def reached(row: float) -> float:
        part = row / 200 - 0.3
        rate = (0.2 + start - left - end + behind * math.sqrt(0.3)) / 0.3
        use = rate * part + ahead * math.sqrt(part)
        return float(np.mean(use <= left + end - sheet.edge_weight))

    assert reached(sheet.stop_row) > 0.95 - 0.005
    assert reached(sheet.stop_row + 2) < 0.95 + 0.005


def test_at_the_last_row_what_is_left_is_said() -> None:
    sheet = sheet_at(rows_at=[120], left=[0.02])
    assert sheet.sentence.startswith("All 120 rows are done, with 0.32")
    assert "95% sure" not in sheet.sentence


def test_a_ball_used_up_is_told_and_not_refused() -> None:
    sheet = sheet_at(rows_at=[84], left=[0])
    assert sheet.sentence.startswith("The ball is used up at row 84 of 120.")
    # hand-worked: 3.5 oz for 0.7 ** 2 of the piece, and 60 in * 3.5 at 1100 yd/lb for the edge
    rest = 3.5 * 0.51 / 0.49 + 60 * 3.5 / 36 / 1100 * 16
    assert sheet.rest * 16 == pytest.approx(rest, rel=1e-12)
    assert f"{rest:.2f}\xa0oz" in sheet.sentence
    assert math.isnan(sheet.to_go_on)
    done = sheet_at(rows_at=[120], left=[0])
    assert "the ball is used up. The edge takes about" in done.sentence
    assert "find more yarn" in done.sentence


@pytest.mark.parametrize("shape", ["point", "centre"])
def test_a_weighing_too_early_is_met_with_what_to_do(shape: str) -> None:
    # hand-worked: a tenth of a triangle is made at the root of 0.1 of its rows, 37.9 of 120
    early = sheet_at(shape=shape, rows_at=[1], left=[0.2])
    assert "knit on to about row 38, a tenth of the piece" in early.sentence
    assert "oz" not in early.sentence
    assert sheet_at(shape=shape, rows_at=[37], left=[0.2]).warnings
    assert not sheet_at(shape=shape, rows_at=[38], left=[0.2]).warnings


def test_before_the_first_weighing_the_page_says_when_to_weigh() -> None:
    # hand-worked: 3.5 oz at 1100 yd/lb are 240.6 yd
    sheet = sheet_at(rows_at=[], left=[])
    assert sheet.sentence.startswith("Knit to about row 38 and weigh")
    assert "241\xa0yd" in sheet.sentence


@pytest.mark.parametrize(
    ("inputs", "word"),
    [
        ({"weight": 0.004, "rows_at": [], "left": []}, "The ball is too light"),
        ({"rows_at": [60], "left": [3.45 / 16]}, "too little for a scale"),
    ],
)
def test_what_the_scale_cannot_tell_is_said(inputs: dict[str, object], word: str) -> None:
    # hand-worked: 0.004 lb are 1.8 g, and 0.05 oz 1.4 g, on a scale with steps of a gram
    assert word in sheet_at(**inputs).sentence


@pytest.mark.parametrize(
    ("inputs", "edge"),
    [
        ({"shape": "edge"}, 0),
        ({"shape": "trapezoid", "first_width": 50, "last_width": 20}, 20),
        ({"shape": "trapezoid"}, 50),
        ({"shape": "point", "edge": 70}, 70),
        ({"shape": "even", "edge": 30, "last_width": 5}, 30),
    ],
)
def test_the_edge_is_that_of_the_last_row(inputs: dict[str, object], edge: float) -> None:
    # hand-worked: 3.5 times the edge, at 1100 yd/lb; a triangle from its wide edge ends in a point
    assert sheet_at(**inputs).edge_weight == pytest.approx(edge * 3.5 / 36 / 1100, rel=1e-12)


def test_a_piece_that_narrows_keeps_the_longer_edge_where_it_is_bound_off() -> None:
    # numpy: a million pieces that go on to the row named, and bind off the edge that is there
    sheet = sheet_at(
        shape="edge",
        rows_all=200,
        rows_at=[60],
        weight=0.22,
        left=[0.05],
        first_width=60,
        grist=400,
    )
    made = 0.3 * (2 - 0.3)
    now = course(0.22, [0.05], [made], 0.03, sheet.scale_step)
    draw = np.random.default_rng(20261128)
    spread = now.wander / np.sqrt(draw.chisquare(now.dof, DRAWS) / now.dof)
    behind, ahead = draw.normal(0, 1, (2, DRAWS)) * spread
    start, end = draw.normal(0, sheet.scale_step / math.sqrt(12), (2, DRAWS))

    def reached(row: float) -> float:
        done = row / 200
        part = done * (2 - done) - made
        rate = (0.17 + start - end + behind * math.sqrt(made)) / made
        use = rate * part + ahead * math.sqrt(part)
        edge = 60 * (1 - done) * 3.5 / 36 / 400
        return float(np.mean(use <= 0.05 + end - edge))

    assert sheet.may_go_on
    assert 60 < sheet.stop_row < 200
    assert reached(sheet.stop_row) > 0.95 - 0.005
    assert reached(sheet.stop_row + 2) < 0.95 + 0.005


@pytest.mark.parametrize(
    ("inputs", "said"),
    [
        ({"rows_at": [48, 40, 84]}, "must grow"),
        ({"rows_all": 80}, "past the last one"),
        ({"left": [0.18, 0.15, 0.16]}, "grow lighter"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    inputs: dict[str, object], said: str
) -> None:
    sheet = sheet_at(**inputs)
    assert said in sheet.sentence
    assert not sheet.is_going


# ---- on the page ---------------------------------------------------------------------------------


def test_the_page_says_what_python_says_and_the_band_narrows(page: Page, server: Server) -> None:
    open_sheet(page, server, "will-the-ball-last")
    assert said(page) == WillTheBallLast().sentence
    assert "70.7%" in page.locator("figure[data-name=cloth_against_rows] figcaption").inner_text()

    def band() -> float:
        return float(
            page.evaluate(
                """async () => {
                    const view = document.querySelector(
                        "figure[data-name=track_of_the_ball] .ys-picture").view;
                    await view.runAsync();
                    const end = view.data("ahead").at(-1);
                    return end.most - end.least;
                }"""
            )
        )

    wide = band()
    type_in(page, "weighings", "48 2.95\n68 2.4\n84, 1.85\n100: 1.15 oz")
    python = sheet_at(rows_at=[48, 68, 84, 100], left=[2.95 / 16, 2.4 / 16, 1.85 / 16, 1.15 / 16])
    assert said(page) == python.sentence
    assert band() < wide


def test_the_page_follows_the_grist_at_once_and_explains_half_a_pair(
    page: Page, server: Server
) -> None:
    open_sheet(page, server, "will-the-ball-last")
    page.context.set_offline(True)
    type_in(page, "grist", "2200")
    left = WillTheBallLast(grist=2200).now_yards
    assert f"about {left:.0f}\N{NO-BREAK SPACE}yd" in said(page)
    page.context.set_offline(False)
    before = said(page)
    type_in(page, "weighings", "48 2.95\n68")
    error = page.locator("[data-name=weighings] .ys-error")
    assert "Line 2: “68” is not two numbers, row and weight left" in error.inner_text()
    assert page.locator("[data-name=weighings] textarea").input_value() == "48 2.95\n68"
    assert said(page) == before

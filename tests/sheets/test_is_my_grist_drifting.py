"""The worksheet on drift: its control chart, drift and pairs in Python, and on the page.

NIST  published: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2, Individuals control
      charts, the flow rates of ten batches (from memory: by hand they give the printed mean,
      50.81, and mean moving range, 1.8778).
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from scipy import stats

from tests.browser import open_sheet
from tests.reader import rows, said, type_in
from yarnsheets.estimates import control_chart, drift
from yarnsheets.sheets.is_my_grist_drifting.bobbins import finest_with_thickest
from yarnsheets.sheets.is_my_grist_drifting.sheet import IsMyGristDrifting

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from playwright.sync_api import Page

    from tests.browser import Server

FLOW_RATES = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]
STEADY = [10.1, 10.3, 9.8, 10.2, 9.9, 10.4, 10.0, 10.2] * 3
THICKER = [10.5, 10.7, 10.3, 10.4, 10.1, 10.2, 9.9, 10.0, 9.7, 9.8, 9.5, 9.4]
# Four bobbins of two cuts. By hand their harmonic means are 12, 11.25, 10 and 9 in, since
# 2 / (1/10 + 1/15) = 12 and 2 / (1/7.5 + 1/11.25) = 9.
FOUR_BOBBINS = [10, 15, 11.25, 11.25, 10, 10, 7.5, 11.25]


def sheet_of(cuts: Sequence[float], *bobbins: int, **inputs: Any) -> IsMyGristDrifting:
    return IsMyGristDrifting(cuts=list(cuts), bobbins=list(bobbins or [len(cuts)]), **inputs)


# ---- the control chart ---------------------------------------------------------------------------


def test_the_published_example_gives_its_limits() -> None:
    # NIST: centre 50.81, limits 55.8041 and 45.8159, none outside; here each rate is ten times
    # its grist of a tenth as long a cut, so half the last printed digit is 0.0005
    sheet = sheet_of([rate / 10 for rate in FLOW_RATES], 5, 5)
    assert sheet.centre == pytest.approx(508.1, abs=0.05)
    assert sheet.limit_high == pytest.approx(558.041, abs=0.0005)
    assert sheet.limit_low == pytest.approx(458.159, abs=0.0005)
    assert sheet.mean_range == pytest.approx(0.18778, abs=0.000005)
    assert sheet.has_no_signals
    assert not any(row["flagged"] for row in sheet.readings)


def test_the_limits_by_hand() -> None:
    # hand-worked: the mean is 60.6 / 6; moving ranges 0.2 0.3 0.4 0.3 0.2, mean 1.4 / 5 = 0.28;
    # 2.66 * 0.28 = 0.7448, where 2.66 is right to 0.005
    sheet = sheet_of([10, 10.2, 9.9, 10.3, 10, 10.2])
    assert sheet.mean_cut == pytest.approx(10.1, rel=1e-12)
    assert sheet.mean_range == pytest.approx(0.28, rel=1e-9)
    assert sheet.reach == pytest.approx(0.7448, abs=0.005 * 0.28)
    assert sheet.limit_low == pytest.approx(100 * (10.1 - 0.7448), abs=0.14)
    assert sheet.limit_high == pytest.approx(100 * (10.1 + 0.7448), abs=0.14)


@pytest.mark.parametrize(
    ("cuts", "words", "flagged"),
    [
        # one wild cut: outside by hand (2.66 * 0.75 = 2 from the mean of 10.45), and a jump
        # either side of it (3.267 * 0.75 = 2.5, and the moving ranges there are 4.4 and 4.2)
        (
            [10, 10.2, 10, 10.2, 10, 10.2, 10, 14.4, 10.2, 10, 10.2, 10, 10.2, 10, 10.2],
            "cut 8 is finer than the limits",
            {7, 8, 9},
        ),
        # eight above the mean, then eight below it
        (
            [10.9, 10.3] * 4 + [9.7, 10.1] * 4,
            "cuts 1 to 8 are finer than the mean and cuts 9 to 16 are thicker than the mean",
            set(range(1, 17)),
        ),
        # six rise, after ups and downs
        (
            [10.1, 9.9, 10.1, 9.7, 9.8, 9.9, 10, 10.1, 10.2, 10, 10.2, 9.9],
            "cuts 4 to 9 get finer one after the other",
            {4, 5, 6, 7, 8, 9},
        ),
        (
            [10, 10.2, 9.9, 10.4, 10.3, 10.2, 10.1, 10, 9.9, 10.3, 9.9, 10.2],
            "cuts 4 to 9 get thicker one after the other",
            {4, 5, 6, 7, 8, 9},
        ),
    ],
)
def test_what_a_steady_yarn_seldom_does_is_flagged(
    cuts: list[float], words: str, flagged: set[int]
) -> None:
    # rules: outside and jump, ISO 7870-2; run of eight, Western Electric 1956; six, Nelson 1984
    sheet = sheet_of(cuts)
    assert words in sheet.signals
    assert {row["place"] for row in sheet.readings if row["flagged"]} == flagged


def test_more_flags_than_one_can_listen_to_are_counted() -> None:
    cuts = [10, 10.2] * 5 + [14.4] + [10, 10.2] * 5 + [14.4] + [10, 10.2] * 5
    # by hand nine: two outside, a jump to and from each, and three runs of ten below their mean
    assert sheet_of(cuts).signals.endswith("and 6 more")


# ---- the drift -----------------------------------------------------------------------------------


@pytest.mark.parametrize("cuts", [THICKER, STEADY])
def test_the_drift_and_its_range_are_a_least_squares_slope(cuts: list[float]) -> None:
    # scipy's linregress, with Student's t for two degrees of freedom fewer than the cuts
    sheet = sheet_of(cuts)
    line = stats.linregress(range(len(cuts)), cuts)
    mean = sum(cuts) / len(cuts)
    t = stats.t.ppf(0.975, len(cuts) - 2)
    low, high = ((line.slope + sign * t * line.stderr) / mean for sign in (-1, 1))
    assert sheet.drift == pytest.approx(abs(line.slope) / mean, rel=1e-9)
    assert (sheet.finer_limit, -sheet.thicker_limit) == pytest.approx((high, low), rel=1e-9)
    ends = sorted([abs(low), abs(high)])
    assert [sheet.drift_low, sheet.drift_high] == pytest.approx(ends, rel=1e-9)
    assert sheet.is_drifting == (line.pvalue < 0.05)
    assert sheet.student == pytest.approx(t, rel=1e-9)


def test_how_often_a_steady_yarn_is_said_to_drift_or_flagged() -> None:
    # simulation: 24 independent cuts of a yarn that spreads by 5 %. One in 20 drifts by the meaning
    # of the range; that one in four has a flag is what the worksheet's text says. The share of
    # 2000 yarns is known to 0.005 and 0.010, one standard deviation.
    chance = np.random.default_rng(2024)
    yarns = 10 / (1 + 0.05 * chance.normal(size=(2000, 24)))
    ranges = [drift(range(24), yarn).interval() for yarn in yarns]
    drifting = sum(low > 0 or high < 0 for low, high in ranges) / 2000
    flagged = sum(bool(control_chart(yarn).signals) for yarn in yarns) / 2000
    assert drifting == pytest.approx(1 / 20, abs=0.015)
    assert flagged == pytest.approx(1 / 4, abs=0.03)


def test_the_sentence_says_which_way_it_drifts() -> None:
    assert "gets thicker" in sheet_of(THICKER).sentence
    assert "gets finer" in sheet_of(THICKER[::-1]).sentence
    assert sheet_of(STEADY).sentence.startswith("No drift shows in your 24 cuts. Now it is")


def test_the_way_it_drifts_is_the_same_in_a_unit_of_mass_per_length() -> None:
    assert "gets thicker" in sheet_of(THICKER, grist_unit="tex").sentence


def test_the_grist_now_is_the_harmonic_mean_of_the_latest_cuts() -> None:
    # scipy: harmonic mean of the last five, a factor either way by Student's t on mass per length
    sheet = sheet_of(THICKER)
    last = THICKER[-5:]
    inverse = [1 / cut for cut in last]
    exponent = stats.t.ppf(0.975, 4) * stats.sem(inverse) / (sum(inverse) / 5)
    assert sheet.now == pytest.approx(100 * stats.hmean(last), rel=1e-12)
    assert sheet.now_low == pytest.approx(sheet.now / math.exp(exponent), rel=1e-9)
    assert sheet.now_high == pytest.approx(sheet.now * math.exp(exponent), rel=1e-9)


# ---- the bobbins ---------------------------------------------------------------------------------


def test_four_bobbins_by_hand() -> None:
    # hand-worked, with no take-up: 1 / (1/1200 + 1/900) = 3600/7, 1 / (1/1125 + 1/1000) = 9000/17;
    # in the order spun 1 / (1/1200 + 1/1125) = 18000/31 and 1 / (1/1000 + 1/900) = 9000/19
    sheet = sheet_of(FOUR_BOBBINS, 2, 2, 2, 2, take_up=1)
    assert [row["found"] for row in sheet.means] == pytest.approx([1200, 1125, 1000, 900])
    assert {row["pair"]: row["found"] for row in sheet.plied} == {
        "by grist: 1 with 4": pytest.approx(3600 / 7),
        "by grist: 2 with 3": pytest.approx(9000 / 17),
        "as spun: 1 with 2": pytest.approx(18000 / 31),
        "as spun: 3 with 4": pytest.approx(9000 / 19),
    }
    assert (sheet.pairs_low, sheet.pairs_high) == pytest.approx((3600 / 7, 9000 / 17))
    assert (sheet.order_low, sheet.order_high) == pytest.approx((9000 / 19, 18000 / 31))
    assert (
        "Ply bobbin 1 with 4 and 2 with 3, for 514 to 529\N{NO-BREAK SPACE}yd/lb." in sheet.sentence
    )
    [caption] = [c["caption"] for c in sheet.describe()["charts"] if c["name"] == "plied_yarns"]
    assert "The order spun would give 474 to 581" in " ".join(sheet.said(caption))


def test_take_up_makes_the_plied_yarn_as_much_heavier() -> None:
    # by the definition of take-up: each single's length in the yarn is that many times as long
    bare, taken = (sheet_of(FOUR_BOBBINS, 2, 2, 2, 2, take_up=t) for t in (1, 1.1))
    assert taken.pairs_low == pytest.approx(bare.pairs_low / 1.1, rel=1e-12)


def ways_to_pair(bobbins: list[float]) -> Iterator[list[tuple[float, float]]]:
    if not bobbins:
        yield []
    for at in range(1, len(bobbins)):
        for rest in ways_to_pair(bobbins[1:at] + bobbins[at + 1 :]):
            yield [(bobbins[0], bobbins[at]), *rest]


def test_no_other_pairing_is_more_alike() -> None:
    # all 15 ways to pair six bobbins, by trial
    grists = [1040.0, 910.0, 1210.0, 980.0, 1105.0, 1000.0]

    def spread(pairs: list[tuple[float, float]]) -> float:
        plied = [1 / (1 / one + 1 / other) for one, other in pairs]
        return max(plied) - min(plied)

    chosen = [(grists[a - 1], grists[b - 1]) for a, b in finest_with_thickest(grists)]
    ways = list(ways_to_pair(grists))
    assert len(ways) == 15
    assert spread(chosen) == min(spread(way) for way in ways)


def test_the_range_of_a_bobbin_is_students_t_and_needs_three_cuts() -> None:
    # scipy, as for the grist now; the second bobbin has two cuts, which is no range to speak of
    sheet = sheet_of([10.2, 9.7, 10.1, 9.9, 10, 10.4], 4, 2)
    inverse = [1 / cut for cut in (10.2, 9.7, 10.1, 9.9)]
    exponent = stats.t.ppf(0.975, 3) * stats.sem(inverse) / (sum(inverse) / 4)
    mean = sheet.means[0]["found"]
    [row] = sheet.ranges
    assert row["bobbin"] == 1
    assert row["low"] == pytest.approx(mean / math.exp(exponent), rel=1e-9)
    assert row["high"] == pytest.approx(mean * math.exp(exponent), rel=1e-9)


def test_pairs_and_cuts_that_are_alike_have_no_range() -> None:
    sheet = sheet_of([10.2, 9.8, 10.1, 10, 10, 10, 10, 10], 2, 2, 2, 2)
    assert sheet.now_low == sheet.now_high
    assert "Now it is about 1,000" in sheet.sentence
    assert ", for about 4" in sheet.sentence
    assert sheet.is_paired_alike


def test_take_up_is_asked_where_there_are_bobbins_to_ply() -> None:
    assert sheet_of(STEADY, 24).unused() == ["take_up"]
    assert sheet_of(STEADY, 12, 12).unused() == []
    one, other = (sheet_of(STEADY, 24, take_up=t) for t in (1, 1.1))
    assert (one.sentence, one.arithmetic) == (other.sentence, other.arithmetic)


def test_how_far_off_target_each_bobbin_is() -> None:
    # hand-worked: 1200, 1125, 1000 and 900 against 1000
    sheet = sheet_of(FOUR_BOBBINS, 2, 2, 2, 2, target=1000, tolerance=0.11)
    assert sheet.off_target == (
        "bobbin 1 is 20.0% finer, bobbin 2 is 12.5% finer, bobbin 3 is on it and bobbin 4 is 10.0%"
        " thicker; bobbin 1 and bobbin 2 are too far off"
    )


def test_a_bobbin_written_as_just_within_is_within() -> None:
    # hand-worked: cuts of 10.504 are 5.04 % finer than 1000, written as 5.0 %
    assert sheet_of([10.5, 10.508] * 4, 8).off_target == "bobbin 1 is 5.0% finer; all near enough"
    assert "too far off" in sheet_of([10.5, 10.53] * 4, 8).off_target


def test_the_cut_to_spin_to_is_the_target_over_the_factor() -> None:
    sheet = sheet_of(STEADY, target=1000, balance_factor=80, tolerance=0.1)  # 1000 / 80, by hand
    cuts = (sheet.target_cut, sheet.cut_low, sheet.cut_high)
    assert cuts == pytest.approx((12.5, 11.25, 13.75), rel=1e-12)


@pytest.mark.parametrize(
    ("bobbins", "words"),
    [
        ([24], None),
        ([12, 12], "Your two bobbins ply to about"),
        ([8, 8, 8], "with itself"),
    ],
)
def test_few_bobbins(bobbins: list[int], words: str | None) -> None:
    sheet = sheet_of([*STEADY[:-1], 9], *bobbins)
    assert sheet.has_pairs == (words is not None)
    assert (words or "Now it is") in sheet.sentence
    assert ("ply" in sheet.sentence.lower()) == (words is not None)


# ---- what is wrong -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("cuts", "bobbins", "words"),
    [
        ([], [], "0 cuts cannot tell"),
        ([10], [1], "1 cut cannot tell"),
        (STEADY[:5], [5], "Type at least 6"),
        (STEADY, [8, 8, 7], "You typed 24 cuts, but the bobbins have 23 in all"),
        (STEADY, [], "the bobbins have 0 in all"),
        (STEADY, [12.5, 11.5], "whole number"),
        ([*STEADY[:6], 25.6], [7], "looks like centimetres"),
        ([5e-324, *STEADY[:6]], [7], "cannot be"),
        ([10] * 8, [8], "seldom so even"),
        ([7.5, 13.5] * 6, [12], "differ so much from one to the next"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    cuts: list[float], bobbins: list[float], words: str
) -> None:
    sheet = IsMyGristDrifting(cuts=cuts, bobbins=bobbins)
    assert words in sheet.sentence
    assert sheet.warnings
    assert not sheet.has_answer
    assert not sheet.readings


def test_an_answer_comes_back_when_the_fault_is_put_right() -> None:
    sheet = sheet_of(STEADY, 5)
    assert sheet.warnings
    sheet.bobbins = [24]
    assert not sheet.warnings
    assert sheet.has_answer


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "is-my-grist-drifting")


def type_lines(page: Page, name: str, lines: Sequence[float]) -> None:
    type_in(page, name, "\n".join(str(line) for line in lines))


def test_a_wild_cut_is_drawn_as_a_diamond(sheet: Page) -> None:
    type_lines(sheet, "cuts", [*STEADY[:12], 14, *STEADY[13:]])
    assert "though the chart marks some" in said(sheet)
    python = sheet_of([*STEADY[:12], 14, *STEADY[13:]])
    assert "cut 13 is finer than the limits" in python.signals
    flagged = sum(row["flagged"] for row in python.readings)
    assert 0 < flagged < 24
    rows(sheet, "cuts_in_order", "place")  # waits until it is drawn
    marks = sheet.locator("figure[data-name=cuts_in_order] .mark-symbol")
    dots, diamonds = (
        [path.get_attribute("d") or "" for path in mark.locator("path").all()]
        for mark in marks.all()
    )
    assert (len(dots), len(diamonds)) == (24 - flagged, flagged)
    assert all("A" in path for path in dots)  # arcs
    assert not any("A" in path for path in diamonds)


def test_the_lines_run_along_all_the_cuts_however_many_there_are(sheet: Page) -> None:
    for cuts in (THICKER, STEADY, STEADY[:7]):
        type_lines(sheet, "cuts", cuts)
        type_lines(sheet, "bobbins", [len(cuts)])
        python = sheet_of(cuts)
        lines = [t for t in rows(sheet, "cuts_in_order", "grist") if len(t) == 2]
        drawn = {round(line[0]["grist"], 6): [row["place"] for row in line] for line in lines}
        levels = (python.centre, python.limit_low, python.limit_high, python.target)
        assert set(drawn) == {round(level, 6) for level in levels}
        for places in drawn.values():
            assert places == pytest.approx([0.5, 0.5 + 1.2 * len(cuts)], rel=1e-12)

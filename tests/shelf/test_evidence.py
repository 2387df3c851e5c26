"""The yards of one skein by its best evidence.

worksheets   a skein's yards and range are those of the worksheet on that measurement, to the digit.
hand-worked  by the definitions, with GUM's rules of ranges (JCGM 100:2008, 4.3.7, F.2.2.1).
GNU Units    metres to yards, as in tests/test_units.py: 1 yd is 0.9144 m.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.sheets import (
    HowSureIsTheGrist,
    WhatDoesAWeighedSkeinSay,
    WhatDoWrapsTellOfGrist,
)
from yarnsheets.shelf.evidence import Doubts, Reckoned, Skein, lacking, reckoned

DOUBTS = Doubts()
CUTS = [9.6, 10.1, 10.4, 9.8, 10.6]
Z = stats.norm.ppf(0.975)


def found(skein: Skein, doubts: Doubts = DOUBTS) -> Reckoned:
    result = reckoned(skein, doubts)
    assert result is not None
    return result


def ends(result: Reckoned) -> list[float]:
    return [result.yards, result.low, result.high]


# ---- each kind of evidence -----------------------------------------------------------------------


def test_a_known_length_is_itself() -> None:
    # hand-worked: 2 % either way, 95 % sure
    result = found(Skein(length=200))
    assert result.kind == "length"
    assert ends(result) == pytest.approx([200, 200 * math.exp(-0.02), 200 * math.exp(0.02)])


def test_a_counter_is_put_right() -> None:
    result = found(Skein(counter=200), replace(DOUBTS, counter_factor=1.05, counter_range=0.03))
    assert ends(result) == pytest.approx([210, 210 * math.exp(-0.03), 210 * math.exp(0.03)])


@pytest.mark.parametrize("around", [54.0, 72.0])
def test_turns_say_what_their_worksheet_says(around: float) -> None:
    sheet = WhatDoesAWeighedSkeinSay(
        turns=120, circumference=around, miscount=1, circumference_error=0.125
    )
    result = found(Skein(turns=120, around=around))
    assert ends(result) == pytest.approx([sheet.yards, sheet.yards_low, sheet.yards_high])
    # Woodhouse and Kilgour, The Jute Industry: 120 turns of 2 1/2 yd are 300 yd
    assert found(Skein(turns=120, around=90)).yards == 300


@pytest.mark.parametrize("cuts", [CUTS, CUTS[:2], CUTS[:1]], ids=["five", "two", "one"])
def test_cuts_say_what_their_worksheet_says(cuts: list[float]) -> None:
    step = DOUBTS.scale_step
    sheet = HowSureIsTheGrist(cuts=cuts, weight=0.2, scale_step=step, usual_spread=0.1)
    result = found(Skein(cuts=cuts, weight=0.2))
    assert result.kind == "cuts"
    assert ends(result) == pytest.approx([sheet.yards, sheet.yards_low, sheet.yards_high])


def test_wraps_say_what_their_worksheet_says() -> None:
    sheet = WhatDoWrapsTellOfGrist(wraps=14, covered=1)
    result = found(Skein(wraps=14, weight=0.25), replace(DOUBTS, scale_step=0.0))
    assert result.low == pytest.approx(sheet.usual_low * 0.25)
    assert result.high == pytest.approx(sheet.usual_high * 0.25)
    assert result.yards == pytest.approx(math.sqrt(result.low * result.high))
    # hand-worked: 0.40 / 0.12 is 3.33, so the high end is more than three times the low one
    assert result.high / result.low == pytest.approx(10 / 3)


def test_a_sample_is_a_grist() -> None:
    # hand-worked: 10 yd of 1/100 lb is 1,000 yd/lb; doubts squared and added, and 1.96 of the root
    doubts = replace(DOUBTS, scale_step=0.0002)
    result = found(Skein(sample_length=10, sample_weight=0.01, weight=0.25), doubts)
    parts = [0.0002 / 0.01 / 12**0.5, 0.005 / 3**0.5, 0.1, 0.0002 / 0.25 / 12**0.5]
    half = Z * math.hypot(*parts)
    assert ends(result) == pytest.approx([250, 250 * math.exp(-half), 250 * math.exp(half)])


# ---- the best of them ----------------------------------------------------------------------------


def test_the_narrowest_range_counts() -> None:
    full = Skein(weight=0.25, wraps=18, cuts=CUTS, turns=170, length=250)
    assert found(full).kind == "turns"  # a turn and 1/8 in of 54: under 1 %
    assert found(replace(full, turns=math.nan)).kind == "length"  # 2 %
    assert found(replace(full, turns=math.nan, length=math.nan)).kind == "cuts"
    assert found(Skein(weight=0.25, wraps=18, cuts=[9.6, 14.9])).kind == "wraps"  # t of two is 12.7
    rough = replace(DOUBTS, around_error=3)
    assert found(full, rough).kind == "length"


def test_evidence_that_disagrees_is_named() -> None:
    assert found(Skein(length=200, turns=134)).disputed == ""  # 134 x 1.5 yd
    assert found(Skein(length=200, turns=100)).disputed == "length"
    assert found(Skein(length=200, counter=260)).disputed == "counter"


grams = st.floats(5, 500)


@given(grams, st.floats(4, 60), st.lists(st.floats(4, 20), max_size=6), st.floats(0.5, 3))
def test_no_range_narrows_as_a_doubt_grows(
    weight: float, wraps: float, cuts: list[float], times: float
) -> None:
    skein = Skein(weight=weight / 453.59237, wraps=wraps, cuts=cuts)
    doubts = [replace(DOUBTS, scale_step=DOUBTS.scale_step * by) for by in sorted([1.0, times])]
    narrow, wide = (found(skein, each) for each in doubts)
    assert wide.half >= narrow.half * (1 - 1e-12)
    assert narrow.low <= narrow.yards <= narrow.high


# ---- what gives no yards -------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("skein", "said"),
    [
        (Skein(), "its length, or its weight"),
        (Skein(wraps=14), "weigh it, and its wraps give yards"),
        (Skein(cuts=[9.6]), "weigh it, and its cuts give yards"),
        (Skein(sample_length=3, sample_weight=0.01), "its sample gives yards"),
        (Skein(weight=0.2), "give its wraps, a cut, or its length"),
        (Skein(weight=0.2, sample_length=3), "give its wraps, a cut, or its length"),
    ],
)
def test_what_is_lacking_is_said(skein: Skein, said: str) -> None:
    assert reckoned(skein, DOUBTS) is None
    assert said in lacking(skein, DOUBTS)


def test_evidence_that_leaves_all_open_tells_nothing() -> None:
    # hand-worked: Student's t of two cuts is 12.7, so these reach e**(12.7 x 0.9 / 1.4) either way
    wild = Skein(cuts=[4.0, 20.0], weight=0.25)
    assert reckoned(wild, DOUBTS) is None
    assert "leaves it wide open" in lacking(wild, DOUBTS)
    assert found(replace(wild, wraps=14)).kind == "wraps"
    assert "make no yarn" in lacking(Skein(length=20, weight=1), DOUBTS)

"""The lesson: its answers by pint and by published cases, and nothing told before the guess."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.drawn import everything_said, labels_written
from yarnsheets.sheets import HowManyYards, WhatIsGrist
from yarnsheets.sheets.what_is_grist.sheet import ASKS
from yarnsheets.units import registry

METRES = {"measure": "metres, grams", "grist_unit": "m/100g"}
GUESSED = [step for step, asks in ASKS.items() if "shown" in asks]

few = settings(max_examples=60, deadline=None, derandomize=True)


def shown(step: str, **inputs: object) -> WhatIsGrist:
    return WhatIsGrist(step=step, shown="yes", **inputs)


@few
@given(cut=st.floats(1, 120), factor=st.floats(5, 5000), ounces=st.floats(0.1, 80))
def test_a_skein_is_as_long_as_pint_says(cut: float, factor: float, ounces: float) -> None:
    of = registry().Quantity
    sheet = shown("skein", cut=cut, balance_factor=factor, weight=ounces / 16)
    long = of(ounces, "oz") * (of(factor, "yd/lb/in") * of(cut, "in"))
    assert sheet.found_length == pytest.approx(long.m_as("yd"), rel=1e-9)


def test_a_skein_is_what_the_worksheet_for_it_says() -> None:
    here = shown("skein", cut=11.5, weight=2.7 / 16)
    assert here.found_length == pytest.approx(HowManyYards(grist=1150, weight=2.7 / 16).yards)


def test_half_and_an_ounce() -> None:
    # by definition: 16 ounces are a pound
    assert shown("half").found_length == pytest.approx(100 / 2)
    assert shown("small").found_length == pytest.approx(1200 / 16)


def test_weight_times_grist_as_printed() -> None:
    # 3 lb of 2/48 worsted is 40,320 yd: 24 hanks of 560 yd to the pound (Davis, Hosiery
    # Manufacture, example 10)
    sheet = shown("skein", cut=24 * 560 / 200, balance_factor=200, weight=3)
    assert sheet.found_length == pytest.approx(40320)


def test_a_metre_system_has_halves_and_tens() -> None:
    of = registry().Quantity
    assert shown("half", **METRES).found_length == pytest.approx(of(50, "m").m_as("yd"))
    assert shown("small", **METRES).found_length == pytest.approx(of(24, "m").m_as("yd"))


def test_a_mean_of_cuts_is_too_high() -> None:
    # hand-worked: 100 yd at 800 and 100 yd at 1,200 weigh 1/8 + 1/12 = 5/24 lb; 200 ÷ 5/24 = 960
    assert shown("mean").found_length == pytest.approx(960)
    # 100 m at 200 and at 300 m in 100 g weigh 50 + 33.33 g; 200 m ÷ 0.8333 = 240 m
    metres = registry().Quantity(240, "m").m_as("yd")
    assert shown("mean", **METRES).found_length == pytest.approx(metres)


def test_the_same_wraps_may_be_twice_the_grist() -> None:
    # a length of yarn is its section times its density, so half as dense is twice as long
    assert shown("wraps").found_length == pytest.approx(1600)
    firm, airy = shown("wraps").strands
    assert firm["thick"] == airy["thick"] == pytest.approx(1 / 14)


def test_losses_multiply() -> None:
    assert shown("losses").found_share == pytest.approx(0.6 * 0.8)


@pytest.mark.parametrize("step", GUESSED)
@pytest.mark.parametrize("units", [{}, METRES], ids=["yards", "metres"])
def test_nothing_is_told_before_the_guess(step: str, units: dict[str, str]) -> None:
    told = WhatIsGrist(step=step, **units)
    answer = re.search(r"[\d,.]+", shown(step, **units).say("{headline}"))
    assert answer is not None
    if step not in ("half", "small"):  # their answers stand after the weight asked for
        said = [*everything_said(told), *labels_written(told)]
        assert not any(re.search(rf"(?<![\d,.]){answer[0]}\b", text) for text in said)
    assert told.is_hidden
    assert told.arithmetic == ["Guess first: then the steps stand here."]
    assert all(bar["share"] == 1 for bar in told.bars if bar["asked"])


@few
@given(step=st.sampled_from(GUESSED), guess=st.floats(1, 10000))
def test_a_drawing_does_not_tell_by_its_scale(step: str, guess: float) -> None:
    """A guess below the answer leaves the scale to what is known."""
    told = WhatIsGrist(step=step, guess=guess)
    known = [bar["share"] for bar in told.bars if not bar["asked"]]
    assert max(known) == pytest.approx(1)


@pytest.mark.parametrize("step", GUESSED)
def test_a_good_guess_is_told_so(step: str) -> None:
    name, value = ("guess_share", 0.48) if step == "losses" else ("guess", None)
    value = value or shown(step).found_length
    assert "You guessed it" in shown(step, **{name: value}).sentence
    assert "You guessed it" not in shown(step, **{name: value * 0.9}).sentence

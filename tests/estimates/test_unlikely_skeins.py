"""Hints at what is wrong with a skein: its mass, tare, turns or the counter's reading.

The usual ranges are common practice, no source.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.estimates.test_unlikely import IMPOSSIBLE, names
from yarnsheets.estimates import (
    unlikely_counter,
    unlikely_mass,
    unlikely_step,
    unlikely_tare,
    unlikely_turns,
)


@pytest.mark.parametrize("value", IMPOSSIBLE)
def test_what_is_no_measure_is_named(value: float) -> None:
    assert names(unlikely_mass(value, "g", 150), "The mass is", "cannot be", "more than 0")
    assert names(unlikely_mass(50, "g", value), "The length is", "cannot be")
    assert names(unlikely_tare(value, 0), "The gross is", "cannot be")
    assert names(unlikely_turns(value), "The number of turns is", "cannot be")
    assert names(unlikely_counter(value, 100), "The counter's reading is", "cannot be")
    assert names(unlikely_counter(100, value), "The expected length is", "cannot be")


def test_grams_typed_as_ounces_and_ounces_as_grams() -> None:
    assert names(unlikely_mass(56.7, "oz", 150), "42.33 yd/lb", "looks like grams", "1200 yd/lb")
    assert names(unlikely_mass(2, "g", 150), "looks like ounces", "1200 yd/lb", "scale")
    assert unlikely_mass(2, "oz", 150) is None
    assert unlikely_mass(56.7, "g", 150) is None


def test_a_mass_that_neither_unit_explains_has_an_unlikely_grist() -> None:
    assert names(unlikely_mass(0.001, "g", 150), "finer", "30000 yd/lb at the finest")


def test_numbers_are_written_as_the_reader_has_them() -> None:
    def say(value: float, dimension: str) -> str:
        return f"<{dimension} {value:.4g}>"

    # 150 yd in 56.7 oz are 42.33 yd/lb, and in 56.7 g 1200 yd/lb: by hand
    odd = unlikely_mass(56.7, "oz", 150, say)
    assert names(odd, "<length 150>", "56.7 oz", "<grist 42.33>", "<grist 1200>")
    assert names(unlikely_mass(0.001, "g", 150, say), "<grist 3e+04>")
    assert names(unlikely_counter(600, 200, say), "<length 600>", "<length 200>")


@given(st.floats(100, 400), st.floats(500, 1000))
def test_the_wrong_unit_is_seen_for_yarns_of_middling_grist(length: float, grist: float) -> None:
    grams = 453.59237 * length / grist
    assert names(unlikely_mass(grams, "oz", length), "looks like grams")
    assert unlikely_mass(grams, "g", length) is None


def test_tare() -> None:
    assert names(unlikely_tare(40, 60), "tare, 60", "gross, 40", "in each other's place")
    assert names(unlikely_tare(40, 40), "no mass is left")
    assert names(unlikely_tare(40, -1), "0 or more")
    assert names(unlikely_tare(40, math.nan), "0 or more")
    assert unlikely_tare(60, 40) is None
    assert unlikely_tare(60, 0) is None


def test_a_skein_lighter_than_a_step() -> None:
    assert names(unlikely_step(0.01, 0.02), "steps of 0.02 lb", "weighs 0.01 lb", "finer scale")
    assert unlikely_step(0.02, 0.02) is None
    assert names(unlikely_step(0, 0.02), "The mass is 0", "cannot be")
    assert names(unlikely_step(0.01, 0.02, lambda v, d: f"<{d} {v:g}>"), "<mass 0.01>")


def test_turns() -> None:
    assert names(unlikely_turns(99.5), "99.5 turns", "whole number", "full turn")
    assert names(unlikely_turns(1), "too short", "Wind more")
    assert unlikely_turns(100) is None
    assert unlikely_turns(2) is None


def test_counter() -> None:
    assert names(unlikely_counter(2000, 200), "10 times", "200 yd", "decimal point")
    assert names(unlikely_counter(20, 200), "0.1 times", "decimal point")
    assert names(unlikely_counter(600, 200), "3 times", "counts feet")
    assert names(unlikely_counter(7200, 200), "36 times", "counts inches")
    assert names(unlikely_counter(130, 200), "0.65 times", "set to nought")
    assert unlikely_counter(190, 200) is None
    assert unlikely_counter(183, 200) is None  # metres, or a counter that slips: either may be

"""Hints at what is wrong with an unlikely cut, grist or wraps count.

The usual ranges are common practice, no source: grist 100 to 30000 yd/lb, cuts 4 to 40 in, wraps 3
to 70 to the inch, spread 5 to 30 %.
"""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from yarnsheets.estimates import unlikely_cut, unlikely_cuts, unlikely_grist, unlikely_wraps

IMPOSSIBLE = [0, -3, 5e-324, math.nan, math.inf]


def names(sentence: str | None, *words: str) -> bool:
    """Return whether there is a sentence, with all of the words in it and an end."""
    return sentence is not None and sentence.endswith(".") and all(w in sentence for w in words)


@pytest.mark.parametrize("value", IMPOSSIBLE)
def test_what_is_no_measure_is_named(value: float) -> None:
    assert names(unlikely_cut(value), "The cut is", "cannot be", "more than 0")
    assert names(unlikely_cuts([10, value, 11]), "The cut is", "cannot be")
    assert names(unlikely_grist(value), "The grist is", "cannot be")
    assert names(unlikely_wraps(value), "The number of wraps is", "cannot be")


def test_grist() -> None:
    assert names(unlikely_grist(10), "10 yd/lb", "thicker", "100 yd/lb at the thickest", "unit")
    assert names(unlikely_grist(100000), "100000 yd/lb", "finer", "30000 yd/lb at the", "unit")
    assert unlikely_grist(100) is None
    assert unlikely_grist(30000) is None


def test_wraps() -> None:
    assert names(unlikely_wraps(90), "90 to the inch", "more than usual, 70", "wraps touch")
    assert names(unlikely_wraps(1), "1 to the inch", "fewer than usual, 3")
    assert unlikely_wraps(12) is None


def test_cut_in_the_wrong_unit() -> None:
    assert names(unlikely_cut(25, expected=10), "25 in", "10 in", "centimetres", "ruler")
    assert names(unlikely_cut(254, expected=10), "millimetres", "ruler")
    assert unlikely_cut(25) is None  # 25 in of fine singles are as likely as 25 cm


def test_cut_far_from_what_is_expected() -> None:
    assert names(unlikely_cut(35, expected=10), "3.5 times", "10 in", "swings freely")
    assert names(unlikely_cut(4, expected=10), "0.4 times", "cut again")
    assert unlikely_cut(13, expected=10) is None
    assert unlikely_cut(13, expected=0) is None


def test_short_and_long_cuts() -> None:
    assert names(unlikely_cut(2), "2 in", "shorter than the usual 4 in", "trimming")
    assert names(unlikely_cut(50), "50 in", "longer than the usual 40 in", "handling")


def test_one_cut_among_others() -> None:
    assert names(unlikely_cuts([9.6, 10.1, 25.4, 9.9]), "25.4 in", "centimetres")
    assert names(unlikely_cuts([9.6, 10.1, 30, 9.9]), "30 in", "swings freely")
    assert unlikely_cuts([9.6, 10.1, 10.4, 9.8, 10.6]) is None
    assert unlikely_cuts([10.2]) is None
    assert unlikely_cuts([]) is None


def test_cuts_all_alike_or_all_apart() -> None:
    assert names(unlikely_cuts([10, 10, 10]), "All 3 cuts", "measured anew")
    assert unlikely_cuts([10, 10]) is None
    assert names(unlikely_cuts([10, 25]), "61%", "5 to 30%", "one yarn")


def test_numbers_are_written_as_the_reader_has_them() -> None:
    def say(value: float, dimension: str) -> str:
        return f"<{dimension} {value:g}>"

    assert names(unlikely_grist(10, say), "<grist 10>", "<grist 100>")
    assert names(unlikely_cut(25, 10, say), "<short 25>", "<short 10>")
    assert names(unlikely_cut(50, say=say), "<short 50>", "<short 40>")
    assert names(unlikely_cuts([9, 10, 2], say), "<short 2>")
    assert names(unlikely_cuts([9, 9, 9], say), "<short 9>")
    assert names(unlikely_wraps(90, say), "<wraps 90>", "<wraps 70>")


@given(st.lists(st.floats(8, 12), min_size=2, max_size=10))
def test_likely_cuts_need_no_hint(cuts: list[float]) -> None:
    assert unlikely_cuts(cuts) is None or len(set(cuts)) == 1


@given(st.floats(4, 15), st.floats(0.95, 1.05))
def test_any_cut_in_centimetres_is_seen(expected: float, noise: float) -> None:
    assert names(unlikely_cut(2.54 * expected * noise, expected), "centimetres")


@given(st.floats(1e-3, 1e9))
def test_a_sentence_has_no_power_of_ten(value: float) -> None:
    for sentence in (unlikely_grist(value), unlikely_cut(value), unlikely_wraps(value)):
        assert sentence is None or not any(sign in sentence for sign in ("e+", "e-", "nan"))

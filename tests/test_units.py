"""Units: against two other programs' definitions, there and back, and in the reader's words."""

import os
import shutil
import subprocess

import altair as alt
import numpy as np
import pandas as pd
import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat

from yarnsheets.units import Scale, convert, parse_number, registry, scale

EXACTLY = 1e-14  # relative

# The yard is 0.9144 m and the pound 453.59237 g, exact, so tex times yd/lb is a rational number.
TEX_TIMES_YARDS_PER_POUND = 1133980925 / 2286

INDIRECT = [
    "cotton_count", "worsted_count", "linen_lea", "woollen_run", "woollen_cut", "yorkshire_skein",
    "galashiels_cut", "french_cotton_count", "typp", "metric_count", "yd/lb", "m/100g", "yd/oz",
]  # fmt: skip
DIRECT = [
    "tex", "dtex", "denier", "jute", "silk_dram_count", "american_grain_count", "g/km",
]  # fmt: skip

count = st.sampled_from(INDIRECT + DIRECT)
size = st.floats(1e-3, 1e6)

# --- against GNU Units ---

# our unit, and its name or its definition there
GNU_INDIRECT = [
    ("cotton_count", "cottonyarncount"),
    ("worsted_count", "worstedyarncount"),
    ("linen_lea", "linenyarncount"),
    ("woollen_run", "woolyarnrun"),
    ("woollen_cut", "yarncut"),
    ("metric_count", "metricyarncount"),
    ("typp", "typp"),
    ("yd/lb", "yd/lb"),
    ("yd/oz", "yd/oz"),
    ("m/100g", "m/(100 g)"),
    ("m/100 g", "m/(100 g)"),
]
GNU_DIRECT = [
    ("tex", "tex"),
    ("dtex", "decitex"),
    ("denier", "denier"),
    ("silk_dram_count", "manchesteryarnnumber"),
    ("g/km", "g/km"),
]


def gnu_units(given: str, wanted: str) -> float:
    program = shutil.which("units")
    if program is None:
        reason = "GNU Units is not installed, so its definitions cannot be compared"
        if "CI" in os.environ:
            pytest.fail(reason)
        pytest.skip(reason)
    run = subprocess.run(
        [program, "-o", "%.17g", "-t", given, wanted],
        capture_output=True, text=True, check=True, timeout=30,
    )  # fmt: skip
    return float(run.stdout)


@pytest.mark.parametrize(("ours", "theirs"), GNU_INDIRECT)
def test_indirect_counts_agree_with_gnu_units(ours: str, theirs: str) -> None:
    assert convert(20, ours, "yd/lb") == pytest.approx(
        gnu_units(f"20 {theirs}", "yd/lb"), rel=EXACTLY
    )
    assert convert(20, ours, "tex") == pytest.approx(
        gnu_units(f"1/(20 {theirs})", "tex"), rel=EXACTLY
    )


@pytest.mark.parametrize(("ours", "theirs"), GNU_DIRECT)
def test_direct_counts_agree_with_gnu_units(ours: str, theirs: str) -> None:
    assert convert(20, ours, "tex") == pytest.approx(gnu_units(f"20 {theirs}", "tex"), rel=EXACTLY)
    assert convert(20, ours, "yd/lb") == pytest.approx(
        gnu_units(f"1/(20 {theirs})", "yd/lb"), rel=EXACTLY
    )


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [
        ("in", "inch"),
        ("yd", "yard"),
        ("oz", "oz"),
        ("lb", "lb"),
        ("grain", "grain"),
        ("dram", "dram"),
    ],
)
def test_lengths_and_masses_agree_with_gnu_units(ours: str, theirs: str) -> None:
    base = "m" if ours in {"in", "yd"} else "g"
    assert convert(1, ours, base) == pytest.approx(gnu_units(theirs, base), rel=EXACTLY)


# --- against pint's own textile units, and by its own way of crossing from direct to indirect ---


@pytest.mark.parametrize(
    ("ours", "theirs"),
    [("cotton_count", "number_english"), ("metric_count", "number_meter"), ("jute", "aberdeen")],
)
def test_counts_agree_with_those_of_pint(ours: str, theirs: str) -> None:
    assert convert(20, ours, theirs) == pytest.approx(20, rel=EXACTLY)


@given(size, count, count)
def test_crossing_agrees_with_pints_textile_context(value: float, given: str, wanted: str) -> None:
    theirs = registry().Quantity(value, given).to(wanted, "textile").magnitude
    assert convert(value, given, wanted) == pytest.approx(theirs, rel=1e-12)


# --- what holds whatever the numbers ---


@given(size, count, count)
def test_nothing_is_lost_there_and_back(value: float, unit: str, other: str) -> None:
    there = convert(value, unit, other)
    assert convert(there, other, unit) == pytest.approx(value, rel=EXACTLY)


@given(size, count, count, count)
def test_the_way_round_does_not_matter(value: float, a: str, b: str, c: str) -> None:
    assert convert(convert(value, a, b), b, c) == pytest.approx(convert(value, a, c), rel=1e-13)


@given(size)
def test_products_that_never_change(yards: float) -> None:
    tex = convert(yards, "yd/lb", "tex")
    assert tex * yards == pytest.approx(TEX_TIMES_YARDS_PER_POUND, rel=EXACTLY)
    assert tex * convert(yards, "yd/lb", "metric_count") == pytest.approx(1000, rel=EXACTLY)
    denier, cotton = convert(yards, "yd/lb", "denier"), convert(yards, "yd/lb", "cotton_count")
    assert denier * cotton == pytest.approx(9 * TEX_TIMES_YARDS_PER_POUND / 840, rel=EXACTLY)


# --- every kind of value, one operation ---


def test_scale_is_one_factor_and_a_direction() -> None:
    assert scale("yd/oz", "yd/lb") == Scale(16.0, 1)
    assert scale("m/100 g", "tex") == Scale(100000.0, -1)
    assert convert(100, "yd/lb/in", "1/lb") == 3600
    assert type(scale("in", "yd").factor) is float


@pytest.mark.parametrize(
    ("given", "wanted", "answer"), [("yd/oz", "yd/lb", 4000.0), ("m/g", "tex", 4.0)]
)
def test_every_kind_of_value(given: str, wanted: str, answer: float) -> None:
    assert convert(250, given, wanted) == answer
    array = convert(np.array([250.0, 250.0]), given, wanted)
    assert type(array) is np.ndarray
    assert array.tolist() == [answer, answer]
    column = convert(pd.Series([250.0], index=["skein"]), given, wanted)
    assert column.equals(pd.Series([answer], index=["skein"]))
    uncertain = convert(ufloat(250, 2.5), given, wanted)
    assert uncertain.nominal_value == answer
    assert uncertain.std_dev == pytest.approx(answer / 100)


def test_a_chart_is_given_one_operation() -> None:
    grist = alt.param(name="grist", value=250)
    assert convert(grist, "yd/oz", "yd/lb").to_dict() == {"expr": "(grist * 16.0)"}
    assert convert(grist, "m/g", "tex").to_dict() == {"expr": "(1000.0 / grist)"}
    assert repr(convert(alt.datum.grist, "m/g", "tex")) == "(1000.0 / datum.grist)"


@pytest.mark.parametrize(
    ("spelling", "unit"),
    [
        ("m/100g", "meter/hectogram"), ("m/100 g", "meter/hectogram"), ("m / 100 g", "m/hg"),
        ("g/km", "tex"), ("yd/oz", "yard/ounce"), ("in", "inch"), ("oz", "ounce"), ("g", "gram"),
        ("yd/lb/in", "yard/pound/inch"),
    ],
)  # fmt: skip
def test_accepted_spellings(spelling: str, unit: str) -> None:
    assert convert(1.0, spelling, unit) == pytest.approx(1.0, rel=EXACTLY)
    assert registry().Quantity(1.0, spelling).to(unit).magnitude == pytest.approx(1.0, rel=EXACTLY)


# --- in the reader's words ---


@pytest.mark.parametrize(
    ("given", "wanted"),
    [
        ("yd", "lb"),
        ("yd/lb", "oz"),
        ("tex", "yd"),
        ("degC", "degF"),
        ("Hz", "s"),
        ("1/lb", "lb"),
        ("yd/dB", "yd"),
    ],
)
def test_unlike_units_are_refused(given: str, wanted: str) -> None:
    with pytest.raises(ValueError, match="do not measure the same thing") as refusal:
        convert(1.0, given, wanted)
    assert f'"{given}"' in str(refusal.value)
    assert f'"{wanted}"' in str(refusal.value)
    assert "Choose two" in str(refusal.value)


@pytest.mark.parametrize(
    "unknown",
    ["worstd", "", "3 yd", "yd/", "9**9**9", "yd//lb", "m/100", "µ", "yd lb", "yd;lb", "mdegC"],
)
def test_unknown_units_are_refused(unknown: str) -> None:
    for pair in [(unknown, "tex"), ("tex", unknown)]:
        with pytest.raises(ValueError, match="is not known") as refusal:
            convert(1.0, *pair)
        assert f'"{pair[0]}" cannot be turned into "{pair[1]}"' in str(refusal.value)


@given(st.text(st.sampled_from("1029 ./*+-()[]{}\"'\\\n=,:;ydlbmgtexinoz_µ")))
def test_any_text_for_a_unit_is_read_or_refused_in_words(text: str) -> None:
    try:
        assert isinstance(scale(text, "yd/lb"), Scale)
    except ValueError as refusal:
        assert "cannot be turned into" in str(refusal)  # noqa: PT017 - either outcome is right


# --- numbers as a spinner writes them ---


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("9 3/8", 9.375), ("9-3/8", 9.375), ("9\N{EN DASH}3/8", 9.375), ("3/8", 0.375),
        ("11/8", 1.375), ("9½", 9.5), ("9 ½", 9.5), ("½", 0.5), ("1⅛", 1.125),
        ("9 3\N{FRACTION SLASH}8", 9.375), ("9.5", 9.5), (" 9,5", 9.5), ("9,", None), ("5.", 5.0),
        (".5", 0.5), ("0,125", 0.125), ("1,2", 1.2), ("1,25", 1.25), ("1,2345", 1.2345),
        ("1,200", 1200.0), ("1,234,567", 1234567.0), ("1,234.5", 1234.5), ("1,200 1/2", 1200.5),
        ("1200,5", 1200.5), ("1200", 1200.0), ("007", 7.0), ("-3/8", -0.375), ("- 3", -3.0),
        ("\N{MINUS SIGN}9 3/8", -9.375), ("0", 0.0),
        ("1200,500", None), ("1.234,5", None), ("1,20,000", None), ("1,200,5", None),
        ("12,3456,789", None), ("9 11/8", None), ("9 3", None), ("1 200", None), ("9 -3/8", None),
        ("9 - 3/8", None), ("9.5 1/2", None), ("9,5 1/2", None), ("1/0", None), ("1/2/3", None),
        ("", None), ("  ", None), ("-", None), ("--3", None), ("+3", None), ("nan", None),
        ("inf", None), ("1e3", None), ("1_000", None), ("9 in", None), ("ten", None), ("9''", None),
        ("٣", None), ("9" * 400, None), (f"{'9' * 400}/{'9' * 400}", None),
    ],
)  # fmt: skip
def test_a_number_is_read_in_one_way_or_refused(text: str, number: float | None) -> None:
    if number is None:
        with pytest.raises(ValueError, match="is not a number that can be read in one way only"):
            parse_number(text)
    else:
        assert parse_number(text) == number


@given(st.text(st.sampled_from("0123456789,./- ½⅓\N{FRACTION SLASH}\N{MINUS SIGN}e+")))
def test_any_text_for_a_number_is_read_or_refused_in_words(text: str) -> None:
    try:
        assert isinstance(parse_number(text), float)
    except ValueError as refusal:
        assert "Write it like" in str(refusal)  # noqa: PT017 - either outcome is right


@given(st.integers(0, 10**6), st.integers(0, 63))
def test_a_number_written_as_a_rule_shows_it_is_read_back(whole: int, sixtyfourths: int) -> None:
    number = whole + sixtyfourths / 64
    assert parse_number(f"{whole} {sixtyfourths}/64") == number
    assert parse_number(f"{whole:,}-{sixtyfourths}/64") == number
    assert parse_number(f"{number:,.6f}") == number

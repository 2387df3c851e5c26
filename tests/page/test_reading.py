"""What a reader types, against conversions worked out elsewhere."""

from __future__ import annotations

import pytest

from yarnsheets.page.inputs import Input, Pairs
from yarnsheets.page.reading import read_lines, read_number, read_pairs
from yarnsheets.sheets import HowManyYards, HowSureIsTheGrist

# NIST Special Publication 811 (2008), B.8: a yard is 0.9144 m, a pound 453.59237 g, each exactly
TYPED = [
    ("weight", "3 oz", 3 / 16),
    ("weight", "85 g", 85 / 453.59237),
    ("weight", "85g", 85 / 453.59237),
    ("weight", "1/4 lb", 0.25),
    ("weight", "0.1 kg", 100 / 453.59237),
    ("weight", "3 1/2 Ounces", 3.5 / 16),
    ("grist", "1200 yd/lb", 1200),
    ("grist", "1,200 yards per pound", 1200),
    ("grist", "240 m/100 g", 2400 / 0.9144 * 0.45359237),
    ("grist", "240 m / 100g", 2400 / 0.9144 * 0.45359237),
    ("grist", "5 Nm", 5000 / 0.9144 * 0.45359237),  # ISO 1144: metres to the gram
    ("grist", "400 tex", 1e6 / 400 / 0.9144 * 0.45359237),  # ISO 1144: grams to the kilometre
    ("project", "300 m", 300 / 0.9144),
    ("project", "900 ft", 300),
    ("plies", "3", 3),
]


@pytest.mark.parametrize("measure", ["yards, ounces", "metres, grams"])
@pytest.mark.parametrize(("name", "text", "own"), TYPED)
def test_a_unit_behind_a_number_is_read(name: str, text: str, own: float, measure: str) -> None:
    sheet = HowManyYards(measure=measure)
    value, wrong = read_number(sheet.describe()["inputs"][name], text, sheet.units_shown())
    assert not wrong
    assert value == pytest.approx(own, rel=1e-12)


@pytest.mark.parametrize(
    ("name", "text", "part"),
    [
        ("weight", "85 ft", "“ft” is not a unit"),
        ("weight", "85 m", "“m” is not a unit"),
        ("plies", "2.5", "2.5 is not a whole number. Strands plied together can be 1 to 8."),
        ("plies", "2 oz", "“oz” is not a unit"),
        ("grist", "8 3/8 in", "“in” is not a unit"),
        ("weight", "900 kg", "31,746.6\N{NO-BREAK SPACE}oz is outside the range"),
    ],
)
def test_what_cannot_be_is_refused(name: str, text: str, part: str) -> None:
    sheet = HowManyYards()
    value, wrong = read_number(sheet.describe()["inputs"][name], text, sheet.units_shown())
    assert value is None
    assert part in wrong


@pytest.mark.parametrize(
    "text",
    [
        "9.5\n10\n9.4",
        "9.5, 10, 9.4",
        "9.5; 10; 9.4",
        "9.5\t10\t9.4",
        "9.5,10.0,9.4",
        " 9 1/2\n\n10;9,4 ",
    ],
)
def test_numbers_may_stand_in_a_row(text: str) -> None:
    sheet = HowSureIsTheGrist()
    assert read_lines(sheet.describe()["inputs"]["cuts"], text, sheet.units_shown()) == (
        [9.5, 10.0, 9.4],
        "",
    )


def test_numbers_in_a_row_may_have_units() -> None:
    sheet = HowSureIsTheGrist(measure="metres, grams")
    values, _ = read_lines(
        sheet.describe()["inputs"]["cuts"], '9.4 in, 23.9cm; 9 3/8"', sheet.units_shown()
    )
    assert values == pytest.approx([9.4, 23.9 / 2.54, 9.375], rel=1e-12)


def test_the_one_that_is_wrong_is_named() -> None:
    sheet = HowSureIsTheGrist()
    values, wrong = read_lines(
        sheet.describe()["inputs"]["cuts"], "9.4, nine, 9", sheet.units_shown()
    )
    assert values is None
    assert wrong.startswith("Number 2: “nine” is not a number")


WEIGHINGS = Pairs(
    "Weighings",
    (
        Input("Row", "number", 1, low=0.1, high=10000, measure=""),
        Input("Weight left", "mass", 0.1, low=0, high=10, measure=""),
    ),
    [(48, 0.18)],
    measure="",
)


@pytest.mark.parametrize(
    "text", ["48 2.95\n68 85 g", "48, 2.95; 68: 85g", "48\t2.95\n\n 68   85 grams"]
)
def test_pairs_stand_a_line_each(text: str) -> None:
    pairs, wrong = read_pairs(WEIGHINGS.describe(), text, HowManyYards().units_shown())
    assert not wrong
    assert pairs == [[48, 2.95 / 16], [68, pytest.approx(85 / 453.59237, rel=1e-12)]]


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("48 2.95\n68", "Line 2: “68” is not two numbers, row and weight left."),
        ("48 ounces", "Line 1: “ounces” is not a number"),
        ("0 2.95", "Line 1: 0 is outside the range. Row can be 0.1 to 10,000."),
    ],
)
def test_what_is_no_pair_is_refused(text: str, part: str) -> None:
    pairs, wrong = read_pairs(WEIGHINGS.describe(), text, HowManyYards().units_shown())
    assert pairs is None
    assert part in wrong

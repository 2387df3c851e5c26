"""The class worksheet: its numbers, its units, what it refuses, and its widget."""

import math
import re
from typing import Any

import pytest
from hypothesis import given
from traitlets import TraitError

from tests.drawn import any_inputs, any_units, few
from tests.javascript import compiled, in_javascript
from yarnsheets.page import chart, choices
from yarnsheets.page.inputs import Input
from yarnsheets.page.text import show
from yarnsheets.sheets import HowManyYards
from yarnsheets.units import registry

DESCRIBED = HowManyYards().describe()

NUMBER = r"[\d,]+(?:\.\d+)?"


def number(text: str) -> float:
    return float(text.replace(",", ""))


def test_half_a_pound_at_1200_yards_per_pound_is_600_yards() -> None:
    # hand-worked: 8 oz is half a pound (avoirdupois, NIST Handbook 44 App. C)
    sheet = HowManyYards(grist=1200, weight=8 / 16)
    assert sheet.yards == 600
    assert "600\N{NO-BREAK SPACE}yd" in sheet.sentence


def test_two_ply_of_2400_singles_at_take_up_1_05_is_1143() -> None:
    # hand-worked: 2400 / (2 x 1.05) = 1142.857...
    sheet = HowManyYards(grist=2400, plies=2, take_up=1.05)
    assert sheet.yarn_grist == pytest.approx(2400 / 2.1, rel=1e-15)
    assert "1,143\N{NO-BREAK SPACE}yd/lb" in sheet.sentence


def test_take_up_is_left_out_for_one_strand() -> None:
    assert HowManyYards(grist=1000, plies=1, take_up=1.1).yarn_grist == 1000


def test_the_verdict_is_by_the_patterns_own_yards() -> None:
    # hand-worked: a quarter of a pound at 840 yd/lb is 210 yd, at 800 just 200, at 760 190
    ample, just, short = (
        HowManyYards(grist=grist, weight=0.25, project=200) for grist in (840, 800, 760)
    )
    assert "enough, with 10\xa0yd to spare" in ample.sentence
    assert "just enough" in just.sentence
    assert not short.is_enough
    assert "10\xa0yd short" in short.sentence


def test_the_digits_of_another_unit_are_no_want_of_yarn() -> None:
    # hand-worked: 100 g at 250 m/100 g are 250 m; each is turned into pounds and yards and back
    sheet = HowManyYards(
        grist=250 / 0.9144 * 4.5359237, weight=100 / 453.59237, project=250 / 0.9144
    )
    assert sheet.is_enough
    assert sheet.is_just


def test_weight_needed_makes_the_project_exactly() -> None:
    sheet = HowManyYards(grist=1850, plies=3, take_up=1.04, project=1310)
    again = HowManyYards(grist=1850, plies=3, take_up=1.04, weight=sheet.weight_needed)
    assert again.yards == pytest.approx(1310, rel=1e-14)


def test_strand_needed_makes_the_project_exactly() -> None:
    sheet = HowManyYards(weight=0.75, plies=2, take_up=1.04, project=1310)
    again = HowManyYards(weight=0.75, plies=2, take_up=1.04, grist=sheet.strand_needed)
    assert again.yards == pytest.approx(1310, rel=1e-14)


def test_description_is_plain_data_and_the_same_for_every_reader() -> None:
    moved = HowManyYards(grist=900, measure="metres, grams", grist_unit="tex")
    assert moved.describe() == DESCRIBED


def test_an_input_cannot_take_a_name_of_the_charts_own() -> None:
    class Wide(HowManyYards):
        width = Input("Width", "short", 2, low=1, high=9, measure="Lay a ruler across.")

    with pytest.raises(ValueError, match="width: Vega takes this"):
        chart.describe(Wide, lambda _: ())


# ---- units ---------------------------------------------------------------------------------


@few
@given(any_inputs(HowManyYards), any_units)
def test_switching_units_there_and_back_loses_nothing(
    inputs: dict[str, Any], units: dict[str, str]
) -> None:
    sheet = HowManyYards(**inputs)
    before, known = sheet.sentence, sheet.all_known()
    there, back = (units["measure"], units["grist_unit"]), (sheet.measure, sheet.grist_unit)
    sheet.measure, sheet.grist_unit = there
    assert repr(sheet.all_known()) == repr(known)
    sheet.measure, sheet.grist_unit = back
    assert sheet.sentence == before


def test_the_answer_in_metres_and_tex() -> None:
    # 1200 yd/lb is 413.378873 tex by pint's own textile context; 8 oz is 226.8 g
    sheet = HowManyYards(measure="metres, grams", grist_unit="tex", project=500)
    tex = registry().Quantity(1200, "yd/lb").to("tex", "textile").magnitude
    grams = registry().Quantity(8, "oz").to("g").magnitude
    metres = grams / tex * 1000
    said = sheet.sentence.replace("\N{NO-BREAK SPACE}", " ")
    assert said.startswith(f"{grams:.0f} g of yarn at {tex:.0f} tex is about {metres:.0f} m.")


@pytest.mark.parametrize("measure", choices.MEASURES, ids=lambda m: m.name)
@pytest.mark.parametrize("grist", choices.GRIST_UNITS, ids=lambda g: g.unit)
@pytest.mark.parametrize("plies", [1, 3])
def test_the_worked_arithmetic_is_right_by_hand(
    measure: choices.Measure, grist: choices.GristUnit, plies: int
) -> None:
    """Each line is worked again from the numbers printed in it, as a doubting reader would."""
    sheet = HowManyYards(measure=measure.name, grist_unit=grist.unit, plies=plies, grist=1370)
    checked = 0
    for line in sheet.arithmetic:
        plain = line.replace("× 100 g", "hundreds").replace("100 g", "hundred")
        left, equals, right = plain.partition(" = ")
        if not equals:
            continue
        result = number(re.findall(NUMBER, right)[0])
        sign = "÷" if "÷" in left else "×"
        first, second = left.split(sign, 1)
        start = number(re.findall(NUMBER, first)[-1])
        factors = [number(n) for n in re.findall(rf"(?<![\w/]){NUMBER}", second)]
        worked = start / math.prod(factors) if sign == "÷" else start * math.prod(factors)
        # four digits are printed of each number: half of the fourth at worst, 1 in 2000
        assert worked == pytest.approx(result, rel=(len(factors) + 2) / 2000), line
        checked += 1
    assert checked == (3 if plies > 1 else 2)


# ---- what is refused -----------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "value", "said"),
    [
        ("grist", 10, "10 yd/lb is outside the range. .* can be 100 to 30,000 yd/lb."),
        ("plies", 9, "9 is outside the range. Strands plied together can be 1 to 8."),
        ("take_up", 1.5, "1.5 is outside the range. Take-up in plying can be 0.98 to 1.15."),
    ],
)
def test_out_of_range_says_the_range_and_keeps_the_old(name: str, value: float, said: str) -> None:
    sheet = HowManyYards()
    before = getattr(sheet, name)
    with pytest.raises(TraitError, match=said.replace(" yd/lb", "\N{NO-BREAK SPACE}yd/lb")):
        setattr(sheet, name, value)
    assert getattr(sheet, name) == before


def test_results_cannot_be_set() -> None:
    with pytest.raises(TraitError, match="read-only"):
        HowManyYards().yards = 5


# ---- the view, with the page's side played by hand -------------------------------------------


def test_what_the_page_settles_reaches_the_sheet() -> None:
    sheet = HowManyYards()
    view = sheet.view()
    view.values = view.values | {"grist": 2400.0, "plies": 2.0}
    assert sheet.yarn_grist == pytest.approx(2400 / 2.1)
    view.choice = {"measure": "metres, grams", "grist_unit": "tex"}
    assert sheet.grist_unit == "tex"


def test_python_moves_the_page() -> None:
    sheet = HowManyYards()
    view = sheet.view()
    sheet.grist = 1700
    assert view.values["grist"] == 1700
    sheet.measure = "metres, grams"
    assert view.choice["measure"] == "metres, grams"


@pytest.mark.parametrize(
    "junk", [{"grist": 1e12}, {"grist": "x"}, {"grist": None}, {"grist": float("nan")}, {}]
)
def test_a_page_can_send_no_value_the_sheet_refuses(junk: dict[str, object]) -> None:
    sheet = HowManyYards()
    view = sheet.view()
    before = dict(view.values)
    view.values = before | junk if junk else {}
    assert sheet.grist == 1200
    assert view.values == before


def test_a_page_can_choose_no_unit_the_sheet_lacks() -> None:
    sheet = HowManyYards()
    view = sheet.view()
    view.choice = {"measure": "ells", "grist_unit": "yd/lb"}
    assert sheet.measure == "yards, ounces"
    assert view.choice["measure"] == "yards, ounces"


def test_outside_voila_the_kernel_sends_the_chart_bundle(monkeypatch: pytest.MonkeyPatch) -> None:
    view = HowManyYards().view()
    sent: list[tuple[object, list[bytes]]] = []
    monkeypatch.setattr(view, "send", lambda content, buffers: sent.append((content, buffers)))
    view._handle_custom_msg({"send": "something else"}, [])
    assert not sent
    view._handle_custom_msg({"send": "charts"}, [])
    [(content, [bundle])] = sent
    assert content == {"sent": "charts"}
    assert b"vegaLiteVersion" in bundle


def test_the_stock_controls_hold_the_range_and_first_value() -> None:
    controls = HowManyYards(grist=900).view().controls["inputs"]
    assert controls["grist"]["slider"].value == 900
    assert 10 ** controls["grist"]["slider"].max == pytest.approx(30000)
    assert controls["plies"]["slider"].max == 8


# ---- words -----------------------------------------------------------------------------------

SHOWN = [
    # value, digits, up, text: hand-worked
    (1142.857, 3, False, "1,143"),
    (10.6667, 3, False, "10.7"),
    (10.61, 3, True, "10.7"),
    (8.0000000001, 3, True, "8"),
    (2.5, 1, False, "3"),
    (0.125, 2, False, "0.13"),
    (1234567.8, 3, False, "1,234,568"),
    (0.0, 3, False, "0"),
    (0.05, 3, False, "0.05"),
    (999.6, 3, False, "1,000"),
    (-3.25, 2, False, "−3.3"),
    (math.inf, 3, False, "–"),
]


@pytest.mark.parametrize(("value", "digits", "up", "text"), SHOWN)
def test_numbers_are_shown(value: float, digits: int, up: bool, text: str) -> None:  # noqa: FBT001
    assert show(value, digits, up=up) == text


def test_numbers_are_shown_in_javascript_too() -> None:
    shown = SHOWN[:-1]  # JSON has no number without end
    calls = [("show", (value, digits, up)) for value, digits, up, _ in shown]
    answers = in_javascript(compiled({"show": show}), calls)
    assert [answer["gives"] for answer in answers] == [text for *_, text in shown]

"""Two plans side by side: each is the plan it would be alone."""

from typing import Any

import pytest
from hypothesis import assume, given

from tests.drawn import any_inputs, few, two_in_order
from tests.emitted import run
from yarnsheets.sheets import WhatDoesThisSpinTake, WhichOfTwoPlans

FIRST = {"plies": 2, "take_up": 1.03, "buying": "prepared", "price": 18.0, "put_up": 0.25}
SECOND = {"plies": 3, "take_up": 1.05, "buying": "raw", "price": 30.0, "put_up": 3.0}
BOTH = {f"{name}_1": value for name, value in FIRST.items()} | {
    f"{name}_2": value for name, value in SECOND.items()
}


@pytest.mark.parametrize(("which", "own"), [(1, FIRST), (2, SECOND)])
def test_each_plan_is_what_it_would_be_alone(which: int, own: dict[str, object]) -> None:
    both, alone = WhichOfTwoPlans(**BOTH, project=900), WhatDoesThisSpinTake(**own, project=900)
    for name in (
        *("needed", "put_ups", "cost", "singles_grist", "singles_yards", "all_hours"),
        *("evenings", "bobbins", "plied_bobbins", "all_bobbins"),
    ):
        assert getattr(both, f"{name}_{which}") == pytest.approx(getattr(alone, name), rel=1e-12)


def test_a_third_ply_takes_half_as_long_again_to_spin_and_no_more_fibre() -> None:
    # hand-worked: three singles of one length against two
    plans = WhichOfTwoPlans(plies_1=2, plies_2=3)
    assert plans.singles_yards_2 / plans.singles_yards_1 == pytest.approx(1.5, rel=1e-14)
    assert plans.needed_2 == pytest.approx(plans.needed_1, rel=1e-14)
    assert "Both plans cost the same" in plans.sentence


def hours_caption(plans: WhichOfTwoPlans) -> str:
    (drawn,) = (each for each in plans.describe()["charts"] if each["name"] == "hours_side_by_side")
    return " ".join(plans.said(drawn["caption"]))


def test_a_fleece_is_more_work_than_the_hours_say() -> None:
    assert "preparing of a fleece" in hours_caption(WhichOfTwoPlans(buying_2="raw"))
    assert "preparing of a fleece" not in hours_caption(WhichOfTwoPlans())


def test_the_answer_begins_with_what_is_saved() -> None:
    # by hand: 6 braids at 18 are 108.00, 2 fleeces of 3 lb at 30 are 60.00; a third ply is
    # 1,320 x 1.05 yd more, the others 1,320 x 2 x 0.02 yd longer, at 100 yd an hour: 14.4 hours
    plans = WhichOfTwoPlans(**BOTH)
    said = plans.sentence.replace("\N{NO-BREAK SPACE}", " ")
    assert said.startswith("The second plan costs $ 48.00 less and the first takes 14 hours less.")
    assert "For 1,200 yd and 10% in reserve the first takes 6 × 4 oz" in said


def test_a_plan_that_saves_both_is_named_once() -> None:
    # by hand: six braids at a dollar less each; half the hours of spinning at double the speed
    plans = WhichOfTwoPlans(price_1=17, price_2=18, spinning_speed_1=200, spinning_speed_2=100)
    said = plans.sentence.replace("\N{NO-BREAK SPACE}", " ")
    assert said.startswith("The first plan costs $ 6.00 less and takes 14 hours less.")


def test_what_is_not_used_is_not_shown() -> None:
    plans = WhichOfTwoPlans(plies_1=1, plies_2=1, buying_2="raw")
    assert set(plans.unused()) == {
        *("plying_speed", "take_up_1", "take_up_2"),
        *("preparing_waste_1", "scouring_yield_1"),
    }
    assert "plying_speed" not in WhichOfTwoPlans(plies_1=1).unused()


def test_one_of_each_is_said_as_one() -> None:
    # by hand: 100 yd at 100 yd an hour against 50 yd an hour, and 0.1 lb on a bobbin of 0.25
    plans = WhichOfTwoPlans(project=100, reserve=0, plies_1=1, plies_2=1, spinning_speed_2=50)
    assert "and the first takes 1 hour less." in plans.sentence
    assert "and 1 hour at the wheel" in plans.sentence
    assert "First plan 1 hour and 1 bobbin, second plan 2 hours" in hours_caption(plans)
    assert any(line.startswith("First plan: 1 ply takes 100") for line in plans.arithmetic)


def test_costs_that_are_written_alike_are_alike() -> None:
    # 6 x 0.0005 is less than half of a hundredth
    assert WhichOfTwoPlans(price_1=18.0005, price_2=18).as_cheap
    assert WhichOfTwoPlans(price_1=18.01, price_2=18).second_is_cheaper


@few
@given(any_inputs(WhichOfTwoPlans), two_in_order(WhichOfTwoPlans, "project"))
def test_more_yards_never_take_less_of_anything(
    values: dict[str, Any], projects: list[float]
) -> None:
    small, large = (WhichOfTwoPlans(**values | {"project": each}) for each in projects)
    assume(not small.warnings and not large.warnings)
    for name in ("needed_1", "cost_1", "all_hours_1", "all_bobbins_1", "needed_2", "cost_2"):
        assert getattr(large, name) >= getattr(small, name) * (1 - 1e-12)


def test_singles_that_no_one_spins_are_named_by_their_plan() -> None:
    (warning,) = WhichOfTwoPlans(plies_2=8, grist_wanted=10000).warnings
    assert warning.startswith("The second plan’s single would be")


@pytest.mark.parametrize(
    ("chart", "name", "factor"),
    [
        ("cost_side_by_side", "cost", 1),
        ("hours_side_by_side", "all_hours", 1),
        ("fibre_side_by_side", "needed", 453.59237),  # grams: NIST Handbook 44, appendix C
    ],
)
def test_each_bar_is_as_high_as_its_plan_takes(chart: str, name: str, factor: float) -> None:
    plans = WhichOfTwoPlans(**BOTH)
    known = plans.all_known() | {"mass_factor": 453.59237}
    drawn = next(each for each in plans.describe()["charts"] if each["name"] == chart)
    bars = [each for each in drawn["spec"]["layer"] if each["mark"]["type"] == "rect"]
    steps = [{step["as"]: step["calculate"] for step in bar["transform"]} for bar in bars]
    for plan, step in enumerate(steps, start=1):
        height = getattr(plans, f"{name}_{plan}") * factor
        assert run(step["up"], known, {"at": 0}) == pytest.approx(height, rel=1e-12)
        left, right = (run(step[end], known, {"at": 0}) for end in ("plan", "end"))
        assert left < plan < right

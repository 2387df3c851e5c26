"""Two plans side by side: each is the plan it would be alone."""

import pytest

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
    for name in ("needed", "put_ups", "cost", "singles_grist", "singles_yards", "all_hours"):
        assert getattr(both, f"{name}_{which}") == pytest.approx(getattr(alone, name), rel=1e-12)


def test_a_third_ply_takes_half_as_long_again_to_spin_and_no_more_fibre() -> None:
    # hand-worked: three singles of one length against two
    plans = WhichOfTwoPlans(plies_1=2, plies_2=3)
    assert plans.singles_yards_2 / plans.singles_yards_1 == pytest.approx(1.5, rel=1e-14)
    assert plans.needed_2 == pytest.approx(plans.needed_1, rel=1e-14)
    assert "Both cost the same" in plans.sentence


def test_a_fleece_is_more_work_than_the_hours_say() -> None:
    assert "preparing of a fleece" in WhichOfTwoPlans(buying_2="raw").sentence
    assert "preparing of a fleece" not in WhichOfTwoPlans().sentence


def test_singles_that_no_one_spins_are_named_by_their_plan() -> None:
    (warning,) = WhichOfTwoPlans(plies_2=8, grist_wanted=10000).warnings
    assert "the second plan" in warning


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

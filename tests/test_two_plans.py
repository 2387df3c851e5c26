"""Two plans side by side: each is the plan it would be alone."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.browser import open_sheet
from tests.emitted import run
from tests.test_page import box, said
from yarnsheets.sheets import SpinPlan, TwoPlans

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

FIRST = {"plies": 2, "take_up": 1.03, "buying": "prepared", "price": 18.0, "put_up": 0.25}
SECOND = {"plies": 3, "take_up": 1.05, "buying": "raw", "price": 30.0, "put_up": 3.0}
BOTH = {f"{name}_1": value for name, value in FIRST.items()} | {
    f"{name}_2": value for name, value in SECOND.items()
}


@pytest.mark.parametrize(("which", "own"), [(1, FIRST), (2, SECOND)])
def test_each_plan_is_what_it_would_be_alone(which: int, own: dict[str, object]) -> None:
    both, alone = TwoPlans(**BOTH, project=900), SpinPlan(**own, project=900)
    for name in ("needed", "put_ups", "cost", "singles_grist", "singles_yards", "all_hours"):
        assert getattr(both, f"{name}_{which}") == pytest.approx(getattr(alone, name), rel=1e-12)


def test_a_third_ply_takes_half_as_long_again_to_spin_and_no_more_fibre() -> None:
    # hand-worked: three singles of one length against two
    plans = TwoPlans(plies_1=2, plies_2=3)
    assert plans.singles_yards_2 / plans.singles_yards_1 == pytest.approx(1.5, rel=1e-14)
    assert plans.needed_2 == pytest.approx(plans.needed_1, rel=1e-14)
    assert "Both cost the same" in plans.sentence


def test_a_fleece_is_more_work_than_the_hours_say() -> None:
    assert "preparing of a fleece" in TwoPlans(buying_2="raw").sentence
    assert "preparing of a fleece" not in TwoPlans().sentence


def test_singles_that_no_one_spins_are_named_by_their_plan() -> None:
    (warning,) = TwoPlans(plies_2=8, grist_wanted=10000).warnings
    assert "the second plan" in warning


@pytest.mark.parametrize("inputs", [{}, BOTH])
def test_every_number_the_browser_computes_is_pythons(inputs: dict[str, object]) -> None:
    plans = TwoPlans(**inputs)
    signals = {name: getattr(plans, name) for name in plans._signals()}
    for name, number in plans.describe()["numbers"].items():
        assert run(number["expr"], signals) == pytest.approx(getattr(plans, name), rel=1e-12), name


def test_the_page_compares_at_once(page: Page, server: Server) -> None:
    open_sheet(page, server, "which-of-two-plans")
    shown = TwoPlans(plies_2=3, buying_2="raw", price_2=30, put_up_2=3)
    assert said(page) == shown.sentence
    page.context.set_offline(True)
    box(page, "plies_2").fill("4")
    shown.plies_2 = 4
    assert said(page) == shown.sentence
    page.context.set_offline(False)

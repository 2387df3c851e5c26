"""The plan of a spin: its chain, its purchase, and the chance that it is enough."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.test_units import gnu_units
from yarnsheets.sheets import WhatDoesThisSpinTake
from yarnsheets.units import convert

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

# hand-worked from end to end: 1,428 sq in of plain knitting at 20 by 28 to 4 in is 1,090.65 yd
WHOLE = {
    "project": 1090.65301539949,
    "reserve": 0.1,
    "grist_wanted": 1000,
    "plies": 2,
    "take_up": 1.03,
    "spinning_waste": 0.05,
    "preparing_waste": 0.1,
    "scouring_yield": 0.6,
    "buying": "raw",
    "balance_factor": 100,
}


def test_a_sweater_from_yarn_to_fleece() -> None:
    # hand-worked: each figure follows from the one before, with yields that multiply
    plan = WhatDoesThisSpinTake(**WHOLE)
    assert plan.yards_planned == pytest.approx(1199.71831693944, abs=5e-12)
    assert plan.yarn == pytest.approx(1.19971831693944, abs=5e-15)
    assert convert(plan.yarn, "lb", "g") == pytest.approx(544.183074712971, abs=5e-12)
    assert plan.singles_grist == pytest.approx(2060, rel=1e-15)
    assert plan.singles_yards == pytest.approx(2471.41973289524, abs=5e-12)
    assert plan.singles_cut == pytest.approx(20.6, rel=1e-15)
    assert plan.plied_cut == pytest.approx(10.0, rel=1e-15)
    assert plan.clean == pytest.approx(1.40317931805782, abs=5e-15)
    assert plan.raw == pytest.approx(2.33863219676304, abs=5e-15)


def test_the_single_has_the_same_number_in_gnu_units() -> None:
    # GNU Units, whose definitions are not ours: 2060 yd/lb in tex
    tex = gnu_units("1 / (2060 yd/lb)", "tex")
    assert convert(WhatDoesThisSpinTake(**WHOLE).singles_grist, "yd/lb", "tex") == pytest.approx(
        tex, rel=1e-9
    )
    assert tex == pytest.approx(240.803227114815, abs=5e-6)


def test_losses_are_never_added() -> None:
    # hand-worked: 1.2 lb of yarn; adding 5, 10 and 40 % gives 2.67 or 1.86 lb, both wrong
    plan = WhatDoesThisSpinTake(**{**WHOLE, "project": 1200, "reserve": 0})
    assert plan.raw == pytest.approx(1.2 / (0.95 * 0.90 * 0.60), rel=1e-14)
    assert abs(plan.raw - 1.2 / (1 - 0.55)) > 0.3
    assert abs(plan.raw - 1.2 * 1.55) > 0.3


def test_a_wash_changes_the_grist() -> None:
    # hand-worked: 1200 * 0.92 / 0.95 = 22080 / 19
    plan = WhatDoesThisSpinTake(
        grist_wanted=22080 / 19, wash_shrinkage=0.08, wash_loss=0.05, plies=1, reserve=0
    )
    assert plan.unwashed_grist == pytest.approx(1200, abs=5e-12)
    assert plan.yards_to_ply == pytest.approx(plan.yards_planned / 0.92, rel=1e-14)


share = st.floats(0, 0.4)


@given(
    st.floats(100, 5000),
    st.floats(400, 5000),
    st.integers(1, 6),
    share,
    share,
    st.floats(0.2, 0.95),
    st.floats(0, 0.3),
)
def test_what_goes_in_comes_out_or_is_lost(
    project: float,
    grist: float,
    plies: int,
    spinning: float,
    preparing: float,
    scouring: float,
    loss: float,
) -> None:
    plan = WhatDoesThisSpinTake(
        project=project,
        grist_wanted=grist,
        plies=plies,
        spinning_waste=spinning,
        preparing_waste=preparing,
        scouring_yield=scouring,
        wash_loss=min(loss, WhatDoesThisSpinTake.wash_loss.high),
    )
    assume(not plan.warnings)
    lost = plan.scouring_loss + plan.preparing_loss + plan.spinning_loss + plan.washing_loss
    assert plan.raw == pytest.approx(plan.yarn + lost, rel=1e-12)
    assert plan.clean == pytest.approx(plan.raw * scouring, rel=1e-12)
    assert plan.prepared == pytest.approx(plan.clean * (1 - preparing), rel=1e-12)
    assert plan.spun == pytest.approx(plan.prepared * (1 - spinning), rel=1e-12)
    assert plan.fibre_per_bobbin * plan.bobbins == pytest.approx(plan.prepared, rel=1e-12)
    assert plan.fibre_per_bobbin <= plan.bobbin_capacity * (1 + 1e-9)
    assert plan.left_over + 1e-9 >= 0
    assert plan.left_over < plan.put_up * (1 + 1e-9)
    # what each ply weighs, all plies together, is the yarn before its wash
    assert plan.singles_yards / plan.singles_grist == pytest.approx(plan.spun, rel=1e-12)


def test_the_chance_is_that_of_a_million_draws() -> None:
    # numpy: the yarn made and the project each off by their own ranges, 19 times of 20
    plan = WhatDoesThisSpinTake(
        project=1000,
        reserve=0,
        put_up=0.05,
        grist_range=0.08,
        yield_range=0.05,
        project_range=0.10,
    )
    draw = np.random.default_rng(20261126)
    made, takes = draw.normal(0, 1, (2, 1_000_000)) / 1.959963984540054
    made = plan.yards_made * np.exp(made * np.hypot(0.08, 0.05))
    takes = 1000 * np.exp(takes * 0.10)
    assert plan.chance == pytest.approx(np.mean(made >= takes), abs=0.005)
    assert 0.3 < plan.chance < 0.9


def test_put_ups_for_95_times_of_100_are_the_fewest() -> None:
    plan = WhatDoesThisSpinTake(project=1000, reserve=0, put_up=0.1)
    chances = {row["packs"]: row["chance"] for row in plan.chances}
    assert chances[plan.put_ups_sure] >= 95 > chances[plan.put_ups_sure - 1]


def test_a_third_ply_of_the_same_single_takes_half_as_much_fibre_again() -> None:
    # hand-worked: the plied grist is 2060 / (plies * 1.03)
    two, three = (
        WhatDoesThisSpinTake(sample_of="single", grist_wanted=2060, plies=n) for n in (2, 3)
    )
    assert three.yarn_grist == pytest.approx(2060 / 3.09, rel=1e-14)
    assert three.singles_grist == pytest.approx(2060, rel=1e-14)
    assert three.needed / two.needed == pytest.approx(1.5, rel=1e-14)
    assert three.put_ups > two.put_ups


def test_raw_fleece_has_the_published_range_of_its_breed() -> None:
    # published: Corriedale 50 to 60 % (breed associations); hand-worked: 1.2 lb / 0.855 is clean
    plan = WhatDoesThisSpinTake(
        project=1200, reserve=0, buying="raw", fleece="Corriedale", scouring_yield=0.45
    )
    assert plan.raw_low == pytest.approx(1.2 / 0.855 / 0.60, rel=1e-14)
    assert plan.raw_high == pytest.approx(1.2 / 0.855 / 0.50, rel=1e-14)
    assert "Yours lies outside that" in plan.sentence
    plan.scouring_yield = 0.55
    assert "50 to 60% published for Corriedale" in plan.sentence
    assert "outside" not in plan.sentence
    plan.buying = "washed"
    assert "published" not in plan.sentence


def test_singles_that_no_one_spins_are_met_with_what_is_wrong() -> None:
    (warning,) = WhatDoesThisSpinTake(plies=8, grist_wanted=20000).warnings
    assert "Of the single that this plan asks for" in warning


def test_money_is_said_with_its_hundredths() -> None:
    plan = WhatDoesThisSpinTake(currency="francs", price=12.5)
    assert f"for francs\N{NO-BREAK SPACE}{plan.put_ups * 12.5:.2f}:" in plan.sentence


def test_nothing_but_what_is_needed_is_bought_where_nothing_is_in_doubt() -> None:
    # by hand: 1000 yd at 1000 yd/lb are 1 lb, 20 put-ups of 0.05 lb
    plan = WhatDoesThisSpinTake(
        project=1000,
        reserve=0,
        spinning_waste=0,
        put_up=0.05,
        grist_range=0,
        yield_range=0,
        project_range=0,
    )
    assert plan.put_ups == plan.put_ups_sure == 20
    chances = {row["packs"]: row["chance"] for row in plan.chances}
    assert (chances[19], chances[21]) == (0, 100)


def test_a_plan_prints_on_one_page(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-does-this-spin-take")
    page.locator("[data-name=buying] select").select_option("raw fleece")  # says the most
    page.locator(".ys-worked > summary").click()
    assert page.pdf(format="A4").count(b"/Type /Page\n") == 1

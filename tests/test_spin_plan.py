"""The plan of a spin: its chain, purchase and chance in Python, and on the page."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.emitted import run
from tests.test_page import box, said, settled, unfold
from tests.test_units import gnu_units
from yarnsheets.sheets import SpinPlan
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
    plan = SpinPlan(**WHOLE)
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
    assert convert(SpinPlan(**WHOLE).singles_grist, "yd/lb", "tex") == pytest.approx(tex, rel=1e-9)
    assert tex == pytest.approx(240.803227114815, abs=5e-6)


def test_losses_are_never_added() -> None:
    # hand-worked: 1.2 lb of yarn; adding 5, 10 and 40 % gives 2.67 or 1.86 lb, both wrong
    plan = SpinPlan(**{**WHOLE, "project": 1200, "reserve": 0})
    assert plan.raw == pytest.approx(1.2 / (0.95 * 0.90 * 0.60), rel=1e-14)
    assert abs(plan.raw - 1.2 / (1 - 0.55)) > 0.3
    assert abs(plan.raw - 1.2 * 1.55) > 0.3


def test_a_wash_changes_the_grist() -> None:
    # hand-worked: 1200 * 0.92 / 0.95 = 22080 / 19
    plan = SpinPlan(
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
    plan = SpinPlan(
        project=project,
        grist_wanted=grist,
        plies=plies,
        spinning_waste=spinning,
        preparing_waste=preparing,
        scouring_yield=scouring,
        wash_loss=min(loss, SpinPlan.wash_loss.high),
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
    plan = SpinPlan(
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
    plan = SpinPlan(project=1000, reserve=0, put_up=0.1)
    chances = {row["packs"]: row["chance"] for row in plan.chances}
    assert chances[plan.put_ups_sure] >= 95 > chances[plan.put_ups_sure - 1]


def test_a_third_ply_of_the_same_single_takes_half_as_much_fibre_again() -> None:
    # hand-worked: the plied grist is 2060 / (plies * 1.03)
    two, three = (SpinPlan(sample_of="single", grist_wanted=2060, plies=n) for n in (2, 3))
    assert three.yarn_grist == pytest.approx(2060 / 3.09, rel=1e-14)
    assert three.singles_grist == pytest.approx(2060, rel=1e-14)
    assert three.needed / two.needed == pytest.approx(1.5, rel=1e-14)
    assert three.put_ups > two.put_ups


def test_raw_fleece_has_the_published_range_of_its_breed() -> None:
    # published: Corriedale 50 to 60 % (breed associations); hand-worked: 1.2 lb / 0.855 is clean
    plan = SpinPlan(project=1200, reserve=0, buying="raw", fleece="Corriedale", scouring_yield=0.45)
    assert plan.raw_low == pytest.approx(1.2 / 0.855 / 0.60, rel=1e-14)
    assert plan.raw_high == pytest.approx(1.2 / 0.855 / 0.50, rel=1e-14)
    assert "Yours lies outside that" in plan.sentence
    plan.scouring_yield = 0.55
    assert "50 to 60% published for Corriedale" in plan.sentence
    assert "outside" not in plan.sentence
    plan.buying = "washed"
    assert "published" not in plan.sentence


def test_singles_that_no_one_spins_are_met_with_what_is_wrong() -> None:
    (warning,) = SpinPlan(plies=8, grist_wanted=20000).warnings
    assert "Of the single that this plan asks for" in warning


def test_money_is_said_with_its_hundredths() -> None:
    plan = SpinPlan(currency="francs", price=12.5)
    assert f"for francs\N{NO-BREAK SPACE}{plan.put_ups * 12.5:.2f}:" in plan.sentence


@pytest.mark.parametrize(
    "inputs",
    [{}, WHOLE, {"plies": 1, "sample_of": "single", "buying": "washed"}, {"wash_shrinkage": 0.08}],
)
def test_every_number_the_browser_computes_is_pythons(inputs: dict[str, object]) -> None:
    plan = SpinPlan(**inputs)
    signals = {name: getattr(plan, name) for name in plan._signals()}
    for name, number in plan.describe()["numbers"].items():
        assert run(number["expr"], signals) == pytest.approx(getattr(plan, name), rel=1e-12), name


# ---- on the page ---------------------------------------------------------------------------------

TYPED = {
    "project": "1090.65301539949",
    "grist_wanted": "1000",
    "plies": "2",
    "take_up": "1.03",
    "reserve": "10",
    "spinning_waste": "5",
    "preparing_waste": "10",
    "scouring_yield": "60",
}


def test_the_whole_plan_stands_on_the_page(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-does-this-spin-take")
    page.locator(".ys-finer > summary").click()
    for name, text in TYPED.items():
        box(page, name).fill(text)
    page.locator("[data-name=buying] select").select_option("raw fleece")
    plan = SpinPlan(**WHOLE)
    page.wait_for_function(
        "(said) => document.querySelector('.ys-sentence').textContent === said", arg=plan.sentence
    )
    unfold(page)
    worked = page.locator(".ys-worked ol").inner_text()
    for text in ("2,471.42", "20.6", "2.3386", "1.4032", "2,060"):
        assert text in worked
    assert page.pdf(format="A4").count(b"/Type /Page\n") == 1


def test_plies_move_the_purchase_the_hours_and_the_charts_at_once(
    page: Page, server: Server
) -> None:
    open_sheet(page, server, "what-does-this-spin-take")
    before = settled(page)
    page.context.set_offline(True)
    box(page, "plies").fill("3")
    plan = SpinPlan(plies=3)
    assert f"for each of 3 plies at {plan.singles_grist:,.0f}" in said(page)
    assert f"That is {plan.all_hours:.0f} hours" in said(page)
    assert said(page) != before
    hours = page.locator("figure[data-name=hours_against_plies] figcaption").inner_text()
    assert f"3 plies take {plan.all_hours:.0f} hours" in hours
    box(page, "put_up").fill("8")
    assert f"Buy {SpinPlan(plies=3, put_up=0.5).put_ups} ×" in said(page)
    page.context.set_offline(False)
    box(page, "take_up").evaluate("(box) => box.closest('details').open = true")
    box(page, "take_up").fill("10%")
    error = page.locator("[data-name=take_up] .ys-error").inner_text()
    assert "two things" in error
    assert box(page, "take_up").input_value() == "10%"

"""The worksheet on singles, and the curve of its fibres.

Davis     published: William Davis, Hosiery Manufacture, c. 1920, by example, counts times 560 yd.
GATE      published: Graduate Aptitude Test in Engineering, Textile Engineering, 1992, question 3.
by hand   exact from the definitions; tex from the exact yard and pound.
"""

import math
from typing import Any

import pytest
import traitlets
from hypothesis import given
from hypothesis import strategies as st

from tests.drawn import any_inputs, few, two_in_order
from tests.emitted import run
from yarnsheets.sheets import WhichSinglesMakeThisYarn
from yarnsheets.units import convert

DESCRIBED = WhichSinglesMakeThisYarn().describe()
CHARTS = {chart["name"]: chart for chart in DESCRIBED["charts"]}


def plain(sheet: WhichSinglesMakeThisYarn) -> str:
    return sheet.sentence.replace("\N{NO-BREAK SPACE}", " ")


# ---- equal singles ---------------------------------------------------------------------------


def test_two_singles_for_a_thousand_yards_to_the_pound() -> None:
    # by hand: 1000 x 2 x 1.03, and a hundredth of it in inches
    sheet = WhichSinglesMakeThisYarn(grist_wanted=1000, plies=2, take_up=1.03, balance_factor=100)
    assert sheet.asked == pytest.approx(2060, rel=1e-14)
    assert sheet.asked_cut == pytest.approx(20.6, rel=1e-14)
    assert sheet.yarn_cut == pytest.approx(10, rel=1e-14)
    assert plain(sheet).startswith("Spin 2 singles of 2,060 yd/lb, each with a cut of 20.6 in.")
    assert "of 1,000 yd/lb, hangs level at 10 in" in plain(sheet)


def test_three_singles() -> None:
    # by hand: 1000 x 3 x 1.04
    assert WhichSinglesMakeThisYarn(plies=3, take_up=1.04).asked == pytest.approx(3120, rel=1e-14)


def test_ten_per_cent_has_two_meanings() -> None:
    """GATE: a twofold 16s takes 35.2s at 1.10, the official answer; 35.56 if it comes shorter."""
    wanted = 16 * 840
    more = WhichSinglesMakeThisYarn(grist_wanted=wanted, plies=2, take_up=1.10).asked / 840
    shorter = WhichSinglesMakeThisYarn(grist_wanted=wanted, plies=2, take_up=1 / 0.9).asked / 840
    assert more == pytest.approx(35.2, abs=1e-9)
    assert shorter == pytest.approx(35.5555555555556, abs=1e-9)
    percent = DESCRIBED["inputs"]["take_up"]["percent"]
    assert "1.1;" in percent
    assert "1.111" in percent


def test_a_take_up_of_ten_is_refused() -> None:
    with pytest.raises(traitlets.TraitError, match="Take-up in plying can be"):
        WhichSinglesMakeThisYarn(take_up=10)


def test_a_single_used_as_it_is_has_no_take_up() -> None:
    sheet = WhichSinglesMakeThisYarn(grist_wanted=1500, plies=1, take_up=1.1)
    assert sheet.asked == 1500
    assert "Spin a single of 1,500 yd/lb" in plain(sheet)
    assert "finished yarn" not in plain(sheet)


# ---- cabled ----------------------------------------------------------------------------------


def test_a_cabled_yarn_is_plied_twice() -> None:
    # by hand: 1000 x 2 x 1.05 = 2100 for the strand, x 3 x 1.02 = 6426 for the single
    sheet = WhichSinglesMakeThisYarn(plies=3, take_up=1.02, cables=2, cable_take_up=1.05)
    assert sheet.strand == pytest.approx(2100, rel=1e-14)
    assert sheet.asked == pytest.approx(6426, rel=1e-14)
    assert "Twist 2 such strands together, each with a cut of 21 in" in plain(sheet)


def test_one_strand_is_not_cabled() -> None:
    sheet = WhichSinglesMakeThisYarn(cables=1, cable_take_up=1.15)
    assert sheet.strand == sheet.grist_wanted
    assert "strands" not in plain(sheet)


# ---- singles already there -------------------------------------------------------------------


# in hand   wanted   missing, each in hanks: Davis
@pytest.mark.parametrize(
    ("in_hand", "wanted", "missing"),
    [
        ([60], 24, 40),  # 27
        ([64, 48], 192 / 13, 32),  # 30
        ([90], 180 / 11, 20),  # 31
        ([60], 12, 15),  # 45
    ],
)
def test_the_missing_single(in_hand: list[float], wanted: float, missing: float) -> None:
    hands = [count * 560 for count in in_hand]
    sheet = WhichSinglesMakeThisYarn(in_hand=hands, grist_wanted=wanted * 560, take_up=1)
    assert sheet.asked / 560 == pytest.approx(missing, rel=1e-12)
    assert plain(sheet).startswith(f"Beside your {'single' if len(hands) == 1 else '2 singles'}")


def test_the_missing_single_with_its_take_up() -> None:
    # by hand: a strand of 1/1000 lb to the yard is 1/1030 of singles, less 1/1545 leaves 1/3090
    sheet = WhichSinglesMakeThisYarn(in_hand=[1545], grist_wanted=1000, take_up=1.03)
    assert sheet.asked == pytest.approx(3090, rel=1e-12)
    assert sheet.asked_cut == pytest.approx(30.9, rel=1e-12)


def test_the_missing_single_is_that_of_one_strand_of_a_cabled_yarn() -> None:
    # by hand: a strand of 2 x 1000; 1/2000 - 1/3000 = 1/6000
    sheet = WhichSinglesMakeThisYarn(in_hand=[3000], cables=2, cable_take_up=1, take_up=1)
    assert sheet.asked == pytest.approx(6000, rel=1e-12)


def test_shares_that_sum_to_more_than_one_make_another_yarn() -> None:
    """Davis 46: 56s, 18 2/3 and 14s for an 8s have shares that sum to 8/7; they make a 7s.

    Beside the first two an 8s yarn wants another 18 2/3, not his 14.
    """
    hands = [56 * 560, 56 / 3 * 560]
    assert WhichSinglesMakeThisYarn(in_hand=hands, grist_wanted=8 * 560, take_up=1).asked / 560 == (
        pytest.approx(56 / 3, rel=1e-12)
    )
    assert WhichSinglesMakeThisYarn(in_hand=hands, grist_wanted=7 * 560, take_up=1).asked / 560 == (
        pytest.approx(14, rel=1e-12)
    )


def test_a_rounded_book_value_is_not_given() -> None:
    """Davis 36: 2/42 worsted, 12s cotton and 80/2 silk; he prints 6.1, which asks for another."""
    hands = [21 * 560, 12 * 840]
    exact = WhichSinglesMakeThisYarn(in_hand=hands, grist_wanted=5.97864768683274 * 840, take_up=1)
    assert exact.asked / 840 == pytest.approx(80, rel=1e-9)
    printed = WhichSinglesMakeThisYarn(in_hand=hands, grist_wanted=6.1 * 840, take_up=1)
    assert printed.asked / 840 > 100


@pytest.mark.parametrize("in_hand", [[1000], [1030], [2000, 2000], [3000, 3000, 3000, 3000]])
def test_singles_that_are_too_heavy_already_get_no_answer(in_hand: list[float]) -> None:
    # 1030 alone makes just 1000 with its take-up: there is nothing left for another
    sheet = WhichSinglesMakeThisYarn(in_hand=in_hand, grist_wanted=1000, take_up=1.03)
    assert sheet.is_too_heavy
    assert plain(sheet).startswith("That cannot be spun")
    assert "hangs level" not in plain(sheet)
    assert "fibres" not in plain(sheet)


@pytest.mark.parametrize(
    ("in_hand", "take_up"), [(1896, 1), (1597 * 1.05, 1.05), (1599 * 1.03, 1.03)]
)
def test_a_single_that_is_the_yarn_but_for_its_last_bits_leaves_none(
    in_hand: float, take_up: float
) -> None:
    # by hand: it makes just the yarn that is wanted, though 1 / (1 / 1896) is not exactly 1896
    wanted = in_hand / take_up
    sheet = WhichSinglesMakeThisYarn(in_hand=[in_hand], grist_wanted=wanted, take_up=take_up)
    assert sheet.is_too_heavy
    assert plain(sheet).startswith("That cannot be spun")


# ---- the fibre -------------------------------------------------------------------------------


def test_60000_yards_to_the_pound_of_21_micron_is_warned_about() -> None:
    # by hand: 971.9385837673 x 8.26757746 tex / 441 / (1 + 0.22 squared) = 17.4 fibres
    sheet = WhichSinglesMakeThisYarn(grist_wanted=60000, plies=1, micron=21)
    assert sheet.fibres == pytest.approx(971.9385837673 * 8.267577464 / 441 / 1.0484, rel=1e-9)
    assert "too fine for this fibre" in plain(sheet)
    assert any("about 17 fibres would lie side by side" in line for line in sheet.arithmetic)
    assert not sheet.warnings


@pytest.mark.parametrize(("least", "grist"), [(20, 54663.7927334298), (40, 27331.8963667149)])
def test_the_warning_begins_at_the_finest(least: float, grist: float) -> None:
    # by hand: 21 micron, all alike
    kept = {"plies": 1, "micron": 21, "spread": 0, "least_fibres": least}
    assert WhichSinglesMakeThisYarn(grist_wanted=grist * (1 - 1e-9), **kept).is_spinnable
    assert WhichSinglesMakeThisYarn(grist_wanted=grist * (1 + 1e-9), **kept).is_too_fine
    assert WhichSinglesMakeThisYarn(**kept).finest == pytest.approx(grist, rel=1e-12)


def test_the_fibres_are_those_of_the_single_not_of_the_yarn() -> None:
    # by hand: 25 micron at 1200 yd/lb, 642.846202545134 fibres
    sheet = WhichSinglesMakeThisYarn(grist_wanted=600, plies=2, take_up=1, micron=25, spread=0)
    assert sheet.fibres == pytest.approx(642.846202545134, rel=1e-12)


def test_wraps_and_thickness_are_a_range() -> None:
    # by hand: 413.378873 tex as a round rod of 0.40 and 0.12 g/cm3
    sheet = WhichSinglesMakeThisYarn(grist_wanted=1200)
    thin, thick = (math.sqrt(4 * 413.378873213765 / (math.pi * d * 1000)) for d in (0.40, 0.12))
    assert convert(sheet.thickness_low, "in", "mm") == pytest.approx(thin, rel=1e-12)
    assert convert(sheet.thickness_high, "in", "mm") == pytest.approx(thick, rel=1e-12)
    assert sheet.wraps_low == pytest.approx(25.4 / thick, rel=1e-12)
    assert sheet.wraps_high == pytest.approx(25.4 / thin, rel=1e-12)


def test_the_grade_is_of_wool_alone() -> None:
    # Code of Federal Regulations, title 7, part 31: 20.60 to 22.04 micron is 64s; 64 x 560 yd
    sheet = WhichSinglesMakeThisYarn(micron=21)
    assert any("graded 64s" in line and "35,840" in line for line in sheet.arithmetic)
    silk = WhichSinglesMakeThisYarn(micron=21, fibre="silk")
    assert not any("graded" in line for line in silk.arithmetic)
    assert not any("graded" in line for line in WhichSinglesMakeThisYarn(micron=15).arithmetic)


# ---- in words ---------------------------------------------------------------------------------


def test_the_finest_is_said_as_roughly_as_it_is_known() -> None:
    # by hand: 496,054.65 / 30 fibres of 0.62128 tex is 26,615 yd/lb: three figures of it
    assert "is about 26,600 yd/lb." in plain(WhichSinglesMakeThisYarn())


def test_the_cut_is_worked_in_the_units_of_the_page() -> None:
    # by hand: 2,060 yd/lb is 415.28 m/100 g, 100 yd/lb per in is 7.9367 m/100 g per cm
    sheet = WhichSinglesMakeThisYarn(measure="metres, grams", grist_unit="m/100g")
    (line,) = (line for line in sheet.arithmetic if line.startswith("Its cut"))
    assert line.replace("\N{NO-BREAK SPACE}", " ") == (
        "Its cut: 415.3 m/100 g ÷ 7.937 m/100 g per cm = 52.32 cm."
    )
    assert not any(" in." in line or "yd/lb" in line for line in sheet.arithmetic)


def test_what_is_not_used_is_not_shown() -> None:
    assert WhichSinglesMakeThisYarn(plies=1).unused() == ["take_up", "cable_take_up"]
    assert WhichSinglesMakeThisYarn(cables=2).unused() == []
    assert WhichSinglesMakeThisYarn(plies=1, in_hand=[3000]).unused() == ["plies", "cable_take_up"]


# ---- which way it moves --------------------------------------------------------------------------


@few
@given(any_inputs(WhichSinglesMakeThisYarn), st.sampled_from(["micron", "spread"]), st.data())
def test_a_coarser_fibre_never_spins_finer(
    values: dict[str, Any], name: str, data: st.DataObject
) -> None:
    # trade sense, no source
    ends = data.draw(two_in_order(WhichSinglesMakeThisYarn, name))
    fine, coarse = (WhichSinglesMakeThisYarn(**values | {name: end}) for end in ends)
    assert coarse.finest <= fine.finest * (1 + 1e-12)


@few
@given(any_inputs(WhichSinglesMakeThisYarn), st.sampled_from(["plies", "grist_wanted"]), st.data())
def test_a_finer_yarn_or_more_singles_never_want_thicker_ones(
    values: dict[str, Any], name: str, data: st.DataObject
) -> None:
    kept = values | {"in_hand": [], "take_up": 1.03}
    ends = data.draw(two_in_order(WhichSinglesMakeThisYarn, name))
    thick, fine = (WhichSinglesMakeThisYarn(**kept | {name: end}) for end in ends)
    assert fine.asked >= thick.asked * (1 - 1e-12)


# ---- the charts -----------------------------------------------------------------------------


def test_the_curve_has_the_fibres_of_its_grist() -> None:
    # by hand: fibres times grist is the same everywhere, least times finest
    sheet = WhichSinglesMakeThisYarn()
    curve = next(
        layer
        for layer in CHARTS["fibres_in_section"]["spec"]["layer"]
        if layer["mark"]["type"] == "line" and "strokeDash" not in layer["mark"]
    )
    shown = {"grist_factor": 1.0, "grist_power": 1, "section_top": 40000.0}
    values = sheet.all_known() | shown
    for at in (1, 40, 80):
        row: dict[str, float] = {"at": at}
        for step in curve["transform"]:
            row[step["as"]] = run(step["calculate"], values, row)
        assert row["grist"] == pytest.approx(at * 500, rel=1e-12)
        assert row["fibres"] * row["grist"] == pytest.approx(30 * sheet.finest, rel=1e-9)

"""The worksheet on twist: in Python, and on the page.

GATE      published: Graduate Aptitude Test in Engineering, Textile Engineering, 2006, question 31.
Klein     published: W. Klein, Technology of Short-staple Spinning: cotton 2.1 to 3.5 to knit, 3.0
          to 3.8 for weft, 3.4 to 5.0 for warp.
by hand   exact from the definitions; tex from the exact yard and pound.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar

from tests.browser import open_sheet
from tests.drawn import any_inputs, few, two_in_order
from tests.emitted import run
from tests.reader import type_in
from yarnsheets.sheets import HowMuchTwistDoesItWant
from yarnsheets.units import convert

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

DESCRIBED = HowMuchTwistDoesItWant().describe()
CHARTS = {chart["name"]: chart for chart in DESCRIBED["charts"]}


def plain(sheet: HowMuchTwistDoesItWant) -> str:
    return sheet.sentence.replace("\N{NO-BREAK SPACE}", " ")


# ---- the slant -------------------------------------------------------------------------------


def test_the_slant_is_that_of_a_round_rod() -> None:
    # by hand: 206.6894 tex, tan a = turns to the m x the root of 4 pi x kg to the m / kg to the m3
    sheet = HowMuchTwistDoesItWant(grist=2400, twist=6, bulk_density=0.5)
    kilograms = 0.45359237 / 2400 / 0.9144
    slant = math.degrees(math.atan(6 / 0.0254 * math.sqrt(4 * math.pi * kilograms / 500)))
    assert sheet.slant == pytest.approx(slant, rel=1e-12)
    assert "slants the fibres on the outside of your single by 28 degrees" in plain(sheet)


def test_1200_yards_to_the_pound_at_5_to_the_inch() -> None:
    # by hand, at 0.4 g/cm3
    sheet = HowMuchTwistDoesItWant(grist=1200, twist=5, bulk_density=0.4)
    assert sheet.slant == pytest.approx(35.3515270929681, abs=5e-13)


@pytest.mark.parametrize(("degrees", "flag"), [(4.99, "is_soft"), (40.01, "is_hard")])
def test_a_slant_that_yarns_seldom_have_is_warned_about(degrees: float, flag: str) -> None:
    sheet = HowMuchTwistDoesItWant()
    twist = math.tan(math.radians(degrees)) / (math.pi * sheet.diameter)
    odd = HowMuchTwistDoesItWant(twist=twist)
    assert getattr(odd, flag)
    assert plain(odd).startswith("It wants at ")
    end = odd.least if flag == "is_soft" else odd.most
    cured = HowMuchTwistDoesItWant(twist=end)
    assert cured.slant == pytest.approx(5 if flag == "is_soft" else 40, rel=1e-12)
    usual = HowMuchTwistDoesItWant(twist=end * (1.01 if flag == "is_soft" else 0.99))
    assert not getattr(usual, flag)
    assert "It wants at" not in plain(usual)


def test_singles_that_slant_alike() -> None:
    # by hand: a quarter of the grist, half of the twist
    assert HowMuchTwistDoesItWant(grist=600, twist=3).slant == pytest.approx(
        HowMuchTwistDoesItWant(grist=2400, twist=6).slant, rel=1e-12
    )


# slant, what it is called: Irene Emery, The Primary Structures of Fabrics, 1966, from memory
@pytest.mark.parametrize(
    ("degrees", "tightness"),
    [(9.9, "loose"), (10.1, "medium"), (24.9, "medium"), (25.1, "tight"), (39.9, "tight")],
)
def test_what_a_slant_is_called(degrees: float, tightness: str) -> None:
    blank = HowMuchTwistDoesItWant()
    twist = math.tan(math.radians(degrees)) / (math.pi * blank.diameter)
    sheet = HowMuchTwistDoesItWant(twist=twist)
    assert f"a {tightness} twist" in plain(sheet)
    assert (twist < sheet.loose_below) == (tightness == "loose")
    assert (twist > sheet.tight_above) == (tightness == "tight")


# ---- multipliers -----------------------------------------------------------------------------


def test_the_multipliers_of_an_exam() -> None:
    # GATE: a tex factor of 38.28 at 29.5 tex is 17.90 turns to the inch
    sheet = HowMuchTwistDoesItWant(grist=convert(29.5, "tex", "yd/lb"), twist=17.9017149575591)
    assert sheet.tex_factor == pytest.approx(38.28, abs=0.005)
    assert sheet.cotton * 9.56734427219118 == pytest.approx(sheet.tex_factor, rel=1e-13)
    assert sheet.worsted * 11.7175558302038 == pytest.approx(sheet.tex_factor, rel=1e-13)
    assert sheet.metric == pytest.approx(30.2545990590901 * sheet.cotton, rel=1e-13)


# cotton multiplier, what it is in the range of: Klein
@pytest.mark.parametrize(
    ("multiplier", "uses"),
    [
        (2.0, set()),
        (2.2, {"to_knit"}),
        (3.1, {"to_knit", "to_weft"}),
        (3.45, {"to_knit", "to_weft", "to_warp"}),
        (3.6, {"to_weft", "to_warp"}),
        (4.9, {"to_warp"}),
        (5.1, set()),
    ],
)
def test_the_ranges_that_a_twist_lies_in(multiplier: float, uses: set[str]) -> None:
    # a 4s cotton: turns to the inch are twice the multiplier
    sheet = HowMuchTwistDoesItWant(grist=4 * 840, twist=2 * multiplier)
    assert sheet.cotton == pytest.approx(multiplier, rel=1e-12)
    assert {name for name in ("to_knit", "to_weft", "to_warp") if getattr(sheet, name)} == uses
    ranges = [line for line in sheet.arithmetic if line.startswith("Yours is in the range of")]
    assert len(ranges) == len(uses)


def test_what_cotton_mills_would_give() -> None:
    # by hand: twice 2.1, 3.5, 3.0, 3.8, 3.4 and 5.0 for a 4s
    sheet = HowMuchTwistDoesItWant(grist=4 * 840)
    ends = ("knit_low", "knit_high", "weft_low", "weft_high", "warp_low", "warp_high")
    found = [getattr(sheet, end) for end in ends]
    assert found == pytest.approx([4.2, 7.0, 6.0, 7.6, 6.8, 10.0], rel=1e-12)
    (line,) = (line for line in sheet.arithmetic if "mills" in line)
    assert "4.2 to 7, 6 to 7.6 and 6.8 to 10" in line
    assert "They are no rule for wool." in line
    assert "otton" not in plain(sheet)
    assert not any("otton" in str(chart) for chart in CHARTS.values())


# ---- plying ----------------------------------------------------------------------------------


def test_two_singles() -> None:
    # by hand: by winding alone 1 / (1 - 0.0587909616263781); the staple form, retraction 0.00813
    sheet = HowMuchTwistDoesItWant(grist=2400, twist=6, plies=2, ply_twist=4)
    assert sheet.helix == pytest.approx(1 / (1 - 0.0587909616263781), rel=1e-13)
    assert sheet.staple_take_up == pytest.approx(1 / (1 - 0.00813238650896653), rel=1e-14)
    # by hand, to 30 figures: secants of 1.1357215, 1.0240056 and 1.0624632
    assert sheet.take_up == pytest.approx(1.006887648693, abs=5e-13)
    assert "with 4 to the inch the take-up is about 1.007." in plain(sheet)


@pytest.mark.parametrize("plies", [2, 3, 4, 6])
def test_the_two_forms_agree_within_half_a_per_cent(plies: int) -> None:
    # independent of each other: means of fibre lengths against a logarithm
    sheet = HowMuchTwistDoesItWant(plies=plies)
    assert sheet.take_up == pytest.approx(sheet.staple_take_up, abs=0.005)
    assert sheet.take_up < sheet.helix


def test_a_balanced_yarn_and_the_same_multiplier() -> None:
    # common practice, no source: 60 to 70% for two; by hand: 6 over the root of 4, and two thirds
    two, four = (HowMuchTwistDoesItWant(twist=6, plies=plies) for plies in (2, 4))
    assert (two.balanced_low, two.balanced_high) == pytest.approx((3.6, 4.2), rel=1e-14)
    assert "For balance ply 2 the other way with 3.6 to 4.2 to the inch" in plain(two)
    assert (four.balanced_low, four.balanced_high) == pytest.approx((3, 4), rel=1e-14)
    assert "For balance ply 4 the other way with 3 to 4 to the inch" in plain(four)


def balanced_rods(plies: int, diameter: float, twist: float, stiffness: float) -> float:
    """Give the ply twist at which elastic rods come to rest, of their own twist.

    Independent of the sheet: the least energy of round rods of a torsional stiffness of 1 and that
    bending stiffness (A. E. H. Love, A Treatise on the Mathematical Theory of Elasticity, chapter
    XIX), wound as a helix without pulling; its torsion and curvature are by definition.
    """
    radius = diameter / 2 / math.sin(math.pi / plies)

    def energy(slant: float) -> float:
        torsion = math.sin(slant) * math.cos(slant) / radius
        curvature = math.sin(slant) ** 2 / radius
        return (2 * math.pi * twist - torsion) ** 2 + stiffness * curvature**2

    found = minimize_scalar(energy, bounds=(1e-6, math.pi / 4), method="bounded")
    return math.tan(found.x) / (2 * math.pi * radius) / twist


@pytest.mark.parametrize("plies", [2, 3, 4, 6, 8])
def test_elastic_rods_come_to_rest_where_the_sheet_says(plies: int) -> None:
    # twice as stiff to bend as to twist, two rods rest at what spinners find: 60 to 70%
    sheet = HowMuchTwistDoesItWant(plies=plies)
    share = balanced_rods(plies, sheet.diameter, sheet.twist, 2)
    assert sheet.balanced_low <= share * sheet.twist <= sheet.balanced_high


@pytest.mark.parametrize("stiffness", [0.5, 1, 2, 3])
@pytest.mark.parametrize("twist", [3, 6, 8])
def test_more_rods_rest_at_less_twist_but_at_more_than_the_same_multiplier(
    twist: float, stiffness: float
) -> None:
    # so the docstring of ply_twist_same_multiplier, whatever the stiffness
    diameter = HowMuchTwistDoesItWant().diameter
    two, *more = (balanced_rods(plies, diameter, twist, stiffness) for plies in range(2, 9))
    for plies, share in enumerate(more, start=3):
        assert math.sqrt(2 / plies) * two < share < two


def test_a_single_alone_is_not_plied() -> None:
    sheet = HowMuchTwistDoesItWant(plies=1)
    assert sheet.take_up == sheet.helix == sheet.staple_take_up == 1
    assert sheet.left == sheet.twist
    assert "plied" not in plain(sheet)
    assert sheet.unused() == ["ply_twist"]
    assert HowMuchTwistDoesItWant().unused() == []
    assert not any("Winding" in line for line in sheet.arithmetic)


def test_more_ply_twist_than_there_is_to_lose_is_said() -> None:
    # 5 turns less the little that the slant spares is more than 3
    sheet = HowMuchTwistDoesItWant(twist=3, ply_twist=5)
    assert sheet.is_reversed
    assert any("takes all the twist out of the singles" in line for line in sheet.arithmetic)
    assert sheet.left == pytest.approx(5 / sheet.helix**2 - 3, rel=1e-12)
    usual = HowMuchTwistDoesItWant(twist=6, ply_twist=4)
    assert not any("takes all the twist" in line for line in usual.arithmetic)


def test_a_take_up_that_spinners_do_not_find_is_no_answer() -> None:
    # common practice: 0.98 to 1.15
    sheet = HowMuchTwistDoesItWant(ply_twist=12)
    assert sheet.take_up > 1.15
    assert "comes out, which spinners do not find" in plain(sheet)
    assert "the take-up is about" not in plain(sheet)


# ---- the wheel -------------------------------------------------------------------------------


def test_treadling_both_ways() -> None:
    # by hand: 6 x 12 / 9 treadles of 9 / 6 in; 5 x 9 / 15 turns
    sheet = HowMuchTwistDoesItWant(twist=6, ratio=9, draft=12)
    assert sheet.treadles_wanted == pytest.approx(8, rel=1e-14)
    assert sheet.per_treadle == pytest.approx(1.5, rel=1e-14)
    assert HowMuchTwistDoesItWant(ratio=9, draft=15, treadles=5).counted == pytest.approx(
        3, rel=1e-14
    )
    back = HowMuchTwistDoesItWant(twist=7.3, ratio=11, draft=31, treadles=1)
    assert HowMuchTwistDoesItWant(ratio=11, draft=31, treadles=back.treadles_wanted).counted == (
        pytest.approx(7.3, rel=1e-12)
    )


def test_centimetres_show_turns_to_the_centimetre() -> None:
    # by hand: 6 / 2.54
    sheet = HowMuchTwistDoesItWant(measure="metres, grams")
    assert plain(sheet).startswith("For 2.36 to the cm treadle 8 times to a draft of 30.5 cm.")
    assert "to the inch" not in plain(sheet)


def test_the_notebooks_answers() -> None:
    # as the worksheet prints them
    assert round(HowMuchTwistDoesItWant().take_up, 3) == 1.007
    assert round(HowMuchTwistDoesItWant().helix, 3) == 1.062
    assert round(HowMuchTwistDoesItWant(plies=3).take_up, 3) == 1.027


def test_one_of_each_is_said_as_one() -> None:
    # by hand: 1 turn to the inch over a draft of 9 in, from a wheel of 9 turns to a treadle
    sheet = HowMuchTwistDoesItWant(grist=600, twist=1, ratio=9, draft=9, treadles=1)
    assert plain(sheet).startswith("For 1 to the inch treadle 1 time to a draft of 9 in.")
    assert any("Cotton: 1 turn to the inch" in line for line in sheet.arithmetic)


# ---- which way it moves --------------------------------------------------------------------------


@few
@given(any_inputs(HowMuchTwistDoesItWant), st.sampled_from(["twist", "grist"]), st.data())
def test_more_twist_or_a_thicker_single_never_slants_less(
    values: dict[str, Any], name: str, data: st.DataObject
) -> None:
    # trade sense, no source
    ends = data.draw(two_in_order(HowMuchTwistDoesItWant, name))
    less, more = (HowMuchTwistDoesItWant(**values | {name: end}) for end in ends)
    if name == "grist":
        less, more = more, less
    assert more.slant >= less.slant * (1 - 1e-12)
    assert more.treadles_wanted >= less.treadles_wanted * (1 - 1e-12)


# ---- the charts -----------------------------------------------------------------------------


def drawn(twist: float, at: range) -> list[dict[str, float]]:
    """Compute points of the fibres in the picture, in inches."""
    sheet = HowMuchTwistDoesItWant(twist=twist)
    values = sheet.all_known() | {"thickness_factor": 1.0}
    layer = next(
        each for each in CHARTS["slant_of_fibres"]["spec"]["layer"] if "detail" in each["encoding"]
    )
    table = []
    for number in at:
        row: dict[str, float] = {"at": number}
        for step in layer["transform"]:
            row[step["as"]] = run(step["calculate"], values, row)
        table.append(row)
    return table


@pytest.mark.parametrize("twist", [1, 6, 9])
def test_a_fibre_is_a_half_turn_of_a_helix(twist: float) -> None:
    # by hand: a half turn is 1 / (2 x twist) long, from edge to edge, halfway in the middle
    first = drawn(twist, range(15))
    thick = HowMuchTwistDoesItWant(twist=twist).diameter
    assert first[-1]["along"] - first[0]["along"] == pytest.approx(1 / twist / 2, rel=1e-12)
    assert first[0]["across"] == pytest.approx(thick / 2, rel=1e-12)
    assert first[-1]["across"] == pytest.approx(-thick / 2, rel=1e-12)
    assert first[7]["across"] == pytest.approx(0, abs=1e-15)
    for row in first:  # every point: across is the cosine of the turn
        turn = (row["along"] - first[0]["along"]) * twist * 2 * math.pi
        assert row["across"] == pytest.approx(thick / 2 * math.cos(turn), abs=1e-15)


def test_every_single_on_the_curve_slants_alike() -> None:
    # by hand: twist goes as the root of grist, so twist squared times tex is the same everywhere
    sheet = HowMuchTwistDoesItWant()
    tex = convert(2400, "yd/lb", "tex")
    curve = next(
        each
        for each in CHARTS["twist_against_grist"]["spec"]["layer"]
        if each["mark"]["type"] == "line"
    )
    values = sheet.all_known() | {
        "grist_factor": convert(1, "yd/lb", "tex"),
        "grist_power": -1,
        "twist_factor": 1 / 2.54,
        "grist_top": 2 * tex,
    }
    for at in (1, 40, 80):
        row: dict[str, float] = {"at": at}
        for step in curve["transform"]:
            row[step["as"]] = run(step["calculate"], values, row)
        assert row["grist"] == pytest.approx(tex * at / 40, rel=1e-12)
        assert row["twist"] ** 2 * row["grist"] == pytest.approx((6 / 2.54) ** 2 * tex, rel=1e-9)


# ---- on the page -----------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "how-much-twist-does-it-want")


def drawn_slant(page: Page) -> float:
    """Give the slant of the straight line as the picture shows it, in degrees on the screen."""
    return float(
        page.evaluate(
            """async () => {
                const view = document.querySelector(
                    "figure[data-name=slant_of_fibres] .ys-picture").view;
                await view.runAsync();
                const names = Object.keys(
                    view.getState({signals: () => false, data: () => true}).data);
                const ends = names.filter((name) => name.startsWith("source_"))
                    .map((name) => view.data(name))
                    .filter((rows) => rows.length === 2 && Math.abs(rows[0].across) > 1e-9)[0];
                const at = (row) => [view.scale("x")(row.along), view.scale("y")(row.across)];
                const [[x1, y1], [x2, y2]] = ends.map(at);
                return Math.abs(Math.atan((y2 - y1) / (x2 - x1))) * 180 / Math.PI;
            }"""
        )
    )


def test_the_strands_slant_follows_the_twist(sheet: Page) -> None:
    assert drawn_slant(sheet) == pytest.approx(HowMuchTwistDoesItWant().slant, rel=1e-6)
    for twist in (2, 12):
        type_in(sheet, "twist", str(twist))
        python = HowMuchTwistDoesItWant(twist=twist)
        assert drawn_slant(sheet) == pytest.approx(python.slant, rel=1e-6)


def test_one_single_alone_has_no_ply_twist_to_move(sheet: Page) -> None:
    grip = sheet.locator("figure[data-name=take_up_against_ply_twist] .ys-grip")
    grip.wait_for(state="visible")
    type_in(sheet, "plies", "1")
    grip.wait_for(state="hidden")

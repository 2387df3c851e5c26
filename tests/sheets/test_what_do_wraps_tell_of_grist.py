"""The worksheet on wraps and grist: what wraps leave open, in Python and on the page.

Sources:

Council   published: Craft Yarn Council, Standard Yarn Weight System, copies of 2018-2019, gauges.
Magazine  published: Spin Off, Yarn Standards, edges of its bands of wraps and yards to the pound.
Notes     published: a weaver's notes, 8/2 cotton of 3360 yd/lb is 52 diameters to the inch by 0.9.
by hand   a round rod of the yarn's mass; tex from the exact yard and pound.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.drawn import few
from tests.emitted import run
from tests.reader import box, centre, said, type_in
from yarnsheets import units
from yarnsheets.published.yarn_weights import YARN_WEIGHTS
from yarnsheets.sheets import WhatDoWrapsTellOfGrist

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

CHARTS = {chart["name"]: chart for chart in WhatDoWrapsTellOfGrist.describe()["charts"]}


def wraps_by_hand(grist: float, grams: float) -> float:
    """Give wraps to the inch: a kilometre of a round rod weighs its tex in grams."""
    tex = 453.59237 / grist / 0.0009144
    millimetres = math.sqrt(tex / grams / 1000 / math.pi) * 2
    return 25.4 / millimetres


# ---- wraps alone -----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("grams", "wraps"),
    # by hand, 1200 yd/lb: diameters of 1.873197, 1.324551 and 0.816236 mm
    [(0.15, 13.560), (0.30, 19.176), (0.79, 31.118)],
)
def test_1200_yards_to_the_pound_makes_many_counts(grams: float, wraps: float) -> None:
    assert wraps == pytest.approx(wraps_by_hand(1200, grams), abs=0.0005)
    sheet = WhatDoWrapsTellOfGrist(wraps=wraps, covered=1, grist=1200)
    assert sheet.density == pytest.approx(grams, abs=0.0005 / wraps * 2 * grams)


@few
@given(st.floats(3, 70))
def test_the_range_ends_where_the_wraps_would_be_those_counted(wraps: float) -> None:
    sheet = WhatDoWrapsTellOfGrist(wraps=wraps * 2, covered=2)
    for grist, grams in [
        (sheet.possible_low, 1.31),
        (sheet.usual_low, 0.40),
        (sheet.usual_high, 0.12),
        (sheet.possible_high, 0.08),
    ]:
        assert wraps_by_hand(grist, grams) == pytest.approx(wraps, rel=1e-12)


def test_wraps_alone_give_no_one_grist() -> None:
    sheet = WhatDoWrapsTellOfGrist(wraps=24, covered=2, known="unknown", stitches=[])
    plain = sheet.sentence.replace("\N{NO-BREAK SPACE}", " ")
    # by hand: 12 to the inch at 0.40, 0.12, 1.31 and 0.08 g/cm3 are 352.4, 1174.6, 107.6 and 1761.9
    assert plain.startswith("12 to the inch usually means a grist of 352 to 1,170 yd/lb.")
    caption = " ".join(sheet.said(CHARTS["wraps_with_grist"]["caption"]))
    assert "from 108 to 1,760\N{NO-BREAK SPACE}yd/lb" in caption
    assert "Yours" not in plain
    flags = (sheet.is_airy, sheet.is_usual, sheet.is_dense, sheet.is_impossible)
    assert not any(flags)


def test_in_tex_the_lower_end_of_the_range_comes_first() -> None:
    # by hand: 0.2117 cm thick, 0.7854 x 0.2117**2 x 100,000 x 0.12 and 0.40 g to the kilometre
    sheet = WhatDoWrapsTellOfGrist(wraps=24, covered=2, grist_unit="tex", stitches=[])
    assert "a grist of 422 to 1,410\N{NO-BREAK SPACE}tex" in sheet.sentence
    caption = " ".join(sheet.said(CHARTS["wraps_with_grist"]["caption"]))
    assert "all that is possible, from 282 to 4,610\N{NO-BREAK SPACE}tex" in caption
    airy = next(line for line in sheet.arithmetic if "airy for handspun" in line)
    assert airy.endswith("= 422.3 g: a grist of 422.3\N{NO-BREAK SPACE}tex.")


def test_the_arithmetic_gives_each_end_in_the_unit_chosen() -> None:
    # by hand: 2.116667 mm thick is 3.518802 mm2, so 422.256 and 1407.521 tex; times 9 for denier
    def ends(unit: str) -> list[str]:
        lines = WhatDoWrapsTellOfGrist(wraps=24, covered=2, grist_unit=unit).arithmetic
        return [
            line.partition(", or ")[2].replace("\N{NO-BREAK SPACE}", " ")
            for line in lines
            if "for handspun" in line
        ]

    assert ends("denier") == ["3,800 denier.", "12,668 denier."]
    assert ends("yd/lb") == ["1,175 yd/lb.", "352.4 yd/lb."]


@pytest.mark.parametrize(("measure", "units"), [("yards, ounces", 2), ("metres, grams", 1)])
def test_the_thickness_is_not_said_twice_in_one_unit(measure: str, units: int) -> None:
    # exact: 6 inches are 15.24 cm, and 400 turns over them 0.0381 cm each
    sheet = WhatDoWrapsTellOfGrist(wraps=400, covered=6, known="unknown", measure=measure)
    line = sheet.arithmetic[1]
    assert line.count("0.0381\N{NO-BREAK SPACE}cm") == 1
    assert line.count("which is") == units - 1


# ---- with a measured grist -------------------------------------------------------------------


@pytest.mark.parametrize(
    ("grams", "words"),
    [
        (0.10, "is airier than most"),
        (0.119, "is airier than most"),
        (0.121, "is as airy as handspun usually is"),
        (0.399, "is as airy as handspun usually is"),
        (0.401, "is denser than most"),
        (1.30, "is denser than most"),
        (1.32, "That cannot be"),
        (0.079, "hard to believe"),
    ],
)
def test_the_yarn_is_said_in_plain_words(grams: float, words: str) -> None:
    sheet = WhatDoWrapsTellOfGrist(wraps=wraps_by_hand(1500, grams), covered=1, grist=1500)
    assert words in sheet.sentence
    others = ("airier than most", "as airy as", "denser than most", "That cannot be", "hard to")
    assert sum(other in sheet.sentence for other in others) == 1


def test_denser_than_solid_fibre_is_a_warning_and_no_answer() -> None:
    # by hand: solid wool, 1.31 g/cm3, of 1200 yd/lb lies at 40.07 to the inch
    assert WhatDoWrapsTellOfGrist(grist=1200).most_wraps == pytest.approx(
        40.0719213762297, rel=1e-12
    )
    assert not WhatDoWrapsTellOfGrist(wraps=40, covered=1, grist=1200).warnings
    (warning,) = WhatDoWrapsTellOfGrist(wraps=40.5, covered=1, grist=1200).warnings
    said_so = WhatDoWrapsTellOfGrist(wraps=40.5, covered=1, grist=1200).say(warning)
    assert "denser than wool without any air in it, 1.31" in said_so
    assert "Wrap it again" in said_so


def test_what_cannot_be_of_wool_may_be_of_cotton() -> None:
    # Morton and Hearle, 2008, table 5.1: wool 1.31, cotton 1.52 g/cm3
    wraps = wraps_by_hand(1200, 1.4)
    assert WhatDoWrapsTellOfGrist(wraps=wraps, covered=1, grist=1200).is_impossible
    assert WhatDoWrapsTellOfGrist(wraps=wraps, covered=1, grist=1200, fibre="cotton").is_dense


def test_the_same_wraps_with_grist_unknown_are_not_impossible() -> None:
    assert not WhatDoWrapsTellOfGrist(wraps=40.5, covered=1, grist=1200, known="unknown").warnings


@pytest.mark.parametrize(("wraps", "covered"), [(5, 2), (100, 1)])
def test_unlikely_wraps_are_met_with_what_to_do(wraps: float, covered: float) -> None:
    sheet = WhatDoWrapsTellOfGrist(wraps=wraps, covered=covered, grist=3000)
    assert "than usual" in sheet.sentence
    # exact: an inch is 2.54 cm; 3 and 70 to it are common practice, no source
    usual = {3: "1.18", 70: "27.6"}[3 if wraps / covered < 3 else 70]
    sheet.measure = "metres, grams"
    assert f"{usual}\N{NO-BREAK SPACE}to the cm" in sheet.sentence
    assert "inch" not in sheet.sentence


# ---- what goes on to other worksheets ----------------------------------------------------------


def test_only_a_measured_grist_goes_on() -> None:
    names = {name for way in WhatDoWrapsTellOfGrist.onward for name in way.carries.values()}
    assert names == {"measured_grist"}
    assert WhatDoWrapsTellOfGrist(grist=1234).measured_grist == 1234
    assert math.isnan(WhatDoWrapsTellOfGrist(grist=1234, known="unknown").measured_grist)
    # nor one that cannot be: see denser than solid fibre
    assert math.isnan(WhatDoWrapsTellOfGrist(wraps=40.5, covered=1, grist=1200).measured_grist)


def test_the_grist_is_not_asked_of_a_reader_with_wraps_alone() -> None:
    assert WhatDoWrapsTellOfGrist().unused() == []
    assert WhatDoWrapsTellOfGrist(known="unknown").unused() == ["grist"]
    ends = [WhatDoWrapsTellOfGrist(known="unknown", grist=grist) for grist in (100, 30000)]
    assert ends[0].sentence == ends[1].sentence


# ---- whatever is typed -------------------------------------------------------------------------


@few
@given(st.floats(3, 70), st.floats(1, 1.5))
def test_more_wraps_never_mean_a_heavier_yarn(wraps: float, times: float) -> None:
    """Trade sense: a thinner yarn of the same airiness is longer to the weight."""
    more = min(wraps * times, 70)
    one, other = (WhatDoWrapsTellOfGrist(wraps=w * 2, covered=2) for w in (wraps, more))
    assert one.usual_low <= other.usual_low * (1 + 1e-12)
    assert one.usual_high <= other.usual_high * (1 + 1e-12)


# ---- diameters in cloth are another quantity ---------------------------------------------------


def test_diameters_in_cloth_are_the_weavers() -> None:
    # Notes: 0.9 times the root of 3360, printed 52
    assert WhatDoWrapsTellOfGrist(grist=3360).cloth_firm == pytest.approx(52, abs=0.5)


def test_diameters_in_cloth_are_no_wraps() -> None:
    """Magazine's wraps and yards at the edges of its bands: 2.1 to 2.5 times as many in cloth."""
    edges = [(16, 1901), (14, 1201), (13, 1200), (12, 901), (10, 601), (9, 600), (8, 401)]
    sheets = [WhatDoWrapsTellOfGrist(wraps=w, covered=1, grist=g) for w, g in edges]
    assert all(sheet.is_usual for sheet in sheets)
    assert min(s.cloth_soft / s.wraps_per_inch for s in sheets) == pytest.approx(2.1, abs=0.05)
    assert max(s.cloth_firm / s.wraps_per_inch for s in sheets) == pytest.approx(2.5, abs=0.05)


def test_doubling_the_grist_does_not_double_the_wraps() -> None:
    # exact: the root of two, and one over it
    sheet = WhatDoWrapsTellOfGrist(wraps=24, covered=2)
    assert sheet.wraps_ratio == pytest.approx(math.sqrt(2), rel=1e-15)
    assert sheet.diameter_ratio == pytest.approx(math.sqrt(0.5), rel=1e-15)
    again = WhatDoWrapsTellOfGrist(wraps=sheet.doubled_wraps, covered=1, grist=sheet.grist * 2)
    assert again.density == pytest.approx(sheet.density, rel=1e-12)


# ---- categories ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("stitches", "words"),
    # Council
    [
        ([22], "light (3)"),
        ([24], "fine (2) or light (3)"),
        ([23, 25], "fine (2) or light (3)"),
        ([20], "medium (4)"),
        ([28], "super fine (1)"),
        ([33], "lace (0)"),
        ([11], "super bulky (6)"),
        ([12], "bulky (5)"),
        ([6], "jumbo (7)"),
    ],
)
def test_the_category_is_a_set(stitches: list[float], words: str) -> None:
    sheet = WhatDoWrapsTellOfGrist(stitches=stitches)
    assert f"By its gauge it is {words}." in sheet.sentence
    marked = [row["category"] for row in sheet.bands if row["yours"]]
    assert marked == [
        f"{each.number} {each.name}" for each in YARN_WEIGHTS if f"({each.number})" in words
    ]


def test_no_swatch_no_category_and_a_swatch_too_fine_for_any() -> None:
    assert "gauge" not in WhatDoWrapsTellOfGrist(stitches=[]).sentence
    # Council: lace ends at 40 stitches
    assert "finer than any category" in WhatDoWrapsTellOfGrist(stitches=[41]).sentence


def test_wraps_and_grist_do_not_move_the_category() -> None:
    categories = {
        WhatDoWrapsTellOfGrist(wraps=w, grist=g).category
        for w, g in [(10, 300), (24, 1000), (60, 9000)]
    }
    assert categories == {"fine (2) or light (3)"}


# ---- the lines of the first chart -------------------------------------------------------------


def lines(grist_unit: str, wraps_unit: str) -> list[list[dict[str, float]]]:
    """Compute the two ends of every slanting line of the first chart, in yd/lb and to the inch."""
    sheet = WhatDoWrapsTellOfGrist()
    to_grist = units.scale("yd/lb", grist_unit)
    values: dict[str, Any] = {
        "grist_factor": to_grist.factor,
        "grist_power": to_grist.power,
        "wraps_factor": units.scale("1/in", wraps_unit).factor,
        **sheet.all_known(),
    }
    found = []
    for layer in CHARTS["wraps_with_grist"]["spec"]["layer"]:
        if layer["mark"]["type"] != "line" or "strokeDash" in layer["mark"]:
            continue
        table = []
        for at in (0, 1):
            row: dict[str, float] = {"at": at}
            for step in layer["transform"]:
                row[step["as"]] = run(step["calculate"], values, row)
            table.append(
                {
                    "grist": units.convert(row["grist"], grist_unit, "yd/lb"),
                    "wraps": units.convert(row["wraps"], wraps_unit, "1/in"),
                }
            )
        found.append(table)
    return found


@pytest.mark.parametrize(("grist_unit", "wraps_unit"), [("yd/lb", "1/in"), ("tex", "1/cm")])
def test_the_lines_are_of_one_density_each(grist_unit: str, wraps_unit: str) -> None:
    airy, dense, solid = lines(grist_unit, wraps_unit)[:3]
    for table, grams in [(airy, 0.12), (dense, 0.40), (solid, 1.31)]:
        for row in table:
            assert row["wraps"] == pytest.approx(wraps_by_hand(row["grist"], grams), rel=1e-12)


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "what-do-wraps-tell-of-grist")


def pick(page: Page, name: str, words: str) -> None:
    page.locator(f"[data-name={name}] select").select_option(words)


def test_what_cannot_be_is_said_on_the_page(sheet: Page) -> None:
    type_in(sheet, "grist", "100")
    assert "That cannot be" in said(sheet)
    assert sheet.locator(".ys-answer.ys-warned").count() == 1
    caption = sheet.locator("figure[data-name=wraps_with_grist] figcaption")
    assert "in the grey, where no yarn can" in str(caption.text_content())


def test_wraps_alone_take_the_point_and_its_words_away(sheet: Page) -> None:
    grip = sheet.locator("figure[data-name=wraps_with_grist] .ys-grip")
    assert grip.is_visible()
    pick(sheet, "known", "No, I have wraps alone")
    assert not grip.is_visible()


def test_dragging_the_point_moves_the_grist(sheet: Page) -> None:
    grip = sheet.locator("figure[data-name=wraps_with_grist] .ys-grip")
    grip.scroll_into_view_if_needed()
    x, y = centre(grip)
    sheet.mouse.move(x, y)
    sheet.mouse.down()
    sheet.mouse.move(x - 40, y, steps=6)
    grist = float(box(sheet, "grist").input_value())
    assert grist < 1000
    assert centre(grip)[0] == pytest.approx(x - 40, abs=5)
    sheet.mouse.up()
    assert said(sheet) == WhatDoWrapsTellOfGrist(grist=grist).sentence

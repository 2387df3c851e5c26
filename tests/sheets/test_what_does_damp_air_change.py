"""The worksheet on damp: weight and grist on another day, in Python and on the page.

Sources:

GATE      published: Graduate Aptitude Test in Engineering, Textile Engineering, by year, question.
D1909     published: ASTM D1909-13, as quoted in Bioresources and Bioprocessing, 2020, table 10.
D2118     published: ASTM D2118-18, contents as printed on the standard's public page.
EU        published: Regulation (EU) 1007/2011, annex IX; combed wool 18.25 % from memory.
Invoice   hand-worked: 20 t of an 80/20 blend at a moisture content of 4 %, by ISO 6741.
ICT       from memory: International Critical Tables, wool in air, as reprinted in ASHRAE handbooks.
exact     hand-worked: from the definitions of regain and content.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.browser import open_sheet, wait_until
from tests.drawn import few
from tests.published.test_tables import printed
from tests.reader import said, type_in
from yarnsheets.page import chart
from yarnsheets.published import regain
from yarnsheets.sheets import WhatDoesDampAirChange
from yarnsheets.sheets.shared import regain_used

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

GRAMS = 1 / 453.59237
COTTON, POLYESTER = "cotton", "polyester"
CHARTS = {chart["name"]: chart for chart in WhatDoesDampAirChange.describe()["charts"]}


def under(sheet: WhatDoesDampAirChange, chart: str) -> str:
    """Give the words under a chart."""
    return " ".join(sheet.said(CHARTS[chart]["caption"]))


def typed(now: float, then: float = 0.16, **others: Any) -> WhatDoesDampAirChange:
    """Build a sheet whose two regains the reader has typed."""
    return WhatDoesDampAirChange(
        now_by="regain", water_now=now, then_by="regain", water_then=then, **others
    )


# ---- weight and grist on the other day ---------------------------------------------------------


def test_1000_at_9_per_cent_is_940_at_16() -> None:
    # exact: 1000 x 1.09 / 1.16
    sheet = typed(0.09, 0.16, grist=1000)
    assert sheet.grist_then == printed("939.655172413793")
    assert "940\N{NO-BREAK SPACE}yd/lb" in sheet.sentence
    used = "regains used: 9% today and 16% then, by your own figure."
    assert used in under(sheet, "published_regains")


def test_a_ball_made_up_at_the_combed_regain() -> None:
    # EU: 50 g at 18.25 %, now at 14 %, exact 57 / 1.1825 g
    sheet = WhatDoesDampAirChange(
        weight=50 * GRAMS, now_by="combed", then_by="regain", water_then=0.14
    )
    assert sheet.weight_then / GRAMS == printed("48.2029598308668")
    used = "18.3% today, by EU 1007/2011 (from memory); 14% then, by your own figure."
    assert used in under(sheet, "published_regains")


@pytest.mark.parametrize(
    ("invoice", "grams", "agreed", "whose"),
    [
        # exact: 11360 / 109, 11700 / 109 and 11825 / 109
        ("astm", "104.220183486239", "13.6%", "ASTM D1909 (read as quoted)"),
        ("eu", "107.339449541284", "17%", "EU 1007/2011 (read)"),
        ("combed", "108.48623853211", "18.25%", "EU 1007/2011 (from memory)"),
    ],
)
def test_100_grams_at_9_per_cent_invoiced(
    invoice: str, grams: str, agreed: str, whose: str
) -> None:
    sheet = typed(0.09, weight=100 * GRAMS, invoice=invoice)
    assert sheet.invoice_weight / GRAMS == printed(grams)
    assert sheet.sentence.endswith(f"at the agreed {agreed}.")
    assert f"by {whose}, is" in sheet.arithmetic[-1]


def test_without_an_invoice_none_is_spoken_of() -> None:
    assert "invoice" not in WhatDoesDampAirChange().sentence


def test_the_answer_is_a_number_and_no_word_of_sources() -> None:
    for by in ("humidity", "standard", "eu"):
        sheet = WhatDoesDampAirChange(now_by=by, second="silk", invoice="combed")
        assert len(sheet.sentence.split(". ")) == 3
        assert not {"memory", "read", "EU", "Tables"} & set(sheet.sentence.split())


def test_ends_that_would_be_written_alike_are_not_given() -> None:
    # cotton at 65 % is 7 to 8 % of water: its weight is known to within one part in a hundred
    near = WhatDoesDampAirChange(fibre=COTTON, now_by="astm", then_by="standard")
    assert near.weight_low < near.weight_high
    assert "between" not in near.sentence
    assert "between" in WhatDoesDampAirChange().sentence


@few
@given(st.floats(0.001, 0.33), st.floats(0.001, 0.33), st.floats(100, 30000))
def test_the_yards_are_the_same_on_both_days(now: float, then: float, grist: float) -> None:
    sheet = typed(now, then, grist=grist)
    assert sheet.weight_then * sheet.grist_then == pytest.approx(sheet.yards, rel=1e-12)
    assert sheet.yards == pytest.approx(sheet.weight * grist, rel=1e-12)


def test_mixing_the_days_is_off_by_the_water() -> None:
    # exact: 250 x 1.16 / 1.09, and 250 x 1.09 / 1.16
    sheet = typed(0.09, 0.16, weight=0.25, grist=1000)
    assert sheet.yards_wrong == pytest.approx(250 * 1.16 / 1.09, rel=1e-12)
    assert sheet.yards_reverse == pytest.approx(250 * 1.09 / 1.16, rel=1e-12)
    for one, other in ((0.09, 0.16), (0.16, 0.09)):
        words = under(typed(one, other, weight=0.25, grist=1000), "yards_by_pairing")
        assert "266\N{NO-BREAK SPACE}yd" in words
        assert "235\N{NO-BREAK SPACE}yd" in words
        assert "up to 6.4% off" in words


# ---- content is never taken for regain -----------------------------------------------------------


@pytest.mark.parametrize(
    ("content", "regain_of_it", "shown"),
    [
        (0.12, "0.136363636363636", "13.6% today, by your moisture content of 12%"),  # D2118
        (0.1304, "0.149954001839926", "15% today, by your moisture content of 13.04%"),  # D2118
        (0.119718309859155, "0.136", "13.6% today, by your moisture content of 11.97%"),  # exact
        # exact: 0.12125 / 0.87875; the content is written as it stands in the arithmetic
        (0.12125, "0.137980085348506", "13.8% today, by your moisture content of 12.13%"),
    ],
)
def test_a_content_is_shown_as_the_regain_it_is(
    content: float, regain_of_it: str, shown: str
) -> None:
    sheet = WhatDoesDampAirChange(now_by="content", water_now=content)
    assert sheet.regain_now == printed(regain_of_it)
    assert sheet.content_now == pytest.approx(content, rel=1e-12)
    assert shown in under(sheet, "published_regains")


def test_a_regain_is_shown_as_the_content_it_is() -> None:
    # exact: 13.6 of water in 113.6
    sheet = WhatDoesDampAirChange(now_by="astm")
    assert sheet.content_now == printed("0.119718309859155")
    assert "13.6% of the dry weight, a moisture content of 11.97%" in sheet.arithmetic[0]


def blend(by: str, share: float = 0.33, water: float = 0.04) -> WhatDoesDampAirChange:
    return WhatDoesDampAirChange(
        weight=1, fibre=POLYESTER, second=COTTON, share=share, share_of="dry", invoice="astm",
        now_by=by, water_now=water, then_by=by, water_then=water,
    )  # fmt: skip


def test_an_invoice_from_a_content() -> None:
    """GATE 2010, question 38: 100 kg of 67/33 polyester and cotton at 4 % moisture content.

    A published working takes the content for a regain and prints 99.10 kg; exact is 98.95008.
    """
    right = blend("content")
    assert right.regain_agreed == printed("0.03073")
    assert 100 * right.dry == printed("96")
    assert 100 * right.invoice_weight == printed("98.95008")
    assert 100 * right.invoice_weight != printed("99.10")
    mistaken = blend("regain")
    assert 100 * mistaken.invoice_weight == printed("99.1086538461538")


def test_20_tons_of_polyester_and_cotton_are_sold_by_the_agreed_regain() -> None:
    """Invoice: 80/20 at 4 % content is 19200 kg dry, and 19587.84 kg with the agreed 2.02 %."""
    sheet = blend("content", share=0.2)
    assert 20000 * sheet.dry == printed("19200")
    assert sheet.regain_agreed == printed("0.0202")
    assert 20000 * sheet.invoice_weight == printed("19587.84")


def test_water_of_a_blend() -> None:
    """GATE 2007, question 70: half wool at 17 %, half silk and viscose at 11 %: 12.28 in 100 g."""
    sheet = WhatDoesDampAirChange(
        weight=100 * GRAMS, fibre="wool", second="silk", share=0.5, share_of="dry",
        now_by="eu", then_by="eu",
    )  # fmt: skip
    assert sheet.regain_now == printed("0.14")
    assert (sheet.weight - sheet.dry) / GRAMS == printed("12.28")
    origin = "by EU 1007/2011 (wool read, silk from memory)"
    assert origin in under(sheet, "published_regains")


# ---- a label counts each fibre with its agreed water ---------------------------------------------


def test_a_label_s_shares_are_not_of_the_dry_weight() -> None:
    # EU: wool 17 %, polyester 1.5 %. Exact: half and half on a label is 50 / 1.17 of dry wool and
    # 50 / 1.015 of dry polyester, so polyester is 1.17 / (1.17 + 1.015) of the dry weight
    sheet = WhatDoesDampAirChange(second=POLYESTER, share=0.5, now_by="eu", then_by="eu")
    assert sheet.dry_share == pytest.approx(1.17 / 2.185, rel=1e-12)
    # exact: 100 g at the agreed regains holds 50 g of either with its water, which gives them back
    assert sheet.dry * (1 - sheet.dry_share) * 1.17 == pytest.approx(sheet.weight / 2, rel=1e-12)
    assert sheet.dry * sheet.dry_share * 1.015 == pytest.approx(sheet.weight / 2, rel=1e-12)
    assert "50% of polyester has the water in it" in " ".join(sheet.arithmetic)
    dry = WhatDoesDampAirChange(second=POLYESTER, share=0.5, share_of="dry")
    assert dry.dry_share == 0.5
    assert "label" not in " ".join(dry.arithmetic)


def test_goods_at_their_agreed_regain_weigh_what_their_label_says() -> None:
    sheet = WhatDoesDampAirChange(second="silk", now_by="eu", invoice="eu", weight=100 * GRAMS)
    assert sheet.invoice_weight / GRAMS == pytest.approx(100, rel=1e-12)


# ---- no fibre holds more than it can -----------------------------------------------------------


@pytest.mark.parametrize(
    ("fibre", "most"),
    # Morton and Hearle, from memory and round
    [("wool", 33), ("silk", 35), (COTTON, 27), ("flax", 25), ("nylon", 9), (POLYESTER, 1)],
)
def test_a_regain_that_a_fibre_cannot_have_is_refused_with_its_range(fibre: str, most: int) -> None:
    def at(percent: float) -> WhatDoesDampAirChange:
        return typed(percent / 100, 0.005, fibre=fibre)

    assert not at(most).warnings
    assert at(most + 0.5).warnings == at(most + 0.5).warnings[:1]
    words = at(most + 0.5).sentence
    assert f"{fibre} takes up from 0 to about {most}% from the air" in words
    assert "let the yarn dry" in words
    # only what is typed is held to it, and only on the day that it is typed for
    sheet = WhatDoesDampAirChange(fibre=fibre, now_by="eu", then_by="eu", water_now=0.4)
    assert not sheet.warnings


def test_a_blend_holds_what_its_fibres_do_by_their_dry_shares() -> None:
    # by hand: half of 33 % and half of 9 % is 21 %
    half: dict[str, Any] = {"second": "nylon", "share": 0.5, "share_of": "dry"}
    assert not typed(0.21, 0.1, **half).warnings
    refused = typed(0.1, 0.215, **half).sentence
    assert refused.startswith("A regain of 21.5% cannot be: a blend of wool and nylon")
    assert "from 0 to about 21%" in refused


def test_a_content_that_no_air_gives_is_met_with_what_to_do() -> None:
    (warning,) = WhatDoesDampAirChange(now_by="content", water_now=0.3).warnings
    assert "30% is a regain of 42.86%" in warning  # exact: 30 / 70
    assert "let the yarn dry" in warning


# ---- humidity -----------------------------------------------------------------------------------


def test_wool_between_two_airs() -> None:
    # ICT: 10.8 % at 40 % humidity, 17.2 % at 70 %, either good to 1.5 points
    sheet = WhatDoesDampAirChange(humidity_now=0.4, humidity_then=0.7, weight=1, grist=1000)
    assert sheet.weight_then == pytest.approx(1.172 / 1.108, rel=1e-12)
    assert sheet.weight_low == pytest.approx(1.157 / 1.123, rel=1e-12)
    assert sheet.weight_high == pytest.approx(1.187 / 1.093, rel=1e-12)
    assert sheet.grist_then == pytest.approx(1108 / 1.172, rel=1e-12)
    words = under(sheet, "published_regains")
    assert "10.8% today and 17.2% then, by the International Critical Tables (from memory)" in words
    assert [row["day"] for row in sheet.days] == ["today", "then"]


def test_the_curve_is_the_table_s() -> None:
    # ICT, per cent of humidity and of regain
    table = {10: 4.7, 20: 7.0, 30: 8.9, 40: 10.8, 50: 12.8, 60: 14.9, 70: 17.2, 80: 19.9, 90: 23.4}
    sheet = typed(0.10)
    assert {row["humidity"]: row["ratio"] for row in sheet.air} == pytest.approx(
        {humidity: (100 + held) / 110 for humidity, held in table.items()}
    )
    assert sheet.days == []


@pytest.mark.parametrize("fibre", ["silk", COTTON, "flax", "nylon"])
def test_nothing_is_guessed_for_a_fibre_without_a_table(fibre: str) -> None:
    sheet = WhatDoesDampAirChange(fibre=fibre)
    (warning,) = sheet.warnings
    assert f"none of {fibre}" in warning
    assert "published for air of 65%" in warning
    assert sheet.air == []
    assert sheet.published  # what there is to choose from
    assert sheet.arithmetic == []
    assert not WhatDoesDampAirChange(fibre=fibre, now_by="standard", then_by="astm").warnings


def test_in_a_blend_the_fibre_without_a_table_is_held_and_that_is_said() -> None:
    # ICT 10.8 and 17.2 %; Morton and Hearle, as quoted, silk 10 %
    sheet = WhatDoesDampAirChange(
        humidity_now=0.4, humidity_then=0.7, second="silk", share=0.5,
        share_of="dry",
    )  # fmt: skip
    assert sheet.regain_now == pytest.approx((0.108 + 0.10) / 2, rel=1e-12)
    assert sheet.regain_then == pytest.approx((0.172 + 0.10) / 2, rel=1e-12)
    assert "no table of silk" in under(sheet, "weight_against_humidity")
    assert "held" not in under(typed(0.09, second="silk"), "weight_against_humidity")


def test_standard_air_keeps_both_figures_for_wool() -> None:
    # Morton and Hearle, as quoted in the review's table 10: 14, and 16 to 18
    sheet = WhatDoesDampAirChange(now_by="standard")
    assert (sheet.now_low, sheet.regain_now, sheet.now_high) == pytest.approx((0.14, 0.16, 0.18))


# ---- the regains, each with its source -----------------------------------------------------------


@pytest.mark.parametrize("fibre", WhatDoesDampAirChange.inputs()["fibre"].options)
@pytest.mark.parametrize("by", ["standard", "astm", "eu", "combed"])
def test_every_fibre_has_every_published_kind_and_says_whose(fibre: str, by: str) -> None:
    sheet = WhatDoesDampAirChange(fibre=fibre, now_by=by, then_by=by)
    assert not sheet.warnings
    assert sheet.now_low <= sheet.regain_now <= sheet.now_high
    source = {"standard": "Morton and Hearle", "astm": "ASTM D1909"}.get(by, "EU 1007/2011")
    assert f"by {source} (" in under(sheet, "published_regains")
    full = {"standard": "Physical Properties", "astm": "D1909"}.get(by, "No 1007/2011")
    assert full in sheet.full_now


@pytest.mark.parametrize(
    ("fibre", "authority", "percent"),
    [
        (regain.WOOL, "astm", 13.6),  # D1909
        (regain.COTTON, "astm", 8.5),  # D1909
        (regain.JUTE, "astm", 13.75),  # D1909
        (regain.WOOL, "eu", 17.0),  # EU
        (regain.WOOL, "combed", 18.25),  # EU
        (regain.NYLON, "eu", 6.25),  # EU
        (regain.COTTON, "combed", 8.5),  # EU, which has no combed cotton
    ],
)
def test_the_agreed_figure_is_the_authority_s(
    fibre: regain.Fibre, authority: str, percent: float
) -> None:
    found = regain_used.agreed_by([(fibre, 1.0)], authority)
    assert found.low == found.value == found.high == pytest.approx(percent / 100, rel=1e-15)
    assert found.origin.startswith("ASTM" if authority == "astm" else "EU")


def test_contradictions_stand_side_by_side() -> None:
    # air of 65 % twice, then D1909, D2118 twice (as contents), Australia, EU twice
    figures = WhatDoesDampAirChange().published
    assert [round(row["percent"], 2) for row in figures] == [14, 17, 13.6, 13.64, 15, 16, 17, 18.25]
    assert [row["recalled"] for row in figures] == [False] * 7 + [True]
    assert len({row["figure"] for row in figures}) == len(figures)
    both = WhatDoesDampAirChange(second="flax").published
    assert len({row["figure"] for row in both}) == len(both) == 8 + 4


# ---- whatever is typed -------------------------------------------------------------------------


def test_only_the_boxes_that_count_are_asked() -> None:
    by_air = {"water_now", "water_then", "share", "share_of"}
    assert set(WhatDoesDampAirChange().unused()) == by_air
    assert set(WhatDoesDampAirChange(second="silk").unused()) == {"water_now", "water_then"}
    # a blend of wool and wool is wool
    assert set(WhatDoesDampAirChange(second="wool").unused()) == by_air
    assert "humidity_now" in WhatDoesDampAirChange(now_by="regain").unused()
    assert "water_now" not in WhatDoesDampAirChange(now_by="regain").unused()


@few
@given(
    st.floats(0.1, 0.9), st.floats(0.1, 0.9), st.floats(0.1, 0.9),
    st.sampled_from(["none", "silk", COTTON, POLYESTER]), st.floats(0.01, 0.99),
)  # fmt: skip
def test_damper_air_never_lightens_the_yarn(
    now: float, one: float, other: float, second: str, share: float
) -> None:
    drier, damper = (
        WhatDoesDampAirChange(humidity_now=now, humidity_then=then, second=second, share=share)
        for then in sorted((one, other))
    )
    assert drier.weight_then <= damper.weight_then * (1 + 1e-12)
    assert drier.weight_low <= damper.weight_low * (1 + 1e-12)
    assert drier.weight_high <= damper.weight_high * (1 + 1e-12)
    assert drier.grist_then >= damper.grist_then * (1 - 1e-12)


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "what-does-damp-air-change")


def pick(page: Page, name: str, words: str) -> None:
    page.locator(f"[data-name={name}] select").select_option(words)


def test_the_days_are_drawn_on_the_curve(sheet: Page) -> None:
    type_in(sheet, "humidity_now", "40")
    type_in(sheet, "humidity_then", "70")
    type_in(sheet, "weight", "8")
    drawn = sheet.evaluate(
        """async () => {
            const figure = document.querySelector("figure[data-name=weight_against_humidity]");
            const { view } = figure.querySelector(".ys-picture");
            await view.runAsync();
            const tables = view.getState({ signals: () => false, data: () => true }).data;
            const rows = Object.keys(tables).flatMap((name) => view.data(name) ?? []);
            return rows.filter((row) => row.day && row.weight).map((row) => [row.day, row.weight]);
        }"""
    )
    # ICT: 10.8 % and 17.2 %; in ounces
    assert dict(drawn) == pytest.approx({"today": 8, "then": 8 * 1.172 / 1.108}, rel=1e-12)


def test_the_lines_of_the_answer_go_with_it(sheet: Page) -> None:
    marks = f".mark-rule line[stroke='{chart.PROJECT}']"
    days = sheet.locator(f"figure[data-name=published_regains] {marks}")
    assert days.count() == 2
    pick(sheet, "fibre", "silk")
    assert "none of silk" in said(sheet)
    wait_until(lambda: days.count() == 0, "both days' lines are gone")

"""The worksheet on the dye lot: lots, stock, dye and cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
import traitlets
from hypothesis import given
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.drawn import few
from tests.published.test_tables import printed
from tests.reader import box, said, type_in
from yarnsheets.sheets import WhatDoesTheDyeLotTake, WhatDoesThisSpinTake

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

POUND = 453.59237  # grams, exact: NIST Handbook 44, appendix C
# A dyer's own worked example: 454 g at 1 % from a stock of 1 %, in one pot.
PLAIN: dict[str, Any] = {
    "weight": 454 / POUND,
    "pot_holds": 500 / POUND,
    "depth": 0.01,
    "strength": 1,
    "parts": [1],
    "liquor_ratio": 40,
    "measure": "metres, grams",
}


CHARTS = {chart["name"]: chart for chart in WhatDoesTheDyeLotTake.describe()["charts"]}


def lot(**changed: Any) -> WhatDoesTheDyeLotTake:
    return WhatDoesTheDyeLotTake(**PLAIN | changed)


def under(sheet: WhatDoesTheDyeLotTake, chart: str = "in_the_pot") -> str:
    """Give the words under a chart."""
    return " ".join(sheet.said(CHARTS[chart]["caption"]))


@pytest.mark.parametrize(
    ("grams", "depth", "strength", "stock"),
    [
        (454, 0.01, 1, "454"),
        (454, 0.02, 1, "908"),
        (454, 0.001, 0.1, "454"),
        (1100, 0.02, 1.5, "1466.66666666667"),  # exact: 22 / 0.015; printed cut off, 1466
        (100, 0.005, 1, "50"),
        (100, 0.05, 1, "500"),
    ],
)
def test_dyers_worked_examples(grams: float, depth: float, strength: float, stock: str) -> None:
    # published: dyers' own worked examples
    sheet = lot(weight=grams / POUND, pot_holds=1200 / POUND, depth=depth, strength=strength)
    assert sheet.lots == 1
    assert sheet.lot_stock == printed(stock)


def test_the_example_in_words_and_by_hand() -> None:
    sheet = lot()
    assert sheet.sentence == (
        "Dye 454\xa0g in one lot, with 454\xa0mL of stock. That stock holds 4.54\xa0g of dye."
    )
    steps = " ".join(sheet.arithmetic)
    assert "454\xa0g × 1% = 4.54\xa0g" in steps
    assert "4.54\xa0g ÷ 1\xa0g × 100\xa0mL = 454\xa0mL" in steps
    # by hand: 454 × 40 = 18160 mL, of which 454 are stock: 17.706 litres of water
    assert "18.16 litres, stock and all: 17.71 litres of water" in steps


def test_the_reserve_goes_in_the_same_lots_and_all_are_alike() -> None:
    # by hand: 1000 g and a tenth is 1100 g; in a pot for 400 g, 3 lots of 366 2/3 g
    sheet = lot(weight=1000 / POUND, spare=0.1, pot_holds=400 / POUND)
    assert sheet.lots == 3
    assert sheet.lot_weight * POUND == pytest.approx(1100 / 3, rel=1e-14)
    assert sheet.all_stock == pytest.approx(1100, rel=1e-14)
    assert sheet.sentence.startswith("Dye 1,100\xa0g in 3 lots, each with 367\xa0mL of stock.")
    assert "Of the 1,100\xa0g, 100\xa0g is the reserve you asked for." in sheet.sentence
    assert "3 lots of 367\xa0g each" in under(sheet, "lots_in_pots")


def test_there_is_no_reserve_unless_it_is_asked_for_in_sight() -> None:
    assert WhatDoesTheDyeLotTake.inputs()["spare"].default_value == 0
    assert not any(
        group["folded"] for group in WhatDoesTheDyeLotTake.groups() if "spare" in group["inputs"]
    )
    sheet = lot(weight=1000 / POUND, pot_holds=400 / POUND)
    assert sheet.goods == sheet.weight
    assert "reserve" not in sheet.sentence


def test_the_reserve_of_a_spin_is_not_counted_again() -> None:
    spin = WhatDoesThisSpinTake()
    (way,) = (each for each in spin.onward if each.worksheet == "what-does-the-dye-lot-take")
    known = spin.all_known()
    there = WhatDoesTheDyeLotTake(**{asked: known[name] for asked, name in way.carries.items()})
    assert there.goods == known[way.carries["weight"]]
    # and what was dyed is what there is, with a reserve where one was asked for
    (on,) = there.onward
    assert there.all_known()[on.carries["weights"]] == there.goods


def test_a_pot_filled_to_the_brim_makes_no_lot_more() -> None:
    # by hand: 3 x 0.1 lb in a pot for 0.1 lb is three lots, though 0.3 / 0.1 is not exactly 3
    assert lot(weight=0.3, pot_holds=0.1).lots == 3
    assert lot(weight=0.3001, pot_holds=0.1).lots == 4
    # nor is the twelfth lot one too many: 12 x 0.1 lb
    assert lot(weight=12 * 0.1, pot_holds=0.1).lots == 12


def test_colours_share_the_stock_by_their_parts() -> None:
    # by hand: 60, 30 and 10 of 454 mL
    sheet = lot(parts=[60, 30, 10])
    assert [sheet.stock_1, sheet.stock_2, sheet.stock_3, sheet.stock_4] == pytest.approx(
        [272.4, 136.2, 45.4, 0], rel=1e-12
    )
    assert "Mix each lot’s stock of 272\xa0mL, 136\xa0mL and 45.4\xa0mL." in under(sheet)
    assert lot(parts=[6, 3, 1]).stock_2 == pytest.approx(136.2, rel=1e-12)
    assert "Mix" not in under(lot(parts=[7]))
    assert "454\xa0mL and 454\xa0mL." in under(lot(parts=[5, 5], depth=0.02))


@pytest.mark.parametrize(
    ("parts", "least"), [([1], 1), ([1, 4], 0.2), ([4, 1, 5], 0.1), ([4, 3, 2, 1], 0.1)]
)
def test_the_least_colour_decides_whether_powder_can_be_weighed(
    parts: list[float], least: float
) -> None:
    sheet = lot(parts=parts)
    assert sheet.least_dye * POUND == pytest.approx(4.54 * least, rel=1e-12)
    # common practice, no source: half a gram is the least for a kitchen scale
    assert ("too little for most scales" in under(sheet)) == (4.54 * least < 0.5)


def test_additions_are_shares_of_the_weight_of_fibre() -> None:
    # by hand: 3 % and 10 % of 500 g
    sheet = lot(weight=500 / POUND, first_share=0.03, second_share=0.1, first_name="vinegar salt")
    assert sheet.first_mass * POUND == pytest.approx(15, rel=1e-12)
    assert sheet.second_mass * POUND == pytest.approx(50, rel=1e-12)
    assert "vinegar salt: 500\xa0g × 3% = 15\xa0g." in sheet.arithmetic
    without = " ".join(lot(first_share=0, second_share=0).arithmetic)
    assert "citric acid" not in without
    assert "salt" not in without


def test_damp_moves_the_weight_of_fibre_and_the_dye_with_it() -> None:
    # hand-worked: 1.16 / 1.09 is 1.0642 to four places
    plain, moved = lot(), lot(recipe_by="own", water_now=0.09, water_used=0.16)
    assert moved.lot_fibre / plain.lot_fibre - 1 == printed("0.0642")
    assert moved.lot_stock / plain.lot_stock - 1 == printed("0.0642")
    assert moved.lot_weight == plain.lot_weight  # what goes on the scale is as it was
    step = next(line for line in moved.arithmetic if "as weighed" in line)
    assert "as weighed, at 9% regain, ÷ 1.09 × 1.16 =" in step
    bone_dry = lot(recipe_by="own", water_now=0.16, water_used=0)
    assert bone_dry.lot_fibre * POUND == pytest.approx(454 / 1.16, rel=1e-14)


@pytest.mark.parametrize(
    ("by", "fibre", "percent"),
    [
        ("astm", "wool", 13.6),  # ASTM D1909-13, as quoted in Bioresources and Bioprocessing, 2020
        ("astm", "cotton", 8.5),  # the same
        ("eu", "wool", 17),  # Regulation (EU) 1007/2011, annex IX
        ("combed", "wool", 18.25),  # the same, from memory
    ],
)
def test_a_recipe_goes_by_the_weight_at_an_agreed_regain(
    by: str, fibre: str, percent: float
) -> None:
    # exact: goods weighed at 5 % and sold at the agreed regain
    sheet = lot(recipe_by=by, fibre=fibre, water_now=0.05)
    assert sheet.lot_fibre * POUND == pytest.approx(454 * (100 + percent) / 105, rel=1e-12)
    # 454 g by the label of a skein, which has the agreed regain in it
    assert lot(recipe_by=by, fibre=fibre, water_now=percent / 100).lot_stock == pytest.approx(
        454, rel=1e-12
    )


def test_the_weight_is_taken_as_the_scale_shows_it_unless_the_recipe_has_a_regain() -> None:
    sheet = lot()
    assert sheet.unused() == ["fibre", "water_now", "water_used"]
    assert lot(water_now=0.3, water_used=0, fibre="nylon").sentence == sheet.sentence
    assert lot(recipe_by="astm").unused() == ["water_used"]
    assert lot(recipe_by="own").unused() == []


@pytest.mark.parametrize(("name", "by"), [("water_now", "eu"), ("water_used", "own")])
def test_a_regain_that_the_fibre_cannot_have_is_refused_with_its_range(name: str, by: str) -> None:
    # Morton and Hearle, from memory and round: nylon takes up at most 9 %
    given: dict[str, Any] = {"recipe_by": by, "fibre": "nylon", "water_now": 0.04, "water_used": 0}
    assert not lot(**given | {name: 0.09}).warnings
    refused = lot(**given | {name: 0.16}).sentence
    assert refused.startswith("A regain of 16% cannot be: nylon takes up from 0 to about 9%")
    assert not lot(**given | {name: 0.16, "recipe_by": "scale"}).warnings


def test_what_may_go_wrong_is_said() -> None:
    # common practice, no source: above 4 % dye may be left in the bath
    assert "above 4%" not in under(lot(depth=0.04), "stock_against_depth")
    assert "above 4%" in under(lot(depth=0.041), "stock_against_depth")
    # by hand: 10 g at 0.05 % from 10 g in 100 mL is 0.05 mL
    assert "0.05\xa0mL is too little stock" in under(
        lot(weight=10 / POUND, depth=0.0005, strength=10)
    )


def test_stock_that_would_not_go_into_the_bath_is_no_recipe() -> None:
    # by hand: 10 % from 0.1 g in 100 mL is 100 mL to the gram, in a bath of 40: 0.25 g and it fits
    sheet = lot(depth=0.1, strength=0.1)
    assert "of at least 0.25\xa0g in 100\xa0mL" in sheet.sentence
    assert "–" not in " ".join(sheet.arithmetic)
    fits = lot(depth=0.1, strength=0.25)
    assert not fits.warnings
    assert fits.lot_water == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize(
    ("changed", "warning"),
    [
        ({"parts": []}, "Give at least one part"),
        ({"parts": [1, 2, 3, 4, 5]}, "5 colours are more than this page mixes"),
        ({"weight": 50, "pot_holds": 1}, "That would be 50 lots"),
        ({"first_name": " "}, "Give each addition a name"),
    ],
)
def test_what_cannot_be_answered_is_asked_about(changed: dict[str, Any], warning: str) -> None:
    sheet = lot(**changed)
    assert sheet.sentence.startswith(warning)
    assert "Dye" not in sheet.sentence


@pytest.mark.parametrize(("name", "wrong"), [("depth", 1), ("strength", 0), ("parts", [0])])
def test_what_cannot_be_is_refused_in_the_readers_words(name: str, wrong: Any) -> None:
    with pytest.raises(traitlets.TraitError, match="is outside the range"):
        lot(**{name: wrong})


@few
@given(
    weight=st.floats(0.05, 5),
    spare=st.floats(0, 1),
    depth=st.floats(0.0005, 0.1),
    strength=st.floats(0.1, 10),
    parts=st.lists(st.floats(0.1, 1000), min_size=1, max_size=4),
)
def test_dye_is_neither_made_nor_lost(
    weight: float, spare: float, depth: float, strength: float, parts: list[float]
) -> None:
    sheet = lot(
        weight=weight,
        spare=spare,
        depth=depth,
        strength=strength,
        parts=parts,
        pot_holds=1,
        liquor_ratio=150,  # room for all that stock
    )
    fibre = weight * POUND + spare * weight * POUND
    assert sheet.lots * sheet.lot_fibre * POUND == pytest.approx(fibre, rel=1e-12)
    stocks = [sheet.stock_1, sheet.stock_2, sheet.stock_3, sheet.stock_4]
    dye = sum(volume * strength / 100 for volume in stocks) * sheet.lots
    assert dye == pytest.approx(depth * fibre, rel=1e-12)
    assert sheet.lot_weight <= 1 + 1e-9  # every lot fits in the pot


@few
@given(
    st.floats(0.01, 5), st.floats(1, 2), st.floats(0, 1), st.sampled_from(["scale", "astm", "eu"])
)
def test_more_goods_never_take_less_dye(weight: float, times: float, spare: float, by: str) -> None:
    one, more = (
        lot(weight=w, spare=spare, recipe_by=by, pot_holds=2) for w in (weight, weight * times)
    )
    for name in ("all_dye", "all_stock", "all_first", "all_second", "lots"):
        assert getattr(one, name) <= getattr(more, name) * (1 + 1e-12)


def test_a_recipe_that_cannot_be_is_said_on_the_page(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-does-the-dye-lot-take")
    type_in(page, "strength", "0.1")
    type_in(page, "depth", "10")
    assert "Make a stronger one" in said(page)
    assert page.locator(".ys-answer.ys-warned").count() == 1
    type_in(page, "strength", "1")
    assert said(page) == WhatDoesTheDyeLotTake(depth=0.1).sentence


def test_the_water_in_the_fibre_is_asked_only_for_a_recipe_that_reckons_with_it(
    page: Page, server: Server
) -> None:
    open_sheet(page, server, "what-does-the-dye-lot-take")
    page.locator("details:has([data-name=recipe_by]) > summary").first.click()
    box(page, "liquor_ratio").wait_for(state="visible")
    assert not box(page, "water_now").is_visible()
    recipe = page.locator("[data-name=recipe_by] select")
    recipe.select_option("agreed for trade by ASTM D1909")
    type_in(page, "water_now", "9")
    assert not box(page, "water_used").is_visible()
    assert said(page) == WhatDoesTheDyeLotTake(recipe_by="astm", water_now=0.09).sentence


def test_the_cautions_stand_on_the_page_of_a_telephone_too(page: Page, server: Server) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    open_sheet(page, server, "what-does-the-dye-lot-take")
    cautions = page.locator(".ys-cautions")
    assert cautions.locator("h2").inner_text() == "Before you start"
    lines = cautions.locator("li")
    assert lines.all_text_contents() == list(WhatDoesTheDyeLotTake.cautions)
    text = cautions.inner_text()
    for word in ("dust mask", "gloves", "kitchen", "pets", "safety sheet", "doctor", "Label"):
        assert word in text
    for line in lines.all():
        line.scroll_into_view_if_needed()
        assert line.is_visible()
        at = line.bounding_box()
        assert at
        assert at["x"] >= 0
        assert at["x"] + at["width"] <= 360

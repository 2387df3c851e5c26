"""The worksheet on the dye lot: lots, stock, dye and cautions."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
import traitlets
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.published.test_tables import printed
from yarnsheets.sheets import WhatDoesTheDyeLotTake

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

POUND = 453.59237  # grams, exact: NIST Handbook 44, appendix C
# A dyer's own worked example: 454 g at 1 % from a stock of 1 %, in one pot.
PLAIN: dict[str, Any] = {
    "weight": 454 / POUND,
    "spare": 0,
    "pot_holds": 500 / POUND,
    "depth": 0.01,
    "strength": 1,
    "parts": [1],
    "liquor_ratio": 40,
    "measure": "metres, grams",
}


def lot(**changed: Any) -> WhatDoesTheDyeLotTake:
    return WhatDoesTheDyeLotTake(**PLAIN | changed)


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
    assert sheet.sentence.startswith(
        "Dye 454\xa0g in one lot. It takes 454\xa0mL of stock, which holds 4.54\xa0g of dye."
    )
    assert "at a regain of 13.6%" in sheet.sentence  # ASTM D1909, wool
    steps = " ".join(sheet.arithmetic)
    assert "454\xa0g × 1% = 4.54\xa0g" in steps
    assert "4.54\xa0g ÷ 1\xa0g × 100\xa0mL = 454\xa0mL" in steps
    # by hand: 454 × 40 = 18160 mL, of which 454 are stock: 17.706 litres of water
    assert "18.16 litres, stock and all: 17.71 litres of water" in steps


def test_the_spare_goes_in_the_same_lots_and_all_are_alike() -> None:
    # by hand: 1000 g and a tenth is 1100 g; in a pot for 400 g, 3 lots of 366 2/3 g
    sheet = lot(weight=1000 / POUND, spare=0.1, pot_holds=400 / POUND)
    assert sheet.lots == 3
    assert sheet.lot_weight * POUND == pytest.approx(1100 / 3, rel=1e-14)
    assert sheet.all_stock == pytest.approx(1100, rel=1e-14)
    assert "1,100\xa0g in 3 lots of 367\xa0g, all alike" in sheet.sentence


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
    assert "Mix each lot’s stock of 272\xa0mL, 136\xa0mL and 45.4\xa0mL." in sheet.sentence
    assert lot(parts=[6, 3, 1]).stock_2 == pytest.approx(136.2, rel=1e-12)
    assert "Mix" not in lot(parts=[7]).sentence
    assert "454\xa0mL and 454\xa0mL." in lot(parts=[5, 5], depth=0.02).sentence


@pytest.mark.parametrize(
    ("parts", "least"), [([1], 1), ([1, 4], 0.2), ([4, 1, 5], 0.1), ([4, 3, 2, 1], 0.1)]
)
def test_the_least_colour_decides_whether_powder_can_be_weighed(
    parts: list[float], least: float
) -> None:
    sheet = lot(parts=parts)
    assert sheet.least_dye * POUND == pytest.approx(4.54 * least, rel=1e-12)
    # common practice, no source: half a gram is the least for a kitchen scale
    assert ("too little for most scales" in sheet.sentence) == (4.54 * least < 0.5)


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
    plain, moved = lot(), lot(water_now=0.09, water_used=0.16)
    assert moved.lot_fibre / plain.lot_fibre - 1 == printed("0.0642")
    assert moved.lot_stock / plain.lot_stock - 1 == printed("0.0642")
    assert moved.lot_weight == plain.lot_weight  # what goes on the scale is as it was
    assert "reckoned at a regain of 16%, from 9% as weighed" in moved.sentence
    bone_dry = lot(water_now=0.16, water_used=0)
    assert bone_dry.lot_fibre * POUND == pytest.approx(454 / 1.16, rel=1e-14)


def test_what_may_go_wrong_is_said() -> None:
    # common practice, no source: above 4 % dye may be left in the bath
    assert "Above 4%" not in lot(depth=0.04).sentence
    assert "Above 4%" in lot(depth=0.041).sentence
    # by hand: 10 % from 0.1 g in 100 mL is 100 mL to the gram, in a bath of 40
    assert "more stock than the whole bath" in lot(depth=0.1, strength=0.1).sentence
    assert lot(depth=0.1, strength=0.1).lot_water == 0
    # by hand: 10 g at 0.05 % from 10 g in 100 mL is 0.05 mL
    assert (
        "0.05\xa0mL is too little stock"
        in lot(weight=10 / POUND, depth=0.0005, strength=10).sentence
    )


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


@settings(max_examples=40, deadline=None)
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
        weight=weight, spare=spare, depth=depth, strength=strength, parts=parts, pot_holds=1
    )
    fibre = weight * POUND + spare * weight * POUND
    assert sheet.lots * sheet.lot_fibre * POUND == pytest.approx(fibre, rel=1e-12)
    stocks = [sheet.stock_1, sheet.stock_2, sheet.stock_3, sheet.stock_4]
    dye = sum(volume * strength / 100 for volume in stocks) * sheet.lots
    assert dye == pytest.approx(depth * fibre, rel=1e-12)
    assert sheet.lot_weight <= 1 + 1e-9  # every lot fits in the pot


def test_the_cautions_stand_on_the_page_of_a_telephone_too(page: Page, server: Server) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    open_sheet(page, server, "what-does-the-dye-lot-take")
    cautions = page.locator(".ys-cautions")
    assert cautions.locator("h3").inner_text() == "Before you start"
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

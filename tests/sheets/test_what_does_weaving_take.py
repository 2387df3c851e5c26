"""The worksheet on the yarn for weaving: loom sizes, yarn and weight."""

from __future__ import annotations

from typing import Any

import pytest
import traitlets

from tests.published.test_tables import printed
from yarnsheets.sheets import WhatDoesWeavingTake

# An invented scarf of one yarn, all of it given, so that it stays when a default moves.
SCARF: dict[str, Any] = {
    "finished_width": 10,
    "finished_length": 70,
    "ends_per_inch": 12,
    "picks_per_inch": 12,
    "width_shrinkage": 0.08,
    "length_shrinkage": 0.08,
    "draw_in": 0.08,
    "warp_take_up": 0.10,
    "weft_take_up": 0,
    "loom_waste": 24,
    "grist": 1200,
}
# A cloth that loses nothing and wastes nothing: its yarn can be counted on squared paper.
BARE = SCARF | {
    "width_shrinkage": 0,
    "length_shrinkage": 0,
    "draw_in": 0,
    "warp_take_up": 0,
    "loom_waste": 0,
    "reserve": 0,
}


def captions(sheet: WhatDoesWeavingTake) -> str:
    charts = sheet.describe()["charts"]
    return " ".join(text for chart in charts for text in sheet.said(chart["caption"]))


def scarf(**changed: Any) -> WhatDoesWeavingTake:
    return WhatDoesWeavingTake(**SCARF | changed)


def test_the_scarf_to_every_digit() -> None:
    # hand-worked: 10 / 0.92 / 0.92 in; 70 / 0.92 / 0.90 + 24 in; whole ends and picks
    sheet = scarf()
    assert sheet.reed_width == printed("11.8147448015123")
    assert sheet.ends == 142  # 141.78 at 12 to the inch
    assert sheet.warp_length == printed("108.541062801932")
    assert sheet.warp_yards == printed("428.134192163178")
    assert sheet.picks == 914  # 913.04
    assert sheet.weft_yards == printed("299.963243016173")


def test_the_scarf_in_words_and_by_hand() -> None:
    sheet = scarf(reserve=0)
    assert "142 ends" in sheet.sentence
    assert "914 picks" in sheet.sentence
    assert "takes 728\xa0yd: 428\xa0yd of warp and 300\xa0yd of weft." in sheet.sentence
    steps = " ".join(sheet.arithmetic)
    assert "142 ends × 3.015\xa0yd = 428.1\xa0yd" in steps  # 108.541 in is 3.0150 yd
    assert "914 picks × 11.81\xa0in ÷ 36 = 300\xa0yd" in steps


def test_a_cloth_that_loses_nothing() -> None:
    # by hand: 120 ends of 70 in and 840 picks of 10 in, each 8400 in, 233 1/3 yd
    sheet = WhatDoesWeavingTake(**BARE)
    assert (sheet.ends, sheet.picks) == (120, 840)
    assert sheet.warp_yards == pytest.approx(700 / 3, rel=1e-15)
    assert sheet.weft_yards == pytest.approx(700 / 3, rel=1e-15)
    assert sheet.in_cloth == pytest.approx(1400 / 3, rel=1e-15)
    assert sheet.in_bends == pytest.approx(0, abs=1e-12)
    assert sheet.in_waste == 0


def test_a_whole_number_of_ends_gets_no_end_more() -> None:
    # by hand: 10 / 0.8 / 1 is 12.5 in, and at 12 exactly 150, though 1 - 0.2 is not exact
    assert scarf(width_shrinkage=0.2, draw_in=0).ends == 150


def test_adding_the_shares_is_shown_to_fail() -> None:
    # published: an article of a regional handweavers' conference: 12 in end at 9.6 in
    sheet = scarf(width_shrinkage=0.2, draw_in=0)
    assert sheet.reed_width == printed("12.5")
    assert sheet.added_width == pytest.approx(12, rel=1e-15)
    assert sheet.added_finish == printed("9.6")
    assert "a cloth only 9.6\xa0in wide" in " ".join(sheet.arithmetic)


def test_a_second_piece_pays_no_loom_waste_but_the_gap() -> None:
    # by hand: one piece has 70 / 0.92 / 0.90 = 84.5411 in of warp; 10 in are left between
    one, two = scarf(), scarf(pieces=2, between=10)
    assert two.warp_length == pytest.approx(one.warp_length + 70 / 0.828 + 10, rel=1e-14)
    assert two.picks == 2 * 914
    assert two.weft_yards == pytest.approx(2 * one.weft_yards, rel=1e-14)
    assert two.in_waste == pytest.approx(142 * (24 + 10) / 36, rel=1e-12)
    assert two.in_cloth == pytest.approx(2 * one.in_cloth, rel=1e-14)


def test_weft_take_up_divides() -> None:
    # by hand: a quarter taken up makes the weft 4/3 as long, and the warp no longer
    one, bubbled = scarf(), scarf(weft_take_up=0.25)
    assert bubbled.weft_yards == pytest.approx(one.weft_yards * 4 / 3, rel=1e-14)
    assert bubbled.warp_yards == one.warp_yards


def test_weights_of_warp_and_weft_apart_and_together() -> None:
    # by hand: 233 1/3 yd at 1200 and at 2400 yd/lb, and a tenth in reserve
    sheet = WhatDoesWeavingTake(**BARE | {"reserve": 0.10}, weft_yarn="other", weft_grist=2400)
    assert sheet.warp_weight == pytest.approx(700 / 3 / 1200 * 1.1, rel=1e-14)
    assert sheet.weft_weight == pytest.approx(700 / 3 / 2400 * 1.1, rel=1e-14)
    assert sheet.total_weight == pytest.approx(700 / 3 / 800 * 1.1, rel=1e-14)


def test_the_wefts_grist_counts_only_for_another_yarn() -> None:
    assert scarf(weft_grist=2400).weft_weight == scarf().weft_weight


def test_the_cloths_weight_is_that_of_the_yarn_in_it() -> None:
    # by hand: without reserve and waste, all yarn that is weighed out is in the piece
    sheet = scarf(reserve=0, loom_waste=0, weft_take_up=0.05, weft_yarn="other", weft_grist=900)
    assert sheet.piece_weight == pytest.approx(sheet.total_weight, rel=1e-13)
    square_yards = 10 * 70 / 1296
    assert sheet.cloth_ounces == pytest.approx(sheet.total_weight * 16 / square_yards, rel=1e-13)
    # exact: an ounce to the square yard is 28.349523125 / 0.83612736 g to the square metre
    grams = sheet.cloth_ounces * 28.349523125 / 0.83612736
    assert sheet.cloth_grams == pytest.approx(grams, rel=1e-13)


def test_the_parts_make_the_whole() -> None:
    sheet = scarf(pieces=3, between=8, weft_take_up=0.05)
    parts = (sheet.in_cloth, sheet.in_bends, sheet.in_waste, sheet.in_reserve)
    assert sum(parts) == pytest.approx(sheet.total_stock, rel=1e-14)
    assert min(parts) > 0


def test_the_range_is_the_readers_own() -> None:
    # by hand: 428.134192163178 + 299.963243016173 yd, a twentieth either way
    sheet = scarf(doubt=0.05, reserve=0.02)
    assert sheet.total_low == pytest.approx(728.097435179351 * 0.95, rel=1e-14)
    assert sheet.total_high == pytest.approx(728.097435179351 * 1.05, rel=1e-14)
    assert "from 692 to 765\xa0yd" in captions(sheet)
    assert "would not reach that far" in captions(sheet)
    assert "would not reach" not in captions(scarf(doubt=0.05, reserve=0.05))


def test_threads_too_close_for_plain_weave_are_doubted() -> None:
    # by hand: half of 0.9 times the root of 1200 is 15.588 (Ashenhurst, factor of 1999)
    assert scarf().closest_warp == pytest.approx(15.5884572681199, rel=1e-14)
    assert "too close" not in scarf(ends_per_inch=15, picks_per_inch=15).sentence
    assert "The ends may be too close" in scarf(ends_per_inch=16).sentence
    assert "The picks may be too close" in scarf(picks_per_inch=16).sentence
    both = scarf(ends_per_inch=16, picks_per_inch=16)
    assert "Ends and picks may be too close" in both.sentence
    assert f"It takes {both.ends} ends" in captions(both)


def test_one_end_is_said_so() -> None:
    # by hand: half an inch at one to the inch is one end
    sheet = WhatDoesWeavingTake(**BARE | {"finished_width": 0.5, "ends_per_inch": 1})
    assert "Wind 1 end of" in sheet.sentence
    assert "Warp: 1 end ×" in " ".join(sheet.arithmetic)


def test_a_reserve_is_on_top_of_what_the_weaving_takes() -> None:
    # by hand: 233 1/3 yd of warp and as much weft, and with a half more 350 yd of each
    sheet = WhatDoesWeavingTake(**BARE | {"reserve": 0.5})
    assert sheet.total_yards == sheet.takes_of_yarn == pytest.approx(1400 / 3, rel=1e-14)
    assert "With 50% in reserve have 350\xa0yd of warp" in sheet.sentence
    other = WhatDoesWeavingTake(**BARE, weft_yarn="other", weft_grist=2400)
    assert other.takes_of_yarn == pytest.approx(700 / 3, rel=1e-14)
    assert other.weight_of_yarn == pytest.approx(700 / 3 / 1200, rel=1e-14)


def test_fields_that_make_no_difference_are_hidden() -> None:
    assert scarf().unused() == ["between", "weft_grist"]
    assert scarf(pieces=2, weft_yarn="other").unused() == []


def test_half_a_piece_is_refused() -> None:
    with pytest.raises(traitlets.TraitError, match=r"1\.5 is not a whole number"):
        scarf(pieces=1.5)


@pytest.mark.parametrize(
    ("name", "wrong"), [("width_shrinkage", 8), ("loom_waste", -1), ("finished_width", 0)]
)
def test_what_cannot_be_is_refused_in_the_readers_words(name: str, wrong: float) -> None:
    with pytest.raises(traitlets.TraitError, match="is outside the range"):
        scarf(**{name: wrong})

"""The largest piece a ball makes: in Python, and on the page."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.browser import open_sheet
from tests.reader import box, drag, said, type_in
from yarnsheets.sheets import WhatDoesThisBallMake

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

# published: a knitter's own worked example, a triangle of 96 by 42 in took three times the yarn
BEFORE = {"shape": "triangle", "made_width": 96, "made_depth": 42, "made_weight": 9 / 16}


def test_a_third_of_the_yarn_makes_a_similar_triangle() -> None:
    # hand-worked: 96 and 42 in over the root of 3
    sheet = WhatDoesThisBallMake(**BEFORE, weight=3 / 16, reserve=0)
    assert sheet.new_width == pytest.approx(55.4256258422041, abs=5e-14)
    assert sheet.new_depth == pytest.approx(24.2487113059643, abs=5e-14)
    assert "55.4\N{NO-BREAK SPACE}in by 24.2\N{NO-BREAK SPACE}in" in sheet.sentence


def test_a_scarf_grows_in_length_alone() -> None:
    # hand-worked: half as much yarn again, 40 * 1.5
    sheet = WhatDoesThisBallMake(
        shape="steady", made_width=8, made_depth=40, made_weight=4 / 16, weight=6 / 16, reserve=0
    )
    assert (sheet.new_width, sheet.new_depth) == (8, 60)


@pytest.mark.parametrize("shape", ["triangle", "steady"])
def test_a_piece_of_the_same_yarn_is_not_said_to_be_one_times_as_large(shape: str) -> None:
    # by hand: a hundredth more yarn is half a hundredth more width, written as 1
    for weight in (0.25, 0.2512):
        sheet = WhatDoesThisBallMake(shape=shape, made_weight=0.25, weight=weight, reserve=0)
        assert "about as much yarn as the one before" in sheet.sentence
    assert "1.2 times" in WhatDoesThisBallMake(made_weight=0.5, weight=0.6, reserve=0).sentence


@pytest.mark.parametrize("shape", ["triangle", "rectangle", "steady", "circle", "hexagon"])
def test_the_new_piece_takes_all_but_the_reserve(shape: str) -> None:
    sheet = WhatDoesThisBallMake(shape=shape, weight=0.7, reserve=0.1)
    area = sheet.new_width * sheet.new_depth / (sheet.made_width * sheet.old_depth)
    assert area * sheet.made_weight == pytest.approx(0.9 * 0.7, rel=1e-12)


def test_a_round_piece_is_as_deep_as_its_shape_has_it() -> None:
    # geometry: a hexagon across its flats is the root of 3 / 4 of the width at its corners
    circle, hexagon = (WhatDoesThisBallMake(shape=s, made_depth=5) for s in ("circle", "hexagon"))
    assert circle.new_depth == circle.new_width
    assert hexagon.new_depth / hexagon.new_width == pytest.approx(0.8660254, abs=5e-8)
    assert circle.unused() == hexagon.unused() == ["made_depth"]


def test_the_reserve_is_named_and_left_out_where_there_is_none() -> None:
    assert "That keeps 5% of the yarn in reserve." in WhatDoesThisBallMake().sentence
    assert "reserve" not in WhatDoesThisBallMake(reserve=0).sentence


@pytest.mark.parametrize(
    ("inputs", "word"),
    [
        ({"made_weight": 0.004}, "The piece made before is too light"),
        ({"weight": 0.004}, "The yarn in hand is too light"),
    ],
)
def test_what_the_scale_cannot_tell_is_said(inputs: dict[str, float], word: str) -> None:
    # hand-worked: 0.004 lb are 1.8 g, on a scale with steps of a gram
    assert WhatDoesThisBallMake(**inputs).sentence.startswith(word)


def test_the_page_follows_the_box_and_the_point(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-does-this-ball-make")
    page.context.set_offline(True)
    for name, text in {
        "made_width": "96",
        "made_depth": "42",
        "made_weight": "9",
        "weight": "3",
        "reserve": "0",
    }.items():
        type_in(page, name, text)
    assert said(page) == WhatDoesThisBallMake(**BEFORE, weight=3 / 16, reserve=0).sentence
    drag(page, page.locator("figure[data-name=depth_against_yarn] .ys-grip"), 40)
    weight = float(box(page, "weight").input_value())
    assert weight > 3
    assert said(page) == WhatDoesThisBallMake(**BEFORE, weight=weight / 16, reserve=0).sentence
    page.context.set_offline(False)

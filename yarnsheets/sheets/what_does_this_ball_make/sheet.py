"""The largest piece that a ball makes, from a piece or a swatch that was made before."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import show, slot
from yarnsheets.sheets.shared import weighing
from yarnsheets.sheets.shared.doubt import too_light
from yarnsheets.sheets.shared.weighing import GRAM

_OUNCE = 1 / 16

# Depth of a round piece, of its width: of a hexagon across its flats, of the width at its corners.
_DEPTHS = {"circle": 1.0, "hexagon": math.sqrt(3) / 2}

_TURNS = [2 * math.pi * at / 48 for at in range(48)]

# Corners of each shape, as shares of its width and depth from its lower left.
_CORNERS = {
    "steady": ((0, 0), (1, 0), (1, 1), (0, 1)),
    "rectangle": ((0, 0), (1, 0), (1, 1), (0, 1)),
    "triangle": ((0, 1), (1, 1), (0.5, 0)),
    "circle": tuple((0.5 + math.cos(turn) / 2, 0.5 + math.sin(turn) / 2) for turn in _TURNS),
    "hexagon": ((0.25, 0), (0.75, 0), (1, 0.5), (0.75, 1), (0.25, 1), (0, 0.5)),
}


class WhatDoesThisBallMake(Sheet):
    """From what one piece took to the largest like it that the yarn in hand makes.

    Examples
    --------
    >>> sheet = WhatDoesThisBallMake(
    ...     shape="triangle", made_width=96, made_depth=42, made_weight=0.9, weight=0.3, reserve=0
    ... )
    >>> round(sheet.new_width, 1), round(sheet.new_depth, 2)
    (55.4, 24.25)
    """

    question = "How large a piece does this ball make?"
    onward = (Onward("will-the-ball-last", {"weight": "weight", "weighings": ""}),)

    weight = Input(
        "Yarn in hand",
        "mass",
        5.3 * _OUNCE,
        low=0.05 * _OUNCE,
        high=20,
        measure="Weigh the ball, or all the balls.",
    )
    reserve = Input(
        "Kept in reserve",
        "share",
        0.05,
        low=0,
        high=0.5,
        step=0.01,
        measure="For the edge, for ends and for surprises: 5 to 10% is common practice, no source.",
    )
    shape = Pick(
        "The piece is",
        {
            "triangle": "a triangle, larger all round",
            "rectangle": "a rectangle or square, larger all round",
            "steady": "a rectangle of the same width, longer",
            "circle": "a circle, larger all round",
            "hexagon": "a hexagon, larger all round",
        },
        measure="Larger all round keeps its shape; a scarf keeps its width.",
    )
    made_width = Input(
        "Width of the piece made before",
        "short",
        40,
        low=0.5,
        high=400,
        measure="A finished piece, or a swatch of the same yarn and stitch, washed and dry."
        " Straight across a circle; across a hexagon, from corner to corner.",
    )
    made_depth = Input(
        "Its depth or length",
        "short",
        20,
        low=0.5,
        high=400,
        measure="Of a triangle, from the wide edge to the point.",
    )
    made_weight = Input(
        "What it weighs",
        "mass",
        2.1 * _OUNCE,
        low=0.005 * _OUNCE,
        high=20,
        measure="Without beads, buttons or fringe.",
    )

    finer_points = Group("Finer points", folded=True)
    scale_step = weighing.steps(
        1 * GRAM, _OUNCE / 4, "The last digit of the scale that weighed both."
    )

    is_steady = Found("flag", "the width stays and only the length grows")
    is_circle = Found("flag", "the piece is a circle")
    is_cornered = Found("flag", "it is not")
    is_alike = Found("flag", "the new piece is as large as the old, as that is written")
    is_scaled = Found("flag", "it is not, and grows or shrinks both ways")
    is_lengthened = Found("flag", "it is not, and only its length changes")
    has_reserve = Found("flag", "some yarn is kept in reserve")
    corners = Table("the outline, as shares of width and depth")

    old_depth = Found("short", "depth of the piece made before, as the shape has it")
    usable = Found("mass", "yarn in hand without the reserve")
    ratio = Found("number", "yarn for the new piece, of that for the old")
    growth = Found("number", "depth of the new piece, of that of the old")
    new_width = Found("short", "width of the new piece")
    new_depth = Found("short", "depth of the new piece")
    new_name = Found("word", "what the new piece is")

    answer = (
        ("is_cornered", "{weight} makes a {new_name} of {new_width*} by {new_depth}."),
        ("is_circle", "{weight} makes a circle {new_width*} across."),
        ("has_reserve", "That keeps {reserve} of the yarn in reserve."),
        ("is_alike", "It takes about as much yarn as the one before, and is about as large."),
        (
            "is_scaled",
            "It takes {ratio} times the yarn of the one before, and is {growth} times as wide.",
        ),
        (
            "is_lengthened",
            "It takes {ratio} times the yarn of the one before, and is as many times as long.",
        ),
    )
    labels: ClassVar = {
        "new_label": "{new_width} by {new_depth}",
        "old_label": "before",
        "new_across_label": "{new_width} across",
        "depth_label": "{new_depth}",
    }

    def unused(self) -> list[str]:
        """Name the depth, where the shape gives it."""
        return ["made_depth"] if self.shape in _DEPTHS else []

    def work_out(self) -> Mapping[str, Any]:
        """Work out the new size and its outline."""
        steps = f"for a scale with steps of {slot(self.scale_step, 'mass')}"
        if too_light(self.made_weight, self.scale_step):
            return no_answer(
                f"The piece made before is too light {steps} to tell its weight. Take a larger one,"
                " or look at the scale’s steps under Finer points."
            )
        if too_light(self.weight, self.scale_step):
            return no_answer(
                f"The yarn in hand is too light {steps} to tell its weight. Take a finer scale, or"
                " look at the scale’s steps under Finer points."
            )
        is_steady = self.shape == "steady"
        old_depth = (
            self.made_width * _DEPTHS[self.shape] if self.shape in _DEPTHS else self.made_depth
        )
        usable = self.weight * formulas.share_left(self.reserve)
        ratio = usable / self.made_weight
        if is_steady:
            new_width, new_depth = self.made_width, old_depth * ratio
        else:
            new_width = formulas.similar_size(self.made_width, ratio)
            new_depth = formulas.similar_size(old_depth, ratio)
        growth = new_depth / old_depth
        is_alike = show(growth) == "1"
        return {
            "is_steady": is_steady,
            "is_alike": is_alike,
            "is_scaled": not is_steady and not is_alike,
            "is_lengthened": is_steady and not is_alike,
            "is_circle": self.shape == "circle",
            "is_cornered": self.shape != "circle",
            "has_reserve": self.reserve > 0,
            "old_depth": old_depth,
            "usable": usable,
            "ratio": ratio,
            "growth": growth,
            "new_width": new_width,
            "new_depth": new_depth,
            "new_name": "rectangle" if is_steady else self.shape,
            "corners": [
                {"place": place, "across": x - 0.5, "up": y}
                for place, (x, y) in enumerate(_CORNERS[self.shape])
            ],
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how size follows from yarn."""
        yield "has_reserve", "Yarn to use: {weight:4} less {reserve} is {usable:4}."
        yield None, "Against the piece before: {usable:4} ÷ {made_weight:4} = {ratio:4}."
        yield (
            "not is_steady",
            "Yarn goes by area, and area by the square of the size: the square root of {ratio:4} is"
            " {growth:4}.",
        )
        yield "not is_steady", "Width: {made_width:4} × {growth:4} = {new_width:4}."
        yield "not is_steady", "Depth: {old_depth:4} × {growth:4} = {new_depth:4}."
        yield (
            "is_steady",
            "At one width, length goes as the yarn: {old_depth:4} × {growth:4} = {new_depth:4}.",
        )

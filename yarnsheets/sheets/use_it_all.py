"""The largest piece that a ball makes, from a piece or a swatch that was made before."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import ball_size_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.sheets import choices
from yarnsheets.sheets.inputs import Input, Number, Pick, Result, Table
from yarnsheets.sheets.sheet import Line, Sheet

_OUNCE = 1 / 16

_TURNS = [2 * math.pi * at / 48 for at in range(48)]

# Corners of each shape, as shares of its width and depth from its lower left.
_CORNERS = {
    "steady": ((0, 0), (1, 0), (1, 1), (0, 1)),
    "rectangle": ((0, 0), (1, 0), (1, 1), (0, 1)),
    "triangle": ((0, 1), (1, 1), (0.5, 0)),
    "circle": tuple((0.5 + math.cos(turn) / 2, 0.5 + math.sin(turn) / 2) for turn in _TURNS),
    "hexagon": ((0.25, 0), (0.75, 0), (1, 0.5), (0.75, 1), (0.25, 1), (0, 0.5)),
}


class UseItAll(Sheet):
    """From what one piece took to the largest like it that the yarn in hand makes.

    Examples
    --------
    >>> sheet = UseItAll(shape="triangle", made_width=96, made_depth=42, made_weight=0.9,
    ...                  weight=0.3, reserve=0)
    >>> round(sheet.new_width, 1), round(sheet.new_depth, 2)
    (55.4, 24.25)
    """

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
        measure="A finished piece, or a swatch of the same yarn and stitch, washed and dry.",
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
    grist = Input(
        "Grist of the yarn",
        "grist",
        1100,
        low=100,
        high=30000,
        more=True,
        measure="Only to say the yarn in length too.",
    )

    is_steady = Result("flag", "the width stays and only the length grows")
    is_alike = Result("flag", "width and depth grow alike")
    corners = Table("the outline, as shares of width and depth")

    usable = Number("mass", "yarn in hand without the reserve")
    usable_yards = Number("length", "yarn in hand without the reserve")
    ratio = Number("number", "yarn for the new piece, of that for the old")
    growth = Number("number", "depth of the new piece, of that of the old")
    new_width = Number("short", "width of the new piece")
    new_depth = Number("short", "depth of the new piece")

    answer = (
        (
            None,
            "{weight} of yarn makes a piece of {new_width} by {new_depth}, with {reserve} kept in"
            " reserve.",
        ),
        (
            "is_alike",
            "It has {ratio} times the yarn of the one before, and {growth} times its width and"
            " depth.",
        ),
        (
            "is_steady",
            "It has {ratio} times the yarn of the one before, and {growth} times its length.",
        ),
    )
    labels: ClassVar = {
        "new_label": "{new_width} by {new_depth}",
        "old_label": "before: {made_width} by {made_depth}",
        "depth_label": "{new_depth}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Look up the shape."""
        return {
            "is_steady": self.shape == "steady",
            "is_alike": self.shape != "steady",
            "corners": [
                {"place": place, "across": x - 0.5, "up": y}
                for place, (x, y) in enumerate(_CORNERS[self.shape])
            ],
        }

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out the new size."""
        usable = v.weight * formulas.share_left(v.reserve)
        ratio = usable / v.made_weight
        similar = formulas.similar_size(v.made_depth, ratio)
        new_depth = choose(v.is_steady, v.made_depth * ratio, similar)
        return {
            "usable": usable,
            "usable_yards": formulas.length(usable, v.grist),
            "ratio": ratio,
            "growth": new_depth / v.made_depth,
            "new_width": choose(
                v.is_steady, v.made_width * 1, formulas.similar_size(v.made_width, ratio)
            ),
            "new_depth": new_depth,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how size follows from yarn."""
        yield None, "Yarn to use: {weight:4} less {reserve} is {usable:4}, about {usable_yards:2}."
        yield None, "Against the piece before: {usable:4} ÷ {made_weight:4} = {ratio:4}."
        yield (
            "is_alike",
            "Yarn goes by area, and area by the square of the size: the square root of {ratio:4} is"
            " {growth:4}.",
        )
        yield "is_alike", "Width: {made_width:4} × {growth:4} = {new_width:4}."
        yield "is_alike", "Depth: {made_depth:4} × {growth:4} = {new_depth:4}."
        yield (
            "is_steady",
            "At one width, length goes as the yarn: {made_depth:4} × {growth:4} = {new_depth:4}.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the old piece inside the new, and depth against yarn."""
        return ball_size_charts.old_and_new(v), ball_size_charts.depth_against_yarn(v)

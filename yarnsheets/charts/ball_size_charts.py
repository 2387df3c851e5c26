"""Charts of using a ball up: the piece before beside the new one, and size against yarn."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.charts.chart import (
    HERE,
    INK,
    PROJECT,
    YARN,
    Grip,
    SheetChart,
    axis,
    own,
    plot,
    rows,
    shown,
    table,
    to_scale,
    words,
)
from yarnsheets.charts.expressions import choose, emit, larger

_CURVE_ROWS = 60


def old_and_new(v: Any) -> SheetChart:
    """Draw both pieces to scale, one on the other."""
    wide = larger(shown("short", v.made_width), shown("short", v.new_width))
    deep = larger(shown("short", v.made_depth), shown("short", v.new_depth))
    long, top = to_scale(wide * 1.05, deep * 1.25)  # with room for words over it
    half = f"{long} / 2"

    def outline(width: Any, depth: Any) -> alt.Chart:
        corners = table(
            "corners",
            x=alt.datum.across * shown("short", width),
            y=alt.datum.up * shown("short", depth),
        )
        return corners.encode(order="place:Q")

    def name(text: str, depth: Any, colour: str, dy: Any) -> tuple[alt.Chart, alt.Chart]:
        return words(rows(1, x=alt.datum.at * 1, y=shown("short", depth)), text, colour, dy=dy)

    closed: dict[str, Any] = {"interpolate": "linear-closed", "clip": True, "filled": True}
    # the larger piece has its words above its edge, the other below its own
    above = choose(v.new_depth > v.made_depth, -10, 14)
    return SheetChart(
        "old_and_new",
        "The piece before, and the new one",
        plot(
            axis("x", "Width ({short_unit})", half, start=f"-{half}", labels=False, grid=False),
            axis("y", "Depth ({short_unit})", top),
            outline(v.new_width, v.new_depth).mark_line(
                **closed, fill=YARN, fillOpacity=0.25, stroke=YARN, strokeWidth=3
            ),
            outline(v.made_width, v.made_depth).mark_line(
                **closed, fill=PROJECT, fillOpacity=0.15, stroke=PROJECT, strokeDash=[7, 4]
            ),
            *name("new_label", v.new_depth, YARN, alt.ExprRef(emit(above))),
            *name("old_label", v.made_depth, PROJECT, alt.ExprRef(emit(4 - above))),
        ),
        (
            (
                None,
                "To scale: the broken outline is the piece before, {made_width} by {made_depth};"
                " the full one is the new one, {new_width} by {new_depth}.",
            ),
        ),
        tables=("corners",),
    )


def depth_against_yarn(v: Any) -> SheetChart:
    """Draw the depth of the new piece against the yarn in hand."""
    weight = alt.datum.at / _CURVE_ROWS * alt.param(name="hand_top", value=1)
    ratio = own("mass", weight) * formulas.share_left(v.reserve) / v.made_weight
    depth = choose(v.is_steady, v.made_depth * ratio, formulas.similar_size(v.made_depth, ratio))
    here = rows(1, weight=shown("mass", v.weight), depth=shown("short", v.new_depth))
    return SheetChart(
        "depth_against_yarn",
        "Depth or length against yarn",
        plot(
            axis("weight", "Yarn in hand ({mass_unit})", "hand_top"),
            axis("depth", "Depth of the piece ({short_unit})", "depth_top"),
            rows(_CURVE_ROWS + 1, weight=weight, depth=shown("short", depth)).mark_line(
                color=YARN, strokeWidth=3, clip=True
            ),
            here.mark_point(color=YARN, **HERE),
            *words(here, "depth_label", INK, align="left", dx=12, dy=14),
        ),
        (
            ("is_alike", "The line bends: four times the yarn makes a piece twice as large."),
            ("is_steady", "The line is straight: twice the yarn makes a piece twice as long."),
        ),
        Grip("weight", "weight", "new_depth"),
        {
            "hand_top": shown("mass", v.weight * 1.5),
            "depth_top": shown("short", v.new_depth * 1.5),
        },
    )

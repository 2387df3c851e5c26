"""Charts of using a ball up: the piece before beside the new one, and size against yarn."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger

_CURVE_ROWS = 60


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the old piece inside the new, and depth against yarn."""
    return old_and_new(v), depth_against_yarn(v)


def old_and_new(v: Any) -> chart.SheetChart:
    """Draw both pieces to scale, one on the other."""
    wide = larger(chart.shown("short", v.made_width), chart.shown("short", v.new_width))
    deep = larger(chart.shown("short", v.old_depth), chart.shown("short", v.new_depth))
    long, top = chart.to_scale(wide * 1.05, deep * 1.25)  # with room for words over it
    half = f"{long} / 2"

    def outline(width: Any, depth: Any) -> alt.Chart:
        corners = chart.table(
            "corners",
            x=alt.datum.across * chart.shown("short", width),
            y=alt.datum.up * chart.shown("short", depth),
        )
        return corners.encode(order="place:Q")

    def name(text: str, depth: Any, colour: str, dy: Any) -> tuple[alt.Chart, alt.Chart]:
        place = chart.rows(1, x=alt.datum.at * 1, y=chart.shown("short", depth))
        return chart.words(place, text, colour, dy=alt.ExprRef(emit(dy)))

    closed: dict[str, Any] = {"interpolate": "linear-closed", "clip": True, "filled": True}
    # the larger piece has its words above its edge, the other below its own
    above = choose(v.new_depth > v.old_depth, -10, 14)
    return chart.SheetChart(
        "old_and_new",
        "The piece before, and the new one",
        chart.plot(
            chart.axis(
                "x", "Width ({short_unit})", half, start=f"-{half}", labels=False, grid=False
            ),
            chart.axis("y", "Depth ({short_unit})", top),
            outline(v.new_width, v.new_depth).mark_line(
                **closed, fill=chart.YARN, fillOpacity=0.25, stroke=chart.YARN, strokeWidth=3
            ),
            outline(v.made_width, v.old_depth).mark_line(
                **closed,
                fill=chart.PROJECT,
                fillOpacity=0.15,
                stroke=chart.PROJECT,
                strokeDash=[7, 4],
            ),
            *name(
                f"{emit(v.is_circle)} ? new_across_label : new_label",
                v.new_depth,
                chart.YARN,
                above,
            ),
            *name("old_label", v.old_depth, chart.PROJECT, 4 - above),
        ),
        (
            (
                "is_cornered",
                "To scale: the broken outline is the piece before, {made_width} by {old_depth};"
                " the full one is the new one, {new_width} by {new_depth}.",
            ),
            (
                "is_circle",
                "To scale: the broken outline is the piece before, {made_width} across; the full"
                " one is the new one, {new_width} across.",
            ),
        ),
        tables=("corners",),
    )


def depth_against_yarn(v: Any) -> chart.SheetChart:
    """Draw the depth of the new piece against the yarn in hand."""
    weight = alt.datum.at / _CURVE_ROWS * alt.param(name="hand_top", value=1)
    ratio = chart.own("mass", weight) * formulas.share_left(v.reserve) / v.made_weight
    depth = choose(v.is_steady, v.old_depth * ratio, formulas.similar_size(v.old_depth, ratio))
    here = chart.rows(
        1, weight=chart.shown("mass", v.weight), depth=chart.shown("short", v.new_depth)
    )
    return chart.SheetChart(
        "depth_against_yarn",
        "Depth or length against yarn",
        chart.plot(
            chart.axis("weight", "Yarn in hand ({mass_unit})", "hand_top"),
            chart.axis("depth", "Depth of the piece ({short_unit})", "depth_top"),
            chart.rows(_CURVE_ROWS + 1, weight=weight, depth=chart.shown("short", depth)).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(here, "depth_label", chart.INK, align="left", dx=12, dy=14),
        ),
        (
            ("not is_steady", "The line bends: four times the yarn makes a piece twice as large."),
            ("is_steady", "The line is straight: twice the yarn makes a piece twice as long."),
        ),
        chart.Grip("weight", "weight", "new_depth"),
        {
            "hand_top": chart.shown("mass", v.weight * 1.5),
            "depth_top": chart.shown("short", v.new_depth * 1.5),
        },
    )

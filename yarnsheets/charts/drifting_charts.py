"""Charts of a yarn while it is spun: cuts in their order, bobbins, and what they ply to."""

from typing import Any

import altair as alt

from yarnsheets.charts.chart import (
    GOAL,
    INK,
    PROJECT,
    YARN,
    SheetChart,
    axis,
    band,
    plot,
    rows,
    shown,
    table,
    words,
)
from yarnsheets.charts.expressions import choose, emit

_LIMIT: dict[str, Any] = {"color": YARN, "strokeWidth": 2, "strokeDash": [2, 3], "clip": True}
_NUMBER = ",.4~r"


def cuts_in_order(v: Any) -> SheetChart:
    """Draw the control chart: each cut, the mean, the limits and the target."""
    # a fifth more room than the cuts take, for the words at the lines' ends
    x = axis(
        "place", "Cut, in the order spun", "count * 1.2 + 0.5", start=0.5, tickMinStep=1, grid=False
    )
    y = _grist_axis("Grist ({grist_unit})", v.least, v.most, v.target)
    # a name of its own: a field worked out from itself would move on with each change
    across = 0.5 + alt.datum.at * v.count * 1.2
    mean, low, high, target = (
        rows(2, place=across, grist=shown("grist", level))
        for level in (v.centre, v.limit_low, v.limit_high, v.target)
    )
    is_above = shown("grist", v.target) > shown("grist", v.centre)
    named = (
        (v.limit_low, "limit_label", YARN, 9),
        (v.limit_high, "limit_label", YARN, 9),
        (v.centre, "centre_label", YARN, choose(is_above, 9, -9)),
        (v.target, "target_label", PROJECT, choose(is_above, -9, 9)),
    )
    cuts = table("readings", grist=shown("grist", alt.datum.found))
    lines = plot(
        x,
        y,
        mean.mark_line(color=YARN, strokeWidth=2),
        low.mark_line(**_LIMIT),
        high.mark_line(**_LIMIT),
        target.mark_line(**GOAL),
        cuts.mark_line(color=INK, strokeWidth=1),
        cuts.transform_filter("!datum.flagged").mark_point(
            color=INK, filled=True, size=60, opacity=1
        ),
        cuts.transform_filter("datum.flagged").mark_point(
            color=PROJECT, shape="diamond", fill="white", size=130, opacity=1, strokeWidth=2.5
        ),
        *(
            part
            for level, label, colour, dy in named
            for part in words(
                rows(1, place=v.count * 1.2 + 0.5, grist=shown("grist", level)).transform_filter(
                    "has_answer"
                ),
                label,
                colour,
                align="right",
                dy=alt.ExprRef(emit(dy)),
            )
        ),
    )
    changes = (
        table("changes")
        .mark_rule(color=INK, opacity=0.35)
        .encode(x=alt.X(**x), y=alt.value(0), y2=alt.value("height"))
    )
    return SheetChart(
        "cuts_in_order",
        "Each cut, with the limits of a steady yarn",
        alt.LayerChart(layer=[changes, *lines.layer]),
        (
            ("has_signals", "Diamonds: {signals}."),
            ("has_no_signals", "No cut is outside the limits, and there is no run to one side."),
            ("has_answer", "Dotted lines: the limits, {limit_low!} and {limit_high}."),
            (
                "is_drifting",
                "The drift: {drift:2} a cut {direction}, between {drift_low:2!} and"
                " {drift_high:2}.",
            ),
            (
                "is_level",
                "A drift, if there is one, is at most {thicker_limit:2} a cut thicker or"
                " {finer_limit:2} finer.",
            ),
            ("is_few", "With fewer than 20 cuts the limits are rough: a diamond is only a hint."),
            ("has_pairs", "Upright lines part the bobbins."),
        ),
        tables=("readings", "changes"),
    )


def bobbins_against_target(v: Any) -> SheetChart:
    """Draw each bobbin's mean grist with its range, and the target with what is near enough."""
    x = axis("bobbin", "Bobbin", "bobbin_count + 0.5", start=0.5, tickMinStep=1, grid=False)
    y = _grist_axis(
        "Grist ({grist_unit})", v.bobbin_low, v.bobbin_high, v.target_low, v.target_high
    )
    across = 0.5 + alt.datum.at * v.bobbin_count
    near = rows(
        2, bobbin=across, grist=shown("grist", v.target_low), top=shown("grist", v.target_high)
    )
    ranges = (
        table("ranges", grist=shown("grist", alt.datum.low), top=shown("grist", alt.datum.high))
        .mark_rule(color=YARN, strokeWidth=3)
        .encode(y2="top:Q")
    )
    target = shown("grist", v.target)
    lines = plot(
        x,
        y,
        band(near, "top", PROJECT, 0.14),
        ranges,
        rows(2, bobbin=across, grist=target).mark_line(**GOAL),
        table("means", grist=shown("grist", alt.datum.found)).mark_point(
            color=YARN, filled=True, size=150, opacity=1, stroke="white", strokeWidth=2
        ),
        *words(
            rows(1, bobbin=0.5 + v.bobbin_count, grist=target),
            "target_label",
            PROJECT,
            align="right",
            dx=-4,
            dy=-9,
        ),
    )
    return SheetChart(
        "bobbins_against_target",
        "Each bobbin against the target",
        lines,
        (
            ("has_answer", "Against the target of {target}, {off_target}."),
            (
                "has_answer",
                "The band is what you can live with, {target_low!} to {target_high}: cuts of"
                " {cut_low!} to {cut_high}. A bar is where the bobbin’s grist lies in 19 bobbins"
                " of 20.",
            ),
        ),
        tables=("means", "ranges"),
    )


def plied_yarns(v: Any) -> SheetChart:
    """Draw the grist of each plied yarn, paired by grist and in the order spun."""
    ends = [shown("grist", end) for end in (v.pairs_low, v.pairs_high, v.order_low, v.order_high)]
    x = axis(
        "grist",
        "Plied grist ({grist_unit})",
        emit(alt.expr.max(*ends) * 1.06),
        start=emit(alt.expr.min(*ends) * 0.98),
        tickCount=3,
    )
    each = table("plied", grist=shown("grist", alt.datum.found)).encode(
        x=alt.X(**x),
        y=alt.Y("pair:N", title=None, sort=None, axis=alt.Axis(domain=True, grid=True)),
    )
    return SheetChart(
        "plied_yarns",
        "What the bobbins ply to",
        alt.LayerChart(
            layer=[
                each.transform_filter("datum.way == 'by grist'").mark_point(
                    color=YARN, filled=True, size=150, opacity=1
                ),
                each.transform_filter("datum.way != 'by grist'").mark_point(
                    color=PROJECT, shape="diamond", size=120, opacity=1, strokeWidth=2.5
                ),
                each.mark_text(align="left", dx=12, fontSize=13, color=INK).encode(
                    text=alt.Text("grist:Q", format=_NUMBER)
                ),
            ]
        ),
        (
            (
                "has_pairs",
                "Paired by grist, the finest with the thickest (dots), the plied yarns are from"
                " {pairs_low!} to {pairs_high}; in the order spun (diamonds) from {order_low!} to"
                " {order_high}.",
            ),
        ),
        tables=("plied",),
        left=140,
    )


def _grist_axis(title: str, *reaches: Any) -> dict[str, Any]:
    """Set an axis of grist that shows all of `reaches`, whichever way the unit counts."""
    ends = [shown("grist", reach) for reach in reaches]
    top, bottom = emit(alt.expr.max(*ends) * 1.02), emit(alt.expr.min(*ends) * 0.98)
    return axis("grist", title, top, start=bottom)

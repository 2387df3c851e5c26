"""Charts of a yarn while it is spun: cuts in their order, bobbins, and what they ply to."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit

_LIMIT: dict[str, Any] = {"color": chart.YARN, "strokeWidth": 2, "strokeDash": [2, 3], "clip": True}
_NUMBER = ",.4~r"


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the cuts with their limits, the bobbins against the target, and the plied yarns."""
    return cuts_in_order(v), bobbins_against_target(v), plied_yarns(v)


def cuts_in_order(v: Any) -> chart.SheetChart:
    """Draw the control chart: each cut, the mean, the limits and the target."""
    # a fifth more room than the cuts take, for the words at the lines' ends
    x = chart.axis(
        "place", "Cut, in the order spun", "count * 1.2 + 0.5", start=0.5, tickMinStep=1, grid=False
    )
    y = _grist_axis("Grist ({grist_unit})", v.least, v.most, v.target)
    # a name of its own: a field worked out from itself would move on with each change
    across = 0.5 + alt.datum.at * v.count * 1.2
    mean, low, high, target = (
        chart.rows(2, place=across, grist=chart.shown("grist", level))
        for level in (v.centre, v.limit_low, v.limit_high, v.target)
    )
    is_above = chart.shown("grist", v.target) > chart.shown("grist", v.centre)
    named = (
        (v.limit_low, "limit_label", chart.YARN, 9),
        (v.limit_high, "limit_label", chart.YARN, 9),
        (v.centre, "centre_label", chart.YARN, choose(is_above, 9, -9)),
        (v.target, "target_label", chart.PROJECT, choose(is_above, -9, 9)),
    )
    cuts = chart.table("readings", grist=chart.shown("grist", alt.datum.found))
    lines = chart.plot(
        x,
        y,
        mean.mark_line(color=chart.YARN, strokeWidth=2),
        low.mark_line(**_LIMIT),
        high.mark_line(**_LIMIT),
        target.mark_line(**chart.GOAL),
        cuts.mark_line(color=chart.INK, strokeWidth=1),
        cuts.transform_filter("!datum.flagged").mark_point(
            color=chart.INK, filled=True, size=60, opacity=1
        ),
        cuts.transform_filter("datum.flagged").mark_point(
            color=chart.PROJECT, shape="diamond", fill="white", size=130, opacity=1, strokeWidth=2.5
        ),
        *(
            part
            for level, label, colour, dy in named
            for part in chart.words(
                chart.rows(
                    1, place=v.count * 1.2 + 0.5, grist=chart.shown("grist", level)
                ).transform_filter("has_answer"),
                label,
                colour,
                align="right",
                dy=alt.ExprRef(emit(dy)),
            )
        ),
    )
    changes = (
        chart.table("changes")
        .mark_rule(color=chart.INK, opacity=0.35)
        .encode(x=alt.X(**x), y=alt.value(0), y2=alt.value("height"))
    )
    return chart.SheetChart(
        "cuts_in_order",
        "Each cut, with the limits of a steady yarn",
        alt.LayerChart(layer=[changes, *lines.layer]),
        (
            ("has_signals", "Diamonds: {signals}."),
            ("is_unsteady", "They may be chance, but that place is worth a look."),
            ("has_no_signals", "No cut is outside the limits, and there is no run to one side."),
            (None, "Dotted lines: the limits, {limit_low!} and {limit_high}."),
            (
                "is_drifting",
                "The drift: {drift:2} a cut {direction}.",
            ),
            (
                "is_drift_broad",
                "It is {drift_low:2} to {drift_high:2} a cut, and {so_far_low:2} to"
                " {so_far_high:2} from first to last, 95% sure.",
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


def bobbins_against_target(v: Any) -> chart.SheetChart:
    """Draw each bobbin's mean grist with its range, and the target with what is near enough."""
    x = chart.axis("bobbin", "Bobbin", "bobbin_count + 0.5", start=0.5, tickMinStep=1, grid=False)
    y = _grist_axis(
        "Grist ({grist_unit})", v.bobbin_low, v.bobbin_high, v.target_low, v.target_high
    )
    across = 0.5 + alt.datum.at * v.bobbin_count
    near = chart.rows(
        2,
        bobbin=across,
        grist=chart.shown("grist", v.target_low),
        top=chart.shown("grist", v.target_high),
    )
    ranges = (
        chart.table(
            "ranges",
            grist=chart.shown("grist", alt.datum.low),
            top=chart.shown("grist", alt.datum.high),
        )
        .mark_rule(color=chart.YARN, strokeWidth=3)
        .encode(y2="top:Q")
    )
    target = chart.shown("grist", v.target)
    lines = chart.plot(
        x,
        y,
        chart.band(near, "top", chart.PROJECT, 0.14),
        ranges,
        chart.rows(2, bobbin=across, grist=target).mark_line(**chart.GOAL),
        chart.table("means", grist=chart.shown("grist", alt.datum.found)).mark_point(
            color=chart.YARN, filled=True, size=150, opacity=1, stroke="white", strokeWidth=2
        ),
        *chart.words(
            chart.rows(1, bobbin=0.5 + v.bobbin_count, grist=target),
            "target_label",
            chart.PROJECT,
            align="right",
            dx=-4,
            dy=-9,
        ),
    )
    return chart.SheetChart(
        "bobbins_against_target",
        "Each bobbin against the target",
        lines,
        (
            (None, "Against the target of {target}, {off_target}."),
            (
                None,
                "The band is what you can live with: cuts of {cut_low!} to {cut_high}. A bar is"
                " where the bobbin’s grist lies, 95% sure.",
            ),
        ),
        tables=("means", "ranges"),
    )


def plied_yarns(v: Any) -> chart.SheetChart:
    """Draw the grist of each plied yarn, paired by grist and in the order spun."""
    ends = [
        chart.shown("grist", end) for end in (v.pairs_low, v.pairs_high, v.order_low, v.order_high)
    ]
    x = chart.axis(
        "grist",
        "Plied grist ({grist_unit})",
        emit(alt.expr.max(*ends) * 1.06),
        start=emit(alt.expr.min(*ends) * 0.98),
        tickCount=3,
    )
    each = chart.table("plied", grist=chart.shown("grist", alt.datum.found)).encode(
        x=alt.X(**x),
        y=alt.Y("pair:N", title=None, sort=None, axis=alt.Axis(domain=True, grid=True)),
    )
    return chart.SheetChart(
        "plied_yarns",
        "What the bobbins ply to",
        alt.LayerChart(
            layer=[
                each.transform_filter("datum.way == 'by grist'").mark_point(
                    color=chart.YARN, filled=True, size=150, opacity=1
                ),
                each.transform_filter("datum.way != 'by grist'").mark_point(
                    color=chart.PROJECT, shape="diamond", size=120, opacity=1, strokeWidth=2.5
                ),
                each.mark_text(align="left", dx=12, fontSize=13, color=chart.INK).encode(
                    text=alt.Text("grist:Q", format=_NUMBER)
                ),
            ]
        ),
        (
            (
                "has_pairs",
                "Dots are pairs by grist, the finest with the thickest; diamonds are pairs in the"
                " order spun.",
            ),
            ("is_order_apart", "The order spun would give {order_low!} to {order_high}."),
        ),
        tables=("plied",),
        left=140,
    )


def _grist_axis(title: str, *reaches: Any) -> dict[str, Any]:
    """Set an axis of grist that shows all of `reaches`, whichever way the unit counts."""
    ends = [chart.shown("grist", reach) for reach in reaches]
    top, bottom = emit(alt.expr.max(*ends) * 1.02), emit(alt.expr.min(*ends) * 0.98)
    return chart.axis("grist", title, top, start=bottom)

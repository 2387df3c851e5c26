"""Charts of damp: weight against humidity, yards by right and wrong pairs, published regains."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit

_POINT: dict[str, Any] = {"size": 130, "filled": True, "opacity": 1}
_TWO_LINES = alt.Axis(
    domain=True,
    labelExpr="split(datum.label, '|')",
    labelLimit=180,
    labelFontSize=11.5,
    labelOffset=-6,
)
_BOLD: dict[str, Any] = {"fontSize": 13, "fontWeight": 600}


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw weight against humidity, the yards of each pairing, and the published regains."""
    return weight_against_humidity(v), yards_by_pairing(v), published_regains(v)


def weight_against_humidity(v: Any) -> chart.SheetChart:
    """Draw what the yarn weighs in air of each humidity, with its range, and the two days."""
    x = chart.axis("humidity", "Relative humidity of the air (%)", 100)
    y = chart.axis(
        "weight",
        "Weight ({mass_unit})",
        emit(chart.shown("mass", v.weight * v.heaviest * 1.01)),
        start=emit(chart.shown("mass", v.weight * v.lightest * 0.99)),
    )
    weighs = chart.shown("mass", v.weight * alt.datum.ratio)
    spread = chart.band(
        chart.table(
            "air",
            weight=chart.shown("mass", v.weight * alt.datum.low),
            high_weight=chart.shown("mass", v.weight * alt.datum.high),
        ),
        "high_weight",
    )
    days = chart.table("days", weight=weighs)
    today = chart.rows(2, humidity=alt.datum.at * 100, weight=chart.shown("mass", v.weight))
    then = chart.rows(2, humidity=alt.datum.at * 100, weight=chart.shown("mass", v.weight_then))
    start = chart.rows(1, humidity=alt.datum.at, weight=chart.shown("mass", v.weight))
    end = chart.rows(1, humidity=alt.datum.at + 100, weight=chart.shown("mass", v.weight_then))
    look = {"color": chart.PROJECT, "strokeWidth": 1.5, **_seen(v)}
    lines = chart.plot(
        x,
        y,
        spread,
        today.mark_line(**look),
        then.mark_line(strokeDash=[6, 4], **look),
        chart.table("air", weight=weighs).mark_line(color=chart.YARN, strokeWidth=3),
        days.mark_point(color=chart.PROJECT, stroke="white", strokeWidth=2, **_POINT),
        *chart.words(start, "today_label", chart.PROJECT, align="left", dx=4, dy=-9, **_seen(v)),
        *chart.words(end, "then_label", chart.PROJECT, align="right", dx=-4, dy=-9, **_seen(v)),
    )
    return chart.SheetChart(
        "weight_against_humidity",
        "Weight against humidity",
        lines,
        (
            (
                "has_curve",
                "The band is wide since wool holds more as it dries than as it grows damp, and"
                " the table (International Critical Tables, from memory) does not say which it"
                " was.",
            ),
            (
                "has_no_curve",
                "No curve, since only wool has a table against humidity here: the lines are the"
                " weights that follow from the regains used.",
            ),
            (
                "is_held",
                "There is no table of {held} against humidity here: it is held at what is published"
                " for air of 65%, and its own change is left out.",
            ),
            (None, "From {weight} today to {weight_then} then."),
        ),
        tables=("air", "days"),
    )


def yards_by_pairing(v: Any) -> chart.SheetChart:
    """Draw the length that either grist makes of either weight: two are right."""
    ends = [chart.shown("length", each) for each in (v.yards, v.yards_wrong, v.yards_reverse)]
    x = chart.axis(
        "yards",
        "Length ({length_unit})",
        emit(alt.expr.max(*ends) * 1.03),
        start=emit(alt.expr.min(*ends) * 0.97),
    )
    y = alt.Y("pair:N", title=None, sort=None, axis=_TWO_LINES)
    pairs = chart.table("pairs", yards=chart.shown("length", v.yards * alt.datum.ratio))
    right = chart.rows(1, yards=chart.shown("length", v.yards) + alt.datum.at)
    text = alt.Text("yards:Q", format=",.3~r")
    return chart.SheetChart(
        "yards_by_pairing",
        "Which grist with which weight",
        alt.LayerChart(
            layer=[
                right.mark_rule(color=chart.YARN, strokeWidth=2).encode(x=alt.X(**x)),
                pairs.mark_point(color=chart.YARN, **_POINT).encode(x=alt.X(**x), y=y),
                pairs.mark_text(align="left", dx=11, color=chart.INK, **_BOLD).encode(
                    x=alt.X(**x), y=y, text=text
                ),
            ]
        ).properties(height=alt.Step(40)),
        (
            (
                None,
                "Grist and weight of the same day make {yards}, the line. Mixed, they make"
                " {yards_wrong} or {yards_reverse}, up to {off:2} off: measure both in the same"
                " air.",
            ),
        ),
        tables=("pairs",),
        left=140,
    )


def published_regains(v: Any) -> chart.SheetChart:
    """Draw every published regain of the fibres side by side, and the two that were used."""
    x = chart.axis("percent", "Regain (%)", emit(v.most_drawn * 1))
    y = alt.Y("figure:N", title=None, sort=None, axis=_TWO_LINES)
    figures = chart.table("published")
    today = chart.rows(1, percent=v.regain_now * 100 + alt.datum.at)
    then = chart.rows(1, percent=v.regain_then * 100 + alt.datum.at)
    more = v.regain_now > v.regain_then

    def above(day: alt.Chart, label: str, left: Any) -> list[alt.Chart]:
        """Write the day over its line, leaning away from the other day's."""
        look = {"y": -8, "baseline": "bottom", "align": alt.ExprRef(emit(left)), **_seen(v)}
        return [
            part.encode(x=alt.X(**x)) for part in chart.words(day, label, chart.PROJECT, **look)
        ]

    return chart.SheetChart(
        "published_regains",
        "Regain as published",
        alt.LayerChart(
            layer=[
                today.mark_rule(color=chart.PROJECT, strokeWidth=2, **_seen(v)).encode(
                    x=alt.X(**x)
                ),
                then.mark_rule(
                    color=chart.PROJECT, strokeWidth=2, strokeDash=[6, 4], **_seen(v)
                ).encode(x=alt.X(**x)),
                *above(today, "today_label", choose(more, "left", "right")),
                *above(then, "then_label", choose(more, "right", "left")),
                figures.mark_rule(color=chart.YARN, strokeWidth=4).encode(
                    x=alt.X(**{**x, "field": "low"}), x2="high:Q", y=y
                ),
                figures.mark_point(size=90, color=chart.YARN, opacity=1, strokeWidth=2).encode(
                    x=alt.X(**x),
                    y=y,
                    fill=alt.condition(
                        alt.datum.recalled, alt.value("white"), alt.value(chart.YARN)
                    ),
                ),
            ]
        ).properties(height=alt.Step(34)),
        (
            (
                None,
                "Sources contradict one another. Filled dots were read, open ones are from"
                " memory. What trade agrees on is no regain of any day.",
            ),
            (
                "has_one_origin",
                "The lines are the regains used: {regain_now} today and {regain_then} then, by"
                " {origin_now}.",
            ),
            (
                "has_two_origins",
                "The lines are the regains used: {regain_now} today, by {origin_now};"
                " {regain_then} then, by {origin_then}.",
            ),
        ),
        tables=("published",),
        left=165,
    )


def _seen(v: Any) -> dict[str, Any]:
    """Hide what belongs to the answer while there is none."""
    return {"opacity": alt.ExprRef(emit(choose(v.has_answer, 1, 0)))}

"""Charts of damp: weight against humidity, yards by right and wrong pairs, published regains."""

from typing import Any

import altair as alt

from yarnsheets.charts.chart import (
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

_POINT: dict[str, Any] = {"size": 130, "filled": True, "opacity": 1}
_TWO_LINES = alt.Axis(
    domain=True,
    labelExpr="split(datum.label, '|')",
    labelLimit=180,
    labelFontSize=11.5,
    labelOffset=-6,
)
_BOLD: dict[str, Any] = {"fontSize": 13, "fontWeight": 600}
_HALO: dict[str, Any] = {"stroke": "white", "strokeWidth": 5, "color": "white", **_BOLD}


def _seen(v: Any) -> dict[str, Any]:
    """Hide what belongs to the answer while there is none."""
    return {"opacity": alt.ExprRef(emit(choose(v.has_answer, 1, 0)))}


def weight_against_humidity(v: Any) -> SheetChart:
    """Draw what the yarn weighs in air of each humidity, with its range, and the two days."""
    x = axis("humidity", "Relative humidity of the air (%)", 100)
    y = axis(
        "weight",
        "Weight ({mass_unit})",
        emit(shown("mass", v.weight * v.heaviest * 1.01)),
        start=emit(shown("mass", v.weight * v.lightest * 0.99)),
    )
    weighs = shown("mass", v.weight * alt.datum.ratio)
    spread = band(
        table(
            "air",
            weight=shown("mass", v.weight * alt.datum.low),
            high_weight=shown("mass", v.weight * alt.datum.high),
        ),
        "high_weight",
    )
    days = table("days", weight=weighs)
    today = rows(2, humidity=alt.datum.at * 100, weight=shown("mass", v.weight))
    then = rows(2, humidity=alt.datum.at * 100, weight=shown("mass", v.weight_then))
    start = rows(1, humidity=alt.datum.at, weight=shown("mass", v.weight))
    end = rows(1, humidity=alt.datum.at + 100, weight=shown("mass", v.weight_then))
    look = {"color": PROJECT, "strokeWidth": 1.5, **_seen(v)}
    lines = plot(
        x,
        y,
        spread,
        today.mark_line(**look),
        then.mark_line(strokeDash=[6, 4], **look),
        table("air", weight=weighs).mark_line(color=YARN, strokeWidth=3),
        days.mark_point(color=PROJECT, stroke="white", strokeWidth=2, **_POINT),
        *words(start, "today_label", PROJECT, align="left", dx=4, dy=-9, **_seen(v)),
        *words(end, "then_label", PROJECT, align="right", dx=-4, dy=-9, **_seen(v)),
    )
    return SheetChart(
        "weight_against_humidity",
        "Weight against humidity",
        lines,
        (
            (
                "has_curve",
                "The same yarn in air of 10 to 90%. The band is wide since wool that dries into an"
                " air holds more than wool that grows damp in it, and the table (International"
                " Critical Tables, from memory) does not say which it was.",
            ),
            (
                "has_no_curve",
                "No curve, since only wool has a table against humidity here: the lines are the"
                " weights that follow from the regains used.",
            ),
            ("has_answer", "From {weight} today to {weight_then} then."),
        ),
        tables=("air", "days"),
    )


def yards_by_pairing(v: Any) -> SheetChart:
    """Draw the length that either grist makes of either weight: two are right."""
    ends = [shown("length", each) for each in (v.yards, v.yards_wrong, v.yards_reverse)]
    x = axis(
        "yards",
        "Length ({length_unit})",
        emit(alt.expr.max(*ends) * 1.03),
        start=emit(alt.expr.min(*ends) * 0.97),
    )
    y = alt.Y("pair:N", title=None, sort=None, axis=_TWO_LINES)
    pairs = table("pairs", yards=shown("length", v.yards * alt.datum.ratio))
    right = rows(1, yards=shown("length", v.yards) + alt.datum.at)
    text = alt.Text("yards:Q", format=",.3~r")
    return SheetChart(
        "yards_by_pairing",
        "Which grist with which weight",
        alt.LayerChart(
            layer=[
                right.mark_rule(color=YARN, strokeWidth=2).encode(x=alt.X(**x)),
                pairs.mark_point(color=YARN, **_POINT).encode(x=alt.X(**x), y=y),
                pairs.mark_text(dy=-15, **_HALO).encode(x=alt.X(**x), y=y, text=text),
                pairs.mark_text(dy=-15, color=INK, **_BOLD).encode(x=alt.X(**x), y=y, text=text),
            ]
        ).properties(height=alt.Step(48)),
        (
            (
                "has_answer",
                "Grist and weight of the same day make {yards}, the line. Mixed, they make"
                " {yards_wrong} or {yards_reverse}: measure both in the same air.",
            ),
        ),
        tables=("pairs",),
        left=140,
    )


def published_regains(v: Any) -> SheetChart:
    """Draw every published regain of the fibres side by side, and the two that were used."""
    x = axis("percent", "Regain (%)", 25)
    y = alt.Y("figure:N", title=None, sort=None, axis=_TWO_LINES)
    figures = table("published")
    today = rows(1, percent=v.regain_now * 100 + alt.datum.at)
    then = rows(1, percent=v.regain_then * 100 + alt.datum.at)
    more = v.regain_now > v.regain_then

    def above(day: alt.Chart, label: str, left: Any) -> list[alt.Chart]:
        """Write the day over its line, leaning away from the other day's."""
        look = {"y": -8, "baseline": "bottom", "align": alt.ExprRef(emit(left)), **_seen(v)}
        return [part.encode(x=alt.X(**x)) for part in words(day, label, PROJECT, **look)]

    return SheetChart(
        "published_regains",
        "Regain as published",
        alt.LayerChart(
            layer=[
                today.mark_rule(color=PROJECT, strokeWidth=2, **_seen(v)).encode(x=alt.X(**x)),
                then.mark_rule(color=PROJECT, strokeWidth=2, strokeDash=[6, 4], **_seen(v)).encode(
                    x=alt.X(**x)
                ),
                *above(today, "today_label", choose(more, "left", "right")),
                *above(then, "then_label", choose(more, "right", "left")),
                figures.mark_rule(color=YARN, strokeWidth=4).encode(
                    x=alt.X(**{**x, "field": "low"}), x2="high:Q", y=y
                ),
                figures.mark_point(size=90, color=YARN, opacity=1, strokeWidth=2).encode(
                    x=alt.X(**x),
                    y=y,
                    fill=alt.condition(alt.datum.recalled, alt.value("white"), alt.value(YARN)),
                ),
            ]
        ).properties(height=alt.Step(34)),
        (
            (
                None,
                "Sources contradict one another, and none is merged: filled dots were read, open"
                " ones are from memory. What is agreed for invoices is no regain of any day.",
            ),
            (
                "has_answer",
                "The lines are the regains used: {regain_now} today, {regain_then} then.",
            ),
        ),
        tables=("published",),
        left=165,
    )

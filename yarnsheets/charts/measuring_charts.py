"""Charts of measuring: a length with its range, readings side by side, where doubt comes from."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.charts.chart import (
    DOT,
    HERE,
    PROJECT,
    YARN,
    Grip,
    SheetChart,
    axis,
    band,
    own,
    plot,
    rows,
    shown,
    table,
    words,
)
from yarnsheets.charts.expressions import emit


def yards_with_range(v: Any) -> SheetChart:
    """Draw the length a weight makes, with its range as a band around the line."""
    weight = alt.datum.at * alt.param(name="weight_top", value=1)
    makes = shown("length", formulas.length(own("mass", weight), v.grist))
    here = rows(1, weight=shown("mass", v.weight), yards=shown("length", v.yards))
    x = axis("weight", "Weight ({mass_unit})", "weight_top")
    y = axis("yards", "Length ({length_unit})", "yards_top")
    spread = band(rows(2, weight=weight, yards=makes * v.low_ratio, high=makes * v.high_ratio))
    lines = plot(
        x,
        y,
        spread,
        rows(2, weight=weight, yards=makes).mark_line(color=YARN, strokeWidth=3, clip=True),
        here.mark_point(color=YARN, **HERE),
        *words(here, "yards_label", YARN, align="left", dx=14, dy=14),
    )
    return SheetChart(
        "yards_with_range",
        "Length against weight, with its range",
        lines,
        (
            (
                "has_range",
                "{weight} makes between {yards_low:2!} and {yards_high:2}: the band. It widens with"
                " the weight, since the doubt is in the grist.",
            ),
        ),
        Grip("weight", "weight", "yards"),
        {
            "weight_top": shown("mass", v.weight * 1.3),
            "yards_top": shown("length", v.yards_high * 1.2),
        },
    )


def readings_of_grist(v: Any) -> SheetChart:
    """Draw the grist of each cut, their mean, and the range of the mean."""
    ends = [shown("grist", v.least), shown("grist", v.most)]
    x = axis("place", "Cut", "count + 0.5", start=0.5, tickMinStep=1, grid=False)
    y = axis(
        "grist",
        "Grist ({grist_unit})",
        emit(alt.expr.max(*ends) * 1.02),
        start=emit(alt.expr.min(*ends) * 0.98),
    )
    across = 0.5 + alt.datum.at * v.count
    low, high = shown("grist", v.grist_low), shown("grist", v.grist_high)
    spread = band(rows(2, place=across, grist=low, high=high))
    middle = rows(2, place=across, grist=shown("grist", v.grist))
    points = plot(
        x,
        y,
        spread,
        middle.mark_line(color=YARN, strokeWidth=2),
        table("readings", place=alt.datum.at * 1, grist=shown("grist", alt.datum.found)).mark_point(
            **DOT
        ),
    )
    return SheetChart(
        "readings_of_grist",
        "Each cut, and the mean with its range",
        points,
        (
            (
                "has_range",
                "The dots are your cuts, spread by {spread}. The band is where the yarn’s grist"
                " lies: more cuts make it narrower, though the dots stay as far apart.",
            ),
        ),
        tables=("readings",),
    )


def sources_of_doubt() -> SheetChart:
    """Draw what part of the doubt each source makes, the largest first."""
    bars = (
        table("sources", part=alt.datum.share * 100)
        .mark_bar(color=PROJECT, height=18)
        .encode(
            x=alt.X("part:Q", title="Part of the doubt (%)", scale=alt.Scale(domain=[0, 100])),
            y=alt.Y("source:N", title=None, sort="-x", axis=alt.Axis(labelLimit=160, domain=True)),
        )
    )
    return SheetChart(
        "sources_of_doubt",
        "Where the doubt comes from",
        alt.LayerChart(layer=[bars]),
        (
            (
                "has_range",
                "Most of it, {worst_share}, is {worst}. Work on the longest bar: the others hardly"
                " matter until it is shorter.",
            ),
        ),
        tables=("sources",),
        left=170,
    )

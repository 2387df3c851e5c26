"""Charts of a grist from cuts: the yards with their range, each cut, and where doubt comes from."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import emit
from yarnsheets.sheets.shared import measuring_charts


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the yards with their band, the cuts, and the sources of doubt."""
    return yards_with_range(v), readings_of_grist(v), measuring_charts.sources_of_doubt()


def yards_with_range(v: Any) -> chart.SheetChart:
    """Draw the length a weight makes, with its range as a band around the line."""
    weight = alt.datum.at * alt.param(name="weight_top", value=1)
    makes = chart.shown("length", formulas.length(chart.own("mass", weight), v.grist))
    here = chart.rows(1, weight=chart.shown("mass", v.weight), yards=chart.shown("length", v.yards))
    x = chart.axis("weight", "Weight ({mass_unit})", "weight_top")
    y = chart.axis("yards", "Length ({length_unit})", "yards_top")
    spread = chart.band(
        chart.rows(
            2,
            weight=weight,
            yards=makes * v.yards_low / v.yards,
            high=makes * v.yards_high / v.yards,
        )
    )
    lines = chart.plot(
        x,
        y,
        spread,
        chart.rows(2, weight=weight, yards=makes).mark_line(
            color=chart.YARN, strokeWidth=3, clip=True
        ),
        here.mark_point(color=chart.YARN, **chart.HERE),
        *chart.words(here, "yards_label", chart.YARN, align="left", dx=14, dy=14),
    )
    return chart.SheetChart(
        "yards_with_range",
        "Length against weight, with its range",
        lines,
        (
            (
                "is_broad",
                "{weight} makes between {yards_low!} and {yards_high}: the band. It widens with the"
                " weight, since the doubt is in the grist.",
            ),
        ),
        chart.Grip("weight", "weight", "yards", when="has_range"),
        {
            "weight_top": chart.shown("mass", v.weight * 1.3),
            "yards_top": chart.shown("length", v.yards_high * 1.2),
        },
    )


def readings_of_grist(v: Any) -> chart.SheetChart:
    """Draw the grist of each cut, their mean, and the range of the mean."""
    ends = [chart.shown("grist", v.least), chart.shown("grist", v.most)]
    x = chart.axis("place", "Cut", "count + 0.5", start=0.5, tickMinStep=1, grid=False)
    y = chart.axis(
        "grist",
        "Grist ({grist_unit})",
        emit(alt.expr.max(*ends) * 1.02),
        start=emit(alt.expr.min(*ends) * 0.98),
    )
    across = 0.5 + alt.datum.at * v.count
    low, high = chart.shown("grist", v.grist_low), chart.shown("grist", v.grist_high)
    spread = chart.band(chart.rows(2, place=across, grist=low, high=high))
    middle = chart.rows(2, place=across, grist=chart.shown("grist", v.grist))
    points = chart.plot(
        x,
        y,
        spread,
        middle.mark_line(color=chart.YARN, strokeWidth=2),
        chart.table(
            "readings", place=alt.datum.at * 1, grist=chart.shown("grist", alt.datum.found)
        ).mark_point(**chart.DOT),
    )
    return chart.SheetChart(
        "readings_of_grist",
        "Each cut, and the mean with its range",
        points,
        (
            (
                "is_several",
                "The dots are your cuts, spread by {spread}. The band is where the yarn’s grist"
                " lies: more cuts make it narrower, though the dots stay as far apart.",
            ),
            (
                "is_one",
                "The dot is your cut. The band is where the yarn’s grist lies if the yarn is uneven"
                " by {usual_spread}; from the second cut on, the cuts themselves show how uneven it"
                " is, and two of them hardly do.",
            ),
        ),
        tables=("readings",),
    )

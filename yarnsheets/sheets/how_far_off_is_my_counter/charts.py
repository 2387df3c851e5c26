"""Charts of a counter: what it showed for known lengths, its factor, and a new reading."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import emit


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the lengths of the check, the factor of each, and the new reading."""
    return shown_against_known(v), factor_of_each(v), length_behind_reading(v)


def shown_against_known(v: Any) -> chart.SheetChart:
    """Draw what the counter showed for each length, its line, and that of a true counter."""
    known = alt.datum.at * alt.param(name="known_top", value=1)
    return chart.SheetChart(
        "shown_against_known",
        "What the counter showed",
        chart.plot(
            chart.axis("known", "Length you know ({length_unit})", "known_top"),
            chart.axis("shown", "Shown ({length_unit})", "shown_top"),
            chart.rows(2, known=known, shown=known).mark_line(**chart.GOAL),
            chart.rows(2, known=known, shown=known / v.factor).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            chart.table(
                "lengths",
                known=chart.shown("length", alt.datum.length),
                shown=chart.shown("length", alt.datum.counted),
            ).mark_point(**chart.DOT),
        ),
        (
            ("is_low", "The dots lie below the dashed line of a counter that tells the truth."),
            ("is_high", "The dots lie above the dashed line of a counter that tells the truth."),
            ("is_true", "The dashed line is a counter that tells the truth: yours is near it."),
            (
                "has_range",
                "The solid line is your counter. If the dots do not follow it from its start, no"
                " one factor will do.",
            ),
        ),
        reach={
            "known_top": chart.shown("length", v.longest_known * 1.1),
            "shown_top": chart.shown("length", alt.expr.max(v.longest, v.longest_known) * 1.1),
        },
        tables=("lengths",),
    )


def factor_of_each(v: Any) -> chart.SheetChart:
    """Draw the factor of each length, their mean with its range, and a factor of one."""
    x = chart.axis(
        "place", "Line in the lists", "count + 0.5", start=0.5, tickMinStep=1, grid=False
    )
    y = chart.axis(
        "factor",
        "Factor",
        emit(alt.expr.max(v.most_factor, 1) * 1.01),
        start=emit(alt.expr.min(v.least_factor, 1) * 0.99),
    )
    across = 0.5 + alt.datum.at * v.count
    spread = chart.band(
        chart.rows(2, place=across, factor=v.factor_low * 1, high=v.factor_high * 1)
    )
    end = chart.rows(1, place=0.5 + v.count, factor=v.factor * 1)
    lines = chart.plot(
        x,
        y,
        spread,
        chart.rows(2, place=across, factor=1).mark_line(**chart.GOAL),
        chart.rows(2, place=across, factor=v.factor * 1).mark_line(color=chart.YARN, strokeWidth=2),
        chart.table("lengths", place=alt.datum.at * 1, factor=alt.datum.found * 1).mark_point(
            **chart.DOT
        ),
        *chart.words(end, "factor_label", chart.YARN, align="right", dx=-4, dy=-10),
    )
    return chart.SheetChart(
        "factor_of_each",
        "The factor of each length",
        lines,
        (
            (
                "has_range",
                "The band, {factor_low:5} to {factor_high:5}, is where the factor lies; the"
                " dashed line is a counter that needs none.",
            ),
        ),
        tables=("lengths",),
    )


def length_behind_reading(v: Any) -> chart.SheetChart:
    """Draw the length behind each reading, with its range as a band around the line."""
    reading = alt.datum.at * alt.param(name="reading_top", value=1)
    length = chart.shown("length", chart.own("length", reading) * v.factor)
    here = chart.rows(
        1, reading=chart.shown("length", v.reading), yards=chart.shown("length", v.yards)
    )
    x = chart.axis("reading", "Reading ({length_unit})", "reading_top")
    y = chart.axis("yards", "Length ({length_unit})", "yards_top")
    low, high = length * v.yards_low / v.yards, length * v.yards_high / v.yards
    spread = chart.band(chart.rows(2, reading=reading, yards=low, high=high))
    lines = chart.plot(
        x,
        y,
        spread,
        chart.rows(2, reading=reading, yards=length).mark_line(
            color=chart.YARN, strokeWidth=3, clip=True
        ),
        here.mark_point(color=chart.YARN, **chart.HERE),
        *chart.words(here, "yards_label", chart.YARN, align="left", dx=14, dy=14),
    )
    return chart.SheetChart(
        "length_behind_reading",
        "Length behind a reading, with its range",
        lines,
        (
            (
                "has_range",
                "The band is where the length lies. Drag the point to another reading.",
            ),
            (
                "is_beyond",
                "{reading} is far beyond the readings you checked: check a length as long as that,"
                " too.",
            ),
        ),
        chart.Grip("reading", "reading", "yards", when="has_range"),
        {
            "reading_top": chart.shown("length", v.reading * 1.3),
            "yards_top": chart.shown("length", v.yards_high * 1.2),
        },
    )

"""Charts of two methods: one against the other, their difference, and every reading."""

from typing import Any

import altair as alt

from yarnsheets.page import chart

_DOT: dict[str, Any] = {"filled": True, "size": 80, "opacity": 1, "clip": True}
_ARM: dict[str, Any] = {"color": chart.INK, "strokeWidth": 1.5, "clip": True}


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw one method against the other, their difference, and every reading."""
    return first_against_second(v), difference_against_mean(v), every_reading()


def first_against_second(v: Any) -> chart.SheetChart:
    """Draw each skein by both methods, with the line where they agree."""
    x = chart.axis("first", "First method", "high_end", start="low_end")
    y = chart.axis("second", "Second method", "high_end", start="low_end")
    end = v.low_end + alt.datum.at * (v.high_end - v.low_end)
    arms = chart.table("points").mark_rule(**_ARM)
    across = arms.encode(x=alt.X(**x | {"field": "first_low"}), y=alt.Y(**y), x2="first_high:Q")
    along = arms.encode(x=alt.X(**x), y=alt.Y(**y | {"field": "second_low"}), y2="second_high:Q")
    lines = chart.plot(
        x,
        y,
        chart.rows(2, first=end, second=end).mark_line(**chart.GOAL),
        chart.table("points").mark_point(color=chart.INK, **_DOT),
    )
    return chart.SheetChart(
        "first_against_second",
        "One method against the other",
        alt.LayerChart(layer=[across, along, *lines.layer]),
        (
            (
                "is_one",
                "The dot is your skein, its arms the range of each method. On the dashed line both"
                " methods give the same.",
            ),
            (
                "is_several",
                "A dot a skein. On the dashed line both methods give the same; below it the first"
                " gives more.",
            ),
        ),
        tables=("points",),
    )


def difference_against_mean(v: Any) -> chart.SheetChart:
    """Draw each skein's difference, their mean with its range, and the ends for the next."""
    x = chart.axis("mean", "Mean of both methods", "high_end", start="low_end")
    y = chart.axis(
        "difference",
        "First less second",
        "high_apart",
        start="low_apart",
        labelExpr="datum.label + (is_plain ? '' : '%')",
    )
    left, right = v.low_end * 1, v.high_end * 1
    # the ends for the next skein are lines alone
    band = (
        chart.table("bands", mean=left, right=right, difference=alt.datum.low)
        .mark_rect(color=chart.YARN, opacity=0.18, clip=True)
        .encode(x=alt.X(**x), y=alt.Y(**y), x2="right:Q", y2="high:Q")
    )
    middles = (
        chart.table("bands", mean=left, right=right, difference=alt.datum.value)
        .mark_rule(color=chart.YARN, strokeWidth=2, clip=True)
        .encode(x=alt.X(**x), y=alt.Y(**y), x2="right:Q")
    )
    marked = chart.plot(
        x,
        y,
        chart.rows(2, mean=left + alt.datum.at * (right - left), difference=0).mark_line(
            **chart.GOAL
        ),
        chart.table("points").mark_point(color=chart.INK, **_DOT),
        *chart.words(
            chart.table("bands", mean=right, difference=alt.datum.value),
            "datum.name",
            chart.YARN,
            align="right",
            dx=-4,
            dy=-9,
        ),
    )
    return chart.SheetChart(
        "difference_against_mean",
        "How far apart they are",
        alt.LayerChart(layer=[band, middles, *marked.layer]),
        (
            (
                "is_noise",
                "The band is the range of the difference. The dashed line of no difference runs"
                " through it, so there may be none.",
            ),
            (
                "is_apart",
                "The band is the range of the difference. The dashed line of no difference lies"
                " outside it.",
            ),
            (
                "is_several",
                "The dots are your skeins. The next one lies between the outer lines, 95% sure; the"
                " band is the range of the mean, {difference_range}. More skeins narrow both.",
            ),
            ("is_plain", "Dots that fan out to the right ask for per cent."),
        ),
        tables=("points", "bands"),
    )


def every_reading() -> chart.SheetChart:
    """Draw every reading in the order typed, the methods told apart by colour and shape."""
    x = chart.axis("at", "Line in the list", "lines + 0.5", start=0.5, tickMinStep=1, grid=False)
    y = chart.axis("reading", "Reading", "high_end", start="low_end")
    first = alt.datum.method == "first"
    layers = [
        chart.table("readings")
        .transform_filter(first if is_first else ~first)
        .mark_point(color=colour, shape=shape, **_DOT)
        for is_first, colour, shape in (
            (True, chart.YARN, "circle"),
            (False, chart.PROJECT, "diamond"),
        )
    ]
    return chart.SheetChart(
        "every_reading",
        "Every reading",
        chart.plot(x, y, *layers),
        (
            ("is_one", "Round dots are the first method, diamonds the second."),
            ("is_several", "Round dots are the first method, diamonds the second: a pair a skein."),
        ),
        tables=("readings",),
    )

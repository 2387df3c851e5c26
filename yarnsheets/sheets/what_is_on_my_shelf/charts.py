"""Charts of the shelf: what goes into the project, yards by fibre, grist against wraps."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import emit, larger, smaller
from yarnsheets.published.sources import HANDSPUN_BULK_DENSITY
from yarnsheets.sheets.shared.density import in_own_units
from yarnsheets.sheets.what_is_on_my_shelf.drawn import FINE, MIDDLE

_NUMBER: dict[str, Any] = {"fontSize": 13, "fontWeight": 600}
_LINE_ROWS = 30


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the choice for the project, the yards of each fibre, and grist against wraps."""
    return for_the_project(v), by_fibre(v), grist_and_wraps(v)


def for_the_project(v: Any) -> chart.SheetChart:
    """Draw the skeins chosen one after another, up to what the project takes and beyond."""
    length = chart.shown("length", alt.datum.end)
    parts = chart.table("stack", yards=length, begin=chart.shown("length", alt.datum.start))
    x = alt.X(
        **chart.axis(
            "yards",
            "Yarn ({length_unit})",
            emit(chart.shown("length", v.chosen_top) * 1.08),
            labelOverlap=True,
            labelSeparation=10,
        )
    )
    y = alt.Y("skein:N", title=None, sort=None, axis=alt.Axis(domain=True, labelLimit=130))
    bars = parts.mark_bar(color=chart.YARN, height=18, opacity=0.75, clip=True).encode(
        x=x, x2="begin:Q", y=y
    )
    goal = chart.rows(1, yards=chart.shown("length", v.project)).mark_rule(**chart.GOAL)
    return chart.SheetChart(
        "for_the_project",
        "What goes into the project",
        alt.LayerChart(layer=[bars, goal.encode(x=x)]),
        (
            (
                "has_choice",
                "Each bar is a skein, laid on from where the last one ends. The broken line is what"
                " the project takes, {project}; {left} lies beyond it, for safety.",
            ),
            (
                "is_short",
                "Each bar is one of the skeins that come nearest. Even together they do not reach"
                " far enough past the broken line, which is what the project takes, {project}.",
            ),
        ),
        tables=("stack",),
        left=110,
    )


def by_fibre(v: Any) -> chart.SheetChart:
    """Draw the yards of each fibre that is fine, middle and coarse."""
    x = alt.X(
        **chart.axis(
            "yards",
            "Yarn ({length_unit})",
            emit(chart.shown("length", v.fibre_top) * 1.02),
            labelOverlap=True,
            labelSeparation=10,
        )
    )
    y = alt.Y("what:N", title=None, sort=None, axis=alt.Axis(domain=True, labelLimit=150))
    bars = chart.table("bars", yards=chart.shown("length", alt.datum.held)).mark_bar(
        color=chart.YARN, height=18, opacity=0.75, clip=True
    )
    return chart.SheetChart(
        "by_fibre",
        "Yards by fibre and thickness",
        alt.LayerChart(layer=[bars.encode(x=x, y=y)]),
        (
            (
                "has_yarn",
                f"From coarse to middle the line is a grist of {{{MIDDLE:g} grist}}, from middle to"
                f" fine {{{FINE:g} grist}}: a rule of this page alone.",
            ),
        ),
        tables=("bars",),
        left=130,
    )


def grist_and_wraps(v: Any) -> chart.SheetChart:
    """Draw each skein with wraps as a point, its range, and what wraps usually mean."""
    ends = [chart.shown("grist", v.grist_least * 0.9), chart.shown("grist", v.grist_most * 1.1)]
    wraps = chart.shown("wraps", alt.datum.laid)
    x = chart.axis("wraps", "Wraps ({wraps_unit})", emit(chart.shown("wraps", v.wraps_most) * 1.15))
    y = chart.axis("grist", "Grist ({grist_unit})", emit(larger(*ends)), start=emit(smaller(*ends)))
    at = (alt.datum.at + 1) / _LINE_ROWS * v.wraps_most * 1.15

    def usual(density: float) -> Any:
        return chart.shown("grist", formulas.grist_from_wraps(at, in_own_units(density)))

    band = chart.rows(
        _LINE_ROWS,
        wraps=chart.shown("wraps", at),
        grist=usual(HANDSPUN_BULK_DENSITY.high),
        high_end=usual(HANDSPUN_BULK_DENSITY.low),
    )
    points = chart.table(
        "points",
        wraps=wraps,
        grist=chart.shown("grist", alt.datum.middle),
    )
    opacity = alt.condition(alt.datum.is_measured, alt.value(1), alt.value(0.35))
    ranges = chart.table(
        "points",
        wraps=wraps,
        grist=chart.shown("grist", alt.datum.low),
        high_end=chart.shown("grist", alt.datum.high),
    )
    names = chart.table(
        "names",
        wraps=wraps,
        grist=chart.shown("grist", alt.datum.middle),
    )
    plot = chart.plot(
        x,
        y,
        chart.band(band, "high_end", opacity=0.15),
        ranges.mark_bar(color=chart.INK, width=5, opacity=0.3, clip=True).encode(y2="high_end:Q"),
        points.mark_point(**{**chart.DOT, "clip": True}).encode(opacity=opacity),
        names.mark_text(color=chart.INK, align="left", dx=8, dy=-8, **_NUMBER).encode(
            text="rows:N"
        ),
    )
    return chart.SheetChart(
        "grist_and_wraps",
        "Grist against wraps",
        plot,
        (
            (
                "has_yarn",
                "Each point is a skein, with its range and the number of its row; a pale one is"
                " known by wraps alone. The band is what wraps usually mean, from airy to dense.",
            ),
        ),
        tables=("points", "names"),
    )

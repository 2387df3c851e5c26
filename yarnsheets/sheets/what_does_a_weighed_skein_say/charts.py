"""Charts of a weighed skein: its grist's range against turns, and its length against turns."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger
from yarnsheets.sheets.shared import measuring_charts
from yarnsheets.units import convert


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the grist's range against turns, the length, and the sources of doubt."""
    return range_against_turns(v), length_against_turns(v), measuring_charts.sources_of_doubt()


def range_against_turns(v: Any) -> chart.SheetChart:
    """Draw the range of the grist for skeins of fewer and of more turns of this yarn."""
    top = alt.param(name="turns_top", value=1)
    # a range is a factor either way; the axis shows two and a half of the wider one
    reach = (1 + larger(v.half_width, v.wanted)) ** 2.5
    ends = [chart.shown("grist", v.grist / reach), chart.shown("grist", v.grist * reach)]
    x = chart.axis("turns", "Turns in the skein", "turns_top")
    y = chart.axis(
        "grist",
        "Grist ({grist_unit})",
        emit(alt.expr.max(*ends)),
        start=emit(alt.expr.min(*ends)),
    )
    spread = chart.band(
        chart.table(
            "windings",
            grist=chart.shown("grist", v.grist * alt.datum.low),
            top=chart.shown("grist", v.grist * alt.datum.high),
        ),
        "top",
    )
    across = alt.datum.at * top
    bounds = [chart.shown("grist", v.grist / (1 + v.wanted))]
    bounds += [chart.shown("grist", v.grist * (1 + v.wanted))]
    here = chart.rows(1, turns=v.turns * 1, grist=chart.shown("grist", v.grist))
    range_ends = [chart.shown("grist", v.grist_low), chart.shown("grist", v.grist_high)]
    enough = choose(v.enough > 0, v.enough, -top)  # out of sight if no number of turns is
    lines = chart.plot(
        x,
        y,
        spread,
        *(chart.rows(2, turns=across, grist=bound).mark_line(**chart.GOAL) for bound in bounds),
        chart.rows(2, turns=enough, grist=ends[0] + alt.datum.at * (ends[1] - ends[0])).mark_line(
            **chart.FOOT
        ),
        chart.rows(
            2,
            turns=v.turns * 1,
            grist=range_ends[0] + alt.datum.at * (range_ends[1] - range_ends[0]),
        ).mark_line(color=chart.INK, strokeWidth=3, clip=True),
        here.mark_point(color=chart.YARN, **chart.HERE),
        *chart.words(
            chart.rows(1, turns=top + alt.datum.at, grist=alt.expr.max(*bounds)),
            "wanted_label",
            chart.PROJECT,
            align="right",
            dx=-4,
            dy=-10,
        ),
        *chart.words(
            chart.rows(1, turns=enough, grist=alt.expr.min(*ends) + alt.datum.at),
            "enough_label",
            chart.PROJECT,
            dy=-12,
            clip=True,
            **chart.lean(v.enough, top),
        ),
        *chart.words(
            chart.rows(1, turns=v.turns + alt.datum.at, grist=alt.expr.min(*range_ends)),
            "half_label",
            chart.YARN,
            dy=10,
            opacity=alt.ExprRef(emit(choose(v.has_range, 1, 0))),
            **chart.lean(v.turns, top),
        ),
    )
    return chart.SheetChart(
        "range_against_turns",
        "Range of the grist against turns",
        lines,
        (
            (
                "has_range",
                "The band is the range for a skein of fewer or more turns: {half_width} either"
                " way at your {turns|turn|turns}.",
            ),
            (
                "is_reached",
                "It comes within {wanted} at {enough|turn|turns}; you wound more than that.",
            ),
            ("is_reachable", "It comes within {wanted} at {enough|turn|turns}."),
            ("is_out_of_reach", "It never comes within {wanted}: more turns will not help."),
        ),
        reach={"turns_top": larger(v.turns * 1.4, v.enough * 1.25)},
        tables=("windings",),
    )


def length_against_turns(v: Any) -> chart.SheetChart:
    """Draw the length that turns make, with its range as a band, and the bare reel's beside it."""
    turns = alt.datum.at * alt.param(name="wound_top", value=1)
    makes = chart.shown("length", formulas.skein_length(turns, convert(v.turn, "in", "yd")))
    bare = chart.shown("length", formulas.skein_length(turns, convert(v.circumference, "in", "yd")))
    here = chart.rows(1, turns=v.turns * 1, yards=chart.shown("length", v.yards))
    x = chart.axis("turns", "Turns in the skein", "wound_top")
    y = chart.axis("yards", "Length ({length_unit})", "yards_top")
    low, high = makes * v.yards_low / v.yards, makes * v.yards_high / v.yards
    spread = chart.band(chart.rows(2, turns=turns, yards=low, high=high))
    lines = chart.plot(
        x,
        y,
        spread,
        chart.rows(2, turns=turns, yards=bare).mark_line(
            color=chart.INK, strokeDash=[7, 4], clip=True
        ),
        chart.rows(2, turns=turns, yards=makes).mark_line(
            color=chart.YARN, strokeWidth=3, clip=True
        ),
        here.mark_point(color=chart.YARN, **chart.HERE),
        *chart.words(here, "yards_label", chart.YARN, align="left", dx=14, dy=14),
    )
    return chart.SheetChart(
        "length_against_turns",
        "Length against turns",
        lines,
        (
            ("has_range", "{turns|turn|turns} of {turn:4} are {yards:4}."),
            (
                "is_built_up",
                "The dashed line is the bare reel: yarn that lies on yarn makes longer turns.",
            ),
        ),
        chart.Grip("turns", "turns", "yards", when="has_range"),
        {
            "wound_top": v.turns * 1.3,
            "yards_top": chart.shown("length", v.yards * 1.3),
        },
    )

"""Charts of a weighed skein: its grist's range against turns, and its length against turns."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.charts.chart import (
    FOOT,
    GOAL,
    HERE,
    INK,
    PROJECT,
    YARN,
    Grip,
    SheetChart,
    axis,
    band,
    lean,
    plot,
    rows,
    shown,
    table,
    words,
)
from yarnsheets.charts.expressions import choose, emit, larger
from yarnsheets.units import convert


def range_against_turns(v: Any) -> SheetChart:
    """Draw the range of the grist for skeins of fewer and of more turns of this yarn."""
    top = alt.param(name="turns_top", value=1)
    # a range is a factor either way; the axis shows two and a half of the wider one
    reach = alt.expr.exp(larger(v.half_width, v.wanted) * 2.5)
    ends = [shown("grist", v.grist / reach), shown("grist", v.grist * reach)]
    x = axis("turns", "Turns in the skein", "turns_top")
    y = axis(
        "grist",
        "Grist ({grist_unit})",
        emit(alt.expr.max(*ends)),
        start=emit(alt.expr.min(*ends)),
    )
    spread = band(
        table(
            "windings",
            grist=shown("grist", v.grist * alt.datum.low),
            top=shown("grist", v.grist * alt.datum.high),
        ),
        "top",
    )
    across = alt.datum.at * top
    bounds = [shown("grist", v.grist * alt.expr.exp(v.wanted * side)) for side in (-1, 1)]
    here = rows(1, turns=v.turns * 1, grist=shown("grist", v.grist))
    range_ends = [shown("grist", v.grist_low), shown("grist", v.grist_high)]
    enough = choose(v.enough > 0, v.enough, -top)  # out of sight if no number of turns is
    lines = plot(
        x,
        y,
        spread,
        *(rows(2, turns=across, grist=bound).mark_line(**GOAL) for bound in bounds),
        rows(2, turns=enough, grist=ends[0] + alt.datum.at * (ends[1] - ends[0])).mark_line(**FOOT),
        rows(
            2,
            turns=v.turns * 1,
            grist=range_ends[0] + alt.datum.at * (range_ends[1] - range_ends[0]),
        ).mark_line(color=INK, strokeWidth=3, clip=True),
        here.mark_point(color=YARN, **HERE),
        *words(
            rows(1, turns=top + alt.datum.at, grist=alt.expr.max(*bounds)),
            "wanted_label",
            PROJECT,
            align="right",
            dx=-4,
            dy=-10,
        ),
        *words(
            rows(1, turns=enough, grist=alt.expr.min(*ends) + alt.datum.at),
            "enough_label",
            PROJECT,
            dy=-12,
            clip=True,
            **lean(v.enough, top),
        ),
        *words(
            rows(1, turns=v.turns + alt.datum.at, grist=alt.expr.min(*range_ends)),
            "half_label",
            YARN,
            dy=10,
            opacity=alt.ExprRef(emit(v.is_answered)),
            **lean(v.turns, top),
        ),
    )
    return SheetChart(
        "range_against_turns",
        "Range of the grist against turns",
        lines,
        (
            (
                "is_answered",
                "The band is where the grist would lie for a skein of fewer or more turns of this"
                " yarn. At your {turns} turns it reaches {half_width} either way.",
            ),
            (
                "is_reached",
                "It comes within {wanted} at {enough} turns: what you wound beyond that made it"
                " surer than you asked.",
            ),
            ("is_reachable", "It comes within {wanted} at {enough} turns."),
            ("is_out_of_reach", "It never comes within {wanted}: more turns will not help."),
        ),
        reach={"turns_top": larger(v.turns * 1.4, v.enough * 1.25)},
        tables=("windings",),
    )


def length_against_turns(v: Any) -> SheetChart:
    """Draw the length that turns make, with its range as a band, and the bare reel's beside it."""
    turns = alt.datum.at * alt.param(name="wound_top", value=1)
    makes = shown("length", formulas.skein_length(turns, convert(v.turn, "in", "yd")))
    bare = shown("length", formulas.skein_length(turns, convert(v.circumference, "in", "yd")))
    here = rows(1, turns=v.turns * 1, yards=shown("length", v.yards))
    x = axis("turns", "Turns in the skein", "wound_top")
    y = axis("yards", "Length ({length_unit})", "yards_top")
    spread = band(
        rows(2, turns=turns, yards=makes * v.length_low_ratio, high=makes * v.length_high_ratio)
    )
    lines = plot(
        x,
        y,
        spread,
        rows(2, turns=turns, yards=bare).mark_line(color=INK, strokeDash=[7, 4], clip=True),
        rows(2, turns=turns, yards=makes).mark_line(color=YARN, strokeWidth=3, clip=True),
        here.mark_point(color=YARN, **HERE),
        *words(here, "yards_label", YARN, align="left", dx=14, dy=14),
    )
    return SheetChart(
        "length_against_turns",
        "Length against turns",
        lines,
        (
            ("is_answered", "{turns} turns of {turn:4} are {yards:4}."),
            (
                "is_built_up",
                "The dashed line is the bare reel: yarn that lies on yarn makes longer turns.",
            ),
        ),
        Grip("turns", "turns", "yards"),
        {
            "wound_top": v.turns * 1.3,
            "yards_top": shown("length", v.yards * 1.3),
        },
    )

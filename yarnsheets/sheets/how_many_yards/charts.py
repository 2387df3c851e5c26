"""Charts of what grist does: length against weight, fibre against grist, grist against plies."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger

_CURVE_ROWS = 80
_MOST_PLIES = 8

_MEETING: dict[str, Any] = {
    "shape": "diamond",
    "size": 90,
    "filled": True,
    "opacity": 1,
    "color": chart.PROJECT,
}


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw yards against weight, fibre against grist, grist against plies."""
    return yards_against_weight(v), fibre_against_grist(v), grist_against_plies(v)


def yards_against_weight(v: Any) -> chart.SheetChart:
    """Draw the length a weight makes, the project's length, and the weight where they meet."""
    top = alt.param(name="weight_top", value=1)
    weight = alt.datum.at * top
    needed, goal = chart.shown("mass", v.weight_needed), chart.shown("length", v.project)
    makes = chart.shown("length", formulas.length(chart.own("mass", weight), v.yarn_grist))
    here = chart.rows(1, weight=chart.shown("mass", v.weight), yards=chart.shown("length", v.yards))
    # words keep off the line of the yarn, and off the foot under the project's
    is_far, is_short = needed > top * 0.5, v.weight_needed > v.weight
    return chart.SheetChart(
        "yards_against_weight",
        "Length against weight",
        chart.plot(
            chart.axis("weight", "Weight ({mass_unit})", "weight_top"),
            chart.axis("yards", "Length ({length_unit})", "yards_top"),
            chart.rows(2, weight=weight, yards=makes).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            chart.rows(2, weight=weight, yards=goal).mark_line(**chart.GOAL),
            chart.rows(2, weight=needed, yards=goal * alt.datum.at).mark_line(**chart.FOOT),
            chart.rows(1, weight=needed, yards=goal).mark_point(**_MEETING),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                chart.rows(1, weight=choose(is_far, 0, top) + alt.datum.at, yards=goal),
                "goal_label",
                chart.PROJECT,
                align=alt.ExprRef(emit(choose(is_far, "left", "right"))),
                dx=alt.ExprRef(emit(choose(is_far, 6, -4))),
                dy=-10,
            ),
            *chart.words(
                chart.rows(1, weight=needed, yards=alt.datum.at),
                "least_label",
                chart.PROJECT,
                dy=-12,
                **chart.lean(needed, top),
            ),
            *chart.words(
                here,
                "yards_label",
                chart.YARN,
                align=alt.ExprRef(emit(choose(is_short, "right", "left"))),
                dx=alt.ExprRef(emit(choose(is_short, -12, 14))),
                dy=alt.ExprRef(emit(choose(is_short, -10, 12))),
            ),
        ),
        (
            (None, "{weight} of this yarn makes {yards}."),
            (None, "It takes at least {weight_needed^} to make the project’s {project}."),
        ),
        chart.Grip("weight", "weight", "yards"),
        {
            "weight_top": chart.shown("mass", larger(v.weight * 1.25, v.weight_needed * 1.15)),
            "yards_top": chart.shown("length", larger(v.yards * 1.25, v.project * 1.15)),
        },
    )


def fibre_against_grist(v: Any) -> chart.SheetChart:
    """Draw the weight the project takes at each grist, and where the weight in hand is enough."""
    top = alt.param(name="grist_top", value=1)
    grist = alt.datum.at * top / _CURVE_ROWS
    yarn_grist = formulas.plied_grist(chart.own("grist", grist), v.plies, v.take_up_used)
    takes = chart.shown("mass", formulas.mass(v.project, yarn_grist))
    have, enough = chart.shown("mass", v.weight), chart.shown("grist", v.strand_needed)
    here = chart.rows(
        1, grist=chart.shown("grist", v.grist), fibre=chart.shown("mass", v.weight_needed)
    )
    is_far = enough > top * 0.5  # and the curve is far above what is there on the left
    # the words stand off the line of what is there, whose own words are above it
    is_falling = chart.GRIST_POWER > 0
    clear = alt.ExprRef(emit(choose((v.weight_needed > v.weight) | ~is_falling, -12, 16)))
    return chart.SheetChart(
        "fibre_against_grist",
        "Fibre for the project against grist",
        chart.plot(
            chart.axis("grist", "Grist of the strand ({grist_unit})", "grist_top"),
            chart.axis("fibre", "Weight ({mass_unit})", "fibre_top"),
            chart.rows(_CURVE_ROWS, start=1, grist=grist, fibre=takes).mark_line(
                color=chart.PROJECT, strokeWidth=3, clip=True
            ),
            chart.rows(2, grist=alt.datum.at * top, fibre=have).mark_line(
                color=chart.YARN, strokeWidth=2, strokeDash=[7, 4], clip=True
            ),
            chart.rows(2, grist=enough, fibre=have * alt.datum.at).mark_line(**chart.FOOT),
            chart.rows(1, grist=enough, fibre=have).mark_point(clip=True, **_MEETING),
            here.mark_point(color=chart.PROJECT, **chart.HERE),
            *chart.words(
                chart.rows(1, grist=choose(is_far, 0, top) + alt.datum.at, fibre=have),
                "have_label",
                chart.YARN,
                align=alt.ExprRef(emit(choose(is_far, "left", "right"))),
                dx=alt.ExprRef(emit(choose(is_far, 6, -4))),
                dy=-10,
            ),
            *chart.words(
                chart.rows(1, grist=enough, fibre=alt.datum.at),
                "reach_label",
                chart.PROJECT,
                dy=-12,
                clip=True,
                **chart.lean(enough, top),
            ),
            *chart.words(
                here,
                "takes_label",
                chart.PROJECT,
                align=alt.ExprRef(emit(choose(is_falling, "left", "right"))),
                dx=alt.ExprRef(emit(choose(is_falling, 12, -12))),
                dy=clear,
            ),
        ),
        (
            (None, "At {grist} the project takes {weight_needed}."),
            (None, "Your {weight} is just enough at {strand_needed}."),
        ),
        chart.Grip("grist", "grist", "weight_needed"),
        {
            "grist_top": larger(chart.shown("grist", v.grist) * 1.5, enough * 1.15),
            "fibre_top": chart.shown("mass", larger(v.weight_needed * 1.6, v.weight * 1.3)),
        },
    )


def grist_against_plies(v: Any) -> chart.SheetChart:
    """Draw the grist of the plied yarn at each ply count, and the grist the project needs."""
    plied = formulas.plied_grist(v.grist, alt.datum.at, choose(alt.datum.at > 1, v.take_up, 1))
    strands = chart.rows(
        _MOST_PLIES, start=1, plies=alt.datum.at, grist=chart.shown("grist", plied)
    )
    just = chart.shown("grist", v.grist_needed)
    here = chart.rows(1, plies=v.plies * 1, grist=chart.shown("grist", v.yarn_grist))
    most = formulas.plied_grist(v.grist, _MOST_PLIES, v.take_up)
    off = alt.ExprRef(emit(choose(chart.GRIST_POWER > 0, -12, 14)))  # the row of points, as it goes
    return chart.SheetChart(
        "grist_against_plies",
        "Grist of the plied yarn against strands",
        chart.plot(
            chart.count_axis("plies", "Strands plied together", _MOST_PLIES),
            chart.axis("grist", "Grist of the yarn ({grist_unit})", "plied_top"),
            strands.mark_line(color=chart.YARN, strokeWidth=1.5, strokeDash=[1, 3]),
            strands.mark_point(size=70, color=chart.YARN, fill="white", opacity=1, strokeWidth=2),
            chart.rows(2, plies=0.5 + alt.datum.at * _MOST_PLIES, grist=just).mark_line(
                **chart.GOAL
            ),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                chart.rows(1, plies=_MOST_PLIES + 0.5 + alt.datum.at, grist=just),
                "just_label",
                chart.PROJECT,
                align="right",
                dx=-4,
                # on the side of the line where the yarn's own point is not
                dy=alt.ExprRef(emit(choose(chart.shown("grist", v.yarn_grist) < just, -10, 11))),
                clip=True,
            ),
            *chart.words(here, "plied_label", chart.INK, align="left", dx=12, dy=off),
        ),
        (
            ("not is_plied", "One strand as it is: a yarn of {yarn_grist}."),
            ("is_plied", "{plies} strands together make a yarn of {yarn_grist}."),
            (None, "Your {weight} just makes the project’s {project} at {grist_needed}."),
        ),
        chart.Grip("plies", "plies", "yarn_grist"),
        {
            "plied_top": larger(
                larger(chart.shown("grist", v.grist), chart.shown("grist", most)) * 1.1,
                alt.expr.min(just * 1.15, chart.shown("grist", v.grist) * 2),
            ),
        },
    )

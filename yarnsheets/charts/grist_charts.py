"""Charts of what grist does: length against weight, fibre against grist, grist against plies."""

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
    count_axis,
    lean,
    own,
    plot,
    rows,
    shown,
    words,
)
from yarnsheets.charts.expressions import choose, larger

_CURVE_ROWS = 80
_MOST_PLIES = 8

_MEETING: dict[str, Any] = {
    "shape": "diamond",
    "size": 90,
    "filled": True,
    "opacity": 1,
    "color": PROJECT,
}


def yards_against_weight(v: Any) -> SheetChart:
    """Draw the length a weight makes, the project's length, and the weight where they meet."""
    top = alt.param(name="weight_top", value=1)
    weight = alt.datum.at * top
    needed, goal = shown("mass", v.weight_needed), shown("length", v.project)
    makes = shown("length", formulas.length(own("mass", weight), v.yarn_grist))
    here = rows(1, weight=shown("mass", v.weight), yards=shown("length", v.yards))
    return SheetChart(
        "yards_against_weight",
        "Length against weight",
        plot(
            axis("weight", "Weight ({mass_unit})", "weight_top"),
            axis("yards", "Length ({length_unit})", "yards_top"),
            rows(2, weight=weight, yards=makes).mark_line(color=YARN, strokeWidth=3, clip=True),
            rows(2, weight=weight, yards=goal).mark_line(**GOAL),
            rows(2, weight=needed, yards=goal * alt.datum.at).mark_line(**FOOT),
            rows(1, weight=needed, yards=goal).mark_point(**_MEETING),
            here.mark_point(color=YARN, **HERE),
            *words(
                rows(1, weight=alt.datum.at, yards=goal),
                "goal_label",
                PROJECT,
                align="left",
                dx=6,
                dy=-10,
            ),
            *words(
                rows(1, weight=needed, yards=alt.datum.at),
                "least_label",
                PROJECT,
                dy=-12,
                **lean(needed, top),
            ),
            *words(here, "yards_label", YARN, align="left", dx=14, dy=12),
        ),
        (
            (None, "{weight} of this yarn makes {yards}."),
            (None, "It takes at least {weight_needed^} to make the project’s {project}."),
        ),
        Grip("weight", "weight", "yards"),
        {
            "weight_top": shown("mass", larger(v.weight * 1.25, v.weight_needed * 1.15)),
            "yards_top": shown("length", larger(v.yards * 1.25, v.project * 1.15)),
        },
    )


def fibre_against_grist(v: Any) -> SheetChart:
    """Draw the weight the project takes at each grist, and where the weight in hand is enough."""
    top = alt.param(name="grist_top", value=1)
    grist = alt.datum.at * top / _CURVE_ROWS
    yarn_grist = formulas.plied_grist(own("grist", grist), v.plies, v.take_up_used)
    takes = shown("mass", formulas.mass(v.project, yarn_grist))
    have, enough = shown("mass", v.weight), shown("grist", v.strand_needed)
    here = rows(1, grist=shown("grist", v.grist), fibre=shown("mass", v.weight_needed))
    return SheetChart(
        "fibre_against_grist",
        "Fibre for the project against grist",
        plot(
            axis("grist", "Grist of the strand ({grist_unit})", "grist_top"),
            axis("fibre", "Weight ({mass_unit})", "fibre_top"),
            rows(_CURVE_ROWS, start=1, grist=grist, fibre=takes).mark_line(
                color=PROJECT, strokeWidth=3, clip=True
            ),
            rows(2, grist=alt.datum.at * top, fibre=have).mark_line(
                color=YARN, strokeWidth=2, strokeDash=[7, 4], clip=True
            ),
            rows(2, grist=enough, fibre=have * alt.datum.at).mark_line(**FOOT),
            rows(1, grist=enough, fibre=have).mark_point(clip=True, **_MEETING),
            here.mark_point(color=PROJECT, **HERE),
            *words(
                rows(1, grist=top + alt.datum.at, fibre=have),
                "have_label",
                YARN,
                align="right",
                dx=-4,
                dy=-10,
            ),
            *words(
                rows(1, grist=enough, fibre=alt.datum.at),
                "reach_label",
                PROJECT,
                dy=-12,
                clip=True,
                **lean(enough, top),
            ),
            *words(here, "takes_label", PROJECT, align="left", dx=12, dy=-12),
        ),
        (
            (None, "At {grist} the project takes {weight_needed}."),
            (None, "Your {weight} is just enough at {strand_needed}."),
        ),
        Grip("grist", "grist", "weight_needed"),
        {
            "grist_top": larger(shown("grist", v.grist) * 1.5, enough * 1.15),
            "fibre_top": shown("mass", larger(v.weight_needed * 1.6, v.weight * 1.3)),
        },
    )


def grist_against_plies(v: Any) -> SheetChart:
    """Draw the grist of the plied yarn at each ply count, and the grist the project needs."""
    plied = formulas.plied_grist(v.grist, alt.datum.at, choose(alt.datum.at > 1, v.take_up, 1))
    strands = rows(_MOST_PLIES, start=1, plies=alt.datum.at, grist=shown("grist", plied))
    just = shown("grist", v.grist_needed)
    here = rows(1, plies=v.plies * 1, grist=shown("grist", v.yarn_grist))
    most = formulas.plied_grist(v.grist, _MOST_PLIES, v.take_up)
    return SheetChart(
        "grist_against_plies",
        "Grist of the plied yarn against strands",
        plot(
            count_axis("plies", "Strands plied together", _MOST_PLIES),
            axis("grist", "Grist of the yarn ({grist_unit})", "plied_top"),
            strands.mark_line(color=YARN, strokeWidth=1.5, strokeDash=[1, 3]),
            strands.mark_point(size=70, color=YARN, fill="white", opacity=1, strokeWidth=2),
            rows(2, plies=0.5 + alt.datum.at * _MOST_PLIES, grist=just).mark_line(**GOAL),
            here.mark_point(color=YARN, **HERE),
            *words(
                rows(1, plies=_MOST_PLIES + 0.5 + alt.datum.at, grist=just),
                "just_label",
                PROJECT,
                align="right",
                dx=-4,
                dy=-10,
                clip=True,
            ),
            *words(here, "plied_label", INK, align="left", dx=12, dy=-12),
        ),
        (
            ("is_single", "One strand as it is: a yarn of {yarn_grist}."),
            ("is_plied", "{plies} strands together make a yarn of {yarn_grist}."),
            (None, "Your {weight} just makes the project’s {project} at {grist_needed}."),
        ),
        Grip("plies", "plies", "yarn_grist"),
        {
            "plied_top": larger(
                larger(shown("grist", v.grist), shown("grist", most)) * 1.1,
                alt.expr.min(just * 1.15, shown("grist", v.grist) * 2),
            ),
        },
    )

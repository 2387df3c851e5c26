"""Charts of singles: their grist against plies, and the fibres that lie side by side in them."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger

_CURVE_ROWS = 80
_MOST_PLIES = 6


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the singles against plies, and the fibres in the section against grist."""
    return singles_against_plies(v), fibres_in_section(v)


def singles_against_plies(v: Any) -> chart.SheetChart:
    """Draw the grist of each single at each number of plies, and the finest the fibre spins."""
    plies = alt.datum.at
    single = formulas.singles_grist(v.strand, plies, choose(plies > 1, v.take_up, 1))
    singles = chart.rows(_MOST_PLIES, start=1, plies=plies, grist=chart.shown("grist", single))
    finest = chart.shown("grist", v.finest)
    here = chart.rows(1, plies=v.folded * 1, grist=chart.shown("grist", v.single))
    ends = larger(
        chart.shown("grist", formulas.singles_grist(v.strand, _MOST_PLIES, v.take_up)),
        chart.shown("grist", v.strand),
    )
    return chart.SheetChart(
        "singles_against_plies",
        "Grist of each single against plies",
        chart.plot(
            chart.count_axis("plies", "Equal singles plied together", _MOST_PLIES),
            chart.axis("grist", "Grist of a single ({grist_unit})", "singles_top"),
            singles.mark_line(color=chart.YARN, strokeWidth=1.5, strokeDash=[1, 3]),
            singles.mark_point(size=70, color=chart.YARN, fill="white", opacity=1, strokeWidth=2),
            chart.rows(2, plies=0.5 + alt.datum.at * _MOST_PLIES, grist=finest).mark_line(
                **chart.GOAL
            ),
            here.mark_point(color=chart.YARN, clip=True, **chart.HERE),
            *chart.words(
                chart.rows(1, plies=0.5 + alt.datum.at, grist=finest),
                "finest_label",
                chart.PROJECT,
                align="left",
                dx=4,
                dy=-10,
                clip=True,
            ),
            *chart.words(
                here,
                "single_label",
                chart.YARN,
                dy=-24,
                clip=True,
                **chart.lean(v.folded * 1, _MOST_PLIES + 0.5),
            ),
        ),
        (
            (
                None,
                "For a strand of {strand}, {folded|single is|equal singles are} of {single}.",
            ),
            (
                None,
                "The dashed line is the finest that this fibre is likely to spin.",
            ),
            (
                None,
                "Laid by hand, wraps of the finished yarn should number {wraps_low!} to"
                " {wraps_high}.",
            ),
        ),
        chart.Grip("plies", "plies", "single", when="is_equal"),
        {"singles_top": larger(ends, finest) * 1.15},
    )


def fibres_in_section(v: Any) -> chart.SheetChart:
    """Draw the fibres in the section of a single of each grist, and the fewest that hold."""
    top = alt.param(name="section_top", value=1)
    grist = alt.datum.at * top / _CURVE_ROWS
    has = formulas.fibres_in_section(chart.own("grist", grist), v.fibre_mass)
    finest, asked = chart.shown("grist", v.finest), chart.shown("grist", v.asked)
    here = chart.rows(1, grist=asked, fibres=v.fibres * 1)
    # above the curve where it falls away from the words, below it where it rises over them
    is_past = asked > top * 0.5
    over = choose(chart.GRIST_POWER > 0, choose(is_past, 16, -14), choose(is_past, -14, 16))
    off = alt.ExprRef(emit(over))
    return chart.SheetChart(
        "fibres_in_section",
        "Fibres side by side in the single",
        chart.plot(
            chart.axis(
                "grist", "Grist of the single ({grist_unit})", "section_top", labelFlush=True
            ),
            chart.axis("fibres", "Fibres in the section", "fibres_top"),
            chart.rows(_CURVE_ROWS, start=1, grist=grist, fibres=has).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            chart.rows(2, grist=alt.datum.at * top, fibres=v.least_fibres * 1).mark_line(
                **chart.GOAL
            ),
            chart.rows(2, grist=finest, fibres=v.least_fibres * alt.datum.at).mark_line(
                **chart.FOOT
            ),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                chart.rows(1, grist=top + alt.datum.at, fibres=v.least_fibres * 1),
                "least_label",
                chart.PROJECT,
                align="right",
                dx=-4,
                dy=-10,
            ),
            *chart.words(here, "fibres_label", chart.YARN, dy=off, **chart.lean(asked, top)),
        ),
        (
            (
                "not is_too_heavy",
                "A single of {asked} has about {fibres:2|fibre|fibres} of {micron} micron side by"
                " side; it needs {least_fibres}, and has just that at about {finest~}.",
            ),
            ("is_too_fine", "Yours lies below the line: it would drift apart."),
        ),
        reach={
            "section_top": larger(asked * 1.3, finest * 1.3),
            "fibres_top": larger(v.fibres * 1.3, v.least_fibres * 2.5),
        },
    )

"""Charts of singles: their grist against plies, and the fibres that lie side by side in them."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.charts.chart import (
    FOOT,
    GOAL,
    HERE,
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
from yarnsheets.units import convert

_CURVE_ROWS = 80
_MOST_PLIES = 6


def in_own_units(grams: float) -> float:
    """Return a density given in g/cm3 in pounds to a yard one inch square.

    >>> round(in_own_units(1.0), 4)
    1.3006
    """
    return float(convert(grams, "g/cm**3", "lb/yd/in**2"))


def singles_against_plies(v: Any) -> SheetChart:
    """Draw the grist of each single at each number of plies, and the finest the fibre spins."""
    plies = alt.datum.at
    single = formulas.singles_grist(v.strand, plies, choose(plies > 1, v.take_up, 1))
    singles = rows(_MOST_PLIES, start=1, plies=plies, grist=shown("grist", single))
    finest = shown("grist", v.finest)
    here = rows(1, plies=v.plies * 1, grist=shown("grist", v.single))
    ends = larger(
        shown("grist", formulas.singles_grist(v.strand, _MOST_PLIES, v.take_up)),
        shown("grist", v.strand),
    )
    return SheetChart(
        "singles_against_plies",
        "Grist of each single against plies",
        plot(
            count_axis("plies", "Equal singles plied together", _MOST_PLIES),
            axis("grist", "Grist of a single ({grist_unit})", "singles_top"),
            singles.mark_line(color=YARN, strokeWidth=1.5, strokeDash=[1, 3]),
            singles.mark_point(size=70, color=YARN, fill="white", opacity=1, strokeWidth=2),
            rows(2, plies=0.5 + alt.datum.at * _MOST_PLIES, grist=finest).mark_line(**GOAL),
            here.mark_point(color=YARN, **HERE),
            *words(
                rows(1, plies=0.5 + alt.datum.at, grist=finest),
                "finest_label",
                PROJECT,
                align="left",
                dx=4,
                dy=-10,
                clip=True,
            ),
            *words(here, "single_label", YARN, dy=-14, **lean(v.plies * 1, _MOST_PLIES + 0.5)),
        ),
        (
            (None, "For a yarn of {grist_wanted}, {plies} equal singles are {single} each."),
            (None, "The dashed line is the finest that this fibre is likely to spin, {finest}."),
            (
                None,
                "Laid by hand, wraps of the finished yarn should number {wraps_low!} to"
                " {wraps_high}, the more the denser it is.",
            ),
        ),
        Grip("plies", "plies", "single"),
        {"singles_top": larger(ends, finest) * 1.15},
    )


def fibres_in_section(v: Any) -> SheetChart:
    """Draw the fibres in the section of a single of each grist, and the fewest that hold."""
    top = alt.param(name="section_top", value=1)
    grist = alt.datum.at * top / _CURVE_ROWS
    has = formulas.fibres_in_section(own("grist", grist), v.fibre_mass)
    finest, asked = shown("grist", v.finest), shown("grist", v.asked)
    here = rows(1, grist=asked, fibres=v.fibres * 1)
    return SheetChart(
        "fibres_in_section",
        "Fibres side by side in the single",
        plot(
            axis("grist", "Grist of the single ({grist_unit})", "section_top", labelFlush=True),
            axis("fibres", "Fibres in the section", "fibres_top"),
            rows(_CURVE_ROWS, start=1, grist=grist, fibres=has).mark_line(
                color=YARN, strokeWidth=3, clip=True
            ),
            rows(2, grist=alt.datum.at * top, fibres=v.least_fibres * 1).mark_line(**GOAL),
            rows(2, grist=finest, fibres=v.least_fibres * alt.datum.at).mark_line(**FOOT),
            here.mark_point(color=YARN, **HERE),
            *words(
                rows(1, grist=top + alt.datum.at, fibres=v.least_fibres * 1),
                "least_label",
                PROJECT,
                align="right",
                dx=-4,
                dy=-10,
            ),
            *words(here, "fibres_label", YARN, dy=-14, **lean(asked, top)),
        ),
        (
            (
                "is_possible",
                "A single of {asked} has about {fibres:2} fibres of {micron} micron side by side;"
                " it needs {least_fibres}, and has just that at {finest}.",
            ),
            ("is_too_fine", "Yours lies below the line: it would drift apart."),
        ),
        reach={
            "section_top": larger(asked * 1.3, finest * 1.3),
            "fibres_top": larger(v.fibres * 1.3, v.least_fibres * 2.5),
        },
    )

"""Charts of a ball in use: its weight along the rows, and what the rows make of the cloth."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger

_CURVE_ROWS = 60


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the track of the ball, and the cloth against the rows."""
    return track_of_the_ball(v), cloth_against_rows(v)


def track_of_the_ball(v: Any) -> chart.SheetChart:
    """Draw the weight left at each row: as weighed so far, and with its band to the end."""
    share = alt.datum.at / _CURVE_ROWS * v.made
    so_far = chart.rows(
        _CURVE_ROWS + 1,
        row=v.rows_all * formulas.rows_done(share + 1e-9, v.first, v.last),
        left=chart.shown("mass", v.weight - v.used * share / v.made),
    )
    here = chart.rows(1, row=v.row * 1, left=chart.shown("mass", v.now))
    edge = chart.shown("mass", v.edge_weight)
    # the line falls: its words have room above it on the right, below it on the left
    clear = alt.ExprRef(emit(choose(v.row > v.rows_all * 0.5, 18, -14)))
    return chart.SheetChart(
        "track_of_the_ball",
        "Weight left, row by row",
        chart.plot(
            chart.axis("row", "Row", "rows_all", grid=False),
            chart.axis("left", "Left of the ball ({mass_unit})", "ball_top"),
            chart.band(
                chart.table(
                    "ahead",
                    row=alt.datum.row_at * 1,
                    left=chart.shown("mass", alt.datum.least),
                    high=chart.shown("mass", alt.datum.most),
                )
            ),
            chart.table(
                "ahead", row=alt.datum.row_at * 1, left=chart.shown("mass", alt.datum.middle)
            ).mark_line(color=chart.YARN, strokeWidth=2, strokeDash=[7, 4], clip=True),
            so_far.mark_line(color=chart.YARN, strokeWidth=3, clip=True),
            chart.rows(2, row=alt.datum.at * v.rows_all, left=edge).mark_line(**chart.FOOT),
            chart.table(
                "points", row=alt.datum.row_at * 1, left=chart.shown("mass", alt.datum.weighed)
            ).mark_point(**chart.DOT),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(here, "now_label", chart.YARN, dy=clear, **chart.lean(v.row, v.rows_all)),
            *chart.words(
                chart.rows(1, row=alt.datum.at * 1, left=edge),
                "edge_label",
                chart.PROJECT,
                align="left",
                dx=6,
                dy=-10,
            ),
        ),
        (
            (
                "is_going",
                "The full line and dots are the work so far. The broken line goes on to the"
                " last row; it lies in the band, 95% sure.",
            ),
            (
                "has_edge",
                "Where it falls below the dotted line, {edge_weight} for the edge is missing.",
            ),
        ),
        reach={"ball_top": chart.shown("mass", v.weight * 1.05)},
        tables=("points", "ahead"),
    )


def cloth_against_rows(v: Any) -> chart.SheetChart:
    """Draw the share of the cloth, and of its yarn, that a share of the rows makes."""
    at = alt.datum.at / _CURVE_ROWS
    made = formulas.share_made(at, v.first, v.last)
    here = chart.rows(1, done=v.rows_share * 100, cloth=v.made * 100)
    half = v.halfway * 100
    # words above the curve and over the dotted line, or below the curve's low end
    over = choose((v.rows_share > 0.5) & (v.made > 0.4), larger(v.made, 0.5), v.made)
    return chart.SheetChart(
        "cloth_against_rows",
        "Yarn used against rows, in this shape",
        chart.plot(
            chart.axis("done", "Rows done (%)", 100),
            chart.axis("cloth", "Yarn used, of the whole (%)", 100),
            chart.rows(_CURVE_ROWS + 1, done=at * 100, cloth=made * 100).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            chart.rows(2, done=half * alt.datum.at, cloth=50).mark_line(**chart.FOOT),
            chart.rows(2, done=half, cloth=50 * alt.datum.at).mark_line(**chart.FOOT),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                chart.rows(1, done=v.rows_share * 100, cloth=over * 100),
                "made_label",
                chart.YARN,
                dy=alt.ExprRef(emit(choose(v.rows_share > 0.5, -16, 18))),
                **chart.lean(v.rows_share, 1),
            ),
        ),
        (
            (
                "is_going",
                "With {rows_share} of the rows done, {made} of the piece is made. Half its yarn is"
                " gone at {halfway} of its rows: the dotted lines.",
            ),
        ),
    )

"""Charts of an exercise: what it tells, as bars, and where an answer and the slips lie."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit
from yarnsheets.sheets.shared import bars

_LINES = 5  # the answer, and four slips at most
_HIDDEN: dict[str, Any] = {"labels": False, "ticks": False, "grid": False, "domain": False}


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the exercise, and the answer beside the slips."""
    return (
        bars.drawn("exercise_drawn", "The exercise, drawn", 3, ((None, "{asks}"),)),
        answer_among_slips(v),
    )


def answer_among_slips(v: Any) -> chart.SheetChart:
    """Draw how far an answer lies from the right one, and where the usual slips lead."""
    up = _LINES - 0.5 - alt.datum.line
    here = chart.table("places", along=alt.datum.across * 1, up=up)
    is_there = alt.ExprRef(emit(choose(v.is_open, 0, 1)))
    names = [
        part
        for at in range(_LINES)
        for part in chart.words(
            chart.table(
                "places",
                # beside the point, on the side with more room
                along=alt.datum.across * 1,
                up=up,
            ).transform_filter(f"datum.line == {at}"),
            f"place_{at + 1}_label",
            chart.INK if at else chart.YARN,
            fontWeight=400 if at else 600,
            align=alt.ExprRef("datum.across > 0.5 ? 'right' : 'left'"),
            dx=alt.ExprRef("datum.across > 0.5 ? -12 : 12"),
        )
    ]
    return chart.SheetChart(
        "answer_among_slips",
        "Your answer, and where slips lead",
        chart.plot(
            chart.axis("along", "", 1, **_HIDDEN),
            chart.axis("up", "", _LINES, **_HIDDEN),
            # between the lines alone, or it would strike their words
            chart.rows(
                _LINES,
                along=alt.datum.at * 0 + 0.5,
                up=alt.datum.at - 0.2,
                to=alt.datum.at + 0.2,
            )
            .mark_rule(color=chart.PROJECT, strokeWidth=2, clip=True, opacity=is_there)
            .encode(y2="to:Q"),
            here.mark_point(
                **chart.HERE | {"opacity": alt.ExprRef("datum.hit ? 1 : 0.4")}, color=chart.YARN
            ),
            *names,
            *chart.words(
                chart.rows(1, along=alt.datum.at + 0.5, up=alt.datum.at + _LINES),
                "middle_label",
                chart.PROJECT,
                dy=-12,
            ),
            *chart.words(
                chart.rows(1, along=alt.datum.at, up=alt.datum.at),
                "low_label",
                chart.PROJECT,
                fontWeight=400,
                align="left",
                dy=20,
            ),
            *chart.words(
                chart.rows(1, along=alt.datum.at + 1, up=alt.datum.at),
                "high_label",
                chart.PROJECT,
                fontWeight=400,
                align="right",
                dy=20,
            ),
            *chart.words(
                chart.rows(1, along=alt.datum.at + 0.5, up=alt.datum.at + _LINES / 2),
                "waiting_label",
                chart.INK,
                fontWeight=400,
            ),
        ),
        (
            ("is_open", "Answer first: then it stands here beside the usual slips."),
            ("is_wrong", "The usual slips, and how far each leads from what is right."),
            ("is_right", "Yours is right; this is where the usual slips would have led."),
        ),
        tables=("places",),
        left=16,
    )

"""A drawing of bars to scale with their words: what is given, and dashed what is asked for."""

from typing import Any

import altair as alt

from yarnsheets.page import chart

_HIDDEN: dict[str, Any] = {"labels": False, "ticks": False, "grid": False, "domain": False}
_FOOT, _HEAD = 0.1, 0.56  # of a bar, in the room that it shares with its words
_WORDS = 0.76


def drawn(name: str, title: str, count: int, caption: tuple[Any, ...] = ()) -> chart.SheetChart:
    """Draw the table `bars`, from the top; its words are the labels `bar_1_label` and so on.

    A row has its place `at`, its `share` of the whole width, and whether it is `asked` for.
    """
    room = count - 1 - alt.datum.at
    bar = chart.table("bars", along=alt.datum.share * 0, up=room + _FOOT, top=room + _HEAD)
    to = {"x2": "share:Q", "y2": "top:Q"}
    given = bar.mark_rect(color=chart.YARN, opacity=alt.ExprRef("datum.asked ? 0 : 0.55"))
    asked = bar.mark_rect(
        fill=None,
        stroke=chart.PROJECT,
        strokeWidth=2,
        strokeDash=[7, 4],
        opacity=alt.ExprRef("datum.asked ? 1 : 0"),
    )
    named = [
        part
        for at in range(count)
        for part in chart.words(
            chart.rows(1, along=alt.datum.at, up=alt.datum.at + count - 1 - at + _WORDS),
            f"bar_{at + 1}_label",
            chart.INK,
            align="left",
            fontWeight=400,
        )
    ]
    return chart.SheetChart(
        name,
        title,
        chart.plot(
            chart.axis("along", "", 1, **_HIDDEN),
            chart.axis("up", "", count, **_HIDDEN),
            given.encode(**to),
            asked.encode(**to),
            *named,
        ),
        caption,
        tables=("bars",),
        left=16,
    )

"""Charts of the lesson: lengths as bars, and the yarns themselves as strands."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.sheets.shared import bars

_COUNT = 3
_HIDDEN: dict[str, Any] = {"labels": False, "ticks": False, "grid": False, "domain": False}
_THICK = 3.2  # of the room of a strand, for each inch of its thickness
_MIDDLE, _WORDS = 0.36, 0.86  # of a strand and of its words, in their room


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw what the step tells as bars, and its yarns."""
    return (
        bars.drawn("lengths", "What it comes to", 4, ((None, "Bars to one scale. {headline}"),)),
        yarns(v),
    )


def yarns(_v: Any) -> chart.SheetChart:
    """Draw each yarn as thick as it is beside the others, paler where it is airy."""
    room = _COUNT - 1 - alt.datum.at
    half = alt.datum.thick * (_THICK / 2)
    strand = chart.table(
        "strands",
        along=alt.datum.at * 0,
        end=alt.datum.at * 0 + 1,
        up=room + _MIDDLE - half,
        top=room + _MIDDLE + half,
    )
    named = [
        part
        for at in range(_COUNT)
        for part in chart.words(
            chart.rows(1, along=alt.datum.at, up=alt.datum.at + _COUNT - 1 - at + _WORDS),
            f"strand_{at + 1}_label",
            chart.INK,
            align="left",
            fontWeight=400,
        )
    ]
    return chart.SheetChart(
        "yarns",
        "The yarn itself",
        chart.plot(
            chart.axis("along", "", 1, **_HIDDEN),
            chart.axis("up", "", _COUNT, **_HIDDEN),
            strand.mark_rect(
                color=chart.YARN, cornerRadius=6, opacity=alt.ExprRef("0.85 * datum.dense")
            ).encode(x2="end:Q", y2="top:Q"),
            *named,
            *chart.words(
                chart.rows(1, along=alt.datum.at + 0.5, up=alt.datum.at + _COUNT / 2),
                "waiting_label",
                chart.INK,
                fontWeight=400,
            ),
        ),
        (
            ("strand_1", "Thickness is to one scale, a few times life size."),
            ("waiting", "This step is of fleece."),
        ),
        tables=("strands",),
        left=16,
    )

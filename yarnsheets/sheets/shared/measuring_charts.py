"""The chart of what makes a measurement doubtful, the same for all that are measured."""

import altair as alt

from yarnsheets.page import chart


def sources_of_doubt() -> chart.SheetChart:
    """Draw what part of the doubt each source makes, the largest first."""
    bars = (
        chart.table("sources", part=alt.datum.share * 100)
        .mark_bar(color=chart.PROJECT, height=18)
        .encode(
            x=alt.X("part:Q", title="Part of the doubt (%)", scale=alt.Scale(domain=[0, 100])),
            y=alt.Y("source:N", title=None, sort="-x", axis=alt.Axis(labelLimit=160, domain=True)),
        )
    )
    return chart.SheetChart(
        "sources_of_doubt",
        "Where the doubt comes from",
        alt.LayerChart(layer=[bars]),
        (
            (
                "has_range",
                "Most of it, {worst_share}, is {worst}. Work on the longest bar: the others hardly"
                " matter until it is shorter.",
            ),
        ),
        tables=("sources",),
        left=170,
    )

"""Charts of a class's cuts: each by its balance, and how their mean settles as they come."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import emit


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the cuts by balance, and their mean as cut comes after cut."""
    return cuts_by_balance(v), mean_as_cuts_come(v)


def cuts_by_balance(v: Any) -> chart.SheetChart:
    """Draw each cut's grist over its balance, the range of the mean, and the odd balance."""
    x = chart.axis(
        "place",
        "Balance",
        "last_balance + 0.5",
        start="first_balance - 0.5",
        tickMinStep=1,
        grid=False,
        format="d",
    )
    y = _grist_axis(v)
    across = v.first_balance - 0.5 + alt.datum.at * (v.last_balance - v.first_balance + 1)
    low, high = chart.shown("grist", v.grist_low), chart.shown("grist", v.grist_high)
    odd = chart.rows(1, place=v.odd * 1, grist=chart.shown("grist", v.odd_grist))
    points = chart.plot(
        x,
        y,
        chart.band(chart.rows(2, place=across, grist=low, high=high)),
        chart.rows(2, place=across, grist=chart.shown("grist", v.grist)).mark_line(
            color=chart.YARN, strokeWidth=2
        ),
        chart.table(
            "readings", place=alt.datum.balance * 1, grist=chart.shown("grist", alt.datum.found)
        ).mark_point(**chart.DOT | {"opacity": 0.7}),
        odd.mark_point(color=chart.PROJECT, shape="diamond", size=260, strokeWidth=3, filled=False),
        *chart.words(odd, "odd_label", chart.PROJECT, dy=-18),
    )
    return chart.SheetChart(
        "cuts_by_balance",
        "Every cut, over its balance",
        points,
        (
            ("has_range", "Each dot is a cut. The band is where the yarn’s grist lies."),
            (
                "is_odd",
                "Balance {odd} stands apart from the others: the diamond is the mean of its cuts.",
            ),
        ),
        tables=("readings",),
    )


def mean_as_cuts_come(v: Any) -> chart.SheetChart:
    """Draw the mean and its range after each number of cuts, in the order they came."""
    x = chart.axis("place", "Cuts so far", "count + 0.5", start=1.5, tickMinStep=1, format="d")
    rows = chart.table(
        "settling",
        place=alt.datum.at * 1,
        grist=chart.shown("grist", alt.datum.low),
        upper=chart.shown("grist", alt.datum.high),
        middle=chart.shown("grist", alt.datum.mean),
    )
    line = rows.transform_calculate(grist="datum.middle")
    return chart.SheetChart(
        "mean_as_cuts_come",
        "How the mean settles as cuts come",
        chart.plot(
            x,
            _grist_axis(v),
            chart.band(rows, to="upper"),
            line.mark_line(color=chart.YARN, strokeWidth=3, clip=True),
        ),
        (
            (
                "has_range",
                "Two cuts hardly tell. Each further one narrows the band, at last as far as the"
                " balances allow.",
            ),
        ),
        tables=("settling",),
    )


def _grist_axis(v: Any) -> dict[str, Any]:
    ends = [chart.shown("grist", v.least), chart.shown("grist", v.most)]
    return chart.axis(
        "grist",
        "Grist ({grist_unit})",
        emit(alt.expr.max(*ends) * 1.03),
        start=emit(alt.expr.min(*ends) * 0.97),
    )

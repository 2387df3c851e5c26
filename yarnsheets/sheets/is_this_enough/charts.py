"""Charts of enough: what is there beside what is needed, and the chance for each size."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger, smaller


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw what is there beside what is needed, and the chance of each size."""
    return have_and_need(v), chance_by_size(v)


def have_and_need(v: Any) -> chart.SheetChart:
    """Draw where the yards at hand and the yards needed are likely to lie."""
    have, need = chart.shown("length", v.hill_at), chart.shown("length", v.needed)
    x = chart.axis(
        "yards",
        "Yarn ({length_unit})",
        emit(larger(have * v.have_reach, need * v.need_reach)),
        start=emit(smaller(have / v.have_reach, need / v.need_reach)),
        labelOverlap=True,
        labelSeparation=10,
    )
    y = chart.axis("height", "How likely", 1.35, labels=False, grid=False)
    more_is_there = have > need
    of_yarn = f"{emit(v.is_unspun)} ? to_have_label : have_label"

    def hill(name: str, middle: Any, colour: str, **line: Any) -> alt.Chart:
        edge = {"color": colour, "strokeWidth": 2.5, **line}
        area: alt.Chart = chart.table(
            name, yards=alt.datum.ratio * middle, height=alt.datum.likely * 1
        ).mark_area(color=colour, opacity=0.3, line=edge, clip=True)
        return area

    def top(text: str, middle: Any, height: float, colour: str, left: Any) -> Any:
        # each name stands over its own hill and runs towards the other one
        return chart.words(
            chart.rows(1, yards=middle, height=height),
            text,
            colour,
            align=alt.ExprRef(emit(choose(left, "right", "left"))),
        )

    hills = chart.plot(
        x,
        y,
        hill("having", have, chart.YARN),
        hill("needing", need, chart.PROJECT, strokeDash=[7, 4]),
        *top(of_yarn, have, 1.26, chart.YARN, more_is_there),
        *top("need_label", need, 1.09, chart.PROJECT, need >= have),
    )
    return chart.SheetChart(
        "have_and_need",
        "What is there, and what it takes",
        hills,
        (
            (
                "has_answer",
                "The solid hill is the yarn there, about {at_hand~}; the broken one is what the"
                " project takes, {needed}. The more they overlap, the less sure the answer.",
            ),
            (
                "is_unspun",
                "The solid hill is the yarn to have, {target^}; the broken one is what the project"
                " takes, {needed}. The less is known, the further apart they must be.",
            ),
            (
                "is_cancelled",
                "The doubt of the grist that is in both alike makes no difference between them, and"
                " is left out here.",
            ),
        ),
        tables=("having", "needing"),
    )


def chance_by_size(v: Any) -> chart.SheetChart:
    """Draw the chance that the yarn is enough for each size of the pattern."""
    part = alt.X(
        "part:Q",
        title="Times of 100 that it is enough",
        scale=alt.Scale(domain=[0, 100]),
    )
    size = alt.Y(
        "figure:N",
        title="Pattern’s figure ({length_unit})",
        sort=None,
        axis=alt.Axis(domain=True, labelLimit=170),
    )
    written = alt.expr.format(chart.shown("length", alt.datum.size), ",.0f")
    sizes = chart.table("size_chances", part=alt.datum.chance * 100, figure=written)
    bars = sizes.mark_bar(color=chart.YARN, height=18, opacity=0.75).encode(x=part, y=size)
    # the number stands at the foot of a long bar, before the broken line, and beside a short one
    is_long = alt.datum.chance > 0.5
    number: dict[str, Any] = {"fontSize": 13, "fontWeight": 600}
    inside = sizes.transform_filter(is_long).mark_text(color="white", align="left", **number)
    beside = sizes.transform_filter(~is_long).mark_text(
        color=chart.INK, align="left", dx=6, **number
    )
    said = [
        inside.encode(x=alt.value(8), y=size, text="short:N"),
        beside.encode(x=part, y=size, text="short:N"),
    ]
    goal = chart.rows(1, part=v.safe_times * 1).mark_rule(**chart.GOAL).encode(x=part)
    return chart.SheetChart(
        "chance_by_size",
        "Which size the yarn makes",
        alt.LayerChart(layer=[bars, goal, *said]),
        (
            (
                "fits_some",
                "{largest:4} is the largest that the yarn makes at least {safe_times} times of"
                " 100, the broken line: {largest_times}.",
            ),
            (
                "fits_none",
                "The yarn is enough {safe_times} times of 100, the broken line, for none of these"
                " figures.",
            ),
            (
                "fits_unasked",
                "These are a tenth and a fifth less and more than the project takes. The"
                " pattern’s own sizes are asked under Finer points.",
            ),
            (
                "is_short",
                "Something of steady width comes to {part} of its length that safely.",
            ),
        ),
        tables=("size_chances",),
        left=70,
    )

"""Charts of two plans side by side."""

from typing import Any

import altair as alt

from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, larger

_HALF = 0.3  # half a bar's width


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw what each plan costs, how long it takes, and the fibre it takes."""
    return (
        _bars("cost", "What each plan costs", "Cost", v.cost_1, v.cost_2),
        _bars("hours", "Hours at the wheel", "Hours", v.all_hours_1, v.all_hours_2),
        _bars(
            "fibre",
            "Fibre, as it is bought",
            "Weight ({mass_unit})",
            chart.shown("mass", v.needed_1),
            chart.shown("mass", v.needed_2),
        ),
    )


_CAPTIONS: dict[str, tuple[tuple[str | None, str], ...]] = {
    "cost": (
        (
            None,
            "First plan {coin}{cost_1}, second plan {coin}{cost_2}.",
        ),
    ),
    "hours": (
        (
            None,
            "First plan {all_hours_1:2|hour|hours} and {all_bobbins_1|bobbin|bobbins}, second plan"
            " {all_hours_2:2|hour|hours} and {all_bobbins_2|bobbin|bobbins}, those of plied yarn"
            " counted in.",
        ),
        ("has_fleece", "The hours leave out the preparing of a fleece."),
    ),
    "fibre": (
        (
            None,
            "First plan {needed_1} of {bought_1}, second plan {needed_2} of {bought_2}.",
        ),
    ),
}


def _bars(name: str, title: str, unit: str, first: Any, second: Any) -> chart.SheetChart:
    nothing = alt.datum.at * 0
    top = f"{name}_top"
    layers = []
    for place, height, colour in ((1, first, chart.YARN), (2, second, chart.PROJECT)):
        bar = chart.rows(
            1, plan=nothing + place - _HALF, end=nothing + place + _HALF, size=nothing, up=height
        )
        layers.append(bar.mark_rect(color=colour, clip=True).encode(x2="end:Q", y2="up:Q"))
        layers.extend(
            chart.words(
                chart.rows(1, plan=nothing + place, size=height + nothing),
                f"{name}_label_{place}",
                colour,
                dy=-12,
            )
        )
    return chart.SheetChart(
        f"{name}_side_by_side",
        title,
        chart.plot(
            chart.axis(
                "plan",
                "Plan",
                2.6,
                start=0.4,
                values=[1, 2],
                grid=False,
                format="d",
                labelOverlap=False,
            ),
            chart.axis("size", unit, top),
            *layers,
        ),
        _CAPTIONS[name],
        reach={top: choose(larger(first, second) > 0, larger(first, second) * 1.2, 1)},
    )

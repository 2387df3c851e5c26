"""Charts of a plan: fibre shrinking to yarn, the chance that it is enough, hours against plies."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger

_MOST_PLIES = 8
_HIDDEN: dict[str, Any] = {
    "labels": False,
    "ticks": False,
    "grid": False,
    "domain": False,
}
_SMALL: dict[str, Any] = {"fontSize": 12, "fontWeight": 400}
_BAR = 0.22  # half a bar's height, of the way from one stage to the next


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the fibre shrinking to yarn, the chance of enough, and hours against plies."""
    return fleece_to_yarn(v), chance_of_enough(v), hours_against_plies(v)


def _of_stage(stage: Any, masses: tuple[Any, ...]) -> Any:
    """Take the mass of a stage by its number."""
    found = masses[-1]
    for at in range(len(masses) - 2, -1, -1):
        found = choose(stage <= at, masses[at], found)
    return found


def fleece_to_yarn(v: Any) -> chart.SheetChart:
    """Draw the weight at each stage as a band that narrows from what is bought to the yarn."""
    masses = (v.raw, v.clean, v.prepared, v.spun, v.yarn)
    last = choose(v.is_shrinking, 4, 3)
    x = chart.axis(
        "left",
        "Widths are weights, to scale",
        emit(chart.shown("mass", v.needed) * 0.56),
        start=emit(chart.shown("mass", v.needed) * -0.56),
        **_HIDDEN,
    )
    y = chart.axis(
        "place", "", emit(v.first_stage * -1 + 0.35), start=emit(last * -1 - 0.35), **_HIDDEN
    )
    # two rows a stage, the top and the foot of its bar; the band slopes from foot to top
    stage = alt.expr.floor(alt.datum.at / 2)
    half = chart.shown("mass", _of_stage(stage, masses)) * 0.5
    place = stage * -1 + choose(alt.datum.at % 2 < 1, _BAR, -_BAR)
    edge = chart.rows(2 * len(masses), place=place, left=half * -1, right=half)
    fill = edge.mark_area(color=chart.YARN, opacity=0.25, clip=True, orient="horizontal")
    seen = {"clip": True, "opacity": alt.ExprRef(emit(choose(v.has_answer, 1, 0)))}
    texts = ("raw_label", "clean_label", "prepared_label", "spun_label", "yarn_label")
    losses = ("scouring_label", "preparing_label", "spinning_label", "washing_label")
    named = [
        part
        for at, text in enumerate(texts)
        for part in chart.words(
            chart.rows(1, place=alt.datum.at - at, left=alt.datum.at), text, chart.INK, **seen
        )
    ]
    lost = [
        part
        for at, text in enumerate(losses)
        for part in chart.words(
            chart.rows(1, place=alt.datum.at - at - 0.5, left=alt.datum.at),
            text,
            chart.PROJECT,
            **seen,
            **_SMALL,
        )
    ]
    return chart.SheetChart(
        "fleece_to_yarn",
        "From what is bought to the yarn",
        chart.plot(x, y, fill.encode(x2="right:Q"), *named, *lost),
        (
            (None, "{needed} of {bought} shrinks to {yarn} of yarn."),
            (
                "is_raw",
                "Scouring takes out {scouring_loss}, carding or combing {preparing_loss}, spinning"
                " and plying {spinning_loss}.",
            ),
            (
                "is_raw",
                "That counts on your own {scouring_yield} of clean wool; at the {scour_low!} to"
                " {scour_high} published for {fleece_name} it takes {raw_low} to {raw_high}.",
            ),
            ("is_outside", "Yours lies outside that: weigh a washed sample again."),
            (
                "is_washed",
                "Carding or combing takes out {preparing_loss}, spinning and plying"
                " {spinning_loss}.",
            ),
            ("is_shrinking", "The wash takes out {washing_loss}."),
        ),
        left=18,
    )


def chance_of_enough(v: Any) -> chart.SheetChart:
    """Draw the chance that it is enough against how many are bought, and where it is 95 %."""
    last = larger(v.put_ups, v.put_ups_sure) + 1.5
    least = v.project / v.yards_per_put_up
    first = larger(least * 0.8 - 1, 0.5)
    x = chart.axis(
        "packs",
        "How many I buy",
        emit(last),
        start=emit(first),
        tickMinStep=1,
        grid=False,
        format=",d",
    )
    y = chart.axis("chance", "Chance that it is enough (%)", 104, values=[0, 25, 50, 75, 95])
    here = chart.rows(1, packs=v.put_ups + alt.datum.at, chance=chart.shown("share", v.chance))
    return chart.SheetChart(
        "chance_of_enough",
        "Chance that it is enough",
        chart.plot(
            x,
            y,
            chart.rows(2, packs=first + alt.datum.at * (last - first), chance=95).mark_line(
                **chart.GOAL
            ),
            chart.table("chances").mark_line(
                color=chart.INK, strokeWidth=1.5, strokeDash=[1, 3], clip=True
            ),
            chart.table("chances").mark_point(clip=True, **chart.DOT),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(here, "buy_label", chart.YARN, align="left", dx=12, dy=26),
        ),
        (
            (
                None,
                "{put_ups} × {put_up} is enough {times}; the dashed line is 95 times of 100.",
            ),
            (
                None,
                "It counts how far the grist may be off, {grist_range}, what is left of the"
                " fibre, {yield_range}, and the project, {project_range}. The reserve may be"
                " used up.",
            ),
        ),
        tables=("chances",),
    )


def hours_against_plies(v: Any) -> chart.SheetChart:
    """Draw the hours of spinning and plying at each number of plies."""
    plies = alt.datum.at
    take_up = choose(plies > 1, v.take_up, 1)
    spinning = formulas.hours(
        formulas.singles_length(v.yards_to_ply, plies, take_up), v.spinning_speed
    )
    plying = choose(plies > 1, formulas.hours(v.yards_to_ply, v.plying_speed), 0)
    each = chart.rows(_MOST_PLIES, start=1, plies=plies, hours_all=spinning + plying)
    spun = chart.band(chart.rows(_MOST_PLIES, start=1, plies=plies, hours_all=0, high=spinning))
    here = chart.rows(1, plies=v.plies + alt.datum.at, hours_all=v.all_hours)
    return chart.SheetChart(
        "hours_against_plies",
        "Hours against plies",
        chart.plot(
            chart.count_axis("plies", "Plies", _MOST_PLIES),
            chart.axis("hours_all", "Hours at the wheel", "hours_top"),
            spun,
            each.mark_line(color=chart.YARN, strokeWidth=1.5, strokeDash=[1, 3]),
            each.mark_point(size=70, color=chart.YARN, fill="white", opacity=1, strokeWidth=2),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(here, "hours_label", chart.INK, align="left", dx=12, dy=14, clip=False),
        ),
        (
            (
                "is_plied",
                "Spin {yards_per_ply} for each of {plies} plies at {singles_grist}, a cut of"
                " {singles_cut}; plied and washed it is {plied_cut}.",
            ),
            (
                "is_single",
                "Spin {yards_per_ply} at {singles_grist}, where a cut is {singles_cut}.",
            ),
            (
                "is_plied",
                "That is {all_hours:2|hour|hours}, or {evenings|evening|evenings}:"
                " {spinning_hours:2} of spinning, shaded, and {plying_hours:2} of plying.",
            ),
            (
                "is_single",
                "That is {all_hours:2|hour|hours}, or {evenings|evening|evenings}.",
            ),
            (
                "is_plied",
                "It fills {bobbins|bobbin|bobbins} with single and"
                " {plied_bobbins|bobbin|bobbins} with plied yarn.",
            ),
            (
                "is_single",
                "It fills {bobbins|bobbin|bobbins} or as many skeins.",
            ),
        ),
        chart.Grip("plies", "plies", "all_hours"),
        {
            "hours_top": (
                formulas.hours(
                    formulas.singles_length(v.yards_to_ply, _MOST_PLIES, v.take_up),
                    v.spinning_speed,
                )
                + formulas.hours(v.yards_to_ply, v.plying_speed)
            )
            * 1.05
        },
    )

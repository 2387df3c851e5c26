"""Charts of weaving: the piece on the loom and finished, yarn against length, where it goes."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import larger

_THREADS = 9  # drawn of the warp that is not woven: enough to look like threads


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the piece on the loom and finished, yarn against length, and where it goes."""
    return piece_on_the_loom(v), yards_against_length(v), where_it_goes(v)


def piece_on_the_loom(v: Any) -> chart.SheetChart:
    """Draw one piece to scale: its web on the loom, the bare warp, and the finished cloth."""
    reed, woven = chart.shown("short", v.reed_width), chart.shown("short", v.woven_length)
    waste = chart.shown("short", v.loom_waste)
    long, half = chart.shown("short", v.finished_length), chart.shown("short", v.finished_width) / 2
    web = chart.shown("short", v.web_width) / 2
    nothing = alt.datum.at * 0
    thread = alt.datum.at / (_THREADS - 1) - 0.5
    drawn_in = 2 * web * thread
    bare = chart.rows(
        _THREADS, along=woven * 1, end=woven + waste, across=drawn_in, top=reed * thread
    )
    long_top, high = chart.to_scale((woven + waste) * 1.02, reed * 1.5)
    half_high = f"{high} / 2"
    looks: dict[str, Any] = {"labels": False, "grid": False}
    return chart.SheetChart(
        "piece_on_the_loom",
        "One piece, on the loom and finished",
        chart.plot(
            chart.axis("along", "Length ({short_unit})", long_top),
            chart.axis("across", "", half_high, start=f"-{half_high}", **looks),
            bare.mark_rule(color=chart.INK, strokeWidth=1, opacity=0.6, clip=True).encode(
                x2="end:Q", y2="top:Q"
            ),
            chart.rows(1, along=nothing, end=woven, across=-web, top=web * 1)
            .mark_rect(color=chart.YARN, opacity=0.25, stroke=chart.YARN, clip=True)
            .encode(x2="end:Q", y2="top:Q"),
            chart.rows(1, along=nothing, end=long, across=-half, top=half * 1)
            .mark_rect(color=chart.PROJECT, opacity=0.75, clip=True)
            .encode(x2="end:Q", y2="top:Q"),
            chart.rows(1, along=woven + waste, across=-reed / 2, top=reed / 2)
            .mark_rule(color=chart.INK, strokeWidth=3, clip=True)
            .encode(y2="top:Q"),
            *chart.words(
                chart.rows(1, along=nothing, across=reed / 2),
                "loom_label",
                chart.YARN,
                align="left",
                dx=2,
                dy=-14,
            ),
            *chart.words(
                chart.rows(1, along=nothing, across=-reed / 2),
                "finished_label",
                chart.PROJECT,
                align="left",
                dx=2,
                dy=16,
            ),
        ),
        (
            (
                None,
                "Drawn to scale: the pale piece is the cloth on the loom, {web_width} by"
                " {woven_length}, the dark one what is left of it when it is washed.",
            ),
            (
                None,
                "The threads at its end are the {loom_waste} of loom waste, spread to the reed,"
                " {reed_width} wide.",
            ),
            (
                "is_one_close",
                "It takes {ends|end|ends} of {warp_wound^} and {picks|pick|picks}.",
            ),
            (
                "is_many_close",
                "It takes {ends|end|ends} of {warp_wound^}, and {picks|pick|picks} for all pieces.",
            ),
            (
                "is_many_open",
                "All pieces take {picks|pick|picks}.",
            ),
        ),
    )


def yards_against_length(v: Any) -> chart.SheetChart:
    """Draw the yards of warp, of weft and of both against the finished length."""
    top = alt.param(name="cloth_top", value=1)
    at = alt.datum.at * top
    woven = formulas.length_before_loss(chart.own("short", at), v.length_shrinkage)
    each = formulas.warp_length(woven, v.warp_take_up, v.pieces, v.between, v.loom_waste)
    inches = v.warp_length / v.warp_wound
    warp = formulas.yarn_in_threads(v.ends, each / inches)
    weft = formulas.yarn_in_threads(
        formulas.thread_count(v.picks_per_inch, woven) * v.pieces, v.pick_length / inches
    )
    both = chart.shown("length", warp + weft)
    here = chart.shown("short", v.finished_length)
    total = chart.rows(1, cloth=here, yards=chart.shown("length", v.total_yards))

    def named(text: str, colour: str, line: int) -> tuple[alt.Chart, alt.Chart]:
        """Write a line in the corner over the lines of the chart, which all rise from the left."""
        nothing = alt.datum.at * 0
        place = chart.rows(1, cloth=nothing, yards=nothing + alt.param(name="yarn_top", value=1))
        return chart.words(place, text, colour, align="left", dx=8, dy=10 + 18 * line)

    return chart.SheetChart(
        "yards_against_length",
        "Yarn against finished length",
        chart.plot(
            chart.axis("cloth", "Finished length of a piece ({short_unit})", "cloth_top"),
            chart.axis("yards", "Yarn ({length_unit})", "yarn_top"),
            chart.band(
                chart.rows(2, cloth=at, yards=both * (1 - v.doubt), high=both * (1 + v.doubt)),
                colour=chart.PROJECT,
            ),
            chart.rows(2, cloth=at, yards=both).mark_line(
                color=chart.PROJECT, strokeWidth=3, clip=True
            ),
            chart.rows(2, cloth=at, yards=chart.shown("length", warp)).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            chart.rows(2, cloth=at, yards=chart.shown("length", weft)).mark_line(
                color=chart.INK, strokeWidth=2, strokeDash=[7, 4], clip=True
            ),
            total.mark_point(color=chart.PROJECT, **chart.HERE),
            *named("total_label", chart.PROJECT, 0),
            *named("warp_label", chart.YARN, 1),
            *named("weft_label", chart.INK, 2),
        ),
        (
            (
                None,
                "{finished_length} takes {warp_yards} of warp, the full line, and {weft_yards}"
                " of weft, the broken one. The band is {doubt} either way, from {total_low!} to"
                " {total_high}.",
            ),
            ("is_thin", "What you have with the reserve, {total_stock}, would not reach that far."),
            (
                None,
                "The warp’s line does not start at nothing: loom waste comes first.",
            ),
        ),
        chart.Grip("finished_length", "finished_length", "total_yards"),
        {
            "cloth_top": here * 1.4,
            "yarn_top": chart.shown("length", v.total_high) * 1.25,
        },
    )


def where_it_goes(v: Any) -> chart.SheetChart:
    """Draw how much of the yarn ends up where."""
    parts = (
        ("straight in the cloth", v.in_cloth),
        ("take-up and shrinkage", v.in_bends),
        ("warp not woven", v.in_waste),
        ("reserve", v.in_reserve),
    )
    x = chart.axis("yards", "Yarn ({length_unit})", "part_top")
    order = alt.Y(
        "part:N",
        title=None,
        sort=[name for name, _ in parts],
        axis=alt.Axis(domain=True, labelLimit=170),
    )
    most = larger(larger(v.in_cloth, v.in_bends), larger(v.in_waste, v.in_reserve))
    bars = [
        chart.rows(1, part=name, yards=chart.shown("length", value))
        .mark_bar(color=chart.YARN if value is v.in_cloth else chart.PROJECT, height=18, clip=True)
        .encode(x=alt.X(**x), y=order)
        for name, value in parts
    ]
    return chart.SheetChart(
        "where_it_goes",
        "Where the yarn goes",
        alt.LayerChart(layer=bars),
        (
            (
                None,
                "Of {total_yards} only {in_cloth} lies straight in the cloth; bends and"
                " shrinkage hold {in_bends}, and {in_waste} of warp is not woven.",
            ),
            (
                "has_reserve",
                "The {reserve} in reserve is another {in_reserve} on top of that.",
            ),
        ),
        reach={"part_top": chart.shown("length", most)},
        left=175,
    )

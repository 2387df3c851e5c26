"""Charts of a knitted piece: its outline, yarn against gauge, and what each stitch takes."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger
from yarnsheets.published.stitches import STITCHES

_PER_YARD = 36
_STEPS = 40  # along a curve


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the pieces laid flat, yarn against gauge, and what each stitch takes."""
    return pieces_laid_flat(v), yards_against_gauge(v), yards_by_stitch(v)


def pieces_laid_flat(v: Any) -> chart.SheetChart:
    """Draw the pieces of the outline flat and to scale, with their measures and their area."""
    span, rise = chart.shown("short", v.span), chart.shown("short", v.rise)
    long_top, high = chart.to_scale(
        span * 1.04, rise * 1.5
    )  # with room for words over and under it
    looks: dict[str, Any] = {"labels": False, "grid": False, "ticks": False, "domain": False}
    row = alt.datum
    middle = v.around * row.middle_around + v.sleeve_wide * row.middle_wide
    half = v.around * row.half_around + v.sleeve_top * row.half_top + v.sleeve_cuff * row.half_cuff
    up = v.piece_length * row.up_length + v.around * row.up_around + v.sleeve_length * row.up_sleeve
    pieces = chart.table(
        "slices",
        along=chart.shown("short", middle - half),
        end=chart.shown("short", middle + half),
        up=chart.shown("short", up),
    ).mark_area(
        orient="horizontal", color=chart.YARN, opacity=0.3, stroke=chart.YARN, strokeWidth=2
    )
    # the area's words stand over all pieces, their measures under them
    of_piece = f"{emit(v.is_circle)} ? across_label : body_label"
    of_sleeve = f"{emit(v.is_pullover)} ? sleeve_label : ''"
    nothing = rise * 0
    return chart.SheetChart(
        "pieces_laid_flat",
        "The piece, laid flat",
        chart.plot(
            chart.axis("along", "All to one scale", long_top, **looks),
            chart.axis("up", "", f"0.82 * {high}", start=f"-0.18 * {high}", **looks),
            pieces.encode(x2="end:Q", detail="piece:N"),
            *chart.words(
                chart.rows(1, along=nothing, up=rise * 1),
                "area_label",
                chart.PROJECT,
                align="left",
                dy=-16,
            ),
            *(
                part
                for dy, text in ((16, of_piece), (34, of_sleeve))
                for part in chart.words(
                    chart.rows(1, along=nothing, up=nothing), text, chart.INK, align="left", dy=dy
                )
            ),
        ),
        (
            (
                "is_rectangle",
                "A rectangle {around} wide and {piece_length} long: {area}.",
            ),
            (
                "is_triangle",
                "A triangle {around} wide along its top and {piece_length} down to its point:"
                " {area}.",
            ),
            ("is_circle", "A circle {around} across: {area}."),
            (
                "is_hat",
                "A tube {around} around and {piece_length} long, cut open, and above it the crown"
                " in four wedges with as much area as a circle of that girth: {area} in all.",
            ),
            (
                "is_pair",
                "Two tubes, each {around} around and {piece_length} long, cut open: {area} in all."
                " Heels and thumbs are left to the reserve.",
            ),
            (
                "is_pullover",
                "Front and back between two sleeves cut open: {area} in all. No neckline is"
                " taken away.",
            ),
        ),
        tables=("slices",),
        left=14,
    )


def yards_against_gauge(v: Any) -> chart.SheetChart:
    """Draw yarn against the stitch gauge, by both gauges and by each alone."""
    top = alt.param(name="gauge_top", value=1)
    here = chart.shown("gauge", v.gauge_stitches)
    at = alt.datum.at / _STEPS * top
    stitches = chart.own("gauge", at)
    times = choose(v.by_swatch, 1, v.factor)

    def yards(per_area: Any) -> Any:
        return chart.shown("length", v.area * per_area / _PER_YARD * times)

    both = yards(formulas.yarn_per_area(stitches, v.gauge_rows, v.area_constant))
    by_stitches = formulas.yarn_per_area_by_one_gauge(stitches, v.course_constant)
    by_rows = yards(formulas.yarn_per_area_by_one_gauge(v.gauge_rows, v.wale_constant))
    one: dict[str, Any] = {"strokeWidth": 2, "strokeDash": [7, 4], "clip": True}
    early = chart.own("gauge", top * 0.25)
    return chart.SheetChart(
        "yards_against_gauge",
        "Yarn against stitch gauge",
        chart.plot(
            chart.axis("stitches", "Stitches ({gauge_unit}), rows as they are", "gauge_top"),
            chart.axis("yards", "Yarn ({length_unit})", "gauge_yards_top"),
            chart.band(
                chart.rows(
                    2,
                    stitches=here * (0.985 + alt.datum.at * 0.03),
                    yards=chart.shown("length", v.yards_low),
                    high=chart.shown("length", v.yards_high),
                ),
                colour=chart.PROJECT,
                opacity=0.35,
            ),
            chart.rows(_STEPS + 1, stitches=at, yards=both).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            chart.rows(_STEPS + 1, stitches=at, yards=yards(by_stitches)).mark_line(
                color=chart.INK, **one
            ),
            chart.rows(_STEPS + 1, stitches=at, yards=by_rows).mark_line(color=chart.INK, **one),
            chart.rows(1, stitches=here, yards=chart.shown("length", v.yards)).mark_point(
                color=chart.PROJECT, **chart.HERE
            ),
            *chart.words(
                chart.rows(1, stitches=top * 0.03, yards=by_rows),
                "rows_label",
                chart.INK,
                align="left",
                dy=-12,
            ),
            *chart.words(
                chart.rows(
                    1,
                    stitches=top * 0.25,
                    yards=yards(formulas.yarn_per_area_by_one_gauge(early, v.course_constant)),
                ),
                "stitches_label",
                chart.INK,
                align="left",
                dx=8,
                dy=12,
            ),
            *chart.words(
                chart.rows(1, stitches=here, yards=chart.shown("length", v.yards)),
                "here_label",
                chart.PROJECT,
                dy=24,
                **chart.lean(here, top),
            ),
        ),
        (
            (
                "not by_swatch",
                "The full line reckons with both gauges, the broken ones with stitches or rows"
                " alone; they cross at {usual_rows} rows to a stitch. The upright bar is the"
                " range.",
            ),
            (
                "by_swatch",
                "The dot is by your swatch, {yards}; the full line is what plain knitting would"
                " take by both gauges, {by_both} at {gauge_stitches}. The broken lines take one"
                " gauge alone.",
            ),
        ),
        chart.Grip("gauge_stitches", "gauge_stitches", "yards", "by_gauge"),
        {
            "gauge_top": here * 1.7,
            "gauge_yards_top": chart.shown(
                "length", larger(v.yards_high, larger(v.by_rows, v.by_stitches) * 1.3 * times)
            ),
        },
    )


def yards_by_stitch(v: Any) -> chart.SheetChart:
    """Draw between what and what each stitch takes for this piece."""
    x = chart.axis("yards", "Yarn for this piece ({length_unit})", "stitch_top")
    names = [stitch.name for stitch in STITCHES.values()]
    if_swatch = choose(v.by_swatch, 0, 1)
    order = alt.Y("stitch:N", title=None, sort=names, axis=alt.Axis(domain=True, labelLimit=170))
    layers: list[alt.Chart] = []
    for number, stitch in enumerate(STITCHES.values()):
        chosen = choose(v.stitch_number == number, if_swatch, 0)
        layer = chart.rows(
            1,
            stitch=stitch.name,
            yards=chart.shown("length", v.by_both * stitch.low),
            end=chart.shown("length", v.by_both * stitch.high),
        ).encode(x=alt.X(**x), x2="end:Q", y=order)
        for colour, seen in ((chart.YARN, 1 - chosen), (chart.PROJECT, chosen)):
            layers.append(
                layer.mark_bar(
                    color=colour,
                    height=16,
                    stroke=colour,
                    strokeWidth=3,
                    opacity=alt.ExprRef(emit(seen * 0.75)),
                    clip=True,
                )
            )
    swatch = chart.shown("length", v.by_the_swatch)
    swatch_seen = alt.ExprRef(emit(choose(v.by_swatch, 1, 0)))
    layers.append(
        chart.rows(1, yards=swatch)
        .mark_rule(color=chart.PROJECT, strokeWidth=3, opacity=swatch_seen, clip=True)
        .encode(x=alt.X(**x))
    )
    most = max(stitch.high for stitch in STITCHES.values())
    return chart.SheetChart(
        "yards_by_stitch",
        "What each stitch takes",
        alt.LayerChart(layer=layers),
        (
            (
                None,
                "For this area, from the {by_both} of plain knitting at the gauge typed. Garter"
                " stitch and crochet are from published swatches, which differ; ribs and cables"
                " are common practice, no source.",
            ),
            (
                "is_patterned",
                "Yours, {stitch_name}, is the one in the other colour, as widely as it is known; a"
                " weighed swatch tells more.",
            ),
            (
                "by_swatch",
                "The upright line is your swatch: {by_the_swatch}, {swatch_factor} times plain"
                " knitting.",
            ),
        ),
        reach={
            "stitch_top": chart.shown(
                "length", larger(v.by_both * most, choose(v.by_swatch, v.by_the_swatch, 0))
            )
        },
        left=150,
    )

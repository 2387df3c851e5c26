"""Charts of thickness: wraps with grist, what spinning finer does, gauges of categories.

On axes where equal distances are equal ratios, yarns of one bulk density lie on a straight line.
"""

import math
from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit
from yarnsheets.published.sources import (
    ASHENHURST_FIRM_1999,
    ASHENHURST_SOFT_1999,
    GRIST,
    HANDSPUN_BULK_DENSITY,
    WRAPS_PER_INCH,
)
from yarnsheets.sheets.shared.density import in_own_units

_SMALL: dict[str, Any] = {"fontSize": 12, "fontWeight": 400}
_CURVE_ROWS = 40
_MOST_TIMES = 4
_MOST_STITCHES = 42

# How steeply a line of one bulk density rises, in degrees: wraps go with the root of grist, and
# with its inverse where a unit counts mass per length.
_RISE = math.log(WRAPS_PER_INCH.high / WRAPS_PER_INCH.low)
_RUN = math.log(GRIST.high / GRIST.low)
_SLOPE = f"-grist_power * 57.29578 * atan2(height / {_RISE}, 2 * width / {_RUN})"


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw wraps with grist, what spinning finer does, and the gauge of the categories."""
    return wraps_with_grist(v), doubled_grist(v), gauge_of_categories()


def wraps_with_grist(v: Any) -> chart.SheetChart:
    """Draw what wraps leave open of grist, the reader's yarn, and what no yarn can be."""
    ends = [chart.shown("grist", GRIST.low), chart.shown("grist", GRIST.high)]
    x = _ratios(
        chart.axis(
            "grist",
            "Grist ({grist_unit})",
            emit(alt.expr.max(*ends)),
            start=emit(alt.expr.min(*ends)),
        )
    )
    y = _ratios(
        chart.axis(
            "wraps",
            "Wraps laid by hand ({wraps_unit})",
            emit(chart.shown("wraps", WRAPS_PER_INCH.high)),
            start=emit(chart.shown("wraps", WRAPS_PER_INCH.low)),
        )
    )
    airy = in_own_units(HANDSPUN_BULK_DENSITY.low)
    dense = in_own_units(HANDSPUN_BULK_DENSITY.high)
    soft, firm = (
        formulas.bulk_density_from_ashenhurst_factor(factor.value)
        for factor in (ASHENHURST_SOFT_1999, ASHENHURST_FIRM_1999)
    )
    grist = GRIST.low + alt.datum.at * (GRIST.high - GRIST.low)  # two ends of a straight line

    def wraps(density: Any) -> Any:
        return chart.shown("wraps", formulas.wraps_per_inch_from_grist(grist, density))

    def between(low: Any, high: Any, colour: str, opacity: float) -> alt.Chart:
        layer = chart.rows(2, grist=chart.shown("grist", grist), wraps=low, high=high)
        return chart.band(layer, colour=colour, opacity=opacity)

    def line(density: Any, **look: Any) -> Any:
        layer = chart.rows(2, grist=chart.shown("grist", grist), wraps=wraps(density))
        return layer.mark_line(clip=True, **look)

    def along(
        density: Any, at: float, text: str, colour: str, dy: int = -8
    ) -> tuple[alt.Chart, alt.Chart]:
        """Write along a line of one density, centred where it makes so many wraps."""
        of = formulas.grist_from_wraps(at, density)
        place = chart.rows(
            1, grist=chart.shown("grist", of + alt.datum.at), wraps=chart.shown("wraps", at)
        )
        return chart.words(place, text, colour, angle=alt.ExprRef(_SLOPE), dy=dy, **_SMALL)

    across = chart.shown("wraps", v.wraps_per_inch)
    possible = chart.rows(
        2,
        grist=chart.shown("grist", choose(alt.datum.at > 0, v.possible_high, v.possible_low)),
        wraps=across,
    )
    usual = chart.rows(
        2,
        grist=chart.shown("grist", choose(alt.datum.at > 0, v.usual_high, v.usual_low)),
        wraps=across,
    )
    here = chart.rows(1, grist=chart.shown("grist", v.grist), wraps=across)
    lines = chart.plot(
        x,
        y,
        between(wraps(v.solid), chart.shown("wraps", WRAPS_PER_INCH.high), chart.INK, 0.18),
        between(wraps(airy), wraps(dense), chart.YARN, 0.15),
        between(wraps(soft), wraps(firm), chart.PROJECT, 0.35),
        line(airy, color=chart.YARN, strokeWidth=1),
        line(dense, color=chart.YARN, strokeWidth=1),
        line(v.solid, color=chart.INK, strokeWidth=2),
        *along(airy, 26, f"'{HANDSPUN_BULK_DENSITY.low:g} g/cm³, airy'", chart.YARN, 11),
        *along(dense, 26, f"'{HANDSPUN_BULK_DENSITY.high:g} g/cm³, dense'", chart.YARN),
        *along(firm, 26, "'in cloth, not wraps'", chart.PROJECT),
        *along(v.solid, 26, "solid_label", chart.INK),
        possible.mark_line(color=chart.INK, strokeWidth=2, strokeDash=[3, 3], clip=True),
        usual.mark_line(color=chart.YARN, strokeWidth=6, clip=True),
        here.mark_point(
            clip=True,
            color=chart.YARN,
            **chart.HERE | {"opacity": alt.ExprRef(emit(choose(v.has_grist, 1, 0)))},
        ),
        *chart.words(
            chart.rows(
                1,
                grist=chart.shown("grist", GRIST.low * 1.1 + alt.datum.at),
                wraps=chart.shown("wraps", WRAPS_PER_INCH.high * 0.95),
            ),
            "impossible_label",
            chart.INK,
            align=alt.ExprRef(emit(choose(chart.GRIST_POWER > 0, "left", "right"))),
            baseline="top",
            **_SMALL,
        ),
    )
    return chart.SheetChart(
        "wraps_with_grist",
        "Wraps and grist",
        lines,
        (
            (
                None,
                "The thick bar is what your wraps usually mean; the dotted one all that is"
                " possible, from {possible_low~!} to {possible_high~}.",
            ),
            ("is_impossible", "Your yarn lies in the grey, where no yarn can."),
            (
                "has_grist",
                "The dot has {density} g in each cm³, air and all. The bounds of airy and dense"
                " are derived, with no authority.",
            ),
            (
                None,
                "The red band is not wraps but Ashenhurst’s diameters to the inch, of yarn"
                " squeezed in cloth, 2.1 to 2.5 times as many: neither stands in for the other.",
            ),
        ),
        chart.Grip("grist", "grist", "wraps_per_inch", when="has_grist"),
    )


def _ratios(described: dict[str, Any]) -> dict[str, Any]:
    """Make equal distances on an axis equal ratios."""
    scale = {name: end for name, end in described["scale"].items() if name != "zero"}
    looks = {**described["axis"], "grid": False, "labelSeparation": 10, "labelOverlap": "greedy"}
    return {**described, "scale": {**scale, "type": "log"}, "axis": looks}


def doubled_grist(v: Any) -> chart.SheetChart:
    """Draw how wraps and thickness go with length to the weight, and how they do not.

    Length to the weight, since grist runs the other way in some of its units.
    """
    times = 1 + alt.datum.at / _CURVE_ROWS * (_MOST_TIMES - 1)
    of_wraps = formulas.wraps_per_inch_from_grist(times, 4 / math.pi)  # one wrap at one times
    of_diameter = formulas.diameter_from_wraps(of_wraps)
    x = chart.axis(
        "times", "Times the length to the weight", _MOST_TIMES, start=1, values=[1, 2, 3, 4]
    )
    y = chart.axis("ratio", "Times the wraps, times the thickness", 2.2, values=[0, 0.5, 1, 1.5, 2])

    def at_two(ratio: Any) -> alt.Chart:
        return chart.rows(1, times=2 + alt.datum.at, ratio=ratio * 1)

    return chart.SheetChart(
        "doubled_grist",
        "What spinning twice as long does",
        chart.plot(
            x,
            y,
            chart.rows(2, times=1 + alt.datum.at * 2, ratio=1 + alt.datum.at * 2).mark_line(
                color=chart.INK, strokeWidth=1.5, strokeDash=[3, 3], clip=True
            ),
            chart.rows(_CURVE_ROWS + 1, times=times, ratio=of_wraps).mark_line(
                color=chart.YARN, strokeWidth=3
            ),
            chart.rows(_CURVE_ROWS + 1, times=times, ratio=of_diameter).mark_line(
                color=chart.PROJECT, strokeWidth=3
            ),
            at_two(v.wraps_ratio).mark_point(color=chart.YARN, **chart.HERE),
            at_two(v.diameter_ratio).mark_point(color=chart.PROJECT, shape="square", **chart.HERE),
            *chart.words(
                at_two(v.wraps_ratio), "wraps_label", chart.YARN, align="left", dx=8, dy=16
            ),
            *chart.words(
                at_two(v.diameter_ratio),
                "diameter_label",
                chart.PROJECT,
                align="left",
                dx=8,
                dy=-14,
            ),
            *chart.words(at_two(2), "'not so'", chart.INK, align="right", dx=-8),
        ),
        (
            (
                None,
                "The same weight spun twice as long, and as airy, makes {doubled_wraps}, not twice"
                " {wraps_per_inch!}, and {diameter_ratio:4} of the thickness, not half. Four times"
                " as long makes twice the wraps.",
            ),
        ),
    )


def gauge_of_categories() -> chart.SheetChart:
    """Draw the stitches of each category, where their bands overlap, and those of the swatch."""
    x = chart.axis("stitches", "Stitches to 4 inches", _MOST_STITCHES)
    order = alt.Y("category:N", title=None, sort=None, axis=alt.Axis(domain=True, labelLimit=120))
    bars = (
        chart.table("bands", stitches=alt.datum.low)
        .mark_bar(color=chart.PROJECT, height=14)
        .encode(
            x=alt.X(**x),
            x2="high:Q",
            y=order,
            opacity=alt.condition(alt.datum.yours, alt.value(1), alt.value(0.35)),
        )
    )
    swatch = chart.computed(alt.NamedData("swatch")).encode(x=alt.X(**x))
    return chart.SheetChart(
        "gauge_of_categories",
        "The Council’s categories, by gauge",
        alt.LayerChart(
            layer=[
                bars,
                swatch.mark_rule(color=chart.INK, strokeWidth=2, clip=True),
            ]
        ),
        (
            (
                "has_category",
                "The line is your {stitch_count|stitch|stitches}; the bands that it crosses are"
                " yours: {category}.",
            ),
            (
                None,
                "The Craft Yarn Council sorts by gauge, needle and hook; it gives no wraps and"
                " no yards per pound.",
            ),
        ),
        tables=("bands", "swatch"),
        left=110,
    )

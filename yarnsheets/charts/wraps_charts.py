"""Charts of thickness: wraps with grist, what doubling the grist does, gauges of categories.

On axes where equal distances are equal ratios, yarns of one bulk density lie on a straight line.
"""

import math
from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.charts.chart import (
    GRIST_POWER,
    HERE,
    INK,
    PROJECT,
    YARN,
    Grip,
    SheetChart,
    axis,
    band,
    computed,
    plot,
    rows,
    shown,
    table,
    words,
)
from yarnsheets.charts.expressions import choose, emit
from yarnsheets.sources import (
    ASHENHURST_FIRM_1999,
    ASHENHURST_SOFT_1999,
    GRIST,
    HANDSPUN_BULK_DENSITY,
    WRAPS_PER_INCH,
)
from yarnsheets.units import convert

_SMALL: dict[str, Any] = {"fontSize": 12, "fontWeight": 400}
_CURVE_ROWS = 40
_MOST_TIMES = 4
_MOST_STITCHES = 42

# How steeply a line of one bulk density rises, in degrees: wraps go with the root of grist, and
# with its inverse where a unit counts mass per length.
_RISE = math.log(WRAPS_PER_INCH.high / WRAPS_PER_INCH.low)
_RUN = math.log(GRIST.high / GRIST.low)
_SLOPE = f"-grist_power * 57.29578 * atan2(height / {_RISE}, 2 * width / {_RUN})"


def in_own_units(grams: float) -> float:
    """Return a density given in g/cm3 in pounds to a yard one inch square.

    >>> round(in_own_units(1.0), 4)
    1.3006
    """
    return float(convert(grams, "g/cm**3", "lb/yd/in**2"))


def wraps_with_grist(v: Any) -> SheetChart:
    """Draw what wraps leave open of grist, the reader's yarn, and what no yarn can be."""
    ends = [shown("grist", GRIST.low), shown("grist", GRIST.high)]
    x = _ratios(
        axis(
            "grist",
            "Grist ({grist_unit})",
            emit(alt.expr.max(*ends)),
            start=emit(alt.expr.min(*ends)),
        )
    )
    y = _ratios(
        axis(
            "wraps",
            "Wraps laid by hand ({wraps_unit})",
            emit(shown("wraps", WRAPS_PER_INCH.high)),
            start=emit(shown("wraps", WRAPS_PER_INCH.low)),
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
        return shown("wraps", formulas.wraps_per_inch_from_grist(grist, density))

    def between(low: Any, high: Any, colour: str, opacity: float) -> alt.Chart:
        layer = rows(2, grist=shown("grist", grist), wraps=low, high=high)
        return band(layer, colour=colour, opacity=opacity)

    def line(density: Any, **look: Any) -> Any:
        layer = rows(2, grist=shown("grist", grist), wraps=wraps(density))
        return layer.mark_line(clip=True, **look)

    def along(
        density: Any, at: float, text: str, colour: str, dy: int = -8
    ) -> tuple[alt.Chart, alt.Chart]:
        """Write along a line of one density, centred where it makes so many wraps."""
        of = formulas.grist_from_wraps(at, density)
        place = rows(1, grist=shown("grist", of + alt.datum.at), wraps=shown("wraps", at))
        return words(place, text, colour, angle=alt.ExprRef(_SLOPE), dy=dy, **_SMALL)

    across = shown("wraps", v.wraps_per_inch)
    possible = rows(
        2,
        grist=shown("grist", choose(alt.datum.at > 0, v.possible_high, v.possible_low)),
        wraps=across,
    )
    usual = rows(
        2,
        grist=shown("grist", choose(alt.datum.at > 0, v.usual_high, v.usual_low)),
        wraps=across,
    )
    here = rows(1, grist=shown("grist", v.grist), wraps=across)
    lines = plot(
        x,
        y,
        between(wraps(v.solid), shown("wraps", WRAPS_PER_INCH.high), INK, 0.18),
        between(wraps(airy), wraps(dense), YARN, 0.15),
        between(wraps(soft), wraps(firm), PROJECT, 0.35),
        line(airy, color=YARN, strokeWidth=1),
        line(dense, color=YARN, strokeWidth=1),
        line(v.solid, color=INK, strokeWidth=2),
        *along(airy, 26, f"'{HANDSPUN_BULK_DENSITY.low:g} g/cm³, airy'", YARN, 11),
        *along(dense, 26, f"'{HANDSPUN_BULK_DENSITY.high:g} g/cm³, dense'", YARN),
        *along(firm, 26, "'in cloth, not wraps'", PROJECT),
        *along(v.solid, 26, "solid_label", INK),
        possible.mark_line(color=INK, strokeWidth=2, strokeDash=[3, 3], clip=True),
        usual.mark_line(color=YARN, strokeWidth=6, clip=True),
        here.mark_point(
            clip=True,
            color=YARN,
            **HERE | {"opacity": alt.ExprRef(emit(choose(v.has_grist, 1, 0)))},
        ),
        *words(
            rows(
                1,
                grist=shown("grist", GRIST.low * 1.1 + alt.datum.at),
                wraps=shown("wraps", WRAPS_PER_INCH.high * 0.95),
            ),
            "impossible_label",
            INK,
            align=alt.ExprRef(emit(choose(GRIST_POWER > 0, "left", "right"))),
            baseline="top",
            **_SMALL,
        ),
    )
    return SheetChart(
        "wraps_with_grist",
        "Wraps and grist",
        lines,
        (
            (
                None,
                "The thick bar is what your wraps usually mean, from {usual_low!} to"
                " {usual_high}; the dotted one all that is possible.",
            ),
            ("is_impossible", "Your yarn lies in the grey, where no yarn can."),
            (
                "has_grist",
                "By your numbers the dot has {density} g in each cm³, air and all."
                " The bounds of airy and dense are derived, with no authority.",
            ),
            (
                None,
                "The red band is not wraps but Ashenhurst’s diameters to the inch, of yarn squeezed"
                " in cloth: printed charts and rules set the two 2.1 to 2.5 times apart, and"
                " neither stands in for the other.",
            ),
        ),
        Grip("grist", "grist", "wraps_per_inch", when="has_grist"),
    )


def _ratios(described: dict[str, Any]) -> dict[str, Any]:
    """Make equal distances on an axis equal ratios."""
    scale = {name: end for name, end in described["scale"].items() if name != "zero"}
    looks = {**described["axis"], "grid": False, "labelSeparation": 10, "labelOverlap": "greedy"}
    return {**described, "scale": {**scale, "type": "log"}, "axis": looks}


def doubled_grist(v: Any) -> SheetChart:
    """Draw how wraps and thickness go with grist at one bulk density, and how they do not."""
    times = 1 + alt.datum.at / _CURVE_ROWS * (_MOST_TIMES - 1)
    of_wraps = formulas.wraps_per_inch_from_grist(times, 4 / math.pi)  # one wrap at one times
    of_diameter = formulas.diameter_from_wraps(of_wraps)
    x = axis("times", "Times the grist", _MOST_TIMES, start=1, values=[1, 2, 3, 4])
    y = axis("ratio", "Times the wraps, times the thickness", 2.2, values=[0, 0.5, 1, 1.5, 2])

    def at_two(ratio: Any) -> alt.Chart:
        return rows(1, times=2 + alt.datum.at, ratio=ratio * 1)

    return SheetChart(
        "doubled_grist",
        "What doubling the grist does",
        plot(
            x,
            y,
            rows(2, times=1 + alt.datum.at * 2, ratio=1 + alt.datum.at * 2).mark_line(
                color=INK, strokeWidth=1.5, strokeDash=[3, 3], clip=True
            ),
            rows(_CURVE_ROWS + 1, times=times, ratio=of_wraps).mark_line(color=YARN, strokeWidth=3),
            rows(_CURVE_ROWS + 1, times=times, ratio=of_diameter).mark_line(
                color=PROJECT, strokeWidth=3
            ),
            at_two(v.wraps_ratio).mark_point(color=YARN, **HERE),
            at_two(v.diameter_ratio).mark_point(color=PROJECT, shape="square", **HERE),
            *words(at_two(v.wraps_ratio), "wraps_label", YARN, align="left", dx=8, dy=16),
            *words(at_two(v.diameter_ratio), "diameter_label", PROJECT, align="left", dx=8, dy=-14),
            *words(at_two(2), "'not so'", INK, align="right", dx=-8),
        ),
        (
            (
                None,
                "Twice the grist, of the same airiness, makes {doubled_wraps}, not"
                " twice {wraps_per_inch!}, and {diameter_ratio:4} of the thickness, not half. Four"
                " times the grist makes twice the wraps.",
            ),
        ),
    )


def gauge_of_categories() -> SheetChart:
    """Draw the stitches of each category, where their bands overlap, and those of the swatch."""
    x = axis("stitches", "Stitches to 4 inches", _MOST_STITCHES)
    order = alt.Y("category:N", title=None, sort=None, axis=alt.Axis(domain=True, labelLimit=120))
    bars = (
        table("bands", stitches=alt.datum.low)
        .mark_bar(color=PROJECT, height=14)
        .encode(
            x=alt.X(**x),
            x2="high:Q",
            y=order,
            opacity=alt.condition(alt.datum.yours, alt.value(1), alt.value(0.35)),
        )
    )
    swatch = computed(alt.NamedData("swatch")).encode(x=alt.X(**x))
    return SheetChart(
        "gauge_of_categories",
        "The Council’s categories, by gauge",
        alt.LayerChart(
            layer=[
                bars,
                swatch.mark_rule(color=INK, strokeWidth=2, clip=True),
            ]
        ),
        (
            (
                "has_category",
                "The line is your {stitch_count} stitches; the bands that it crosses are yours:"
                " {category}. Bands overlap, so there may be two.",
            ),
            (
                None,
                "The Craft Yarn Council sorts yarn by gauge, needle and hook. It gives no wraps and"
                " no yards per pound: charts that do have added their own.",
            ),
        ),
        tables=("bands", "swatch"),
        left=110,
    )

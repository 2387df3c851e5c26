"""Charts of twist: the slant of fibres, twist against grist, take-up against ply twist."""

import math
from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger, sine
from yarnsheets.published.twists import LOOSE_TWIST, TIGHT_TWIST, TWIST_ANGLE
from yarnsheets.sheets.how_much_twist_does_it_want.plied import plied
from yarnsheets.sheets.shared.density import in_own_units

_CURVE_ROWS = 80
# Of fibres: how many begin in each turn, how many are drawn, and with how many points each.
_IN_A_TURN = 12
_FIBRES = 96
_POINTS = 15
_SMALL: dict[str, Any] = {"fontSize": 12, "fontWeight": 400}


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the slant, twist against grist, and take-up against ply twist."""
    return slant_of_fibres(v), twist_against_grist(v), take_up_against_ply_twist(v)


def slant_of_fibres(v: Any) -> chart.SheetChart:
    """Draw the single from the side, to scale, with the fibres that wind around its surface."""
    thick, turn = chart.shown("thickness", v.diameter), chart.shown("thickness", 1 / v.twist)
    half = thick / 2
    half_high = f"{emit(thick)} * 0.8"
    long = f"{half_high} * 2 * width / height"
    fibre, point = alt.expr.floor(alt.datum.at / _POINTS), alt.datum.at % _POINTS
    round_it = point / (_POINTS - 1)  # of the half turn that is seen, from the top to the bottom
    seen = chart.rows(
        _FIBRES * _POINTS,
        fibre=fibre,
        along=((fibre / _IN_A_TURN) + (round_it - 1) / 2) * turn,
        across=half * sine((0.5 - round_it) * math.pi),
    )
    # The slant again as a straight line, crossing the dashed axis at a distance that fits in.
    middle = thick * 0.85
    reach = thick * 0.75 / (1 + v.tangent**2) ** 0.5
    side = 1 - alt.datum.at * 2
    looks: dict[str, Any] = {"grid": False}
    return chart.SheetChart(
        "slant_of_fibres",
        "The single from the side",
        chart.plot(
            chart.axis("along", "Along the single ({thickness_unit})", long, **looks),
            chart.axis("across", "Thickness ({thickness_unit})", half_high, start=f"-{half_high}"),
            chart.rows(1, along=alt.datum.at * 0, end=thick * 50, across=-half, top=half)
            .mark_rect(color=chart.YARN, opacity=0.15, stroke=chart.YARN, clip=True)
            .encode(x2="end:Q", y2="top:Q"),
            seen.mark_line(color=chart.YARN, strokeWidth=1.5, opacity=0.8, clip=True).encode(
                detail="fibre:N"
            ),
            chart.rows(2, along=middle + side * thick * 0.75, across=side * 0).mark_line(
                color=chart.INK, strokeWidth=1.5, strokeDash=[7, 4], clip=True
            ),
            chart.rows(2, along=middle - side * reach, across=side * reach * v.tangent).mark_line(
                color=chart.PROJECT, strokeWidth=3, clip=True
            ),
            *chart.words(
                chart.rows(1, along=middle + reach, across=thick * -0.65),  # below the fibres
                "slant_label",
                chart.PROJECT,
            ),
        ),
        (
            (
                None,
                "Drawn to scale, {diameter} thick; the fibres on its outside slant by"
                " {slant:2|degree|degrees}.",
            ),
            (
                None,
                "Your {treadles|treadle|treadles} to a draft of {draft} make {counted}; for"
                " {twist} let {per_treadle} run in for each.",
            ),
        ),
    )


def twist_against_grist(v: Any) -> chart.SheetChart:
    """Draw the twist of singles that slant alike, and which of them are loose and tight."""
    top = alt.param(name="grist_top", value=1)
    across = alt.datum.at * top / _CURVE_ROWS

    def curve(slant: Any, grist: Any = across) -> Any:
        density = v.bulk_density * in_own_units(1.0)
        diameter = formulas.diameter_from_grist(chart.own("grist", grist), density)
        return chart.shown("twist", formulas.twist_for_tangent(slant, diameter))

    def called(low: float, high: float, colour: str) -> alt.Chart:
        ends = (math.tan(math.radians(end)) for end in (low, high))
        first, last = (curve(end) for end in ends)
        layer = chart.rows(_CURVE_ROWS, start=1, grist=across, twist=first, high=last)
        return chart.band(layer, colour=colour, opacity=0.2)

    def named(text: str, degrees: float, colour: str) -> tuple[alt.Chart, alt.Chart]:
        end = top * (alt.datum.at + 0.98)
        place = chart.rows(1, grist=end, twist=curve(math.tan(math.radians(degrees)), end))
        return chart.words(place, text, colour, align="right", clip=True, **_SMALL)

    here = chart.rows(1, grist=chart.shown("grist", v.grist), twist=chart.shown("twist", v.twist))
    return chart.SheetChart(
        "twist_against_grist",
        "Twist for the same slant, at other grists",
        chart.plot(
            chart.axis("grist", "Grist of the single ({grist_unit})", "grist_top", labelFlush=True),
            chart.axis("twist", "Twist ({twist_unit})", "twist_top"),
            called(TWIST_ANGLE.low, LOOSE_TWIST.high, chart.YARN),
            called(TIGHT_TWIST.low, TWIST_ANGLE.high, chart.PROJECT),
            chart.rows(_CURVE_ROWS, start=1, grist=across, twist=curve(v.tangent)).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            *named("'loose'", 7.5, chart.YARN),
            *named("'tight'", 35, chart.PROJECT),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                here,
                "twist_label",
                chart.YARN,
                # on the outside of the curve, which falls where grist is weight per length
                dy=alt.ExprRef(emit(choose(chart.GRIST_POWER > 0, 18, -14))),
                **chart.lean(chart.shown("grist", v.grist), top),
            ),
        ),
        (
            (
                None,
                "On the line singles slant by {slant:2|degree|degrees} alike: a quarter of the"
                " weight wants twice the twist.",
            ),
            (
                None,
                "Yours is loose below {loose_below:2} and tight above {tight_above:2}, as the"
                " bands show.",
            ),
        ),
        chart.Grip("grist", "grist", "twist"),
        {
            "grist_top": chart.shown("grist", v.grist) * 1.8,
            "twist_top": chart.shown("twist", larger(v.twist * 1.5, v.most * 1.4)),
        },
    )


def take_up_against_ply_twist(v: Any) -> chart.SheetChart:
    """Draw the take-up at each ply twist, with and without the singles' untwisting."""
    top = alt.param(name="ply_twist_top", value=1)
    high = alt.param(name="more_top", value=1)
    at = alt.datum.at * top / _CURVE_ROWS
    found = plied(v.diameter, v.lay, v.twist, choose(v.is_plied, chart.own("twist", at), 0))

    def more(take_up: Any) -> Any:
        return (take_up - 1) * 100

    low, high_end = (chart.shown("twist", end) for end in (v.balanced_low, v.balanced_high))
    here = chart.rows(1, ply_twist=chart.shown("twist", v.ply_twist), more=more(v.take_up))
    seen = alt.ExprRef(emit(choose(v.is_plied, 1, 0)))  # a single alone has no balance
    nothing = alt.datum.at * 0
    between = chart.rows(
        1, ply_twist=low + nothing, end=high_end + nothing, more=high * -0.4, up=high + nothing
    )
    return chart.SheetChart(
        "take_up_against_ply_twist",
        "Take-up against ply twist",
        chart.plot(
            chart.axis("ply_twist", "Twist in plying ({twist_unit})", "ply_twist_top"),
            chart.axis("more", "More single than yarn (%)", "more_top", start="-0.4 * more_top"),
            chart.rows(_CURVE_ROWS + 1, ply_twist=at, more=more(found["helix"])).mark_line(
                color=chart.INK, strokeWidth=2, strokeDash=[3, 3], clip=True
            ),
            chart.rows(_CURVE_ROWS + 1, ply_twist=at, more=more(found["take_up"])).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            between.mark_rect(
                color=chart.PROJECT, fillOpacity=0.15, opacity=seen, clip=True
            ).encode(x2="end:Q", y2="up:Q"),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                chart.rows(1, ply_twist=high_end + nothing, more=high * (alt.datum.at - 0.34)),
                "balanced_label",
                chart.PROJECT,
                opacity=seen,
                **chart.lean(high_end, top),
            ),
            *chart.words(
                here,
                "take_up_label",
                chart.YARN,
                dy=16,
                **chart.lean(chart.shown("twist", v.ply_twist), top),
            ),
        ),
        (
            (
                "is_plied",
                "Winding alone would take up {helix:4}, dotted; but singles lose twist and"
                " grow, which leaves {take_up:4} at {ply_twist}.",
            ),
            (
                "is_plied",
                "Balanced yarn lies in the band, {balanced_low:2!} to {balanced_high:2}.",
            ),
            ("is_reversed", "So much takes all the twist out of the singles, and more."),
            ("not is_plied", "One single is not plied: nothing is taken up."),
        ),
        chart.Grip("ply_twist", "ply_twist", "take_up", when="is_plied"),
        {
            "ply_twist_top": chart.shown("twist", larger(v.ply_twist * 1.4, v.balanced_high * 1.6)),
            "more_top": larger(more(v.take_up) * 1.6, larger(more(v.helix) * 1.2, 4)),
        },
    )

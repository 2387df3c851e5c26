"""Charts of a balance's check: the factor of each reading, and reading against true grist."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger
from yarnsheets.sheets.shared import measuring_charts


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw the factors with their range, reading against truth, and the sources of doubt."""
    return factors_of_readings(v), reading_against_truth(v), measuring_charts.sources_of_doubt()


def factors_of_readings(v: Any) -> chart.SheetChart:
    """Draw the factor that each reading gives, their mean with its range, and the maker's."""
    found = [v.least, v.most, v.factor_low, v.factor_high, v.balance_factor]
    ends = [chart.shown("factor", factor) for factor in found]
    x = chart.axis("at", "Weighing or cut", "count + 0.5", start=0.5, tickMinStep=1, grid=False)
    y = chart.axis(
        "factor",
        "Factor ({factor_unit})",
        emit(alt.expr.max(*ends) * 1.015),
        start=emit(alt.expr.min(*ends) * 0.985),
    )
    across = 0.5 + alt.datum.at * v.count
    maker, factor = chart.shown("factor", v.balance_factor), chart.shown("factor", v.factor)
    low, high = chart.shown("factor", v.factor_low), chart.shown("factor", v.factor_high)
    seen = alt.ExprRef(emit(choose(v.has_range, 1, 0)))
    spread = chart.band(chart.rows(2, at=across, factor=low, high=high))
    lines = chart.plot(
        x,
        y,
        spread,
        chart.rows(2, at=across, factor=maker).mark_line(**chart.GOAL),
        chart.rows(2, at=across, factor=factor).mark_line(color=chart.YARN, strokeWidth=2),
        chart.table("readings", factor=chart.shown("factor", alt.datum.given)).mark_point(
            **chart.DOT
        ),
        *chart.words(
            chart.rows(1, at=0.5 + alt.datum.at, factor=maker),
            "maker_label",
            chart.PROJECT,
            align="left",
            dx=6,
            dy=alt.ExprRef(emit(choose(v.is_low, 12, -10))),
            opacity=seen,
        ),
        *chart.words(
            chart.rows(1, at=0.5 + v.count + alt.datum.at, factor=choose(v.is_high, low, high)),
            "factor_label",
            chart.YARN,
            align="right",
            dx=-4,
            dy=alt.ExprRef(emit(choose(v.is_high, 12, -10))),
            opacity=seen,
        ),
    )
    return chart.SheetChart(
        "factors_of_readings",
        "The factor by each reading, and by the maker",
        lines,
        (
            (
                "has_range",
                "The dots are what your readings give one by one; the band is where the factor"
                " lies, 95% sure.",
            ),
            ("is_high", "The maker’s {balance_factor!}, dashed, is above it."),
            ("is_low", "The maker’s {balance_factor!}, dashed, is below it."),
            (
                "is_within",
                "The maker’s {balance_factor!}, dashed, is within it: {size:2} off, no more than"
                " the noise of this check.",
            ),
        ),
        tables=("readings",),
    )


def reading_against_truth(v: Any) -> chart.SheetChart:
    """Draw what the maker's number makes of each true grist, beside what a right balance would."""
    truth, reading = chart.shown("grist", v.true_grist), chart.shown("grist", v.reported)
    # near the cut's own grist, so that a difference of a few per cent can be seen
    about = larger(v.size * 2.5, 0.12)
    start, top = truth * larger(1 - about, 0), truth * (1 + about)
    x = chart.axis("truth", "True grist ({grist_unit})", emit(top), start=emit(start))
    y = chart.axis("reading", "Reading ({grist_unit})", emit(top), start=emit(start))
    true = start + alt.datum.at * (top - start)

    def read(factor: Any) -> Any:
        cut = formulas.cut_from_grist(chart.own("grist", true), factor)
        return chart.shown("grist", formulas.grist_from_cut(cut, v.balance_factor))

    spread = chart.band(
        chart.rows(2, truth=true, reading=read(v.factor_low), high=read(v.factor_high))
    )
    here = chart.rows(1, truth=truth, reading=reading)
    is_over = reading > truth  # the dashed line: words stand on the other side of it
    lines = chart.plot(
        x,
        y,
        spread,
        chart.rows(2, truth=true, reading=true).mark_line(
            color=chart.INK, strokeDash=[7, 4], clip=True
        ),
        chart.rows(2, truth=true, reading=read(v.factor)).mark_line(
            color=chart.YARN, strokeWidth=3, clip=True
        ),
        chart.rows(2, truth=truth, reading=truth + alt.datum.at * (reading - truth)).mark_line(
            color=chart.PROJECT, strokeWidth=3
        ),
        here.mark_point(color=chart.YARN, **chart.HERE),
        *chart.words(
            here,
            "reads_label",
            chart.YARN,
            align=alt.ExprRef(emit(choose(is_over, "right", "left"))),
            dx=alt.ExprRef(emit(choose(is_over, -12, 12))),
            dy=alt.ExprRef(emit(choose(is_over, -12, 14))),
        ),
    )
    return chart.SheetChart(
        "reading_against_truth",
        "Reading against true grist",
        lines,
        (
            (
                "has_range",
                "A right balance would read along the dashed line. With the maker’s number yours"
                " reads along the other: a yarn of {true_grist} reads {reported!}.",
            ),
            ("is_high", "It makes yarn seem finer than it is."),
            ("is_low", "It makes yarn seem thicker than it is."),
            ("is_within", "The band reaches the dashed line, so the two may be the same."),
        ),
    )

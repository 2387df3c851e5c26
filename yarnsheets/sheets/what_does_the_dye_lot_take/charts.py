"""Charts of dyeing: stock against depth of shade, what goes in the pot, and the lots."""

from typing import Any

import altair as alt

from yarnsheets import formulas
from yarnsheets.page import chart
from yarnsheets.page.expressions import choose, emit, larger
from yarnsheets.sheets.what_does_the_dye_lot_take.sheet import DEEP, MOST_LOTS
from yarnsheets.units import convert


def charts(v: Any) -> tuple[chart.SheetChart, ...]:
    """Draw stock against depth, what goes in the pot, and the lots."""
    return stock_against_depth(v), in_the_pot(v), lots_in_pots(v)


def stock_against_depth(v: Any) -> chart.SheetChart:
    """Draw the stock that a lot takes against the depth of shade."""
    top, stock_top = alt.param(name="depth_top", value=1), alt.param(name="stock_top", value=1)
    at = alt.datum.at * top
    strength = convert(v.strength / 100, "g", "lb")
    stock = formulas.stock_volume(v.lot_fibre, chart.own("share", at), strength)
    depth = chart.shown("share", v.depth)
    here = chart.rows(1, depth=depth, stock=chart.shown("volume", v.lot_stock))
    # beside the point, off the line: below it on the right, above it on the left
    off_line = alt.ExprRef(emit(choose(depth > top * 0.5, -12, 20)))
    limit = chart.shown("share", DEEP + 0 * v.depth)
    out_of_sight = alt.ExprRef(emit(choose(limit > top, 0, 1)))
    return chart.SheetChart(
        "stock_against_depth",
        "Stock for a lot against depth",
        chart.plot(
            chart.axis("depth", "Depth of shade ({share_unit})", "depth_top"),
            chart.axis("stock", "Stock ({volume_unit})", "stock_top"),
            chart.rows(2, depth=limit, stock=alt.datum.at * stock_top).mark_line(**chart.GOAL),
            chart.rows(2, depth=at, stock=chart.shown("volume", stock)).mark_line(
                color=chart.YARN, strokeWidth=3, clip=True
            ),
            here.mark_point(color=chart.YARN, **chart.HERE),
            *chart.words(
                chart.rows(1, depth=limit, stock=stock_top + alt.datum.at * 0),
                "deep_label",
                chart.PROJECT,
                opacity=out_of_sight,
                dy=12,
                **chart.lean(limit, top),
            ),
            *chart.words(here, "stock_label", chart.YARN, dy=off_line, **chart.lean(depth, top)),
        ),
        (
            (
                None,
                "A lot of {lot_fibre@g} at a depth of {depth} takes {lot_stock} of a stock of"
                " {strength}\N{NO-BREAK SPACE}g in 100\N{NO-BREAK SPACE}mL. Twice the depth takes"
                " twice the stock.",
            ),
            (
                "is_deep",
                "Right of the dashed line, above 4%, the fibre may not take up all the dye: expect"
                " to rinse for long.",
            ),
        ),
        chart.Grip("depth", "depth", "lot_stock"),
        {
            "depth_top": depth * 1.6,
            "stock_top": chart.shown("volume", v.lot_stock * 1.8),
        },
    )


def in_the_pot(v: Any) -> chart.SheetChart:
    """Draw what goes in the pot with a lot, in grams."""
    parts = (
        ("fibre", v.lot_fibre, "fibre_label", chart.YARN),
        ("dye powder", v.lot_dye, "dye_label", chart.PROJECT),
        ("first addition", v.first_mass, "first_label", chart.INK),
        ("second addition", v.second_mass, "second_label", chart.INK),
    )
    heaviest = larger(larger(v.lot_fibre, v.first_mass), v.second_mass)
    x = chart.axis("grams", "Grams in a lot", "pot_top")
    order = alt.Y("part:N", title=None, sort=[part[0] for part in parts])
    layers = []
    for name, mass, label, colour in parts:
        bar = chart.rows(1, part=name, grams=convert(mass, "lb", "g"))
        written = chart.words(bar, label, colour, align="left", dx=6)
        layers += [bar.mark_bar(color=colour, height=20, clip=True), *written]
    return chart.SheetChart(
        "in_the_pot",
        "What goes in the pot with a lot",
        alt.LayerChart(layer=[layer.encode(x=alt.X(**x), y=order) for layer in layers]),
        (
            (
                None,
                "{lot_fibre@g} of fibre, {lot_stock} of stock with {lot_dye@g} of dye in it, and"
                " {lot_water|litre|litres} of water.",
            ),
            ("has_two", "Mix each lot’s stock of {stock_1} and {stock_2}."),
            ("has_three", "Mix each lot’s stock of {stock_1}, {stock_2} and {stock_3}."),
            (
                "has_fourth",
                "Mix each lot’s stock of {stock_1}, {stock_2}, {stock_3} and {stock_4}.",
            ),
            (
                "is_fine",
                "Do not weigh the powder for each lot: {least_dye@g} of a colour is too little for"
                " most scales. Make stock in one go and measure that.",
            ),
            (
                "is_drop",
                "{least_stock} is too little stock to measure well: make that one weaker and take"
                " more.",
            ),
            (
                "adds_both",
                "Also {first_mass@g} of {first_name} and {second_mass@g} of {second_name}.",
            ),
            ("adds_first", "Also {first_mass@g} of {first_name}."),
            ("adds_second", "Also {second_mass@g} of {second_name}."),
        ),
        reach={"pot_top": convert(heaviest, "lb", "g") * 1.4},
        left=130,
    )


def lots_in_pots(v: Any) -> chart.SheetChart:
    """Draw the weight of each lot under what the pot holds."""
    pot = chart.shown("mass", v.pot_holds)
    weight = choose(alt.datum.at <= v.lots, chart.shown("mass", v.lot_weight), 0)
    lots = chart.rows(
        MOST_LOTS, start=1, lot=alt.datum.at - 0.35, right=alt.datum.at + 0.35, weight=weight
    )
    line = chart.rows(2, lot=0.5 + alt.datum.at * v.lots, weight=pot)
    end = emit(v.lots + 0.5)
    return chart.SheetChart(
        "lots_in_pots",
        "The lots",
        chart.plot(
            chart.axis("lot", "Lot", end, start=0.5, tickMinStep=1, format="d", grid=False),
            chart.axis("weight", "Weight of a lot ({mass_unit})", "lot_top"),
            lots.transform_calculate(bottom="0")
            .mark_rect(color=chart.YARN, clip=True)
            .encode(x2="right:Q", y2="bottom:Q"),
            line.mark_line(**chart.GOAL),
            *chart.words(
                chart.rows(1, lot=0.5 + v.lots + alt.datum.at, weight=pot),
                "pot_label",
                chart.PROJECT,
                align="right",
                dx=-4,
                dy=-12,
            ),
        ),
        (
            ("is_many", "{lots} lots of {lot_weight} each, {goods} in all."),
            ("is_one", "One lot of {lot_weight}."),
            (None, "The dashed line is what a pot holds: {pot_holds}."),
            (
                "is_many",
                "Lots of one weight come out most alike; even so, hold the yarns together in"
                " daylight before you use them.",
            ),
        ),
        reach={"lot_top": pot * 1.2},
    )

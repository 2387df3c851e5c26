"""The words of the weaving sheet: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line
from yarnsheets.units import convert

ANSWER: tuple[Line, ...] = (
    (None, "The weaving takes {total_yards*}: {warp_yards} of warp and {weft_yards} of weft."),
    (
        "is_one_open",
        "Wind {ends|end|ends} of {warp_wound^}, {reed_width} wide in the reed, and weave"
        " {woven_length} with {picks|pick|picks}.",
    ),
    (
        "is_many_open",
        "Wind {ends|end|ends} of {warp_wound^}, {reed_width} wide in the reed, and weave"
        " {woven_length} for each of {pieces} pieces.",
    ),
    (
        "is_close_warp",
        "The ends may be too close: in plain weave this warp reaches about {closest_warp}; weave a"
        " sample first.",
    ),
    (
        "is_close_weft",
        "The picks may be too close: in plain weave this weft reaches about {closest_weft}; weave a"
        " sample first.",
    ),
    (
        "is_close",
        "Ends and picks may be too close: in plain weave they reach about {closest_warp} and"
        " {closest_weft}; weave a sample first.",
    ),
    (
        "has_reserve",
        "With {reserve} in reserve have {warp_stock^} of warp, {warp_weight^}, and {weft_stock^} of"
        " weft, {weft_weight^}.",
    ),
    (
        "not has_reserve",
        "With nothing in reserve, that is {warp_weight^} of warp and {weft_weight^} of weft.",
    ),
)

LABELS = {
    "loom_label": "in the reed {reed_width}, woven {woven_length}",
    "finished_label": "finished {finished_width} by {finished_length}",
    "warp_label": "warp {warp_yards}",
    "weft_label": "weft {weft_yards}",
    "total_label": "together {total_yards}",
}


def worked(measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
    """Write the arithmetic from the finished cloth to the yarn, as it is done by hand."""
    short, length = measure.units["short"], measure.units["length"]
    per_length = f"{convert(1.0, length, short):g}"
    yield (
        None,
        "Width: {finished_width:4} ÷ (1 − {width_shrinkage}) = {web_width:4} on the loom, and that"
        " ÷ (1 − {draw_in}) = {reed_width:4} in the reed.",
    )
    yield (
        "has_losses",
        "Shares divide, one after the other. Added to the width, {shares_added} in all, they would"
        " give {added_width:4} in the reed, and a cloth only {added_finish:4} wide.",
    )
    yield (
        None,
        "Ends: {reed_width:4} at {ends_per_inch:4} is {ends}, the last one counted whole.",
    )
    yield (
        None,
        "Length: {finished_length:4} ÷ (1 − {length_shrinkage}) = {woven_length:4} to weave, and"
        " that ÷ (1 − {warp_take_up}) = {piece_warp:4} of warp.",
    )
    yield (
        "not is_many",
        "Each end: {piece_warp:5} + {loom_waste:4} of loom waste = {warp_length:5}, which is"
        " {warp_wound:4}.",
    )
    yield (
        "is_many",
        "Each end: {pieces} × {piece_warp:5}, with {between:4} between two pieces and once"
        " {loom_waste:4} of loom waste, is {warp_length:5}, which is {warp_wound:4}.",
    )
    yield None, "Warp: {ends|end|ends} × {warp_wound:4} = {warp_yards:4}."
    yield (
        None,
        "Picks: {woven_length:4} at {picks_per_inch:4} is {piece_picks}, the last one counted"
        " whole.",
    )
    yield "is_many", "For {pieces} pieces that is {picks|pick|picks}."
    yield (
        "has_bubble",
        "Each pick: {reed_width:4} ÷ (1 − {weft_take_up}) = {pick_length:4}.",
    )
    yield (
        None,
        f"Weft: {{picks|pick|picks}} × {{pick_length:4}} ÷ {per_length} = {{weft_yards:4}}.",
    )
    yield None, "Together: {warp_yards:4} + {weft_yards:4} = {total_yards:4}."
    yield (
        "has_reserve",
        "With the reserve, times (1 + {reserve}): {warp_stock:4} of warp and {weft_stock:4} of"
        " weft, {total_stock:4} together.",
    )
    yield from _weights(measure, grist)
    area = "{cloth_ounces} oz to the square yard"
    if measure.units["mass"] == "g":
        area = "{cloth_grams} g to the square metre"
    yield (
        None,
        "The finished cloth has {finished_ends:4} in its warp and {finished_picks:4} in its weft,"
        f" and weighs {area}: {{piece_weight}} a piece, without its fringe.",
    )
    yield (
        None,
        "How close threads can lie in plain weave is half Ashenhurst’s diameters, 0.9 times the"
        " root of the yards per pound: {closest_warp} for the warp, {closest_weft} for the weft."
        " A twill takes a third more.",
    )


def _weights(measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
    """Write lengths into weights, in the unit in which this grist is worked by hand."""
    base = grist.base
    length, mass = choices.BASES[base]
    sign = "×" if base == "tex" else "÷"
    for name, used in (("warp", "grist"), ("weft", "weft_grist_used")):
        shown = "" if mass == measure.units["mass"] else f", which is {{{name}_weight:4}}"
        yield (
            None,
            f"Weight of the {name}: {{{name}_stock@{length}:4}} {sign} {{{used}@{base}:4}}"
            f" = {{{name}_weight@{mass}:4}}{shown}.",
        )
    yield None, "Weight together: {warp_weight:4} + {weft_weight:4} = {total_weight:4}."

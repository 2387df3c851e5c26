"""The words of the knitting sheet: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line
from yarnsheets.units import convert

ANSWER: tuple[Line, ...] = (
    ("not is_patterned", "The {outline_name} takes about {yards~*}."),
    ("is_patterned", "The {outline_name} in {stitch_name} takes about {yards~*}."),
    ("says_range", "It may be from {yards_low!~} to {yards_high~}."),
    (
        "says_odd_rows",
        "Your two gauges do not fit plain knitting well: measure both again on a washed swatch.",
    ),
    (
        "says_loose",
        "For this grist it is looser than knitting usually is: check grist and gauge, or weigh a"
        " swatch.",
    ),
    (
        "says_tight",
        "For this grist it is tighter than knitting usually is: check grist and gauge, or weigh a"
        " swatch.",
    ),
    ("is_ample", "With {reserve} in reserve have {stock^}, which weighs {weight^}."),
    (
        "is_thin",
        "With {reserve} in reserve have {stock^}, {weight^}; that would not reach {yards_high~}.",
    ),
    ("is_bare", "That weighs {weight^}, with nothing in reserve."),
)

LABELS = {
    "area_label": "{area} in all",
    "body_label": "{piece_wide} × {piece_length}",
    "across_label": "{piece_wide} across",
    "sleeve_label": "sleeves {sleeve_length} long, {sleeve_top!} down to {sleeve_cuff}",
    "here_label": "{yards}",
    "stitches_label": "stitches alone",
    "rows_label": "rows alone",
}


def worked(measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
    """Write the arithmetic from the outline to the yarn, as it is done by hand."""
    short, length = measure.units["short"], measure.units["length"]
    per_length = f"{convert(1.0, length, short):g}"
    yield from _areas()
    yield (
        "by_gauge",
        "A stitch, {state_name}: √({area_constant} ÷ ({near_stitches:4} × {near_rows:4})) ="
        " {loop:4} of yarn.",
    )
    yield "by_gauge", "Stitches if it were all plain knitting: {stitch_count}."
    yield (
        "by_gauge",
        f"Yarn for them: {{stitch_count}} × {{loop:4}} ÷ {per_length} = {{by_both:4}}.",
    )
    yield (
        "by_gauge",
        "One gauge alone has another constant: {course_constant} times the stitches gives"
        " {by_stitches:4}, {wale_constant} times the rows {by_rows:4}. They agree where there are"
        " {usual_rows} rows to a stitch; you have {own_rows}.",
    )
    yield (
        "is_patterned",
        "In {stitch_name} times {factor_low} to {factor_high} ({stitch_origin}), in the middle"
        " {yards:4}.",
    )
    yield (
        "by_swatch",
        "The swatch, {swatch_weight:4}: {swatch_width:4} × {swatch_length:4} = {swatch_area:4}.",
    )
    yield (
        "by_swatch",
        "The piece: {swatch_weight:4} × {area:4} ÷ {swatch_area:4} = {mass:4}, which is {yards:4}"
        " at {grist:4}.",
    )
    yield (
        "by_swatch",
        "That is {swatch_factor} times what plain knitting at the gauge typed here would take.",
    )
    yield (
        "has_odd_rows",
        "So far from the usual, at least one of the two gauges is doubtful.",
    )
    yield "has_doubt", "Either way {doubt} more: from {yards_low:4} to {yards_high:4}."
    yield "has_reserve", "With the reserve: {yards:4} × (1 + {reserve}) = {stock:4}."
    yield from _weight(measure, grist)
    yield (
        None,
        "Tightness factor, the root of the tex over the stitch in centimetres: {tightness}. Usual"
        " is about 9 to 19 (from memory).",
    )


def _areas() -> Iterable[Line]:
    """Write how the area of each outline comes about."""
    yield "is_rectangle", "Area: {around:4} × {piece_length:4} = {area:4}."
    yield "is_triangle", "Area: {around:4} × {piece_length:4} ÷ 2 = {area:4}."
    yield "is_circle", "Area: π ÷ 4 × {around:4} × {around:4} = {area:4}."
    yield "is_pair", "Area: two times {around:4} × {piece_length:4} = {area:4}."
    yield "has_body", "Body: {around:4} × {piece_length:4} = {body_area:4}."
    yield (
        "is_hat",
        "Crown: a circle as large around, π ÷ 4 × {disc_across:4} × {disc_across:4} ="
        " {disc_area:4}. Together {area:4}.",
    )
    yield (
        "is_pullover",
        "Two sleeves: ({sleeve_top:4} + {sleeve_cuff:4}) ÷ 2 × {sleeve_length:4}, twice, ="
        " {sleeve_area:4}. Together {area:4}.",
    )


def _weight(measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
    """Write the length into weight, in the unit in which this grist is worked by hand."""
    length, mass = choices.BASES[grist.base]
    sign = "×" if grist.base == "tex" else "÷"
    shown = "" if mass == measure.units["mass"] else ", which is {weight:4}"
    yield (
        None,
        f"Weight: {{stock@{length}:4}} {sign} {{grist@{grist.base}:4}} = {{weight@{mass}:4}}"
        f"{shown}.",
    )

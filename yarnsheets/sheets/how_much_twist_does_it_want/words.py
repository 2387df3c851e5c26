"""The words of the sheet on twist: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line
from yarnsheets.published.sources import TAKE_UP, Constant
from yarnsheets.published.twists import (
    COTTON_TO_KNIT,
    COTTON_WARP,
    COTTON_WEFT,
    MEDIUM_TWIST,
    TWIST_ANGLE,
)

ANSWER: tuple[Line, ...] = (
    ("is_usual", "For {twist} treadle {treadles_wanted:2*|time|times} to a draft of {draft}."),
    ("is_soft", "It wants at least {least:2^*}, {treadles_least:2^|treadle|treadles} to a draft."),
    ("is_hard", "It wants at most {most:2*}, {treadles_most:2|treadle|treadles} to a draft."),
    (
        "is_usual",
        "That slants the fibres on the outside of your single by {slant:2|degree|degrees}, a"
        " {tightness} twist.",
    ),
    (
        "is_soft",
        "With {twist} its outer fibres slant by {slant:2|degree|degrees}, and it may drift apart.",
    ),
    (
        "is_hard",
        "With {twist} its outer fibres slant by {slant:2|degree|degrees}, and it will be hard and"
        " kink.",
    ),
    (
        "is_likely",
        "For balance ply {plies} the other way with {balanced_low:2!} to {balanced_high:2}; with"
        " {ply_twist} the take-up is about {take_up:4}.",
    ),
    (
        "is_odd",
        "For balance ply {plies} the other way with {balanced_low:2!} to {balanced_high:2}; with"
        " {ply_twist} a take-up of {take_up:4} comes out, which spinners do not find.",
    ),
)

LABELS = {
    "slant_label": "{slant:2}°",
    "twist_label": "{twist}",
    "take_up_label": "{take_up:4}",
    "balanced_label": "balanced, {balanced_low:2!} to {balanced_high:2!}",
}


def _range(each: Constant) -> str:
    return f"{each.low:.1f} to {each.high:.1f}"


def worked(measure: choices.Measure) -> Iterable[Line]:
    """Write the arithmetic of the slant, the multipliers, the take-up and the wheel."""
    yield from _slant()
    yield from _multipliers()
    yield from _plying()
    yield from _wheel(measure)


def _slant() -> Iterable[Line]:
    yield (
        None,
        "Thickness: a kilometre of the single weighs {grist@tex:4!} g. As a round rod of"
        " {bulk_density} g/cm³ it is √(4 × {grist@tex:4!} ÷ (3.1416 × {bulk_density} × 1,000)) ="
        " {diameter:4}.",
    )
    yield (
        None,
        "Slant: 3.1416 × {diameter@mm:4!} mm × {twist@1/cm:4!|turn|turns} to the cm ÷ 10 ="
        " {tangent:4} is its tangent, so {slant|degree|degrees}.",
    )
    yield (
        None,
        f"Yarns usually have {TWIST_ANGLE.low:g} to {TWIST_ANGLE.high:g} degrees (common practice,"
        f" no source), here {{least!}} to {{most}}. Up to {MEDIUM_TWIST.low:g} a twist is called"
        f" loose, and from {MEDIUM_TWIST.high:g} tight (Emery, from memory): below {{loose_below!}}"
        " and above {tight_above} here.",
    )
    yield (
        None,
        "By its own twist the single is shorter than the strand was without: (1 + √(1 + {tangent:4}"
        " × {tangent:4})) ÷ 2 = {spun:4} is what went in for a length of 1, so {shrinkage} of it"
        " is lost.",
    )


def _multipliers() -> Iterable[Line]:
    yield (
        None,
        "Multipliers do away with the grist. Cotton: {twist@1/in:4!|turn|turns} to the inch ÷"
        " √{grist@cotton_count:4!} = {cotton:4}; worsted: ÷ √{grist@worsted_count:4!} ="
        " {worsted:4}. Metric: turns to the metre ÷ √{grist@metric_count:4!} = {metric:4}. Tex:"
        " {twist@1/cm:4!|turn|turns} to the cm × √{grist@tex:4!} = {tex_factor:4}.",
    )
    yield (
        None,
        f"For cotton, mills use multipliers of {_range(COTTON_TO_KNIT)} to knit,"
        f" {_range(COTTON_WEFT)} for weft and {_range(COTTON_WARP)} for warp, by length of"
        " staple (Klein, ranges only): {knit_low!} to {knit_high!}, {weft_low!} to {weft_high!} and"
        " {warp_low!} to {warp_high} here. They are no rule for wool.",
    )
    yield "to_knit", "Yours is in the range of cotton to knit."
    yield "to_weft", "Yours is in the range of cotton weft."
    yield "to_warp", "Yours is in the range of cotton warp."


def _plying() -> Iterable[Line]:
    yield (
        "is_two",
        "Balanced: two thirds of {twist!} is {two_thirds}; practice is 60% to 70%, {balanced_low!}"
        " to {balanced_high} (common practice, no source). The same multiplier in yarn and single"
        " would be {twist!} ÷ √{plies} = {same_multiplier}.",
    )
    yield (
        "is_many",
        "Balanced: for two singles it is two thirds of their twist, {two_thirds} (common practice,"
        " no source). {plies} singles wind around a wider circle and take less, but more than the"
        " {twist!} ÷ √{plies} = {same_multiplier} that keeps their multiplier.",
    )
    yield (
        "is_plied",
        "Winding: the middles of {plies} singles that touch lie on a circle of {circle}. At"
        " {ply_twist} they slant by {ply_slant|degree|degrees}, and that alone takes up {helix:4}.",
    )
    yield (
        "is_plied",
        "Untwisting: plying against it leaves the singles {left}, so they grow: by twist they take"
        " up {spun_after:4} in place of {spun:4}. Together {helix:4} × {spun_after:4} ÷ {spun:4} ="
        " {take_up:4}.",
    )
    yield (
        "is_plied",
        "A form for short fibres, with a logarithm, gives {staple_take_up:4}. Both are models:"
        " round singles that touch, as thick after plying as before, of {bulk_density} g/cm³. A"
        " sample of your own knows better.",
    )

    yield "is_reversed", "So much ply twist takes all the twist out of the singles, and more."
    yield (
        "is_odd",
        f"Spinners find take-ups of {TAKE_UP.low:g} to {TAKE_UP.high:g} (common practice, no"
        " source): check the grist and both twists.",
    )


def _wheel(measure: choices.Measure) -> Iterable[Line]:
    unit = "inch" if measure.units["short"] == "in" else "cm"
    yield (
        None,
        f"Wheel: {{ratio|turn|turns}} to a treadle ÷ {{twist!}} to the {unit} = {{per_treadle}} to"
        " let run in for each treadle. A draft takes {draft!} × {twist!} ÷ {ratio} ="
        " {treadles_wanted|treadle|treadles}.",
    )
    yield (
        None,
        "Counted: {treadles|treadle|treadles} × {ratio} ÷ {draft} = {counted}, less what a slipping"
        " band loses.",
    )

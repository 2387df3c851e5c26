"""The words of the sheet on twist: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line
from yarnsheets.published.sources import TAKE_UP, Constant
from yarnsheets.published.twists import COTTON_TO_KNIT, COTTON_WARP, COTTON_WEFT, TWIST_ANGLE

ANSWER: tuple[Line, ...] = (
    (
        None,
        "A twist of {twist} slants the outer fibres of your single by {slant:2} degrees.",
    ),
    (
        "is_soft",
        f"That is less than {TWIST_ANGLE.low:g} degrees, and it may drift apart: a yarn of this"
        " grist usually has at least {least}.",
    ),
    (
        "is_hard",
        f"That is more than {TWIST_ANGLE.high:g} degrees, and it will be hard and kink: a yarn of"
        " this grist usually has at most {most}. Check grist and twist.",
    ),
    (
        None,
        "Cotton of this grist gets {knit_low:2!} to {knit_high:2} from mills if it is to knit, and"
        " {warp_low:2!} to {warp_high:2} as warp.",
    ),
    (
        "is_plied",
        "Ply {plies} of them the other way with about {balanced:2} for a balanced yarn.",
    ),
    ("is_likely", "Plied {ply_twist}, the take-up is about {take_up:4}."),
    (
        "is_reversed",
        "So much ply twist takes all the twist out of the singles, and more.",
    ),
    (
        "is_odd",
        "Plied {ply_twist}, a take-up of {take_up:4} comes out, and spinners find"
        f" {TAKE_UP.low:g} to {TAKE_UP.high:g}: check grist and twists.",
    ),
    (
        None,
        "On your wheel {twist} is {treadles_wanted} treadles to a draft of {draft}; the {treadles}"
        " that you count make it {counted}.",
    ),
)

LABELS = {
    "slant_label": "{slant:2}°",
    "twist_label": "{twist}",
    "take_up_label": "{take_up:4}",
    "balanced_label": "balanced, {balanced:2!}",
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
        "Slant: 3.1416 × {diameter@mm:4!} mm × {twist@1/cm:4!} turns to the cm ÷ 10 = {tangent:4}"
        " is its tangent, so {slant} degrees.",
    )
    yield (
        None,
        f"Yarns usually have {TWIST_ANGLE.low:g} to {TWIST_ANGLE.high:g} degrees (common practice,"
        " no source), here {least!} to {most}.",
    )
    yield (
        None,
        "By its own twist the single is shorter than the strand was without: (1 + √(1 + {tangent:4}"
        " × {tangent:4})) ÷ 2 = {spun:4} times as much went in, so {shrinkage} of it is lost.",
    )


def _multipliers() -> Iterable[Line]:
    yield (
        None,
        "Multipliers do away with the grist. Cotton: {twist@1/in:4!} turns to the inch ÷"
        " √{grist@cotton_count:4!} = {cotton:4}; worsted: ÷ √{grist@worsted_count:4!} ="
        " {worsted:4}. Metric: turns to the metre ÷ √{grist@metric_count:4!} = {metric:4}. Tex:"
        " {twist@1/cm:4!} turns to the cm × √{grist@tex:4!} = {tex_factor:4}.",
    )
    yield (
        None,
        f"Cotton mills use multipliers of {_range(COTTON_TO_KNIT)} to knit,"
        f" {_range(COTTON_WEFT)} for weft and {_range(COTTON_WARP)} for warp, by length of"
        " staple (Klein, ranges only). For weft that is {weft_low!} to {weft_high} here.",
    )
    yield "to_knit", "Yours is in the range to knit."
    yield "to_weft", "Yours is in the range for weft."
    yield "to_warp", "Yours is in the range for warp."
    yield "in_no_range", "Yours is in none of them. They are no rule for other fibres."


def _plying() -> Iterable[Line]:
    yield (
        "is_plied",
        "Balanced: two thirds of {twist!} is {balanced}; practice is 60% to 70%, {balanced_low!} to"
        " {balanced_high} (common practice, no source). The same multiplier in yarn and single"
        " would be {twist!} ÷ √{plies} = {same_multiplier}.",
    )
    yield (
        "is_plied",
        "Winding: the middles of {plies} singles that touch lie on a circle of {circle}. At"
        " {ply_twist} they slant by {ply_slant} degrees, and that alone takes up {helix:4}.",
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


def _wheel(measure: choices.Measure) -> Iterable[Line]:
    unit = "inch" if measure.units["short"] == "in" else "cm"
    yield (
        None,
        f"Wheel: {{ratio}} turns to a treadle ÷ {{twist!}} to the {unit} = {{per_treadle}} to let"
        " run in for each treadle. A draft takes {draft!} × {twist!} ÷ {ratio} = {treadles_wanted}"
        " treadles.",
    )
    yield (
        None,
        "Counted: {treadles} treadles × {ratio} ÷ {draft} = {counted}, less what a slipping band"
        " loses.",
    )

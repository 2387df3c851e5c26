"""The words of the sheet on singles: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line
from yarnsheets.published.sources import HANDSPUN_BULK_DENSITY

ANSWER: tuple[Line, ...] = (
    (
        "is_too_heavy",
        "That cannot be spun: what you have is too heavy already.",
    ),
    (
        "is_too_heavy",
        "Your {in_hand_words} alone would make {in_hand_plied}, and {strand} is wanted. Take one"
        " out of the list, or ask for a heavier yarn.",
    ),
    ("is_spun", "Spin a single of {asked*}, with a cut of {asked_cut}."),
    ("is_plied", "Spin {plies} singles of {asked*}, each with a cut of {asked_cut}."),
    (
        "is_completed",
        "Beside your {in_hand_words} spin one of {asked*}, with a cut of {asked_cut}.",
    ),
    (
        "is_cabled",
        "Twist {cables} such strands together, each with a cut of {strand_cut}; the finished yarn"
        " hangs level at {yarn_cut}.",
    ),
    ("is_folded", "The finished yarn, of {grist_wanted}, hangs level at {yarn_cut}."),
    (
        "is_too_fine",
        "But that is too fine for this fibre: the finest that holds at {micron} micron is about"
        " {finest~}.",
    ),
    (
        "is_spinnable",
        "The fibre holds at that: the finest at {micron} micron is about {finest~}.",
    ),
)

LABELS = {
    "single_label": "{single}",
    "finest_label": "finest, about {finest~}",
    "least_label": "needs {least_fibres} fibres",
    "fibres_label": "{fibres:2|fibre|fibres}",
}


def worked(measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
    """Write the arithmetic from the yarn to the single, and of the fibres in it."""
    yield from _plying(grist)
    # a balance's own grist, by the units that its factor is shown in
    own = "yd/lb" if measure.units["short"] == "in" else "m/100g"
    if own != grist.unit:
        yield "not is_too_heavy", f"On the balance {{asked:4}} is {{asked@{own}:4}}."
    yield (
        "not is_too_heavy",
        f"Its cut: {{asked@{own}:4}} ÷ {{balance_factor:4}} = {{asked_cut:4}}.",
    )
    yield from _fibres()
    yield (
        None,
        "Wraps laid by hand: {wraps_low!} to {wraps_high}. The yarn is {thickness_low!} to"
        " {thickness_high} thick, if it is as airy as handspun usually is,"
        f" {HANDSPUN_BULK_DENSITY.low:g} to {HANDSPUN_BULK_DENSITY.high:g} g/cm³ (an estimate,"
        " no authority).",
    )


def _plying(grist: choices.GristUnit) -> Iterable[Line]:
    base = grist.base
    # In tex, mass per length, what multiplies a grist divides.
    times, end = ("÷ (", ")") if base == "tex" else ("× ", "")
    if base != grist.unit:
        yield (
            None,
            f"Grist: {{grist_wanted:4}} is {{grist_wanted@{base}:4}}, since {grist.reason}.",
        )
    yield (
        "is_cabled",
        f"The plied strand: {{grist_wanted@{base}:4}} {times}{{cables}} strands ×"
        f" {{cable_take_up:4}} take-up{end} = {{strand@{base}:4}}.",
    )
    yield (
        "is_plied",
        f"Each single: {{strand@{base}:4}} {times}{{plies}} singles × {{take_up:4}} take-up{end}"
        f" = {{asked@{base}:4}}.",
    )
    yield (
        "is_completed",
        "In tex, grams to the kilometre, singles add up. The strand may weigh {strand@tex:4!} g;"
        " without the take-up that is {strand@tex:4!} ÷ {take_up:4} = {side@tex:4!} g.",
    )
    yield (
        "is_completed",
        "Of that, {together@tex:4!} g is there already, in your {in_hand_words}. The rest is"
        " {side@tex:4!} − {together@tex:4!} = {asked@tex:4!} g, a single of {asked:4}.",
    )


def _fibres() -> Iterable[Line]:
    yield (
        None,
        "A kilometre of one fibre weighs 0.7854 × {micron} × {micron} × {solid_grams} ÷ 1,000 g,"
        " times 1 + {spread!} × {spread!} ÷ 10,000 because thickness varies: {fibre_tex:4} g.",
    )
    yield (
        "not is_too_heavy",
        "A kilometre of the single weighs {asked@tex:4!} g, so about {fibres:2|fibre|fibres} would"
        " lie side by side in it, and it needs {least_fibres}. Handspun needs 20 to 40 (common"
        " practice, no source).",
    )
    yield (
        "is_spinnable",
        "Fibres fall at random, so even perfect spinning leaves this single uneven by {limit}, a"
        " coefficient of variation (Martindale).",
    )
    yield (
        "has_grade",
        "Wool of {micron} micron is graded {grade} in the United States. The name once meant a"
        " single of {grade_grist}. It is no limit of spinning: by their names, fine grades would"
        " leave twice as many fibres as coarse ones.",
    )

"""The words of the sheet on a spin: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line

ANSWER: tuple[Line, ...] = (
    (
        None,
        "Buy {put_ups} × {put_up} of {bought} for {currency}\N{NO-BREAK SPACE}{cost}: the spin"
        " takes {needed}, so {left_over:2} is left over.",
    ),
    (
        "is_unsure",
        "The chance that it is enough for {project} is {chance:2}; {put_ups_sure} × {put_up}"
        " would make it at least 95%.",
    ),
    ("is_sure", "The chance that it is enough for {project} is {chance:2}."),
    ("is_certain", "It is all but certain to be enough for {project}."),
    (
        "is_raw",
        "That counts on your own {scouring_yield} of clean wool; at the {scour_low!} to"
        " {scour_high} published for {fleece_name} it takes {raw_low!} to {raw_high}.",
    ),
    ("is_outside", "Yours lies outside that: weigh a washed sample again."),
    (
        "is_plied",
        "Spin {yards_per_ply} for each of {plies} plies at {singles_grist}, where a cut is"
        " {singles_cut} on the balance; the plied yarn’s, washed, is {plied_cut}.",
    ),
    (
        "not is_plied",
        "Spin {yards_per_ply} at {singles_grist}, where a cut is {singles_cut} on the balance.",
    ),
    ("not is_one_evening", "That is {all_hours:2} hours at the wheel, {evenings} evenings,"),
    ("is_one_evening", "That is {all_hours:2} hours at the wheel, one evening,"),
    ("not is_one_bobbin", "and {bobbins} bobbins with {fibre_per_bobbin} of fibre each."),
    ("is_one_bobbin", "and one bobbin."),
)

LABELS = {
    "raw_label": "raw fleece {raw}",
    "clean_label": "washed fleece {clean}",
    "prepared_label": "prepared fibre {prepared}",
    "spun_label": "yarn {spun}",
    "yarn_label": "washed yarn {yarn}",
    "scouring_label": "grease and dirt, {scouring_loss}",
    "preparing_label": "carding or combing waste, {preparing_loss}",
    "spinning_label": "spinning and plying waste, {spinning_loss}",
    "washing_label": "lost in the wash, {washing_loss}",
    "buy_label": "{chance:2}",
    "hours_label": "{all_hours:2} hours",
}


def worked(measure: choices.Measure) -> Iterable[Line]:
    """Write the plan as it is worked by hand, a stage a line."""
    mass = "lb" if measure.units["mass"] == "oz" else measure.units["mass"]
    per_hundred = "yards" if measure.units["length"] == "yd" else "metres"
    yield None, "Yarn: {project:6} and {reserve} in reserve is {yards_planned:6}."
    yield None, f"At {{yarn_grist:6}} it weighs {{yarn@{mass}:6}}."
    yield (
        "is_shrinking",
        "Before its wash, which shortens it by {wash_shrinkage} and lightens it by {wash_loss},"
        f" that is {{yards_to_ply:6}} at {{unwashed_grist:6}}, {{spun@{mass}:6}}, and a cut of"
        " {unwashed_cut:4}.",
    )
    yield (
        None,
        "Singles: {yards_to_ply:6} × {plies} plies × {take_up_used:4} take-up ="
        " {singles_yards:6}, at {singles_grist:6}.",
    )
    yield (
        None,
        "A cut on the balance: {singles_cut:4} of single, {plied_cut:4} of washed yarn, at a"
        " factor of {balance_factor}.",
    )
    yield (
        None,
        "Prepared fibre, of which spinning and plying lose {spinning_waste}:"
        f" {{prepared@{mass}:6}}.",
    )
    yield (
        None,
        "Washed fleece, of which carding or combing loses {preparing_waste}:"
        f" {{clean@{mass}:5}}.",
    )
    yield (
        None,
        f"Raw fleece, of which {{scouring_yield}} is clean wool: {{raw@{mass}:5}}.",
    )
    yield "is_raw", "The published range is {origin}."
    yield (
        None,
        "Cost: {put_ups} × {currency}\N{NO-BREAK SPACE}{price} ="
        " {currency}\N{NO-BREAK SPACE}{cost}, for 100 "
        f"{per_hundred} {{currency}} {{cost_per_100_{per_hundred}}}.",
    )
    yield (
        None,
        "Time: {singles_yards} ÷ {spinning_speed} is {spinning_hours:4} hours, and plying takes"
        " {plying_hours:4}.",
    )
    yield (
        None,
        "Bobbins: {bobbins_per_ply} for each ply, each with {fibre_per_bobbin:4} of fibre and"
        " about {yards_per_bobbin} of single.",
    )
    yield (
        None,
        "The chance counts the doubts of grist, of yields and of the project together; the"
        " reserve may be used up.",
    )

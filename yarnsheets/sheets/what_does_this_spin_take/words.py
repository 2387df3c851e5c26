"""The words of the sheet on a spin: its answer, the labels of its charts, and its arithmetic."""

from collections.abc import Iterable

from yarnsheets.page import choices
from yarnsheets.page.sheet import Line

ANSWER: tuple[Line, ...] = (
    (
        None,
        "Buy {put_ups*} × {put_up} of {bought} for {coin}{cost}.",
    ),
    (
        "has_reserve",
        "That is for {project} and {reserve} in reserve, and leaves {left_over:2} over.",
    ),
    (
        "not has_reserve",
        "That is for {project} with nothing in reserve, and leaves {left_over:2} over.",
    ),
    ("not is_unsure", "For the {project} alone it is enough {times}."),
    (
        "is_unsure",
        "For the {project} alone it is enough {times}; {put_ups_sure} × {put_up} would"
        " make it at least 95.",
    ),
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
    "buy_label": "buy {put_ups}",
    "hours_label": "{all_hours:2|hour|hours}",
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
        "Singles: {yards_to_ply:6} × {plies|ply|plies} × {take_up_used:4} take-up ="
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
        "is_fleece",
        "Washed fleece, of which carding or combing loses {preparing_waste}:"
        f" {{clean@{mass}:5}}.",
    )
    yield (
        "is_raw",
        f"Raw fleece, of which {{scouring_yield}} is clean wool: {{raw@{mass}:5}}.",
    )
    yield "is_raw", "The published range is {origin}."
    yield (
        None,
        "Cost: {put_ups} × {coin}{price} ="
        " {coin}{cost}, for 100 "
        f"{per_hundred} {{coin}}{{cost_per_100_{per_hundred}}}.",
    )
    yield (
        None,
        "Spinning: {singles_yards:4} ÷ {spinning_speed} is {spinning_hours:4|hour|hours}.",
    )
    yield (
        "is_plied",
        "Plying: {yards_to_ply:4} ÷ {plying_speed} is {plying_hours:4|hour|hours}.",
    )
    yield (
        None,
        "Bobbins: {bobbins_per_ply} for each ply, each with {fibre_per_bobbin:4} of fibre and"
        " about {yards_per_bobbin~} of single.",
    )
    yield (
        "is_plied",
        "The plied yarn, {spun:4}, fills {plied_bobbins|bobbin|bobbins} of {bobbin_capacity} more:"
        " {all_bobbins} in all.",
    )
    yield (
        None,
        "The chance counts the doubts of grist, of yields and of the project together, and the"
        " {project:6} without the reserve, which may be used up.",
    )

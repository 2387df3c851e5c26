"""Exercises on measuring: a cut to grist, yards in a skein, the weight a project takes."""

from yarnsheets import formulas
from yarnsheets.page.text import slot
from yarnsheets.sheets.can_i_work_it_out.exercise import Exercise, Slip, Step
from yarnsheets.sheets.can_i_work_it_out.numbers import among, one_of
from yarnsheets.sheets.can_i_work_it_out.ranges import Ranges
from yarnsheets.sheets.shared.systems import System, amount, number, of_whole
from yarnsheets.sheets.shared.told import Bar


def cut_to_grist(part: list[float], ranges: Ranges) -> Exercise:
    """Ask for the grist of a cut that hangs level."""
    system = ranges.system
    cut, factor = among(part[0], *ranges.cuts), one_of(part[1], ranges.factors)
    own_cut, own_factor = cut * system.inches, factor * system.factor
    right = formulas.grist_from_cut(own_cut, own_factor)
    grist = system.yards_per_pound
    written = slot(own_cut, "short")
    slips = [
        Slip(cut * grist, "forgot the factor", "is the cut alone: the factor is still to come", 0),
        Slip(factor / cut * grist, "divided", "comes of dividing: a longer cut is a finer yarn", 1),
        Slip(
            cut / factor * grist,
            "divided",
            f"comes of dividing: every {system.short_name} stands for the factor once",
            1,
        ),
        Slip(
            right / system.parts,
            f"stopped at {system.part}",
            f"is what {system.part} of it holds, not {system.whole}",
            1,
        ),
    ]
    if system.short == "in":
        slips.append(
            Slip(right / 36, "inches as yards", "comes of turning the inches into yards first", 0)
        )
    return Exercise(
        right,
        f"A {written} cut hangs level and the balance factor is {number(factor)}: what grist?",
        f"The cut was trimmed on a yarn balance until it hung level, with a factor of"
        f" {slot(own_factor, 'factor')}.",
        [
            Step(
                f"what does each {system.short_name} of the cut stand for, on this balance?",
                f"Each {system.short_name} of the cut stands for {amount(factor, system.grist)}:"
                " that is what the factor says.",
            ),
            Step(
                f"how much do {written} make, at {amount(factor, system.grist)} for each?",
                f"{written} × {number(factor)} = {amount(cut * factor, system.grist)}.",
            ),
        ],
        slips,
        [
            Bar(
                1, f"a whole {system.lengths[:-1]}: {amount(system.short_in_length, system.short)}"
            ),
            Bar(min(1, cut / system.short_in_length), f"the cut that hangs level: {written}"),
            Bar(1, f"{system.lengths} in {system.whole}: ?"),
        ],
    )


def length_of_skein(part: list[float], ranges: Ranges) -> Exercise:
    """Ask how many yards a weight of yarn holds."""
    system = ranges.system
    grist, weight = among(part[0], *ranges.grists), among(part[1], *ranges.weights)
    own_grist, own_weight = grist * system.yards_per_pound, weight * system.pounds
    right = formulas.length(own_weight, own_grist)
    wholes = weight / system.parts
    says, weighs = slot(own_grist, "grist"), slot(own_weight, "mass")
    longest = max(1, wholes)
    return Exercise(
        right,
        f"A skein weighs {weighs} and its grist is {says}: how many {system.lengths}?",
        "The weight is without ties.",
        [
            in_wholes(weight, system),
            Step(
                f"{system.whole} holds {amount(grist, system.length)}; how many in"
                f" {of_whole(wholes, system)}?",
                f"{number(wholes)} × {amount(grist, system.length)} ="
                f" {amount(wholes * grist, system.length)}.",
            ),
        ],
        [
            Slip(
                right * system.parts,
                f"{system.part_names} as {system.wholes}",
                f"takes {system.part} for {system.whole}",
                0,
            ),
            Slip(
                grist / system.parts * system.yards,
                f"stopped at {system.part}",
                f"is what {system.part} alone holds",
                1,
            ),
            Slip(
                grist / weight * system.yards,
                "divided",
                f"comes of dividing: more weight has more {system.lengths}",
                1,
            ),
            Slip(
                grist / wholes * system.yards,
                "divided",
                f"comes of dividing: more weight has more {system.lengths}",
                1,
            ),
        ],
        [
            Bar(1 / longest, f"{system.whole}: {amount(grist, system.length)}"),
            Bar(wholes / longest, f"the skein: {weighs}"),
            Bar(1, f"{system.lengths} in the skein: ?"),
        ],
    )


def weight_for_project(part: list[float], ranges: Ranges) -> Exercise:
    """Ask what the yarn of a project weighs."""
    system = ranges.system
    project, grist = among(part[0], *ranges.projects), among(part[1], *ranges.grists)
    own_project, own_grist = project * system.yards, grist * system.yards_per_pound
    right = formulas.mass(own_project, own_grist)
    wholes = project / grist
    takes, says = slot(own_project, "length"), slot(own_grist, "grist")
    longest = max(project, grist)
    back = "comes of dividing the wrong way round"
    slips = [
        Slip(
            right / system.parts,
            f"stopped at {system.wholes}",
            f"is the number of {system.wholes}, not yet of {system.part_names}",
            1,
        ),
        Slip(grist / project * system.pounds, "the wrong way round", back, 0),
        Slip(grist / project * system.parts * system.pounds, "the wrong way round", back, 0),
        Slip(
            grist * project * system.pounds,
            "multiplied",
            f"comes of multiplying: with more {system.lengths} to the weight it takes less",
            0,
        ),
    ]
    if system.mass == "oz":
        slips.append(
            Slip(
                right / system.parts**2,
                "divided by 16",
                "comes of dividing by 16: there are more ounces than pounds",
                1,
            )
        )
    return Exercise(
        right,
        f"A project takes {takes} of a yarn of {says}: what does that weigh?",
        f"Give the weight in {system.part_names}, or with its own unit behind it.",
        [
            Step(
                f"{system.whole} holds {amount(grist, system.length)}; how many times is that in"
                f" {takes}?",
                f"{amount(project, system.length)} ÷ {number(grist)} = {of_whole(wholes, system)}.",
            ),
            Step(
                f"how many {system.part_names} are {of_whole(wholes, system)}?",
                f"{number(wholes)} × {number(system.parts)} ="
                f" {amount(wholes * system.parts, system.mass)}.",
            ),
        ],
        slips,
        [
            Bar(grist / longest, f"{system.whole}: {amount(grist, system.length)}"),
            Bar(project / longest, f"the project: {takes}"),
            Bar(1, "weight of that yarn: ?"),
        ],
    )


def in_wholes(weight: float, system: System) -> Step:
    """Turn ounces into pounds, or grams into hundreds of grams."""
    wholes, weighs = weight / system.parts, amount(weight, system.mass)
    return Step(
        f"how many {system.wholes} are {weighs}?",
        f"{weighs} ÷ {number(system.parts)} = {of_whole(wholes, system)}.",
    )

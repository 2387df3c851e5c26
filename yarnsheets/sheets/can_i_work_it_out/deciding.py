"""Exercises on deciding: whether skeins are enough, and whether a ball will last."""

import math

from yarnsheets import formulas
from yarnsheets.page.text import in_number, slot
from yarnsheets.sheets.can_i_work_it_out.exercise import TOLERANCE, Exercise, Slip, Step
from yarnsheets.sheets.can_i_work_it_out.numbers import among, one_of
from yarnsheets.sheets.can_i_work_it_out.ranges import Ranges
from yarnsheets.sheets.shared.systems import amount, number, of_whole
from yarnsheets.sheets.shared.told import Bar

SKEINS = [2, 3, 4, 5]
# What a project takes of what is there: clearly less, or clearly more.
TAKES = [0.7, 0.75, 0.8, 0.85, 1.15, 1.2, 1.3, 1.4]


def enough_or_not(part: list[float], ranges: Ranges) -> Exercise:
    """Ask what is left over of several skeins when a project is done, or missing."""
    system = ranges.system
    skeins, weight = one_of(part[0], SKEINS), among(part[1], *ranges.skeins)
    grist = among(part[2], *ranges.grists)
    one = weight / system.parts * grist
    there = skeins * one
    project = 10 * math.floor(there * one_of(part[3], TAKES) / 10)
    own_project, own_there = project * system.yards, there * system.yards
    right = (
        skeins * formulas.length(weight * system.pounds, grist * system.yards_per_pound)
        - own_project
    )
    says, takes = slot(grist * system.yards_per_pound, "grist"), slot(own_project, "length")
    weighs = slot(weight * system.pounds, "mass")
    return Exercise(
        right,
        f"{skeins} skeins of {weighs} at {says}, the project takes {takes}: enough?",
        f"Give the {system.lengths} left over; where they are missing, put a minus in front.",
        [
            Step(
                f"what does one skein hold, {of_whole(weight / system.parts, system)} of it?",
                f"{number(weight / system.parts)} × {amount(grist, system.length)} ="
                f" {amount(one, system.length)} in a skein.",
            ),
            Step(
                f"one skein holds {amount(one, system.length)}: what do {skeins} hold?",
                f"{skeins} × {amount(one, system.length)} = {amount(there, system.length)}.",
            ),
            Step(
                f"you have {amount(there, system.length)} and use {takes}: what is over?",
                f"{amount(there, system.length)} − {amount(project, system.length)} ="
                f" {amount(there - project, system.length)}.",
            ),
        ],
        [
            Slip(-right, "the wrong sign", "has its sign turned round", 2),
            Slip(
                own_there / skeins - own_project,
                "one skein only",
                f"counts one skein of the {skeins}",
                1,
            ),
            Slip(
                own_there,
                "the project not taken off",
                "is all you have: the project is still to be taken off",
                2,
            ),
            Slip(
                own_there * system.parts - own_project,
                f"{system.part_names} as {system.wholes}",
                f"takes {system.part} for {system.whole}",
                0,
            ),
        ],
        [
            Bar(1, f"the project: {takes}"),
            Bar(1, f"in {skeins} skeins of {weighs}: ?"),
        ],
        least=math.ceil(TOLERANCE * project) * system.yards,
        span=own_project,
    )


def will_it_last(part: list[float], ranges: Ranges) -> Exercise:
    """Ask how many more rows a ball makes, by what those so far have taken."""
    system = ranges.system
    done = among(part[0], 20, 2, 41)
    used, left = among(part[1], *ranges.used), among(part[2], *ranges.left)
    start = used + left
    # rows go with weight as yards do
    each = formulas.grist(done, used)
    started, is_left = slot(start * system.pounds, "mass"), slot(left * system.pounds, "mass")
    return Exercise(
        formulas.length(left, each),
        f"A ball of {started} weighs {is_left} after {number(done)} rows: how many more rows?",
        "All rows are alike, as in a scarf.",
        [
            Step(
                f"how much yarn went into the {number(done)} rows?",
                f"{amount(start, system.mass)} − {amount(left, system.mass)} ="
                f" {amount(used, system.mass)}.",
            ),
            Step(
                f"{number(done)} rows took {amount(used, system.mass)}: how many rows does"
                f" {system.part} make?",
                f"{number(done)} ÷ {number(used)} = {in_number(number(each), 'row', 'rows')} to"
                f" {system.part}.",
            ),
            Step(
                f"{system.part} makes {in_number(number(each), 'row', 'rows')}: how many do"
                f" {is_left} make?",
                f"{number(left)} × {number(each)} ="
                f" {in_number(number(left * each), 'row', 'rows')}.",
            ),
        ],
        [
            Slip(
                left * formulas.grist(done, start),
                "by the whole ball",
                "divides by the whole ball, not by what was used",
                0,
            ),
            Slip(
                start * each,
                "counted the rows made",
                "counts the rows that are made already",
                2,
            ),
            Slip(used * done / left, "the wrong way round", "has it the wrong way round", 1),
            Slip(each, f"stopped at {system.part}", f"is what {system.part} makes", 2),
        ],
        [
            Bar(1, f"the ball at first: {started}"),
            Bar(left / start, f"after {number(done)} rows: {is_left}"),
            Bar(1, "rows to come: ?"),
        ],
        least=1,
    )

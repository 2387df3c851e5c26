"""Exercises on making a yarn: its grist when it is plied, its singles, and its fleece."""

from yarnsheets import formulas
from yarnsheets.page.text import slot
from yarnsheets.sheets.can_i_work_it_out.exercise import Exercise, Slip, Step
from yarnsheets.sheets.can_i_work_it_out.numbers import among, one_of
from yarnsheets.sheets.can_i_work_it_out.ranges import Ranges
from yarnsheets.sheets.shared.systems import amount, number, percent
from yarnsheets.sheets.shared.told import Bar

PLIES = [2, 2, 3, 4]
TAKE_UPS = [1.05, 1.06, 1.07, 1.08, 1.1]  # common practice, no source
WASHING = [0.3, 0.35, 0.4, 0.45, 0.5]  # lost: within the 20 to 80 % of sources.CLEAN_WOOL
WORKING = [0.1, 0.15, 0.2, 0.25]  # carding, spinning and plying: common practice, no source


def grist_when_plied(part: list[float], ranges: Ranges) -> Exercise:
    """Ask for the grist of a plied yarn."""
    system = ranges.system
    single = among(part[0], *ranges.singles)
    plies, take_up = one_of(part[1], PLIES), one_of(part[2], TAKE_UPS)
    own = single * system.yards_per_pound
    says = slot(own, "grist")
    return Exercise(
        formulas.plied_grist(own, plies, take_up),
        f"{plies} singles of {says} are plied, take-up {number(take_up)}: what grist?",
        f"Every {system.lengths[:-1]} of the yarn holds {amount(take_up, system.length)} of each"
        " single.",
        [
            Step(
                f"what grist have {plies} such singles side by side, before any take-up?",
                f"{number(single)} ÷ {plies} = {amount(single / plies, system.grist)}.",
            ),
            Step(
                f"side by side they have {amount(single / plies, system.grist)}; the take-up"
                f" divides that by {number(take_up)}: what is left?",
                f"{number(single / plies)} ÷ {number(take_up)} ="
                f" {amount(single / plies / take_up, system.grist)}.",
            ),
        ],
        [
            Slip(own / plies, "forgot the take-up", "leaves out the take-up", 1),
            Slip(
                own / plies * take_up,
                "take-up backwards",
                "has the take-up backwards: it makes the yarn heavier for its length",
                1,
            ),
            Slip(
                own * plies,
                "multiplied",
                "is finer than its own single: plying makes a yarn thicker",
                0,
            ),
            Slip(
                own * plies * take_up,
                "multiplied",
                "is finer than its own single: plying makes a yarn thicker",
                0,
            ),
            Slip(own / take_up, "forgot the plies", "has the take-up but only one strand", 0),
        ],
        [
            Bar(1, f"{system.whole} of a single: {amount(single, system.length)}"),
            Bar(1 / plies, f"shared among {plies} strands"),
            Bar(1, f"{system.lengths} in {system.whole} when plied: ?"),
        ],
    )


def grist_of_singles(part: list[float], ranges: Ranges) -> Exercise:
    """Ask for the singles of a yarn that is wanted."""
    system = ranges.system
    wanted = among(part[0], *ranges.wanted)
    plies, take_up = one_of(part[1], PLIES), one_of(part[2], TAKE_UPS)
    own = wanted * system.yards_per_pound
    thick = "is thicker than the yarn itself: a single is finer"
    return Exercise(
        formulas.singles_grist(own, plies, take_up),
        f"A {plies}-ply of {slot(own, 'grist')} with take-up {number(take_up)}: how fine a single?",
        f"Every {system.lengths[:-1]} of the yarn holds {amount(take_up, system.length)} of each"
        " single.",
        [
            Step(
                f"without take-up, how many {system.lengths} of single do {plies} strands need for"
                f" {amount(wanted, system.length)} of yarn?",
                f"{number(wanted)} × {plies} = {amount(wanted * plies, system.grist)}.",
            ),
            Step(
                f"without take-up it is {amount(wanted * plies, system.grist)}; what is"
                f" {number(take_up)} times that?",
                f"{number(wanted * plies)} × {number(take_up)} ="
                f" {amount(wanted * plies * take_up, system.grist)}.",
            ),
        ],
        [
            Slip(own * plies, "forgot the take-up", "leaves out the take-up", 1),
            Slip(
                own * plies / take_up,
                "take-up backwards",
                "has the take-up backwards: more single goes in than yarn comes out",
                1,
            ),
            Slip(own / plies, "divided", thick, 0),
            Slip(own / plies / take_up, "divided", thick, 0),
            Slip(own * take_up, "forgot the plies", "has the take-up but only one strand", 0),
        ],
        [
            Bar(1, f"{system.whole} of the yarn: {amount(wanted, system.length)}"),
            Bar(1, f"made of {plies} strands, all as long, and the take-up"),
            Bar(1, f"{system.lengths} in {system.whole} of the single: ?"),
        ],
    )


def fleece_for_yarn(part: list[float], ranges: Ranges) -> Exercise:
    """Ask for the fleece that a weight of yarn takes, after two losses."""
    system = ranges.system
    yarn = among(part[0], *ranges.yarns)
    washing, working = one_of(part[1], WASHING), one_of(part[2], WORKING)
    washed, worked = formulas.share_left(washing), formulas.share_left(working)
    both = formulas.overall_yield([washed, worked])
    own = yarn * system.pounds
    says = slot(own, "mass")
    one = "counts one of the two losses only"
    return Exercise(
        own / both,
        f"Washing loses {percent(washing)}, carding and spinning {percent(working)}: what fleece"
        f" makes {says}?",
        f"The {percent(working)} is of the washed wool; count the fleece in {system.part_names}.",
        [
            Step(
                f"washing keeps {percent(washed)} and the rest keeps {percent(worked)} of that:"
                " what part is kept of the fleece?",
                f"{number(washed)} × {number(worked)} = {number(both)}, so {percent(both)} of the"
                " fleece ends as yarn.",
            ),
            Step(
                f"{says} is {percent(both)} of the fleece: how much is all of it?",
                f"{amount(yarn, system.mass)} ÷ {number(both)} ="
                f" {amount(yarn / both, system.mass)}.",
            ),
        ],
        [
            Slip(
                own / (1 - washing - working),
                "added the losses",
                "comes of adding the losses: the second is of what washing left",
                0,
            ),
            Slip(
                own * (1 + washing) * (1 + working),
                "added to the yarn",
                "adds the losses to the yarn: they are parts of the fleece",
                1,
            ),
            Slip(own * both, "less than the yarn", "is less than the yarn: divide instead", 1),
            Slip(own / washed, "one loss only", one, 0),
            Slip(own / worked, "one loss only", one, 0),
        ],
        [
            Bar(1, "the fleece: ?"),
            Bar(washed, f"washing leaves {percent(washed)} of it"),
            Bar(both, f"the yarn: {says}"),
        ],
    )

"""The first steps: feel what grist is, measure it, and see that yards are weight times grist."""

from yarnsheets import formulas
from yarnsheets.page.text import in_number, show, slot
from yarnsheets.sheets.shared.systems import System, amount, number, of_whole
from yarnsheets.sheets.shared.told import Bar
from yarnsheets.sheets.what_is_grist.step import (
    GUESS_FIRST,
    LACE,
    RUG,
    Step,
    bars,
    capital,
    guessed,
    reach,
    strand,
    whole,
)

_WALK = 88  # yards in a minute, at 3 miles an hour (common practice, no source)


def feel(system: System, grist: float) -> Step:
    """Tell how far a pound of a yarn reaches."""
    far = formulas.length(whole(system), grist)
    longest = max(grist, LACE)
    walk = in_number(show(far / _WALK, 2), "minute", "minutes")
    return Step(
        f"{capital(system.whole)} of this yarn is {{found_length*~}} long.",
        f"That is a walk of {walk}. {capital(system.lengths)} in {system.whole}: that is grist, and"
        f" this yarn’s is {slot(grist, 'grist')}.",
        {"found_length": far},
        [
            Bar(RUG / longest, f"{system.whole} of a rug yarn: {reach(system, RUG)}"),
            Bar(grist / longest, f"{system.whole} of this yarn: {reach(system, grist)}"),
            Bar(LACE / longest, f"{system.whole} of a lace: {reach(system, LACE)}"),
        ],
        [
            f"{capital(system.whole)} of it is {amount(far / system.yards, system.length)} long, so"
            f" its grist is {amount(grist / system.yards_per_pound, system.grist)}."
        ],
        strands=[strand(RUG, "a rug yarn"), strand(grist, "this yarn"), strand(LACE, "a lace")],
    )


def measure(system: System, cut: float, factor: float) -> Step:
    """Tell what a cut of the reader's own says."""
    grist = formulas.grist_from_cut(cut, factor)
    ruler = system.short_in_length * system.inches
    longest = max(cut, ruler)
    return Step(
        "Your cut says {found_grist*}.",
        f"{capital(system.whole)} of that yarn is {reach(system, grist)} long. The finer the yarn,"
        " the longer the cut that hangs level.",
        {"found_grist": grist},
        [
            Bar(ruler / longest, f"a whole {system.lengths[:-1]}: {slot(ruler, 'short')}"),
            Bar(cut / longest, f"your cut: {slot(cut, 'short')}"),
        ],
        [
            f"{amount(cut / system.inches, system.short)} × {number(factor / system.factor)} ="
            f" {amount(grist / system.yards_per_pound, system.grist)}."
        ],
        strands=[strand(grist, "your yarn")],
    )


def half(system: System, guess: float, *, is_shown: bool) -> Step:
    """Ask for half a pound of a yarn whose pound is 100 yards."""
    grist = 100 * system.yards_per_pound
    some = "half a pound" if system.parts == 16 else "50 g"
    return part_of_whole(
        system,
        grist,
        0.5,
        guess,
        some,
        "Half the weight is half the length, as half an hour is half the miles.",
        is_shown=is_shown,
    )


def small(system: System, guess: float, *, is_shown: bool) -> Step:
    """Ask for an ounce, or 10 g, of a usual yarn."""
    of_yard, share, some = 1200, 1 / 16, "an ounce"
    why = "A pound is 16 ounces, and 1,200 ÷ 16 = 75."
    if system.parts != 16:
        of_yard, share, some = 240, 0.1, "10 g"
        why = "100 g is ten times 10 g, and 240 ÷ 10 = 24."
    return part_of_whole(
        system, of_yard * system.yards_per_pound, share, guess, some, why, is_shown=is_shown
    )


def part_of_whole(
    system: System,
    grist: float,
    share: float,
    guess: float,
    some: str,
    why: str,
    *,
    is_shown: bool,
) -> Step:
    """Ask for the length of a part of a pound."""
    all_of_it = formulas.length(whole(system), grist)
    right = formulas.length(share * whole(system), grist)
    long = slot(all_of_it, "length")
    per = all_of_it / system.yards
    return Step(
        f"{capital(some)} is {{found_length*}} long.",
        f"{guessed(guess, right, 'length')} {why}",
        {"found_length": right},
        bars(
            [(all_of_it, f"{system.whole}: {long}")],
            f"{some}: ?",
            right,
            guess,
            slot(guess, "length"),
            is_shown=is_shown,
        ),
        [f"{amount(per, system.length)} × {number(share)} = {amount(per * share, system.length)}."],
        asks=f"{capital(system.whole)} of a yarn is {long} long: how long is {some}?",
        told=GUESS_FIRST,
        found="{found_length}",
        strands=[strand(grist, "the yarn")],
    )


def skein(system: System, grist: float, weight: float, guess: float, *, is_shown: bool) -> Step:
    """Ask for the length of the reader's own skein."""
    right = formulas.length(weight, grist)
    all_of_it = formulas.length(whole(system), grist)
    wholes = weight / whole(system)
    weighs, says = slot(weight, "mass"), slot(grist, "grist")
    per = grist / system.yards_per_pound
    return Step(
        "Your skein is {found_length*~} long.",
        f"{guessed(guess, right, 'length')} {capital(system.lengths)} are weight times grist:"
        f" {of_whole(wholes, system)} × {amount(per, system.length)}.",
        {"found_length": right, "found_grist": grist},
        bars(
            [(all_of_it, f"{system.whole}: {slot(all_of_it, 'length')}")],
            f"your skein of {weighs}: ?",
            right,
            guess,
            slot(guess, "length"),
            is_shown=is_shown,
        ),
        [
            f"{amount(weight / system.pounds, system.mass)} ÷ {number(system.parts)} ="
            f" {of_whole(wholes, system)}.",
            f"{number(wholes)} × {amount(per, system.length)} ="
            f" {amount(wholes * per, system.length)}.",
        ],
        asks=f"Your skein weighs {weighs} at {says}: how long is it?",
        told=GUESS_FIRST,
        found="{found_length}",
        strands=[strand(grist, "your yarn")],
    )

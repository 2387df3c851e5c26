"""The last steps, each with a surprise: wraps, the mean of cuts, and losses."""

from yarnsheets import formulas
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared.systems import System, amount, number, of_whole, percent
from yarnsheets.sheets.what_is_grist.step import (
    DENSITY,
    FIRM,
    GUESS_FIRST,
    WRAPS,
    Step,
    Strand,
    bars,
    guessed,
    strand,
    whole,
)

_WASHING, _WORKING = 0.4, 0.2  # lost, each of what came to it


def wraps(system: System, guess: float, *, is_shown: bool) -> Step:
    """Ask for the grist of a yarn as thick as another and half as dense."""
    firm = formulas.length(whole(system), FIRM)
    right = formulas.length(whole(system), formulas.grist_from_wraps(WRAPS, DENSITY / 2))
    thick = formulas.diameter_from_wraps(WRAPS)
    return Step(
        "{found_length*~}: twice the grist, from the same wraps.",
        f"{guessed(guess, right, 'length')} Wraps tell how thick a yarn is, and not how heavy.",
        {"found_length": right},
        bars(
            [(firm, f"{system.whole} of the firm yarn: {slot(firm, 'length')}")],
            f"{system.whole} of the airy one: ?",
            right,
            guess,
            slot(guess, "length"),
            is_shown=is_shown,
        ),
        [
            "Half as dense is half as heavy for its length: the same weight is twice as long.",
            f"2 × {amount(firm / system.yards, system.length)} ="
            f" {amount(right / system.yards, system.length)}.",
        ],
        asks=f"As thick, but half as dense: how long is {system.whole} of it?",
        told=f"A firm yarn has {slot(firm, 'length')} in {system.whole}; an airy one has the same"
        f" wraps, {slot(WRAPS, 'wraps')}. {GUESS_FIRST}",
        found="{found_length}",
        strands=[Strand(thick, 1, "the firm yarn"), Strand(thick, 0.5, "the airy one")],
    )


def mean(system: System, guess: float, *, is_shown: bool) -> Step:
    """Ask for the grist of a yarn whose two halves differ."""
    short, long, factor = (8, 12, 100) if system.parts == 16 else (20, 30, 10)
    thick, thin = short * factor, long * factor
    # of 100 in each half; in the units of the system
    weighs = formulas.mass(100, thick) + formulas.mass(100, thin)
    together = formulas.grist(200, weighs)
    right = together * system.yards
    cut_of = [slot(each * system.inches, "short") for each in (short, long)]
    of_mean = amount((thick + thin) / 2, system.length)
    return Step(
        f"{{found_length*}}, and not the {of_mean} of the mean cut.",
        f"{guessed(guess, right, 'length')} The thick half weighs more, so it counts for more.",
        {"found_length": right},
        bars(
            [
                (thick * system.yards, f"a thick yarn: {amount(thick, system.length)}"),
                (thin * system.yards, f"a thin yarn: {amount(thin, system.length)}"),
            ],
            f"half the length of each, {system.whole} of it: ?",
            right,
            guess,
            slot(guess, "length"),
            is_shown=is_shown,
        ),
        [
            f"100 {system.lengths} of each weigh 100 ÷ {number(thick)} + 100 ÷ {number(thin)} ="
            f" {of_whole(weighs, system)}.",
            f"Both are 200 {system.lengths}: 200 ÷ {number(weighs)} ="
            f" {amount(together, system.length)} in {system.whole}.",
        ],
        asks=f"Half the length cuts at {cut_of[0]}, half at {cut_of[1]}: {system.lengths} in"
        f" {system.whole}?",
        told=f"By the balance, {system.whole} of the thick half is {amount(thick, system.length)},"
        f" of the thin {amount(thin, system.length)}. {GUESS_FIRST}",
        found="{found_length}",
        strands=[
            strand(thick * system.yards_per_pound, "the thick half"),
            strand(thin * system.yards_per_pound, "the thin half"),
        ],
    )


def losses(guess: float, *, is_shown: bool) -> Step:
    """Ask for the part of a fleece that two losses leave."""
    washed, worked = formulas.share_left(_WASHING), formulas.share_left(_WORKING)
    right = formulas.overall_yield([washed, worked])
    return Step(
        f"{{found_share*}} becomes yarn, and not {percent(1 - _WASHING - _WORKING)}.",
        f"{guessed(guess, right, 'share')} The second loss is of what the first left, so parts"
        " multiply.",
        {"found_share": right},
        bars(
            [(1, "the fleece"), (washed, f"washing leaves {percent(washed)}")],
            "the yarn: ?",
            right,
            guess,
            slot(guess, "share"),
            is_shown=is_shown,
        ),
        [f"{number(washed)} × {number(worked)} = {number(right)}."],
        asks=f"Washing loses {percent(_WASHING)}, carding and spinning {percent(_WORKING)}: what"
        " part becomes yarn?",
        told=f"The {percent(_WORKING)} is of the washed wool. {GUESS_FIRST}",
        found="{found_share}",
    )

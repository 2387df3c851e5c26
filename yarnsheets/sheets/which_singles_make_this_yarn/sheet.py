"""Which singles make the yarn that is wanted, and whether the fibre can be spun so fine."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Readings
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.published.fineness import FIBRE_DENSITIES, LEAST_HANDSPUN, wool_grade
from yarnsheets.published.sources import HANDSPUN_BULK_DENSITY, WORSTED_HANK
from yarnsheets.sheets.shared import cutting, plying
from yarnsheets.sheets.shared.density import in_own_units
from yarnsheets.sheets.which_singles_make_this_yarn import words
from yarnsheets.units import convert

_SOLID = {name: density.value for name, density in FIBRE_DENSITIES.items()}

# A part of the yarn’s weight so small that no single is left to spin.
_NO_ROOM = 1e-9


class WhichSinglesMakeThisYarn(Sheet):
    r"""From the yarn wanted back to the singles, and the cut that each shows on the balance.

    Examples
    --------
    >>> sheet = WhichSinglesMakeThisYarn(grist_wanted=1000, plies=2, take_up=1.03)
    >>> round(sheet.asked, 6), round(sheet.asked_cut, 6)
    (2060.0, 20.6)
    >>> sheet.sentence.split(", each")[0]
    'Spin 2 singles of 2,060\xa0yd/lb'
    """

    question = "Which singles make this yarn?"
    onward = (
        Onward("how-much-twist-does-it-want", {"grist": "asked", "plies": "plies"}),
        Onward(
            "what-does-this-spin-take",
            {"grist_wanted": "grist_wanted", "plies": "plies", "take_up": "take_up"},
        ),
        Onward(
            "how-many-yards",
            {"grist": "asked", "plies": "plies", "take_up": "take_up"},
        ),
        Onward(
            "is-my-grist-drifting",
            {"target": "asked", "balance_factor": "balance_factor", "take_up": "take_up"},
        ),
    )

    grist_wanted = Input(
        "Grist of the yarn wanted",
        "grist",
        1000,
        low=50,
        high=100000,
        measure="Of the finished yarn: from a pattern, a ball band, or a yarn you like and have"
        " measured.",
    )
    plies = Input(
        "Singles plied together",
        "number",
        2,
        low=1,
        high=6,
        step=1,
        measure="1 for a single used as it is.",
    )
    take_up = plying.take_up(1.03)
    balance_factor = cutting.balance_factor()
    micron = Input(
        "Thickness of the fibre, in micron",
        "number",
        24,
        low=8,
        high=60,
        step=0.1,
        measure="From the fleece’s test or the seller: merino is often 18 to 22, Romney 32 to 38"
        " (from memory). A micron is a thousandth of a millimetre.",
    )

    in_stock = Group("Singles in hand, and cables", folded=True)
    in_hand = Readings(
        "Singles you already have",
        "grist",
        [],
        low=50,
        high=300000,
        measure="The grist of each single that goes into the yarn, one a line: the answer is then"
        " the one that is missing. Leave it empty for equal singles.",
    )
    cables = Input(
        "Plied strands twisted together again",
        "number",
        1,
        low=1,
        high=4,
        step=1,
        measure="1 for a plain plied yarn. A cabled yarn twists 2 to 4 plied strands together.",
    )
    cable_take_up = Input(
        "Take-up in cabling",
        "number",
        1.03,
        low=0.98,
        high=1.15,
        step=0.005,
        measure="Length of plied strand that goes into the same length of cabled yarn.",
        percent=plying.which_percentage("strand"),
    )

    the_fibre = Group("The fibre", folded=True)
    spread = Input(
        "The fibres’ thickness varies by",
        "share",
        0.22,
        low=0,
        high=0.6,
        step=0.01,
        measure="The coefficient of variation on the fleece’s test: the standard deviation over the"
        " mean. Wool is often 20% to 25% (from memory).",
    )
    least_fibres = Input(
        "Fewest fibres in the section",
        "number",
        LEAST_HANDSPUN.value,
        low=10,
        high=120,
        step=1,
        measure="How many fibres side by side your finest single still needs. Handspun 20 to 40"
        " (common practice, no source); combed cotton spun on rings in a mill 33 (Klein).",
    )
    fibre = Pick(
        "Fibre",
        {name: f"{name}, solid {density:g} g/cm³" for name, density in _SOLID.items()},
        measure="A denser fibre of the same thickness weighs more, so fewer make the same grist.",
    )

    folded = Found("number", "singles in a strand, one more than those there are")
    is_equal = Found("flag", "all singles are to be spun, and equal")
    solid_grams = Found("number", "density of the solid fibre, in g/cm3")
    in_hand_words = Found("word", "they, in words")
    together = Found("grist", "grist of them all side by side")
    has_grade = Found("flag", "the wool is in a grade")
    grade = Found("word", "the grade's name")
    grade_grist = Found("grist", "grist of the single that the name once meant")

    is_too_heavy = Found("flag", "the singles there are leave no weight for another")
    is_completed = Found("flag", "one more single completes the yarn")
    is_spun = Found("flag", "the strand is one single as it is")
    is_plied = Found("flag", "equal singles are plied")
    is_cabled = Found("flag", "plied strands are twisted again")
    is_folded = Found("flag", "there is a plied yarn, and it is not cabled")
    is_too_fine = Found("flag", "the single is finer than the fibre is likely to spin")
    is_spinnable = Found("flag", "the single has fibres enough")
    strand = Found("grist", "grist of the plied strand")
    side = Found("grist", "grist of the strand's singles side by side, before they are taken up")
    in_hand_plied = Found("grist", "grist that the singles there are fold to, with their take-up")
    single = Found("grist", "grist of each of equal singles")
    asked = Found("grist", "grist of the single asked for: the missing one, or each of equal ones")
    asked_cut = Found("short", "its cut on the balance")
    strand_cut = Found("short", "cut of the plied strand")
    yarn_cut = Found("short", "cut of the finished yarn")
    fibre_mass = Found("number", "pounds to a yard of one fibre")
    fibre_tex = Found("number", "grams to a kilometre of one fibre: its tex")
    fibres = Found("number", "fibres in the section of the single asked for")
    finest = Found("grist", "finest single that the fibre is likely to spin")
    thickness_low = Found("thickness", "thickness of the yarn, if dense for handspun")
    thickness_high = Found("thickness", "thickness of the yarn, if airy for handspun")
    wraps_low = Found("wraps", "wraps of the yarn, if airy for handspun")
    wraps_high = Found("wraps", "wraps of the yarn, if dense for handspun")
    limit = Found("share", "unevenness that the best spinning of the single would leave")

    answer = words.ANSWER
    labels: ClassVar = words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Work from the yarn back to its singles, and count the fibres in the one asked for."""
        count = len(self.in_hand)
        has_hand = count > 0
        folded = count + 1 if has_hand else self.plies
        take_up = self.take_up if folded > 1 else 1
        cable_take_up = self.cable_take_up if self.cables > 1 else 1
        strand = formulas.singles_grist(self.grist_wanted, self.cables, cable_take_up)
        single = formulas.singles_grist(strand, folded, take_up)
        together = math.nan
        if has_hand:
            together = formulas.plied_grist_unequal(self.in_hand, [1.0 for _ in self.in_hand])
        in_hand_plied = formulas.plied_grist(together, 1, take_up)
        is_completed = has_hand and in_hand_plied > strand * (1 + _NO_ROOM)
        is_too_heavy = has_hand and not is_completed
        asked = single
        if is_completed:
            asked = formulas.missing_single_grist(strand, [together], [take_up], take_up)
        dense = in_own_units(HANDSPUN_BULK_DENSITY.high)
        airy = in_own_units(HANDSPUN_BULK_DENSITY.low)
        return {
            "in_hand_words": "single" if count == 1 else f"{count} singles",
            "together": together,
            "in_hand_plied": in_hand_plied,
            "is_too_heavy": is_too_heavy,
            "is_completed": is_completed,
            "folded": folded,
            "is_equal": not has_hand,
            "is_spun": folded <= 1,
            "is_plied": not has_hand and folded > 1,
            "is_cabled": self.cables > 1 and not is_too_heavy,
            "is_folded": self.cables <= 1 and (is_completed if has_hand else folded > 1),
            "strand": strand,
            "side": formulas.singles_grist(strand, 1, take_up),
            "single": single,
            "asked": asked,
            "asked_cut": formulas.cut_from_grist(asked, self.balance_factor),
            "strand_cut": formulas.cut_from_grist(strand, self.balance_factor),
            "yarn_cut": formulas.cut_from_grist(self.grist_wanted, self.balance_factor),
            "thickness_low": formulas.diameter_from_grist(self.grist_wanted, dense),
            "thickness_high": formulas.diameter_from_grist(self.grist_wanted, airy),
            "wraps_low": formulas.wraps_per_inch_from_grist(self.grist_wanted, airy),
            "wraps_high": formulas.wraps_per_inch_from_grist(self.grist_wanted, dense),
            **self._fibres(asked, is_too_heavy=is_too_heavy),
        }

    def unused(self) -> list[str]:
        """Name the plies where singles are listed, and the take-ups where nothing is twisted."""
        names: list[str] = []
        if len(self.in_hand) > 0:
            names = [*names, "plies"]
        elif self.plies <= 1:
            names = [*names, "take_up"]
        if self.cables <= 1:
            names = [*names, "cable_take_up"]
        return names

    def _fibres(self, asked: float, *, is_too_heavy: bool) -> dict[str, Any]:
        """Count the fibres in the section of the single asked for, and grade the wool."""
        solid_grams = _SOLID[self.fibre]
        fibre_mass = formulas.fibre_linear_density(
            convert(self.micron, "micron", "in"),
            in_own_units(solid_grams),
            self.spread,
        )
        fibres = formulas.fibres_in_section(asked, fibre_mass)
        is_enough = fibres >= self.least_fibres
        grade = wool_grade(self.micron)
        return {
            "solid_grams": solid_grams,
            "fibre_mass": fibre_mass,
            "fibre_tex": convert(fibre_mass, "lb/yd", "tex"),
            "fibres": fibres,
            "finest": formulas.finest_grist(self.least_fibres, fibre_mass),
            "is_too_fine": not is_enough and not is_too_heavy,
            "is_spinnable": is_enough and not is_too_heavy,
            "limit": formulas.limit_irregularity(fibres, self.spread),
            "has_grade": grade is not None and self.fibre == "wool",
            "grade": grade.name if grade else "",
            "grade_grist": grade.count * WORSTED_HANK.value if grade else math.nan,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic from the yarn to the single, and of the fibres in it."""
        return words.worked(measure, grist)

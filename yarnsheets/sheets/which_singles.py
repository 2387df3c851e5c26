"""Which singles make the yarn that is wanted, and whether the fibre can be spun so fine."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import singles_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.fineness import FIBRE_DENSITIES, LEAST_HANDSPUN, wool_grade
from yarnsheets.sheets import choices, plying, singles_words
from yarnsheets.sheets.inputs import Input, Number, Pick, Readings, Result
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.sources import HANDSPUN_BULK_DENSITY, WORSTED_HANK
from yarnsheets.units import convert


class WhichSingles(Sheet):
    r"""From the yarn wanted back to the singles, and the cut that each shows on the balance.

    Examples
    --------
    >>> sheet = WhichSingles(grist_wanted=1000, plies=2, take_up=1.03, balance_factor=100)
    >>> round(sheet.asked, 6), round(sheet.asked_cut, 6)
    (2060.0, 20.6)
    >>> sheet.sentence.split(": a cut")[0]
    'Spin 2 singles of 2,060\xa0yd/lb each'
    """

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
        measure="1 for a single used as it is. Not used if you list singles you already have.",
    )
    take_up = plying.take_up(1.03, "Not used for one single.")
    balance_factor = Input(
        "Balance factor",
        "factor",
        100,
        low=5,
        high=5000,
        measure="The maker’s number: length of cut times this is grist. Often 100.",
    )
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
    in_hand = Readings(
        "Singles you already have",
        "grist",
        [],
        low=50,
        high=300000,
        more=True,
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
        more=True,
        measure="1 for a plain plied yarn. A cabled yarn twists 2 to 4 plied strands together.",
    )
    cable_take_up = Input(
        "Take-up in cabling",
        "number",
        1.03,
        low=0.98,
        high=1.15,
        step=0.005,
        more=True,
        measure="Yards of plied strand that go into one yard of cabled yarn. Not used for a plain"
        " plied yarn.",
        percent=plying.which_percentage("strand"),
    )
    spread = Input(
        "The fibres’ thickness varies by",
        "share",
        0.22,
        low=0,
        high=0.6,
        step=0.01,
        more=True,
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
        more=True,
        measure="How many fibres side by side your finest single still needs. Handspun 20 to 40"
        " (common practice, no source); combed cotton spun on rings in a mill 33 (Klein).",
    )
    fibre = Pick(
        "Fibre",
        {
            name: f"{name}, solid {density.value:g} g/cm³"
            for name, density in FIBRE_DENSITIES.items()
        },
        measure="A denser fibre of the same thickness weighs more, so fewer make the same grist.",
        more=True,
    )

    solid = Result("number", "density of the solid fibre, in pounds to a yard one inch square")
    solid_grams = Result("number", "density of the solid fibre, in g/cm3")
    has_hand = Result("flag", "there are singles already")
    in_hand_count = Result("number", "how many singles there are already")
    in_hand_words = Result("word", "they, in words")
    together = Result("grist", "grist of them all side by side")
    has_grade = Result("flag", "the wool is in a grade")
    grade = Result("word", "the grade's name")
    grade_grist = Result("grist", "grist of the single that the name once meant")

    is_too_heavy = Number("flag", "the singles there are leave no weight for another")
    is_possible = Number("flag", "there is a single that makes the yarn")
    is_completed = Number("flag", "one more single completes the yarn")
    is_spun = Number("flag", "the strand is one single as it is")
    is_plied = Number("flag", "equal singles are plied")
    is_cabled = Number("flag", "plied strands are twisted again")
    is_made = Number("flag", "there is a yarn, and it is not a bare single")
    is_too_fine = Number("flag", "the single is finer than the fibre is likely to spin")
    is_spinnable = Number("flag", "the single has fibres enough")
    strand = Number("grist", "grist of the plied strand")
    side = Number("grist", "grist of the strand's singles side by side, before they are taken up")
    in_hand_plied = Number("grist", "grist that the singles there are fold to, with their take-up")
    single = Number("grist", "grist of each of equal singles")
    asked = Number("grist", "grist of the single asked for: the missing one, or each of equal ones")
    asked_cut = Number("short", "its cut on the balance")
    strand_cut = Number("short", "cut of the plied strand")
    yarn_cut = Number("short", "cut of the finished yarn")
    fibre_mass = Number("number", "pounds to a yard of one fibre")
    fibre_tex = Number("number", "grams to a kilometre of one fibre: its tex")
    fibres = Number("number", "fibres in the section of the single asked for")
    finest = Number("grist", "finest single that the fibre is likely to spin")
    thickness_low = Number("thickness", "thickness of the yarn, if dense for handspun")
    thickness_high = Number("thickness", "thickness of the yarn, if airy for handspun")
    wraps_low = Number("wraps", "wraps of the yarn, if airy for handspun")
    wraps_high = Number("wraps", "wraps of the yarn, if dense for handspun")
    limit = Number("share", "unevenness that the best spinning of the single would leave")

    answer = singles_words.ANSWER
    labels: ClassVar = singles_words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Look up the fibre's density and grade, and fold the singles there are."""
        solid, grade = FIBRE_DENSITIES[self.fibre].value, wool_grade(self.micron)
        count = len(self.in_hand)
        alone = [1.0] * count
        return {
            "solid": singles_charts.in_own_units(solid),
            "solid_grams": solid,
            "has_hand": count > 0,
            "in_hand_count": count,
            "in_hand_words": "single" if count == 1 else f"{count} singles",
            "together": formulas.plied_grist_unequal(self.in_hand, alone) if count else math.nan,
            "has_grade": grade is not None and self.fibre == "wool",
            "grade": grade.name if grade else "",
            "grade_grist": grade.count * WORSTED_HANK.value if grade else math.nan,
        }

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs."""
        take_up = choose(v.has_hand, v.take_up, choose(v.plies > 1, v.take_up, 1))
        cable_take_up = choose(v.cables > 1, v.cable_take_up, 1)
        strand = formulas.singles_grist(v.grist_wanted, v.cables, cable_take_up)
        single = formulas.singles_grist(strand, v.plies, choose(v.plies > 1, v.take_up, 1))
        in_hand_plied = formulas.plied_grist(v.together, 1, take_up)
        is_completed = choose(v.has_hand, in_hand_plied > strand, 0)
        # where the singles there are weigh just as much as the yarn, none can be missing
        room = choose(is_completed, v.together, strand * take_up * 2)
        missing = formulas.missing_single_grist(strand, [room], [take_up], take_up)
        asked = choose(is_completed, missing, single)
        is_too_heavy = choose(v.has_hand, in_hand_plied <= strand, 0)
        fibre_mass = formulas.fibre_linear_density(
            convert(v.micron, "micron", "in"), v.solid, v.spread
        )
        fibres = formulas.fibres_in_section(asked, fibre_mass)
        dense, airy = (
            singles_charts.in_own_units(grams)
            for grams in (HANDSPUN_BULK_DENSITY.high, HANDSPUN_BULK_DENSITY.low)
        )
        return {
            "is_too_heavy": is_too_heavy,
            "is_possible": choose(is_too_heavy, 0, 1),
            "is_completed": is_completed,
            "is_spun": choose(v.has_hand, 0, v.plies <= 1),
            "is_plied": choose(v.has_hand, 0, v.plies > 1),
            "is_cabled": choose(is_too_heavy, 0, v.cables > 1),
            "is_made": choose(v.has_hand, is_completed, choose(v.cables > 1, 1, v.plies > 1)),
            "is_too_fine": choose(is_too_heavy, 0, fibres < v.least_fibres),
            "is_spinnable": choose(is_too_heavy, 0, fibres >= v.least_fibres),
            "strand": strand,
            "side": formulas.singles_grist(strand, 1, take_up),
            "in_hand_plied": in_hand_plied,
            "single": single,
            "asked": asked,
            "asked_cut": formulas.cut_from_grist(asked, v.balance_factor),
            "strand_cut": formulas.cut_from_grist(strand, v.balance_factor),
            "yarn_cut": formulas.cut_from_grist(v.grist_wanted, v.balance_factor),
            "fibre_mass": fibre_mass,
            "fibre_tex": fibre_mass * convert(1.0, "lb/yd", "tex"),
            "fibres": fibres,
            "finest": formulas.finest_grist(v.least_fibres, fibre_mass),
            "thickness_low": formulas.diameter_from_grist(v.grist_wanted, dense),
            "thickness_high": formulas.diameter_from_grist(v.grist_wanted, airy),
            "wraps_low": formulas.wraps_per_inch_from_grist(v.grist_wanted, airy),
            "wraps_high": formulas.wraps_per_inch_from_grist(v.grist_wanted, dense),
            "limit": formulas.limit_irregularity(fibres, v.spread),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic from the yarn to the single, and of the fibres in it."""
        return singles_words.worked(measure, grist)

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the singles against plies, and the fibres in the section against grist."""
        return (singles_charts.singles_against_plies(v), singles_charts.fibres_in_section(v))

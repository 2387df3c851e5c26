"""What wraps to the inch tell of a yarn's grist, and what they cannot."""

import math
from collections.abc import Collection, Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates import unlikely_wraps
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.page.text import slot
from yarnsheets.published.sources import (
    ASHENHURST_FIRM_1999,
    ASHENHURST_SOFT_1999,
    BULK_DENSITY,
    COTTON_DENSITY,
    FLAX_DENSITY,
    HANDSPUN_BULK_DENSITY,
    NYLON_DENSITY,
    SILK_DENSITY,
    WOOL_DENSITY,
)
from yarnsheets.published.yarn_weights import YARN_WEIGHTS, categories
from yarnsheets.sheets.shared import grists
from yarnsheets.sheets.shared.density import in_grams, in_own_units

# Density of the solid fibre, in g/cm3.
_SOLID = {
    "wool": WOOL_DENSITY.value,
    "silk": SILK_DENSITY.value,
    "cotton": COTTON_DENSITY.value,
    "flax": FLAX_DENSITY.value,
    "nylon": NYLON_DENSITY.value,
}

# Wraps of a yarn of twice the grist, of those it had: the same at any one bulk density.
_DOUBLED = formulas.wraps_per_inch_from_grist(2.0, 1.0) / formulas.wraps_per_inch_from_grist(
    1.0, 1.0
)


class WhatDoWrapsTellOfGrist(Sheet):
    """The wide range of grist that wraps leave open, and what a measured grist adds to them.

    Examples
    --------
    >>> sheet = WhatDoWrapsTellOfGrist(wraps=24, covered=2, grist=1000)
    >>> round(sheet.usual_low), round(sheet.usual_high), round(sheet.density, 3)
    (352, 1175, 0.141)
    """

    question = "What do wraps tell of grist?"
    onward = (
        Onward("how-many-yards", {"grist": "measured_grist"}),
        Onward("what-does-weaving-take", {"grist": "measured_grist"}),
    )

    wraps = Input(
        "Wraps counted",
        "number",
        24,
        low=2,
        high=400,
        step=0.5,
        measure="Lay the yarn round a ruler, turns touching, neither stretched nor pressed, and"
        " count them.",
        drawing="wraps",
    )
    covered = Input(
        "Width they cover",
        "short",
        2,
        low=0.25,
        high=12,
        measure="Three fingers’ width or more evens out thick and thin.",
    )
    known = Pick(
        "Is the grist measured?",
        {"measured": "Yes, by cut or weighed skein", "unknown": "No, I have wraps alone"},
        measure="Wraps give a thickness. Only weighing a known length gives a grist.",
    )
    grist = grists.asked(
        "Grist, if measured",
        1000,
        "The length of a cut on the balance times its factor, or yards over pounds of a skein.",
    )
    stitches = Readings(
        "Stitches to 4 inches (10 cm)",
        "number",
        [24],
        low=1,
        high=100,
        measure="Of a swatch in stockinette, for its category; several counts are averaged. Leave"
        " it empty if there is no swatch.",
    )

    finer_points = Group("Finer points", folded=True)
    fibre = Pick(
        "Fibre",
        {name: f"{name}, solid {density:g} g/cm³" for name, density in _SOLID.items()},
        measure="A yarn without any air in it would be as dense as its fibre: nothing is denser.",
    )

    has_grist = Found("flag", "the grist is measured")
    has_category = Found("flag", "the swatch is in a category")
    has_no_category = Found("flag", "the swatch is finer than any category")
    is_airy = Found("flag", "the yarn is airier than handspun usually is")
    is_usual = Found("flag", "it is as dense as handspun usually is")
    is_dense = Found("flag", "it is denser than handspun usually is, and can be")
    is_impossible = Found("flag", "it is denser than solid fibre")
    wraps_per_inch = Found("wraps", "wraps to the inch, laid by hand")
    diameter = Found("short", "thickness of the yarn as wrapped")
    usual_low = Found("grist", "low end of what handspun of these wraps usually is")
    usual_high = Found("grist", "high end of it")
    possible_low = Found("grist", "grist of solid fibre with these wraps")
    possible_high = Found("grist", "grist of the airiest yarn with these wraps")
    measured_grist = Found("grist", "the grist, if it is measured and can be of this yarn")
    airy_grist = Found("grist", "grist of a yarn of these wraps that is airy for handspun")
    dense_grist = Found("grist", "grist of one that is dense for handspun")
    density = Found("number", "bulk density that wraps and grist mean, in g/cm3")
    solid = Found("number", "density of the solid fibre, in pounds to a yard one inch square")
    solid_grams = Found("number", "density of the solid fibre, in g/cm3")
    most_wraps = Found("wraps", "wraps to the inch that solid fibre of this grist would make")
    cloth_soft = Found("wraps", "Ashenhurst's diameters to the inch in cloth, soft woollen")
    cloth_firm = Found("wraps", "Ashenhurst's diameters to the inch in cloth, firm worsted")
    doubled_wraps = Found("wraps", "wraps to the inch of a yarn of twice the grist")
    wraps_ratio = Found("number", "its wraps, of these")
    diameter_ratio = Found("number", "its diameter, of this one's")
    stitch_count = Found("number", "stitches to 4 inches, averaged")
    category = Found("word", "the categories whose bands take the stitches in, in words")

    bands = Table("the gauge of each category, and whether the swatch is in it")
    swatch = Table("the stitches of the swatch")

    answer = (
        (None, "{wraps_per_inch} usually means a grist of {usual_low~!} to {usual_high~*}."),
        ("is_airy", "Yours, of {grist~}, is airier than most handspun."),
        ("is_usual", "Yours, of {grist~}, is as airy as handspun usually is."),
        ("is_dense", "Yours, of {grist~}, is denser than most handspun."),
        (
            "not has_grist",
            "Only weighing a known length narrows that: wrapping with care does not.",
        ),
        ("has_category", "By its gauge it is {category}."),
        ("has_no_category", "By its gauge it is finer than any category."),
    )
    labels: ClassVar = {
        "solid_label": "{solid_grams} solid {fibre}",
        "impossible_label": "impossible",
        "wraps_label": "wraps × {wraps_ratio:4}",
        "diameter_label": "thickness × {diameter_ratio:4}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the range that wraps leave open, how airy the yarn is, and its category."""
        has_grist = self.known == "measured"
        wraps = formulas.wraps_per_inch(self.wraps, self.covered)
        density = in_grams(formulas.bulk_density_from_wraps(wraps, self.grist))
        airy, dense = HANDSPUN_BULK_DENSITY.low, HANDSPUN_BULK_DENSITY.high
        solid = _SOLID[self.fibre]
        usual_low = formulas.grist_from_wraps(wraps, in_own_units(dense))
        usual_high = formulas.grist_from_wraps(wraps, in_own_units(airy))
        warnings = self._unlikely(wraps, density)
        return {
            "has_grist": has_grist,
            "is_airy": has_grist and density < airy,
            "is_usual": has_grist and airy <= density <= dense,
            "is_dense": has_grist and dense < density <= solid,
            "is_impossible": has_grist and density > solid,
            "wraps_per_inch": wraps,
            "diameter": formulas.diameter_from_wraps(wraps),
            "usual_low": usual_low,
            "usual_high": usual_high,
            "measured_grist": self.grist if has_grist and not warnings else math.nan,
            "airy_grist": usual_high,
            "dense_grist": usual_low,
            "possible_low": formulas.grist_from_wraps(wraps, in_own_units(solid)),
            "possible_high": formulas.grist_from_wraps(wraps, in_own_units(BULK_DENSITY.low)),
            "density": density,
            "solid": in_own_units(solid),
            "solid_grams": solid,
            "most_wraps": formulas.wraps_per_inch_from_grist(self.grist, in_own_units(solid)),
            "cloth_soft": formulas.ashenhurst_diameters(self.grist, ASHENHURST_SOFT_1999.value),
            "cloth_firm": formulas.ashenhurst_diameters(self.grist, ASHENHURST_FIRM_1999.value),
            "doubled_wraps": wraps * _DOUBLED,
            "wraps_ratio": _DOUBLED,
            "diameter_ratio": 1 / _DOUBLED,
            "warnings": warnings,
        } | self._gauge()

    def unused(self) -> list[str]:
        """Name the grist, where it is not measured."""
        return ["grist"] if self.known == "unknown" else []

    def _unlikely(self, wraps: float, density: float) -> list[str]:
        """Say what is probably wrong, if the numbers cannot be, or can hardly be, of one yarn."""
        if odd := unlikely_wraps(wraps, slot):
            return [odd]
        if self.known == "unknown":
            return []
        if density > _SOLID[self.fibre]:
            return [
                "That cannot be: these wraps at this grist would make a yarn of {density:4} g/cm³,"
                " denser than {fibre} without any air in it, {solid_grams}. Probably the yarn was"
                " pressed or stretched on the ruler, or the grist is in another unit. Wrap it again"
                " with the turns just touching, and measure the grist again."
            ]
        if density < BULK_DENSITY.low:
            return [
                "That is hard to believe: these wraps at this grist would make a yarn of {density}"
                f" g/cm³, and {BULK_DENSITY.low:g} is about the least. Probably there were gaps"
                " between the turns, or the grist is in another unit. Wrap it again with the turns"
                " just touching, and measure the grist again."
            ]
        return []

    def _gauge(self) -> dict[str, Any]:
        """Look up the categories of the swatch; without one, there are the bands alone."""
        found: Collection[int] = ()
        stitches = math.nan
        if self.stitches:
            stitches = sum(self.stitches) / len(self.stitches)
            found = categories(stitches)
        return {
            "has_category": bool(found),
            "has_no_category": bool(self.stitches) and not found,
            "stitch_count": stitches,
            "category": _in_words(found),
            "bands": [
                {
                    "category": f"{each.number} {each.name}",
                    "low": max(each.knit.low - 0.5, 0),  # what rounds to a whole stitch in it
                    "high": each.knit.high + 0.5,
                    "yours": each.number in found,
                }
                for each in YARN_WEIGHTS
            ],
            "swatch": [{"stitches": stitches}] if self.stitches else [],
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic in centimetres and grams, where a density is easiest by hand."""
        size = "0.7854 × {diameter@cm:4} × {diameter@cm:4}"
        in_inches = measure.units["short"] == "in"
        yield None, "Wraps: {wraps:4} ÷ {covered:4} = {wraps_per_inch:4}."
        yield (
            None,
            "Thickness: one divided by that, {diameter:4}"
            + (", which is {diameter@cm:4}." if in_inches else "."),
        )
        for name, density, words in (
            ("airy_grist", HANDSPUN_BULK_DENSITY.low, "airy for handspun"),
            ("dense_grist", HANDSPUN_BULK_DENSITY.high, "dense for handspun"),
        ):
            also = "" if grist.unit == "tex" else f", or {{{name}:4}}"
            yield (
                None,
                f"If it is {words}, {density:g} g/cm³, a kilometre weighs {size} × {density:g} ×"
                f" 100,000 = {{{name}@tex:4!}} g: a grist of {{{name}@tex:4}}{also}.",
            )
        yield (
            "has_grist",
            f"At your {{grist:4}} a kilometre weighs {{grist@tex:4!}} g. Divided by {size} ×"
            " 100,000 that is {density} g/cm³.",
        )
        yield (
            None,
            f"Usual is {HANDSPUN_BULK_DENSITY.low:g} to {HANDSPUN_BULK_DENSITY.high:g} g/cm³:"
            " derived from printed charts, with no authority behind it. Solid {fibre} is"
            " {solid_grams}, and the least of any yarn about"
            f" {BULK_DENSITY.low:g} (common practice, no source).",
        )
        yield (
            "has_grist",
            "Solid {fibre} of {grist:4} would make {most_wraps:4}: no count can be higher.",
        )
        yield (
            "has_grist",
            "Another quantity, not wraps: in cloth, by Ashenhurst’s rule, which reckons in inches"
            f" and yards per pound, {ASHENHURST_SOFT_1999.value:g} to"
            f" {ASHENHURST_FIRM_1999.value:g} times the root of {{grist@yd/lb:4}} makes"
            " {cloth_soft@1/in!} diameters to the inch for soft yarn and {cloth_firm@1/in!} for"
            " firm" + ("." if in_inches else ": {cloth_soft!} and {cloth_firm}."),
        )


def _in_words(found: Collection[int]) -> str:
    """Name the categories, finest first.

    >>> _in_words({3, 2})
    'fine (2) or light (3)'
    """
    return " or ".join(
        f"{each.name} ({each.number})" for each in YARN_WEIGHTS if each.number in found
    )

"""What wraps to the inch tell of a yarn's grist, and what they cannot."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import wraps_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.estimates.unlikely import unlikely_wraps
from yarnsheets.sheets import choices
from yarnsheets.sheets.inputs import Input, Number, Pick, Readings, Result, Table
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.sources import (
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
from yarnsheets.units import convert
from yarnsheets.yarn_weights import YARN_WEIGHTS, categories

_SOLID = {
    "wool": WOOL_DENSITY,
    "silk": SILK_DENSITY,
    "cotton": COTTON_DENSITY,
    "flax": FLAX_DENSITY,
    "nylon": NYLON_DENSITY,
}


class WhatDoWrapsTell(Sheet):
    """The wide range of grist that wraps leave open, and what a measured grist adds to them.

    Examples
    --------
    >>> sheet = WhatDoWrapsTell(wraps=24, covered=2, grist=1000)
    >>> round(sheet.usual_low), round(sheet.usual_high), round(sheet.density, 3)
    (352, 1175, 0.141)
    """

    wraps = Input(
        "Wraps counted",
        "number",
        24,
        low=2,
        high=400,
        step=0.5,
        measure="Lay the yarn round a ruler, turns touching, neither stretched nor pressed, and"
        " count them.",
    )
    covered = Input(
        "Width they cover",
        "short",
        2,
        low=0.25,
        high=12,
        measure="Two inches or more evens out thick and thin.",
    )
    known = Pick(
        "Is the grist measured?",
        {"measured": "Yes, by cut or weighed skein", "unknown": "No, I have wraps alone"},
        measure="Wraps give a thickness. Only weighing a known length gives a grist.",
    )
    grist = Input(
        "Grist, if measured",
        "grist",
        1000,
        low=100,
        high=30000,
        measure="The length of a cut on the balance times its factor, or yards over pounds of a"
        " skein. Left out of the answer while you say that you have wraps alone.",
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
    fibre = Pick(
        "Fibre",
        {name: f"{name}, solid {density.value:g} g/cm³" for name, density in _SOLID.items()},
        measure="A yarn without any air in it would be as dense as its fibre: nothing is denser.",
        more=True,
    )

    has_grist = Result("flag", "the grist is measured")
    is_unknown = Result("flag", "there are wraps alone")
    has_category = Result("flag", "the swatch is in a category")
    has_no_category = Result("flag", "the swatch is finer than any category")
    solid = Result("number", "density of the solid fibre, in pounds to a yard one inch square")
    solid_grams = Result("number", "density of the solid fibre, in g/cm3")
    stitch_count = Result("number", "stitches to 4 inches, averaged")
    category = Result("number", "the categories whose bands take the stitches in, in words")

    wraps_per_inch = Number("wraps", "wraps to the inch, laid by hand")
    diameter = Number("short", "thickness of the yarn as wrapped")
    usual_low = Number("grist", "low end of what handspun of these wraps usually is")
    usual_high = Number("grist", "high end of it")
    possible_low = Number("grist", "grist of solid fibre with these wraps")
    possible_high = Number("grist", "grist of the airiest yarn with these wraps")
    airy_kilometre = Number("number", "grams of a kilometre, airy for handspun: its tex")
    dense_kilometre = Number("number", "grams of a kilometre, dense for handspun")
    density = Number("number", "bulk density that wraps and grist mean, in g/cm3")
    is_airy = Number("flag", "it is airier than handspun usually is")
    is_usual = Number("flag", "it is as dense as handspun usually is")
    is_dense = Number("flag", "it is denser than handspun usually is, and can be")
    is_impossible = Number("flag", "it is denser than solid fibre")
    most_wraps = Number("wraps", "wraps to the inch that solid fibre of this grist would make")
    cloth_soft = Number("wraps", "Ashenhurst's diameters to the inch in cloth, soft woollen")
    cloth_firm = Number("wraps", "Ashenhurst's diameters to the inch in cloth, firm worsted")
    doubled_wraps = Number("wraps", "wraps to the inch of a yarn of twice the grist")
    wraps_ratio = Number("number", "its wraps, of these")
    diameter_ratio = Number("number", "its diameter, of this one's")

    bands = Table("the gauge of each category, and whether the swatch is in it")
    swatch = Table("the stitches of the swatch")

    answer = (
        (
            None,
            "Wraps of {wraps_per_inch} leave the grist wide open: usually from {usual_low!} to"
            " {usual_high}, and anything from {possible_low!} to {possible_high} is possible.",
        ),
        ("is_airy", "At the {grist} you measured, the yarn is airier than most handspun."),
        ("is_usual", "At the {grist} you measured, the yarn is as airy as handspun usually is."),
        ("is_dense", "At the {grist} you measured, the yarn is denser than most handspun."),
        ("is_unknown", "Weigh a known length: more careful wrapping will not narrow that."),
        ("has_category", "Its gauge, {stitch_count} stitches to 4 inches, is {category}."),
        (
            "has_no_category",
            "Its gauge, {stitch_count} stitches to 4 inches, is finer than any category.",
        ),
    )
    labels: ClassVar = {
        "solid_label": "{solid_grams} solid {fibre}",
        "impossible_label": "impossible: denser than {fibre}",
        "wraps_label": "wraps × {wraps_ratio:4}",
        "diameter_label": "thickness × {diameter_ratio:4}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Look up the fibre's density and the category, and see whether it all can be."""
        solid = _SOLID[self.fibre].value
        stitches = sum(self.stitches) / len(self.stitches) if self.stitches else math.nan
        found = categories(stitches) if self.stitches else frozenset()
        return {
            "has_grist": self.known == "measured",
            "is_unknown": self.known == "unknown",
            "solid": convert(solid, "g/cm**3", "lb/yd/in**2"),
            "solid_grams": solid,
            "stitch_count": stitches,
            "has_category": bool(found),
            "has_no_category": bool(self.stitches) and not found,
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
            "warnings": self._unlikely(),
        }

    def _unlikely(self) -> list[str]:
        """Say what is probably wrong, if the numbers cannot be, or can hardly be, of one yarn."""
        wraps = formulas.wraps_per_inch(self.wraps, self.covered)
        if odd := unlikely_wraps(wraps):
            return [odd]
        if self.known == "unknown":
            return []
        density = convert(
            formulas.bulk_density_from_wraps(wraps, self.grist), "lb/yd/in**2", "g/cm**3"
        )
        solid = _SOLID[self.fibre].value
        if density > solid:
            return [
                f"That cannot be: these wraps at this grist would make a yarn of {density:.2g}"
                f" g/cm³, and {self.fibre} without any air in it is {solid:g}. Probably the yarn"
                " was pressed or stretched on the ruler, or the grist is in another unit. Wrap it"
                " again with the turns just touching, and measure the grist again."
            ]
        if density < BULK_DENSITY.low:
            return [
                f"That is hard to believe: these wraps at this grist would make a yarn of"
                f" {density:.2g} g/cm³, and {BULK_DENSITY.low:g} is about the least (common"
                " practice, no source). Probably there were gaps between the turns, or the grist is"
                " in another unit. Wrap it again with the turns just touching, and measure the"
                " grist again."
            ]
        return []

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs."""
        wraps = formulas.wraps_per_inch(v.wraps, v.covered)
        density = convert(
            formulas.bulk_density_from_wraps(wraps, v.grist), "lb/yd/in**2", "g/cm**3"
        )
        airy, dense = HANDSPUN_BULK_DENSITY.low, HANDSPUN_BULK_DENSITY.high
        ratio = formulas.wraps_per_inch_from_grist(2.0, 1.0) / formulas.wraps_per_inch_from_grist(
            1.0, 1.0
        )
        usual_low, usual_high = (
            formulas.grist_from_wraps(wraps, wraps_charts.in_own_units(grams))
            for grams in (dense, airy)
        )
        return {
            "wraps_per_inch": wraps,
            "diameter": formulas.diameter_from_wraps(wraps),
            "usual_low": usual_low,
            "usual_high": usual_high,
            "airy_kilometre": convert(usual_high, "yd/lb", "tex"),
            "dense_kilometre": convert(usual_low, "yd/lb", "tex"),
            "possible_low": formulas.grist_from_wraps(wraps, v.solid),
            "possible_high": formulas.grist_from_wraps(
                wraps, wraps_charts.in_own_units(BULK_DENSITY.low)
            ),
            "density": density,
            "is_airy": choose(v.has_grist, density < airy, 0),
            "is_usual": choose(v.has_grist, choose(density >= airy, density <= dense, 0), 0),
            "is_dense": choose(
                v.has_grist, choose(density > dense, density <= v.solid_grams, 0), 0
            ),
            "is_impossible": choose(v.has_grist, density > v.solid_grams, 0),
            "most_wraps": formulas.wraps_per_inch_from_grist(v.grist, v.solid),
            "cloth_soft": formulas.ashenhurst_diameters(v.grist, ASHENHURST_SOFT_1999.value),
            "cloth_firm": formulas.ashenhurst_diameters(v.grist, ASHENHURST_FIRM_1999.value),
            "doubled_wraps": wraps * ratio,
            "wraps_ratio": ratio,
            "diameter_ratio": 1 / ratio,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the arithmetic in centimetres and grams, where a density is easiest by hand."""
        size = "0.7854 × {diameter@cm:4} × {diameter@cm:4}"
        yield None, "Wraps: {wraps:4} ÷ {covered:4} = {wraps_per_inch:4}."
        yield None, "Thickness: one divided by that, {diameter:4}, which is {diameter@cm:4}."
        for name, kilometre, density, words in (
            ("usual_high", "airy_kilometre", HANDSPUN_BULK_DENSITY.low, "airy for handspun"),
            ("usual_low", "dense_kilometre", HANDSPUN_BULK_DENSITY.high, "dense for handspun"),
        ):
            yield (
                None,
                f"If it is {words}, {density:g} g/cm³, a kilometre weighs {size} × {density:g} ×"
                f" 100,000 = {{{kilometre}:4}} g: a grist of {{{kilometre}:4}} tex, or"
                f" {{{name}@yd/lb:4}}.",
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
            " {solid_grams}.",
        )
        yield (
            "has_grist",
            "Solid {fibre} of {grist:4} would make {most_wraps:4}: no count can be higher.",
        )
        yield (
            "has_grist",
            "Another quantity, not wraps: in cloth, by Ashenhurst’s rule,"
            f" {ASHENHURST_SOFT_1999.value:g} to {ASHENHURST_FIRM_1999.value:g} times the root of"
            " {grist@yd/lb:4} makes {cloth_soft@1/in!} diameters to the inch for soft yarn and"
            " {cloth_firm@1/in!} for firm.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw wraps with grist, what doubling the grist does, and the gauge of the categories."""
        return (
            wraps_charts.wraps_with_grist(v),
            wraps_charts.doubled_grist(v),
            wraps_charts.gauge_of_categories(),
        )


def _in_words(found: frozenset[int]) -> str:
    """Name the categories, finest first.

    >>> _in_words(frozenset({3, 2}))
    'fine (2) or light (3)'
    """
    return " or ".join(
        f"{each.name} ({each.number})" for each in YARN_WEIGHTS if each.number in found
    )

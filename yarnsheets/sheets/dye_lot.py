"""What a dye lot takes: lots that are all alike, stock, dye, what is added, and the bath."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas, regain
from yarnsheets.charts import dye_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose, larger, smaller, whole_up
from yarnsheets.sheets import choices, dye_words
from yarnsheets.sheets.inputs import Input, Number, Readings, Result, Words
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.sheets.text import show
from yarnsheets.units import convert

_GRAMS = float(convert(1, "lb", "g"))
_WOOL = regain.WOOL_ASTM.percent / 100
_MOST_LOTS = 12
_DEEP = 0.04  # above it dye may be left in the bath: common practice, no source
_LEAST_ON_SCALE = 0.5  # grams that a kitchen scale weighs: common practice, no source
_LEAST_IN_SYRINGE = 1.0  # millilitres, likewise

COLOURS = ("first", "second", "third", "fourth")


class DyeLot(Sheet):
    """Lots, stock and dye for a weight of fibre and a depth of shade.

    Examples
    --------
    >>> sheet = DyeLot(weight=1, spare=0, pot_holds=1, depth=0.01, strength=1, parts=[1])
    >>> round(sheet.lot_stock, 1)
    453.6
    """

    weight = Input(
        "Weight to dye",
        "mass",
        1,
        low=0.01,
        high=50,
        measure="Yarn or fibre, washed clean and dry through. Grease and dirt take no dye.",
    )
    spare = Input(
        "Spare, dyed with it",
        "share",
        0.10,
        low=0,
        high=1,
        step=0.01,
        measure="In case some has to be spun again: a later lot seldom matches.",
    )
    pot_holds = Input(
        "What one pot holds",
        "mass",
        0.75,
        low=0.01,
        high=50,
        measure="Dry weight that still moves freely in your dye pot.",
    )
    depth = Input(
        "Depth of shade",
        "share",
        0.01,
        low=0.0005,
        high=0.10,
        measure="Dry dye as a share of the fibre, all colours together. About 0.5% is pale, 1% to"
        " 2% medium, 4% very deep (common practice, no source).",
    )
    strength = Input(
        "Stock: grams of dye in 100 mL",
        "number",
        1,
        low=0.1,
        high=10,
        measure="1 g made up to 100 mL with water is a stock of 1%. All your stocks of the same"
        " strength.",
    )
    parts = Readings(
        "Parts of each colour",
        "number",
        [75, 25],
        low=0.1,
        high=1000,
        measure="Up to four colours; one number if you use one. 60, 30 and 10 is the same as 6, 3"
        " and 1.",
    )
    liquor_ratio = Input(
        "Bath: mL to a gram of fibre",
        "number",
        40,
        low=5,
        high=150,
        step=1,
        more=True,
        measure="The liquor ratio, stock and all. 30 to 40 is usual for an even colour (common"
        " practice, no source).",
    )
    first_name = Words("First addition", "citric acid", more=True, measure="As you call it.")
    first_share = Input(
        "How much of the first addition",
        "share",
        0.03,
        low=0,
        high=1,
        step=0.005,
        more=True,
        measure="Dry, of the weight of fibre, or 0. The dye maker’s sheet says what and how much:"
        " 3% here is only an example.",
    )
    second_name = Words("Second addition", "salt", more=True, measure="As you call it.")
    second_share = Input(
        "How much of the second addition",
        "share",
        0.10,
        low=0,
        high=1,
        step=0.005,
        more=True,
        measure="Likewise; 10% here is only an example.",
    )
    water_now = Input(
        "Regain of the fibre as you weigh it",
        "share",
        _WOOL,
        low=0,
        high=0.33,
        step=0.001,
        more=True,
        measure="Water as a share of the bone-dry fibre. In a heated room wool has about 9%, in"
        " damp air 16% or more.",
    )
    water_used = Input(
        "Regain your recipe reckons with",
        "share",
        _WOOL,
        low=0,
        high=0.33,
        step=0.001,
        more=True,
        measure="So that recipes repeat in any weather. 13.6% is what ASTM D1909 agrees for wool, 0"
        " is bone-dry. Leave both alike to take the weight as the scale shows it.",
    )

    first_part = Result("share", "the first colour's part of the dye")
    second_part = Result("share", "the second colour's")
    third_part = Result("share", "the third colour's")
    fourth_part = Result("share", "the fourth colour's")
    colours = Result("number", "how many colours there are")

    is_one = Number("flag", "one pot holds it all")
    is_many = Number("flag", "there are several lots")
    has_spare = Number("flag", "some is dyed to spare")
    has_two = Number("flag", "two colours are mixed")
    has_three = Number("flag", "three are")
    has_mix = Number("flag", "at least two are")
    has_third = Number("flag", "at least three are")
    has_fourth = Number("flag", "all four are")
    adds_both = Number("flag", "both additions are used")
    adds_first = Number("flag", "only the first is")
    adds_second = Number("flag", "only the second is")
    has_first = Number("flag", "the first addition is used")
    has_second = Number("flag", "the second is")
    is_deep = Number("flag", "the depth may not be taken up")
    is_fine = Number("flag", "a colour's powder is too little for a kitchen scale")
    is_drop = Number("flag", "a colour's stock is too little to measure")
    is_crowded = Number("flag", "the stock alone is more than the bath")
    is_restated = Number("flag", "the weight is restated at another regain")
    is_as_weighed = Number("flag", "it is not")

    goods = Number("mass", "weight to dye with the spare, as weighed")
    lots = Number("number", "lots")
    lot_weight = Number("mass", "weight of a lot, as weighed")
    lot_fibre = Number("mass", "weight of fibre in a lot, at the regain reckoned with")
    lot_dye = Number("mass", "dry dye for a lot")
    all_dye = Number("mass", "dry dye for all lots")
    lot_stock = Number("volume", "stock for a lot")
    all_stock = Number("volume", "stock for all lots")
    stock_1 = Number("volume", "the first colour's stock for a lot")
    stock_2 = Number("volume", "the second colour's")
    stock_3 = Number("volume", "the third colour's")
    stock_4 = Number("volume", "the fourth colour's")
    least_dye = Number("mass", "powder of the colour there is least of, for a lot")
    least_stock = Number("volume", "its stock")
    first_mass = Number("mass", "first addition for a lot")
    second_mass = Number("mass", "second addition for a lot")
    all_first = Number("mass", "first addition for all lots")
    all_second = Number("mass", "second addition for all lots")
    lot_bath = Number("number", "litres of bath for a lot, stock and all")
    lot_water = Number("number", "litres of water to measure for a lot")
    wet_now = Number("number", "weight as weighed, of the bone-dry weight")
    wet_used = Number("number", "weight reckoned with, of the bone-dry weight")

    answer = dye_words.ANSWER
    labels: ClassVar = dye_words.LABELS
    cautions = dye_words.CAUTIONS

    def work_out(self) -> Mapping[str, Any]:
        """Turn the parts into shares, and see whether the lots are likely."""
        if warning := self._unlikely():
            return self.no_answer(warning)
        shares = [part / sum(self.parts) for part in self.parts] + [0.0] * len(COLOURS)
        named = zip(COLOURS, shares, strict=False)
        return {f"{name}_part": share for name, share in named} | {"colours": len(self.parts)}

    def _unlikely(self) -> str | None:
        """Say what is wrong where no recipe can be given."""
        if not self.parts:
            return "Give at least one part: 1 if you dye with a single colour."
        if len(self.parts) > len(COLOURS):
            return (
                f"{len(self.parts)} colours are more than this page mixes. Give four at most: mix"
                " some of them to one stock first."
            )
        adding = ((self.first_name, self.first_share), (self.second_name, self.second_share))
        if any(share > 0 and not name.strip() for name, share in adding):
            return "Give each addition a name, or 0% if you do not use it."
        lots = self.weight * (1 + self.spare) / self.pot_holds
        if lots > _MOST_LOTS:
            return (
                f"That would be {show(lots, 2, up=True)} lots, and {_MOST_LOTS} is the most this"
                " page gives. Check what one pot holds, or find a larger pot."
            )
        return None

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out lots, dye, stock, additions and bath."""
        goods = formulas.lot_weight(v.weight, v.spare, 1)
        lots = whole_up(goods / v.pot_holds)
        lot_weight = formulas.lot_weight(v.weight, v.spare, lots)
        fibre = formulas.mass_at_regain(lot_weight, v.water_now, v.water_used)
        dye = formulas.mass_on_fibre(fibre, v.depth)
        stock = formulas.stock_volume(fibre, v.depth, v.strength / 100 / _GRAMS)
        first = formulas.mass_on_fibre(fibre, v.first_share)
        second = formulas.mass_on_fibre(fibre, v.second_share)
        bath = formulas.bath_volume(fibre, v.liquor_ratio * _GRAMS)
        least = v.first_part
        for place, name in enumerate(COLOURS[1:], start=2):
            part = getattr(v, f"{name}_part")
            least = choose(v.colours >= place, smaller(least, part), least)
        moved = v.water_now - v.water_used
        return {
            "is_one": lots <= 1,
            "is_many": lots > 1,
            "has_spare": v.spare > 0,
            "has_two": choose(v.colours > 1, v.colours < 3, 0),
            "has_three": choose(v.colours > 2, v.colours < 4, 0),
            "has_mix": v.colours > 1,
            "has_third": v.colours > 2,
            "has_fourth": v.colours > 3,
            "adds_both": smaller(v.first_share, v.second_share) > 0,
            "adds_first": choose(v.second_share > 0, 0, v.first_share > 0),
            "adds_second": choose(v.first_share > 0, 0, v.second_share > 0),
            "has_first": v.first_share > 0,
            "has_second": v.second_share > 0,
            "is_deep": v.depth > _DEEP,
            "is_fine": dye * least * _GRAMS < _LEAST_ON_SCALE,
            "is_drop": stock * least < _LEAST_IN_SYRINGE,
            "is_crowded": stock > bath,
            "is_restated": moved * moved > 0,
            "is_as_weighed": moved * moved <= 0,
            "goods": goods,
            "lots": lots,
            "lot_weight": lot_weight,
            "lot_fibre": fibre,
            "lot_dye": dye,
            "all_dye": dye * lots,
            "lot_stock": stock,
            "all_stock": stock * lots,
            "stock_1": stock * v.first_part,
            "stock_2": stock * v.second_part,
            "stock_3": stock * v.third_part,
            "stock_4": stock * v.fourth_part,
            "least_dye": dye * least,
            "least_stock": stock * least,
            "first_mass": first,
            "second_mass": second,
            "all_first": first * lots,
            "all_second": second * lots,
            "lot_bath": bath / 1000,
            "lot_water": larger(bath - stock, 0) / 1000,
            "wet_now": 1 + v.water_now,
            "wet_used": 1 + v.water_used,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the arithmetic as it is done at the scale and the measuring jug."""
        return dye_words.WORKED

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw stock against depth, what goes in the pot, and the lots."""
        return (
            dye_charts.stock_against_depth(v, _DEEP),
            dye_charts.in_the_pot(v),
            dye_charts.lots_in_pots(v, _MOST_LOTS),
        )

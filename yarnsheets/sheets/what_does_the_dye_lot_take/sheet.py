"""What a dye lot takes: lots that are all alike, stock, dye, what is added, and the bath."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Readings, Words
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import counted
from yarnsheets.published import regain
from yarnsheets.sheets.shared import regain_used
from yarnsheets.sheets.shared.regain_used import AUTHORITIES, FIBRES, MOST_OF_ANY, Part
from yarnsheets.sheets.shared.whole import whole_up
from yarnsheets.sheets.what_does_the_dye_lot_take import words
from yarnsheets.units import convert

_WOOL = regain.WOOL_ASTM.value
MOST_LOTS = 12
DEEP = 0.04  # above it dye may be left in the bath: common practice, no source
_LEAST_ON_SCALE = 0.5  # grams that a kitchen scale weighs: common practice, no source
_LEAST_IN_SYRINGE = 1.0  # millilitres, likewise
_MOST_COLOURS = 4


class WhatDoesTheDyeLotTake(Sheet):
    """Lots, stock and dye for a weight of goods and a depth of shade.

    Examples
    --------
    >>> sheet = WhatDoesTheDyeLotTake(weight=1, pot_holds=1, depth=0.01, strength=1)
    >>> round(sheet.lot_stock, 1)
    453.6
    """

    question = "What does the dye lot take?"
    onward = (Onward("is-this-enough", {"weights": "goods"}),)

    weight = Input(
        "Weight of the goods to dye",
        "mass",
        1,
        low=0.01,
        high=50,
        measure="All the yarn or fibre that you have for it, washed clean and dried in the air."
        " Grease and dirt take no dye.",
    )
    depth = Input(
        "Depth of shade",
        "share",
        0.01,
        low=0.0005,
        high=0.10,
        measure="Dye powder as a share of the fibre, all colours together. About 0.5% is pale, 1%"
        " to 2% medium, 4% very deep (common practice, no source).",
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

    the_bath = Group("Reserve, pots and bath")
    spare = Input(
        "Reserve, beyond that weight",
        "share",
        0,
        low=0,
        high=1,
        step=0.01,
        measure="Only if that weight has no reserve in it yet. A later lot seldom matches, so dye"
        " it with the rest.",
    )
    pot_holds = Input(
        "What one pot holds",
        "mass",
        0.75,
        low=0.01,
        high=50,
        measure="The weight, before it is wetted, that still moves freely in your dye pot.",
    )
    liquor_ratio = Input(
        "Bath: mL to a gram of fibre",
        "number",
        40,
        low=5,
        high=150,
        step=0.5,
        measure="The liquor ratio, stock and all. 30 to 40 is usual for an even colour (common"
        " practice, no source).",
    )

    additions = Group("What is added", folded=True)
    first_name = Words("First addition", "citric acid", measure="As you call it.")
    first_share = Input(
        "How much of the first addition",
        "share",
        0.03,
        low=0,
        high=1,
        step=0.005,
        measure="A share of the weight of fibre, or 0. The dye maker’s sheet says what and how"
        " much: 3% here is only an example.",
    )
    second_name = Words("Second addition", "salt", measure="As you call it.")
    second_share = Input(
        "How much of the second addition",
        "share",
        0.10,
        low=0,
        high=1,
        step=0.005,
        measure="Likewise; 10% here is only an example.",
    )

    the_damp = Group("Goods drier or damper than the recipe reckons", folded=True)
    recipe_by = Pick(
        "Regain that the recipe reckons with",
        {
            "scale": "none: the weight as the scale shows it",
            **AUTHORITIES,
            "own": "one of its own",
        },
        measure="With one, recipes repeat in any weather. What a skein’s label says it weighs has"
        " an agreed regain already: type it as if the scale showed it.",
    )
    fibre = Pick(
        "Fibre",
        {name: name for name in FIBRES},
        measure="It decides what is agreed, and how much water it can hold.",
    )
    water_now = Input(
        "Regain of the fibre as you weigh it",
        "share",
        _WOOL,
        low=0,
        high=MOST_OF_ANY,
        step=0.001,
        measure="Water as a share of the bone-dry fibre. In a heated room wool has about 9%, in"
        " damp air 16% or more.",
    )
    water_used = Input(
        "Regain of the recipe",
        "share",
        _WOOL,
        low=0,
        high=MOST_OF_ANY,
        step=0.001,
        measure="0 if it reckons with bone-dry fibre.",
    )

    first_part = Found("share", "the first colour's part of the dye")
    second_part = Found("share", "the second colour's")
    third_part = Found("share", "the third colour's")
    fourth_part = Found("share", "the fourth colour's")
    is_one = Found("flag", "there is one lot")
    is_many = Found("flag", "there are several lots")
    has_spare = Found("flag", "a reserve is dyed too")
    has_two = Found("flag", "two colours are mixed")
    has_three = Found("flag", "three are")
    has_mix = Found("flag", "at least two are")
    has_third = Found("flag", "at least three are")
    has_fourth = Found("flag", "all four are")
    adds_both = Found("flag", "both additions are used")
    adds_first = Found("flag", "only the first is")
    adds_second = Found("flag", "only the second is")
    has_first = Found("flag", "the first addition is used")
    has_second = Found("flag", "the second is")
    is_deep = Found("flag", "the depth may not be taken up")
    is_fine = Found("flag", "a colour's powder is too little for a kitchen scale")
    is_drop = Found("flag", "a colour's stock is too little to measure")
    is_as_weighed = Found("flag", "the recipe goes by the weight as weighed")
    is_restated = Found("flag", "the weight is restated at another regain")

    goods = Found("mass", "weight to dye with the reserve, as weighed")
    reserve = Found("mass", "weight of the reserve, as weighed")
    lots = Found("number", "lots")
    lot_weight = Found("mass", "weight of a lot, as weighed")
    lot_fibre = Found("mass", "weight of fibre in a lot, as the recipe reckons it")
    lot_dye = Found("mass", "dry dye for a lot")
    all_dye = Found("mass", "dry dye for all lots")
    least_strength = Found("number", "weakest stock that fits the bath, grams of dye in 100 mL")
    lot_stock = Found("volume", "stock for a lot")
    all_stock = Found("volume", "stock for all lots")
    stock_1 = Found("volume", "the first colour's stock for a lot")
    stock_2 = Found("volume", "the second colour's")
    stock_3 = Found("volume", "the third colour's")
    stock_4 = Found("volume", "the fourth colour's")
    least_dye = Found("mass", "powder of the colour there is least of, for a lot")
    least_stock = Found("volume", "its stock")
    first_mass = Found("mass", "first addition for a lot")
    second_mass = Found("mass", "second addition for a lot")
    all_first = Found("mass", "first addition for all lots")
    all_second = Found("mass", "second addition for all lots")
    lot_bath = Found("number", "litres of bath for a lot, stock and all")
    lot_water = Found("number", "litres of water to measure for a lot")
    wet_now = Found("number", "weight as weighed, of the bone-dry weight")
    wet_used = Found("number", "weight reckoned with, of the bone-dry weight")
    regain_of_recipe = Found("share", "the regain reckoned with")
    full_recipe = Found("word", "where that regain is from")

    answer = words.ANSWER
    labels: ClassVar = words.LABELS
    cautions = words.CAUTIONS

    def work_out(self) -> Mapping[str, Any]:
        """Work out lots, dye, stock, additions and bath, unless no recipe can be given."""
        goods = formulas.lot_weight(self.weight, self.spare, 1)
        lots = whole_up(goods / self.pot_holds)
        if warning := self._unlikely(lots):
            return no_answer(warning)
        lot_weight = formulas.lot_weight(self.weight, self.spare, lots)
        restated = self._restated(lot_weight)
        fibre: float = restated["lot_fibre"]
        dye = formulas.mass_on_fibre(fibre, self.depth)
        stock = formulas.stock_volume(fibre, self.depth, convert(self.strength / 100, "g", "lb"))
        bath = formulas.bath_volume(convert(fibre, "lb", "g"), self.liquor_ratio)
        if stock > bath * (1 + 1e-9):  # more than the last bits
            return no_answer(
                "All the bath would not hold the stock. Make a stronger one, of at least"
                " {least_strength^}\N{NO-BREAK SPACE}g in 100\N{NO-BREAK SPACE}mL, or take more"
                " bath."
            ) | {"least_strength": 100 * self.depth / self.liquor_ratio}
        return {
            "goods": goods,
            "reserve": goods - self.weight,
            "lots": lots,
            "is_one": lots == 1,
            "is_many": lots > 1,
            "has_spare": self.spare > 0,
            "lot_weight": lot_weight,
            "lot_dye": dye,
            "all_dye": dye * lots,
            "is_deep": self.depth > DEEP,
            "lot_stock": stock,
            "all_stock": stock * lots,
            "lot_bath": bath / 1000,
            "lot_water": max(bath - stock, 0) / 1000,
            **restated,
            **self._colours(dye, stock),
            **self._additions(fibre, lots),
        }

    def unused(self) -> list[str]:
        """Name the fibre and its water, where the recipe goes by the scale."""
        if self.recipe_by == "scale":
            return ["fibre", "water_now", "water_used"]
        return [] if self.recipe_by == "own" else ["water_used"]

    def _restated(self, lot_weight: float) -> dict[str, Any]:
        """Restate the weight of a lot at the regain of the recipe, if it goes by one."""
        if self.recipe_by == "scale":
            return {"lot_fibre": lot_weight, "is_as_weighed": True}
        if self.recipe_by == "own":
            wanted, full = self.water_used, "The recipe’s own."
        else:
            agreed = regain_used.agreed_by(self._parts(), self.recipe_by)
            wanted, full = agreed.value, agreed.full
        return {
            "is_restated": True,
            "lot_fibre": formulas.mass_at_regain(lot_weight, self.water_now, wanted),
            "wet_now": 1 + self.water_now,
            "wet_used": 1 + wanted,
            "regain_of_recipe": wanted,
            "full_recipe": full,
        }

    def _parts(self) -> list[Part]:
        return [(FIBRES[self.fibre], 1.0)]

    def _unlikely(self, lots: int) -> str | None:
        """Say what is wrong where no recipe can be given."""
        if not self.parts:
            return "Give at least one part: 1 if you dye with a single colour."
        if len(self.parts) > _MOST_COLOURS:
            return (
                f"{len(self.parts)} colours are more than this page mixes. Give four at most: mix"
                " some of them to one stock first."
            )
        adding = ((self.first_name, self.first_share), (self.second_name, self.second_share))
        if any(share > 0 and not name.strip() for name, share in adding):
            return "Give each addition a name, or 0% if you do not use it."
        if lots > MOST_LOTS:
            return (
                f"That would be {counted(lots, 'lot', 'lots')}, and {MOST_LOTS} is the most this"
                " page gives. Check what one pot holds, or find a larger pot."
            )
        return self._too_wet()

    def _too_wet(self) -> str | None:
        """Say that the fibre cannot hold so much water, where the recipe asks how much it holds."""
        waters = {"scale": [], "own": [self.water_now, self.water_used]}
        for water in waters.get(self.recipe_by, [self.water_now]):
            if odd := regain_used.too_wet(self._parts(), "regain", water):
                return odd
        return None

    def _colours(self, dye: float, stock: float) -> dict[str, Any]:
        """Share a lot's dye and stock among the colours."""
        count = len(self.parts)
        shares = [part / sum(self.parts) for part in self.parts]
        least_dye, least_stock = dye * min(shares), stock * min(shares)
        first, second, third, fourth, *_ = [*shares, 0.0, 0.0, 0.0]
        return {
            "first_part": first,
            "second_part": second,
            "third_part": third,
            "fourth_part": fourth,
            "stock_1": stock * first,
            "stock_2": stock * second,
            "stock_3": stock * third,
            "stock_4": stock * fourth,
            "has_two": count == 2,
            "has_three": count == 3,
            "has_mix": count > 1,
            "has_third": count > 2,
            "has_fourth": count > 3,
            "least_dye": least_dye,
            "least_stock": least_stock,
            "is_fine": convert(least_dye, "lb", "g") < _LEAST_ON_SCALE,
            "is_drop": least_stock < _LEAST_IN_SYRINGE,
        }

    def _additions(self, fibre: float, lots: int) -> dict[str, Any]:
        """Weigh what goes in the bath beside the dye."""
        has_first, has_second = self.first_share > 0, self.second_share > 0
        first = formulas.mass_on_fibre(fibre, self.first_share)
        second = formulas.mass_on_fibre(fibre, self.second_share)
        return {
            "has_first": has_first,
            "has_second": has_second,
            "adds_both": has_first and has_second,
            "adds_first": has_first and not has_second,
            "adds_second": has_second and not has_first,
            "first_mass": first,
            "second_mass": second,
            "all_first": first * lots,
            "all_second": second * lots,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the arithmetic as it is done at the scale and the measuring jug."""
        return words.WORKED

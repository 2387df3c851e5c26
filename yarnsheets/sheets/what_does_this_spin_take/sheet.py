"""What a spin takes: fibre to buy, yards to spin, hours and bobbins, for a project's yards."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates import chance_enough
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.published import yields
from yarnsheets.sheets.shared import cutting, plying
from yarnsheets.sheets.shared.doubt import times
from yarnsheets.sheets.shared.whole import whole_up
from yarnsheets.sheets.what_does_this_spin_take import asked, buying, chain, words

_SCOURED = {each.name: each.shares for each in yields.FLEECES}
_ORIGINS = {each.name: str(each) for each in yields.FLEECES}
_STAGES = {"raw": 0, "washed": 1, "prepared": 2}
_WANTED_TIMES = 100 * buying.WANTED_CHANCE


class WhatDoesThisSpinTake(Sheet):
    """From a sample and a project's yards to what to buy, spin and ply.

    Examples
    --------
    >>> sheet = WhatDoesThisSpinTake(project=1000, reserve=0, grist_wanted=1000, spinning_waste=0.2)
    >>> round(sheet.needed, 9), sheet.put_ups
    (1.25, 5)
    """

    question = "What does this spin take?"
    onward = (
        Onward(
            "which-singles-make-this-yarn",
            {
                "grist_wanted": "unwashed_grist",
                "plies": "plies",
                "take_up": "take_up",
                "balance_factor": "balance_factor",
            },
        ),
        Onward("what-does-the-dye-lot-take", {"weight": "yarn"}),
        Onward(
            "which-of-two-plans",
            {
                "project": "project",
                "reserve": "reserve",
                "grist_wanted": "yarn_grist",
                "spinning_waste": "spinning_waste",
            },
        ),
    )

    project = asked.project()
    reserve = asked.reserve()
    grist_wanted = asked.grist_wanted()
    plies = asked.plies()
    take_up = plying.take_up(1.03)

    the_fibre = Group("The fibre I buy")
    buying = asked.buying()
    put_up = asked.put_up()
    price = asked.price()
    currency = asked.currency()
    spinning_waste = asked.spinning_waste()
    preparing_waste = asked.preparing_waste()
    scouring_yield = asked.scouring_yield()
    fleece = asked.fleece()

    the_hours = Group("Hours and bobbins")
    spinning_speed = asked.spinning_speed()
    plying_speed = asked.plying_speed()
    evening_hours = asked.evening_hours()
    bobbin_capacity = asked.bobbin_capacity()

    the_doubts = Group("How far off each may be")
    grist_range = asked.grist_range()
    project_range = asked.project_range()
    yield_range = asked.yield_range()

    finer_points = Group("Finer points", folded=True)
    sample_of = asked.sample_of()
    wash_shrinkage = asked.wash_shrinkage()
    wash_loss = asked.wash_loss()
    balance_factor = cutting.balance_factor()

    is_raw = Found("flag", "raw fleece is bought")
    is_washed = Found("flag", "washed fleece is bought")
    is_outside = Found("flag", "raw, and the reader's yield is outside the published range")
    is_fleece = Found("flag", "a fleece is bought, raw or washed")
    has_reserve = Found("flag", "some yarn is kept in reserve")
    bought = Found("word", "what is bought")
    fleece_name = Found("word", "the fleece, as its range is published")
    origin = Found("word", "where that range is from")
    scour_low = Found("share", "low end of the published scouring yield")
    scour_high = Found("share", "high end of it")
    first_stage = Found("number", "stage that is bought: 0 raw, 1 washed, 2 prepared")
    chance = Found("share", "chance that what is bought is enough for the project’s own yards")
    times = Found("word", "the same, as times of a hundred")

    has_answer = Found("flag", "the plan is for yarn that is spun by hand")
    is_plied = Found("flag", "two plies or more")
    is_single = Found("flag", "the single is the yarn")
    is_unsure = Found("flag", "the chance, as it is said, is below 95 times of 100")
    is_shrinking = Found("flag", "the wash changes length or weight")
    take_up_used = Found("number", "take-up in plying; 1 for a single")
    yards_planned = Found("length", "washed yarn, with the reserve")
    yards_to_ply = Found("length", "yarn to ply, before its wash")
    yarn_grist = Found("grist", "grist of the washed yarn")
    unwashed_grist = Found("grist", "grist of the yarn before its wash")
    singles_grist = Found("grist", "grist of each single")
    yards_per_ply = Found("length", "single for each ply")
    singles_yards = Found("length", "singles of all plies together")
    singles_cut = Found("short", "cut of the single on the balance")
    unwashed_cut = Found("short", "cut of the plied yarn before its wash")
    plied_cut = Found("short", "cut of the washed yarn")
    yarn = Found("mass", "washed yarn, with its reserve")
    spun = Found("mass", "yarn before its wash")
    prepared = Found("mass", "prepared fibre")
    clean = Found("mass", "washed fleece")
    raw = Found("mass", "raw fleece")
    raw_low = Found("mass", "raw fleece at the high end of the published yield")
    raw_high = Found("mass", "raw fleece at the low end of it")
    needed = Found("mass", "fibre needed, as it is bought")
    scouring_loss = Found("mass", "grease and dirt that scouring takes out")
    preparing_loss = Found("mass", "waste of carding or combing")
    spinning_loss = Found("mass", "waste of spinning and plying")
    washing_loss = Found("mass", "weight that the skeins lose in their wash")
    put_ups = Found("number", "how many to buy")
    put_ups_sure = Found("number", "how many for a chance of 95 times of 100")
    put_ups_weight = Found("mass", "weight of all that is bought")
    left_over = Found("mass", "fibre left over")
    yards_per_put_up = Found("length", "yarn that one of them makes")
    yards_made = Found("length", "yarn that all that is bought makes")
    coin = Found("word", "what stands before a sum of money")
    cost = Found("money", "cost of all that is bought")
    cost_per_yard = Found("money", "cost of a yard of yarn")
    cost_per_100_yards = Found("money", "cost of 100 yd of yarn")
    cost_per_100_metres = Found("money", "cost of 100 m of yarn")
    spinning_hours = Found("number", "hours of spinning")
    plying_hours = Found("number", "hours of plying")
    all_hours = Found("number", "hours of both")
    evenings = Found("number", "evenings they fill")
    bobbins_per_ply = Found("number", "bobbins for each ply")
    bobbins = Found("number", "bobbins of single, of all plies")
    plied_bobbins = Found("number", "bobbins of plied yarn")
    all_bobbins = Found("number", "bobbins of both")
    fibre_per_bobbin = Found("mass", "fibre for each bobbin")
    yards_per_bobbin = Found("length", "single on each bobbin")

    chances = Table("chance that it is enough, by how many are bought")

    answer = words.ANSWER
    labels: ClassVar = words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Work out the plan, what hangs on it, and the chance that the fibre is enough."""
        plan = self._plan()
        at = chain.spin(plan)
        for name, each in (("The single", "singles_grist"), ("The yarn", "yarn_grist")):
            if odd := chain.unlikely(name, at[each]):
                return no_answer(odd)
        needed = buying.in_doubt(self.project, self.project_range)
        made_range = math.hypot(self.grist_range, self.yield_range)
        put_ups, yards_per_put_up = int(at["put_ups"]), at["yards_per_put_up"]
        chance = chance_enough(buying.in_doubt(at["yards_made"], made_range), needed)
        put_ups_sure = whole_up(buying.sure_yards(needed, made_range) / yards_per_put_up)
        # what is said is what is compared: 95 times of 100 are never told to be too few
        is_unsure = put_ups < put_ups_sure and math.floor(100 * chance + 0.5) < _WANTED_TIMES
        low, high = _SCOURED[self.fleece]
        return {
            **at,
            "is_raw": self.buying == "raw",
            "is_washed": self.buying == "washed",
            "is_outside": self.buying == "raw" and not low <= self.scouring_yield <= high,
            "is_fleece": self.buying != "prepared",
            "has_reserve": self.reserve > 0,
            "is_unsure": is_unsure,
            "has_answer": True,
            "coin": buying.coin(self.currency),
            "is_plied": self.plies > 1,
            "is_single": self.plies <= 1,
            "is_shrinking": self.wash_shrinkage + self.wash_loss > 0,
            "bought": chain.BOUGHT[self.buying],
            "fleece_name": self.fleece,
            "origin": _ORIGINS[self.fleece],
            "scour_low": low,
            "scour_high": high,
            "first_stage": _STAGES[self.buying],
            "chance": chance,
            "times": times(chance),
            "put_ups_sure": put_ups_sure,
            "singles_cut": formulas.cut_from_grist(at["singles_grist"], self.balance_factor),
            "unwashed_cut": formulas.cut_from_grist(at["unwashed_grist"], self.balance_factor),
            "plied_cut": formulas.cut_from_grist(at["yarn_grist"], self.balance_factor),
            "raw_low": at["clean"] / high,
            "raw_high": at["clean"] / low,
            "scouring_loss": at["raw"] - at["clean"],
            "preparing_loss": at["clean"] - at["prepared"],
            "spinning_loss": at["prepared"] - at["spun"],
            "washing_loss": at["spun"] - at["yarn"],
            "chances": buying.chances(put_ups, yards_per_put_up, needed, made_range),
        }

    def unused(self) -> list[str]:
        """Name what one single does not take, and what fibre that is bought so does not lose."""
        names: list[str] = []
        if self.plies <= 1:
            names = [*names, "take_up", "plying_speed"]
        if self.buying == "prepared":
            names = [*names, "preparing_waste"]
        if self.buying != "raw":
            names = [*names, "scouring_yield", "fleece"]
        return names

    def _plan(self) -> chain.Plan:
        return chain.Plan(
            project=self.project,
            reserve=self.reserve,
            grist_wanted=self.grist_wanted,
            sample_of=self.sample_of,
            plies=self.plies,
            take_up=self.take_up,
            wash_shrinkage=self.wash_shrinkage,
            wash_loss=self.wash_loss,
            spinning_waste=self.spinning_waste,
            preparing_waste=self.preparing_waste,
            scouring_yield=self.scouring_yield,
            buying=self.buying,
            put_up=self.put_up,
            price=self.price,
            spinning_speed=self.spinning_speed,
            plying_speed=self.plying_speed,
            evening_hours=self.evening_hours,
            bobbin_capacity=self.bobbin_capacity,
        )

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the plan as it is worked by hand, a stage a line."""
        return words.worked(measure)

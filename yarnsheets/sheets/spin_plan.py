"""What a spin takes: fibre to buy, yards to spin, hours and bobbins, for a project's yards."""

from collections.abc import Iterable, Mapping
from types import SimpleNamespace
from typing import Any, ClassVar

from yarnsheets import formulas, yields
from yarnsheets.charts import plan_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose, whole_up
from yarnsheets.estimates import unlikely_grist
from yarnsheets.sheets import buying, choices, plying, spin_chain, spin_inputs
from yarnsheets.sheets.inputs import Number, Result, Table
from yarnsheets.sheets.sheet import Line, Sheet

_FLEECES = {each.name: each for each in yields.FLEECES}
_STAGES = {"raw": 0, "washed": 1, "prepared": 2}
_ALL_BUT_CERTAIN = 0.995


class SpinPlan(Sheet):
    """From a sample and a project's yards to what to buy, spin and ply.

    Examples
    --------
    >>> sheet = SpinPlan(project=1000, reserve=0, grist_wanted=1000, spinning_waste=0.2)
    >>> round(sheet.needed, 9), sheet.put_ups
    (1.25, 5)
    """

    project = spin_inputs.project()
    grist_wanted = spin_inputs.grist_wanted()
    plies = spin_inputs.plies()
    buying = spin_inputs.buying()
    put_up = spin_inputs.put_up()
    price = spin_inputs.price()
    spinning_speed = spin_inputs.spinning_speed()
    sample_of = spin_inputs.sample_of()
    take_up = plying.take_up(1.03, "Not used for one strand.", more=True)
    reserve = spin_inputs.reserve()
    spinning_waste = spin_inputs.spinning_waste()
    preparing_waste = spin_inputs.preparing_waste()
    scouring_yield = spin_inputs.scouring_yield()
    fleece = spin_inputs.fleece()
    wash_shrinkage = spin_inputs.wash_shrinkage()
    wash_loss = spin_inputs.wash_loss()
    grist_range = spin_inputs.grist_range()
    project_range = spin_inputs.project_range()
    yield_range = spin_inputs.yield_range()
    plying_speed = spin_inputs.plying_speed()
    evening_hours = spin_inputs.evening_hours()
    bobbin_capacity = spin_inputs.bobbin_capacity()
    balance_factor = spin_inputs.balance_factor()
    currency = spin_inputs.currency()

    is_of_single = Result("flag", "the sample is of the single")
    is_raw = Result("flag", "raw fleece is bought")
    is_washed = Result("flag", "washed fleece is bought")
    is_outside = Result("flag", "raw, and the reader's yield is outside the published range")
    is_certain = Result("flag", "it is all but certain to be enough")
    bought = Result("word", "what is bought")
    fleece_name = Result("word", "the fleece, as its range is published")
    origin = Result("word", "where that range is from")
    scour_low = Result("share", "low end of the published scouring yield")
    scour_high = Result("share", "high end of it")
    first_stage = Result("number", "stage that is bought: 0 raw, 1 washed, 2 prepared")
    chance = Result("share", "chance that the put-ups bought are enough")
    sure_ratio = Result("number", "fibre for a chance of 95 %, of what the project itself takes")

    is_plied = Number("flag", "two plies or more")
    is_single = Number("flag", "the single is the yarn")
    is_unsure = Number("flag", "the chance is below 95 %")
    is_sure = Number("flag", "the chance is 95 % or more, and not all but certain")
    is_one_evening = Number("flag", "one evening does it")
    is_more_evenings = Number("flag", "it takes more")
    is_one_bobbin = Number("flag", "one bobbin does it")
    is_more_bobbins = Number("flag", "it takes more")
    is_shrinking = Number("flag", "the wash changes length or weight")
    take_up_used = Number("number", "take-up in plying; 1 for a single")
    yards_planned = Number("length", "washed yarn, with the reserve")
    yards_to_ply = Number("length", "yarn to ply, before its wash")
    yarn_grist = Number("grist", "grist of the washed yarn")
    unwashed_grist = Number("grist", "grist of the yarn before its wash")
    singles_grist = Number("grist", "grist of each single")
    yards_per_ply = Number("length", "single for each ply")
    singles_yards = Number("length", "singles of all plies together")
    singles_cut = Number("short", "cut of the single on the balance")
    unwashed_cut = Number("short", "cut of the plied yarn before its wash")
    plied_cut = Number("short", "cut of the washed yarn")
    yarn = Number("mass", "washed yarn")
    spun = Number("mass", "yarn before its wash")
    prepared = Number("mass", "prepared fibre")
    clean = Number("mass", "washed fleece")
    raw = Number("mass", "raw fleece")
    raw_low = Number("mass", "raw fleece at the high end of the published yield")
    raw_high = Number("mass", "raw fleece at the low end of it")
    needed = Number("mass", "fibre needed, as it is bought")
    scouring_loss = Number("mass", "grease and dirt that scouring takes out")
    preparing_loss = Number("mass", "waste of carding or combing")
    spinning_loss = Number("mass", "waste of spinning and plying")
    washing_loss = Number("mass", "weight that the skeins lose in their wash")
    put_ups = Number("number", "put-ups to buy")
    put_ups_sure = Number("number", "put-ups for a chance of 95 %")
    put_ups_weight = Number("mass", "weight of the put-ups bought")
    left_over = Number("mass", "fibre left over")
    yards_per_put_up = Number("length", "yarn that one put-up makes")
    yards_made = Number("length", "yarn that the put-ups bought make")
    cost = Number("money", "cost of the put-ups")
    cost_per_yard = Number("money", "cost of a yard of yarn")
    cost_per_100_yards = Number("money", "cost of 100 yd of yarn")
    cost_per_100_metres = Number("money", "cost of 100 m of yarn")
    spinning_hours = Number("number", "hours of spinning")
    plying_hours = Number("number", "hours of plying")
    all_hours = Number("number", "hours of both")
    evenings = Number("number", "evenings they fill")
    bobbins_per_ply = Number("number", "bobbins for each ply")
    bobbins = Number("number", "bobbins of all plies")
    fibre_per_bobbin = Number("mass", "fibre for each bobbin")
    yards_per_bobbin = Number("length", "single on each bobbin")

    chances = Table("chance that it is enough, by put-ups bought")

    answer = (
        (
            None,
            "Buy {put_ups} × {put_up} of {bought} for {currency}\N{NO-BREAK SPACE}{cost}: the spin"
            " takes {needed}, so {left_over:2} is left over.",
        ),
        (
            "is_unsure",
            "The chance that it is enough for {project} is {chance:2}; {put_ups_sure} × {put_up}"
            " would make it at least 95%.",
        ),
        ("is_sure", "The chance that it is enough for {project} is {chance:2}."),
        ("is_certain", "It is all but certain to be enough for {project}."),
        (
            "is_raw",
            "That counts on your own {scouring_yield} of clean wool; at the {scour_low!} to"
            " {scour_high} published for {fleece_name} it takes {raw_low!} to {raw_high}.",
        ),
        ("is_outside", "Yours lies outside that: weigh a washed sample again."),
        (
            "is_plied",
            "Spin {yards_per_ply} for each of {plies} plies at {singles_grist}, where a cut is"
            " {singles_cut} on the balance; the plied yarn’s, washed, is {plied_cut}.",
        ),
        (
            "is_single",
            "Spin {yards_per_ply} at {singles_grist}, where a cut is {singles_cut} on the balance.",
        ),
        ("is_more_evenings", "That is {all_hours:2} hours at the wheel, {evenings} evenings,"),
        ("is_one_evening", "That is {all_hours:2} hours at the wheel, one evening,"),
        ("is_more_bobbins", "and {bobbins} bobbins with {fibre_per_bobbin} of fibre each."),
        ("is_one_bobbin", "and one bobbin."),
    )
    labels: ClassVar = {
        "raw_label": "raw fleece {raw}",
        "clean_label": "washed fleece {clean}",
        "prepared_label": "prepared fibre {prepared}",
        "spun_label": "yarn {spun}",
        "yarn_label": "washed yarn {yarn}",
        "scouring_label": "grease and dirt, {scouring_loss}",
        "preparing_label": "carding or combing waste, {preparing_loss}",
        "spinning_label": "spinning and plying waste, {spinning_loss}",
        "washing_label": "lost in the wash, {washing_loss}",
        "buy_label": "{chance:2}",
        "hours_label": "{all_hours:2} hours",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out what hangs on a choice, and the chance that the fibre is enough."""
        chosen = {
            "is_of_single": self.sample_of == "single",
            "is_raw": self.buying == "raw",
            "is_washed": self.buying == "washed",
        }
        inputs = {name: getattr(self, name) for name in self.inputs()}
        v = SimpleNamespace(**inputs, **chosen)
        at = spin_chain.chain(v)
        for which in ("singles_grist", "yarn_grist"):
            if odd := unlikely_grist(at[which]):
                name = "single" if which == "singles_grist" else "yarn"
                return self.no_answer(f"Of the {name} that this plan asks for: {odd}")
        bought = spin_chain.purchase(v, at)
        published = _FLEECES[self.fleece]
        low, high = published.shares
        chance = buying.chance(v, bought["yards_made"])
        return chosen | {
            "is_outside": self.buying == "raw" and not low <= self.scouring_yield <= high,
            "is_certain": chance >= _ALL_BUT_CERTAIN,
            "bought": spin_chain.BOUGHT[self.buying],
            "fleece_name": published.name,
            "origin": str(published),
            "scour_low": low,
            "scour_high": high,
            "first_stage": _STAGES[self.buying],
            "chance": chance,
            "sure_ratio": buying.sure_ratio(v),
            "chances": buying.chances(v, bought["put_ups"], bought["yards_per_put_up"]),
        }

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs and what was chosen."""
        at = spin_chain.chain(v)
        bought, work = spin_chain.purchase(v, at), spin_chain.work(v, at)
        sure = whole_up(v.project * v.sure_ratio / bought["yards_per_put_up"])
        return {
            **at,
            **bought,
            **work,
            "is_plied": v.plies > 1,
            "is_single": v.plies <= 1,
            "is_unsure": bought["put_ups"] < sure,
            "is_sure": choose(v.is_certain, 0, bought["put_ups"] >= sure),
            "is_one_evening": work["evenings"] <= 1,
            "is_more_evenings": work["evenings"] > 1,
            "is_one_bobbin": work["bobbins"] <= 1,
            "is_more_bobbins": work["bobbins"] > 1,
            "is_shrinking": v.wash_shrinkage + v.wash_loss > 0,
            "singles_cut": formulas.cut_from_grist(at["singles_grist"], v.balance_factor),
            "unwashed_cut": formulas.cut_from_grist(at["unwashed_grist"], v.balance_factor),
            "plied_cut": formulas.cut_from_grist(at["yarn_grist"], v.balance_factor),
            "raw_low": at["clean"] / v.scour_high,
            "raw_high": at["clean"] / v.scour_low,
            "scouring_loss": at["raw"] - at["clean"],
            "preparing_loss": at["clean"] - at["prepared"],
            "spinning_loss": at["prepared"] - at["spun"],
            "washing_loss": at["spun"] - at["yarn"],
            "put_ups_sure": sure,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the plan as it is worked by hand, a stage a line."""
        mass = "lb" if measure.units["mass"] == "oz" else measure.units["mass"]
        per_hundred = "yards" if measure.units["length"] == "yd" else "metres"
        yield None, "Yarn: {project:6} and {reserve} in reserve is {yards_planned:6}."
        yield None, f"At {{yarn_grist:6}} it weighs {{yarn@{mass}:6}}."
        yield (
            "is_shrinking",
            "Before its wash, which shortens it by {wash_shrinkage} and lightens it by {wash_loss},"
            f" that is {{yards_to_ply:6}} at {{unwashed_grist:6}}, {{spun@{mass}:6}}, and a cut of"
            " {unwashed_cut:4}.",
        )
        yield (
            None,
            "Singles: {yards_to_ply:6} × {plies} plies × {take_up_used:4} take-up ="
            " {singles_yards:6}, at {singles_grist:6}.",
        )
        yield (
            None,
            "A cut on the balance: {singles_cut:4} of single, {plied_cut:4} of washed yarn, at a"
            " factor of {balance_factor}.",
        )
        yield (
            None,
            "Prepared fibre, of which spinning and plying lose {spinning_waste}:"
            f" {{prepared@{mass}:6}}.",
        )
        yield (
            None,
            "Washed fleece, of which carding or combing loses {preparing_waste}:"
            f" {{clean@{mass}:5}}.",
        )
        yield (
            None,
            f"Raw fleece, of which {{scouring_yield}} is clean wool: {{raw@{mass}:5}}.",
        )
        yield "is_raw", "The published range is {origin}."
        yield (
            None,
            "Cost: {put_ups} × {currency}\N{NO-BREAK SPACE}{price} ="
            " {currency}\N{NO-BREAK SPACE}{cost}, for 100 "
            f"{per_hundred} {{currency}} {{cost_per_100_{per_hundred}}}.",
        )
        yield (
            None,
            "Time: {singles_yards} ÷ {spinning_speed} is {spinning_hours:4} hours, and plying takes"
            " {plying_hours:4}.",
        )
        yield (
            None,
            "Bobbins: {bobbins_per_ply} for each ply, each with {fibre_per_bobbin:4} of fibre and"
            " about {yards_per_bobbin} of single.",
        )
        yield (
            None,
            "The chance counts the doubts of grist, of yields and of the project together; the"
            " reserve may be used up.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the fibre shrinking to yarn, the chance of enough, and hours against plies."""
        return (
            plan_charts.fleece_to_yarn(v),
            plan_charts.chance_of_enough(v),
            plan_charts.hours_against_plies(v),
        )

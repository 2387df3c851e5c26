"""Two plans for one project side by side: two fibres, or two ply structures."""

from collections.abc import Iterable, Mapping
from types import SimpleNamespace
from typing import Any, ClassVar

from yarnsheets.charts import two_plan_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.estimates import unlikely_grist
from yarnsheets.sheets import choices, plying, spin_chain, spin_inputs
from yarnsheets.sheets.inputs import Number, Result
from yarnsheets.sheets.sheet import Line, Sheet

# What differs between the plans; the rest of the chain is the same for both.
_OWN = (
    *("plies", "take_up", "buying", "put_up", "price", "preparing_waste", "scouring_yield"),
    "spinning_speed",
)
_SHOWN = ("needed", "put_ups", "cost", "singles_grist", "singles_yards", "all_hours", "evenings")


class TwoPlans(Sheet):
    """What each of two plans takes, and which takes less.

    Examples
    --------
    >>> sheet = TwoPlans(plies_1=2, plies_2=3, take_up_1=1.0, take_up_2=1.0)
    >>> round(sheet.singles_yards_2 / sheet.singles_yards_1, 9)
    1.5
    """

    project = spin_inputs.project()
    grist_wanted = spin_inputs.grist_wanted()
    plies_1 = spin_inputs.plies("First plan: plies")
    buying_1 = spin_inputs.buying("First plan: I buy")
    price_1 = spin_inputs.price("First plan: price of one put-up")
    plies_2 = spin_inputs.plies("Second plan: plies")
    buying_2 = spin_inputs.buying("Second plan: I buy")
    price_2 = spin_inputs.price("Second plan: price of one put-up")
    put_up_1 = spin_inputs.put_up("First plan: sold by", more=True)
    take_up_1 = plying.take_up(
        1.03, "Not used for one strand.", title="First plan: take-up in plying", more=True
    )
    preparing_waste_1 = spin_inputs.preparing_waste("First plan: waste in carding or combing")
    scouring_yield_1 = spin_inputs.scouring_yield("First plan: clean wool from raw fleece")
    spinning_speed_1 = spin_inputs.spinning_speed("First plan: I spin", more=True)
    put_up_2 = spin_inputs.put_up("Second plan: sold by", more=True)
    take_up_2 = plying.take_up(
        1.03, "Not used for one strand.", title="Second plan: take-up in plying", more=True
    )
    preparing_waste_2 = spin_inputs.preparing_waste("Second plan: waste in carding or combing")
    scouring_yield_2 = spin_inputs.scouring_yield("Second plan: clean wool from raw fleece")
    spinning_speed_2 = spin_inputs.spinning_speed("Second plan: I spin", more=True)
    reserve = spin_inputs.reserve()
    spinning_waste = spin_inputs.spinning_waste()
    plying_speed = spin_inputs.plying_speed()
    evening_hours = spin_inputs.evening_hours()
    bobbin_capacity = spin_inputs.bobbin_capacity()
    currency = spin_inputs.currency()

    is_raw_1 = Result("flag", "the first plan buys raw fleece")
    is_washed_1 = Result("flag", "the first plan buys washed fleece")
    is_raw_2 = Result("flag", "the second plan buys raw fleece")
    is_washed_2 = Result("flag", "the second plan buys washed fleece")
    has_fleece = Result("flag", "a plan buys fleece, raw or washed")
    bought_1 = Result("word", "what the first plan buys")
    bought_2 = Result("word", "what the second plan buys")

    needed_1 = Number("mass", "first plan: fibre needed, as it is bought")
    needed_2 = Number("mass", "second plan: fibre needed, as it is bought")
    put_ups_1 = Number("number", "first plan: put-ups to buy")
    put_ups_2 = Number("number", "second plan: put-ups to buy")
    cost_1 = Number("money", "first plan: cost")
    cost_2 = Number("money", "second plan: cost")
    singles_grist_1 = Number("grist", "first plan: grist of each single")
    singles_grist_2 = Number("grist", "second plan: grist of each single")
    singles_yards_1 = Number("length", "first plan: singles of all plies together")
    singles_yards_2 = Number("length", "second plan: singles of all plies together")
    all_hours_1 = Number("number", "first plan: hours of spinning and plying")
    all_hours_2 = Number("number", "second plan: hours of spinning and plying")
    evenings_1 = Number("number", "first plan: evenings they fill")
    evenings_2 = Number("number", "second plan: evenings they fill")
    cost_apart = Number("money", "how far the costs are apart")
    hours_apart = Number("number", "how far the hours are apart")
    first_is_cheaper = Number("flag", "the first plan costs less")
    second_is_cheaper = Number("flag", "the second plan costs less")
    as_cheap = Number("flag", "both cost the same")
    first_is_quicker = Number("flag", "the first plan takes fewer hours")
    second_is_quicker = Number("flag", "the second plan takes fewer hours")
    as_quick = Number("flag", "both take the same hours")

    answer = (
        (
            None,
            "First plan: {put_ups_1} × {put_up_1} of {bought_1} for {currency}"
            "\N{NO-BREAK SPACE}{cost_1}, and {all_hours_1:2} hours at the wheel."
            " Second plan: {put_ups_2} × {put_up_2} of {bought_2} for {currency}"
            "\N{NO-BREAK SPACE}{cost_2}, and {all_hours_2:2} hours.",
        ),
        (
            "first_is_cheaper",
            "The first costs {currency}\N{NO-BREAK SPACE}{cost_apart} less",
        ),
        (
            "second_is_cheaper",
            "The second costs {currency}\N{NO-BREAK SPACE}{cost_apart} less",
        ),
        ("as_cheap", "Both cost the same"),
        ("first_is_quicker", "and the first takes {hours_apart:2} hours less."),
        ("second_is_quicker", "and the second takes {hours_apart:2} hours less."),
        ("as_quick", "and both take as long."),
        ("has_fleece", "The hours leave out the preparing of a fleece."),
    )
    labels: ClassVar = {
        "cost_label_1": "{currency}\N{NO-BREAK SPACE}{cost_1}",
        "cost_label_2": "{currency}\N{NO-BREAK SPACE}{cost_2}",
        "hours_label_1": "{all_hours_1:2} hours",
        "hours_label_2": "{all_hours_2:2} hours",
        "fibre_label_1": "{needed_1}",
        "fibre_label_2": "{needed_2}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Look up what each plan buys, unless it asks for singles that no one spins."""
        v = SimpleNamespace(**{name: getattr(self, name) for name in self.inputs()})
        flags = {
            f"{flag}_{which}": getattr(v, f"buying_{which}") == kind
            for which in (1, 2)
            for flag, kind in (("is_raw", "raw"), ("is_washed", "washed"))
        }
        for which, plan in ((1, "first"), (2, "second")):
            single = _plan(SimpleNamespace(**vars(v), **flags), which)["singles_grist"]
            if odd := unlikely_grist(single):
                return self.no_answer(f"Of the single that the {plan} plan asks for: {odd}")
        return flags | {
            "has_fleece": any(flags.values()),
            "bought_1": spin_chain.BOUGHT[self.buying_1],
            "bought_2": spin_chain.BOUGHT[self.buying_2],
        }

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out both plans by the same chain."""
        found = {
            f"{name}_{which}": value
            for which in (1, 2)
            for name, value in _plan(v, which).items()
            if name in _SHOWN
        }
        cost, hours = (found[f"{name}_1"] - found[f"{name}_2"] for name in ("cost", "all_hours"))
        return found | {
            "cost_apart": (cost**2) ** 0.5,
            "hours_apart": (hours**2) ** 0.5,
            "first_is_cheaper": cost < 0,
            "second_is_cheaper": cost > 0,
            "as_cheap": cost == 0,
            "first_is_quicker": hours < 0,
            "second_is_quicker": hours > 0,
            "as_quick": hours == 0,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write both plans in short; the worksheet on one spin works one out in full."""
        for which, name in ((1, "First"), (2, "Second")):
            yield (
                None,
                f"{name} plan: {{plies_{which}}} plies take {{singles_yards_{which}:4}} of single"
                f" at {{singles_grist_{which}:4}}, which is {{all_hours_{which}:4}} hours with"
                f" plying, {{evenings_{which}}} evenings.",
            )
            yield (
                None,
                f"It takes {{needed_{which}:4}} of {{bought_{which}}}:"
                f" {{put_ups_{which}}} × {{put_up_{which}}}, rounded up, at {{currency}} "
                f"{{price_{which}}} each, is {{currency}} {{cost_{which}}}.",
            )
        yield None, "“What does this spin take?” works such a plan out stage by stage."

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw cost, hours and fibre of both plans."""
        return two_plan_charts.side_by_side(v)


def _plan(v: Any, which: int) -> dict[str, Any]:
    """Give the numbers of one plan: its own inputs, and those both share."""
    own = {name: getattr(v, f"{name}_{which}") for name in _OWN if name != "buying"}
    flags = {name: getattr(v, f"{name}_{which}") for name in ("is_raw", "is_washed")}
    shared = ("project", "grist_wanted", "reserve", "spinning_waste", "plying_speed")
    more = ("evening_hours", "bobbin_capacity")
    both = {name: getattr(v, name) for name in (*shared, *more)}
    # the sample is of the finished yarn, washed, and the skeins' own wash is left out
    plan = SimpleNamespace(
        **own, **flags, **both, is_of_single=False, wash_shrinkage=0, wash_loss=0
    )
    at = spin_chain.chain(plan)
    return at | spin_chain.purchase(plan, at) | spin_chain.work(plan, at)

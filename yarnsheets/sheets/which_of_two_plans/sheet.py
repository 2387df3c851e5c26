"""Two plans for one project side by side: two fibres, or two ply structures."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any, ClassVar

from yarnsheets.estimates import unlikely_grist
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared import plying
from yarnsheets.sheets.what_does_this_spin_take import asked, chain

_SHOWN = ("needed", "put_ups", "cost", "singles_grist", "singles_yards", "all_hours", "evenings")


class WhichOfTwoPlans(Sheet):
    """What each of two plans takes, and which takes less.

    Examples
    --------
    >>> sheet = WhichOfTwoPlans(plies_1=2, plies_2=3, take_up_1=1.0, take_up_2=1.0)
    >>> round(sheet.singles_yards_2 / sheet.singles_yards_1, 9)
    1.5
    """

    question = "Which of two plans takes less?"
    onward = (
        Onward("what-does-this-spin-take", {"project": "project", "grist_wanted": "grist_wanted"}),
    )

    project = asked.project()
    grist_wanted = asked.grist_wanted()
    plies_1 = asked.plies("First plan: plies")
    buying_1 = asked.buying("First plan: I buy")
    price_1 = asked.price("First plan: price of one put-up")
    plies_2 = asked.plies("Second plan: plies")
    buying_2 = asked.buying("Second plan: I buy")
    price_2 = asked.price("Second plan: price of one put-up")
    put_up_1 = asked.put_up("First plan: sold by", more=True)
    take_up_1 = plying.take_up(
        1.03, "Not used for one strand.", title="First plan: take-up in plying", more=True
    )
    preparing_waste_1 = asked.preparing_waste("First plan: waste in carding or combing")
    scouring_yield_1 = asked.scouring_yield("First plan: clean wool from raw fleece")
    spinning_speed_1 = asked.spinning_speed("First plan: I spin", more=True)
    put_up_2 = asked.put_up("Second plan: sold by", more=True)
    take_up_2 = plying.take_up(
        1.03, "Not used for one strand.", title="Second plan: take-up in plying", more=True
    )
    preparing_waste_2 = asked.preparing_waste("Second plan: waste in carding or combing")
    scouring_yield_2 = asked.scouring_yield("Second plan: clean wool from raw fleece")
    spinning_speed_2 = asked.spinning_speed("Second plan: I spin", more=True)
    reserve = asked.reserve()
    spinning_waste = asked.spinning_waste()
    plying_speed = asked.plying_speed()
    evening_hours = asked.evening_hours()
    bobbin_capacity = asked.bobbin_capacity()
    currency = asked.currency()

    has_fleece = Found("flag", "a plan buys fleece, raw or washed")
    bought_1 = Found("word", "what the first plan buys")
    bought_2 = Found("word", "what the second plan buys")

    needed_1 = Found("mass", "first plan: fibre needed, as it is bought")
    needed_2 = Found("mass", "second plan: fibre needed, as it is bought")
    put_ups_1 = Found("number", "first plan: put-ups to buy")
    put_ups_2 = Found("number", "second plan: put-ups to buy")
    cost_1 = Found("money", "first plan: cost")
    cost_2 = Found("money", "second plan: cost")
    singles_grist_1 = Found("grist", "first plan: grist of each single")
    singles_grist_2 = Found("grist", "second plan: grist of each single")
    singles_yards_1 = Found("length", "first plan: singles of all plies together")
    singles_yards_2 = Found("length", "second plan: singles of all plies together")
    all_hours_1 = Found("number", "first plan: hours of spinning and plying")
    all_hours_2 = Found("number", "second plan: hours of spinning and plying")
    evenings_1 = Found("number", "first plan: evenings they fill")
    evenings_2 = Found("number", "second plan: evenings they fill")
    cost_apart = Found("money", "how far the costs are apart")
    hours_apart = Found("number", "how far the hours are apart")
    first_is_cheaper = Found("flag", "the first plan costs less")
    second_is_cheaper = Found("flag", "the second plan costs less")
    as_cheap = Found("flag", "both cost the same")
    first_is_quicker = Found("flag", "the first plan takes fewer hours")
    second_is_quicker = Found("flag", "the second plan takes fewer hours")
    as_quick = Found("flag", "both take the same hours")

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
        """Work out both plans by the same chain, unless one asks for singles that no one spins."""
        first, second = (chain.spin(plan) for plan in self._plans())
        for name, plan in (("first", first), ("second", second)):
            if odd := unlikely_grist(plan["singles_grist"], slot):
                return no_answer(f"Of the single that the {name} plan asks for: {odd}")
        cost = first["cost"] - second["cost"]
        hours = first["all_hours"] - second["all_hours"]
        return {
            **{f"{name}_1": first[name] for name in _SHOWN},
            **{f"{name}_2": second[name] for name in _SHOWN},
            "bought_1": chain.BOUGHT[self.buying_1],
            "bought_2": chain.BOUGHT[self.buying_2],
            "has_fleece": self.buying_1 != "prepared" or self.buying_2 != "prepared",
            "cost_apart": abs(cost),
            "hours_apart": abs(hours),
            "first_is_cheaper": cost < 0,
            "second_is_cheaper": cost > 0,
            "as_cheap": cost == 0,
            "first_is_quicker": hours < 0,
            "second_is_quicker": hours > 0,
            "as_quick": hours == 0,
        }

    def _plans(self) -> tuple[chain.Plan, chain.Plan]:
        first = chain.Plan(
            project=self.project,
            reserve=self.reserve,
            grist_wanted=self.grist_wanted,
            plies=self.plies_1,
            take_up=self.take_up_1,
            spinning_waste=self.spinning_waste,
            preparing_waste=self.preparing_waste_1,
            scouring_yield=self.scouring_yield_1,
            buying=self.buying_1,
            put_up=self.put_up_1,
            price=self.price_1,
            spinning_speed=self.spinning_speed_1,
            plying_speed=self.plying_speed,
            evening_hours=self.evening_hours,
            bobbin_capacity=self.bobbin_capacity,
        )
        second = replace(
            first,
            plies=self.plies_2,
            take_up=self.take_up_2,
            preparing_waste=self.preparing_waste_2,
            scouring_yield=self.scouring_yield_2,
            buying=self.buying_2,
            put_up=self.put_up_2,
            price=self.price_2,
            spinning_speed=self.spinning_speed_2,
        )
        return first, second

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

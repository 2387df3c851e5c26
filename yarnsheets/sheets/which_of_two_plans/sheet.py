"""Two plans for one project side by side: two fibres, or two ply structures."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any, ClassVar

from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.sheets.shared import plying
from yarnsheets.sheets.what_does_this_spin_take import asked, buying, chain

_SHOWN = (
    *("needed", "put_ups", "cost", "singles_grist", "singles_yards", "all_hours", "evenings"),
    *("bobbins", "plied_bobbins", "all_bobbins"),
)
_LEAST_MONEY = 0.005  # what is less is written as nothing
_LEAST_HOURS = 1 / 60


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
        Onward(
            "what-does-this-spin-take",
            {
                "project": "project",
                "reserve": "reserve",
                "grist_wanted": "grist_wanted",
                "spinning_waste": "spinning_waste",
            },
        ),
    )

    project = asked.project()
    reserve = asked.reserve()
    grist_wanted = asked.grist_wanted()
    spinning_waste = asked.spinning_waste()

    first_plan = Group("First plan")
    plies_1 = asked.plies("First plan: plies")
    take_up_1 = plying.take_up(1.03, title="First plan: take-up in plying")
    buying_1 = asked.buying("First plan: I buy")
    put_up_1 = asked.put_up("First plan: sold by")
    price_1 = asked.price("First plan: price of one")
    preparing_waste_1 = asked.preparing_waste("First plan: waste in carding or combing")
    scouring_yield_1 = asked.scouring_yield("First plan: clean wool from raw fleece")
    spinning_speed_1 = asked.spinning_speed("First plan: I spin")

    second_plan = Group("Second plan")
    plies_2 = asked.plies("Second plan: plies")
    take_up_2 = plying.take_up(1.03, title="Second plan: take-up in plying")
    buying_2 = asked.buying("Second plan: I buy")
    put_up_2 = asked.put_up("Second plan: sold by")
    price_2 = asked.price("Second plan: price of one")
    preparing_waste_2 = asked.preparing_waste("Second plan: waste in carding or combing")
    scouring_yield_2 = asked.scouring_yield("Second plan: clean wool from raw fleece")
    spinning_speed_2 = asked.spinning_speed("Second plan: I spin")

    finer_points = Group("Finer points", folded=True)
    plying_speed = asked.plying_speed()
    evening_hours = asked.evening_hours()
    bobbin_capacity = asked.bobbin_capacity()
    currency = asked.currency()

    has_fleece = Found("flag", "a plan buys fleece, raw or washed")
    bought_1 = Found("word", "what the first plan buys")
    bought_2 = Found("word", "what the second plan buys")

    is_plied_1 = Found("flag", "the first plan plies two singles or more")
    is_plied_2 = Found("flag", "the second plan does")
    is_single_1 = Found("flag", "the first plan’s single is the yarn")
    is_single_2 = Found("flag", "the second plan’s is")
    yards_planned = Found("length", "washed yarn, with the reserve")
    needed_1 = Found("mass", "first plan: fibre needed, as it is bought")
    needed_2 = Found("mass", "second plan: fibre needed, as it is bought")
    put_ups_1 = Found("number", "first plan: how many to buy")
    put_ups_2 = Found("number", "second plan: how many to buy")
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
    bobbins_1 = Found("number", "first plan: bobbins of single")
    bobbins_2 = Found("number", "second plan: bobbins of single")
    plied_bobbins_1 = Found("number", "first plan: bobbins of plied yarn")
    plied_bobbins_2 = Found("number", "second plan: bobbins of plied yarn")
    all_bobbins_1 = Found("number", "first plan: bobbins of both")
    all_bobbins_2 = Found("number", "second plan: bobbins of both")
    coin = Found("word", "what stands before a sum of money")
    cost_apart = Found("money", "how far the costs are apart")
    hours_apart = Found("number", "how far the hours are apart")
    first_is_cheaper = Found("flag", "the first plan costs less")
    second_is_cheaper = Found("flag", "the second plan costs less")
    as_cheap = Found("flag", "both cost the same")
    cheaper_is_quicker = Found("flag", "the plan that costs less takes fewer hours too")
    first_is_quicker = Found("flag", "the first plan takes fewer hours, and costs no less")
    second_is_quicker = Found("flag", "the second plan takes fewer hours, and costs no less")
    as_quick = Found("flag", "both take the same hours")

    answer = (
        (
            "first_is_cheaper",
            "The first plan costs {coin}{cost_apart} less",
        ),
        (
            "second_is_cheaper",
            "The second plan costs {coin}{cost_apart} less",
        ),
        ("as_cheap", "Both plans cost the same"),
        ("cheaper_is_quicker", "and takes {hours_apart:2|hour|hours} less."),
        ("first_is_quicker", "and the first takes {hours_apart:2|hour|hours} less."),
        ("second_is_quicker", "and the second takes {hours_apart:2|hour|hours} less."),
        ("as_quick", "and both take as long."),
        (
            None,
            "For {project} and {reserve} in reserve the first takes {put_ups_1} × {put_up_1} of"
            " {bought_1}, {coin}{cost_1} and {all_hours_1:2|hour|hours} at"
            " the wheel.",
        ),
        (
            None,
            "The second takes {put_ups_2} × {put_up_2} of {bought_2},"
            " {coin}{cost_2} and {all_hours_2:2|hour|hours}.",
        ),
    )
    labels: ClassVar = {
        "cost_label_1": "{coin}{cost_1}",
        "cost_label_2": "{coin}{cost_2}",
        "hours_label_1": "{all_hours_1:2|hour|hours}",
        "hours_label_2": "{all_hours_2:2|hour|hours}",
        "fibre_label_1": "{needed_1}",
        "fibre_label_2": "{needed_2}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out both plans by the same chain, unless one asks for singles that no one spins."""
        first, second = (chain.spin(plan) for plan in self._plans())
        for name, plan in (("first", first), ("second", second)):
            if odd := chain.unlikely(f"The {name} plan’s single", plan["singles_grist"]):
                return no_answer(odd)
        cost = first["cost"] - second["cost"]
        hours = first["all_hours"] - second["all_hours"]
        is_first_cheaper, is_second_cheaper = cost <= -_LEAST_MONEY, cost >= _LEAST_MONEY
        is_first_quicker, is_second_quicker = hours <= -_LEAST_HOURS, hours >= _LEAST_HOURS
        return {
            **{f"{name}_1": first[name] for name in _SHOWN},
            **{f"{name}_2": second[name] for name in _SHOWN},
            "bought_1": chain.BOUGHT[self.buying_1],
            "bought_2": chain.BOUGHT[self.buying_2],
            "has_fleece": self.buying_1 != "prepared" or self.buying_2 != "prepared",
            "is_plied_1": self.plies_1 > 1,
            "is_plied_2": self.plies_2 > 1,
            "is_single_1": self.plies_1 <= 1,
            "is_single_2": self.plies_2 <= 1,
            "coin": buying.coin(self.currency),
            "yards_planned": first["yards_planned"],
            "cost_apart": abs(cost),
            "hours_apart": abs(hours),
            "first_is_cheaper": is_first_cheaper,
            "second_is_cheaper": is_second_cheaper,
            "as_cheap": not is_first_cheaper and not is_second_cheaper,
            "cheaper_is_quicker": (is_first_cheaper and is_first_quicker)
            or (is_second_cheaper and is_second_quicker),
            "first_is_quicker": is_first_quicker and not is_first_cheaper,
            "second_is_quicker": is_second_quicker and not is_second_cheaper,
            "as_quick": not is_first_quicker and not is_second_quicker,
        }

    def unused(self) -> list[str]:
        """Name what one single does not take, and what fibre that is bought so does not lose."""
        names: list[str] = []
        if self.plies_1 <= 1 and self.plies_2 <= 1:
            names = [*names, "plying_speed"]
        for which, plies, bought in (
            ("1", self.plies_1, self.buying_1),
            ("2", self.plies_2, self.buying_2),
        ):
            if plies <= 1:
                names = [*names, f"take_up_{which}"]
            if bought == "prepared":
                names = [*names, f"preparing_waste_{which}"]
            if bought != "raw":
                names = [*names, f"scouring_yield_{which}"]
        return names

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
        yield None, "Yarn: {project:6} and {reserve} in reserve is {yards_planned:6}."
        for which, name in ((1, "First"), (2, "Second")):
            yield (
                None,
                f"{name} plan: {{plies_{which}|ply takes|plies take}} {{singles_yards_{which}:4}}"
                f" of single at {{singles_grist_{which}:4}}, {{all_hours_{which}:4|hour|hours}} in"
                f" all, which is {{evenings_{which}|evening|evenings}}.",
            )
            yield (
                None,
                f"It takes {{needed_{which}:4}} of {{bought_{which}}}:"
                f" {{put_ups_{which}}} × {{put_up_{which}}}, rounded up, at"
                f" {{coin}}{{price_{which}}} each, is"
                f" {{coin}}{{cost_{which}}}.",
            )
            yield (
                f"is_plied_{which}",
                f"Bobbins: {{bobbins_{which}}} of single and {{plied_bobbins_{which}}} of plied"
                f" yarn, {{all_bobbins_{which}}} in all.",
            )
            yield (
                f"is_single_{which}",
                f"Bobbins: {{bobbins_{which}}}.",
            )
        yield None, "“What does this spin take?” works such a plan out stage by stage."

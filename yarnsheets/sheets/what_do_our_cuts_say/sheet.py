"""What a class's cuts of one yarn say together: its grist, and which balance disagrees."""

import math
from collections.abc import Iterable, Mapping
from statistics import median
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates.budget import Budget, Component
from yarnsheets.estimates.odd_one import odd_one
from yarnsheets.estimates.readings import grist_from_cuts, spread_of_cuts
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Input, Pairs, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared import cutting

# A cut so many times the middle one is a slip, not yarn (common practice, no source).
_FAR = 3

# So many places along the chart of how the mean settles.
_PLACES = 60


class WhatDoOurCutsSay(Sheet):
    """One yarn's grist from the cuts of many hands, and the balance that disagrees.

    Examples
    --------
    >>> sheet = WhatDoOurCutsSay(cuts=[(1, 9.6), (1, 10.1), (2, 10.4), (2, 9.8), (3, 10.6)])
    >>> round(sheet.grist, 2)
    1008.65
    """

    question = "What do our cuts say?"
    onward = (
        Onward("how-many-yards", {"grist": "grist"}),
        Onward("is-my-balance-right", {"balance_factor": "balance_factor"}),
    )

    cuts = Pairs(
        "Cuts of one yarn",
        (
            Input(
                "Balance",
                "number",
                1,
                low=1,
                high=99,
                step=1,
                measure="Give each balance a number.",
            ),
            Input("Cut", "short", 9.6, low=0.1, high=400, measure="The cut that hangs level."),
        ),
        [
            *[(1, 9.6), (2, 10.2), (3, 10.9), (4, 9.9), (1, 10.1), (2, 9.8), (3, 11.2), (4, 10.0)],
            *[(1, 9.9), (2, 10.4), (3, 10.7), (4, 10.4), (1, 10.3), (2, 9.7), (3, 11.0), (4, 9.6)],
        ],
        measure="A line for each cut: the number of the balance, then the cut. All are of the same"
        " yarn, from different places.",
        drawing="cut",
    )
    balance_factor = cutting.balance_factor(
        "The makers’ number, the same for all balances: length of cut times this is grist."
    )
    tolerance = Input(
        "Each balance is right to within",
        "share",
        0.02,
        low=0.001,
        high=0.2,
        measure="2% is common for one that was never checked (common practice, no source).",
    )
    left_out = Input(
        "Leave out balance",
        "number",
        0,
        low=0,
        high=99,
        step=1,
        measure="The number of a balance that is wrong; 0 for none.",
    )

    has_range = Found("flag", "there are two cuts or more")
    is_odd = Found("flag", "a balance differs from the others by more than chance")
    is_odd_high = Found("flag", "it shows more than they do")
    is_odd_low = Found("flag", "it shows less")
    is_alike = Found("flag", "there are several balances, and none does")
    is_alone = Found("flag", "there is one balance, or too little to hold one against another")
    has_far = Found("flag", "a cut was passed over, since it is far from all others")
    count = Found("number", "cuts counted")
    balances = Found("number", "balances they were taken on")
    grist = Found("grist", "harmonic mean of the cuts' grists")
    grist_low = Found("grist", "low end of its range")
    grist_high = Found("grist", "high end of its range")
    least = Found("grist", "least grist of a cut, or the low end of the range if that is less")
    most = Found("grist", "greatest grist of a cut, or the high end if that is more")
    plain_mean = Found("grist", "arithmetic mean of the cuts' grists, for comparison")
    spread = Found("share", "coefficient of variation of the cuts")
    from_cuts = Found("share", "what the cuts' spread makes of the range")
    from_balances = Found("share", "what the balances make of it")
    half_width = Found("share", "how far the farther end of the range is off, of the grist")
    first_balance = Found("number", "lowest number of a balance")
    last_balance = Found("number", "highest number of a balance")
    odd = Found("number", "the balance that differs most")
    odd_grist = Found("grist", "grist by that balance alone")
    odd_by = Found("share", "how far it differs from the others")
    others = Found("grist", "grist by all others")
    far = Found("short", "the first cut passed over")
    far_balance = Found("number", "its balance")
    far_count = Found("number", "how many were passed over")

    readings = Table("each cut's balance and grist")
    settling = Table("the mean and its range after so many cuts")

    answer = (
        (
            "has_range",
            "The yarn’s grist is {grist*}, between {grist_low!} and {grist_high!}, 95% sure.",
        ),
        (
            "not is_alone",
            "{count|cut|cuts} on {balances|balance|balances} spread by {spread};",
        ),
        ("is_odd_high", "balance {odd} shows {odd_by:2} more than the others, beyond chance."),
        ("is_odd_low", "balance {odd} shows {odd_by:2} less than the others, beyond chance."),
        ("is_alike", "no balance differs from the others beyond chance."),
        (
            "is_alone",
            "{count|cut|cuts} on {balances|balance|balances} spread by {spread}.",
        ),
        (
            "has_far",
            "Not counted, since far from all others: {far_count|cut|cuts}, such as {far}.",
        ),
    )
    labels: ClassVar = {"odd_label": "balance {odd}", "grist_label": "{grist}"}

    def work_out(self) -> Mapping[str, Any]:
        """Work out the grist of all cuts with its range, and hold each balance to the others."""
        cuts = [(name, cut) for name, cut in self.cuts if name != self.left_out]
        if len(cuts) < 2:
            return no_answer(_too_few(len(cuts)))
        middle = median([cut for _, cut in cuts])
        likely = [(name, cut) for name, cut in cuts if middle / _FAR < cut < middle * _FAR]
        far = [(name, cut) for name, cut in cuts if not middle / _FAR < cut < middle * _FAR]
        if len(likely) < 2:
            return no_answer(
                f"The cuts are {slot(cuts[0][1], 'short')} and {slot(cuts[1][1], 'short')}: they"
                " cannot be of one yarn. Check both, and their units."
            )
        lengths = [cut for _, cut in likely]
        names = [name for name, _ in likely]
        budget = self._budget(likely)
        grist = grist_from_cuts(lengths, self.balance_factor).value
        low, high = budget.range_of(grist)
        grists = [formulas.grist_from_cut(cut, self.balance_factor) for cut in lengths]
        odd = odd_one(likely)
        is_odd = odd is not None and odd.is_beyond_chance
        of_odd = [cut for name, cut in likely if odd is not None and name == odd.name]
        of_others = [cut for name, cut in likely if odd is not None and name != odd.name]
        return {
            "has_range": True,
            "is_odd": is_odd,
            "is_odd_high": is_odd and odd is not None and odd.ratio > 1,
            "is_odd_low": is_odd and odd is not None and odd.ratio < 1,
            "is_alike": odd is not None and not is_odd,
            "is_alone": odd is None,
            "has_far": len(far) > 0,
            "count": len(likely),
            "balances": len(set(names)),
            "grist": grist,
            "grist_low": low,
            "grist_high": high,
            "least": min(*grists, low),
            "most": max(*grists, high),
            "plain_mean": sum(grists) / len(grists),
            "spread": spread_of_cuts(lengths),
            "from_cuts": budget.from_few(),
            "from_balances": min(budget.by_normal_curve(), budget.by_bounds()),
            "half_width": budget.either_way(),
            "first_balance": min(names),
            "last_balance": max(names),
            "odd": odd.name if is_odd and odd is not None else math.nan,
            "odd_grist": self._grist_of(of_odd) if is_odd else math.nan,
            "odd_by": abs(odd.ratio - 1) if odd is not None else math.nan,
            "others": self._grist_of(of_others) if is_odd else math.nan,
            "far": far[0][1] if far else math.nan,
            "far_balance": far[0][0] if far else math.nan,
            "far_count": len(far),
            "readings": [
                {"balance": name, "found": formulas.grist_from_cut(cut, self.balance_factor)}
                for name, cut in likely
            ],
            "settling": self._settling(likely),
        }

    def _grist_of(self, cuts: list[float]) -> float:
        """Give the harmonic mean, of one cut too."""
        middle = len(cuts) / sum([1 / cut for cut in cuts])
        return float(formulas.grist_from_cut(middle, self.balance_factor))

    def _budget(self, cuts: list[tuple[float, float]]) -> Budget:
        """Give the error budget of cuts: their own spread, and the balances they were taken on."""
        lengths = [cut for _, cut in cuts]
        names = [name for name, _ in cuts]
        shares = [names.count(name) / len(cuts) for name in sorted(set(names))]
        spread = spread_of_cuts(lengths) / math.sqrt(len(cuts))
        # each balance is wrong in its own way, and in all its cuts alike (JCGM 100:2008, 4.3.7)
        balances = self.tolerance / math.sqrt(3) * math.hypot(0.0, *shares)
        return Budget(
            (
                Component("the cuts’ spread", spread, len(cuts) - 1),
                Component("the balances", balances, bound=self.tolerance),
            )
        )

    def _settling(self, cuts: list[tuple[float, float]]) -> list[dict[str, Any]]:
        """Give the mean and its range as cut came after cut."""
        step = math.ceil(len(cuts) / _PLACES)
        places = [at for at in range(2, len(cuts) + 1) if at % step == 0 or at == len(cuts)]
        rows = []
        for at in places:
            grist = grist_from_cuts([cut for _, cut in cuts[:at]], self.balance_factor).value
            low, high = self._budget(cuts[:at]).range_of(grist)
            rows.append({"at": at, "mean": grist, "low": low, "high": high})
        return rows

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the grist and its range come about."""
        yield (
            "has_range",
            "Each cut times {balance_factor} is a grist. The harmonic mean of all {count} is"
            " {grist:4}; the plain mean, {plain_mean:4}, is a little too fine, since fine places"
            " make long cuts.",
        )
        yield (
            "has_range",
            "The cuts’ spread of {spread} over the root of their number, and times Student’s t,"
            " makes {from_cuts} of the range: trimming, reading and the yarn’s own unevenness are"
            " all in it.",
        )
        yield (
            "has_range",
            "The balances, each right to within {tolerance}, make {from_balances}: more cuts do not"
            " help, more balances do.",
        )
        yield (
            "has_range",
            "Those two squared, added, and their root taken: the range is a factor either way, e to"
            " the power of that, so its farther end is {half_width} off.",
        )
        yield (
            "is_odd",
            "Balance {odd} by itself says {odd_grist:4}, all others {others:4}. Student’s t finds"
            " that too far apart for chance, even for the farthest of {balances}: check its"
            " counterweight, or leave it out.",
        )
        yield (
            "has_far",
            "A cut of {far} on balance {far_balance} is more than three times as long or as short"
            " as the middle one: it is not counted.",
        )


def _too_few(count: int) -> str:
    if count == 0:
        return (
            "There are no cuts yet. Type a line for each: the number of the balance, then the cut."
        )
    return "There is one cut so far. A second begins to show how far cuts spread."

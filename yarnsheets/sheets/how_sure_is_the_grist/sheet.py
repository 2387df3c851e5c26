"""How sure is the grist of a yarn, from one cut on the balance or several."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates.budget import Budget, balance_budget, resolution
from yarnsheets.estimates.estimate import t_factor
from yarnsheets.estimates.readings import grist_from_cuts, spread_of_cuts
from yarnsheets.estimates.searching import first_whole
from yarnsheets.estimates.unlikely import unlikely_cuts
from yarnsheets.estimates.unlikely_skeins import unlikely_step
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared import cutting, weighing
from yarnsheets.sheets.shared.reached import is_within
from yarnsheets.sheets.shared.weighing import GRAM
from yarnsheets.units import convert

_MOST_FURTHER = 500
_SEVERAL = 5

# A range narrower than this, either way, has ends that may be written alike.
_NARROW = 0.005


class HowSureIsTheGrist(Sheet):
    """Grist and yards with the range they lie in, and what would narrow it.

    Examples
    --------
    >>> sheet = HowSureIsTheGrist(cuts=[9.6, 10.1, 10.4, 9.8, 10.6])
    >>> round(sheet.grist, 2)
    1008.65
    """

    question = "How sure is the grist?"
    onward = (
        Onward(
            "is-this-enough", {"grist": "grist", "grist_range": "half_width", "weights": "weight"}
        ),
        Onward("how-many-yards", {"grist": "grist", "weight": "weight"}),
        Onward("is-my-balance-right", {"balance_factor": "balance_factor"}),
        Onward("what-do-our-cuts-say", {"balance_factor": "balance_factor"}),
        Onward("what-does-damp-air-change", {"grist": "grist", "weight": "weight"}),
        Onward("is-my-grist-drifting", {"target": "grist", "balance_factor": "balance_factor"}),
    )

    cuts = Readings(
        "Cuts on the balance",
        "short",
        [9.6, 10.1, 10.4, 9.8, 10.6],
        low=0,
        high=400,
        measure="Trim a cut until the balance hangs level, lay it along a ruler unstretched, and"
        " write down its length: 9.6 or 9 5/8. Take cuts from different parts of the skein.",
        drawing="cut",
    )
    usual_spread = Input(
        "A yarn like this is usually uneven by",
        "share",
        0.1,
        low=0.01,
        high=0.5,
        measure="One cut cannot show it. 5% is very even, 10% common, 30% very uneven (common"
        " practice, no source).",
    )
    balance_factor = cutting.balance_factor(
        "The maker’s number: length of cut times this is grist. Often 100."
    )
    weight = Input(
        "Weight of the skein",
        "mass",
        4 / 16,
        low=0.05 / 16,
        high=20,
        measure="Weigh the skein without its ties.",
    )
    wanted = Input(
        "Range I can live with, either way",
        "share",
        0.05,
        low=0.005,
        high=0.5,
        measure="5% either way of 1,000 is from 950 to 1,050.",
    )

    the_measures = Group("How well each is measured", folded=True)
    trimming = cutting.trimming()
    stretch = cutting.stretch()
    counterweight = Input(
        "The balance’s own weight is right to within",
        "share",
        0.008,
        low=0.0001,
        high=0.2,
        measure="A milligram in the 126 milligrams of a balance with factor 100 is 0.8%.",
    )
    scale_step = weighing.steps(
        0.1 * GRAM, 0.25 / 16, "The last digit of the scale that weighed the skein."
    )
    humidity = Input(
        "Damp may change the weight by, at most",
        "share",
        0.01,
        low=0.0001,
        high=0.2,
        measure="Cut and skein in the same air: nearly nothing. Weighed in other seasons: several"
        " per cent for wool.",
    )

    has_range = Found("flag", "the cuts are likely ones")
    is_one = Found("flag", "they are, and there is only one")
    is_several = Found("flag", "they are, and there are two or more")
    is_broad = Found("flag", "the ends of the range are told apart by three figures")
    is_narrow = Found("flag", "they may not be")
    is_reached = Found("flag", "the range is as narrow as wanted")
    is_reachable = Found("flag", "more cuts would make the range as narrow as wanted")
    is_out_of_reach = Found("flag", "no number of cuts would")
    is_reached_by_one = Found("flag", "the same three for one cut")
    is_reachable_from_one = Found("flag", "more cuts would do")
    is_out_of_reach_of_one = Found("flag", "no number of cuts would")
    count = Found("number", "cuts taken")
    grist = Found("grist", "harmonic mean of the cuts' grists")
    grist_low = Found("grist", "low end of the grist's range")
    grist_high = Found("grist", "high end of the grist's range")
    least = Found("grist", "least grist of a cut, or the low end of the range if that is less")
    most = Found("grist", "greatest grist of a cut, or the high end if that is more")
    plain_mean = Found("grist", "arithmetic mean of the cuts' grists, for comparison")
    spread = Found("share", "coefficient of variation of the yarn")
    half_width = Found("share", "how far the farther end of the range is off, of the grist")
    student = Found("number", "Student's t for so many cuts")
    from_cuts = Found("share", "what the cuts' own spread makes of the range")
    from_rest = Found("share", "what all else makes of it")
    exponent = Found("share", "both together, of the logarithm of the grist")
    two_cuts = Found("share", "how far the range of two cuts reaches that spread as much")
    several_cuts = Found("share", "how far that of five does")
    further = Found("number", "more cuts that would make the range as narrow as wanted; 0 if none")
    worst = Found("word", "the source of most of the doubt")
    worst_share = Found("share", "its part of the doubt")
    obstacle = Found("word", "the source of most of it after very many cuts")
    yards = Found("length", "length of the skein")
    yards_low = Found("length", "low end of its range")
    yards_high = Found("length", "high end of its range")
    counterweight_mass = Found("mass", "the counterweight that the balance factor implies")

    sources = Table("what part of the doubt comes from where")
    readings = Table("each cut's grist")

    answer = (
        (
            "is_broad",
            "The grist is {grist*}, between {grist_low!} and {grist_high!}, 95% sure.",
        ),
        ("is_narrow", "The grist is {grist:4*}, right to within {half_width:2}, 95% sure."),
        (
            "is_broad",
            "{weight} of it is about {yards}, between {yards_low!} and {yards_high!}.",
        ),
        ("is_narrow", "{weight} of it is {yards:4}."),
        ("is_reached", "That is within the {wanted} you can live with."),
        (
            "is_reachable",
            "{further|more cut|more cuts} would bring it to within {wanted}.",
        ),
        (
            "is_out_of_reach",
            "Not even 500 more cuts would bring it to within {wanted}: look at {obstacle} first.",
        ),
        (
            "is_reached_by_one",
            "That is within the {wanted} you can live with, if the yarn is uneven by"
            " {usual_spread}: a second cut begins to show whether it is.",
        ),
        (
            "is_reachable_from_one",
            "This takes {usual_spread} of unevenness on trust: a second cut begins to show your"
            " yarn’s own, and {further|more cut|more cuts} would bring it to within {wanted}.",
        ),
        (
            "is_out_of_reach_of_one",
            "This takes {usual_spread} of unevenness on trust, and not even 500 more cuts would"
            " bring it to within {wanted}: look at {obstacle} first.",
        ),
    )
    labels: ClassVar = {"yards_label": "{yards}"}

    def work_out(self) -> Mapping[str, Any]:
        """Work out grist and yards, their ranges, and what part each source has in the doubt."""
        counterweight = formulas.counterweight(convert(self.balance_factor, "yd/lb/in", "1/lb"))
        if odd := self._odd():
            return no_answer(odd) | {"counterweight_mass": counterweight}
        count = len(self.cuts)
        is_one = count == 1
        spread = self.usual_spread if is_one else spread_of_cuts(self.cuts)
        grists = [formulas.grist_from_cut(cut, self.balance_factor) for cut in self.cuts]
        grist = grists[0] if is_one else grist_from_cuts(self.cuts, self.balance_factor).value
        budget = self._budget(count, spread)
        grist_low, grist_high = budget.range_of(grist)
        half_width = budget.either_way()
        further = self._further(count, spread)
        yards = formulas.length(self.weight, grist)
        scale = resolution("the skein’s weight", self.scale_step / self.weight)
        yards_low, yards_high = Budget((*budget.components, scale)).range_of(yards)
        is_reached = is_within(half_width, self.wanted)
        is_reachable = not is_reached and further > 0
        is_out_of_reach = not is_reached and further == 0
        beyond = self._budget(count + _MOST_FURTHER, spread)
        return {
            "has_range": True,
            "is_one": is_one,
            "is_several": not is_one,
            "is_broad": half_width >= _NARROW,
            "is_narrow": half_width < _NARROW,
            "is_reached": is_reached and not is_one,
            "is_reachable": is_reachable and not is_one,
            "is_out_of_reach": is_out_of_reach and not is_one,
            "is_reached_by_one": is_reached and is_one,
            "is_reachable_from_one": is_reachable and is_one,
            "is_out_of_reach_of_one": is_out_of_reach and is_one,
            "count": count,
            "grist": grist,
            "grist_low": grist_low,
            "grist_high": grist_high,
            "least": min(*grists, grist_low),
            "most": max(*grists, grist_high),
            "plain_mean": sum(grists) / count,
            "spread": spread,
            "half_width": half_width,
            "student": t_factor(math.inf if is_one else count - 1),
            "from_cuts": budget.by_normal_curve() if is_one else budget.from_few(),
            "from_rest": min(budget.by_normal_curve(), budget.by_bounds()),
            "exponent": budget.expanded(),
            "two_cuts": self._budget(2, spread).either_way(),
            "several_cuts": self._budget(_SEVERAL, spread).either_way(),
            "further": further,
            "worst": budget.largest,
            "worst_share": budget.shares[budget.largest],
            "obstacle": beyond.largest,
            "yards": yards,
            "yards_low": yards_low,
            "yards_high": yards_high,
            "counterweight_mass": counterweight,
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items() if s],
            "readings": [{"at": at, "found": g} for at, g in enumerate(grists, start=1)],
        }

    def unused(self) -> list[str]:
        """Name the usual unevenness, where the cuts show the yarn's own."""
        return [] if len(self.cuts) == 1 else ["usual_spread"]

    def _odd(self) -> str | None:
        """Say what is probably wrong with the cuts or the weight, if anything is."""
        if not self.cuts:
            return "There are no cuts yet: type at least one, better five, one a line."
        return unlikely_cuts(self.cuts, slot) or unlikely_step(self.weight, self.scale_step, slot)

    def _further(self, count: int, spread: float) -> int:
        """Give how many more cuts make the range as narrow as wanted, or 0 if no number does."""
        return first_whole(
            1,
            _MOST_FURTHER,
            lambda n: is_within(self._budget(count + n, spread).either_way(), self.wanted),
        )

    def _budget(self, count: int, spread: float) -> Budget:
        """Give the error budget of so many cuts of this yarn."""
        return balance_budget(
            sum(self.cuts) / len(self.cuts),
            spread,
            count,
            spread_known=count == 1,
            trimming=self.trimming,
            stretch=self.stretch,
            counterweight=self.counterweight,
            humidity=self.humidity,
        )

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the grist and its range come about."""
        yield (
            "is_several",
            "Each cut times {balance_factor} is a grist. Their harmonic mean is {grist:4}; the"
            " plain mean, {plain_mean:4}, is a little too fine, since fine places make long cuts.",
        )
        yield "is_one", "The cut times {balance_factor} is its grist, {grist:4}."
        yield (
            "is_several",
            "The yarn’s spread is {spread}, a coefficient of variation. Over the root of the"
            " number of cuts, and times Student’s t of {student} for {count} cuts, it makes"
            " {from_cuts} of the range.",
        )
        yield (
            "is_several",
            "All other sources of doubt, squared, added, their root taken, and times 1.96, make"
            " {from_rest}; no more than 95% of their largest errors together.",
        )
        yield (
            "is_several",
            "Those two squared, added, and their root taken: {exponent}. The range is a factor"
            " either way, e to the power of that, so its farther end is {half_width} off.",
        )
        yield (
            "is_one",
            "A spread of {usual_spread} and all other sources of doubt, squared, added, their root"
            " taken, and times 1.96: {exponent}. The range is a factor either way, e to the power"
            " of that, so its farther end is {half_width} off.",
        )
        yield (
            "is_one",
            "Cuts that show the spread themselves: two that spread as much would be right to within"
            " {two_cuts:2}, since two hardly show it, five to within {several_cuts:2}.",
        )
        yield "has_range", "Most of the doubt, {worst_share} of it, comes from {worst}."
        yield (
            "has_range",
            "Length: {weight:4} at {grist:4} is {yards:4}; its range is {yards_low:4} to"
            " {yards_high:4}, the scale’s steps counted in.",
        )
        yield (
            None,
            "A factor of {balance_factor} means a counterweight of {counterweight_mass@g:4}: weigh"
            " it to check the balance.",
        )

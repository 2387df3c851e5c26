"""How sure is the grist of a yarn, from several cuts on the balance."""

from collections.abc import Callable, Iterable, Mapping
from functools import partial
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import measuring_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.estimates.budget import Budget, balance_budget, resolution
from yarnsheets.estimates.readings import grist_from_cuts, spread_of_cuts
from yarnsheets.estimates.unlikely import unlikely_cuts
from yarnsheets.sheets import choices, cutting
from yarnsheets.sheets.inputs import Input, Number, Readings, Result, Table
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.units import convert

_MOST_CUTS = 500


class HowSureIsTheGrist(Sheet):
    """Grist and yards with the range they lie in, and what would narrow it.

    Examples
    --------
    >>> sheet = HowSureIsTheGrist(cuts=[9.6, 10.1, 10.4, 9.8, 10.6])
    >>> round(sheet.grist, 2)
    1008.65
    """

    cuts = Readings(
        "Cuts on the balance",
        "short",
        [9.6, 10.1, 10.4, 9.8, 10.6],
        low=0,
        high=400,
        measure="Trim a cut until the balance hangs level, lay it along a ruler unstretched, and"
        " write down its length: 9.6 or 9 5/8. Take cuts from different parts of the skein.",
    )
    balance_factor = Input(
        "Balance factor",
        "factor",
        100,
        low=5,
        high=5000,
        measure="The maker’s number: length of cut times this is grist. Often 100.",
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
    trimming = cutting.trimming()
    stretch = cutting.stretch()
    counterweight = Input(
        "The balance’s own weight is right to within",
        "share",
        0.008,
        low=0.0001,
        high=0.2,
        more=True,
        measure="A milligram in the 126 milligrams of a balance with factor 100 is 0.8%.",
    )
    scale_step = Input(
        "The scale shows steps of",
        "mass",
        0.1 / 453.59237,
        low=0.001 / 453.59237,
        high=0.25 / 16,
        more=True,
        measure="The last digit of the scale that weighed the skein.",
    )
    humidity = Input(
        "Damp may change the weight by, at most",
        "share",
        0.01,
        low=0.0001,
        high=0.2,
        more=True,
        measure="Cut and skein in the same air: nearly nothing. Weighed in other seasons: several"
        " per cent for wool.",
    )

    has_range = Result("flag", "there are enough cuts for a range")
    is_reached = Result("flag", "the range is as narrow as wanted")
    is_reachable = Result("flag", "more cuts would make the range as narrow as wanted")
    is_out_of_reach = Result("flag", "no number of cuts would")
    count = Result("number", "cuts taken")
    grist = Result("grist", "harmonic mean of the cuts' grists")
    grist_low = Result("grist", "low end of the grist's range")
    grist_high = Result("grist", "high end of the grist's range")
    least = Result("grist", "least grist of a cut")
    most = Result("grist", "greatest grist of a cut")
    plain_mean = Result("grist", "arithmetic mean of the cuts' grists, for comparison")
    spread = Result("share", "coefficient of variation of the yarn")
    half_width = Result("share", "half the range, of the grist")
    low_ratio = Result("number", "low end of the yards' range, of the yards")
    high_ratio = Result("number", "high end of the yards' range, of the yards")
    dof = Result("number", "effective degrees of freedom")
    student = Result("number", "Student's t for them")
    further = Result("number", "more cuts that would make the range as narrow as wanted")
    worst = Result("word", "the source of most of the doubt")
    worst_share = Result("share", "its part of the doubt")

    yards = Number("length", "length of the skein")
    yards_low = Number("length", "low end of its range")
    yards_high = Number("length", "high end of its range")
    counterweight_mass = Number("mass", "the counterweight that the balance factor implies")

    sources = Table("what part of the doubt comes from where")
    readings = Table("each cut's grist")

    answer = (
        (
            "has_range",
            "Your {count} cuts give {grist}, between {grist_low!} and {grist_high!} in 19 skeins of"
            " 20. {weight} of it is about {yards:2}, between {yards_low:2!} and {yards_high:2!}.",
        ),
        ("is_reached", "That is within the {wanted} you can live with."),
        ("is_reachable", "{further} more cuts would bring it to within {wanted}."),
        (
            "is_out_of_reach",
            "No number of cuts would bring it to within {wanted}: look at {worst} first.",
        ),
    )
    labels: ClassVar = {"yards_label": "{yards:2}"}

    def work_out(self) -> Mapping[str, Any]:
        """Work out the grist, its range and what part each source has in it."""
        if len(self.cuts) < 2:
            how_many = "One cut is a guess" if self.cuts else "There are no cuts yet"
            return self.no_answer(f"{how_many}: type at least two, better five, one a line.")
        odd = unlikely_cuts(self.cuts)
        if odd:
            return self.no_answer(odd)
        estimate = grist_from_cuts(self.cuts, self.balance_factor)
        budget_of = self._budgets()
        budget = budget_of(len(self.cuts))
        grist = budget.of(estimate.value)
        low, high = grist.interval()
        yards_low, yards_high = self._with_scale(budget).of(1.0).interval()
        half_width = budget.expanded()
        further = self._further_cuts(budget_of)
        grists = [formulas.grist_from_cut(cut, self.balance_factor) for cut in self.cuts]
        return {
            "has_range": True,
            "is_reached": half_width <= self.wanted,
            "is_reachable": half_width > self.wanted and further is not None,
            "is_out_of_reach": half_width > self.wanted and further is None,
            "count": len(self.cuts),
            "grist": estimate.value,
            "grist_low": low,
            "grist_high": high,
            "least": min(grists),
            "most": max(grists),
            "plain_mean": sum(grists) / len(grists),
            "spread": spread_of_cuts(self.cuts),
            "half_width": half_width,
            "low_ratio": yards_low,
            "high_ratio": yards_high,
            "dof": budget.dof,
            "student": half_width / budget.relative,
            "further": further or 0,
            "worst": budget.largest,
            "worst_share": budget.shares[budget.largest],
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items() if s],
            "readings": [{"at": at, "found": g} for at, g in enumerate(grists, start=1)],
        }

    def _budgets(self) -> Callable[[int], Budget]:
        """Give the error budget for any number of cuts of this yarn."""
        return partial(
            balance_budget,
            sum(self.cuts) / len(self.cuts),
            spread_of_cuts(self.cuts),
            trimming=self.trimming,
            stretch=self.stretch,
            counterweight=self.counterweight,
            humidity=self.humidity,
        )

    def _with_scale(self, budget: Budget) -> Budget:
        step = resolution("the skein’s weight", self.scale_step / self.weight)
        return Budget((*budget.components, step))

    def _further_cuts(self, budget_of: Callable[[int], Budget]) -> int | None:
        """Give how many more cuts make the range as narrow as wanted; none if no number does."""
        taken = len(self.cuts)
        return next(
            (
                more
                for more in range(1, _MOST_CUTS)
                if budget_of(taken + more).expanded() <= self.wanted
            ),
            None,
        )

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out the yards, which follow the weight at once."""
        yards = formulas.length(v.weight, v.grist)
        factor = convert(v.balance_factor, "yd/lb/in", "1/lb")
        return {
            "yards": yards,
            "yards_low": yards * v.low_ratio,
            "yards_high": yards * v.high_ratio,
            "counterweight_mass": formulas.counterweight(factor),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the grist and its range come about."""
        yield (
            "has_range",
            "Each cut times {balance_factor} is a grist. Their harmonic mean is {grist:4}; the"
            " plain mean, {plain_mean:4}, is a little high, since fine places make long cuts.",
        )
        yield "has_range", "The yarn’s spread is {spread}, a coefficient of variation."
        yield (
            "has_range",
            "All sources of doubt together, squared, added and their root taken, and times"
            " Student’s t of {student} for {dof} degrees of freedom: {half_width} either way.",
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

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the yards with their band, the cuts, and the sources of doubt."""
        return (
            measuring_charts.yards_with_range(v),
            measuring_charts.readings_of_grist(v),
            measuring_charts.sources_of_doubt(),
        )

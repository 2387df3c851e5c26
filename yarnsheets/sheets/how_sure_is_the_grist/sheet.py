"""How sure is the grist of a yarn, from several cuts on the balance."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates.budget import Budget, balance_budget, resolution
from yarnsheets.estimates.estimate import t_factor
from yarnsheets.estimates.readings import grist_from_cuts, spread_of_cuts
from yarnsheets.estimates.searching import first_whole
from yarnsheets.estimates.unlikely import unlikely_cuts
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Input, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.sheets.shared import cutting
from yarnsheets.sheets.shared.weighing import GRAM
from yarnsheets.units import convert

_MOST_FURTHER = 499


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
        0.1 * GRAM,
        low=0.001 * GRAM,
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

    has_range = Found("flag", "there are enough cuts for a range")
    is_reached = Found("flag", "the range is as narrow as wanted")
    is_reachable = Found("flag", "more cuts would make the range as narrow as wanted")
    is_out_of_reach = Found("flag", "no number of cuts would")
    count = Found("number", "cuts taken")
    grist = Found("grist", "harmonic mean of the cuts' grists")
    grist_low = Found("grist", "low end of the grist's range")
    grist_high = Found("grist", "high end of the grist's range")
    least = Found("grist", "least grist of a cut")
    most = Found("grist", "greatest grist of a cut")
    plain_mean = Found("grist", "arithmetic mean of the cuts' grists, for comparison")
    spread = Found("share", "coefficient of variation of the yarn")
    half_width = Found("share", "half the range, of the grist")
    dof = Found("number", "effective degrees of freedom")
    student = Found("number", "Student's t for them")
    further = Found("number", "more cuts that would make the range as narrow as wanted; 0 if none")
    worst = Found("word", "the source of most of the doubt")
    worst_share = Found("share", "its part of the doubt")
    yards = Found("length", "length of the skein")
    yards_low = Found("length", "low end of its range")
    yards_high = Found("length", "high end of its range")
    counterweight_mass = Found("mass", "the counterweight that the balance factor implies")

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
        """Work out grist and yards, their ranges, and what part each source has in the doubt."""
        counterweight = formulas.counterweight(convert(self.balance_factor, "yd/lb/in", "1/lb"))
        odd = self._odd()
        if odd:
            return no_answer(odd) | {"counterweight_mass": counterweight}
        estimate = grist_from_cuts(self.cuts, self.balance_factor)
        count, spread = len(self.cuts), spread_of_cuts(self.cuts)
        budget = self._budget(count, spread)
        low, high = budget.of(estimate.value).interval()
        half_width = budget.expanded()
        further = self._further(count, spread)
        yards = formulas.length(self.weight, estimate.value)
        scale = resolution("the skein’s weight", self.scale_step / self.weight)
        yards_low, yards_high = Budget((*budget.components, scale)).of(yards).interval()
        grists = [formulas.grist_from_cut(cut, self.balance_factor) for cut in self.cuts]
        return {
            "has_range": True,
            "is_reached": half_width <= self.wanted,
            "is_reachable": half_width > self.wanted and further > 0,
            "is_out_of_reach": half_width > self.wanted and further == 0,
            "count": count,
            "grist": estimate.value,
            "grist_low": low,
            "grist_high": high,
            "least": min(grists),
            "most": max(grists),
            "plain_mean": sum(grists) / count,
            "spread": spread,
            "half_width": half_width,
            "dof": budget.dof,
            "student": half_width / budget.relative,
            "further": further,
            "worst": budget.largest,
            "worst_share": budget.shares[budget.largest],
            "yards": yards,
            "yards_low": yards_low,
            "yards_high": yards_high,
            "counterweight_mass": counterweight,
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items() if s],
            "readings": [{"at": at, "found": g} for at, g in enumerate(grists, start=1)],
        }

    def _odd(self) -> str | None:
        """Say what is probably wrong with the cuts, if anything is."""
        if len(self.cuts) < 2:
            how_many = "One cut is a guess" if self.cuts else "There are no cuts yet"
            return f"{how_many}: type at least two, better five, one a line."
        return unlikely_cuts(self.cuts)

    def _further(self, count: int, spread: float) -> int:
        """Give how many more cuts make the range as narrow as wanted, or 0 if no number does."""
        # Student's t is never below the normal curve's, and so much slower to work out that it
        # is worth while to begin where that curve's range is narrow enough
        normal = t_factor(math.inf)
        least = first_whole(
            1,
            _MOST_FURTHER,
            lambda n: normal * self._budget(count + n, spread).relative <= self.wanted,
        )
        if not least:
            return 0
        return first_whole(
            least,
            _MOST_FURTHER,
            lambda n: self._budget(count + n, spread).expanded() <= self.wanted,
        )

    def _budget(self, count: int, spread: float) -> Budget:
        """Give the error budget of so many cuts of this yarn."""
        return balance_budget(
            sum(self.cuts) / len(self.cuts),
            spread,
            count,
            trimming=self.trimming,
            stretch=self.stretch,
            counterweight=self.counterweight,
            humidity=self.humidity,
        )

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

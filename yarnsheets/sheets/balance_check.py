"""Whether the maker's factor of a yarn balance is right, by one of two checks."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import balance_charts, measuring_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.estimates import (
    Budget,
    Component,
    grist_from_cuts,
    mean,
    rectangular,
    resolution,
    spread_of_cuts,
    unevenness,
    unlikely_cut,
    unlikely_cuts,
    unlikely_mass,
)
from yarnsheets.sheets import choices, cutting
from yarnsheets.sheets.inputs import Input, Number, Pick, Readings, Result, Table
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.sheets.text import show
from yarnsheets.units import convert

# How many times too large a weight looks that was typed in another unit than grams.
_SLIPS = {"milligrams": 1000.0, "grains": convert(1, "g", "grain")}


class BalanceCheck(Sheet):
    """The factor a balance really has, and by how much the maker's number reads high or low.

    Examples
    --------
    >>> sheet = BalanceCheck(balance_factor=100, weighings=[0.13], cut=10)
    >>> round(sheet.true_grist, 2), sheet.reported
    (969.21, 1000.0)
    """

    balance_factor = Input(
        "The maker’s balance factor",
        "factor",
        100,
        low=5,
        high=5000,
        measure="Length of cut times this is grist. Often 100.",
    )
    way = Pick(
        "How you check it",
        {"weighing": "weigh its counterweight", "yarn": "try a yarn of known grist"},
        measure="Weighing needs a counterweight that comes off and a scale that shows milligrams;"
        " a yarn tries the whole balance.",
    )
    weighings = Readings(
        "Weighings of the counterweight, in grams",
        "number",
        [0.130, 0.129, 0.130],
        low=0,
        high=5000,
        measure="Used if you weigh it. Take it off the scale and put it on again between"
        " weighings: 0.130.",
    )
    yarn_length = Input(
        "Length of the known yarn",
        "length",
        150,
        low=1,
        high=20000,
        measure="Used if you try a yarn. A skein of counted turns will do.",
    )
    yarn_weight = Input(
        "Weight of the known yarn",
        "mass",
        2 / 16,
        low=0.05 / 16,
        high=20,
        measure="Used if you try a yarn. All of that length, without ties.",
    )
    cuts = Readings(
        "Cuts of the known yarn on this balance",
        "short",
        [12.1, 12.6, 12.3, 12.8, 12.2],
        low=0,
        high=400,
        measure="Used if you try a yarn. Trim each until the balance hangs level; take them from"
        " different parts of the skein.",
    )
    cut = Input(
        "A cut to correct",
        "short",
        10,
        low=1,
        high=100,
        measure="Any cut you have taken on this balance.",
    )
    scale_step = Input(
        "The scale shows steps of, in grams",
        "number",
        0.001,
        low=0.00001,
        high=0.1,
        more=True,
        measure="0.001 is a milligram.",
    )
    scale_error = Input(
        "The scale itself is right to within",
        "share",
        0.005,
        low=0.0001,
        high=0.2,
        more=True,
        measure="Weigh something of known weight on it, about as light.",
    )
    known_error = Input(
        "The known yarn’s grist is right to within",
        "share",
        0.01,
        low=0.0001,
        high=0.2,
        more=True,
        measure="From how it was wound and weighed.",
    )
    trimming = cutting.trimming()
    stretch = cutting.stretch()

    has_range = Result("flag", "the readings give a factor with its range")
    is_weighed = Result("flag", "they do, and are weighings")
    is_tried = Result("flag", "they do, and are cuts of a known yarn")
    count = Result("number", "readings taken")
    factor = Result("factor", "factor that the balance really has")
    factor_low = Result("factor", "low end of its range")
    factor_high = Result("factor", "high end of its range")
    least = Result("factor", "least factor of a reading")
    most = Result("factor", "greatest factor of a reading")
    mean_weight = Result("mass", "mean of the weighings")
    mean_cut = Result("short", "harmonic mean of the cuts")
    half_width = Result("share", "half the range, of the factor")
    worst = Result("word", "the source of most of the doubt")
    worst_share = Result("share", "its part of the doubt")

    is_high = Number("flag", "the maker's number is too high by more than the noise")
    is_low = Number("flag", "the maker's number is too low by more than the noise")
    is_within = Number("flag", "the noise of the check explains the difference")
    error = Number("share", "by what the maker's number is too high; too low if negative")
    size = Number("share", "the same without its sign")
    implied_weight = Number("mass", "counterweight that the maker's factor implies")
    known_grist = Number("grist", "grist of the known yarn")
    reported = Number("grist", "grist of the cut by the maker's factor")
    true_grist = Number("grist", "grist of the cut by the factor found")

    sources = Table("what part of the doubt comes from where")
    readings = Table("the factor that each reading gives by itself")

    answer = (
        (
            "has_range",
            "Your balance’s factor is {factor}, between {factor_low!} and {factor_high!} in 19"
            " checks of 20.",
        ),
        (
            "is_high",
            "The maker’s {balance_factor!} is {size:2} too high, more than the noise of this check:"
            " a cut of {cut} is {true_grist}, not {reported!}.",
        ),
        (
            "is_low",
            "The maker’s {balance_factor!} is {size:2} too low, more than the noise of this check:"
            " a cut of {cut} is {true_grist}, not {reported!}.",
        ),
        (
            "is_within",
            "The maker’s {balance_factor!} is {size:2} off that, no more than the noise of this"
            " check, so there is no reason to change it.",
        ),
    )
    labels: ClassVar = {
        "maker_label": "the maker’s {balance_factor!}",
        "factor_label": "found: {factor!}",
        "reads_label": "reads {reported!}, is {true_grist!}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the factor that the readings give, and its range."""
        by_weight = self.way == "weighing"
        odd = self._odd_weighings() if by_weight else self._odd_yarn()
        if odd:
            return self.no_answer(odd)
        found = self._by_weighing() if by_weight else self._by_yarn()
        value, budget, factors = found["factor"], found.pop("budget"), found.pop("factors")
        low, high = budget.of(value).interval()
        return {
            "has_range": True,
            "is_weighed": by_weight,
            "is_tried": not by_weight,
            "count": len(factors),
            "factor_low": low,
            "factor_high": high,
            "least": min(factors),
            "most": max(factors),
            "half_width": budget.expanded(),
            "worst": f"the {budget.largest}",
            "worst_share": budget.shares[budget.largest],
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items()],
            "readings": [{"at": at, "given": f} for at, f in enumerate(factors, start=1)],
            **found,
        }

    def _by_weighing(self) -> dict[str, Any]:
        """Give the factor by the counterweight: the cut that balances weighs the same."""
        weight = sum(self.weighings) / len(self.weighings)
        components = [
            resolution("steps of the scale", self.scale_step / weight),
            rectangular("error of the scale", self.scale_error),
        ]
        if len(self.weighings) > 1:
            repeated = mean(self.weighings)
            components.append(Component("spread of the weighings", repeated.relative, repeated.dof))
        return {
            "factor": _factor(weight),
            "mean_weight": convert(weight, "g", "lb"),
            "mean_cut": math.nan,
            "budget": Budget(tuple(components)),
            "factors": [_factor(each) for each in self.weighings],
        }

    def _by_yarn(self) -> dict[str, Any]:
        """Give the factor by a yarn whose grist is known: that over the mean cut."""
        known = formulas.grist(self.yarn_length, self.yarn_weight)
        mean_cut = grist_from_cuts(self.cuts, 1).value  # by a factor of one a cut is its grist
        components = (
            unevenness(spread_of_cuts(self.cuts), len(self.cuts)),
            rectangular("grist of the known yarn", self.known_error),
            rectangular("trimming", self.trimming / mean_cut),
            rectangular("stretch", self.stretch),
        )
        return {
            "factor": formulas.balance_factor(known, mean_cut),
            "mean_weight": math.nan,
            "mean_cut": mean_cut,
            "budget": Budget(components),
            "factors": [formulas.balance_factor(known, cut) for cut in self.cuts],
        }

    def _odd_weighings(self) -> str | None:
        """Say what is probably wrong with the weighings."""
        if not self.weighings:
            return "There is no weighing yet: type at least one, better three, one a line."
        implied = formulas.counterweight(convert(self.balance_factor, "yd/lb/in", "1/lb"))
        expected = convert(implied, "lb", "g")
        for weight in self.weighings:
            ratio = weight / expected
            said = f"A weighing of {show(weight)} g"
            if not weight:
                return f"{said} cannot be: is the scale fine enough for so light a thing?"
            for name, times in _SLIPS.items():
                if 0.5 < ratio / times < 2:
                    return f"{said} looks like {name}. Type grams, such as {show(expected)}."
            if not 0.5 <= ratio <= 2:
                return (
                    f"{said} is far from the {show(expected)} g that the maker’s factor implies."
                    " Check the factor, and that the counterweight alone was on the scale."
                )
        return None

    def _odd_yarn(self) -> str | None:
        """Say what is probably wrong with the known yarn or its cuts."""
        if len(self.cuts) < 2:
            how_many = "One cut is a guess" if self.cuts else "There are no cuts yet"
            return f"{how_many}: type at least two, better five, one a line."
        unit = self._chosen()[0].units["mass"]
        known = formulas.grist(self.yarn_length, self.yarn_weight)
        expected = formulas.cut_from_grist(known, self.balance_factor)
        return (
            unlikely_mass(convert(self.yarn_weight, "lb", unit), unit, self.yarn_length)
            or unlikely_cuts(self.cuts)
            or unlikely_cut(grist_from_cuts(self.cuts, 1).value, expected)
        )

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out what the maker's number is off by, which follows it and the cut at once."""
        reported = formulas.grist_from_cut(v.cut, v.balance_factor)
        true_grist = formulas.grist_from_cut(v.cut, v.factor)
        error = (reported - true_grist) / true_grist
        is_high = choose(v.has_range, choose(v.balance_factor > v.factor_high, 1, 0), 0)
        is_low = choose(v.has_range, choose(v.balance_factor < v.factor_low, 1, 0), 0)
        factor = convert(v.balance_factor, "yd/lb/in", "1/lb")
        return {
            "is_high": is_high,
            "is_low": is_low,
            "is_within": choose(v.has_range, 1 - is_high - is_low, 0),
            "error": error,
            "size": choose(error > 0, error, -error),
            "implied_weight": formulas.counterweight(factor),
            "known_grist": formulas.grist(v.yarn_length, v.yarn_weight),
            "reported": reported,
            "true_grist": true_grist,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the factor and the corrected grist come about."""
        pounds = measure.units["factor"] == "yd/lb/in"
        base, short = ("yd/lb", "in") if pounds else ("m/100g", "cm")
        weighed = (
            "Factor: the cut that balances weighs as much as the counterweight, {mean_weight@g:4}"
            " on average. An inch of it is 1/36 yd, and a pound is 453.592 g: 453.592 ÷ 36"
            if pounds
            else "Factor: the cut that balances weighs as much as the counterweight,"
            " {mean_weight@g:4} on average. A centimetre of it is 1/100 m: 100 ÷ 100"
        )
        yield "is_weighed", weighed + " ÷ {mean_weight@g:4!} = {factor:4}."
        yield (
            "is_tried",
            "The known yarn: {yarn_length:4} in {yarn_weight:4} is"
            f" {{known_grist@{base}:4}}. The harmonic mean of its cuts is {{mean_cut:4}}.",
        )
        yield (
            "is_tried",
            f"Factor: {{known_grist@{base}:4}} ÷ {{mean_cut@{short}:4}} = {{factor:4}}.",
        )
        yield (
            "has_range",
            "All sources of doubt squared, added, their root taken, and times Student’s t:"
            " {half_width:2} either way, {factor_low:4!} to {factor_high:4!}.",
        )
        yield (
            "has_range",
            "The maker’s number is off by {balance_factor:4!} ÷ {factor:4!} − 1 = {error}.",
        )
        yield (
            "has_range",
            f"A cut of {{cut:4}}: times {{factor:4!}} is {{true_grist@{base}:4}}; times the"
            f" maker’s {{balance_factor:4!}}, {{reported@{base}:4}}.",
        )
        yield (
            None,
            "A factor of {balance_factor:4} means a counterweight of {implied_weight@g:6}.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the factors with their range, reading against truth, and the sources of doubt."""
        return (
            balance_charts.factors_of_readings(v),
            balance_charts.reading_against_truth(v),
            measuring_charts.sources_of_doubt(),
        )


def _factor(grams: float) -> float:
    """Give the factor of a balance with a counterweight of so many grams."""
    per_pound = formulas.balance_factor_from_counterweight(convert(grams, "g", "lb"))
    return float(convert(per_pound, "1/lb", "yd/lb/in"))

"""Whether the maker's factor of a yarn balance is right, by one of two checks."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar

from yarnsheets import formulas
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
    unlikely_step,
)
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import show, slot
from yarnsheets.published.sources import GRAIN, POUND
from yarnsheets.sheets.shared import cutting
from yarnsheets.sheets.shared.weighing import typed
from yarnsheets.units import convert

# A range narrower than this, either way, has ends that may be written alike.
_NARROW = 0.005

# How many times too large a weight looks that was typed in another unit than grams.
_SLIPS = {"milligrams": 1000.0, "grains": 1000 / GRAIN.value}


@dataclass(frozen=True)
class _Check:
    """What one way of checking gives: the factor, its doubt, and the factor of each reading."""

    factor: float
    budget: Budget
    factors: Sequence[float]
    mean_weight: float = math.nan
    mean_cut: float = math.nan


class IsMyBalanceRight(Sheet):
    """The factor a balance really has, and by how much the maker's number reads high or low.

    Examples
    --------
    >>> sheet = IsMyBalanceRight(balance_factor=100, weighings=[0.13], cut=10)
    >>> round(sheet.true_grist, 2), sheet.reported
    (969.21, 1000.0)
    """

    question = "Is my balance right?"
    onward = (
        Onward("how-sure-is-the-grist", {"balance_factor": "factor"}),
        Onward("what-does-a-weighed-skein-say", {"gross": "yarn_weight"}),
    )

    balance_factor = cutting.balance_factor(
        "Length of cut times this is grist. Often 100.", title="The maker’s balance factor"
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
        measure="Take it off the scale and put it on again between weighings: 0.130.",
    )
    yarn_length = Input(
        "Length of the known yarn",
        "length",
        150,
        low=1,
        high=20000,
        measure="A skein of counted turns will do.",
    )
    yarn_weight = Input(
        "Weight of the known yarn",
        "mass",
        2 / 16,
        low=0.05 / 16,
        high=20,
        measure="All of that length, without ties.",
    )
    cuts = Readings(
        "Cuts of the known yarn on this balance",
        "short",
        [12.1, 12.6, 12.3, 12.8, 12.2],
        low=0,
        high=400,
        measure="Trim each until the balance hangs level; take them from different parts of the"
        " skein.",
    )
    cut = Input(
        "A cut to correct",
        "short",
        10,
        low=1,
        high=100,
        measure="Any cut you have taken on this balance.",
    )

    the_measures = Group("How well each is measured")
    scale_step = Input(
        "The scale shows steps of, in grams",
        "number",
        0.001,
        low=0.00001,
        high=0.1,
        measure="0.001 is a milligram.",
    )
    scale_error = Input(
        "The scale itself is right to within",
        "share",
        0.005,
        low=0.0001,
        high=0.2,
        measure="Weigh something of known weight on it, about as light.",
    )
    known_error = Input(
        "The known yarn’s grist is right to within",
        "share",
        0.01,
        low=0.0001,
        high=0.2,
        measure="From how it was wound and weighed.",
    )
    trimming = cutting.trimming()
    stretch = cutting.stretch()

    has_range = Found("flag", "the readings give a factor with its range")
    is_broad = Found("flag", "the ends of the range are told apart by three figures")
    is_close = Found("flag", "they are, but one is written as the maker's number is")
    is_narrow = Found("flag", "they may not be")
    is_weighed = Found("flag", "they do, and are weighings")
    is_tried = Found("flag", "they do, and are cuts of a known yarn")
    count = Found("number", "readings taken")
    factor = Found("factor", "factor that the balance really has")
    factor_low = Found("factor", "low end of its range")
    factor_high = Found("factor", "high end of its range")
    least = Found("factor", "least factor of a reading")
    most = Found("factor", "greatest factor of a reading")
    mean_weight = Found("mass", "mean of the weighings")
    mean_cut = Found("short", "harmonic mean of the cuts")
    half_width = Found("share", "how far the farther end of the range is off, of the factor")
    exponent = Found("share", "half the range of the factor's logarithm")
    worst = Found("word", "the source of most of the doubt")
    worst_share = Found("share", "its part of the doubt")
    is_high = Found("flag", "the maker's number is too high by more than the noise")
    is_low = Found("flag", "the maker's number is too low by more than the noise")
    is_within = Found("flag", "the noise of the check explains the difference")
    error = Found("share", "by what the maker's number is too high; too low if negative")
    size = Found("share", "the same without its sign")
    implied_weight = Found("mass", "counterweight that the maker's factor implies")
    known_grist = Found("grist", "grist of the known yarn")
    reported = Found("grist", "grist of the cut by the maker's factor")
    true_grist = Found("grist", "grist of the cut by the factor found")

    sources = Table("what part of the doubt comes from where")
    readings = Table("the factor that each reading gives by itself")

    answer = (
        ("is_high", "The maker’s {balance_factor!} is {size:2*} too high."),
        ("is_low", "The maker’s {balance_factor!} is {size:2*} too low."),
        ("is_within", "There is no reason to change the maker’s {balance_factor!*}."),
        (
            "is_broad",
            "Your balance’s factor is {factor}, between {factor_low!} and {factor_high!}, 95%"
            " sure.",
        ),
        (
            "is_close",
            "Your balance’s factor is {factor}, between {factor_low:5!} and {factor_high:5!}, 95%"
            " sure.",
        ),
        (
            "is_narrow",
            "Your balance’s factor is {factor:5}, right to within {half_width:2}, 95% sure.",
        ),
        ("is_high", "A cut of {cut} is {true_grist}, not {reported!}."),
        ("is_low", "A cut of {cut} is {true_grist}, not {reported!}."),
    )
    labels: ClassVar = {
        "maker_label": "the maker’s {balance_factor!}",
        "factor_label": "found: {factor!}",
        "reads_label": "reads {reported!}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the factor that the readings give, its range, and what the maker's is off by."""
        is_weighed = self.way == "weighing"
        implied = formulas.counterweight(convert(self.balance_factor, "yd/lb/in", "1/lb"))
        odd = self._odd_weighings(convert(implied, "lb", "g")) if is_weighed else self._odd_yarn()
        if odd:
            return no_answer(odd) | {"implied_weight": implied}
        check = self._by_weighing() if is_weighed else self._by_yarn()
        budget = check.budget
        low, high = budget.range_of(check.factor)
        half_width = budget.either_way()
        is_high, is_low = self.balance_factor > high, self.balance_factor < low
        is_close = _looks_alike(self.balance_factor, low) or _looks_alike(self.balance_factor, high)
        reported = formulas.grist_from_cut(self.cut, self.balance_factor)
        true_grist = formulas.grist_from_cut(self.cut, check.factor)
        error = (reported - true_grist) / true_grist
        return {
            "has_range": True,
            "is_broad": half_width >= _NARROW and not is_close,
            "is_close": half_width >= _NARROW and is_close,
            "is_narrow": half_width < _NARROW,
            "is_weighed": is_weighed,
            "is_tried": not is_weighed,
            "is_high": is_high,
            "is_low": is_low,
            "is_within": not is_high and not is_low,
            "count": len(check.factors),
            "factor": check.factor,
            "factor_low": low,
            "factor_high": high,
            "least": min(check.factors),
            "most": max(check.factors),
            "mean_weight": check.mean_weight,
            "mean_cut": check.mean_cut,
            "half_width": half_width,
            "exponent": budget.expanded(),
            "worst": f"the {budget.largest}",
            "worst_share": budget.shares[budget.largest],
            "error": error,
            "size": abs(error),
            "implied_weight": implied,
            "known_grist": formulas.grist(self.yarn_length, self.yarn_weight),
            "reported": reported,
            "true_grist": true_grist,
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items()],
            "readings": [{"at": at, "given": f} for at, f in enumerate(check.factors, start=1)],
        }

    def unused(self) -> list[str]:
        """Name what only the other way of checking asks for."""
        if self.way == "weighing":
            return ["yarn_length", "yarn_weight", "cuts", "known_error", "trimming", "stretch"]
        return ["weighings", "scale_step", "scale_error"]

    def _by_weighing(self) -> _Check:
        """Give the factor by the counterweight: the cut that balances weighs the same."""
        weight = sum(self.weighings) / len(self.weighings)
        components = [
            resolution("steps of the scale", self.scale_step / weight),
            rectangular("error of the scale", self.scale_error),
        ]
        if len(self.weighings) > 1:
            repeated = mean(self.weighings)
            components.append(Component("spread of the weighings", repeated.relative, repeated.dof))
        return _Check(
            factor=_factor(weight),
            budget=Budget(tuple(components)),
            factors=[_factor(each) for each in self.weighings],
            mean_weight=convert(weight, "g", "lb"),
        )

    def _by_yarn(self) -> _Check:
        """Give the factor by a yarn whose grist is known: that over the mean cut."""
        known = formulas.grist(self.yarn_length, self.yarn_weight)
        mean_cut = grist_from_cuts(self.cuts, 1).value  # by a factor of one a cut is its grist
        components = (
            unevenness(spread_of_cuts(self.cuts), len(self.cuts)),
            rectangular("grist of the known yarn", self.known_error),
            rectangular("trimming", self.trimming / mean_cut),
            rectangular("stretch", self.stretch),
        )
        return _Check(
            factor=formulas.balance_factor(known, mean_cut),
            budget=Budget(components),
            factors=[formulas.balance_factor(known, cut) for cut in self.cuts],
            mean_cut=mean_cut,
        )

    def _odd_weighings(self, expected: float) -> str | None:
        """Say what is probably wrong with the weighings, of so many grams by the maker's factor."""
        if not self.weighings:
            return "There is no weighing yet: type at least one, better three, one a line."
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
            if unlikely_step(weight, self.scale_step):
                return (
                    f"{said} is less than one step of the scale, {show(self.scale_step)} g. Weigh"
                    " it on a finer scale, or try a yarn of known grist."
                )
        return None

    def _odd_yarn(self) -> str | None:
        """Say what is probably wrong with the known yarn or its cuts."""
        if len(self.cuts) < 2:
            how_many = "One cut is a guess" if self.cuts else "There are no cuts yet"
            return f"{how_many}: type at least two, better five, one a line."
        unit = choices.unit_of("mass", self.measure)
        known = formulas.grist(self.yarn_length, self.yarn_weight)
        expected = formulas.cut_from_grist(known, self.balance_factor)
        return (
            unlikely_mass(typed(self.yarn_weight, unit), unit, self.yarn_length, slot)
            or unlikely_cuts(self.cuts, slot)
            or unlikely_cut(grist_from_cuts(self.cuts, 1).value, expected, slot)
        )

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the factor and the corrected grist come about."""
        pounds = measure.units["factor"] == "yd/lb/in"
        base, short = ("yd/lb", "in") if pounds else ("m/100g", "cm")
        pound = show(POUND.value, 6)
        weighed = (
            "Factor: the cut that balances weighs as much as the counterweight, {mean_weight@g:4}"
            f" on average. An inch of it is 1/36 yd, and a pound is {pound} g: {pound} ÷ 36"
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
            "The range: what few readings tell, by Student’s t, and all else by 1.96, but no more"
            " than 95% of the largest errors; the two squared, added and their root taken:"
            " {exponent:3}. As a factor either way, {factor_low:5!} to {factor_high:5!}.",
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


def _looks_alike(one: float, other: float) -> bool:
    """Tell whether two factors are written alike, in either unit that a page shows."""
    metric = convert(1, "yd/lb/in", "m/100g/cm")
    return show(one) == show(other) or show(one * metric) == show(other * metric)


def _factor(grams: float) -> float:
    """Give the factor of a balance with a counterweight of so many grams."""
    per_pound = formulas.balance_factor_from_counterweight(convert(grams, "g", "lb"))
    return float(convert(per_pound, "1/lb", "yd/lb/in"))

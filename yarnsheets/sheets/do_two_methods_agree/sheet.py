"""Whether two methods of measuring agree: on one skein, and over several."""

import math
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from yarnsheets.estimates.agreement import absolute_agreement, relative_agreement
from yarnsheets.estimates.comparison import Verdict, compare
from yarnsheets.estimates.estimate import Estimate, Interval, PositiveEstimate, t_factor
from yarnsheets.estimates.readings import mean
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Pick, Readings, Table
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import show
from yarnsheets.sheets.do_two_methods_agree.unlikely_pairs import unlikely_readings, unlikely_skeins

_ONE, _SHARE, _PLAIN = "one", "share", "plain"
_MOST_DIGITS = 6


class DoTwoMethodsAgree(Sheet):
    """Whether two methods differ by more than their noise, or how far they may differ.

    Examples
    --------
    >>> sheet = DoTwoMethodsAgree(first=[99, 101], second=[98, 102])
    >>> sheet.is_noise
    True
    """

    question = "Do two methods agree?"

    situation = Pick(
        "What you measured",
        {
            _ONE: "one skein, several times each way",
            _SHARE: "several skeins: differ by how many %",
            _PLAIN: "several skeins: differ by how much",
        },
        measure="Take per cent for skeins of all sizes, since most errors grow with what is"
        " measured; the plain difference for skeins much alike.",
    )
    first = Readings(
        "By the first method",
        "number",
        [412, 405, 420, 409, 416],
        low=0.001,
        high=1e6,
        measure="Yards, metres or grist: any one unit, the same for both methods.",
    )
    second = Readings(
        "By the second method",
        "number",
        [398, 410, 402, 394, 407],
        low=0.001,
        high=1e6,
        measure="For one skein, measure anew each time. For several, a line a skein, in the same"
        " order as above.",
    )

    is_noise = Found("flag", "on one skein, noise alone explains the difference")
    is_apart = Found("flag", "on one skein, the methods differ by more than their noise")
    is_one = Found("flag", "one skein was measured")
    is_several = Found("flag", "several skeins were measured")
    is_plain = Found("flag", "several skeins, differences in the unit typed")
    is_share = Found("flag", "several skeins, differences in per cent")
    count = Found("number", "skeins, or readings by the first method")
    second_count = Found("number", "readings by the second method")
    lines = Found("number", "lines of the longer list")
    first_mean = Found("number", "mean by the first method")
    second_mean = Found("number", "mean by the second method")
    difference = Found("word", "mean difference, in words")
    difference_range = Found("word", "its range, in words")
    next_range = Found("word", "range of the difference on the next skein, in words")
    chance = Found("word", "how often chance alone gives so large a difference")
    t = Found("number", "difference in standard uncertainties, Student's t")
    dof = Found("number", "degrees of freedom")
    student = Found("number", "Student's t for them")
    root = Found("number", "root of one and one over the number of skeins")
    probability = Found("number", "share of checks in which chance gives so large a difference")
    deviation = Found("number", "standard deviation of the differences, as worked with")
    low_end = Found("number", "low end of the axes of both methods")
    high_end = Found("number", "high end of the axes of both methods")
    low_apart = Found("number", "low end of the axis of differences")
    high_apart = Found("number", "high end of the axis of differences")

    points = Table("each skein by both methods, with ranges where there are any")
    bands = Table("mean difference with its range, and the ends of that on the next skein")
    readings = Table("every reading, with its method and line")

    answer = (
        ("is_noise", "The first method finds {difference}: no more than their noise."),
        ("is_apart", "The first method finds {difference}: more than their noise."),
        ("is_one", "Chance alone gives a difference as large {chance}."),
        ("is_one", "The true difference is between {difference_range}, 95% sure."),
        ("is_several", "On average the first method finds {difference}."),
        ("is_several", "On the next skein it finds between {next_range}, 95% sure."),
    )

    def work_out(self) -> Mapping[str, Any]:
        """Work out the difference, and its noise or what it may be on the next skein."""
        if self.situation == _ONE:
            odd = unlikely_readings(self.first, self.second)
            return no_answer(odd) if odd else self._one()
        odd = unlikely_skeins(self.first, self.second)
        return no_answer(odd) if odd else self._several()

    def _one(self) -> dict[str, Any]:
        """Compare by logarithms, so that tex and yards per pound give the same answer."""
        one, other = _geometric_mean(self.first), _geometric_mean(self.second)
        found = compare(one, other)
        ends = [*one.interval(), *other.interval(), *self.first, *self.second]
        band = self._band("", found.ratio)
        point = self._point(one.value, other.value, one.interval(), other.interval())
        return {
            "is_one": True,
            "is_noise": found.verdict is Verdict.WITHIN_NOISE,
            "is_apart": found.verdict is Verdict.BEYOND_NOISE,
            "lines": max(len(self.first), len(self.second)),
            "count": len(self.first),
            "second_count": len(self.second),
            "first_mean": one.value,
            "second_mean": other.value,
            "difference": self._than_the_second(found.ratio.value),
            "difference_range": self._range(*found.ratio.interval()),
            "chance": how_often(found.probability),
            "t": found.t,
            "dof": found.ratio.dof,
            "probability": found.probability,
            "points": [point],
            "bands": [band],
            "readings": self._readings(),
        } | _ends(ends, [point["difference"], band["low"], band["high"]])

    def _several(self) -> dict[str, Any]:
        """Give the mean difference over the skeins, and what it may be on the next."""
        agreement = absolute_agreement if self.situation == _PLAIN else relative_agreement
        found = agreement(self.first, self.second)
        low, high = found.next_skein.interval()
        points = [
            self._point(one, other, Interval(one, one), Interval(other, other))
            for one, other in zip(self.first, self.second, strict=True)
        ]
        bands = [
            self._end("next skein, upper end: ", high),
            self._band("mean: ", found.difference),
            self._end("next skein, lower end: ", low),
        ]
        apart = [each[end] for each in bands for end in ("low", "high")]
        return {
            "is_several": True,
            "is_share": self.situation == _SHARE,
            "is_plain": self.situation == _PLAIN,
            "lines": len(points),
            "count": len(points),
            "difference": self._than_the_second(found.difference.value),
            "difference_range": self._range(*found.difference.interval()),
            "next_range": self._range(low, high),
            "dof": found.difference.dof,
            "student": t_factor(found.difference.dof),
            "root": math.sqrt(1 + 1 / len(points)),
            "deviation": found.deviation,
            "points": points,
            "bands": bands,
            "readings": self._readings(),
        } | _ends([*self.first, *self.second], [*apart, *(each["difference"] for each in points)])

    def _apart(self, difference: float) -> float:
        """Give a difference as the charts show it: a ratio in per cent, or as it is."""
        return difference if self.situation == _PLAIN else (difference - 1) * 100

    def _size(self, difference: float, digits: int) -> str:
        """Say how large a difference is, whichever way it goes."""
        size = show(abs(self._apart(difference)), digits)
        return size + ("" if self.situation == _PLAIN else "%")

    def _words(self, difference: float, digits: int = 2) -> str:
        """Say a difference as it is said before "than the second"."""
        way = "less" if self._apart(difference) < 0 else "more"
        return f"{self._size(difference, digits)} {way}"

    def _than_the_second(self, difference: float) -> str:
        """Say a difference in full."""
        if self._size(difference, 2) in ("0", "0%"):
            return "as much as the second"
        return f"{self._words(difference)} than the second"

    def _range(self, low: float, high: float) -> str:
        """Say a range of differences, the smaller first if both are to one side."""
        if self._apart(low) * self._apart(high) < 0:
            return f"{self._words(low)} and {self._words(high)}"
        nearer, farther = sorted((low, high), key=lambda end: abs(self._apart(end)))
        digits = 2
        while digits < _MOST_DIGITS and self._size(nearer, digits) == self._size(farther, digits):
            digits += 1
        return f"{self._size(nearer, digits)} and {self._words(farther, digits)}"

    def _point(
        self, one: float, other: float, first: Interval, second: Interval
    ) -> dict[str, float]:
        return {
            "first": one,
            "second": other,
            "first_low": first.low,
            "first_high": first.high,
            "second_low": second.low,
            "second_high": second.high,
            "mean": (one + other) / 2,
            "difference": self._apart(one - other if self.situation == _PLAIN else one / other),
        }

    def _band(self, name: str, estimate: Estimate) -> dict[str, Any]:
        low, high = estimate.interval()
        return {
            "name": name + self._words(estimate.value),
            "value": self._apart(estimate.value),
            "low": self._apart(low),
            "high": self._apart(high),
        }

    def _end(self, name: str, end: float) -> dict[str, Any]:
        """Give an end of a range, which has none of its own."""
        at = self._apart(end)
        return {"name": name + self._words(end), "value": at, "low": at, "high": at}

    def _readings(self) -> list[dict[str, Any]]:
        return [
            {"at": at, "reading": reading, "method": method}
            for method, readings in (("first", self.first), ("second", self.second))
            for at, reading in enumerate(readings, start=1)
        ]

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the difference and its noise or its limits come about."""
        yield (
            "is_one",
            "The readings are compared by their ratios, so that yards, metres, tex or yards per"
            " pound give one answer. The geometric mean of {count} by the first method is"
            " {first_mean:5}, of {second_count} by the second {second_mean:5}.",
        )
        yield (
            "is_one",
            "In units of its own noise the difference is {t}, Student’s t, with"
            " {dof|degree|degrees} of freedom (Welch). Noise alone gives one as large, either way,"
            " with a probability of {probability:2}.",
        )
        yield (
            "is_share",
            "For each skein, first divided by second. The mean of the logarithms, turned back:"
            " {difference}. Their standard deviation is {deviation:3}.",
        )
        yield (
            "is_plain",
            "For each skein, first less second. The mean: {difference}. The standard deviation is"
            " {deviation:3}.",
        )
        yield (
            "is_several",
            "The next skein: Student’s t of {student} for {count} skeins, times √(1 + 1/{count}) ="
            " {root}, times the standard deviation, either side of the mean: {next_range}.",
        )
        yield "is_several", "The mean itself is between {difference_range}, 95% sure."


def how_often(probability: float) -> str:
    """Say a probability as so many times of a hundred.

    >>> how_often(0.83), how_often(0.013), how_often(1e-7), how_often(1.0)
    ('83 times of 100', 'once of 100', 'less than once of 100', 'more than 99 times of 100')
    """
    count = math.floor(100 * probability + 0.5)
    if count < 1:
        return "less than once of 100"
    if count > 99:
        return "more than 99 times of 100"
    return "once of 100" if count == 1 else f"{count} times of 100"


def _geometric_mean(readings: Sequence[float]) -> PositiveEstimate:
    logs = mean([math.log(reading) for reading in readings])
    value = math.exp(logs.value)
    return PositiveEstimate(value, value * logs.uncertainty, logs.dof)


def _ends(values: Sequence[float], apart: Sequence[float]) -> dict[str, float]:
    """Give the ends of the axes: a little past the values, and past nought for a difference."""
    low, high = min(values), max(values)
    room = 0.08 * (high - low) or 0.01 * high
    low_apart, high_apart = min(*apart, 0.0), max(*apart, 0.0)
    return {
        "low_end": low - room,
        "high_end": high + room,
        "low_apart": low_apart - 0.12 * (high_apart - low_apart),
        "high_apart": high_apart + 0.12 * (high_apart - low_apart),
    }

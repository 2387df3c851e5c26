"""How far off is a yarn counter, from lengths that are known by other means."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets.estimates.budget import Budget, Component, rectangular
from yarnsheets.estimates.counter import corrected_length, counter_factor
from yarnsheets.estimates.estimate import PositiveEstimate
from yarnsheets.estimates.unlikely_skeins import unlikely_counter
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Input, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import show, slot
from yarnsheets.units import convert

# How near a factor must be to a yard's part of a metre to look like that slip of the counter.
_NEAR_A_UNIT = 0.02

# Ranges narrower than these, either way, have ends that may be written alike: by the four figures
# of the factor, and by the three of a length.
_NARROW_FACTOR, _NARROW_LENGTH = 0.0005, 0.005


class HowFarOffIsMyCounter(Sheet):
    """What to multiply a counter's readings by, and the length behind the next one.

    Examples
    --------
    >>> sheet = HowFarOffIsMyCounter(known=[100, 200, 300], shown=[95, 190, 285])
    >>> round(sheet.factor, 4)
    1.0526
    """

    question = "How far off is my counter?"
    onward = (
        Onward("is-this-enough", {"lengths": "yards", "weights": ""}),
        Onward("what-is-on-my-shelf", {"counter_factor": "factor", "counter_range": "yards_half"}),
    )

    known = Readings(
        "Lengths you know",
        "length",
        [50, 100, 150, 200, 300],
        low=1,
        high=20000,
        measure="Wind each off through the counter: turns of the reel times its circumference.",
    )
    shown = Readings(
        "What the counter showed",
        "length",
        [48.2, 95.1, 144, 190.5, 288],
        low=0.1,
        high=200000,
        measure="A line for each length you know, in the same order. Set the counter to nought"
        " before each.",
    )
    reading = Input(
        "A new reading of the counter",
        "length",
        250,
        low=1,
        high=20000,
        measure="What it shows for a skein whose length you want to know.",
    )
    known_within = Input(
        "The lengths you know are right to within",
        "share",
        0.005,
        low=0.0001,
        high=0.1,
        measure="How well the reel’s circumference is known. It errs the same way in every length,"
        " so more lengths do not help.",
    )

    has_range = Found("flag", "there are enough lengths for a range")
    is_low = Found("flag", "the counter shows too little, beyond doubt")
    is_high = Found("flag", "the counter shows too much, beyond doubt")
    is_true = Found("flag", "a factor of one is within the range")
    is_broad = Found("flag", "the ends of the factor's range are told apart by four figures")
    is_narrow = Found("flag", "they may not be")
    is_length_broad = Found("flag", "the ends of the length's range are told apart by three")
    is_length_narrow = Found("flag", "they may not be")
    is_metres = Found("flag", "the counter looks to count metres for yards")
    is_yards = Found("flag", "the counter looks to count yards for metres")
    count = Found("number", "lengths known")
    factor = Found("number", "what the counter's readings are multiplied by")
    factor_low = Found("number", "low end of its range")
    factor_high = Found("number", "high end of its range")
    factor_half = Found("share", "how far the farther end of it is off, of the factor")
    off = Found("share", "how far the counter is off, of the length known")
    longest = Found("length", "longest reading of the check")
    longest_known = Found("length", "longest length known")
    least_factor = Found("number", "least factor of a length")
    most_factor = Found("number", "greatest factor of a length")
    is_beyond = Found("flag", "the reading is far beyond those of the check")
    yards = Found("length", "length behind the new reading")
    yards_low = Found("length", "low end of its range")
    yards_high = Found("length", "high end of its range")
    yards_half = Found("share", "how far the farther end of it is off, of the length")

    lengths = Table("each length known, what the counter showed, and its factor")

    answer = (
        ("is_low", "Multiply what your counter shows by {factor:4*}: it shows {off:2} too little."),
        ("is_high", "Multiply what your counter shows by {factor:4*}: it shows {off:2} too much."),
        ("is_true", "Your counter may well be right: a factor of 1 will do."),
        (
            "is_broad",
            "The factor is between {factor_low:4} and {factor_high:4}, 95% sure.",
        ),
        ("is_narrow", "The factor is {factor:5}, right to within {factor_half:2}, 95% sure."),
        (
            "is_metres",
            "That is what a counter of metres shows for lengths in yards: look at what it counts.",
        ),
        (
            "is_yards",
            "That is what a counter of yards shows for lengths in metres: look at what it counts.",
        ),
        (
            "is_length_broad",
            "A skein that reads {reading} is about {yards}, between {yards_low!} and {yards_high!},"
            " 95% sure.",
        ),
        (
            "is_length_narrow",
            "A skein that reads {reading} is {yards:4}, right to within {yards_half:2}, 95% sure.",
        ),
    )
    labels: ClassVar = {
        "yards_label": "{yards}",
        "factor_label": "{factor:4}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the factor and the length behind the new reading, with their ranges."""
        odd = self._unlikely()
        if odd:
            return no_answer(odd)
        factor = counter_factor(self.known, self.shown)
        doubt = self._with_known(factor)
        low, high = doubt.range_of(factor.value)
        # a range whose end is written as 1 does not leave it out
        is_low = low > 1 and show(low, 4) != "1"
        is_high = high < 1 and show(high, 4) != "1"
        is_metres = _is_near(factor.value, convert(1, "m", "yd"))
        is_yards = _is_near(factor.value, convert(1, "yd", "m"))
        is_broad = doubt.either_way() >= _NARROW_FACTOR
        length = corrected_length(self.reading, self.known, self.shown)
        doubt_of_length = self._with_known(length)
        yards_low, yards_high = doubt_of_length.range_of(length.value)
        yards_half = doubt_of_length.either_way()
        pairs = list(zip(self.known, self.shown, strict=True))
        factors = [known / shown for known, shown in pairs]
        return {
            "has_range": True,
            "is_low": is_low,
            "is_high": is_high,
            "is_true": not is_low and not is_high,
            "is_broad": is_broad and not is_metres and not is_yards,
            "is_narrow": not is_broad and not is_metres and not is_yards,
            "is_length_broad": yards_half >= _NARROW_LENGTH,
            "is_length_narrow": yards_half < _NARROW_LENGTH,
            "is_metres": is_metres,
            "is_yards": is_yards,
            "is_beyond": self.reading > max(self.shown) * 1.5,
            "count": len(factors),
            "factor": factor.value,
            "factor_low": low,
            "factor_high": high,
            "factor_half": doubt.either_way(),
            "off": abs(1 / factor.value - 1),
            "longest": max(self.shown),
            "longest_known": max(self.known),
            "least_factor": min(*factors, low),
            "most_factor": max(*factors, high),
            "yards": length.value,
            "yards_low": yards_low,
            "yards_high": yards_high,
            "yards_half": yards_half,
            "lengths": [
                {"at": at, "length": known, "counted": shown, "found": known / shown}
                for at, (known, shown) in enumerate(pairs, start=1)
            ],
        }

    def _unlikely(self) -> str | None:
        """Say what keeps the lists from being an answer, if anything does."""
        if len(self.known) != len(self.shown):
            return (
                f"Lengths you know: {len(self.known)}; readings of the counter:"
                f" {len(self.shown)}. Give a reading for every length, in the same order."
            )
        if len(self.known) < 2:
            return "Give two lengths you know at least, better five, and a reading for each."
        for at, (known, shown) in enumerate(zip(self.known, self.shown, strict=True), start=1):
            if odd := unlikely_counter(shown, known, slot):
                return f"Line {at}: {odd}"
        return None

    def _with_known(self, estimate: PositiveEstimate) -> Budget:
        """Count in that all the known lengths may be wrong together."""
        counter = Component("the counter", estimate.relative, estimate.dof)
        return Budget((counter, rectangular("the lengths you know", self.known_within)))

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the factor and the length come about."""
        yield (
            "has_range",
            "Each length you know, divided by what the counter showed for it, is a factor. The"
            " mean of the {count} factors is {factor:5}.",
        )
        yield (
            "has_range",
            "They differ, which counts by Student’s t, and the lengths you know may all be"
            " {known_within} off, which counts for 95% of that. The two squared, added and their"
            " root taken: the factor is between {factor_low:5} and {factor_high:5}.",
        )
        yield "has_range", "Length: {reading:4} × {factor:5} = {yards:4}."
        yield (
            "has_range",
            "A new reading may err as each of these did, so its range is wider than the factor’s:"
            " {yards_low:4} to {yards_high:4}.",
        )


def _is_near(factor: float, unit: float) -> bool:
    return abs(math.log(factor / unit)) < _NEAR_A_UNIT

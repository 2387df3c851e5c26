"""Whether the yarn at hand is enough for a project, when neither is known exactly."""

import math
from collections.abc import Iterable, Mapping
from types import SimpleNamespace
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import enough_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose, larger, smaller
from yarnsheets.estimates import PositiveEstimate, length_for_chance
from yarnsheets.sheets import choices
from yarnsheets.sheets.enough_asked import AskedOfEnough
from yarnsheets.sheets.enough_doubt import Yarn, chance, standard, times, verdict
from yarnsheets.sheets.inputs import Number, Result, Table
from yarnsheets.sheets.sheet import Line

_WIDTHS = 3.5  # standard uncertainties that a hill is drawn to, either way
_POINTS = 61


class IsThisEnough(AskedOfEnough):
    """The chance that the yarn is enough, what is missing, and what the yarn would make.

    Examples
    --------
    >>> sheet = IsThisEnough(weights=[0.5], grist=1200, project=600, reserve=0)
    >>> sheet.chance, sheet.at_hand
    (0.5, 600.0)
    """

    has_answer = Result("flag", "there is yarn to judge")
    is_cancelled = Result("flag", "the need goes by weight too, so grist counts less")
    by_swatch = Result("flag", "the need is from a swatch")
    by_pattern = Result("flag", "the need is the pattern's figure")
    has_known = Result("flag", "there are skeins of known length")
    fits_some = Result("flag", "the yarn is enough for a size, as safely as wanted")
    fits_none = Result("flag", "it is for none")
    fits_unasked = Result("flag", "no sizes were typed")
    verdict = Result("word", "how likely the yarn is enough")
    times = Result("word", "the chance in words")
    chance = Result("share", "chance that the yarn is enough")
    weighed = Result("mass", "weight of all weighed skeins")
    known = Result("length", "length of all skeins of known length")
    have_doubt = Result("share", "standard uncertainty of the yarn at hand, of it")
    left_doubt = Result("share", "what of it is not shared with the need")
    need_doubt = Result("share", "standard uncertainty of the need, of it")
    low_ratio = Result("number", "low end of the yards' range, of the yards")
    high_ratio = Result("number", "high end of the yards' range, of the yards")
    have_reach = Result("number", "how far the hill of the yarn at hand reaches, of it")
    need_reach = Result("number", "how far the hill of the need reaches, of it")
    target_ratio = Result("number", "yards that are as safe as wanted, of the need")
    largest = Result("length", "largest size that the yarn makes as safely as wanted")
    largest_times = Result("word", "the chance for it in words")

    at_hand = Number("length", "yarn that is there")
    at_hand_low = Number("length", "low end of its range")
    at_hand_high = Number("length", "high end of its range")
    from_swatch = Number("mass", "weight that the project takes by the swatch")
    bare_need = Number("length", "yards that the project takes, without the reserve")
    needed = Number("length", "yards that the project takes, with the reserve")
    target = Number("length", "yards that are as safe as wanted")
    more = Number("length", "yards that are missing")
    more_weight = Number("mass", "their weight")
    more_fibre = Number("mass", "fibre to spin for them")
    safe_times = Number("number", "the chance wanted, as times of a hundred")
    part = Number("share", "part of the length that the yarn makes as safely as wanted")
    is_short = Number("flag", "there is less than is as safe as wanted")
    is_safe = Number("flag", "there is as much")

    having = Table("how likely each length at hand is, of the likeliest")
    needing = Table("how likely each need is, of the likeliest")
    size_chances = Table("chance for each size")

    answer = (
        (None, "{verdict}: {times}."),
        (
            None,
            "You have about {at_hand}, between {at_hand_low!} and {at_hand_high} in 19 times of"
            " 20; the project takes about {needed}, its reserve counted in.",
        ),
        (
            "is_short",
            "To have enough {safe_times:2} times of 100, spin {more:2^} more: {more_weight:2^} of"
            " yarn, from {more_fibre:2^} of fibre.",
        ),
        ("is_safe", "That is as safe as you asked for."),
    )
    labels: ClassVar = {"have_label": "there: {at_hand}", "need_label": "takes: {needed}"}

    def work_out(self) -> Mapping[str, Any]:
        """Work out the doubts, the chance they leave, and the chance for each size."""
        if warning := self.unlikely():
            return self.no_answer(warning)
        yarn = self.yarn()
        by_swatch = self.need_by == "swatch"
        found = {
            "by_swatch": by_swatch,
            "weighed": float(sum(self.weights)),
            "known": float(sum(self.lengths)),
        }
        needed = _needed(SimpleNamespace(**self._signals() | found))
        need_doubt = self.doubt_of_need()
        have = yarn.in_doubt(grist_shared=float(by_swatch))
        need = PositiveEstimate(needed, needed * need_doubt)
        low, high = yarn.in_doubt().interval()
        likely = chance(have, need)
        sizes = self._size_chances(yarn)
        fitting = [row for row in sizes if row["chance"] >= self.safety]
        return found | {
            "has_answer": True,
            "is_cancelled": by_swatch and bool(self.weights),
            "by_pattern": not by_swatch,
            "has_known": bool(self.lengths),
            "fits_some": bool(fitting),
            "fits_none": bool(sizes) and not fitting,
            "fits_unasked": not sizes,
            "verdict": verdict(likely),
            "times": times(likely),
            "chance": likely,
            "have_doubt": yarn.in_doubt().relative,
            "left_doubt": have.relative,
            "need_doubt": need_doubt,
            "low_ratio": low / yarn.yards,
            "high_ratio": high / yarn.yards,
            "have_reach": math.exp(_WIDTHS * have.relative),
            "need_reach": math.exp(_WIDTHS * need_doubt),
            "target_ratio": length_for_chance(self.safety, have, need) / needed,
            "largest": fitting[-1]["size"] if fitting else math.nan,
            "largest_times": times(fitting[-1]["chance"]) if fitting else "",
            "having": _hill(have.relative),
            "needing": _hill(need_doubt),
            "size_chances": sizes,
        }

    def _size_chances(self, yarn: Yarn) -> list[dict[str, Any]]:
        """Give each size's chance, the smallest size first; sizes are figures of the pattern."""
        have, doubt = yarn.in_doubt(), standard(self.project_range)
        needs = [(size, size * (1 + self.reserve)) for size in sorted(set(self.sizes))]
        chances = [
            (size, chance(have, PositiveEstimate(need, need * doubt))) for size, need in needs
        ]
        return [
            {"size": size, "chance": part, "short": times(part).removesuffix(" times of 100")}
            for size, part in chances
        ]

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out the yards, which follow every number at once."""
        at_hand = formulas.length(v.weighed, v.grist) + v.known
        needed = _needed(v)
        target = needed * v.target_ratio
        more = larger(target - at_hand, 0)
        is_short = target > at_hand
        return {
            "at_hand": at_hand,
            "at_hand_low": at_hand * v.low_ratio,
            "at_hand_high": at_hand * v.high_ratio,
            "from_swatch": _swatch_mass(v),
            "bare_need": _bare_need(v),
            "needed": needed,
            "target": target,
            "more": more,
            "more_weight": formulas.mass(more, v.grist),
            "more_fibre": formulas.fibre_needed(
                more, v.grist, [formulas.share_left(v.spinning_waste)]
            ),
            "safe_times": v.safety * 100,
            "part": smaller(at_hand / target, 1),
            "is_short": is_short,
            "is_safe": target <= at_hand,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the yards, their doubts and the chance come about."""
        yield None, "Weighed: {weighed:4} at {grist:4}."
        yield "has_known", "Of known length: {known:4}."
        yield None, "Together there are {at_hand:4}."
        yield (
            "by_pattern",
            "Needed: {project:4} and {reserve} reserve make {needed:4}.",
        )
        yield (
            "by_swatch",
            "Needed: {swatch_weight:4} × {project_area:4} ÷ {swatch_area:4} = {from_swatch:4} of"
            " yarn, which is {bare_need:4}; with {reserve} reserve {needed:4}.",
        )
        yield (
            None,
            "The grist’s doubt is the same in every weighed skein and adds up plainly; the scale’s"
            " steps and known lengths count anew for each, by their squares. Together, in 19 times"
            " of 20: {at_hand_low:4} to {at_hand_high:4}.",
        )
        yield (
            "is_cancelled",
            "Skeins and swatch are both weighed, so the grist’s doubt drops out between them as far"
            " as the yarn is weighed: {left_doubt:2} is left of {have_doubt:2}.",
        )
        yield (
            None,
            "What is there may be off by {left_doubt:2} and the need by {need_doubt:2}, each a"
            " standard uncertainty. The chance by the normal curve of their ratio: {chance:4}.",
        )
        yield (
            None,
            "To be enough {safe_times:2} times of 100, there must be {target_ratio:4} × {needed:4},"
            " which is {target:4}.",
        )
        yield (
            "is_short",
            "The missing {more:4} at {grist:4} weigh {more_weight:4}; with {spinning_waste} lost in"
            " spinning, that takes {more_fibre:4} of fibre.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw what is there beside what is needed, and the chance of each size."""
        return (enough_charts.have_and_need(v), enough_charts.chance_by_size(v))


def _swatch_mass(v: Any) -> Any:
    """Give the weight that the project takes by the swatch, for numbers or chart text."""
    return v.swatch_weight * v.project_area / v.swatch_area


def _bare_need(v: Any) -> Any:
    return choose(v.by_swatch, formulas.length(_swatch_mass(v), v.grist), v.project)


def _needed(v: Any) -> Any:
    return _bare_need(v) * (1 + v.reserve)


def _hill(doubt: float) -> list[dict[str, float]]:
    """Give how likely each ratio to the middle is: the normal curve of its logarithm."""
    steps = [_WIDTHS * (2 * at / (_POINTS - 1) - 1) for at in range(_POINTS)]
    return [{"ratio": math.exp(z * doubt), "likely": math.exp(-(z**2) / 2)} for z in steps]

"""Whether the yarn at hand is enough for a project, when neither is known exactly."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates import PositiveEstimate, length_for_chance
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, no_answer
from yarnsheets.sheets.is_this_enough.asked import AskedOfEnough
from yarnsheets.sheets.shared.doubt import (
    chance,
    standard,
    times,
    times_written,
    verdict,
)

_WIDTHS = 3.5  # standard uncertainties that a hill is drawn to, either way
_POINTS = 61
_NARROW = 1.02  # high end over low, below which both may be written alike
_LEAST_MORE = 1.0  # yd; nobody spins less than that for safety
_PARTS = (0.8, 0.9, 1.0, 1.1, 1.2)  # of the need, compared where no sizes are typed


class IsThisEnough(AskedOfEnough):
    """The chance that the yarn is enough, what is missing, and what the yarn would make.

    Examples
    --------
    >>> sheet = IsThisEnough(weights=[0.5], grist=1200, project=600)
    >>> sheet.chance, sheet.at_hand
    (0.5, 600.0)
    """

    question = "Is this enough?"
    onward = (
        Onward(
            "how-many-yards",
            {"grist": "grist_known", "weight": "yarn_weight", "project": "needed"},
        ),
        Onward("how-sure-is-the-grist", {"wanted": "range_known"}),
        Onward(
            "will-the-ball-last",
            {"grist": "grist_known", "weight": "ball", "weighings": ""},
        ),
        Onward(
            "what-is-on-my-shelf",
            {"project": "needed", "project_range": "project_range", "safety": "safety"},
        ),
        Onward("what-does-this-spin-take", {"grist_wanted": "grist_known", "project": "needed"}),
    )

    has_answer = Found("flag", "there is yarn to judge")
    is_unspun = Found("flag", "there is none yet")
    is_ranged = Found("flag", "the range of the yards is wide enough to write both ends")
    is_safe = Found("flag", "it is as safe as wanted")
    is_cancelled = Found("flag", "the need goes by weight too, so grist counts less")
    by_swatch = Found("flag", "the need is from a swatch")
    has_weighed = Found("flag", "there are weighed skeins")
    has_known = Found("flag", "there are skeins of known length")
    is_narrow = Found("flag", "the range of the yards is too narrow to write both ends")
    fits_some = Found("flag", "the yarn is enough for a figure, as safely as wanted")
    fits_none = Found("flag", "it is for none")
    fits_unasked = Found("flag", "no sizes were typed")
    verdict = Found("word", "how likely the yarn is enough")
    times = Found("word", "the chance in words")
    chance = Found("share", "chance that the yarn is enough")
    weighed = Found("mass", "weight of all weighed skeins")
    known = Found("length", "length of all skeins of known length")
    have_within = Found("share", "how far the yards at hand may be off, 95% sure")
    have_doubt = Found("share", "standard uncertainty of the yarn at hand, of it")
    left_doubt = Found("share", "what of it is not shared with the need")
    need_doubt = Found("share", "standard uncertainty of the need, of it")
    have_reach = Found("number", "how far the hill of the yarn at hand reaches, of it")
    need_reach = Found("number", "how far the hill of the need reaches, of it")
    target_ratio = Found("number", "yards that are as safe as wanted, of the need")
    largest = Found("length", "largest figure that the yarn makes as safely as wanted")
    largest_times = Found("word", "the chance for it in words")

    hill_at = Found("length", "middle of the hill of the yarn: there, or to have")
    at_hand = Found("length", "yarn that is there")
    at_hand_low = Found("length", "low end of its range")
    at_hand_high = Found("length", "high end of its range")
    from_swatch = Found("mass", "weight that the project takes by the swatch")
    needed = Found("length", "yards that the project takes")
    target = Found("length", "yards that are as safe as wanted")
    target_weight = Found("mass", "weight of that many")
    more = Found("length", "yards missing to them")
    more_weight = Found("mass", "weight of what is missing")
    more_fibre = Found("mass", "fibre to spin it from")
    safe_times = Found("number", "times of 100 that are wanted")
    part = Found("share", "part of a project of steady width that is as safe as wanted")
    is_short = Found("flag", "it is less safe than wanted")
    wants_yards = Found("flag", "more is wanted, and no grist is known to weigh it by")
    wants_weight = Found("flag", "more is wanted, and its weight is known")
    grist_known = Found("grist", "grist, if anything here goes by it")
    range_known = Found("share", "how far off the grist may be, if anything here goes by it")
    yarn_weight = Found("mass", "weight of all the yarn, by its grist")
    ball = Found("mass", "weight of all the yarn, if all of it was weighed")
    having = Table("how likely the yarn is so much, against what is there")
    needing = Table("how likely the need is so much, against itself")
    size_chances = Table("chance for each figure")

    answer = (
        ("is_unspun", "Have {target^*} to be enough {safe_times} times of 100."),
        ("is_unspun", "That is {target_weight^} of yarn; the project itself takes {needed}."),
        ("is_unspun", "Type the weight of each skein, and the page tells the chance."),
        ("has_answer", "{verdict*}: {times}."),
        (
            "is_ranged",
            "You have about {at_hand~}, between {at_hand_low!~} and {at_hand_high~}, 95% sure; the"
            " project takes {needed}.",
        ),
        (
            "is_narrow",
            "You have {at_hand:4~}, right to {have_within:2}, 95% sure; the project takes"
            " {needed}.",
        ),
        ("wants_yards", "To have enough {safe_times} times of 100, get {more:2^} more."),
        (
            "wants_weight",
            "To have enough {safe_times} times of 100, spin {more:2^} more, {more_weight:2^} of"
            " yarn.",
        ),
        ("is_safe", "That is as safe as you asked for."),
    )
    labels: ClassVar = {
        "have_label": "there: {at_hand~}",
        "to_have_label": "to have: {target^}",
        "need_label": "takes: {needed}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the doubts, the chance they leave, and the chance for each figure."""
        if warning := self.unlikely():
            return no_answer(warning)
        by_swatch = self.need_by == "swatch"
        from_swatch = self.swatch_weight * self.project_area / self.swatch_area
        needed = formulas.length(from_swatch, self.grist) if by_swatch else self.project
        need_doubt = self.doubt_of_need()
        need = PositiveEstimate(needed, needed * need_doubt)
        wanted = times_written(self.safety)
        of_need = {
            "by_swatch": by_swatch,
            "from_swatch": from_swatch,
            "needed": needed,
            "need_doubt": need_doubt,
            "need_reach": math.exp(_WIDTHS * need_doubt),
            "needing": _hill(need_doubt),
            "safe_times": wanted,
        }
        if not self.weights and not self.lengths:
            return of_need | self._unspun(need, wanted)
        yarn = self.yarn()
        at_hand = yarn.yards
        have = yarn.in_doubt(grist_shared=float(by_swatch))
        low, high = yarn.in_doubt().interval()
        likely = chance(have, need)
        is_short = times_written(likely) < wanted
        target = length_for_chance(wanted / 100, have, need)
        more = max(target - at_hand, _LEAST_MORE) if is_short else 0.0
        of_sizes = self._size_chances(yarn.in_doubt() if self.sizes else have, need, wanted)
        by_weight = bool(self.weights) or by_swatch
        grist = self.grist if by_weight else math.nan
        is_narrow = high < low * _NARROW
        return (
            of_need
            | of_sizes
            | {
                "has_answer": True,
                "hill_at": at_hand,
                "have_reach": math.exp(_WIDTHS * have.relative),
                "having": _hill(have.relative),
                "weighed": sum(self.weights),
                "known": sum(self.lengths),
                "is_cancelled": by_swatch and bool(self.weights),
                "has_weighed": bool(self.weights),
                "has_known": bool(self.lengths),
                "is_narrow": is_narrow,
                "is_ranged": not is_narrow,
                "verdict": verdict(likely),
                "times": times(likely),
                "chance": likely,
                "have_within": high / at_hand - 1,
                "have_doubt": yarn.in_doubt().relative,
                "left_doubt": have.relative,
                "target_ratio": target / needed,
                "at_hand": at_hand,
                "at_hand_low": low,
                "at_hand_high": high,
                "target": target,
                "target_weight": formulas.mass(target, grist),
                "more": more,
                "more_weight": formulas.mass(more, grist),
                "more_fibre": formulas.fibre_needed(
                    more, grist, [formulas.share_left(self.spinning_waste)]
                ),
                "part": min(at_hand / target, 1),
                "is_short": is_short,
                "is_safe": not is_short,
                "wants_yards": is_short and not by_weight,
                "wants_weight": is_short and by_weight,
                "grist_known": grist,
                "range_known": self.grist_range if by_weight else math.nan,
                "yarn_weight": formulas.mass(at_hand, grist),
                "ball": math.nan if self.lengths else sum(self.weights),
            }
        )

    def _unspun(self, need: PositiveEstimate, wanted: int) -> dict[str, Any]:
        """Give how much to have before there is any, by the doubts of the need and the grist."""
        # a swatch goes by weight as the yarn will: then the grist is wrong in both alike
        doubt = 0.0 if self.need_by == "swatch" else standard(self.grist_range)
        like_it = PositiveEstimate(need.value, need.value * doubt)
        target = length_for_chance(wanted / 100, like_it, need)
        to_have = PositiveEstimate(target, target * doubt)
        return self._size_chances(to_have, need, wanted) | {
            "is_unspun": True,
            "hill_at": target,
            "have_reach": math.exp(_WIDTHS * doubt),
            "having": _hill(doubt),
            "left_doubt": doubt,
            "target": target,
            "target_weight": formulas.mass(target, self.grist),
            "target_ratio": target / need.value,
            "grist_known": self.grist,
            "range_known": self.grist_range,
        }

    def _size_chances(
        self, have: PositiveEstimate, need: PositiveEstimate, wanted: int
    ) -> dict[str, Any]:
        """Give each figure's chance, the smallest first: of the pattern, or parts of the need."""
        doubt = standard(self.project_range) if self.sizes else need.relative
        figures = self.sizes or [need.value * part for part in _PARTS]
        chances = [
            (size, chance(have, PositiveEstimate(size, size * doubt)))
            for size in sorted(set(figures))
        ]
        fitting = [(size, part) for size, part in chances if times_written(part) >= wanted]
        return {
            "fits_some": bool(fitting),
            "fits_none": not fitting,
            "fits_unasked": not self.sizes,
            "largest": fitting[-1][0] if fitting else math.nan,
            "largest_times": times(fitting[-1][1]) if fitting else "",
            "size_chances": [
                {"size": size, "chance": part, "short": times(part).removesuffix(" times of 100")}
                for size, part in chances
            ],
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the yards, their doubts and the chance come about."""
        yield "has_weighed", "Weighed: {weighed:4} at {grist:4}."
        yield "has_known", "Of known length: {known:4}."
        yield "has_answer", "Together there are {at_hand:4}."
        yield "not by_swatch", "Needed: {project:4}, the pattern’s own figure."
        yield (
            "by_swatch",
            "Needed: {swatch_weight:4} × {project_area:4} ÷ {swatch_area:4} = {from_swatch:4} of"
            " yarn, which is {needed:4}.",
        )
        yield (
            "has_answer",
            "The grist’s doubt is the same in every weighed skein and adds up plainly; the scale’s"
            " steps and known lengths count anew for each, by their squares. Together, 95% sure:"
            " {at_hand_low:5} to {at_hand_high:5}.",
        )
        yield (
            "is_cancelled",
            "Skeins and swatch are both weighed, so the grist’s doubt drops out between them as far"
            " as the yarn is weighed: {left_doubt:2} is left of {have_doubt:2}.",
        )
        yield (
            "is_unspun",
            "The yarn may come out {left_doubt:2} off and the need {need_doubt:2}, each a standard"
            " uncertainty.",
        )
        yield (
            "has_answer",
            "What is there may be off by {left_doubt:2} and the need by {need_doubt:2}, each a"
            " standard uncertainty. The chance by the normal curve of their ratio: {chance:4}.",
        )
        yield (
            None,
            "To be enough {safe_times} times of 100, there must be {target_ratio:4} × {needed:4},"
            " which is {target:4}.",
        )
        yield "is_unspun", "At {grist:4} that weighs {target_weight:4}."
        yield (
            "wants_weight",
            "The missing {more:4} at {grist:4} weigh {more_weight:4}; with {spinning_waste} lost in"
            " spinning, that takes {more_fibre:4} of fibre.",
        )


def _hill(doubt: float) -> list[dict[str, float]]:
    """Give how likely each ratio to the middle is: the normal curve of its logarithm."""
    steps = [_WIDTHS * (2 * at / (_POINTS - 1) - 1) for at in range(_POINTS)]
    return [{"ratio": math.exp(z * doubt), "likely": math.exp(-(z**2) / 2)} for z in steps]

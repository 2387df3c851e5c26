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
from yarnsheets.sheets.shared.doubt import Yarn, chance, standard, times, verdict

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

    question = "Is this enough?"
    onward = (
        Onward("how-many-yards", {"grist": "grist", "project": "needed"}),
        Onward("how-sure-is-the-grist", {"wanted": "grist_range"}),
        Onward("will-the-ball-last", {"grist": "grist", "weight": "weighed"}),
        Onward("what-does-this-spin-take", {"grist_wanted": "grist", "project": "project"}),
    )

    has_answer = Found("flag", "there is yarn to judge")
    is_cancelled = Found("flag", "the need goes by weight too, so grist counts less")
    by_swatch = Found("flag", "the need is from a swatch")
    has_known = Found("flag", "there are skeins of known length")
    fits_some = Found("flag", "the yarn is enough for a size, as safely as wanted")
    fits_none = Found("flag", "it is for none")
    fits_unasked = Found("flag", "no sizes were typed")
    verdict = Found("word", "how likely the yarn is enough")
    times = Found("word", "the chance in words")
    chance = Found("share", "chance that the yarn is enough")
    weighed = Found("mass", "weight of all weighed skeins")
    known = Found("length", "length of all skeins of known length")
    have_doubt = Found("share", "standard uncertainty of the yarn at hand, of it")
    left_doubt = Found("share", "what of it is not shared with the need")
    need_doubt = Found("share", "standard uncertainty of the need, of it")
    have_reach = Found("number", "how far the hill of the yarn at hand reaches, of it")
    need_reach = Found("number", "how far the hill of the need reaches, of it")
    target_ratio = Found("number", "yards that are as safe as wanted, of the need")
    largest = Found("length", "largest size that the yarn makes as safely as wanted")
    largest_times = Found("word", "the chance for it in words")

    at_hand = Found("length", "yarn that is there")
    at_hand_low = Found("length", "low end of its range")
    at_hand_high = Found("length", "high end of its range")
    from_swatch = Found("mass", "weight that the project takes by the swatch")
    bare_need = Found("length", "yards that the project takes, without the reserve")
    needed = Found("length", "yards that the project takes, with the reserve")
    target = Found("length", "yards that are as safe as wanted")
    more = Found("length", "yards that are missing")
    more_weight = Found("mass", "their weight")
    more_fibre = Found("mass", "fibre to spin for them")
    safe_times = Found("number", "the chance wanted, as times of a hundred")
    part = Found("share", "part of the length that the yarn makes as safely as wanted")
    is_short = Found("flag", "there is less than is as safe as wanted")

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
        ("not is_short", "That is as safe as you asked for."),
    )
    labels: ClassVar = {"have_label": "there: {at_hand}", "need_label": "takes: {needed}"}

    def work_out(self) -> Mapping[str, Any]:
        """Work out the doubts, the chance they leave, and the chance for each size."""
        if warning := self.unlikely():
            return no_answer(warning)
        yarn = self.yarn()
        at_hand = yarn.yards
        by_swatch = self.need_by == "swatch"
        from_swatch = self.swatch_weight * self.project_area / self.swatch_area
        bare_need = formulas.length(from_swatch, self.grist) if by_swatch else self.project
        needed = bare_need * (1 + self.reserve)
        need_doubt = self.doubt_of_need()
        have = yarn.in_doubt(grist_shared=float(by_swatch))
        need = PositiveEstimate(needed, needed * need_doubt)
        low, high = yarn.in_doubt().interval()
        likely = chance(have, need)
        target = length_for_chance(self.safety, have, need)
        more = max(target - at_hand, 0.0)
        sizes = self._size_chances(yarn)
        fitting = [row for row in sizes if row["chance"] >= self.safety]
        return {
            "has_answer": True,
            "by_swatch": by_swatch,
            "weighed": sum(self.weights),
            "known": sum(self.lengths),
            "is_cancelled": by_swatch and bool(self.weights),
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
            "have_reach": math.exp(_WIDTHS * have.relative),
            "need_reach": math.exp(_WIDTHS * need_doubt),
            "target_ratio": target / needed,
            "largest": fitting[-1]["size"] if fitting else math.nan,
            "largest_times": times(fitting[-1]["chance"]) if fitting else "",
            "having": _hill(have.relative),
            "needing": _hill(need_doubt),
            "size_chances": sizes,
            "at_hand": at_hand,
            "at_hand_low": low,
            "at_hand_high": high,
            "from_swatch": from_swatch,
            "bare_need": bare_need,
            "needed": needed,
            "target": target,
            "more": more,
            "more_weight": formulas.mass(more, self.grist),
            "more_fibre": formulas.fibre_needed(
                more, self.grist, [formulas.share_left(self.spinning_waste)]
            ),
            "safe_times": self.safety * 100,
            "part": min(at_hand / target, 1),
            "is_short": target > at_hand,
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

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the yards, their doubts and the chance come about."""
        yield None, "Weighed: {weighed:4} at {grist:4}."
        yield "has_known", "Of known length: {known:4}."
        yield None, "Together there are {at_hand:4}."
        yield (
            "not by_swatch",
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


def _hill(doubt: float) -> list[dict[str, float]]:
    """Give how likely each ratio to the middle is: the normal curve of its logarithm."""
    steps = [_WIDTHS * (2 * at / (_POINTS - 1) - 1) for at in range(_POINTS)]
    return [{"ratio": math.exp(z * doubt), "likely": math.exp(-(z**2) / 2)} for z in steps]

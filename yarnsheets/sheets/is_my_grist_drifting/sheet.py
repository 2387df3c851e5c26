"""Is the grist drifting while a yarn is spun, and which bobbins to ply together."""

from collections.abc import Iterable, Mapping, Sequence
from itertools import accumulate, pairwise
from statistics import harmonic_mean
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates.control import ControlChart, Signal, control_chart, drift
from yarnsheets.estimates.estimate import t_factor
from yarnsheets.estimates.readings import grist_from_cuts
from yarnsheets.estimates.unlikely import unlikely_cuts
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import counted, show, slot
from yarnsheets.sheets.is_my_grist_drifting.bobbins import (
    as_spun,
    finest_with_thickest,
    listed,
    off_target,
    pair_in_words,
    pairs_in_words,
    plied_pair,
)
from yarnsheets.sheets.shared import cutting, grists, plying

_FEWEST_CUTS = 6  # the shortest rise or fall that the chart can flag
_FIRM = 20  # cuts from which on the limits are well known
_LATEST = 5
_FEWEST_FOR_RANGE = 3
_MOST_NAMED = 3

# Ends of a range that are no more than this times apart may be written alike.
_NARROW = 1.01

_INVENTED = [
    *(10.6, 10.2, 10.9, 10.4, 10.7, 10.3, 10.5, 10.1, 10.4, 9.9, 10.6, 10.2),
    *(9.8, 10.3, 9.7, 10.0, 9.9, 10.0, 9.9, 9.4, 9.8, 9.5, 9.7, 9.3),
]

# A control chart speaks of readings, a spinner of yarn: a long cut is a fine yarn.
_PLAIN = {
    "is below": "is thicker than",
    "is above": "is finer than",
    "all below the centre line": "thicker than the mean",
    "all above the centre line": "finer than the mean",
    "rise one": "get finer one",
    "fall one": "get thicker one",
}


class IsMyGristDrifting(Sheet):
    """Whether the grist drifts from cut to cut, and what that means for plying.

    Examples
    --------
    >>> sheet = IsMyGristDrifting(cuts=[10, 10.2, 9.9, 10.1, 9.8, 10.1], bobbins=[3, 3])
    >>> sheet.is_level, round(sheet.centre)
    (True, 1002)
    """

    question = "Is my grist drifting?"
    onward = (
        Onward("how-many-yards", {"grist": "now", "take_up": "take_up"}),
        Onward("how-sure-is-the-grist", {"balance_factor": "balance_factor"}),
    )

    cuts = Readings(
        "Cuts, in the order spun",
        "short",
        _INVENTED,
        low=0,
        high=400,
        measure="Every few yards trim a cut until the balance hangs level and write its length"
        " under the one before: 9.6 or 9 5/8.",
        drawing="cut",
    )
    balance_factor = cutting.balance_factor(
        "The maker’s number: length of cut times this is grist. Often 100."
    )
    target = grists.asked(
        "Grist of your sample, the target",
        1000,
        "The grist of the singles in the sample whose yarn you liked.",
    )
    tolerance = Input(
        "Off target I can live with, either way",
        "share",
        0.05,
        low=0.005,
        high=0.5,
        measure="5% either way of 1,000 is from 950 to 1,050.",
    )

    the_plying = Group("Which bobbins to ply together")
    bobbins = Readings(
        "Cuts taken from each bobbin",
        "number",
        [6, 6, 6, 6],
        low=1,
        high=500,
        measure="One number for each bobbin, in the order spun: 6 if the first six cuts are from"
        " the first bobbin.",
    )
    take_up = plying.take_up(1.05)

    has_answer = Found("flag", "there are enough cuts, and each has its bobbin")
    is_drifting = Found("flag", "the range of the drift leaves nought out")
    is_level = Found("flag", "it does not")
    is_steady = Found("flag", "it does not, and the chart flags no cut")
    is_unsteady = Found("flag", "no drift shows, but the chart flags a cut")
    has_signals = Found("flag", "the chart flags a cut")
    has_no_signals = Found("flag", "the chart flags none")
    is_now_broad = Found("flag", "the latest cuts differ, so their range has two ends")
    is_now_narrow = Found("flag", "they hardly do")
    is_drift_broad = Found("flag", "it drifts, and the ends of the drift's range are told apart")
    is_order_apart = Found("flag", "pairs in the order spun are told apart")
    is_few = Found("flag", "there are too few cuts for firm limits")
    has_pairs = Found("flag", "there are two bobbins or more")
    is_one_pair = Found("flag", "there are just two")
    is_paired_apart = Found("flag", "there are more, and the pairs' grists are told apart")
    is_paired_alike = Found("flag", "there are more, and they hardly are")

    count = Found("number", "cuts taken")
    centre = Found("grist", "mean of the cuts' grists, the centre line")
    limit_low = Found("grist", "lower control limit")
    limit_high = Found("grist", "upper control limit")
    least = Found("grist", "least grist of a cut, or the lower limit if that is less")
    most = Found("grist", "greatest grist of a cut, or the upper limit if that is more")
    mean_cut = Found("short", "mean cut")
    mean_range = Found("short", "mean moving range, as a length of cut")
    reach = Found("short", "from the centre line to a limit, as a length of cut")
    signals = Found("word", "what is flagged, in words")

    direction = Found("word", "which way the yarn drifts, in a word")
    drift = Found("share", "drift from one cut to the next, of the mean grist, without its sign")
    drift_low = Found("share", "nearer end of its range, without its sign")
    drift_high = Found("share", "farther end of its range, without its sign")
    finer_limit = Found("share", "how fast the yarn may be getting finer, a cut")
    thicker_limit = Found("share", "how fast the yarn may be getting thicker, a cut")
    student = Found("number", "Student's t for the drift")
    dof = Found("number", "its degrees of freedom")
    latest = Found("number", "how many of the cuts are the latest")
    now = Found("grist", "grist of the latest cuts, their harmonic mean")
    now_low = Found("grist", "low end of its range")
    now_high = Found("grist", "high end of its range")

    bobbin_count = Found("number", "bobbins spun")
    bobbin_low = Found("grist", "low end of the bobbins' grists and their ranges")
    bobbin_high = Found("grist", "high end of the bobbins' grists and their ranges")
    off_target = Found("word", "how far off target each bobbin is, in words")
    pairing = Found("word", "which bobbin to ply with which, in words")
    pairs_low = Found("grist", "least grist of the plied yarns, paired by grist")
    pairs_high = Found("grist", "greatest grist of them")
    order_low = Found("grist", "least grist of the plied yarns, in the order spun")
    order_high = Found("grist", "greatest grist of them")
    finest = Found("grist", "grist of the finest bobbin")
    thickest = Found("grist", "grist of the thickest bobbin")
    extremes_plied = Found("grist", "grist of these two plied")

    so_far = Found("share", "drift from the first cut to the last, without its sign")
    so_far_low = Found("share", "nearer end of its range, without its sign")
    so_far_high = Found("share", "farther end of its range, without its sign")
    target_cut = Found("short", "cut that balances at the target")
    cut_low = Found("short", "shortest cut near enough")
    cut_high = Found("short", "longest cut near enough")
    target_low = Found("grist", "least grist near enough")
    target_high = Found("grist", "greatest grist near enough")

    readings = Table("each cut's grist, and whether it is flagged")
    changes = Table("where on the chart of cuts one bobbin follows another")
    means = Table("each bobbin's grist")
    ranges = Table("the ranges of the bobbins with enough cuts for one")
    plied = Table("the grist of each plied yarn, paired by grist and in the order spun")

    answer = (
        (
            "is_drifting",
            "Yes: the yarn gets {direction}, by {so_far:2*} over your {count|cut|cuts}.",
        ),
        ("is_steady", "No drift shows in your {count|cut|cuts}."),
        ("is_unsteady", "No drift shows in your {count|cut|cuts}, though the chart marks some."),
        (
            "is_now_broad",
            "Now it is {now}, between {now_low!} and {now_high!}, 95% sure; for {target} spin to a"
            " cut of {target_cut}.",
        ),
        ("is_now_narrow", "Now it is about {now}; for {target} spin to a cut of {target_cut}."),
        ("is_one_pair", "Your two bobbins ply to about {pairs_low}."),
        ("is_paired_apart", "Ply {pairing}, for {pairs_low!} to {pairs_high}."),
        ("is_paired_alike", "Ply {pairing}, for about {pairs_low}."),
    )
    labels: ClassVar = {
        "centre_label": "mean",
        "limit_label": "limit",
        "target_label": "target",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the control chart, the drift, each bobbin's grist and the pairs."""
        aims = self._aims()
        if wrong := self._wrong():
            return aims | no_answer(wrong)
        chart = control_chart([self._grist(cut) for cut in self.cuts])
        if chart.limits.low <= 0:
            return aims | no_answer(
                "Your cuts differ so much from one to the next that no drift can be told from"
                " it. Check that the balance swings freely and that all are in one unit."
            )
        signals = chart.signals
        return {
            **aims,
            **self._control(chart, signals),
            **self._drift(chart, is_flagged=bool(signals)),
            **self._bobbins(),
        }

    def unused(self) -> list[str]:
        """Name the take-up, where there is nothing to ply with."""
        return [] if len(self.bobbins) > 1 else ["take_up"]

    def _grist(self, cut: float) -> float:
        return float(formulas.grist_from_cut(cut, self.balance_factor))

    def _aims(self) -> dict[str, Any]:
        """Give what to spin to, which needs no cut."""
        low, high = self.target * (1 - self.tolerance), self.target * (1 + self.tolerance)
        return {
            "target_cut": formulas.cut_from_grist(self.target, self.balance_factor),
            "cut_low": formulas.cut_from_grist(low, self.balance_factor),
            "cut_high": formulas.cut_from_grist(high, self.balance_factor),
            "target_low": low,
            "target_high": high,
        }

    def _wrong(self) -> str | None:
        """Say what is probably wrong with what was typed; none if nothing is."""
        taken, held = len(self.cuts), sum(self.bobbins)
        if taken < _FEWEST_CUTS:
            return (
                f"{counted(taken, 'cut', 'cuts')} cannot tell a drift from chance. Type at least"
                f" {_FEWEST_CUTS}, better {_FIRM}, in the order spun."
            )
        odd = unlikely_cuts(self.cuts, slot)
        if odd:
            return odd
        if any(cuts % 1 for cuts in self.bobbins):
            return "The cuts taken from a bobbin are a whole number: look at that list again."
        if taken != held:
            return (
                f"You typed {counted(taken, 'cut', 'cuts')}, but the bobbins have {show(held)} in"
                " all. Put right the cuts taken from each bobbin, or add the cut that is missing."
            )
        return None

    def _control(self, chart: ControlChart, signals: Sequence[Signal]) -> dict[str, Any]:
        """Give the control chart: its lines, and which cuts it flags."""
        flagged = {at for each in signals for at in range(each.first, each.last + 1)}
        low, high = chart.limits
        return {
            "has_answer": True,
            "has_signals": bool(flagged),
            "has_no_signals": not flagged,
            "is_few": len(self.cuts) < _FIRM,
            "count": len(self.cuts),
            "centre": chart.centre,
            "limit_low": low,
            "limit_high": high,
            "least": min(*chart.readings, low),
            "most": max(*chart.readings, high),
            "mean_cut": formulas.cut_from_grist(chart.centre, self.balance_factor),
            "mean_range": formulas.cut_from_grist(chart.mean_range, self.balance_factor),
            "reach": formulas.cut_from_grist(high - chart.centre, self.balance_factor),
            "signals": _flags_in_words(signals),
            "readings": [
                {"place": at, "found": grist, "flagged": at in flagged}
                for at, grist in enumerate(chart.readings, start=1)
            ],
        }

    def _drift(self, chart: ControlChart, *, is_flagged: bool) -> dict[str, Any]:
        """Give the drift and its range as shares of the mean, and the grist of the latest cuts."""
        count = len(self.cuts)
        slope = drift(range(1, count + 1), chart.readings)
        per_cut = slope.value / chart.centre
        low, high = (end / chart.centre for end in slope.interval())
        drifts = low > 0 or high < 0
        nearer, farther = sorted([abs(low), abs(high)])
        latest = min(_LATEST, count // 2)
        now = grist_from_cuts(self.cuts[-latest:], self.balance_factor)
        now_low, now_high = now.interval()
        return {
            "is_drifting": drifts,
            "is_drift_broad": drifts and show(100 * nearer, 2) != show(100 * farther, 2),
            "is_level": not drifts,
            "is_steady": not drifts and not is_flagged,
            "is_unsteady": not drifts and is_flagged,
            "direction": "finer" if per_cut > 0 else "thicker",
            "drift": abs(per_cut),
            "drift_low": nearer,
            "drift_high": farther,
            "so_far": abs(per_cut) * (count - 1),
            "so_far_low": nearer * (count - 1),
            "so_far_high": farther * (count - 1),
            "finer_limit": high,
            "thicker_limit": -low,
            "student": t_factor(slope.dof),
            "dof": slope.dof,
            "latest": latest,
            "is_now_broad": now_high > now_low * _NARROW,
            "is_now_narrow": now_high <= now_low * _NARROW,
            "now": now.value,
            "now_low": now_low,
            "now_high": now_high,
        }

    def _bobbins(self) -> dict[str, Any]:
        """Give each bobbin's grist, how far off target it is, and what the pairs ply to."""
        ends = [int(end) for end in accumulate(self.bobbins)]
        cuts = [self.cuts[start:end] for start, end in pairwise([0, *ends])]
        grists = [self._grist(harmonic_mean(some)) for some in cuts]
        ranges = [
            {"bobbin": at, "low": low, "high": high}
            for at, some in enumerate(cuts, start=1)
            if len(some) >= _FEWEST_FOR_RANGE
            for low, high in [grist_from_cuts(some, self.balance_factor).interval()]
        ]
        ways = {"by grist": finest_with_thickest(grists), "as spun": as_spun(len(grists))}
        plied = {
            way: [plied_pair(grists, pair, self.take_up) for pair in pairs]
            for way, pairs in ways.items()
        }
        are_apart = max(plied["by grist"]) > min(plied["by grist"]) * _NARROW
        has_pairs = len(grists) > 1
        return {
            "has_pairs": has_pairs,
            "is_one_pair": len(grists) == 2,
            "is_paired_apart": len(grists) > 2 and are_apart,
            "is_paired_alike": len(grists) > 2 and not are_apart,
            "is_order_apart": has_pairs and max(plied["as spun"]) > min(plied["as spun"]) * _NARROW,
            "bobbin_count": len(grists),
            "bobbin_low": min([*grists, *(row["low"] for row in ranges)]),
            "bobbin_high": max([*grists, *(row["high"] for row in ranges)]),
            "off_target": off_target(grists, self.target, self.tolerance),
            "pairing": pairs_in_words(ways["by grist"]),
            "pairs_low": min(plied["by grist"]),
            "pairs_high": max(plied["by grist"]),
            "order_low": min(plied["as spun"]),
            "order_high": max(plied["as spun"]),
            "finest": max(grists),
            "thickest": min(grists),
            "extremes_plied": plied_pair([min(grists), max(grists)], (1, 2), self.take_up),
            "changes": [{"place": end + 0.5} for end in ends[:-1]],
            "means": [{"bobbin": at, "found": g} for at, g in enumerate(grists, start=1)],
            "ranges": ranges,
            "plied": [
                {"pair": f"{way}: {pair_in_words(pair)}", "way": way, "found": grist}
                for way, pairs in ways.items()
                if has_pairs
                for pair, grist in zip(pairs, plied[way], strict=True)
            ],
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic of the limits, the drift, the target and the widest pair."""
        yield (
            None,
            "The mean cut is {mean_cut:4}; neighbouring cuts differ by {mean_range:3} on average."
            " The limits are 3 ÷ 1.128 = 2.66 times that, {reach:3}, either side of the mean."
            " As grist: {centre:4}, {limit_low:4} and {limit_high:4}.",
        )
        yield (
            None,
            "The drift is the slope of the straight line nearest to all the cuts, as a part of"
            " their mean: {drift:2} a cut, and {so_far:2} from the first cut to the last. Its range"
            " is Student’s t of {student} for {dof} degrees of freedom times its standard error.",
        )
        yield (
            None,
            "Grist now: the harmonic mean of the last {latest} cuts, times {balance_factor}, is"
            " {now:4}.",
        )
        unit = measure.units["factor"].rpartition("/")[0]
        yield None, f"Target: {{target@{unit}:4}} ÷ {{balance_factor:4}} = {{target_cut:4}}."
        base = grist.base
        sides = (f"{{finest@{base}:4!}}", f"{{thickest@{base}:4!}}")
        yield (
            "has_pairs",
            "The finest and the thickest bobbin plied, at a take-up of {take_up:4}: "
            + (
                f"{{take_up:4}} × ({sides[0]} + {sides[1]})"
                if base == "tex"
                else f"1 ÷ ({{take_up:4}} ÷ {sides[0]} + {{take_up:4}} ÷ {sides[1]})"
            )
            + f" = {{extremes_plied@{base}:4}}.",
        )


def _flags_in_words(signals: Sequence[Signal]) -> str:
    """Say the first few of a chart's signals in a spinner's words."""
    said = [signal.words for signal in signals]
    for theirs, plain in _PLAIN.items():
        said = [words.replace(theirs, plain) for words in said]
    more = len(said) - _MOST_NAMED
    return listed([*said[:_MOST_NAMED], f"{more} more"] if more > 0 else said)

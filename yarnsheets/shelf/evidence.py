"""What a skein holds, by the best evidence there is of it.

Each piece of evidence gives the yards and what puts them in doubt, by the formulas and the error
budgets of the worksheets on that measurement. The best evidence is the one with the narrowest
range: which it is depends on the numbers, since a hundred turns of a reel say more than two cuts,
and twenty cuts may say more than a counter that slips.

The functions of evidence take numbers or columns of them, one row a skein; in a column, what is
not known is not a number. They serve pages and pandas alike.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from yarnsheets import formulas
from yarnsheets.estimates import (
    Budget,
    Component,
    balance_budget,
    grist_from_cuts,
    rectangular,
    resolution,
    skein_budget,
    spread_of_cuts,
    stated,
    t_factor,
    unevenness,
)
from yarnsheets.estimates.estimate import factor_interval
from yarnsheets.published.sources import GRIST, HANDSPUN_BULK_DENSITY
from yarnsheets.units import convert

# What wraps leave open: half the logarithm of the ratio between airy and dense, either way.
_AIRINESS = math.log(HANDSPUN_BULK_DENSITY.high / HANDSPUN_BULK_DENSITY.low) / 2
_MIDDLE = math.sqrt(HANDSPUN_BULK_DENSITY.high * HANDSPUN_BULK_DENSITY.low)

# Each kind of evidence, as it is said after "by". Where two are as narrow, the earlier counts.
EVIDENCE = ("length", "counter", "turns", "cuts", "sample", "wraps")
NOT_KNOWN = math.nan

# Half the logarithm of all the grists there are: evidence with a wider range tells nothing.
WIDEST = math.log(GRIST.high / GRIST.low) / 2

# Why a skein that was measured is not counted.
TOO_WIDE = "not counted: what was measured leaves it wide open. Measure it again"
NO_YARN = "not counted: its yards and its weight make no yarn. Is one in another unit?"


@dataclass(frozen=True)
class Doubts:
    """How far off each kind of measurement may be, the same for the whole shelf.

    Ranges are shares either way, 95% sure; errors are the largest there may be. `around` is the
    reel of skeins that do not name theirs.

    Attributes
    ----------
    known_range : float
        Range of a length that is known. [1]
    counter_factor : float
        What the counter's readings are multiplied by. [1]
    counter_range : float
        Range of a reading so corrected. [1]
    around : float
        Once round the reel. [in]
    around_error : float
        Error of that. [in]
    miscount : float
        Turns that a count may be out by. [1]
    balance_factor : float
        Factor of the balance. [yd/lb/in]
    trimming : float
        Error of a cut's length. [in]
    stretch : float
        Error by stretch or slack, of a length laid along a ruler. [1]
    counterweight : float
        Error of the balance's own weight. [1]
    humidity : float
        Error by damp, of a weight. [1]
    usual_spread : float
        Unevenness of a yarn, where one cut or one sample cannot show it. [1]
    scale_step : float
        One step of the scale. [lb]
    """

    known_range: float = 0.02
    counter_factor: float = 1.0
    counter_range: float = 0.04
    around: float = 54.0
    around_error: float = 0.125
    miscount: float = 1.0
    balance_factor: float = 100.0
    trimming: float = 1 / 16
    stretch: float = 0.005
    counterweight: float = 0.008
    humidity: float = 0.01
    usual_spread: float = 0.1
    scale_step: float = 0.1 / 453.59237


@dataclass(frozen=True)
class Skein:
    """What is known of a skein, in yards, pounds and inches; what is not known is not a number."""

    name: str = ""
    fibre: str = ""
    colour: str = ""
    weight: float = NOT_KNOWN
    wraps: float = NOT_KNOWN
    length: float = NOT_KNOWN
    counter: float = NOT_KNOWN
    turns: float = NOT_KNOWN
    around: float = NOT_KNOWN
    cuts: Sequence[float] = field(default_factory=list)
    sample_length: float = NOT_KNOWN
    sample_weight: float = NOT_KNOWN


@dataclass(frozen=True)
class Cuts:
    """What several cuts say together: how many, their means, and how uneven they show the yarn.

    `mean` is the plain one, `harmonic` the one that grist goes by. `spread` is what the shelf
    takes for usual where there is one cut alone.
    """

    count: int
    mean: Any
    harmonic: Any
    spread: Any


@dataclass(frozen=True)
class Evidence:
    """Yards, or a column of them, with what puts them in doubt."""

    kind: str
    yards: Any
    budget: Budget


@dataclass(frozen=True)
class Reckoned:
    """The yards of a skein by its best evidence, with their range.

    `half` is half the range's logarithm. `doubts` says what is odd about it, in words.
    """

    kind: str
    yards: float
    low: float
    high: float
    half: float
    grist: float
    disputed: str

    @property
    def relative(self) -> float:
        """The standard uncertainty that makes such a range, as a share of the yards."""
        return relative_of(self.half)


def relative_of(half: float) -> float:
    """Give the standard uncertainty that makes a range, to reckon a chance by.

    >>> round(relative_of(0.1), 5)
    0.05102
    """
    return half / t_factor(math.inf)


# ---- the evidence: numbers or columns ------------------------------------------------------------


def by_length(length: Any, doubts: Doubts) -> Evidence:
    """Give the yards of a skein whose length is known, as from a label or an earlier measuring."""
    return Evidence("length", length, Budget((stated("the length", doubts.known_range),)))


def by_counter(reading: Any, doubts: Doubts) -> Evidence:
    """Give the yards behind a counter's reading."""
    budget = Budget((stated("the counter", doubts.counter_range),))
    return Evidence("counter", reading * doubts.counter_factor, budget)


def by_turns(turns: Any, around: Any, doubts: Doubts) -> Evidence:
    """Give the yards of counted turns."""
    count, once = skein_budget(
        1.0,
        1.0,
        1.0,
        resolution_of_scale=0.0,
        miscount=doubts.miscount,
        error_of_circumference=doubts.around_error,
    ).components[1:3]
    yards = formulas.skein_length(turns, convert(around, "in", "yd"))
    return Evidence("turns", yards, Budget((count.scaled(1 / turns), once.scaled(1 / around))))


def by_cuts(cuts: Cuts, weight: Any, doubts: Doubts) -> Evidence:
    """Give the yards of a weighed skein by cuts of it on the balance."""
    trimming, stretch, counterweight, _not_weighed, uneven, damp = balance_budget(
        1.0,
        1.0,
        cuts.count,
        spread_known=cuts.count == 1,
        trimming=doubts.trimming,
        stretch=doubts.stretch,
        counterweight=doubts.counterweight,
        humidity=doubts.humidity,
    ).components
    grist = formulas.grist_from_cut(cuts.harmonic, doubts.balance_factor)
    budget = Budget(
        (
            trimming.scaled(1 / cuts.mean),
            stretch,
            counterweight,
            uneven.scaled(cuts.spread),
            damp,
            _scale(weight, doubts),
        )
    )
    return Evidence("cuts", formulas.length(weight, grist), budget)


def by_sample(length: Any, mass: Any, weight: Any, doubts: Doubts) -> Evidence:
    """Give the yards of a weighed skein by one length of it that was measured and weighed.

    The sample is taken to be as unlike the rest as one cut would be, which is cautious: a longer
    one evens out thick and thin.
    """
    grist = formulas.grist(length, mass)
    budget = Budget(
        (
            resolution("the sample’s weight", doubts.scale_step).scaled(1 / mass),
            rectangular("the sample’s length", doubts.stretch),
            unevenness(doubts.usual_spread, 1, spread_known=True),
            _scale(weight, doubts),
        )
    )
    return Evidence("sample", formulas.length(weight, grist), budget)


def by_wraps(wraps: Any, weight: Any, doubts: Doubts) -> Evidence:
    """Give the yards of a weighed skein by its wraps alone, as airy or dense as is usual.

    The range is the one that wraps usually mean, 1.8 times either way; the middle is between its
    ends, where equal ratios are equal distances.
    """
    grist = formulas.grist_from_wraps(wraps, convert(_MIDDLE, "g/cm**3", "lb/yd/in**2"))
    budget = Budget((stated("how airy the yarn is", _AIRINESS), _scale(weight, doubts)))
    return Evidence("wraps", formulas.length(weight, grist), budget)


def _scale(weight: Any, doubts: Doubts) -> Component:
    return resolution("the skein’s weight", doubts.scale_step).scaled(1 / weight)


# ---- one skein -----------------------------------------------------------------------------------


def summed(cuts: Sequence[float], doubts: Doubts) -> Cuts:
    """Sum up cuts."""
    count = len(cuts)
    harmonic = cuts[0] if count == 1 else grist_from_cuts(cuts, 1.0).value
    spread = doubts.usual_spread if count == 1 else spread_of_cuts(cuts)
    return Cuts(count, sum(cuts) / count, harmonic, spread)


def all_evidence(skein: Skein, doubts: Doubts) -> list[Evidence]:
    """Give all the evidence that there is of a skein, in the order of `EVIDENCE`."""
    found = []
    if not math.isnan(skein.length):
        found.append(by_length(skein.length, doubts))
    if not math.isnan(skein.counter):
        found.append(by_counter(skein.counter, doubts))
    if not math.isnan(skein.turns):
        around = doubts.around if math.isnan(skein.around) else skein.around
        found.append(by_turns(skein.turns, around, doubts))
    if math.isnan(skein.weight):
        return found  # what is left gives a grist
    if skein.cuts:
        found.append(by_cuts(summed(skein.cuts, doubts), skein.weight, doubts))
    if not math.isnan(skein.sample_length) and not math.isnan(skein.sample_weight):
        found.append(by_sample(skein.sample_length, skein.sample_weight, skein.weight, doubts))
    if not math.isnan(skein.wraps):
        found.append(by_wraps(skein.wraps, skein.weight, doubts))
    return found


def reckoned(skein: Skein, doubts: Doubts) -> Reckoned | None:
    """Reckon a skein by the evidence with the narrowest range.

    None if there is no evidence that tells anything, or if what was measured makes a grist that no
    handspun has; wraps, which are laid by hand, are within their own bounds.

    >>> skein = Skein(weight=0.25, wraps=18, cuts=[9.6, 10.1, 10.4, 9.8, 10.6])
    >>> found = reckoned(skein, Doubts())
    >>> found.kind, round(found.yards), round(found.low), round(found.high)
    ('cuts', 252, 239, 266)
    """
    evidence = [e for e in all_evidence(skein, doubts) if e.budget.expanded() <= WIDEST]
    if not evidence:
        return None
    best = min(evidence, key=lambda each: each.budget.expanded())
    half = best.budget.expanded()
    grist = formulas.grist(best.yards, skein.weight)
    is_checked = best.kind != "wraps" and not math.isnan(grist)
    if is_checked and not GRIST.low <= grist <= GRIST.high:
        return None
    low, high = factor_interval(best.yards, half)
    against = [each.kind for each in evidence if _is_apart(each, low, high)]
    return Reckoned(
        best.kind,
        best.yards,
        low,
        high,
        half,
        grist,
        against[0] if against else "",
    )


def _is_apart(evidence: Evidence, low: float, high: float) -> bool:
    """Tell whether other evidence has a range that does not touch this one."""
    other_low, other_high = evidence.budget.range_of(evidence.yards)
    return other_low > high or other_high < low


def lacking(skein: Skein, doubts: Doubts) -> str:
    """Say what keeps a skein from having yards: nothing measured, or something measured wrongly.

    >>> lacking(Skein(wraps=14), Doubts())
    'no weight: weigh it, and its wraps give yards'
    """
    evidence = all_evidence(skein, doubts)
    if evidence:
        is_wide = all(each.budget.expanded() > WIDEST for each in evidence)
        return TOO_WIDE if is_wide else NO_YARN
    return not_measured(skein)


def not_measured(skein: Skein) -> str:
    """Say what to measure of a skein of which there is no evidence."""
    if not math.isnan(skein.weight):
        return "no measure: give its wraps, a cut, or its length"
    by_weight = (
        ("cuts", bool(skein.cuts)),
        ("sample", not math.isnan(skein.sample_length) and not math.isnan(skein.sample_weight)),
        ("wraps", not math.isnan(skein.wraps)),
    )
    for kind, is_there in by_weight:
        if is_there:
            verb = "gives" if kind == "sample" else "give"
            return f"no weight: weigh it, and its {kind} {verb} yards"
    return "no measure: give its length, or its weight and its wraps or a cut"

"""What a skein of counted turns says, weighed: its length and grist, and how sure they are."""

import math
from collections.abc import Callable, Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates import (
    Budget,
    skein_budget,
    unlikely_mass,
    unlikely_step,
    unlikely_tare,
    unlikely_turns,
    wound_circumference,
)
from yarnsheets.estimates.searching import first_whole
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared.reached import is_within
from yarnsheets.sheets.shared.weighing import GRAM, steps, typed
from yarnsheets.units import convert

_LEAST_BUILD_UP = 0.0001  # in: less is no thickness of a yarn
_MOST_TURNS = 1500
_CURVE_ROWS = 80

# Ranges narrower than these, either way, have ends that may be written alike: by the four figures
# of the length, and by the three of the grist.
_NARROW_LENGTH, _NARROW_GRIST = 0.0005, 0.005


class WhatDoesAWeighedSkeinSay(Sheet):
    """Length wound and grist of a weighed skein, and how many turns make them sure enough.

    Examples
    --------
    >>> sheet = WhatDoesAWeighedSkeinSay(turns=100, circumference=54, gross=0.125)
    >>> sheet.yards, sheet.grist
    (150.0, 1200.0)
    """

    question = "What does a weighed skein say?"
    onward = (
        Onward("how-many-yards", {"grist": "grist", "weight": "mass"}),
        Onward("is-my-balance-right", {"yarn_length": "yards", "yarn_weight": "mass"}),
        Onward("how-far-off-is-my-counter", {"reading": "yards"}),
    )

    turns = Input(
        "Turns round the reel",
        "number",
        100,
        low=5,
        high=_MOST_TURNS,
        step=5,  # of the slider; any number can be typed
        measure="Count the threads of the skein at one place, or the turns as you wind.",
        drawing="turns",
    )
    circumference = Input(
        "Once round the reel",
        "short",
        54,
        low=6,
        high=200,
        measure="Lay a tape where the yarn lies, once round. Niddy-noddies are often 54, 72 or"
        " 90 in: 137, 183 or 229 cm.",
    )
    weighing = Pick(
        "How it was weighed",
        {
            "once": "once: the yarn alone",
            "twice": "twice: with ties or basket, then those alone",
        },
        measure="Once also if the scale was set to nought with the basket on it.",
    )
    gross = Input(
        "Weight of the skein, with all that was on the scale",
        "mass",
        2 / 16,
        low=0.1 * GRAM,
        high=20,
        measure="The whole skein, as wound.",
        drawing="scale",
    )
    tare = Input(
        "Weight of the ties or basket alone",
        "mass",
        0.07 / 16,
        low=0.01 * GRAM,
        high=20,
        measure="Weigh them empty, on the same scale.",
    )
    wanted = Input(
        "Range I can live with, either way",
        "share",
        0.02,
        low=0.001,
        high=0.5,
        measure="2% either way of 1,000 is from 980 to 1,020.",
    )

    the_measures = Group("How well each is measured")
    scale_step = steps(
        0.05 / 16,
        0.25 / 16,
        "How much the last digit jumps: often 1 g or 0.05 oz.",
    )
    circumference_error = Input(
        "Once round is right to within",
        "short",
        1 / 8,
        low=0.001,
        high=4,
        measure="What the tape could be off by, and the arms that give a little.",
    )
    miscount = Input(
        "The count may be out by, either way",
        "number",
        0,
        low=0,
        high=10,
        step=1,
        measure="Turns. 0 if you counted twice and got the same.",
    )
    build_up = Input(
        "The finished skein is thick, on the reel",
        "short",
        0,
        low=0,
        high=2,
        step=0.01,
        measure="How high the turns lie on one another: outer turns are longer. 0 if they lie"
        " side by side.",
    )

    has_range = Found("flag", "nothing is odd about what was measured")
    is_length_broad = Found("flag", "the ends of the length's range are told apart by four figures")
    is_length_narrow = Found("flag", "they may not be")
    is_grist_broad = Found("flag", "the ends of the grist's range are told apart by three figures")
    is_grist_narrow = Found("flag", "they may not be")
    is_once = Found("flag", "nothing is, and the scale was read once")
    is_twice = Found("flag", "nothing is, and the scale was read twice")
    is_built_up = Found("flag", "nothing is, and turns lie on one another")
    is_reached = Found("flag", "the range is as narrow as wanted")
    is_reachable = Found("flag", "another number of turns would make it so")
    is_out_of_reach = Found("flag", "no number of turns would")
    mass = Found("mass", "weight of the yarn alone")
    turn = Found("short", "mean length of a turn")
    last_turn_longer = Found("share", "how much longer the last turn is than the first")
    yards = Found("length", "length wound")
    yards_low = Found("length", "low end of its range")
    yards_high = Found("length", "high end of its range")
    yards_half = Found("share", "how far the farther end of its range is off, of the length")
    grist = Found("grist", "grist of the yarn")
    grist_low = Found("grist", "low end of its range")
    grist_high = Found("grist", "high end of its range")
    half_width = Found("share", "how far the farther end of its range is off, of the grist")
    exponent = Found("share", "half the range of the grist's logarithm")
    scale_relative = Found("share", "standard uncertainty of the weight, of the weight")
    enough = Found("number", "fewest turns whose range is as narrow as wanted; 0 if none is")
    worst = Found("word", "the source of most of the doubt")
    worst_share = Found("share", "its part of the doubt")
    obstacle = Found("word", "the source of most of the doubt where the range is narrowest")

    sources = Table("what part of the doubt comes from where")
    windings = Table("the range of the grist at other numbers of turns")

    answer = (
        (
            "is_length_broad",
            "Your skein holds {yards:4*}, between {yards_low:4!} and {yards_high:4!}, 95% sure.",
        ),
        (
            "is_length_narrow",
            "Your skein holds {yards:4*}, right to within {yards_half:2}, 95% sure.",
        ),
        (
            "is_grist_broad",
            "Its grist is {grist}, between {grist_low!} and {grist_high!}.",
        ),
        ("is_grist_narrow", "Its grist is {grist:4}, right to within {half_width:2}."),
        (
            "is_reached",
            "That is within the {wanted} you can live with; {enough|turn|turns} would do.",
        ),
        ("is_reachable", "To know it to within {wanted}, wind {enough|turn|turns}."),
        (
            "is_out_of_reach",
            "No number of turns would bring it to within {wanted}: look at {obstacle} first.",
        ),
    )
    labels: ClassVar = {
        "yards_label": "{yards:4}",
        "half_label": "{half_width} either way",
        "wanted_label": "{wanted} either way",
        "enough_label": "{enough|turn|turns}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out length and grist, their ranges, and the turns it would take."""
        is_twice = self.weighing == "twice"
        odd = self._odd(self.tare if is_twice else 0.0)
        if odd:
            return no_answer(odd)
        mass = self.gross - self.tare if is_twice else self.gross
        turn = wound_circumference(self.circumference, self.build_up)
        yards = formulas.skein_length(self.turns, convert(turn, "in", "yd"))
        grist = formulas.grist(yards, mass)
        budget = self._budget(self.turns, mass)
        scale, *winding = budget.components
        length = Budget(tuple(winding))
        yards_low, yards_high = length.range_of(yards)
        yards_half = length.either_way()
        grist_low, grist_high = budget.range_of(grist)
        half_width = budget.either_way()
        is_reached = is_within(half_width, self.wanted)
        enough, narrowest = self._enough(mass)
        return {
            "has_range": True,
            "is_length_broad": yards_half >= _NARROW_LENGTH,
            "is_length_narrow": yards_half < _NARROW_LENGTH,
            "is_grist_broad": half_width >= _NARROW_GRIST,
            "is_grist_narrow": half_width < _NARROW_GRIST,
            "is_once": not is_twice,
            "is_twice": is_twice,
            "is_built_up": self.build_up >= _LEAST_BUILD_UP,
            "is_reached": is_reached,
            "is_reachable": not is_reached and enough > 0,
            "is_out_of_reach": not is_reached and enough == 0,
            "mass": mass,
            "turn": turn,
            "last_turn_longer": (turn - self.circumference) * 2 / self.circumference,
            "yards": yards,
            "yards_low": yards_low,
            "yards_high": yards_high,
            "yards_half": yards_half,
            "grist": grist,
            "grist_low": grist_low,
            "grist_high": grist_high,
            "half_width": half_width,
            "exponent": budget.expanded(),
            "scale_relative": scale.relative,
            "enough": enough,
            "worst": _worst(budget),
            "worst_share": budget.shares[budget.largest],
            "obstacle": _worst(self._budget(enough or narrowest, mass)),
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items()],
            "windings": self._windings(mass, enough),
        }

    def unused(self) -> list[str]:
        """Name the tare, where the yarn was weighed alone."""
        return [] if self.weighing == "twice" else ["tare"]

    def _odd(self, tare: float) -> str | None:
        """Say what is probably wrong, in the units the reader types in."""
        unit = choices.unit_of("mass", self.measure)
        gross, tare_typed = typed(self.gross, unit), typed(tare, unit)
        length = formulas.skein_length(self.turns, convert(self.circumference, "in", "yd"))
        return (
            unlikely_turns(self.turns)
            or unlikely_tare(gross, tare_typed)
            or unlikely_step(self.gross - tare, self.scale_step, slot)
            or unlikely_mass(gross - tare_typed, unit, length, slot)
        )

    def _budget(self, turns: float, mass: float) -> Budget:
        """Give the error budget of so many turns of this yarn, wound and weighed as this skein."""
        ratio = turns / self.turns
        return skein_budget(
            turns,
            self.circumference,
            mass * ratio,
            resolution_of_scale=self.scale_step,
            tare=self.weighing == "twice",
            miscount=self.miscount,
            error_of_circumference=self.circumference_error,
            build_up=self.build_up * ratio,
        )

    def _enough(self, mass: float) -> tuple[int, int]:
        """Give the fewest turns whose range is as narrow as wanted, or 0, and the best of turns.

        A range is the narrower of two, and each of the two narrows with the turns up to some
        number, and widens beyond if they lie on one another: what the scale and the count add
        falls by the turns, what the build-up adds grows.
        """

        def narrowest(width: Callable[[int], float]) -> int:
            widens = first_whole(2, _MOST_TURNS - 1, lambda n: width(n + 1) >= width(n))
            return widens or _MOST_TURNS

        def fewest(width: Callable[[int], float], most: int) -> int:
            return first_whole(2, most, lambda n: is_within(math.exp(width(n)) - 1, self.wanted))

        def by_normal_curve(turns: int) -> float:
            return self._budget(turns, mass).by_normal_curve()

        def by_bounds(turns: int) -> float:
            return self._budget(turns, mass).by_bounds()

        one, other = narrowest(by_normal_curve), narrowest(by_bounds)
        best = one if by_normal_curve(one) <= by_bounds(other) else other
        found = [n for n in (fewest(by_normal_curve, one), fewest(by_bounds, other)) if n]
        return min(found, default=0), best

    def _windings(self, mass: float, enough: int) -> list[dict[str, float]]:
        """Give the range at other numbers of turns, well past what the chart shows."""
        top = 4 * max(self.turns, enough)
        numbers = [2 * (top / 2) ** (at / _CURVE_ROWS) for at in range(_CURVE_ROWS + 1)]
        ranges = [(n, self._budget(n, mass).range_of(1.0)) for n in numbers]
        return [{"turns": n, "low": r.low, "high": r.high} for n, r in ranges]

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        length, mass = choices.BASES[grist.base]
        long, short = measure.units["length"], measure.units["short"]
        to_long = {"in": "36 in to the yard", "cm": "100 cm to the metre"}[short]
        yield (
            "is_built_up",
            "Turns that lie on one another: the mean turn is π × {build_up:4} longer than the bare"
            " reel, {turn:4}. The last one is {last_turn_longer} longer than the first.",
        )
        yield (
            "has_range",
            f"Length: {{turns}} turns × {{turn:4}}, {to_long}, is {{yards@{long}:4}}.",
        )
        yield "is_twice", "Weight of the yarn: {gross:4} − {tare:4} = {mass:4}."
        if length != long:
            yield "has_range", f"{{yards:4}} is {{yards@{length}:4}}."
        if mass != measure.units["mass"]:
            yield "has_range", f"{{mass:4}} is {{mass@{mass}:4}}."
        top, bottom = f"{{yards@{length}:4}}", f"{{mass@{mass}:4}}"
        if grist.base == "tex":
            top, bottom = bottom, top
        yield "has_range", f"Grist: {top} ÷ {bottom} = {{grist@{grist.base}:4}}."
        if grist.base != grist.unit:
            yield (
                "has_range",
                f"{{grist@{grist.base}:4}} is {{grist:4}}, since {grist.reason}.",
            )
        yield (
            "is_once",
            "The scale, read once: {scale_step:4} ÷ √12 ÷ {mass:4} = {scale_relative}, a standard"
            " uncertainty.",
        )
        yield (
            "is_twice",
            "The scale, read twice: {scale_step:4} ÷ √6 ÷ {mass:4} = {scale_relative}, a standard"
            " uncertainty.",
        )
        yield (
            "has_range",
            "That and the other sources squared, added, their root taken, and times 1.96, but no"
            " more than 95% of their largest errors together: {exponent}. The range is a factor"
            " either way, e to the power of that, so its farther end is {half_width} off.",
        )


def _worst(budget: Budget) -> str:
    """Name the source of most of the doubt, as in "look at the scale"."""
    return f"the {budget.largest}"

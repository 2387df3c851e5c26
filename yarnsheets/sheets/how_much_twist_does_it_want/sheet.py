"""How much twist a single wants: what its twist does, and what plying makes of it."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates.plying_take_up import staple_take_up
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.published.sources import TAKE_UP
from yarnsheets.published.twists import (
    BALANCED_PLY,
    COTTON_TO_KNIT,
    COTTON_WARP,
    COTTON_WEFT,
    MEDIUM_TWIST,
    TWIST_ANGLE,
    TWISTED_BULK_DENSITY,
)
from yarnsheets.sheets.how_much_twist_does_it_want import words
from yarnsheets.sheets.how_much_twist_does_it_want.plied import plied
from yarnsheets.sheets.shared.density import in_own_units
from yarnsheets.units import convert

_LEAST, _MOST = (math.tan(math.radians(end)) for end in (TWIST_ANGLE.low, TWIST_ANGLE.high))
_LOOSE, _TIGHT = (math.tan(math.radians(end)) for end in (MEDIUM_TWIST.low, MEDIUM_TWIST.high))

_TWO = 2


class HowMuchTwistDoesItWant(Sheet):
    r"""The slant that twist gives a single, its ply twist, its take-up, and how to treadle it.

    Examples
    --------
    >>> sheet = HowMuchTwistDoesItWant(grist=2400, twist=6, plies=2, ply_twist=4)
    >>> round(sheet.slant, 1), round(sheet.cotton, 2), round(sheet.take_up, 4)
    (28.3, 3.55, 1.0069)
    """

    question = "How much twist does it want?"
    onward = (
        Onward("which-singles-make-this-yarn", {"take_up": "take_up", "plies": "plies"}),
        Onward("how-many-yards", {"grist": "grist", "plies": "plies", "take_up": "take_up"}),
    )

    grist = Input(
        "Grist of the single",
        "grist",
        2400,
        low=50,
        high=300000,
        measure="Of one single before plying: a cut on the balance, or a weighed length.",
    )
    twist = Input(
        "Twist of the single",
        "twist",
        6,
        low=0.1,
        high=150,
        measure="Turns to an inch or to a centimetre. Tie a marked length, untwist it until its"
        " fibres lie straight, and count the turns; or count treadles, below.",
    )
    plies = Input(
        "Singles plied together",
        "number",
        2,
        low=1,
        high=8,
        step=1,
        measure="1 for a single used as it is.",
    )
    ply_twist = Input(
        "Twist in plying, the other way",
        "twist",
        4,
        low=0.1,
        high=100,
        measure="Turns to an inch or to a centimetre of the plied yarn.",
    )

    the_wheel = Group("At the wheel")
    ratio = Input(
        "Turns to one treadle",
        "number",
        9,
        low=1,
        high=200,
        measure="The wheel’s ratio: turn it by hand through one treadle, and count the turns that"
        " the flyer or spindle makes.",
    )
    draft = Input(
        "Length of one draft",
        "short",
        12,
        low=0.5,
        high=200,
        measure="How much you draw out before you let it run in.",
    )
    treadles = Input(
        "Treadles you count to a draft",
        "number",
        8,
        low=0.1,
        high=1000,
        measure="Count over ten drafts and divide by ten.",
    )

    finer_points = Group("Finer points", folded=True)
    bulk_density = Input(
        "Weight of a cubic centimetre of the single, in grams",
        "number",
        TWISTED_BULK_DENSITY.value,
        low=0.08,
        high=1.31,
        measure="With its air. 0.5 fits a single under its twist; soft ones 0.2 to 0.4, hard or"
        " pressed ones 0.5 to 0.8 (estimates, no authority). Solid wool is 1.31.",
    )

    staple_take_up = Found("number", "take-up in plying by a form for staple fibre")

    is_plied = Found("flag", "there is more than one single")
    is_soft = Found("flag", "the slant is less than yarns usually have")
    is_hard = Found("flag", "it is more")
    is_reversed = Found("flag", "plying takes all twist out of the singles, and more")
    is_usual = Found("flag", "the slant is one that yarns usually have")
    is_likely = Found("flag", "singles are plied, with a take-up that spinners find")
    is_odd = Found("flag", "singles are plied, with a take-up that they do not find")
    tightness = Found("word", "what the twist is called by its slant")
    to_knit = Found("flag", "the twist is in the range of cotton to knit")
    to_weft = Found("flag", "it is in that of cotton weft")
    to_warp = Found("flag", "it is in that of cotton warp")
    diameter = Found("thickness", "diameter of the single as a round rod")
    tangent = Found("number", "tangent of the slant")
    slant = Found("number", "angle of the outer fibres to the single, in degrees")
    least = Found("twist", "twist at the least slant that yarns usually have")
    most = Found("twist", "twist at the greatest")
    loose_below = Found("twist", "twist below which a single of this grist is loose")
    tight_above = Found("twist", "twist above which it is tight")
    cotton = Found("number", "cotton twist multiplier")
    worsted = Found("number", "worsted twist multiplier")
    metric = Found("number", "metric twist multiplier")
    tex_factor = Found("number", "tex twist factor")
    knit_low = Found("twist", "least twist of cotton to knit, at this grist")
    knit_high = Found("twist", "greatest")
    weft_low = Found("twist", "least twist of cotton weft, at this grist")
    weft_high = Found("twist", "greatest")
    warp_low = Found("twist", "least twist of cotton warp, at this grist")
    warp_high = Found("twist", "greatest")
    two_thirds = Found("twist", "two thirds of the singles’ twist")
    same_multiplier = Found("twist", "ply twist that keeps the singles’ multiplier")
    is_two = Found("flag", "two singles are plied")
    is_many = Found("flag", "three singles or more are plied")
    balanced_low = Found("twist", "least ply twist of a balanced yarn")
    balanced_high = Found("twist", "greatest")
    spun = Found("number", "take-up of the single by its own twist")
    shrinkage = Found("share", "share of its length that the single loses by it")
    lay = Found("number", "circle that the singles wind around, in diameters; 0 if not plied")
    circle = Found("thickness", "that circle's diameter")
    ply_slant = Found("number", "angle of the singles to the plied yarn, in degrees")
    helix = Found("number", "take-up in plying by winding alone")
    left = Found("twist", "twist that plying leaves in the singles, either way")
    spun_after = Found("number", "take-up of the single by that twist")
    take_up = Found("number", "take-up in plying, with the singles' untwisting")
    per_treadle = Found("short", "length to let run in for each treadle")
    treadles_wanted = Found("number", "treadles to a draft")
    treadles_least = Found("number", "treadles to a draft at the least slant that yarns have")
    treadles_most = Found("number", "treadles to a draft at the greatest")
    counted = Found("twist", "twist that the treadles counted put in")

    answer = words.ANSWER
    labels: ClassVar = words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Work out the slant, the multipliers, what plying does, and the treadles."""
        diameter = formulas.diameter_from_grist(self.grist, in_own_units(self.bulk_density))
        tangent = formulas.twist_tangent(diameter, self.twist)
        slant = _degrees(tangent)
        is_soft, is_hard = slant < TWIST_ANGLE.low, slant > TWIST_ANGLE.high
        least = formulas.twist_for_tangent(_LEAST, diameter)
        most = formulas.twist_for_tangent(_MOST, diameter)
        tightness = "loose" if slant < MEDIUM_TWIST.low else "tight"
        if MEDIUM_TWIST.low <= slant <= MEDIUM_TWIST.high:
            tightness = "medium"
        return {
            "diameter": diameter,
            "tangent": tangent,
            "slant": slant,
            "is_soft": is_soft,
            "is_hard": is_hard,
            "is_usual": not is_soft and not is_hard,
            "tightness": tightness,
            "least": least,
            "most": most,
            "loose_below": formulas.twist_for_tangent(_LOOSE, diameter),
            "tight_above": formulas.twist_for_tangent(_TIGHT, diameter),
            "per_treadle": formulas.length_per_treadle(self.ratio, self.twist),
            "treadles_wanted": formulas.treadles_for_twist(self.twist, self.draft, self.ratio),
            "treadles_least": formulas.treadles_for_twist(least, self.draft, self.ratio),
            "treadles_most": formulas.treadles_for_twist(most, self.draft, self.ratio),
            "counted": formulas.twist_from_treadles(self.treadles, self.ratio, self.draft),
            **self._multipliers(),
            **self._plying(diameter),
        }

    def unused(self) -> list[str]:
        """Name the twist in plying, where nothing is plied."""
        return [] if self.plies > 1 else ["ply_twist"]

    def _multipliers(self) -> dict[str, Any]:
        """Work out the trades' multipliers, and what cotton mills' would make of this grist."""
        count = convert(self.grist, "yd/lb", "cotton_count")
        to_cm = convert(self.twist, "1/in", "1/cm")
        cotton = formulas.twist_multiplier(self.twist, count)
        worsted = formulas.twist_multiplier(
            self.twist, convert(self.grist, "yd/lb", "worsted_count")
        )
        metric_count = convert(self.grist, "yd/lb", "metric_count")
        return {
            "cotton": cotton,
            "worsted": worsted,
            "metric": formulas.twist_multiplier(to_cm * 100, metric_count),
            "tex_factor": formulas.twist_multiplier(to_cm, 1 / convert(self.grist, "yd/lb", "tex")),
            "to_knit": COTTON_TO_KNIT.low <= cotton <= COTTON_TO_KNIT.high,
            "to_weft": COTTON_WEFT.low <= cotton <= COTTON_WEFT.high,
            "to_warp": COTTON_WARP.low <= cotton <= COTTON_WARP.high,
            "knit_low": formulas.twist_from_multiplier(COTTON_TO_KNIT.low, count),
            "knit_high": formulas.twist_from_multiplier(COTTON_TO_KNIT.high, count),
            "weft_low": formulas.twist_from_multiplier(COTTON_WEFT.low, count),
            "weft_high": formulas.twist_from_multiplier(COTTON_WEFT.high, count),
            "warp_low": formulas.twist_from_multiplier(COTTON_WARP.low, count),
            "warp_high": formulas.twist_from_multiplier(COTTON_WARP.high, count),
        }

    def _plying(self, diameter: float) -> dict[str, Any]:
        """Work out what plying does to singles of that diameter, if they are plied at all."""
        is_plied = self.plies > 1
        lay = 1 / math.sin(math.pi / self.plies) if is_plied else 0.0
        ply_twist = self.ply_twist if is_plied else 0.0
        circle = diameter * lay
        found = plied(diameter, lay, self.twist, ply_twist)
        take_up, residual = found["take_up"], found["residual"]
        is_likely = TAKE_UP.low <= take_up <= TAKE_UP.high
        same_multiplier = formulas.ply_twist_same_multiplier(self.twist, self.plies)
        # what practice gives two singles lies too high for more of them: see same_multiplier
        low, high = self.twist * BALANCED_PLY.low, self.twist * BALANCED_PLY.high
        if self.plies > _TWO:
            low, high = same_multiplier, self.twist * BALANCED_PLY.value
        return {
            "is_plied": is_plied,
            "is_likely": is_plied and is_likely,
            "is_odd": is_plied and not is_likely,
            "is_reversed": residual < 0,
            "two_thirds": self.twist * BALANCED_PLY.value,
            "same_multiplier": same_multiplier,
            "is_two": is_plied and self.plies <= _TWO,
            "is_many": self.plies > _TWO,
            "balanced_low": low,
            "balanced_high": high,
            "spun": found["spun"],
            "shrinkage": formulas.retraction(found["spun"]),
            "lay": lay,
            "circle": circle,
            "ply_slant": _degrees(found["slant"]),
            "helix": found["helix"],
            "left": abs(residual),
            "spun_after": found["spun_after"],
            "take_up": take_up,
            "staple_take_up": staple_take_up(diameter, circle, self.twist, ply_twist),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the arithmetic of the slant, the multipliers, the take-up and the wheel."""
        return words.worked(measure)


def _degrees(tangent: float) -> float:
    return math.atan(tangent) * 180 / math.pi

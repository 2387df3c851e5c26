"""How much twist a single wants: what its twist does, and what plying makes of it."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import twist_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import angle, choose, sine
from yarnsheets.estimates.plying_take_up import staple_take_up
from yarnsheets.sheets import choices, twist_words
from yarnsheets.sheets.inputs import Input, Number, Result
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.sources import TAKE_UP
from yarnsheets.twists import (
    BALANCED_PLY,
    COTTON_TO_KNIT,
    COTTON_WARP,
    COTTON_WEFT,
    TWIST_ANGLE,
    TWISTED_BULK_DENSITY,
)
from yarnsheets.units import convert

_LEAST, _MOST = (math.tan(math.radians(end)) for end in (TWIST_ANGLE.low, TWIST_ANGLE.high))


class HowMuchTwist(Sheet):
    r"""The slant that twist gives a single, its ply twist, its take-up, and how to treadle it.

    Examples
    --------
    >>> sheet = HowMuchTwist(grist=2400, twist=6, plies=2, ply_twist=4)
    >>> round(sheet.slant, 1), round(sheet.cotton, 2), round(sheet.take_up, 4)
    (28.3, 3.55, 1.0069)
    """

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
        measure="Turns to an inch or to a centimetre of the plied yarn. Not used for one single.",
    )
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
    bulk_density = Input(
        "Weight of a cubic centimetre of the single, in grams",
        "number",
        TWISTED_BULK_DENSITY.value,
        low=0.08,
        high=1.31,
        more=True,
        measure="With its air. 0.5 fits a single under its twist; soft ones 0.2 to 0.4, hard or"
        " pressed ones 0.5 to 0.8 (estimates, no authority). Solid wool is 1.31.",
    )

    staple_take_up = Result("number", "take-up in plying by a form for staple fibre")

    is_plied = Number("flag", "there is more than one single")
    is_single = Number("flag", "there is one alone")
    is_soft = Number("flag", "the slant is less than yarns usually have")
    is_hard = Number("flag", "it is more")
    is_reversed = Number("flag", "plying takes all twist out of the singles, and more")
    is_likely = Number("flag", "the take-up in plying is one that spinners find")
    is_odd = Number("flag", "it is not")
    to_knit = Number("flag", "the twist is in the range of cotton to knit")
    to_weft = Number("flag", "it is in that of cotton weft")
    to_warp = Number("flag", "it is in that of cotton warp")
    in_no_range = Number("flag", "it is in none of them")
    diameter = Number("thickness", "diameter of the single as a round rod")
    tangent = Number("number", "tangent of the slant")
    slant = Number("number", "angle of the outer fibres to the single, in degrees")
    least = Number("twist", "twist at the least slant that yarns usually have")
    most = Number("twist", "twist at the greatest")
    cotton = Number("number", "cotton twist multiplier")
    worsted = Number("number", "worsted twist multiplier")
    metric = Number("number", "metric twist multiplier")
    tex_factor = Number("number", "tex twist factor")
    knit_low = Number("twist", "least twist of cotton to knit, at this grist")
    knit_high = Number("twist", "greatest")
    weft_low = Number("twist", "least twist of cotton weft, at this grist")
    weft_high = Number("twist", "greatest")
    warp_low = Number("twist", "least twist of cotton warp, at this grist")
    warp_high = Number("twist", "greatest")
    balanced = Number("twist", "ply twist of a balanced yarn, by practice")
    balanced_low = Number("twist", "low end of practice")
    balanced_high = Number("twist", "high end of practice")
    same_multiplier = Number("twist", "ply twist that keeps the singles' multiplier")
    spun = Number("number", "take-up of the single by its own twist")
    shrinkage = Number("share", "share of its length that the single loses by it")
    lay = Number("number", "circle that the singles wind around, in diameters; 0 if not plied")
    circle = Number("thickness", "that circle's diameter")
    ply_slant = Number("number", "angle of the singles to the plied yarn, in degrees")
    helix = Number("number", "take-up in plying by winding alone")
    left = Number("twist", "twist that plying leaves in the singles, either way")
    spun_after = Number("number", "take-up of the single by that twist")
    take_up = Number("number", "take-up in plying, with the singles' untwisting")
    per_treadle = Number("short", "length to let run in for each treadle")
    treadles_wanted = Number("number", "treadles to a draft")
    counted = Number("twist", "twist that the treadles counted put in")

    answer = twist_words.ANSWER
    labels: ClassVar = twist_words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Work out the take-up by the form for staple fibre, which has a logarithm."""
        if self.plies <= 1:
            return {"staple_take_up": 1.0}
        density = convert(self.bulk_density, "g/cm**3", "lb/yd/in**2")
        diameter = formulas.diameter_from_grist(self.grist, density)
        circle = diameter / sine(math.pi / self.plies)
        return {"staple_take_up": staple_take_up(diameter, circle, self.twist, self.ply_twist)}

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs."""
        density = convert(v.bulk_density, "g/cm**3", "lb/yd/in**2")
        diameter = formulas.diameter_from_grist(v.grist, density)
        tangent = formulas.twist_tangent(diameter, v.twist)
        slant = angle(tangent)
        is_plied = choose(v.plies > 1, 1, 0)
        lay = choose(v.plies > 1, 1 / sine(math.pi / v.plies), 0)
        plying = twist_charts.plying(diameter, lay, v.twist, v.ply_twist * is_plied)
        take_up = plying["take_up"]
        is_odd = choose(take_up > TAKE_UP.high, 1, take_up < TAKE_UP.low)
        left = plying.pop("residual")
        return {
            "is_plied": is_plied,
            "is_single": 1 - is_plied,
            "is_soft": slant < TWIST_ANGLE.low,
            "is_hard": slant > TWIST_ANGLE.high,
            "is_reversed": left < 0,
            "is_likely": choose(is_odd, 0, is_plied),
            "is_odd": is_odd,
            "diameter": diameter,
            "tangent": tangent,
            "slant": slant,
            "least": formulas.twist_for_tangent(_LEAST, diameter),
            "most": formulas.twist_for_tangent(_MOST, diameter),
            "balanced": v.twist * BALANCED_PLY.value,
            "balanced_low": v.twist * BALANCED_PLY.low,
            "balanced_high": v.twist * BALANCED_PLY.high,
            "same_multiplier": formulas.ply_twist_same_multiplier(v.twist, v.plies),
            "shrinkage": formulas.retraction(plying["spun"]),
            "lay": lay,
            "circle": diameter * lay,
            "left": choose(left < 0, -left, left),
            "per_treadle": formulas.length_per_treadle(v.ratio, v.twist),
            "treadles_wanted": formulas.treadles_for_twist(v.twist, v.draft, v.ratio),
            "counted": formulas.twist_from_treadles(v.treadles, v.ratio, v.draft),
            **plying,
            **_multipliers(v),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the arithmetic of the slant, the multipliers, the take-up and the wheel."""
        return twist_words.worked(measure)

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the slant, twist against grist, and take-up against ply twist."""
        return (
            twist_charts.slant_of_fibres(v),
            twist_charts.twist_against_grist(v),
            twist_charts.take_up_against_ply_twist(v),
        )


def _multipliers(v: Any) -> Mapping[str, Any]:
    """Work out the trades' multipliers, and what cotton mills' would make of this grist."""
    count = convert(v.grist, "yd/lb", "cotton_count")
    to_cm = convert(v.twist, "1/in", "1/cm")
    cotton = formulas.twist_multiplier(v.twist, count)
    ranges = {"knit": COTTON_TO_KNIT, "weft": COTTON_WEFT, "warp": COTTON_WARP}
    found = {
        "cotton": cotton,
        "worsted": formulas.twist_multiplier(v.twist, convert(v.grist, "yd/lb", "worsted_count")),
        "metric": formulas.twist_multiplier(to_cm * 100, convert(v.grist, "yd/lb", "metric_count")),
        "tex_factor": formulas.twist_multiplier(to_cm, 1 / convert(v.grist, "yd/lb", "tex")),
        "in_no_range": choose(cotton < COTTON_TO_KNIT.low, 1, cotton > COTTON_WARP.high),
    }
    for name, each in ranges.items():
        found[f"to_{name}"] = choose(cotton < each.low, 0, cotton <= each.high)
        found[f"{name}_low"] = formulas.twist_from_multiplier(each.low, count)
        found[f"{name}_high"] = formulas.twist_from_multiplier(each.high, count)
    return found

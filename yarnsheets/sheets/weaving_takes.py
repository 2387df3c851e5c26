"""How much yarn a woven piece takes: warp and weft, from the finished cloth back to the loom."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import weaving_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.sheets import choices, weaving_words
from yarnsheets.sheets.inputs import Input, Number, Pick, Result
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.sheets.text import show
from yarnsheets.sheets.weaving_plan import INCHES, finished_cloth, finished_to_loom


class WhatWeavingTakes(Sheet):
    r"""Ends, picks, and the yards and weight of warp and weft, for a finished width and length.

    Examples
    --------
    >>> sheet = WhatWeavingTakes(finished_width=10, finished_length=70, ends_per_inch=12)
    >>> sheet.ends, round(sheet.warp_yards), round(sheet.weft_yards)
    (142, 428, 300)
    """

    finished_width = Input(
        "Finished width",
        "short",
        10,
        low=0.5,
        high=150,
        measure="As it is to be when washed and dry.",
    )
    finished_length = Input(
        "Finished length",
        "short",
        70,
        low=2,
        high=2000,
        measure="Of the woven part of one piece, washed and dry, without its fringe.",
    )
    ends_per_inch = Input(
        "Ends, in the reed",
        "sett",
        12,
        low=1,
        high=120,
        measure="Warp threads over a ruler laid across the reed: they lie closer in the finished"
        " cloth.",
    )
    picks_per_inch = Input(
        "Picks, on the loom",
        "sett",
        12,
        low=1,
        high=120,
        measure="Weft threads along a ruler on the web, with the tension off: they lie closer when"
        " the cloth is finished.",
    )
    width_shrinkage = Input(
        "Shrinkage of the width",
        "share",
        0.08,
        low=0,
        high=0.5,
        step=0.005,
        measure="What washing took from a sample, over what it measured off the loom. Often 5% to"
        " 15%, more if felted (common practice, no source).",
    )
    length_shrinkage = Input(
        "Shrinkage of the length",
        "share",
        0.08,
        low=0,
        high=0.5,
        step=0.005,
        measure="As for the width, along the sample.",
    )
    grist = Input(
        "Grist of the yarn",
        "grist",
        1200,
        low=100,
        high=30000,
        measure="Of the yarn as it goes on the loom; of the warp, if the weft is another yarn.",
    )
    reserve = Input(
        "Reserve",
        "share",
        0.10,
        low=0,
        high=1,
        step=0.01,
        more=True,
        measure="What you like to have over, as a part of what the piece takes.",
    )
    doubt = Input(
        "How far off it may be, either way",
        "share",
        0.05,
        low=0.005,
        high=0.5,
        step=0.005,
        more=True,
        measure="Shrinkage and take-up are seldom known better than this; after a sample in the"
        " same yarn, less. 5% either way of 700 is from 665 to 735.",
    )
    draw_in = Input(
        "Draw-in",
        "share",
        0.08,
        low=0,
        high=0.4,
        step=0.005,
        more=True,
        measure="How much narrower the web is than the warp in the reed, of the width in the reed."
        " Often 5% to 10% (common practice, no source).",
    )
    warp_take_up = Input(
        "Take-up of the warp",
        "share",
        0.10,
        low=0,
        high=0.4,
        step=0.005,
        more=True,
        measure="The part of the warp’s own length that bending around the weft takes. Often about"
        " 10% (common practice, no source).",
    )
    weft_take_up = Input(
        "Take-up of the weft beyond the reed",
        "share",
        0,
        low=0,
        high=0.4,
        step=0.005,
        more=True,
        measure="0 if each pick is as long as the warp is wide in the reed. More if you bubble the"
        " weft, or it runs up the selvedge between picks.",
    )
    loom_waste = Input(
        "Loom waste",
        "short",
        24,
        low=0,
        high=120,
        step=0.5,
        more=True,
        measure="Warp that cannot be woven, front and back together: knots, and from reed to back"
        " rod. 18 to 36 in is usual (common practice, no source). Fringe can be cut from it.",
    )
    pieces = Input(
        "Pieces on this warp",
        "number",
        1,
        low=1,
        high=50,
        step=1,
        more=True,
        measure="One after another, each as long as the finished length. Loom waste counts once.",
    )
    between = Input(
        "Left bare between two pieces",
        "short",
        0,
        low=0,
        high=60,
        step=0.5,
        more=True,
        measure="For the fringes of both, before they are twisted. Not used for one piece.",
    )
    weft_yarn = Pick(
        "Yarn of the weft",
        {"same": "the same as the warp", "other": "another yarn"},
        measure="Choose another yarn to give its own grist.",
        more=True,
    )
    weft_grist = Input(
        "Grist of the weft, if another yarn",
        "grist",
        1200,
        low=100,
        high=30000,
        more=True,
        measure="Left out while the weft is the same yarn as the warp.",
    )

    has_other = Result("flag", "the weft is another yarn")

    is_one = Number("flag", "there is one piece on the warp")
    is_many = Number("flag", "there are several")
    has_reserve = Number("flag", "some yarn is kept in reserve")
    has_no_reserve = Number("flag", "none is")
    is_thin = Number("flag", "the reserve does not reach the high end of the range")
    is_close_warp = Number("flag", "the warp is set closer than Ashenhurst's rule allows")
    is_close_weft = Number("flag", "the weft is beaten closer than it allows")
    has_losses = Number("flag", "the cloth becomes narrower")
    has_bubble = Number("flag", "the weft takes up more than the width in the reed")
    weft_grist_used = Number("grist", "grist of the weft")
    web_width = Number("short", "width of the web on the loom, drawn in")
    reed_width = Number("short", "width of the warp in the reed")
    woven_length = Number("short", "length to weave of one piece")
    ends = Number("number", "ends of the warp, whole")
    piece_warp = Number("short", "length of warp in one piece")
    warp_length = Number("short", "length of each end")
    warp_wound = Number("length", "the same, as it is wound")
    piece_picks = Number("number", "picks in one piece, whole")
    picks = Number("number", "picks in all pieces")
    pick_length = Number("short", "weft in one pick")
    warp_yards = Number("length", "warp that the weaving takes")
    weft_yards = Number("length", "weft that it takes")
    total_yards = Number("length", "both together")
    total_low = Number("length", "low end of their range")
    total_high = Number("length", "high end of their range")
    warp_stock = Number("length", "warp to have, with the reserve")
    weft_stock = Number("length", "weft to have, with the reserve")
    total_stock = Number("length", "both together, with the reserve")
    warp_weight = Number("mass", "weight of the warp to have")
    weft_weight = Number("mass", "weight of the weft to have")
    total_weight = Number("mass", "weight of both together")
    piece_weight = Number("mass", "weight of one finished piece")
    cloth_ounces = Number("number", "ounces to the square yard of finished cloth")
    cloth_grams = Number("number", "grams to the square metre of finished cloth")
    finished_ends = Number("sett", "ends in the finished cloth")
    finished_picks = Number("sett", "picks in the finished cloth")
    closest_warp = Number("sett", "closest sett of the warp in plain weave, by Ashenhurst's rule")
    closest_weft = Number("sett", "the same of the weft")
    shares_added = Number("share", "shrinkage and draw-in of the width, wrongly added")
    added_width = Number("short", "width in the reed if they are added to the finished width")
    added_finish = Number("short", "finished width that this gives")
    in_cloth = Number("length", "yarn that would lie straight in the finished cloth")
    in_bends = Number("length", "yarn in take-up, draw-in and shrinkage")
    in_waste = Number("length", "warp that is not woven")
    in_reserve = Number("length", "yarn kept in reserve")

    answer = weaving_words.ANSWER
    labels: ClassVar = weaving_words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """See which yarn the weft is, and whether the pieces are whole."""
        if self.pieces % 1:
            return self.no_answer(
                f"{show(self.pieces)} pieces are not a whole number: type how many you weave on"
                " this warp."
            )
        return {"has_other": self.weft_yarn == "other"}

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out the loom's sizes, the threads, the yarn and its weight."""
        n = finished_to_loom(v) | {"weft_grist_used": choose(v.has_other, v.weft_grist, v.grist)}
        warp = formulas.yarn_in_threads(n["ends"], n["warp_length"] / INCHES)
        weft = formulas.yarn_in_threads(n["picks"], n["pick_length"] / INCHES)
        total, keep = warp + weft, 1 + v.reserve
        warp_weight = formulas.mass(warp * keep, v.grist)
        weft_weight = formulas.mass(weft * keep, n["weft_grist_used"])
        in_piece = n["ends"] * v.finished_length + n["piece_picks"] * v.finished_width
        in_cloth = v.pieces * in_piece / INCHES
        in_waste = n["ends"] * (n["warp_length"] - v.pieces * n["piece_warp"]) / INCHES
        return (
            n
            | finished_cloth(v, n)
            | {
                "is_one": v.pieces <= 1,
                "is_many": v.pieces > 1,
                "has_reserve": v.reserve > 0,
                "has_no_reserve": v.reserve <= 0,
                "is_thin": v.reserve < v.doubt,
                "has_losses": n["shares_added"] > 0,
                "has_bubble": v.weft_take_up > 0,
                "warp_wound": n["warp_length"] / INCHES,
                "warp_yards": warp,
                "weft_yards": weft,
                "total_yards": total,
                "total_low": total * (1 - v.doubt),
                "total_high": total * (1 + v.doubt),
                "warp_stock": warp * keep,
                "weft_stock": weft * keep,
                "total_stock": total * keep,
                "warp_weight": warp_weight,
                "weft_weight": weft_weight,
                "total_weight": warp_weight + weft_weight,
                "in_cloth": in_cloth,
                "in_bends": total - in_cloth - in_waste,
                "in_waste": in_waste,
                "in_reserve": total * v.reserve,
            }
        )

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        return weaving_words.worked(measure, grist)

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the piece on the loom and finished, yarn against length, and where it goes."""
        return (
            weaving_charts.piece_on_the_loom(v),
            weaving_charts.yards_against_length(v),
            weaving_charts.where_it_goes(v),
        )

"""How much yarn a woven piece takes: warp and weft, from the finished cloth back to the loom."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.sheets.shared import grists
from yarnsheets.sheets.what_does_weaving_take import words as weaving_words
from yarnsheets.sheets.what_does_weaving_take.plan import finished_cloth, finished_to_loom
from yarnsheets.units import convert


class WhatDoesWeavingTake(Sheet):
    r"""Ends, picks, and the yards and weight of warp and weft, for a finished width and length.

    Examples
    --------
    >>> sheet = WhatDoesWeavingTake(finished_width=10, finished_length=70, ends_per_inch=12)
    >>> sheet.ends, round(sheet.warp_yards), round(sheet.weft_yards)
    (142, 428, 300)
    """

    question = "How much yarn does the weaving take?"
    onward = (
        Onward(
            "is-this-enough",
            {"grist": "grist", "project": "takes_of_yarn", "weights": ""},
        ),
        Onward(
            "how-many-yards",
            {"grist": "grist", "project": "takes_of_yarn", "weight": "weight_of_yarn"},
        ),
    )

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
    grist = grists.asked(
        "Grist of the yarn",
        1200,
        "Of the yarn as it goes on the loom; of the warp, if the weft is another yarn.",
    )

    the_losses = Group("What the loom and the wash take")
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
    draw_in = Input(
        "Draw-in",
        "share",
        0.08,
        low=0,
        high=0.4,
        step=0.005,
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
        measure="Warp that cannot be woven, front and back together: knots, and from reed to back"
        " rod. 18 to 36 in, or 45 to 90 cm, is usual (common practice, no source). Fringe can be"
        " cut from it.",
    )

    the_margins = Group("Reserve and doubt")
    reserve = Input(
        "Reserve",
        "share",
        0.10,
        low=0,
        high=1,
        step=0.01,
        measure="What you like to have over, on top of what the piece takes.",
    )
    doubt = Input(
        "How far off it may be, either way",
        "share",
        0.05,
        low=0.005,
        high=0.5,
        step=0.005,
        measure="Shrinkage and take-up are seldom known better than this; after a sample in the"
        " same yarn, less. 5% either way of 700 is from 665 to 735.",
    )

    finer_points = Group("Several pieces, or another weft", folded=True)
    pieces = Input(
        "Pieces on this warp",
        "number",
        1,
        low=1,
        high=50,
        step=1,
        measure="One after another, each as long as the finished length. Loom waste counts once.",
    )
    between = Input(
        "Left bare between two pieces",
        "short",
        0,
        low=0,
        high=60,
        step=0.5,
        measure="For the fringes of both, before they are twisted.",
    )
    weft_yarn = Pick(
        "Yarn of the weft",
        {"same": "the same as the warp", "other": "another yarn"},
        measure="Choose another yarn to give its own grist.",
    )
    weft_grist = grists.asked(
        "Grist of the weft",
        1200,
        "Of the weft’s own yarn.",
    )

    is_many = Found("flag", "there are several pieces on the warp")
    has_reserve = Found("flag", "some yarn is kept in reserve")
    is_thin = Found("flag", "the reserve does not reach the high end of the range")
    is_one_open = Found("flag", "one piece, neither warp nor weft too close")
    is_many_open = Found("flag", "several pieces, neither warp nor weft too close")
    is_one_close = Found("flag", "one piece, warp or weft too close")
    is_many_close = Found("flag", "several pieces, warp or weft too close")
    is_close = Found("flag", "both are set closer than Ashenhurst's rule allows")
    is_close_warp = Found("flag", "the warp alone is")
    is_close_weft = Found("flag", "the weft alone is")
    has_losses = Found("flag", "the cloth becomes narrower")
    has_bubble = Found("flag", "the weft takes up more than the width in the reed")
    weft_grist_used = Found("grist", "grist of the weft")
    web_width = Found("short", "width of the web on the loom, drawn in")
    reed_width = Found("short", "width of the warp in the reed")
    woven_length = Found("short", "length to weave of one piece")
    ends = Found("number", "ends of the warp, whole")
    piece_warp = Found("short", "length of warp in one piece")
    warp_length = Found("short", "length of each end")
    warp_wound = Found("length", "the same, as it is wound")
    piece_picks = Found("number", "picks in one piece, whole")
    picks = Found("number", "picks in all pieces")
    pick_length = Found("short", "weft in one pick")
    warp_yards = Found("length", "warp that the weaving takes")
    weft_yards = Found("length", "weft that it takes")
    total_yards = Found("length", "both together")
    total_low = Found("length", "low end of their range")
    total_high = Found("length", "high end of their range")
    warp_stock = Found("length", "warp to have, with the reserve")
    weft_stock = Found("length", "weft to have, with the reserve")
    total_stock = Found("length", "both together, with the reserve")
    warp_weight = Found("mass", "weight of the warp to have")
    weft_weight = Found("mass", "weight of the weft to have")
    total_weight = Found("mass", "weight of both together")
    takes_of_yarn = Found("length", "what the weaving takes of the yarn of the warp")
    weight_of_yarn = Found("mass", "weight of that yarn to have, with the reserve")
    piece_weight = Found("mass", "weight of one finished piece")
    cloth_ounces = Found("number", "ounces to the square yard of finished cloth")
    cloth_grams = Found("number", "grams to the square metre of finished cloth")
    finished_ends = Found("sett", "ends in the finished cloth")
    finished_picks = Found("sett", "picks in the finished cloth")
    closest_warp = Found("sett", "closest sett of the warp in plain weave, by Ashenhurst's rule")
    closest_weft = Found("sett", "the same of the weft")
    shares_added = Found("share", "shrinkage and draw-in of the width, wrongly added")
    added_width = Found("short", "width in the reed if they are added to the finished width")
    added_finish = Found("short", "finished width that this gives")
    in_cloth = Found("length", "yarn that would lie straight in the finished cloth")
    in_bends = Found("length", "yarn in take-up, draw-in and shrinkage")
    in_waste = Found("length", "warp that is not woven")
    in_reserve = Found("length", "yarn kept in reserve")

    answer = weaving_words.ANSWER
    labels: ClassVar = weaving_words.LABELS

    def unused(self) -> list[str]:
        """Name the gap of a single piece, and the grist of a weft of the same yarn."""
        names = [] if self.pieces > 1 else ["between"]
        if self.weft_yarn == "same":
            names.append("weft_grist")
        return names

    def work_out(self) -> Mapping[str, Any]:
        """Work out the loom's sizes, the threads, the yarn and its weight."""
        weft_grist = self.weft_grist if self.weft_yarn == "other" else self.grist
        inches = convert(1.0, "yd", "in")
        n = finished_to_loom(self) | {"weft_grist_used": weft_grist}
        warp = formulas.yarn_in_threads(n["ends"], n["warp_length"] / inches)
        weft = formulas.yarn_in_threads(n["picks"], n["pick_length"] / inches)
        total, keep = warp + weft, 1 + self.reserve
        warp_weight = formulas.mass(warp * keep, self.grist)
        weft_weight = formulas.mass(weft * keep, n["weft_grist_used"])
        cloth = finished_cloth(self, n)
        is_one = self.pieces == 1
        is_close_warp = self.ends_per_inch > cloth["closest_warp"]
        is_close_weft = self.picks_per_inch > cloth["closest_weft"]
        is_open = not is_close_warp and not is_close_weft
        is_one_yarn = self.weft_yarn == "same"
        in_piece = n["ends"] * self.finished_length + n["piece_picks"] * self.finished_width
        in_cloth = self.pieces * in_piece / inches
        in_waste = n["ends"] * (n["warp_length"] - self.pieces * n["piece_warp"]) / inches
        return (
            n
            | cloth
            | {
                "is_many": not is_one,
                "is_one_open": is_one and is_open,
                "is_many_open": not is_one and is_open,
                "is_one_close": is_one and not is_open,
                "is_many_close": not is_one and not is_open,
                "is_close": is_close_warp and is_close_weft,
                "is_close_warp": is_close_warp and not is_close_weft,
                "is_close_weft": is_close_weft and not is_close_warp,
                "has_reserve": self.reserve > 0,
                "is_thin": self.reserve < self.doubt,
                "has_losses": n["shares_added"] > 0,
                "has_bubble": self.weft_take_up > 0,
                "warp_wound": n["warp_length"] / inches,
                "warp_yards": warp,
                "weft_yards": weft,
                "total_yards": total,
                "total_low": total * (1 - self.doubt),
                "total_high": total * (1 + self.doubt),
                "warp_stock": warp * keep,
                "weft_stock": weft * keep,
                "total_stock": total * keep,
                "warp_weight": warp_weight,
                "weft_weight": weft_weight,
                "total_weight": warp_weight + weft_weight,
                "takes_of_yarn": total if is_one_yarn else warp,
                "weight_of_yarn": warp_weight + weft_weight if is_one_yarn else warp_weight,
                "in_cloth": in_cloth,
                "in_bends": total - in_cloth - in_waste,
                "in_waste": in_waste,
                "in_reserve": total * self.reserve,
            }
        )

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        return weaving_words.worked(measure, grist)

"""How much yarn a knitted piece takes when no pattern says: from its outline and its gauge."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, no_answer
from yarnsheets.published.stitches import LOOSEST, STATES, STITCHES, TIGHTEST
from yarnsheets.sheets.what_does_knitting_take import words as knitting_words
from yarnsheets.sheets.what_does_knitting_take.asked import AskedOfKnitting
from yarnsheets.sheets.what_does_knitting_take.outlines import OUTLINES, Outline
from yarnsheets.units import convert

# Rows to a stitch off the usual by so much are worth a second look (common practice, no source).
_ODD_ROWS = 0.12
_NARROW = 1.01  # high end over low, below which both may be written alike
_APART = 1.001  # ends of a range that are nearer are written alike in four figures


class WhatDoesKnittingTake(AskedOfKnitting):
    r"""Yards and weight of yarn for an outline, from washed gauge or from a weighed swatch.

    Examples
    --------
    >>> sheet = WhatDoesKnittingTake(outline="rectangle", around=25, piece_length=40)
    >>> round(sheet.area), round(sheet.yards, 3)
    (1000, 763.763)
    """

    question = "How much yarn does the knitting take?"
    onward = (
        Onward("is-this-enough", {"grist": "grist", "project": "yards", "weights": ""}),
        Onward(
            "what-does-this-spin-take",
            {"grist_wanted": "grist", "project": "yards", "reserve": "reserve"},
        ),
    )

    is_rectangle = Found("flag", "the outline is a rectangle")
    is_triangle = Found("flag", "it is a triangle")
    is_circle = Found("flag", "it is a circle")
    is_hat = Found("flag", "it is a hat")
    is_pair = Found("flag", "it is a pair of tubes")
    is_pullover = Found("flag", "it is a pullover")
    has_body = Found("flag", "its area has a body and something more")
    by_swatch = Found("flag", "a swatch was weighed")
    by_gauge = Found("flag", "gauge alone is known")
    is_plain = Found("flag", "gauge alone is known, of plain knitting")
    is_patterned = Found("flag", "gauge alone is known, and the piece is in another stitch")
    outline_name = Found("word", "the outline")
    stitch_name = Found("word", "the stitch")
    stitch_origin = Found("word", "where its range is from")
    state_name = Found("word", "how far the swatch has relaxed")
    stitch_number = Found("number", "place of the stitch among all, from 0")
    factor_low = Found("number", "least that the stitch takes, of plain knitting")
    factor_high = Found("number", "most that it takes")
    course_constant = Found("number", "loop constant of courses (rows)")
    wale_constant = Found("number", "loop constant of wales (stitches)")
    area_constant = Found("number", "loop constant of both")
    bodies = Found("number", "how often around by length makes up the area")
    discs = Found("number", "how many circles are part of it")
    disc = Found("number", "diameter of a circle, of the measure around")
    sleeves = Found("number", "how many sleeves are part of it")
    wide_share = Found("number", "width of the first piece, of the measure around")
    span_share = Found("number", "width of all pieces laid flat, of the measure around")
    rise_length = Found("number", "their height, of the length")
    rise_around = Found("number", "their height, of the measure around")
    slices = Table("the pieces laid flat, by levels, in shares of the measures")

    piece_wide = Found("short", "width of the first piece, laid flat")
    body_area = Found("area", "area of the body, around by length")
    disc_across = Found("short", "diameter of a circle that is part of it")
    disc_area = Found("area", "area of the circles")
    sleeve_area = Found("area", "area of the sleeves")
    area = Found("area", "area of all pieces")
    sleeve_wide = Found("short", "width of a sleeve where it is widest")
    span = Found("short", "width of all pieces laid flat")
    rise = Found("short", "their height")
    near_stitches = Found("sett", "stitches to the inch")
    near_rows = Found("sett", "rows to the inch")
    usual_rows = Found("number", "rows to a stitch that are usual")
    own_rows = Found("number", "rows to a stitch as measured")
    loop = Found("short", "yarn in one stitch of plain knitting")
    stitch_count = Found("number", "stitches if the piece were all plain knitting")
    by_both = Found("length", "yarn for plain knitting, by both gauges")
    by_stitches = Found("length", "the same by stitches alone")
    by_rows = Found("length", "the same by rows alone")
    tightness = Found("number", "tightness factor, root of tex over loop in centimetres")
    swatch_area = Found("area", "area of the swatch")
    mass = Found("mass", "weight of the piece, by the swatch")
    by_the_swatch = Found("length", "yarn by the swatch")
    swatch_factor = Found("number", "that, of plain knitting by both gauges")
    factor = Found("number", "what the stitch takes in the middle of its range")
    yards = Found("length", "yarn that the piece takes")
    yards_low = Found("length", "low end of its range")
    yards_high = Found("length", "high end of its range")
    stock = Found("length", "yarn to have, with the reserve")
    weight = Found("mass", "weight of the yarn to have")
    has_doubt = Found("flag", "a doubt is allowed for that moves the figures")
    has_reserve = Found("flag", "some yarn is kept in reserve")
    is_bare = Found("flag", "nothing is kept in reserve")
    is_ample = Found("flag", "a reserve is kept, and reaches the high end of the range")
    is_thin = Found("flag", "a reserve is kept, and does not")
    has_odd_rows = Found("flag", "the row gauge is far from the usual")
    says_range = Found("flag", "nothing is doubtful, and the range is said")
    says_odd_rows = Found("flag", "the two gauges do not fit each other")
    says_loose = Found("flag", "the knitting is looser than usual for its yarn")
    says_tight = Found("flag", "it is tighter than usual")

    answer = knitting_words.ANSWER
    labels: ClassVar = knitting_words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Work out the area, the yarn and its range, and the weight."""
        if warning := self.unlikely():
            return no_answer(warning)
        outline, stitch, state = OUTLINES[self.outline], STITCHES[self.stitch], STATES[self.state]
        by_swatch = self.known_by == "swatch"
        flat = self._laid_flat(outline)
        area, constant = flat["area"], state.area.value
        inches = convert(1.0, "yd", "in")
        loop = formulas.loop_length(self.gauge_stitches, self.gauge_rows, constant)
        both = (
            area * formulas.yarn_per_area(self.gauge_stitches, self.gauge_rows, constant) / inches
        )
        by_one = formulas.yarn_per_area_by_one_gauge
        by_stitches = area * by_one(self.gauge_stitches, state.courses.value) / inches
        by_rows = area * by_one(self.gauge_rows, state.wales.value) / inches
        swatch_area = self.swatch_width * self.swatch_length
        mass = formulas.mass_from_swatch(self.swatch_weight, swatch_area, area)
        swatch = formulas.length(mass, self.grist)
        factor = (stitch.low + stitch.high) / 2
        yards = swatch if by_swatch else both * factor
        least = min(by_stitches, by_rows, both) * stitch.low
        most = max(by_stitches, by_rows, both) * stitch.high
        low = (swatch if by_swatch else least) * (1 - self.doubt)
        high = (swatch if by_swatch else most) * (1 + self.doubt)
        stock = yards * (1 + self.reserve)
        usual, own = state.courses.value / state.wales.value, self.gauge_rows / self.gauge_stitches
        off = max(own / usual, usual / own) - 1
        tightness = formulas.tightness_factor(
            convert(self.grist, "yd/lb", "km/g"), convert(loop, "in", "cm")
        )
        has_odd_rows = not by_swatch and off > _ODD_ROWS
        is_loose = not by_swatch and not has_odd_rows and tightness < LOOSEST.value
        is_tight = not by_swatch and not has_odd_rows and tightness > TIGHTEST.value
        return flat | {
            **{f"is_{name}": name == self.outline for name in OUTLINES},
            "has_body": self.outline in ("hat", "pullover"),
            "by_swatch": by_swatch,
            "by_gauge": not by_swatch,
            "is_plain": not by_swatch and self.stitch == "plain",
            "is_patterned": not by_swatch and self.stitch != "plain",
            "outline_name": outline.name,
            "stitch_name": stitch.name,
            "stitch_origin": stitch.origin,
            "state_name": state.name,
            "stitch_number": list(STITCHES).index(self.stitch),
            "factor_low": stitch.low,
            "factor_high": stitch.high,
            "course_constant": state.courses.value,
            "wale_constant": state.wales.value,
            "area_constant": state.area.value,
            "bodies": outline.bodies,
            "discs": outline.discs,
            "disc": outline.disc,
            "sleeves": outline.sleeves,
            "wide_share": outline.wide,
            "span_share": outline.span,
            "rise_length": outline.rise_length,
            "rise_around": outline.rise_around,
            "slices": list(outline.slices),
            "near_stitches": self.gauge_stitches,
            "near_rows": self.gauge_rows,
            "usual_rows": usual,
            "own_rows": own,
            "loop": loop,
            "stitch_count": area * self.gauge_stitches * self.gauge_rows,
            "by_both": both,
            "by_stitches": by_stitches,
            "by_rows": by_rows,
            "tightness": tightness,
            "swatch_area": swatch_area,
            "mass": mass,
            "by_the_swatch": swatch,
            "swatch_factor": formulas.stitch_factor(swatch, both),
            "factor": factor,
            "yards": yards,
            "yards_low": low,
            "yards_high": high,
            "stock": stock,
            "weight": formulas.mass(stock, self.grist),
            "has_doubt": high > low * _APART,
            "has_reserve": self.reserve > 0,
            "is_bare": not self.reserve,
            "is_ample": self.reserve > 0 and stock >= high,
            "is_thin": self.reserve > 0 and stock < high,
            "has_odd_rows": has_odd_rows,
            "says_range": not (has_odd_rows or is_loose or is_tight) and high > low * _NARROW,
            "says_odd_rows": has_odd_rows,
            "says_loose": is_loose,
            "says_tight": is_tight,
        }

    def _laid_flat(self, outline: Outline) -> dict[str, float]:
        """Work out the area of the outline, and the room it takes laid flat."""
        across = self.around * outline.disc
        body = self.around * self.piece_length
        discs = outline.discs * formulas.circle_area(across)
        sleeves = outline.sleeves * formulas.trapezoid_area(
            self.sleeve_top, self.sleeve_cuff, self.sleeve_length
        )
        wide = max(self.sleeve_top, self.sleeve_cuff)
        rise = outline.rise_length * self.piece_length + outline.rise_around * self.around
        return {
            "piece_wide": self.around * outline.wide,
            "body_area": body,
            "disc_across": across,
            "disc_area": discs,
            "sleeve_area": sleeves,
            "area": outline.bodies * body + discs + sleeves,
            "sleeve_wide": wide,
            "span": outline.span * self.around + outline.sleeves * wide,
            "rise": max(rise, self.sleeve_length if outline.sleeves else 0),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        return knitting_words.worked(measure, grist)

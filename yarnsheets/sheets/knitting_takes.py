"""How much yarn a knitted piece takes when no pattern says: from its outline and its gauge."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import knitting_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose, larger, smaller
from yarnsheets.sheets import choices, knitting_words
from yarnsheets.sheets.inputs import Number, Result, Table
from yarnsheets.sheets.knitting_asked import AskedOfKnitting
from yarnsheets.sheets.outlines import OUTLINES
from yarnsheets.sheets.sheet import Line
from yarnsheets.stitches import LOOSEST, STATES, STITCHES, TIGHTEST
from yarnsheets.units import convert

_INCHES = convert(1.0, "yd", "in")
_METRES_TO_GRAM = convert(1.0, "yd/lb", "km/g")
_CENTIMETRES = convert(1.0, "in", "cm")

# Rows to a stitch off the usual by so much are worth a second look (common practice, no source).
_ODD_ROWS = 0.12


class WhatKnittingTakes(AskedOfKnitting):
    r"""Yards and weight of yarn for an outline, from washed gauge or from a weighed swatch.

    Examples
    --------
    >>> sheet = WhatKnittingTakes(outline="rectangle", around=25, piece_length=40)
    >>> round(sheet.area), round(sheet.yards, 3)
    (1000, 763.763)
    """

    is_rectangle = Result("flag", "the outline is a rectangle")
    is_triangle = Result("flag", "it is a triangle")
    is_circle = Result("flag", "it is a circle")
    is_hat = Result("flag", "it is a hat")
    is_pair = Result("flag", "it is a pair of tubes")
    is_pullover = Result("flag", "it is a pullover")
    has_body = Result("flag", "its area has a body and something more")
    by_swatch = Result("flag", "a swatch was weighed")
    by_gauge = Result("flag", "gauge alone is known")
    is_plain = Result("flag", "gauge alone is known, of plain knitting")
    is_patterned = Result("flag", "gauge alone is known, and the piece is in another stitch")
    outline_name = Result("word", "the outline")
    stitch_name = Result("word", "the stitch")
    stitch_origin = Result("word", "where its range is from")
    state_name = Result("word", "how far the swatch has relaxed")
    stitch_number = Result("number", "place of the stitch among all, from 0")
    factor_low = Result("number", "least that the stitch takes, of plain knitting")
    factor_high = Result("number", "most that it takes")
    course_constant = Result("number", "loop constant of courses (rows)")
    wale_constant = Result("number", "loop constant of wales (stitches)")
    area_constant = Result("number", "loop constant of both")
    bodies = Result("number", "how often around by length makes up the area")
    discs = Result("number", "how many circles are part of it")
    disc = Result("number", "diameter of a circle, of the measure around")
    sleeves = Result("number", "how many sleeves are part of it")
    wide_share = Result("number", "width of the first piece, of the measure around")
    span_share = Result("number", "width of all pieces laid flat, of the measure around")
    rise_length = Result("number", "their height, of the length")
    rise_around = Result("number", "their height, of the measure around")
    middle = Result("number", "middle of the first piece, of the measure around")
    sleeve_first = Result("number", "sleeves laid left of the first piece")
    words_at = Result("number", "how far up the words of the first piece stand")
    slices = Table("the pieces laid flat, by levels, in shares of the measures")

    piece_wide = Number("short", "width of the first piece, laid flat")
    body_area = Number("area", "area of the body, around by length")
    disc_across = Number("short", "diameter of a circle that is part of it")
    disc_area = Number("area", "area of the circles")
    sleeve_area = Number("area", "area of the sleeves")
    area = Number("area", "area of all pieces")
    sleeve_wide = Number("short", "width of a sleeve where it is widest")
    span = Number("short", "width of all pieces laid flat")
    rise = Number("short", "their height")
    near_stitches = Number("sett", "stitches to the inch")
    near_rows = Number("sett", "rows to the inch")
    usual_rows = Number("number", "rows to a stitch that are usual")
    own_rows = Number("number", "rows to a stitch as measured")
    loop = Number("short", "yarn in one stitch of plain knitting")
    stitch_count = Number("number", "stitches if the piece were all plain knitting")
    by_both = Number("length", "yarn for plain knitting, by both gauges")
    by_stitches = Number("length", "the same by stitches alone")
    by_rows = Number("length", "the same by rows alone")
    tightness = Number("number", "tightness factor, root of tex over loop in centimetres")
    swatch_area = Number("area", "area of the swatch")
    mass = Number("mass", "weight of the piece, by the swatch")
    by_the_swatch = Number("length", "yarn by the swatch")
    swatch_factor = Number("number", "that, of plain knitting by both gauges")
    factor = Number("number", "what the stitch takes in the middle of its range")
    yards = Number("length", "yarn that the piece takes")
    yards_low = Number("length", "low end of its range")
    yards_high = Number("length", "high end of its range")
    stock = Number("length", "yarn to have, with the reserve")
    weight = Number("mass", "weight of the yarn to have")
    has_doubt = Number("flag", "a doubt is allowed for")
    has_reserve = Number("flag", "some yarn is kept in reserve")
    has_no_reserve = Number("flag", "none is")
    is_thin = Number("flag", "the reserve does not reach the high end of the range")
    has_odd_rows = Number("flag", "the row gauge is far from the usual")
    is_loose = Number("flag", "the knitting is looser than usual for its yarn")
    is_tight = Number("flag", "it is tighter than usual")

    answer = knitting_words.ANSWER
    labels: ClassVar = knitting_words.LABELS

    def work_out(self) -> Mapping[str, Any]:
        """Look up the outline, the stitch and the state."""
        warning = self.unlikely()
        if warning:
            return self.no_answer(warning)
        outline, stitch, state = OUTLINES[self.outline], STITCHES[self.stitch], STATES[self.state]
        by_swatch = self.known_by == "swatch"
        return {
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
            "middle": outline.middle,
            "sleeve_first": outline.sleeve_first,
            "words_at": outline.words_at,
            "slices": list(outline.slices),
        }

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out the area, the yarn and its range, and the weight."""
        n = _laid_flat(v)
        area, state = n["area"], v.area_constant
        loop = formulas.loop_length(v.gauge_stitches, v.gauge_rows, state)
        both = area * formulas.yarn_per_area(v.gauge_stitches, v.gauge_rows, state) / _INCHES
        by_one = formulas.yarn_per_area_by_one_gauge
        by_stitches = area * by_one(v.gauge_stitches, v.course_constant) / _INCHES
        by_rows = area * by_one(v.gauge_rows, v.wale_constant) / _INCHES
        swatch_area = v.swatch_width * v.swatch_length
        mass = formulas.mass_from_swatch(v.swatch_weight, swatch_area, area)
        swatch = formulas.length(mass, v.grist)
        factor = (v.factor_low + v.factor_high) / 2
        yards = choose(v.by_swatch, swatch, both * factor)
        least = smaller(smaller(by_stitches, by_rows), both) * v.factor_low
        most = larger(larger(by_stitches, by_rows), both) * v.factor_high
        high = choose(v.by_swatch, swatch, most) * (1 + v.doubt)
        stock = yards * (1 + v.reserve)
        usual, own = v.course_constant / v.wale_constant, v.gauge_rows / v.gauge_stitches
        off = larger(own / usual, usual / own) - 1
        tightness = formulas.tightness_factor(v.grist * _METRES_TO_GRAM, loop * _CENTIMETRES)
        return n | {
            "near_stitches": v.gauge_stitches * 1,
            "near_rows": v.gauge_rows * 1,
            "usual_rows": usual,
            "own_rows": own,
            "loop": loop,
            "stitch_count": area * v.gauge_stitches * v.gauge_rows,
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
            "yards_low": choose(v.by_swatch, swatch, least) * (1 - v.doubt),
            "yards_high": high,
            "stock": stock,
            "weight": formulas.mass(stock, v.grist),
            "has_doubt": v.doubt > 0,
            "has_reserve": v.reserve > 0,
            "has_no_reserve": v.reserve <= 0,
            "is_thin": stock < high,
            "has_odd_rows": choose(v.by_swatch, 0, off > _ODD_ROWS),
            "is_loose": choose(v.by_swatch, 0, tightness < LOOSEST.value),
            "is_tight": choose(v.by_swatch, 0, tightness > TIGHTEST.value),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        return knitting_words.worked(measure, grist)

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the pieces laid flat, yarn against gauge, and what each stitch takes."""
        return (
            knitting_charts.pieces_laid_flat(v),
            knitting_charts.yards_against_gauge(v),
            knitting_charts.yards_by_stitch(v),
        )


def _laid_flat(v: Any) -> dict[str, Any]:
    """Work out the area of the outline, and the room it takes laid flat."""
    across = v.around * v.disc
    body = v.around * v.piece_length
    discs = v.discs * formulas.circle_area(across)
    sleeves = v.sleeves * formulas.trapezoid_area(v.sleeve_top, v.sleeve_cuff, v.sleeve_length)
    wide = larger(v.sleeve_top, v.sleeve_cuff)
    rise = v.rise_length * v.piece_length + v.rise_around * v.around
    return {
        "piece_wide": v.around * v.wide_share,
        "body_area": body,
        "disc_across": across,
        "disc_area": discs,
        "sleeve_area": sleeves,
        "area": v.bodies * body + discs + sleeves,
        "sleeve_wide": wide,
        "span": v.span_share * v.around + v.sleeves * wide,
        "rise": larger(rise, choose(v.sleeves > 0, v.sleeve_length, 0)),
    }

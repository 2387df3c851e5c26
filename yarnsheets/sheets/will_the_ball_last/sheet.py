"""Whether a ball lasts to the end of a piece that is being made from it."""

from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates import Course, course
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Input, Pick, Readings, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.sheets.shared import grists
from yarnsheets.sheets.shared.doubt import times, verdict
from yarnsheets.sheets.shared.weighing import GRAM
from yarnsheets.sheets.shared.whole import whole_down

_OUNCE = 1 / 16

_SAFE = 0.95  # the chance below which the page says where to stop

# What each way of growing starts and ends with, as widths; a trapezoid's are typed.
_WIDTHS = {
    "point": (0.0, 1.0),
    "even": (1.0, 1.0),
    "centre": (0.0, 1.0),
    "edge": (1.0, 0.0),
}


class WillTheBallLast(Sheet):
    """From weighings on the way to whether the yarn reaches the last row.

    Examples
    --------
    >>> sheet = WillTheBallLast(weight=0.2, left=[0.1], rows_at=[70], rows_all=99)
    >>> round(sheet.made, 3), round(sheet.halfway, 3)
    (0.5, 0.707)
    """

    question = "Will the ball last?"
    onward = (
        Onward("what-does-this-ball-make", {"grist": "grist", "weight": "now"}),
        Onward("is-this-enough", {"grist": "grist", "weights": "now", "project": "rest_yards"}),
    )

    weight = Input(
        "The ball at the start",
        "mass",
        3.5 * _OUNCE,
        low=1 * GRAM,
        high=10,
        measure="All the yarn for this piece, weighed before the first row.",
    )
    shape = Pick(
        "The piece is",
        {
            "point": "a triangle from its point",
            "edge": "a triangle from its wide edge",
            "even": "a rectangle",
            "centre": "a circle, square or hexagon from its centre",
            "trapezoid": "wider at one end, from first to last row",
        },
        measure="How it grows. From the centre, count rounds in place of rows.",
    )
    rows_all = Input(
        "Rows in all",
        "number",
        120,
        low=2,
        high=10000,
        measure="Rows, rounds or repeats, as you like to count; or 100 to count in per cent.",
    )
    rows_at = Readings(
        "Row at each weighing",
        "number",
        [48, 68, 84],
        low=0.1,
        high=10000,
        measure="The row just finished each time, the latest last. One weighing will do; more tell"
        " how uneven the work is.",
    )
    left = Readings(
        "Weight left at each weighing",
        "mass",
        [2.95 * _OUNCE, 2.4 * _OUNCE, 1.85 * _OUNCE],
        low=0,
        high=10,
        measure="The ball that is left, in the same order.",
    )
    grist = grists.asked(
        "Grist of the yarn",
        1100,
        "From cuts or a weighed skein: it turns weight into length.",
    )
    edge = Input(
        "Edge to bind off",
        "short",
        60,
        low=0.5,
        high=400,
        more=True,
        measure="The length of the last row, or of all the edge that is bound off.",
    )
    edge_factor = Input(
        "Yarn for the edge, times its length",
        "number",
        3.5,
        low=0,
        high=20,
        step=0.1,
        more=True,
        measure="3 to 4 times is common practice, no source; 0 if no edge is to come.",
    )
    first_width = Input(
        "Width of the first row",
        "short",
        20,
        low=0.1,
        high=400,
        more=True,
        measure="Only for a piece that is wider at one end.",
    )
    last_width = Input(
        "Width of the last row",
        "short",
        50,
        low=0.1,
        high=400,
        more=True,
        measure="Only for a piece that is wider at one end.",
    )
    unevenness = Input(
        "A whole piece may differ from its plan by",
        "share",
        0.03,
        low=0.001,
        high=0.3,
        more=True,
        measure="A first guess of how uneven yarn and hands are, a standard deviation; it counts"
        " as much as four stretches between weighings (our own choice).",
    )
    scale_step = Input(
        "The scale shows steps of",
        "mass",
        1 * GRAM,
        low=0.001 * GRAM,
        high=_OUNCE / 4,
        more=True,
        measure="The last digit of the scale.",
    )

    is_going = Found("flag", "rows are still to come")
    is_done = Found("flag", "the last row is done")
    may_fail = Found("flag", "the yarn may not last: fewer than 95 times of 100")
    first = Found("number", "width of the first row, as the shape has it")
    last = Found("number", "width of the last row, as the shape has it")
    row = Found("number", "row now")
    now = Found("mass", "weight left now")
    made = Found("share", "share of the piece that is made")
    total = Found("mass", "yarn for the whole piece, without its edge")
    rest_low = Found("mass", "low end of the yarn still to use, its edge counted in")
    rest_high = Found("mass", "high end of the yarn still to use, its edge counted in")
    words = Found("word", "how likely the yarn lasts")
    count = Found("word", "how often the yarn lasts")
    safe_made = Found("share", "share of the piece that the yarn reaches 95 times of 100")
    points = Table("each weighing")
    ahead = Table("the weight left from now on, with its range")

    edge_weight = Found("mass", "yarn kept for the edge")
    used = Found("mass", "yarn used so far")
    used_yards = Found("length", "yarn used so far")
    now_yards = Found("length", "yarn left now")
    rest = Found("mass", "yarn still to use, its edge counted in")
    rest_yards = Found("length", "yarn still to use, its edge counted in")
    rows_share = Found("share", "share of the rows that is done")
    halfway = Found("share", "share of the rows that is done when half the yarn is used")
    stop_row = Found("number", "last row before the edge that the yarn reaches 95 times of 100")

    answer = (
        (
            "is_going",
            "{words}: {count}. At row {row} of {rows_all} you have {now} left, about"
            " {now_yards:2}; the rest and its edge take about {rest}, between {rest_low!} and"
            " {rest_high} in 19 times of 20.",
        ),
        (
            "is_done",
            "All {rows_all} rows are done and {now} is left, about {now_yards:2}; the edge takes"
            " {edge_weight}.",
        ),
        (
            "may_fail",
            "To be safe, start binding off after row {stop_row}, or find more yarn.",
        ),
    )
    labels: ClassVar = {
        "now_label": "row {row}: {now} left",
        "edge_label": "for the edge",
        "made_label": "{made:2} made",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the course of the ball from its weighings."""
        if odd := self._unlikely():
            return no_answer(odd)
        first, last = _WIDTHS.get(self.shape, (self.first_width, self.last_width))
        shares = [formulas.share_made(row / self.rows_all, first, last) for row in self.rows_at]
        found = course(self.weight, self.left, shares, self.unevenness, self.scale_step)
        edge = formulas.mass(self.edge * self.edge_factor / 36, self.grist)
        used = self.weight - found.left
        rest = found.total - used + edge
        low, high = found.still_to_use().interval()
        safe_made = found.safe_share(edge, _SAFE)
        chance = found.chance(edge)
        is_going = self.rows_at[-1] < self.rows_all
        return {
            "is_going": is_going,
            "is_done": not is_going,
            "may_fail": is_going and chance < _SAFE,
            "first": first,
            "last": last,
            "row": self.rows_at[-1],
            "now": found.left,
            "made": found.made,
            "total": found.total,
            "rest_low": max(low, 0.0) + edge,
            "rest_high": high + edge,
            "words": verdict(chance),
            "count": times(chance),
            "safe_made": safe_made,
            "edge_weight": edge,
            "used": used,
            "used_yards": formulas.length(used, self.grist),
            "now_yards": formulas.length(found.left, self.grist),
            "rest": rest,
            "rest_yards": formulas.length(rest, self.grist),
            "rows_share": self.rows_at[-1] / self.rows_all,
            "halfway": formulas.rows_done(0.5, first, last),
            "stop_row": whole_down(self.rows_all * formulas.rows_done(safe_made, first, last)),
            "points": [
                {"row_at": row, "weighed": left}
                for row, left in zip(self.rows_at, self.left, strict=True)
            ],
            "ahead": self._ahead(found, first, last),
        }

    def _unlikely(self) -> str | None:
        """Say what is probably wrong with the weighings; none if nothing is."""
        if not self.rows_at or len(self.rows_at) != len(self.left):
            return (
                f"There are {len(self.rows_at)} rows and {len(self.left)} weights: type one weight"
                " for each row, a line each, in the same order."
            )
        if any(b <= a for a, b in pairwise(self.rows_at)):
            return "The rows must grow from weighing to weighing: put the latest one last."
        if self.rows_at[-1] > self.rows_all:
            return (
                f"Row {self.rows_at[-1]:g} is past the last one, {self.rows_all:g}: count again, or"
                " set the rows in all."
            )
        weights = [self.weight, *self.left]
        if any(b >= a for a, b in pairwise(weights)):
            return (
                "The ball must grow lighter from weighing to weighing: was the bowl weighed too, or"
                " is a weight in another unit?"
            )
        return None

    def _ahead(self, found: Course, first: float, last: float) -> list[dict[str, float]]:
        """Give the weight left at rows from now to the end, with the range of 19 times of 20."""
        steps = 24
        rows = []
        for at in range(steps + 1):
            row = self.rows_at[-1] + (self.rows_all - self.rows_at[-1]) * at / steps
            use = found.still_to_use(formulas.share_made(row / self.rows_all, first, last))
            either_way = use.expanded()
            middle = found.left - use.value
            rows.append(
                {
                    "row_at": row,
                    "middle": max(middle, 0.0),
                    "least": max(middle - either_way, 0.0),
                    "most": max(middle + either_way, 0.0),
                }
            )
        return rows

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write how the rest follows from what was used."""
        yield "is_going", "Used: {weight:4} − {now:4} = {used:4}, which is {used_yards:4}."
        yield (
            "is_going",
            "Rows: {row} of {rows_all} is {rows_share:4} of the rows, and in this shape"
            " {made:4} of the cloth. Half the yarn is gone at {halfway} of the rows.",
        )
        yield "is_going", "The whole: {used:4} ÷ {made:4} = {total:4}."
        yield (
            "is_going",
            "The edge: {edge:4} × {edge_factor:4} at {grist:4} is {edge_weight:4}.",
        )
        yield (
            "is_going",
            "Still to use: {total:4} − {used:4} + {edge_weight:4} = {rest:4}, which is"
            " {rest_yards:4}.",
        )
        yield (
            "is_going",
            "How far that may be off comes from the weighings, the first guess and the steps of"
            " the scale; it lessens with every row.",
        )

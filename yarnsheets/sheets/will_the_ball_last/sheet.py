"""Whether a ball lasts to the end of a piece that is being made from it."""

import math
from collections.abc import Iterable, Mapping
from itertools import pairwise
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.estimates import Course, course
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pairs, Pick, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.page.text import show, slot
from yarnsheets.sheets.shared import grists, weighing
from yarnsheets.sheets.shared.doubt import times, times_written, too_light, verdict
from yarnsheets.sheets.shared.weighing import GRAM
from yarnsheets.sheets.shared.whole import whole_down, whole_up

_OUNCE = 1 / 16

_SAFE = 0.95  # the chance below which the page says where to stop
_EARLIEST = 0.1  # of the piece: before that a weighing tells too little of the whole
_NARROW = 1.02  # high end over low, below which both may be written alike
_HALVINGS = 50  # of the rows to come, to find where to stop: to the last digits


class WillTheBallLast(Sheet):
    """From weighings on the way to whether the yarn reaches the last row.

    Examples
    --------
    >>> sheet = WillTheBallLast(weight=0.2, weighings=[(70, 0.1)], rows_all=99)
    >>> round(sheet.made, 3), round(sheet.halfway, 3)
    (0.5, 0.707)
    """

    question = "Will the ball last?"
    onward = (
        Onward("what-does-this-ball-make", {"weight": "to_go_on"}),
        Onward("how-many-yards", {"grist": "grist", "weight": "to_go_on", "project": "rest_yards"}),
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
    weighings = Pairs(
        "Weighings on the way",
        (
            Input("Row", "number", 48, low=0.1, high=10000, measure="The row just finished."),
            Input("Weight left", "mass", 0.2, low=0, high=10, measure="The ball that is left."),
        ),
        [(48, 2.95 * _OUNCE), (68, 2.4 * _OUNCE), (84, 1.85 * _OUNCE)],
        measure="A line each: the row just finished, then what is left of the ball. One will do;"
        " more tell how uneven the work is.",
        drawing="ball",
    )
    first_width = Input(
        "Width of the first row",
        "short",
        20,
        low=0.1,
        high=400,
        measure="Laid flat. Where the piece narrows, an edge bound off early is longer.",
    )
    last_width = Input(
        "Width of the last row",
        "short",
        50,
        low=0.1,
        high=400,
        measure="Laid flat: this edge is bound off.",
    )

    the_edge = Group("The edge to bind off")
    edge = Input(
        "Edge to bind off",
        "short",
        60,
        low=0.5,
        high=400,
        measure="The length of the last row, or of the last round all about.",
    )
    edge_factor = Input(
        "Yarn for the edge, times its length",
        "number",
        3.5,
        low=0,
        high=20,
        step=0.1,
        measure="3 to 4 times is common practice, no source; 0 if no edge is to come.",
    )
    grist = grists.asked(
        "Grist of the yarn",
        1100,
        "From cuts or a weighed skein: it turns weight into length.",
    )

    finer_points = Group("Finer points", folded=True)
    unevenness = Input(
        "A whole piece may differ from its plan by",
        "share",
        0.03,
        low=0.001,
        high=0.3,
        measure="A first guess of how uneven yarn and hands are, a standard deviation; it counts"
        " as much as four stretches between weighings (our own choice).",
    )
    scale_step = weighing.steps(1 * GRAM, _OUNCE / 4)

    is_new = Found("flag", "nothing is weighed yet")
    is_going = Found("flag", "rows are still to come")
    is_done_with_yarn = Found("flag", "the last row is done, and yarn is left")
    is_done_without = Found("flag", "the last row is done, and nothing is left")
    is_lasting = Found("flag", "rows are still to come, and yarn is left for them")
    is_used_up = Found("flag", "rows are still to come, and nothing is left")
    is_ranged = Found("flag", "yarn is left, and the range of the rest is wide enough to write")
    is_narrow = Found("flag", "yarn is left, and both ends of the range may be written alike")
    has_edge = Found("flag", "an edge is to be bound off after the last row")
    edge_fits = Found("flag", "the last row is done, and what is left does for the edge")
    edge_lacks = Found("flag", "the last row is done, and what is left does not")
    may_go_on = Found("flag", "it may not last, and binding off later than now is safe")
    must_stop = Found("flag", "it may not last, and binding off later than now is not safe")
    rest_name = Found("word", "what is still to be made")
    edge_name = Found("word", "what the yarn kept at the end is for; nothing if none is")
    first = Found("short", "width of the first row, as the shape has it")
    last = Found("short", "width of the last row, which is bound off, as the shape has it")
    row = Found("number", "row now")
    now = Found("mass", "weight left now")
    to_go_on = Found("mass", "weight left now, if anything is")
    made = Found("share", "share of the piece that is made")
    total = Found("mass", "yarn for the whole piece, without its edge")
    rest_low = Found("mass", "low end of the yarn still to use, its edge counted in")
    rest_high = Found("mass", "high end of the yarn still to use, its edge counted in")
    rest_within = Found("mass", "how far that may be off, 95% sure")
    words = Found("word", "how likely the yarn lasts")
    count = Found("word", "how often the yarn lasts")
    points = Table("each weighing")
    ahead = Table("the weight left from now on, with its range")

    all_yards = Found("length", "yarn in the ball at the start")
    first_row = Found("number", "row at which a tenth of the piece is made")
    edge_weight = Found("mass", "yarn kept for the edge")
    used = Found("mass", "yarn used so far")
    used_yards = Found("length", "yarn used so far")
    now_yards = Found("length", "yarn left now")
    rest = Found("mass", "yarn still to use, its edge counted in")
    rest_yards = Found("length", "yarn still to use, its edge counted in")
    rows_share = Found("share", "share of the rows that is done")
    halfway = Found("share", "share of the rows that is done when half the yarn is used")
    stop_row = Found("number", "last row after which binding off is safe, 95 times of 100")

    answer = (
        ("is_new", "Knit to about row {first_row*} and weigh what is left of the ball."),
        (
            "is_new",
            "By then a tenth of the piece is made, and the page can tell. The ball holds about"
            " {all_yards}.",
        ),
        ("is_lasting", "{words*}: {count}."),
        ("is_used_up", "The ball is used up at row {row*} of {rows_all}."),
        (
            "is_ranged",
            "You have {now} left, about {now_yards}; {rest_name} about {rest}, between {rest_low!}"
            " and {rest_high}, 95% sure.",
        ),
        (
            "is_narrow",
            "You have {now} left, about {now_yards}; {rest_name} {rest}, right to"
            " {rest_within:1}, 95% sure.",
        ),
        ("is_used_up", "Find more yarn: {rest_name} about {rest}, {rest_yards}."),
        ("may_go_on", "To be safe, start binding off after row {stop_row}, or find more yarn."),
        ("must_stop", "To be safe, bind off now, or find more yarn."),
        ("is_done_with_yarn", "All {rows_all} rows are done, with {now} left, about {now_yards}."),
        ("is_done_without", "All {rows_all} rows are done, and the ball is used up."),
        ("edge_fits", "The edge takes about {edge_weight}, so that is enough."),
        ("edge_lacks", "The edge takes about {edge_weight}, so find more yarn for it."),
    )
    labels: ClassVar = {
        "now_label": "row {row}: {now} left",
        "edge_label": "{edge_name}",
        "made_label": "{made:2} made",
    }

    def unused(self) -> list[str]:
        """Name the measures that this shape does not have."""
        if self.shape == "trapezoid":
            return ["edge"]
        return ["edge", "last_width"] if self.shape == "edge" else ["first_width", "last_width"]

    def work_out(self) -> Mapping[str, Any]:
        """Work out the course of the ball from its weighings."""
        if odd := self._unlikely():
            return no_answer(odd)
        first, last = self._widths()
        of_shape = {
            "first": first,
            "last": last,
            "halfway": formulas.rows_done(0.5, first, last),
            "all_yards": formulas.length(self.weight, self.grist),
            "first_row": self._first_row(),
        }
        if not self._rows():
            return of_shape | {"is_new": True}
        found = course(
            self.weight,
            self._left(),
            [formulas.share_made(row / self.rows_all, first, last) for row in self._rows()],
            self.unevenness,
            self.scale_step,
        )
        edge = self._edge_at(1.0)
        used = self.weight - found.left
        rest = found.total * (1 - found.made) + edge
        low, high = found.still_to_use().interval()
        rest_low, rest_high = max(low, 0.0) + edge, high + edge
        chance = found.chance(edge)
        is_going = self._rows()[-1] < self.rows_all
        is_lasting = is_going and found.left > 0
        may_fail = is_lasting and times_written(chance) < times_written(_SAFE)
        stop_row = whole_down(self.rows_all * self._safe_rows(found))
        is_narrow = rest_high < rest_low * _NARROW
        return of_shape | {
            "is_going": is_going,
            "is_done_with_yarn": not is_going and found.left > 0,
            "is_done_without": not is_going and not found.left,
            "is_lasting": is_lasting,
            "is_used_up": is_going and not is_lasting,
            "is_ranged": is_lasting and not is_narrow,
            "is_narrow": is_lasting and is_narrow,
            "has_edge": edge > 0,
            "edge_fits": not is_going and 0 < edge <= found.left,
            "edge_lacks": not is_going and edge > found.left,
            "may_go_on": may_fail and stop_row > self._rows()[-1],
            "must_stop": may_fail and stop_row <= self._rows()[-1],
            "rest_name": "the rest and its edge take" if edge > 0 else "the rest takes",
            "edge_name": "for the edge" if edge > 0 else "",
            "row": self._rows()[-1],
            "now": found.left,
            "to_go_on": found.left if found.left > 0 else math.nan,
            "made": found.made,
            "total": found.total,
            "rest_low": rest_low,
            "rest_high": rest_high,
            "rest_within": rest_high - rest,
            "words": verdict(chance),
            "count": times(chance),
            "edge_weight": edge,
            "used": used,
            "used_yards": formulas.length(used, self.grist),
            "now_yards": formulas.length(found.left, self.grist),
            "rest": rest,
            "rest_yards": formulas.length(rest, self.grist) if rest > 0 else math.nan,
            "rows_share": self._rows()[-1] / self.rows_all,
            "stop_row": stop_row,
            "points": [{"row_at": row, "weighed": left} for row, left in self.weighings],
            "ahead": self._ahead(found, first, last),
        }

    def _widths(self) -> tuple[float, float]:
        """Give the widths of the first row and of the last, as the shape has them."""
        if self.shape == "trapezoid":
            return self.first_width, self.last_width
        if self.shape == "edge":
            return self.first_width, 0.0
        return (self.edge if self.shape == "even" else 0.0), self.edge

    def _edge_at(self, rows: float) -> float:
        """Give the yarn for the edge, bound off when a share of the rows is done."""
        first, last = self._widths()
        edge = first + (last - first) * rows
        return float(formulas.mass(edge * self.edge_factor / 36, self.grist))

    def _safe_rows(self, found: Course) -> float:
        """Give the share of the rows after which the edge can still be bound off safely.

        Each row takes yarn, so there is one place where it stops to be safe; but a piece that
        narrows to its end may be safe there again, its edge being short.
        """
        first, last = self._widths()

        def is_safe(rows: float) -> bool:
            made = formulas.share_made(rows, first, last)
            return found.is_safe(self._edge_at(rows), made, _SAFE)

        low: float = self._rows()[-1] / self.rows_all
        high = 1.0
        if is_safe(high):
            return high
        if not is_safe(low):
            return low
        for _ in range(_HALVINGS):
            middle = (low + high) / 2
            if is_safe(middle):
                low = middle
            else:
                high = middle
        return low

    def _rows(self) -> list[float]:
        return [row for row, _ in self.weighings]

    def _left(self) -> list[float]:
        return [left for _, left in self.weighings]

    def _first_row(self) -> int:
        first, last = self._widths()
        return whole_up(self.rows_all * formulas.rows_done(_EARLIEST, first, last))

    def _unlikely(self) -> str | None:
        """Say what is probably wrong with the weighings; none if nothing is."""
        steps = f"for a scale with steps of {slot(self.scale_step, 'mass')}"
        if too_light(self.weight, self.scale_step):
            return (
                f"The ball is too light {steps} to tell its weight: take a finer scale, or look at"
                " the scale’s steps under Finer points."
            )
        if not self._rows():
            return None
        if any(b <= a for a, b in pairwise(self._rows())):
            return "The rows must grow from weighing to weighing: put the latest one last."
        if self._rows()[-1] > self.rows_all:
            return (
                f"Row {show(self._rows()[-1])} is past the last one, {show(self.rows_all)}: count"
                " again, or set the rows in all."
            )
        weights = [self.weight, *self._left()]
        if any(b >= a for a, b in pairwise(weights)):
            return (
                "The ball must grow lighter from weighing to weighing: was the bowl weighed too, or"
                " is a weight in another unit?"
            )
        first_row = show(self._first_row())
        first, last = self._widths()
        if formulas.share_made(self._rows()[-1] / self.rows_all, first, last) < _EARLIEST:
            return (
                f"At row {show(self._rows()[-1])} too little is made to tell: knit on to about row"
                f" {first_row}, a tenth of the piece, and weigh again."
            )
        used = self.weight - self._left()[-1]
        if too_light(used, self.scale_step):
            return (
                f"Only {slot(used, 'mass')} is used, too little {steps}: knit on and weigh again,"
                " or look at the scale’s steps under Finer points."
            )
        return None

    def _ahead(self, found: Course, first: float, last: float) -> list[dict[str, float]]:
        """Give the weight left at rows from now to the end, with its range, 95% sure."""
        steps = 24
        rows = []
        for at in range(steps + 1):
            row = self._rows()[-1] + (self.rows_all - self._rows()[-1]) * at / steps
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
            "has_edge",
            "The edge: {last:4} × {edge_factor:4} at {grist:4} is {edge_weight:4}.",
        )
        yield (
            "is_going",
            "Still to use: {total:4} − {used:4} + {edge_weight:4} = {rest:4}, which is"
            " {rest_yards:4}; left is {now:4}.",
        )
        yield (
            "is_going",
            "How far that may be off comes from the weighings, the first guess and the steps of"
            " the scale; it lessens with every row. Where to bind off counts the edge as long as it"
            " is there.",
        )

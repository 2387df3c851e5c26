"""What the worksheet on the shelf asks: the skeins, a project, and how far each measure is off."""

import math

from yarnsheets.page.inputs import Group, Input, Pick
from yarnsheets.page.rows import Beside, Rows
from yarnsheets.page.sheet import Sheet
from yarnsheets.sheets.shared import cutting, weighing
from yarnsheets.sheets.shared.weighing import GRAM
from yarnsheets.shelf.choosing import TOGETHER, Wanted
from yarnsheets.shelf.columns import CALLED, COLUMNS, FIRST
from yarnsheets.shelf.evidence import Doubts, Skein
from yarnsheets.shelf.invented import SHELF

_MOST_SKEINS = 100
_USUAL = Doubts()


class AskedOfShelf(Sheet):
    """The inputs, as skeins, a project and their doubts."""

    skeins = Rows(
        "Skeins",
        COLUMNS,
        SHELF,
        called=CALLED,
        first=FIRST,
        beside=Beside(
            "reckoned",
            {
                "Holds": (("is_reckoned", "{yards:4}"),),
                "Between": (("is_reckoned", "{low:4!} and {high:4}"),),
                "Known by": (("is_reckoned", "{evidence}"), ("is_lacking", "{lacking}")),
                "For the project": ((None, "{role}"),),
            },
            {"yards": "length", "low": "length", "high": "length"},
        ),
        most=_MOST_SKEINS,
        measure="A row a skein; leave empty what you do not know. A number may have its unit behind"
        " it, as 88 g or 3.1 oz. The skeins here are invented.",
    )
    project = Input(
        "The project takes",
        "length",
        600,
        low=5,
        high=20000,
        measure="The pattern’s own figure, without a reserve.",
    )
    project_range = Input(
        "That is right to within, either way",
        "share",
        0.1,
        low=0.005,
        high=0.5,
        measure="95% sure. Patterns are often 10% off (common practice, no source).",
    )
    safety = Input(
        "How safe it should be",
        "share",
        0.95,
        low=0.5,
        high=0.99,
        step=0.01,
        measure="95%: enough for 95 of 100 such projects. This takes the place of a reserve.",
    )
    together = Pick(
        "Skeins of one project have the same",
        TOGETHER,
        measure="By the words in the table; an empty one is a word too.",
    )
    alike = Input(
        "Their grists may differ by",
        "share",
        0.15,
        low=0,
        high=1,
        step=0.01,
        measure="The finest against the coarsest. 15% shows little in most fabrics (common"
        " practice, no source).",
    )
    paper = Pick(
        "On paper",
        {"page": "this page", "tags": "a tag for each skein"},
        measure="Tags stand below, and Print prints them alone. A page on the web gives each a code"
        " for phones, which opens its grist and weight.",
    )
    how_far_off = Group("How far off each measure may be", folded=True)
    known_range = Input(
        "A known length is right to within",
        "share",
        _USUAL.known_range,
        low=0.001,
        high=0.3,
        measure="95% sure.",
    )
    counter_factor = Input(
        "The counter’s factor",
        "number",
        _USUAL.counter_factor,
        low=0.5,
        high=2,
        step=0.001,
        measure="What its readings are multiplied by. The worksheet “How far off is my counter?”"
        " gives it.",
    )
    counter_range = Input(
        "A reading so put right is right to within",
        "share",
        _USUAL.counter_range,
        low=0.001,
        high=0.3,
        measure="95% sure. The same worksheet gives it.",
    )
    around = Input(
        "Once round the reel, where a row does not say",
        "short",
        _USUAL.around,
        low=6,
        high=200,
        measure="Niddy-noddies are often 54, 72 or 90 in: 137, 183 or 229 cm.",
    )
    around_error = Input(
        "Once round is right to within",
        "short",
        _USUAL.around_error,
        low=0.001,
        high=4,
        measure="What the tape could be off by, and the arms that give a little.",
    )
    miscount = Input(
        "A count of turns may be out by, either way",
        "number",
        _USUAL.miscount,
        low=0,
        high=10,
        step=1,
        measure="Turns. 0 if each was counted twice.",
    )
    balance_factor = cutting.balance_factor()
    trimming = cutting.trimming()
    stretch = cutting.stretch()
    usual_spread = Input(
        "A yarn like these is usually uneven by",
        "share",
        _USUAL.usual_spread,
        low=0.01,
        high=0.5,
        measure="One cut or sample cannot show it. 5% is very even, 10% common, 30% very uneven"
        " (common practice, no source).",
    )
    scale_step = weighing.steps(0.1 * GRAM, 0.25 / 16, "The last digit of the scale.")

    def on_shelf(self) -> list[Skein]:
        """Give the skeins of the table."""
        return [
            Skein(
                " ".join(row[0].split()),
                row[1],
                row[2],
                _number(row[3]),
                _number(row[4]),
                _number(row[5]),
                _number(row[6]),
                _number(row[7]),
                _number(row[8]),
                row[9],
                _number(row[10]),
                _number(row[11]),
            )
            for row in self.skeins
        ]

    def doubts(self) -> Doubts:
        """Give how far off each kind of measurement may be."""
        return Doubts(
            known_range=self.known_range,
            counter_factor=self.counter_factor,
            counter_range=self.counter_range,
            around=self.around,
            around_error=self.around_error,
            miscount=self.miscount,
            balance_factor=self.balance_factor,
            trimming=self.trimming,
            stretch=self.stretch,
            counterweight=_USUAL.counterweight,
            humidity=_USUAL.humidity,
            usual_spread=self.usual_spread,
            scale_step=self.scale_step,
        )

    def wanted(self) -> Wanted:
        """Give the project."""
        return Wanted(self.project, self.project_range, self.safety, self.alike, self.together)

    def unused(self) -> list[str]:
        """Name what no skein of the table is measured by."""
        skeins = self.on_shelf()
        weighed = [each for each in skeins if not math.isnan(each.weight)]
        cuts = [len(each.cuts) for each in weighed if each.cuts]
        has_sample = any(
            not math.isnan(each.sample_length) and not math.isnan(each.sample_weight)
            for each in weighed
        )
        has_wraps = any(not math.isnan(each.wraps) for each in weighed)
        turned = [each for each in skeins if not math.isnan(each.turns)]
        is_used = {
            "known_range": any(not math.isnan(each.length) for each in skeins),
            "counter_factor": any(not math.isnan(each.counter) for each in skeins),
            "counter_range": any(not math.isnan(each.counter) for each in skeins),
            "around": any(math.isnan(each.around) for each in turned),
            "around_error": bool(turned),
            "miscount": bool(turned),
            "balance_factor": bool(cuts),
            "trimming": bool(cuts),
            "stretch": bool(cuts) or has_sample,
            "usual_spread": 1 in cuts or has_sample,
            "scale_step": bool(cuts) or has_sample or has_wraps,
        }
        return [name for name, is_it in is_used.items() if not is_it]


def _number(cell: float | None) -> float:
    return math.nan if cell is None else cell

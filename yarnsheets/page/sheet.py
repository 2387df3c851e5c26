"""A sheet: one description of a question, read by Python and by the browser alike.

A subclass names what it asks and what it finds as traits, works everything out in `work_out`,
and gives its sentences; the module `charts` beside it draws. `work_out` is plain Python for
Python, and the compiler turns it into JavaScript for the page. Nothing is written twice.
"""

import math
import sys
from collections.abc import Iterable, Mapping
from functools import cache
from importlib import import_module
from typing import TYPE_CHECKING, Any, ClassVar, TypeVar

import traitlets

from yarnsheets.page import choices, explain, ways
from yarnsheets.page.inputs import Asked, Found, Group, Table
from yarnsheets.page.listing import Listing
from yarnsheets.page.onward import Onward
from yarnsheets.page.text import Line, Shown, fill, said

if TYPE_CHECKING:
    from yarnsheets.page.widget import SheetView

__all__ = ["Line", "Sheet", "no_answer"]

T = TypeVar("T", Asked, Found, Group, Table)


class Sheet(traitlets.HasTraits):
    """What every worksheet shares: recomputing, writing sentences, describing itself."""

    question: ClassVar[str]
    onward: ClassVar[tuple[Onward, ...]] = ()
    answer: ClassVar[tuple[Line, ...]] = ()
    labels: ClassVar[dict[str, str]] = {}
    cautions: ClassVar[tuple[str, ...]] = ()
    listings: ClassVar[tuple[Listing, ...]] = ()

    measure = traitlets.Enum(
        [m.name for m in choices.MEASURES], choices.MEASURES[0].name, help="lengths and weights"
    )
    grist_unit = traitlets.Enum(
        [g.unit for g in choices.GRIST_UNITS], choices.GRIST_UNITS[0].unit, help="grist"
    )
    warnings = traitlets.List(
        traitlets.Unicode(),
        read_only=True,
        help="what is probably wrong: said in place of an answer",
    )

    def __init__(self, **inputs: Any) -> None:
        super().__init__(**inputs)
        # the units too: what is probably wrong is said in the reader’s own
        self.observe(self._recompute, names=[*self.inputs(), "measure"])
        self._recompute()

    @classmethod
    def inputs(cls) -> dict[str, Asked]:
        """Give what is asked, by name, in the order it was written."""
        return _in_order(cls, Asked)

    @classmethod
    def groups(cls) -> list[dict[str, Any]]:
        """Give the headings in order, each with the names of the inputs that stand under it."""
        heads = list(_in_order(cls, Group).values())
        ends = [*(head.order for head in heads[1:]), math.inf]
        return [
            head.describe()
            | {"inputs": [n for n, each in cls.inputs().items() if head.order < each.order < end]}
            for head, end in zip(heads, ends, strict=False)
        ]

    @classmethod
    def finds(cls) -> dict[str, Found]:
        """Give the numbers, words and flags that are worked out, by name, in order."""
        return _in_order(cls, Found)

    @classmethod
    def tables(cls) -> dict[str, Table]:
        """Give the tables that are worked out, by name, in order."""
        return _in_order(cls, Table)

    @classmethod
    def nothing(cls) -> dict[str, Any]:
        """Give what stands for everything that `work_out` leaves out."""
        found = {name: each.empty for name, each in (cls.finds() | cls.tables()).items()}
        return found | {"warnings": []}

    def work_out(self) -> Mapping[str, Any]:
        """Work out all that is found; `warnings`, which are templates, replace an answer."""
        raise NotImplementedError

    def unused(self) -> list[str]:
        """Name the inputs that make no difference beside the others; the page hides them."""
        return []

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as the reader would do it by hand in these units."""
        raise NotImplementedError

    def _recompute(self, _change: object = None) -> None:
        with self.hold_trait_notifications():
            for name, value in (self.nothing() | dict(self.work_out())).items():
                self.set_trait(name, value)

    def _chosen(self) -> tuple[choices.Measure, choices.GristUnit]:
        return (
            next(m for m in choices.MEASURES if m.name == self.measure),
            next(g for g in choices.GRIST_UNITS if g.unit == self.grist_unit),
        )

    def units_shown(self) -> Shown:
        """Give the units shown."""
        return choices.shown(*self._chosen())

    def all_known(self) -> dict[str, Any]:
        """Give the inputs and what was found, by name."""
        return {name: getattr(self, name) for name in (*self.inputs(), *self.finds())}

    @classmethod
    def dimensions(cls) -> dict[str, str]:
        """Give the dimension of everything asked and found."""
        return {name: each.dimension for name, each in (cls.inputs() | cls.finds()).items()}

    def say(self, template: str) -> str:
        """Fill a template with the sheet's numbers, as the page does."""
        return fill(template, self.all_known(), self.dimensions(), self.units_shown())

    def said(self, lines: Iterable[Line]) -> list[str]:
        """Fill those lines whose condition holds."""
        return said(lines, self.all_known(), self.dimensions(), self.units_shown())

    @property
    def sentence(self) -> str:
        """The answer in words, or what is probably wrong."""
        return " ".join(map(self.say, self.warnings)) or " ".join(self.said(self.answer))

    @property
    def arithmetic(self) -> list[str]:
        """The arithmetic worked through, a line a step; none where there is no answer."""
        return [] if self.warnings else self.said(self.worked(*self._chosen()))

    def view(self) -> "SheetView":
        """Show the sheet as a page; this view and any other move together with the sheet."""
        from yarnsheets.page.widget import SheetView

        return SheetView(self)

    @classmethod
    def describe(cls) -> dict[str, Any]:
        """Describe the sheet as plain data: with its program, all that a page needs."""
        return _describe(cls)


def no_answer(warning: str) -> dict[str, Any]:
    """Give what `work_out` finds when there is something to say in place of an answer."""
    return {"warnings": [warning]}


@cache
def _describe(sheet: type[Sheet]) -> dict[str, Any]:
    questions = {name_of(each): each.question for each in _all_of(Sheet)}
    blank = sheet()
    return {
        "name": name_of(sheet),
        "question": sheet.question,
        "inputs": {name: asked.describe() for name, asked in sheet.inputs().items()},
        "groups": sheet.groups(),
        "glossary": explain.GLOSSARY,
        "drawings": {
            asked.drawing: explain.drawing(asked.drawing)
            for asked in sheet.inputs().values()
            if asked.drawing
        },
        "ways": {name: asked.describe() for name, asked in ways.ASKED.items()},
        "found": {name: found.describe() for name, found in sheet.finds().items()},
        "tables": list(sheet.tables()),
        "scales": choices.scales(),
        "unitLabels": choices.labels(),
        "measures": [vars(m) for m in choices.MEASURES],
        "gristUnits": [{"unit": g.unit, "name": g.name} for g in choices.GRIST_UNITS],
        "answer": sheet.answer,
        "worked": {
            f"{m.name}|{g.unit}": list(blank.worked(m, g))
            for m in choices.MEASURES
            for g in choices.GRIST_UNITS
        },
        "labels": sheet.labels,
        "cautions": sheet.cautions,
        "onward": [{**vars(way), "question": questions[way.worksheet]} for way in sheet.onward],
        "charts": _charts(sheet),
        "listings": [listing.describe() for listing in sheet.listings],
    }


def name_of(sheet: type[Sheet]) -> str:
    """Give a sheet's name: of its worksheet, and of its folder with underscores for hyphens."""
    return sheet.__module__.split(".")[-2].replace("_", "-")


def _all_of(sheet: type[Sheet]) -> Iterable[type[Sheet]]:
    for each in sheet.__subclasses__():
        if "question" in vars(each):
            yield each
        yield from _all_of(each)


# Altair checks charts by jsonschema, which builds a grammar of internet addresses as it loads,
# if that is installed: most of a page's waiting time, for a check that no chart asks for.
_GRAMMAR = "rfc3987_syntax"


def _charts(sheet: type[Sheet]) -> list[dict[str, Any]]:
    """Draw the charts of the module `charts` beside a sheet, and describe them."""
    if _GRAMMAR not in sys.modules:
        sys.modules[_GRAMMAR] = None  # type: ignore[assignment] # this is how an import is refused
        import_module("altair")
        del sys.modules[_GRAMMAR]
    drawing = import_module("yarnsheets.page.chart")
    charts = import_module(f"{sheet.__module__.rpartition('.')[0]}.charts")
    described: list[dict[str, Any]] = drawing.describe(sheet, charts.charts)
    return described


@cache
def _in_order(cls: type[traitlets.HasTraits], kind: type[T]) -> dict[str, T]:
    found = {name: trait for name, trait in cls.class_traits().items() if isinstance(trait, kind)}
    return dict(sorted(found.items(), key=lambda item: item[1].order))

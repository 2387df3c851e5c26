"""A sheet: one description of a question, read by Python and by the browser alike.

A subclass names what it asks and what it answers as traits, works its numbers out in `compute`,
and gives its sentences and charts. `compute` runs twice: on plain numbers for Python, and on
named parameters, whose emitted text the browser computes with. Nothing is written twice. What
formulas cannot do, a range or a table, is a matter of `work_out`, which runs in Python alone.
"""

import math
from collections.abc import Iterable, Mapping
from types import SimpleNamespace
from typing import Any, ClassVar, TypeVar

import altair as alt
import traitlets

from yarnsheets import units
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import emit
from yarnsheets.sheets import choices
from yarnsheets.sheets.inputs import Asked, Input, Number, Result, Table
from yarnsheets.sheets.onward import WAYS
from yarnsheets.sheets.text import Slot, fill, money, show
from yarnsheets.sheets.view import SheetView

T = TypeVar("T", Asked, Input, Number, Result, Table)

# A sentence and the number that must hold for it to be said; none is always said.
Line = tuple[str | None, str]

# What a chart calls its own size and place: an input of such a name would move the chart.
_TAKEN_BY_VEGA = {"width", "height", "padding", "autosize", "background", "cursor"}


class Sheet(traitlets.HasTraits):
    """What every worksheet shares: recomputing, writing sentences, describing itself."""

    measure = traitlets.Enum(
        [m.name for m in choices.MEASURES], choices.MEASURES[0].name, help="lengths and weights"
    )
    grist_unit = traitlets.Enum(
        [g.unit for g in choices.GRIST_UNITS], choices.GRIST_UNITS[0].unit, help="grist"
    )

    answer: ClassVar[tuple[Line, ...]] = ()
    labels: ClassVar[dict[str, str]] = {}
    cautions: ClassVar[tuple[str, ...]] = ()

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
    def numbers(cls) -> dict[str, Number]:
        """Give the numbers worked out by formulas, by name, in order."""
        found = _in_order(cls, Number)
        return {name: trait for name, trait in found.items() if not isinstance(trait, Result)}

    @classmethod
    def results(cls) -> dict[str, Result]:
        """Give the numbers and words worked out by Python alone, by name, in order."""
        return _in_order(cls, Result)

    def work_out(self) -> Mapping[str, Any]:
        """Work out results, tables and `warnings` from the inputs, in Python alone."""
        return {}

    def no_answer(self, warning: str) -> dict[str, Any]:
        """Give what `work_out` gives when there is something to say in place of an answer."""
        empty: dict[str, Any] = {"flag": False, "word": ""}
        return (
            {name: empty.get(each.dimension, math.nan) for name, each in self.results().items()}
            | {name: [] for name in _in_order(type(self), Table)}
            | {"warnings": [warning]}
        )

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs and results `v`, with formulas alone."""
        raise NotImplementedError

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as the reader would do it by hand in these units."""
        raise NotImplementedError

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the charts over `v`: inputs and results as parameters, numbers as chart text."""
        raise NotImplementedError

    def _recompute(self, _change: object = None) -> None:
        with self.hold_trait_notifications():
            self.set_trait("warnings", [])
            for name, value in self.work_out().items():
                self.set_trait(name, value)
            for name, value in self.compute(SimpleNamespace(**self._signals())).items():
                self.set_trait(name, value)

    def _signals(self) -> dict[str, Any]:
        """Give the numbers that formulas start from: inputs that are numbers, and results."""
        names = [*_in_order(type(self), Input), *self.results()]
        return {name: getattr(self, name) for name in names}

    def _chosen(self) -> tuple[choices.Measure, choices.GristUnit]:
        return (
            next(m for m in choices.MEASURES if m.name == self.measure),
            next(g for g in choices.GRIST_UNITS if g.unit == self.grist_unit),
        )

    def say(self, template: str) -> str:
        """Fill a template with the sheet's numbers, as the page does."""
        return fill(template, self._write)

    def _write(self, slot: Slot) -> str:
        trait = (self.inputs() | self.numbers() | self.results())[slot.name]
        value = getattr(self, slot.name)
        if isinstance(value, str):
            return value
        if trait.dimension == "money":
            return money(value)
        if trait.dimension not in choices.OWN_UNITS:
            return show(value, slot.digits, up=slot.up)
        measure, grist = self._chosen()
        unit = slot.unit or {**measure.units, "grist": grist.unit}[trait.dimension]
        scale = units.scale(choices.OWN_UNITS[trait.dimension], unit)
        if scale.power < 0:
            value = getattr(self, _other_end(slot.name))
        shown = scale.apply(value)
        text = show(shown, slot.digits, up=slot.up)
        return text if slot.bare else text + choices.behind(unit)

    def said(self, lines: Iterable[Line]) -> list[str]:
        """Fill those lines whose condition holds."""
        return [self.say(text) for when, text in lines if when is None or getattr(self, when)]

    @property
    def sentence(self) -> str:
        """The answer in words, or what is probably wrong."""
        if self.warnings:
            return " ".join(self.warnings)
        return " ".join(self.said(self.answer))

    @property
    def arithmetic(self) -> list[str]:
        """The arithmetic worked through, a line a step."""
        return self.said(self.worked(*self._chosen()))

    def view(self) -> SheetView:
        """Show the sheet as a page; this view and any other move together with the sheet."""
        return SheetView(self)

    def found(self) -> dict[str, Any]:
        """Give what Python alone has worked out, as plain data for the page."""
        return {
            "numbers": {name: _plain(getattr(self, name)) for name in self.results()},
            "tables": {
                name: [
                    {key: _plain(value) for key, value in row.items()}
                    for row in getattr(self, name)
                ]
                for name in _in_order(type(self), Table)
            },
            "warnings": list(self.warnings),
        }

    def describe(self) -> dict[str, Any]:
        """Describe the whole sheet as plain data: all that a page needs to work by itself."""
        if taken := _TAKEN_BY_VEGA & self._signals().keys():
            msg = f"{', '.join(taken)}: Vega takes this for the chart's own; give it another name."
            raise ValueError(msg)
        params = {name: alt.param(name=name, value=0) for name in self._signals()}
        computed = self.compute(SimpleNamespace(**params))
        return {
            "inputs": {name: asked.describe() for name, asked in self.inputs().items()},
            "numbers": {
                name: {
                    "expr": emit(computed[name]),
                    "dimension": number.dimension,
                    "what": number.help,
                }
                for name, number in self.numbers().items()
            },
            "results": {
                name: {"dimension": result.dimension, "what": result.help}
                for name, result in self.results().items()
            },
            "scales": {
                dimension: {unit: [s.factor, s.power] for unit, s in shown.items()}
                for dimension, shown in choices.scales().items()
            },
            "unitLabels": {
                unit: choices.label(unit) for shown in choices.SHOWN.values() for unit in shown
            },
            "measures": [{"name": m.name, "units": m.units} for m in choices.MEASURES],
            "gristUnits": [{"unit": g.unit, "name": g.name} for g in choices.GRIST_UNITS],
            "answer": self.answer,
            "worked": {
                f"{m.name}|{g.unit}": list(self.worked(m, g))
                for m in choices.MEASURES
                for g in choices.GRIST_UNITS
            },
            "labels": self.labels,
            "cautions": self.cautions,
            "onward": [way.describe() for way in WAYS.get(type(self).__name__, ())],
            "charts": [
                chart.describe(params.values(), self.labels)
                for chart in self.charts(SimpleNamespace(**params, **computed))
            ],
        }


def _in_order(cls: type[traitlets.HasTraits], kind: type[T]) -> dict[str, T]:
    found = {name: trait for name, trait in cls.class_traits().items() if isinstance(trait, kind)}
    return dict(sorted(found.items(), key=lambda item: item[1].order))


def _other_end(name: str) -> str:
    """Give the other end of a range: in tex, the high end in yards per pound is the low one.

    >>> _other_end("grist_low"), _other_end("grist")
    ('grist_high', 'grist')
    """
    for end, other in (("_low", "_high"), ("_high", "_low")):
        if name.endswith(end):
            return name.removesuffix(end) + other
    return name


def _plain(value: Any) -> Any:
    """Make a value fit for JSON: no number that is not one, no numpy."""
    if value is None or isinstance(value, str | bool):
        return value
    return float(value) if math.isfinite(value) else None

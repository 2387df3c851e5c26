"""A sheet: one description of a question, read by Python and by the browser alike.

A subclass names its inputs and numbers as traits, works the numbers out in `compute`, and
gives its sentences and charts. `compute` runs twice: on plain numbers for Python, and on
named parameters, whose emitted text the browser computes with. Nothing is written twice.
"""

from collections.abc import Iterable, Mapping
from types import SimpleNamespace
from typing import Any, ClassVar, TypeVar

import altair as alt
import traitlets

from yarnsheets import units
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import emit
from yarnsheets.sheets import choices
from yarnsheets.sheets.inputs import Input, Number
from yarnsheets.sheets.text import Slot, fill, show
from yarnsheets.sheets.view import SheetView

T = TypeVar("T", Input, Number)

# A sentence and the number that must hold for it to be said; none is always said.
Line = tuple[str | None, str]


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

    def __init__(self, **inputs: Any) -> None:
        super().__init__(**inputs)
        self.observe(self._recompute, names=list(self.inputs()))
        self._recompute()

    @classmethod
    def inputs(cls) -> dict[str, Input]:
        """Give the inputs by name, in the order they were written."""
        return _in_order(cls, Input)

    @classmethod
    def numbers(cls) -> dict[str, Number]:
        """Give the numbers worked out, by name, in the order they were written."""
        return _in_order(cls, Number)

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs `v`, with formulas alone."""
        raise NotImplementedError

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as the reader would do it by hand in these units."""
        raise NotImplementedError

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the charts over `v`: the inputs as named parameters, the numbers as chart text."""
        raise NotImplementedError

    def _recompute(self, _change: object = None) -> None:
        values = SimpleNamespace(**{name: getattr(self, name) for name in self.inputs()})
        with self.hold_trait_notifications():
            for name, value in self.compute(values).items():
                self.set_trait(name, value)

    def _chosen(self) -> tuple[choices.Measure, choices.GristUnit]:
        return (
            next(m for m in choices.MEASURES if m.name == self.measure),
            next(g for g in choices.GRIST_UNITS if g.unit == self.grist_unit),
        )

    def say(self, template: str) -> str:
        """Fill a template with the sheet's numbers, as the page does."""
        return fill(template, self._write)

    def _write(self, slot: Slot) -> str:
        dimension = (self.inputs() | self.numbers())[slot.name].dimension
        value = getattr(self, slot.name)
        if dimension not in choices.OWN_UNITS:
            return show(value, slot.digits, up=slot.up)
        measure, grist = self._chosen()
        chosen = {"length": measure.length, "mass": measure.mass, "grist": grist.unit}
        unit = slot.unit or chosen[dimension]
        shown = units.convert(value, choices.OWN_UNITS[dimension], unit)
        text = show(shown, slot.digits, up=slot.up)
        return text if slot.bare else f"{text}\N{NO-BREAK SPACE}{choices.label(unit)}"

    def said(self, lines: Iterable[Line]) -> list[str]:
        """Fill those lines whose condition holds."""
        return [self.say(text) for when, text in lines if when is None or getattr(self, when)]

    @property
    def sentence(self) -> str:
        """The answer in words."""
        return " ".join(self.said(self.answer))

    @property
    def arithmetic(self) -> list[str]:
        """The arithmetic worked through, a line a step."""
        return self.said(self.worked(*self._chosen()))

    def view(self) -> SheetView:
        """Show the sheet as a page; this view and any other move together with the sheet."""
        return SheetView(self)

    def describe(self) -> dict[str, Any]:
        """Describe the whole sheet as plain data: all that a page needs to work by itself."""
        params = {
            name: alt.param(name=name, value=i.default_value) for name, i in self.inputs().items()
        }
        v = SimpleNamespace(**params)
        computed = self.compute(v)
        return {
            "inputs": {name: i.describe() for name, i in self.inputs().items()},
            "numbers": {
                name: {"expr": emit(computed[name]), "dimension": number.dimension}
                for name, number in self.numbers().items()
            },
            "scales": {
                dimension: {unit: [s.factor, s.power] for unit, s in shown.items()}
                for dimension, shown in choices.scales().items()
            },
            "unitLabels": {
                unit: choices.label(unit) for shown in choices.SHOWN.values() for unit in shown
            },
            "measures": [vars(m) for m in choices.MEASURES],
            "gristUnits": [{"unit": g.unit, "name": g.name} for g in choices.GRIST_UNITS],
            "answer": self.answer,
            "worked": {
                f"{m.name}|{g.unit}": list(self.worked(m, g))
                for m in choices.MEASURES
                for g in choices.GRIST_UNITS
            },
            "labels": self.labels,
            "charts": [
                chart.describe(params.values(), self.labels)
                for chart in self.charts(SimpleNamespace(**params, **computed))
            ],
        }


def _in_order(cls: type[traitlets.HasTraits], kind: type[T]) -> dict[str, T]:
    found = {name: trait for name, trait in cls.class_traits().items() if isinstance(trait, kind)}
    return dict(sorted(found.items(), key=lambda item: item[1].order))

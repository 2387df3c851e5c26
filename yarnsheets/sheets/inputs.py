"""What a sheet asks and what it answers: traits that carry their own description."""

from itertools import count
from typing import Any

import traitlets

from yarnsheets.sheets.choices import OWN_UNITS
from yarnsheets.sheets.text import show

_order = count()


class Input(traitlets.Float[float, float]):
    """A number the reader sets, in the sheet's own units.

    Parameters
    ----------
    label
        What it is called on the page.
    dimension
        "length", "mass", "grist", or "number" for one without a unit.
    value, low, high
        The first value and the range accepted, in the sheet's own unit.
    measure
        Where the reader measures it, in a sentence or two.
    step
        How far one step of the slider goes; none makes steps of about one per cent, on a
        slider where equal distances are equal ratios.
    percent
        What to type instead, for a reader who types a percentage.
    """

    def __init__(
        self,
        label: str,
        dimension: str,
        value: float,
        *,
        low: float,
        high: float,
        measure: str,
        step: float | None = None,
        percent: str = "",
    ) -> None:
        super().__init__(value, help=label)
        self.order = next(_order)
        self.label = label
        self.dimension = dimension
        self.low = low
        self.high = high
        self.step = step
        self.measure = measure
        self.percent = percent

    def validate(self, obj: Any, value: Any) -> float:
        """Refuse a number outside the range, in the reader's words."""
        number = float(super().validate(obj, value))
        if not self.low <= number <= self.high:
            unit = OWN_UNITS.get(self.dimension, "")
            msg = (
                f"{self.label} can be {show(self.low)} to {show(self.high)} {unit}".rstrip()
                + f"; {show(number, 6)} is outside that. {self.measure}"
            )
            raise traitlets.TraitError(msg)
        return number

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("label", "dimension", "low", "high", "step", "measure", "percent")
        return {field: getattr(self, field) for field in fields} | {"value": self.default_value}


class Number(traitlets.Any):
    """A number the sheet works out, in the sheet's own units; it cannot be set.

    Parameters
    ----------
    dimension
        As for an input; or "flag" for one that is true or false and never shown.
    help
        What it is.
    """

    def __init__(self, dimension: str, help: str) -> None:  # noqa: A002 - the name traitlets uses
        super().__init__(read_only=True, help=help)
        self.order = next(_order)
        self.dimension = dimension

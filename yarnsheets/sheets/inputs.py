"""What a sheet asks and what it answers: traits that carry their own description."""

from collections.abc import Mapping, Sequence
from itertools import count
from typing import Any

import traitlets

from yarnsheets.sheets.choices import OWN_UNITS, label
from yarnsheets.sheets.text import show

_order = count()


class _Described(traitlets.TraitType[Any, Any]):
    """What inputs and answers share: they keep the order they were written in."""

    dimension = "number"

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.order = next(_order)


class Asked(_Described):
    """What the reader is asked for.

    Every kind has a `title`, what it is called on the page; a `dimension`, one of
    `choices.OWN_UNITS` or "number" for one without a unit; `measure`, which tells in a sentence
    or two where it comes from; and `more`, which folds it away with the finer points.
    """

    kind = ""
    title: str
    measure: str
    more: bool

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("kind", "title", "dimension", "measure", "more")
        return {field: getattr(self, field) for field in fields}


class Input(Asked, traitlets.Float[float, float]):
    """A number the reader sets, in the sheet's own units.

    `low` and `high` bound what is accepted. `step` is how far one step of the slider goes; none
    makes steps of about one per cent, on a slider where equal distances are equal ratios.
    `percent` is what to say to a reader who types a percentage.
    """

    kind = "number"

    def __init__(
        self,
        title: str,
        dimension: str,
        value: float,
        *,
        low: float,
        high: float,
        measure: str,
        step: float | None = None,
        percent: str = "",
        more: bool = False,
    ) -> None:
        super().__init__(value, help=title)
        self.title = title
        self.dimension = dimension
        self.low = low
        self.high = high
        self.step = step
        self.measure = measure
        self.percent = percent
        self.more = more

    def validate(self, obj: Any, value: Any) -> float:
        """Refuse a number outside the range, in the reader's words."""
        number = float(super().validate(obj, value))
        if not self.low <= number <= self.high:
            raise traitlets.TraitError(_outside(self, number))
        return number

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("low", "high", "step", "percent")
        return super().describe() | {field: getattr(self, field) for field in fields}


class Readings(Asked, traitlets.List[float]):
    """Several measurements of one kind, a line each on the page."""

    kind = "readings"

    def __init__(
        self,
        title: str,
        dimension: str,
        values: Sequence[float],
        *,
        low: float,
        high: float,
        measure: str,
        more: bool = False,
    ) -> None:
        super().__init__(traitlets.Float(), default_value=list(values), help=title)
        self.title = title
        self.dimension = dimension
        self.low = low
        self.high = high
        self.measure = measure
        self.more = more

    def validate(self, obj: Any, value: Any) -> list[float]:
        """Refuse a reading outside the range, in the reader's words."""
        numbers = [float(number) for number in super().validate(obj, value) or ()]
        for number in numbers:
            if not self.low <= number <= self.high:
                raise traitlets.TraitError(_outside(self, number))
        return numbers

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        return super().describe() | {"low": self.low, "high": self.high}


class Pick(Asked, traitlets.Enum[str]):
    """One of several: what is kept, and what the page calls it."""

    kind = "pick"

    def __init__(
        self, title: str, options: Mapping[str, str], *, measure: str, more: bool = False
    ) -> None:
        super().__init__(list(options), default_value=next(iter(options)), help=title)
        self.title = title
        self.options = dict(options)
        self.measure = measure
        self.more = more

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        return super().describe() | {"options": self.options}


class Words(Asked, traitlets.Unicode[str, str]):
    """A short text of the reader's own, such as a currency or a name."""

    kind = "words"

    def __init__(self, title: str, value: str, *, measure: str, more: bool = False) -> None:
        super().__init__(value, help=title)
        self.title = title
        self.measure = measure
        self.more = more


class Number(_Described, traitlets.Any):
    """A number the sheet works out by formulas, in its own units; it cannot be set.

    A `dimension` of "flag" is one that is true or false and never shown; "money" keeps its
    hundredths.
    """

    def __init__(self, dimension: str, help: str) -> None:  # noqa: A002 - the name traitlets uses
        super().__init__(read_only=True, help=help)
        self.dimension = dimension


class Result(Number):
    """What only Python can work out: the page waits for it. A dimension of "word" is text."""


class Table(_Described, traitlets.List[Any]):
    """Rows for a chart that only Python can work out, in the sheet's own units."""

    def __init__(self, help: str) -> None:  # noqa: A002 - the name traitlets uses
        super().__init__(read_only=True, help=help)


def _outside(asked: "Input | Readings", number: float) -> str:
    unit = label(OWN_UNITS.get(asked.dimension, ""))
    return (
        f"{asked.title} can be {show(asked.low)} to {show(asked.high)} {unit}".rstrip()
        + f"; {show(number, 6)} is outside that. {asked.measure}"
    )

"""What a sheet asks and what it finds: traits that carry their own description."""

from collections.abc import Callable, Mapping, Sequence
from itertools import count
from typing import Any, ClassVar

import traitlets

from yarnsheets.page import choices
from yarnsheets.page.reading import is_in_part, not_whole, outside, takes

_order = count()


class _Described(traitlets.TraitType[Any, Any]):
    """What inputs and findings share: they keep the order they were written in."""

    dimension = "number"

    def __init__(self, *args: Any, **kwargs: Any) -> None:
        super().__init__(*args, **kwargs)
        self.order = next(_order)


class Asked(_Described):
    """What the reader is asked for.

    Every kind has a `title`, what it is called on the page; a `dimension`, one of
    `choices.OWN_UNITS` or "number" for one without a unit; `measure`, which tells in a sentence
    or two where it comes from; and `drawing`, which shows that. `rules` are those of reading and
    writing that only this kind has.
    """

    kind = ""
    rules: ClassVar[tuple[Callable[..., Any], ...]] = ()
    title: str
    measure: str
    drawing: str

    def tell(self, title: str, measure: str, *, drawing: str = "") -> None:
        """Take what every kind has."""
        self.title = title
        self.measure = measure
        self.drawing = drawing

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("kind", "title", "dimension", "measure", "drawing")
        return {
            **{field: getattr(self, field) for field in fields},
            "default": self.default_value,
        }


class _Bounded(Asked):
    """A number, or several, within a range."""

    low: float
    high: float

    def refuse(self, number: float) -> None:
        """Refuse a number that the input cannot be, in the reader's words."""
        asked = self.describe()
        if takes(asked, number):
            return
        if is_in_part(asked, number):
            raise traitlets.TraitError(not_whole(asked, number, choices.OWN))
        msg = f"{outside(asked, number, choices.OWN)} {self.measure}"
        raise traitlets.TraitError(msg)


class Input(_Bounded, traitlets.Float[float, float]):
    """A number the reader sets, in the sheet's own units.

    `low` and `high` bound what is accepted. `step` is how far one step of the slider goes; none
    makes steps of about one per cent, on a slider where equal distances are equal ratios. A count,
    a "number" with steps of 1, is always whole.
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
        drawing: str = "",
    ) -> None:
        super().__init__(value, help=title)
        self.tell(title, measure, drawing=drawing)
        self.dimension = dimension
        self.low = low
        self.high = high
        self.step = step
        self.percent = percent

    def validate(self, obj: Any, value: Any) -> float:
        """Refuse a number that the input cannot be, in the reader's words."""
        number = float(super().validate(obj, value))
        self.refuse(number)
        return number

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("low", "high", "step", "percent")
        return super().describe() | {field: getattr(self, field) for field in fields}


class Draw(Input):
    """The number of a draw: a box, and a button that says `another` and takes the next one."""

    kind = "draw"

    def __init__(self, title: str, *, last: int, another: str, measure: str) -> None:
        super().__init__(title, "number", 1, low=1, high=last, step=1, measure=measure)
        self.another = another

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        return super().describe() | {"another": self.another}


class Blank(_Bounded, traitlets.Float[float | None, float | None]):
    """A number that the reader may give, such as an answer; until then it is None.

    `anew` names the inputs, or "measure", by which a page makes it blank again.
    """

    kind = "blank"

    def __init__(
        self,
        title: str,
        dimension: str,
        *,
        low: float,
        high: float,
        measure: str,
        anew: tuple[str, ...],
    ) -> None:
        super().__init__(None, allow_none=True, help=title)
        self.tell(title, measure)
        self.dimension = dimension
        self.low = low
        self.high = high
        self.anew = anew

    def validate(self, obj: Any, value: Any) -> float | None:
        """Refuse a number that the input cannot be, in the reader's words."""
        if value is None:
            return None
        number = float(super().validate(obj, value) or 0)
        self.refuse(number)
        return number

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("low", "high", "anew")
        return super().describe() | {field: getattr(self, field) for field in fields}


class Readings(_Bounded, traitlets.List[float]):
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
        drawing: str = "",
    ) -> None:
        super().__init__(traitlets.Float(), default_value=list(values), help=title)
        self.tell(title, measure, drawing=drawing)
        self.values = [float(value) for value in values]
        self.dimension = dimension
        self.low = low
        self.high = high

    def validate(self, obj: Any, value: Any) -> list[float]:
        """Refuse a reading that cannot be, in the reader's words."""
        numbers = [float(number) for number in super().validate(obj, value) or ()]
        for number in numbers:
            self.refuse(number)
        return numbers

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        return super().describe() | {"low": self.low, "high": self.high, "default": self.values}


class Pairs(Asked, traitlets.List[Any]):
    """Pairs of measurements taken together, such as a row and what was left after it."""

    kind = "pairs"
    dimension = "pair"

    def __init__(
        self,
        title: str,
        parts: tuple[Input, Input],
        pairs: Sequence[tuple[float, float]],
        *,
        measure: str,
        drawing: str = "",
    ) -> None:
        self.parts = parts
        self.pairs = [[float(each) for each in pair] for pair in pairs]
        super().__init__(default_value=self.pairs, help=title)
        self.tell(title, measure, drawing=drawing)

    def validate(self, obj: Any, value: Any) -> list[list[float]]:
        """Refuse what is no pair, or a part of one that cannot be, in the reader's words."""
        pairs = [[float(each) for each in pair] for pair in super().validate(obj, value) or ()]
        for pair in pairs:
            if len(pair) != len(self.parts):
                msg = f"{self.title}: give two numbers for each, as (48, 0.18)."
                raise traitlets.TraitError(msg)
            for part, number in zip(self.parts, pair, strict=True):
                part.refuse(number)
        return pairs

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        parts = [part.describe() for part in self.parts]
        return super().describe() | {"parts": parts, "default": self.pairs}


class Pick(Asked, traitlets.Enum[str]):
    """One of several: what is kept, and what the page calls it.

    A button beside it says `another`, if that is given, and takes the next one. `anew` names the
    inputs by which a page takes the first one again.
    """

    kind = "pick"

    def __init__(
        self,
        title: str,
        options: Mapping[str, str],
        *,
        measure: str,
        another: str = "",
        anew: tuple[str, ...] = (),
    ) -> None:
        super().__init__(list(options), default_value=next(iter(options)), help=title)
        self.tell(title, measure)
        self.options = dict(options)
        self.another = another
        self.anew = anew

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        fields = ("options", "another", "anew")
        return super().describe() | {field: getattr(self, field) for field in fields}


class Words(Asked, traitlets.Unicode[str, str]):
    """A short text of the reader's own, such as a currency or a name."""

    kind = "words"

    def __init__(self, title: str, value: str, *, measure: str) -> None:
        super().__init__(value, help=title)
        self.tell(title, measure)


class Group(_Described):
    """A heading: what is asked below it, up to the next, is measured or decided together.

    What stands above the first heading is beside the charts, the groups are under them. One that
    only refines the answer is `folded` at first.
    """

    def __init__(self, title: str, *, folded: bool = False) -> None:
        super().__init__(None, read_only=True, help=title)
        self.folded = folded

    def describe(self) -> dict[str, Any]:
        """Describe the heading as the page reads it."""
        return {"title": self.help, "folded": self.folded}


class Found(_Described, traitlets.Any):
    """What the sheet works out, in its own units; it cannot be set.

    A `dimension` of "flag" is something true or false and never shown, "word" is text, "template"
    is text with slots, and "money" keeps its hundredths. Where there is no answer it is `empty`.
    """

    def __init__(self, dimension: str, help: str) -> None:  # noqa: A002 - the name traitlets uses
        super().__init__(read_only=True, help=help)
        self.dimension = dimension
        self.empty: Any = {"flag": False, "word": "", "template": ""}.get(dimension, float("nan"))

    def describe(self) -> dict[str, Any]:
        """Describe what was found as the page reads it."""
        return {"dimension": self.dimension, "what": self.help}


class Table(_Described, traitlets.List[Any]):
    """Rows for a chart, in the sheet's own units."""

    def __init__(self, help: str) -> None:  # noqa: A002 - the name traitlets uses
        super().__init__(read_only=True, help=help)
        self.empty: list[Any] = []

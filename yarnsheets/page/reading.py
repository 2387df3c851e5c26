"""What a reader types, read or refused in the reader's words; and the round steps of a slider.

`asked` is an input as `Asked.describe` gives it.
"""

import math
from collections.abc import Mapping
from typing import Any

from yarnsheets.page.text import Shown, behind, show, to_own, to_shown
from yarnsheets.units import number_in

Described = Mapping[str, Any]


def read_number(asked: Described, text: str, shown: Shown) -> tuple[float | None, str]:
    """Read a number typed in the unit shown: in the sheet's own unit, or what is wrong with it."""
    text = text.strip()
    if text.endswith("%"):
        if asked.get("percent"):
            return None, asked["percent"]
        text = text.removesuffix("%").strip()
    value, wrong = _read(asked, text, shown)
    if value is not None and asked.get("step") == 1:
        value = float(math.floor(value + 0.5))
    return value, wrong


def read_lines(asked: Described, text: str, shown: Shown) -> tuple[list[float] | None, str]:
    """Read numbers typed a line each."""
    values = []
    for at, line in enumerate(text.split("\n"), start=1):
        if line.strip():
            value, wrong = _read(asked, line.strip(), shown)
            if value is None:
                return None, f"Line {at}: {wrong}"
            values.append(value)
    return values, ""


def _read(asked: Described, text: str, shown: Shown) -> tuple[float | None, str]:
    number = number_in(text)
    if math.isfinite(number):
        value = _own(asked, number, shown)
        if asked["low"] <= value <= asked["high"]:
            return value, ""
        for end in (asked["low"], asked["high"]):  # as the range is told, it is within it
            if show(number) == show(_shown(asked, end, shown)):
                return end, ""
        return None, outside(asked, number, shown)
    if not text:
        return None, f"Type a number here. {_range(asked, shown)}"
    return None, f"“{text}” is not a number such as 12, 9.5 or 9 3/8. {_range(asked, shown)}"


def outside(asked: Described, number: float, shown: Shown) -> str:
    """Say that a shown number is outside what an input can be."""
    return (
        f"{show(number, 6)}{_unit(asked, shown)} is outside the range. {_range(asked, shown)}"
        " Check the unit, or measure again."
    )


def written(asked: Described, value: float, shown: Shown) -> str:
    """Write a number as it stands in its box, where the reader goes on typing."""
    return show(_shown(asked, value, shown), 6).replace(",", "")


def round_step(value: float) -> float:
    """Give the round step, 1, 2 or 5 times a power of ten, at or below a number.

    >>> round_step(0.7), round_step(23)
    (0.5, 20.0)
    """
    ten = 10.0 ** math.floor(math.log10(value) + 1e-9)
    for times in (5, 2):
        if value / ten >= times * (1 - 1e-9):
            return ten * times
    return ten


def round_above(value: float) -> float:
    """Give the round number at or above one, for the end of an axis.

    >>> round_above(120), round_above(200.0)
    (200.0, 200.0)
    """
    if not value > 0 or not math.isfinite(value):
        return 1
    step = round_step(value)
    return step if value <= step * (1 + 1e-9) else round_step(step * 2.5)


def _range(asked: Described, shown: Shown) -> str:
    low, high = sorted(_shown(asked, asked[end], shown) for end in ("low", "high"))
    return f"{asked['title']} can be {show(low)} to {show(high)}{_unit(asked, shown)}."


def _unit(asked: Described, shown: Shown) -> str:
    if asked["dimension"] not in shown.scales:
        return ""
    return behind(shown.units[asked["dimension"]], shown)


def _shown(asked: Described, value: float, shown: Shown) -> float:
    dimension = asked["dimension"]
    if dimension not in shown.scales:
        return value
    return to_shown(value, dimension, shown.units[dimension], shown)


def _own(asked: Described, value: float, shown: Shown) -> float:
    dimension = asked["dimension"]
    if dimension not in shown.scales:
        return value
    return to_own(value, dimension, shown.units[dimension], shown)

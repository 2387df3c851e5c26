"""What a reader types, read or refused in the reader's words; and the round steps of a slider.

`asked` is an input as `Asked.describe` gives it. A number may have its unit behind it, as "85 g" or
"9.4 in"; without one it is in the unit shown.
"""

import math
import re
from collections.abc import Mapping
from typing import Any

from yarnsheets.page.text import Shown, behind, show, to_own, to_shown
from yarnsheets.units import number_in

Described = Mapping[str, Any]

# A unit begins at the first letter, inch sign or per cent sign behind the number.
_TYPED = re.compile(r"""([^A-Za-z%"\u2033]*)((?:.|\n)*)""")

# Other spellings of units, beside their names and what the page calls them.
_SPELT = {
    "ounce": "oz",
    "ounces": "oz",
    "lbs": "lb",
    "pound": "lb",
    "pounds": "lb",
    "gram": "g",
    "grams": "g",
    "gr": "g",
    "kilo": "kg",
    "kilos": "kg",
    "yds": "yd",
    "yard": "yd",
    "yards": "yd",
    "metre": "m",
    "metres": "m",
    "meter": "m",
    "meters": "m",
    "feet": "ft",
    "foot": "ft",
    "inch": "in",
    "inches": "in",
    '"': "in",
    "\u2033": "in",
    "centimetres": "cm",
    "centimeters": "cm",
    "millimetres": "mm",
    "millimeters": "mm",
    "%": "percent",
    "ypp": "yd/lb",
    "yards per pound": "yd/lb",
    "yards per ounce": "yd/oz",
    "nm": "metric_count",
    "wpi": "1/in",
    "tpi": "1/in",
    "epi": "1/in",
}

_PAIR = re.compile(r"(\S+?)(?:\s*[,:]\s+|\s+|:)(\S.*)")

_MOST_SAID = 40  # letters of what was typed that a refusal repeats


def read_number(asked: Described, text: str, shown: Shown) -> tuple[float | None, str]:
    """Read a number as typed: in the sheet's own unit, or what is wrong with it.

    Nothing is wrong with a blank that is left empty.
    """
    text = text.strip()
    if not text and asked.get("kind") == "blank":
        return None, ""
    if text.endswith("%") and asked.get("percent"):
        return None, asked["percent"]
    return _read(asked, text, shown)


def read_lines(asked: Described, text: str, shown: Shown) -> tuple[list[float] | None, str]:
    """Read several numbers, typed a line each or with commas, semicolons or tabs between."""
    values = []
    for at, entry in enumerate(_entries(text), start=1):
        value, wrong = _read(asked, entry, shown)
        if value is None:
            return None, f"Number {at}: {wrong}"
        values.append(value)
    return values, ""


def read_pairs(asked: Described, text: str, shown: Shown) -> tuple[list[list[float]] | None, str]:
    """Read pairs of numbers, typed a line each, with a space, tab, comma or colon inside."""
    pairs = []
    for at, line in enumerate(_lines(text), start=1):
        found = _PAIR.fullmatch(line)
        if found is None:
            first, second = (part["title"].lower() for part in asked["parts"])
            return None, f"Line {at}: “{_short(line)}” is not two numbers, {first} and {second}."
        pair = []
        for part, typed in zip(asked["parts"], (found[1], found[2]), strict=True):
            value, wrong = _read(part, typed, shown)
            if value is None:
                return None, f"Line {at}: {wrong}"
            pair.append(value)
        pairs.append(pair)
    return pairs, ""


def _lines(text: str) -> list[str]:
    lines = text.replace(";", "\n").split("\n")
    return [line.strip() for line in lines if line.strip()]


def _entries(text: str) -> list[str]:
    """Part what is typed into numbers; a comma parts them where it is no mark inside one."""
    for between in (", ", ";", "\t"):
        text = text.replace(between, "\n")
    entries = []
    for line in text.split("\n"):
        number, unit = _parted(line.strip())
        is_one = "," not in unit and math.isfinite(number_in(number))
        entries.extend([line] if is_one else line.split(","))
    return [entry.strip() for entry in entries if entry.strip()]


def _parted(text: str) -> tuple[str, str]:
    """Part a number from the unit behind it."""
    found = _TYPED.fullmatch(text)
    assert found is not None
    return found[1], found[2]


def _read(asked: Described, text: str, shown: Shown) -> tuple[float | None, str]:
    if not text:
        return None, f"Type a number here. {_range(asked, shown)}"
    typed, spelt = _parted(text)
    number = number_in(typed)
    if not math.isfinite(number):
        return None, f"“{_short(text)}” is not a number such as 12, 9.5 or 9 3/8. " + _range(
            asked, shown
        )
    if spelt:
        unit = unit_named(spelt, asked["dimension"], shown)
        if unit is None:
            return None, f"“{_short(spelt)}” is not a unit of this number. {_range(asked, shown)}"
        value = to_own(number, asked["dimension"], unit, shown)
        number = _shown(asked, value, shown)
    else:
        value = _own(asked, number, shown)
    if is_in_part(asked, value):
        return None, not_whole(asked, value, shown)
    if takes(asked, value):
        return value, ""
    for end in (asked["low"], asked["high"]):  # as the range is told, it is within it
        if show(number) == show(_shown(asked, end, shown)):
            return end, ""
    return None, outside(asked, number, shown)


def unit_named(spelt: str, dimension: str, shown: Shown) -> str | None:
    """Give the unit of a dimension that is meant by what was typed; none if there is no such."""
    if dimension not in shown.scales:
        return None
    plain = _plain(spelt)
    plain = _SPELT.get(plain, plain)
    for unit in shown.scales[dimension]:
        if plain in (unit, _plain(shown.labels[unit])):
            return unit
    return None


def _plain(unit: str) -> str:
    words = " ".join(unit.replace("\N{NO-BREAK SPACE}", " ").lower().split())
    return words.rstrip(".").replace(" / ", "/").replace("/ ", "/").replace("100 g", "100g")


def _short(text: str) -> str:
    return text if len(text) <= _MOST_SAID else text[:_MOST_SAID] + "…"


def takes(asked: Described, value: float) -> bool:
    """Tell whether a number, in the sheet's own unit, is one that an input can be."""
    return bool(asked["low"] <= value <= asked["high"]) and not is_in_part(asked, value)


def is_in_part(asked: Described, value: float) -> bool:
    """Tell whether a number is not whole, where only whole ones make sense."""
    return asked.get("step") == 1 and asked["dimension"] == "number" and value % 1 != 0


def not_whole(asked: Described, number: float, shown: Shown) -> str:
    """Say that a number must be whole."""
    return f"{show(number, 6)} is not a whole number. {_range(asked, shown)}"


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

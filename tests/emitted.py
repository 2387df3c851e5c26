"""Runs the text that charts compute with, in Python, to hold it against the plain result."""

import math
import re
from collections.abc import Mapping
from typing import Any

_WORDS = {
    "pow": pow,
    "max": max,
    "min": min,
    "if_": lambda test, yes, no: yes if test else no,
    "sqrt": math.sqrt,
    "ceil": math.ceil,
    "floor": math.floor,
    "atan": math.atan,
    "sin": math.sin,
}


class Row:
    """A row of data, read as `datum.field`."""

    def __init__(self, fields: Mapping[str, Any]) -> None:
        self.__dict__.update(fields)


def run(text: str, values: Mapping[str, Any], row: Mapping[str, Any] | None = None) -> Any:
    """Work out emitted text with the given parameters, for one row of data."""
    python = re.sub(r"\bif\(", "if_(", text).replace("===", "==")
    names = {**_WORDS, **values, "datum": Row(row or {})}
    return eval(python, {"__builtins__": {}}, names)  # noqa: S307 - our own emitted text


def names_in(text: str) -> set[str]:
    """Give the parameters that emitted text reads."""
    bare = re.sub(r"datum\.\w+|'[^']*'|\"[^\"]*\"", "", text)
    return set(re.findall(r"\b[A-Za-z_]\w*", bare)) - set(_WORDS) - {"if", "true", "false", "null"}

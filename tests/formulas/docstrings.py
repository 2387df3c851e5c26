"""Read the docstring of a formula: its sections, and the unit of each parameter and result."""

import inspect
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

_HEADING = re.compile(r"^(\w+)\n-+$", re.MULTILINE)
_ENTRY = re.compile(r"^(\w+) : (\w+)\n((?:    .*\n?)+)", re.MULTILINE)
_UNIT = re.compile(r"\[([^\[\]]+)\]\s*\Z")


@dataclass(frozen=True)
class Docstring:
    """What the tests ask of a docstring."""

    opening: str
    sections: dict[str, str]
    types: dict[str, str]
    units: dict[str, str | None]
    result_unit: str | None


def read_docstring(formula: Callable[..., Any]) -> Docstring:
    """Return the parts of a formula's docstring; a unit that is not there is None."""
    text = inspect.getdoc(formula) or ""
    opening, *parts = _HEADING.split(text)
    sections = {head: body.strip("\n") for head, body in zip(parts[::2], parts[1::2], strict=True)}
    entries = _ENTRY.findall(sections.get("Parameters", ""))
    return Docstring(
        opening=opening.strip(),
        sections=sections,
        types={name: kind for name, kind, _ in entries},
        units={name: _last_unit(text) for name, _, text in entries},
        result_unit=_last_unit(sections.get("Returns", "")),
    )


def _last_unit(text: str) -> str | None:
    found = _UNIT.search(text)
    return found[1] if found else None

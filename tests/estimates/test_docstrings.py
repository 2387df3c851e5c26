"""What holds for every function of the statistics layer: its docstring, its errors, its imports."""

import inspect
import re
import subprocess
import sys
from collections.abc import Callable
from typing import Any

import pytest

from tests.formulas.docstrings import read_docstring
from yarnsheets import estimates
from yarnsheets.units import registry

ORDER = ["Parameters", "Returns", "Raises", "Range", "Source", "Examples"]
FUNCTIONS = [
    name
    for name in estimates.__all__
    if inspect.isfunction(inspect.unwrap(getattr(estimates, name)))  # a cached one too
]
# a hint is a sentence: it has no formula and no unit, and refuses nothing
HINTS = [name for name in FUNCTIONS if name.startswith("unlikely_")]
RESULTS = [name for name in FUNCTIONS if name not in HINTS]


def function(name: str) -> Callable[..., Any]:
    found = getattr(estimates, name)
    assert callable(found)
    return found  # type: ignore[no-any-return]


def test_there_are_hints_and_results() -> None:
    assert len(HINTS) == 9
    assert len(RESULTS) == 32


@pytest.mark.parametrize("name", RESULTS)
def test_a_result_has_all_sections_and_its_formula(name: str) -> None:
    parts = read_docstring(function(name))
    assert list(parts.sections) == ORDER
    sentence, formula = parts.opening.split("\n\n")[:2]
    assert re.fullmatch(r"Return [^.\n]+\.", sentence)
    assert re.fullmatch(r"``[\w ]+ = .+``", formula)
    assert parts.result_unit is not None
    assert registry().Unit(parts.result_unit) is not None


@pytest.mark.parametrize("name", HINTS)
def test_a_hint_has_its_sections_in_the_same_order(name: str) -> None:
    parts = read_docstring(function(name))
    assert list(parts.sections) == [head for head in ORDER if head not in {"Raises", "Range"}]
    assert re.fullmatch(r"Return [^.\n]+\.", parts.opening)


@pytest.mark.parametrize("name", FUNCTIONS)
def test_parameters_are_those_of_the_signature_with_their_units(name: str) -> None:
    parts = read_docstring(function(name))
    assert list(parts.types) == list(inspect.signature(function(name)).parameters)
    for each, unit in parts.units.items():
        assert unit is not None, f"{each} has no [unit]"
        for one in unit.split(" or "):
            assert registry().Unit(one) is not None


@pytest.mark.parametrize("name", FUNCTIONS)
def test_names_a_source_and_calls_itself_in_its_example(name: str) -> None:
    sections = read_docstring(function(name)).sections
    assert re.search(
        r"\d{4}|NIST|no source|Geometry|[Ff]ollows from|As `cuts_needed`|ASTM", sections["Source"]
    )
    assert re.search(rf"\b{name}\(", sections["Examples"])


def test_loads_neither_charts_nor_widgets_nor_slow_statistics() -> None:
    code = "import sys, yarnsheets.estimates; print(*sys.modules)"
    loaded = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True
    ).stdout.split()
    assert "yarnsheets.estimates.budget" in loaded
    assert not {"altair", "ipywidgets", "numpy", "pandas", "pint", "scipy"} & set(loaded)

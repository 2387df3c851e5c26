"""The docstring of a formula is a promise: these tests read it and hold the formula to it."""

import ast
import doctest
import inspect
import re
from collections.abc import Callable
from typing import Any

import pytest

from tests.formulas.docstrings import read_docstring
from yarnsheets import formulas
from yarnsheets.units import registry

Formula = Callable[..., Any]
ORDER = ["Parameters", "Returns", "Raises", "Range", "Source", "Examples"]

every_formula = pytest.mark.parametrize(
    "formula", [getattr(formulas, name) for name in formulas.__all__], ids=formulas.__all__
)


def arguments(formula: Formula, odd_one: str, odd_value: float | None) -> list[Any]:
    """Return arguments all 0.5, but for one; a sequence has it as its second member."""
    types = read_docstring(formula).types
    return [
        value if types[name] == "Value" else [0.5, value]
        for name in types
        for value in [odd_value if name == odd_one else 0.5]
    ]


def raised(formula: Formula, odd_one: str, odd_value: float | None) -> type[Exception] | None:
    try:
        formula(*arguments(formula, odd_one, odd_value))
    except (TypeError, ZeroDivisionError) as error:
        return type(error)
    return None


@every_formula
def test_sections_stand_in_one_order(formula: Formula) -> None:
    assert list(read_docstring(formula).sections) == ORDER


@every_formula
def test_opens_with_one_sentence_and_the_formula(formula: Formula) -> None:
    sentence, formula_line = read_docstring(formula).opening.split("\n\n")
    assert re.fullmatch(r"Return [^.\n]+\.", sentence)
    assert re.fullmatch(r"``\w+ = .+``", formula_line)


@every_formula
def test_parameters_are_those_of_the_signature(formula: Formula) -> None:
    signature = inspect.signature(formula)
    types = read_docstring(formula).types
    assert list(types) == list(signature.parameters)
    sequences = {name for name, each in signature.parameters.items() if each.annotation is not Any}
    assert {name for name, kind in types.items() if kind == "Values"} == sequences


@every_formula
def test_every_value_has_a_unit_that_pint_reads(formula: Formula) -> None:
    parts = read_docstring(formula)
    for name, unit in {**parts.units, "the result": parts.result_unit}.items():
        assert unit is not None, f"{name} has no [unit]"
        assert registry().Unit(unit) is not None


@every_formula
def test_every_value_has_a_shape(formula: Formula) -> None:
    sections = read_docstring(formula).sections
    shapes = re.findall(
        r"a number or a column|a sequence of numbers or of columns", _flat(sections)
    )
    assert len(shapes) == len(inspect.signature(formula).parameters)
    assert re.search(r"of the (inputs'|input's) shape|of the shape of one", sections["Returns"])


@every_formula
def test_has_a_source_and_a_range(formula: Formula) -> None:
    sections = read_docstring(formula).sections
    assert re.search(
        r"\d{4}|19th century|6th edition|Woodhouse|no source|definition", sections["Source"]
    )
    assert len(sections["Range"]) > 20


@every_formula
def test_has_one_doctest_that_calls_it(formula: Formula) -> None:
    (example,) = doctest.DocTestParser().get_examples(formula.__doc__ or "")
    assert example.source.startswith(f"{formula.__name__}(")
    assert isinstance(ast.literal_eval(example.want), float)


@every_formula
def test_raises_what_it_says_when_a_value_is_missing(formula: Formula) -> None:
    assert "TypeError" in read_docstring(formula).sections["Raises"]
    for name in inspect.signature(formula).parameters:
        assert raised(formula, name, None) is TypeError, name


@every_formula
def test_raises_what_it_says_when_a_value_is_zero(formula: Formula) -> None:
    divides = {
        name
        for name in inspect.signature(formula).parameters
        if raised(formula, name, 0.0) is ZeroDivisionError
    }
    said = read_docstring(formula).sections["Raises"]
    if formula in (formulas.take_up_from_retraction, formulas.regain_from_content):
        assert not divides  # the divisor is 0 at 1, tested below
    else:
        assert ("ZeroDivisionError" in said) == bool(divides)
        assert set(re.findall(r"`(\w+)`", said)) <= divides


def test_a_retraction_of_all_the_length_cannot_be() -> None:
    with pytest.raises(ZeroDivisionError):
        formulas.take_up_from_retraction(1)


def test_a_content_of_nothing_but_water_cannot_be() -> None:
    with pytest.raises(ZeroDivisionError):
        formulas.regain_from_content(1)


def test_singles_and_take_ups_must_match_in_number() -> None:
    with pytest.raises(ValueError, match="shorter"):
        formulas.plied_grist_unequal([1000, 2000], [1])
    with pytest.raises(ValueError, match="longer"):
        formulas.missing_single_grist(500, [1000], [1, 1], 1)


def _flat(sections: dict[str, str]) -> str:
    return re.sub(r"\s+", " ", sections["Parameters"])

"""One table of cases, run over every kind of number that a formula must serve."""

import ast
import inspect
import re
import subprocess
import sys
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import altair as alt
import numpy as np
import pandas as pd
import pytest
from altair.expr.core import Expression
from altair.vegalite.v6.api import ParameterExpression
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat
from uncertainties.core import AffineScalarFunc

from tests.emitted import run
from tests.formulas.cases import CASES, KINDS, Case
from tests.formulas.docstrings import read_docstring
from tests.javascript import compiled, in_javascript
from yarnsheets import formulas
from yarnsheets.page.expressions import emit
from yarnsheets.units import registry

EXACTLY = 1e-12  # relative: the expected values are exact, the arithmetic is in double precision
COLUMN = (1.0, 1.01, 0.99)  # a column holds each argument at these multiples

every_case = pytest.mark.parametrize("case", CASES, ids=str)


def each(args: tuple[Any, ...], change: Callable[[float], Any]) -> list[Any]:
    """Return the arguments, each number changed, also those inside a sequence."""
    return [[change(x) for x in a] if isinstance(a, tuple) else change(a) for a in args]


def multiples(case: Case) -> list[float]:
    """Return the plain result for each row of a column; the first is the expected value."""
    plain = [case.formula(*each(case.args, multiple.__mul__)) for multiple in COLUMN[1:]]
    return [case.expected, *plain]


# --- the table itself ---


def test_every_formula_has_a_case() -> None:
    assert {case.name for case in CASES} == set(formulas.__all__)


@every_case
def test_every_case_says_where_it_is_from(case: Case) -> None:
    assert case.origin.split(":")[0] in KINDS


# --- every kind of number ---


@every_case
def test_float(case: Case) -> None:
    result = case.formula(*case.args)
    assert type(result) is float
    assert result == pytest.approx(case.expected, rel=EXACTLY)


@every_case
def test_fraction(case: Case) -> None:
    """A fraction stays one, unless the formula has a root or pi in it."""
    result = case.formula(*each(case.args, Fraction))
    opening = read_docstring(getattr(formulas, case.name)).opening
    irrational = re.search(r"\bpi\b|\*\* 0\.5", opening)
    assert type(result) is (float if irrational else Fraction)
    assert float(result) == pytest.approx(case.expected, rel=EXACTLY)


@every_case
def test_numpy(case: Case) -> None:
    result = case.formula(*each(case.args, lambda x: x * np.array(COLUMN)))
    assert type(result) is np.ndarray
    assert result.dtype == np.float64
    assert result.tolist() == pytest.approx(multiples(case), rel=EXACTLY)


@every_case
def test_pandas(case: Case) -> None:
    rows = ["first skein", "second skein", "third skein"]
    result = case.formula(*each(case.args, lambda x: x * pd.Series(COLUMN, index=rows)))
    assert type(result) is pd.Series
    assert list(result.index) == rows
    assert result.tolist() == pytest.approx(multiples(case), rel=EXACTLY)


@every_case
def test_pint(case: Case) -> None:
    parts = read_docstring(getattr(formulas, case.name))
    quantities = [
        [registry().Quantity(x, unit) for x in arg]
        if isinstance(arg, tuple)
        else registry().Quantity(arg, unit)
        for arg, unit in zip(case.args, parts.units.values(), strict=True)
    ]
    result = case.formula(*quantities)
    assert isinstance(result, registry().Quantity)
    assert result.units == registry().Unit(parts.result_unit or "")
    assert result.magnitude == pytest.approx(case.expected, rel=EXACTLY)


@every_case
def test_uncertain(case: Case) -> None:
    """Each number is uncertain by 1 in 1000; the spread must follow the slopes of the formula."""
    numbers = [x for arg in case.args for x in (arg if isinstance(arg, tuple) else (arg,))]
    result = case.formula(*each(case.args, lambda x: ufloat(x, abs(x) / 1000)))
    assert isinstance(result, AffineScalarFunc)
    assert result.nominal_value == pytest.approx(case.expected, rel=EXACTLY)
    effects = [slope(case, i) * x / 1000 for i, x in enumerate(numbers)]
    spread = sum(effect**2 for effect in effects) ** 0.5
    assert spread > 0
    assert result.std_dev / result.nominal_value == pytest.approx(spread / case.expected, rel=1e-6)


def slope(case: Case, which: int) -> float:
    """Return the slope for one number, from two calls with plain floats on either side of it."""

    def at(step: float) -> float:
        counter = iter(range(100))
        moved = each(case.args, lambda x: x * (1 + step) if next(counter) == which else x)
        return float(case.formula(*moved))

    numbers = [x for arg in case.args for x in (arg if isinstance(arg, tuple) else (arg,))]
    return (at(1e-5) - at(-1e-5)) / (2e-5 * float(numbers[which]))


@every_case
def test_altair_param(case: Case) -> None:
    """The text that a chart computes with gives in Python what the formula gives."""
    result, values = emitted(case, lambda name, x: alt.param(name=name, value=x))
    assert type(result) is ParameterExpression
    answer = run(emit(result), values)
    assert answer == pytest.approx(case.formula(*case.args), rel=1e-15)
    assert answer == pytest.approx(case.expected, rel=EXACTLY)


@every_case
def test_altair_datum(case: Case) -> None:
    """The same for a chart that computes from the columns of its data."""
    result, values = emitted(case, lambda name, _: getattr(alt.datum, name))
    assert isinstance(result, Expression)
    answer = run(emit(result), {}, values)
    assert answer == pytest.approx(case.formula(*case.args), rel=1e-15)
    assert answer == pytest.approx(case.expected, rel=EXACTLY)


@pytest.fixture(scope="module")
def compiled_answers() -> dict[str, Any]:
    """What the formulas give as compiled for a page, by case."""
    program = compiled({name: getattr(formulas, name) for name in formulas.__all__})
    answers = in_javascript(program, [(case.name, case.args) for case in CASES])
    return {str(case): answer for case, answer in zip(CASES, answers, strict=True)}


@every_case
def test_javascript(case: Case, compiled_answers: dict[str, Any]) -> None:
    answer = compiled_answers[str(case)]["gives"]
    assert answer == pytest.approx(case.formula(*case.args), rel=1e-15)


def emitted(case: Case, stand_in: Callable[[str, float], Any]) -> tuple[Any, dict[str, float]]:
    """Return what the formula gives for stand-ins, and the number that each stands for."""
    values: dict[str, float] = {}

    def named(x: float) -> Any:
        name = f"number_{len(values)}"
        values[name] = x
        return stand_in(name, x)

    return case.formula(*each(case.args, named)), values


# --- what a formula may not do ---

ALLOWED = (
    ast.BinOp, ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.Constant, ast.Name, ast.Load,
    ast.Store, ast.Assign, ast.For, ast.Return, ast.Call, ast.GeneratorExp, ast.comprehension,
    ast.Tuple, ast.keyword,
)  # fmt: skip
CALLED = {"sum", "zip", "overall_yield"}


@pytest.mark.parametrize("name", formulas.__all__)
def test_is_one_to_three_lines_of_arithmetic(name: str) -> None:
    (function,) = ast.parse(inspect.getsource(getattr(formulas, name))).body
    assert isinstance(function, ast.FunctionDef)
    body = function.body[1:]
    assert 1 <= len(body) <= 3
    for node in (node for line in body for node in ast.walk(line)):
        assert isinstance(node, ALLOWED), ast.dump(node)
        if isinstance(node, ast.Call):
            assert isinstance(node.func, ast.Name)
            assert node.func.id in CALLED


def test_importing_formulas_loads_nothing_heavy() -> None:
    program = "import sys; from yarnsheets import formulas; print(*sys.modules)"
    run = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True, timeout=60
    )
    loaded = run.stdout.split()
    ours = {name for name in loaded if name.startswith("yarnsheets")}
    assert {name.split(".")[1] for name in ours if "." in name} == {"formulas"}
    assert not {"altair", "ipywidgets", "numpy", "pandas", "pint"} & set(loaded)


# --- what holds whatever the numbers ---

size = st.floats(0.01, 1e5)
count = st.floats(1, 8)
part = st.floats(0.05, 1)
take_up = st.floats(0.9, 1.3)
singles = st.lists(st.tuples(size, take_up), min_size=1, max_size=8)


def same(result: float, start: float) -> bool:
    return result == pytest.approx(start, rel=1e-9)


@given(size, size)
def test_there_and_back_for_grist(length: float, mass: float) -> None:
    grist = formulas.grist(length, mass)
    assert same(formulas.length(mass, grist), length)
    assert same(formulas.mass(length, grist), mass)


@given(size, size)
def test_there_and_back_for_a_balance(cut: float, factor: float) -> None:
    grist = formulas.grist_from_cut(cut, factor)
    assert same(formulas.cut_from_grist(grist, factor), cut)
    assert same(formulas.balance_factor(grist, cut), factor)
    weight = formulas.counterweight(factor)
    assert same(formulas.balance_factor_from_counterweight(weight), factor)
    assert same(formulas.grist(cut, weight), grist)  # the cut that balances has that mass


@given(size, size, size)
def test_there_and_back_for_a_skein(turns: float, circumference: float, mass: float) -> None:
    length = formulas.skein_length(turns, circumference)
    assert same(formulas.skein_turns(length, circumference), turns)
    assert same(formulas.skein_circumference(length, turns), circumference)
    assert same(formulas.grist_from_skein(turns, circumference, mass), formulas.grist(length, mass))


@given(size, count, take_up)
def test_there_and_back_for_plying(single: float, plies: float, taken: float) -> None:
    plied = formulas.plied_grist(single, plies, taken)
    assert same(formulas.singles_grist(plied, plies, taken), single)
    assert same(formulas.take_up(single, plied, plies), taken)
    assert same(formulas.ply_count(single, plied, taken), plies)
    assert same(formulas.take_up_from_retraction(formulas.retraction(taken)), taken)


@given(size, count, take_up, size)
def test_plying_loses_no_mass(single: float, plies: float, taken: float, length: float) -> None:
    used = formulas.singles_length(length, plies, taken)
    assert same(formulas.plied_length(used, plies, taken), length)
    plied = formulas.plied_grist(single, plies, taken)
    assert same(formulas.mass(used, single), formulas.mass(length, plied))


@given(size, st.integers(1, 8), take_up)
def test_equal_singles_are_a_case_of_unlike_ones(single: float, plies: int, taken: float) -> None:
    unlike = formulas.plied_grist_unequal([single] * plies, [taken] * plies)
    assert same(unlike, formulas.plied_grist(single, plies, taken))


@given(singles, st.randoms(use_true_random=False))
def test_the_order_of_singles_does_not_matter(yarn: list[tuple[float, float]], random: Any) -> None:
    shuffled = random.sample(yarn, len(yarn))
    grists, taken = zip(*yarn, strict=True)
    other_grists, other_taken = zip(*shuffled, strict=True)
    plied = formulas.plied_grist_unequal(grists, taken)
    assert same(formulas.plied_grist_unequal(other_grists, other_taken), plied)


@given(singles)
def test_the_shares_of_the_mass_sum_to_one(yarn: list[tuple[float, float]]) -> None:
    plied = formulas.plied_grist_unequal(*zip(*yarn, strict=True))
    shares = [formulas.mass_share(grist, taken, plied) for grist, taken in yarn]
    assert same(sum(shares), 1)


@given(st.lists(st.tuples(st.floats(100, 30000), take_up), min_size=2, max_size=8))
def test_the_missing_single_completes_the_yarn(yarn: list[tuple[float, float]]) -> None:
    plied = formulas.plied_grist_unequal(*zip(*yarn, strict=True))
    (missing, its_taken), *others = yarn
    grists, taken = zip(*others, strict=True)
    found = formulas.missing_single_grist(plied, grists, taken, its_taken)
    assert found == pytest.approx(missing, rel=1e-7)  # a difference of near numbers loses digits


@given(size, size, st.lists(part, max_size=6))
def test_there_and_back_for_fibre(length: float, grist: float, yields: list[float]) -> None:
    fibre = formulas.fibre_needed(length, grist, yields)
    assert same(formulas.length_from_fibre(fibre, grist, yields), length)
    assert same(formulas.grist_for_fibre(length, fibre, yields), grist)


@given(st.lists(part, max_size=4), st.lists(part, max_size=4))
def test_yields_multiply_stage_by_stage(early: list[float], late: list[float]) -> None:
    both = formulas.overall_yield(early) * formulas.overall_yield(late)
    assert same(formulas.overall_yield(early + late), both)


def test_no_stage_loses_nothing() -> None:
    assert formulas.overall_yield([]) == 1
    assert formulas.fibre_needed(1200, 1000, []) == formulas.mass(1200, 1000)

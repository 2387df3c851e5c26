"""The compiler: Python's meaning in JavaScript, and a stop at whatever is not of the subset."""

from __future__ import annotations

import json
import math
import random
from decimal import ROUND_HALF_UP, Decimal
from pathlib import Path
from typing import Any

import pytest

from tests.javascript import compiled, in_javascript, loaded, with_runtime
from yarnsheets.page import text
from yarnsheets.page.compiler import CannotCompile

# ---- the same as in Python -----------------------------------------------------------------------

with loaded(Path(__file__).with_name("constructs.py")) as constructs:
    CASES = [(function, given) for function, every in constructs.CASES for given in every]
    PROGRAM = compiled({function.__name__: function for function, _ in CASES})


@pytest.fixture(scope="module")
def answers() -> list[dict[str, Any]]:
    return in_javascript(PROGRAM, [(function.__name__, given) for function, given in CASES])


@pytest.mark.parametrize(
    "at", range(len(CASES)), ids=[f"{function.__name__}{given!r:.40}" for function, given in CASES]
)
def test_a_construct_means_the_same(at: int, answers: list[dict[str, Any]]) -> None:
    function, given = CASES[at]
    assert len(answers) == len(CASES)
    try:
        ours = {"gives": json.loads(json.dumps(function(*json.loads(json.dumps(given)))))}
    except ValueError:
        assert "raises" in answers[at]
    else:
        assert answers[at] == ours


def many_numbers() -> list[float]:
    """Give numbers of all sizes, whole ones, exact halves of each decimal, and their neighbours."""
    rng = random.Random(4)  # noqa: S311 - to be the same at every run
    numbers = [rng.choice([-1, 1]) * 10 ** rng.uniform(-9, 20) for _ in range(3000)]
    numbers += [rng.randint(-(10**6), 10**6) / 2**bits for bits in range(12) for _ in range(250)]
    numbers += [float(f"{sign}1e{power}") for sign in "+-" for power in range(-9, 22)]
    numbers += [0.125, 0.375, 2.675, 1.005, 0.5, 2.5, 0.0, -0.0]
    numbers += [math.nextafter(x, math.inf * side) for x in numbers for side in (-1, 1)]
    return numbers


def written_all(function: str, numbers: list[float], *ways: Any) -> list[list[str]]:
    """Write all numbers by a function of the runtime, in each of the ways."""
    every = "(numbers, way) => numbers.map((x) => py." + function + "(x, way))"
    program = with_runtime("", {"every": every})
    answers = in_javascript(program, [("every", (numbers, way)) for way in ways])
    return [answer["gives"] for answer in answers]


def test_decimals_are_those_of_pythons_decimal_arithmetic() -> None:
    numbers = many_numbers()
    for decimals, answers in enumerate(written_all("with_decimals", numbers, *range(7))):
        for number, theirs in zip(numbers, answers, strict=True):
            exactly = Decimal(number).quantize(Decimal(10) ** -decimals, ROUND_HALF_UP) + 0
            assert theirs == f"{exactly:,}".replace("-", "−"), (number, decimals)
            assert text.with_decimals(number, decimals) == theirs


@pytest.mark.parametrize("spec", [".0f", ",.1f", ".2f", ".6f", ".1%", "g", ".2g", ".4g", ".15g"])
def test_a_format_writes_what_python_writes(spec: str) -> None:
    numbers = many_numbers()
    (answers,) = written_all("format", numbers, spec)
    assert answers == [format(number, spec) for number in numbers]


def test_a_page_shows_the_digits_that_python_shows() -> None:
    numbers = many_numbers()
    ways = [(digits, up) for digits in (2, 3, 5) for up in (False, True)]
    # `up` is by name alone and stands behind the rest
    calls = [("show", (number, *way)) for number in numbers for way in ways]
    answers = in_javascript(compiled({"show": text.show}), calls)
    for (_, (number, digits, up)), answer in zip(calls, answers, strict=True):
        assert answer == {"gives": text.show(number, digits, up=up)}, (number, digits, up)


# ---- where it stops ------------------------------------------------------------------------------

# What the error names, and a function `f` with the construct in its line marked `here`.
STOPS = {
    "Try": """
        def f(x):
            try:  # here
                return 1 / x
            except ZeroDivisionError:
                return 0
        """,
    "With": """
        def f(x):
            with open(x) as file:  # here
                return file
        """,
    "Yield": """
        def f(x):
            yield x  # here
        """,
    "YieldFrom": """
        def f(x):
            yield from x  # here
        """,
    "Global": """
        def f(x):
            global y  # here
            y = x
        """,
    "Nonlocal": """
        def f(x):
            def g():
                nonlocal x  # here
                x = 1
            return g()
        """,
    "Delete": """
        def f(x):
            del x[0]  # here
        """,
    "Match": """
        def f(x):
            match x:  # here
                case 1:
                    return 2
        """,
    "Import": """
        def f(x):
            import math  # here
            return math.sqrt(x)
        """,
    "ClassDef": """
        def f(x):
            class Inside:  # here
                pass
        """,
    "**rest": """
        def f(x, **rest):  # here
            return x
        """,
    "** in a call": """
        def g(x):
            return x

        def f(x):
            return g(**x)  # here
        """,
    "* beside arguments by name": """
        def g(x, *, y=1):
            return x

        def f(x):
            return g(*x, y=2)  # here
        """,
    "a default of y that is not constant": """
        def f(x):
            return (lambda y=x: y)()  # here
        """,
    "a function that keeps a comprehension's variable": """
        def f(x):
            return [
                lambda: one  # here
                for one in x
            ]
        """,
    "a function inside a branch or a loop": """
        def f(x):
            if x:
                def g():  # here
                    return 1
                return g()
        """,
    "a decorated function inside another": """
        from functools import cache

        def f(x):
            @cache
            def g():  # here
                return 1
            return g()
        """,
    "@contextmanager": """
        from contextlib import contextmanager

        @contextmanager  # here
        def f(x):
            return x
        """,
    "a loop with an else": """
        def f(x):
            for one in x:  # here
                pass
            else:
                return 1
        """,
    "several assignments in one": """
        def f(x):
            a = b = x  # here
            return a + b
        """,
    "a list of the rest, other than at the end": """
        def f(x):
            *first, last = x  # here
            return last
        """,
    "a value put into Attribute": """
        def f(x):
            x.y = 1  # here
        """,
    "a slice with a step, other than [::-1]": """
        def f(x):
            return x[::2]  # here
        """,
    "a conversion in an f-string": """
        def f(x):
            return f"{x!r}"  # here
        """,
    "the format >5": """
        def f(x):
            return f"{x:>5}"  # here
        """,
    "Mod": """
        def f(x):
            return "%s" % x  # here
        """,
    "MatMult": """
        def f(x):
            return x @ x  # here
        """,
    "Invert": """
        def f(x):
            return ~x  # here
        """,
    "BitXor": """
        def f(x):
            return x ^ 1  # here
        """,
    "AsyncFunctionDef": """
        def f(x):
            async def g():  # here
                return x
            return g()
        """,
    "raise of anything but a new error": """
        def f(x):
            raise ValueError  # here
        """,
    "...: a constant of ellipsis": """
        def f(x):
            return x[...]  # here
        """,
    "a call of print": """
        def f(x):
            print(x)  # here
        """,
    "a call of getattr": """
        def f(x):
            return getattr(x, "a" + "b")  # here
        """,
    "a call of divmod": """
        def f(x):
            return divmod(x, 2)  # here
        """,
    "a call of math.gamma": """
        import math

        def f(x):
            return math.gamma(x)  # here
        """,
    "a call of np.mean": """
        import numpy as np

        def f(x):
            return np.mean(x)  # here
        """,
    "a call of stdtrit": """
        from scipy.special import stdtrit

        def f(x):
            return stdtrit(4, x)  # here
        """,
    "the method .tolist": """
        def f(x):
            return x.tolist()  # here
        """,
    "arguments by name for x.split": """
        def f(x):
            return x.split(sep=",")  # here
        """,
    "more than 1 arguments for x.split": """
        def f(x):
            return x.split(",", 1)  # here
        """,
    "these arguments of int": """
        def f(x):
            return int(x, 16)  # here
        """,
    "isinstance of dict": """
        def f(x):
            return isinstance(x, dict)  # here
        """,
    "y: not known here": """
        def f(x):
            return y  # here
        """,
    "convert, unless its two units are spelt out": """
        from yarnsheets.units import convert

        def f(x):
            return convert(1.0, x, "lb")  # here
        """,
    "PLACE: a constant of object": """
        PLACE = object()

        def f(x):
            return PLACE  # here
        """,
    "PATTERN: a pattern with flags: a": """
        import re

        PATTERN = re.compile("a", re.IGNORECASE)

        def f(x):
            return PATTERN.fullmatch(x)  # here
        """,
    "<lambda>: not defined at the module's or a class's level": """
        TWICE = lambda x: 2 * x

        def f(x):
            return TWICE(x)  # here
        """,
    "no dataclass or named tuple": """
        class Plain:  # here
            def __init__(self, x):
                self.x = x

        def f(x):
            return Plain(x).x
        """,
    "Kept.__add__: a method of this kind": """
        from dataclasses import dataclass

        @dataclass(frozen=True)
        class Kept:
            x: float

            def __add__(self, other):  # here
                return self.x + other

        def f(x):
            return Kept(x) + 1
        """,
    "Kept.made: a constant of method": """
        from dataclasses import dataclass

        @dataclass(frozen=True)
        class Kept:
            x: float

            @classmethod
            def made(cls):
                return cls(1)

        def f(x):
            return Kept.made()  # here
        """,
    "Kept: in a class, most: ClassVar[float] = 5": """
        from dataclasses import dataclass
        from typing import ClassVar

        @dataclass(frozen=True)
        class Kept:
            x: float
            most: ClassVar[float] = 5  # here

        def f(x):
            return Kept(x).most
        """,
    ".taken, which takes different arguments in our classes": """
        from dataclasses import dataclass

        @dataclass(frozen=True)
        class One:
            def taken(self, a):
                return a

        @dataclass(frozen=True)
        class Other:
            def taken(self, b):
                return b

        def f(x):
            return One().taken(x)  # here
        """,
}


def written(tmp_path: Path, source: str) -> tuple[Path, int]:
    """Write a module without its margin; give its file and the line marked `here`."""
    lines = [line.removeprefix(" " * 8) for line in source.strip("\n").splitlines()]
    file = tmp_path / "trial.py"
    file.write_text("\n".join(lines), "utf-8")
    (here,) = (at for at, line in enumerate(lines, 1) if line.endswith("# here"))
    return file, here


@pytest.mark.parametrize("construct", STOPS)
def test_it_stops_with_file_line_and_construct(construct: str, tmp_path: Path) -> None:
    file, line = written(tmp_path, STOPS[construct])
    with loaded(file) as module, pytest.raises(CannotCompile) as stopped:
        compiled({"f": module.f})
    said = str(stopped.value)
    assert f"{file}:{line}: " in said
    assert said.endswith(construct) or f"{construct}:" in said

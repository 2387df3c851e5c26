"""Calls: of what Python brings along, of our own functions and classes, and of methods."""

import ast
import dataclasses
import itertools
import math
import statistics
import unicodedata
from collections.abc import Callable, Mapping
from types import ModuleType
from typing import Any, ClassVar, NamedTuple

from yarnsheets import units
from yarnsheets.page.compiler.classes import method_parameters
from yarnsheets.page.compiler.comprehensions import Comprehensions
from yarnsheets.page.compiler.names import UNKNOWN
from yarnsheets.page.compiler.source import is_ours, written


class Known(NamedTuple):
    """A function of Python's: what takes its place, and which arguments that takes."""

    name: str
    by_name: tuple[str, ...] = ()  # they may follow by name, and stand in this order
    most: int = 99  # how many it takes by place, where Python's takes more


# Functions that are called with the same arguments in the same order.
_FUNCTIONS: Mapping[Any, Known] = {
    len: Known("py.len"),
    range: Known("py.range"),
    enumerate: Known("py.enumerate", ("start",)),
    reversed: Known("py.reversed"),
    iter: Known("py.iter"),
    next: Known("py.next"),
    map: Known("py.map"),
    filter: Known("py.filter"),
    sum: Known("py.sum", ("start",)),
    sorted: Known("py.sorted", ("key", "reverse")),
    abs: Known("Math.abs"),
    round: Known("py.round"),
    int: Known("py.int", most=1),
    float: Known("Number"),
    str: Known("py.str", most=1),
    bool: Known("py.truth"),
    set: Known("py.set"),
    frozenset: Known("py.set"),
    dict: Known("py.dict"),
    itertools.pairwise: Known("py.pairwise"),
    itertools.chain: Known("py.chain"),
    itertools.accumulate: Known("py.accumulate"),
    statistics.mean: Known("py.mean", most=1),
    statistics.fmean: Known("py.mean", most=1),
    statistics.median: Known("py.median"),
    statistics.harmonic_mean: Known("py.harmonic_mean", most=1),
    unicodedata.normalize: Known("py.normalize"),
    math.floor: Known("py.floor"),
    math.ceil: Known("py.ceil"),
    math.sqrt: Known("Math.sqrt"),
    math.exp: Known("Math.exp"),
    math.log: Known("Math.log", most=1),
    math.log10: Known("Math.log10"),
    math.log1p: Known("Math.log1p"),
    math.hypot: Known("Math.hypot"),
    math.sin: Known("Math.sin"),
    math.cos: Known("Math.cos"),
    math.tan: Known("Math.tan"),
    math.atan: Known("Math.atan"),
    math.isfinite: Known("Number.isFinite"),
    math.isnan: Known("Number.isNaN"),
    math.fsum: Known("py.fsum"),
}
# Methods of words, lists, dicts, sets and patterns: a method of JavaScript's begins with a dot, a
# function of the runtime takes what it is called on first; and how many arguments at most.
_METHODS: Mapping[str, tuple[str, int]] = {
    "append": (".push", 1),
    "extend": ("py.extend", 1),
    "index": ("py.index", 1),
    "count": ("py.count", 1),
    "get": ("py.get", 2),
    "items": ("py.pairs", 0),
    "keys": ("py.iter", 0),
    "values": ("py.values", 0),
    "startswith": (".startsWith", 1),
    "endswith": (".endsWith", 1),
    "lower": (".toLowerCase", 0),
    "upper": (".toUpperCase", 0),
    "join": ("py.join", 1),
    "split": ("py.split", 1),
    "replace": ("py.replaced", 2),
    "strip": ("py.strip", 1),
    "lstrip": ("py.lstrip", 1),
    "rstrip": ("py.rstrip", 1),
    "removeprefix": ("py.removeprefix", 1),
    "removesuffix": ("py.removesuffix", 1),
    "fullmatch": ("py.fullmatch", 1),
    "sub": ("py.sub", 2),
    "groups": ("py.groups", 0),
}
_TYPES = {str: "string", float: "number", int: "number", bool: "boolean"}


class Calls(Comprehensions):
    """Writes calls."""

    def visit_Call(self, node: ast.Call) -> str:
        """Write a call of any kind that is known."""
        func = node.func
        if isinstance(func, ast.Name) and self.is_local(func.id):
            return self._of_local(node, func)
        called = self.known(func)
        if isinstance(func, ast.Attribute) and not self._is_static(func, called):
            return self._of_method(node, func)
        if called is UNKNOWN:
            return f"{self.part(func)}({self._by_place(node)})"
        if callable(called) and called in self._SPECIAL:
            return self._SPECIAL[called](self, node)
        if callable(called) and called in _FUNCTIONS:
            return self._of_python(node, _FUNCTIONS[called])
        if is_ours(called):
            return self._of_ours(node, called)
        raise self.stop(node, f"a call of {ast.unparse(func)}")

    def constant(self, node: ast.expr, value: Any) -> str:
        """Write what Python has worked out; a function of Python's too, as a value."""
        if callable(value) and value in _FUNCTIONS:
            return _FUNCTIONS[value].name
        return super().constant(node, value)

    def arguments(self, node: ast.Call, parameters: ast.arguments, *, skip: int = 0) -> str:
        """Write the arguments of a call in the order of the parameters."""
        plain = [*parameters.posonlyargs, *parameters.args][skip:]
        given = [self.element(each) for each in node.args]
        by_name = self._by_name(node)
        if any(isinstance(each, ast.Starred) for each in node.args):
            if by_name or parameters.kwonlyargs:
                raise self.stop(node, "* beside arguments by name")
            return ", ".join(given)
        placed, rest = given[: len(plain)], given[len(plain) :]
        missing = [*plain[len(placed) :], *parameters.kwonlyargs]
        placed += [by_name.get(each.arg, "undefined") for each in missing]
        return ", ".join([*placed, *rest] if rest else _trimmed(placed))

    def _by_name(self, node: ast.Call) -> dict[str, str]:
        """Write the arguments given by name."""
        if any(each.arg is None for each in node.keywords):
            raise self.stop(node, "** in a call")
        return {str(each.arg): self.value(each.value) for each in node.keywords}

    def _by_place(self, node: ast.Call, most: int = 99) -> str:
        """Write the arguments of a call that takes none by name."""
        if node.keywords:
            raise self.stop(node, f"arguments by name for {ast.unparse(node.func)}")
        if len(node.args) > most:
            raise self.stop(node, f"more than {most} arguments for {ast.unparse(node.func)}")
        return ", ".join(map(self.element, node.args))

    # ---- each kind of call

    def _is_static(self, func: ast.Attribute, called: Any) -> bool:
        """Tell whether a function is of a module, of a class, or the sheet's own method."""
        is_known = callable(called) or isinstance(called, staticmethod)
        owner = self.known(func.value)
        return is_known and (self.is_sheet(func.value) or isinstance(owner, ModuleType | type))

    def _of_local(self, node: ast.Call, func: ast.Name) -> str:
        """Write a call of a function inside this one, or of one that was given as a value."""
        inside = self.signatures.get(func.id)
        given = self.arguments(node, inside) if inside else self._by_place(node)
        return f"{self.value(func)}({given})"

    def _of_method(self, node: ast.Call, func: ast.Attribute) -> str:
        """Write a call of a method: of one of our classes, or of what Python brings along."""
        ours = method_parameters(func.attr)
        if len(ours) > 1:
            raise self.stop(node, f".{func.attr}, which takes different arguments in our classes")
        if ours:
            return f"{self.part(func.value)}.{func.attr}({self.arguments(node, ours[0], skip=1)})"
        if func.attr not in _METHODS:
            raise self.stop(node, f"the method .{func.attr}")
        name, most = _METHODS[func.attr]
        given = self._by_place(node, most)
        if name.startswith("."):
            return f"{self.part(func.value)}{name}({given})"
        return f"{name}({', '.join(filter(None, [self.value(func.value), given]))})"

    def _of_python(self, node: ast.Call, known: Known) -> str:
        """Write a call of one of Python's own functions."""
        named = self._by_name(node)
        given = [self.element(each) for each in node.args]
        if len(given) > known.most or named.keys() - set(known.by_name):
            raise self.stop(node, f"these arguments of {ast.unparse(node.func)}")
        if named:
            given += [named.get(each, "undefined") for each in known.by_name]
        return f"{known.name}({', '.join(_trimmed(given))})"

    def _of_ours(self, node: ast.Call, called: Any) -> str:
        """Write a call of a function or class of ours."""
        name = self.constant(node.func, called)
        if isinstance(called, type):
            return f"new {name}({self.arguments(node, fields(called))})"
        definition = written(called).node
        assert isinstance(definition, ast.FunctionDef)
        owner = node.func.value if isinstance(node.func, ast.Attribute) else node.func
        if self.is_sheet(owner) and not isinstance(called, staticmethod):
            rest = self.arguments(node, definition.args, skip=1)
            return f"{name}({', '.join(filter(None, [self.value(owner), rest]))})"
        return f"{name}({self.arguments(node, definition.args)})"

    # ---- what is written in a way of its own

    def _extreme(self, node: ast.Call) -> str:
        assert isinstance(node.func, ast.Name)
        named = self._by_name(node)
        values = f"[{', '.join(map(self.element, node.args))}]"
        if len(node.args) == 1 and not isinstance(node.args[0], ast.Starred):
            values = self.value(node.args[0])
        given = [values, named.get("key", "undefined"), named.get("default", "undefined")]
        return f"py.{node.func.id}({', '.join(_trimmed(given))})"

    def _zip(self, node: ast.Call) -> str:
        named = self._by_name(node)
        function = "zip_strict" if named.get("strict") == "true" else "zip"
        return f"py.{function}({', '.join(map(self.element, node.args))})"

    def _listed(self, node: ast.Call) -> str:
        return f"[...{self.list_(node.args[0])}]" if node.args else "[]"

    def _isinstance(self, node: ast.Call) -> str:
        value, kind = node.args
        if self.known(kind) not in _TYPES:
            raise self.stop(node, f"isinstance of {ast.unparse(kind)}")
        return f'(typeof {self.value(value)} === "{_TYPES[self.known(kind)]}")'

    def _float(self, node: ast.Call) -> str:
        text = node.args[0]
        if isinstance(text, ast.Constant) and isinstance(text.value, str):  # such as "inf"
            return self.program.literal(float(text.value))
        return f"Number({self.value(text)})"

    def _replaced(self, node: ast.Call) -> str:
        changed = ", ".join(f"{name}: {value}" for name, value in self._by_name(node).items())
        return f"py.replace({self.value(node.args[0])}, {{ {changed} }})"

    def _convert(self, node: ast.Call) -> str:
        value, *ends = node.args
        names = [end.value for end in ends if isinstance(end, ast.Constant)]
        if node.keywords or len(names) != 2:
            raise self.stop(node, "convert, unless its two units are spelt out")
        scale = units.scale(*map(str, names))
        if isinstance(value, ast.Constant):
            return self.program.literal(scale.apply(value.value))
        factor = self.program.literal(scale.factor)
        if scale.power == 1:
            return f"({self.part(value)} * {factor})"
        return f"({factor} / {self.part(value)})"

    _SPECIAL: ClassVar[Mapping[Any, Callable[["Calls", ast.Call], str]]] = {
        any: lambda self, node: self.some(node, "some"),
        all: lambda self, node: self.some(node, "every"),
        min: _extreme,
        max: _extreme,
        zip: _zip,
        list: _listed,
        tuple: _listed,
        float: _float,
        isinstance: _isinstance,
        dataclasses.replace: _replaced,
        units.convert: _convert,
    }


def fields(cls: type) -> ast.arguments:
    """Give the fields of a class as its parameters."""
    names = (
        [each.name for each in dataclasses.fields(cls)]
        if dataclasses.is_dataclass(cls)
        else list(getattr(cls, "_fields", ()))
    )
    return ast.arguments([], [ast.arg(each) for each in names], None, [], [], None, [])


def _trimmed(given: list[str]) -> list[str]:
    """Leave out arguments at the end that nobody gave."""
    while given and given[-1] == "undefined":
        given = given[:-1]
    return given

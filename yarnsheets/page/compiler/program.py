"""A program as it grows: what was reached, what each thing is called, and its text."""

import dataclasses
import enum
import inspect
import json
import math
import re
from collections.abc import Callable, Iterable, Mapping
from functools import singledispatchmethod
from types import FunctionType
from typing import TYPE_CHECKING, Any

from yarnsheets.page.compiler.source import CannotCompile, written

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

# Written by hand in runtime.js: where Python's own rule cannot be compiled.
_BY_HAND = {"yarnsheets.page.text.with_decimals": "py.with_decimals"}


class Program:
    """Everything reached from a sheet, each function, class and constant once."""

    def __init__(self, sheet: "type[Sheet]") -> None:
        self.sheet = sheet
        self._functions: dict[str, str] = {}
        self._classes: dict[str, str] = {}
        self._constants: dict[str, str] = {}
        self._waiting: list[tuple[str, Any]] = []

    def name_of_function(self, function: Callable[..., Any]) -> str:
        """Give what a function is called, and see to it that it gets written."""
        plain: Any = inspect.unwrap(function)
        path = f"{plain.__module__}.{plain.__qualname__}"
        if path in _BY_HAND:
            return _BY_HAND[path]
        name = _name(plain.__module__, plain.__qualname__)
        if name not in self._functions:
            written(plain)  # or it stops at whoever calls it
            self._functions[name] = ""
            self._waiting.append((name, plain))
        return name

    def name_of_class(self, cls: type) -> str:
        """Give what a class is called, and write it, its parent first."""
        from yarnsheets.page.compiler.classes import write_class

        name = _name(cls.__module__, cls.__qualname__)
        if name not in self._classes:
            self._classes[name] = ""  # it may come upon itself
            text = write_class(self, cls, name)
            del self._classes[name]  # it stands behind what it reached
            self._classes[name] = text
        return name

    def name_of_constant(self, module: str, name: str, value: Any) -> str:
        """Give what a module's constant is called, and write it."""
        called = _name(module, name)
        if called not in self._constants:
            self._constants[called] = self.literal(value)
        return called

    def write_reached(self) -> None:
        """Write every function reached, and what those reach."""
        from yarnsheets.page.compiler.functions import write_function

        while self._waiting:
            name, function = self._waiting.pop(0)
            lines = write_function(self, function, name)
            self._functions[name] = "\n".join(f"  {line}" for line in lines)

    def text(self) -> str:
        """Give the program's text: classes, constants, functions."""
        constants = [f"  const {name} = {value};" for name, value in self._constants.items()]
        return "\n".join([*self._classes.values(), *constants, *self._functions.values()])

    def is_sheets_method(self, function: Callable[..., Any]) -> bool:
        """Tell whether a function is a method or property of the sheet itself."""
        found = inspect.getattr_static(self.sheet, function.__name__, None)
        return function is (found.fget if isinstance(found, property) else found)

    @singledispatchmethod
    def literal(self, value: Any) -> str:
        """Write a value that Python has worked out."""
        if dataclasses.is_dataclass(value) and not isinstance(value, type):
            fields = [getattr(value, each.name) for each in dataclasses.fields(value)]
            return f"new {self.name_of_class(type(value))}({self._listed(fields)})"
        msg = f"a constant of {type(value).__name__}: {value!r:.60}"
        raise CannotCompile(msg)

    @literal.register(bool | None)
    def _(self, value: bool | None) -> str:  # noqa: FBT001 - it is the value to be written
        return "null" if value is None else str(value).lower()

    @literal.register(int | float)
    def _(self, value: float) -> str:
        if not math.isfinite(value):
            return {"nan": "NaN", "inf": "Infinity", "-inf": "-Infinity"}[str(value)]
        is_whole = value == int(value) and abs(value) < 1e15
        return repr(int(value)) if is_whole else repr(float(value))

    @literal.register(str)
    def _(self, value: str) -> str:
        return _text(value)

    @literal.register(enum.Enum)
    def _(self, value: enum.Enum) -> str:
        return _text(value.name)

    @literal.register(re.Pattern)
    def _(self, value: re.Pattern[str]) -> str:
        if value.flags & ~(re.UNICODE | re.ASCII):
            msg = f"a pattern with flags: {value.pattern:.60}"
            raise CannotCompile(msg)
        escaped = re.sub(r"(?<!\\)/", r"\\/", value.pattern)
        return f"/{escaped}/"

    @literal.register(FunctionType)
    def _(self, value: FunctionType) -> str:
        return self.name_of_function(value)

    @literal.register(list | range)
    def _(self, value: list[Any] | range) -> str:
        return f"[{self._listed(value)}]"

    @literal.register(tuple)
    def _(self, value: tuple[Any, ...]) -> str:
        if hasattr(value, "_fields"):
            return f"new {self.name_of_class(type(value))}({self._listed(value)})"
        return f"[{self._listed(value)}]"

    @literal.register(set | frozenset)
    def _(self, value: set[Any] | frozenset[Any]) -> str:
        return f"py.set([{self._listed(sorted(value, key=repr))}])"

    @literal.register(Mapping)
    def _(self, value: Mapping[Any, Any]) -> str:
        # a plain object puts keys that are whole numbers first, whatever their order
        if value and all(isinstance(key, str) and not key.isdigit() for key in value):
            inside = [f"{_text(key)}: {self.literal(each)}" for key, each in value.items()]
            return f"{{ {', '.join(inside)} }}"
        pairs = [f"[{self.literal(key)}, {self.literal(each)}]" for key, each in value.items()]
        return f"py.dict([{', '.join(pairs)}])"

    def _listed(self, values: Iterable[Any]) -> str:
        return ", ".join(map(self.literal, values))


def _name(module: str, name: str) -> str:
    """Name a thing by its place, so that no name inside a function can be the same."""
    place = module.removeprefix("yarnsheets.").replace(".", "_")
    return f"{place}${re.sub(r'[^A-Za-z0-9_]+', '$', name)}"


def _text(value: str) -> str:
    return json.dumps(value, ensure_ascii=False).replace("\N{NO-BREAK SPACE}", "\\u00a0")

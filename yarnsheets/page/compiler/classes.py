"""Dataclasses and named tuples, as classes."""

import ast
import dataclasses
import inspect
import sys
from collections.abc import Iterator
from types import FunctionType
from typing import TYPE_CHECKING, Any

from yarnsheets.page.compiler.source import Written, written

if TYPE_CHECKING:
    from yarnsheets.page.compiler.program import Program

# Methods that Python calls by itself, and what the runtime calls them.
_BY_ITSELF = {"__post_init__": "__post_init__", "__contains__": "has", "__str__": "toString"}
_KINDS = {FunctionType: "", property: "get "}


def write_class(program: "Program", cls: type, name: str) -> str:
    """Write a dataclass or named tuple with its methods."""
    definition = written(cls)
    defaults = _defaults(program, cls, definition)
    parents = [each for each in cls.__bases__ if dataclasses.is_dataclass(each)]
    inherited = [each.name for parent in parents for each in dataclasses.fields(parent)]
    params = ", ".join(each if d is None else f"{each} = {d}" for each, d in defaults.items())
    extends = "".join(f" extends {program.name_of_class(each)}" for each in parents)
    lines = [f"  class {name}{extends} {{", f"    constructor({params}) {{"]
    if parents:
        lines.append(f"      super({', '.join(inherited)});")
    lines += [f"      this.{each} = {each};" for each in defaults if each not in inherited]
    if "__post_init__" in vars(cls):
        lines.append("      this.__post_init__();")
    lines.append("    }")
    if not dataclasses.is_dataclass(cls):  # it can be taken apart like a tuple
        values = ", ".join(f"this.{each}" for each in defaults)
        lines.append(f"    *[Symbol.iterator]() {{ yield* [{values}]; }}")
    lines += _methods(program, cls, definition, {*defaults})
    return "\n".join([*lines, "  }"])


def _defaults(program: "Program", cls: type, definition: Written) -> dict[str, str | None]:
    """Give the default of each field, None where there is none."""
    if dataclasses.is_dataclass(cls):
        return {each.name: _default(program, each) for each in dataclasses.fields(cls)}
    if issubclass(cls, tuple):
        kept = vars(cls)["_field_defaults"]
        fields = vars(cls)["_fields"]
        return {each: program.literal(kept[each]) if each in kept else None for each in fields}
    raise definition.stop(definition.node, f"class {cls.__name__}: no dataclass or named tuple")


def _default(program: "Program", field: "dataclasses.Field[Any]") -> str | None:
    if field.default is not dataclasses.MISSING:
        return program.literal(field.default)
    if field.default_factory is not dataclasses.MISSING:
        return program.literal(field.default_factory())
    return None


def _methods(program: "Program", cls: type, definition: Written, fields: set[str]) -> Iterator[str]:
    """Write the methods; stop at anything else in a class but its fields and its docstring."""
    from yarnsheets.page.compiler.functions import write_method

    assert isinstance(definition.node, ast.ClassDef)
    for node in definition.node.body:
        if isinstance(node, ast.FunctionDef):
            name = _BY_ITSELF.get(node.name, node.name)
            kind = type(vars(cls)[node.name])
            is_known = node.name in _BY_ITSELF or not name.startswith("__")
            if kind not in _KINDS or not is_known:
                raise definition.stop(node, f"{cls.__name__}.{node.name}: a method of this kind")
            lines = write_method(program, definition, node, _KINDS[kind] + name)
            yield from (f"    {line}" for line in lines)
        elif ast.unparse(node).partition(":")[0] not in fields and not _is_docstring(node):
            raise definition.stop(node, f"{cls.__name__}: in a class, {ast.unparse(node)}")


def _is_docstring(node: ast.stmt) -> bool:
    return isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)


def method_parameters(name: str) -> list[ast.arguments]:
    """Give the parameters of every method of this name in our classes, where they differ."""
    found = {}
    for cls in _our_classes():
        function = vars(cls).get(name)
        if inspect.isfunction(function):
            node = written(function).node
            assert isinstance(node, ast.FunctionDef)
            found[ast.dump(node.args)] = node.args
    return list(found.values())


def _our_classes() -> list[type[Any]]:
    """Give our dataclasses and named tuples, so far as they are imported."""
    return [
        each
        for name, module in list(sys.modules.items())
        if name.startswith("yarnsheets.") and ".page." not in name
        for each in vars(module).values()
        if isinstance(each, type)
        and each.__module__ == name
        and (dataclasses.is_dataclass(each) or hasattr(each, "_fields"))
    ]

"""Names: what is of the function, and what Python knows already while compiling."""

import ast
import builtins
import inspect
from collections.abc import Iterator
from contextlib import contextmanager
from types import ModuleType
from typing import TYPE_CHECKING, Any

from yarnsheets.page.compiler.source import CannotCompile, Written

if TYPE_CHECKING:
    from yarnsheets.page.compiler.program import Program

UNKNOWN = object()  # what has no value before the program runs

_RESERVED = {
    *("arguments", "await", "break", "case", "catch", "class", "const", "continue", "debugger"),
    *("default", "delete", "do", "else", "enum", "eval", "export", "extends", "false", "finally"),
    *("for", "function", "if", "implements", "import", "in", "instanceof", "interface", "let"),
    *("new", "null", "package", "private", "protected", "public", "return", "static", "super"),
    *("switch", "this", "throw", "true", "try", "typeof", "undefined", "var", "void", "while"),
    *("with", "yield", "Array", "Error", "Infinity", "Math", "NaN", "Number", "py"),
}


def safe(name: str) -> str:
    """Give a local name that JavaScript, or the program, does not keep for itself."""
    return f"{name}_" if name in _RESERVED else name


def names_in(target: ast.AST) -> set[str]:
    """Give every name that stands in some syntax."""
    return {each.id for each in ast.walk(target) if isinstance(each, ast.Name)}


class Names:
    """Knows the names in one function."""

    def __init__(self, program: "Program", definition: Written) -> None:
        self.program = program
        self.definition = definition
        self.sheet_name: str | None = None  # what a sheet's method calls the sheet
        self.signatures: dict[str, ast.arguments] = {}  # of the functions inside this one
        self._local: list[set[str]] = []

    def stop(self, node: ast.AST, construct: str) -> CannotCompile:
        """Give the error that names a construct and its place."""
        return self.definition.stop(node, construct)

    @contextmanager
    def scope(self, names: set[str]) -> Iterator[None]:
        """Know names as local ones for a while."""
        self._local.append(names)
        yield
        self._local.pop()

    def is_local(self, name: str) -> bool:
        """Tell whether a name is of the function rather than of the module."""
        return any(name in names for names in self._local)

    def is_sheet(self, node: ast.expr) -> bool:
        """Tell whether an expression is the sheet itself, in a method of the sheet."""
        return isinstance(node, ast.Name) and node.id == self.sheet_name and self.is_local(node.id)

    def known(self, node: ast.expr) -> Any:
        """Give what a name or attribute of the module stands for; `UNKNOWN` if it is a value."""
        if isinstance(node, ast.Name) and not self.is_local(node.id):
            builtin = vars(builtins).get(node.id, UNKNOWN)
            return vars(self.definition.module).get(node.id, builtin)
        if isinstance(node, ast.Attribute):
            if self.is_sheet(node.value):
                return self._of_sheet(node)
            owner = self.known(node.value)
            if owner is not UNKNOWN and not isinstance(owner, dict):
                return getattr(owner, node.attr, UNKNOWN)
        return UNKNOWN

    def _of_sheet(self, node: ast.Attribute) -> Any:
        """Give a method, property or constant of the sheet; an input is a value."""
        sheet = self.program.sheet
        if node.attr in {*sheet.inputs(), "measure", "grist_unit"}:
            return UNKNOWN
        found = inspect.getattr_static(sheet, node.attr, UNKNOWN)
        is_own = isinstance(found, staticmethod | property) or inspect.isfunction(found)
        if is_own or isinstance(found, str | int | float | tuple | dict):
            return found
        raise self.stop(node, f"{ast.unparse(node)}: no input, method or constant of the sheet")

    def constant(self, node: ast.expr, value: Any) -> str:
        """Write what Python has worked out: a function, a class or a value of the module."""
        try:
            if inspect.isfunction(value) or hasattr(value, "__wrapped__"):
                return self.program.name_of_function(value)
            if isinstance(value, type):
                return self.program.name_of_class(value)
            if isinstance(node, ast.Name):
                module = self.definition.module.__name__
                return self.program.name_of_constant(module, node.id, value)
            owner = self.known(node.value) if isinstance(node, ast.Attribute) else None
            if isinstance(owner, ModuleType) and owner.__name__.startswith("yarnsheets."):
                assert isinstance(node, ast.Attribute)
                return self.program.name_of_constant(owner.__name__, node.attr, value)
            return self.program.literal(value)
        except CannotCompile as reason:
            raise self.stop(node, f"{ast.unparse(node)}: {reason}") from reason

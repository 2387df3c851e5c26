"""Where a function or class was written: its syntax tree, file and line."""

import ast
import inspect
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import Any


class CannotCompile(Exception):  # noqa: N818 - it says what cannot be compiled, and where
    """File, line and construct at which the compiler stops."""


@dataclass(frozen=True)
class Written:
    """A definition in a module's source."""

    node: ast.AST
    module: ModuleType
    file: str

    def stop(self, node: ast.AST, construct: str) -> CannotCompile:
        """Give the error that names a construct and its place."""
        return CannotCompile(f"{self.file}:{getattr(node, 'lineno', 0)}: {construct}")


def is_ours(thing: Any) -> bool:
    """Tell whether a function or class is of this package, so that its source is compiled."""
    return str(getattr(thing, "__module__", "")).startswith("yarnsheets.")


def written(thing: Callable[..., Any] | type) -> Written:
    """Find where a function or class of ours was written."""
    plain: Any = inspect.unwrap(thing)
    module = inspect.getmodule(plain)
    if module is None or not is_ours(plain):
        msg = f"{plain!r}: not ours, and not among what the compiler knows"
        raise CannotCompile(msg)
    found, file = _definitions(module)
    if plain.__qualname__ not in found:
        msg = f"{file}: {plain.__qualname__}: not defined at the module's or a class's level"
        raise CannotCompile(msg)
    return Written(found[plain.__qualname__], module, file)


@cache
def _definitions(module: ModuleType) -> tuple[dict[str, ast.AST], str]:
    file = Path(inspect.getsourcefile(module) or "")
    found: dict[str, ast.AST] = {}

    def collect(body: list[ast.stmt], prefix: str) -> None:
        for node in body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                found[prefix + node.name] = node
                if isinstance(node, ast.ClassDef):
                    collect(node.body, f"{prefix}{node.name}.")

    collect(ast.parse(file.read_text("utf-8")).body, "")
    return found, str(file)

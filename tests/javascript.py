"""Runs compiled Python in a JavaScript engine."""

from __future__ import annotations

import importlib.util
import json
import shutil
import subprocess
import sys
from contextlib import contextmanager
from typing import TYPE_CHECKING, Any

from tests.browser import missing
from yarnsheets.page.compiler import runtime
from yarnsheets.page.compiler.program import Program
from yarnsheets.page.sheet import Sheet

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping
    from pathlib import Path
    from types import ModuleType

    Call = tuple[str, tuple[Any, ...]]

# Reads a program and calls of its functions, and answers each call on a line.
_RUNNER = """
const fs = require("node:fs");
const { program, calls } = JSON.parse(fs.readFileSync(0, "utf8"));
const { py, functions } = new Function(`"use strict"; ${program}`)();
const exact = (_, x) => (typeof x === "number" && !Number.isFinite(x) ? String(x) : x);
for (const [name, given] of calls) {
  let answer;
  try {
    answer = { gives: py.plain(functions[name](...given)) };
  } catch (error) {
    answer = { raises: String(error) };
  }
  console.log(JSON.stringify(answer, exact));
}
"""


def node() -> str:
    """Return the path of Node.js."""
    return shutil.which("node") or missing("node")


@contextmanager
def loaded(file: Path) -> Iterator[ModuleType]:
    """Load a file as a module of the package, since the compiler takes nothing else."""
    name = f"yarnsheets.{file.stem}"
    spec = importlib.util.spec_from_file_location(name, file)
    assert spec is not None
    assert spec.loader is not None
    module = sys.modules[name] = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    yield module
    del sys.modules[name]


def compiled(functions: Mapping[str, Callable[..., Any]]) -> str:
    """Compile functions of the package."""
    made = Program(Sheet)
    names = {name: made.name_of_function(function) for name, function in functions.items()}
    made.write_reached()
    return with_runtime(made.text(), names)


def with_runtime(text: str, names: Mapping[str, str]) -> str:
    """Put the runtime before a program, and offer functions of both by name."""
    offered = ", ".join(f"{name}: {written}" for name, written in names.items())
    return f"const py = {runtime()};\n{text}\nreturn {{ py, functions: {{ {offered} }} }};"


def in_javascript(program: str, calls: Iterable[Call]) -> list[dict[str, Any]]:
    """Call functions of a program; give what each gives, or raises."""
    done = subprocess.run(
        [node(), "-e", _RUNNER],
        input=json.dumps({"program": program, "calls": list(calls)}),
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr[-2000:]
    return [json.loads(line) for line in done.stdout.splitlines()]

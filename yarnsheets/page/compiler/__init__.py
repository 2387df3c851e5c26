"""From a sheet's Python to JavaScript that gives the same answers in a page.

The compiler starts at a sheet's `work_out` and `unused`, follows what they reach, and stops at
whatever is not in this subset of Python, with file, line and construct.

- Functions of a module, methods and properties of the sheet, functions inside functions, lambda;
  defaults that are constant, arguments by name, `*` but not `**`; `@cache` is left out.
- Frozen dataclasses, which may inherit, and named tuples, with methods, properties, `__str__`,
  `__contains__`, `__post_init__` and `dataclasses.replace`; members of enums, as constants. A
  method's name has the same parameters in all our classes.
- `if`, `for`, `while`, `break`, `continue`, `raise`, `assert`, which is left out; assignment to
  names, to several at once and to items; comprehensions, whose generators are lists at once.
- Numbers, words, lists, tuples, dicts, sets (`|` and `in`), all compared by value; the
  conditional, the walrus, chained comparisons; items, slices and `[::-1]`.
- f-strings: `{x}` of whole numbers and words, and the formats `,` `d` `,.2f` `.1%` `g` `.4g`.
- Of Python's library what `calls.py` lists, and `units.convert` between two units spelt out.
- Constants of a module: Python works them out, and they are written as literals.

Whole numbers and decimals are one type. Dividing by nought, a number too large and the root of a
negative number give an infinity or no number and do not raise, so a sheet guards against them. The
contract test compares both sides.
"""

from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING, Any

from yarnsheets.page import reading, text, ways
from yarnsheets.page.compiler.program import Program
from yarnsheets.page.compiler.source import CannotCompile

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

__all__ = ["CannotCompile", "program", "runtime"]

# The rules of writing and reading that the page shares with Python, beside the sheet's own.
_RULES: tuple[Callable[..., Any], ...] = (
    *(text.show, text.money, text.fill, text.opened, text.said, text.holds, text.in_unit),
    *(text.to_shown, text.to_own),
    *(reading.read_number, reading.read_lines, reading.read_pairs),
    *(reading.written, reading.outside, reading.takes),
    *(reading.round_step, reading.round_above),
    *ways.FORMULAS,
)


@cache
def program(sheet: "type[Sheet]") -> str:
    """Give a sheet's program: the text of an expression that gives an object of functions."""
    made = Program(sheet)
    work_out, unused = map(made.name_of_function, (sheet.work_out, sheet.unused))
    own_rules = [rule for asked in sheet.inputs().values() for rule in asked.rules]
    rules = {rule.__name__: made.name_of_function(rule) for rule in (*_RULES, *own_rules)}
    made.write_reached()
    nothing = made.literal(sheet.nothing())
    offered = ",\n".join(f"    {name}: {emitted}" for name, emitted in rules.items())
    return f"""(() => {{
  "use strict";
const py = {runtime()};
{made.text()}
  const nothing = {nothing};
  return {{
    work_out: (values, choice) => ({{
      ...structuredClone(nothing),
      ...py.plain({work_out}({{ ...values, ...choice }})),
    }}),
    unused: {unused},
{offered},
  }};
}})()"""


@cache
def runtime() -> str:
    """Give the text of what Python does and JavaScript does not, without its opening comment."""
    written = Path(__file__).with_name("runtime.js").read_text("utf-8")
    return written.partition("*/")[2].strip()

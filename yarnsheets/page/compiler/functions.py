"""Functions and their statements."""

import ast
from collections.abc import Callable, Iterator
from typing import TYPE_CHECKING, Any

from yarnsheets.page.compiler.bindings import bound, bound_once, stored
from yarnsheets.page.compiler.calls import Calls
from yarnsheets.page.compiler.expressions import parameter_names
from yarnsheets.page.compiler.names import safe
from yarnsheets.page.compiler.source import Written, written

if TYPE_CHECKING:
    from yarnsheets.page.compiler.program import Program

# Only these leave a function what it is.
_DECORATORS = {"cache", "lru_cache", "property", "staticmethod"}


def write_function(program: "Program", function: Callable[..., Any], name: str) -> list[str]:
    """Write a function of a module, or a method of the sheet as a function of the sheet."""
    definition = written(function)
    writer = Writer(program, definition)
    assert isinstance(definition.node, ast.FunctionDef)
    if program.is_sheets_method(function):
        writer.sheet_name = definition.node.args.args[0].arg
    return writer.function(definition.node, f"function {name}")


def write_method(
    program: "Program", definition: Written, node: ast.FunctionDef, opening: str
) -> list[str]:
    """Write a method of a class; what it calls itself by is `this`."""
    writer = Writer(program, definition)
    itself, *others = node.args.args
    args = ast.arguments(**{**vars(node.args), "args": others})
    plain = ast.FunctionDef(**{**vars(node), "args": args})
    with writer.scope({itself.arg}):
        return writer.function(plain, opening, f"const {safe(itself.arg)} = this;")


class Writer(Calls):
    """Writes one function; `visit_` of a statement gives its lines."""

    def __init__(self, program: "Program", definition: Written) -> None:
        super().__init__(program, definition)
        self._once: set[str] = set()  # names bound once, which are constants

    def function(self, node: ast.FunctionDef, opening: str, *first: str) -> list[str]:
        """Write a function with its parameters, its local names and its body."""
        for each in node.decorator_list:
            if ast.unparse(each).partition("(")[0].rpartition(".")[2] not in _DECORATORS:
                raise self.stop(each, f"@{ast.unparse(each)}")
        params, own = self.parameters(node.args), set(parameter_names(node.args))
        inside = {each.name: each.args for each in node.body if isinstance(each, ast.FunctionDef)}
        names = set(bound(node.body)) - own
        outer, self._once = self._once, bound_once(node)
        changing = [safe(name) for name in sorted(names - self._once - inside.keys())]
        declared = [f"let {', '.join(changing)};"] if changing else []
        with self.scope(own | names):
            self.signatures |= inside
            body = self.body(node.body)
        self._once = outer
        return [
            f"{opening}({params}) {{",
            *(f"  {line}" for line in [*first, *declared]),
            *body,
            "}",
        ]

    def body(self, statements: list[ast.stmt]) -> list[str]:
        """Write statements, each on lines of its own."""
        return [f"  {line}" for each in statements for line in self.visit(each)]

    def visit_Expr(self, node: ast.Expr) -> Iterator[str]:
        """Write an expression by itself; a docstring is left out."""
        if not isinstance(node.value, ast.Constant):
            yield f"{self.value(node.value)};"

    def visit_Pass(self, _node: ast.Pass) -> Iterator[str]:
        """Write nothing."""
        yield from ()

    def visit_Assert(self, _node: ast.Assert) -> Iterator[str]:
        """Write nothing: it is seen to while Python runs it."""
        yield from ()

    def visit_Return(self, node: ast.Return) -> Iterator[str]:
        """Write a return."""
        yield f"return {self.value(node.value) if node.value else 'null'};"

    def visit_Raise(self, node: ast.Raise) -> Iterator[str]:
        """Write an error with its words."""
        if not isinstance(node.exc, ast.Call):
            raise self.stop(node, "raise of anything but a new error")
        yield f"throw new Error({', '.join(map(self.value, node.exc.args))});"

    def visit_Break(self, _node: ast.Break) -> Iterator[str]:
        """Write a break."""
        yield "break;"

    def visit_Continue(self, _node: ast.Continue) -> Iterator[str]:
        """Write a continue."""
        yield "continue;"

    def visit_If(self, node: ast.If) -> Iterator[str]:
        """Write an if with its else, and an else that is an if as one chain."""
        yield f"if ({self.test(node.test)}) {{"
        yield from self.body(node.body)
        while len(node.orelse) == 1 and isinstance(node.orelse[0], ast.If):
            node = node.orelse[0]
            yield f"}} else if ({self.test(node.test)}) {{"
            yield from self.body(node.body)
        if node.orelse:
            yield "} else {"
            yield from self.body(node.orelse)
        yield "}"

    def visit_For(self, node: ast.For) -> Iterator[str]:
        """Write a loop over a list."""
        new, target = self._new(node.target), self.target(node.target)
        listed = self.list_(node.iter)
        if listed.startswith("py.range("):  # the loop may end long before the range does
            listed = listed.replace("range", "counted", 1)
        yield from self._loop(node, f"for ({new}{target} of {listed})")

    def visit_While(self, node: ast.While) -> Iterator[str]:
        """Write a loop while something holds."""
        yield from self._loop(node, f"while ({self.test(node.test)})")

    def _loop(self, node: ast.For | ast.While, opening: str) -> Iterator[str]:
        if node.orelse:
            raise self.stop(node, "a loop with an else")
        yield f"{opening} {{"
        yield from self.body(node.body)
        yield "}"

    def visit_Assign(self, node: ast.Assign) -> Iterator[str]:
        """Write an assignment."""
        if len(node.targets) > 1:
            raise self.stop(node, "several assignments in one")
        yield self._assigned(node.targets[0], self.value(node.value))

    def visit_AnnAssign(self, node: ast.AnnAssign) -> Iterator[str]:
        """Write an assignment; what its type is said to be is left out."""
        if node.value:
            yield self._assigned(node.target, self.value(node.value))

    def visit_AugAssign(self, node: ast.AugAssign) -> Iterator[str]:
        """Write a change of what a name or an item holds."""
        held = ast.parse(ast.unparse(node.target), mode="eval").body
        changed = ast.BinOp(held, node.op, node.value)
        for each in [*ast.walk(held), changed]:
            ast.copy_location(each, node)
        yield self._assigned(node.target, self.value(changed))

    def _assigned(self, target: ast.expr, value: str) -> str:
        """Write a value into a name, names or an item."""
        if isinstance(target, ast.Subscript):
            return f"py.setitem({self.value(target.value)}, {self.value(target.slice)}, {value});"
        return f"{self._new(target)}{self.target(target)} = {value};"

    def _new(self, target: ast.expr) -> str:
        """Declare a target's names here, if here alone they get a value."""
        return "const " if stored(target) <= self._once else ""

    def visit_FunctionDef(self, node: ast.FunctionDef) -> list[str]:
        """Write a function inside a function."""
        if self.signatures.get(node.name) is not node.args:
            raise self.stop(node, "a function inside a branch or a loop")
        if node.decorator_list:
            raise self.stop(node, "a decorated function inside another")
        return self.function(node, f"function {safe(node.name)}")

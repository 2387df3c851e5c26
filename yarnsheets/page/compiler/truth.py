"""What counts as true, and comparisons."""

import ast
import enum
import math
from collections.abc import Sequence

from yarnsheets.page.compiler.expressions import Expressions, body, bracketed

_COMPARED = {ast.Lt: "<", ast.LtE: "<=", ast.Gt: ">", ast.GtE: ">="}
_TELLS = (isinstance, any, all, bool, math.isfinite, math.isnan)


class Truth(Expressions):
    """Writes tests, each as true or false where JavaScript would take something else for it."""

    def test(self, node: ast.expr) -> str:
        """Write whether a value counts as true."""
        if isinstance(node, ast.BoolOp):
            sign = " && " if isinstance(node.op, ast.And) else " || "
            return sign.join(bracketed(self.test(each)) for each in node.values)
        text = self.value(node)
        return text if self.is_true_or_false(node) else f"py.truth({text})"

    def is_true_or_false(self, node: ast.expr) -> bool:
        """Tell whether a value is surely true or false."""
        if isinstance(node, ast.BoolOp):
            return all(map(self.is_true_or_false, node.values))
        if isinstance(node, ast.UnaryOp):
            return isinstance(node.op, ast.Not)
        if isinstance(node, ast.Call):
            if isinstance(node.func, ast.Attribute) and node.func.attr in (
                "startswith",
                "endswith",
            ):
                return True
            called = self.known(node.func)
            returned = getattr(called, "__annotations__", {}).get("return")
            return called in _TELLS or returned in (bool, "bool")
        is_constant = isinstance(node, ast.Constant) and isinstance(node.value, bool)
        return is_constant or isinstance(node, ast.Compare)

    def visit_BoolOp(self, node: ast.BoolOp) -> str:
        """Write an and or an or, whose value is one of its parts."""
        if self.is_true_or_false(node):
            return f"({self.test(node)})"
        name = "and" if isinstance(node.op, ast.And) else "or"
        *rest, last = map(self.value, node.values)
        for each in reversed(rest):
            last = f"py.{name}({each}, () => {body(last)})"
        return last

    def visit_Compare(self, node: ast.Compare) -> str:
        """Write a comparison; a chain of them works out each value once."""
        sides = [node.left, *node.comparators]
        simple = ast.Name | ast.Constant | ast.Attribute
        if all(isinstance(side, simple) for side in sides[1:-1]):
            return f"({self._chain(sides, node.ops)})"
        names = [ast.copy_location(ast.Name(f"side{at}"), side) for at, side in enumerate(sides)]
        values = ", ".join(map(self.value, sides))
        with self.scope({name.id for name in names}):
            chain = self._chain(names, node.ops)
        return f"(({', '.join(name.id for name in names)}) => {chain})({values})"

    def _chain(self, sides: Sequence[ast.expr], ops: list[ast.cmpop]) -> str:
        return " && ".join(map(self._compared, sides, ops, sides[1:]))

    def _compared(self, left: ast.expr, op: ast.cmpop, right: ast.expr) -> str:
        values = f"{self.value(left)}, {self.value(right)}"
        if type(op) in _COMPARED:
            sign = _COMPARED[type(op)]
            if isinstance(left, ast.Tuple | ast.List) or isinstance(right, ast.Tuple | ast.List):
                return f"py.order({values}) {sign} 0"
            return f"{self.part(left)} {sign} {self.part(right)}"
        if isinstance(op, ast.In | ast.NotIn):
            sign = "" if isinstance(op, ast.In) else "!"
            return f"{sign}py.has({self.value(right)}, {self.value(left)})"
        is_same = isinstance(op, ast.Is | ast.IsNot)
        is_not = isinstance(op, ast.NotEq | ast.IsNot)
        if is_same or any(map(self._is_simple, (left, right))):
            return f"{self.part(left)} {'!==' if is_not else '==='} {self.part(right)}"
        return f"{'!' if is_not else ''}py.eq({values})"

    def _is_simple(self, node: ast.expr) -> bool:
        """Tell whether a value is the same as another only if JavaScript says so."""
        return isinstance(node, ast.Constant) or isinstance(self.known(node), enum.Enum)

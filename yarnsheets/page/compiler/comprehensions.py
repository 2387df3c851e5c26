"""Lists, sets and dicts made by going through others, and what `any` and `all` look for."""

import ast
from collections.abc import Callable

from yarnsheets.page.compiler.expressions import body, bracketed
from yarnsheets.page.compiler.names import names_in, safe
from yarnsheets.page.compiler.truth import Truth


class Comprehensions(Truth):
    """Writes comprehensions; a generator is a list at once."""

    def target(self, node: ast.expr) -> str:
        """Write what a value is put into."""
        if isinstance(node, ast.Name):
            return safe(node.id)
        if isinstance(node, ast.Tuple | ast.List):
            if any(isinstance(each, ast.Starred) for each in node.elts[:-1]):
                raise self.stop(node, "a list of the rest, other than at the end")
            return f"[{', '.join(map(self.target, node.elts))}]"
        if isinstance(node, ast.Starred):
            return f"...{self.target(node.value)}"
        raise self.stop(node, f"a value put into {type(node).__name__}")

    def made(self, generators: list[ast.comprehension], make: Callable[[], str]) -> str:
        """Write a list made by going through others."""
        first, *rest = generators
        text = self.list_(first.iter)
        with self.scope(names_in(first.target)):
            target, tests = self.target(first.target), list(map(self.test, first.ifs))
            value = self.made(rest, make) if rest else make()
        if any(isinstance(each, ast.NamedExpr) for test in first.ifs for each in ast.walk(test)):
            # what a test gives a name is for this member, before the next one is tested
            passes, listed = _all(tests), value if rest else f"[{value}]"
            return f"{text}.flatMap(({target}) => ({passes} ? {listed} : []))"
        text += "".join(f".filter(({target}) => {test})" for test in tests)
        if tests and value == target:
            return text
        return f"{text}.{'flatMap' if rest else 'map'}(({target}) => {body(value)})"

    def visit_ListComp(self, node: ast.ListComp | ast.GeneratorExp) -> str:
        """Write a list made from others."""
        names = set().union(*(names_in(each.target) for each in node.generators))
        if isinstance(node.elt, ast.Lambda) and names & names_in(node.elt.body):
            # in Python it has the variable's last value, in JavaScript its own
            raise self.stop(node.elt, "a function that keeps a comprehension's variable")
        return self.made(node.generators, lambda: self.value(node.elt))

    visit_GeneratorExp = visit_ListComp

    def visit_SetComp(self, node: ast.SetComp) -> str:
        """Write a set made from lists."""
        return f"py.set({self.made(node.generators, lambda: self.value(node.elt))})"

    def visit_DictComp(self, node: ast.DictComp) -> str:
        """Write a dict made from lists."""
        pair = ast.copy_location(ast.List([node.key, node.value], ast.Load()), node)
        return f"py.dict({self.made(node.generators, lambda: self.value(pair))})"

    def some(self, node: ast.Call, method: str) -> str:
        """Write whether some or every member passes a test, looking no further than it must."""
        listed = node.args[0]
        if isinstance(listed, ast.GeneratorExp):
            return self._passes(listed.generators, listed.elt, method)
        return f"{self.list_(listed)}.{method}(py.truth)"

    def _passes(self, generators: list[ast.comprehension], test: ast.expr, method: str) -> str:
        first, *rest = generators
        text = self.list_(first.iter)
        with self.scope(names_in(first.target)):
            target, tests = self.target(first.target), list(map(self.test, first.ifs))
            passes = self._passes(rest, test, method) if rest else self.test(test)
        if tests and method == "some":
            passes = _all([*tests, passes])
        elif tests:
            passes = f"!({_all(tests)}) || {bracketed(passes)}"
        return f"{text}.{method}(({target}) => {passes})"


def _all(tests: list[str]) -> str:
    return " && ".join(map(bracketed, tests))

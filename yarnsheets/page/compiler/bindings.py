"""Which names a function binds, and which of them are bound once and so are constants."""

import ast
from collections import Counter
from collections.abc import Iterator
from typing import TypeGuard

from yarnsheets.page.compiler.names import names_in


def stored(target: ast.expr) -> set[str]:
    """Give the names that a target binds; an item's list and place are only read."""
    return {each.id for each in ast.walk(target) if _is_stored(each)}


def bound(body: list[ast.stmt]) -> list[str]:
    """Give every name that statements bind, as often as they do."""
    return [name for each in body for name in _bound_in(each)]


def _is_stored(node: ast.AST) -> TypeGuard[ast.Name]:
    return isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store)


def _bound_in(node: ast.AST) -> Iterator[str]:
    if isinstance(node, ast.FunctionDef):
        yield node.name
    elif _is_stored(node):
        yield node.id
    else:
        for each in _same_scope(node):
            yield from _bound_in(each)


def _same_scope(node: ast.AST) -> Iterator[ast.AST]:
    """Go on to what is inside; a walrus in a comprehension binds out here, its own names do not."""
    if isinstance(node, ast.Lambda):
        yield node.body
    elif isinstance(node, ast.comprehension):
        yield from (node.iter, *node.ifs)
    else:
        yield from ast.iter_child_nodes(node)


def bound_once(node: ast.FunctionDef) -> set[str]:
    """Give the names bound by one statement alone, directly in the function or as a loop's own."""
    count = Counter(bound(node.body))
    constant = set().union(*map(_direct, node.body), *_own_of_loops(node))
    given = {each.arg for each in ast.walk(node.args) if isinstance(each, ast.arg)}
    once = {name for name, times in count.items() if times == 1 and name in constant - given}
    # names that are bound together are constants together, or none of them is
    together = [stored(target) for each in ast.walk(node) for target in _targets(each)]
    while mixed := [names for names in together if names & once and not names <= once]:
        once -= set().union(*mixed)
    return once


def _direct(node: ast.stmt) -> set[str]:
    """Give the names that an assignment binds, without what is bound on the way."""
    return set() if isinstance(node, ast.For) else set().union(*map(stored, _targets(node)))


def _own_of_loops(node: ast.FunctionDef) -> Iterator[set[str]]:
    """Give each loop's names that stand nowhere but in the loop, and that no function keeps.

    A function kept beyond its turn of the loop finds the last value there in Python.
    """
    for loop in ast.walk(node):
        if isinstance(loop, ast.For):
            inside = list(ast.walk(loop))
            within = {id(each) for each in inside}
            outside = [each for each in ast.walk(node) if id(each) not in within]
            kept = [each for each in inside if isinstance(each, ast.Lambda | ast.FunctionDef)]
            yield stored(loop.target).difference(
                *(names_in(each) for each in outside if isinstance(each, ast.Name)),
                *map(names_in, kept),
            )


def _targets(node: ast.AST) -> list[ast.expr]:
    if isinstance(node, ast.Assign):
        return node.targets
    return [node.target] if isinstance(node, ast.For | ast.AnnAssign) else []

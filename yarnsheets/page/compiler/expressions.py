"""Expressions: what has a value."""

import ast
import re
from types import ModuleType
from typing import Any

from yarnsheets.page.compiler.names import UNKNOWN, Names, names_in, safe

_COMPUTED = {ast.Sub: "-", ast.Mult: "*", ast.Div: "/", ast.Pow: "**"}
_CALLED = {ast.FloorDiv: "floordiv", ast.Mod: "mod", ast.BitOr: "merge"}
_LISTS = ast.List | ast.Tuple | ast.ListComp | ast.GeneratorExp
_MADE_LIST = re.compile(
    r"py\.(iter|pairs|values|range|enumerate|zip|reversed|sorted|map|filter"
    r"|pairwise|chain|accumulate)\("
)
_FORMAT = re.compile(r",?d?|,?(\.\d+)?f|(\.\d+)?%|(\.([2-9]|1\d))?g")  # as py.format reads it


class Expressions(Names, ast.NodeVisitor):
    """Writes values; each `visit_` gives an expression with the brackets it needs in another."""

    def generic_visit(self, node: ast.AST) -> Any:
        """Stop at syntax that is not known."""
        raise self.stop(node, type(node).__name__)

    def part(self, node: ast.expr) -> str:
        """Write an expression that stands in another."""
        return str(self.visit(node))

    def value(self, node: ast.expr) -> str:
        """Write an expression, without brackets round the whole."""
        text = self.part(node)
        return text[1:-1] if is_bracketed(text) else text

    def test(self, node: ast.expr) -> str:
        """Write whether a value counts as true."""
        raise NotImplementedError

    def list_(self, node: ast.expr) -> str:
        """Write an expression that is gone through as a list."""
        text = self.value(node)
        is_list = isinstance(node, _LISTS) or _MADE_LIST.match(text)
        return text if is_list else f"py.iter({text})"

    def element(self, node: ast.expr) -> str:
        """Write an element of a list or a call, which may be a list to be laid out."""
        return f"...{self.list_(node.value)}" if isinstance(node, ast.Starred) else self.value(node)

    # ---- constants, names and attributes

    def visit_Constant(self, node: ast.Constant) -> str:
        """Write a number, a text, true, false or none."""
        return self.constant(node, node.value)

    def visit_Name(self, node: ast.Name) -> str:
        """Write a local name, or what a module's name stands for."""
        if self.is_local(node.id):
            return safe(node.id)
        value = self.known(node)
        if value is UNKNOWN:
            raise self.stop(node, f"{node.id}: not known here")
        return self.constant(node, value)

    def visit_Attribute(self, node: ast.Attribute) -> str:
        """Write an attribute: worked out if it is of the module's, or else read."""
        value = self.known(node)
        if isinstance(value, property):  # of the sheet
            assert value.fget
            return f"{self.program.name_of_function(value.fget)}({self.value(node.value)})"
        if value is not UNKNOWN and not isinstance(value, ModuleType):
            return self.constant(node, value)
        return f"{self.part(node.value)}.{node.attr}"

    # ---- lists, dicts, sets, and what is in them

    def visit_List(self, node: ast.List | ast.Tuple) -> str:
        """Write a list or a tuple."""
        return f"[{', '.join(map(self.element, node.elts))}]"

    visit_Tuple = visit_List

    def visit_Set(self, node: ast.Set) -> str:
        """Write a set."""
        return f"py.set([{', '.join(map(self.element, node.elts))}])"

    def visit_Dict(self, node: ast.Dict) -> str:
        """Write a dict: a plain object if its keys are words; another dict in it is merged."""
        merged: list[str] = []
        pairs: list[tuple[ast.expr, ast.expr]] = []
        for key, value in zip(node.keys, node.values, strict=True):
            if key is not None:
                pairs.append((key, value))
                continue
            merged += [*([self._pairs(pairs)] if pairs else []), self.value(value)]
            pairs = []
        if pairs or not merged:
            merged.append(self._pairs(pairs))
        return merged[0] if len(merged) == 1 else f"py.merge({', '.join(merged)})"

    def _pairs(self, pairs: list[tuple[ast.expr, ast.expr]]) -> str:
        words = [key.value for key, _ in pairs if isinstance(key, ast.Constant)]
        if pairs and len(words) == len(pairs) and all(map(is_word, words)):
            keys = [str(word) if is_name(word) else self.program.literal(word) for word in words]
            values = [self.value(value) for _, value in pairs]
            return f"{{ {', '.join(map(': '.join, zip(keys, values, strict=True)))} }}"
        listed = [f"[{self.value(key)}, {self.value(value)}]" for key, value in pairs]
        return f"py.dict([{', '.join(listed)}])"

    def visit_Subscript(self, node: ast.Subscript) -> str:
        """Write an item or a slice."""
        owner = self.value(node.value)
        if not isinstance(node.slice, ast.Slice):
            return f"py.item({owner}, {self.value(node.slice)})"
        ends = [node.slice.lower, node.slice.upper]
        if node.slice.step:
            if any(ends) or ast.unparse(node.slice.step) != "-1":
                raise self.stop(node, "a slice with a step, other than [::-1]")
            return f"py.reversed({owner})"
        start, end = ("null" if each is None else self.value(each) for each in ends)
        return f"py.slice({owner}, {start}, {end})"

    # ---- texts

    def visit_JoinedStr(self, node: ast.JoinedStr) -> str:
        """Write a text with values in it."""
        parts = []
        for each in node.values:
            if isinstance(each, ast.FormattedValue):
                parts.append(f"${{{self._formatted(each)}}}")
            else:
                text = self.value(each)[1:-1]
                parts.append(text.replace("`", "\\`").replace("${", "\\${"))
        return f"`{''.join(parts)}`"

    def _formatted(self, node: ast.FormattedValue) -> str:
        value = self.value(node.value)
        if node.conversion != -1:
            raise self.stop(node, "a conversion in an f-string")
        if node.format_spec is None:
            return value if self.is_text(node.value) else f"py.str({value})"
        spec = self.value(node.format_spec)
        if "${" not in spec and not _FORMAT.fullmatch(spec[1:-1]):
            raise self.stop(node, f"the format {spec[1:-1]}")
        return f"py.format({value}, {spec})"

    def is_text(self, node: ast.expr) -> bool:
        """Tell whether a value is surely a text."""
        if isinstance(node, ast.Constant):
            return isinstance(node.value, str)
        if isinstance(node, ast.Call):
            returned = getattr(self.known(node.func), "__annotations__", {}).get("return")
            return returned in (str, "str")
        return isinstance(node, ast.JoinedStr)

    # ---- arithmetic

    def visit_UnaryOp(self, node: ast.UnaryOp) -> str:
        """Write a sign or a not."""
        if isinstance(node.op, ast.Not):
            return f"!{bracketed(self.test(node.operand))}"
        if isinstance(node.op, ast.USub):
            return f"(-{self.part(node.operand)})"
        raise self.stop(node, type(node.op).__name__)

    def visit_BinOp(self, node: ast.BinOp) -> str:
        """Write arithmetic, texts or lists put together, dicts and sets merged."""
        op, sides = type(node.op), (node.left, node.right)
        left, right = map(self.part, sides)
        values = ", ".join(map(self.value, sides))
        if op is ast.Add:
            is_sure = any(map(self.is_text, sides)) or any(map(_is_number, sides))
            return f"({left} + {right})" if is_sure else f"py.add({values})"
        if op is ast.Mult and any(map(self._is_repeated, sides)):
            return f"py.repeat({values})"
        if op in _COMPUTED:
            return f"({left} {_COMPUTED[op]} {right})"
        if op not in _CALLED or self.is_text(node.left):
            raise self.stop(node, op.__name__)
        return f"py.{_CALLED[op]}({values})"

    def _is_repeated(self, node: ast.expr) -> bool:
        return isinstance(node, ast.List | ast.Tuple) or self.is_text(node)

    def visit_IfExp(self, node: ast.IfExp) -> str:
        """Write one of two values."""
        yes, no = self.value(node.body), self.value(node.orelse)
        return f"({self.test(node.test)} ? {yes} : {no})"

    def visit_NamedExpr(self, node: ast.NamedExpr) -> str:
        """Write a value that gets a name on the way."""
        return f"({safe(node.target.id)} = {self.value(node.value)})"

    # ---- functions without a name

    def visit_Lambda(self, node: ast.Lambda) -> str:
        """Write a function without a name."""
        params = self.parameters(node.args)
        with self.scope(set(parameter_names(node.args))):
            return f"(({params}) => {body(self.value(node.body))})"

    def parameters(self, args: ast.arguments) -> str:
        """Write parameters: those by keyword alone stand before a list of all others."""
        if args.kwarg:
            raise self.stop(args.kwarg, f"**{args.kwarg.arg}")
        plain = [*args.posonlyargs, *args.args]
        defaults = [None] * (len(plain) - len(args.defaults)) + list(args.defaults)
        written = []
        for arg, default in zip(
            [*plain, *args.kwonlyargs], [*defaults, *args.kw_defaults], strict=True
        ):
            if default and any(map(self.is_local, names_in(default))):
                # Python works it out once, where the function stands; JavaScript at every call
                raise self.stop(default, f"a default of {arg.arg} that is not constant")
            written.append(safe(arg.arg) + (f" = {self.value(default)}" if default else ""))
        return ", ".join([*written, *([f"...{safe(args.vararg.arg)}"] if args.vararg else [])])


def parameter_names(args: ast.arguments) -> list[str]:
    """Give the names of all parameters."""
    every = [*args.posonlyargs, *args.args, *args.kwonlyargs, *filter(None, [args.vararg])]
    return [each.arg for each in every]


def is_word(key: Any) -> bool:
    """Tell whether a dict's key keeps its place in a plain object."""
    return isinstance(key, str) and not key.isdigit()


def is_name(word: Any) -> bool:
    """Tell whether a word can stand in JavaScript without quotes."""
    return re.fullmatch(r"[A-Za-z_]\w*", word, re.ASCII) is not None


def is_bracketed(text: str) -> bool:
    """Tell whether one pair of brackets goes round the whole."""
    if not (text.startswith("(") and text.endswith(")")):
        return False
    outside_texts = re.sub(r"\"(\\.|[^\"\\])*\"|`(\\.|[^`\\])*`", "", text)
    depth = 0
    for at, sign in enumerate(outside_texts):
        depth += (sign in "([{") - (sign in ")]}")
        if depth == 0 and at < len(outside_texts) - 1:
            return False
    return True


def bracketed(text: str) -> str:
    """Put brackets round an expression unless it is a name, a call or bracketed."""
    is_plain = re.fullmatch(r"[\w.$]+(\([\w.$, ]*\))?", text) or is_bracketed(text)
    return text if is_plain else f"({text})"


def body(text: str) -> str:
    """Give an arrow function's body: an object would be read as a block."""
    return f"({text})" if text.startswith("{") else text


def _is_number(node: ast.expr) -> bool:
    """Tell whether a value is surely a number."""
    if isinstance(node, ast.BinOp):
        is_sum = isinstance(node.op, ast.Mult | ast.Add)
        makes_number = isinstance(node.op, ast.Sub | ast.Div | ast.Pow)
        return makes_number or (is_sum and (_is_number(node.left) or _is_number(node.right)))
    if isinstance(node, ast.UnaryOp):
        return isinstance(node.op, ast.USub)
    return isinstance(node, ast.Constant) and isinstance(node.value, int | float)

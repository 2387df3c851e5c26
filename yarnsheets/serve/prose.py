"""The prose of a worksheet as HTML, its formulas as MathML, which a browser draws by itself."""

from __future__ import annotations

from html import escape

from latex2mathml.converter import convert
from voila.exporter import VoilaMarkdownRenderer


class Prose(VoilaMarkdownRenderer):  # type: ignore[misc]  # Voila has no type hints
    """Markdown to HTML: pictures are built in, and formulas need no script."""

    def inline_math(self, body: str) -> str:
        """Set a formula in the line."""
        return mathml(body)

    def block_math(self, body: str) -> str:
        """Set a formula on a line of its own."""
        return mathml(body, "block")

    def latex_environment(self, name: str, body: str) -> str:
        """Set a named group of formulas."""
        return mathml(f"\\begin{{{name}}}{body}\\end{{{name}}}", "block")


def mathml(formula: str, display: str = "inline") -> str:
    """Return a formula as MathML; one that cannot be read stays as it was typed.

    >>> mathml("a")[-30:]
    '<mrow><mi>a</mi></mrow></math>'
    >>> mathml("")
    '<code></code>'
    """
    try:
        return str(convert(formula.strip(" $\n"), display=display))
    except Exception:  # noqa: BLE001  # its errors have nothing in common
        return f"<code>{escape(formula)}</code>"

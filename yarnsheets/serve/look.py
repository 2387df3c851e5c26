"""The pages that are no worksheets: the list of them, and words for what went wrong."""

from __future__ import annotations

from functools import cache
from pathlib import PurePath

from jinja2 import Environment, FileSystemLoader
from markupsafe import Markup

from yarnsheets.serve.files import TEMPLATE, address


def render(template: str, **known: object) -> str:
    """Return a page of our template, as Voila would render it."""
    files = {"colours": address("colours.css"), "look": address("look.js")}
    known = {"base_url": "/", "include_css": include_css, **files, **known}
    return templates().get_template(template).render(known)


@cache
def templates() -> Environment:
    """Return the templates."""
    return Environment(loader=FileSystemLoader(TEMPLATE), autoescape=True)


def include_css(path: str) -> Markup:
    """Return the link to a style sheet, named as Voila's template does."""
    return Markup('<link rel="stylesheet" href="{}">').format(address(PurePath(path).name))

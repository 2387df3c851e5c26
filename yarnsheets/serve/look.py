"""Pages from our templates: a worksheet's, the list of them, and words for what went wrong."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from jinja2 import Environment, FileSystemLoader

from yarnsheets.serve.files import TEMPLATE, linked
from yarnsheets.serve.worksheets import describe

if TYPE_CHECKING:
    from pathlib import Path


def render(template: str, **known: object) -> str:
    """Return a page of our template; what it knows stands where Voila would put it."""
    page_config = {"files": linked(), "home": "/voila/tree", **known}
    return templates().get_template(template).render(base_url="/", page_config=page_config, **known)


def worksheet(path: Path, content: str, template: str = "worksheet.html", **known: object) -> str:
    """Return a worksheet's page around what it says."""
    return render(template, title=describe(path).title, content=content, **known)


@cache
def templates() -> Environment:
    """Return the templates."""
    return Environment(loader=FileSystemLoader(TEMPLATE), autoescape=True)

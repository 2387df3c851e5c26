"""The pages that are no worksheets: the list of them, and words for what went wrong."""

from __future__ import annotations

from functools import cache

from jinja2 import Environment, FileSystemLoader

from yarnsheets.serve.files import TEMPLATE, addresses


def render(template: str, **known: object) -> str:
    """Return a page of our template; what it knows stands where Voila would put it."""
    page_config = {"files": addresses(), **known}
    return templates().get_template(template).render(base_url="/", page_config=page_config, **known)


@cache
def templates() -> Environment:
    """Return the templates."""
    return Environment(loader=FileSystemLoader(TEMPLATE), autoescape=True)

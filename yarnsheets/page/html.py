"""A sheet as HTML that works by itself: no kernel, no server and no network behind it."""

import json
import os
import re
from functools import cache
from html import escape
from pathlib import Path
from typing import TYPE_CHECKING, Any
from uuid import uuid4

from yarnsheets.page.compiler import program

if TYPE_CHECKING:
    from yarnsheets.page.sheet import Sheet

HERE = Path(__file__).parent

# Set for a page that has our style and scripts as files of its own, such as a served one.
LINKED = "YARNSHEETS_LINKED"


def page(sheet: "Sheet") -> str:
    """Give a sheet as part of an HTML page, with what it says now and all that moves it."""
    place = f"yarnsheet-{uuid4().hex[:8]}"
    parts = [f'<div class="yarnsheet" id="{place}"><p class="ys-sentence">{_said(sheet)}</p></div>']
    if not os.environ.get(LINKED):
        parts[:0] = [f"<style>{style()}</style>"]
        parts += [script(built("page.js")), script(built("charts.js"))]
    given = {"values": values(sheet), "choice": choice(sheet)}
    arguments = [json.dumps(each, ensure_ascii=False) for each in (place, sheet.describe())]
    parts += [
        script(
            f"yarnsheets.open({', '.join(arguments)}, {program(type(sheet))}, {json.dumps(given)});"
        )
    ]
    return "\n".join(parts)


def values(sheet: "Sheet") -> dict[str, Any]:
    """Give a sheet's inputs in its own units."""
    return {name: getattr(sheet, name) for name in sheet.inputs()}


def choice(sheet: "Sheet") -> dict[str, str]:
    """Give the units chosen."""
    return {"measure": sheet.measure, "grist_unit": sheet.grist_unit}


def style() -> str:
    """Give the style of a sheet: its colours and its rules."""
    return built("../front/colours.css") + built("../front/sheet.css")


@cache
def built(name: str) -> str:
    """Give a file of the built front end."""
    return (HERE / "built" / name).read_text("utf-8")


def _said(sheet: "Sheet") -> str:
    return escape(sheet.sentence)


def script(text: str) -> str:
    """Give a program as part of an HTML page."""
    # whatever stands in a string, the parser of HTML must not see the end of the script there
    safe = re.sub(r"<(?=/script|!--)", r"\\x3c", text)
    return f"<script>{safe}</script>"

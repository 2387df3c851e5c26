"""The folder of worksheets, and what a list of them says about each.

A notebook's metadata may say where it stands there, as `{"part": "measure", "place": 1}` under
"yarnsheets".
"""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import TYPE_CHECKING, Any, NamedTuple

if TYPE_CHECKING:
    from collections.abc import Mapping

    Notebook = Mapping[str, Any]

PACKAGE = Path(__file__).parent.parent
PICTURES = Path(__file__).parent / "pictures"

PARTS = {
    "learn": "Learn it",
    "measure": "Measure a yarn",
    "decide": "Is there enough?",
    "plan": "Plan a spin",
    "check": "Check tools and hands",
    "": "More worksheets",
}


class Worksheet(NamedTuple):
    """A worksheet as the landing page shows it."""

    file: str
    title: str
    summary: str
    part: str = ""  # one of PARTS, or none
    place: int = 0  # among the others of its part

    @property
    def picture(self) -> str:
        """A small picture of its first chart, as SVG; nothing if there is none."""
        found = PICTURES / f"{Path(self.file).stem}.svg"
        return found.read_text("utf-8") if found.is_file() else ""


def worksheets_folder() -> Path:
    """Return the folder of our worksheets: inside an installed package, beside it in a checkout."""
    inside = PACKAGE / "worksheets"
    return inside if inside.is_dir() else PACKAGE.parent / "worksheets"


def worksheets_in(folder: Path) -> list[Worksheet]:
    """Return the worksheets of a folder in the order of their file names."""
    return [describe(path) for path in sorted(folder.glob("*.ipynb"))]


def in_parts(worksheets: list[Worksheet]) -> list[tuple[str, list[Worksheet]]]:
    """Return the parts of the list that have worksheets, each with its title."""
    parts = [
        (words, sorted((w for w in worksheets if w.part == part), key=lambda w: w.place))
        for part, words in PARTS.items()
    ]
    return [(words, within) for words, within in parts if within]


def describe(path: Path) -> Worksheet:
    """Return a worksheet's title and first sentence; a file without them goes by its name."""
    name = name_as_title(path)
    try:
        notebook = json.loads(path.read_text(encoding="utf-8"))
        told = notebook["metadata"].get("yarnsheets", {})
        part = told.get("part", "") if told.get("part") in PARTS else ""
        return Worksheet(
            path.name,
            title(notebook) or name,
            first_sentence(notebook),
            part,
            int(told.get("place", 0)),
        )
    except (OSError, ValueError, KeyError, TypeError, AttributeError):  # its own page will say so
        return Worksheet(path.name, name, "")


def title(notebook: Notebook) -> str:
    """Return the text of a notebook's first heading."""
    heading = re.search(r"^#+ +(.+?)[ #]*$", prose(notebook), re.MULTILINE)
    return plain(heading[1]) if heading else ""


def first_sentence(notebook: Notebook) -> str:
    """Return the first sentence of a notebook's first paragraph."""
    paragraphs = re.split(r"\n\s*\n", re.sub(r"^#.*$", "\n", prose(notebook), flags=re.MULTILINE))
    first = next((plain(paragraph) for paragraph in paragraphs if paragraph.strip()), "")
    return re.split(r"(?<=[.?!])\s", first, maxsplit=1)[0]


def prose(notebook: Notebook) -> str:
    """Return the Markdown of a notebook as one text; a file may hold a cell as a list of lines."""
    markdown = [cell for cell in notebook["cells"] if cell["cell_type"] == "markdown"]
    return "\n\n".join("".join(cell["source"]) for cell in markdown)


def plain(markdown: str) -> str:
    """Return a line of Markdown as plain text: links by their text, no marks of emphasis.

    >>> plain("How *many* yards are in [this skein](skein.ipynb)?")
    'How many yards are in this skein?'
    """
    unlinked = re.sub(r"!?\[([^\]]*)\]\([^)]*\)", r"\1", markdown)
    return " ".join(re.sub(r"[*`]|\b_|_\b", "", unlinked).split())


def name_as_title(path: Path) -> str:
    """Return a file's name as words.

    >>> name_as_title(Path("how-many-yards.ipynb"))
    'How many yards'
    """
    words = re.sub(r"[-_]+", " ", path.stem).strip()
    return words[:1].upper() + words[1:]

"""The folder of worksheets, and what a list of them says about each."""

from __future__ import annotations

import re
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import nbformat

if TYPE_CHECKING:
    from nbformat import NotebookNode

PACKAGE = Path(__file__).parent.parent


class Worksheet(NamedTuple):
    """A worksheet as the landing page shows it."""

    file: str
    title: str
    summary: str


def worksheets_folder() -> Path:
    """Return the folder of our worksheets: inside an installed package, beside it in a checkout."""
    inside = PACKAGE / "worksheets"
    return inside if inside.is_dir() else PACKAGE.parent / "worksheets"


def worksheets_in(folder: Path) -> list[Worksheet]:
    """Return the worksheets of a folder in the order of their file names."""
    return [describe(path) for path in sorted(folder.glob("*.ipynb"))]


def describe(path: Path) -> Worksheet:
    """Return a worksheet's title and first sentence; a file without them goes by its name."""
    try:
        notebook = nbformat.read(path, as_version=4)  # type: ignore[no-untyped-call]
    except (OSError, ValueError):  # unreadable, or not a notebook: still listed, by its name
        notebook = nbformat.NotebookNode(cells=[])  # type: ignore[no-untyped-call]
    return Worksheet(path.name, title(notebook) or name_as_title(path), first_sentence(notebook))


def title(notebook: NotebookNode) -> str:
    """Return the text of a notebook's first heading."""
    heading = re.search(r"^#+ +(.+?)[ #]*$", prose(notebook), re.MULTILINE)
    return plain(heading[1]) if heading else ""


def first_sentence(notebook: NotebookNode) -> str:
    """Return the first sentence of a notebook's first paragraph."""
    paragraphs = re.split(r"\n\s*\n", re.sub(r"^#.*$", "\n", prose(notebook), flags=re.MULTILINE))
    first = next((plain(paragraph) for paragraph in paragraphs if paragraph.strip()), "")
    return re.split(r"(?<=[.?!])\s", first, maxsplit=1)[0]


def prose(notebook: NotebookNode) -> str:
    """Return the Markdown of a notebook as one text."""
    return "\n\n".join(cell.source for cell in notebook.cells if cell.cell_type == "markdown")


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

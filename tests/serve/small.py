"""Small worksheets for the tests of the server: each has one thing that a teacher's may have."""

from __future__ import annotations

from typing import TYPE_CHECKING

import nbformat
from nbformat.v4 import new_code_cell as code
from nbformat.v4 import new_markdown_cell as text

if TYPE_CHECKING:
    from pathlib import Path

TEXT = """# How *long* is the [skein](skein.ipynb)?

Count the turns. Then multiply.

| tool | reads |
| --- | --- |
| scale | grams |
"""
SHEET = """\
from yarnsheets.sheets import HowManyYards
secret_name = HowManyYards()
secret_name.view()
"""
WIDGETS = """\
import ipywidgets
secret_name = ipywidgets.FloatSlider(description="Turns", value=40)
shown = ipywidgets.Label("40 turns")
secret_name.observe(lambda change: setattr(shown, "value", f"{change['new']:g} turns"), "value")
broken = ipywidgets.Button(description="Fail")
broken.on_click(lambda _: 1 / 0)
print("Turn the wheel")
ipywidgets.VBox([ipywidgets.HBox([secret_name, broken]), shown])
"""
# Ends when a file appears beside it, so that a test decides how long it takes.
WAITING = """\
from pathlib import Path
import time
while not Path("go").exists():
    time.sleep(0.02)
print("Ready")
"""
SHOWING = """\
from IPython.display import HTML, SVG, Math, display
print("<one>")
display(HTML("<b>two</b>"))
display(SVG('<svg xmlns="http://www.w3.org/2000/svg" width="9"><title>three</title></svg>'))
display(Math("x^4"))
{"five": 5}
"""
# Takes the stop of the whole process for an answer, and would take the server's with it.
DYING = "import os\nos._exit(3)"


def write(folder: Path, name: str, *cells: nbformat.NotebookNode) -> None:
    """Write a worksheet."""
    python = {"name": "python3", "display_name": "Python 3", "language": "python"}
    book = nbformat.v4.new_notebook(cells=list(cells), metadata={"kernelspec": python})
    nbformat.write(book, folder / f"{name}.ipynb")


def write_all(folder: Path) -> None:
    """Write every worksheet but those that fail or wait, and files that are nobody's business."""
    write(
        folder, "skein", text(TEXT), code(SHEET), text("## How to read it\n\nLast words, $a = b$.")
    )
    write(folder, "other_widgets", text("# Turns"), code(WIDGETS), text("The end."))
    write(folder, "shown", text("# Shown"), code(SHOWING))
    (folder / "own.py").write_text("PRIVATE = 1\n")
    (folder / "picture.png").write_bytes(b"\x89PNG")

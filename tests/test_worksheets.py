"""A worksheet is prose and a few lines of code, the same shape every time."""

import ast
import json
from pathlib import Path

import pytest

NOTEBOOKS = sorted((Path(__file__).parents[1] / "worksheets").glob("*.ipynb"))


def cells(notebook: Path, kind: str) -> list[str]:
    book = json.loads(notebook.read_text("utf-8"))
    return ["".join(cell["source"]) for cell in book["cells"] if cell["cell_type"] == kind]


def test_there_are_worksheets() -> None:
    assert NOTEBOOKS


@pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_worksheet_only_imports_builds_and_shows(notebook: Path) -> None:
    code = "\n".join(cells(notebook, "code"))
    tree = ast.parse(code)
    allowed = (ast.Import, ast.ImportFrom, ast.Assign, ast.Expr)
    assert all(isinstance(node, allowed) for node in tree.body)
    assert len([line for line in code.splitlines() if line.strip()]) <= 10


@pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_worksheet_stores_no_output(notebook: Path) -> None:
    for cell in json.loads(notebook.read_text("utf-8"))["cells"]:
        assert not cell.get("outputs")
        assert cell.get("execution_count") is None


@pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.stem)
def test_a_worksheet_opens_with_its_question_and_its_promise(notebook: Path) -> None:
    first, *rest = cells(notebook, "markdown")
    title, _, promise = first.partition("\n")
    assert title.startswith("# ")
    assert title.endswith("?")
    assert 0 < len(promise.split()) <= 150
    assert any("## How to read it" in text and "<details>" in text for text in rest)

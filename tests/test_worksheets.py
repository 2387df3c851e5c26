"""A worksheet: one name everywhere, a few lines of code, and answers that its sheet gives too."""

import ast
import json
import re
from pathlib import Path
from typing import Any

import pytest

from tests.answers import ANSWERS, Answer, Case
from yarnsheets import sheets
from yarnsheets.page.sheet import Sheet, name_of

ROOT = Path(__file__).parents[1]
NOTEBOOKS = sorted((ROOT / "worksheets").glob("*.ipynb"))
ALL = {name_of(sheet): sheet for sheet in (getattr(sheets, name) for name in sheets.__all__)}
NUMBER = re.compile(r"\d[\d,.]*\d|\d")
# tests of several sheets together
TOGETHER = {"test_any_input", "test_deciding_sheets", "test_one_yarn_one_chance"}

every_notebook = pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.stem)


def cells(notebook: Path, kind: str) -> list[str]:
    book = json.loads(notebook.read_text("utf-8"))
    return ["".join(cell["source"]) for cell in book["cells"] if cell["cell_type"] == kind]


# ---- one name, a few lines -----------------------------------------------------------------------


def test_sheets_notebooks_folders_and_tests_have_the_same_names() -> None:
    names = {notebook.stem for notebook in NOTEBOOKS}
    folders = {name.replace("-", "_") for name in names}
    of_tests = {path.stem for path in (ROOT / "tests/sheets").glob("test_*.py")}
    in_package = {path.parent.name for path in (ROOT / "yarnsheets/sheets").glob("*/sheet.py")}
    assert names == ALL.keys()
    assert in_package == folders
    assert of_tests - TOGETHER == {f"test_{folder}" for folder in folders}


@pytest.mark.parametrize("name", sorted(ALL))
def test_a_class_is_called_as_its_worksheet(name: str) -> None:
    assert ALL[name].__name__ == "".join(word.capitalize() for word in name.split("-"))


def blank(notebook: Path) -> tuple[str, dict[str, Any]]:
    """Give the class that a worksheet shows, and what it is built with; stop at other code."""
    (code,) = cells(notebook, "code")
    imported, built, shown = ast.parse(code).body
    assert isinstance(imported, ast.ImportFrom)
    (name,) = (each.name for each in imported.names)
    assert isinstance(built, ast.Assign)
    assert isinstance(built.value, ast.Call)
    assert ast.unparse(built.targets[0]) == "sheet"
    assert ast.unparse(built.value.func) == name
    assert ast.unparse(shown) == "sheet.view()"
    given = {str(each.arg): ast.literal_eval(each.value) for each in built.value.keywords}
    return name, given


@every_notebook
def test_a_worksheet_imports_builds_and_shows_its_sheet(notebook: Path) -> None:
    name, _ = blank(notebook)
    assert name == ALL[notebook.stem].__name__


@every_notebook
def test_a_worksheet_stores_no_output(notebook: Path) -> None:
    for cell in json.loads(notebook.read_text("utf-8"))["cells"]:
        assert not cell.get("outputs")
        assert cell.get("execution_count") is None


@every_notebook
def test_a_worksheet_opens_with_its_question_and_its_promise(notebook: Path) -> None:
    first, *rest = cells(notebook, "markdown")
    title, _, promise = first.partition("\n")
    assert title == f"# {ALL[notebook.stem].question}"
    assert 0 < len(promise.split()) <= 150
    assert any("## How to read it" in text and "<details>" in text for text in rest)


# ---- the folded answers --------------------------------------------------------------------------


def folded(notebook: Path) -> dict[int, str]:
    """Read the answers of a worksheet, by their number."""
    text = "\n".join(cells(notebook, "markdown")).replace("\N{NO-BREAK SPACE}", " ")
    (inside,) = re.findall(r"<summary>Answers</summary>(.*?)</details>", text, re.DOTALL)
    lines = re.findall(r"^(\d+)\. (.+)$", inside, re.MULTILINE)
    assert len(lines) == len(inside.strip().splitlines())
    return {int(number): said for number, said in lines}


def without(text: str, part: str) -> str:
    """Take a part out of a text wherever it stands by itself; nothing is found within a number."""
    alone = re.compile(rf"(?<![\d.,]){re.escape(part)}(?![.,]?\d)")
    assert alone.search(text), f"{part!r} is not in {text!r}"
    return alone.sub(" ", text)


@every_notebook
def test_every_answer_is_in_the_table(notebook: Path) -> None:
    answers = folded(notebook)
    assert list(answers) == list(range(1, len(answers) + 1))
    assert len(ANSWERS[notebook.stem]) == len(answers)
    for answer in ANSWERS[notebook.stem]:
        is_held = bool(answer.cases) and (
            answer.claim is not None or any(case.slots or case.holds for case in answer.cases)
        )
        assert is_held != bool(answer.words)


@pytest.mark.parametrize(
    ("name", "number", "answer"),
    [
        pytest.param(name, number, answer, id=f"{name}-{number}")
        for name, answers in ANSWERS.items()
        for number, answer in enumerate(answers, start=1)
    ],
)
def test_an_answer_says_what_its_sheet_says(name: str, number: int, answer: Answer) -> None:
    notebook = ROOT / "worksheets" / f"{name}.ipynb"
    text = folded(notebook)[number]
    _, given = blank(notebook)
    filled = [built(ALL[name], given, case) for case in answer.cases]
    for sheet, case in zip(filled, answer.cases, strict=True):
        for flag in case.holds:
            assert getattr(sheet, flag.removeprefix("not ")) != flag.startswith("not ")
    parts = [
        sheet.say(slot).replace("\N{NO-BREAK SPACE}", " ")
        for sheet, case in zip(filled, answer.cases, strict=True)
        for slot in case.slots
    ]
    for part in [*sorted(set(parts), key=len, reverse=True), *answer.beside]:
        text = without(text, part)
    assert not NUMBER.findall(text), f"numbers that the table does not have: {text!r}"
    assert answer.claim is None or answer.claim(*filled)


def built(sheet: type[Sheet], given: dict[str, Any], case: Case) -> Sheet:
    return sheet(**{**given, **case.given})

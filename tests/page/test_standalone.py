"""Notebooks run once and turned into HTML, alone or as a book: sheets work with nothing behind."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from textwrap import dedent
from typing import TYPE_CHECKING

import pytest

from tests.browser import ROOT
from tests.reader import box, said, slider
from yarnsheets.sheets import IsThisEnough

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Page

    from tests.browser import Troubles

README = (ROOT / "README.md").read_text("utf-8")


@pytest.fixture(scope="module")
def page_as_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Turn a worksheet into HTML by the command in README."""
    command = re.search(r"`(jupyter nbconvert [^`]+)`", README)
    assert command
    made = tmp_path_factory.mktemp("standalone")
    options = command[1].split()[1:]
    notebook = str(ROOT / "worksheets/is-this-enough.ipynb")
    subprocess.run(
        [sys.executable, "-m", "jupyter", *options, notebook, f"--output-dir={made}"],
        check=True,
        capture_output=True,
        timeout=180,
    )
    return made / "is-this-enough.html"


@pytest.fixture(scope="module")
def page_of_a_book(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Have Sphinx make a book of a worksheet, with the settings that README gives."""
    book = tmp_path_factory.mktemp("book")
    settings = re.search(r"```python\n( +extensions = .+?)```", README, re.DOTALL)
    assert settings
    (book / "conf.py").write_text(dedent(settings[1]), "utf-8")
    (book / "index.md").write_text(
        "# An invented book\n\n```{toctree}\nis-this-enough\n```\n", "utf-8"
    )
    shutil.copy(ROOT / "worksheets/is-this-enough.ipynb", book)
    subprocess.run(
        [sys.executable, "-m", "sphinx", "-q", "-b", "html", str(book), str(book / "made")],
        check=True,
        capture_output=True,
        timeout=180,
    )
    return book / "made/is-this-enough.html"


def test_a_notebook_in_a_book_is_live(page: Page, page_of_a_book: Path) -> None:
    is_live(page, page_of_a_book)  # and asks nothing of another machine


def test_a_notebook_turned_into_html_stays_live(
    page: Page, page_as_file: Path, troubles: Troubles
) -> None:
    troubles.expect("cdnjs.cloudflare.com")  # nbconvert's own, for formulas; the sheet needs none
    is_live(page, page_as_file)


def is_live(page: Page, file: Path) -> None:
    """Move a slider of a sheet on a page opened from the disk."""
    page.goto(file.as_uri())
    page.wait_for_selector(".ys-picture svg")
    assert said(page) == IsThisEnough().sentence
    slider(page, "project").focus()
    page.keyboard.press("ArrowRight")
    now = IsThisEnough(project=float(box(page, "project").input_value()))
    assert now.project != IsThisEnough().project
    assert said(page) == now.sentence

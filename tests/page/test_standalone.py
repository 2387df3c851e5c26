"""A notebook that was run once and turned into HTML: its sheet works with nothing behind it."""

from __future__ import annotations

import re
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

from tests.browser import ROOT
from tests.reader import box, said, slider
from yarnsheets.sheets import IsThisEnough

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Page

    from tests.browser import Troubles


@pytest.fixture(scope="module")
def page_as_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Turn a worksheet into HTML by the command in README."""
    command = re.search(r"`(jupyter nbconvert [^`]+)`", (ROOT / "README.md").read_text("utf-8"))
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


def test_a_notebook_turned_into_html_stays_live(
    page: Page, page_as_file: Path, troubles: Troubles
) -> None:
    troubles.expect("cdnjs.cloudflare.com")  # nbconvert's own, for formulas; the sheet needs none
    page.goto(page_as_file.as_uri())
    page.wait_for_selector(".ys-picture svg")
    assert said(page) == IsThisEnough().sentence
    slider(page, "project").focus()
    page.keyboard.press("ArrowRight")
    now = IsThisEnough(project=float(box(page, "project").input_value()))
    assert now.project != IsThisEnough().project
    assert said(page) == now.sentence

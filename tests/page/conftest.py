"""The front end's sources with what they are checked and built with, for all tests of pages."""

from __future__ import annotations

import shutil
import subprocess
from typing import TYPE_CHECKING

import pytest

from tests.browser import ROOT, missing

if TYPE_CHECKING:
    from pathlib import Path


def npm(folder: Path, *command: str) -> None:
    """Run npm on the front end in a folder."""
    program = shutil.which("npm") or missing("npm")
    done = subprocess.run(
        [program, *command], cwd=folder / ".front", capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.fixture(scope="session")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Copy the sources, without what was built, and fetch what their lockfile names."""
    copy = tmp_path_factory.mktemp("copy")
    for part in (".front", "yarnsheets/page/front"):
        shutil.copytree(ROOT / part, copy / part, ignore=shutil.ignore_patterns("node_modules"))
    npm(copy, "ci", "--no-audit", "--no-fund")
    return copy

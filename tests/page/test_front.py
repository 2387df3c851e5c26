"""The front end's sources: they pass their checks, and what is committed was built from them."""

from __future__ import annotations

import shutil
import subprocess
from typing import TYPE_CHECKING

import pytest

from tests.browser import ROOT, missing

if TYPE_CHECKING:
    from pathlib import Path

BUILT = ("page.js", "jupyter.js", "charts.js")


@pytest.fixture(scope="module")
def copy(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Copy the sources, without what was built, and fetch what their lockfile names."""
    copy = tmp_path_factory.mktemp("copy")
    for part in (".front", "yarnsheets/page/front"):
        shutil.copytree(ROOT / part, copy / part, ignore=shutil.ignore_patterns("node_modules"))
    npm(copy, "ci", "--no-audit", "--no-fund")
    return copy


def npm(folder: Path, *command: str) -> None:
    program = shutil.which("npm") or missing("npm")
    done = subprocess.run(
        [program, *command], cwd=folder / ".front", capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


def test_types_rules_and_format(copy: Path) -> None:
    npm(copy, "run", "check")


def test_a_slip_is_found(copy: Path) -> None:
    slip = copy / "yarnsheets/page/front/slip.js"
    slip.write_text('export const length = "12" * 3;\n')
    with pytest.raises(AssertionError, match=r"slip\.js"):
        npm(copy, "run", "check")
    slip.unlink()


def test_what_is_committed_is_what_the_sources_build(copy: Path) -> None:
    npm(copy, "run", "build")
    for name in BUILT:
        built = copy / "yarnsheets/page/built" / name
        committed = ROOT / "yarnsheets/page/built" / name
        assert built.read_bytes() == committed.read_bytes(), name

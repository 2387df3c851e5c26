"""The front end's sources: they pass their checks, and what is committed was built from them."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.browser import ROOT
from tests.page.conftest import npm

if TYPE_CHECKING:
    from pathlib import Path

BUILT = ("page.js", "around.js", "offline.js", "phone.js", "jupyter.js", "charts.js")


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

"""Handouts for the tests, made by the command as its users call it."""

from __future__ import annotations

import functools
import http.server
import os
import subprocess
import threading
from contextlib import contextmanager
from typing import TYPE_CHECKING

import pytest

from tests.browser import COMMAND, KEPT, ROOT
from yarnsheets.serve.kept import CACHE_FOLDER

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path


def handout(folder: Path, *options: str) -> subprocess.CompletedProcess[str]:
    """Run the command."""
    return subprocess.run(
        [*COMMAND, "handout", str(folder), *options],
        cwd=ROOT,
        env={**os.environ, CACHE_FOLDER: KEPT.name},
        capture_output=True,
        text=True,
        check=False,
        timeout=300,
    )


def made(folder: Path, *options: str) -> Path:
    """Make a handout."""
    done = handout(folder, *options)
    assert done.returncode == 0, done.stderr
    return folder


@pytest.fixture(scope="session")
def single(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Every worksheet as one file, with the lines to embed it."""
    folder = tmp_path_factory.mktemp("site") / "worksheets"
    return made(folder, "--embed", "--title", "Grist at the guild")


@pytest.fixture(scope="session")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Every worksheet beside one folder of what they share, under a strict policy."""
    return made(tmp_path_factory.mktemp("shared") / "worksheets", "--shared", "--strict")


class Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        pass


@contextmanager
def hosted(folder: Path) -> Iterator[str]:
    """Put a folder on a plain web host."""
    answer = functools.partial(Quiet, directory=str(folder))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), answer) as host:
        thread = threading.Thread(target=host.serve_forever)
        thread.start()
        try:
            yield f"http://127.0.0.1:{host.server_port}/"
        finally:
            host.shutdown()
            thread.join()

"""What tests of the served pages share: the command in a process, and what a page must not do."""

from __future__ import annotations

import os
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import time
import urllib.request
from contextlib import contextmanager
from pathlib import Path
from typing import IO, TYPE_CHECKING, NoReturn
from urllib.parse import urlsplit

import psutil
import pytest

from yarnsheets.serve.kept import CACHE_FOLDER

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from playwright.sync_api import BrowserContext, Page

ROOT = Path(__file__).parent.parent
COMMAND = [sys.executable, "-m", "yarnsheets"]
CHROMIUM_OPTIONS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
]
KEPT = tempfile.TemporaryDirectory(prefix="yarnsheets-tests-")  # pages, for this run of the tests
PATIENCE = 60  # seconds; a kernel may take ten to start on a busy machine with two cores


def missing(tool: str) -> NoReturn:
    """Skip the test on a machine without the tool; fail where everything has to be tested."""
    reason = f"{tool} is not installed"
    if os.environ.get("CI"):
        pytest.fail(reason)
    pytest.skip(reason)


def chromium() -> str:
    """Return the path of Chromium or Chrome."""
    names = ("chromium", "chromium-browser", "google-chrome")
    return next(filter(None, map(shutil.which, names)), None) or missing("Chromium")


def wait_until(condition: Callable[[], object], what: str, seconds: float = PATIENCE) -> None:
    """Ask again and again until the condition holds; fail with what was waited for."""
    deadline = time.monotonic() + seconds
    while not condition():
        assert time.monotonic() < deadline, f"not within {seconds} s: {what}"
        time.sleep(0.02)


def free_port() -> int:
    """Return a port that nobody uses."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def answered(address: str) -> str:
    """Return what is at an address, or nothing if nobody answers."""
    try:
        with urllib.request.urlopen(address, timeout=PATIENCE) as answer:  # noqa: S310
            return str(answer.read().decode())
    except OSError:
        return ""


class Server:
    """The command, running."""

    def __init__(self, process: subprocess.Popen[str], errors: IO[str]) -> None:
        self.process = process
        self.errors = errors
        self.said = ""
        while "The worksheets are at" not in self.said:
            line = self.process.stdout.readline()
            assert line, f"ended before it served: {self.said} {self.error_output()}"
            self.said += line
        self.address = re.search(r"http://[^/]+/", line)[0]

    def error_output(self) -> str:
        """Return what was printed to the error output so far."""
        self.errors.seek(0)
        return self.errors.read()

    def get(self, path: str = "", **headers: str) -> str:
        """Return a page as text."""
        request = urllib.request.Request(self.address + path, headers=headers)  # noqa: S310
        with urllib.request.urlopen(request, timeout=PATIENCE) as answer:  # noqa: S310
            return answer.read().decode()

    def processes(self) -> list[psutil.Process]:
        """Return every process that it started and that is alive."""
        return psutil.Process(self.process.pid).children(recursive=True)

    def kernels(self) -> list[psutil.Process]:
        """Return the kernels behind open pages; that of the worker is not among them."""
        children = psutil.Process(self.process.pid).children()
        return [child for child in children if is_kernel(child)]

    def wait_until_made(self) -> None:
        """Wait until no worksheet is left to run."""
        for name in re.findall(r'href="/(voila/render/[^"]+)"', self.get()):
            self.get(name)
        wait_until(lambda: not self.processes(), "the worker is gone")

    def stop(self) -> str:
        """Press Ctrl-C; check that all ended well and at once; return all that was printed."""
        started, errors_before = self.processes(), self.error_output()
        self.process.send_signal(signal.SIGINT)
        self.process.wait(timeout=10)
        assert self.process.returncode == 0, self.error_output()
        printed = self.error_output().removeprefix(errors_before)
        assert not printed, printed
        _, left = psutil.wait_procs(started, timeout=5)  # a busy machine takes a moment
        assert not left
        return self.said + self.process.stdout.read()


def is_kernel(process: psutil.Process) -> bool:
    """Tell whether a process is a kernel, and not one that has ended."""
    try:
        return "ipykernel_launcher" in process.cmdline()
    except psutil.Error:
        return False


@contextmanager
def serving(
    *options: str, env: Mapping[str, str | None] | None = None, cwd: Path = ROOT
) -> Iterator[Server]:
    """Run the command; a variable of the environment that is None is taken away."""
    changed = {**os.environ, CACHE_FOLDER: KEPT.name, **(env or {})}
    with tempfile.TemporaryFile("w+") as errors:
        process = subprocess.Popen(
            [*COMMAND, *options],
            cwd=cwd,
            env={name: value for name, value in changed.items() if value is not None},
            stdout=subprocess.PIPE,
            stderr=errors,
            text=True,
        )
        with process:
            try:
                server = Server(process, errors)
                yield server
                if process.poll() is None:
                    server.stop()
            finally:
                if process.poll() is None:
                    process.kill()


class Troubles:
    """What went wrong in a page: messages of errors, and requests that leave this machine."""

    def __init__(self, context: BrowserContext) -> None:
        self.seen: list[str] = []
        self.expected: list[str] = []
        context.on("console", self.on_console)
        context.on("weberror", lambda error: self.seen.append(f"error: {error.error}"))
        context.on("request", lambda request: self.on_address(request.url))
        context.on("page", lambda page: page.on("websocket", lambda ws: self.on_address(ws.url)))

    def on_console(self, message: object) -> None:
        if message.type == "error":
            self.seen.append(f"console: {message.text} ({message.location.get('url')})")

    def on_address(self, address: str) -> None:
        parts = urlsplit(address)
        inside = parts.scheme in {"data", "blob", "about", "file"}
        if not inside and parts.hostname not in {"127.0.0.1", "localhost"}:
            self.seen.append(f"request to another machine: {address}")

    def expect(self, text: str) -> None:
        """Take troubles with this text for part of the test."""
        self.expected.append(text)

    def unexpected(self) -> list[str]:
        """Return the troubles no test asked for."""
        return [one for one in self.seen if not any(text in one for text in self.expected)]


def open_sheet(page: Page, server: Server, name: str) -> Page:
    """Open a worksheet with its first numbers and wait until its sheet can be used."""
    page.goto(f"{server.address}voila/render/{name}.ipynb")
    page.wait_for_function("document.querySelector('.ys-sheet .ys-sentence')?.textContent")
    return page

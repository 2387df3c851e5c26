"""Fixtures for tests that need the served worksheets or a browser."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings

from tests.browser import CHROMIUM_OPTIONS, Troubles, chromium, missing, serving

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Browser, BrowserContext, Page

    from tests.browser import Server


# no test hangs on how fast the machine is
settings.register_profile("any machine", deadline=None)
settings.load_profile("any machine")


def pytest_sessionfinish(session: pytest.Session) -> None:
    """Nothing may be skipped in continuous integration: every tool has to be there."""
    if hasattr(session.config, "workerinput"):
        return  # one of several at work: the first counts them all
    skipped = session.config.pluginmanager.get_plugin("terminalreporter").stats.get("skipped", [])
    if os.environ.get("CI") and skipped and session.exitstatus == pytest.ExitCode.OK:
        print(f"\n{len(skipped)} skipped, which counts as failed where CI is set")
        session.exitstatus = pytest.ExitCode.TESTS_FAILED


@pytest.fixture(scope="session")
def server() -> Iterator[Server]:
    """The command, serving our worksheets."""
    with serving("--no-browser", "--port", "0") as running:
        yield running
        assert "Traceback" not in running.error_output()


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """One browser for each file of tests: the notebooks' own tests need its event loop gone."""
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        missing("Playwright")
    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=chromium(), args=CHROMIUM_OPTIONS)
        yield running
        running.close()


@pytest.fixture
def context(browser: Browser) -> Iterator[BrowserContext]:
    """A browser window of its own for a test."""
    made = browser.new_context(viewport={"width": 1280, "height": 900})
    yield made
    made.close()


@pytest.fixture
def troubles(context: BrowserContext) -> Iterator[Troubles]:
    """What goes wrong in the page; anything that no test expected fails the test."""
    seen = Troubles(context)
    yield seen
    assert not seen.unexpected()


@pytest.fixture
def page(context: BrowserContext, troubles: Troubles) -> Page:  # noqa: ARG001
    """An empty page that may neither report an error nor ask anything of another machine."""
    return context.new_page()

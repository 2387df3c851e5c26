"""Worksheets with a kernel behind them: in Jupyter's own way, and served with `--live`."""

from __future__ import annotations

import re
import subprocess
import sys
import urllib.error
from functools import partial
from http import HTTPStatus
from typing import TYPE_CHECKING, Any
from urllib.request import Request, urlopen

import nbformat
import pytest
from nbformat.v4 import new_code_cell as code
from tornado.websocket import WebSocketClosedError

from tests.browser import PATIENCE, ROOT, answered, free_port, open_sheet, serving, wait_until
from tests.reader import box, centre
from tests.serve.small import write_all
from yarnsheets.serve.live import pass_over_closed_pages

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page, Route

    from tests.browser import Server, Troubles

QUIET = {"stdout": subprocess.DEVNULL, "stderr": subprocess.DEVNULL}
WORKSHEETS = sorted((ROOT / "worksheets").glob("*.ipynb"))


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("worksheets")
    write_all(made)
    return made


# In Jupyter's own way: plain Voila and its own template, which draws what JupyterLab draws.

# Shows what Python has heard from the page, for the browser to read.
HEARING = """\
import ipywidgets
heard = ipywidgets.Label("nothing")
sheet.observe(lambda change: setattr(heard, "value", f"heard {change.name} {change.new}"),
              list(sheet.inputs()))
heard
"""
READY = "document.querySelector('.ys-sheet .ys-sentence')?.textContent"


@pytest.fixture(scope="module")
def plain_voila(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    folder = tmp_path_factory.mktemp("worksheets")
    for path in WORKSHEETS:
        book = nbformat.read(path, as_version=4)
        book.cells.append(code(HEARING))
        nbformat.write(book, folder / path.name)
    port = free_port()
    command = [
        *(sys.executable, "-m", "voila", str(folder), "--no-browser", f"--port={port}"),
        # so that a page that is left stops its kernel
        "--Voila.tornado_settings={'disable_check_xsrf': True}",
    ]
    with subprocess.Popen(command, cwd=folder, **QUIET) as voila:
        address = f"http://127.0.0.1:{port}/"
        wait_until(lambda: answered(address), "Voila answers")
        yield f"{address}voila/render/"
        voila.terminate()


@pytest.fixture(scope="module")
def tabs(browser: Browser, plain_voila: str) -> Iterator[dict[str, Page]]:
    """Pages of plain Voila: while one is tried, the next is on its way."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    # its own page asks a network of its own for pictures
    context.route(re.compile(r"^https?://(?!127\.0\.0\.1)"), lambda route: route.abort())
    opened: dict[str, Page] = {}

    class Tabs(dict[str, "Page"]):
        def __missing__(self, name: str) -> Page:
            names = [path.stem for path in WORKSHEETS]
            at = names.index(name)
            for each in names[at : at + 2]:
                if each not in opened or opened[each].is_closed():
                    opened[each] = context.new_page()
                    opened[each].goto(f"{plain_voila}{each}.ipynb", wait_until="commit")
            return opened[name]

    yield Tabs()
    context.close()


@pytest.mark.parametrize("name", [path.stem for path in WORKSHEETS])
def test_a_worksheet_moves_in_jupyter_and_python_hears_it(name: str, tabs: dict[str, Page]) -> None:
    page = tabs[name]
    page.bring_to_front()
    page.wait_for_function(READY, timeout=PATIENCE * 1000)
    page.get_by_text("nothing", exact=True).wait_for()
    sentence = page.locator(".ys-sentence")
    before = sentence.inner_text()
    assert before
    for move in moves(page):
        move()
        if sentence.inner_text() != before:
            break
    assert sentence.inner_text() != before
    page.get_by_text(re.compile(r"^heard \w+ ")).wait_for()
    page.goto("about:blank")
    page.close()


def test_only_what_has_settled_goes_to_the_kernel(tabs: dict[str, Page]) -> None:
    page = tabs["how-many-yards"]
    page.bring_to_front()
    sent: list[str] = []
    page.on("websocket", lambda ws: ws.on("framesent", lambda frame: sent.append(str(frame))))
    page.wait_for_function(READY, timeout=PATIENCE * 1000)
    page.get_by_text("nothing", exact=True).wait_for()
    page.wait_for_load_state("networkidle")
    sentence = page.locator(".ys-sentence")
    x, y = centre(page.locator("[data-name=grist] .noUi-handle"))
    page.mouse.move(x, y)
    page.mouse.down()
    before, first = len(sent), sentence.inner_text()
    page.mouse.move(x + 30, y, steps=3)  # and not so many that the hand would rest between two
    assert sentence.inner_text() != first
    assert len(sent) == before
    page.mouse.up()
    grist = box(page, "grist").input_value()
    page.get_by_text(f"heard grist {grist}").wait_for()
    assert any(f'"grist":{grist}' in frame for frame in sent[before:])
    page.close()


def moves(page: Page) -> Iterator[Callable[[], None]]:
    """Give ways to move a sheet, by key: its sliders first, or else its draw or its readings."""
    for thumb in page.locator(".ys-sheet .noUi-handle:visible").all():
        yield partial(thumb.press, "ArrowRight")
    for button in page.locator(".ys-draw .ys-button").all():
        yield partial(button.press, "Enter")
    readings = page.locator(".ys-sheet textarea:visible").first
    readings.press("Control+End")
    readings.press("Backspace")
    readings.press("7")
    yield partial(readings.press, "Tab")


# On a BinderHub: a Jupyter server with our settings


def test_a_binderhub_shows_the_worksheets_as_our_pages(folder: Path, tmp_path: Path) -> None:
    port = free_port()
    command = [
        *(sys.executable, "-m", "jupyter_server", "--no-browser", "--allow-root"),
        f"--config={ROOT / 'binder/jupyter_server_config.py'}",
        *(f"--ServerApp.root_dir={folder}", f"--port={port}", "--IdentityProvider.token="),
    ]
    with subprocess.Popen(command, cwd=tmp_path, **QUIET) as jupyter:
        try:
            address = f"http://127.0.0.1:{port}/voila/"
            wait_until(lambda: answered(address), "the server answers")
            assert "How long is the skein?" in answered(address)
            page = answered(f"{address}render/skein.ipynb")
            assert page.index("Count the turns") < page.index("data-widget")
            assert "voila.js" in page
            assert "secret_name" not in page
            assert 'class="yarnsheet"' not in page  # the widget alone: what stands for it is long
        finally:
            jupyter.terminate()


# With --live: for worksheets with other widgets than sheets


@pytest.fixture(scope="module")
def live(folder: Path) -> Iterator[Server]:
    with serving("--live", "--no-browser", "--port", "0", "--folder", str(folder)) as running:
        yield running


def open_live(page: Page, server: Server) -> None:
    """Open the worksheet with other widgets and wait until it is joined to its kernel."""
    page.goto(f"{server.address}voila/render/other_widgets.ipynb")
    page.wait_for_function(
        """() => {
          const kernel = window.jupyterapp?.widgetManager?.kernel;
          return kernel?.connectionStatus === "connected" &&
            document.querySelector(".sheet .widget-slider");
        }""",
        timeout=PATIENCE * 1000,
    )


def status(server: Server, path: str, method: str = "GET", **headers: str) -> int:
    request = Request(server.address + path, headers=headers, method=method)  # noqa: S310
    try:
        with urlopen(request) as answer:  # noqa: S310
            return int(answer.status)
    except urllib.error.HTTPError as refused:
        with refused:
            return refused.code


def test_only_a_page_that_needs_a_kernel_gets_one(live: Server, page: Page) -> None:
    for name in ("skein", "shown"):
        kept = live.get(f"voila/render/{name}.ipynb")
        assert "voila.js" not in kept
    open_sheet(page, live, "skein")
    assert not live.kernels()
    open_live(page, live)
    assert len(live.kernels()) == 1


def test_text_is_there_before_the_kernel(live: Server, page: Page) -> None:
    page.goto(f"{live.address}voila/render/other_widgets.ipynb", wait_until="commit")
    page.get_by_text("The end.").wait_for()
    page.get_by_text("Getting the worksheet ready…").wait_for()
    page.get_by_text("Turn the wheel").wait_for(timeout=PATIENCE * 1000)
    page.get_by_text("Getting the worksheet ready…").wait_for(state="hidden")


def test_a_control_reaches_the_kernel_and_back(live: Server, page: Page) -> None:
    open_live(page, live)
    page.get_by_role("slider").press("ArrowRight")
    page.get_by_text("40.1 turns").wait_for()
    assert "secret_name" not in page.content()


@pytest.mark.parametrize("path", ["voila/files/own.py", "voila/api/contents", "api/kernels", "api"])
def test_hands_out_no_file_and_no_list(live: Server, path: str) -> None:
    assert status(live, path) == HTTPStatus.NOT_FOUND


def test_a_web_site_that_points_its_name_at_this_machine_is_refused(live: Server) -> None:
    for path in ("", "voila/render/other_widgets.ipynb", "voila/render/skein.ipynb", "none"):
        assert status(live, path, Host="rebound.example") == HTTPStatus.FORBIDDEN


def test_another_site_cannot_stop_a_kernel(live: Server, page: Page) -> None:
    open_live(page, live)
    kernel = page.evaluate("window.jupyterapp.widgetManager.kernel.id")
    for path in (f"voila/api/shutdown/{kernel}", f"api/kernels/{kernel}"):
        for method in ("POST", "DELETE"):
            assert status(live, path, method, Origin="http://other.example") in {403, 404, 405}
    page.get_by_role("slider").press("ArrowRight")
    page.get_by_text("40.1 turns").wait_for()


def test_an_error_in_the_kernel_tells_nothing_of_the_code_and_the_page_goes_on(
    live: Server, page: Page
) -> None:
    received: list[str] = []
    page.on("websocket", lambda ws: ws.on("framereceived", lambda f: received.append(str(f))))
    open_live(page, live)
    page.get_by_role("button", name="Fail").click()
    page.get_by_role("slider").press("ArrowRight")
    page.get_by_text("40.1 turns").wait_for()
    assert [one for one in received if "ExecutionError" in one]
    assert not [one for one in received if "ZeroDivision" in one or "1 / 0" in one]


def test_leaving_a_page_stops_its_kernel_and_back_starts_it_anew(live: Server, page: Page) -> None:
    others = set(live.kernels())
    open_live(page, live)
    (kernel,) = set(live.kernels()) - others
    page.get_by_role("link", name="All worksheets").click()
    page.get_by_role("heading", name="Worksheets").wait_for()
    wait_until(lambda: not kernel.is_running(), "the kernel is stopped")
    page.go_back()
    page.get_by_role("slider").press("ArrowRight", timeout=PATIENCE * 1000)
    page.get_by_text("40.1 turns").wait_for()


def test_page_says_so_when_its_kernel_has_died(
    live: Server, page: Page, troubles: Troubles
) -> None:
    troubles.expect("Canceled future for kernel_info_request")
    others = set(live.kernels())
    open_live(page, live)
    (kernel,) = set(live.kernels()) - others
    kernel.kill()
    page.get_by_text("The worksheet’s program has stopped.").wait_for(timeout=PATIENCE * 1000)
    page.get_by_role("button", name="Reload to connect again").click()
    page.get_by_role("slider").press("ArrowRight", timeout=PATIENCE * 1000)
    page.get_by_text("40.1 turns").wait_for()


def test_page_says_so_when_its_kernel_was_replaced_before_it_listened(
    live: Server, page: Page, troubles: Troubles
) -> None:
    troubles.expect("widget model not found")
    others = set(live.kernels())

    def replace_kernel(route: Route) -> None:
        (kernel,) = set(live.kernels()) - others
        kernel.kill()
        wait_until(lambda: set(live.kernels()) - others - {kernel}, "another kernel")
        route.continue_()

    page.route(re.compile(r"widgets-manager8/static/remoteEntry"), replace_kernel)
    page.goto(f"{live.address}voila/render/other_widgets.ipynb")
    page.get_by_text("The worksheet’s program has stopped.").wait_for(timeout=PATIENCE * 1000)


def test_page_says_so_when_the_server_is_gone_and_every_kernel_with_it(
    folder: Path, page: Page, troubles: Troubles
) -> None:
    troubles.expect("WebSocket connection to")
    troubles.expect("Failed to load resource")  # refused or cut short, as the server goes
    with serving("--live", "--no-browser", "--port", "0", "--folder", str(folder)) as running:
        open_live(page, running)
        page.wait_for_load_state("networkidle")
        running.stop()
        page.get_by_text("The connection to the worksheet’s program is lost").wait_for()


def test_only_a_closed_page_is_passed_over() -> None:
    told: list[dict[str, Any]] = []

    class Loop:
        def default_exception_handler(self, context: dict[str, Any]) -> None:
            told.append(context)

    trouble = {"message": "Task exception was never retrieved", "exception": ValueError("real")}
    for context in ({"exception": WebSocketClosedError()}, trouble):
        pass_over_closed_pages(Loop(), context)  # type: ignore[arg-type]
    assert told == [trouble]

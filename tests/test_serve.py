"""The command `yarnsheets` and the pages it serves, tried on two small worksheets made here."""

from __future__ import annotations

import re
import shutil
import socket
import subprocess
import tomllib
import urllib.error
from http import HTTPStatus
from importlib import import_module
from typing import TYPE_CHECKING, Any

import nbformat
import psutil
import pytest
from tornado.websocket import WebSocketClosedError

from tests.browser import COMMAND, PATIENCE, ROOT, open_worksheet, serving, wait_until
from yarnsheets.serve import main
from yarnsheets.serve.server import pass_over_closed_pages

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Page, Route

    from tests.browser import Server, Troubles

TEMPLATE = ROOT / "yarnsheets/serve/share/voila/templates/yarnsheets"

TEXT = """# How *long* is the [skein](skein.ipynb)?

Count the turns. Then multiply.

| tool | reads |
| --- | --- |
| scale | grams |
"""
SHEET = """\
import ipywidgets
secret_name = ipywidgets.FloatSlider(description="Turns", value=40)
shown = ipywidgets.Label("40 turns")
secret_name.observe(lambda change: setattr(shown, "value", f"{change['new']:g} turns"), "value")
broken = ipywidgets.Button(description="Fail")
broken.on_click(lambda _: 1 / 0)
ipywidgets.VBox([ipywidgets.HBox([secret_name, broken]), shown])
"""
# Runs when a file appears beside it, so that a test decides when the kernel is ready.
WAITING = """\
from pathlib import Path
import time
while not Path("go").exists():
    time.sleep(0.02)
print("Ready")
"""


def notebook(*cells: nbformat.NotebookNode) -> nbformat.NotebookNode:
    python = {"name": "python3", "display_name": "Python 3", "language": "python"}
    return nbformat.v4.new_notebook(cells=list(cells), metadata={"kernelspec": python})


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("worksheets")
    text, code = nbformat.v4.new_markdown_cell, nbformat.v4.new_code_cell
    sheet = notebook(text(TEXT), code(SHEET), text("## How to read it\n\nLast words, $a = b$."))
    nbformat.write(sheet, made / "skein.ipynb")
    nbformat.write(notebook(code("1 / 0")), made / "no-heading_here.ipynb")
    nbformat.write(notebook(text("# Wait"), code(WAITING), text("The end.")), made / "wait.ipynb")
    (made / "own.py").write_text("PRIVATE = 1\n")
    (made / "picture.png").write_bytes(b"\x89PNG")
    return made


@pytest.fixture(scope="module")
def small(folder: Path) -> Iterator[Server]:
    with serving("--no-browser", "--port", "0", "--folder", str(folder)) as running:
        yield running


def run(*options: str) -> subprocess.CompletedProcess[str]:
    """Run the command where it is expected to end by itself."""
    return subprocess.run(
        [*COMMAND, *options],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        timeout=PATIENCE,
    )


# The command


def test_the_installed_command_is_the_one_tested() -> None:
    scripts = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["scripts"]
    module, _, function = scripts["yarnsheets"].partition(":")
    assert getattr(import_module(module), function) is main


def test_listens_on_this_machine_only(small: Server) -> None:
    listening = {
        connection.laddr.ip
        for connection in psutil.Process(small.process.pid).net_connections(kind="inet")
        if connection.status == psutil.CONN_LISTEN
    }
    assert listening == {"127.0.0.1"}


def test_refuses_a_web_site_that_points_its_name_at_this_machine(small: Server) -> None:
    with pytest.raises(urllib.error.HTTPError) as refused:
        small.get(Host="rebound.example")
    with refused.value:
        assert refused.value.code == HTTPStatus.FORBIDDEN


def test_warns_before_listening_to_the_network(folder: Path) -> None:
    options = ["--no-browser", "--port", "0", "--address", "0.0.0.0", "--folder", str(folder)]  # noqa: S104
    with serving(*options) as running:
        assert running.address.startswith("http://127.0.0.1:")
        printed = running.stop()
    assert "Anyone on the network can open them, at http://" in printed
    assert "no password" in printed


def test_moves_to_the_next_free_port_and_says_so(folder: Path) -> None:
    with socket.socket() as other:
        other.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            other.bind(("127.0.0.1", 8866))
            other.listen()
        except OSError:
            assert psutil.pids()  # in use by another program already: that serves as well
        with serving("--no-browser", "--folder", str(folder)) as running:
            used = re.search(r":(\d+)/", running.address)[1]
            assert f"Port 8866 is in use by another program; using port {used}." in running.said
            assert "Worksheets" in running.get()


def test_a_busy_port_that_was_asked_for_is_an_error_in_words() -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = str(other.getsockname()[1])
        done = run("--port", port)
    assert done.returncode == 1
    assert done.stderr == (
        f"Port {port} is in use by another program. "
        "Give another number with --port, or leave --port out to use the next free port.\n"
    )


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--port", "70000"], "There is no port 70000. Give a number from 1024 to 65535"),
        (["--address", "192.0.2.1"], "It is not possible to listen on 192.0.2.1"),
        (["--folder", "nowhere"], "There is no folder nowhere."),
        (["nothing"], "There is no worksheet nothing in"),
    ],
)
def test_what_cannot_be_done_is_said_in_words(options: list[str], words: str, folder: Path) -> None:
    done = run("--folder", str(folder), *options)
    assert done.returncode == 1
    assert done.stderr.startswith(words)
    assert done.stderr.count("\n") == 1


def test_without_a_browser_says_what_to_open(folder: Path, tmp_path: Path) -> None:
    bare = {"PATH": str(tmp_path), "BROWSER": None, "DISPLAY": None, "WAYLAND_DISPLAY": None}
    with serving("--port", "0", "--folder", str(folder), env=bare) as running:
        said = running.process.stdout.readline()
        assert said == (
            f"No web browser was found. Open this address in one by hand: {running.address}\n"
        )


def test_opens_the_browser_at_the_worksheet_asked_for(folder: Path, tmp_path: Path) -> None:
    told, browser = tmp_path / "told", tmp_path / "browser"
    browser.write_text(f'#!/bin/sh\nprintf %s "$1" > {told}.part && mv {told}.part {told}\n')
    browser.chmod(0o755)
    env = {"BROWSER": str(browser)}
    with serving("skein", "--port", "0", "--folder", str(folder), env=env) as running:
        wait_until(told.exists, "the browser is opened")
        assert told.read_text() == f"{running.address}voila/render/skein.ipynb"


def test_ctrl_c_stops_kernels_too_and_prints_one_line(folder: Path) -> None:
    with serving("--no-browser", "--port", "0", "--folder", str(folder)) as running:
        running.get("voila/render/skein.ipynb")
        assert running.kernels()
        printed = running.stop()  # checks that the kernels are gone and the exit code is 0
        assert running.error_output() == ""
    assert printed.splitlines() == [
        f"The worksheets are at {running.address} (Ctrl-C stops them).",
        "The worksheets have stopped.",
    ]


def test_finds_page_and_worksheets_inside_an_installed_package(
    folder: Path, tmp_path: Path
) -> None:
    """A wheel holds the worksheets inside the package: the same layout, made by copying."""
    package = tmp_path / "site" / "yarnsheets"
    shutil.copytree(ROOT / "yarnsheets", package, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copytree(folder, package / "worksheets")
    env = {"PYTHONPATH": str(package.parent), "JUPYTER_PATH": None}
    with serving("--no-browser", "--port", "0", env=env, cwd=tmp_path) as running:
        landing = running.get()
        assert "How long is the skein?" in landing
        style = re.search(r'href="/(voila/templates/yarnsheets/static/page\.css[^"]*)"', landing)[1]
        assert (
            running.get(style)
            == (package / TEMPLATE.relative_to(ROOT / "yarnsheets"))
            .joinpath("static/page.css")
            .read_text()
        )


# What is sent


def test_landing_page_lists_worksheets_by_title_and_first_sentence(small: Server) -> None:
    landing = small.get()
    items = re.findall(r'<li>\s*<a href="([^"]+)">([^<]+)</a>\s*(?:<p>(.*)</p>)?', landing)
    assert items == [
        ("/voila/render/no-heading_here.ipynb", "No heading here", ""),
        ("/voila/render/skein.ipynb", "How long is the skein?", "Count the turns."),
        ("/voila/render/wait.ipynb", "Wait", "The end."),
    ]
    assert small.get("voila/tree?classic-tree=false").strip() == landing


def test_pages_name_no_address_of_another_machine(small: Server) -> None:
    sources = [small.get(), small.get("voila/render/skein.ipynb")]
    sources += [(TEMPLATE / "static" / name).read_text() for name in ("page.css", "connection.js")]
    assert all(sources)
    assert not [address for text in sources for address in re.findall(r"https?:[^\s\"']*", text)]


def test_page_shows_no_code(small: Server) -> None:
    html = small.get("voila/render/skein.ipynb")
    assert "Last words" in html
    assert "secret_name" not in html


def test_page_is_a_document_of_its_own(small: Server) -> None:
    html = small.get("voila/render/skein.ipynb")
    assert '<html lang="en">' in html
    assert "<title>How long is the skein?</title>" in html
    assert '<meta name="viewport" content="width=device-width, initial-scale=1">' in html
    assert html.count("<main") == 1
    preloaded = re.search(r'<link rel="modulepreload" id="yarnsheets-charts" href="/([^"]+)"', html)
    assert preloaded[1].startswith("voila/templates/yarnsheets/static/charts.js")
    assert small.get(preloaded[1]) == (TEMPLATE / "static/charts.js").read_text()


def test_a_failing_cell_is_said_in_words_and_told_to_whoever_serves(small: Server) -> None:
    html = small.get("voila/render/no-heading_here.ipynb")
    assert "This part of the worksheet could not be\nworked out." in html
    assert "ZeroDivisionError" not in html
    assert "ZeroDivisionError" in small.error_output()


@pytest.mark.parametrize("name", ["own.py", "picture.png", "skein.ipynb", "go"])
def test_hands_out_no_file_of_the_folder(small: Server, name: str) -> None:
    with pytest.raises(urllib.error.HTTPError) as refused:
        small.get(f"voila/files/{name}")
    with refused.value:
        assert refused.value.code == HTTPStatus.FORBIDDEN


@pytest.mark.parametrize("path", ["voila/render/none.ipynb", "voila/tree/none", "none"])
def test_a_wrong_address_leads_back_to_the_list(small: Server, path: str) -> None:
    with pytest.raises(urllib.error.HTTPError) as missing_page:
        small.get(path)
    with missing_page.value as answer:
        assert answer.code == HTTPStatus.NOT_FOUND
        html = answer.read().decode()
    assert "There is no worksheet at this address." in html
    assert '<a href="/voila/tree">All worksheets</a>' in html


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours: W3C, Web Content Accessibility Guidelines 2.2 (2023),
    definitions of "relative luminance" and "contrast ratio".
    """

    def luminance(colour: str) -> float:
        parts = [int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5)]
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    dark, light = sorted([luminance(one), luminance(other)])
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize(
    ("ink", "paper", "least"),
    [
        # Web Content Accessibility Guidelines 2.2 (2023), 1.4.3: text 4.5; 1.4.11: controls 3.
        ("ink", "paper", 4.5),
        ("soft-ink", "paper", 4.5),
        ("accent", "paper", 4.5),
        ("alert-ink", "alert-paper", 4.5),
        ("line", "paper", 3),
        ("line", "panel", 3),
    ],
)
def test_colours_have_contrast(ink: str, paper: str, least: float) -> None:
    style = (TEMPLATE / "static/page.css").read_text()
    colours = dict(re.findall(r"--sheet-([\w-]+): (#[0-9a-f]{6});", style))
    assert contrast(colours[ink], colours[paper]) >= least


# In a browser


def test_text_is_there_while_the_kernel_starts(small: Server, page: Page, folder: Path) -> None:
    page.goto(f"{small.address}voila/render/wait.ipynb", wait_until="commit")
    page.get_by_text("The end.").wait_for()
    page.get_by_text("Getting the worksheet ready…").wait_for()
    (folder / "go").touch()
    page.get_by_text("Ready", exact=True).wait_for(timeout=PATIENCE * 1000)
    page.get_by_text("Getting the worksheet ready…").wait_for(state="hidden")


def test_a_control_reaches_the_kernel_and_back(small: Server, page: Page) -> None:
    open_worksheet(page, small, "skein")
    page.get_by_role("slider").press("ArrowRight")
    page.get_by_text("40.1 turns").wait_for()


@pytest.mark.parametrize("width", [360, 1280, 1920])
def test_page_fits_its_window(small: Server, page: Page, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    open_worksheet(page, small, "skein")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    for part, widest in ((".prose", 1280 * 0.65), (".sheet", 1280)):
        box = page.locator(part).first.bounding_box()
        assert box["x"] > 0
        assert box["width"] <= min(width, widest)


def test_keyboard_goes_to_the_worksheet_first_and_to_the_list_next(
    small: Server, page: Page
) -> None:
    open_worksheet(page, small, "skein")
    page.keyboard.press("Tab")
    skip = page.locator(":focus")
    assert skip.inner_text() == "Skip to the worksheet"
    assert skip.bounding_box()["y"] >= 0
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Worksheets").wait_for()


def test_formulas_in_text_are_set_without_the_network(small: Server, page: Page) -> None:
    open_worksheet(page, small, "skein")
    page.locator("mjx-assistive-mml math").wait_for()


def test_an_error_in_the_kernel_tells_nothing_of_the_code_and_the_page_goes_on(
    small: Server, page: Page
) -> None:
    received: list[str] = []
    page.on("websocket", lambda ws: ws.on("framereceived", lambda f: received.append(str(f))))
    open_worksheet(page, small, "skein")
    page.get_by_role("button", name="Fail").click()
    page.get_by_role("slider").press("ArrowRight")
    page.get_by_text("40.1 turns").wait_for()
    assert [one for one in received if "ExecutionError" in one]
    assert not [one for one in received if "ZeroDivision" in one or "1 / 0" in one]


def test_leaving_a_page_stops_its_kernel(small: Server, page: Page) -> None:
    others = set(small.kernels())
    open_worksheet(page, small, "skein")
    (kernel,) = set(small.kernels()) - others
    page.get_by_role("link", name="All worksheets").click()
    page.get_by_role("heading", name="Worksheets").wait_for()
    wait_until(lambda: not kernel.is_running(), "the kernel is stopped")


def test_back_to_a_page_that_was_left_starts_it_anew(small: Server, page: Page) -> None:
    open_worksheet(page, small, "skein")
    page.get_by_role("link", name="All worksheets").click()
    page.get_by_role("heading", name="Worksheets").wait_for()
    page.go_back()
    page.get_by_role("slider").press("ArrowRight", timeout=PATIENCE * 1000)
    page.get_by_text("40.1 turns").wait_for()


def test_page_says_so_when_its_kernel_has_died(
    small: Server, page: Page, troubles: Troubles
) -> None:
    troubles.expect("Canceled future for kernel_info_request")
    others = set(small.kernels())
    open_worksheet(page, small, "skein")
    (kernel,) = set(small.kernels()) - others
    kernel.kill()
    page.get_by_text("The worksheet’s program has stopped.").wait_for(timeout=PATIENCE * 1000)
    page.get_by_role("button", name="Reload to connect again").click()
    page.get_by_role("slider").press("ArrowRight", timeout=PATIENCE * 1000)
    page.get_by_text("40.1 turns").wait_for()


def test_page_says_so_when_its_kernel_was_replaced_before_it_listened(
    small: Server, page: Page, troubles: Troubles
) -> None:
    troubles.expect("widget model not found")
    others = set(small.kernels())

    def replace_kernel(route: Route) -> None:
        (kernel,) = set(small.kernels()) - others
        kernel.kill()
        wait_until(lambda: set(small.kernels()) - others - {kernel}, "another kernel")
        route.continue_()

    page.route(re.compile(r"widgets-manager8/static/remoteEntry"), replace_kernel)
    page.goto(f"{small.address}voila/render/skein.ipynb")
    page.get_by_text("The worksheet’s program has stopped.").wait_for(timeout=PATIENCE * 1000)


def test_page_says_so_when_the_server_is_gone(folder: Path, page: Page, troubles: Troubles) -> None:
    troubles.expect("WebSocket connection to")
    troubles.expect("ERR_CONNECTION_REFUSED")
    with serving("--no-browser", "--port", "0", "--folder", str(folder)) as running:
        open_worksheet(page, running, "skein")
        page.wait_for_load_state("networkidle")
        running.stop()
        page.get_by_text("The connection to the worksheet’s program is lost").wait_for()


# --- a page that goes away ---


def test_only_a_closed_page_is_passed_over() -> None:
    told: list[dict[str, Any]] = []

    class Loop:
        def default_exception_handler(self, context: dict[str, Any]) -> None:
            told.append(context)

    trouble = {"message": "Task exception was never retrieved", "exception": ValueError("real")}
    for context in ({"exception": WebSocketClosedError()}, trouble):
        pass_over_closed_pages(Loop(), context)  # type: ignore[arg-type]
    assert told == [trouble]

"""The command `yarnsheets` and the pages it serves, tried on small worksheets made here."""

from __future__ import annotations

import re
import shutil
import socket
import subprocess
import tomllib
import urllib.error
from http import HTTPStatus
from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.request import Request, urlopen

import psutil
import pytest
from nbformat.v4 import new_code_cell as code
from nbformat.v4 import new_markdown_cell as text

from tests.browser import COMMAND, PATIENCE, ROOT, open_sheet, serving, wait_until
from tests.serve.small import DYING, WAITING, write, write_all
from yarnsheets.__main__ import main
from yarnsheets.serve.files import FILES
from yarnsheets.serve.worksheets import PARTS, in_parts, worksheets_in

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.sync_api import Page

    from tests.browser import Server, Troubles

TEMPLATE = ROOT / "yarnsheets/serve/share/voila/templates/yarnsheets"
INKS = ("ink", "soft", "yarn", "project")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("worksheets")
    write_all(made)
    return made


@pytest.fixture(scope="module")
def small(folder: Path) -> Iterator[Server]:
    with serving("--no-browser", "--port", "0", "--folder", str(folder)) as running:
        running.wait_until_made()  # so that no later start has anything to run
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


def test_ctrl_c_stops_what_is_running_too_and_prints_one_line(tmp_path: Path) -> None:
    write(tmp_path, "wait", code(WAITING))
    with serving("--no-browser", "--port", "0", "--folder", str(tmp_path)) as running:
        wait_until(lambda: len(running.processes()) == 2, "the worker runs a kernel")
        printed = running.stop()  # checks that both are gone and the exit code is 0
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
        style = re.search(r'href="/(static/\w+/page\.css)"', landing)[1]
        installed = package / TEMPLATE.relative_to(ROOT / "yarnsheets") / "static/page.css"
        assert running.get(style) == installed.read_text()
        assert 'class="yarnsheet"' in running.get("voila/render/skein.ipynb")


# What is sent


def test_landing_page_lists_worksheets_by_title_and_first_sentence(small: Server) -> None:
    landing = small.get()
    items = re.findall(r'<li>\s*<a href="([^"]+)">([^<]+)</a>\s*(?:<p>(.*)</p>)?', landing)
    assert "<h2>" not in landing  # these are of no part
    assert items == [
        ("/voila/render/other_widgets.ipynb", "Turns", "The end."),
        ("/voila/render/shown.ipynb", "Shown", ""),
        ("/voila/render/skein.ipynb", "How long is the skein?", "Count the turns."),
    ]
    assert small.get("voila/tree") == landing


def test_our_own_worksheets_are_listed_by_what_she_is_doing() -> None:
    parts = in_parts(worksheets_in(ROOT / "worksheets"))
    assert [title for title, _ in parts] == list(PARTS.values())[:-1]
    assert parts[0][1][0].title == "What is grist?"
    for _, worksheets in parts:
        assert [each.place for each in worksheets] == list(range(1, len(worksheets) + 1))
        assert all("<path" in each.picture and "<text" not in each.picture for each in worksheets)


def test_page_is_a_document_of_its_own_with_the_answer_in_it(small: Server) -> None:
    html = small.get("voila/render/skein.ipynb")
    assert '<html lang="en" class="ys-page">' in html
    assert "<title>How long is the skein?</title>" in html
    assert '<meta name="viewport" content="width=device-width, initial-scale=1">' in html
    assert html.count("<main") == 1
    answer = "8\N{NO-BREAK SPACE}oz of yarn at 1,200\N{NO-BREAK SPACE}yd/lb is about 600"
    assert html.index("Count the turns") < html.index(answer) < html.index("Last words")


def test_page_shows_no_code_and_names_no_address_of_another_machine(small: Server) -> None:
    pages = [small.get(), *(small.get(f"voila/render/{name}.ipynb") for name in ("skein", "shown"))]
    files = {path for html in pages for path in re.findall(r'(?:href|src)="/(static/[^"]+)"', html)}
    assert {Path(path).name for path in files} == set(FILES) - {"phone.js"}  # of a class alone
    for html in pages:
        assert "secret_name" not in html
        # the names of XML languages are addresses that nobody asks
        assert not re.findall(r"https?://(?!www\.w3\.org/|vega\.github\.io/schema/)[^\s\"']*", html)


def test_what_a_worksheet_shows_without_a_kernel_is_shown_in_its_order(small: Server) -> None:
    html = small.get("voila/render/shown.ipynb")
    shown = ["&lt;one&gt;", "<b>two</b>", "<title>three</title>", "<math", "five"]
    places = [html.index(each) for each in shown]
    assert places == sorted(places)


def test_other_widgets_are_said_to_need_another_start(small: Server) -> None:
    html = small.get("voila/render/other_widgets.ipynb")
    said = "This worksheet works only where the worksheets were started with\n<code>--live</code>."
    assert html.count(said) == 1
    assert "Turn the wheel" in html
    assert "VBox" not in html
    assert "--live" not in small.get("voila/render/skein.ipynb")


def test_a_later_start_has_every_page_at_once(tmp_path: Path) -> None:
    write_all(tmp_path)
    pages = []
    for start in ("first", "later"):
        with serving("--no-browser", "--port", "0", "--folder", str(tmp_path)) as running:
            if start == "first":
                running.wait_until_made()
            pages.append(running.get("voila/render/skein.ipynb"))
            assert not running.processes()
    assert pages[0] == pages[1]


def test_failures_are_said_in_words_and_told_to_whoever_serves(tmp_path: Path) -> None:
    write(tmp_path, "failing", text("# Before"), code("print('so far')\n1 / 0"), text("After."))
    write(tmp_path, "dying", text("# Before"), code(DYING), text("After."))
    (tmp_path / "none.ipynb").write_text("{")
    write(tmp_path, "whole", code("'whole'"))
    with serving("--no-browser", "--port", "0", "--folder", str(tmp_path)) as running:
        for name in ("failing", "dying"):
            html = running.get(f"voila/render/{name}.ipynb")
            assert html.count("This part of the worksheet could not be worked out.") == 1
            assert html.index("Before") < html.index("This part") < html.index("After.")
            assert "Error" not in html
            assert "Traceback" not in html
        assert "so far" in running.get("voila/render/failing.ipynb")
        assert "This worksheet could not be worked out." in running.get("voila/render/none.ipynb")
        assert "whole" in running.get("voila/render/whole.ipynb")
        told = running.error_output()
        assert "In failing: An error occurred while executing the following cell:" in told
        assert "ZeroDivisionError" in told
        assert "In dying: Kernel died" in told
        running.stop()


def test_a_worker_that_is_killed_takes_one_page_with_it(tmp_path: Path) -> None:
    write(tmp_path, "a", code(WAITING))
    write(tmp_path, "b", code("'whole'"))
    with serving("--no-browser", "--port", "0", "--folder", str(tmp_path)) as running:
        wait_until(lambda: len(running.processes()) == 2, "the worker runs a kernel")
        running.processes()[0].kill()
        assert "could not be worked out" in running.get("voila/render/a.ipynb")
        assert "whole" in running.get("voila/render/b.ipynb")


@pytest.mark.parametrize("path", ["voila/render/none.ipynb", "voila/tree/none", "none"])
def test_a_wrong_address_leads_back_to_the_list(small: Server, path: str) -> None:
    with pytest.raises(urllib.error.HTTPError) as missing_page:
        small.get(path)
    with missing_page.value as answer:
        assert answer.code == HTTPStatus.NOT_FOUND
        html = answer.read().decode()
    assert "There is no worksheet at this address." in html
    assert '<a href="/voila/tree">All worksheets</a>' in html


def test_files_that_pages_share_are_asked_for_once_and_packed(small: Server) -> None:
    html = small.get("voila/render/skein.ipynb")
    paths = re.findall(r'(?:href|src)="/(static/[^"]+)"', html)
    assert len(paths) == len(FILES) - 1  # all but that of a class
    for path in paths:
        request = Request(small.address + path, headers={"Accept-Encoding": "gzip"})  # noqa: S310
        with urlopen(request) as answer:  # noqa: S310
            assert "immutable" in answer.headers["Cache-Control"]
            assert answer.headers["Content-Encoding"] == "gzip"
            assert len(answer.read()) < len(small.get(path)) * 0.6
    with pytest.raises(urllib.error.HTTPError, match="404"):
        small.get(f"static/{'0' * 24}/page.css")


def test_a_page_that_a_browser_has_is_not_sent_again(small: Server) -> None:
    address = f"{small.address}voila/render/skein.ipynb"
    with urlopen(address) as answer:  # noqa: S310
        known = {"If-None-Match": answer.headers["Etag"]}
    with pytest.raises(urllib.error.HTTPError) as unchanged:
        urlopen(Request(address, headers=known))  # noqa: S310
    with unchanged.value:
        assert unchanged.value.code == HTTPStatus.NOT_MODIFIED


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
        *((ink, paper, 4.5) for ink in INKS for paper in ("paper", "wash")),
        ("alert-ink", "alert-paper", 4.5),
        ("control", "paper", 3),
    ],
)
@pytest.mark.parametrize("look", [0, 1], ids=["light", "dark"])
def test_colours_have_contrast(ink: str, paper: str, least: float, look: int) -> None:
    style = FILES["colours.css"].read_text()
    pairs = re.findall(r"--([\w-]+): light-dark\((#\w{6}), (#\w{6})\);", style)
    usual, more = ({}, {})
    for name, *colours in pairs:  # those for more contrast follow the usual ones
        (more if name in usual else usual)[name] = colours[look]
    for colours in (usual, usual | more):
        assert contrast(colours[ink], colours[paper]) >= least


# In a browser


@pytest.mark.parametrize("width", [360, 1280, 1920])
def test_page_fits_its_window(small: Server, page: Page, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    open_sheet(page, small, "skein")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    for part, widest in ((".prose", 1280 * 0.65), (".sheet", 1640)):
        box = page.locator(part).first.bounding_box()
        assert box["x"] > 0
        assert box["width"] <= min(width, widest)


def test_keyboard_goes_to_the_worksheet_first_and_to_the_list_next(
    small: Server, page: Page
) -> None:
    open_sheet(page, small, "skein")
    page.keyboard.press("Tab")
    skip = page.locator(":focus")
    assert skip.inner_text() == "Skip to the worksheet"
    assert skip.bounding_box()["y"] >= 0
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Worksheets for handspinners").wait_for()


def test_formulas_in_text_are_set_without_the_network(small: Server, page: Page) -> None:
    open_sheet(page, small, "skein")
    formula = page.get_by_text("Last words").locator("math")
    assert formula.text_content() == "a=b"
    assert formula.bounding_box()["width"] > 0


def test_a_page_asks_for_little_and_only_once(small: Server, page: Page) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    open_sheet(page, small, "skein")
    page.wait_for_load_state("networkidle")
    assert len(asked) <= 12
    loaded = sum(len(small.get(address.removeprefix(small.address))) for address in asked)
    assert loaded <= 1.4 * 2**20
    assert not [address for address in asked if re.search("mathjax|voila/static|lab", address)]


def test_a_page_goes_on_when_the_server_is_gone(
    folder: Path, page: Page, troubles: Troubles
) -> None:
    with serving("--no-browser", "--port", "0", "--folder", str(folder)) as running:
        open_sheet(page, running, "skein")
        page.locator(".ys-picture svg").first.wait_for()
        running.process.kill()
        running.process.wait()
    sentence = page.locator(".ys-sentence")
    before, drawn = sentence.inner_text(), page.locator(".ys-picture").first.inner_html()
    page.get_by_role("slider").first.press("ArrowRight")
    wait_until(lambda: sentence.inner_text() != before, "the sentence follows", 5)
    wait_until(lambda: page.locator(".ys-picture").first.inner_html() != drawn, "and the chart", 5)
    assert not troubles.seen

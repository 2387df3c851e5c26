"""How fast pages come and follow, beside plain Voila and beside one static file.

Run by hand: `python -m tests.benchmark_page`. It asserts nothing: times differ by machine, so read
them as ratios of one run. The three ways show the same sheet, each to visitors who have nothing
kept in their browsers.
"""

from __future__ import annotations

import asyncio
import math
import os
import statistics
import subprocess
import sys
import tempfile
import time
from contextlib import ExitStack, contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import psutil
from playwright.async_api import TimeoutError, async_playwright  # noqa: A004

from tests.browser import CHROMIUM_OPTIONS, COMMAND, ROOT, answered, chromium, free_port
from yarnsheets.serve.kept import CACHE_FOLDER

if TYPE_CHECKING:
    from collections.abc import Iterator

    from playwright.async_api import Browser, BrowserContext, Page, Response

NAME = "how-many-yards"
WORKSHEETS = [path.stem for path in sorted((ROOT / "worksheets").glob("*.ipynb"))]
CROWD = 30  # visitors at once
STARTS = 5
MOVES = 40
HERE = "http://127.0.0.1"
NO_NETWORK = "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"
PATIENCE = 300_000  # ms: thirty kernels at once take a minute and more

STATIC_PAGE = """
from pathlib import Path
from yarnsheets.page import html
from yarnsheets.sheets import HowManyYards
page = "<!DOCTYPE html><html lang=en><meta charset=utf-8><title>Sheet</title>"
Path("sheet.html").write_text(page + html.page(HowManyYards()), "utf-8")
"""

LATE = ("altair", "anywidget", "ipywidgets", "numpy", "pandas", "scipy")
IMPORT = f"""
import sys, time
start = time.perf_counter()
from yarnsheets.sheets import HowManyYards
print(time.perf_counter() - start, *(set({LATE}) & set(sys.modules)))
"""

READY = """() => {
    const pictures = [...document.querySelectorAll(".ys-sheet .ys-picture")];
    return document.querySelector(".ys-sheet .ys-sentence")?.textContent && pictures.length > 0
        && pictures.every((picture) => picture.querySelector("svg"));
}"""

# From a move to the last change of any sentence or chart, in milliseconds: of the first slider that
# changes any, by key, or of the first reading or number, typed.
MOVE = """async ([times, typing]) => {
    for (const folded of document.querySelectorAll(".ys-sheet details")) folded.open = true;
    const seen = (kind) => [...document.querySelectorAll(`.ys-sheet ${kind}`)]
        .filter((each) => each.checkVisibility());
    const parts = document.querySelectorAll(".ys-sentence, .ys-picture");
    const all = { childList: true, attributes: true, characterData: true, subtree: true };
    const send = (field, type) => field.dispatchEvent(new Event(type, { bubbles: true }));
    const timed = async (move) => {
        let last = NaN;
        const watcher = new MutationObserver(() => { last = performance.now(); });
        for (const part of parts) watcher.observe(part, all);
        const start = performance.now();
        move();
        await new Promise((done) => setTimeout(done, 80));
        watcher.disconnect();
        return last - start;
    };
    const slide = (slider) => (at) => {
        if (at % 2) slider.stepDown();
        else slider.stepUp();
        send(slider, "input");
    };
    const type = (field) => {
        const wrote = field.value;
        const typed = wrote.replace(/[\\d.,]+(?=\\D*$)/, (last) =>
            String(Number.parseFloat(last.replaceAll(",", "")) * 1.01));
        return (at) => {
            field.value = at % 2 ? wrote : typed;
            send(field, "input");
            send(field, "change");
        };
    };
    const fields = typing ? [...seen("textarea"), ...seen(".ys-number input:not([type=range])")]
        : seen("input[type=range]");
    for (const field of fields) {
        const move = (typing ? type : slide)(field);
        if (!(await timed(() => move(0)) > 0)) continue;
        const taken = [];
        for (let at = 1; at <= times; at++) taken.push(await timed(() => move(at)));
        return taken.filter(Number.isFinite);
    }
    return [NaN];
}"""


class Way(NamedTuple):
    """A way to serve the sheet."""

    name: str
    address: str
    process: psutil.Process


class Figures(NamedTuple):
    """What a way took."""

    ready: float  # seconds, for the second visitor
    crowd: float  # seconds, until each of the crowd is ready
    memory: float  # MiB a visitor
    kernels: int
    loaded: float  # KiB, unpacked
    asked: int
    outside: int


# The ways


@contextmanager
def ways(folder: Path) -> Iterator[list[Way]]:
    """Serve the sheet in each way."""
    subprocess.run([sys.executable, "-c", STATIC_PAGE], cwd=folder, check=True)
    ports = [free_port() for _ in range(3)]
    page = f"voila/render/{NAME}.ipynb"
    started = {
        "plain Voila": (["voila", str(ROOT / "worksheets"), "--no-browser"], "--port=", page),
        "one static file": (["http.server", "--bind", "127.0.0.1"], "", "sheet.html"),
        "yarnsheets": ([*COMMAND[2:], "--no-browser"], "--port=", page),
    }
    with ExitStack() as all_of_them:
        served = []
        for port, (name, (module, option, path)) in zip(ports, started.items(), strict=True):
            command = [sys.executable, "-m", *module, f"{option}{port}"]
            address = f"http://127.0.0.1:{port}/"
            process = all_of_them.enter_context(running(command, address, folder))
            served.append(Way(name, address + path, process))
        yield served


@contextmanager
def running(command: list[str], address: str, folder: Path) -> Iterator[psutil.Process]:
    """Run a server; the block begins as soon as it answers."""
    environment = {**os.environ, CACHE_FOLDER: str(folder / "kept")}
    quiet = subprocess.DEVNULL
    with subprocess.Popen(
        command, cwd=folder, env=environment, stdout=quiet, stderr=quiet
    ) as process:
        try:
            while not answered(address):
                time.sleep(0.005)
            yield psutil.Process(process.pid)
        finally:
            process.terminate()


# What is measured


async def measure(way: Way, browser: Browser) -> Figures:
    """Send visitors."""
    await visit(way.address, browser)
    ready, _ = await visit(way.address, browser)
    _, answers = await visit(way.address, browser)
    asked = [address for address in answers if address.startswith("http")]

    alone = memory(way.process)
    contexts = [await new_visitor(browser) for _ in range(CROWD)]
    pages = [await context.new_page() for context in contexts]
    start = time.perf_counter()
    try:
        await asyncio.gather(*(come(page, way.address) for page in pages))
    except TimeoutError:
        crowd = math.inf
    else:
        crowd = time.perf_counter() - start
    together, kernels = memory(way.process), len(way.process.children(recursive=True))
    for context in contexts:
        await context.close()
    return Figures(
        ready=ready,
        crowd=crowd,
        memory=(together - alone) / CROWD,
        kernels=kernels,
        loaded=sum(answers.values()) / 1024,
        asked=len(asked),
        outside=len([address for address in asked if not address.startswith(HERE)]),
    )


async def new_visitor(browser: Browser) -> BrowserContext:
    """Return a browser with nothing kept."""
    return await browser.new_context(viewport={"width": 1280, "height": 900})


async def visit(address: str, browser: Browser) -> tuple[float, dict[str, int]]:
    """Give the seconds until a page is ready, and how long all was that came for it."""
    context = await new_visitor(browser)
    page = await context.new_page()
    answers: list[Response] = []
    lost: list[str] = []
    page.on("response", lambda answer: answers.append(answer))
    page.on("requestfailed", lambda request: lost.append(request.url))
    taken = await come(page, address)
    await page.wait_for_load_state("networkidle")
    came = {answer.url: len(await answer.body()) for answer in answers if answer.ok}
    await context.close()
    return taken, dict.fromkeys(lost, 0) | came


async def come(page: Page, address: str) -> float:
    """Open a page; give the seconds until its answer is there and every chart drawn."""
    start = time.perf_counter()
    await page.goto(address, wait_until="commit", timeout=PATIENCE)
    await page.wait_for_function(READY, timeout=PATIENCE)
    return time.perf_counter() - start


def memory(process: psutil.Process) -> float:
    """Return the memory of a server and all it started, in MiB, what they share counted once."""
    family = [process, *process.children(recursive=True)]
    return sum(each.memory_full_info().pss for each in family) / 2**20


async def moves(address: str, browser: Browser) -> dict[str, list[float]]:
    """Give, for each worksheet, how long a key and a typed number take, in milliseconds."""
    context = await new_visitor(browser)
    page = await context.new_page()
    taken: dict[str, list[float]] = {}
    for name in WORKSHEETS:
        await come(page, address.replace(NAME, name))
        await page.wait_for_load_state("networkidle")
        row: list[float] = []
        for typing in (False, True):
            await page.evaluate(MOVE, [6, typing])  # the browser compiles what it runs often
            times = await page.evaluate(MOVE, [MOVES, typing])
            row += [statistics.median(times), percentile(times, 0.95)]
        taken[name] = row
    await context.close()
    return taken


def percentile(values: list[float], share: float) -> float:
    """Return the value below which this share of them lies."""
    return sorted(values)[round(share * (len(values) - 1))]


def start_of_the_list(folder: Path) -> float:
    """Return the seconds from the command to the answered list, of the first start ever."""
    port = free_port()
    nothing_kept = folder / str(port)
    nothing_kept.mkdir()
    command = [*COMMAND, "--no-browser", f"--port={port}"]
    start = time.perf_counter()
    with running(command, f"http://127.0.0.1:{port}/", nothing_kept):
        return time.perf_counter() - start


def importing() -> tuple[float, list[str]]:
    """Return the seconds that a sheet takes to import, and what of the late it loaded."""
    said = subprocess.run(
        [sys.executable, "-c", IMPORT], check=True, capture_output=True, text=True
    ).stdout.split()
    return float(said[0]), said[1:]


# What is printed


def table(*rows: list[str]) -> None:
    """Print rows as a table in Markdown."""
    head, *rest = rows
    for row in (head, ["---"] * len(head), *rest):
        print("| " + " | ".join(row) + " |")
    print(flush=True)


def print_ways(figures: dict[str, Figures]) -> None:
    """Print what each way took, and how many times what one static file took."""
    base = figures["one static file"]
    table(
        ["", *figures],
        ["page ready, 2nd visitor, s", *(f"{one.ready:.2f}" for one in figures.values())],
        ["… times a static file", *(f"{one.ready / base.ready:.2f}" for one in figures.values())],
        [f"{CROWD} at once, all ready, s", *(f"{one.crowd:.1f}" for one in figures.values())],
        ["… times one visitor", *(f"{one.crowd / one.ready:.1f}" for one in figures.values())],
        ["MiB a visitor", *(f"{one.memory:.2f}" for one in figures.values())],
        ["kernels", *(str(one.kernels) for one in figures.values())],
        ["first load, KiB", *(f"{one.loaded:.0f}" for one in figures.values())],
        ["… requests", *(str(one.asked) for one in figures.values())],
        ["… of them outside", *(str(one.outside) for one in figures.values())],
    )


def milliseconds(taken: float) -> str:
    """Write a time; a worksheet without a slider has none for a key."""
    return "no slider" if math.isnan(taken) else f"{taken:.1f}"


async def main() -> None:
    """Print the figures."""
    seconds, late = zip(*(importing() for _ in range(STARTS)), strict=True)
    loaded = ", ".join(set().union(*late)) or "none"
    print(f"import of a sheet: {statistics.median(seconds):.2f} s; of {', '.join(LATE)}: {loaded}")
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made)
        starts = [start_of_the_list(folder) for _ in range(STARTS)]
        print(f"start of yarnsheets to its list: {statistics.median(starts):.2f} s\n")
        async with async_playwright() as playwright:
            browser = await playwright.chromium.launch(
                executable_path=chromium(), args=[*CHROMIUM_OPTIONS, NO_NETWORK]
            )
            with ways(folder) as served:
                print_ways({way.name: await measure(way, browser) for way in served})
                taken = await moves(served[-1].address, browser)
            await browser.close()
    names = ["key p50, ms", "p95", "typed p50, ms", "p95"]
    table(
        ["worksheet", *names],
        *([name, *map(milliseconds, row)] for name, row in taken.items()),
    )


if __name__ == "__main__":
    asyncio.run(main())

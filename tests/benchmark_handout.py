"""How large the pages of a handout are, and how fast they come, alone and ten in one article.

Run by hand: `python -m tests.benchmark_handout`. It asserts nothing: read times as ratios of one
run. The bare page has the same charts as they are at first, drawn by the same library, and nothing
that moves them.
"""

from __future__ import annotations

import gzip
import json
import statistics
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from playwright.sync_api import sync_playwright

from tests.benchmark_page import MOVE, MOVES, NAME, NO_NETWORK, READY, percentile, table
from tests.browser import CHROMIUM_OPTIONS, chromium
from yarnsheets.handout import main as handout
from yarnsheets.page.html import built, script

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

VISITS = 9
SLOWER = (1, 4)  # how many times slower than this machine's processor
EMBEDDED = 10

# The charts as drawn: what each was made of, with the values it read.
DRAWN = """(description) => [...document.querySelectorAll(".ys-picture")].map(({ view }, at) => {
    const { spec, tables } = description.charts[at];
    const values = Object.fromEntries(spec.params.map(({ name }) => [name, view.signal(name)]));
    const rows = Object.fromEntries(tables.map((name) => [name,
        JSON.parse(JSON.stringify(view.data(name)))]));
    return { spec, values, rows, width: view.width(), padding: view.padding() };
})"""
BARE = """
for (const [at, { spec, values, rows, width, padding }] of charts.entries()) {
    const { view, compile } = yarnsheet_charts;
    const made = compile({ ...spec, width, padding, autosize: "none" }).spec;
    const drawn = view(made, document.getElementById(`chart-${at}`));
    for (const [name, value] of Object.entries(values)) drawn.signal(name, value);
    for (const [name, data] of Object.entries(rows)) drawn.data(name, data);
    drawn.run();
}
"""
BARE_READY = "[...document.querySelectorAll('div')].every((each) => each.querySelector('svg'))"

# Scroll an article down at a reader's pace; give the milliseconds between its frames.
SCROLL = """async () => {
    const taken = [];
    let last = performance.now();
    while (scrollY + innerHeight < document.documentElement.scrollHeight - 2) {
        scrollBy(0, 20);
        await new Promise(requestAnimationFrame);
        taken.push(performance.now() - last);
        last = performance.now();
    }
    return taken;
}"""


def bare(page: Page, folder: Path) -> Path:
    """Write the bare page, from the charts of a page that was drawn."""
    from yarnsheets.sheets import HowManyYards

    charts = page.evaluate(DRAWN, json.loads(json.dumps(HowManyYards.describe())))
    places = "".join(f'<div id="chart-{at}"></div>' for at in range(len(charts)))
    data = script(f"const charts = {json.dumps(charts)};")
    html = f"<!DOCTYPE html><title>Bare</title>{places}{script(built('charts.js'))}{data}"
    file = folder / "bare.html"
    file.write_text(html + script(BARE), "utf-8")
    return file


def ready(browser: Browser, file: Path, is_ready: str, slower: int) -> float:
    """Give the milliseconds from opening a file until all is drawn, the median of some visits."""
    taken = []
    for _ in range(VISITS):
        page = browser.new_page(viewport={"width": 1280, "height": 900})
        devices = page.context.new_cdp_session(page)
        devices.send("Emulation.setCPUThrottlingRate", {"rate": slower})
        page.goto(file.as_uri(), wait_until="commit")
        page.wait_for_function(is_ready, polling="raf")
        taken.append(page.evaluate("performance.now()"))
        page.close()
    return statistics.median(taken)


def embedded(browser: Browser, folder: Path, names: list[str]) -> list[list[str]]:
    """Give how an article with many worksheets scrolls and follows, its first beside them all."""
    frames = "".join(
        f'<p>Text.</p><iframe src="{name}.html?alone" loading="lazy" '
        'style="width: 100%; height: 1000px; border: 0"></iframe>'
        for name in names
    )
    (folder / "article.html").write_text(f"<!DOCTYPE html><title>Article</title>{frames}", "utf-8")
    page = browser.new_page(viewport={"width": 1280, "height": 900})
    page.goto((folder / "article.html").as_uri())
    down = page.evaluate(SCROLL)
    page.wait_for_timeout(2000)
    page.evaluate("scrollTo(0, 0)")
    again = page.evaluate(SCROLL)
    page.evaluate("scrollTo(0, 0)")
    frame = page.frames[1]
    frame.evaluate(MOVE, [6, False])
    moved = frame.evaluate(MOVE, [MOVES, False])
    page.close()
    return [
        [what, *(f"{each:.1f}" for each in (statistics.median(ms), percentile(ms, 0.95), max(ms)))]
        for what, ms in (
            ("frame, scrolling down for the first time", down),
            ("frame, scrolling down again", again),
            ("key to sentence and charts", moved),
        )
    ]


def main() -> None:
    """Print the figures."""
    with tempfile.TemporaryDirectory() as made, sync_playwright() as playwright:
        folder = Path(made) / "handout"
        handout([str(folder)])
        pages = sorted(page for page in folder.glob("*.html") if page.name != "index.html")
        sizes = [page.read_bytes() for page in pages]
        packed = [len(gzip.compress(each, 9)) for each in sizes]
        print(f"one file: at most {max(map(len, sizes)) / 1e6:.2f} MB, ", end="")
        print(f"packed {max(packed) / 1e3:.0f} KB, of {len(pages)} worksheets\n")
        browser = playwright.chromium.launch(
            executable_path=chromium(), args=[*CHROMIUM_OPTIONS, NO_NETWORK]
        )
        page = browser.new_page(viewport={"width": 1280, "height": 900})
        page.goto((folder / f"{NAME}.html").as_uri())
        page.wait_for_function(READY)
        plain = bare(page, folder)
        page.close()
        rows = []
        for slower in SLOWER:
            without = ready(browser, plain, BARE_READY, slower)
            ours = ready(browser, folder / f"{NAME}.html", READY, slower)
            times = f"{ours / without:.2f}"
            rows.append([f"{slower} times slower", f"{without:.0f}", f"{ours:.0f}", times])
        table(["ready, ms", "bare charts", "handout", "times the bare one"], *rows)
        names = [each.stem for each in pages if each.stem != NAME][: EMBEDDED - 1]
        rows = embedded(browser, folder, [NAME, *names])
        table([f"{EMBEDDED} in one article, ms", "median", "p95", "longest"], *rows)
        browser.close()


if __name__ == "__main__":
    main()

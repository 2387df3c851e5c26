"""Take the pictures anew: of the pages for README, and small ones of their charts for the list.

Run by hand, after a change of look: `python -m tests.pictures`.
"""

from __future__ import annotations

import re
import sys
from base64 import b64encode
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from playwright.sync_api import sync_playwright

from tests.browser import CHROMIUM_OPTIONS, ROOT, chromium, open_sheet, serving
from yarnsheets.handout import embed
from yarnsheets.handout import main as handout
from yarnsheets.serve.worksheets import PICTURES

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

LARGE = ("how-many-yards", "how-sure-is-the-grist")  # those that README shows by themselves
VIEWS = ((1280, 900, "light"), (1920, 1080, "dark"), (360, 740, "light"), (360, 740, "dark"))
HIGH = 330  # px of the views side by side
QUALITY = 70  # of JPEG
NAMES = [path.stem for path in sorted((ROOT / "worksheets").glob("*.ipynb"))]

# The first chart without its words, cut to what is inside its axes.
SMALL = """() => {
    const picture = document.querySelector(".ys-picture");
    const svg = picture.querySelector("svg").cloneNode(true);
    for (const part of svg.querySelectorAll("text, .role-axis-grid")) part.remove();
    const { view } = picture;
    const [width, height, gap] = [view.width(), view.height(), view.padding()];
    svg.setAttribute("viewBox", `${gap.left} ${gap.top} ${width} ${height}`);
    for (const name of ["width", "height", "class", "style", "version", "xmlns:xlink"])
        svg.removeAttribute(name);
    svg.setAttribute("preserveAspectRatio", "none");
    svg.setAttribute("aria-hidden", "true");
    return svg.outerHTML;
}"""


def small(page: Page) -> str:
    """Give the small picture of a page's first chart."""
    text: str = page.evaluate(SMALL)
    text = re.sub(r' (?:class|aria-\w+|role|pointer-events)="[^"]*"', "", text)
    text = text.replace("<svg ", '<svg aria-hidden="true" ', 1)
    return re.sub(r"\d+\.\d+", lambda number: f"{float(number[0]):.1f}".removesuffix(".0"), text)


def side_by_side(browser: Browser, shots: list[bytes]) -> bytes:
    """Set pictures of one page side by side, in one small picture."""
    images = "".join(
        f'<img src="data:image/png;base64,{b64encode(shot).decode()}" style="height:{HIGH}px">'
        for shot in shots
    )
    page = browser.new_page(viewport={"width": 1400, "height": HIGH})
    page.set_content(f'<div style="display:inline-flex;gap:12px">{images}</div>')
    page.wait_for_function("[...document.images].every((image) => image.complete)")
    picture = page.locator("div").screenshot(type="jpeg", quality=QUALITY)
    page.close()
    return picture


# A page of an invented guild's own site, with a worksheet in it.
ARTICLE = """<!DOCTYPE html><html lang="en"><meta charset="utf-8"><title>Grist in an evening</title>
<style>body {{ max-width: 58rem; margin: 1.5rem auto; font: 1.1rem/1.5 Georgia, serif }}</style>
<h1>Grist in an evening</h1>
<p>Bring a skein and a ruler on Tuesday. Weigh the skein, cut three short lengths, and see what
they say of its yards. The numbers below are invented; put in your own.</p>
{lines}<p>Then ply two of them, and guess before you look.</p>"""


def embedded(browser: Browser) -> None:
    """Take the picture of a worksheet in the middle of an article."""
    with TemporaryDirectory() as made:
        handout([made, LARGE[0]])
        article = Path(made) / "article.html"
        lines = embed.lines(f"{LARGE[0]}.html", "How many yards is this?")
        article.write_text(ARTICLE.format(lines=lines), "utf-8")
        page = browser.new_page(viewport={"width": 1100, "height": 1000})
        page.goto(article.as_uri())
        page.frame_locator("iframe").locator(".ys-picture svg").nth(2).wait_for()
        page.wait_for_timeout(300)  # the frame takes its height
        page.screenshot(path=ROOT / ".pictures/handout.jpg", type="jpeg", quality=QUALITY)
        page.close()


# What a class of ten might have sent; invented, as its balance 3 that is off.
SENT = [(1, "9.6"), (2, "10.2"), (3, "10.9"), (4, "9 7/8"), (1, "10.1"), (2, "9.8"), (3, "11.2")]
SENT += [(4, "10"), (1, "9.9"), (2, "10 3/8"), (3, "10.7"), (4, "10.4"), (1, "10.3"), (2, "9.7")]


def in_class(browser: Browser) -> None:
    """Take the picture of the projector in a class."""
    with serving("--no-browser", "--port=8899", "--class", "heron") as server:
        phone = browser.new_page()
        phone.goto(f"{server.address}heron")
        for balance, cut in SENT:
            phone.fill("#balance", str(balance))
            phone.fill("#length", cut)
            phone.click("button[type=submit]")
            phone.get_by_text("Arrived:").wait_for()
            phone.locator("#said").evaluate("(said) => { said.textContent = ''; }")
        page = browser.new_page(viewport={"width": 1280, "height": 800})
        page.goto(f"{server.address}heron/all")
        page.wait_for_selector("#arrived li")
        page.locator(".ys-picture svg").nth(1).wait_for()
        page.screenshot(path=ROOT / ".pictures/class.jpg", type="jpeg", quality=QUALITY)


def main(names: list[str]) -> None:
    """Take the pictures of worksheets."""
    PICTURES.mkdir(exist_ok=True)
    with serving("--no-browser", "--port=0") as server, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=CHROMIUM_OPTIONS)
        for name in names:
            page = browser.new_page(viewport={"width": 1280, "height": 900})
            open_sheet(page, server, name)
            page.wait_for_selector(".ys-picture svg")
            if name in LARGE:
                page.screenshot(path=ROOT / f".pictures/{name}.jpg", type="jpeg", quality=QUALITY)
            shots = []
            for width, height, look in VIEWS:
                page.set_viewport_size({"width": width, "height": height})
                page.emulate_media(color_scheme=look)
                page.wait_for_timeout(200)  # the charts take their new width with the next frame
                shots.append(page.screenshot())
            (ROOT / f".pictures/{name}-views.jpg").write_bytes(side_by_side(browser, shots))
            page.emulate_media(color_scheme="light")
            page.set_viewport_size({"width": 480, "height": 900})
            page.wait_for_timeout(200)
            (PICTURES / f"{name}.svg").write_text(small(page), "utf-8")
            page.close()
        embedded(browser)
        in_class(browser)
        browser.close()


if __name__ == "__main__":
    main(sys.argv[1:] or NAMES)

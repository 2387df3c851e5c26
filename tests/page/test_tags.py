"""Tags on the page of the shelf: what Python prints, alone on paper, with codes where they help.

ZXing reads the codes out of a picture of the page.
"""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import urlencode

import pytest

from tests.browser import open_sheet
from tests.reader import codes
from yarnsheets import shelf
from yarnsheets.sheets import WhatIsOnMyShelf

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page, Route

    from tests.browser import Server, Troubles

TAGS = {"paper": "tags"}
GRAMS = {"measure": "metres, grams", "grist_unit": "m/100g"}
GUILD = "https://guild.example/"
TAG = ".ys-tags:not([hidden]) tbody tr"


def opened(page: Page, server: Server, inputs: dict[str, str]) -> Page:
    open_sheet(page, server, "what-is-on-my-shelf")
    page.evaluate("(link) => { location.hash = link; }", urlencode(inputs))
    page.wait_for_selector(TAG)
    return page


def lines_of(page: Page, tags: str) -> list[list[str]]:
    texts = page.locator(tags).all_inner_texts()
    return [[line for line in text.split("\n") if line] for text in texts]


@pytest.mark.parametrize("units", [{}, GRAMS], ids=["yards", "metres"])
def test_the_page_says_what_python_prints(
    page: Page, server: Server, units: dict[str, str]
) -> None:
    opened(page, server, TAGS | units)
    tags = lines_of(page, TAG)
    measure = units.get("measure", "yards, ounces")
    page.set_content(shelf.labels(shelf.reckon(shelf.demo()), measure=measure))
    # all but the day, which the page writes out
    assert [tag[:-1] for tag in tags] == [tag[:-1] for tag in lines_of(page, ".tag")]
    assert len(tags) == 9


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_tags_are_printed_by_themselves(page: Page, server: Server, paper: str) -> None:
    opened(page, server, TAGS)
    assert page.pdf(format=paper).count(b"/Type /Page\n") == 1
    page.emulate_media(media="print")
    for part in (".ys-answer", ".ys-inputs", ".ys-charts", ".ys-worked", ".ys-button"):
        assert not page.locator(f"{part}:visible").count()
    assert page.locator(".ys-printed:visible").count() == 0
    assert page.locator(f"{TAG}:visible").count() == 9


def test_there_are_no_tags_until_they_are_asked_for(page: Page, server: Server) -> None:
    open_sheet(page, server, "what-is-on-my-shelf")
    assert not page.locator(".ys-listing:visible").count()
    page.get_by_label("On paper", exact=True).select_option("a tag for each skein")
    assert page.locator(f"{TAG}:visible").count() == 9
    # nobody's phone can open a page of this machine alone
    assert not page.locator(f"{TAG} svg").count()


def test_a_page_on_the_web_gives_each_tag_a_code(
    browser: Browser, server: Server, troubles: Troubles
) -> None:
    troubles.expect(GUILD)
    page = browser.new_page(device_scale_factor=300 / 96)  # as a printer has

    def serve(route: Route) -> None:
        route.fulfill(response=route.fetch(url=route.request.url.replace(GUILD, server.address)))

    page.route(f"{GUILD}**", serve)
    page.goto(f"{GUILD}voila/render/what-is-on-my-shelf.ipynb#paper=tags")
    page.wait_for_selector(f"{TAG} svg")
    page.emulate_media(media="print")
    found = shelf.reckon(shelf.demo())
    links = {
        f"{GUILD}voila/render/how-many-yards.ipynb#grist={grist:.6g}&weight={weight:.6g}"
        for grist, weight in zip(found.grist, found.weight, strict=True)
        if grist == grist
    }
    assert len(links) == 8
    assert set(codes(page)) == links
    page.close()


def test_words_of_hers_are_words(page: Page, server: Server) -> None:
    wild = "<b>{total}</b> & co"
    sheet = WhatIsOnMyShelf(paper="tags", skeins=[{"name": wild, "length": 90}])
    assert sheet.tags[0]["name"] == wild
    opened(page, server, TAGS)
    page.get_by_label("Row 1, name", exact=True).fill(wild)
    page.get_by_label("Row 1, name", exact=True).press("Enter")
    assert page.locator(TAG).first.inner_text().split("\n")[0] == wild

"""Tags on paper: where they stand on the page, what they say, and what their codes open.

Chromium     makes the pages, and measures where each tag and each line stands.
ZXing        reads the codes out of a picture of the page.
hand-worked  how many tags a page has; 1 in is 25.4 mm.
"""

from __future__ import annotations

import math
import re
from datetime import date
from typing import TYPE_CHECKING, Any

import numpy as np
import pandas as pd
import pytest

from tests.reader import codes, said
from yarnsheets import shelf
from yarnsheets.page.text import show
from yarnsheets.shelf.on_paper import PAPERS

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

    from tests.browser import Server

SIZES = {"A4": (210.0, 297.0), "Letter": (8.5 * 25.4, 11 * 25.4)}  # ISO 216; ANSI Y14.1
POINTS = {name: [mm / 25.4 * 72 for mm in size] for name, size in SIZES.items()}
MARGIN = 5  # mm, that printers leave white
GUILD = "https://guild.example/yarn/how-many-yards.html"
PLACE = "\N{NO-BREAK SPACE}"

MEASURE = """() => {
    const mm = (part, page) => {
        const [it, on] = [part.getBoundingClientRect(), page.getBoundingClientRect()];
        return [it.left - on.left, it.top - on.top, it.right - on.left, it.bottom - on.top]
            .map((pixels) => pixels / 96 * 25.4);
    };
    return [...document.querySelectorAll(".page")].map((page) =>
        [...page.querySelectorAll(".tag")].map((tag) => ({
            tag: mm(tag, page),
            parts: [...tag.querySelectorAll("p, svg")].map((part) => mm(part, page)),
            cut: [...tag.querySelectorAll("p:not(.name, .kind)")]
                .filter((line) => line.scrollWidth > line.clientWidth)
                .map((line) => line.textContent),
        })));
}"""


def long_words() -> pd.DataFrame:
    """Give the invented shelf with the longest words and numbers that a tag may have to hold."""
    skeins = shelf.demo()
    skeins.loc[0, "name"] = "Spun in the long winter on the big wheel, plied twice & dyed " * 3
    skeins.loc[1, "name"] = "W" * 90
    skeins.loc[:2, "fibre"] = "wool, silk and a little mohair of an old goat, " * 2
    skeins.loc[3, ["weight", "counter"]] = 19.123, 19876.5
    skeins.loc[4, ["weight", "length", "counter", "wraps"]] = 0.0123, 123.45, 1876.5, 66.5
    return skeins


def many(count: int) -> pd.DataFrame:
    skeins = pd.concat([long_words()] * math.ceil(count / 9), ignore_index=True)
    return shelf.reckon(skeins.iloc[:count])


def shown(page: Page, text: str) -> Page:
    page.set_content(text)
    page.emulate_media(media="print")
    return page


def lines_of(page: Page, tag: int) -> list[str]:
    return list(filter(None, page.locator(".tag").nth(tag).inner_text().split("\n")))


def apart(one: list[float], other: list[float]) -> bool:
    near = 0.01  # mm
    return (
        one[2] <= other[0] + near
        or other[2] <= one[0] + near
        or one[3] <= other[1] + near
        or other[3] <= one[1] + near
    )


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize(("more", "pages"), [(0, 1), (1, 2)])
def test_pages_are_of_the_paper_and_no_more_than_needed(
    page: Page, paper: str, more: int, pages: int
) -> None:
    full = {"A4": 24, "Letter": 30}[paper]
    shown(page, shelf.labels(many(full + more), paper=paper, address=GUILD))
    for made in (page.pdf(prefer_css_page_size=True), page.pdf(format=paper)):
        assert made.count(b"/Type /Page\n") == pages
        boxes = re.findall(rb"/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]", made)
        assert len(boxes) == pages
        for box in boxes:
            assert list(map(float, box)) == pytest.approx(POINTS[paper], abs=1)


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("address", ["", GUILD])
@pytest.mark.parametrize("measure", ["yards, ounces", "metres, grams"])
def test_tags_stand_clear_of_each_other_and_of_the_edge(
    page: Page, paper: str, address: str, measure: str
) -> None:
    text = shelf.labels(many(31), paper=paper, address=address, measure=measure)
    pages = shown(page, text).evaluate(MEASURE)
    assert sum(map(len, pages)) == 31
    width, height = SIZES[paper]
    for tags in pages:
        for at, each in enumerate(tags):
            left, top, right, bottom = each["tag"]
            assert left >= 0
            assert top >= 0
            assert right <= width
            assert bottom <= height
            assert all(apart(each["tag"], other["tag"]) for other in tags[:at])
            assert each["cut"] == []
            for part in each["parts"]:
                assert part[0] >= max(left, MARGIN)
                assert part[1] >= max(top, MARGIN)
                assert part[2] <= min(right, width - MARGIN)
                assert part[3] <= min(bottom, height - MARGIN)
            for place, part in enumerate(each["parts"]):
                assert all(apart(part, other) for other in each["parts"][:place])


def test_a_tag_says_what_is_known_of_a_skein(page: Page) -> None:
    found = shelf.reckon(shelf.demo())
    shown(page, shelf.labels(found, day=date(2026, 3, 1)))
    # the worksheet's own numbers of these skeins; 4.1 oz of 285 yd are 285 / (4.1 / 16) yd/lb
    assert lines_of(page, 0) == [
        "Marsh 1",
        "wool, grey",
        f"285{PLACE}yd by turns",
        f"283{PLACE}yd to 287{PLACE}yd, 95% sure",
        f"4.1{PLACE}oz, 1,112{PLACE}yd/lb",
        f"wraps 16{PLACE}to the inch",
        "1 Mar 2026",
    ]
    assert lines_of(page, 8) == [
        "Oddment",
        "wool, grey",
        "yards not known yet",
        f"1.2{PLACE}oz",
        "1 Mar 2026",
    ]


def test_a_tag_says_that_other_evidence_does_not_agree(page: Page) -> None:
    skeins = pd.DataFrame({"weight": [0.25], "length": [200.0], "counter": [300.0]})
    shown(page, shelf.labels(shelf.reckon(skeins)))
    assert f"200{PLACE}yd by length; check its counter" in page.locator(".tag").inner_text()


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_code_opens_the_worksheet_with_its_skein(
    browser: Browser, page: Page, server: Server, paper: str
) -> None:
    found = shelf.reckon(shelf.demo())
    address = f"{server.address}voila/render/how-many-yards.ipynb"
    # 300 dots to the inch, as printers have
    printed = browser.new_page(device_scale_factor=300 / 96)
    read = codes(shown(printed, shelf.labels(found, paper=paper, address=f"{address}#weight=1")))
    printed.close()
    with_grist = found[found.grist.notna()]
    assert len(read) == len(with_grist) == 8
    for skein in with_grist.iloc[[0, 6]].itertuples():
        link = f"{address}#grist={skein.grist:.6g}&weight={skein.weight:.6g}"
        assert link in read
        page.goto(link)
        page.wait_for_function("document.querySelector('.ys-sentence')?.textContent")
        assert f"is about {show(float(skein.yards))}{PLACE}yd" in said(page)
        page.goto("about:blank")


def test_words_of_hers_are_words(page: Page) -> None:
    wild = "<img src=x onerror=alert(1)> {yards} & </p>"
    skeins = pd.DataFrame({"name": [wild, np.nan], "fibre": [None, "{1"], "length": [90.0, 80.0]})
    shown(page, shelf.labels(shelf.reckon(skeins)))
    assert page.locator(".name").first.inner_text() == wild
    assert not page.locator("img").count()
    assert lines_of(page, 1)[:2] == ["{1", f"80{PLACE}yd by length"]


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"paper": "A3"}, "no paper “A3”: take A4 or Letter"),
        ({"address": "guild.example"}, "begin it with https://"),
        ({"address": "javascript:alert(1)"}, "begin it with https://"),
        ({"address": "https://guild.example/" + "yarn/" * 60}, "give a shorter one"),
        ({"skeins": shelf.demo()}, "no yards yet"),
        ({"skeins": shelf.reckon(shelf.demo()).iloc[:0]}, "give 1 to 2,000"),
    ],
)
def test_what_cannot_be_printed_is_refused(given: dict[str, Any], words: str) -> None:
    skeins = given.pop("skeins", shelf.reckon(shelf.demo()))
    with pytest.raises(ValueError, match=re.escape(words)):
        shelf.labels(skeins, **given)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"across": 4}, "within -"),
        ({"left": 1.0}, "within 3.5 mm of the edge"),
        ({"down": 9}, "of the edge"),
        ({"tag": (40.0, 30.0)}, "too small"),
        ({"down": 0}, "at least one tag"),
        ({"between": (-1.0, 0.0)}, "at least one tag"),
    ],
)
def test_a_paper_that_cannot_be_is_refused(change: dict[str, Any], words: str) -> None:
    with pytest.raises(ValueError, match=re.escape(words)):
        shelf.Paper(**{**vars(PAPERS["A4"]), **change})


def test_lines_to_cut_along_are_inside_the_printed_part(page: Page) -> None:
    shown(page, shelf.labels(many(3), paper="Letter", lines=True))
    style = page.locator(".tag").first.evaluate(
        "(tag) => { const it = getComputedStyle(tag);"
        " return [it.outlineStyle, parseFloat(it.outlineOffset) / 96 * 25.4]; }"
    )
    assert style[0] == "dashed"
    assert PAPERS["Letter"].left - style[1] >= MARGIN

"""The pages of a handout in a browser: the served ones, but for what stands around them."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import pytest

from tests.handout.conftest import hosted, made
from tests.reader import box, said, slider, type_in
from tests.test_contract import ALL, differences, in_python, trials
from yarnsheets.page.sheet import name_of
from yarnsheets.sheets import HowManyYards, IsThisEnough

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import BrowserContext, Page

    from tests.browser import Server, Troubles
    from yarnsheets.page.sheet import Sheet

GRID = 40  # inputs a sheet
KEPT = "It opens again without a network."

# Keeps what a page opens its sheet with.
CAUGHT = """Object.defineProperty(globalThis, "yarnsheets", {
    set({ open }) {
        const caught = (place, description, program, given) => {
            globalThis.caught = { description, program };
            open(place, description, program, given);
        };
        Object.defineProperty(globalThis, "yarnsheets", { value: { open: caught } });
    },
    configurable: true,
});"""
FOUND = """(tried) => tried.map(({ values, choice }) => JSON.parse(JSON.stringify(
    caught.program.work_out(values, choice),
    (_, x) => (typeof x === "number" && !Number.isFinite(x) ? String(x) : x))))"""
# A policy is not in the way of a test’s own words: whoever asks for such a function fails here.
NO_FUNCTION = """globalThis.Function = new Proxy(Function, {
    construct() { throw new Error("code was made of words"); },
    apply() { throw new Error("code was made of words"); },
});"""


def drawn(page: Page, address: str) -> Page:
    """Open a page and wait for all its charts."""
    page.goto(address)
    page.wait_for_function(
        "[...document.querySelectorAll('.ys-chart')].every((each) => each.querySelector('svg'))"
        " && document.querySelector('.ys-sentence')?.textContent"
    )
    return page


@pytest.mark.parametrize("sheet", ALL, ids=lambda sheet: sheet.__name__)
def test_every_number_is_pythons(page: Page, single: Path, sheet: type[Sheet]) -> None:
    page.add_init_script(CAUGHT)
    page.goto((single / f"{name_of(sheet)}.html").as_uri())
    described = json.loads(json.dumps(sheet.describe()))
    tried = trials(sheet)[-GRID:]
    found: list[dict[str, Any]] = page.evaluate(FOUND, tried)
    blank = {**sheet.nothing(), "warnings": []}
    for trial, theirs in zip(tried, found, strict=True):
        ours = in_python(sheet, described, trial)["found"]
        assert differences(ours, json.loads(json.dumps(blank)) | theirs) == []


@pytest.mark.parametrize("name", ["how-many-yards", "how-sure-is-the-grist"])
def test_it_is_the_served_page_pixel_by_pixel(
    page: Page, server: Server, single: Path, shared: Path, name: str
) -> None:
    pictures = []
    for address in (
        f"{server.address}voila/render/{name}.ipynb",
        (single / f"{name}.html").as_uri(),
        (shared / f"{name}.html").as_uri(),
    ):
        drawn(page, address)
        page.evaluate("document.activeElement.blur()")
        pictures.append(page.locator("main").screenshot(animations="disabled"))
    assert pictures[0] == pictures[1] == pictures[2]


def test_under_a_strict_policy_a_page_makes_no_code_of_words(page: Page, shared: Path) -> None:
    page.add_init_script(NO_FUNCTION)
    drawn(page, (shared / "is-this-enough.html").as_uri())
    policy = page.locator("meta[http-equiv]").get_attribute("content") or ""
    assert "unsafe-eval" not in policy
    assert "script-src 'self' 'sha256-" in policy
    before = page.locator(".ys-picture").first.inner_html()
    slider(page, "project").focus()
    page.keyboard.press("ArrowRight")
    assert said(page) != IsThisEnough().sentence
    assert page.locator(".ys-picture").first.inner_html() != before


def test_she_finds_it_as_the_teacher_wished(page: Page, tmp_path: Path) -> None:
    folder = made(
        tmp_path / "made",
        "how-many-yards",
        *("--start", "how-many-yards.html#grist=900&weight=0.25"),
        *("--units", "metres, grams", "--hide", "text,arithmetic,plies"),
    )
    drawn(page, (folder / "how-many-yards.html").as_uri())
    wished = HowManyYards(grist=900, weight=0.25, measure="metres, grams", grist_unit="m/100g")
    assert said(page) == wished.sentence
    for hidden in (".prose p", ".ys-worked", "[data-name=plies]"):
        assert not page.locator(hidden).first.is_visible()
    assert page.get_by_role("heading", level=1).is_visible()
    # her own link goes before the teacher’s
    page.goto((folder / "how-many-yards.html").as_uri() + "#grist=1500&weight=0.5&plies=1")
    page.reload()
    assert "1,500" not in said(page)  # it is in metres now
    assert box(page, "grist").input_value() != ""
    assert (
        said(page)
        == HowManyYards(
            grist=1500, weight=0.5, measure="metres, grams", grist_unit="m/100g"
        ).sentence
    )


def test_ways_on_lead_to_the_pages_beside(page: Page, single: Path) -> None:
    drawn(page, (single / "how-many-yards.html").as_uri())
    type_in(page, "grist", "1000")
    page.get_by_role("link", name="Is this enough?").click()
    page.wait_for_url("**/is-this-enough.html#*")
    assert box(page, "grist").input_value() == "1000"


def test_what_was_opened_once_opens_again_without_a_network(
    context: BrowserContext, page: Page, single: Path, troubles: Troubles
) -> None:
    with hosted(single) as site:
        for name in ("how-many-yards", "is-this-enough"):
            page.goto(f"{site}{name}.html")
            page.get_by_text(KEPT).wait_for()
    context.set_offline(True)
    for name in ("how-many-yards", "is-this-enough"):
        drawn(page, f"{site}{name}.html?alone")
    assert said(page) == IsThisEnough().sentence
    assert page.goto(site)
    assert page.get_by_role("heading", level=1).text_content() == "Grist at the guild"
    troubles.expect("ERR_FAILED")  # a page never opened is not there
    with pytest.raises(Exception, match="ERR_FAILED"):
        page.goto(f"{site}will-the-ball-last.html")


def test_one_visit_brings_all_pages_that_share(
    context: BrowserContext, page: Page, shared: Path
) -> None:
    with hosted(shared) as site:
        page.goto(site)
        page.get_by_text("All pages of this handout are kept in your browser.").wait_for()
    context.set_offline(True)
    drawn(page, f"{site}will-the-ball-last.html")


def test_a_later_handout_takes_the_place_of_one_that_is_kept(
    context: BrowserContext, page: Page, tmp_path: Path
) -> None:
    folder = made(tmp_path / "made", "how-many-yards", "--note", "Tuesday at seven")
    with hosted(folder) as site:
        page.goto(f"{site}how-many-yards.html")
        page.get_by_text(KEPT).wait_for()
        made(folder, "how-many-yards", "--note", "Wednesday at six", "--replace")
        assert len(list(folder.glob("offline-*.js"))) == 1
        page.reload()
        page.get_by_text("Wednesday at six").wait_for()
        page.get_by_text(KEPT).wait_for()
        page.wait_for_function("async () => (await caches.keys()).length === 1")
    context.set_offline(True)
    page.reload()
    page.get_by_text("Wednesday at six").wait_for()

"""Every page for every reader: on a phone and a projector, by keyboard, in the dark, read aloud."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest

from tests.browser import ROOT, open_sheet
from tests.reader import box, slider, type_in

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Browser, Page

    from tests.browser import Server

NAMES = [path.stem for path in sorted((ROOT / "worksheets").glob("*.ipynb"))]
FINGER = 44  # px: WCAG 2.2, 2.5.5
MOST_ROOM = 96  # px of a small screen's height that the answer may take for good

# The rules of axe-core: WCAG 2.2 A and AA, and its own best practice.
AXE = """async () => {
    const { violations } = await axe.run(document, { resultTypes: ["violations"] });
    return violations.map(({ id, nodes }) =>
        `${id}: ${nodes.map((node) => node.html.slice(0, 120)).slice(0, 3).join(" | ")}`);
}"""

# Controls that the answer lies over when they have the focus.
COVERED = """() => {
    const answer = document.querySelector(".ys-headline");
    const controls = document.querySelectorAll(".ys-sheet :is(input, select, textarea, summary)");
    return [...controls].filter((control) => control.checkVisibility()).filter((control) => {
        control.focus();
        return control.getBoundingClientRect().bottom <= answer.getBoundingClientRect().bottom;
    }).map((control) => control.id || control.textContent);
}"""


# How far every colour of a page is from the paper, where the reader's own colours are forced on it.
# A colour that is not of the system's is forced to that of the paper.
FORCED = """() => {
    const canvas = document.createElement("canvas").getContext("2d");
    const brightness = (colour) => {
        canvas.fillStyle = colour;
        canvas.fillRect(0, 0, 1, 1);
        const [red, green, blue] = [...canvas.getImageData(0, 0, 1, 1).data].map((part) => {
            const share = part / 255;
            return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
        });
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const contrast = (one, other) => {
        const [dark, light] = [brightness(one), brightness(other)].sort((a, b) => a - b);
        return (light + 0.05) / (dark + 0.05);
    };
    const probe = document.querySelector(".ys-sheet").appendChild(document.createElement("div"));
    const shown = (colour) => {
        probe.style.backgroundColor = colour;
        return getComputedStyle(probe).backgroundColor;
    };
    const paper = shown("Canvas");
    const texts = [...document.querySelectorAll(".ys-picture text:not([fill=white])")] // on bars
        .map((text) => getComputedStyle(text)).filter(({ stroke }) => stroke === "none");
    return { colours: ["ink", "soft", "yarn", "project", "edge", "control"].map((name) =>
            contrast(shown(`var(--${name})`), paper)),
        texts: texts.map(({ fill }) => contrast(fill, paper)) };
}"""


# What each number in the answer leads to: the input whose box has the focus, in sight.
LED = """() => [...document.querySelectorAll(".ys-lead")].map((lead) => {
    lead.click();
    const field = document.activeElement;
    const { top, bottom } = field.getBoundingClientRect();
    const answer = document.querySelector(".ys-headline").getBoundingClientRect().bottom;
    const asks = document.querySelector(`label[for="${field.id}"]`).textContent;
    return { title: lead.title, asks, said: lead.textContent, holds: getSelection().toString(),
        isSeen: top >= answer && Math.floor(bottom) <= innerHeight };
})"""


def drawn(page: Page, server: Server, name: str) -> Page:
    """Open a worksheet and wait for its charts."""
    open_sheet(page, server, name)
    page.wait_for_selector(".ys-picture svg")
    return page


def complaints(page: Page, copy: Path) -> list[Any]:
    """Give what axe-core finds wrong with a page."""
    page.add_script_tag(path=copy / ".front/node_modules/axe-core/axe.min.js")
    return list(page.evaluate(AXE))


@pytest.mark.parametrize("name", NAMES)
def test_a_page_has_no_barrier_light_dark_or_with_something_wrong(
    page: Page, server: Server, copy: Path, name: str
) -> None:
    drawn(page, server, name)
    assert complaints(page, copy) == []
    page.emulate_media(color_scheme="dark")
    field = page.locator(":is(input, textarea)[aria-describedby]:visible").first
    field.fill("nothing")
    field.blur()
    assert page.locator(".ys-stale").is_visible()
    assert complaints(page, copy) == []


def test_the_list_has_no_barrier(page: Page, server: Server, copy: Path) -> None:
    for scheme in ("light", "dark"):
        page.emulate_media(color_scheme=scheme)
        for path in ("", "teacher"):
            page.goto(server.address + path)
            assert complaints(page, copy) == []


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("screen", [(360, 740), (640, 400)], ids=["phone", "zoomed"])
def test_the_answer_leaves_a_small_screen_its_room(
    page: Page, server: Server, name: str, screen: tuple[int, int]
) -> None:
    # WCAG 2.2, 1.4.4: a screen of 1280 by 800 at a zoom of 200% has 640 by 400
    page.set_viewport_size(dict(zip(("width", "height"), screen, strict=True)))
    drawn(page, server, name)
    page.evaluate("scrollTo(0, 900)")
    headline = page.locator(".ys-headline").bounding_box()
    assert headline
    assert headline["height"] <= MOST_ROOM
    assert page.evaluate(COVERED) == []


def test_a_slider_and_its_chart_are_seen_together_on_a_phone(page: Page, server: Server) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    drawn(page, server, "how-many-yards")
    group = page.locator("[data-name=weight]")
    group.evaluate("(it) => it.scrollIntoView()")
    chart = page.locator("[data-name=weight] + figure .ys-picture").bounding_box()
    assert chart
    assert chart["y"] + chart["height"] <= 740
    page.set_viewport_size({"width": 1280, "height": 900})
    page.wait_for_function("document.querySelectorAll('.ys-charts figure').length === 3")


def test_type_is_large_enough_for_the_back_row(page: Page, server: Server) -> None:
    page.set_viewport_size({"width": 1920, "height": 1080})
    drawn(page, server, "how-many-yards")
    page.keyboard.press("l")
    sizes = page.evaluate(
        """[...document.querySelectorAll(".ys-picture text, .ys-headline, .ys-label")]
            .filter((it) => it.checkVisibility())
            .map((it) => parseFloat(getComputedStyle(it).fontSize) * (it.currentCSSZoom ?? 1))"""
    )
    assert min(sizes) >= 24
    type_in(page, "weight", "1l")  # the key does not reach a box that is typed in
    page.keyboard.press("l")
    assert page.locator("html").get_attribute("data-type") == "usual"


@pytest.mark.parametrize("name", NAMES)
def test_forced_colours_leave_everything_in_sight(page: Page, server: Server, name: str) -> None:
    drawn(page, server, name)
    for scheme in ("light", "dark"):
        for look in ("light", "dark"):  # whatever she chose on the page, the system's colours win
            page.emulate_media(forced_colors="active", color_scheme=scheme)
            page.get_by_label("Colours").select_option(look)
            seen = page.evaluate(FORCED)
            assert min(seen["colours"]) >= 3  # WCAG 2.2, 1.4.11
            assert min(seen["texts"]) >= 4.5  # 1.4.3


def test_every_control_shows_that_it_has_the_focus(page: Page, server: Server) -> None:
    drawn(page, server, "how-many-yards")
    box(page, "grist").focus()
    for _ in range(12):
        page.keyboard.press("Tab")
        style = "getComputedStyle(document.activeElement)"
        assert page.evaluate(f"{style}.outlineStyle") == "solid"
        assert page.evaluate(f"parseFloat({style}.outlineWidth)") >= 2


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("width", [360, 1280])
def test_the_reader_s_numbers_in_the_answer_lead_to_their_boxes(
    page: Page, server: Server, name: str, width: int
) -> None:
    page.set_viewport_size({"width": width, "height": 740})
    for led in drawn(page, server, name).evaluate(LED):
        assert led["title"] == f"Change: {led['asks']}"
        assert led["isSeen"], led
        assert led["said"].replace(",", "").startswith(led["holds"])


def test_a_number_in_the_answer_leads_to_its_box_by_enter(page: Page, server: Server) -> None:
    drawn(page, server, "how-many-yards")
    lead = page.get_by_role("button", name="8\N{NO-BREAK SPACE}oz")
    lead.press("Enter")
    page.keyboard.type("10")
    page.keyboard.press("Enter")
    assert box(page, "weight").input_value() == "10"
    assert page.locator(".ys-lead").first.text_content() == "10\N{NO-BREAK SPACE}oz"


def test_a_folded_group_opens_for_what_is_in_it(page: Page, server: Server) -> None:
    drawn(page, server, "what-does-this-spin-take")
    loss = page.locator("[data-name=wash_loss]")
    group = page.locator(".ys-group", has=loss)
    assert loss.is_hidden()
    group.locator("summary").click()
    type_in(page, "wash_loss", "nothing")
    group.locator("summary").click()
    assert loss.is_hidden()
    type_in(page, "project", "1000")
    assert loss.is_hidden()  # as she left it
    for linked in ("wash_loss=0.1", "wash_loss=9"):  # another number, and one that cannot be
        page.goto("about:blank")
        page.goto(f"{server.address}voila/render/what-does-this-spin-take.ipynb#{linked}")
        loss.wait_for(state="visible")


def test_a_word_is_explained_where_it_first_stands_and_a_measure_drawn(
    page: Page, server: Server, copy: Path
) -> None:
    drawn(page, server, "how-many-yards")
    terms = page.locator(".ys-term")
    assert terms.all_text_contents() == ["What is grist?"]  # singles are not spoken of here
    meaning = page.locator(".ys-meaning").first
    assert meaning.is_hidden()
    terms.first.press("Enter")
    assert "finer the yarn" in meaning.inner_text()
    page.keyboard.press("Escape")
    assert meaning.is_hidden()
    how = page.locator("[data-name=grist] .ys-how")
    how.locator("summary").click()
    assert how.locator("svg path").count() > 3
    assert complaints(page, copy) == []


@pytest.mark.parametrize("name", NAMES)
def test_a_page_prints_on_one_sheet_of_paper_with_day_and_address(
    page: Page, server: Server, name: str
) -> None:
    drawn(page, server, name)
    page.evaluate(
        """() => addEventListener("beforeprint", () => {
            globalThis.printed = [document.querySelector(".ys-printed").textContent,
                document.querySelectorAll(".ys-worked li").length];
        })"""
    )
    assert page.pdf(format="A4").count(b"/Type /Page\n") == 1
    said, steps = page.evaluate("printed")
    today = page.evaluate("new Date().getFullYear()")
    assert f" {today} http" in said
    assert f"{name}.ipynb#" in said
    assert steps > 0
    assert page.locator(".ys-worked").get_attribute("open") is None  # folded again


def test_a_number_is_one_stop_of_the_tab_key_and_steps_in_its_box(
    page: Page, server: Server
) -> None:
    drawn(page, server, "how-many-yards")
    box(page, "weight").focus()
    page.keyboard.press("ArrowUp")
    assert box(page, "weight").input_value() == "8.05"
    page.keyboard.press("PageDown")
    assert float(box(page, "weight").input_value()) < 8
    for _ in range(2):  # past how it is measured, to the next number
        page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.closest('.ys-input').dataset.name") == "plies"


def test_a_thumb_is_as_wide_as_a_finger(browser: Browser, server: Server) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 740}, has_touch=True)
    page = drawn(context.new_page(), server, "how-many-yards")
    track = slider(page, "weight")
    track.scroll_into_view_if_needed()
    at = track.bounding_box()
    assert at
    assert at["height"] >= FINGER
    along = track.evaluate("(it) => (it.valueAsNumber - it.min) / (it.max - it.min)")
    middle = at["x"] + FINGER / 2 + along * (at["width"] - FINGER)
    before = track.input_value()
    # within the thumb a press takes hold of it; beside it the thumb jumps to the press
    page.mouse.click(middle + FINGER / 2 - 4, at["y"] + at["height"] / 2)
    assert track.input_value() == before
    page.mouse.click(middle + FINGER / 2 + 8, at["y"] + at["height"] / 2)
    assert track.input_value() != before
    context.close()

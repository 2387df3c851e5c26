"""What a reader does with a sheet on a page, and sees there."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING

from yarnsheets.page import choices

if TYPE_CHECKING:
    from playwright.sync_api import Locator, Page

THUMB = 24  # pixels across, as sheet.css has it


def said(page: Page) -> str:
    """Read the answer."""
    return str(page.text_content(".ys-sentence"))


def box(page: Page, name: str) -> Locator:
    """Find the box of a number."""
    return page.locator(f"[data-name={name}] input[aria-describedby]")


def type_in(page: Page, name: str, text: str) -> None:
    """Type into the field of an input, and leave it."""
    field = page.locator(f"[data-name={name}] :is(input, textarea)[aria-describedby]")
    field.fill(text)
    field.blur()


def slider(page: Page, name: str) -> Locator:
    """Find the slider of a number."""
    return page.locator(f"[data-name={name}] input[type=range]")


def thumb(page: Page, name: str) -> tuple[float, float]:
    """Give where the thumb of a slider stands."""
    track = slider(page, name)
    at = track.bounding_box()
    assert at
    along = track.evaluate("(it) => (it.valueAsNumber - it.min) / (it.max - it.min)")
    return at["x"] + THUMB / 2 + along * (at["width"] - THUMB), at["y"] + at["height"] / 2


def pick(page: Page, measure: str, grist: str) -> None:
    """Choose the units."""
    name = next(g.name for g in choices.GRIST_UNITS if g.unit == grist)
    page.get_by_label("Length, weight", exact=True).select_option(measure)
    page.get_by_label("Grist", exact=True).select_option(name)


def unfold(page: Page) -> None:
    """Open the arithmetic, which is written only when it has been opened."""
    page.locator(".ys-worked > summary").click()
    page.wait_for_selector(".ys-worked li")


def rows(page: Page, chart: str, field: str) -> list[list[dict[str, float]]]:
    """Read a chart's tables that have a field, as it has drawn them."""
    picture = f"document.querySelector('figure[data-name={chart}] .ys-picture')"
    page.wait_for_function(f"{picture}.view")
    tables = page.evaluate(
        """async (picture) => {
            const { view } = picture;
            await view.runAsync();
            const { data } = view.getState({signals: () => false, data: () => true});
            return Object.keys(data).filter((name) => name.startsWith("source_"))
                .map((name) => JSON.parse(JSON.stringify(view.data(name))));
        }""",
        page.evaluate_handle(picture),
    )
    return [table for table in tables if table and field in table[0]]


def centre(part: Locator) -> tuple[float, float]:
    """Give the middle of a part of the page."""
    at = part.bounding_box()
    assert at
    return at["x"] + at["width"] / 2, at["y"] + at["height"] / 2


def codes(page: Page) -> list[str]:
    """Read the codes for phones in a picture of the whole page, as a phone would, by ZXing."""
    import zxingcpp
    from PIL import Image

    with Image.open(io.BytesIO(page.screenshot(full_page=True))) as picture:
        return [code.text for code in zxingcpp.read_barcodes(picture.convert("L"))]


def drag(page: Page, part: Locator, dx: float) -> None:
    """Drag a part of the page along."""
    part.scroll_into_view_if_needed()
    drag_from(page, centre(part), dx)


def drag_from(page: Page, place: tuple[float, float], dx: float) -> None:
    """Drag what is at a place along."""
    x, y = place
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + dx, y, steps=8)
    page.mouse.up()

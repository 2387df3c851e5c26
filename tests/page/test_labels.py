"""The words in charts: none cut off, none over another, none struck by a line."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from tests.browser import ROOT, open_sheet
from tests.reader import pick

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

NAMES = [path.stem for path in sorted((ROOT / "worksheets").glob("*.ipynb"))]
WIDTHS = (360, 640, 1280, 1920)  # 640 is a screen of 1280 at a zoom of 200%

# Texts of a chart that lie over one another or over its edge: the corners of each as it is drawn,
# slanted or not, and two that no straight line parts. A halo is the same text again.
STRUCK = """() => [...document.querySelectorAll(".ys-picture svg")].flatMap((svg) => {
    const frame = svg.closest(".ys-frame").getBoundingClientRect();
    const corners = (text) => {
        const [{ x, y, width, height }, at] = [text.getBBox(), text.getScreenCTM()];
        const trim = height * 0.15; // above the letters and below them
        return [[x, y + trim], [x + width, y + trim], [x + width, y + height - trim],
            [x, y + height - trim]].map(([h, v]) => new DOMPoint(h, v).matrixTransform(at));
    };
    const along = (points, { x, y }) => points.map((point) => point.x * x + point.y * y);
    const sides = ([a, b, , d]) => [{ x: b.x - a.x, y: b.y - a.y }, { x: d.x - a.x, y: d.y - a.y }];
    const apart = (one, other) => [...sides(one), ...sides(other)].some((side) => {
        const [here, there] = [along(one, side), along(other, side)];
        return Math.max(...here) <= Math.min(...there) || Math.max(...there) <= Math.min(...here);
    });
    /* what a text may not leave: the room of its marks, or the frame */
    const roomOf = (text) => {
        const clip = text.closest("[clip-path]");
        if (!clip) return frame;
        const [id] = clip.getAttribute("clip-path").match(/#[^)"]+/);
        const { x, y, width, height } = svg.querySelector(id).firstElementChild.getBBox();
        const [from, to] = [[x, y], [x + width, y + height]]
            .map(([h, v]) => new DOMPoint(h, v).matrixTransform(clip.getScreenCTM()));
        return { left: from.x, top: from.y, right: to.x, bottom: to.y };
    };
    const isIn = ({ x, y }, { left, top, right, bottom }) =>
        x > left - 1 && x < right + 1 && y > top - 1 && y < bottom + 1;
    const texts = [...svg.querySelectorAll("text")]
        .filter((text) => text.textContent && text.checkVisibility({ opacityProperty: true })
            && text.getAttribute("opacity") !== "0")
        .map((text) => ({ said: text.textContent, at: corners(text), room: roomOf(text), text }))
        .filter(({ at, room }) => room === frame || at.some((point) => isIn(point, room)));
    const name = svg.closest("figure").dataset.name;
    const out = texts.filter(({ at, room }) => !at.every((point) => isIn(point, room)))
        .map(({ said }) => `${name}: "${said}" is cut off`);
    const over = texts.flatMap((one, place) => texts.slice(place + 1)
        .filter((other) => other.said !== one.said && !apart(one.at, other.at))
        .map((other) => `${name}: "${one.said}" and "${other.said}"`));
    /* a line is walked along, and may not come within the letters; a grid may */
    const lines = [...svg.querySelectorAll(".mark-rule line, .mark-line path, .mark-area path")]
        .filter((line) => !line.closest(".role-axis") && line.getAttribute("opacity") !== "0"
            && getComputedStyle(line).stroke !== "none");
    const words = texts.filter(({ text }) => !text.closest(".role-axis"));
    const crossed = lines.flatMap((line) => {
        const at = line.getScreenCTM();
        const walk = Array.from({ length: Math.ceil(line.getTotalLength() / STEP) }, (_, step) =>
            line.getPointAtLength(step * STEP).matrixTransform(at));
        return words.filter(({ text }) => {
            const [{ x, y, width, height }, back] = [text.getBBox(), text.getScreenCTM().inverse()];
            return walk.some((point) => {
                const { x: h, y: v } = point.matrixTransform(back);
                return h > x + 1 && h < x + width - 1
                    && v > y + height / 4 && v < y + height * 3 / 4;
            });
        }).map(({ said }) => `${name}: "${said}" is struck by a line`);
    });
    return [...new Set([...out, ...over, ...crossed])];
})""".replace("STEP", "1.5")


@pytest.mark.parametrize("name", NAMES)
def test_no_text_of_a_chart_is_cut_off_or_lies_over_another_or_is_struck_by_a_line(
    page: Page, server: Server, name: str
) -> None:
    open_sheet(page, server, name)
    page.wait_for_selector(".ys-picture svg")
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        for measure, grist in (("yards, ounces", "yd/lb"), ("metres, grams", "tex")):
            if page.locator(".ys-units select").count() == 2:
                pick(page, measure, grist)
            page.wait_for_timeout(60)  # the charts take their new width with the next frame
            assert page.evaluate(STRUCK) == [], (width, measure)
            assert page.evaluate("document.documentElement.scrollWidth") <= width

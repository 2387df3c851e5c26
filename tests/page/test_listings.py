"""Tables to be read and printed: exercises for paper, their answers, and a ready-reckoner."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import urlencode

import pytest

from tests.browser import open_sheet
from yarnsheets.sheets import CanIWorkItOut, WhatIsGrist
from yarnsheets.units import registry

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

TEN = {"kind": "turn", "draw": 9995, "paper": "ten"}  # beyond the last comes the first
ANSWERS = {**TEN, "paper": "answers"}
RECKONER = {"step": "measure", "balance_factor": 80, "paper": "yes"}
METRES = {"measure": "metres, grams", "grist_unit": "m/100g"}

READ = """() => [...document.querySelectorAll(".ys-listing:not([hidden])")].map((listing) => ({
    title: listing.querySelector("caption").textContent,
    heads: [...listing.querySelectorAll("th")].map((cell) => cell.textContent),
    rows: [...listing.querySelectorAll("tbody tr")].map(
        (row) => [...row.cells].map((cell) => cell.textContent)),
}))"""


def opened(page: Page, server: Server, name: str, inputs: dict[str, object]) -> Page:
    open_sheet(page, server, name)
    page.evaluate("(link) => { location.hash = link; }", urlencode(inputs))
    page.wait_for_selector(".ys-listing:not([hidden]) td")
    return page


def number(text: str) -> float:
    return float(text.replace(",", ""))


@pytest.mark.parametrize("units", [{}, METRES], ids=["yards", "metres"])
def test_the_two_sheets_are_of_the_same_draws(
    page: Page, server: Server, units: dict[str, str]
) -> None:
    (asked,) = opened(page, server, "can-i-work-it-out", TEN | units).evaluate(READ)
    (told,) = opened(page, server, "can-i-work-it-out", ANSWERS | units).evaluate(READ)
    draws = [9995, 9996, 9997, 9998, 9999, 1, 2, 3, 4, 5]
    for draw, (no, asks, blank), (same, answer, steps) in zip(
        draws, asked["rows"], told["rows"], strict=True
    ):
        assert number(no) == number(same) == draw
        one = CanIWorkItOut(kind="turn", draw=draw, **units)
        assert asks.startswith(one.say("{asks}"))
        assert blank == ""
        for name in ("grist", "length", "mass", "rows"):
            if f"answer_{name}" not in one.unused():
                found = CanIWorkItOut(
                    **{"kind": "turn", "draw": draw, f"answer_{name}": in_own(answer, name)},
                    **units,
                )
        assert found.is_right
        assert steps == " ".join(found.say("{" + f"step_{at}" + "}") for at in (1, 2, 3)).strip()


def in_own(answer: str, name: str) -> float:
    """Read an answer, as it is printed with its unit, in the sheet's own."""
    written, _, unit = answer.replace("−", "-").replace("\xa0", " ").partition(" ")
    own = {"grist": "yd/lb", "length": "yd", "mass": "lb"}.get(name)
    value = number(written)
    unit = unit.replace("/100 g", "/hectogram")
    return value if own is None else float(registry().Quantity(value, unit).m_as(own))


def test_the_reckoner_is_that_of_pint(page: Page, server: Server) -> None:
    (table,) = opened(page, server, "what-is-grist", RECKONER).evaluate(READ)
    assert "factor 80" in table["title"]
    assert table["heads"] == [
        *("Cut (in)", "Grist (yd/lb)", "Grist (yd/oz)"),
        *("Cut (cm)", "Grist (m/100 g)", "In a ball of 50 g (m)"),
    ]
    assert len(table["rows"]) > 20
    of = registry().Quantity
    factor = of(80, "yd/lb/in")
    for row in table["rows"]:
        inches, pound, ounce, centimetres, grams, ball = map(number, row)
        left, right = factor * of(inches, "in"), factor * of(centimetres, "cm")
        # four digits are printed
        assert pound == pytest.approx(left.m_as("yd/lb"), rel=5e-4)
        assert ounce == pytest.approx(left.m_as("yd/oz"), rel=5e-4)
        assert grams == pytest.approx(right.m_as("m/hectogram"), rel=5e-4)
        assert ball == pytest.approx((right * of(50, "g")).m_as("m"), rel=5e-4)


@pytest.mark.parametrize(
    ("name", "inputs"),
    [
        ("can-i-work-it-out", TEN),
        ("can-i-work-it-out", ANSWERS | METRES),
        ("what-is-grist", RECKONER),
    ],
)
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_a_table_is_printed_by_itself_on_one_page(
    page: Page, server: Server, name: str, inputs: dict[str, object], paper: str
) -> None:
    opened(page, server, name, inputs)
    assert page.pdf(format=paper).count(b"/Type /Page\n") == 1
    page.emulate_media(media="print")
    for part in (".ys-answer", ".ys-inputs", ".ys-charts", ".ys-worked", ".ys-button"):
        assert not page.locator(f"{part}:visible").count()
    assert page.locator(".ys-listing:visible").count() == 1


def test_an_answer_is_not_printed_beside_its_exercise(page: Page, server: Server) -> None:
    opened(page, server, "can-i-work-it-out", TEN)
    page.emulate_media(media="print")
    text = page.inner_text("body")
    for row in CanIWorkItOut(**ANSWERS).answered:
        assert CanIWorkItOut().say(row["steps"]) not in text


def test_there_is_no_table_until_one_is_asked_for(page: Page, server: Server) -> None:
    open_sheet(page, server, "can-i-work-it-out")
    assert not page.locator(".ys-listing:visible").count()
    assert not CanIWorkItOut().to_answer
    assert not WhatIsGrist(step="half", paper="yes").reckoner

"""A class at work: a projector, phones, one of them without a network for a while."""

from __future__ import annotations

import json
import urllib.error
from http import HTTPStatus
from typing import TYPE_CHECKING
from urllib.request import Request, urlopen

import pytest

from tests.browser import Troubles, serving
from tests.reader import said
from tests.serve.test_serve import run
from yarnsheets.serve.addresses import network_address
from yarnsheets.sheets import WhatDoOurCutsSay

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from playwright.sync_api import Browser, Page

    from tests.browser import Server

CUTS = [(1, 9.6), (2, 10.1), (3, 10.4), (4, 9.8), (5, 10.6)]
OFFLINE = "ERR_INTERNET_DISCONNECTED"


@pytest.fixture
def classroom() -> Iterator[Server]:
    """The command, with a class, as it is called on this machine alone."""
    with serving("--no-browser", "--port", "0", "--class", "heron") as running:
        yield running


def phone(browser: Browser, classroom: Server) -> Page:
    page = browser.new_context(viewport={"width": 360, "height": 740}).new_page()
    page.goto(f"{classroom.address}heron")
    return page


def send(page: Page, balance: float, cut: str, name: str = "") -> None:
    page.get_by_label("Number of the balance").fill(str(balance))
    page.get_by_label("Cut", exact=True).fill(cut)
    page.get_by_label("Name, if you like").fill(name)
    page.get_by_role("button", name="Send").click()


def test_cuts_of_five_phones_arrive_on_the_projector_one_of_them_late(
    browser: Browser, page: Page, classroom: Server
) -> None:
    page.goto(f"{classroom.address}heron/all")
    page.wait_for_selector(".ys-headline")
    assert "There are no cuts yet." in said(page)
    phones = [phone(browser, classroom) for _ in CUTS]
    seen = Troubles(phones[0].context)
    for at, (device, (balance, cut)) in enumerate(zip(phones, CUTS, strict=True)):
        device.context.set_offline(at == 0)
        send(device, balance, str(cut), f"<i>learner {at}</i>")
        if at == 0:
            device.get_by_text("There is no connection. Your cut is kept here").wait_for()
        else:
            device.get_by_text("Arrived:").wait_for()
    page.wait_for_function("document.querySelectorAll('#arrived li').length === 4")
    assert said(page) == WhatDoOurCutsSay(cuts=CUTS[1:]).sentence
    phones[0].context.set_offline(False)
    phones[0].get_by_text("Arrived: 9.6").wait_for()
    page.wait_for_function("document.querySelectorAll('#arrived li').length === 5")
    assert said(page) == WhatDoOurCutsSay(cuts=[*CUTS[1:], CUTS[0]]).sentence
    assert "<i>learner 0</i>" in page.inner_text("#arrived")  # never run
    assert not [one for one in seen.seen if OFFLINE not in one]
    for device in phones:
        device.context.close()


def test_what_is_wrong_is_said_and_stays_in_its_box(browser: Browser, classroom: Server) -> None:
    page = phone(browser, classroom)
    send(page, 1, "nine")
    page.locator("#length-wrong").wait_for()
    assert page.get_by_label("Cut", exact=True).input_value() == "nine"
    send(page, "", "9.6")  # type: ignore[arg-type]
    page.get_by_text("Type a number here.").wait_for()
    send(page, 1, "9.6")
    page.get_by_text("Arrived: 9.6").wait_for()
    assert not page.locator(".wrong:visible").count()
    page.context.close()


def test_the_teacher_leaves_a_cut_out(browser: Browser, page: Page, classroom: Server) -> None:
    device = phone(browser, classroom)
    for cut in ("9.6", "10.1", "96"):
        send(device, 1, cut)
        device.get_by_text(f"Arrived: {cut}").wait_for()
    page.goto(f"{classroom.address}heron/all")
    page.get_by_role("button", name="Leave out cut 3").click()
    page.wait_for_function("document.querySelectorAll('#arrived li').length === 2")
    assert said(page) == WhatDoOurCutsSay(cuts=[(1, 9.6), (1, 10.1)]).sentence
    device.context.close()


def test_the_projector_shows_the_way_in(page: Page, classroom: Server, troubles: Troubles) -> None:
    outside = classroom.address.replace("127.0.0.1", network_address("0.0.0.0"))  # noqa: S104
    troubles.expect(f"request to another machine: {outside}")  # which is this one
    page.goto(f"{outside}heron/all")
    shown = page.inner_text(".address")
    assert f"http://{shown}" == f"{outside}heron"
    size = page.evaluate(
        "parseFloat(getComputedStyle(document.querySelector('.address')).fontSize)"
    )
    assert size >= 48  # px, for the back row
    # all of it is seen, with four squares of quiet around it (ISO/IEC 18004, 6.3.8, from memory)
    code = page.evaluate(
        """() => {
            const svg = document.querySelector(".code svg");
            const [outer, inner] = [svg, svg.querySelector("path:last-of-type")]
                .map((part) => part.getBoundingClientRect());
            return [outer.width, outer.left, outer.right, inner.left, inner.right, inner.bottom,
                outer.bottom, svg.viewBox.baseVal.width];
        }"""
    )
    width, left, right, first, last, low, bottom, squares = code
    assert width >= 150
    quiet = 4 * width / squares - 1
    assert first - left >= quiet
    assert right - last >= quiet
    assert bottom - low >= quiet
    page.wait_for_selector(".ys-headline")
    page.get_by_role("button", name="Copy a link").click()
    assert page.get_by_label("Link to these numbers").input_value().startswith(outside)
    page.goto(outside)
    page.get_by_role("link", name="send your cut").click()
    page.wait_for_url("**/heron")


def test_the_code_holds_the_address(classroom: Server) -> None:
    """The code is that of an independent encoder's reading: the same matrix for the same text."""
    import segno

    html = classroom.get("heron/all")
    code = segno.make(f"{classroom.address}heron", micro=False)
    assert code.svg_inline(dark="#000", light="#fff", omitsize=True) in html


def posted(classroom: Server, data: object, **headers: str) -> int:
    sent = {"Content-Type": "application/json", "Origin": classroom.address.rstrip("/")} | headers
    body = data if isinstance(data, bytes) else json.dumps(data).encode()
    request = Request(f"{classroom.address}heron/cuts", body, sent)  # noqa: S310
    try:
        with urlopen(request) as answer:  # noqa: S310
            return int(answer.status)
    except urllib.error.HTTPError as refused:
        with refused:
            return refused.code


GOOD = {"id": "a", "balance": "1", "cut": "9.6"}


def test_only_pages_of_ours_may_send(classroom: Server) -> None:
    assert posted(classroom, GOOD) == HTTPStatus.OK
    assert posted(classroom, GOOD, Origin="https://evil.example") == HTTPStatus.FORBIDDEN
    assert posted(classroom, GOOD, **{"Content-Type": "text/plain"}) == HTTPStatus.FORBIDDEN
    assert posted(classroom, b"{", Origin=classroom.address.rstrip("/")) == HTTPStatus.BAD_REQUEST
    assert posted(classroom, [1]) == HTTPStatus.BAD_REQUEST
    assert posted(classroom, {"do": "anything"}) == HTTPStatus.BAD_REQUEST
    assert posted(classroom, GOOD | {"name": "x" * 20_000}) == HTTPStatus.BAD_REQUEST


def test_the_teacher_finds_a_plan_whose_pages_are_all_there(page: Page, server: Server) -> None:
    page.goto(server.address)
    page.get_by_role("link", name="the plan of an hour").click()
    page.get_by_role("heading", name="An hour on grist").wait_for()
    links = page.locator("main a").evaluate_all("(all) => all.map((each) => each.href)")
    assert len(links) > 5
    for link in set(links):
        assert "yarnsheet" in server.get(link.removeprefix(server.address)), link


def test_without_a_class_there_is_none(server: Server) -> None:
    with pytest.raises(urllib.error.HTTPError) as missing:
        server.get("heron")
    with missing.value:
        assert missing.value.code == HTTPStatus.NOT_FOUND
    assert "In the class" not in server.get()


@pytest.mark.parametrize(
    ("word", "words"), [("Héron 7", "cannot be typed easily"), ("x", "cannot be typed easily")]
)
def test_a_word_that_cannot_be_is_refused(word: str, words: str) -> None:
    done = run("--class", word)
    assert done.returncode == 1
    assert words in done.stderr


def test_a_class_needs_its_worksheet(tmp_path: Path) -> None:
    done = run("--class", "heron", "--folder", str(tmp_path))
    assert done.returncode == 1
    assert done.stderr.startswith("A class needs the worksheet what-do-our-cuts-say")


def test_it_says_who_can_come_in(classroom: Server) -> None:
    printed = classroom.stop()
    assert "Anyone on the network can open them" in printed
    assert "The class sends its cuts at http://" in printed
    assert "They are forgotten when this ends." in printed

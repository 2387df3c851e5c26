"""Which pages are made, in which order, and for how long they are kept."""

from __future__ import annotations

import asyncio
import gzip
import os
import re
from typing import TYPE_CHECKING

import pytest

from yarnsheets.serve import kept
from yarnsheets.serve.kept import CACHE_FOLDER, Shelf, keep
from yarnsheets.serve.pages import Pages

if TYPE_CHECKING:
    from pathlib import Path


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv(CACHE_FOLDER, str(tmp_path / "kept"))
    made = tmp_path / "worksheets"
    made.mkdir()
    for name in "abcd":
        (made / f"{name}.ipynb").write_text(f"worksheet {name}")
    return made


class Hand:
    """Makes pages as the worker does, at once, and remembers which."""

    def __init__(self, text: str = "page") -> None:
        self.text = text
        self.made: list[str] = []
        self.stopped = 0

    def make(self, name: str, place: Path) -> None:
        self.made.append(name)
        if self.text:
            keep(place, f"{self.text} {name}")

    def stop(self) -> None:
        self.stopped += 1


def content(html: str) -> str:
    """What a page has within its frame."""
    return re.search(r"<main[^>]*>\s*(.*?)\s*</main>", html, re.DOTALL)[1]


def work(pages: Pages, hand: Hand, *visits: str) -> list[str]:
    """Let all pages be made while visitors ask for some; give what the visitors got."""
    pages.worker = hand  # type: ignore[assignment]

    async def visited() -> list[str]:
        asked = [asyncio.create_task(pages.get(name)) for name in visits]
        await asyncio.sleep(0)  # they stand in line before the work begins
        making = asyncio.create_task(pages.make_all())
        got = await asyncio.gather(*asked)
        while not hand.stopped:
            await asyncio.sleep(0.001)
        making.cancel()
        return [content(gzip.decompress(page.packed).decode()) if page else "" for page in got]

    return asyncio.run(asyncio.wait_for(visited(), 10))


def test_every_page_is_made_before_anybody_asks(folder: Path) -> None:
    hand = Hand()
    work(Pages(folder), hand)
    assert hand.made == ["a", "b", "c", "d"]
    assert hand.stopped == 1


def test_a_page_that_is_asked_for_goes_first_and_is_made_once(folder: Path) -> None:
    hand = Hand()
    assert work(Pages(folder), hand, "c", "c", "d") == ["page c", "page c", "page d"]
    assert hand.made == ["c", "d", "a", "b"]


def test_a_later_start_makes_nothing(folder: Path) -> None:
    work(Pages(folder), Hand())
    again = Hand("another")
    assert work(Pages(folder), again, "b") == ["page b"]
    assert again.made == []


def test_a_changed_worksheet_is_made_anew_and_its_page_as_it_was_is_thrown_away(
    folder: Path,
) -> None:
    pages = Pages(folder)
    work(pages, Hand())
    (folder / "b.ipynb").write_text("worksheet b, longer")
    again = Hand("another")
    assert work(pages, again, "b", "c") == ["another b", "page c"]
    assert again.made == ["b"]
    assert len(list((pages.shelf.folder / "b").iterdir())) == 1


def test_only_the_bytes_of_a_worksheet_count(folder: Path) -> None:
    key = Shelf(folder).key("a")
    os.utime(folder / "a.ipynb", (1, 1))
    assert Shelf(folder).key("a") == key


def test_a_change_of_our_code_makes_every_page_anew(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    code = tmp_path / "code" / "room" / "module.py"
    code.parent.mkdir(parents=True)
    code.write_text("1")
    monkeypatch.setattr(kept, "PACKAGE", tmp_path / "code")
    kept._code.cache_clear()
    first = Shelf(folder).key("a")
    code.write_text("23")
    kept._code.cache_clear()  # as a second later
    assert Shelf(folder).key("a") != first
    kept._code.cache_clear()


def test_a_file_beside_the_worksheets_counts_at_the_next_start(folder: Path) -> None:
    shelf = Shelf(folder)
    before = shelf.key("a")
    (folder / "picture.png").write_bytes(b"png")
    assert shelf.key("a") == before  # or a worksheet that writes a file would be run for ever
    assert Shelf(folder).key("a") != before


def test_a_failure_is_not_tried_again_for_every_visitor_but_at_the_next_start(
    folder: Path,
) -> None:
    pages, hand = Pages(folder), Hand("<p data-failed>")
    work(pages, hand, "a", "a")
    assert work(pages, hand, "a") == ["<p data-failed> a"]
    assert hand.made.count("a") == 1
    assert work(Pages(folder), Hand(), "a") == ["page a"]


def test_a_worker_that_brings_nothing_leaves_a_page_that_says_so(folder: Path) -> None:
    hand = Hand("")
    (page,) = work(Pages(folder), hand, "a")
    assert "This worksheet could not be worked out." in page


@pytest.mark.parametrize("left", [b"", b"\x1f\x8b", b"no page"])
def test_a_page_cut_short_is_made_anew(folder: Path, left: bytes) -> None:
    pages = Pages(folder)
    work(pages, Hand())
    pages.shelf.place("a", str(pages.shelf.key("a"))).write_bytes(left)
    assert work(Pages(folder), Hand("another"), "a") == ["another a"]


@pytest.mark.parametrize("name", ["", ".", "..", "../worksheets/a", "a.ipynb", "A/a", "a\0", "*"])
def test_only_a_worksheet_of_the_folder_has_a_page(folder: Path, name: str) -> None:
    assert Shelf(folder).key("a")
    assert Shelf(folder).key(name) is None


def test_where_nothing_can_be_kept_pages_last_as_long_as_the_server(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").touch()
    monkeypatch.setenv(CACHE_FOLDER, str(tmp_path / "file"))
    assert work(Pages(folder), Hand(), "a") == ["page a"]

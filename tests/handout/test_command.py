"""`yarnsheets handout`: what it writes, what may be wished for, what it says when it cannot."""

from __future__ import annotations

import json
import re
from typing import TYPE_CHECKING

import pytest
from nbformat.v4 import new_code_cell as code
from nbformat.v4 import new_markdown_cell as text

from tests.handout.conftest import handout, made
from tests.serve.small import SHEET, TEXT, WIDGETS, write
from yarnsheets.handout import folder as writing
from yarnsheets.handout.folder import CannotMake, put

if TYPE_CHECKING:
    from pathlib import Path

LINK = "http://127.0.0.1:8866/voila/render/how-many-yards.ipynb#grist=900&measure=metres%2C+grams"


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder of worksheets of one's own, one of which fails."""
    folder = tmp_path_factory.mktemp("own")
    led = "# Two\n\nFirst [one](one.ipynb#grist=7), then [three](three.ipynb)."
    write(folder, "one", text(TEXT), code(SHEET))
    write(folder, "two", text(led), code(SHEET))
    write(folder, "failing", text("# Fails"), code("1 / 0"))
    write(folder, "turning", text("# Turns"), code(WIDGETS))
    return folder


def told(page: Path) -> dict[str, object]:
    """Read what a page knows of its handout."""
    data = re.search(r'id="yarnsheets-handout">(.*?)</script>', page.read_text("utf-8"))
    assert data
    return dict(json.loads(data[1]))


def test_a_worksheet_is_one_file_that_asks_for_nothing(single: Path) -> None:
    pages = sorted(single.glob("*.html"))
    assert len(pages) > 1
    for page in pages:
        html = page.read_text("utf-8")
        assert re.findall(r'(?:src|href)="(?!data:|#|mailto:)([^"]*)"', html.split("<main")[0]) in (
            [],
            ["index.html"],
        ), page.name
        assert page.stat().st_size < 1.4e6


def test_shared_pages_are_small(single: Path, shared: Path) -> None:
    for page in shared.glob("what-*.html"):
        assert page.stat().st_size < (single / page.name).stat().st_size / 6
    parts = {part.name.split("-")[0] for part in (shared / "parts").iterdir()}
    assert parts == {"around", "charts", "colours", "page", "sheet"}


def test_links_in_the_prose_lead_to_the_pages_there_are(small: Path, tmp_path: Path) -> None:
    folder = made(tmp_path / "made", "one", "two", "--worksheets", str(small))
    html = (folder / "two.html").read_text("utf-8")
    assert '<a href="one.html#grist=7">one</a>, then three.' in html
    assert not re.search(r'href="[^"]*\.ipynb', html)


def test_a_teacher_has_it_her_way(tmp_path: Path) -> None:
    folder = made(
        tmp_path / "made",
        "how-many-yards",
        *("--title", "Grist & <b>cuts</b>", "--note", "Bring your balance."),
        *("--contact", "teacher@guild.example", "--start", LINK),
        *("--units", "metres, grams", "--grist", "tex", "--hide", "text,plies"),
    )
    page = folder / "how-many-yards.html"
    html, data = page.read_text("utf-8"), told(page)
    assert data["start"] == "grist=900"
    assert data["choice"] == {"measure": "metres, grams", "grist_unit": "tex"}
    assert data["worksheets"] == ["how-many-yards"]
    assert '<a href="mailto:teacher@guild.example">teacher@guild.example</a>' in html
    for each in (html, (folder / "index.html").read_text("utf-8")):
        assert "Grist &amp; &lt;b&gt;cuts&lt;/b&gt;" in each
        assert "Bring your balance." in each


@pytest.mark.parametrize(
    ("contact", "shown"),
    [
        ("https://guild.example/x", '<a href="https://guild.example/x">'),
        ("ask at the door", "<p>ask at the door</p>"),
        ("javascript:alert(1)", "<p>javascript:alert(1)</p>"),
    ],
)
def test_only_an_address_becomes_a_link(
    small: Path, tmp_path: Path, contact: str, shown: str
) -> None:
    made(tmp_path / "made", "one", "--worksheets", str(small), "--contact", contact)
    assert shown in (tmp_path / "made/one.html").read_text("utf-8")


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["nothing"], "There is no worksheet nothing in"),
        (["failing"], "The worksheet failing could not be worked out, so no handout was written."),
        (["turning"], "The worksheet turning has widgets other than sheets"),
        (["one", "--start", LINK], "The link is of the worksheet how-many-yards, which is not"),
        (["one", "--start", "one.html"], "The link one.html has no numbers in it."),
        (["one", "--units", "leagues"], "There is nothing called “leagues” for --units."),
        (["one", "--grist", "x"], "There is nothing called “x” for --grist."),
        (["one", "--hide", "chart"], "There is nothing called “chart” to hide."),
    ],
)
def test_what_cannot_be_is_said_and_nothing_is_left(
    small: Path, tmp_path: Path, options: list[str], words: str
) -> None:
    done = handout(tmp_path / "deep/made", "--worksheets", str(small), *options)
    assert done.returncode == 1
    assert words in done.stderr
    assert "Traceback (most" not in done.stderr or options == ["failing"]  # its author’s own
    assert list(tmp_path.iterdir()) == []


# Writing into a folder

FILES = {"index.html": "new", "parts/page-0.js": "new"}


def test_what_is_there_is_kept_unless_she_says_otherwise(tmp_path: Path) -> None:
    (tmp_path / "index.html").write_text("hers")
    (tmp_path / "notes.txt").write_text("hers")
    with pytest.raises(CannotMake, match=r"has index\.html already\. Nothing was written\."):
        put(tmp_path, FILES, replace=False)
    assert (tmp_path / "index.html").read_text() == "hers"
    assert not (tmp_path / "parts").exists()
    put(tmp_path, FILES, replace=True)
    assert (tmp_path / "index.html").read_text() == "new"
    assert (tmp_path / "notes.txt").read_text() == "hers"
    assert {each.name for each in tmp_path.iterdir()} == {"index.html", "notes.txt", "parts"}


def test_files_of_an_earlier_version_go(tmp_path: Path) -> None:
    old = [
        f"offline-{'a' * 24}.js",
        f"parts/page-{'b' * 24}.js",
        "offline-notes.txt",
        "parts/my.js",
    ]
    put(tmp_path, dict.fromkeys(old, "old"), replace=False)
    put(tmp_path, FILES, replace=False)
    left = {path.relative_to(tmp_path).as_posix() for path in tmp_path.rglob("*.*")}
    assert left == {*FILES, "offline-notes.txt", "parts/my.js"}


@pytest.mark.parametrize("is_new", [True, False])
def test_a_full_disk_leaves_the_folder_as_it_was(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, is_new: bool
) -> None:
    folder = tmp_path / "deep" / "made"
    if not is_new:
        folder.mkdir(parents=True)
        (folder / "notes.txt").write_text("hers")
    before = sorted(tmp_path.rglob("*"))
    write = writing.Path.write_text

    def full(self: Path, text: str, *given: object, **named: object) -> int:
        if self.name == "page-0.js":
            raise OSError(28, "No space left on device")
        return write(self, text, *given, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(writing.Path, "write_text", full)
    with pytest.raises(CannotMake, match="No space left on device"):
        put(folder, FILES, replace=False)
    assert sorted(tmp_path.rglob("*")) == before


def test_a_folder_that_cannot_be_is_said(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    done = handout(tmp_path / "file/made", "how-many-yards")
    assert done.returncode == 1
    assert done.stderr.startswith("The handout could not be written to")
    assert done.stderr.count("\n") == 1

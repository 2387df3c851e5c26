"""A guild's own site with worksheets inside its pages, in three ways, and nothing but files."""

from __future__ import annotations

import re
import shutil
from typing import TYPE_CHECKING

import pytest

from tests.browser import free_port, serving
from tests.handout.conftest import hosted
from tests.reader import said, thumb, type_in
from yarnsheets.handout.embed import lines
from yarnsheets.sheets import HowManyYards, HowSureIsTheGrist, IsThisEnough

if TYPE_CHECKING:
    from pathlib import Path

    from playwright.sync_api import Frame, Page

    from tests.browser import Troubles

# The site of an invented guild. A learning platform gives what it embeds no rights: the second.
ARTICLE = """<!DOCTYPE html>
<html lang="en"><meta charset="utf-8"><title>Grist in an evening</title>
<style>body {{ max-width: 60rem; margin: auto; font: 1rem/1.5 serif }}</style>
<h1>Grist in an evening</h1>
<p>The Windle Hill spinners are invented. Weigh your skein first.</p>
{alone}
<p>Then measure three cuts.</p>
<iframe name="boxed" src="worksheets/how-sure-is-the-grist.html" title="How sure is the grist?"
  sandbox="allow-scripts allow-downloads" style="width: 100%; height: 50rem"></iframe>
<p>At last, plan a hat.</p>
<iframe name="shared" src="shared/is-this-enough.html?alone#project=300" title="Is this enough?"
  style="width: 100%; height: 50rem"></iframe>
<p><a href="worksheets/index.html">All worksheets</a></p>
"""


@pytest.fixture(scope="module")
def article(single: Path, shared: Path) -> Path:
    """Lay the site out beside the handout, as a teacher would."""
    root = single.parent
    pasted = (single / "embed.txt").read_text("utf-8")
    alone = re.search(r"<iframe.*how-many-yards\.html.*\n<script>.*", pasted)
    assert alone
    html = ARTICLE.format(alone=alone[0].replace('="how-many', '="worksheets/how-many'))
    (root / "article.html").write_text(html, "utf-8")
    shutil.copytree(shared, root / "shared")
    return root / "article.html"


@pytest.fixture
def frames(page: Page, article: Path) -> dict[str, Frame]:
    """Open the article from the disk, and wait for what is in it."""
    page.goto(article.as_uri())
    found = {}
    for element in page.locator("iframe").all():
        element.scroll_into_view_if_needed()
        frame = element.element_handle().content_frame()
        assert frame
        frame.wait_for_function(
            "[...document.querySelectorAll('.ys-chart')].every((it) => it.querySelector('svg'))"
            " && document.querySelector('.ys-sentence')?.textContent"
        )
        found[frame.name or "alone"] = frame
    return found


def test_each_way_shows_its_worksheet(frames: dict[str, Frame]) -> None:
    assert said(frames["alone"]) == HowManyYards().sentence
    assert said(frames["boxed"]) == HowSureIsTheGrist().sentence
    assert said(frames["shared"]) == IsThisEnough(project=300).sentence


def test_a_sheet_alone_has_nothing_around_it_and_takes_the_room_it_needs(
    page: Page, frames: dict[str, Frame]
) -> None:
    assert not frames["alone"].get_by_role("heading", level=1).is_visible()
    assert frames["boxed"].get_by_role("heading", level=1).is_visible()
    heights = "[document.documentElement.scrollHeight, innerHeight]"
    page.wait_for_function("document.querySelector('iframe').style.height !== '60rem'")
    needed, given = frames["alone"].evaluate(heights)
    assert needed <= given
    arithmetic = frames["alone"].locator(".ys-worked > summary")
    arithmetic.click()
    frames["alone"].wait_for_function(f"innerHeight > {given}")
    needed, given = frames["alone"].evaluate(heights)
    assert needed <= given


def test_it_is_dragged_typed_in_and_printed(page: Page, frames: dict[str, Frame]) -> None:
    frame = frames["alone"]
    type_in(frame, "grist", "1000")
    assert said(frame) == HowManyYards(grist=1000).sentence
    at = thumb(frame, "weight")
    page.mouse.move(*at)
    page.mouse.down()
    page.mouse.move(at[0] + 40, at[1], steps=4)
    page.mouse.up()
    assert said(frame) != HowManyYards(grist=1000).sentence
    assert page.pdf(format="A4").startswith(b"%PDF")


def test_its_link_opens_the_page_itself_with_these_numbers(
    page: Page, frames: dict[str, Frame], troubles: Troubles
) -> None:
    troubles.expect("Clipboard API")  # a file may not copy by itself; the link stands there
    type_in(frames["alone"], "grist", "1000")
    frames["alone"].get_by_role("button", name="Copy a link").click()
    link = frames["alone"].get_by_label("Link to these numbers").input_value()
    assert "?alone" not in link
    page.goto(link)
    page.wait_for_selector(".ys-sentence")
    assert said(page) == HowManyYards(grist=1000).sentence
    page.reload()
    page.wait_for_selector(".ys-sentence")
    assert said(page) == HowManyYards(grist=1000).sentence


def test_a_worksheet_far_down_draws_when_it_comes_into_sight(page: Page, single: Path) -> None:
    tall = "<div style='height: 4000px'></div>"
    many = "".join(
        f'<iframe src="{name}.html?alone" style="width: 100%; height: 900px"></iframe>{tall}'
        for name in ("how-many-yards", "is-this-enough")
    )
    (single / "many.html").write_text(f"<!DOCTYPE html><title>Many</title>{many}", "utf-8")
    page.goto((single / "many.html").as_uri())
    first, second = (page.frame_locator("iframe").nth(at) for at in (0, 1))
    first.locator(".ys-picture svg").first.wait_for()
    second.locator(".ys-headline").wait_for()  # its answer is there
    assert second.locator(".ys-picture svg").count() == 0
    page.locator("iframe").nth(1).scroll_into_view_if_needed()
    second.locator(".ys-picture svg").first.wait_for()


# A served page inside another


@pytest.mark.parametrize("is_allowed", [True, False])
def test_a_served_page_is_framed_by_the_sites_that_may(
    page: Page, tmp_path: Path, troubles: Troubles, *, is_allowed: bool
) -> None:
    port = free_port()
    worksheet = f"http://127.0.0.1:{port}/voila/render/how-many-yards.ipynb"
    (tmp_path / "page.html").write_text(
        '<!DOCTYPE html><title>Guild</title><link rel="icon" href="data:,">'
        f"{lines(worksheet, 'How many yards is this?')}"
    )
    with hosted(tmp_path) as site:
        named = ["--framed-by", f"{site}any/page"] if is_allowed else []
        with serving("--no-browser", "--port", str(port), *named) as running:
            running.get("voila/render/how-many-yards.ipynb")
            if not is_allowed:
                troubles.expect("frame-ancestors")
            page.goto(f"{site}page.html")
            inside = page.frame_locator("iframe")
            if is_allowed:
                inside.locator(".ys-picture svg").first.wait_for()
                page.wait_for_function("document.querySelector('iframe').style.height !== '60rem'")
            else:
                page.wait_for_timeout(500)
                assert inside.locator(".ys-sentence").count() == 0
                assert any("frame-ancestors" in trouble for trouble in troubles.seen)
            assert page.get_by_role("link", name="How many yards is this?").is_visible()


@pytest.mark.parametrize(
    "site", ["guild.example", "ftp://guild.example", "https://a b", "https://"]
)
def test_what_is_no_site_is_refused(site: str) -> None:
    from tests.serve.test_serve import run

    done = run("--framed-by", site)
    assert done.returncode == 1
    assert done.stderr.startswith(f"{site} is no web site.")

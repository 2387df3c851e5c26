"""The HTML by which a page of one's own has a worksheet in it."""

from __future__ import annotations

from html import escape
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

# As the page of the worksheet says how high it would like to be.
LISTEN = (
    '<script>addEventListener("message", (event) => { for (const frame of '
    'document.querySelectorAll("iframe[data-yarnsheets]")) if (frame.contentWindow === '
    "event.source && event.data?.yarnsheets) frame.style.height = "
    "`${event.data.yarnsheets.height}px`; });</script>"
)
HEAD = """\
Two lines of HTML for each worksheet: paste both where it is to stand in a page of your own.
The first shows it, with a link below it for those who see no frame; the second lets it take the
height it needs. With several worksheets in one page, the second is needed only once. Without
“?alone” a worksheet comes with its explanation.
"""


def lines(address: str, title: str) -> str:
    """Return the two lines for a worksheet at an address."""
    where, what = escape(address), escape(title)
    frame = (
        f'<iframe data-yarnsheets src="{where}?alone" title="{what}" loading="lazy" '
        'style="width: 100%; height: 60rem; border: 0" allow="clipboard-write"></iframe>'
        f'<p><a href="{where}">{what}</a></p>'
    )
    return f"{frame}\n{LISTEN}\n"


def all_lines(base: str, titles: Mapping[str, str]) -> str:
    """Return the lines for every worksheet of a handout, with what to do with them."""
    if base and not base.endswith("/"):
        base += "/"
    each = [f"\n{title}\n\n{lines(f'{base}{name}.html', title)}" for name, title in titles.items()]
    return HEAD + "".join(each)

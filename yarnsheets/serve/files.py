"""The files that served pages share: kept by browsers as long as they like, changed by address."""

from __future__ import annotations

import gzip
from dataclasses import dataclass
from functools import cached_property, lru_cache
from hashlib import blake2b
from pathlib import Path
from typing import TYPE_CHECKING

from yarnsheets.page.html import script

if TYPE_CHECKING:
    from collections.abc import Callable

TEMPLATE = Path(__file__).parent / "share/voila/templates/yarnsheets"
PAGE = Path(__file__).parent.parent / "page"

FILES = {
    "colours.css": PAGE / "front/colours.css",
    "page.css": TEMPLATE / "static/page.css",
    "sheet.css": PAGE / "front/sheet.css",
    "page.js": PAGE / "built/page.js",
    "around.js": PAGE / "built/around.js",
    "phone.js": PAGE / "built/phone.js",
    "charts.js": PAGE / "built/charts.js",
}
_LINKS = {
    ".css": '<link rel="stylesheet" href="{}">',
    ".js": '<script src="{}"></script>',
}
TYPES = {".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8"}


@dataclass(frozen=True)
class File:
    """A file's content, what kind it is, and what it is known by."""

    text: bytes
    type: str
    hash: str

    @cached_property
    def packed(self) -> bytes:
        """The content as browsers take it: packed once and kept."""
        return gzip.compress(self.text, 9)


def file(name: str) -> File | None:
    """Return one of the files as it is on the disk now, or None if there is none of that name."""
    path = FILES.get(name)
    if path is None or not path.is_file():
        return None
    known = path.stat()
    return _read(path, known.st_mtime_ns, known.st_size)


@lru_cache(maxsize=len(FILES))
def _read(path: Path, _changed: int, _size: int) -> File:
    text = path.read_bytes()
    return File(text, TYPES[path.suffix], short_hash(text))


def address(name: str) -> str:
    """Return the address of a file, which is another as soon as its content is."""
    found = file(name)
    return f"/static/{found.hash if found else 'missing'}/{name}"


def linked(addresses: Callable[[str], str] = address) -> dict[str, str]:
    """Return the HTML that brings each file from its address, by the file's name."""
    return {name: _LINKS[Path(name).suffix].format(addresses(name)) for name in FILES}


def built_in() -> dict[str, str]:
    """Return HTML with each file in it, by the file's name."""
    texts = {name: path.read_text("utf-8") for name, path in FILES.items()}
    return {
        name: script(text) if name.endswith(".js") else f"<style>{text}</style>"
        for name, text in texts.items()
    }


def short_hash(*parts: bytes) -> str:
    """Return a hash by which contents are told apart.

    >>> short_hash(b"a") == short_hash(b"a"), short_hash(b"a") == short_hash(b"b")
    (True, False)
    """
    whole = blake2b(digest_size=12)
    for part in parts:
        whole.update(part)
    return whole.hexdigest()

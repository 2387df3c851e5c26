"""Pages kept on the disk: each for as long as its worksheet and our code stay as they are."""

from __future__ import annotations

import atexit
import gzip
import os
import platform
import shutil
import time
import zlib
from functools import lru_cache
from importlib.metadata import version
from pathlib import Path
from tempfile import TemporaryFile, mkdtemp
from typing import NamedTuple

from platformdirs import user_cache_path

from yarnsheets.serve.files import short_hash

PACKAGE = Path(__file__).parent.parent

# Where the pages are kept, if not where this system keeps what can be made again.
CACHE_FOLDER = "YARNSHEETS_CACHE"

# What has a hand in a page, beside the worksheet and the files of this package.
MAKERS = ("altair", "anywidget", "ipywidgets", "nbconvert", "traitlets", "voila")

PASSED_OVER = {".ipynb", ".pyc"}  # worksheets, each looked at by itself, and what Python makes

# Put into a page by its template.
NEEDS_KERNEL = "data-needs-kernel"
FAILED = "data-failed"


class Kept(NamedTuple):
    """What a worksheet's page says, without the page around it."""

    content: str

    @property
    def needs_kernel(self) -> bool:
        """Whether a part of it works only with a kernel."""
        return NEEDS_KERNEL in self.content

    @property
    def failed(self) -> bool:
        """Whether a part of it could not be worked out."""
        return FAILED in self.content


class Shelf:
    """The pages kept of one folder of worksheets."""

    def __init__(self, worksheets: Path) -> None:
        self.worksheets = worksheets
        self.folder = room_for(short_hash(os.fsencode(worksheets.resolve())))
        # Pictures and data are looked at once: a worksheet that writes a file of its own as it runs
        # would otherwise be run anew for every visitor.
        self.beside = _looks_of(_files(worksheets))

    def key(self, name: str) -> str | None:
        """Return what a worksheet's page is known by, or None if there is no such worksheet.

        It is another as soon as the worksheet or our code is another, and cheap to ask for again.
        """
        if name not in self.names():  # so no name leads out of the folder
            return None
        notebook = self.notebook(name)
        known = notebook.stat()
        text = _hash_of_file(notebook, known.st_mtime_ns, known.st_size)
        return short_hash(code().encode(), self.beside.encode(), text.encode())

    def notebook(self, name: str) -> Path:
        """Return where a worksheet is."""
        return self.worksheets / f"{name}.ipynb"

    def names(self) -> list[str]:
        """Return the names of the worksheets."""
        return sorted(path.stem for path in self.worksheets.glob("*.ipynb"))

    def place(self, name: str, key: str) -> Path:
        """Return where a page is kept."""
        return self.folder / name / f"{key}.html.gz"

    def take(self, name: str, key: str) -> Kept | None:
        """Return what is kept of a page; one with a part that failed is not kept any longer."""
        place = self.place(name, key)
        try:
            kept = Kept(gzip.decompress(place.read_bytes()).decode())
        except (OSError, EOFError, zlib.error):
            return None
        if not kept.content:  # cut short when the power went
            return None
        if kept.failed:
            place.unlink()
        return kept

    def tidy(self, name: str, key: str) -> None:
        """Throw away what was kept of a worksheet as it no longer is."""
        place = self.place(name, key)
        for each in place.parent.glob("*"):
            if each != place:
                each.unlink(missing_ok=True)


def keep(place: Path, html: str) -> None:
    """Put a page in its place, whole or not at all."""
    place.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    part = place.with_name(f"{place.name}.{os.getpid()}.part")
    part.write_bytes(pack(html))
    part.replace(place)


def pack(html: str) -> bytes:
    """Return a page as browsers take it."""
    return gzip.compress(html.encode(), 9)


def room_for(name: str) -> Path:
    """Return a folder for pages: where nothing can be kept, one for this time only."""
    named = os.environ.get(CACHE_FOLDER)
    kept = Path(named) if named else user_cache_path("yarnsheets", appauthor=False)
    folder = kept / name
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        TemporaryFile(dir=folder).close()
    except OSError:
        folder = Path(mkdtemp(prefix="yarnsheets-"))
        atexit.register(shutil.rmtree, folder, ignore_errors=True)
    return folder


def code() -> str:
    """Return what our own code is known by: another as soon as a file of it is another."""
    return _code(int(time.monotonic()))  # a second's wait is no wait


@lru_cache(maxsize=1)
def _code(_second: int) -> str:
    return _hash_of_code(_looks_of(_files(PACKAGE, deep=True)))


@lru_cache(maxsize=1)
def _hash_of_code(_looks: str) -> str:
    files = _files(PACKAGE, deep=True)
    versions = [f"{name} {version(name)}" for name in MAKERS]
    words = [platform.python_version(), *versions, *(str(each) for each in files)]
    return short_hash(" ".join(words).encode(), *(each.read_bytes() for each in files))


@lru_cache(maxsize=512)
def _hash_of_file(path: Path, _changed: int, _size: int) -> str:
    return short_hash(path.read_bytes())


def _files(folder: Path, *, deep: bool = False) -> list[Path]:
    found = folder.rglob("*") if deep else folder.glob("*")
    return sorted(
        each
        for each in found
        if each.suffix not in PASSED_OVER and not each.name.startswith(".") and each.is_file()
    )


def _looks_of(files: list[Path]) -> str:
    """Tell files apart without reading them."""
    seen = [(each, each.stat()) for each in files]
    return "\n".join(f"{each} {known.st_mtime_ns} {known.st_size}" for each, known in seen)

"""The pages of a folder of worksheets: each is made once, in the background, and kept."""

from __future__ import annotations

import asyncio
import itertools
import json
import subprocess
import sys
from typing import TYPE_CHECKING, NamedTuple

from yarnsheets.serve.kept import Kept, Shelf, code, pack
from yarnsheets.serve.look import render, worksheet

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator
    from pathlib import Path

VISITOR, BACKGROUND = range(2)  # who goes first


class Page(NamedTuple):
    """A page as it is sent."""

    packed: bytes
    key: str
    needs_kernel: bool = False


class Pages:
    """The pages of a folder, asked for by name."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.shelf = Shelf(folder)
        self.worker = Worker(folder)
        self.ready: dict[str, Page] = {}
        self.wanted: asyncio.PriorityQueue[tuple[int, int, str, asyncio.Future[Page | None]]]
        self.wanted = asyncio.PriorityQueue()
        self.turns = itertools.count()

    async def get(self, name: str) -> Page | None:
        """Return a page, made first if it has to be; None if there is no such worksheet."""
        key = self.shelf.key(name)
        if key is None:
            return None
        return self.known(name, key) or await self.want(name, VISITOR)

    async def content(self, name: str) -> str | None:
        """Return what a worksheet says, without the page around it; None if there is none."""
        key = self.shelf.key(name)
        if key is None or await self.get(name) is None:
            return None
        kept = self.shelf.take(name, key)
        return kept.content if kept else None

    def known(self, name: str, key: str) -> Page | None:
        """Return a page that is as its worksheet is now."""
        page = self.ready.get(name)
        if page is None or page.key != key:
            kept = self.shelf.take(name, key)
            if kept is None:
                return None
            html = worksheet(self.shelf.notebook(name), kept.content)
            page = self.ready[name] = Page(pack(html), key, kept.needs_kernel)
        return page

    def want(self, name: str, who: int) -> asyncio.Future[Page | None]:
        """Put a page in the line of those to make."""
        made = asyncio.get_running_loop().create_future()
        self.wanted.put_nowait((who, next(self.turns), name, made))
        return made

    async def make_all(self) -> None:
        """Make every page that is not there, and from then on whatever is wanted."""
        for name in self.shelf.names():
            self.want(name, BACKGROUND)
        while True:
            _, _, name, made = await self.wanted.get()
            page = await self.make(name)
            if not made.done():
                made.set_result(page)
            if self.wanted.empty():
                await asyncio.to_thread(self.worker.stop)  # gives its memory back

    async def make(self, name: str) -> Page | None:
        """Make a page, unless it was made while it stood in line."""
        key = self.shelf.key(name)
        if key is None:  # it was taken away meanwhile
            return None
        if page := self.known(name, key):
            return page
        place = self.shelf.place(name, key)
        await asyncio.to_thread(self.worker.make, name, place)
        # Whatever went wrong, it is not tried again for every visitor.
        page = self.known(name, key) or Page(pack(render("failed.html")), key)
        self.ready[name] = page
        self.shelf.tidy(name, key)
        return page


def made_now(folder: Path, names: Iterable[str]) -> Iterator[tuple[str, Kept | None]]:
    """Give what the pages of worksheets say, made first where they have to be, one by one."""
    shelf, worker = Shelf(folder), Worker(folder)
    try:
        for name in names:
            key = shelf.key(name)
            if key is None:  # it was taken away meanwhile
                yield name, None
                continue
            kept = shelf.take(name, key)
            if kept is None:
                worker.make(name, shelf.place(name, key))
                kept = shelf.take(name, key)
                shelf.tidy(name, key)
            yield name, kept
    finally:
        worker.stop()


class Worker:
    """The process that runs worksheets, there only while there is something to run."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.process: subprocess.Popen[str] | None = None
        self.code = ""
        self.is_over = False

    def make(self, name: str, place: Path) -> None:
        """Have a page made, and wait for it; if the process ends over it, there is no page."""
        if self.code != code():
            self.stop()  # it has our code in it as that was
        process = self.process = self.process or self.start()
        if self.is_over:  # while it was being started
            self.stop()
        assert process.stdin
        assert process.stdout
        try:
            print(json.dumps([name, str(place)]), file=process.stdin, flush=True)
            answer = process.stdout.readline()
        except OSError:
            answer = ""
        if not answer:
            self.stop()

    def start(self) -> subprocess.Popen[str]:
        """Start the process, in a group of its own, so that Ctrl-C does not reach it past us."""
        self.code = code()
        # -P: what lies about in the folder one is in must not stand in for a module of Python's.
        command = [sys.executable, "-P", "-m", "yarnsheets.serve.worker", str(self.folder)]
        return subprocess.Popen(  # noqa: S603  # nothing in it comes from a visitor
            command,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            text=True,
            start_new_session=True,
            creationflags=getattr(subprocess, "CREATE_NEW_PROCESS_GROUP", 0),
        )

    def end(self) -> None:
        """Stop the process for good."""
        self.is_over = True
        self.stop()

    def stop(self) -> None:
        """Stop the process, and its kernel with it."""
        process, self.process = self.process, None
        if process is None:
            return
        process.terminate()
        try:
            process.wait(timeout=5)
        except subprocess.TimeoutExpired:
            process.kill()

"""The command `yarnsheets`: the worksheets as web pages, served from this machine."""

from __future__ import annotations

import argparse
import asyncio
import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from yarnsheets.serve.addresses import EVERYWHERE, FIRST_PORT, LOOPBACK, CannotServe, listen, site
from yarnsheets.serve.worksheets import worksheets_folder

if TYPE_CHECKING:
    from collections.abc import Sequence

    from yarnsheets.classroom.room import Room

__all__ = ["main"]


def main(argv: Sequence[str] | None = None) -> int:
    """Serve the worksheets until Ctrl-C; the exit code is 0 unless they could not be served."""
    options = parser().parse_args(argv)
    try:
        page = find(options.folder, options.worksheet)
        framed_by = tuple(map(site, options.framed_by))
        room = None if options.word is None else room_of(options.word, options.folder)
        address = options.address or (EVERYWHERE if room else LOOPBACK)
        sockets, moved = listen(address, options.port)
    except CannotServe as reason:
        print(reason, file=sys.stderr)
        return 1
    try:
        from yarnsheets.serve.server import say, serve  # late, so that errors come at once

        if moved:
            say(moved)
        folder = options.folder.resolve()
        asyncio.run(
            serve(
                folder,
                page,
                sockets,
                live=options.live,
                framed_by=framed_by,
                room=room,
                open_browser=options.browser,
            )
        )
    except KeyboardInterrupt:
        pass  # while it was still starting
    print("The worksheets have stopped.")
    return 0


def parser() -> argparse.ArgumentParser:
    """Return the command's options."""
    options = argparse.ArgumentParser(
        prog="yarnsheets",
        description="Open the worksheets as web pages in your browser. Ctrl-C stops them.",
        epilog="“yarnsheets handout FOLDER” writes them as files instead: see “yarnsheets handout "
        "--help”.",
    )
    options.add_argument(
        "worksheet", nargs="?", help="open this worksheet, such as how-many-yards, not the list"
    )
    options.add_argument(
        "--address",
        help="address to listen on; 0.0.0.0 lets other machines open the worksheets "
        f"(default: {LOOPBACK}, this machine only; with --class {EVERYWHERE})",
    )
    options.add_argument(
        "--port", type=int, help=f"port to listen on (default: the first free from {FIRST_PORT})"
    )
    options.add_argument(
        "--folder",
        type=Path,
        default=worksheets_folder(),
        help="serve the worksheets in this folder (default: those that come with the program)",
    )
    options.add_argument(
        "--live",
        action="store_true",
        help="run a program for each reader of a worksheet that has other widgets than sheets; "
        "whoever can open it can use this machine through them",
    )
    options.add_argument(
        "--class",
        dest="word",
        nargs="?",
        const="",
        metavar="WORD",
        help="let everybody on the network in, and gather the cuts that learners type on their "
        "phones; WORD is a short word for the room (default: one is chosen)",
    )
    options.add_argument(
        "--framed-by",
        metavar="SITE",
        action="append",
        default=[],
        help="a web site that may show the pages inside its own, such as https://guild.example",
    )
    options.add_argument(
        "--no-browser", dest="browser", action="store_false", help="do not open a browser"
    )
    return options


def room_of(word: str, folder: Path) -> Room:
    """Return the room of a class, or say what is in the way."""
    from yarnsheets.classroom.room import WORKSHEET, Room

    if not (folder / f"{WORKSHEET}.ipynb").is_file():
        msg = f"A class needs the worksheet {WORKSHEET}, which is not in {folder}."
        raise CannotServe(msg)
    if word and not re.fullmatch(r"[a-z]{2,20}", word):
        msg = f"“{word}” cannot be typed easily. Give --class a word of 2 to 20 small letters."
        raise CannotServe(msg)
    return Room(word) if word else Room()


def find(folder: Path, worksheet: str | None) -> str:
    """Return the page to open first, or say what there is instead."""
    if not folder.is_dir():
        msg = f"There is no folder {folder}. Give the folder of the worksheets with --folder."
        raise CannotServe(msg)
    if worksheet is None:
        return ""
    name = worksheet.removesuffix(".ipynb")
    names = sorted(path.stem for path in folder.glob("*.ipynb"))
    if name not in names:
        there_are = ", ".join(names) or "none at all"
        msg = f"There is no worksheet {name} in {folder}. There are: {there_are}."
        raise CannotServe(msg)
    return f"voila/render/{name}.ipynb"

"""The server: started, announced and stopped in plain words."""

from __future__ import annotations

import asyncio
import contextlib
import logging
import signal
import threading
import webbrowser
from typing import TYPE_CHECKING

from tornado.httpserver import HTTPServer
from tornado.web import Application

from yarnsheets.serve.addresses import is_loopback, network_address, page_address
from yarnsheets.serve.handlers import Guests, answers
from yarnsheets.serve.pages import Pages

if TYPE_CHECKING:
    import socket
    from pathlib import Path

    from yarnsheets.classroom.room import Room

STOP_SIGNALS = (signal.SIGINT, signal.SIGTERM)

# A visitor sends nothing but short questions; a page with a kernel, that it is left.
LIMITS = {
    "max_header_size": 16 * 1024,  # bytes
    "max_body_size": 16 * 1024,
    "idle_connection_timeout": 120,  # seconds
    "body_timeout": 20,
}


async def serve(
    folder: Path,
    page: str,
    sockets: list[socket.socket],
    *,
    live: bool,
    framed_by: tuple[str, ...],
    room: Room | None,
    open_browser: bool,
) -> None:
    """Serve a folder of worksheets on listening sockets until told to stop."""
    host, port = sockets[0].getsockname()[:2]
    guests = Guests(is_loopback(host), framed_by)
    for chatter in ("tornado.access", "tornado.general"):
        logging.getLogger(chatter).setLevel(logging.ERROR)

    pages = Pages(folder)
    answered = answers(pages, guests, room)
    async with contextlib.AsyncExitStack() as at_the_end:
        if live:
            from yarnsheets.serve.live import kernels_for  # Voila takes a second to load

            application = await at_the_end.enter_async_context(kernels_for(pages, answered, guests))
        else:
            application = Application(answered)
        HTTPServer(application, **LIMITS).add_sockets(sockets)
        stopped = stop_event()
        announce(host, port, page, live=live, room=room)
        if open_browser:
            address = page_address(host, port, page)
            if room:  # by the network's own name, so that links and the code lead there
                address = page_address(network_address(host), port, f"{room.word}/all")
            threading.Thread(target=open_in_browser, args=[address], daemon=True).start()
        making = asyncio.create_task(pages.make_all())
        at_the_end.callback(pages.worker.end)
        at_the_end.callback(making.cancel)
        await stopped.wait()
        for number in STOP_SIGNALS:  # a second Ctrl-C meanwhile changes nothing
            signal.signal(number, signal.SIG_IGN)


def stop_event() -> asyncio.Event:
    """Return what is set by Ctrl-C, and by whoever else asks the program to end."""
    stopped = asyncio.Event()
    loop = asyncio.get_running_loop()
    for number in STOP_SIGNALS:
        signal.signal(number, lambda *_: loop.call_soon_threadsafe(stopped.set))  # wakes the loop
    return stopped


def announce(host: str, port: int, page: str, *, live: bool, room: Room | None) -> None:
    """Say where the worksheets are, and who can open them."""
    say(f"The worksheets are at {page_address(host, port, page)} (Ctrl-C stops them).")
    if not is_loopback(host):
        others = page_address(network_address(host), port)
        use = ", and use this machine to work them out" if live else ""
        say(
            f"Anyone on the network can open them, at {others}{use}. "
            "There is no password and no encryption: do this on a network you trust."
        )
    if room:
        say(
            f"The class sends its cuts at {page_address(network_address(host), port, room.word)}, "
            f"and sees them at …/{room.word}/all. They are forgotten when this ends."
        )


def open_in_browser(address: str) -> None:
    """Open the browser, or say how to do so by hand."""
    if not webbrowser.open(address):
        say(f"No web browser was found. Open this address in one by hand: {address}")


def say(words: str) -> None:
    """Print a line at once, also where the output is collected in a file."""
    print(words, flush=True)

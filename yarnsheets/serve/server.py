"""Voila, started, announced and stopped in plain words."""

from __future__ import annotations

import logging
import shutil
import signal
import threading
import webbrowser
from http import HTTPStatus
from typing import TYPE_CHECKING, Any

from jupyter_core.utils import run_sync
from tornado.httpserver import HTTPServer
from tornado.ioloop import IOLoop
from tornado.web import HTTPError
from tornado.websocket import WebSocketClosedError
from voila.app import Voila
from voila.handler import BaseVoilaHandler

from yarnsheets.serve.addresses import is_loopback, network_address, page_address
from yarnsheets.serve.settings import add_share_folder, settings

if TYPE_CHECKING:
    import asyncio
    import socket
    from collections.abc import Callable
    from pathlib import Path

STOP_SIGNALS = (signal.SIGINT, signal.SIGTERM)


def serve(folder: Path, page: str, sockets: list[socket.socket], *, open_browser: bool) -> None:
    """Serve a folder of worksheets on listening sockets until told to stop."""
    add_share_folder()
    host, port = sockets[0].getsockname()[:2]
    config = settings()
    config.Voila.root_dir = str(folder)
    # On loopback, refuse requests under any other host name: a web site could have its own name
    # point at this machine and so pass for the same origin.
    config.Voila.tornado_settings["allow_remote_access"] = not is_loopback(host)

    # Voila's notebook runner logs a failing cell to the one application known as `instance`.
    server = WorksheetServer.instance(config=config)
    server.initialize([])
    for chatter in ("tornado.access", "tornado.general"):
        logging.getLogger(chatter).setLevel(logging.ERROR)

    def ready() -> None:
        address = page_address(host, port, page)
        say(f"The worksheets are at {address} (Ctrl-C stops them).")
        if not is_loopback(host):
            others = page_address(network_address(host), port)
            say(
                f"Anyone on the network can open them, at {others}, and use this machine to work "
                "them out. There is no password and no encryption: do this on a network you trust."
            )
        if open_browser:
            threading.Thread(target=open_in_browser, args=[address], daemon=True).start()

    server.sockets = sockets
    server.ready = ready
    server.start()


class WorksheetServer(Voila):  # type: ignore[misc]  # Voila has no type hints
    """A Voila that listens on sockets it is given and stops at the first Ctrl-C."""

    sockets: list[socket.socket]
    ready: Callable[[], None]

    def init_handlers(self) -> list[Any]:
        """Answer every address that Voila does not know with our own page."""
        unknown = (r".*", NoSuchPage, {"voila_configuration": self.voila_configuration})
        return [*super().init_handlers(), unknown]

    def listen(self) -> None:
        """Serve until told to stop, then stop every kernel."""
        HTTPServer(self.app).add_sockets(self.sockets)
        self.loop = IOLoop.current().asyncio_loop  # type: ignore[attr-defined]
        self.loop.set_exception_handler(pass_over_closed_pages)
        for number in STOP_SIGNALS:
            signal.signal(number, self._handle_signal_stop)
        self.ready()
        try:
            self.loop.run_forever()
        finally:
            self.stop()

    def _handle_signal_stop(self, _signal: int, _frame: object) -> None:
        self.loop.call_soon_threadsafe(self.loop.stop)  # wakes the loop, which may be idle

    def stop(self) -> None:
        """Stop every kernel at once; a second Ctrl-C meanwhile changes nothing."""
        for number in STOP_SIGNALS:
            signal.signal(number, signal.SIG_IGN)
        run_sync(self.kernel_manager.shutdown_all)(now=True)
        shutil.rmtree(self.connection_dir, ignore_errors=True)


def pass_over_closed_pages(loop: asyncio.AbstractEventLoop, context: dict[str, Any]) -> None:
    """Say nothing of a page that was closed while something was on its way to it."""
    if not isinstance(context.get("exception"), WebSocketClosedError):
        loop.default_exception_handler(context)


class NoSuchPage(BaseVoilaHandler):  # type: ignore[misc]
    """The page that leads back to the list."""

    def get(self) -> None:
        """Answer with our page for the status 404."""
        raise HTTPError(HTTPStatus.NOT_FOUND)


def open_in_browser(address: str) -> None:
    """Open the browser, or say how to do so by hand."""
    if not webbrowser.open(address):
        say(f"No web browser was found. Open this address in one by hand: {address}")


def say(words: str) -> None:
    """Print a line at once, also where the output is collected in a file."""
    print(words, flush=True)

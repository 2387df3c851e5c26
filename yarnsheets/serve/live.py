"""With `--live`: a kernel behind each page whose worksheet cannot do without, by Voila."""

from __future__ import annotations

import asyncio
import contextlib
import shutil
from http import HTTPStatus
from typing import TYPE_CHECKING, Any

from jupyter_server.base.handlers import FileFindHandler
from jupyter_server.services.kernels.handlers import KernelHandler
from jupyterlab_server.themes_handler import ThemesHandler
from tornado.web import HTTPError
from tornado.websocket import WebSocketClosedError
from voila.app import Voila
from voila.shutdown_kernel_handler import VoilaShutdownKernelHandler
from voila.static_file_handler import MultiStaticFileHandler, TemplateStaticFileHandler
from voila.tornado.handler import TornadoVoilaHandler
from voila.tornado.kernel_websocket_handler import VoilaKernelWebsocketHandler

from yarnsheets.serve.handlers import KeptPage, headers, send
from yarnsheets.serve.settings import add_share_folder, settings

if TYPE_CHECKING:
    from collections.abc import AsyncIterator, Callable

    from tornado.web import Application

    from yarnsheets.serve.handlers import Guests
    from yarnsheets.serve.pages import Pages

# Of all that Voila answers, what a page with a kernel asks for: not its lists, nor any file.
BEHIND_A_PAGE = {
    FileFindHandler,
    KernelHandler,
    MultiStaticFileHandler,
    TemplateStaticFileHandler,
    ThemesHandler,
    VoilaKernelWebsocketHandler,
    VoilaShutdownKernelHandler,
}


@contextlib.asynccontextmanager
async def kernels_for(
    pages: Pages, answered: list[Any], guests: Guests
) -> AsyncIterator[Application]:
    """Answer with kernels too, and stop them all at the end."""
    asyncio.get_running_loop().set_exception_handler(pass_over_closed_pages)
    add_share_folder()
    config = settings(guests.framing)
    config.Voila.root_dir = str(pages.folder)
    # As for every other answer: no other host name where only this machine is served.
    config.Voila.tornado_settings["allow_remote_access"] = not guests.local
    # Voila's notebook runner logs a failing cell to the one application known as `instance`.
    voila = LiveServer.instance(config=config)
    voila.pages, voila.answered, voila.guests = pages, answered, guests
    voila.initialize([])
    voila.start()
    try:
        yield voila.app
    finally:
        await voila.kernel_manager.shutdown_all(now=True)
        shutil.rmtree(voila.connection_dir, ignore_errors=True)


class LiveServer(Voila):  # type: ignore[misc]  # Voila has no type hints
    """Voila, with our answers before its own and no other page at all."""

    pages: Pages
    answered: list[Any]
    guests: Guests

    def init_handlers(self) -> list[Any]:
        """Return the addresses there are."""
        known = {
            "template_paths": self.template_paths,
            "config": self.config,
            "voila_configuration": self.voila_configuration,
            "pages": self.pages,
            "guests": self.guests,
        }
        page = (r"/voila/render/(.+)\.ipynb", LivePage, known)
        *ours, unknown = self.answered
        ours = [page if answer[1] is KeptPage else answer for answer in ours]
        voilas = [plainly(*each) for each in super().init_handlers() if each[1] in BEHIND_A_PAGE]
        return [*ours, *voilas, unknown]

    def listen(self) -> None:
        """Leave the sockets to our server."""


class Plainly:
    """Says what went wrong by its number alone.

    Jupyter's own page of an error asks for files that are not served: of a page that calls for its
    kernel while all kernels are being stopped, a long complaint would be printed.
    """

    finish: Callable[[], object]

    def write_error(self, status_code: int, **_: Any) -> None:  # noqa: ARG002
        """End the answer."""
        self.finish()


def plainly(path: str, handler: type, *known: Any) -> tuple[Any, ...]:
    """Return one of Voila's answers, which says errors plainly."""
    return (path, type(handler.__name__, (Plainly, handler), {}), *known)


class LivePage(TornadoVoilaHandler):  # type: ignore[misc]
    """A worksheet: kept, or with a kernel if it needs one."""

    def initialize(self, *, pages: Pages, guests: Guests, **known: Any) -> None:
        """Take where the pages are, and who may see them."""
        super().initialize(**known)
        self.pages, self.guests = pages, guests

    async def get(self, name: str) -> None:
        """Answer with a page."""
        page = await self.pages.get(name)
        if page is None:
            raise HTTPError(HTTPStatus.NOT_FOUND)
        if page.needs_kernel:
            await super().get(f"{name}.ipynb")
            return
        for header, value in headers(self.guests).items():
            self.set_header(header, value)
        send(self, page.packed)


def pass_over_closed_pages(loop: asyncio.AbstractEventLoop, context: dict[str, Any]) -> None:
    """Say nothing of a page that was closed while something was on its way to it."""
    if not isinstance(context.get("exception"), WebSocketClosedError):
        loop.default_exception_handler(context)

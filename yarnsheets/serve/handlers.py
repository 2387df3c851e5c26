"""What a browser is answered: the list, the pages and their files, and nothing else.

Nothing here starts or reaches a kernel, takes anything in, or opens a file by a visitor's words.
"""

from __future__ import annotations

import gzip
import ipaddress
from http import HTTPStatus
from typing import TYPE_CHECKING, Any, NamedTuple

from tornado.httputil import split_host_and_port
from tornado.web import HTTPError, RequestHandler

from yarnsheets.serve import files
from yarnsheets.serve.look import render
from yarnsheets.serve.worksheets import in_parts, worksheets_folder, worksheets_in

if TYPE_CHECKING:
    from collections.abc import Awaitable

    from yarnsheets.classroom.room import Room
    from yarnsheets.serve.pages import Pages

# A page that is kept has all it needs and talks to nobody, so the browser need not let it. Vega
# compiles its expressions with `Function`, hence unsafe-eval; a sheet is an inline script.
CONTENT_SECURITY_POLICY = "; ".join(
    [
        "default-src 'none'",
        "script-src 'self' 'unsafe-inline' 'unsafe-eval'",
        "style-src 'self' 'unsafe-inline'",
        "img-src 'self' data: blob:",
        "font-src data:",
        "media-src data: blob:",
        "base-uri 'none'",
        "form-action 'none'",
    ]
)
HEADERS = {
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
    "Cache-Control": "no-cache",  # browsers keep it, but ask each time whether it is the same
}
A_YEAR = 365 * 24 * 60 * 60  # seconds


class Guests(NamedTuple):
    """Who may ask, and who may show the answers."""

    local: bool  # this machine alone
    framed_by: tuple[str, ...] = ()  # web sites that may have our pages inside theirs

    @property
    def framing(self) -> str:
        """The directive that tells browsers so."""
        return " ".join(["frame-ancestors 'self'", *self.framed_by])


class Answer(RequestHandler):
    """What all answers share."""

    SUPPORTED_METHODS = ("GET", "HEAD")

    def __init__(self, *asked: Any, pages: Pages, guests: Guests) -> None:
        # taken first: the headers depend on them
        self.pages, self.guests = pages, guests
        super().__init__(*asked)

    def set_default_headers(self) -> None:
        """Tell the browser what it may do with the page, which is little."""
        for name, value in headers(self.guests).items():
            self.set_header(name, value)
        self.clear_header("Server")

    def prepare(self) -> None:
        """Refuse other host names where only this machine is served.

        A web site could have its own name point at this machine and so pass for the same origin.
        """
        if self.guests.local and not is_this_machine(self.request.host):
            raise HTTPError(HTTPStatus.FORBIDDEN)

    def head(self, *path: str) -> Awaitable[None] | None:
        """Answer as to GET; the server leaves the body out."""
        return self.get(*path)

    def write_error(self, status_code: int, **_: Any) -> None:
        """Say in words what went wrong."""
        missing = status_code == HTTPStatus.NOT_FOUND
        self.finish(render("404.html" if missing else "error.html", status_code=status_code))


class NoSuchPage(Answer):
    """The page that leads back to the list."""

    def prepare(self) -> None:
        """Answer with our page for the status 404."""
        super().prepare()
        raise HTTPError(HTTPStatus.NOT_FOUND)


class ListOfWorksheets(Answer):
    """The page to start from."""

    def __init__(self, *asked: Any, room: Room | None, **known: Any) -> None:
        self.word = room.word if room else ""
        super().__init__(*asked, **known)

    def get(self) -> None:
        """Answer with the list as it is now."""
        parts = in_parts(worksheets_in(self.pages.folder))
        ours = self.pages.folder == worksheets_folder().resolve()  # which the plan is made of
        self.finish(render("tree.html", parts=parts, word=self.word, teacher=ours))


class ForTheTeacher(Answer):
    """The plan of an hour."""

    def get(self) -> None:
        """Answer with the page."""
        self.finish(render("teacher.html"))


class KeptPage(Answer):
    """A worksheet."""

    async def get(self, name: str) -> None:
        """Answer with a page, which may have to be made first."""
        page = await self.pages.get(name)
        if page is None:
            raise HTTPError(HTTPStatus.NOT_FOUND)
        send(self, page.packed)


class SharedFile(Answer):
    """A file that pages share: at an address with its hash, so that it is asked for once."""

    def get(self, of_content: str, name: str) -> None:
        """Answer with the file, if it is the one meant."""
        found = files.file(name)
        if found is None or found.hash != of_content:
            raise HTTPError(HTTPStatus.NOT_FOUND)
        self.set_header("Content-Type", found.type)
        self.set_header("Cache-Control", f"public, max-age={A_YEAR}, immutable")
        send(self, found.packed)


def send(handler: RequestHandler, packed: bytes) -> None:
    """Send a text, unpacked for those who do not take it packed: no browser."""
    handler.set_header("Vary", "Accept-Encoding")
    if "gzip" in handler.request.headers.get("Accept-Encoding", ""):
        handler.set_header("Content-Encoding", "gzip")
        handler.finish(packed)
    else:
        handler.finish(gzip.decompress(packed))


def headers(guests: Guests) -> dict[str, str]:
    """Return what goes with every page."""
    return HEADERS | {"Content-Security-Policy": f"{CONTENT_SECURITY_POLICY}; {guests.framing}"}


def answers(pages: Pages, guests: Guests, room: Room | None) -> list[Any]:
    """Return all addresses there are, and last what is answered at any other."""
    known = {"pages": pages, "guests": guests}
    in_class: list[Any] = []
    if room:
        from yarnsheets.classroom.answers import answers_in  # for a class alone

        in_class = answers_in(room, pages, guests)
    return [
        *in_class,
        (r"/(?:voila/tree/?)?", ListOfWorksheets, known | {"room": room}),
        (r"/teacher", ForTheTeacher, known),
        (r"/voila/render/(.+)\.ipynb", KeptPage, known),
        (r"/static/(\w+)/([\w.]+)", SharedFile, known),
        (r".*", NoSuchPage, known),
    ]


def is_this_machine(host: str) -> bool:
    """Tell whether a host as named in a request is this machine, whatever its port.

    >>> [is_this_machine(host) for host in ("localhost:8866", "127.0.0.1", "[::1]:80", "a.example")]
    [True, True, True, False]
    """
    name, _ = split_host_and_port(host.lower())
    if name == "localhost":
        return True
    try:
        return ipaddress.ip_address(name.strip("[]")).is_loopback
    except ValueError:
        return False

"""What phones and the projector are answered in a class."""

from __future__ import annotations

import asyncio
import json
from http import HTTPStatus
from typing import TYPE_CHECKING, Any

import segno
from tornado.iostream import StreamClosedError
from tornado.web import HTTPError

from yarnsheets.classroom.room import WORKSHEET, CannotTake, Room, Wrong
from yarnsheets.page import choices
from yarnsheets.serve.handlers import Answer, Guests, headers
from yarnsheets.serve.look import render, worksheet

if TYPE_CHECKING:
    from yarnsheets.serve.pages import Pages

MOST_WATCHING = 20  # projectors, and whoever else looks on
BREATH = 0.05  # seconds between two looks at the table, so that many cuts come as one

watching: set[object] = set()


class InClass(Answer):
    """What the answers of a class share: the room, and that their pages may ask it."""

    def __init__(self, *asked: Any, pages: Pages, guests: Guests, room: Room) -> None:
        self.room = room
        super().__init__(*asked, pages=pages, guests=guests)

    def set_default_headers(self) -> None:
        """Let the page ask this server, and nobody else."""
        super().set_default_headers()
        policy = headers(self.guests)["Content-Security-Policy"]
        self.set_header("Content-Security-Policy", f"{policy}; connect-src 'self'")

    def is_teacher(self) -> bool:
        """Tell whether it was asked on the machine that serves."""
        connection: Any = self.request.connection
        return bool(connection.stream.socket.getsockname()[0] == self.request.remote_ip)


class Phone(InClass):
    """The page on which a learner types a cut."""

    def get(self) -> None:
        """Answer with the page."""
        units = [(each.name, choices.label(each.units["short"])) for each in choices.MEASURES]
        self.finish(render("phone.html", word=self.room.word, units=units))


class Projector(InClass):
    """The page on which all see what has come."""

    async def get(self) -> None:
        """Answer with the worksheet of cuts, and how to get in."""
        content = await self.pages.content(WORKSHEET)
        if content is None:
            raise HTTPError(HTTPStatus.NOT_FOUND)
        address = f"{self.request.protocol}://{self.request.host}/{self.room.word}"
        told = {"cuts": f"/{self.room.word}/cuts", "isTeacher": self.is_teacher()}
        code = segno.make(address, micro=False).svg_inline(dark="#000", light="#fff", omitsize=True)
        path = self.pages.shelf.notebook(WORKSHEET)
        self.finish(
            worksheet(path, content, "room.html", address=address, code=code, told=json.dumps(told))
        )


class Cuts(InClass):
    """The table: taken from phones, told to whoever watches."""

    SUPPORTED_METHODS = ("GET", "POST")

    def post(self) -> None:
        """Take what a page of ours sends, and of no other site."""
        own = f"{self.request.protocol}://{self.request.host}"
        is_ours = self.request.headers.get("Origin") == own
        is_data = self.request.headers.get("Content-Type", "").startswith("application/json")
        if not (is_ours and is_data):
            raise HTTPError(HTTPStatus.FORBIDDEN)
        try:
            sent = json.loads(self.request.body)
        except ValueError:
            raise HTTPError(HTTPStatus.BAD_REQUEST) from None
        if not isinstance(sent, dict):
            raise HTTPError(HTTPStatus.BAD_REQUEST)
        self.finish(self.teach(sent) if "do" in sent else self.take(sent))

    def take(self, sent: dict[str, Any]) -> dict[str, Any]:
        """Take a cut; say that it came, or why not."""
        try:
            return {"said": self.room.take(sent)}
        except Wrong as reason:
            return {"wrong": reason.fields}
        except CannotTake as reason:
            return {"later": str(reason)}

    def teach(self, sent: dict[str, Any]) -> dict[str, Any]:
        """Do what the teacher alone may."""
        if not self.is_teacher():
            raise HTTPError(HTTPStatus.FORBIDDEN)
        if sent["do"] == "clear":
            self.room.clear()
        elif sent["do"] == "leave out" and isinstance(sent.get("number"), int):
            self.room.leave_out(sent["number"])
        else:
            raise HTTPError(HTTPStatus.BAD_REQUEST)
        return {}

    async def get(self) -> None:
        """Tell what there is, and again whenever it changes, for as long as somebody listens."""
        if len(watching) >= MOST_WATCHING:
            raise HTTPError(HTTPStatus.SERVICE_UNAVAILABLE)
        self.set_header("Content-Type", "text/event-stream")
        self.set_header("Cache-Control", "no-store")
        watching.add(self)
        told = None
        try:
            while self in watching:
                if self.room.version != told:
                    told = self.room.version
                    self.write(f"data: {json.dumps(self.room.seen())}\n\n")
                    await self.flush()
                await asyncio.sleep(BREATH)
        except (StreamClosedError, asyncio.CancelledError):
            pass  # whoever listened has gone, or the class is over
        finally:
            watching.discard(self)

    def on_connection_close(self) -> None:
        """Stop telling somebody who has gone."""
        watching.discard(self)


def answers_in(room: Room, pages: Pages, guests: Guests) -> list[Any]:
    """Return the addresses of a class."""
    known = {"pages": pages, "guests": guests, "room": room}
    return [
        (rf"/{room.word}/?", Phone, known),
        (rf"/{room.word}/all", Projector, known),
        (rf"/{room.word}/cuts", Cuts, known),
    ]

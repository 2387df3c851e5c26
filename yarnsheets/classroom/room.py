"""The cuts of a class, as long as the class lasts."""

from __future__ import annotations

import secrets
import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Any, NamedTuple

from yarnsheets.page import choices
from yarnsheets.page.reading import read_number
from yarnsheets.page.text import fill
from yarnsheets.sheets.what_do_our_cuts_say import WhatDoOurCutsSay

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

WORKSHEET = "what-do-our-cuts-say"

MOST_CUTS = 500
MOST_LETTERS = 40  # of a name, or of what is typed as a number
LONGEST = 6 * 60 * 60  # seconds without a cut, and all are forgotten
AT_ONCE, EACH_SECOND = 200, 50  # cuts that may come: a class is slower, and a flood is refused

# Short, told apart when they are read out, and all of the trade.
WORDS = (
    *("bobbin", "carder", "distaff", "fleece", "flyer", "heddle", "indigo", "kemp", "linen"),
    *("lock", "madder", "merino", "mohair", "nep", "niddy", "noil", "orifice", "ply", "roving"),
    *("rolag", "shuttle", "skein", "sliver", "spindle", "staple", "swift", "tow", "treadle"),
    *("warp", "weft", "weld", "whorl", "woad", "wool"),
)

BALANCE, CUT = WhatDoOurCutsSay.cuts.parts


class Wrong(Exception):  # noqa: N818  # the words say what is wrong with which field
    """What of a cut cannot be read, in the reader's words, by the name of its field."""

    def __init__(self, fields: Mapping[str, str]) -> None:
        super().__init__(*fields.values())
        self.fields = dict(fields)


class CannotTake(Exception):  # noqa: N818
    """Why no more is taken just now."""


class Cut(NamedTuple):
    """A cut that has arrived."""

    number: int
    balance: float
    inches: float
    said: str
    name: str


@dataclass
class Room:
    """The cuts of one class. `version` is another whenever they are."""

    word: str = field(default_factory=lambda: secrets.choice(WORDS))
    now: Callable[[], float] = time.monotonic
    cuts: dict[str, Cut] = field(default_factory=dict)  # by what its phone calls it
    version: int = 0
    taken: int = 0
    last: float = 0.0
    allowed: float = AT_ONCE
    asked: float = 0.0

    def take(self, sent: Mapping[str, Any]) -> str:
        """Take a cut as a phone sent it; give what the phone is told.

        The same cut sent again changes nothing: the answer to it may have been lost.
        """
        texts = {name: str(sent.get(name, ""))[:MOST_LETTERS] for name in sent}
        shown = choices.shown(_measure(texts.get("measure", "")), choices.GRIST_UNITS[0])
        read = {
            name: read_number(asked.describe(), texts.get(name, ""), shown)
            for name, asked in (("balance", BALANCE), ("cut", CUT))
        }
        if wrong := {name: words for name, (_, words) in read.items() if words}:
            raise Wrong(wrong)
        balance, inches = (float(read[name][0] or 0.0) for name in ("balance", "cut"))
        self._forget_if_old()
        own = texts.get("id", "")
        before = self.cuts.get(own)
        if before is None:
            self._allow()
            self.taken += 1
        said = fill("{cut} on balance {balance}", *_known(balance, inches), shown)
        number = before.number if before else self.taken
        self.cuts[own] = Cut(number, balance, inches, said, texts.get("name", "").strip())
        self.last = self.now()
        self.version += 1
        return f"Arrived: {said}. It is cut {number} of the class."

    def leave_out(self, number: int) -> None:
        """Take a cut away; the teacher has seen that it is a slip."""
        self.cuts = {own: cut for own, cut in self.cuts.items() if cut.number != number}
        self.version += 1

    def clear(self) -> None:
        """Begin anew."""
        self.cuts = {}
        self.taken = 0
        self.version += 1

    def seen(self) -> dict[str, Any]:
        """Return what the projector shows: the sheet's own input, and who sent what."""
        self._forget_if_old()
        cuts = list(self.cuts.values())
        return {
            "cuts": [[cut.balance, cut.inches] for cut in cuts],
            "arrived": [
                {"number": cut.number, "said": cut.said, "name": cut.name} for cut in cuts[::-1]
            ],
        }

    def _allow(self) -> None:
        if len(self.cuts) >= MOST_CUTS:
            msg = f"The class has {MOST_CUTS} cuts, and no room for more. Ask your teacher."
            raise CannotTake(msg)
        now = self.now()
        self.allowed = min(AT_ONCE, self.allowed + (now - self.asked) * EACH_SECOND)
        self.asked = now
        if self.allowed < 1:
            msg = "Too many cuts come at once. Yours is kept here and sent again."
            raise CannotTake(msg)
        self.allowed -= 1

    def _forget_if_old(self) -> None:
        if self.cuts and self.now() - self.last > LONGEST:
            self.clear()


def _measure(name: str) -> choices.Measure:
    return next((each for each in choices.MEASURES if each.name == name), choices.MEASURES[0])


def _known(balance: float, inches: float) -> tuple[dict[str, float], dict[str, str]]:
    return {"balance": balance, "cut": inches}, {"balance": "number", "cut": "short"}

"""What a teacher may wish for a handout, checked before anything is made."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import PurePosixPath
from typing import TYPE_CHECKING
from urllib.parse import parse_qsl, unquote, urlencode, urlsplit

from yarnsheets.handout.folder import CannotMake
from yarnsheets.page import choices

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

CHOICE = ("measure", "grist_unit")  # what a link says of units

# The parts of a page that can be left out, each by the elements it is made of. Any other name is
# an input's, as a link has it.
PARTS = {
    "text": ".prose > :not(h1)",
    "charts": ":is(.ys-charts, .ys-chart)",
    "arithmetic": ".ys-worked",
    "ways-on": ".ys-onward",
    "buttons": ".ys-keep",
    "units": ".ys-units",
}


@dataclass(frozen=True)
class Wishes:
    """How a handout is to be."""

    title: str = ""
    note: str = ""
    contact: str = ""
    start: dict[str, str] = field(default_factory=dict)  # a link's own part, by worksheet
    choice: dict[str, str] = field(default_factory=dict)  # units
    hide: tuple[str, ...] = ()
    shared: bool = False
    strict: bool = False

    @property
    def contact_address(self) -> str:
        """Where the contact leads: to a page, or to mail; nowhere if it is neither."""
        if urlsplit(self.contact).scheme in {"http", "https", "mailto"}:
            return self.contact
        return f"mailto:{self.contact}" if "@" in self.contact and " " not in self.contact else ""

    @property
    def style(self) -> str:
        """The style that hides what is not for today."""
        hidden = [PARTS.get(name, f'.ys-input[data-name="{name}"]') for name in self.hide]
        return "".join(f"{each}{{display:none!important}}" for each in hidden)


def start_of(links: Iterable[str], worksheets: Sequence[str]) -> dict[str, str]:
    """Return the numbers to start from, by worksheet.

    >>> start_of(["http://127.0.0.1:8866/voila/render/how-many-yards.ipynb#grist=900&measure=x"],
    ...          ["how-many-yards"])
    {'how-many-yards': 'grist=900'}
    """
    start = {}
    for link in links:
        parts = urlsplit(link)
        name = PurePosixPath(unquote(parts.path)).stem
        numbers = [each for each in parse_qsl(parts.fragment) if each[0] not in CHOICE]
        if not numbers:
            msg = (
                f"The link {link} has no numbers in it. Press “Copy a link to these numbers” on a "
                "worksheet and paste what you get, in quotation marks."
            )
            raise CannotMake(msg)
        if name not in worksheets:
            msg = f"The link is of the worksheet {name}, which is not part of this handout."
            raise CannotMake(msg)
        start[name] = urlencode(numbers)
    return start


def check_hidden(hide: Iterable[str], contents: Mapping[str, str]) -> None:
    """Refuse to hide what is on no page."""
    for name in hide:
        # an input is known by the description of its sheet, which is part of the page
        if name not in PARTS and not any(f'"{name}": {{' in each for each in contents.values()):
            msg = (
                f"There is nothing called “{name}” to hide. There are: {', '.join(PARTS)}, and the "
                "inputs, by their names in a link that was copied from a worksheet."
            )
            raise CannotMake(msg)


def units_of(measure: str | None, grist: str | None) -> dict[str, str]:
    """Return the units to start with, given as the page names them.

    >>> units_of("metres, grams", None)
    {'measure': 'metres, grams', 'grist_unit': 'm/100g'}
    >>> units_of(None, "tex")
    {'grist_unit': 'tex'}
    """
    chosen = {}
    if measure is not None:
        measures = {each.name: each for each in choices.MEASURES}
        if measure not in measures:
            raise CannotMake(_none_of("units", measure, measures))
        chosen = {"measure": measure, "grist_unit": measures[measure].grist}
    if grist is not None:
        units = {each.name: each.unit for each in choices.GRIST_UNITS}
        if grist not in (*units, *units.values()):
            raise CannotMake(_none_of("grist", grist, units))
        chosen["grist_unit"] = units.get(grist, grist)
    return chosen


def _none_of(option: str, given: str, names: Iterable[str]) -> str:
    there_are = "; ".join(f'"{name}"' for name in names)
    return f"There is nothing called “{given}” for --{option}. There are: {there_are}."

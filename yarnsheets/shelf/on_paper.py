"""Tags for skeins, laid out on paper by measure, as one page to open and print."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import Any, NamedTuple

import pandas as pd
import segno
from jinja2 import Environment, FileSystemLoader

from yarnsheets.page import choices
from yarnsheets.page.text import Shown, fill
from yarnsheets.shelf.evidence import Reckoned, Skein
from yarnsheets.shelf.tags import OWN_WORDS, tag

_MOST_TAGS = 2000
_PADDING = 2.5  # mm, round what a tag says
_MARGIN = 5.0  # mm, that printers leave white (common practice, no source)
_LEAST = 50.0, 25.0  # mm: a tag that still holds its lines in letters that can be read
_FINEST = 0.35  # mm, of a code's squares that phones read well (common practice, no source)
_QUIET = 4  # squares left white round a code (ISO/IEC 18004)
_TWO_LINES = 30.0  # mm: from this height on a tag has room for a name of two lines


@dataclass(frozen=True)
class Paper:
    """A page of tags, in millimetres: its size, its tags, and where they stand.

    `left` and `top` lead to the first tag, `between` from one to the next, across and down.

    Raises
    ------
    ValueError
        If the tags do not fit on the page, print in its margin, or are too small.
    """

    width: float
    height: float
    across: int
    down: int
    tag: tuple[float, float]
    left: float
    top: float
    between: tuple[float, float] = (0.0, 0.0)

    def __post_init__(self) -> None:
        """Refuse what cannot be printed."""
        if self.across < 1 or self.down < 1 or min(self.between) < 0:
            msg = "A page has at least one tag across and one down, and none on another."
            raise ValueError(msg)
        if self.tag[0] < _LEAST[0] or self.tag[1] < _LEAST[1]:
            msg = (
                f"A tag of {self.tag[0]:g} × {self.tag[1]:g} mm is too small for what it says:"
                f" {_LEAST[0]:g} × {_LEAST[1]:g} mm is the least."
            )
            raise ValueError(msg)
        right, bottom = self.corner(self.across * self.down - 1)
        right, bottom = right + self.tag[0], bottom + self.tag[1]
        white = min(self.left, self.top, self.width - right, self.height - bottom) + _PADDING
        if white < _MARGIN - 1e-9:  # a sum's last bits
            msg = (
                f"What the tags say comes within {white:.1f} mm of the edge, where printers print"
                f" nothing: leave {_MARGIN - _PADDING:g} mm round all tags."
            )
            raise ValueError(msg)

    def corner(self, at: int) -> tuple[float, float]:
        """Give where a tag of the page stands: row by row, from the left and from the top."""
        down, across = divmod(at, self.across)
        return (
            self.left + across * (self.tag[0] + self.between[0]),
            self.top + down * (self.tag[1] + self.between[1]),
        )


# Common sheets of labels, by measure; on plain paper they are cut out.
PAPERS: Mapping[str, Paper] = {
    "A4": Paper(210, 297, 3, 8, (63.5, 33.9), 7.25, 12.9, (2.5, 0)),
    "Letter": Paper(215.9, 279.4, 3, 10, (66.7, 25.4), 4.75, 12.7, (3.15, 0)),
}


class _Code(NamedTuple):
    """A code: its drawing, and how large it is, in squares and in millimetres."""

    drawing: str
    size: float


def labels(
    skeins: pd.DataFrame,
    *,
    paper: str | Paper = "A4",
    address: str = "",
    measure: str = choices.MEASURES[0].name,
    day: date | None = None,
    lines: bool = False,
) -> str:
    """Write a tag for each skein, on pages to print: HTML, complete in one text.

    A tag has the skein's name, fibre, colour, yards with their range and what they are known by,
    weight, grist, wraps and the day. Print at 100 %, without margins of the browser's own.

    Parameters
    ----------
    skeins : DataFrame
        As `reckon` gives it.
    paper : str or Paper
        "A4" has 3 × 8 tags of 63.5 × 33.9 mm, "Letter" 3 × 10 of 66.7 × 25.4 mm; or your own.
    address : str
        Where your page of the worksheet "How many yards is this?" is, as in a browser. Each tag
        then has a code for phones that opens it with the skein's grist and weight.
    measure : str
        "yards, ounces" or "metres, grams".
    day : date
        Day on the tags; today if it is left out.
    lines : bool
        Whether to draw a line round each tag, to cut along on plain paper.

    Returns
    -------
    str
        The pages.

    Raises
    ------
    ValueError
        If the paper is not known, the skeins are not reckoned, none or more than 2,000, or the
        address is none or too long for a code.

    Examples
    --------
    >>> from yarnsheets import shelf
    >>> text = labels(shelf.reckon(shelf.demo()), paper="Letter")
    >>> text.count('class="tag"'), text.count("<svg")
    (9, 0)
    """
    page = _paper(paper)
    if "yards" not in skeins:
        msg = "The skeins have no yards yet: give them as labels(reckon(skeins))."
        raise ValueError(msg)
    if not 1 <= len(skeins) <= _MOST_TAGS:
        msg = f"There are {len(skeins):,} skeins: give 1 to {_MOST_TAGS:,}, as skeins.iloc[:100]."
        raise ValueError(msg)
    if address and not address.startswith(("https://", "http://")):
        msg = f"“{address}” is no address of a page: begin it with https:// or http://."
        raise ValueError(msg)
    chosen = next(each for each in choices.MEASURES if each.name == measure)
    shown = choices.shown(chosen, next(g for g in choices.GRIST_UNITS if g.unit == chosen.grist))
    tags = [_tag(row, page, address.partition("#")[0], shown) for row in skeins.to_dict("records")]
    count = page.across * page.down
    environment = Environment(loader=FileSystemLoader(Path(__file__).parent), autoescape=True)
    return environment.get_template("on_paper.html.j2").render(
        paper=page,
        padding=_PADDING,
        is_low=page.tag[1] < _TWO_LINES,
        lines=lines,
        day=_day(day or datetime.now().astimezone().date()),
        pages=[tags[start : start + count] for start in range(0, len(tags), count)],
    )


def _paper(paper: str | Paper) -> Paper:
    if isinstance(paper, Paper):
        return paper
    if paper not in PAPERS:
        msg = f"There is no paper “{paper}”: take {' or '.join(PAPERS)}, or a Paper of your own."
        raise ValueError(msg)
    return PAPERS[paper]


def _day(day: date) -> str:
    """Write a day without the words of the machine's own language."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def _tag(row: Mapping[Any, Any], paper: Paper, address: str, shown: Shown) -> dict[str, Any]:
    """Give what a tag says, filled, with its code."""
    cells = {name: cell for name, cell in row.items() if not isinstance(cell, list)}
    known = {name: cell for name, cell in cells.items() if not pd.isna(cell)}
    name, fibre, colour = (str(known.get(each, "")) for each in ("name", "fibre", "colour"))
    weight, wraps = (float(known.get(each, math.nan)) for each in ("weight", "wraps"))
    found = None
    if "yards" in known:
        yards = (row["yards"], row["low"], row["high"], row["half"], row["grist"])
        found = Reckoned(row["evidence"], *yards, row["disputed"])
    said = tag(Skein(name, fibre, colour, weight, wraps), found)
    filled = {
        line: text if line in OWN_WORDS else fill(text, {}, {}, shown)
        for line, text in said.items()
    }
    has_code = bool(address and said["link"])
    return filled | {"code": _code(f"{address}#{said['link']}", paper) if has_code else None}


def _code(link: str, paper: Paper) -> _Code:
    """Draw a code as large as a tag has room for; refuse one too fine to be read."""
    code = segno.make(link, micro=False)
    room = min(paper.tag[1] - 2 * _PADDING, paper.tag[0] * 0.36)
    squares = code.symbol_size(border=_QUIET)[0]
    if room / squares < _FINEST:
        msg = f"The address is too long for a code of {room:.0f} mm: give a shorter one. {link}"
        raise ValueError(msg)
    return _Code(code.svg_inline(border=_QUIET, omitsize=True), room)

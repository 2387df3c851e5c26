"""A table that the reader fills: typed, pasted from a spreadsheet, or read from a file.

Its columns are inputs themselves, and a cell is read by the same rules as a box. Below are the
rules for a whole table: how text falls into cells, and which column a heading means.
"""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

import traitlets

from yarnsheets.page.inputs import Asked, Input, Readings
from yarnsheets.page.reading import Described, read_lines, read_number, unit_named, written
from yarnsheets.page.text import Line, Shown

# What stands in a cell for something that is not known.
_MISSING = ("", "-", "–", "—", "?", "n/a", "na", "none", "unknown", "not known")

_MARK = "\ufeff"  # that some programs put before a text
_QUOTED = re.compile('"[^"]*"')
_BRACKETS = re.compile(r"[(\[][^)\]]*[)\]]")
_IN_BRACKETS = re.compile(r"[^(\[]*[(\[]([^)\]]*)[)\]](?:.|\n)*")
_NO_LETTER = re.compile(r"""[^a-z0-9%"\u2033]+""")


@dataclass(frozen=True)
class Beside:
    """What the page writes beside each row: of the same row of a table that the sheet found.

    `columns` gives, by heading, the lines that are said there; `dimensions` those of its numbers.
    """

    table: str
    columns: Mapping[str, tuple[Line, ...]]
    dimensions: Mapping[str, str]


class Rows(Asked, traitlets.List[Any]):
    """Rows of cells, a column an input: a number or none, several numbers, or words.

    `called` has other words for a column, as a spreadsheet's heading may have them. `first` names
    the columns that are always shown; the page shows another when it holds something.
    """

    kind = "rows"
    dimension = "rows"

    def __init__(
        self,
        title: str,
        columns: Mapping[str, Asked],
        rows: Sequence[Mapping[str, Any]],
        *,
        called: Mapping[str, Sequence[str]],
        first: Sequence[str],
        beside: Beside,
        most: int,
        measure: str,
    ) -> None:
        self.columns = columns
        self.called = called
        self.first = first
        self.beside = beside
        self.most = most
        self.rows = [self.row(row) for row in rows]
        super().__init__(default_value=self.rows, help=title)
        self.tell(title, measure)

    def validate(self, obj: Any, value: Any) -> list[list[Any]]:
        """Take rows as lists of cells or by column; refuse one that cannot be, in words."""
        rows = [self.row(row) for row in super().validate(obj, value) or ()]
        if len(rows) > self.most:
            msg = f"{self.title}: {len(rows):,} rows, and {self.most:,} are the most. Take fewer."
            raise traitlets.TraitError(msg)
        return rows

    def row(self, row: Any) -> list[Any]:
        """Give a row as a list of cells, from such a list or from cells by column."""
        cells = row
        if isinstance(row, Mapping):
            if unknown := row.keys() - self.columns.keys():
                msg = f"{self.title}: no column {', '.join(unknown)}. {', '.join(self.columns)}."
                raise traitlets.TraitError(msg)
            cells = [row.get(name) for name in self.columns]
        if len(cells) != len(self.columns):
            msg = f"{self.title}: a row has {len(cells)} cells, of {len(self.columns)} columns."
            raise traitlets.TraitError(msg)
        return [_cell(each, cell) for each, cell in zip(self.columns.values(), cells, strict=True)]

    def describe(self) -> dict[str, Any]:
        """Describe the input as the page reads it."""
        columns = [
            {**each.describe(), "name": name, "called": [each.title, *self.called.get(name, ())]}
            for name, each in self.columns.items()
        ]
        return super().describe() | {
            "default": self.rows,
            "columns": columns,
            "first": self.first,
            "beside": vars(self.beside),
            "most": self.most,
        }


def _cell(column: Asked, cell: Any) -> Any:
    """Check a cell by its column; what is missing is none, no numbers, or no words."""
    if isinstance(column, Input):
        if cell is None or cell != cell:  # pandas has no number for what is missing
            return None
        column.refuse(float(cell))
        return float(cell)
    if isinstance(column, Readings):
        numbers = [float(number) for number in cell or ()]
        for number in numbers:
            column.refuse(number)
        return numbers
    return "" if cell is None else str(cell)


def read_table(text: str) -> list[list[str]]:
    r"""Read text into rows of cells, parted by tabs, semicolons or commas, with or without quotes.

    What parts the cells is what parts the first line: its tabs, or else the more of the two. A
    quoted cell may hold any sign, and its own quotes twice (RFC 4180).

    >>> read_table('name;weight\n"Marsh; grey";3,1\n')
    [['name', 'weight'], ['Marsh; grey', '3,1']]
    """
    text = text.replace(_MARK, "").replace("\r\n", "\n").replace("\r", "\n")
    between = parting(text)
    rows: list[list[str]] = []
    row: list[str] = []
    cell: list[str] = []
    is_quoted = False
    was_quote = False  # a quote in a quoted cell: its end, or the first of two
    for sign in text:
        if is_quoted and sign == '"' and not was_quote:
            was_quote = True
            continue
        if was_quote and sign != '"':
            is_quoted = False
        if is_quoted:
            cell.append(sign)
        elif sign == between:
            row.append("".join(cell))
            cell = []
        elif sign == "\n":
            rows.append([*row, "".join(cell)])
            row, cell = [], []
        elif sign == '"' and not "".join(cell).strip():
            is_quoted = True
            cell = []
        else:
            cell.append(sign)
        was_quote = False
    rows.append([*row, "".join(cell)])
    trimmed = [[each.strip() for each in one] for one in rows]
    return [one for one in trimmed if any(one)]


def parting(text: str) -> str:
    """Give what parts the cells: by the first line that has anything, outside its quotes."""
    lines = [line for line in text.split("\n") if line.strip()]
    plain = _QUOTED.sub("", lines[0]) if lines else ""
    if "\t" in plain:
        return "\t"
    return ";" if plain.count(";") >= plain.count(",") and ";" in plain else ","


def match_column(columns: Sequence[Described], heading: str, shown: Shown) -> tuple[int, str]:
    """Give the place of the column that a heading means, and the unit it names; -1 if none.

    The longest of a column's names that stands in the heading counts: "Sample weight (g)" is not
    a weight. What stands in brackets names a unit alone, unless there is nothing else.
    """
    heading_words = _words(heading)
    naming = _words(_BRACKETS.sub(" ", heading)) or heading_words
    best, length = -1, 0
    for at, column in enumerate(columns):
        for name in column["called"]:
            words = _words(name)
            if len("".join(words)) > length and _stands_in(words, naming):
                best, length = at, len("".join(words))
    if best < 0:
        return -1, ""
    bracketed = _IN_BRACKETS.fullmatch(heading)
    spelt = [*heading_words, *([bracketed[1]] if bracketed else [])]
    units = [unit_named(each, columns[best]["dimension"], shown) for each in spelt]
    # the last: of "length in metres" it is not the inches
    return best, next((unit for unit in reversed(units) if unit), "")


def has_headings(columns: Sequence[Described], cells: Sequence[str], shown: Shown) -> bool:
    """Tell whether a row is one of headings: some mean a column, and none begins with a digit."""
    begins_with_digit = any(cell[:1] in "0123456789" for cell in cells if cell)
    means = any(match_column(columns, cell, shown)[0] >= 0 for cell in cells)
    return means and not begins_with_digit


def _words(text: str) -> list[str]:
    return _NO_LETTER.sub(" ", text.lower()).split()


def _stands_in(words: list[str], heading: list[str]) -> bool:
    places = range(len(heading) - len(words) + 1)
    return any(heading[at : at + len(words)] == words for at in places)


def read_cell(column: Described, text: str, unit: str, shown: Shown) -> tuple[Any, str]:
    """Read a cell: what it holds in the sheet's own unit, or what is wrong with it.

    A number without a unit behind it is in `unit`, or in the one shown if that is empty. What is
    missing is none, no numbers, or no words.
    """
    text = text.replace(_MARK, "").strip()
    if column["kind"] == "words":
        return text, ""
    is_missing = text.lower() in _MISSING
    if unit:
        units = {**shown.units, column["dimension"]: unit}
        shown = Shown(units, shown.scales, shown.labels)
    if column["kind"] == "readings":
        if is_missing:
            return [], ""
        return read_lines(column, text, shown)
    if is_missing:
        return None, ""
    return read_number(column, text, shown)


def write_cell(column: Described, cell: Any, shown: Shown) -> str:
    """Write a cell as it stands in the table, in the unit shown."""
    if column["kind"] == "words":
        return str(cell)
    if column["kind"] == "readings":
        return "; ".join(written(column, each, shown) for each in cell)
    return "" if cell is None else written(column, cell, shown)


Rows.rules = (read_table, has_headings, match_column, read_cell, write_cell)

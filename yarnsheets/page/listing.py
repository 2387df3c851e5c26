"""A table of a sheet's as rows to read, and to print on a page of paper by themselves."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Column:
    """A column: its title, the field of the table's rows, and how that is written.

    `dimension` is as of an input; a "template" is filled, a "word" stands as it is, a "blank" is
    room to write in, a "day" is the one on which it is read, and a "link" is drawn as a code for
    phones. `unit` is one of its units, and none is the one chosen for the page; of a link, it is
    the worksheet that is handed the numbers.
    """

    title: str
    field: str
    dimension: str
    unit: str = ""


@dataclass(frozen=True)
class Listing:
    """The rows of a table with a title, which is a template; without rows it is not there.

    As `tags`, each row stands by itself, to be cut out.
    """

    table: str
    title: str
    columns: tuple[Column, ...]
    tags: bool = False

    def describe(self) -> dict[str, Any]:
        """Describe the rows as the page reads them."""
        return {**vars(self), "columns": [vars(column) for column in self.columns]}

"""A shelf in from a file or a data frame, by the reading rules of a page's table; and out again."""

import csv
import io
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd

from yarnsheets.page import choices
from yarnsheets.page.inputs import Asked, Input
from yarnsheets.page.reading import unit_named
from yarnsheets.page.rows import match_column, parting, read_cell
from yarnsheets.page.text import Shown, to_own, to_shown
from yarnsheets.shelf.columns import CALLED, COLUMNS
from yarnsheets.shelf.invented import SHELF

MOST_ROWS = 1_000_000
_SPREADSHEETS = (".xlsx", ".xlsm", ".ods")

_DESCRIBED = [
    {**each.describe(), "name": name, "called": [each.title, *CALLED.get(name, ())]}
    for name, each in COLUMNS.items()
]
_PLACES = {name: at for at, name in enumerate(COLUMNS)}


@dataclass(frozen=True)
class Shelf:
    """What was read, and what was not.

    Attributes
    ----------
    skeins : DataFrame
        A row a skein, in yards, pounds and inches; columns that are none of a shelf's as they were.
    headings : dict
        Of each heading the column that it was taken for, and the unit it names; both empty if it
        was left as it is. Look them over: `columns` of `read` puts them right.
    problems : DataFrame
        Cells that could not be read, by row and heading, and what to do. Their rows are there.
    """

    skeins: pd.DataFrame
    headings: Mapping[str, tuple[str, str]]
    problems: pd.DataFrame


def read(
    source: str | Path | pd.DataFrame,
    *,
    measure: str = choices.MEASURES[0].name,
    columns: Mapping[str, str] | None = None,
) -> Shelf:
    """Read a shelf from a file (CSV, TSV, XLSX, ODS) or a data frame.

    Parameters
    ----------
    source : str, Path or DataFrame
        The file, with headings in its first row, or a frame with such columns.
    measure : str
        What numbers without a unit are in, where their heading names none: "yards, ounces" or
        "metres, grams".
    columns : dict
        The column that a heading means, where it would be taken for another; empty for none.

    Returns
    -------
    Shelf
        Skeins, what the headings were taken for, and the cells that could not be read.

    Raises
    ------
    ValueError
        If no heading is known, or there are more than a million rows.

    Examples
    --------
    >>> shelf = read(pd.DataFrame({"Skein": ["Marsh"], "Weight (g)": ["88"], "WPI": ["x"]}))
    >>> round(float(shelf.skeins.weight[0]), 3), shelf.headings["Skein"]
    (0.194, ('name', ''))
    >>> print(shelf.problems.problem[0].partition(". ")[0])
    Row 1 (Marsh), WPI: “x” is not a number such as 12, 9.5 or 9 3/8
    """
    given = source if isinstance(source, pd.DataFrame) else _table(Path(source))
    if len(given) > MOST_ROWS:
        msg = f"There are {len(given):,} rows, and {MOST_ROWS:,} are the most. Read them in parts."
        raise ValueError(msg)
    chosen = next(each for each in choices.MEASURES if each.name == measure)
    shown = choices.shown(chosen, choices.GRIST_UNITS[0])
    headings = _matched(list(map(str, given.columns)), columns or {}, shown)
    if not any(column for column, _ in headings.values()):
        msg = (
            f"No heading is known: {', '.join(headings) or 'there are none'}. Name them in the"
            f" first row, as {', '.join(each.title for each in COLUMNS.values())}."
        )
        raise ValueError(msg)
    skeins: dict[str, Any] = {}
    wrong: list[tuple[Any, str, str]] = []
    for at, (heading, (column, unit)) in enumerate(headings.items()):
        cells = given.iloc[:, at].reset_index(drop=True)
        if not column:
            skeins[heading] = cells
            continue
        skeins[column], bad = _read(cells, _DESCRIBED[_PLACES[column]], unit, shown)
        wrong += [(row, heading, said) for row, said in bad]
    for column, asked in COLUMNS.items():
        skeins.setdefault(column, _nothing(asked, len(given)))
    ordered = [*COLUMNS, *(each for each in skeins if each not in COLUMNS)]
    frame = pd.DataFrame({each: skeins[each] for each in ordered})
    return Shelf(frame, headings, _problems(wrong, frame))


def demo() -> pd.DataFrame:
    """Give an invented shelf of nine skeins, to try things on."""
    names = {name for skein in SHELF for name in skein}
    cells = {
        name: [skein.get(name, "" if each.kind == "words" else np.nan) for skein in SHELF]
        for name, each in COLUMNS.items()
        if name in names and each.kind != "readings"
    }
    return pd.DataFrame(cells | {"cuts": [list(skein.get("cuts", [])) for skein in SHELF]})


def _matched(
    headings: list[str], told: Mapping[str, str], shown: Shown
) -> dict[str, tuple[str, str]]:
    """Give what each heading means; where two mean the same column, the first one has it."""
    found: dict[str, tuple[str, str]] = {}
    taken = set(told.values())
    names = list(COLUMNS)
    for heading in headings:
        at, unit = match_column(_DESCRIBED, heading, shown)
        if heading in told:
            found[heading] = (told[heading], unit)
        elif at >= 0 and names[at] not in taken:
            found[heading] = (names[at], unit)
            taken.add(names[at])
        else:
            found[heading] = ("", "")
    return found


def _read(
    cells: "pd.Series[Any]", asked: Mapping[str, Any], unit: str, shown: Shown
) -> tuple[Any, list[tuple[Any, str]]]:
    """Read a column; each text that differs is read once. Give also the rows that were refused."""
    is_number = asked["kind"] == "number" and not asked["step"]
    if is_number and pd.api.types.is_numeric_dtype(cells):
        own = _own(cells, unit, asked, shown)
        if (~np.isnan(own) | cells.isna()).all():
            return own, []
    texts = cells.where(cells.notna(), "").map(_as_text)
    codes, each = pd.factorize(texts)
    different = list(map(str, each))
    values = np.full(len(different), np.nan, float if asked["kind"] == "number" else object)
    if is_number and different:
        _read_plain(pd.Series(different), values, asked, unit, shown)
    refused: dict[int, str] = {}
    for at in map(int, np.flatnonzero(pd.isna(values))):
        value, wrong = read_cell(asked, different[at], unit, shown)
        values[at] = _EMPTY[asked["kind"]]() if value is None else value
        if wrong:
            refused[at] = wrong
    rows = map(int, np.flatnonzero(np.isin(codes, list(refused))))
    return values[codes], [(row, refused[int(codes[row])]) for row in rows]


# What stands for a cell that holds nothing.
_EMPTY: Mapping[str, Callable[[], Any]] = {"number": lambda: np.nan, "words": str, "readings": list}

# A number that can be read in one way only, and letters behind it.
_PLAIN = r"^([0-9]+(?:\.[0-9]+)?)\s*([A-Za-z]*)$"


def _read_plain(
    texts: "pd.Series[str]", values: Any, asked: Mapping[str, Any], unit: str, shown: Shown
) -> None:
    """Read the plain ones of many numbers at once, and leave the rest to be read one by one.

    A hundred thousand texts that all differ are not much of a file, and one by one take seconds.
    """
    for spelt, found in texts.str.extract(_PLAIN).dropna().groupby(1)[0]:
        named = unit_named(str(spelt), asked["dimension"], shown) if spelt else unit
        if named or not spelt:
            values[found.index] = _own(found, named or "", asked, shown)


def _own(numbers: "pd.Series[Any]", unit: str, asked: Mapping[str, Any], shown: Shown) -> Any:
    """Give numbers in a unit, or the one shown, in the sheet's own; what cannot be is none."""
    dimension = asked["dimension"]
    given: Any = numbers.to_numpy(float)
    own: Any = to_own(given, dimension, unit or shown.units[dimension], shown)
    return np.where((asked["low"] <= own) & (own <= asked["high"]), own, np.nan)


def _as_text(cell: Any) -> str:
    """Write a cell of a data frame as it would be typed; 14.0 in a spreadsheet is 14."""
    return f"{cell:.12g}" if isinstance(cell, float) else str(cell)


def _nothing(asked: Asked, rows: int) -> Any:
    if isinstance(asked, Input):
        return np.full(rows, np.nan)
    return ["" if asked.kind == "words" else [] for _ in range(rows)]


def _problems(wrong: Iterable[tuple[Any, str, str]], skeins: pd.DataFrame) -> pd.DataFrame:
    """Say what is wrong with each cell that was refused, by its row and heading."""
    rows = []
    for row, heading, said in wrong:
        name = skeins["name"].iloc[row]
        called = f"Row {row + 1}" + (f" ({name})" if name else "")
        rows.append((row + 1, heading, f"{called}, {heading}: {said}"))
    in_order = sorted(rows, key=lambda each: each[0])
    return pd.DataFrame(in_order, columns=["row", "heading", "problem"])


# ---- files ---------------------------------------------------------------------------------------


def _table(path: Path) -> pd.DataFrame:
    """Read a file into cells, whatever their number in a row."""
    if path.suffix.lower() in _SPREADSHEETS:
        try:
            return pd.read_excel(path, dtype=object)
        except ImportError as error:
            msg = f"To read {path.suffix} files: pip install 'yarnsheets[shelf]'."
            raise ImportError(msg) from error
    raw = path.read_bytes()
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = raw.decode("cp1252")  # as older spreadsheets write it
    lines = csv.reader(io.StringIO(text, newline=""), delimiter=parting(text))
    trimmed = [[cell.strip() for cell in row] for row in lines]
    rows = [row for row in trimmed if any(row)]
    headings = list(rows[0]) if rows else []
    width = max(map(len, rows), default=0)
    headings += [""] * (width - len(headings))
    named = [each or f"column {at}" for at, each in enumerate(headings, start=1)]
    padded = [[*row, *[""] * (width - len(row))] for row in rows[1:]]
    return pd.DataFrame(padded, columns=_distinct(named), dtype=object)


def _distinct(names: Iterable[str]) -> list[str]:
    """Tell headings apart that are the same."""
    seen: dict[str, int] = {}
    found = []
    for name in names:
        seen[name] = seen.get(name, 0) + 1
        found.append(name if seen[name] == 1 else f"{name}, {seen[name]}")
    return found


def write(
    skeins: pd.DataFrame, path: str | Path, *, measure: str = choices.MEASURES[0].name
) -> None:
    """Write a shelf as CSV or XLSX, in the units chosen, so that it can be read again.

    What a spreadsheet would take for a formula is written as text.

    Parameters
    ----------
    skeins : DataFrame
        As `read` or `reckon` gives it.
    path : str or Path
        Where to; what it ends with says the kind of file.
    measure : str
        "yards, ounces" or "metres, grams".

    Raises
    ------
    ValueError
        If the name ends neither with .csv nor with .xlsx.
    """
    path = Path(path)
    chosen = next(each for each in choices.MEASURES if each.name == measure)
    columns = [_written(skeins[name], name, chosen) for name in skeins.columns]
    headings = [heading for heading, _ in columns]
    rows = list(zip(*(cells for _, cells in columns), strict=True))
    if path.suffix.lower() == ".csv":
        with path.open("w", encoding="utf-8-sig", newline="") as file:
            csv.writer(file).writerows([headings, *([_guarded(c) for c in row] for row in rows)])
    elif path.suffix.lower() == ".xlsx":
        _write_xlsx([headings, *rows], path)
    else:
        msg = f"{path.name} ends neither with .csv nor with .xlsx: name it so."
        raise ValueError(msg)


# What `reckon` adds: its heading and its dimension.
_RECKONED = {
    "yards": ("Holds", "length"),
    "low": ("Low", "length"),
    "high": ("High", "length"),
    "grist": ("Grist", "grist"),
    "evidence": ("Known by", ""),
    "disputed": ("Otherwise by", ""),
    "lacking": ("Lacks", ""),
    "for_project": ("For the project", ""),
}


def _written(cells: "pd.Series[Any]", name: str, measure: choices.Measure) -> tuple[str, list[Any]]:
    """Give a column's heading with its unit, and its cells in that."""
    asked = COLUMNS.get(name)
    title, dimension = (asked.title, asked.dimension) if asked else _RECKONED.get(name, (name, ""))
    shown = choices.shown(measure, next(g for g in choices.GRIST_UNITS if g.unit == measure.grist))
    unit = shown.units.get(dimension)
    if unit is None:
        return title, ["" if cell != cell else cell for cell in cells]

    def one(cell: Any) -> Any:
        if isinstance(cell, list):
            return "; ".join(f"{to_shown(each, dimension, unit, shown):.6g}" for each in cell)
        return "" if cell != cell else float(f"{to_shown(cell, dimension, unit, shown):.6g}")

    return f"{title} ({choices.label(unit)})", [one(cell) for cell in cells]


def _guarded(cell: Any) -> Any:
    return f"'{cell}" if isinstance(cell, str) and cell[:1] in ("=", "+", "-", "@") else cell


def _write_xlsx(rows: Iterable[Iterable[Any]], path: Path) -> None:
    try:
        from openpyxl import Workbook
    except ImportError as error:
        msg = "To write .xlsx files: pip install 'yarnsheets[shelf]'."
        raise ImportError(msg) from error
    book = Workbook()
    page = book.active
    page.title = "Shelf"
    for at, row in enumerate(rows, start=1):
        for across, value in enumerate(row, start=1):
            cell = page.cell(at, across, value)
            if isinstance(value, str):
                cell.data_type = "s"  # never a formula
    page.freeze_panes = "A2"
    book.save(path)

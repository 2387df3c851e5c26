"""The reckoning of a whole shelf at once, on columns; the same evidence as for one skein.

What is worked out for a skein in `evidence.py` is worked out here for all of them by the same
functions. Only the choice of the narrowest is written for columns; `tests/shelf/test_frame.py`
holds it to the skein by skein reckoning on random shelves.
"""

from collections.abc import Sequence
from typing import Any, NamedTuple

import numpy as np
import pandas as pd

from yarnsheets import formulas
from yarnsheets.published.sources import GRIST
from yarnsheets.shelf import choosing, evidence
from yarnsheets.shelf.choosing import OnShelf, Wanted
from yarnsheets.shelf.columns import COLUMNS
from yarnsheets.shelf.evidence import (
    EVIDENCE,
    NO_YARN,
    TOO_WIDE,
    WIDEST,
    Cuts,
    Doubts,
    Evidence,
    Skein,
    relative_of,
)

_AT_ONCE = 50_000  # rows: so many that columns pay, so few that they stay in the fast memory
_MOST_TO_CHOOSE = 300


def reckon(skeins: pd.DataFrame, doubts: Doubts | None = None) -> pd.DataFrame:
    """Reckon the yards of every skein by its best evidence, with their range.

    Parameters
    ----------
    skeins : DataFrame
        As `read` gives it, in yards, pounds and inches; columns may be missing.
    doubts : Doubts
        How far off each kind of measurement may be.

    Returns
    -------
    DataFrame
        The same with columns `yards`, `low`, `high` (95 % sure), `grist`, `evidence`, `disputed`
        (other evidence that does not agree) and `lacking` (what a skein without yards lacks).

    Examples
    --------
    >>> found = reckon(pd.DataFrame({"weight": [0.25, 0.25], "wraps": [14, None]}))
    >>> found[["yards", "low", "high"]].round().iloc[0].to_list(), found.lacking[1]
    ([219.0, 120.0, 400.0], 'no measure: give its wraps, a cut, or its length')
    """
    doubts = doubts or Doubts()
    parts = [
        _reckoned(skeins.iloc[start : start + _AT_ONCE], doubts)
        for start in range(0, max(len(skeins), 1), _AT_ONCE)
    ]
    return pd.concat([skeins, pd.concat(parts)], axis=1)


def _reckoned(skeins: pd.DataFrame, doubts: Doubts) -> pd.DataFrame:
    """Reckon some skeins: all their evidence as columns, and of each row the narrowest."""
    given = {
        name: skeins[name].to_numpy(float) if name in skeins else np.full(len(skeins), np.nan)
        for name, asked in COLUMNS.items()
        if asked.kind == "number"
    }
    with np.errstate(all="ignore"):  # what is not known gives what is not a number
        found = _all_evidence(skeins, given, doubts)
        yards = np.stack([each.yards for each in found])
        halves = np.stack([each.half for each in found])
        is_there = ~np.isnan(yards)
        halves[~is_there | (halves > WIDEST)] = np.inf
        best = np.argmin(halves, axis=0)
        row = np.arange(len(skeins))
        half, middle = halves[best, row], yards[best, row]
        factor = np.exp(half)
        low, high = middle / factor, middle * factor
        factors = np.exp(halves)
        is_apart = (yards / factors > high) | (yards * factors < low)
        grist = formulas.grist(middle, given["weight"])
        is_checked = ~np.isnan(grist) & (best != EVIDENCE.index("wraps"))
        is_yarn = ~is_checked | ((GRIST.low <= grist) & (grist <= GRIST.high))
    is_telling = np.isfinite(half)
    has_yards = is_telling & is_yarn
    kinds = np.array([*EVIDENCE, ""], object)
    disputed = np.where(is_apart.any(axis=0), np.argmax(is_apart, axis=0), len(EVIDENCE))
    numbers = {"yards": middle, "low": low, "high": high, "half": half, "grist": grist}
    return pd.DataFrame(
        {name: np.where(has_yards, column, np.nan) for name, column in numbers.items()}
        | {
            "evidence": kinds[np.where(has_yards, best, len(EVIDENCE))],
            "disputed": kinds[np.where(has_yards, disputed, len(EVIDENCE))],
            "lacking": np.select(
                [has_yards, is_telling, is_there.any(axis=0)],
                ["", NO_YARN, TOO_WIDE],
                _not_measured(skeins, given),
            ),
        },
        index=skeins.index,
    )


class _Found(NamedTuple):
    """One kind of evidence of all skeins: yards, and half the logarithm of their range."""

    yards: Any
    half: Any


def _found(given: Evidence) -> _Found:
    """Work out the ranges of a column of yards, as `Budget.expanded` does that of one."""
    budget = given.budget
    known = np.minimum(budget.by_normal_curve(), budget.by_bounds())
    half = np.hypot(budget.from_few(), known)
    return _Found(given.yards, np.broadcast_to(half, given.yards.shape))


def _all_evidence(skeins: pd.DataFrame, given: dict[str, Any], doubts: Doubts) -> list[_Found]:
    """Give all evidence, in the order of `EVIDENCE`."""
    around = np.where(np.isnan(given["around"]), doubts.around, given["around"])
    weight = given["weight"]
    sample = given["sample_length"], given["sample_weight"]
    return [
        _found(evidence.by_length(given["length"], doubts)),
        _found(evidence.by_counter(given["counter"], doubts)),
        _found(evidence.by_turns(given["turns"], around, doubts)),
        _by_cuts(skeins, weight, doubts),
        _found(evidence.by_sample(*sample, weight, doubts)),
        _found(evidence.by_wraps(given["wraps"], weight, doubts)),
    ]


def _by_cuts(skeins: pd.DataFrame, weight: Any, doubts: Doubts) -> _Found:
    """Give the evidence of cuts: each number of cuts by itself, since Student's t goes by it."""
    yards, half = np.full((2, len(skeins)), np.nan)
    if "cuts" not in skeins:
        return _Found(yards, half)
    lists = skeins["cuts"].to_list()
    counts = np.fromiter(map(len, lists), int, len(lists))
    for count in np.unique(counts[counts > 0]):
        at = np.flatnonzero(counts == count)
        cuts = np.array([lists[row] for row in at], float)
        inverse = 1 / cuts
        centre = inverse.mean(axis=1)
        spread = (
            np.full(len(at), doubts.usual_spread)
            if count == 1
            else inverse.std(axis=1, ddof=1) / centre
        )
        summed = Cuts(int(count), cuts.mean(axis=1), 1 / centre, spread)
        yards[at], half[at] = _found(evidence.by_cuts(summed, weight[at], doubts))
    return _Found(yards, half)


def _not_measured(skeins: pd.DataFrame, given: dict[str, Any]) -> Any:
    """Say what to measure of each skein: alike for all that have the same things measured."""
    measured = np.stack([~np.isnan(column) for column in given.values()])
    cuts = np.zeros(len(skeins), bool)
    if "cuts" in skeins:
        cuts = np.fromiter(map(len, skeins["cuts"]), int, len(skeins)) > 0
    kinds = 2 ** np.arange(len(given) + 1) @ np.vstack([measured, cuts])
    said = np.full(len(skeins), "", object)
    for kind in np.unique(kinds):
        one = int(np.argmax(kinds == kind))
        numbers: dict[str, Any] = {name: column[one] for name, column in given.items()}
        said[kinds == kind] = evidence.not_measured(
            Skein(**numbers, cuts=[1.0] if cuts[one] else [])
        )
    return said


# ---- a choice for a project ----------------------------------------------------------------------


class Chosen(NamedTuple):
    """Skeins for a project.

    Attributes
    ----------
    skeins : DataFrame
        All skeins, with a column `for_project`: chosen, or why it was left out.
    yards : float
        What those chosen hold, or those that come nearest where no choice is enough. [yd]
    chance : float
        Chance that they are enough. [1]
    more : float
        What is missing, where no choice is enough, like those that come nearest. [yd]
    """

    skeins: pd.DataFrame
    yards: float
    chance: float
    more: float


def choose(skeins: pd.DataFrame, wanted: Wanted | float) -> Chosen:
    """Choose skeins that together are enough for a project, alike, with the least left over.

    Parameters
    ----------
    skeins : DataFrame
        As `reckon` gives it.
    wanted : Wanted or float
        The project, or its yards alone. [yd]

    Returns
    -------
    Chosen
        The skeins with what is said of each, the chance, or what is missing.

    Raises
    ------
    ValueError
        If there are more than 300 skeins to choose from.

    Examples
    --------
    >>> yards, pounds = [120, 210, 260, 400], [0.2, 0.35, 0.43, 0.7]
    >>> shelf = reckon(pd.DataFrame({"length": yards, "weight": pounds}))
    >>> found = choose(shelf, Wanted(450, within=0.02))
    >>> found.skeins.for_project.to_list(), found.yards
    (['not needed', 'chosen', 'chosen', 'not needed'], 470.0)
    """
    project = wanted if isinstance(wanted, Wanted) else Wanted(float(wanted))
    places = np.flatnonzero(skeins["grist"].notna())
    if len(places) > _MOST_TO_CHOOSE:
        msg = (
            f"There are {len(places):,} skeins to choose from, and {_MOST_TO_CHOOSE} are the most."
            " Narrow them first, as skeins[skeins.fibre == 'wool']."
        )
        raise ValueError(msg)
    shelf = _on_shelf(skeins.iloc[places])
    choice = choosing.choose(shelf, project)
    said = np.where(skeins["yards"].notna(), "weigh it: its grist is not known", "").astype(object)
    said[places] = choosing.why(shelf, choice, project)
    return Chosen(skeins.assign(for_project=said), choice.yards, choice.chance, choice.more)


def _on_shelf(skeins: pd.DataFrame) -> Sequence[OnShelf]:
    nothing = [""] * len(skeins)
    fibres, colours = (skeins.get(name, nothing) for name in ("fibre", "colour"))
    doubts = [relative_of(half) for half in skeins["half"]]
    numbers = zip(skeins["yards"], doubts, skeins["grist"], fibres, colours, strict=True)
    return [OnShelf(*each) for each in numbers]

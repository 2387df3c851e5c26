"""Which skeins together make a project: enough of it, alike, and with the least left over.

Skeins go together in a lot if they are of one fibre and colour, as asked, and their grists differ
by no more than is allowed. Of all choices from all lots that are enough with the wanted chance, the
best is the one that holds the fewest yards.

The doubts of skeins are taken to err the same way, and add plainly: one hand spun them, one reel,
scale and balance measured them. A skein is counted in thousandths of the project, rounded down, so
that the best choice is found exactly: for every sum of skeins, only the one in least doubt is kept.
`tests/shelf/test_choosing.py` holds it to the optimum of scipy's solver, which takes 10 times as
long and more.
"""

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from yarnsheets import formulas
from yarnsheets.estimates import (
    PositiveEstimate,
    chance_enough,
    doubt_for_chance,
    length_for_chance,
    stated,
)

_PARTS = 1000  # of a project, in which skeins are counted

# Which of the skeins must be the same for them to go together, and what the page calls it.
TOGETHER = {
    "colour": "fibre and colour",
    "fibre": "fibre alone",
    "any": "neither",
}


@dataclass(frozen=True)
class Wanted:
    """What a project takes, and which skeins may go together in it.

    Attributes
    ----------
    yards : float
        The pattern's own figure. [yd]
    within : float
        How far that may be off, either way, 95 % sure. [1]
    chance : float
        Chance that the skeins are enough, from a half to 0.99. [1]
    alike : float
        How much more the finest may have than the coarsest, of its grist. [1]
    together : str
        A key of `TOGETHER`. [1]
    """

    yards: float
    within: float = 0.1
    chance: float = 0.95
    alike: float = 0.15
    together: str = "colour"

    @property
    def need(self) -> PositiveEstimate:
        """The yards with their doubt."""
        return PositiveEstimate(
            self.yards, self.yards * stated("the project", self.within).relative
        )


@dataclass(frozen=True)
class OnShelf:
    """A skein to choose from: its yards, their doubt as a share of them, its grist and its kind."""

    yards: float
    doubt: float
    grist: float
    fibre: str
    colour: str


@dataclass(frozen=True)
class Choice:
    """The skeins chosen, by their place on the shelf, or what is missing.

    `lot` has the places of all skeins that could go together with those chosen. Without a choice,
    it is the lot that comes nearest, and `more` is what is missing to it. `yards` and `grist` are
    of those chosen, or of that lot.
    """

    chosen: list[int]
    lot: list[int]
    yards: float
    chance: float
    more: float
    grist: float


def choose(shelf: Sequence[OnShelf], wanted: Wanted) -> Choice:
    """Choose the skeins that are enough for a project and leave the least over.

    >>> shelf = [OnShelf(yards, 0.01, 1000, "wool", "grey") for yards in (120, 210, 260, 400)]
    >>> choose(shelf, Wanted(450, within=0.02)).chosen
    [1, 2]
    >>> round(choose(shelf, Wanted(1200, within=0.02)).more)
    239
    """
    alike = lots(shelf, wanted)
    best, of_lot = None, []
    allowed: dict[int, float] = {}
    for lot in alike:
        found = _best_of(shelf, lot, wanted, best.total if best else math.inf, allowed)
        if found:
            best, of_lot = found, lot
    if best:
        chosen = sorted(_places(best))
        yards, doubt = together(shelf, chosen)
        chance = chance_enough(PositiveEstimate(yards, doubt), wanted.need)
        return Choice(chosen, of_lot, yards, chance, 0.0, _grist(shelf, chosen))
    missing = [(_missing(shelf, lot, wanted), lot) for lot in alike]
    from_nothing = length_for_chance(wanted.chance, PositiveEstimate(1.0, 0.0), wanted.need)
    more, nearest = min(missing, key=lambda each: each[0], default=(from_nothing, []))
    return Choice([], nearest, together(shelf, nearest)[0], 0.0, more, _grist(shelf, nearest))


def lots(shelf: Sequence[OnShelf], wanted: Wanted) -> list[list[int]]:
    """Give the places of skeins that may go together, each lot as large as can be."""
    found: list[list[int]] = []
    kinds: list[tuple[str, str]] = []
    for each in shelf:
        if _kind(each, wanted) not in kinds:
            kinds.append(_kind(each, wanted))
    for kind in kinds:
        in_order = sorted(
            [at for at, each in enumerate(shelf) if _kind(each, wanted) == kind],
            key=lambda at: shelf[at].grist,
        )
        end = 0
        for start, coarsest in enumerate(in_order):
            reach = end
            finest = shelf[coarsest].grist * (1 + wanted.alike)
            while reach < len(in_order) and shelf[in_order[reach]].grist <= finest:
                reach += 1
            if reach > end:  # or it is a part of the lot before
                found.append(sorted(in_order[start:reach]))
            end = reach
    return found


def counted(skein: OnShelf, wanted: Wanted) -> int:
    """Give a skein's yards in whole thousandths of the project.

    >>> counted(OnShelf(100, 0.01, 1000, "", ""), Wanted(600))
    166
    """
    # a last bit too little must not cost a whole part
    return math.floor(skein.yards / wanted.yards * _PARTS + 1e-9)


def most_doubt(total: int, wanted: Wanted) -> float:
    """Give how much doubt so many thousandths may have, in thousandths; below 0 if none at all."""
    need = PositiveEstimate(_PARTS, _PARTS * wanted.need.relative)
    return total * doubt_for_chance(wanted.chance, total, need)


def doubt_of(skein: OnShelf, count: int) -> float:
    """Give the doubt of a skein in thousandths of the project."""
    return count * skein.doubt


def why(shelf: Sequence[OnShelf], choice: Choice, wanted: Wanted) -> list[str]:
    """Say of each skein that it is chosen, or why it was left out.

    >>> shelf = [OnShelf(500, 0.01, grist, "wool", "grey") for grist in (1000, 1010, 1400)]
    >>> wanted = Wanted(450, within=0.02)
    >>> why(shelf, choose(shelf, wanted), wanted)
    ['not needed', 'chosen', 'finer than those chosen']
    """
    matched = choice.chosen or choice.lot
    if not matched:
        return ["" for _ in shelf]
    coarsest = min(shelf[at].grist for at in matched)
    finest = max(shelf[at].grist for at in matched)
    kind = _kind(shelf[matched[0]], wanted)
    those = "those chosen" if choice.chosen else "those that come nearest"
    said = []
    for at, each in enumerate(shelf):
        if at in choice.chosen:
            said.append("chosen")
        elif _kind(each, wanted)[0] != kind[0]:
            said.append("another fibre")
        elif _kind(each, wanted)[1] != kind[1]:
            said.append("another colour")
        elif each.grist > coarsest * (1 + wanted.alike):
            said.append(f"finer than {those}")
        elif each.grist * (1 + wanted.alike) < finest:
            said.append(f"coarser than {those}")
        else:
            said.append("not needed" if choice.chosen else "comes nearest")
    return said


def together(shelf: Sequence[OnShelf], places: Iterable[int]) -> tuple[float, float]:
    """Give the yards of several skeins and their doubt, which adds plainly."""
    skeins = [shelf[at] for at in places]
    return sum(each.yards for each in skeins), sum(each.yards * each.doubt for each in skeins)


def _missing(shelf: Sequence[OnShelf], lot: Sequence[int], wanted: Wanted) -> float:
    """Give the yards missing to a whole lot, if more of it is as much in doubt."""
    yards, doubt = together(shelf, lot)
    return length_for_chance(wanted.chance, PositiveEstimate(yards, doubt), wanted.need) - yards


def _grist(shelf: Sequence[OnShelf], places: Sequence[int]) -> float:
    """Give the grist of several skeins together."""
    yards = sum(shelf[at].yards for at in places)
    mass = sum(formulas.mass(shelf[at].yards, shelf[at].grist) for at in places)
    return formulas.grist(yards, mass) if places else math.nan


def _kind(skein: OnShelf, wanted: Wanted) -> tuple[str, str]:
    """Give what must be the same of skeins that go together."""
    fibre = "" if wanted.together == "any" else _plain(skein.fibre)
    return fibre, _plain(skein.colour) if wanted.together == "colour" else ""


def _plain(word: str) -> str:
    return " ".join(word.lower().split())


# ---- the best of a lot ---------------------------------------------------------------------------


@dataclass(frozen=True)
class _Sum:
    """Skeins taken together, in thousandths of the project: the last one, and the sum before it."""

    total: int
    doubt: float
    place: int
    before: "_Sum | None"


def _best_of(
    shelf: Sequence[OnShelf],
    lot: Sequence[int],
    wanted: Wanted,
    most: float,
    allowed: dict[int, float],
) -> _Sum | None:
    """Give the least sum of a lot that is enough and below `most`; none if there is none.

    A sum that is enough is taken no further, since any other skein leaves more over. `allowed` has
    the most doubt of each total that was asked for, for all lots.
    """
    least = _least(min(shelf[at].doubt for at in lot), most, wanted, allowed)
    best = None
    sums = {0: _Sum(0, 0.0, -1, None)}
    counts = [(counted(shelf[at], wanted), at) for at in lot]
    for count, at in sorted(counts, reverse=True):
        if most <= least or count == 0:
            break  # no sum can be better
        for before in list(sums.values()):
            total = before.total + count
            if total >= most:
                continue
            doubt = before.doubt + doubt_of(shelf[at], count)
            if doubt <= _allowed(total, wanted, allowed):
                best = _Sum(total, doubt, at, before)
                most = total
            elif total not in sums or doubt < sums[total].doubt:
                sums[total] = _Sum(total, doubt, at, before)
    return best


def _least(doubt: float, most: float, wanted: Wanted, allowed: dict[int, float]) -> int:
    """Give the least total, up to `most`, that is enough if all of it is in so little doubt."""
    total = _PARTS
    while total < most and total < 2 * _PARTS and _allowed(total, wanted, allowed) < total * doubt:
        total += 1
    return total


def _allowed(total: int, wanted: Wanted, allowed: dict[int, float]) -> float:
    if total < _PARTS:
        return -1.0  # less than the project is not even as likely enough as not
    if total not in allowed:
        allowed[total] = most_doubt(total, wanted)
    return allowed[total]


def _places(found: _Sum) -> list[int]:
    places = []
    while found.before:
        places.append(found.place)
        found = found.before
    return places

"""The rows of the shelf's charts, and how far their axes reach."""

import math
from collections.abc import Sequence
from typing import Any

from yarnsheets import formulas
from yarnsheets.shelf.evidence import Reckoned, Skein

# What the chart calls fine, middle and coarse, from so many yards per pound: a rule of this page.
FINE, MIDDLE = 1600.0, 800.0

_MOST_FIBRES = 8  # that a chart has room for; the rest are put together
_MOST_LETTERS = 14


def stack(
    skeins: Sequence[Skein], found: Sequence[Reckoned | None], chosen: Sequence[int]
) -> list[dict[str, Any]]:
    """Give the skeins chosen, each from where the one before it ends."""
    rows = []
    end = 0.0
    for at in chosen:
        each = found[at]
        assert each is not None
        rows.append({"skein": _called(skeins[at], at), "start": end, "end": end + each.yards})
        end += each.yards
    return rows


def thickness(skeins: Sequence[Skein], found: Sequence[Reckoned | None]) -> dict[str, Any]:
    """Give the rows and reaches of the charts by thickness."""
    points = _points(skeins, found)
    bars = _bars(skeins, found)
    return {
        "points": points,
        "bars": bars,
        "grist_least": min((each["low"] for each in points), default=math.nan),
        "grist_most": max((each["high"] for each in points), default=math.nan),
        "wraps_most": max((each["laid"] for each in points), default=math.nan),
        "fibre_top": max((each["end"] for each in bars), default=math.nan),
    }


def _points(skeins: Sequence[Skein], found: Sequence[Reckoned | None]) -> list[dict[str, Any]]:
    """Give the skeins that have wraps and a grist, which they may have by wraps alone."""
    return [
        {
            "row": f"{at + 1}",
            "laid": skein.wraps,
            "middle": each.grist,
            "low": formulas.grist(each.low, skein.weight),
            "high": formulas.grist(each.high, skein.weight),
            "is_measured": each.kind != "wraps",
        }
        for at, (skein, each) in enumerate(zip(skeins, found, strict=True))
        if each and not math.isnan(each.grist) and not math.isnan(skein.wraps)
    ]


def _bars(skeins: Sequence[Skein], found: Sequence[Reckoned | None]) -> list[dict[str, Any]]:
    """Give the yards of each fibre: fine, middle, coarse, and what has no weight to tell by."""
    known = [
        (" ".join(skein.fibre.lower().split()), each)
        for skein, each in zip(skeins, found, strict=True)
        if each
    ]
    fibres: list[str] = []
    for fibre, _ in known:
        if fibre not in fibres:
            fibres.append(fibre)
    yards_of = {fibre: sum(each.yards for name, each in known if name == fibre) for fibre in fibres}
    in_order = sorted(fibres, key=lambda fibre: -yards_of[fibre])
    named, rest = in_order[:_MOST_FIBRES], in_order[_MOST_FIBRES:]
    rows = []
    for called, members in [*((_short(one), [one]) for one in named), ("all others", rest)]:
        end = 0.0
        for kind in ("fine", "middle", "coarse", "not weighed"):
            yards = sum(
                each.yards
                for name, each in known
                if name in members and thickness_of(each.grist) == kind
            )
            if yards:
                rows.append({"fibre": called, "kind": kind, "start": end, "end": end + yards})
            end += yards
    return rows


def thickness_of(grist: float) -> str:
    """Call a grist fine, middle or coarse.

    >>> thickness_of(1600), thickness_of(1000), thickness_of(math.nan)
    ('fine', 'middle', 'not weighed')
    """
    if math.isnan(grist):
        return "not weighed"
    if grist >= FINE:
        return "fine"
    return "middle" if grist >= MIDDLE else "coarse"


def _called(skein: Skein, at: int) -> str:
    return _short(skein.name) if skein.name else f"row {at + 1}"


def _short(name: str) -> str:
    if not name:
        return "not named"
    return name if len(name) <= _MOST_LETTERS else name[: _MOST_LETTERS - 1] + "…"

"""The rows of the shelf's charts, and how far their axes reach."""

import math
from collections.abc import Sequence
from typing import Any

from yarnsheets import formulas
from yarnsheets.shelf.evidence import Reckoned, Skein

# What the chart calls fine, middle and coarse, from so many yards per pound: a rule of this page.
FINE, MIDDLE = 1600.0, 800.0

_MOST_BARS = 8  # that a chart has room for; the rest are put together
_MOST_LETTERS = 14

# How near points must lie to be named together, as parts of the chart's width and height.
_NEAR_ACROSS, _NEAR_UP = 0.2, 0.1
_MOST_NAMED = 4


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
        "names": _names(points),
        "bars": bars,
        "grist_least": min((each["low"] for each in points), default=math.nan),
        "grist_most": max((each["high"] for each in points), default=math.nan),
        "wraps_most": max((each["laid"] for each in points), default=math.nan),
        "fibre_top": max((each["held"] for each in bars), default=math.nan),
    }


def _points(skeins: Sequence[Skein], found: Sequence[Reckoned | None]) -> list[dict[str, Any]]:
    """Give the skeins that have wraps and a grist, which they may have by wraps alone."""
    return [
        {
            "row": at + 1,
            "laid": skein.wraps,
            "middle": each.grist,
            "low": formulas.grist(each.low, skein.weight),
            "high": formulas.grist(each.high, skein.weight),
            "is_measured": each.kind != "wraps",
        }
        for at, (skein, each) in enumerate(zip(skeins, found, strict=True))
        if each and not math.isnan(each.grist) and not math.isnan(skein.wraps)
    ]


def _names(points: Sequence[dict[str, Any]]) -> list[dict[str, Any]]:
    """Give what stands beside the points: one word for those that lie too near for one each."""
    across = max((each["laid"] for each in points), default=1.0) * _NEAR_ACROSS
    ends = [each[end] for each in points for end in ("low", "high")]
    up = (max(ends) - min(ends)) * _NEAR_UP if ends else 1.0
    together: list[list[dict[str, Any]]] = []
    for each in points:
        near = [
            group
            for group in together
            if any(
                abs(one["laid"] - each["laid"]) < across
                and abs(one["middle"] - each["middle"]) < up
                for one in group
            )
        ]
        together = [group for group in together if group not in near]
        together.append([one for group in [*near, [each]] for one in group])
    return [
        {
            "laid": max(each["laid"] for each in group),
            "middle": max(each["middle"] for each in group),
            "rows": ", ".join(
                f"{each['row']}" for each in sorted(group, key=lambda one: one["row"])
            )
            if len(group) <= _MOST_NAMED
            else f"{len(group)} skeins",
        }
        for group in together
    ]


def _bars(skeins: Sequence[Skein], found: Sequence[Reckoned | None]) -> list[dict[str, Any]]:
    """Give the yards of each fibre that is fine, middle or coarse, the most first."""
    yards_of: dict[str, float] = {}
    for skein, each in zip(skeins, found, strict=True):
        if each:
            fibre = " ".join(skein.fibre.lower().split())
            what = f"{_short(fibre)}, {thickness_of(each.grist)}"
            yards_of[what] = yards_of.get(what, 0.0) + each.yards
    in_order = sorted(yards_of.items(), key=lambda item: -item[1])
    rest = sum(yards for _, yards in in_order[_MOST_BARS:])
    bars = [*in_order[:_MOST_BARS], *([("all others", rest)] if rest else [])]
    return [{"what": what, "held": yards} for what, yards in bars]


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

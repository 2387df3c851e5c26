"""What the charts share: shown units, the look, and the parts of a chart.

A sheet computes in its own units; a chart shows the page's. The page sets a parameter for each
dimension, so a change of unit is a change of parameters and axis titles. Axis lengths are
parameters too: the page steps them to round numbers and holds them still during a drag.
"""

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from types import SimpleNamespace
from typing import Any

import altair as alt

from yarnsheets.page.expressions import choose, emit
from yarnsheets.page.inputs import Found, Input

# What a chart calls its own size and place: an input of such a name would move the chart.
_TAKEN_BY_VEGA = {"width", "height", "padding", "autosize", "background", "cursor"}

# One colour a quantity on every chart; shape and label say the same without colour.
YARN = "#1d5c6e"
PROJECT = "#9c3d10"
INK = "#22302f"
FAINT = "#dfe5e3"

HEIGHT = 260

# Marks that mean the same on every chart: where the reader is, one of her readings, what is
# wanted or true, and the foot from there to the axis.
HERE: dict[str, Any] = {
    "size": 170,
    "filled": True,
    "opacity": 1,
    "stroke": "white",
    "strokeWidth": 2,
}
DOT: dict[str, Any] = {"color": INK, "filled": True, "size": 80, "opacity": 1}
GOAL: dict[str, Any] = {"color": PROJECT, "strokeWidth": 2, "strokeDash": [7, 4], "clip": True}
FOOT: dict[str, Any] = {"color": PROJECT, "strokeWidth": 2, "strokeDash": [2, 3], "clip": True}

# Of each dimension, what a number is multiplied by to be shown; of grist, also whether the unit
# is length per mass (1) or mass per length (-1).
FACTORS = {
    dimension: alt.param(name=f"{dimension}_factor", value=1)
    for dimension in (
        *("length", "mass", "grist", "short", "factor", "wraps", "share"),
        *("area", "gauge", "sett", "twist", "thickness", "speed", "volume"),
    )
}
GRIST_POWER = alt.param(name="grist_power", value=1)


@dataclass(frozen=True)
class Grip:
    """The marked point as a handle: which input it moves, where it stands, and when it is there.

    `when` names the number that must hold for it; none is always.
    """

    input: str
    x: str
    y: str
    when: str | None = None


@dataclass(frozen=True)
class SheetChart:
    """A chart with its heading, its words, its handle and the reach of its axes.

    `reach` gives, for each axis length, how far the axis must go at least, in shown units.
    `tables` names the sheet's tables that it draws, and `left` is the room for its words there.
    """

    name: str
    title: str
    chart: alt.LayerChart
    caption: tuple[tuple[str | None, str], ...]
    grip: Grip | None = None
    reach: Mapping[str, Any] = field(default_factory=dict)
    tables: tuple[str, ...] = ()
    left: int = 60

    def describe(self, moved: Iterable[alt.Parameter], labels: Iterable[str]) -> dict[str, Any]:
        """Describe the chart as the page reads it, moved by `moved` and worded by `labels`."""
        texts = [alt.param(name=name, value="") for name in labels]
        tops = [alt.param(name=name, value=1) for name in self.reach]
        params = [*moved, *FACTORS.values(), GRIST_POWER, *tops, *texts]
        spec = self.chart.add_params(*params).configure(**_LOOK).to_dict()
        # A page sets every parameter of every chart at every move: keep those the chart reads.
        declared = spec.pop("params")
        read = set(re.findall(r"\w+", json.dumps(spec)))
        spec["params"] = [param for param in declared if param["name"] in read]
        return {
            "name": self.name,
            "title": self.title,
            "caption": self.caption,
            "grip": vars(self.grip) if self.grip else None,
            "reach": {name: emit(value) for name, value in self.reach.items()},
            "tables": self.tables,
            "left": self.left,
            "spec": spec,
        }


def describe(sheet: Any, draw: Callable[[Any], Iterable[SheetChart]]) -> list[dict[str, Any]]:
    """Describe a sheet's charts, drawn over its inputs and all numbers it finds as parameters."""
    named = {
        name: each
        for name, each in (sheet.inputs() | sheet.finds()).items()
        if isinstance(each, Input)
        or (isinstance(each, Found) and each.dimension not in ("word", "template"))
    }
    if taken := _TAKEN_BY_VEGA & named.keys():
        msg = f"{', '.join(taken)}: Vega takes this for the chart's own; give it another name."
        raise ValueError(msg)
    moved = {name: alt.param(name=name, value=0) for name in named}
    charts = draw(SimpleNamespace(**moved))
    return [chart.describe(moved.values(), sheet.labels) for chart in charts]


def shown(dimension: str, value: Any) -> Any:
    """Convert a sheet's number to the page's unit, as chart text.

    >>> emit(shown("mass", alt.param(name="weight", value=1)))
    '(weight * mass_factor)'
    """
    if dimension == "grist":
        return value**GRIST_POWER * FACTORS["grist"]
    return value * FACTORS[dimension]


def own(dimension: str, value: Any) -> Any:
    """Convert a shown number back to the sheet's unit, as chart text.

    >>> emit(own("mass", alt.datum.weight))
    '(datum.weight / mass_factor)'
    """
    if dimension == "grist":
        return (value / FACTORS["grist"]) ** GRIST_POWER
    return value / FACTORS[dimension]


def rows(count: int, *, start: int = 0, **fields: Any) -> alt.Chart:
    """Start a layer of `count` rows that know their number `at`, with computed fields."""
    return computed(alt.sequence(start, start + count, as_="at"), **fields)


def table(name: str, **fields: Any) -> alt.Chart:
    """Start a layer over a table of the sheet's, with computed fields of other names.

    Vega computes a field in place, again whenever a parameter moves: a field computed from itself
    would grow with every move.
    """
    for field_name, value in fields.items():
        if re.search(rf"datum\.{field_name}\b", emit(value)):
            msg = f"The computed field {field_name!r} of table {name!r} reads itself: rename it."
            raise ValueError(msg)
    return computed(alt.NamedData(name), **fields)


def computed(data: Any, **fields: Any) -> alt.Chart:
    """Start a layer over data, with computed fields."""
    return alt.Chart(data).transform_calculate(
        **{name: emit(value) for name, value in fields.items()}
    )


def axis(
    field: str, title: str, top: str | float, *, start: str | float = 0, **options: Any
) -> dict[str, Any]:
    """Set an axis from `start` to `top`, each a number or chart text."""
    low, high = ({"expr": end} if isinstance(end, str) else end for end in (start, top))
    return {
        "field": field,
        "type": "quantitative",
        "title": title,
        "scale": {"domainMin": low, "domainMax": high, "nice": False, "zero": False},
        "axis": {"tickCount": 5, **options},
    }


def count_axis(field: str, title: str, most: int) -> dict[str, Any]:
    """Set an axis of whole numbers from 1 to `most`, with room for a mark at both ends."""
    places = list(range(1, most + 1))
    looks = {"values": places, "grid": False, "labelOverlap": False}
    return axis(field, title, most + 0.5, start=0.5, **looks)


def to_scale(across: Any, up: Any) -> tuple[str, str]:
    """Give how far both axes of a drawing reach, so that all fits and a square is square.

    `across` and `up` are the room it needs each way, in shown units, as chart text.

    >>> to_scale(alt.param(name="a", value=1), alt.param(name="b", value=1))[1]
    '(max(a, b * width / height)) * height / width'
    """
    long = f"max({emit(across)}, {emit(up)} * width / height)"
    return long, f"({long}) * height / width"


def plot(x: dict[str, Any], y: dict[str, Any], *layers: alt.Chart) -> alt.LayerChart:
    """Lay layers over one another on the same two axes."""
    return alt.LayerChart(layer=[part.encode(x=alt.X(**x), y=alt.Y(**y)) for part in layers])


def band(
    layer: alt.Chart, to: str = "high", colour: str = YARN, opacity: float = 0.22
) -> alt.Chart:
    """Fill from a layer's y to its field `to`: the range that something lies in."""
    filled: alt.Chart = layer.mark_area(color=colour, opacity=opacity, clip=True)
    return filled.encode(y2=f"{to}:Q")


def words(layer: alt.Chart, text: str, colour: str, **options: Any) -> tuple[alt.Chart, alt.Chart]:
    """Write the text parameter `text` at a layer's point, on a halo that keeps it readable."""
    mark = {"fontSize": 13, "fontWeight": 600, "text": alt.ExprRef(text), **options}
    return (
        layer.mark_text(stroke="white", strokeWidth=5, strokeJoin="round", color="white", **mark),
        layer.mark_text(color=colour, **mark),
    )


def lean(x: Any, top: Any) -> dict[str, Any]:
    """Keep words beside a vertical line inside the chart: right of it, or left past the middle."""
    past = x > top * 0.5
    return {
        "align": alt.ExprRef(emit(choose(past, "right", "left"))),
        "dx": alt.ExprRef(emit(choose(past, -8, 8))),
    }


_LOOK: dict[str, Any] = {
    "aria": False,  # the page says a chart in words, as one picture
    "font": "system-ui, sans-serif",
    "background": "transparent",
    "view": {"stroke": None, "continuousHeight": HEIGHT},
    "axis": {
        "labelFontSize": 13,
        "labelColor": INK,
        "titleFontSize": 13,
        "titleFontWeight": "normal",
        "titleColor": INK,
        "gridColor": FAINT,
        "domainColor": INK,
        "tickColor": INK,
        "labelFlush": False,
    },
    "axisQuantitative": {"format": ",~f"},
    "axisY": {
        "titleAngle": 0,
        "titleAlign": "left",
        "titleAnchor": "end",
        "titleBaseline": "bottom",
        "titleX": -44,
        "titleY": -12,
        "domain": False,
        "ticks": False,
    },
}

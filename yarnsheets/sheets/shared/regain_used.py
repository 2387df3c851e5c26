"""Which regain a sheet reckons with, and by whose word.

A regain is looked up for each fibre of a yarn and blended by the fibres' dry mass. What comes out
keeps its range and says in a few words, and in full, where it is from.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from yarnsheets import formulas
from yarnsheets.page.text import show
from yarnsheets.published import regain
from yarnsheets.published.regain import Fibre, Regain
from yarnsheets.published.sources import (
    ASTM_D1909,
    ASTM_D2118,
    AWTA_GLOSSARY,
    CRITICAL_TABLES,
    EU_1007_2011,
    TEXTILE_FIBRES,
    Source,
)
from yarnsheets.sheets.shared.whole import whole_up

SHORT: Mapping[Source, str] = {
    ASTM_D1909: "ASTM D1909",
    ASTM_D2118: "ASTM D2118",
    AWTA_GLOSSARY: "Australian wool trade",
    CRITICAL_TABLES: "the International Critical Tables",
    EU_1007_2011: "EU 1007/2011",
    TEXTILE_FIBRES: "Morton and Hearle",
}
"""What a source is called where there is little room."""

# A fibre and its share of the dry mass; the shares of a yarn make one.
Part = tuple[Fibre, float]
Lookup = Callable[[Fibre], Sequence[Regain]]


@dataclass(frozen=True)
class Used:
    """The regain of a yarn, as a share of its dry mass, with its range and where it is from."""

    value: float
    low: float
    high: float
    origin: str
    full: str


FIBRES: Mapping[str, Fibre] = {
    each.name: each for each in regain.FIBRES if each.in_standard_air and each.commercial
}
"""The fibres of which enough is published to choose from."""

MOST_OF_ANY = max(fibre.most.value for fibre in FIBRES.values())
"""No fibre holds more; what each can is told apart by `too_wet`."""

AUTHORITIES: Mapping[str, str] = {
    "astm": "agreed for trade by ASTM D1909",
    "eu": "agreed for trade in the European Union",
    "combed": "the same, for combed wool or hair",
}
"""Whose agreed regain a reader may choose, and what the page calls it."""

KNOWN_BY: Mapping[str, str] = {
    "humidity": "the humidity of the air (wool)",
    "standard": "published for air of 65% humidity",
    "regain": "my own figure, a regain",
    "content": "my own figure, a moisture content",
    **AUTHORITIES,
}
"""How a day's regain may be known, and what the page calls it."""


def of_a_day(parts: Sequence[Part], by: str, humidity: float, figure: float) -> Used:
    """Return the regain of a yarn on a day, from its air, a publication or the reader's figure.

    A moisture content is never taken for a regain: it is turned into one.

    >>> day = of_a_day([(regain.WOOL, 1.0)], "content", humidity=0.5, figure=0.12)
    >>> round(day.value, 4), day.origin
    (0.1364, 'your moisture content of 12%')
    """
    if by == "regain":
        return _given(figure, "your own figure")
    if by == "content":
        value = formulas.regain_from_content(figure)
        return _given(value, f"your moisture content of {show(100 * figure, 4)}%")
    if by == "humidity":
        return looked_up(parts, in_air(humidity))
    return looked_up(parts, in_standard_air) if by == "standard" else agreed_by(parts, by)


def agreed_by(parts: Sequence[Part], authority: str) -> Used:
    """Return the regain that one of the authorities has agreed for labels and invoices."""
    source = ASTM_D1909 if authority == "astm" else EU_1007_2011
    return looked_up(parts, agreed(source, combed=authority == "combed"))


def by_label(first: Fibre, second: Fibre, share: float) -> list[Part]:
    """Return two fibres with their shares of the dry mass, from the second's share on a label.

    A label gives shares of goods that hold the water agreed for each fibre, not of dry goods: an
    allowance is added to each dry mass (Regulation (EU) No 1007/2011, annexes VIII and IX, the
    rule from memory). ASTM D1909-04, 1.1, has its own regains used for blends likewise.

    >>> [(_, polyester), (_, wool)] = by_label(regain.POLYESTER, regain.WOOL, 0.5)
    >>> round(polyester / wool, 4), round(1.17 / 1.015, 4)
    (1.1527, 1.1527)
    """
    dry = [
        formulas.dry_mass(part, agreed_by([(fibre, 1.0)], "eu").value)
        for fibre, part in ((first, 1 - share), (second, share))
    ]
    return [(first, dry[0] / sum(dry)), (second, dry[1] / sum(dry))]


def named(parts: Sequence[Part]) -> str:
    """Name the fibres of a yarn.

    >>> named([(regain.WOOL, 1.0)]), named([(regain.WOOL, 0.5), (regain.SILK, 0.5)])
    ('wool', 'a blend of wool and silk')
    """
    names = " and ".join(fibre.name for fibre, _ in parts)
    return names if len(parts) == 1 else f"a blend of {names}"


def too_wet(parts: Sequence[Part], by: str, figure: float) -> str | None:
    """Say that a yarn cannot hold what the reader typed, a regain or a moisture content.

    >>> print(too_wet([(regain.NYLON, 1.0)], "regain", 0.16))
    A regain of 16% cannot be: nylon takes up from 0 to about 9% from the air. Check the fibre, \
and let the yarn dry before you weigh it.
    """
    value = formulas.regain_from_content(figure) if by == "content" else figure
    most = whole_up(sum(share * fibre.most.percent for fibre, share in parts))
    if 100 * value <= most + 1e-9:  # the last bits of a sum
        return None
    whose = (
        f"A moisture content of {show(100 * figure)}% is a regain of {show(100 * value, 4)}%, which"
        if by == "content"
        else f"A regain of {show(100 * value, 4)}%"
    )
    return (
        f"{whose} cannot be: {named(parts)} takes up from 0 to about {most}% from the air."
        " Check the fibre, and let the yarn dry before you weigh it."
    )


def _given(value: float, origin: str) -> Used:
    return Used(value, value, value, origin, f"Source: {origin}.")


def looked_up(parts: Sequence[Part], lookup: Lookup) -> Used:
    """Return the regain of a yarn from what is published of its fibres.

    Where a fibre has several figures, the range takes them all in and the value is its middle.

    >>> wool_silk = [(regain.WOOL, 0.5), (regain.SILK, 0.5)]
    >>> used = looked_up(wool_silk, agreed(EU_1007_2011))
    >>> round(used.value, 4), used.origin
    (0.14, 'EU 1007/2011 (wool read, silk from memory)')
    """
    fibres = [fibre for fibre, _ in parts]
    found = [lookup(fibre) for fibre in fibres]
    value, low, high = _blended([share for _, share in parts], found)
    full = "; ".join(f"{each}" for published in found for each in published)
    return Used(value, low, high, _origin(fibres, found), f"Source: {full}.")


def _blended(
    shares: Sequence[float], found: Sequence[Sequence[Regain]]
) -> tuple[float, float, float]:
    """Give the regain of a blend as a share of its dry mass, and the ends of its range."""
    low = [min(each.low for each in published) for published in found]
    high = [max(each.high for each in published) for published in found]
    middle = [
        each[0].percent if len(each) == 1 else (least + most) / 2
        for each, least, most in zip(found, low, high, strict=True)
    ]
    value, least, most = (
        formulas.blend_regain(shares, percents) / 100 for percents in (middle, low, high)
    )
    return value, least, most


def agreed(authority: Source, *, combed: bool = False) -> Lookup:
    """Give the lookup of what an authority lets a fibre be sold with.

    The European regulation has two figures for wool and hair: the higher for combed.

    >>> [each.percent for each in agreed(EU_1007_2011, combed=True)(regain.WOOL)]
    [18.25]
    """

    def lookup(fibre: Fibre) -> Sequence[Regain]:
        found = [each for each in fibre.commercial if each.source == authority]
        wanted = [each for each in found if each.fibre.endswith(", combed")] if combed else []
        return (wanted or found)[:1]

    return lookup


def in_air(humidity: float) -> Lookup:
    """Give the lookup for air of a relative humidity, a share of one.

    A fibre without a table is held at what is published for air of 65 %, whatever the humidity.
    """

    def lookup(fibre: Fibre) -> Sequence[Regain]:
        if has_table(fibre):
            return (regain.wool_in_air(round(100 * humidity, 6)),)
        return fibre.in_standard_air

    return lookup


def has_table(fibre: Fibre) -> bool:
    """Tell whether there is a table of a fibre against humidity, as there is of wool alone.

    >>> has_table(regain.WOOL), has_table(regain.SILK)
    (True, False)
    """
    return fibre.name == regain.WOOL.name


def in_standard_air(fibre: Fibre) -> Sequence[Regain]:
    """Look up what is published for air of 65 % humidity at 20 °C."""
    return fibre.in_standard_air


def weight_in_air(parts: Sequence[Part], now: Used) -> list[dict[str, float]]:
    """Return a yarn's weight against humidity, of its weight now: the rows of the table of wool.

    Without wool in it there is no table, and so no rows.
    """
    if not any(has_table(fibre) for fibre, _ in parts):
        return []
    rows = []
    for percent in range(10, 91, 10):
        lookup = in_air(percent / 100)
        there, low, high = _blended(
            [share for _, share in parts], [lookup(fibre) for fibre, _ in parts]
        )
        rows.append(
            {
                "humidity": percent,
                "ratio": formulas.mass_at_regain(1.0, now.value, there),
                "low": formulas.mass_at_regain(1.0, now.high, low),
                "high": formulas.mass_at_regain(1.0, now.low, high),
            }
        )
    return rows


def published(parts: Sequence[Part]) -> list[dict[str, str | float | bool]]:
    """Return all that is published of a yarn's fibres, contradictions side by side.

    What a fibre takes from the air comes before what the trade has agreed.
    """
    return [
        {
            "figure": f"{each.fibre.split(', or')[0]}|{SHORT[each.source]}{where}",
            "percent": each.percent,
            "low": each.low,
            "high": each.high,
            "recalled": each.reading == "from memory",
        }
        for fibre, _ in parts
        for where, group in ((" at 65%", fibre.in_standard_air), ("", fibre.commercial))
        for each in group
    ]


def _origin(fibres: Sequence[Fibre], found: Sequence[Sequence[Regain]]) -> str:
    """Name the sources and how each was come by, once where the fibres share them."""
    names = [SHORT[each[0].source] for each in found]
    readings = [each[0].reading for each in found]
    if len(set(zip(names, readings, strict=True))) == 1:
        return f"{names[0]} ({readings[0]})"
    kinds = [fibre.name for fibre in fibres]
    if len(set(names)) == 1:
        each = ", ".join(f"{kind} {how}" for kind, how in zip(kinds, readings, strict=True))
        return f"{names[0]} ({each})"
    return " and ".join(
        f"{name} ({kind} {how})" for name, kind, how in zip(names, kinds, readings, strict=True)
    )

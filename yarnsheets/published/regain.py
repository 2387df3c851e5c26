"""Published regains: how much water each fibre is sold with, and how much it takes from the air.

A *commercial* regain is agreed by the trade for labels and invoices; it is not the regain that
fibre comes to in air of any humidity, and authorities do not agree on it. Where two of them differ
both are here, each under its own name, and printing one tells where it is from and whether it was
read there.
"""

from dataclasses import dataclass
from typing import Literal

from yarnsheets import formulas
from yarnsheets.published.sources import (
    ASTM_D1909,
    ASTM_D2118,
    AWTA_GLOSSARY,
    CRITICAL_TABLES,
    EU_1007_2011,
    TEXTILE_FIBRES,
    Source,
)

Reading = Literal["read", "read as quoted", "from memory"]


@dataclass(frozen=True)
class Regain:
    """A published regain of a fibre, in per cent of its dry mass.

    `low` and `high` bound what the source gives; where it prints one figure both are equal to it,
    and where it prints two, `percent` is the middle. `note` says what was quoted and by whom.

    >>> print(SILK_ASTM)
    silk: 11 % regain (ASTM International, D1909, Standard Tables of Commercial Moisture Regains \
and Commercial Allowances for Textile Fibers (2013); read as quoted in table 10 of Bioresources \
and Bioprocessing, 2020, article s40643-020-00339-1)
    """

    fibre: str
    percent: float
    low: float
    high: float
    source: Source
    reading: Reading
    note: str = ""

    @property
    def value(self) -> float:
        """Return the regain as the share of the dry mass that formulas take."""
        return self.percent / 100

    def __str__(self) -> str:
        """Return the regain in one line, with where it is from and how it was come by."""
        size = f"{self.percent:.4g}" if self.low == self.high else f"{self.low:g} to {self.high:g}"
        origin = f"{self.reading} {self.note}".rstrip()
        return f"{self.fibre}: {size} % regain ({self.source}; {origin})"


@dataclass(frozen=True)
class Fibre:
    """A fibre with its commercial regains, those in air of 65 % humidity at 20 °C, and its most.

    `most` is about what it holds in air that can hold no more: a greater regain is wet fibre.
    """

    name: str
    commercial: tuple[Regain, ...]
    in_standard_air: tuple[Regain, ...]
    most: Regain


_REVIEW = "in table 10 of Bioresources and Bioprocessing, 2020, article s40643-020-00339-1"
_ALIKE = "and read alike in annex II of the French order of 24 June 1998 on textile names"


def _agreed(fibre: str, percent: float, source: Source, reading: Reading, note: str = "") -> Regain:
    return Regain(fibre, percent, percent, percent, source, reading, note)


def _astm(fibre: str, percent: float) -> Regain:
    return _agreed(fibre, percent, ASTM_D1909, "read as quoted", _REVIEW)


def _astm_recalled(fibre: str, percent: float) -> Regain:
    return _agreed(fibre, percent, ASTM_D1909, "from memory", "of an edition not recorded")


def _eu(fibre: str, percent: float) -> Regain:
    return _agreed(fibre, percent, EU_1007_2011, "read")


def _eu_recalled(fibre: str, percent: float) -> Regain:
    return _agreed(fibre, percent, EU_1007_2011, "from memory", _ALIKE)


def _from_content(fibre: str, content: float) -> Regain:
    percent = 100 * formulas.regain_from_content(content / 100)
    return _agreed(fibre, percent, ASTM_D2118, "read", f"as a moisture content of {content:g} %")


def _air(fibre: str, low: float, high: float) -> Regain:
    middle = (low + high) / 2
    return Regain(fibre, middle, low, high, TEXTILE_FIBRES, "read as quoted", _REVIEW)


def _air_recalled(fibre: str, low: float, high: float) -> Regain:
    return Regain(fibre, (low + high) / 2, low, high, TEXTILE_FIBRES, "from memory")


def _most(fibre: str, percent: float) -> Regain:
    return _agreed(
        f"{fibre}, in saturated air", percent, TEXTILE_FIBRES, "from memory", "and round"
    )


WOOL_ASTM = _astm("wool", 13.6)
WOOL_SCOURED_ASTM = _from_content("wool, scoured", 12)
WOOL_WORSTED_ASTM = _from_content("wool, worsted yarn spun dry", 13.04)
WOOL_AUSTRALIA = _agreed("wool", 16, AWTA_GLOSSARY, "read")
WOOL_CARDED_EU = _eu("wool, carded, or not known to be combed", 17)
WOOL_COMBED_EU = _eu_recalled("wool, combed", 18.25)
HAIR_ASTM = _astm_recalled("hair, as wool", 13.6)
HAIR_CARDED_EU = _eu_recalled("hair, carded, or not known to be combed", 17)
HAIR_COMBED_EU = _eu_recalled("hair, combed", 18.25)
HORSEHAIR_CARDED_EU = _eu_recalled("horsehair, carded", 15)
HORSEHAIR_COMBED_EU = _eu_recalled("horsehair, combed", 16)
SILK_ASTM = _astm("silk", 11)
SILK_EU = _eu_recalled("silk", 11)
COTTON_ASTM = _astm("cotton", 8.5)
COTTON_NATURAL_YARN_ASTM = _astm_recalled("cotton, natural yarn", 7)
COTTON_EU = _eu("cotton", 8.5)
COTTON_MERCERISED_EU = _eu_recalled("cotton, mercerised", 10.5)
FLAX_ASTM = _astm("flax", 12)
LINEN_ASTM = _astm_recalled("linen", 8.75)
FLAX_EU = _eu_recalled("flax", 12)
HEMP_ASTM = _astm("hemp", 12)
HEMP_EU = _eu_recalled("hemp", 12)
RAMIE_RAW_ASTM = _astm_recalled("ramie, raw", 7.6)
RAMIE_SCOURED_ASTM = _astm_recalled("ramie, scoured", 7.8)
RAMIE_BLEACHED_EU = _eu_recalled("ramie, bleached", 8.5)
JUTE_ASTM = _astm("jute", 13.75)
JUTE_EU = _eu_recalled("jute", 17)
RAYON_ASTM = _astm_recalled("rayon", 11)
VISCOSE_EU = _eu_recalled("viscose, modal or lyocell", 13)
NYLON_ASTM = _astm_recalled("nylon", 4.5)
NYLON_STAPLE_EU = _eu("nylon, staple", 6.25)
NYLON_FILAMENT_EU = _eu_recalled("nylon, filament", 5.75)
POLYESTER_ASTM = _astm_recalled("polyester", 0.4)
POLYESTER_EU = _eu_recalled("polyester", 1.5)
ACRYLIC_ASTM = _astm_recalled("acrylic", 1.5)
ACRYLIC_EU = _eu_recalled("acrylic", 2)

# Morton and Hearle print two figures for wool; that the lower is for wool that came from drier air
# and the higher for wool that came from damper air is from memory.
WOOL_FROM_DRIER_AIR = _air("wool, come from drier air", 14, 14)
WOOL_FROM_DAMPER_AIR = _air("wool, come from damper air", 16, 18)

WOOL = Fibre(
    "wool",
    (
        WOOL_ASTM,
        WOOL_SCOURED_ASTM,
        WOOL_WORSTED_ASTM,
        WOOL_AUSTRALIA,
        WOOL_CARDED_EU,
        WOOL_COMBED_EU,
    ),
    (WOOL_FROM_DRIER_AIR, WOOL_FROM_DAMPER_AIR),
    _most("wool", 33),
)
HAIR = Fibre(
    "alpaca, mohair, cashmere, camel, angora or yak",
    (HAIR_ASTM, HAIR_CARDED_EU, HAIR_COMBED_EU),
    (_air_recalled("hair", 13, 16),),
    _most("hair", 33),
)
HORSEHAIR = Fibre(
    "horsehair", (HORSEHAIR_CARDED_EU, HORSEHAIR_COMBED_EU), (), _most("horsehair", 33)
)
SILK = Fibre("silk", (SILK_ASTM, SILK_EU), (_air("silk", 10, 10),), _most("silk", 35))
COTTON = Fibre(
    "cotton",
    (COTTON_ASTM, COTTON_NATURAL_YARN_ASTM, COTTON_EU, COTTON_MERCERISED_EU),
    (_air("cotton", 7, 8),),
    _most("cotton", 27),
)
FLAX = Fibre("flax", (FLAX_ASTM, LINEN_ASTM, FLAX_EU), (_air("flax", 7, 7),), _most("flax", 25))
HEMP = Fibre("hemp", (HEMP_ASTM, HEMP_EU), (_air("hemp", 8, 8),), _most("hemp", 30))
RAMIE = Fibre(
    "ramie",
    (RAMIE_RAW_ASTM, RAMIE_SCOURED_ASTM, RAMIE_BLEACHED_EU),
    (_air_recalled("ramie", 6, 8),),
    _most("ramie", 30),
)
JUTE = Fibre("jute", (JUTE_ASTM, JUTE_EU), (_air("jute", 12, 12),), _most("jute", 34))
VISCOSE = Fibre(
    "viscose, modal or lyocell",
    (RAYON_ASTM, VISCOSE_EU),
    (_air_recalled("viscose", 12, 14),),
    _most("viscose", 45),
)
NYLON = Fibre(
    "nylon",
    (NYLON_ASTM, NYLON_STAPLE_EU, NYLON_FILAMENT_EU),
    (_air_recalled("nylon", 4.1, 4.1),),
    _most("nylon", 9),
)
POLYESTER = Fibre(
    "polyester",
    (POLYESTER_ASTM, POLYESTER_EU),
    (_air_recalled("polyester", 0.4, 0.4),),
    _most("polyester", 1),
)
ACRYLIC = Fibre(
    "acrylic", (ACRYLIC_ASTM, ACRYLIC_EU), (_air_recalled("acrylic", 1, 2),), _most("acrylic", 5)
)

FIBRES = (
    WOOL, HAIR, HORSEHAIR, SILK, COTTON, FLAX, HEMP, RAMIE, JUTE, VISCOSE, NYLON, POLYESTER,
    ACRYLIC,
)  # fmt: skip

# A skein of merino at room temperature: relative humidity and regain, both in per cent.
_HUMIDITIES = (10, 20, 30, 40, 50, 60, 70, 80, 90)
_REGAINS = (4.7, 7.0, 8.9, 10.8, 12.8, 14.9, 17.2, 19.9, 23.4)
_POINTS = 1.5  # either way: the table does not say from which side the wool came to the humidity


def wool_in_air(humidity: float) -> Regain:
    """Return the regain that wool comes to in air of a relative humidity, in per cent.

    Between the rows of the table the line is straight. Wool that dries into a humidity holds 1 to 2
    points more than wool that grows damp into it, so the regain is known to 1.5 points either way.

    Parameters
    ----------
    humidity : float
        Relative humidity of the air, 10 to 90. [percent]

    Raises
    ------
    ValueError
        If the humidity lies outside the table.

    Examples
    --------
    >>> air = wool_in_air(65)
    >>> round(air.percent, 2), round(air.low, 2), round(air.high, 2), air.reading
    (16.05, 14.55, 17.55, 'from memory')
    """
    if not _HUMIDITIES[0] <= humidity <= _HUMIDITIES[-1]:
        msg = (
            f"A relative humidity of {humidity:g} % is outside the table of wool in air. "
            "Give one from 10 to 90 %, as a hygrometer shows it."
        )
        raise ValueError(msg)
    row = sum(start <= humidity for start in _HUMIDITIES[1:-1])
    below, above = _HUMIDITIES[row], _HUMIDITIES[row + 1]
    share = (humidity - below) / (above - below)
    percent = _REGAINS[row] * (1 - share) + _REGAINS[row + 1] * share
    return Regain(
        f"wool in air of {humidity:g} % humidity",
        percent,
        percent - _POINTS,
        percent + _POINTS,
        CRITICAL_TABLES,
        "from memory",
    )

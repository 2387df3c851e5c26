"""Every constant is plausible, has a unit that pint reads, and can say where it was printed."""

import dataclasses

import pytest

from yarnsheets.published import sources
from yarnsheets.published.sources import Constant, Source
from yarnsheets.units import convert, registry

CONSTANTS = {name: it for name, it in vars(sources).items() if isinstance(it, Constant)}
SOURCES = {name: it for name, it in vars(sources).items() if isinstance(it, Source)}

every_constant = pytest.mark.parametrize("constant", CONSTANTS.values(), ids=CONSTANTS)


def test_there_are_constants_and_sources() -> None:
    assert len(CONSTANTS) > 15
    assert len(SOURCES) > 5


@every_constant
def test_value_lies_in_its_range(constant: Constant) -> None:
    assert constant.low <= constant.value <= constant.high


@every_constant
def test_unit_is_read_by_pint(constant: Constant) -> None:
    assert registry().Quantity(constant.value, constant.unit).magnitude == constant.value


@every_constant
def test_source_is_one_of_those_named(constant: Constant) -> None:
    assert constant.source in SOURCES.values()
    assert constant.source.title


@every_constant
def test_printing_shows_value_unit_and_source(constant: Constant) -> None:
    printed = str(constant)
    assert printed.startswith(f"{constant.value:.15g} {constant.unit} ")
    assert str(constant.source) in printed


def test_a_source_that_is_not_common_practice_has_an_author_and_a_year_or_place() -> None:
    for source in SOURCES.values():
        if source is not sources.COMMON_PRACTICE:
            assert source.author
            assert source.year or source.where


def test_a_constant_cannot_be_edited() -> None:
    with pytest.raises(dataclasses.FrozenInstanceError):
        sources.YARD.value = 0.9  # type: ignore[misc]


# Definitions, exact: NIST Special Publication 811 (2008), appendix B, and Handbook 44, appendix C.
@pytest.mark.parametrize(
    ("constant", "unit"),
    [
        (sources.YARD, "yd"),
        (sources.INCH, "in"),
        (sources.POUND, "lb"),
        (sources.OUNCE, "oz"),
        (sources.DRAM, "dram"),
        (sources.GRAIN, "grain"),
    ],
    ids=str,
)
def test_pint_defines_the_unit_alike(constant: Constant, unit: str) -> None:
    assert convert(1.0, unit, constant.unit) == pytest.approx(constant.value, rel=1e-15)


# The hank lengths of the definitions file, written down a second time from the same sources.
@pytest.mark.parametrize(
    ("hank", "mass", "count"),
    [
        (sources.COTTON_HANK, "lb", "cotton_count"),
        (sources.WORSTED_HANK, "lb", "worsted_count"),
        (sources.LINEN_LEA, "lb", "linen_lea"),
        (sources.WOOLLEN_RUN, "lb", "woollen_run"),
        (sources.WOOLLEN_CUT, "lb", "woollen_cut"),
        (sources.YORKSHIRE_SKEIN, "lb", "yorkshire_skein"),
    ],
    ids=str,
)
def test_hanks_agree_with_the_definitions_file(hank: Constant, mass: str, count: str) -> None:
    assert convert(1.0, count, f"yd/{mass}") == pytest.approx(hank.value, rel=1e-15)


def test_the_other_counts_agree_with_the_definitions_file() -> None:
    cut, french = sources.GALASHIELS_CUT, sources.FRENCH_COTTON_HANK
    assert convert(1.0, "galashiels_cut", "yd/oz") == pytest.approx(cut.value / 24, rel=1e-15)
    assert convert(1.0, "french_cotton_count", "m/g") == pytest.approx(french.value / 500)
    spyndle, silk = sources.JUTE_SPYNDLE, sources.SILK_DRAM_LENGTH
    assert convert(1.0, "jute", "yd/lb") == pytest.approx(spyndle.value, rel=1e-15)
    assert convert(1.0, "silk_dram_count", "yd/dram") == pytest.approx(silk.value, rel=1e-15)
    grain = sources.AMERICAN_GRAIN_LENGTH
    assert convert(1.0, "american_grain_count", "yd/grain") == pytest.approx(grain.value, rel=1e-15)

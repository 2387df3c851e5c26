"""The worksheet that checks a balance: the factor by two ways in Python, and on the page."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest
from scipy import stats

from tests.browser import open_sheet
from tests.reader import rows
from yarnsheets.sheets import IsMyBalanceRight

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

POUND = 453.59237  # grams, exact: NIST Handbook 44, appendix C
CUTS = [12.1, 12.6, 12.3, 12.8, 12.2]
YARN = {"way": "yarn", "yarn_length": 150, "yarn_weight": 1 / 8, "cuts": CUTS}
# all the tools' errors as small as they can be typed
TOOLS_ALONE = {
    "scale_step": 0.00001,
    "scale_error": 0.0001,
    "known_error": 0.0001,
    "trimming": 0.001,
    "stretch": 0.0001,
}


def test_a_counterweight_of_130_milligrams_where_the_maker_says_100() -> None:
    # hand-worked from exact definitions: 453.59237 / 36 / 0.13 yd/lb to the inch, ten times
    sheet = IsMyBalanceRight(balance_factor=100, weighings=[0.13], cut=10)
    assert sheet.true_grist == pytest.approx(969.214465811966, abs=5e-13)
    assert sheet.reported == 1000
    # a ratio less 1 cannot be had finer than the last bit of a double near 1, wider than the
    # half digit printed here
    assert sheet.error == pytest.approx(0.0317633870252272, abs=2**-53)
    assert sheet.is_high


def test_a_factor_of_100_is_35_eighteenths_of_a_grain() -> None:
    # hand-worked: 7000 grains / 3600 = 35/18 grain, and 0.06479891 g to the grain (exact)
    sheet = IsMyBalanceRight(balance_factor=100)
    grams = sheet.implied_weight * POUND
    assert grams == pytest.approx(0.125997880555556, abs=5e-16)
    assert grams / 0.06479891 == pytest.approx(35 / 18, rel=1e-15)


def test_the_right_counterweight_gives_the_makers_factor_back() -> None:
    sheet = IsMyBalanceRight(balance_factor=100, weighings=[35 / 18 * 0.06479891])
    assert sheet.factor == pytest.approx(100, rel=1e-14)
    assert sheet.is_within


def test_weighings_are_averaged_before_they_are_turned_into_a_factor() -> None:
    # hand-worked: 453.59237 / 36 / mean(0.129, 0.131, 0.133)
    sheet = IsMyBalanceRight(weighings=[0.129, 0.131, 0.133])
    assert sheet.factor == pytest.approx(POUND / 36 / 0.131, rel=1e-14)


def test_the_range_of_weighings_alone_is_students_t() -> None:
    # scipy's t on the weighings; the range is a factor either way
    weighings = [0.129, 0.131, 0.133, 0.128]
    sheet = IsMyBalanceRight(weighings=weighings, **TOOLS_ALONE)
    relative = stats.sem(weighings) / (sum(weighings) / 4)
    exponent = stats.t.ppf(0.975, 3) * relative
    assert sheet.exponent == pytest.approx(exponent, rel=1e-4)
    assert sheet.factor_high / sheet.factor == pytest.approx(math.exp(exponent), rel=1e-5)


def test_one_weighing_has_the_range_of_the_scale() -> None:
    # by hand: a milligram's step over sqrt(12), and half a per cent over sqrt(3), JCGM 100:2008
    sheet = IsMyBalanceRight(weighings=[0.13], scale_step=0.001, scale_error=0.005)
    relative = math.hypot(0.001 / 0.13 / math.sqrt(12), 0.005 / math.sqrt(3))
    exponent = stats.norm.ppf(0.975) * relative
    assert exponent < 0.95 * (0.0005 / 0.13 + 0.005)
    assert sheet.half_width == pytest.approx(math.expm1(exponent), rel=1e-9)


def test_one_weighing_on_a_coarse_scale_is_off_by_half_a_step_at_most() -> None:
    # by hand: 0.95 of half of 0.01 g in 0.13, and of the scale's own 0.01 % (JCGM 100, G.6.5)
    sheet = IsMyBalanceRight(weighings=[0.13], scale_step=0.01, scale_error=0.0001)
    assert sheet.exponent == pytest.approx(0.95 * (0.005 / 0.13 + 0.0001), rel=1e-9)


def test_a_known_yarn_gives_its_grist_over_the_harmonic_mean_cut() -> None:
    # hand-worked: 150 yd in 2 oz is 1200 yd/lb; 5 / sum(1 / cut) is the harmonic mean
    sheet = IsMyBalanceRight(**YARN)
    assert sheet.known_grist == 1200
    assert sheet.factor == pytest.approx(1200 * sum(1 / cut for cut in CUTS) / 5, rel=1e-14)


def test_the_range_of_the_cuts_alone_is_students_t() -> None:
    # scipy's t on the mass per length of each cut
    sheet = IsMyBalanceRight(**YARN, **TOOLS_ALONE)
    thickness = [1 / cut for cut in CUTS]
    relative = stats.sem(thickness) / (sum(thickness) / 5)
    assert sheet.exponent == pytest.approx(stats.t.ppf(0.975, 4) * relative, rel=1e-3)


def by_hand(sheet: IsMyBalanceRight) -> float:
    """Give half the range of the factor's logarithm: scipy's t, and the normal curve or bounds."""
    if sheet.way == "weighing":
        readings = sheet.weighings
        weight = sum(readings) / len(readings)
        bounds = [sheet.scale_step / 2 / weight, sheet.scale_error]
    else:
        readings = [1 / cut for cut in sheet.cuts]
        cut = stats.hmean(sheet.cuts)
        bounds = [sheet.known_error, sheet.trimming / cut, sheet.stretch]
    few = stats.sem(readings) / (sum(readings) / len(readings))
    rest = stats.norm.ppf(0.975) * math.hypot(*bounds) / math.sqrt(3)
    return math.hypot(stats.t.ppf(0.975, len(readings) - 1) * few, min(rest, 0.95 * sum(bounds)))


@pytest.mark.parametrize("given", [{"weighings": [0.130, 0.129, 0.130]}, YARN])
@pytest.mark.parametrize("maker", [90, 93, 94.5, 96, 97, 98, 99, 101, 110])
def test_a_makers_number_outside_the_range_is_more_than_noise(
    given: dict[str, Any], maker: float
) -> None:
    sheet = IsMyBalanceRight(**given, balance_factor=maker)
    exponent = by_hand(sheet)
    assert sheet.exponent == pytest.approx(exponent, rel=1e-9)
    assert sheet.factor_high == pytest.approx(sheet.factor * math.exp(exponent), rel=1e-9)
    assert sheet.is_within == (abs(math.log(maker / sheet.factor)) <= exponent)
    assert sheet.is_within + sheet.is_high + sheet.is_low == 1
    assert sheet.is_within or bool(sheet.is_high) == (maker > sheet.factor)


@pytest.mark.parametrize("measure", ["yards, ounces", "metres, grams"])
def test_an_end_that_looks_like_the_makers_number_has_more_figures(measure: str) -> None:
    # five cuts of the known yarn: the range ends just below 100
    sheet = IsMyBalanceRight(**YARN, measure=measure)
    assert sheet.factor_high < sheet.balance_factor == pytest.approx(sheet.factor_high, rel=5e-4)
    assert sheet.is_high
    assert f"and {sheet.say('{factor_high:5!}')}, 95% sure" in sheet.sentence
    assert sheet.say("{factor_high:5!}") != sheet.say("{balance_factor:5!}")


def test_too_low_and_too_high_are_told_apart() -> None:
    assert "too low" in IsMyBalanceRight(weighings=[0.12]).sentence
    assert "too high" in IsMyBalanceRight(weighings=[0.13]).sentence
    assert "no reason to change" in IsMyBalanceRight(weighings=[0.126]).sentence


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"weighings": []}, "There is no weighing yet"),
        ({"weighings": [0]}, "cannot be"),
        ({"weighings": [130]}, "looks like milligrams. Type grams, such as 0.126"),
        ({"weighings": [2.01]}, "looks like grains"),
        ({"weighings": [0.13, 0.5]}, "0.5 g is far from the 0.126 g"),
        ({"weighings": [5e-324]}, "0 g is far from the 0.126 g"),
        ({"weighings": [0.09], "scale_step": 0.1}, "less than one step of the scale, 0.1 g"),
        ({**YARN, "cuts": [5e-324, 1, 1]}, "cannot be"),
        ({**YARN, "cuts": []}, "There are no cuts yet"),
        ({**YARN, "cuts": [12]}, "One cut is a guess"),
        ({**YARN, "cuts": [30.7, 32, 31.2]}, "looks like centimetres"),
        ({**YARN, "yarn_weight": 3}, "the mass looks like grams"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    given: dict[str, Any], said: str
) -> None:
    sheet = IsMyBalanceRight(**given)
    assert said in sheet.sentence
    assert "95% sure" not in sheet.sentence
    assert not any([sheet.has_range, sheet.is_within, sheet.is_high, sheet.is_low])


def test_a_warning_follows_the_units() -> None:
    sheet = IsMyBalanceRight(**YARN | {"cuts": [30.7, 32, 31.2]}, measure="metres, grams")
    assert "A cut of 79.5\N{NO-BREAK SPACE}cm is 2.6 times the 30.5" in sheet.sentence


@pytest.mark.parametrize("way", ["weighing", "yarn"])
def test_what_only_the_other_way_asks_for_is_hidden(way: str) -> None:
    # each of them changed by a third: the answer and the arithmetic stay to the letter
    sheet = IsMyBalanceRight(way=way)
    for name in sheet.unused():
        was = getattr(sheet, name)
        changed = [x * 4 / 3 for x in was] if isinstance(was, list) else was * 4 / 3
        other = IsMyBalanceRight(way=way, **{name: changed})
        assert (other.sentence, other.arithmetic) == (sheet.sentence, sheet.arithmetic)
    for name in set(sheet.inputs()) - {*sheet.unused(), "way"}:
        was = getattr(sheet, name)
        changed = [*was[:-1], was[-1] * 1.01] if isinstance(was, list) else was * 4 / 3
        other = IsMyBalanceRight(way=way, **{name: changed})
        assert (other.sentence, other.arithmetic) != (sheet.sentence, sheet.arithmetic)


def test_what_is_typed_for_the_other_way_does_no_harm() -> None:
    assert IsMyBalanceRight(weighings=[0.13], cuts=[]).has_range
    assert IsMyBalanceRight(**YARN, weighings=[]).has_range


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "is-my-balance-right")


def test_the_line_beside_the_diagonal_is_off_by_the_error(sheet: Page) -> None:
    tables = rows(sheet, "reading_against_truth", "reading")
    error = IsMyBalanceRight().error
    ratios = {round(row["reading"] / row["truth"], 9) for t in tables if len(t) == 2 for row in t}
    assert {1, round(1 + error, 9)} <= ratios
    point = next(t[0] for t in tables if len(t) == 1)
    assert point["reading"] == pytest.approx(1000, rel=1e-12)
    assert point["reading"] / point["truth"] == pytest.approx(1 + error, rel=1e-9)

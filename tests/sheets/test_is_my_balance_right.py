"""The worksheet that checks a balance: the factor by two ways in Python, and on the page."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

import pytest
from scipy import stats

from tests.browser import open_sheet
from tests.reader import rows
from yarnsheets.estimates import PositiveEstimate, Verdict, compare
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
    assert sheet.half_width == pytest.approx(exponent, rel=1e-4)
    assert sheet.factor_high / sheet.factor == pytest.approx(math.exp(exponent), rel=1e-5)


def test_one_weighing_has_the_range_of_the_scale() -> None:
    # by hand: a milligram's step over sqrt(12), and half a per cent over sqrt(3), JCGM 100:2008
    sheet = IsMyBalanceRight(weighings=[0.13], scale_step=0.001, scale_error=0.005)
    relative = math.hypot(0.001 / 0.13 / math.sqrt(12), 0.005 / math.sqrt(3))
    assert sheet.half_width == pytest.approx(stats.norm.ppf(0.975) * relative, rel=1e-12)


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
    assert sheet.half_width == pytest.approx(stats.t.ppf(0.975, 4) * relative, rel=1e-3)


@pytest.mark.parametrize("given", [{"weighings": [0.130, 0.129, 0.130]}, YARN])
@pytest.mark.parametrize("maker", [90, 94.5, 96, 97, 98, 99, 100, 110])
def test_more_than_noise_is_what_a_t_test_says(given: dict[str, Any], maker: float) -> None:
    # the other form of the question, by Welch's t: a target has no uncertainty
    sheet = IsMyBalanceRight(**given, balance_factor=maker)
    dof = _dof(sheet)
    relative = sheet.half_width / stats.t.ppf(0.975, dof)
    found = PositiveEstimate(sheet.factor, sheet.factor * relative, dof)
    verdict = compare(found, PositiveEstimate(maker, 0.0)).verdict
    assert sheet.is_within == (verdict is Verdict.WITHIN_NOISE)
    assert sheet.is_within + sheet.is_high + sheet.is_low == 1
    assert sheet.is_within or bool(sheet.is_high) == (maker > sheet.factor)


def _dof(sheet: IsMyBalanceRight) -> float:
    """Work Welch and Satterthwaite's formula by hand: only one source has few readings."""
    name, readings = (
        ("spread of the weighings", sheet.weighings)
        if sheet.way == "weighing"
        else ("unevenness of the yarn", sheet.cuts)
    )
    share = next(row["share"] for row in sheet.sources if row["source"] == name)
    return (len(readings) - 1) / share**2


def test_too_low_and_too_high_are_told_apart() -> None:
    assert "too low" in IsMyBalanceRight(weighings=[0.12]).sentence
    assert "too high" in IsMyBalanceRight(weighings=[0.13]).sentence
    assert "no reason to change it" in IsMyBalanceRight(weighings=[0.126]).sentence


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"weighings": []}, "There is no weighing yet"),
        ({"weighings": [0]}, "cannot be"),
        ({"weighings": [130]}, "looks like milligrams. Type grams, such as 0.126"),
        ({"weighings": [2.01]}, "looks like grains"),
        ({"weighings": [0.13, 0.5]}, "0.5 g is far from the 0.126 g"),
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
    assert "19 checks of 20" not in sheet.sentence
    assert not any([sheet.has_range, sheet.is_within, sheet.is_high, sheet.is_low])


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

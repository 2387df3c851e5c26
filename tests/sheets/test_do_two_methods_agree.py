"""The worksheet on two methods: noise on one skein, the next of several, and the page.

Lancet  published: J. M. Bland and D. G. Altman, Statistical methods for assessing agreement between
        two methods of clinical measurement, Lancet 1986; 327: 307-310. Its table of 17 people and
        its mean difference, standard deviation and range of the mean difference.
scipy   the t test of two samples with unequal variances, and the paired one, worked on logarithms;
        Student's t for the range of one further skein.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import pytest
from scipy import stats

from tests.browser import open_sheet, wait_until
from tests.estimates.test_agreement import LARGE, MINI
from tests.reader import type_in
from yarnsheets.sheets import DoTwoMethodsAgree
from yarnsheets.sheets.do_two_methods_agree.sheet import how_often

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

FIRST = [412, 405, 420, 409, 416]
SECOND = [398, 410, 402, 394]
# invented: yards of eight skeins by two methods
EIGHT = [120, 215, 340, 410, 560, 800, 1150, 1620]
AGAIN = [126, 222, 351, 430, 570, 846, 1180, 1715]


# ---- one skein -----------------------------------------------------------------------------------


@pytest.mark.parametrize("second", [SECOND, [425, 399, 418, 407, 405, 413]])
def test_one_skein_is_the_t_test_with_unequal_variances(second: list[float]) -> None:
    sheet = DoTwoMethodsAgree(first=FIRST, second=second)
    test = stats.ttest_ind(np.log(FIRST), np.log(second), equal_var=False)
    assert sheet.t == pytest.approx(test.statistic, rel=1e-9)
    assert sheet.dof == pytest.approx(test.df, rel=1e-9)
    assert sheet.probability == pytest.approx(test.pvalue, rel=1e-9)
    assert sheet.is_apart == (test.pvalue < 0.05) == (not sheet.is_noise)
    ends = [(math.exp(end) - 1) * 100 for end in test.confidence_interval(0.95)]
    assert [sheet.bands[0]["low"], sheet.bands[0]["high"]] == pytest.approx(ends, rel=1e-6)


def test_two_pairs_by_hand() -> None:
    # hand-worked: log means apart by log(50 / (30 x 50)**0.5) = log(5 / 3) / 2, which is also the
    # second's standard error, half the distance of its two logarithms; the first has none. So t is
    # 1 with 1 degree of freedom, and Student's P(|T| > 1) is then exactly a half.
    sheet = DoTwoMethodsAgree(first=[50, 50], second=[30, 50])
    assert sheet.t == pytest.approx(1, rel=1e-12)
    assert sheet.dof == pytest.approx(1, rel=1e-12)
    assert sheet.probability == pytest.approx(0.5, rel=1e-12)
    assert sheet.chance == "50 times of 100"


def test_tex_and_yards_to_the_pound_give_one_answer() -> None:
    one = DoTwoMethodsAgree(first=FIRST, second=SECOND)
    turned = DoTwoMethodsAgree(
        first=[496055 / grist for grist in FIRST], second=[496055 / grist for grist in SECOND]
    )
    assert turned.probability == pytest.approx(one.probability, rel=1e-9)
    assert turned.t == pytest.approx(-one.t, rel=1e-9)


@pytest.mark.parametrize(
    ("probability", "words"),
    [
        (1.0, "more than 99 times of 100"),
        (0.5, "50 times of 100"),
        (0.25, "25 times of 100"),
        (0.01, "once of 100"),
        (0.0049, "less than once of 100"),
    ],
)
def test_a_probability_is_said_plainly(probability: float, words: str) -> None:
    assert how_often(probability) == words


def test_the_sentence_says_noise_where_it_is_noise() -> None:
    second = [398, 410, 402, 394, 425]
    sheet = DoTwoMethodsAgree(first=FIRST, second=second)
    test = stats.ttest_ind(np.log(FIRST), np.log(second), equal_var=False)
    assert f"as large {round(test.pvalue * 100)} times of 100." in sheet.sentence
    assert "no more than their noise" in sheet.sentence
    low, high = np.exp(test.confidence_interval(0.95)) * 100 - 100
    assert f"between {-low:.0f}% less and {high:.1f}% more, 95% sure" in sheet.sentence


# ---- several skeins ------------------------------------------------------------------------------


def test_lancet_on_the_sheet() -> None:
    sheet = DoTwoMethodsAgree(situation="plain", first=LARGE, second=MINI)
    upper, mean, lower = sheet.bands
    assert mean["value"] == pytest.approx(-2.1, abs=0.05)
    assert sheet.deviation == pytest.approx(38.8, abs=0.05)
    assert (mean["low"], mean["high"]) == pytest.approx((-22.0, 17.8), abs=0.05)
    # hand-worked from what the paper prints: -2.1 -+ t(16) x 38.8 x (1 + 1/17)**0.5, t by scipy
    reach = stats.t.ppf(0.975, 16) * math.sqrt(18 / 17)
    rounding = 0.05 + reach * 0.05
    ends = (-2.1 - reach * 38.8, -2.1 + reach * 38.8)
    assert (lower["value"], upper["value"]) == pytest.approx(ends, abs=rounding)
    assert "2.1 less than the second" in sheet.sentence
    assert "between 87 less and 82 more, 95% sure" in sheet.sentence


def next_one(differences: np.ndarray) -> np.ndarray:
    """Give the range of one further difference, by scipy's t and numpy."""
    n = differences.size
    reach = stats.t.ppf(0.975, n - 1) * differences.std(ddof=1) * math.sqrt(1 + 1 / n)
    return differences.mean() + np.array([-reach, reach])


def test_per_cent_is_the_paired_t_test_of_logarithms() -> None:
    sheet = DoTwoMethodsAgree(situation="share", first=EIGHT, second=AGAIN)
    paired = stats.ttest_rel(np.log(EIGHT), np.log(AGAIN))
    upper, mean, lower = sheet.bands
    ends = (np.exp(paired.confidence_interval(0.95)) - 1) * 100
    assert [mean["low"], mean["high"]] == pytest.approx(ends, rel=1e-6)
    logs = np.log(np.divide(EIGHT, AGAIN))
    further = (np.exp(next_one(logs)) - 1) * 100
    assert [lower["value"], upper["value"]] == pytest.approx(further, rel=1e-9)
    points = [point["difference"] for point in sheet.points]
    assert points == pytest.approx((np.divide(EIGHT, AGAIN) - 1) * 100, rel=1e-9)


def test_a_range_to_one_side_begins_with_the_smaller() -> None:
    sheet = DoTwoMethodsAgree(situation="share", first=AGAIN, second=EIGHT)
    logs = np.log(np.divide(AGAIN, EIGHT))
    low, high = np.exp(next_one(logs)) * 100 - 100
    assert 0 < low < high
    assert f"between {low:.2g}% and {high:.2g}% more, 95% sure" in sheet.sentence


def test_a_range_whose_ends_would_be_written_alike_has_more_figures() -> None:
    # differences of about 4 with hardly any spread: two figures would say 4 and 4
    first = [104.01, 204, 304.02, 404, 504.01]
    sheet = DoTwoMethodsAgree(situation="plain", first=first, second=[100, 200, 300, 400, 500])
    low, high = next_one(np.subtract(first, [100, 200, 300, 400, 500]))
    assert f"between {low:.3g} and {high:.3g} more" in sheet.sentence


def test_methods_that_differ_by_nothing_that_shows() -> None:
    sheet = DoTwoMethodsAgree(first=[100, 101], second=[101, 100])
    assert "finds as much as the second: no more than their noise" in sheet.sentence


@pytest.mark.parametrize("situation", ["one", "share", "plain"])
def test_every_band_point_and_reading_is_inside_the_axes(situation: str) -> None:
    sheet = DoTwoMethodsAgree(situation=situation, first=EIGHT[4:6] * 3, second=[*AGAIN[3:6]] * 2)
    assert not sheet.warnings
    for band in sheet.bands:
        assert sheet.low_apart < band["low"] <= band["value"] <= band["high"] < sheet.high_apart
    for point in sheet.points:
        assert sheet.low_end < min(point["first_low"], point["second_low"])
        assert max(point["first_high"], point["second_high"]) < sheet.high_end
        assert sheet.low_apart < point["difference"] < sheet.high_apart
    assert all(sheet.low_end < row["reading"] < sheet.high_end for row in sheet.readings)
    assert sheet.low_apart < 0 < sheet.high_apart


# ---- what is unlikely ----------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("situation", "first", "second", "said"),
    [
        ("one", [], [400, 410], "first method there are too few"),
        ("one", [400, 410], [405], "second method there are too few"),
        ("one", [400, 410], [40, 410], "for several skeins, choose that"),
        ("one", [400, 400], [410, 410], "no noise to judge by"),
        ("one", [400, 410], [40, 41], "10 times apart"),
        ("share", FIRST, SECOND, "Lines by the first method: 5; by the second: 4"),
        ("share", SECOND, SECOND, "Skeins so far: 4"),
        ("plain", [], [], "Skeins so far: 0"),
        ("share", FIRST, [*SECOND, 41], "Line 5: the methods give 416 and 41, 10 times apart"),
        ("share", FIRST, FIRST, "exactly the same on every skein"),
        ("plain", FIRST, [2 + yards for yards in FIRST], "exactly the same on every skein"),
        ("share", FIRST, [1.1 * yards for yards in FIRST], "exactly the same on every skein"),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    situation: str, first: list[float], second: list[float], said: str
) -> None:
    sheet = DoTwoMethodsAgree(situation=situation, first=first, second=second)
    assert said in sheet.sentence
    assert len(sheet.warnings) == 1
    assert not sheet.is_one
    assert not sheet.is_several
    assert sheet.points == sheet.bands == []


def test_a_mended_list_has_its_answer_back() -> None:
    sheet = DoTwoMethodsAgree(first=[400], second=[410])
    sheet.first, sheet.second = FIRST, SECOND
    assert not sheet.warnings
    assert sheet.sentence == DoTwoMethodsAgree(first=FIRST, second=SECOND).sentence


@pytest.mark.parametrize("situation", ["one", "share", "plain"])
def test_every_word_the_page_may_say_is_filled(situation: str) -> None:
    sheet = DoTwoMethodsAgree(situation=situation, first=EIGHT[:5], second=AGAIN[:5])
    if situation == "one":
        sheet = DoTwoMethodsAgree()
    captions = [line for chart in sheet.describe()["charts"] for line in chart["caption"]]
    for text in [sheet.sentence, *sheet.arithmetic, *sheet.said(captions)]:
        assert text
        assert not set("{}–") & set(text)
        assert "  " not in text


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "do-two-methods-agree")


def lines(page: Page, name: str, numbers: list[float]) -> None:
    type_in(page, name, "\n".join(str(each) for each in numbers))


def test_bands_are_named_and_an_axis_is_in_per_cent_where_that_was_asked(sheet: Page) -> None:
    lines(sheet, "first", EIGHT)
    lines(sheet, "second", AGAIN)
    texts = sheet.locator("[data-name=difference_against_mean] svg text")
    for words, situation in (("how many %", "share"), ("how much", "plain")):
        option = f"several skeins: differ by {words}"
        sheet.get_by_label("What you measured").select_option(option)
        python = DoTwoMethodsAgree(situation=situation, first=EIGHT, second=AGAIN)
        names = {band["name"] for band in python.bands}
        wait_until(lambda names=names: names <= set(texts.all_text_contents()), str(names))
        percents = [
            text for text in texts.all_text_contents() if text.strip("−0123456789.,") == "%"
        ]
        assert bool(percents) == (situation == "share")


def test_there_is_no_choice_of_units_that_would_change_nothing(sheet: Page) -> None:
    assert sheet.locator(".ys-units").count() == 0
    assert sheet.locator(".ys-sheet select:visible").count() == 1

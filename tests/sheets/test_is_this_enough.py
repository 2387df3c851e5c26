"""The worksheet on enough: its chance against a simulation, its words, and its page."""

from __future__ import annotations

import math
from statistics import NormalDist
from typing import TYPE_CHECKING, Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.browser import open_sheet
from tests.reader import said, type_in
from yarnsheets.sheets import IsThisEnough
from yarnsheets.sheets.shared.doubt import times, verdict

if TYPE_CHECKING:
    from playwright.sync_api import Page

    from tests.browser import Server

DRAWS = 1_000_000
OUNCE = 1 / 16


def drawn(sheet: IsThisEnough) -> tuple[Any, Any]:
    """Draw the yards at hand and the yards needed, each error by itself and the grist once.

    Every range is read as a factor that is normal in its logarithm, 1.96 times its standard
    uncertainty; a scale's step as an error anywhere within half of it (JCGM 100:2008, 4.3.7).
    """
    draw = np.random.default_rng(20261126)

    def factor(either_way: float) -> Any:
        return np.exp(draw.normal(0, either_way / 1.959964, DRAWS))

    def weighing() -> Any:
        return draw.uniform(-sheet.scale_step / 2, sheet.scale_step / 2, DRAWS)

    grist = sheet.grist * factor(sheet.grist_range)
    there = sum((weight + weighing()) * grist for weight in sheet.weights)
    there = there + sum(length * factor(sheet.length_range) for length in sheet.lengths)
    if sheet.need_by == "swatch":
        swatch = sheet.swatch_weight + weighing()
        bare = swatch * sheet.project_area / sheet.swatch_area * grist
    else:
        bare = sheet.project
    return there, bare * factor(sheet.project_range)


BY_SWATCH = {"need_by": "swatch", "project_area": 1540}
CASES: tuple[dict[str, Any], ...] = (
    {},
    {"grist_range": 0.15, "project_range": 0.2},
    {"weights": [0.25], "lengths": [300, 280, 160], "length_range": 0.05, "project": 990},
    {"weights": [], "lengths": [400, 410], "length_range": 0.1, "project": 836},
    {"weights": [0.5 * OUNCE] * 8, "scale_step": 0.1 * OUNCE, "project": 319},
    {"need_by": "swatch", "project_area": 1474, "grist_range": 0.15},
    {**BY_SWATCH, "lengths": [340], "weights": [0.5], "project_range": 0.03},
    {**BY_SWATCH, "weights": [], "lengths": [950], "grist_range": 0.12},
)


@pytest.mark.parametrize("case", CASES)
def test_the_chance_is_that_of_a_million_draws(case: dict[str, Any]) -> None:
    # numpy's draws above, counted; half a per cent is ten of the simulation's own errors
    sheet = IsThisEnough(**case)
    there, takes = drawn(sheet)
    assert 0.02 < sheet.chance < 0.98, "a case that tells nothing"
    assert sheet.chance == pytest.approx(np.mean(there >= takes), abs=0.005)
    assert sheet.sentence.startswith(f"{verdict(sheet.chance)}: {times(sheet.chance)}.")


@pytest.mark.parametrize("case", CASES)
def test_the_range_of_the_yards_is_that_of_a_million_draws(case: dict[str, Any]) -> None:
    # numpy's draws above: their middle 95 %, to a two-hundredth of the yards
    sheet = IsThisEnough(**case)
    low, high = np.quantile(drawn(sheet)[0], [0.025, 0.975])
    assert sheet.at_hand_low == pytest.approx(low, rel=0.005)
    assert sheet.at_hand_high == pytest.approx(high, rel=0.005)


def test_yards_and_need_are_those_worked_by_hand() -> None:
    # 12 oz is 3/4 lb, at 1200 yd/lb 900 yd; 200 yd more are 1100
    sheet = IsThisEnough(weights=[0.25] * 3, grist=1200, lengths=[200], project=800)
    assert (sheet.at_hand, sheet.needed) == (1100, 800)


def test_a_swatch_gives_weight_and_yards_worked_by_hand() -> None:
    # half an ounce for 50 sq in is 10 oz for 1000 sq in, at 1600 yd/lb 1000 yd
    sheet = IsThisEnough(
        need_by="swatch",
        swatch_weight=0.5 * OUNCE,
        swatch_area=50,
        project_area=1000,
        grist=1600,
    )
    assert sheet.from_swatch == pytest.approx(10 * OUNCE, rel=1e-12)
    assert sheet.needed == pytest.approx(1000, rel=1e-12)


def test_more_weighed_skeins_do_not_lessen_the_grists_doubt() -> None:
    # JCGM 100:2008, 5.2.2: errors in common add plainly, so the relative doubt stays
    one = IsThisEnough(weights=[0.8], scale_step=0.00001)
    eight = IsThisEnough(weights=[0.1] * 8, scale_step=0.00001)
    assert eight.have_doubt == pytest.approx(one.have_doubt, rel=1e-4)
    assert one.have_doubt == pytest.approx(0.06 / 1.959964, rel=1e-4)


def test_known_lengths_of_their_own_doubt_make_up_for_one_another() -> None:
    # JCGM 100:2008, 5.1.2: independent errors add by squares, so four skeins halve the doubt
    sheet = IsThisEnough(weights=[], lengths=[200] * 4, length_range=0.05)
    assert sheet.have_doubt == pytest.approx(0.05 / 1.959964 / 2, rel=1e-6)


def test_grist_cancels_between_a_swatch_and_weighed_skeins_only() -> None:
    def chances(**case: Any) -> list[float]:
        return [
            IsThisEnough(project_area=1474, grist_range=doubt, **case).chance
            for doubt in (0.01, 0.2)
        ]

    by_swatch, by_pattern = chances(need_by="swatch"), chances(need_by="pattern")
    counted = chances(need_by="swatch", weights=[], lengths=[991])
    assert by_swatch[0] == pytest.approx(by_swatch[1], abs=1e-12)
    assert abs(by_pattern[0] - by_pattern[1]) > 0.05
    assert abs(counted[0] - counted[1]) > 0.05


def test_with_what_is_missing_it_is_as_safe_as_wanted() -> None:
    sheet = IsThisEnough(weights=[0.7], scale_step=0.00001)
    spun = IsThisEnough(weights=[0.7 + sheet.more_weight], scale_step=0.00001)
    assert sheet.is_short
    assert spun.chance == pytest.approx(0.95, abs=1e-5)
    # a twentieth is lost, so 19 parts of yarn take 20 of fibre
    assert sheet.more_fibre * 19 == pytest.approx(sheet.more_weight * 20, rel=1e-12)


def test_the_part_of_a_scarf_is_as_safe_as_wanted() -> None:
    sheet = IsThisEnough()
    assert 0.5 < sheet.part < 1
    assert IsThisEnough(project=930 * sheet.part).chance == pytest.approx(0.95, abs=1e-9)


def test_each_size_has_the_chance_it_has_as_the_project() -> None:
    sheet = IsThisEnough(sizes=[940, 700, 850, 780, 850])
    assert [row["size"] for row in sheet.size_chances] == [700, 780, 850, 940]
    for row in sheet.size_chances:
        assert row["chance"] == pytest.approx(IsThisEnough(project=row["size"]).chance, rel=1e-12)
    # NormalDist of Python's library: 991 1/4 yd at hand, 6 and 10 per cent either way
    doubt = math.hypot(0.06, 0.1) / NormalDist().inv_cdf(0.975)
    chances = {size: NormalDist(0, doubt).cdf(math.log(991.25 / size)) for size in (850, 940)}
    assert chances[850] > 0.95 > chances[940]
    assert sheet.largest == 850
    assert sheet.fits_some
    assert IsThisEnough(sizes=[1100]).fits_none


def test_sizes_not_typed_are_parts_of_this_project_and_of_no_other() -> None:
    sheet = IsThisEnough(project=200)
    assert [row["size"] for row in sheet.size_chances] == pytest.approx([160, 180, 200, 220, 240])
    assert sheet.size_chances[2]["chance"] == sheet.chance
    swatch = IsThisEnough(need_by="swatch")
    assert swatch.size_chances[2]["chance"] == swatch.chance
    assert sheet.fits_unasked
    assert not IsThisEnough(sizes=[700]).fits_unasked


def test_a_chance_written_as_the_one_wanted_has_reached_it() -> None:
    # NormalDist of Python's library: yards that are enough 946 and 944 times of 1000
    doubt = math.hypot(0.06, 0.1) / NormalDist().inv_cdf(0.975)

    def at(chance: float) -> IsThisEnough:
        project = 1000 / math.exp(NormalDist(0, doubt).inv_cdf(chance))
        return IsThisEnough(weights=[1], grist=1000, project=project, scale_step=0.00001)

    assert at(0.946).times == "95 times of 100"
    assert "as safe as you asked for" in at(0.946).sentence
    assert at(0.944).times == "94 times of 100"
    assert "To have enough 95 times of 100, spin" in at(0.944).sentence
    assert at(0.944).more >= 1


def test_before_there_is_yarn_it_says_how_much_to_have() -> None:
    # NormalDist of Python's library: 930 yd, 6 and 10 per cent either way; 1300 yd to the pound
    sheet = IsThisEnough(weights=[])
    doubt = math.hypot(0.06, 0.1) / NormalDist().inv_cdf(0.975)
    to_have = 930 * math.exp(NormalDist(0, doubt).inv_cdf(0.95))
    assert sheet.target == pytest.approx(to_have, rel=1e-9)
    assert sheet.target_weight == pytest.approx(to_have / 1300, rel=1e-9)
    assert sheet.sentence.startswith("Have 1,026\xa0yd to be enough 95 times of 100.")
    assert to_have == pytest.approx(1025.6, abs=0.05)
    assert math.isnan(sheet.chance)
    assert math.isnan(sheet.yarn_weight)
    # the bar of the project itself has the chance that is wanted
    assert sheet.size_chances[2]["size"] == 930
    assert sheet.size_chances[2]["chance"] == pytest.approx(0.95, abs=1e-9)
    # spun to that very weight it is as safe, but for the scale's steps
    spun = IsThisEnough(weights=[sheet.target_weight], scale_step=0.00001)
    assert spun.chance == pytest.approx(0.95, abs=1e-6)
    # a swatch goes by weight as the yarn will, whatever the grist
    swatches = [IsThisEnough(weights=[], need_by="swatch", grist_range=g) for g in (0.01, 0.2)]
    assert swatches[0].target == swatches[1].target


def test_nothing_goes_by_a_grist_where_only_lengths_are_known() -> None:
    sheet = IsThisEnough(weights=[], lengths=[700])
    assert "grist" in sheet.unused()
    assert "yd more." in sheet.sentence
    assert "oz" not in sheet.sentence
    assert math.isnan(sheet.grist_known)
    assert IsThisEnough(lengths=[700]).grist_known == 1300


def test_a_range_too_narrow_to_write_is_said_as_how_far_off() -> None:
    # by hand: 12 skeins, each 0.1 % off by itself, are 0.1 / 12 ** 0.5 = 0.0289 % off together
    sheet = IsThisEnough(weights=[], lengths=[1000] * 12, length_range=0.001)
    assert "12,000\xa0yd, right to 0.029%, 95% sure" in sheet.sentence


# Bands of the IPCC's guidance note on uncertainties (2010), table 1, from memory: virtually certain
# from 99 %, very likely from 90 %, likely from 66 %, as likely as not down to 33 %, and below.
@pytest.mark.parametrize(
    ("part", "words"),
    [
        (0.999, "Almost surely enough: more than 99 times of 100"),
        (0.9949, "Almost surely enough: 99 times of 100"),
        (0.936, "Very likely enough: 94 times of 100"),
        (0.895, "Very likely enough: 90 times of 100"),
        (0.894, "Probably enough: 89 times of 100"),
        (0.66, "Probably enough: 66 times of 100"),
        (0.5, "It may be enough or not: 50 times of 100"),
        (0.33, "Probably not enough: 33 times of 100"),
        (0.1, "Very likely not enough: 10 times of 100"),
        (0.012, "Almost surely not enough: once of 100"),
        (0.001, "Almost surely not enough: less than once of 100"),
    ],
)
def test_a_chance_is_said_with_its_number_and_never_as_none_or_all(part: float, words: str) -> None:
    assert f"{verdict(part)}: {times(part)}" == words


def test_no_yarn_however_much_or_little_is_said_to_be_quite_sure() -> None:
    assert "more than 99 times of 100" in IsThisEnough(weights=[2.9]).sentence
    assert "less than once of 100" in IsThisEnough(weights=[0.05]).sentence


weight = st.floats(0.02, 2.0)
doubts = st.fixed_dictionaries(
    {
        "weights": st.lists(weight, min_size=1, max_size=4),
        "lengths": st.lists(st.floats(20, 2000), max_size=3),
        "grist": st.floats(300, 5000),
        "grist_range": st.floats(0.005, 0.3),
        "length_range": st.floats(0.001, 0.3),
        "project_range": st.floats(0.005, 0.5),
        "project": st.floats(100, 5000),
        "project_area": st.floats(200, 16000),
        "need_by": st.sampled_from(["pattern", "swatch"]),
    }
)


@settings(max_examples=100, deadline=None)
@given(doubts, weight, st.floats(20, 2000))
def test_more_yarn_never_lowers_the_chance(
    case: dict[str, Any], more: float, length: float
) -> None:
    before = IsThisEnough(**case).chance
    weights, lengths = case["weights"], case["lengths"]
    heavier = {"weights": [weights[0] + more / 2, *weights[1:]]}
    for added in ({"weights": [*weights, more]}, heavier, {"lengths": [*lengths, length]}):
        assert IsThisEnough(**case | added).chance >= before - 1e-12


@settings(max_examples=100, deadline=None)
@given(doubts, st.floats(1, 3))
def test_more_need_never_raises_the_chance(case: dict[str, Any], growth: float) -> None:
    before = IsThisEnough(**case).chance
    needs = {name: case[name] * growth for name in ("project", "project_area")}
    assert IsThisEnough(**case | needs).chance <= before + 1e-12


@pytest.mark.parametrize(
    ("case", "warning"),
    [
        ({"weights": [0.25, 4.1]}, "Skein 2 weighs more than 48\xa0oz"),
        ({"weights": [0.01], "scale_step": 0.03}, "Skein 1 is too light"),
        ({"need_by": "swatch", "swatch_area": 1500}, "The swatch is larger than the project"),
        (
            {"need_by": "swatch", "swatch_weight": 0.01, "scale_step": 0.01},
            "The swatch is too light",
        ),
    ],
)
def test_what_is_unlikely_is_met_with_what_is_probably_wrong(
    case: dict[str, Any], warning: str
) -> None:
    sheet = IsThisEnough(**case)
    assert sheet.sentence.startswith(warning)
    assert "times of 100" not in sheet.sentence
    assert math.isnan(sheet.chance)


# ---- on the page ---------------------------------------------------------------------------------


@pytest.fixture
def sheet(page: Page, server: Server) -> Page:
    """Open the worksheet and wait for its answer."""
    return open_sheet(page, server, "is-this-enough")


def skeins(page: Page, *lines: str) -> None:
    type_in(page, "weights", "\n".join(lines))


def hills(page: Page) -> list[tuple[float, float, float]]:
    """Read each hill as drawn: its low end, its top and its high end, in yards."""
    drawn = page.evaluate(
        """async () => {
            const view = document.querySelector(
                "figure[data-name=have_and_need] .ys-picture").view;
            await view.runAsync();
            const data = view.getState({signals: () => false, data: () => true}).data;
            return Object.keys(data).map((name) => view.data(name))
                .filter((rows) => rows.length > 9 && "likely" in rows[0] && "yards" in rows[0])
                .map((rows) => rows.map(({yards, likely}) => [yards, likely]));
        }"""
    )
    return sorted((rows[0][0], max(rows, key=lambda row: row[1])[0], rows[-1][0]) for rows in drawn)


def test_sentence_and_hills_follow_the_skeins_and_the_project(sheet: Page) -> None:
    before = said(sheet)
    assert before == IsThisEnough().sentence
    skeins(sheet, "4.1", "3.8", "4.3", "2 1/4")
    type_in(sheet, "project", "1000")
    after = said(sheet)
    python = IsThisEnough(weights=[w * OUNCE for w in (4.1, 3.8, 4.3, 2.25)], project=1000)
    assert after == python.sentence != before
    expected = [
        (middle / reach, middle, middle * reach)
        for middle, reach in (
            (python.at_hand, python.have_reach),
            (python.needed, python.need_reach),
        )
    ]
    assert hills(sheet) == [pytest.approx(hill, rel=1e-9) for hill in sorted(expected)]


def test_yards_and_hills_follow_the_project_at_once(sheet: Page) -> None:
    lows = [hill[0] for hill in hills(sheet)]
    sheet.context.set_offline(True)  # so that no kernel can have had a part in it
    type_in(sheet, "project", "990")
    assert "takes 990\N{NO-BREAK SPACE}yd" in said(sheet)
    assert [hill[0] for hill in hills(sheet)] != lows
    assert any(top == pytest.approx(990, rel=1e-9) for _, top, _ in hills(sheet))
    sheet.context.set_offline(False)


def test_bad_input_is_kept_and_explained_and_a_swatch_is_taken(sheet: Page) -> None:
    before = said(sheet)
    skeins(sheet, "4.1", "four", "4.3")
    error = sheet.locator("[data-name=weights] .ys-error")
    assert "Number 2: “four” is not a number" in error.inner_text()
    assert sheet.locator("[data-name=weights] textarea").input_value() == "4.1\nfour\n4.3"
    assert said(sheet) == before
    skeins(sheet, "")
    assert said(sheet) == IsThisEnough(weights=[]).sentence
    skeins(sheet, "4.1", "3.8", "4.3")
    sheet.locator("[data-name=need_by] select").select_option("a swatch of this yarn")
    assert said(sheet) == IsThisEnough(need_by="swatch").sentence
    assert "left out here" in sheet.locator("figure[data-name=have_and_need]").inner_text()

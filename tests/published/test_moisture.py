"""Worked examples of moisture, as they are printed, and what holds whatever the numbers.

A printed decimal is met within half its last digit. Some workings take a moisture content for a
regain: those are here as well, each with the right answer beside the wrong one.

Sources:

GATE     published: Graduate Aptitude Test in Engineering, Textile Engineering, by year, question.
D2118    published: ASTM D2118-18, contents as printed on the standard's public page.
EU       published: Regulation (EU) 1007/2011, annex IX; combed wool 18.25 % from memory.
exact    hand-worked: from the definitions of regain and content, to 15 figures.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.published.test_tables import printed
from yarnsheets import formulas
from yarnsheets.published import regain

share = st.floats(0, 0.5)
mass = st.floats(0.01, 1e5)


def same(result: float, start: float) -> bool:
    return result == pytest.approx(start, rel=1e-9, abs=1e-12)


# --- regain and content ---


# content    regain               source
@pytest.mark.parametrize(
    ("content", "answer"),
    [
        (0.12, "0.136363636363636"),  # D2118, scoured wool; regain exact
        (0.1304, "0.149954001839926"),  # D2118, worsted yarn spun dry; regain exact
        (0.119718309859155, "0.136"),  # exact
    ],
)
def test_content_to_regain(content: float, answer: str) -> None:
    assert formulas.regain_from_content(content) == printed(answer)


def test_regain_to_content() -> None:
    assert formulas.content_from_regain(0.136) == printed("0.119718309859155")  # exact


def test_water_in_a_blended_fabric() -> None:
    """GATE 2007, question 70: 100 g, half wool, a quarter silk, a quarter viscose; 12.28 g.

    A regain taken for a content would give 14 g.
    """
    blend = formulas.blend_regain([0.50, 0.25, 0.25], [0.17, 0.11, 0.11])
    assert blend == printed("0.14")
    water = 100 - formulas.dry_mass(100, blend)
    assert water == printed("12.28")
    assert water == printed("12.280701754386")  # exact 1400 / 114
    assert water == pytest.approx(100 * formulas.content_from_regain(blend), rel=1e-14)


def test_a_content_is_never_taken_for_a_regain() -> None:
    """GATE 2010, question 38: 100 kg of 67/33 polyester and cotton at 4 % moisture *content*.

    A published working takes the 4 % for a regain and prints 99.10 kg; with the content it is
    98.95 kg, exact 96 * 1.03073.
    """
    blend = formulas.blend_regain([0.67, 0.33], [0.004, 0.085])
    assert blend == printed("0.03073")
    now = formulas.regain_from_content(0.04)
    assert formulas.dry_mass(100, now) == printed("96")
    assert formulas.mass_at_regain(100, now, blend) == printed("98.95008")
    mistaken = formulas.mass_at_regain(100, 0.04, blend)
    assert mistaken == printed("99.1086538461538")


# --- mass and grist at another regain ---


@pytest.mark.parametrize(
    ("commercial", "answer"),
    [
        (regain.WOOL_ASTM, "104.220183486239"),  # exact 11360 / 109
        (regain.WOOL_CARDED_EU, "107.339449541284"),  # exact 11700 / 109
        (regain.WOOL_COMBED_EU, "108.48623853211"),  # exact 11825 / 109
    ],
    ids=lambda given: getattr(given, "fibre", given),
)
def test_100_g_of_wool_at_9_per_cent_invoiced(commercial: regain.Regain, answer: str) -> None:
    assert formulas.mass_at_regain(100, 0.09, commercial.value) == printed(answer)


def test_a_ball_made_up_at_the_combed_regain_is_lighter_in_a_room() -> None:
    """EU: 50 g at 18.25 %, now at 14 %; a yarn maker's note says "47-48 g", a little low."""
    now = formulas.mass_at_regain(50, regain.WOOL_COMBED_EU.value, 0.14)
    assert now == printed("48.2029598308668")  # exact 57 / 1.1825
    assert not 47 <= now <= 48


def test_the_same_dry_wool_has_as_many_masses_as_there_are_authorities() -> None:
    """From 13.6 % to 18.25 %: exact 1.1825 / 1.136."""
    spread = formulas.mass_at_regain(1, regain.WOOL_ASTM.value, regain.WOOL_COMBED_EU.value)
    assert spread == printed("1.04093309859155")


def test_a_wetter_yarn_has_less_grist() -> None:
    """1000 yd/lb at 9 %, restated at 16 %: exact 1090 / 1.16."""
    restated = formulas.grist_at_regain(1000, 0.09, 0.16)
    assert restated == printed("939.655172413793")


# --- what holds whatever the numbers ---


@given(share)
def test_there_and_back_for_regain_and_content(water: float) -> None:
    content = formulas.content_from_regain(water)
    assert content <= water
    assert same(formulas.regain_from_content(content), water)


@given(mass, share)
def test_there_and_back_for_dry_mass(whole: float, water: float) -> None:
    dry = formulas.dry_mass(whole, water)
    assert same(formulas.regain(whole, dry), water)
    # dry fibre and water make the whole; a difference would leave only rounding of little water
    assert same(dry + whole * formulas.content_from_regain(water), whole)


@given(mass, share, share, share)
def test_restating_a_mass_by_way_of_another_regain_changes_nothing(
    whole: float, first: float, between: float, last: float
) -> None:
    by_way = formulas.mass_at_regain(whole, first, between)
    assert same(formulas.dry_mass(by_way, between), formulas.dry_mass(whole, first))
    direct = formulas.mass_at_regain(whole, first, last)
    assert same(formulas.mass_at_regain(by_way, between, last), direct)


@given(mass, mass, share, share)
def test_restating_a_grist_leaves_the_length(
    length: float, whole: float, first: float, last: float
) -> None:
    grist = formulas.grist_at_regain(formulas.grist(length, whole), first, last)
    assert same(formulas.length(formulas.mass_at_regain(whole, first, last), grist), length)


@given(st.lists(st.tuples(mass, share), min_size=1, max_size=5))
def test_a_blend_holds_the_water_of_its_fibres(parts: list[tuple[float, float]]) -> None:
    dry = sum(each for each, _ in parts)
    water = sum(each * held for each, held in parts)
    shares = [each / dry for each, _ in parts]
    assert same(formulas.blend_regain(shares, [held for _, held in parts]), water / dry)


def test_shares_and_regains_must_match_in_number() -> None:
    with pytest.raises(ValueError, match="shorter"):
        formulas.blend_regain([0.5, 0.5], [0.17])

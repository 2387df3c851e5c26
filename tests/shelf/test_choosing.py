"""The choice of skeins.

scipy        the optimum of its solver of mixed integer programs (HiGHS), in by_solver.py.
hand-worked  sums and chances in round numbers.
definition   a choice is enough, is of one lot, and no other set of skeins of a lot is better.
"""

from __future__ import annotations

import math
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from tests.shelf import by_solver
from yarnsheets.shelf.choosing import (
    TOGETHER,
    Choice,
    OnShelf,
    Wanted,
    choose,
    counted,
    doubt_of,
    lots,
    most_doubt,
)

skeins = st.builds(
    OnShelf,
    yards=st.floats(5, 900),
    doubt=st.sampled_from([0.0, 0.005, 0.02, 0.06, 0.31]),
    grist=st.floats(700, 1500),
    fibre=st.sampled_from(["wool", "Wool ", "silk"]),
    colour=st.sampled_from(["", "grey"]),
)
projects = st.builds(
    Wanted,
    yards=st.sampled_from([60.0, 300.0, 650.0, 1400.0]),
    within=st.sampled_from([0.005, 0.1, 0.3]),
    chance=st.sampled_from([0.5, 0.8, 0.95, 0.99]),
    alike=st.sampled_from([0.0, 0.1, 0.4, 2.0]),
    together=st.sampled_from(list(TOGETHER)),
)


def total(places: list[int], shelf: list[OnShelf], wanted: Wanted) -> int:
    return sum(counted(shelf[at], wanted) for at in places)


def grey(*yards: float, doubt: float = 0.0) -> list[OnShelf]:
    return [OnShelf(each, doubt, 1000, "wool", "grey") for each in yards]


# ---- the optimum ---------------------------------------------------------------------------------


@settings(max_examples=120, deadline=None, derandomize=True)
@given(shelf=st.lists(skeins, max_size=14), wanted=projects)
def test_the_choice_is_the_optimum_of_a_solver(shelf: list[OnShelf], wanted: Wanted) -> None:
    ours, theirs = choose(shelf, wanted).chosen, by_solver.places(shelf, wanted)
    assert total(ours, shelf, wanted) == total(theirs, shelf, wanted)


@settings(max_examples=60, deadline=None, derandomize=True)
@given(shelf=st.lists(skeins, max_size=8), wanted=projects)
def test_no_set_of_skeins_is_better(shelf: list[OnShelf], wanted: Wanted) -> None:
    """By trying every set of skeins of every lot."""
    enough = [
        total(list(some), shelf, wanted)
        for lot in lots(shelf, wanted)
        for size in range(1, len(lot) + 1)
        for some in combinations(lot, size)
        if sum(doubt_of(shelf[at], counted(shelf[at], wanted)) for at in some)
        <= most_doubt(total(list(some), shelf, wanted), wanted)
        if total(list(some), shelf, wanted) > 0
    ]
    assert total(choose(shelf, wanted).chosen, shelf, wanted) == min(enough, default=0)


@settings(max_examples=100, deadline=None, derandomize=True)
@given(shelf=st.lists(skeins, max_size=20), wanted=projects)
def test_a_choice_is_enough_and_alike(shelf: list[OnShelf], wanted: Wanted) -> None:
    found = choose(shelf, wanted)
    assert set(found.chosen) <= set(found.lot)
    if not found.chosen:
        assert found.more > 0
        return
    chosen = [shelf[at] for at in found.chosen]
    assert max(s.grist for s in chosen) <= min(s.grist for s in chosen) * (1 + wanted.alike)
    if wanted.together != "any":
        assert len({s.fibre.strip().lower() for s in chosen}) == 1
    if wanted.together == "colour":
        assert len({s.colour for s in chosen}) == 1
    # counted in thousandths, rounded down: what is really there is no less likely enough
    doubt = sum(s.yards * s.doubt for s in chosen) / found.yards
    z = math.log(found.yards / wanted.yards) / math.hypot(doubt, wanted.within / 1.959963985)
    assert found.chance == pytest.approx(stats.norm.cdf(z), abs=1e-9)
    assert found.chance >= wanted.chance - 0.002


# ---- cases by hand -------------------------------------------------------------------------------


def test_the_least_that_is_enough_is_chosen() -> None:
    # hand-worked: nearly no doubt, so 450 yd or a little more; 210 + 260 is the least such sum
    found = choose(grey(120, 210, 260, 400), Wanted(450, within=0.001))
    assert found.chosen == [1, 2]
    assert found.yards == 470


def test_more_doubt_takes_more_yarn() -> None:
    # hand-worked: at 95 %, 1.645 x 0.3 is 0.49: by wraps alone 500 yd may be no more than 306
    wanted = Wanted(450, within=0.001)
    assert choose(grey(500, 760, doubt=0.005), wanted).chosen == [0]
    assert choose(grey(500, 760, doubt=0.3), wanted).chosen == [1]


def test_what_is_missing_is_spun_like_the_nearest_lot() -> None:
    # hand-worked: no doubt but the pattern's 10 %: 600 x e**(1.645 x 0.1 / 1.96) is 652.5 yd
    shelf = [*grey(200, 300), OnShelf(550, 0.0, 1000, "silk", "grey")]
    found = choose(shelf, Wanted(600))
    assert found.chosen == []
    assert found.lot == [2]
    assert found.more == pytest.approx(652.5 - 550, abs=0.1)


def test_an_empty_shelf_misses_all() -> None:
    # hand-worked as above
    found = choose([], Wanted(600))
    assert found.lot == []
    assert found.more == pytest.approx(652.5, abs=0.1)


def test_unlike_grists_are_not_mixed() -> None:
    coarse, fine = OnShelf(300, 0.0, 900, "", ""), OnShelf(300, 0.0, 1100, "", "")
    assert choose([coarse, fine], Wanted(500, alike=0.2)).chosen == []  # 1,100 is 22 % more
    assert choose([coarse, fine], Wanted(500, alike=0.25)).chosen == [0, 1]


def test_words_for_a_fibre_are_read_loosely() -> None:
    one, other = (OnShelf(300, 0.0, 900, fibre, "") for fibre in ("Wool", "  wool "))
    assert choose([one, other], Wanted(500)).chosen == [0, 1]


def test_a_large_shelf_is_chosen_from() -> None:
    shelf = [OnShelf(30 + 7 * at % 341, 0.02, 900 + at, "", "") for at in range(100)]
    found = choose(shelf, Wanted(1000, within=0.05))
    assert isinstance(found, Choice)
    assert found.chance >= 0.95
    assert found.yards < 1100

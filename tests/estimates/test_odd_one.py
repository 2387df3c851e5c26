"""The balance that disagrees, held against scipy's test of two samples."""

from __future__ import annotations

import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from yarnsheets.estimates import odd_one

# Box, Hunter and Hunter's blood coagulation times by four diets, Statistics for Experimenters
# (1978), table 6.1, from memory: a worked example of one-way groups of unequal size.
DIETS = {
    "A": [62, 60, 63, 59],
    "B": [63, 67, 71, 64, 65, 66],
    "C": [68, 66, 71, 67, 68, 68],
    "D": [56, 62, 60, 61, 63, 64, 63, 59],
}

readings = st.lists(
    st.tuples(st.integers(1, 5), st.floats(5, 20, allow_nan=False)), min_size=3, max_size=40
)


def by_scipy(pairs: list[tuple[float, float]], name: float) -> tuple[float, float]:
    own = [math.log(x) for which, x in pairs if which == name]
    others = [math.log(x) for which, x in pairs if which != name]
    found = stats.ttest_ind(own, others, equal_var=True)
    return float(found.statistic), float(found.pvalue)


def test_the_farthest_of_four_groups() -> None:
    pairs = [(at, x) for at, name in enumerate(DIETS) for x in DIETS[name]]
    found = odd_one(pairs)
    assert found is not None
    t = {at: by_scipy(pairs, at) for at in range(4)}
    assert found.name == max(t, key=lambda at: abs(t[at][0]))
    assert (found.t, found.probability) == pytest.approx(t[int(found.name)], rel=1e-9)
    assert found.is_beyond_chance == (t[int(found.name)][1] < 0.05 / 4)


@pytest.mark.filterwarnings("ignore:Precision loss")  # of scipy's, where readings are alike
@given(readings)
def test_it_is_scipys_t_of_the_farthest(pairs: list[tuple[float, float]]) -> None:
    found = odd_one(pairs)
    if found is None:
        return
    t, probability = by_scipy(pairs, found.name)
    assert found.t == pytest.approx(t, rel=1e-6)
    assert found.probability == pytest.approx(probability, rel=1e-5, abs=1e-12)
    farthest = max(abs(by_scipy(pairs, name)[0]) for name, _ in pairs)
    assert abs(found.t) == pytest.approx(farthest, rel=1e-6)
    assert found.is_beyond_chance == (probability < 0.05 / len({name for name, _ in pairs}))


@pytest.mark.parametrize(
    "pairs",
    [[(1, 9.6), (1, 9.8), (1, 9.7)], [(1, 9.6), (2, 9.8)], [(1, 9.6), (2, 9.6), (1, 9.6)]],
)
def test_nothing_to_judge_by_is_no_verdict(pairs: list[tuple[float, float]]) -> None:
    assert odd_one(pairs) is None


def test_true_balances_are_seldom_said_to_disagree() -> None:
    """In 95 of 100 classes with true balances or more: the promise of the confidence."""
    rng = random.Random(14)  # noqa: S311
    classes = 2000
    wrong = 0
    for _ in range(classes):
        pairs = [(at % 6, math.exp(rng.gauss(2.3, 0.06))) for at in range(30)]
        found = odd_one(pairs)
        wrong += found is not None and found.is_beyond_chance
    # three standard deviations of such a count above what is promised
    assert wrong / classes < 0.05 + 3 * math.sqrt(0.05 * 0.95 / classes)
    assert wrong > 0


def test_a_balance_a_tenth_off_is_found() -> None:
    rng = random.Random(15)  # noqa: S311
    classes = 300
    found = 0
    for _ in range(classes):
        pairs = [
            (at % 5, math.exp(rng.gauss(2.3, 0.05)) * (1.1 if at % 5 == 2 else 1))
            for at in range(30)
        ]
        odd = odd_one(pairs)
        found += odd is not None and odd.is_beyond_chance and odd.name == 2
    assert found / classes > 0.9

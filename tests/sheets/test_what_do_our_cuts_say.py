"""The worksheet of a class’s cuts: mean, range and verdicts, against other arithmetic."""

from __future__ import annotations

import math
import random
from statistics import harmonic_mean

import pytest
from scipy import stats

from yarnsheets.sheets import HowSureIsTheGrist, WhatDoOurCutsSay

CUTS = [9.6, 10.1, 10.4, 9.8, 10.6]


def test_the_grist_is_the_harmonic_mean() -> None:
    """Python's own harmonic mean; a plain mean would be 2 % high at these."""
    sheet = WhatDoOurCutsSay(cuts=[(1, 8), (2, 12), (3, 10)], balance_factor=100)
    assert sheet.grist == pytest.approx(100 * harmonic_mean([8, 12, 10]), rel=1e-12)
    assert sheet.plain_mean > sheet.grist


def test_the_cuts_part_of_the_range_is_students() -> None:
    """By scipy's t and standard error of the inverse cuts (JCGM 100:2008, 4.2 and G.3)."""
    sheet = WhatDoOurCutsSay(cuts=[(1, cut) for cut in CUTS], tolerance=0.001)
    inverse = [1 / cut for cut in CUTS]
    relative = stats.sem(inverse) / (sum(inverse) / len(inverse))
    assert sheet.from_cuts == pytest.approx(stats.t.ppf(0.975, 4) * relative, rel=1e-9)


def test_the_same_grist_as_the_sheet_for_one_hand() -> None:
    ours = WhatDoOurCutsSay(cuts=[(1, cut) for cut in CUTS])
    assert ours.grist == HowSureIsTheGrist(cuts=CUTS).grist


@pytest.mark.parametrize("balances", [1, 4, 12])
def test_the_range_holds_the_truth(balances: int) -> None:
    """Simulated classes: each balance off by anything within 3 %, cuts spread by 6 %."""
    rng = random.Random(balances)  # noqa: S311
    classes, tolerance = 1500, 0.03
    held = 0
    for _ in range(classes):
        factors = [1 + rng.uniform(-tolerance, tolerance) for _ in range(balances)]
        cuts = [
            (at % balances + 1, 10 * factors[at % balances] * math.exp(rng.gauss(0, 0.06)))
            for at in range(24)
        ]
        # the harmonic mean of such cuts, in the long run (log-normal distribution)
        truth = 100 * 10 * math.exp(-(0.06**2) / 2)
        sheet = WhatDoOurCutsSay(cuts=cuts, tolerance=tolerance)
        held += sheet.grist_low <= truth <= sheet.grist_high
    # one error within bounds that rules the range is held 93 times of 100, as Budget says
    promised = 0.93 if balances == 1 else 0.95
    assert held / classes > promised - 3 * math.sqrt(0.05 * 0.95 / classes)


def test_more_cuts_do_not_make_balances_better() -> None:
    few = WhatDoOurCutsSay(cuts=[(1, cut) for cut in CUTS])
    many = WhatDoOurCutsSay(cuts=[(1, cut) for cut in CUTS * 20])
    assert many.from_balances == few.from_balances
    assert many.from_cuts < few.from_cuts / 4
    more = WhatDoOurCutsSay(cuts=[(at, cut) for at in range(1, 5) for cut in CUTS])
    # four balances, each wrong in its own way: half of one (JCGM 100:2008, 5.1.2)
    assert more.from_balances == pytest.approx(1.96 * 0.02 / math.sqrt(3) / 2, rel=1e-4)


def test_the_demo_has_a_balance_that_disagrees() -> None:
    sheet = WhatDoOurCutsSay()
    assert sheet.is_odd_high
    assert sheet.odd == 3
    own = [cut for name, cut in sheet.cuts if name == 3]
    others = [cut for name, cut in sheet.cuts if name != 3]
    test = stats.ttest_ind([math.log(x) for x in own], [math.log(x) for x in others])
    assert test.pvalue < 0.05 / 4
    ratio = stats.gmean(own) / stats.gmean(others)
    assert sheet.odd_by == pytest.approx(ratio - 1, rel=1e-9)
    assert WhatDoOurCutsSay(left_out=3).is_alike


@pytest.mark.parametrize(
    ("cuts", "words"),
    [
        ([], "There are no cuts yet."),
        ([(1, 9.6)], "There is one cut so far."),
        ([(1, 9), (2, 90)], "The cuts are 9 in and 90 in: they cannot be of one yarn."),
        ([(1, 9.6), (1, 9.9)], "2 cuts on 1 balance spread by 2.18%."),
        (
            [(1, 9.6), (1, 9.9), (2, 9.7), (2, 96)],
            "Not counted, since far from all others: 1 cut, such as 96 in.",
        ),
    ],
)
def test_what_it_says_of_too_little_or_a_slip(cuts: list[tuple[float, float]], words: str) -> None:
    assert words in WhatDoOurCutsSay(cuts=cuts).sentence.replace("\xa0", " ")


def test_a_slip_changes_nothing_of_the_rest() -> None:
    cuts = [(1, cut) for cut in CUTS]
    assert WhatDoOurCutsSay(cuts=[*cuts, (2, 96)]).grist == WhatDoOurCutsSay(cuts=cuts).grist


def test_many_cuts_are_drawn_at_few_places() -> None:
    sheet = WhatDoOurCutsSay(cuts=[(at % 7 + 1, 9.5 + at % 11 / 10) for at in range(500)])
    assert len(sheet.settling) <= 61
    assert sheet.settling[-1]["at"] == 500
    assert sheet.settling[-1]["mean"] == sheet.grist

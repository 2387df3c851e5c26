"""Student's t against published tables and two libraries that work it out by other means."""

from __future__ import annotations

import math

import mpmath
import pytest
from scipy import special

from yarnsheets.estimates.student import probability, quantile

DOFS = [0.5, 0.7, 1, 1.5, 2, 3, 4, 4.3, 7, 10, 30, 100, 1000, 12345.6, 49_999, 50_001]
MANY = [1e6, 4.7e8, math.inf]  # a continued fraction alone would not end at the second


# Its columns 68.27 and 99.73 are one and three standard deviations of a normal curve either way.
ONE, THREE = (math.erf(k / math.sqrt(2)) for k in (1, 3))


# JCGM 100:2008, Guide to the Expression of Uncertainty in Measurement, table G.2.
@pytest.mark.parametrize(
    ("dof", "confidence", "published"),
    [
        *[(1, ONE, 1.84), (1, 0.95, 12.71), (1, 0.99, 63.66), (1, THREE, 235.80)],
        *[(2, ONE, 1.32), (2, 0.95, 4.30), (2, 0.99, 9.92), (2, THREE, 19.21)],
        *[(4, 0.90, 2.13), (4, 0.95, 2.78), (4, 0.99, 4.60), (4, THREE, 6.62)],
        *[(10, 0.90, 1.81), (10, 0.95, 2.23), (10, 0.99, 3.17), (10, THREE, 3.96)],
        *[(50, 0.90, 1.68), (50, 0.95, 2.01), (50, 0.99, 2.68), (50, THREE, 3.16)],
        *[(math.inf, 0.90, 1.645), (math.inf, 0.95, 1.960), (math.inf, 0.99, 2.576)],
    ],
)
def test_the_guides_own_table(dof: float, confidence: float, published: float) -> None:
    digits = 3 if math.isinf(dof) else 2
    assert quantile((1 + confidence) / 2, dof) == pytest.approx(published, abs=0.5 * 10**-digits)


def below(t: float, dof: float) -> mpmath.mpf:
    """Give the share below minus t by mpmath, with forty digits."""
    with mpmath.workdps(40):
        square = mpmath.mpf(t) ** 2
        if math.isinf(dof):
            return mpmath.erfc(mpmath.sqrt(square / 2)) / 2
        n = mpmath.mpf(dof)
        return mpmath.betainc(n / 2, 0.5, 0, n / (n + square), regularized=True) / 2


@pytest.mark.parametrize("dof", [*DOFS, *MANY])
def test_a_probability_by_mpmath(dof: float) -> None:
    for t in (1e-6, 0.01, 0.3, 1.0, 1.7, 2.0, 2.9, 3.1, 4.0):
        expected = below(t, dof)
        assert float(abs(probability(-t, dof) / expected - 1)) < 3e-12
        assert float(abs(probability(t, dof) - (1 - expected))) < 1e-12


@pytest.mark.parametrize("dof", [dof for dof in [*DOFS, *MANY] if dof >= 0.7])
@pytest.mark.parametrize("share", [0.5001, 0.6, 0.75, 0.9, 0.975, 0.995, 0.9999, 0.4, 0.025, 1e-6])
def test_a_quantile_by_mpmath(share: float, dof: float) -> None:
    t = quantile(share, dof)
    assert (t > 0) == (share > 0.5)
    wanted = mpmath.mpf(min(share, 1 - share))
    steepness = float((below(abs(t) * 0.9999, dof) - below(abs(t) * 1.0001, dof)) / 0.0002)
    assert float(abs(below(t, dof) - wanted)) / steepness < 1e-12


@pytest.mark.parametrize("dof", DOFS)
def test_both_ways_by_scipy(dof: float) -> None:
    for t in (-5.0, -1.3, -0.2, 0.4, 2.2):
        assert probability(t, dof) == pytest.approx(special.stdtr(dof, t), rel=1e-9)
    for share in (0.01, 0.3, 0.8, 0.95):
        assert quantile(share, dof) == pytest.approx(special.stdtrit(dof, share), rel=2e-9)


def test_the_middle_and_what_cannot_be() -> None:
    assert quantile(0.5, 3) == 0
    assert probability(0.0, 3) == 0.5
    for dof in (1, 30, 1e6, math.inf):  # what is as good as known has no end to its t
        assert probability(1e200, dof) == 1
        assert probability(-1e200, dof) == pytest.approx(0, abs=1e-15)
    for dof in (0.0, -1.0, math.nan):
        with pytest.raises(ValueError, match="degrees of freedom"):
            probability(1.0, dof)
    for share in (0.0, 1.0, -0.2, math.nan):
        with pytest.raises(ValueError, match="not between 0 and 1"):
            quantile(share, 5)

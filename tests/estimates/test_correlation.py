"""Two values that err together.

GUM  published: JCGM 100:2008, example H.2, readings of table H.2 and Z of table H.4 (from memory).
GTC  published: documentation of GTC, Measurement Standards Laboratory of New Zealand, which works
     H.2 from the rounded means.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import correlated_values_norm

from yarnsheets.estimates import Budget, Component, correlated_relative, mean


def test_gum_h_2() -> None:
    """Impedance Z = V / I from five joint readings: 254.260 with 0.236 (GUM), 254.26(24) (GTC)."""
    volts, amperes = [5.007, 4.994, 5.005, 4.990, 4.999], [19.663, 19.639, 19.640, 19.685, 19.678]
    voltage, current = mean(volts), mean([each / 1000 for each in amperes])
    correlation = np.corrcoef(volts, amperes)[0, 1]
    assert voltage.value == pytest.approx(4.9990, abs=5e-5)
    assert voltage.uncertainty == pytest.approx(0.0032, abs=5e-5)
    assert current.value == pytest.approx(19.6610e-3, abs=5e-8)
    assert current.uncertainty == pytest.approx(0.0095e-3, abs=5e-8)
    assert correlation == pytest.approx(-0.36, abs=0.005)
    impedance = voltage.value / current.value
    relative = correlated_relative(voltage.relative, current.relative, correlation, (1, -1))
    assert impedance == pytest.approx(254.260, abs=0.0005)
    assert impedance * relative == pytest.approx(0.236, abs=0.0005)


def test_gum_h_2_from_its_rounded_inputs() -> None:
    """GTC's documentation starts from the printed means: 254.26(24)."""
    voltage, current = 4.9990, 19.6610e-3
    relative = correlated_relative(0.0032 / voltage, 0.0095e-3 / current, -0.36, (1, -1))
    impedance = voltage / current
    assert impedance == pytest.approx(254.26, abs=0.005)
    assert impedance * relative == pytest.approx(0.24, abs=0.005)
    pair = [(voltage, 0.0032), (current, 0.0095e-3)]
    v, i = correlated_values_norm(pair, [[1, -0.36], [-0.36, 1]])
    assert impedance * relative == pytest.approx((v / i).s)


@given(st.floats(0, 0.1), st.floats(0, 0.1))
def test_correlation_of_one_adds_and_subtracts_whole_errors(u: float, v: float) -> None:
    assert correlated_relative(u, v, 1, (1, 1)) == pytest.approx(u + v)
    # the difference of squares near 0.01, each rounded by 1e-18, has a root uncertain by 1e-9
    assert correlated_relative(u, v, 1, (1, -1)) == pytest.approx(abs(u - v), abs=1e-8)
    independent = Budget((Component("u", u), Component("v", v)))
    assert correlated_relative(u, v, 0, (1, -1)) == pytest.approx(independent.relative)


@pytest.mark.parametrize("correlation", [-1.1, 1.1, math.nan])
def test_an_impossible_correlation_is_refused(correlation: float) -> None:
    with pytest.raises(ValueError, match="between -1 and 1"):
        correlated_relative(0.1, 0.1, correlation, (1, 1))

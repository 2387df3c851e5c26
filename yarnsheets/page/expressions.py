"""The few things formulas may not do, for sheets and charts: choose, and compare sizes.

Formulas are arithmetic alone, because a chart's parameter answers every comparison with
"true". Where a sheet must branch, it branches here, for plain numbers and for the text the
browser computes with alike.
"""

import math
from typing import Any

import altair as alt
from altair.expr.core import OperatorMixin

Value = Any


def is_emitted(value: Value) -> bool:
    """Tell whether a value is chart text rather than a number.

    >>> is_emitted(alt.param(name="x", value=1) > 0), is_emitted(1.0)
    (True, False)
    """
    return isinstance(value, OperatorMixin)


def choose(test: Value, yes: Value, no: Value) -> Value:
    """Take one value or the other.

    >>> choose(2 > 1, 1.05, 1)
    1.05
    >>> emit(choose(alt.param(name="plies", value=2) > 1, 1.05, 1))
    'if((plies > 1),1.05,1)'
    """
    if is_emitted(test):
        return alt.expr.if_(test, yes, no)
    return yes if test else no


def larger(a: Value, b: Value) -> Value:
    """Take the larger of two.

    >>> larger(2, 3)
    3
    >>> emit(larger(alt.param(name="a", value=2), 3))
    'max(a,3)'
    """
    if is_emitted(a) or is_emitted(b):
        return alt.expr.max(a, b)
    return max(a, b)


def smaller(a: Value, b: Value) -> Value:
    """Take the smaller of two.

    >>> smaller(2, 3)
    2
    >>> emit(smaller(alt.param(name="a", value=2), 3))
    'min(a,3)'
    """
    if is_emitted(a) or is_emitted(b):
        return alt.expr.min(a, b)
    return min(a, b)


def sine(radians: Value) -> Value:
    """Give the sine of an angle in radians.

    >>> round(sine(math.pi / 6), 9)
    0.5
    """
    return alt.expr.sin(radians) if is_emitted(radians) else math.sin(radians)


def emit(value: Value) -> str:
    """Write a value as the text the browser computes with.

    >>> emit(alt.param(name="grist", value=1) * 2)
    '(grist * 2)'
    """
    if not is_emitted(value):
        return repr(value)
    text = value.to_dict()
    return str(text["expr"] if isinstance(text, dict) else text)

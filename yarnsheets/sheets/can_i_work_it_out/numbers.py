"""Numbers drawn from the number of a draw: the same in Python and in every browser.

The generator is that of Park and Miller, "Random number generators: good ones are hard to find",
Communications of the ACM 31 (1988) p. 1192, with the multiplier of their reply to Sullivan, ibid.
36 (1993) no. 7 p. 108. Its products stay below 2 to the 53rd, which a browser still counts exactly.
"""

import math
from collections.abc import Sequence
from typing import TypeVar

T = TypeVar("T")

MODULUS = 2**31 - 1
_MULTIPLIER = 48271
_APART = 101  # more than there are streams
_FIRST = 3  # left out: those of small seeds are small


def following(state: float) -> float:
    """Give the state that follows.

    >>> following(1)
    48271
    """
    return state * _MULTIPLIER % MODULUS


def started(draw: float, stream: int) -> float:
    """Give the state to start from: another for each draw, and for each stream of a draw."""
    state = draw * _APART + stream
    for _ in range(_FIRST):
        state = following(state)
    return state


def among(part: float, low: float, step: float, count: int) -> float:
    """Take one of `count` numbers, `step` apart from `low` on; `part` lies between 0 and 1.

    >>> among(0.5, 10, 0.5, 3)
    10.5
    """
    return low + step * math.floor(part * count)


def one_of(part: float, options: Sequence[T]) -> T:
    """Take one of several.

    >>> one_of(0.99, [50, 100, 200])
    200
    """
    return options[math.floor(part * len(options))]

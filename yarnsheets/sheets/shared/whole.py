"""Whole numbers of what cannot be had in part: braids, bobbins, lots, threads."""

import math

# So little more than whole is the last bits of a sum, and nothing to count for.
_LAST_BITS = 1e-9


def whole_up(value: float) -> int:
    """Round up to a whole number; what is whole but for its last bits stays as it is.

    >>> whole_up(2.1), whole_up(3 + 1e-12), whole_up(3 * 0.1 / 0.1)
    (3, 3, 3)
    """
    return math.ceil(value - _LAST_BITS)


def whole_down(value: float) -> int:
    """Round down to a whole number; what is whole but for its last bits stays as it is.

    >>> whole_down(2.9), whole_down(3 - 1e-12)
    (2, 3)
    """
    return math.floor(value + _LAST_BITS)

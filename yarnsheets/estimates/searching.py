"""The first whole number that will do, of a range in which all beyond it will do as well."""

from collections.abc import Callable


def first_whole(low: int, high: int, will_do: Callable[[int], bool]) -> int:
    """Give the first whole number from `low` to `high` that will do, or 0 if none does.

    Every number beyond one that will do must do as well. It is looked for in ever longer strides
    from the low end, where it most often is, and then by halving the last stride.

    >>> first_whole(1, 100, lambda n: n * n >= 50), first_whole(1, 100, lambda n: n > 100)
    (8, 0)
    """
    below, at, stride = low - 1, low, 1
    while not will_do(at):
        if at == high:
            return 0
        below, at, stride = at, min(at + stride, high), stride * 2
    while at - below > 1:
        middle = (below + at) // 2
        if will_do(middle):
            at = middle
        else:
            below = middle
    return at

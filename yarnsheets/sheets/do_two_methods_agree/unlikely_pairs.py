"""What is probably wrong with two lists of readings, one by each method; None if nothing is.

Each is a sentence or two that a page says in place of an answer.
"""

from collections.abc import Sequence

from yarnsheets.estimates.readings import mean, standard_deviation
from yarnsheets.estimates.unlikely import WIDEST_SPREAD
from yarnsheets.page.text import show

# With fewer, the range for the next skein is several times as wide as the skeins differ.
FEWEST_SKEINS = 5

# Two results for one skein are seldom further apart by any fault but a slip of unit or line.
FARTHEST = 2


def unlikely_readings(first: Sequence[float], second: Sequence[float]) -> str | None:
    """Say what is odd about several readings of one skein by each method.

    >>> unlikely_readings([410], [400, 405]).split(".")[0]
    'By the first method there are too few readings'
    """
    for name, readings in (("first", first), ("second", second)):
        if len(readings) < 2:
            return (
                f"By the {name} method there are too few readings. Measure the skein at least twice"
                " each way, better five times, from the beginning each time."
            )
        spread = standard_deviation(readings) / mean(readings).value
        if spread > WIDEST_SPREAD:
            return (
                f"The readings by the {name} method spread by {show(spread * 100, 2)}%, far more"
                " than those of one skein. Check that all are of one skein and in one unit; for"
                " several skeins, choose that above the lists."
            )
    if len(set(first)) == len(set(second)) == 1:
        return (
            "All readings by a method are the same, so there is no noise to judge by. Read to a"
            " finer mark, and measure anew each time."
        )
    far = _far_apart(mean(first).value, mean(second).value)
    return f"On average the {far}" if far else None


def unlikely_skeins(first: Sequence[float], second: Sequence[float]) -> str | None:
    """Say what is odd about several skeins, each measured by both methods.

    >>> unlikely_skeins([410, 800], [400]).split(".")[0]
    'Lines by the first method: 2; by the second: 1'
    """
    if len(first) != len(second):
        return (
            f"Lines by the first method: {len(first)}; by the second: {len(second)}. Give every"
            " skein a line in both, in the same order."
        )
    if len(first) < FEWEST_SKEINS:
        return (
            f"Skeins so far: {len(first)}, too few to say how far the methods may differ on the"
            f" next. Measure at least {FEWEST_SKEINS} both ways, better 20."
        )
    for at, (one, other) in enumerate(zip(first, second, strict=True), start=1):
        if far := _far_apart(one, other):
            return f"Line {at}: the {far}"
    if _is_one_number([one - other for one, other in zip(first, second, strict=True)]) or (
        _is_one_number([one / other for one, other in zip(first, second, strict=True)])
    ):
        return (
            "The methods differ by exactly the same on every skein. Check that each list was"
            " measured, and not worked out from the other."
        )
    return None


def _far_apart(one: float, other: float) -> str | None:
    times = max(one / other, other / one)
    if times <= FARTHEST:
        return None
    return (
        f"methods give {show(one)} and {show(other)}, {show(times, 2)} times apart. Check the unit"
        " and the decimal point, and that both are of the same skein."
    )


def _is_one_number(values: Sequence[float]) -> bool:
    """Tell whether all are the same but for the last digits of the arithmetic."""
    size = max(abs(value) for value in values)
    return max(values) - min(values) <= 1e-9 * size

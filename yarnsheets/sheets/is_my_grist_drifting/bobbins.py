"""Which bobbin to ply with which, and how far each is off target, in words.

Bobbins are counted from 1, as a spinner counts them. A pair is two bobbins, the lesser first; a
bobbin left over is plied with itself, from both ends of the ball.
"""

from collections.abc import Iterable, Sequence

from yarnsheets import formulas

Pair = tuple[int, int]


def finest_with_thickest(grists: Sequence[float]) -> list[Pair]:
    """Pair the finest bobbin with the thickest, and so on inwards, in the order of the first.

    No other way of pairing brings the heaviest and the lightest plied yarn nearer to the mean.

    >>> finest_with_thickest([1050, 1030, 1000, 960])
    [(1, 4), (2, 3)]
    >>> finest_with_thickest([1050, 960, 1000])
    [(1, 2), (3, 3)]
    """
    ranked = sorted(range(1, len(grists) + 1), key=lambda at: grists[at - 1])
    half = (len(ranked) + 1) // 2
    pairs = zip(ranked[:half], ranked[::-1][:half], strict=True)
    return sorted((min(pair), max(pair)) for pair in pairs)


def as_spun(bobbins: int) -> list[Pair]:
    """Pair bobbins as they were spun.

    >>> as_spun(5)
    [(1, 2), (3, 4), (5, 5)]
    """
    return [(at, min(at + 1, bobbins)) for at in range(1, bobbins + 1, 2)]


def plied_pair(grists: Sequence[float], pair: Pair, take_up: float) -> float:
    """Work out the grist of two of the bobbins plied.

    >>> plied_pair([1500.0, 3000.0], (1, 2), 1.0)
    1000.0
    """
    singles = [grists[bobbin - 1] for bobbin in pair]
    return float(formulas.plied_grist_unequal(singles, [take_up, take_up]))


def pair_in_words(pair: Pair) -> str:
    """Say a pair.

    >>> pair_in_words((1, 4)), pair_in_words((3, 3))
    ('1 with 4', '3 with itself')
    """
    one, other = pair
    return f"{one} with {'itself' if one == other else other}"


def pairs_in_words(pairs: Iterable[Pair]) -> str:
    """Say several pairs.

    >>> pairs_in_words([(1, 4), (2, 3)])
    'bobbin 1 with 4 and 2 with 3'
    """
    return "bobbin " + listed(pair_in_words(pair) for pair in pairs)


def off_target(grists: Sequence[float], target: float, tolerance: float) -> str:
    """Say how far off target each bobbin is, and which are farther than the tolerance.

    >>> off_target([1100, 990], 1000, 0.05)
    'bobbin 1 is 10.0% finer and bobbin 2 is 1.0% thicker; bobbin 1 is too far off'
    """
    off = [grist / target - 1 for grist in grists]
    each = listed(f"bobbin {at} is {_off_in_words(by)}" for at, by in enumerate(off, start=1))
    far = [f"bobbin {at}" for at, by in enumerate(off, start=1) if _is_far(by, tolerance)]
    if not far:
        return f"{each}; all near enough"
    return f"{each}; {listed(far)} {'is' if len(far) == 1 else 'are'} too far off"


def _off_in_words(by: float) -> str:
    if abs(by) < 0.0005:
        return "on it"
    return f"{abs(by):.1%} {'finer' if by > 0 else 'thicker'}"


def _is_far(by: float, tolerance: float) -> bool:
    """Tell whether it is more than the tolerance, and is written as more."""
    return abs(by) > tolerance and f"{abs(by):.1%}" != f"{tolerance:.1%}"


def listed(words: Iterable[str]) -> str:
    """Join words as one says them.

    >>> listed(["red", "green", "blue"]), listed(["red"]), listed([])
    ('red, green and blue', 'red', '')
    """
    said = list(words)
    if len(said) < 2:
        return "".join(said)
    return f"{', '.join(said[:-1])} and {said[-1]}"

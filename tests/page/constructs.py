"""Python whose meaning is not JavaScript's: small functions, and what each is called with.

The compiler takes only what is of the package, so the tests load this file as part of it.
"""

import math
import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import accumulate, chain, pairwise
from statistics import harmonic_mean, mean, median
from typing import Any, NamedTuple

# ---- numbers


def rounded(x: float) -> Any:
    return [round(x), round(x, 1), round(x, 2), f"{round(x, 1):.1f}", f"{round(x):.1f}"]


def to_whole(x: float) -> Any:
    whole = [math.floor(x), math.ceil(x), int(x)]
    return [*whole, [f"{one * 1.0:.1f}" for one in whole]]


def divided(a: float, b: float) -> Any:
    return [a // b, a % b, (a // b) * b + a % b]


def divided_on(a: float) -> Any:
    a //= 7
    a %= 5
    a **= 2
    a -= 1
    a *= 3
    return a


def signs(x: float) -> Any:
    return [-(x**2), (-x) ** 2, 2**-x, -(x**2) + 1, abs(-x), 2 * -x - -x]


def sums(numbers: list[float]) -> Any:
    return [
        sum(numbers),
        sum(numbers, 10),
        sum(one > 2 for one in numbers),
        mean(numbers),
        median(numbers),
        median([*numbers, 3]),
        round(harmonic_mean(numbers), 12),
        list(accumulate(numbers)),
        list(accumulate([-one for one in numbers], lambda a, b: a * b)),
    ]


def mathematics(x: float) -> Any:
    angles = [math.sin(x), math.cos(x), math.tan(x), math.atan(x)]
    powers = [math.exp(x), math.log(x), math.log1p(x), math.log10(x)]
    lengths = [math.sqrt(x), math.hypot(x, 1, 2), math.fsum([x, 1e9, -1e9])]
    tests = [math.isfinite(x / 1e-9), math.isnan(math.nan * x), math.isfinite(math.inf)]
    return [[round(one, 12) for one in [*angles, *powers, *lengths]], tests]


def read(words: list[str]) -> Any:
    return [int(words[0]), float(words[1]), float("inf") > 1, float("-inf") < 1, str(12)]


# ---- truth and comparison


def truth(x: Any) -> Any:
    return [bool(x), not x, "yes" if x else "no", x or "other", x and "other", bool(x) and 1]


def truth_of_classes() -> Any:
    return [bool(Skein(0, 0)), bool(Ends(0, 0)), bool(math.nan), [bool(x) for x in (None, False)]]


def shortcut(numbers: list[float]) -> Any:
    return numbers and numbers[0] > 1 and numbers[0]


def chained(low: float, x: float, high: float) -> Any:
    return [low <= x < high, low < x == high, low != x != high, 1 < len([x, x]) <= 2]


def bound_beside_a_parameter(a: float, b: float) -> Any:
    total, a = a + b, a * b
    return [total, a]


def chained_once() -> Any:
    asked = []

    def middle() -> float:
        asked.append(1)
        return 5

    return [1 < middle() < 10, len(asked)]


def same(a: Any, b: Any) -> Any:
    return [a == b, a != b, a in [b], a not in [1, b], [a, [b]] == [b, [a]], a is None]


def ordered(a: tuple[float, str], b: tuple[float, str]) -> Any:
    return [
        sorted([a, b, a]),
        max(a, b),
        min([b, a]),
        (a[0], 1) < (b[0], 0),
        [2] > [1, 5],
        [2] < [2, 1],
        [2, 1] < [2],
    ]


# ---- lists and words


def items(x: Any) -> Any:
    return [x[0], x[-1], x[-2], x[1:], x[:-1], x[-2:], x[1:-1], x[5:], x[:50], x[::-1], x[:]]


def set_items() -> Any:
    numbers = [1, 2, 3]
    numbers[-1] = 9
    numbers[0] += 5
    numbers.append(4)
    numbers.extend(one * 2 for one in [1, 2])
    return [numbers, numbers.index(9), numbers.count(4), len(numbers)]


def taken_apart(numbers: list[float]) -> Any:
    first, *rest = numbers
    (a, b), c = (first, 2), [*rest, *rest]
    a, b = b, a
    low, high = Ends(a, b)
    return [first, rest, a, b, c, low, high]


def given_anew(first: float, second: float) -> Any:
    first, third = second, first
    second += 1
    return [first, second, third]


def repeated(numbers: list[float]) -> Any:
    return [[0] * 3, 2 * [1, 2], "ab" * 2, 3 * "-", numbers + numbers, [*numbers, 5], "a" + "b"]


def gone_through(numbers: list[float]) -> Any:
    return [
        [[at, one] for at, one in enumerate(numbers, start=1)],
        [b - a for a, b in pairwise(numbers)],
        [[a, b] for a in [1, 2] for b in "xy"],
        [*chain([1], numbers, (2,))],
        [*reversed(numbers)],
        list(map(math.sqrt, numbers)),
        list(map(lambda a, b: a**b, numbers, [2, 2, 2])),
        list(filter(None, [0, 1, "", "a"])),
        list(filter(lambda one: one > 1, numbers)),
        [*range(3)],
        [*range(5, 1, -2)],
        [a + b for a in numbers if a > 1 for b in range(int(a)) if b % 2],
        next(one for one in numbers if one > 1),
        next((one for one in numbers if one > 100), "none"),
        any(one > 2 for one in numbers),
        all(one > 2 for one in numbers),
        any(a + b > 5 for a in numbers if a > 1 for b in numbers),
        any([]),
        all([]),
    ]


def zipped(a: list[int], b: list[int]) -> Any:
    return [[*zip(a, b)], [*zip(a, b, strict=False)], dict(zip("xy", a))]  # noqa: B905


def zipped_strictly(a: list[int], b: list[int]) -> Any:
    return [*zip(a, b, strict=True)]


def copied(numbers: list[float]) -> Any:
    copy, same, made = list(numbers), numbers, [one for one in numbers]  # noqa: C416
    copy.append(7)
    same.append(8)
    made.append(9)
    return [numbers, copy, made]


def sorted_by(pairs: list[tuple[str, int]]) -> Any:
    return [
        sorted(pairs, key=lambda pair: pair[1]),
        sorted(pairs, key=lambda pair: pair[1], reverse=True),
        sorted(pairs, reverse=True),
        sorted({name for name, _ in pairs}),
    ]


def extremes(pairs: list[tuple[str, int]]) -> Any:
    return [
        min(pairs, key=lambda pair: pair[1], default=None),
        max(pairs, key=lambda pair: pair[1], default=("none", 0)),
        max((number for _, number in pairs), default=0),
        min(3, *[number for _, number in pairs]),
        max(1, 2, key=lambda one: -one),
    ]


def words(text: str) -> Any:
    return [
        text.strip(),
        text.lstrip("x-"),
        text.rstrip(" .]^\\"),
        text.split(),
        text.split("-"),
        "-".join(text.split()),
        text.lower(),
        text.upper(),
        text.replace("a", "$&$1"),
        text.replace(".", ""),
        text.removeprefix("xx"),
        text.removesuffix("."),
        text.removesuffix(""),
        text.startswith("xx"),
        text.endswith("."),
        "a b" in text,
        text.count("x"),
        len(text),
        list(text[:3]),
    ]


FRACTION = re.compile(r"(\d+)\s*/\s*(\d+)(\+)?")
PARTS = re.compile(r"[/+]")


def patterns(text: str) -> Any:
    whole = FRACTION.fullmatch(text)
    return [
        [*whole.groups(), whole[0], whole[1], whole[3] is None] if whole else None,
        FRACTION.sub(lambda found: f"<{found[2]}>", text),
        PARTS.sub(" ", text),
        unicodedata.normalize("NFKC", text),
    ]


# ---- dicts and sets


def dicts(name: str) -> Any:
    made = {"b": 1, name: 2, "a": 3}
    made["c"] = 4
    made[name] += 10
    merged = {**made, "b": 5} | {"d": 6}
    return [
        list(made.items()),
        list(merged.keys()),
        list(merged.values()),
        list({"z": 0, **made, **merged, "e": 1}.items()),
        made.get("none"),
        made.get("none", 7),
        "b" in made,
        "constructor" in made,
        len({"length": 5, "size": 6}),
        [key for key in made],  # noqa: C416
        {"a": 1, "b": 2} == {"b": 2, "a": 1},
        {"a": 1} == {"a": 2},
        {"a": 1} == {"a": 1, "b": 2},
        dict(made) == made,
    ]


def dicts_of_numbers() -> Any:
    count: dict[Any, int] = {}
    for one in [3, 1, 3, 2]:
        count[one] = count.get(one, 0) + 1
    by_digits = {"10": "a", "9": "b"}
    return [
        list(count.items()),
        [key + 1 for key in count],
        list(by_digits),
        list({2: "x", 1: "y"}.items()),
        list({str(one): one for one in (2, 1)}.items()),
        list((count | {7: 1}).values()),
        count[3],
    ]


def dicts_of_tuples() -> Any:
    made = {(1, "a"): "x", (0, "b"): "y"}
    made[1, "a"] = "z"
    return [made[1, "a"], made.get((0, "b")), (2, "c") in made, [key[0] for key in made]]


def sets(a: list[Any], b: list[Any]) -> Any:
    ours, theirs = set(a), set(b)
    return [
        ours == theirs,
        {1, 2} == {2, 1},
        {(1, 2), (3, 4)} == {(3, 4), (1, 2)},
        (1, 2) in {(1, 2)},
        len(ours),
        sorted(ours | theirs),
        sorted({one % 3 for one in (1, 4, 6)}),
        ours | theirs == theirs | ours,
        not set(),
        frozenset(a) == ours,
    ]


# ---- functions


def defaults(*given: float) -> Any:
    def made(first: float, second: float = 2, *rest: float, third: float = 3) -> Any:
        return [first, second, list(rest), third]

    return [
        made(1),
        made(1, third=5),
        made(second=7, first=1),
        _sum_of(*given),
        _sum_of(1, *given, 2),
        _by_name(4, last=None),
        _by_name(3, between=1),
    ]


def _sum_of(first: float, *rest: float) -> float:
    return first + 10 * sum(rest)


def _by_name(first: float, /, between: float = 9, *, last: float | None = 8) -> Any:
    return [first, between, last]


def closures(numbers: list[float]) -> Any:
    kept = []
    for number in numbers:
        kept.append(lambda x: x + number)  # noqa: B023, PERF401 - what is to be shown
    total = 0.0

    def grown(by: float) -> float:
        return total + by

    total = 100
    return [[function(1) for function in kept], grown(1), (lambda x, y=2: x * y)(3)]


def loops(number: int) -> Any:
    found, at = [], 0
    while True:
        at += 1
        if at == 2:
            continue
        if at > number:
            break
        found.append(at)
    for inside in found:
        at += inside
    for counted in range(1, 10**9, 3):
        if counted > number:
            break
    for never in range(3, 3):
        found.append(never)  # noqa: PERF402
    return [found, at, inside, counted, [down for down in range(3, 0, -1)]]  # noqa: C416


def walrus(numbers: list[float]) -> Any:
    if (size := len(numbers)) > 1 and (last := numbers[-1]) > 0:
        squares = [square for one in numbers if (square := one * one) > 1]
        large = any(square > 3 for one in numbers if (square := one * one) % 2)
        all_large = all(square > 3 for one in numbers if (square := one * one) > 1)
        pairs = [(a, b) for a in numbers if (b := a + 1) > 2 for _ in range(2)]
        return [size, last, squares, square, large, all_large, pairs]
    return [size]


def branches(number: float) -> str:
    if number < 0:
        word = "less"
    elif number == 0:
        word = "none"
    else:
        word = "more"
    return word


# ---- dataclasses and named tuples


@dataclass(frozen=True)
class Yarn:
    """A yarn."""

    grist: float
    plies: int = 1
    names: tuple[str, ...] = ("wool",)

    @property
    def strand(self) -> float:
        """The grist of a strand."""
        return self.grist * self.plies

    def times(self, factor: float, *, plus: float = 0) -> float:
        """Give a multiple of the grist."""
        return self.strand * factor + plus

    def word(self) -> str:
        """Say what it is."""
        return "yarn"

    def __str__(self) -> str:
        """Say its name."""
        return f"a {self.word()} of {self.grist:g}"

    def __contains__(self, name: str) -> bool:
        """Tell whether it has a fibre."""
        return name in self.names


@dataclass(frozen=True)
class Skein(Yarn):
    """A skein of a yarn."""

    turns: float = 2

    def __post_init__(self) -> None:
        """Refuse a skein that was wound backwards."""
        if self.turns < 0:
            raise ValueError(self.word())

    def word(self) -> str:
        """Say what it is."""
        return "skein"


class Ends(NamedTuple):
    """Two ends of a range."""

    low: float
    high: float = 10

    @property
    def middle(self) -> float:
        """The middle."""
        return (self.low + self.high) / 2


YARNS = {"fine": Yarn(3000, 2), "odd": Skein(1000, names=("silk", "flax"))}


def classes(grist: float) -> Any:
    yarn, skein, ends = Yarn(grist, names=()), Skein(grist, turns=3), Ends(1)
    low, high = ends
    return [
        yarn == Yarn(grist, 1, ()),
        yarn == Yarn(grist, 1, ("wool",)),
        skein == Skein(grist, 1, ("wool",), 3),
        Yarn(grist) == Skein(grist),
        yarn in [Yarn(grist, 1, ())],
        skein.strand,
        skein.times(2),
        skein.times(2, plus=1),
        f"{yarn}, {skein}",
        str(YARNS["odd"]),
        "silk" in YARNS["odd"],
        "wool" in yarn,
        replace(skein, plies=2).strand,
        skein.plies,
        [low, high, ends[0], ends[-1], ends.middle, ends == Ends(1, 10), len(ends), list(ends)],
        max(YARNS.values(), key=lambda one: one.strand).plies,
        [name for name, one in YARNS.items() if one.plies > 1],
    ]


def refused(turns: float) -> float:
    return Skein(1000, turns=turns).turns


def kinds(x: Any) -> Any:
    return [isinstance(x, str), isinstance(x, int), isinstance(x, bool)]


# ---- texts with numbers in them


def formats(numbers: list[float]) -> Any:
    return [
        f"{x:.2f} {x:,.2f} {x:.0f} {x:,.0f} {x:.1%} {x:g} {x:.3g} {x:.15g} {x:.{len('ab')}f}"
        for x in numbers
    ]


def formats_of_whole(numbers: list[int]) -> Any:
    return [f"{x} {x:d} {x:,} {-x:,}" for x in numbers]


def texts(name: str, x: int) -> Any:
    return [f"{name} `{x}` ${{{name}}} \\ \"'\n", f"{None} {True}", f"{'in'}{f'{x + 1}'}" + name]


TIES = (0.125, 0.375, 2.675, 0.5, 1.5, 2.5, 0.25, 0.35, 1e21, 1.5e22, -0.0, 0.0, -0.4, -2.5, -0.125)
SIZES = (*(1234567.891, 999999.5, 9999995, 0.0001, 0.00001234, 1e-7, 123456789012, 5e-324), *TIES)
PAIRS = (("b", 2), ("a", 1), ("c", 2), ("d", 1))

CASES: tuple[tuple[Callable[..., Any], tuple[tuple[Any, ...], ...]], ...] = (
    (rounded, tuple((x,) for x in (*TIES, 1e15 + 0.5, 3.14159))),
    (to_whole, tuple((x,) for x in (-0.5, 0.5, -1.5, 2, -0.0))),
    (divided, tuple((a, b) for a in (7, -7, 1, 0.3, -0.3, 6) for b in (3, -3, 0.1, -0.1))),
    (divided_on, ((39,), (-39,))),
    (signs, ((3,), (-2,))),
    (sums, (([1, 2.5, 4],),)),
    (mathematics, ((0.25,), (0.9,))),
    (read, ((["12", "1.5"],),)),
    (truth, tuple((x,) for x in ("", [], {}, 0, "0", [0], {"a": 0}, 1, None, False, True))),
    (truth_of_classes, ((),)),
    (shortcut, (([],), ([0],), ([5],))),
    (chained, ((1, 2, 2), (3, 2, 2), (2, 2, 3))),
    (chained_once, ((),)),
    (bound_beside_a_parameter, ((2, 3),)),
    (
        same,
        (([1, [2]], [1, [2]]), ({"a": [1]}, {"a": [1]}), ("1", 1), (1, 1), ([], {}), (None, 0)),
    ),
    (ordered, (((2, "a"), (10, "b")), ((2, "b"), (2, "a")))),
    (items, (("abcd",), ([1, 2, 3, 4],))),
    (set_items, ((),)),
    (taken_apart, (([1, 2, 3],),)),
    (given_anew, ((1, 2),)),
    (repeated, (([1, 2],),)),
    (gone_through, (([1, 2, 4],),)),
    (zipped, (([1, 2, 3], [4, 5]),)),
    (zipped_strictly, (([1, 2], [3, 4]), ([1, 2], [3]))),
    (copied, (([1],),)),
    (sorted_by, ((PAIRS,), ([],))),
    (extremes, ((PAIRS,),)),
    (words, (("xx-a b.a-x] ",), ("\\ Ab cd. ",), ("Äxx",))),
    (patterns, (("1/2",), ("a 1 /2+, 3/4 b",), ("½ ﬁ",))),
    (dicts, (("x",), ("length",))),
    (dicts_of_numbers, ((),)),
    (dicts_of_tuples, ((),)),
    (sets, (([1, 2, 2], [2, 1]), ([3], [4]), ([], []))),
    (defaults, ((1,), (1, 4), (1, 4, 5, 6))),
    (closures, (([1, 2, 3],),)),
    (loops, ((4,),)),
    (walrus, (([1, 2, 3],), ([],))),
    (branches, ((-1,), (0,), (1,))),
    (classes, ((1200,),)),
    (refused, ((1,), (-1,))),
    (kinds, (("",), (0,), (5,), ([],))),
    (formats, ((list(SIZES),),)),
    (formats_of_whole, (([0, 7, 1234567, 10**15],),)),
    (texts, (("name", 5),)),
)

"""How far yarn at hand and yarn needed are in doubt, and what is said of the chance.

A chance counts the pattern's own yards: that the yarn at hand is no less than the project really
takes. A reserve is a margin for buying or spinning; it may be used up, and is in no chance.

One measured grist turns every weighed skein into yards, so its error is the same in all of them
and adds up plainly, however many skeins there are. What is in doubt anew for each skein, its
weight or its own length, adds by its square (JCGM 100:2008, 5.2).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from yarnsheets import formulas
from yarnsheets.estimates import PositiveEstimate, chance_enough
from yarnsheets.estimates.budget import resolution
from yarnsheets.estimates.estimate import t_factor

# A weight of fewer steps of the scale tells too little (common practice, no source).
_FEWEST_STEPS = 2

# The tails of measurements are seldom known beyond one in a thousand.
_SUREST = 0.999

# Bands after Mastrandrea and others, Guidance Note for Lead Authors of the IPCC Fifth Assessment
# Report on Consistent Treatment of Uncertainties (2010), table 1, from memory: the least number
# of times in a hundred, and what it is called.
_BANDS = (
    (99, "Almost surely enough"),
    (90, "Very likely enough"),
    (66, "Probably enough"),
    (34, "It may be enough or not"),
    (11, "Probably not enough"),
    (2, "Very likely not enough"),
    (0, "Almost surely not enough"),
)


@dataclass(frozen=True)
class Yarn:
    """Yarn at hand: skeins weighed, skeins of known length, and how far each may be off.

    The ranges are shares either way, 95% sure; `scale_step` is in pounds.
    """

    weights: Sequence[float]
    grist: float
    grist_range: float
    scale_step: float
    lengths: Sequence[float]
    length_range: float

    @property
    def yards(self) -> float:
        """All the yarn there is, in yards."""
        return float(formulas.length(sum(self.weights), self.grist)) + sum(self.lengths)

    @property
    def from_weight(self) -> float:
        """The part of the yards that comes of weight and grist."""
        return 1 - sum(self.lengths) / self.yards

    def in_doubt(self, grist_shared: float = 0.0) -> PositiveEstimate:
        """Give the yards with their doubt.

        `grist_shared` is 1 for a need that the same grist turns into yards: as far as both
        rise and fall together with the grist, its error makes no difference between them.

        >>> yarn = Yarn([0.25, 0.25], 1000, 0.06, 0, [], 0.02)
        >>> round(yarn.in_doubt().relative / standard(0.06), 9)
        1.0
        >>> yarn.in_doubt(grist_shared=1).relative
        0.0
        """
        shared = standard(self.grist_range) * (self.from_weight - grist_shared)
        per_skein = [
            formulas.length(weight, self.grist)
            * resolution("a skein", self.scale_step / weight).relative
            for weight in self.weights
        ]
        known = [length * standard(self.length_range) for length in self.lengths]
        return PositiveEstimate(self.yards, math.hypot(self.yards * shared, *per_skein, *known))


def standard(either_way: float) -> float:
    """Give the standard uncertainty of a range that is 95% sure.

    >>> round(standard(0.1), 5)
    0.05102
    """
    return either_way / t_factor(math.inf)


def chance(at_hand: PositiveEstimate, needed: PositiveEstimate) -> float:
    """Give the chance that it is enough, never surer than measurements can be."""
    return min(max(chance_enough(at_hand, needed), 1 - _SUREST), _SUREST)


def times(part: float) -> str:
    """Say a chance as times of a hundred, never as none or all of them.

    >>> times(0.936), times(0.9999), times(0.001)
    ('94 times of 100', 'more than 99 times of 100', 'less than once of 100')
    """
    count = times_written(part)
    if part >= 0.995:
        return "more than 99 times of 100"
    if part < 0.005:
        return "less than once of 100"
    return "once of 100" if count == 1 else f"{count} times of 100"


def verdict(part: float) -> str:
    """Say in words how likely it is, in keeping with the number that is said.

    >>> verdict(0.936), verdict(0.5), verdict(0.002)
    ('Very likely enough', 'It may be enough or not', 'Almost surely not enough')
    """
    return next(word for least, word in _BANDS if times_written(part) >= least)


def times_written(part: float) -> int:
    """Give how many times of a hundred a chance is written as.

    A chance is held against the one wanted by this: one that is written as the other has reached
    it, and nothing more is asked for.

    >>> times_written(0.9449), times_written(0.945), times_written(0.95)
    (94, 95, 95)
    """
    return math.floor(100 * part + 0.5)


def too_light(weight: float, scale_step: float) -> bool:
    """Tell whether a weight is too light for a scale with such steps to tell it.

    >>> too_light(0.9, 0.5), too_light(1.0, 0.5)
    (True, False)
    """
    return weight < _FEWEST_STEPS * scale_step

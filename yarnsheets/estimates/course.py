"""The course of a ball while it is worked up: what the whole takes, judged from weighings.

Yarn goes from the ball in proportion to the cloth made, but for the unevenness of yarn and hand.
Taken as a random walk along the cloth, all that a weighing tells of the total is in the last
one; the stretches between weighings tell how uneven the work is.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from yarnsheets.estimates import student
from yarnsheets.estimates.checks import above_nought, column, nought_or_more
from yarnsheets.estimates.estimate import Estimate, t_factor

if TYPE_CHECKING:
    from collections.abc import Sequence

# A first guess of the unevenness counts as so many stretches between weighings: our own choice.
GUESS_COUNTS = 4


@dataclass(frozen=True)
class Course:
    """What the whole piece takes, as one more weighing would refine it.

    `total` is the yarn for the whole; `wander` the standard deviation over the whole of it, with
    its degrees of freedom; `made` the share made so far; `step` that of the scale.
    """

    total: float
    wander: float
    dof: float
    made: float
    left: float
    step: float

    def still_to_use(self, until: float = 1.0) -> Estimate:
        """Return how much yarn goes from now until a share of the piece is made.

        The work to come wanders by itself, and its rate is known only from the work done.

        >>> Course(10.0, 0.2, 4, 0.5, 6.0, 0.0).still_to_use()
        Estimate(value=5.0, uncertainty=0.2, dof=4)
        """
        by_rate = (until - self.made) / self.made
        scale = self.step / math.sqrt(12) * math.hypot(by_rate, by_rate)
        use = self.total * (until - self.made)
        return Estimate(use, math.hypot(self._wander_until(until), scale), self.dof)

    def spare(self, reserve: float = 0.0, until: float = 1.0) -> Estimate:
        """Return what is left over when a share is made and the reserve kept; negative if short.

        >>> Course(10.0, 0.2, 4, 0.5, 6.0, 0.0).spare(0.5)
        Estimate(value=0.5, uncertainty=0.2, dof=4)
        """
        by_rate = (until - self.made) / self.made
        # the last weighing counts both as what is left and, with the first, as what was used
        scale = self.step / math.sqrt(12) * math.hypot(1 + by_rate, by_rate)
        spare = self.left - reserve - self.total * (until - self.made)
        return Estimate(spare, math.hypot(self._wander_until(until), scale), self.dof)

    def chance(self, reserve: float = 0.0) -> float:
        """Return the chance that the ball lasts to the end with the reserve kept.

        >>> round(Course(10.0, 0.2, 4, 0.5, 6.0, 0.0).chance(1.0), 6)
        0.5
        """
        spare = self.spare(reserve)
        if not spare.uncertainty:
            return float(spare.value >= 0)
        return student.probability(spare.value / spare.uncertainty, spare.dof)

    def is_safe(self, reserve: float, until: float, chance: float) -> bool:
        """Tell whether what is left reaches a share of the piece, reserve kept, with that chance.

        >>> now = Course(10.0, 0.0, 4, 0.5, 3.0, 0.0)
        >>> now.is_safe(1.0, 0.6, 0.95), now.is_safe(1.0, 0.75, 0.95)
        (True, False)
        """
        # one end of a range: the other is left out too, so twice as much is outside
        t = t_factor(self.dof, 2 * chance - 1)
        spare = self.spare(reserve, until)
        return spare.value >= t * spare.uncertainty

    def _wander_until(self, share: float) -> float:
        ahead = share - self.made
        return self.wander * math.sqrt(ahead + ahead**2 / self.made)


def course(
    start: float, left: Sequence[float], made: Sequence[float], guess: float, step: float
) -> Course:
    """Return the course of a ball, from what it weighed when shares of the piece were made.

    ``total = (start - left) / made``

    Parameters
    ----------
    start : float
        What the ball weighed before the first row. [lb]
    left : Sequence
        What was left of it at each weighing. [lb]
    made : Sequence
        Share of the piece that was made then, growing from weighing to weighing. [1]
    guess : float
        Unevenness that is likely: standard deviation of a whole piece, as a share. [1]
    step : float
        One step of the scale. [lb]

    Returns
    -------
    Course
        What the whole takes, how it wanders, and with what degrees of freedom. [lb]

    Raises
    ------
    ValueError
        If the lists differ in length or do not run one way, or nothing was used.

    Range
    -----
    A latest weighing after a tenth of the piece or more; nothing left is allowed.

    Source
    ------
    Follows from a random walk along the cloth: the estimate of greatest likelihood, with the
    guess as a prior (JCGM 100:2008, 4.3.1, allows one); no source for the guess's weight.

    Examples
    --------
    >>> found = course(10.0, [7.0, 5.0], [0.3, 0.5], 0.02, 0.0)
    >>> found.total, found.left, found.dof
    (10.0, 5.0, 5)
    """
    shares = column(made, "share made", fewest=1)
    weights = [nought_or_more("weight left", float(weight)) for weight in left]
    if len(shares) != len(weights):
        msg = (
            f"There are {len(shares)} places and {len(weights)} weights. Give one weight for each."
        )
        raise ValueError(msg)
    parts = [b - a for a, b in zip([0.0, *shares], shares, strict=False)]
    used = [a - b for a, b in zip([start, *weights], weights, strict=False)]
    if min(parts) <= 0 or min(used) <= 0:
        msg = "The work must go on and the ball grow lighter from each weighing to the next."
        raise ValueError(msg)
    total = above_nought("yarn used", start - weights[-1]) / shares[-1]
    guessed = nought_or_more("guess", guess) * total
    squares = sum((use - total * part) ** 2 / part for use, part in zip(used, parts, strict=True))
    dof = GUESS_COUNTS + len(parts) - 1
    wander = math.sqrt((GUESS_COUNTS * guessed**2 + squares) / dof)
    return Course(float(total), wander, dof, float(shares[-1]), float(weights[-1]), step)

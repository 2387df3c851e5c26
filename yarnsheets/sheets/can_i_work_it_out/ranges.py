"""What exercises are drawn from: round numbers of each system, as yarns and projects have them.

Common practice, no source, but for what `published` has.
"""

from dataclasses import dataclass

from yarnsheets.sheets.shared import systems

# Where a range begins, how far its steps go, and how many there are.
Range = tuple[float, float, int]


@dataclass(frozen=True)
class Ranges:
    """The system of an exercise, and the ranges of its numbers in the units of that."""

    system: systems.System
    cuts: Range
    factors: list[float]
    grists: Range
    weights: Range
    projects: Range
    singles: Range
    wanted: Range
    yarns: Range
    skeins: Range
    used: Range
    left: Range


YARDS = Ranges(
    system=systems.YARDS,
    cuts=(6, 0.5, 37),
    factors=[50, 100, 100, 150, 200],
    grists=(500, 50, 51),
    weights=(1.5, 0.1, 66),
    projects=(200, 20, 71),
    singles=(1200, 100, 49),
    wanted=(400, 50, 33),
    yarns=(4, 1, 29),
    skeins=(1.5, 0.5, 8),
    used=(0.6, 0.1, 25),
    left=(0.5, 0.1, 26),
)

METRES = Ranges(
    system=systems.METRES,
    cuts=(15, 0.5, 91),
    factors=[5, 8, 10, 10, 20],
    grists=(100, 10, 51),
    weights=(40, 5, 43),
    projects=(200, 20, 71),
    singles=(240, 20, 49),
    wanted=(80, 10, 33),
    yarns=(100, 25, 33),
    skeins=(50, 10, 11),
    used=(15, 5, 16),
    left=(15, 5, 16),
)

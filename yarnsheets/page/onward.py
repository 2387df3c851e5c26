"""Ways from one worksheet on to another, which carry the numbers that both know."""

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Onward:
    """A way on to another worksheet.

    `carries` gives, by the name of an input there, the input or number here that it takes; an
    empty name leaves a list there empty, where its example would be counted in.
    """

    worksheet: str
    carries: Mapping[str, str]

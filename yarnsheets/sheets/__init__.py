"""One class a worksheet: set a trait, read a trait, or show it as a page with `view()`."""

from yarnsheets.sheets.how_many_yards import HowManyYards
from yarnsheets.sheets.how_sure import HowSureIsTheGrist

__all__ = ["HowManyYards", "HowSureIsTheGrist"]

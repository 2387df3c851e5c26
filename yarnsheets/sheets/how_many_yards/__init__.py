"""How many yards?"""

from yarnsheets.sheets.how_many_yards.sheet import HowManyYards

__all__ = ["HowManyYards"]

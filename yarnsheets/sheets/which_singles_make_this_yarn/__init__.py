"""Which singles make this yarn?"""

from yarnsheets.sheets.which_singles_make_this_yarn.sheet import WhichSinglesMakeThisYarn

__all__ = ["WhichSinglesMakeThisYarn"]

"""What does the dye lot take?"""

from yarnsheets.sheets.what_does_the_dye_lot_take.sheet import WhatDoesTheDyeLotTake

__all__ = ["WhatDoesTheDyeLotTake"]

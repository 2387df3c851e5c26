"""What does knitting take?"""

from yarnsheets.sheets.what_does_knitting_take.sheet import WhatDoesKnittingTake

__all__ = ["WhatDoesKnittingTake"]

"""What does weaving take?"""

from yarnsheets.sheets.what_does_weaving_take.sheet import WhatDoesWeavingTake

__all__ = ["WhatDoesWeavingTake"]

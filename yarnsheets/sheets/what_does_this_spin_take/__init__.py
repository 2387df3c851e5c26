"""What does this spin take?"""

from yarnsheets.sheets.what_does_this_spin_take.sheet import WhatDoesThisSpinTake

__all__ = ["WhatDoesThisSpinTake"]

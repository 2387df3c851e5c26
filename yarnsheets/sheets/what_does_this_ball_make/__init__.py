"""What does this ball make?"""

from yarnsheets.sheets.what_does_this_ball_make.sheet import WhatDoesThisBallMake

__all__ = ["WhatDoesThisBallMake"]

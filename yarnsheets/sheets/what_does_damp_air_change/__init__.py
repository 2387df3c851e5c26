"""What does damp air change?"""

from yarnsheets.sheets.what_does_damp_air_change.sheet import WhatDoesDampAirChange

__all__ = ["WhatDoesDampAirChange"]

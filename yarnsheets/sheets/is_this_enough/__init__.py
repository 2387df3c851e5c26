"""Is this enough?"""

from yarnsheets.sheets.is_this_enough.sheet import IsThisEnough

__all__ = ["IsThisEnough"]

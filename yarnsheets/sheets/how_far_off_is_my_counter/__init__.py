"""How far off is my counter?"""

from yarnsheets.sheets.how_far_off_is_my_counter.sheet import HowFarOffIsMyCounter

__all__ = ["HowFarOffIsMyCounter"]

"""Can I work it out?"""

from yarnsheets.sheets.can_i_work_it_out.sheet import CanIWorkItOut

__all__ = ["CanIWorkItOut"]

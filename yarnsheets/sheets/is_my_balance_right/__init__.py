"""Is my balance right?"""

from yarnsheets.sheets.is_my_balance_right.sheet import IsMyBalanceRight

__all__ = ["IsMyBalanceRight"]

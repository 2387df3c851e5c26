"""One class a worksheet: set a trait, read a trait, or show it as a page with `view()`."""

from yarnsheets.sheets.agreement import DoTwoMethodsAgree
from yarnsheets.sheets.balance_check import BalanceCheck
from yarnsheets.sheets.counter_check import CounterCheck
from yarnsheets.sheets.damp import WhatDampChanges
from yarnsheets.sheets.drifting import IsMyGristDrifting
from yarnsheets.sheets.how_many_yards import HowManyYards
from yarnsheets.sheets.how_sure import HowSureIsTheGrist
from yarnsheets.sheets.weighed_skein import WeighedSkein
from yarnsheets.sheets.wraps import WhatDoWrapsTell

__all__ = [
    "BalanceCheck",
    "CounterCheck",
    "DoTwoMethodsAgree",
    "HowManyYards",
    "HowSureIsTheGrist",
    "IsMyGristDrifting",
    "WeighedSkein",
    "WhatDampChanges",
    "WhatDoWrapsTell",
]

"""One class a worksheet: set a trait, read a trait, or show it as a page with `view()`."""

from yarnsheets.sheets.agreement import DoTwoMethodsAgree
from yarnsheets.sheets.balance_check import BalanceCheck
from yarnsheets.sheets.ball_lasts import WillTheBallLast
from yarnsheets.sheets.counter_check import CounterCheck
from yarnsheets.sheets.damp import WhatDampChanges
from yarnsheets.sheets.drifting import IsMyGristDrifting
from yarnsheets.sheets.dye_lot import DyeLot
from yarnsheets.sheets.how_many_yards import HowManyYards
from yarnsheets.sheets.how_much_twist import HowMuchTwist
from yarnsheets.sheets.how_sure import HowSureIsTheGrist
from yarnsheets.sheets.is_this_enough import IsThisEnough
from yarnsheets.sheets.knitting_takes import WhatKnittingTakes
from yarnsheets.sheets.spin_plan import SpinPlan
from yarnsheets.sheets.two_plans import TwoPlans
from yarnsheets.sheets.use_it_all import UseItAll
from yarnsheets.sheets.weaving_takes import WhatWeavingTakes
from yarnsheets.sheets.weighed_skein import WeighedSkein
from yarnsheets.sheets.which_singles import WhichSingles
from yarnsheets.sheets.wraps import WhatDoWrapsTell

__all__ = [
    "BalanceCheck",
    "CounterCheck",
    "DoTwoMethodsAgree",
    "DyeLot",
    "HowManyYards",
    "HowMuchTwist",
    "HowSureIsTheGrist",
    "IsMyGristDrifting",
    "IsThisEnough",
    "SpinPlan",
    "TwoPlans",
    "UseItAll",
    "WeighedSkein",
    "WhatDampChanges",
    "WhatDoWrapsTell",
    "WhatKnittingTakes",
    "WhatWeavingTakes",
    "WhichSingles",
    "WillTheBallLast",
]

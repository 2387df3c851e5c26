"""One class a worksheet: set a trait, read a trait, or show it as a page with `view()`."""

from yarnsheets.sheets.can_i_work_it_out import CanIWorkItOut
from yarnsheets.sheets.do_two_methods_agree import DoTwoMethodsAgree
from yarnsheets.sheets.how_far_off_is_my_counter import HowFarOffIsMyCounter
from yarnsheets.sheets.how_many_yards.sheet import HowManyYards
from yarnsheets.sheets.how_much_twist_does_it_want import HowMuchTwistDoesItWant
from yarnsheets.sheets.how_sure_is_the_grist import HowSureIsTheGrist
from yarnsheets.sheets.is_my_balance_right import IsMyBalanceRight
from yarnsheets.sheets.is_my_grist_drifting import IsMyGristDrifting
from yarnsheets.sheets.is_this_enough.sheet import IsThisEnough
from yarnsheets.sheets.what_do_our_cuts_say import WhatDoOurCutsSay
from yarnsheets.sheets.what_do_wraps_tell_of_grist import WhatDoWrapsTellOfGrist
from yarnsheets.sheets.what_does_a_weighed_skein_say import WhatDoesAWeighedSkeinSay
from yarnsheets.sheets.what_does_damp_air_change import WhatDoesDampAirChange
from yarnsheets.sheets.what_does_knitting_take import WhatDoesKnittingTake
from yarnsheets.sheets.what_does_the_dye_lot_take import WhatDoesTheDyeLotTake
from yarnsheets.sheets.what_does_this_ball_make import WhatDoesThisBallMake
from yarnsheets.sheets.what_does_this_spin_take import WhatDoesThisSpinTake
from yarnsheets.sheets.what_does_weaving_take import WhatDoesWeavingTake
from yarnsheets.sheets.what_is_grist import WhatIsGrist
from yarnsheets.sheets.what_is_on_my_shelf import WhatIsOnMyShelf
from yarnsheets.sheets.which_of_two_plans import WhichOfTwoPlans
from yarnsheets.sheets.which_singles_make_this_yarn import WhichSinglesMakeThisYarn
from yarnsheets.sheets.will_the_ball_last import WillTheBallLast

__all__ = [
    "CanIWorkItOut",
    "DoTwoMethodsAgree",
    "HowFarOffIsMyCounter",
    "HowManyYards",
    "HowMuchTwistDoesItWant",
    "HowSureIsTheGrist",
    "IsMyBalanceRight",
    "IsMyGristDrifting",
    "IsThisEnough",
    "WhatDoOurCutsSay",
    "WhatDoWrapsTellOfGrist",
    "WhatDoesAWeighedSkeinSay",
    "WhatDoesDampAirChange",
    "WhatDoesKnittingTake",
    "WhatDoesTheDyeLotTake",
    "WhatDoesThisBallMake",
    "WhatDoesThisSpinTake",
    "WhatDoesWeavingTake",
    "WhatIsGrist",
    "WhatIsOnMyShelf",
    "WhichOfTwoPlans",
    "WhichSinglesMakeThisYarn",
    "WillTheBallLast",
]

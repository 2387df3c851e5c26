"""What do our cuts say?"""

from yarnsheets.sheets.what_do_our_cuts_say.sheet import WhatDoOurCutsSay

__all__ = ["WhatDoOurCutsSay"]

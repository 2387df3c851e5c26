"""What does a weighed skein say?"""

from yarnsheets.sheets.what_does_a_weighed_skein_say.sheet import WhatDoesAWeighedSkeinSay

__all__ = ["WhatDoesAWeighedSkeinSay"]

"""What is on my shelf?"""

from yarnsheets.sheets.what_is_on_my_shelf.sheet import WhatIsOnMyShelf

__all__ = ["WhatIsOnMyShelf"]

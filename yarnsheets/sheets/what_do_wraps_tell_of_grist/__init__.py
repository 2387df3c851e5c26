"""What do wraps tell of grist?"""

from yarnsheets.sheets.what_do_wraps_tell_of_grist.sheet import WhatDoWrapsTellOfGrist

__all__ = ["WhatDoWrapsTellOfGrist"]

"""What is grist?"""

from yarnsheets.sheets.what_is_grist.sheet import WhatIsGrist

__all__ = ["WhatIsGrist"]

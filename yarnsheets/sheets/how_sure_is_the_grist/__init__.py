"""How sure is the grist?"""

from yarnsheets.sheets.how_sure_is_the_grist.sheet import HowSureIsTheGrist

__all__ = ["HowSureIsTheGrist"]

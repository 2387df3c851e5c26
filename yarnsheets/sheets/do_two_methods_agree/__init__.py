"""Do two methods agree?"""

from yarnsheets.sheets.do_two_methods_agree.sheet import DoTwoMethodsAgree

__all__ = ["DoTwoMethodsAgree"]

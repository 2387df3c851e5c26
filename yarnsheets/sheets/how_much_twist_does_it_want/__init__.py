"""How much twist does it want?"""

from yarnsheets.sheets.how_much_twist_does_it_want.sheet import HowMuchTwistDoesItWant

__all__ = ["HowMuchTwistDoesItWant"]

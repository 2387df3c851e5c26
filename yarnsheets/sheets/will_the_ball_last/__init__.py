"""Will the ball last?"""

from yarnsheets.sheets.will_the_ball_last.sheet import WillTheBallLast

__all__ = ["WillTheBallLast"]

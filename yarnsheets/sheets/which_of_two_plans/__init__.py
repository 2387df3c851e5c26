"""Which of two plans?"""

from yarnsheets.sheets.which_of_two_plans.sheet import WhichOfTwoPlans

__all__ = ["WhichOfTwoPlans"]

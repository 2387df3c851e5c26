"""Ways from one worksheet on to another, which carry the numbers that both know."""

from collections.abc import Mapping
from dataclasses import dataclass

# By the name of its file, the question each worksheet asks: its title.
QUESTIONS = {
    "how-many-yards": "How many yards is this?",
    "how-sure-is-the-grist": "How sure is the grist?",
    "what-does-a-weighed-skein-say": "What does a weighed skein say?",
    "is-my-balance-right": "Is my balance right?",
    "how-far-off-is-my-counter": "How far off is my counter?",
    "do-two-methods-agree": "Do two methods agree?",
    "what-do-wraps-tell-of-grist": "What do wraps tell of grist?",
    "what-does-damp-air-change": "What does damp air change?",
    "is-my-grist-drifting": "Is my grist drifting?",
    "is-this-enough": "Is this enough?",
    "will-the-ball-last": "Will the ball last?",
    "what-does-this-ball-make": "How large a piece does this ball make?",
    "what-does-knitting-take": "How much yarn does the knitting take?",
    "what-does-weaving-take": "How much yarn does the weaving take?",
    "what-does-this-spin-take": "What does this spin take?",
    "which-of-two-plans": "Which of two plans takes less?",
    "which-singles-make-this-yarn": "Which singles make this yarn?",
    "how-much-twist-does-it-want": "How much twist does it want?",
    "what-does-the-dye-lot-take": "What does the dye lot take?",
}


@dataclass(frozen=True)
class Onward:
    """A way on to another worksheet.

    `carries` gives, by the name of an input there, the input or number here that it takes; an
    empty name leaves a list there empty, where its example would be counted in.
    """

    worksheet: str
    carries: Mapping[str, str]

    def describe(self) -> dict[str, object]:
        """Describe the way as the page reads it."""
        return {**vars(self), "question": QUESTIONS[self.worksheet]}


# By the name of the sheet: the worksheets one is likely to want next.
WAYS: dict[str, tuple[Onward, ...]] = {
    "HowManyYards": (
        Onward(
            "is-this-enough", {"grist": "yarn_grist", "weights": "weight", "project": "project"}
        ),
        Onward("how-sure-is-the-grist", {"weight": "weight"}),
        Onward("which-singles-make-this-yarn", {"grist_wanted": "grist_needed"}),
        Onward("what-do-wraps-tell-of-grist", {"grist": "yarn_grist"}),
        Onward("what-does-knitting-take", {"grist": "yarn_grist"}),
    ),
    "HowSureIsTheGrist": (
        Onward(
            "is-this-enough", {"grist": "grist", "grist_range": "half_width", "weights": "weight"}
        ),
        Onward("how-many-yards", {"grist": "grist", "weight": "weight"}),
        Onward("is-my-balance-right", {"balance_factor": "balance_factor"}),
        Onward("what-does-damp-air-change", {"grist": "grist", "weight": "weight"}),
        Onward("is-my-grist-drifting", {"target": "grist", "balance_factor": "balance_factor"}),
    ),
    "WeighedSkein": (
        Onward("how-many-yards", {"grist": "grist", "weight": "mass"}),
        Onward("is-my-balance-right", {"yarn_length": "yards", "yarn_weight": "mass"}),
        Onward("how-far-off-is-my-counter", {"reading": "yards"}),
    ),
    "BalanceCheck": (
        Onward("how-sure-is-the-grist", {"balance_factor": "factor"}),
        Onward("what-does-a-weighed-skein-say", {"gross": "yarn_weight"}),
    ),
    "CounterCheck": (Onward("is-this-enough", {"lengths": "yards", "weights": ""}),),
    "WhatDoWrapsTell": (
        Onward("how-many-yards", {"grist": "grist"}),
        Onward("what-does-weaving-take", {"grist": "grist"}),
    ),
    "WhatDampChanges": (
        Onward("how-many-yards", {"grist": "grist_then", "weight": "weight_then"}),
    ),
    "IsMyGristDrifting": (
        Onward("how-many-yards", {"grist": "now", "take_up": "take_up"}),
        Onward("how-sure-is-the-grist", {"balance_factor": "balance_factor"}),
    ),
    "IsThisEnough": (
        Onward("how-many-yards", {"grist": "grist", "project": "needed"}),
        Onward("how-sure-is-the-grist", {"wanted": "grist_range"}),
        Onward("will-the-ball-last", {"grist": "grist", "weight": "weighed"}),
        Onward("what-does-this-spin-take", {"grist_wanted": "grist", "project": "project"}),
    ),
    "WillTheBallLast": (
        Onward("what-does-this-ball-make", {"grist": "grist", "weight": "now"}),
        Onward("is-this-enough", {"grist": "grist", "weights": "now", "project": "rest_yards"}),
    ),
    "UseItAll": (Onward("will-the-ball-last", {"grist": "grist", "weight": "weight"}),),
    "WhatKnittingTakes": (
        Onward("is-this-enough", {"grist": "grist", "project": "yards", "reserve": "reserve"}),
        Onward(
            "what-does-this-spin-take",
            {"grist_wanted": "grist", "project": "yards", "reserve": "reserve"},
        ),
    ),
    "WhatWeavingTakes": (
        Onward(
            "is-this-enough", {"grist": "grist", "project": "total_yards", "reserve": "reserve"}
        ),
        Onward("how-many-yards", {"grist": "grist", "project": "total_stock"}),
    ),
    "SpinPlan": (
        Onward(
            "which-singles-make-this-yarn",
            {
                "grist_wanted": "grist_wanted",
                "plies": "plies",
                "take_up": "take_up",
                "balance_factor": "balance_factor",
            },
        ),
        Onward("what-does-the-dye-lot-take", {"weight": "yarn"}),
        Onward("which-of-two-plans", {"project": "project", "grist_wanted": "grist_wanted"}),
    ),
    "TwoPlans": (
        Onward("what-does-this-spin-take", {"project": "project", "grist_wanted": "grist_wanted"}),
    ),
    "HowMuchTwist": (
        Onward("which-singles-make-this-yarn", {"take_up": "take_up", "plies": "plies"}),
        Onward("how-many-yards", {"grist": "grist", "plies": "plies", "take_up": "take_up"}),
    ),
    "DyeLot": (Onward("is-this-enough", {"weights": "weight"}),),
    "WhichSingles": (
        Onward("how-much-twist-does-it-want", {"grist": "asked", "plies": "plies"}),
        Onward(
            "what-does-this-spin-take",
            {"grist_wanted": "grist_wanted", "plies": "plies", "take_up": "take_up"},
        ),
        Onward(
            "how-many-yards",
            {"grist": "asked", "plies": "plies", "take_up": "take_up"},
        ),
        Onward(
            "is-my-grist-drifting",
            {"target": "asked", "balance_factor": "balance_factor", "take_up": "take_up"},
        ),
    ),
}

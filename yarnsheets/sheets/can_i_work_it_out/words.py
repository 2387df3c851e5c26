"""What is said of an exercise: before an answer, of a right one, and of a wrong one.

Each gives a headline and what stands beside it, as templates.
"""

from yarnsheets.page.text import slot
from yarnsheets.sheets.can_i_work_it_out.exercise import TOLERANCE, Exercise, Slip
from yarnsheets.sheets.shared.systems import percent

# What an answer can be, and how one that is too low or too high is called.
WRONG = {
    "grist": ("too coarse", "too fine"),
    "length": ("too little", "too much"),
    "mass": ("too little", "too much"),
    "rows": ("too few", "too many"),
}


def asked(exercise: Exercise) -> tuple[str, str]:
    """Ask the question, and say how near is near enough."""
    near = percent(TOLERANCE)
    if exercise.span > 0:
        near = slot(exercise.least, "length")
    elif exercise.least > 0:
        near = f"a row, or {near},"
    return exercise.asks, f"{exercise.told} Within {near} counts as right."


def right(exercise: Exercise, of: str) -> tuple[str, str]:
    """Say that an answer is right, with the whole number."""
    found = "{right_rows*|row|rows}" if of == "rows" else f"{{right_{of}*}}"
    if exercise.span > 0:
        found += " over, so it is enough" if exercise.right > 0 else ", so it is not enough"
    return f"Right: {found}.", "The arithmetic below has every step."


def wrong(exercise: Exercise, of: str, given: float, slip: Slip | None) -> tuple[str, str]:
    """Meet a wrong answer with its slip, or with the side it is on, and the next smaller step."""
    too_low, too_high = WRONG[of]
    said = f"is {too_low if given < exercise.right else too_high}"
    step = exercise.steps[0]
    if slip is not None:
        said, step = slip.said, exercise.steps[slip.step]
    number = "{answer_rows*|row|rows}" if of == "rows" else f"{{answer_{of}*}}"
    return f"{number} {said}.", f"Next step: {step.question}"

"""Exercises over the whole job, drawn anew from a number, which answer back."""

from collections.abc import Callable, Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets.page import choices
from yarnsheets.page.inputs import Blank, Draw, Found, Pick, Table
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.sheets.can_i_work_it_out import on_paper, words
from yarnsheets.sheets.can_i_work_it_out.deciding import enough_or_not, will_it_last
from yarnsheets.sheets.can_i_work_it_out.exercise import Exercise, Slip, named
from yarnsheets.sheets.can_i_work_it_out.making import (
    fleece_for_yarn,
    grist_of_singles,
    grist_when_plied,
)
from yarnsheets.sheets.can_i_work_it_out.measuring import (
    cut_to_grist,
    length_of_skein,
    weight_for_project,
)
from yarnsheets.sheets.can_i_work_it_out.numbers import MODULUS, following, started
from yarnsheets.sheets.can_i_work_it_out.ranges import METRES, YARDS, Ranges
from yarnsheets.sheets.shared.systems import is_in_yards
from yarnsheets.sheets.shared.told import told

# What the answer of each kind is, and what draws it.
KINDS: Mapping[str, tuple[str, Callable[[list[float], Ranges], Exercise]]] = {
    "cut": ("grist", cut_to_grist),
    "skein": ("length", length_of_skein),
    "weight": ("mass", weight_for_project),
    "plied": ("grist", grist_when_plied),
    "singles": ("grist", grist_of_singles),
    "fleece": ("mass", fleece_for_yarn),
    "enough": ("length", enough_or_not),
    "last": ("rows", will_it_last),
}
IN_TURN = "turn"
LAST_DRAW = 9999
_TRIES = 40  # of a draw whose slips cannot be told apart, which is drawn again
_PARTS = 4  # numbers that an exercise is drawn from, at most
_BARS, _PLACES = 3, 5  # of the charts, at most


def drawn(kind: str, draw: float, ranges: Ranges) -> Exercise:
    """Draw an exercise; where two of its slips cannot be told apart, draw it again."""
    names = list(KINDS)
    _, make = KINDS[kind]
    state = started(draw, names.index(kind))
    parts: list[float] = []
    for _ in range(_TRIES):
        parts = []
        for _ in range(_PARTS):
            state = following(state)
            parts.append(state / MODULUS)
        if make(parts, ranges).is_sound():
            break
    return make(parts, ranges)


def _answer(dimension: str, low: float) -> Blank:
    return Blank(
        "Your answer",
        dimension,
        low=low,
        high=1e7,
        measure="Type it and press Enter. Another unit may stand behind the number.",
        anew=("kind", "draw", "measure"),
    )


class CanIWorkItOut(Sheet):
    r"""Exercises that answer back: a wrong answer is met with its slip and the next step.

    Examples
    --------
    >>> sheet = CanIWorkItOut(kind="skein", draw=3)
    >>> sheet.sentence.split("?")[0]
    'A skein weighs 3.2\xa0oz and its grist is 600\xa0yd/lb: how many yards'
    """

    question = "Can I work it out?"

    kind = Pick(
        "Kind of exercise",
        {
            "cut": "a cut to grist",
            "skein": "length in a skein",
            "weight": "weight for a project",
            "plied": "grist when plied",
            "singles": "singles for a yarn",
            "fleece": "fleece, after losses",
            "enough": "enough or not",
            "last": "will the ball last",
            IN_TURN: "each kind in turn",
        },
        measure="Eight kinds, in the order of the job.",
    )
    answer_grist = _answer("grist", 1e-6)
    answer_length = _answer("length", -1e7)
    answer_mass = _answer("mass", 1e-6)
    answer_rows = _answer("number", 1e-6)
    draw = Draw(
        "Draw number",
        last=LAST_DRAW,
        another="Another one",
        measure="The same number gives everyone the same exercise. It stands in the address of this"
        " page: pass that on, or let each take a number of her own.",
    )

    paper = Pick(
        "On paper",
        {"one": "this exercise", "ten": "ten exercises", "answers": "the answers to the ten"},
        measure="What Print puts on the page. The ten are this draw and the next nine.",
    )

    is_open = Found("flag", "no answer is given yet")
    is_right = Found("flag", "the answer is right")
    is_wrong = Found("flag", "the answer is not right")
    headline = Found("template", "the question, or what the answer is")
    beside = Found("template", "what is told, or the next step")
    step_1 = Found("template", "the first step")
    step_2 = Found("template", "the second step")
    step_3 = Found("template", "the third step")
    right_grist = Found("grist", "the right grist, once it is found")
    right_length = Found("length", "the right length, once it is found")
    right_mass = Found("mass", "the right weight, once it is found")
    right_rows = Found("number", "the right number of rows, once it is found")
    bar_1 = Found("template", "the first bar")
    bar_2 = Found("template", "the second bar")
    bar_3 = Found("template", "the third bar")
    place_1 = Found("template", "the answer on its line")
    place_2 = Found("template", "a slip on its line")
    place_3 = Found("template", "a slip on its line")
    place_4 = Found("template", "a slip on its line")
    place_5 = Found("template", "a slip on its line")
    asks = Found("template", "the question")
    under = Found("template", "how an answer that is too low is called")
    over = Found("template", "how an answer that is too high is called")
    middle = Found("template", "the right answer, in the middle of the lines")
    waiting = Found("template", "what stands there before an answer")
    bars = Table("the bars, from the top")
    places = Table("the answer and the slips, a line each")
    to_answer = Table("ten exercises for paper")
    answered = Table("their answers")

    listings = on_paper.LISTINGS

    answer = ((None, "{headline}"), (None, "{beside}"))

    labels: ClassVar = {
        **{f"bar_{at}_label": f"{{bar_{at}}}" for at in range(1, _BARS + 1)},
        **{f"place_{at}_label": f"{{place_{at}}}" for at in range(1, _PLACES + 1)},
        "middle_label": "{middle}",
        "low_label": "{under}",
        "high_label": "{over}",
        "waiting_label": "{waiting}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Draw the exercise and judge the answer; draw what goes on paper."""
        kind = self._kind_of(self.draw)
        of, _ = KINDS[kind]
        exercise = drawn(kind, self.draw, self._ranges())
        given = {
            "grist": self.answer_grist,
            "length": self.answer_length,
            "mass": self.answer_mass,
            "rows": self.answer_rows,
        }[of]
        judged = _open(exercise) if given is None else _judged(exercise, of, given)
        return {"asks": exercise.asks, **judged, **self._on_paper()}

    def _kind_of(self, draw: float) -> str:
        if self.kind != IN_TURN:
            return str(self.kind)
        names = list(KINDS)
        return names[int(draw - 1) % len(names)]

    def _on_paper(self) -> dict[str, Any]:
        """Give the rows of the ten exercises, or of their answers."""
        if self.paper == "one":
            return {}
        rows = []
        for at in range(on_paper.COUNT):
            draw = (self.draw - 1 + at) % LAST_DRAW + 1
            kind = self._kind_of(draw)
            of, _ = KINDS[kind]
            exercise = drawn(kind, draw, self._ranges())
            if self.paper == "ten":
                rows.append(on_paper.to_answer(draw, exercise))
            else:
                rows.append(on_paper.answered(draw, of, exercise))
        return {"to_answer": rows} if self.paper == "ten" else {"answered": rows}

    def _ranges(self) -> Ranges:
        return YARDS if is_in_yards(self.measure) else METRES

    def unused(self) -> list[str]:
        """Name the answers of another dimension than this exercise's."""
        of, _ = KINDS[self._kind_of(self.draw)]
        return [f"answer_{other}" for other in words.WRONG if other != of]

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write as many steps as the answer has earned."""
        yield "is_open", "Answer first: then the steps stand here."
        if grist.unit != measure.grist:
            yield "step_1", f"By hand it goes in {choices.label(measure.grist)}."
        for step in ("step_1", "step_2", "step_3"):
            yield step, f"{{{step}}}"


def _open(exercise: Exercise) -> dict[str, Any]:
    """Give what stands before an answer."""
    headline, beside = words.asked(exercise)
    return {
        "is_open": True,
        "headline": headline,
        "beside": beside,
        "waiting": "Your answer comes here.",
        **told(exercise.bars, ""),
    }


def _judged(exercise: Exercise, of: str, given: float) -> dict[str, Any]:
    """Give what an answer is met with."""
    if exercise.is_right(given):
        headline, beside = words.right(exercise, of)
        return {
            "is_right": True,
            "headline": headline,
            "beside": beside,
            f"right_{of}": exercise.right,
            **_steps(exercise, len(exercise.steps)),
            **told(exercise.bars, f"{{right_{of}}}"),
            **_lines(exercise, of, given, None),
        }
    slip = exercise.slip_of(given)
    headline, beside = words.wrong(exercise, of, given, slip)
    reached = 1 if slip is None else slip.step + 1
    return {
        "is_wrong": True,
        "headline": headline,
        "beside": beside,
        # the last step would give the answer away
        **_steps(exercise, min(reached, len(exercise.steps) - 1)),
        **told(exercise.bars, ""),
        **_lines(exercise, of, given, slip),
    }


def _steps(exercise: Exercise, count: int) -> dict[str, str]:
    """Give the first steps, worked."""
    return {f"step_{at + 1}": step.worked for at, step in enumerate(exercise.steps[:count])}


def _lines(exercise: Exercise, of: str, given: float, slip: Slip | None) -> dict[str, Any]:
    """Give the answer and the slips, each on a line, by how far they lie from what is right."""
    slips = named(exercise.slips)
    names = [f"yours: {{answer_{of}}}", *(each.name for each in slips)]
    ends = [given, *(each.answer for each in slips)]
    hits = [1, *(1 if slip is not None and each.name == slip.name else 0 for each in slips)]
    rows = [
        {"line": at, "across": exercise.place(end), "hit": hit}
        for at, (end, hit) in enumerate(zip(ends, hits, strict=True))
    ]
    written = {f"place_{at + 1}": name for at, name in enumerate(names)}
    too_low, too_high = words.WRONG[of]
    return {
        **written,
        "middle": "right",
        "under": too_low,
        "over": too_high,
        "places": rows,
    }

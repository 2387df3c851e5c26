"""A lesson on grist, in eight steps: feel it, measure it, predict, and be surprised."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Input, Pick, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.sheets.shared import cutting
from yarnsheets.sheets.shared.systems import METRES, YARDS, System, is_in_yards
from yarnsheets.sheets.shared.told import told
from yarnsheets.sheets.what_is_grist import surprises, telling
from yarnsheets.sheets.what_is_grist.reckoner import LISTING, rows
from yarnsheets.sheets.what_is_grist.step import Step, strands_drawn

_BARS, _STRANDS = 4, 3  # of the charts, at most

# What each step asks of the reader.
ASKS: Mapping[str, tuple[str, ...]] = {
    "feel": ("grist",),
    "measure": ("cut", "balance_factor", "paper"),
    "half": ("guess", "shown"),
    "small": ("guess", "shown"),
    "skein": ("cut", "balance_factor", "weight", "guess", "shown"),
    "wraps": ("guess", "shown"),
    "mean": ("guess", "shown"),
    "losses": ("guess_share", "shown"),
}
_EVERY = list(dict.fromkeys(name for asked in ASKS.values() for name in asked))


class WhatIsGrist(Sheet):
    r"""What grist is, from a yarn to drag to the yards of a skein.

    Examples
    --------
    >>> WhatIsGrist(step="small", shown="yes").sentence.split(".")[0]
    'An ounce is 75\xa0yd long'
    """

    question = "What is grist?"
    onward = (Onward("how-many-yards", {"grist": "its_grist"}),)

    step = Pick(
        "Step",
        {
            "feel": "1. Feel it",
            "measure": "2. Measure it",
            "half": "3. Half of it",
            "small": "4. A little of it",
            "skein": "5. Your skein",
            "wraps": "6. As thick, but airy",
            "mean": "7. Thick and thin",
            "losses": "8. From the fleece",
        },
        measure="Eight steps, about ten minutes.",
        another="Next step",
    )
    grist = Input(
        "Grist of the yarn",
        "grist",
        1200,
        low=150,
        high=8000,
        measure="Drag it from a rug yarn to a lace.",
    )
    cut = Input(
        "Your cut hangs level at",
        "short",
        12,
        low=1,
        high=120,
        measure="Hang a cut of your yarn on the balance and trim it until it hangs level.",
        drawing="cut",
    )
    balance_factor = cutting.balance_factor()
    weight = Input(
        "Your skein weighs",
        "mass",
        3 / 16,
        low=0.1 / 16,
        high=5,
        measure="Without its ties.",
        drawing="scale",
    )
    guess = Input(
        "Your guess",
        "length",
        200,
        low=1,
        high=10000,
        measure="Guess before you look: a wrong guess is remembered longest.",
    )
    guess_share = Input(
        "Your guess",
        "share",
        0.7,
        low=0.01,
        high=1,
        step=0.01,
        measure="The part of the fleece that becomes yarn.",
    )
    shown = Pick(
        "The answer",
        {"no": "hidden", "yes": "shown"},
        measure="Another step hides it again.",
        another="Show it, or hide it",
        anew=("step",),
    )
    paper = Pick(
        "For the wall",
        {"no": "no table", "yes": "a ready-reckoner for this balance"},
        measure="What each cut says, on a page of paper: press Print.",
    )

    headline = Found("template", "the question, or the answer")
    beside = Found("template", "what is told, or why")
    step_1 = Found("template", "the first step of the arithmetic")
    step_2 = Found("template", "the second step of the arithmetic")
    is_hidden = Found("flag", "the answer is not shown yet")
    its_grist = Found("grist", "grist of the yarn, where it is the reader’s own")
    found_length = Found("length", "the length found")
    found_grist = Found("grist", "the grist found")
    found_share = Found("share", "the part found")
    bar_1 = Found("template", "the first bar")
    bar_2 = Found("template", "the second bar")
    bar_3 = Found("template", "the third bar")
    bar_4 = Found("template", "the fourth bar")
    strand_1 = Found("template", "the first strand")
    strand_2 = Found("template", "the second strand")
    strand_3 = Found("template", "the third strand")
    waiting = Found("template", "what stands where there is no strand")
    bars = Table("the bars, from the top")
    strands = Table("the strands, from the top")
    reckoner = Table("what each cut says")

    listings = (LISTING,)

    answer = ((None, "{headline}"), (None, "{beside}"))

    labels: ClassVar = {
        **{f"bar_{at}_label": f"{{bar_{at}}}" for at in range(1, _BARS + 1)},
        **{f"strand_{at}_label": f"{{strand_{at}}}" for at in range(1, _STRANDS + 1)},
        "waiting_label": "{waiting}",
    }

    def _step(self, *, is_shown: bool) -> Step:
        system: System = YARDS if is_in_yards(self.measure) else METRES
        if self.step == "feel":
            return telling.feel(system, self.grist)
        if self.step == "measure":
            return telling.measure(system, self.cut, self.balance_factor)
        if self.step == "half":
            return telling.half(system, self.guess, is_shown=is_shown)
        if self.step == "small":
            return telling.small(system, self.guess, is_shown=is_shown)
        if self.step == "skein":
            grist = formulas.grist_from_cut(self.cut, self.balance_factor)
            return telling.skein(system, grist, self.weight, self.guess, is_shown=is_shown)
        if self.step == "wraps":
            return surprises.wraps(system, self.guess, is_shown=is_shown)
        if self.step == "mean":
            return surprises.mean(system, self.guess, is_shown=is_shown)
        return surprises.losses(self.guess_share, is_shown=is_shown)

    def work_out(self) -> Mapping[str, Any]:
        """Give what the step says: its question until the answer is shown."""
        is_shown = self.shown == "yes" or "shown" not in ASKS[self.step]
        step = self._step(is_shown=is_shown)
        given = {
            **told(step.bars, step.found if is_shown else ""),
            **strands_drawn(step.strands),
            "waiting": "" if step.strands else "No yarn to draw in this step.",
        }
        if self.step == "feel":
            given["its_grist"] = self.grist
        if self.step == "measure" and self.paper == "yes":
            given["reckoner"] = rows(self.balance_factor)
        if not is_shown:
            return {**given, "headline": step.asks, "beside": step.told, "is_hidden": True}
        written = {f"step_{at + 1}": each for at, each in enumerate(step.worked)}
        return {**given, **step.numbers, **written, "headline": step.says, "beside": step.why}

    def unused(self) -> list[str]:
        """Name what this step does not ask."""
        return [name for name in _EVERY if name not in ASKS[self.step]]

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic, once the answer is shown."""
        yield "is_hidden", "Guess first: then the steps stand here."
        if grist.unit != measure.grist:
            yield "step_1", f"By hand it goes in {choices.label(measure.grist)}."
        yield "step_1", "{step_1}"
        yield "step_2", "{step_2}"

"""The class worksheet: how many yards a weight makes, and the weight a project takes."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Input
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet
from yarnsheets.sheets.shared import grists, plying

# A sum's last bits, or the digits of another unit, are no want of yarn.
_LAST_BITS = 1e-9
# So little over, of the project, is nothing to spare.
_TO_SPARE = 0.005


class HowManyYards(Sheet):
    r"""From grist and weight to length; from length to the weight of fibre it takes.

    Examples
    --------
    >>> sheet = HowManyYards(grist=1200, weight=8 / 16)
    >>> round(sheet.yards)
    600
    >>> HowManyYards(grist=2400, plies=2, take_up=1.05).sentence.split(".")[0]
    '8\xa0oz of 2-ply yarn at 1,143\xa0yd/lb is about 571\xa0yd'
    """

    question = "How many yards is this?"
    onward = (
        Onward(
            "is-this-enough", {"grist": "yarn_grist", "weights": "weight", "project": "project"}
        ),
        Onward("how-sure-is-the-grist", {"weight": "weight"}),
        Onward("which-singles-make-this-yarn", {"grist_wanted": "grist_needed"}),
        Onward("what-do-wraps-tell-of-grist", {"grist": "yarn_grist"}),
        Onward("what-does-knitting-take", {"grist": "yarn_grist"}),
        Onward("what-is-grist", {"grist": "yarn_grist"}),
    )

    grist = grists.asked(
        "Grist of the strand you measured",
        1200,
        "Trim a cut on the yarn balance until it hangs level: its inches times the balance"
        " factor (often 100) is yards per pound.",
    )
    weight = Input(
        "Weight of yarn or fibre",
        "mass",
        8 / 16,
        low=0.1 / 16,
        high=20,
        measure="Weigh the skein, bobbin or fibre, less the tie bands, bobbin or bowl.",
        drawing="scale",
    )
    plies = Input(
        "Strands plied together",
        "number",
        1,
        low=1,
        high=8,
        step=1,
        measure="1 if the strand you measured is the yarn you will use; 2 for a 2-ply of it.",
    )
    take_up = plying.take_up(1.05)
    project = Input(
        "Yarn the project takes",
        "length",
        800,
        low=5,
        high=20000,
        measure="The pattern’s own yards, without a reserve.",
    )

    is_plied = Found("flag", "two strands or more are plied together")
    is_enough = Found("flag", "the yarn reaches the project's length")
    has_spare = Found("flag", "it reaches it, with something to spare")
    is_just = Found("flag", "it just reaches it")
    take_up_used = Found("number", "take-up in plying; 1 for a single strand")
    yarn_grist = Found("grist", "grist of the yarn to be used: plied, if it is plied")
    yards = Found("length", "length of the yarn that the weight makes")
    spare = Found("length", "length left over when the project is done")
    lacking = Found("length", "length missing to the project")
    weight_needed = Found("mass", "weight of yarn the project takes")
    weight_lacking = Found("mass", "weight of yarn missing to the project")
    grist_needed = Found("grist", "grist at which the weight just makes the project")
    strand_needed = Found("grist", "grist of the strand at which the weight just makes the project")

    answer = (
        ("not is_plied", "{weight} of yarn at {grist} is about {yards~*}."),
        ("is_plied", "{weight} of {plies}-ply yarn at {yarn_grist} is about {yards~*}."),
        ("has_spare", "Your project takes {project}, so that is enough, with {spare:2} to spare."),
        ("is_just", "Your project takes {project}, so that is just enough."),
        (
            "not is_enough",
            "Your project takes {project}, so you are {lacking:2} short:"
            " weigh out at least {weight_needed^} in all, {weight_lacking^} more.",
        ),
    )

    labels: ClassVar = {
        "goal_label": "project {project}",
        "least_label": "at least {weight_needed^}",
        "have_label": "you have {weight}",
        "reach_label": "{strand_needed}",
        "just_label": "enough at {grist_needed}",
        "yards_label": "{yards}",
        "takes_label": "takes {weight_needed}",
        "plied_label": "{yarn_grist}",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out every number from the inputs."""
        is_plied = self.plies > 1
        take_up = self.take_up if is_plied else 1
        yarn_grist = formulas.plied_grist(self.grist, self.plies, take_up)
        yards = formulas.length(self.weight, yarn_grist)
        weight_needed = formulas.mass(self.project, yarn_grist)
        grist_needed = formulas.grist(self.project, self.weight)
        is_enough = yards >= self.project * (1 - _LAST_BITS)
        has_spare = yards > self.project * (1 + _TO_SPARE)
        return {
            "is_plied": is_plied,
            "is_enough": is_enough,
            "has_spare": has_spare,
            "is_just": is_enough and not has_spare,
            "take_up_used": take_up,
            "yarn_grist": yarn_grist,
            "yards": yards,
            "spare": yards - self.project,
            "lacking": self.project - yards,
            "weight_needed": weight_needed,
            "weight_lacking": weight_needed - self.weight,
            "grist_needed": grist_needed,
            "strand_needed": formulas.singles_grist(grist_needed, self.plies, take_up),
        }

    def unused(self) -> list[str]:
        """Name the take-up, where nothing is plied."""
        return [] if self.plies > 1 else ["take_up"]

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        base = grist.base
        length, mass = choices.BASES[base]
        shown_length, shown_mass = measure.units["length"], measure.units["mass"]
        per_length = base == "tex"
        if base != grist.unit:
            yield None, f"Grist: {{grist:4}} is {{grist@{base}:4}}, since {grist.reason}."
        if per_length:
            yield (
                "is_plied",
                f"Plying: {{grist@{base}:4}} × {{plies}} strands × {{take_up:4}} take-up"
                f" = {{yarn_grist@{base}:4}}.",
            )
        else:
            yield (
                "is_plied",
                f"Plying: {{grist@{base}:4}} ÷ ({{plies}} strands × {{take_up:4}} take-up)"
                f" = {{yarn_grist@{base}:4}}.",
            )
        if mass != shown_mass:
            yield None, f"Weight: {{weight:4}} is {{weight@{mass}:4}}."
        times, divided = ("÷", "×") if per_length else ("×", "÷")
        yield (
            None,
            f"Length: {{weight@{mass}:4}} {times} {{yarn_grist@{base}:4}} = {{yards@{length}:4}}"
            + ("." if length == shown_length else ", which is {yards:4}."),
        )
        if length != shown_length:
            yield None, f"The project: {{project:4}} is {{project@{length}:4}}."
        yield (
            None,
            f"Weight for the project: {{project@{length}:4}} {divided} {{yarn_grist@{base}:4}}"
            f" = {{weight_needed@{mass}:4}}"
            + ("." if mass == shown_mass else ", which is {weight_needed:4}."),
        )

"""The class worksheet: how many yards a weight makes, and the weight a project takes."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import grist_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.sheets import choices, plying
from yarnsheets.sheets.inputs import Input, Number
from yarnsheets.sheets.sheet import Line, Sheet


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

    grist = Input(
        "Grist of the strand you measured",
        "grist",
        1200,
        low=100,
        high=30000,
        measure="Trim a cut on the yarn balance until it hangs level: its inches times the balance"
        " factor (often 100) is yards per pound.",
    )
    weight = Input(
        "Weight of yarn or fibre",
        "mass",
        8 / 16,
        low=0.1 / 16,
        high=20,
        measure="Weigh the skein, bobbin or fibre, less the tie bands, bobbin or bowl.",
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
    take_up = plying.take_up(1.05, "Not used for one strand.")
    project = Input(
        "Yarn the project takes",
        "length",
        800,
        low=5,
        high=20000,
        measure="The pattern's yardage, with what you like to keep in reserve.",
    )

    is_single = Number("flag", "the strand is used as it is")
    is_plied = Number("flag", "two strands or more are plied together")
    is_enough = Number("flag", "the yarn reaches the project's length")
    is_short = Number("flag", "the yarn falls short of the project's length")
    take_up_used = Number("number", "take-up in plying; 1 for a single strand")
    yarn_grist = Number("grist", "grist of the yarn to be used: plied, if it is plied")
    yards = Number("length", "length of the yarn that the weight makes")
    spare = Number("length", "length left over when the project is done")
    lacking = Number("length", "length missing to the project")
    weight_needed = Number("mass", "weight of yarn the project takes")
    weight_lacking = Number("mass", "weight of yarn missing to the project")
    grist_needed = Number("grist", "grist at which the weight just makes the project")
    strand_needed = Number(
        "grist", "grist of the strand at which the weight just makes the project"
    )

    answer = (
        ("is_single", "{weight} of yarn at {grist} is about {yards:2}."),
        ("is_plied", "{weight} of {plies}-ply yarn at {yarn_grist} is about {yards:2}."),
        ("is_enough", "Your project takes {project}, so that is enough, with {spare:2} to spare."),
        (
            "is_short",
            "Your project takes {project}, so you are {lacking:2} short:"
            " weigh out at least {weight_needed^} in all, {weight_lacking^} more.",
        ),
    )

    labels: ClassVar = {
        "goal_label": "the project takes {project}",
        "least_label": "at least {weight_needed^}",
        "have_label": "you have {weight}",
        "reach_label": "just enough at {strand_needed}",
        "just_label": "just enough at {grist_needed}",
        "yards_label": "{yards}",
        "takes_label": "takes {weight_needed}",
        "plied_label": "{yarn_grist}",
    }

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs."""
        take_up = choose(v.plies > 1, v.take_up, 1)
        yarn_grist = formulas.plied_grist(v.grist, v.plies, take_up)
        yards = formulas.length(v.weight, yarn_grist)
        weight_needed = formulas.mass(v.project, yarn_grist)
        grist_needed = formulas.grist(v.project, v.weight)
        return {
            "is_single": v.plies <= 1,
            "is_plied": v.plies > 1,
            "is_enough": yards >= v.project,
            "is_short": yards < v.project,
            "take_up_used": take_up,
            "yarn_grist": yarn_grist,
            "yards": yards,
            "spare": yards - v.project,
            "lacking": v.project - yards,
            "weight_needed": weight_needed,
            "weight_lacking": weight_needed - v.weight,
            "grist_needed": grist_needed,
            "strand_needed": formulas.singles_grist(grist_needed, v.plies, take_up),
        }

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

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw yards against weight, fibre against grist, grist against plies."""
        return (
            grist_charts.yards_against_weight(v),
            grist_charts.fibre_against_grist(v),
            grist_charts.grist_against_plies(v),
        )

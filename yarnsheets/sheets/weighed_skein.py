"""What a skein of counted turns says, weighed: its length and grist, and how sure they are."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.charts import measuring_charts, skein_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.estimates import (
    Budget,
    skein_budget,
    unlikely_mass,
    unlikely_tare,
    unlikely_turns,
    wound_circumference,
)
from yarnsheets.sheets import choices
from yarnsheets.sheets.inputs import Input, Number, Pick, Result, Table
from yarnsheets.sheets.sheet import Line, Sheet
from yarnsheets.units import convert

_MOST_TURNS = 1500
_CURVE_ROWS = 80


class WeighedSkein(Sheet):
    """Length wound and grist of a weighed skein, and how many turns make them sure enough.

    Examples
    --------
    >>> sheet = WeighedSkein(turns=100, circumference=54, gross=0.125)
    >>> sheet.yards, sheet.grist
    (150.0, 1200.0)
    """

    turns = Input(
        "Turns round the reel",
        "number",
        100,
        low=5,
        high=_MOST_TURNS,
        step=5,  # of the slider; any number can be typed
        measure="Count the threads of the skein at one place, or the turns as you wind.",
    )
    circumference = Input(
        "Once round the reel",
        "short",
        54,
        low=6,
        high=200,
        measure="Lay a tape where the yarn lies, once round. Niddy-noddies are often 54, 72 or"
        " 90 in.",
    )
    weighing = Pick(
        "How it was weighed",
        {
            "once": "once: the yarn alone",
            "twice": "twice: with ties or basket, then those alone",
        },
        measure="Once also if the scale was set to nought with the basket on it.",
    )
    gross = Input(
        "Weight of the skein, with all that was on the scale",
        "mass",
        2 / 16,
        low=0.1 / 453.59237,
        high=20,
        measure="The whole skein, as wound.",
    )
    tare = Input(
        "Weight of the ties or basket alone",
        "mass",
        0.07 / 16,
        low=0.01 / 453.59237,
        high=20,
        measure="Used only if it was weighed twice.",
    )
    wanted = Input(
        "Range I can live with, either way",
        "share",
        0.02,
        low=0.001,
        high=0.5,
        measure="2% either way of 1,000 is from 980 to 1,020.",
    )
    scale_step = Input(
        "The scale shows steps of",
        "mass",
        0.05 / 16,
        low=0.001 / 453.59237,
        high=0.25 / 16,
        more=True,
        measure="How much the last digit jumps: often 1 g or 0.05 oz.",
    )
    circumference_error = Input(
        "Once round is right to within",
        "short",
        1 / 8,
        low=0.001,
        high=4,
        more=True,
        measure="What the tape could be off by, and the arms that give a little.",
    )
    miscount = Input(
        "The count may be out by, either way",
        "number",
        0,
        low=0,
        high=10,
        step=1,
        more=True,
        measure="Turns. 0 if you counted twice and got the same.",
    )
    build_up = Input(
        "The finished skein is thick, on the reel",
        "short",
        0,
        low=0,
        high=2,
        step=0.01,
        more=True,
        measure="How high the turns lie on one another: outer turns are longer. 0 if they lie"
        " side by side.",
    )

    has_range = Result("flag", "nothing is odd about what was measured")
    is_tared = Result("flag", "what was on the scale beside the yarn was weighed by itself")
    is_reached = Result("flag", "the range is as narrow as wanted")
    is_reachable = Result("flag", "another number of turns would make it so")
    is_out_of_reach = Result("flag", "no number of turns would")
    half_width = Result("share", "half the range of the grist, of the grist")
    low_ratio = Result("number", "low end of the grist's range, of the grist")
    high_ratio = Result("number", "high end of the grist's range, of the grist")
    length_low_ratio = Result("number", "low end of the length's range, of the length")
    length_high_ratio = Result("number", "high end of the length's range, of the length")
    scale_relative = Result("share", "standard uncertainty of the weight, of the weight")
    enough = Result("number", "fewest turns whose range is as narrow as wanted; 0 if none is")
    worst = Result("word", "the source of most of the doubt")
    worst_share = Result("share", "its part of the doubt")
    obstacle = Result("word", "the source of most of the doubt where the range is narrowest")

    is_answered = Number("flag", "there is an answer to show")
    is_once = Number("flag", "there is, and the scale was read once for it")
    is_twice = Number("flag", "there is, and the scale was read twice for it")
    is_built_up = Number("flag", "there is, and turns lie on one another")
    mass = Number("mass", "weight of the yarn alone")
    turn = Number("short", "mean length of a turn")
    last_turn_longer = Number("share", "how much longer the last turn is than the first")
    yards = Number("length", "length wound")
    yards_low = Number("length", "low end of its range")
    yards_high = Number("length", "high end of its range")
    grist = Number("grist", "grist of the yarn")
    grist_low = Number("grist", "low end of its range")
    grist_high = Number("grist", "high end of its range")

    sources = Table("what part of the doubt comes from where")
    windings = Table("the range of the grist at other numbers of turns")

    answer = (
        (
            "is_answered",
            "Your skein holds {yards:4}, between {yards_low:4!} and {yards_high:4!} in 19 skeins"
            " of 20. Its grist is {grist}, between {grist_low!} and {grist_high!}.",
        ),
        (
            "is_reached",
            "That is within the {wanted} you can live with; {enough} turns would do.",
        ),
        ("is_reachable", "To know it to within {wanted}, wind {enough} turns."),
        (
            "is_out_of_reach",
            "No number of turns would bring it to within {wanted}: look at {obstacle} first.",
        ),
    )
    labels: ClassVar = {
        "yards_label": "{yards:4}",
        "half_label": "{half_width} either way",
        "wanted_label": "{wanted} either way",
        "enough_label": "{enough} turns",
    }

    def work_out(self) -> Mapping[str, Any]:
        """Work out the ranges, what part each source has in them, and the turns it would take."""
        tared = self.weighing == "twice"
        odd = self._odd(tare=self.tare if tared else 0.0)
        if odd:
            return self.no_answer(odd) | {"is_tared": tared}
        mass = self.gross - self.tare if tared else self.gross
        budget = self._budget(self.turns, mass)
        scale, *winding = budget.components
        grist, length = budget.of(1.0).interval(), Budget(tuple(winding)).of(1.0).interval()
        half_width, best = budget.expanded(), self._best(mass)
        enough = best if self._budget(best, mass).expanded() <= self.wanted else 0
        return {
            "has_range": True,
            "is_tared": tared,
            "is_reached": half_width <= self.wanted,
            "is_reachable": half_width > self.wanted and enough > 0,
            "is_out_of_reach": half_width > self.wanted and enough == 0,
            "half_width": half_width,
            "low_ratio": grist.low,
            "high_ratio": grist.high,
            "length_low_ratio": length.low,
            "length_high_ratio": length.high,
            "scale_relative": scale.relative,
            "enough": enough,
            "worst": _worst(budget),
            "worst_share": budget.shares[budget.largest],
            "obstacle": _worst(self._budget(best, mass)),
            "sources": [{"source": name, "share": s} for name, s in budget.shares.items()],
            "windings": self._windings(mass, enough),
        }

    def _odd(self, *, tare: float) -> str | None:
        """Say what is probably wrong, in the units the reader types in."""
        unit = self._chosen()[0].units["mass"]
        gross, tare = (convert(m, "lb", unit) for m in (self.gross, tare))
        length = formulas.skein_length(self.turns, convert(self.circumference, "in", "yd"))
        return (
            unlikely_turns(self.turns)
            or unlikely_tare(gross, tare)
            or unlikely_mass(gross - tare, unit, length)
        )

    def _budget(self, turns: float, mass: float) -> Budget:
        """Give the error budget of so many turns of this yarn, wound and weighed as this skein."""
        ratio = turns / self.turns
        return skein_budget(
            turns,
            self.circumference,
            mass * ratio,
            resolution_of_scale=self.scale_step,
            tare=self.weighing == "twice",
            miscount=self.miscount,
            error_of_circumference=self.circumference_error,
            build_up=self.build_up * ratio,
        )

    def _best(self, mass: float) -> int:
        """Give the fewest turns whose range is as narrow as wanted, or else the narrowest's."""
        turns = range(2, _MOST_TURNS + 1)
        enough = (n for n in turns if self._budget(n, mass).expanded() <= self.wanted)
        return next(enough, 0) or min(turns, key=lambda n: self._budget(n, mass).relative)

    def _windings(self, mass: float, enough: int) -> list[dict[str, float]]:
        """Give the range at other numbers of turns, well past what the chart shows."""
        top = 4 * max(self.turns, enough)
        numbers = [2 * (top / 2) ** (at / _CURVE_ROWS) for at in range(_CURVE_ROWS + 1)]
        ranges = [(n, self._budget(n, mass).of(1.0).interval()) for n in numbers]
        return [{"turns": n, "low": r.low, "high": r.high} for n, r in ranges]

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out length and grist, which follow turns, circumference and weight at once."""
        # where no weight is left for the yarn a warning takes the answer's place
        mass = choose(v.is_tared, choose(v.gross > v.tare, v.gross - v.tare, v.gross), v.gross)
        turn = wound_circumference(v.circumference, v.build_up)
        yards = formulas.skein_length(v.turns, convert(turn, "in", "yd"))
        grist = formulas.grist(yards, mass)
        return {
            "is_answered": choose(v.has_range, 1, 0),
            "is_once": choose(v.is_tared, 0, v.has_range),
            "is_twice": choose(v.is_tared, v.has_range, 0),
            "is_built_up": choose(v.build_up > 0, v.has_range, 0),
            "mass": mass,
            "turn": turn,
            "last_turn_longer": (turn - v.circumference) * 2 / v.circumference,
            "yards": yards,
            "yards_low": yards * v.length_low_ratio,
            "yards_high": yards * v.length_high_ratio,
            "grist": grist,
            "grist_low": grist * v.low_ratio,
            "grist_high": grist * v.high_ratio,
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:
        """Write the arithmetic as it is done by hand in these units."""
        length, mass = choices.BASES[grist.base]
        long, short = measure.units["length"], measure.units["short"]
        to_long = {"in": "36 in to the yard", "cm": "100 cm to the metre"}[short]
        yield (
            "is_built_up",
            "Turns that lie on one another: the mean turn is π × {build_up:4} longer than the bare"
            " reel, {turn:4}. The last one is {last_turn_longer} longer than the first.",
        )
        yield (
            "is_answered",
            f"Length: {{turns}} turns × {{turn:4}}, {to_long}, is {{yards@{long}:4}}.",
        )
        yield "is_twice", "Weight of the yarn: {gross:4} − {tare:4} = {mass:4}."
        if length != long:
            yield "is_answered", f"{{yards:4}} is {{yards@{length}:4}}."
        if mass != measure.units["mass"]:
            yield "is_answered", f"{{mass:4}} is {{mass@{mass}:4}}."
        top, bottom = f"{{yards@{length}:4}}", f"{{mass@{mass}:4}}"
        if grist.base == "tex":
            top, bottom = bottom, top
        yield "is_answered", f"Grist: {top} ÷ {bottom} = {{grist@{grist.base}:4}}."
        if grist.base != grist.unit:
            yield (
                "is_answered",
                f"{{grist@{grist.base}:4}} is {{grist:4}}, since {grist.reason}.",
            )
        yield (
            "is_once",
            "The scale, read once: {scale_step:4} ÷ √12 ÷ {mass:4} = {scale_relative}, a standard"
            " uncertainty.",
        )
        yield (
            "is_twice",
            "The scale, read twice: {scale_step:4} ÷ √6 ÷ {mass:4} = {scale_relative}, a standard"
            " uncertainty.",
        )
        yield (
            "is_answered",
            "That and the other sources squared, added, their root taken, and times 1.96:"
            " {half_width} either way.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw the grist's range against turns, the length, and the sources of doubt."""
        return (
            skein_charts.range_against_turns(v),
            skein_charts.length_against_turns(v),
            measuring_charts.sources_of_doubt(),
        )


def _worst(budget: Budget) -> str:
    """Name the source of most of the doubt, as in "look at the scale"."""
    return f"the {budget.largest}"

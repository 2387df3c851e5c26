"""What damp air changes: a yarn's weight and its grist, and not its yards."""

import math
from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas, regain
from yarnsheets.charts import damp_charts
from yarnsheets.charts.chart import SheetChart
from yarnsheets.charts.expressions import choose
from yarnsheets.sheets import choices, regain_used
from yarnsheets.sheets.inputs import Input, Number, Pick, Result, Table
from yarnsheets.sheets.regain_used import AUTHORITIES, KNOWN_BY, Part
from yarnsheets.sheets.sheet import Line, Sheet

_FIBRES = {each.name: each for each in regain.FIBRES if each.in_standard_air and each.commercial}
_NONE = "none"
_MOST_REGAIN = 0.33  # of wool in the dampest air, from memory


class WhatDampChanges(Sheet):
    """Weight and grist on another day, from the regain of the two days.

    Examples
    --------
    >>> sheet = WhatDampChanges(now_by="regain", water_now=0.09, then_by="regain", water_then=0.16)
    >>> round(sheet.grist_then, 1)
    939.7
    """

    weight = Input(
        "Weight today",
        "mass",
        4 / 16,
        low=0.05 / 16,
        high=20,
        measure="Weigh the skein without its ties.",
    )
    grist = Input(
        "Grist, measured today",
        "grist",
        1000,
        low=100,
        high=30000,
        measure="From a cut or a weighed skein, in the same air as the weight.",
    )
    fibre = Pick(
        "Fibre",
        {name: name for name in _FIBRES},
        measure="Wool takes up the most. A blend is under Finer points.",
    )
    humidity_now = Input(
        "Humidity of the air today",
        "share",
        0.35,
        low=0.10,
        high=0.90,
        measure="As a hygrometer shows it, where the yarn has hung for a day. A heated room in"
        " winter is often 30 to 40%.",
    )
    humidity_then = Input(
        "Humidity on the other day",
        "share",
        0.65,
        low=0.10,
        high=0.90,
        measure="When you will knit it, or weigh it again.",
    )
    second = Pick(
        "Second fibre of a blend",
        {_NONE: "none", **{name: name for name in _FIBRES}},
        measure="None if the yarn is of one fibre.",
        more=True,
    )
    share = Input(
        "Share of the second fibre",
        "share",
        0.3,
        low=0.01,
        high=0.99,
        measure="Of the dry weight, which is what a label gives.",
        more=True,
    )
    now_by = Pick(
        "Today’s regain is known from",
        KNOWN_BY,
        measure="Regain is water as a share of the dry fibre, content as a share of the whole: 12%"
        " content is 13.6% regain. A meter for wood or hay shows neither.",
        more=True,
    )
    water_now = Input(
        "My own figure for today",
        "share",
        0.09,
        low=0.001,
        high=_MOST_REGAIN,
        measure="Used only if you chose it. Weigh, dry in an oven until it loses no more, weigh"
        " again: regain is the loss over the dry weight.",
        more=True,
    )
    then_by = Pick(
        "The other day’s regain is known from",
        KNOWN_BY,
        measure="What the trade agrees for invoices is no regain of any day, but may be the one you"
        " need.",
        more=True,
    )
    water_then = Input(
        "My own figure for the other day",
        "share",
        0.16,
        low=0.001,
        high=_MOST_REGAIN,
        measure="Used only if you chose it.",
        more=True,
    )
    invoice = Pick(
        "Weight for an invoice",
        {_NONE: "not needed", **AUTHORITIES},
        measure="Authorities differ: for the same dry wool by up to 4%. Say which one you used.",
        more=True,
    )

    has_answer = Result("flag", "the regain of both days is known")
    has_range = Result("flag", "a regain is known only within a range")
    is_exact = Result("flag", "both regains are single figures")
    is_blend = Result("flag", "the yarn is of two fibres")
    is_held = Result("flag", "a fibre without a table is held at its figure for air of 65 %")
    has_curve = Result("flag", "there is a fibre with a table against humidity")
    has_no_curve = Result("flag", "there is none")
    has_invoice = Result("flag", "a weight for an invoice is wanted")
    has_one_origin = Result("flag", "both regains are from the same source")
    has_two_origins = Result("flag", "they are from two")
    regain_now = Result("share", "regain today")
    now_low = Result("share", "low end of its range")
    now_high = Result("share", "high end of its range")
    regain_then = Result("share", "regain on the other day")
    then_low = Result("share", "low end of its range")
    then_high = Result("share", "high end of its range")
    regain_agreed = Result("share", "the regain that the chosen authority has agreed")
    origin_now = Result("word", "where today's regain is from, in short")
    origin_then = Result("word", "where the other day's is from")
    origin_agreed = Result("word", "whose the agreed regain is")
    full_now = Result("word", "where today's regain is from, in full")
    full_then = Result("word", "where the other day's is from")
    held = Result("word", "the fibre that is held")
    lightest = Result("number", "least weight in any air, of today's")
    heaviest = Result("number", "greatest weight in any air, of today's")

    wet_now = Number("number", "weight today, of the dry weight")
    wet_then = Number("number", "weight on the other day, of the dry weight")
    content_now = Number("share", "moisture content today")
    content_then = Number("share", "moisture content on the other day")
    dry = Number("mass", "weight without any water")
    yards = Number("length", "length, which no damp changes")
    weight_then = Number("mass", "weight on the other day")
    weight_low = Number("mass", "low end of its range")
    weight_high = Number("mass", "high end of its range")
    grist_then = Number("grist", "grist on the other day")
    yards_wrong = Number("length", "what today's grist makes of the other day's weight")
    yards_reverse = Number("length", "what the other day's grist makes of today's weight")
    off = Number("share", "how far off that is")
    is_damper = Number("flag", "the yarn holds more water on the other day")
    is_drier = Number("flag", "it holds less")
    is_same = Number("flag", "it holds the same")
    invoice_weight = Number("mass", "weight at the agreed regain")

    air = Table("weight, of today's, against humidity, with its range")
    days = Table("the two days, if they are known by humidity")
    pairs = Table("the length that each grist makes of each weight, of the true one")
    published = Table("what is published of the fibres' regain")

    answer = (
        (
            "has_range",
            "On the other day this {weight} of yarn will weigh about {weight_then}, between"
            " {weight_low!} and {weight_high}, and measure about {grist_then}.",
        ),
        (
            "is_exact",
            "On the other day this {weight} of yarn will weigh {weight_then} and measure"
            " {grist_then}.",
        ),
        (
            "is_damper",
            "It stays {yards} of yarn: today’s grist with that day’s weight would make it"
            " {yards_wrong}, {off:2} too many.",
        ),
        (
            "is_drier",
            "It stays {yards} of yarn: today’s grist with that day’s weight would make it"
            " {yards_wrong}, {off:2} too few.",
        ),
        ("is_same", "It stays {yards} of yarn."),
        (
            "has_one_origin",
            "Regain used: {regain_now} today and {regain_then} then, by {origin_now}.",
        ),
        (
            "has_two_origins",
            "Regain used: {regain_now} today, by {origin_now}; {regain_then} then, by"
            " {origin_then}.",
        ),
        (
            "is_held",
            "There is no table of {held} against humidity here: it is held at what is published for"
            " air of 65%, and its own change is left out.",
        ),
        (
            "has_invoice",
            "For an invoice it weighs {invoice_weight:4}, at the {regain_agreed:4} of"
            " {origin_agreed}.",
        ),
    )
    labels: ClassVar = {"today_label": "today", "then_label": "then"}

    def work_out(self) -> Mapping[str, Any]:
        """Look the regain of both days up, and what the charts show of it."""
        parts = self._parts()
        if warning := self._unlikely(parts):
            return self.no_answer(warning) | {
                "published": regain_used.published(parts),
                "lightest": 1.0,
                "heaviest": 1.0,
            }
        now = regain_used.of_a_day(parts, self.now_by, self.humidity_now, self.water_now)
        then = regain_used.of_a_day(parts, self.then_by, self.humidity_then, self.water_then)
        by_humidity = "humidity" in (self.now_by, self.then_by)
        held = [fibre.name for fibre, _ in parts if by_humidity and fibre is not regain.WOOL]
        agreed = None if self.invoice == _NONE else regain_used.agreed_by(parts, self.invoice)
        air = regain_used.weight_in_air(parts, now)
        ratio = float(formulas.mass_at_regain(1.0, now.value, then.value))
        return {
            "has_answer": True,
            "has_range": now.low < now.high or then.low < then.high,
            "is_exact": now.low == now.high and then.low == then.high,
            "is_blend": len(parts) > 1,
            "is_held": bool(held),
            "has_curve": bool(air),
            "has_no_curve": not air,
            "has_invoice": agreed is not None,
            "has_one_origin": now.origin == then.origin,
            "has_two_origins": now.origin != then.origin,
            "regain_now": now.value,
            "now_low": now.low,
            "now_high": now.high,
            "regain_then": then.value,
            "then_low": then.low,
            "then_high": then.high,
            "regain_agreed": agreed.value if agreed else math.nan,
            "origin_now": now.origin,
            "origin_then": then.origin,
            "origin_agreed": agreed.origin if agreed else "",
            "full_now": now.full,
            "full_then": then.full,
            "held": " and ".join(held),
            "lightest": min([ratio, 1.0, *(row["low"] for row in air)]),
            "heaviest": max([ratio, 1.0, *(row["high"] for row in air)]),
            "air": air,
            "days": [
                {"day": day, "humidity": 100 * humidity, "ratio": of}
                for day, by, humidity, of in (
                    ("today", self.now_by, self.humidity_now, 1.0),
                    ("then", self.then_by, self.humidity_then, ratio),
                )
                if by == "humidity"
            ],
            "pairs": [
                {"pair": "today’s grist,|today’s weight", "ratio": 1.0},
                {"pair": "that day’s grist,|that day’s weight", "ratio": 1.0},
                {"pair": "today’s grist,|that day’s weight", "ratio": ratio},
                {"pair": "that day’s grist,|today’s weight", "ratio": 1 / ratio},
            ],
            "published": regain_used.published(parts),
        }

    def _parts(self) -> list[Part]:
        """Give the fibres with their shares of the dry mass."""
        if self.second == _NONE:
            return [(_FIBRES[self.fibre], 1.0)]
        return [(_FIBRES[self.fibre], 1 - self.share), (_FIBRES[self.second], self.share)]

    def _unlikely(self, parts: list[Part]) -> str | None:
        """Say what is wrong where no regain can be given."""
        if "humidity" in (self.now_by, self.then_by) and not any(
            fibre is regain.WOOL for fibre, _ in parts
        ):
            names = " or ".join(fibre.name for fibre, _ in parts)
            return (
                f"There is a table of wool against humidity here, and none of {names}. Under Finer"
                " points, say how the regain of each day is known: published for air of 65%, agreed"
                " for invoices, or your own figure."
            )
        for by, water in ((self.now_by, self.water_now), (self.then_by, self.water_then)):
            if by == "content" and formulas.regain_from_content(water) > _MOST_REGAIN:
                return (
                    f"A moisture content of {water:.1%} is a regain of"
                    f" {formulas.regain_from_content(water):.1%}, and even wool takes up no more"
                    f" than about {_MOST_REGAIN:.0%} from the air (from memory). Let the yarn dry,"
                    " and see whether the figure is a content."
                )
        return None

    def compute(self, v: Any) -> Mapping[str, Any]:
        """Work out every number from the inputs and the regains."""
        weight_then = formulas.mass_at_regain(v.weight, v.regain_now, v.regain_then)
        grist_then = formulas.grist_at_regain(v.grist, v.regain_now, v.regain_then)
        yards = formulas.length(v.weight, v.grist)
        wrong = formulas.length(weight_then, v.grist)
        is_damper, is_drier = v.regain_then > v.regain_now, v.regain_then < v.regain_now
        return {
            "wet_now": 1 + v.regain_now,
            "wet_then": 1 + v.regain_then,
            "content_now": formulas.content_from_regain(v.regain_now),
            "content_then": formulas.content_from_regain(v.regain_then),
            "dry": formulas.dry_mass(v.weight, v.regain_now),
            "yards": yards,
            "weight_then": weight_then,
            "weight_low": formulas.mass_at_regain(v.weight, v.now_high, v.then_low),
            "weight_high": formulas.mass_at_regain(v.weight, v.now_low, v.then_high),
            "grist_then": grist_then,
            "yards_wrong": wrong,
            "yards_reverse": formulas.length(v.weight, grist_then),
            "off": choose(is_damper, wrong - yards, yards - wrong) / yards,
            "is_damper": is_damper,
            "is_drier": is_drier,
            "is_same": choose(is_damper, 0, choose(is_drier, 0, 1)),
            "invoice_weight": formulas.mass_at_regain(v.weight, v.regain_now, v.regain_agreed),
        }

    def worked(self, measure: choices.Measure, grist: choices.GristUnit) -> Iterable[Line]:  # noqa: ARG002
        """Write the arithmetic by way of the dry weight."""
        yield (
            None,
            "Today’s regain is {regain_now:4} of the dry weight, a moisture content of"
            " {content_now:4} of the whole. {full_now}",
        )
        yield (
            None,
            "The other day’s is {regain_then:4}, a content of {content_then:4}. {full_then}",
        )
        yield "is_blend", "Each fibre’s regain counts by its share of the dry weight."
        yield None, "Without any water: {weight:4} ÷ {wet_now:5} = {dry:4}."
        yield None, "On the other day: {dry:4} × {wet_then:5} = {weight_then:4}."
        there, back = ("÷", "×") if grist.base == "tex" else ("×", "÷")
        yield (
            None,
            f"Grist then: {{grist:4}} {there} {{wet_now:5}} {back} {{wet_then:5}} ="
            " {grist_then:4}.",
        )
        yield (
            None,
            "Yards, each day by its own grist and weight: {yards:4}. Today’s grist with the other"
            " day’s weight makes {yards_wrong:4}, the other way round {yards_reverse:4}.",
        )
        yield (
            "has_invoice",
            "Invoice: {dry:4} of dry fibre and {regain_agreed:4} of it in water, by"
            " {origin_agreed}, is {invoice_weight:4}.",
        )

    def charts(self, v: Any) -> Iterable[SheetChart]:
        """Draw weight against humidity, the yards of each pairing, and the published regains."""
        return (
            damp_charts.weight_against_humidity(v),
            damp_charts.yards_by_pairing(v),
            damp_charts.published_regains(v),
        )

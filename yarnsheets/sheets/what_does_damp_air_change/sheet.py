"""What damp air changes: a yarn's weight and its grist, and not its yards."""

from collections.abc import Iterable, Mapping
from typing import Any, ClassVar

from yarnsheets import formulas
from yarnsheets.page import choices
from yarnsheets.page.inputs import Found, Group, Input, Pick, Table
from yarnsheets.page.onward import Onward
from yarnsheets.page.sheet import Line, Sheet, no_answer
from yarnsheets.sheets.shared import grists, regain_used
from yarnsheets.sheets.shared.regain_used import (
    AUTHORITIES,
    FIBRES,
    KNOWN_BY,
    MOST_OF_ANY,
    Part,
    Used,
)

_NONE = "none"
_MOST_PUBLISHED = 25  # per cent: all that is published lies below
_TYPED = ("regain", "content")
_ALIKE = 0.01  # ends of a range nearer than this may be written alike, to three digits


class WhatDoesDampAirChange(Sheet):
    """Weight and grist on another day, from the regain of the two days.

    Examples
    --------
    >>> sheet = WhatDoesDampAirChange(
    ...     now_by="regain", water_now=0.09, then_by="regain", water_then=0.16
    ... )
    >>> round(sheet.grist_then, 1)
    939.7
    """

    question = "What does damp air change?"
    onward = (Onward("how-many-yards", {"grist": "grist_then", "weight": "weight_then"}),)

    weight = Input(
        "Weight today",
        "mass",
        4 / 16,
        low=0.05 / 16,
        high=20,
        measure="Weigh the skein without its ties.",
    )
    grist = grists.asked(
        "Grist, measured today",
        1000,
        "From a cut or a weighed skein, in the same air as the weight.",
    )
    fibre = Pick(
        "Fibre",
        {name: name for name in FIBRES},
        measure="Wool takes up the most. A blend is asked further down.",
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

    a_blend = Group("A blend of two fibres", folded=True)
    second = Pick(
        "Second fibre of a blend",
        {_NONE: "none", **{name: name for name in FIBRES}},
        measure="None if the yarn is of one fibre.",
    )
    share = Input(
        "Share of the second fibre",
        "share",
        0.3,
        low=0.01,
        high=0.99,
        measure="Of the weight of both.",
    )
    share_of = Pick(
        "That share is",
        {
            "label": "as a label gives it, or as I weighed both in one air",
            "dry": "of the bone-dry weight",
        },
        measure="A label counts each fibre with the water that the trade has agreed for it.",
    )

    other_regains = Group("Regain known in another way, or for a label", folded=True)
    now_by = Pick(
        "Today’s regain is known from",
        KNOWN_BY,
        measure="Regain is water as a share of the dry fibre, content as a share of the whole: 12%"
        " content is 13.6% regain. A meter for wood or hay shows neither.",
    )
    water_now = Input(
        "My own figure for today",
        "share",
        0.09,
        low=0.001,
        high=MOST_OF_ANY,
        measure="Weigh, dry in an oven until it loses no more, weigh again: regain is the loss over"
        " the dry weight.",
    )
    then_by = Pick(
        "The other day’s regain is known from",
        KNOWN_BY,
        measure="What is agreed for trade is no regain of any day, but may be the one you need.",
    )
    water_then = Input(
        "My own figure for the other day",
        "share",
        0.16,
        low=0.001,
        high=MOST_OF_ANY,
        measure="Wool takes up at most about 33% from the air, cotton 27%, nylon 9%: all from"
        " memory.",
    )
    invoice = Pick(
        "Weight for a label or an invoice",
        {_NONE: "not needed", **AUTHORITIES},
        measure="Goods are sold by their weight at an agreed regain. Authorities differ: for the"
        " same wool by up to 4%. Say which one you used.",
    )

    has_answer = Found("flag", "the regain of both days is known")
    has_range = Found("flag", "the regains leave the weight a range")
    is_blend = Found("flag", "the yarn is of two fibres")
    is_by_label = Found("flag", "their shares are those of a label")
    is_held = Found("flag", "a fibre without a table is held at its figure for air of 65 %")
    has_curve = Found("flag", "there is a fibre with a table against humidity")
    has_no_curve = Found("flag", "there is an answer, and no such fibre")
    has_invoice = Found("flag", "a weight for a label or an invoice is wanted")
    has_one_origin = Found("flag", "both regains are from the same source")
    has_two_origins = Found("flag", "they are from different ones")
    regain_now = Found("share", "regain today")
    now_low = Found("share", "low end of its range")
    now_high = Found("share", "high end of its range")
    regain_then = Found("share", "regain on the other day")
    then_low = Found("share", "low end of its range")
    then_high = Found("share", "high end of its range")
    regain_agreed = Found("share", "the regain that the chosen authority has agreed")
    origin_now = Found("word", "where today's regain is from, in short")
    origin_then = Found("word", "where the other day's is from")
    origin_agreed = Found("word", "whose the agreed regain is")
    full_now = Found("word", "where today's regain is from, in full")
    full_then = Found("word", "where the other day's is from")
    held = Found("word", "the fibre that is held")
    dry_share = Found("share", "the second fibre's share of the dry weight")
    content_now = Found("share", "moisture content today")
    content_then = Found("share", "moisture content on the other day")
    wet_now = Found("number", "weight today, of the dry weight")
    wet_then = Found("number", "weight on the other day, of the dry weight")
    dry = Found("mass", "weight without any water")
    weight_then = Found("mass", "weight on the other day")
    weight_low = Found("mass", "low end of its range")
    weight_high = Found("mass", "high end of its range")
    grist_then = Found("grist", "grist on the other day")
    yards = Found("length", "length, which no damp changes")
    yards_wrong = Found("length", "what today's grist makes of the other day's weight")
    yards_reverse = Found("length", "what the other day's grist makes of today's weight")
    off = Found("share", "how far off the worse of the two is")
    invoice_weight = Found("mass", "weight at the agreed regain")
    lightest = Found("number", "least weight in any air, of today's")
    heaviest = Found("number", "greatest weight in any air, of today's")

    most_drawn = Found("number", "where the axis of the regains ends, in per cent")

    air = Table("weight, of today's, against humidity, with its range")
    days = Table("the two days, if they are known by humidity")
    pairs = Table("the length that each grist makes of each weight, of the true one")
    published = Table("what is published of the fibres' regain")

    answer = (
        (
            "has_range",
            "On the other day it weighs about {weight_then*}, between {weight_low!} and"
            " {weight_high}.",
        ),
        ("not has_range", "On the other day it weighs about {weight_then*}."),
        (None, "It is still {yards~} of yarn, so its grist is then about {grist_then~}."),
        (
            "has_invoice",
            "On a label or an invoice it is {invoice_weight:4}, at the agreed {regain_agreed:4}.",
        ),
    )
    labels: ClassVar = {"today_label": "today", "then_label": "then"}

    def work_out(self) -> Mapping[str, Any]:
        """Look up the regain of both days, and work out what the yarn is on the other."""
        parts = self._parts()
        published = regain_used.published(parts)
        if warning := self._unlikely(parts):
            return no_answer(warning) | {
                "published": published,
                "lightest": 1.0,
                "heaviest": 1.0,
                "most_drawn": _MOST_PUBLISHED,
            }
        now = regain_used.of_a_day(parts, self.now_by, self.humidity_now, self.water_now)
        then = regain_used.of_a_day(parts, self.then_by, self.humidity_then, self.water_then)
        by_humidity = "humidity" in (self.now_by, self.then_by)
        held = [f.name for f, _ in parts if by_humidity and not regain_used.has_table(f)]
        return {
            "has_answer": True,
            "is_blend": len(parts) > 1,
            "is_by_label": len(parts) > 1 and self.share_of == "label",
            "dry_share": parts[-1][1],
            "is_held": bool(held),
            "held": " and ".join(held),
            "has_one_origin": now.origin == then.origin,
            "has_two_origins": now.origin != then.origin,
            "regain_now": now.value,
            "now_low": now.low,
            "now_high": now.high,
            "regain_then": then.value,
            "then_low": then.low,
            "then_high": then.high,
            "origin_now": now.origin,
            "origin_then": then.origin,
            "full_now": now.full,
            "full_then": then.full,
            "published": published,
            **self._on_the_other_day(now, then),
            **self._invoice(parts, now.value),
            **self._drawn(parts, now, then),
        }

    def unused(self) -> list[str]:
        """Name what belongs to the other ways of knowing a regain, and to a blend if it is none."""
        unused = []
        for by, humidity, water in (
            (self.now_by, "humidity_now", "water_now"),
            (self.then_by, "humidity_then", "water_then"),
        ):
            if by != "humidity":
                unused.append(humidity)
            if by not in _TYPED:
                unused.append(water)
        return unused if self._is_blend() else [*unused, "share", "share_of"]

    def _is_blend(self) -> bool:
        return self.second not in (_NONE, self.fibre)

    def _parts(self) -> list[Part]:
        """Give the fibres with their shares of the dry mass."""
        first = FIBRES[self.fibre]
        if not self._is_blend():
            return [(first, 1.0)]
        second = FIBRES[self.second]
        if self.share_of == "label":
            return regain_used.by_label(first, second, self.share)
        return [(first, 1 - self.share), (second, self.share)]

    def _unlikely(self, parts: list[Part]) -> str | None:
        """Say what is wrong where no regain can be given."""
        if "humidity" in (self.now_by, self.then_by) and not any(
            regain_used.has_table(fibre) for fibre, _ in parts
        ):
            return (
                "There is a table of wool against humidity here, and none of"
                f" {regain_used.named(parts)}. Further down, say how the regain of each day"
                " is known: published for air of 65%, agreed for trade, or your own figure."
            )
        for by, water in ((self.now_by, self.water_now), (self.then_by, self.water_then)):
            if by in _TYPED and (odd := regain_used.too_wet(parts, by, water)):
                return odd
        return None

    def _on_the_other_day(self, now: Used, then: Used) -> dict[str, Any]:
        """Give weight and grist then, and the yards by grist and weight of either day."""
        weight_then = formulas.mass_at_regain(self.weight, now.value, then.value)
        grist_then = formulas.grist_at_regain(self.grist, now.value, then.value)
        yards = formulas.length(self.weight, self.grist)
        wrong = formulas.length(weight_then, self.grist)
        reverse = formulas.length(self.weight, grist_then)
        low = formulas.mass_at_regain(self.weight, now.high, then.low)
        high = formulas.mass_at_regain(self.weight, now.low, then.high)
        return {
            "has_range": high > low * (1 + _ALIKE),
            "content_now": formulas.content_from_regain(now.value),
            "content_then": formulas.content_from_regain(then.value),
            "wet_now": 1 + now.value,
            "wet_then": 1 + then.value,
            "dry": formulas.dry_mass(self.weight, now.value),
            "weight_then": weight_then,
            "weight_low": low,
            "weight_high": high,
            "grist_then": grist_then,
            "yards": yards,
            "yards_wrong": wrong,
            "yards_reverse": reverse,
            "off": max(wrong, reverse) / yards - 1,
        }

    def _invoice(self, parts: list[Part], now: float) -> dict[str, Any]:
        """Give the weight for a label or an invoice, if one is wanted."""
        if self.invoice == _NONE:
            return {}
        agreed = regain_used.agreed_by(parts, self.invoice)
        return {
            "has_invoice": True,
            "regain_agreed": agreed.value,
            "origin_agreed": agreed.origin,
            "invoice_weight": formulas.mass_at_regain(self.weight, now, agreed.value),
        }

    def _drawn(self, parts: list[Part], now: Used, then: Used) -> dict[str, Any]:
        """Give what the charts show of it, as shares of today's weight and of the true yards."""
        air = regain_used.weight_in_air(parts, now)
        ratio = formulas.mass_at_regain(1.0, now.value, then.value)
        return {
            "has_curve": bool(air),
            "has_no_curve": not air,
            "lightest": min([ratio, 1.0, *(row["low"] for row in air)]),
            "heaviest": max([ratio, 1.0, *(row["high"] for row in air)]),
            "most_drawn": max(_MOST_PUBLISHED, 105 * now.value, 105 * then.value),
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
        yield (
            "is_by_label",
            "The label’s {share:4} of {second} has the water in it that EU 1007/2011 agrees for"
            " each fibre: of the dry weight it is {dry_share:4}.",
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
            "Length, each day by its own grist and weight: {yards:4}. Today’s grist with the other"
            " day’s weight makes {yards_wrong:4}, the other way round {yards_reverse:4}.",
        )
        yield (
            "has_invoice",
            "Label or invoice: {dry:4} of dry fibre and {regain_agreed:4} of it in water, by"
            " {origin_agreed}, is {invoice_weight:4}.",
        )

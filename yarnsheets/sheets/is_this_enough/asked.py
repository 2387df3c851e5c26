"""What the worksheet on enough asks: the yarn that is there, and what the project takes."""

import math

from yarnsheets.estimates.budget import resolution
from yarnsheets.page.inputs import Group, Input, Pick, Readings
from yarnsheets.page.sheet import Sheet
from yarnsheets.page.text import slot
from yarnsheets.sheets.shared import grists, weighing
from yarnsheets.sheets.shared.doubt import Yarn, standard, too_light
from yarnsheets.sheets.shared.weighing import GRAM

_OZ = 1 / 16
_HEAVIEST = 3.0  # lb; a large cone weighs 1 kg (common practice, no source)


class AskedOfEnough(Sheet):
    """The inputs, the doubts they state, and what is probably wrong with them."""

    weights = Readings(
        "Skeins weighed",
        "mass",
        [4.1 * _OZ, 3.8 * _OZ, 4.3 * _OZ],
        low=0.01 * GRAM,
        high=20,
        measure="A line a skein, all of the same yarn, without ties; empty before there is any.",
        drawing="scale",
    )
    grist = grists.asked(
        "Grist of the yarn",
        1300,
        "Of the finished yarn, from cuts or a weighed skein.",
    )
    need_by = Pick(
        "What the project takes is known from",
        {"pattern": "the pattern’s figure", "swatch": "a swatch of this yarn"},
        measure="A swatch goes by weight, as the skeins do: then the grist hardly matters.",
    )
    project = Input(
        "The project takes",
        "length",
        930,
        low=5,
        high=20000,
        measure="The pattern’s own figure, without a reserve.",
    )
    swatch_weight = Input(
        "Weight of the swatch",
        "mass",
        0.5 * _OZ,
        low=0.02 * _OZ,
        high=2,
        measure="Knitted or woven as the project will be, dry, in the same air as the skeins.",
        drawing="swatch",
    )
    swatch_area = Input(
        "Area of the swatch",
        "area",
        64,
        low=1,
        high=5000,
        measure="Width times length, washed.",
    )
    project_area = Input(
        "Area of the project",
        "area",
        1400,
        low=4,
        high=50000,
        measure="All pieces together.",
    )
    safety = Input(
        "How safe it should be",
        "share",
        0.95,
        low=0.5,
        high=0.99,
        step=0.01,
        measure="95%: enough for 95 of 100 such projects. This takes the place of a reserve.",
    )

    the_doubts = Group("How far off each may be")
    grist_range = Input(
        "The grist is right to within, either way",
        "share",
        0.06,
        low=0.005,
        high=0.3,
        measure="95% sure. The worksheet “How sure is the grist?” gives it.",
    )
    project_range = Input(
        "The project is right to within, either way",
        "share",
        0.1,
        low=0.005,
        high=0.5,
        measure="95% sure. Patterns are often 10% off (common practice, no source).",
    )
    length_range = Input(
        "Each known length is right to within",
        "share",
        0.02,
        low=0.001,
        high=0.3,
        measure="95% sure. Each skein is taken to be off in its own way, so some make up for"
        " others; weighed skeins are all off together with the grist.",
    )
    scale_step = weighing.steps(
        0.1 * GRAM, 0.5 * _OZ, "The last digit of the scale. It counts anew for every skein."
    )

    finer_points = Group("Finer points", folded=True)
    lengths = Readings(
        "Skeins of known length",
        "length",
        [],
        low=1,
        high=20000,
        measure="A line a skein, counted or by its label. List no skein in both places.",
    )
    sizes = Readings(
        "The pattern’s figures for its sizes",
        "length",
        [],
        low=5,
        high=20000,
        measure="A line a size, trusted as far as the figure of this project. Left empty, a little"
        " less and a little more than the project are compared.",
    )
    spinning_waste = Input(
        "Lost in spinning",
        "share",
        0.05,
        low=0,
        high=0.9,
        step=0.01,
        measure="Of the fibre’s weight. Often 5% (common practice, no source).",
    )

    def unused(self) -> list[str]:
        """Name what belongs to the other way of knowing the need, and to skeins not there.

        Before there is any yarn, all goes by the weight that is still to be spun.
        """
        by_swatch = self.need_by == "swatch"
        names = ["project"] if by_swatch else ["swatch_weight", "swatch_area", "project_area"]
        if not self.lengths:
            names.append("length_range")
        if self.lengths and not self.weights and not by_swatch:
            names.extend(["grist", "grist_range", "scale_step", "spinning_waste"])
        return names

    def yarn(self) -> Yarn:
        """Give the yarn that is there, with what puts it in doubt."""
        return Yarn(
            self.weights,
            self.grist,
            self.grist_range,
            self.scale_step,
            self.lengths,
            self.length_range,
        )

    def doubt_of_need(self) -> float:
        """Give the need's relative doubt, but for the grist that it shares with the skeins."""
        stated = standard(self.project_range)
        if self.need_by == "pattern":
            return stated
        return math.hypot(
            stated, resolution("swatch", self.scale_step / self.swatch_weight).relative
        )

    def unlikely(self) -> str | None:
        """Say what is probably wrong with what was typed."""
        steps = f"for a scale with steps of {slot(self.scale_step, 'mass')}"
        for at, weight in enumerate(self.weights, start=1):
            if weight > _HEAVIEST:
                return (
                    f"Skein {at} weighs more than {slot(_HEAVIEST, 'mass')}. Is its weight in"
                    " another unit? If it is several skeins, give each a line."
                )
            if too_light(weight, self.scale_step):
                return (
                    f"Skein {at} is too light {steps} to tell its weight. Weigh small skeins"
                    " together, or look at the scale’s steps."
                )
        if self.need_by == "pattern":
            return None
        if too_light(self.swatch_weight, self.scale_step):
            return (
                f"The swatch is too light {steps} to tell its weight. Make a larger one, or look at"
                " the scale’s steps."
            )
        if self.swatch_area > self.project_area:
            return "The swatch is larger than the project: look at both areas."
        return None

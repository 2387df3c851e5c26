"""What the worksheet on knitting asks: an outline, a gauge or a swatch, and the yarn."""

from yarnsheets.page.inputs import Group, Input, Pick
from yarnsheets.page.sheet import Sheet
from yarnsheets.page.text import show, slot
from yarnsheets.published.stitches import STATES, STITCHES
from yarnsheets.sheets.shared import grists, weighing
from yarnsheets.sheets.shared.doubt import too_light
from yarnsheets.sheets.shared.weighing import GRAM
from yarnsheets.units import convert

_OUNCE = 1 / 16

# Common practice, no source. Rows to a stitch of plain knitting: beyond these the two are most
# likely swapped or of another stitch.
_FEWEST_ROWS, _MOST_ROWS = 0.9, 2.0
# Grams to the square metre of any knitting, from the finest lace to a rug: a slip of unit if not.
_LIGHTEST, _HEAVIEST = 15, 4000


class AskedOfKnitting(Sheet):
    """The inputs, and what is probably wrong with them."""

    outline = Pick(
        "What it is",
        {
            "pullover": "a pullover",
            "rectangle": "a rectangle: scarf, blanket",
            "triangle": "a triangle: shawl",
            "circle": "a circle",
            "hat": "a hat",
            "pair": "a pair of tubes: socks, mittens",
        },
        measure="Its outline, with a straight body and straight sleeves for a pullover.",
    )
    around = Input(
        "Width, or around",
        "short",
        42,
        low=1,
        high=400,
        measure="Around the body, head, foot or hand for a garment; the widest side of a triangle;"
        " straight across a circle.",
    )
    piece_length = Input(
        "Length",
        "short",
        25,
        low=1,
        high=400,
        measure="Hem to shoulder; brim to where a hat’s crown begins; toe, by the heel, to the top"
        " of a sock.",
    )
    sleeve_length = Input(
        "Sleeve length",
        "short",
        18,
        low=0.5,
        high=60,
        measure="Cuff to body.",
    )
    sleeve_top = Input(
        "Sleeve, around the top",
        "short",
        13,
        low=1,
        high=60,
        measure="Measured around, where it joins the body.",
    )
    sleeve_cuff = Input(
        "Sleeve, around the cuff",
        "short",
        8,
        low=1,
        high=60,
        measure="Measured around, at its narrow end.",
    )

    the_gauge = Group("Gauge and stitch")
    gauge_stitches = Input(
        "Stitches of plain knitting",
        "gauge",
        5,
        low=1,
        high=20,
        measure="Counted on a swatch in this yarn, washed and dried: plain knitting (stockinette),"
        " even if the piece is in another stitch.",
        drawing="swatch",
    )
    gauge_rows = Input(
        "Rows of plain knitting",
        "gauge",
        7,
        low=1,
        high=30,
        measure="Counted on the same swatch.",
    )
    state = Pick(
        "The swatch was",
        {name: state.name for name, state in STATES.items()},
        measure="How far it has relaxed: each state has its own constants.",
    )
    stitch = Pick(
        "Stitch",
        {name: stitch.name for name, stitch in STITCHES.items()},
        measure="What most of the piece is in.",
    )
    known_by = Pick(
        "How do you know?",
        {"gauge": "gauge alone", "swatch": "a weighed swatch"},
        measure="A swatch of the piece’s own stitch is surest.",
    )
    swatch_width = Input(
        "Width of the swatch",
        "short",
        6,
        low=1,
        high=100,
        measure="Washed and dry, edges and all.",
    )
    swatch_length = Input(
        "Length of the swatch",
        "short",
        6,
        low=1,
        high=100,
        measure="The same.",
    )
    swatch_weight = Input(
        "Weight of the swatch",
        "mass",
        0.4 * _OUNCE,
        low=0.001 * _OUNCE,
        high=5,
        measure="The larger the swatch, the better a kitchen scale will do.",
    )
    scale_step = weighing.steps(1 * GRAM, _OUNCE / 4)

    the_yarn = Group("The yarn")
    grist = grists.asked(
        "Grist of the yarn",
        1200,
        "Turns length into weight, and a swatch’s weight into length.",
    )
    doubt = Input(
        "How far off it may be besides, either way",
        "share",
        0.05,
        low=0,
        high=0.5,
        step=0.005,
        measure="A gauge is seldom kept better than this over a whole piece (common practice, no"
        " source).",
    )
    reserve = Input(
        "Reserve",
        "share",
        0.10,
        low=0,
        high=1,
        step=0.01,
        measure="What you like to have over, for bands, seams, thumbs and a swatch. It is on top of"
        " what the piece takes.",
    )

    def unused(self) -> list[str]:
        """Name what the outline does not have, and the other way of knowing."""
        names = ["piece_length"] if self.outline == "circle" else []
        if self.outline != "pullover":
            names.extend(["sleeve_length", "sleeve_top", "sleeve_cuff"])
        if self.known_by == "swatch":
            names.append("stitch")
        else:
            names.extend(["swatch_width", "swatch_length", "swatch_weight", "scale_step"])
        return names

    def unlikely(self) -> str | None:
        """Say what is probably wrong with the gauge or the swatch; none if nothing is."""
        rows = self.gauge_rows / self.gauge_stitches
        if self.known_by == "gauge" and not _FEWEST_ROWS <= rows <= _MOST_ROWS:
            return (
                f"These are {show(rows, 2)} rows to a stitch, and plain knitting has about 1.3. See"
                " whether stitches and rows are swapped, or counted on another stitch or over"
                " another length; or weigh a swatch."
            )
        if self.known_by == "gauge":
            return None
        if too_light(self.swatch_weight, self.scale_step):
            return (
                f"The swatch is too light for a scale with steps of {slot(self.scale_step, 'mass')}"
                " to tell its weight. Make a larger one, or look at the scale’s steps under Finer"
                " points."
            )
        swatch = self.swatch_weight / self.swatch_width / self.swatch_length
        grams = convert(swatch, "lb/in**2", "g/m**2")
        if not _LIGHTEST <= grams <= _HEAVIEST:
            thing = "finest lace" if grams < _LIGHTEST else "heaviest rug"
            beyond = "lighter" if grams < _LIGHTEST else "heavier"
            ounces = convert(grams, "g/m**2", "oz/yd**2")
            in_grams = f"{show(grams, 2)} g to the square metre"
            in_ounces = f"{show(ounces, 2)} oz to the square yard"
            weight = in_grams if self.measure == "metres, grams" else in_ounces
            return (
                f"The swatch would be {beyond} than the {thing}, at {weight}. Check the unit of its"
                " weight, and its width and length."
            )
        return None

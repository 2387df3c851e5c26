"""What every plan of a spin asks alike: each call makes an input for one sheet."""

from yarnsheets.page.inputs import Input, Pick, Words
from yarnsheets.published import yields
from yarnsheets.sheets.shared import grists
from yarnsheets.sheets.what_does_this_spin_take.chain import BUYING, SAMPLES

_SURE = "So that you are 95% sure of it."


def project() -> Input:
    """Ask for the project's yards."""
    return Input(
        "The project takes",
        "length",
        1200,
        low=5,
        high=20000,
        measure="The pattern’s own figure, in washed yarn, without a reserve.",
    )


def grist_wanted() -> Input:
    """Ask for the grist of the sample."""
    return grists.asked(
        "Grist of the sample I like",
        1000,
        "Trim a cut on the yarn balance until it hangs level: its length times the balance factor.",
    )


def sample_of() -> Pick:
    """Ask whether the sample is of the yarn or of the single."""
    return Pick(
        "The sample was",
        SAMPLES,
        measure="If the yarn is to stay as it is, more plies need finer singles. If the single is"
        " to stay, more plies make a thicker yarn and take more fibre.",
    )


def plies(title: str = "Plies") -> Input:
    """Ask for the number of plies."""
    return Input(title, "number", 2, low=1, high=8, step=1, measure="1 if the single is the yarn.")


def buying(title: str = "I buy") -> Pick:
    """Ask in what state the fibre is bought."""
    return Pick(title, BUYING, measure="What is bought raw must be washed, and then carded.")


def put_up(title: str = "It is sold by") -> Input:
    """Ask what one braid, bump or fleece weighs."""
    return Input(
        title,
        "mass",
        4 / 16,
        low=0.1 / 16,
        high=50,
        measure="Weight of one: a braid is often 4 oz, a bump 100 g. For a whole fleece, what it"
        " weighs.",
    )


def price(title: str = "Price of one") -> Input:
    """Ask what one costs."""
    return Input(
        title,
        "money",
        18,
        low=0,
        high=500,
        step=0.5,
        measure="In your own currency, 0 for your own sheep’s. Of small money, such as yen, type"
        " hundreds.",
    )


def currency() -> Words:
    """Ask what to call the currency."""
    return Words("Currency", "$", measure="A sign or a word, as $, € or francs.")


def reserve() -> Input:
    """Ask for the reserve."""
    return _share(
        "Reserve on top",
        0.10,
        1.0,
        "For a swatch and a mended cuff. Often 10% (common practice, no source).",
    )


def spinning_waste() -> Input:
    """Ask for the waste of spinning and plying."""
    return _share(
        "Waste in spinning and plying",
        0.05,
        0.5,
        "Knots, samples and what stays on bobbins: often 2 to 8% (common practice, no source)."
        " Taken off the fibre; the hours do not count it.",
    )


def preparing_waste(title: str = "Waste in carding or combing") -> Input:
    """Ask for the waste of preparing."""
    return _share(
        title,
        0.10,
        0.9,
        "By hand, carding often leaves 5 to 15% behind and combing 10 to 35% (common practice, no"
        " source).",
    )


def scouring_yield(title: str = "Clean wool from raw fleece") -> Input:
    """Ask for the scouring yield."""
    return Input(
        title,
        "share",
        0.5,
        low=0.2,
        high=0.95,
        step=0.01,
        measure="Washed weight of a sample over its raw weight. Raw wool of any kind holds 20 to"
        " 80% clean, about 50 in the mean (Wollner and Tanner, 1941).",
    )


def fleece() -> Pick:
    """Ask which published range of scouring yields to set beside the reader's own."""
    return Pick(
        "The fleece is of",
        {each.name: each.name for each in yields.FLEECES},
        measure="Gives the range of the raw fleece. The yield stays your own.",
    )


def wash_shrinkage() -> Input:
    """Ask what a skein loses of its length in the wash."""
    return _share(
        "The skein shrinks in its wash by",
        0,
        0.5,
        "Of its length: often 2 to 10%, woollen yarn more (common practice, no source).",
    )


def wash_loss() -> Input:
    """Ask what a skein loses of its weight in the wash."""
    return _share(
        "The skein loses in its wash", 0, 0.5, "Of its weight: oil, and grease left in the fibre."
    )


def grist_range() -> Input:
    """Ask how far the grist may be off."""
    return _share("My grist may be off, either way, by", 0.05, 0.5, _SURE)


def project_range() -> Input:
    """Ask for the doubt of the project's yards."""
    return _share(
        "The project may take more or less by",
        0.05,
        0.5,
        f"{_SURE} Knitters differ.",
    )


def yield_range() -> Input:
    """Ask for the doubt of the yields."""
    return _share(
        "What is left of the fibre may be off by",
        0.05,
        0.6,
        f"{_SURE} All stages together. With yields out of a table, 15% or more.",
    )


def spinning_speed(title: str = "I spin") -> Input:
    """Ask for the speed of spinning."""
    return Input(
        title,
        "speed",
        100,
        low=5,
        high=2000,
        measure="From a timed sample: the length of single spun in half an hour, doubled.",
    )


def plying_speed() -> Input:
    """Ask for the speed of plying."""
    return Input(
        "I ply",
        "speed",
        300,
        low=5,
        high=5000,
        measure="The length of yarn plied in half an hour, doubled.",
    )


def evening_hours() -> Input:
    """Ask for the hours of an evening."""
    return Input("Hours in an evening", "number", 2, low=0.25, high=12, step=0.25, measure="")


def bobbin_capacity() -> Input:
    """Ask what a bobbin holds."""
    return Input(
        "A bobbin holds",
        "mass",
        4 / 16,
        low=0.1 / 16,
        high=5,
        measure="Weigh one full, less the empty one. Singles and plied yarn are counted alike.",
    )


def _share(title: str, value: float, high: float, measure: str) -> Input:
    return Input(title, "share", value, low=0, high=high, step=0.005, measure=measure)

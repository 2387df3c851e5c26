"""What sheets ask alike of cuts on a balance; each sheet has an input of its own."""

from yarnsheets.page.inputs import Input
from yarnsheets.page.ways import FACTOR


def trimming() -> Input:
    """Ask how well a cut was trimmed and read."""
    return Input(
        "A cut’s length is right to within",
        "short",
        1 / 16,
        low=0.001,
        high=1,
        measure="The last bit trimmed off, or the finest mark of the ruler.",
    )


def stretch() -> Input:
    """Ask how far a cut was stretched or left slack."""
    return Input(
        "Stretched or slack while measured, at most",
        "share",
        0.005,
        low=0.0001,
        high=0.2,
        measure="Half a per cent is careful; a bouncy yarn may be several.",
    )


def balance_factor(
    measure: str = "The maker’s number: length of cut times this is grist.",
    *,
    title: str = FACTOR.title,
) -> Input:
    """Ask for a balance's factor, as a box for a grist does beside a cut."""
    return Input(
        title,
        FACTOR.dimension,
        FACTOR.default_value,
        low=FACTOR.low,
        high=FACTOR.high,
        measure=measure,
    )

"""What sheets ask alike of grist; each sheet has an input of its own."""

from yarnsheets.page.inputs import Input
from yarnsheets.published.sources import GRIST


def asked(title: str, value: float, measure: str) -> Input:
    """Ask for a grist that handspun yarn can have."""
    return Input(
        title,
        "grist",
        value,
        low=GRIST.low,
        high=GRIST.high,
        measure=measure,
        drawing="cut",
    )

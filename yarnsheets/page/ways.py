"""How a grist may be given: by itself, by a cut on a balance, or by yards of a known weight.

Every box for a grist takes all three. The page works the grist out, by the formulas below; a sheet
and a link know only the grist.
"""

from collections.abc import Callable, Mapping
from typing import Any

from yarnsheets import formulas
from yarnsheets.page.inputs import Asked, Input

FORMULAS: tuple[Callable[..., Any], ...] = (
    formulas.grist_from_cut,
    formulas.cut_from_grist,
    formulas.grist,
    formulas.length,
)

FACTOR = Input(
    "Balance factor", "factor", 100, low=5, high=5000, measure="The maker’s number, often 100."
)

ASKED: Mapping[str, Asked] = {
    "cut": Input(
        "It hangs level at", "short", 12, low=0.1, high=400, measure="The length of the cut."
    ),
    "factor": FACTOR,
    "length": Input(
        "Length", "length", 100, low=0.01, high=20000, measure="By turns of a reel, or a counter."
    ),
    "mass": Input("weighs", "mass", 1 / 16, low=0.0001, high=20, measure="Without its ties."),
}

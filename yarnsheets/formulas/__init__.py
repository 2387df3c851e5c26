"""The arithmetic of yarn, each formula written once."""

from yarnsheets.formulas.balance import (
    balance_factor,
    balance_factor_from_counterweight,
    counterweight,
    cut_from_grist,
    grist_from_cut,
)
from yarnsheets.formulas.basics import (
    grist,
    length,
    mass,
)
from yarnsheets.formulas.contraction import retraction, take_up_from_retraction
from yarnsheets.formulas.fibre import (
    fibre_needed,
    grist_for_fibre,
    length_from_fibre,
    overall_yield,
)
from yarnsheets.formulas.folding import (
    mass_share,
    missing_single_grist,
    plied_grist_unequal,
)
from yarnsheets.formulas.plying import (
    plied_grist,
    plied_length,
    ply_count,
    singles_grist,
    singles_length,
    take_up,
)
from yarnsheets.formulas.skein import (
    grist_from_skein,
    skein_circumference,
    skein_length,
    skein_turns,
)

__all__ = [
    "balance_factor",
    "balance_factor_from_counterweight",
    "counterweight",
    "cut_from_grist",
    "fibre_needed",
    "grist",
    "grist_for_fibre",
    "grist_from_cut",
    "grist_from_skein",
    "length",
    "length_from_fibre",
    "mass",
    "mass_share",
    "missing_single_grist",
    "overall_yield",
    "plied_grist",
    "plied_grist_unequal",
    "plied_length",
    "ply_count",
    "retraction",
    "singles_grist",
    "singles_length",
    "skein_circumference",
    "skein_length",
    "skein_turns",
    "take_up",
    "take_up_from_retraction",
]

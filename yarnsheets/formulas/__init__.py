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
from yarnsheets.formulas.diameter import (
    bulk_density_from_wraps,
    diameter_from_grist,
    diameter_from_wraps,
    grist_from_wraps,
    wraps_per_inch,
    wraps_per_inch_from_grist,
)
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
from yarnsheets.formulas.moisture import (
    blend_regain,
    content_from_regain,
    dry_mass,
    grist_at_regain,
    mass_at_regain,
    regain,
    regain_from_content,
)
from yarnsheets.formulas.plying import (
    plied_grist,
    plied_length,
    ply_count,
    singles_grist,
    singles_length,
    take_up,
)
from yarnsheets.formulas.sett import (
    ashenhurst_diameters,
    ashenhurst_factor,
    bulk_density_from_ashenhurst_factor,
    cloth_cover,
    grist_from_ashenhurst_diameters,
    sett_maximum,
)
from yarnsheets.formulas.skein import (
    grist_from_skein,
    skein_circumference,
    skein_length,
    skein_turns,
)

__all__ = [
    "ashenhurst_diameters",
    "ashenhurst_factor",
    "balance_factor",
    "balance_factor_from_counterweight",
    "blend_regain",
    "bulk_density_from_ashenhurst_factor",
    "bulk_density_from_wraps",
    "cloth_cover",
    "content_from_regain",
    "counterweight",
    "cut_from_grist",
    "diameter_from_grist",
    "diameter_from_wraps",
    "dry_mass",
    "fibre_needed",
    "grist",
    "grist_at_regain",
    "grist_for_fibre",
    "grist_from_ashenhurst_diameters",
    "grist_from_cut",
    "grist_from_skein",
    "grist_from_wraps",
    "length",
    "length_from_fibre",
    "mass",
    "mass_at_regain",
    "mass_share",
    "missing_single_grist",
    "overall_yield",
    "plied_grist",
    "plied_grist_unequal",
    "plied_length",
    "ply_count",
    "regain",
    "regain_from_content",
    "retraction",
    "sett_maximum",
    "singles_grist",
    "singles_length",
    "skein_circumference",
    "skein_length",
    "skein_turns",
    "take_up",
    "take_up_from_retraction",
    "wraps_per_inch",
    "wraps_per_inch_from_grist",
]

"""The one table of formula cases: what goes in, what must come out, and who says so.

Every expected value is exact, as the origin prints it or as it follows from definitions; values
that a book rounds are in test_published_tables.py. A formula holds in any consistent units, so a
count in hanks to the pound may stand where the docstring says yd/lb. The origin begins with one of
KINDS. Our own output is never evidence.
"""

import math
from dataclasses import dataclass
from typing import Any

from yarnsheets import formulas

KINDS = ("published", "hand-worked", "from memory", "common practice")

GRAINS = 7000  # to the pound
GRAMS = 453.59237  # to the pound

BROOKS = "published: C. P. Brooks, Cotton Manufacturing, 19th century, Wrapping"
DAVIS = "published: William Davis, Hosiery Manufacture, c. 1920, Example"
ACS = "published: American Correspondence School of Textiles, Calculations, Part IV, 1898"
JUTE = "published: Woodhouse and Kilgour, The Jute Industry, table of yarns"
APTITUDE_TEST = "published: Graduate Aptitude Test in Engineering, Textile Engineering,"
TAYLOR = (
    "published: J. T. Taylor, Cotton Weaving and Designing, 6th edition, p. 239 of an online copy"
)
D2118 = "published: ASTM D2118-18, moisture contents of wool as printed on its public page"
WORSTED_TEAR = (
    "published: Journal of the Textile Institute, Effect of Staple Strength on Worsted Processing,"
    " Part II, abstract"
)
WEAVER = "published: a weaver's own worked example"
DYER = "published: a dyer's own worked example"
EXACT = "hand-worked: exact definitions,"


@dataclass(frozen=True)
class Case:
    """One row: a tuple among the arguments is a sequence of singles or of stages."""

    name: str
    args: tuple[Any, ...]
    expected: float
    origin: str

    def formula(self, *args: Any) -> Any:
        return getattr(formulas, self.name)(*args)

    def __str__(self) -> str:
        return f"{self.name}{self.args}"


# fmt: off
CASES = [
    # grist
    Case("grist", (120.0, 25 / GRAINS), 40 * 840.0, f"{BROOKS}: 120 yd of 25 grains is 40s"),
    Case("grist", (20.0, 10 / GRAINS), 25 * 560.0, f"{DAVIS} 1: 20 yd of 10 grains is 25s worsted"),
    Case("grist", (150.0, 56.7 / GRAMS), 1199.97981481481481, f"{EXACT} 150 * 453.59237 / 56.7"),
    Case("length", (3.0, 24 * 560.0), 40320.0, f"{DAVIS} 10: 3 lb of 2/48 worsted"),
    Case("length", (1 / 64, 60 * 840.0), 787.5, f"{DAVIS} 10: 1/4 oz of 60/2 spun silk"),
    Case("mass", (8800.0, 5.5 * 1600), 1.0, f"{ACS}: 8800 yd of 5 1/2 run is 16 oz"),
    Case("mass", (5250.0, 3 * 1600.0), 17.5 / 16, f"{ACS}: 5250 yd of 3 run is 17 1/2 oz"),
    Case("mass", (9240.0, 44 * 840.0), 0.25, f"{BROOKS}: 9240 yd of 44s is 1/4 lb"),
    Case("grist_from_cut", (10.0, 100.0), 1000.0, "common practice: inches times 100"),
    Case("cut_from_grist", (2060.0, 100.0), 20.6, "common practice: inches times 100"),
    Case("balance_factor", (1200.0, 12.0), 100.0, "common practice: inches times 100"),
    Case("counterweight", (3600.0,), 35 / 18 / GRAINS, f"{EXACT} 7000 / 3600 grains"),
    Case("balance_factor_from_counterweight", (0.1 / GRAMS,), 4535.9237, f"{EXACT} 0.1 g"),
    Case("skein_length", (120.0, 2.5), 300.0, f"{JUTE}: a cut is 120 turns of 2 1/2 yd"),
    Case("skein_length", (80.0, 1.5), 120.0, f"{BROOKS}: a lea is 80 turns of 1 1/2 yd"),
    Case("skein_turns", (120.0, 1.5), 80.0, f"{BROOKS}: a lea is 80 turns of 1 1/2 yd"),
    Case("skein_turns", (450.0, 1.125), 400.0, "from memory: silk reel, 400 turns of 1.125 m"),
    Case("skein_circumference", (300.0, 120.0), 2.5, f"{JUTE}: a cut is 120 turns of 2 1/2 yd"),
    Case("grist_from_skein", (80.0, 1.5, 25 / GRAINS), 33600.0, f"{BROOKS}: a lea of 25 grains"),
    Case("grist_from_skein", (100.0, 1.5, 56.7 / GRAMS), 1199.97981481481481,
         f"{EXACT} 100 turns of 54 in weigh 56.7 g"),
    # plying
    Case("plied_grist", (40.0, 2.0, 1.0), 20.0, f"{TAYLOR}: 2/40s is twofold of 20 hanks"),
    Case("plied_grist", (2400.0, 2.0, 1.05), 8000 / 7, f"{EXACT} 2400 / 2.1"),
    Case("singles_grist", (16.0, 2.0, 1.10), 35.2, f"{APTITUDE_TEST} 1992, question 3"),
    Case("singles_grist", (1000.0, 3.0, 1.04), 3120.0, f"{EXACT} 1000 * 3 * 1.04"),
    Case("take_up", (35.2, 16.0, 2.0), 1.10, f"{APTITUDE_TEST} 1992, question 3, backwards"),
    Case("ply_count", (35.2, 16.0, 1.10), 2.0, f"{APTITUDE_TEST} 1992, question 3, backwards"),
    Case("plied_grist_unequal", ((60.0, 40.0), (1.0, 1.0)), 24.0, f"{DAVIS} 27"),
    Case("plied_grist_unequal", ((60.0, 40.0), (1.0, 1.0)), 24.0, f"{TAYLOR}: 60s with 40s"),
    Case("plied_grist_unequal", ((40.0, 20.0), (1.0, 1.0)), 40 / 3, f"{BROOKS}: 13 1/3"),
    Case("plied_grist_unequal", ((64.0, 48.0, 32.0), (1.0, 1.0, 1.0)), 14 + 10 / 13, f"{DAVIS} 30"),
    Case("plied_grist_unequal", ((40.0, 30.0, 12.0), (1.25, 1.5, 2.25)), 1 / 0.26875,
         f"{EXACT} 1.25/40 + 1.5/30 + 2.25/12"),
    Case("missing_single_grist", (24.0, (60.0,), (1.0,), 1.0), 40.0, f"{DAVIS} 27, backwards"),
    Case("missing_single_grist", (12.0, (60.0,), (1.0,), 1.0), 15.0, f"{DAVIS} 45"),
    Case("missing_single_grist", (1 / 0.26875, (40.0, 30.0), (1.25, 1.5), 2.25), 12.0,
         f"{EXACT} 1.25/40 + 1.5/30 + 2.25/12, backwards"),
    Case("mass_share", (60.0, 1.0, 12.0), 1 / 5, f"{DAVIS} 45"),
    Case("mass_share", (35.0, 1.0, 13.125), 0.375, f"{DAVIS} 33: 37 1/2 %"),
    Case("singles_length", (100000.0, 1.0, 1.06), 106000.0, f"{APTITUDE_TEST} 2014, question 37"),
    Case("singles_length", (400.0, 3.0, 1.05), 1260.0, f"{EXACT} 400 * 3.15"),
    Case("plied_length", (106000.0, 1.0, 1.06), 100000.0, f"{APTITUDE_TEST} 2014, question 37"),
    Case("plied_length", (1260.0, 3.0, 1.05), 400.0, f"{EXACT} 1260 / 3.15"),
    Case("take_up_from_retraction", (0.10,), 10 / 9, f"{EXACT} 1 / (1 - 1/10)"),
    Case("retraction", (1.10,), 1 / 11, f"{EXACT} 1 - 10/11"),
    # fibre
    Case("overall_yield", ((110 / 135, 95 / 110),), 19 / 27,
         f"{EXACT} 135 g of fibre leave 110 g of yarn, 95 g when washed"),
    Case("overall_yield", ((0.95, 0.90, 0.60),), 0.513, f"{EXACT} 0.95 * 0.90 * 0.60"),
    Case("fibre_needed", (1200.0, 1000.0, (0.95, 0.90, 0.60)), 1.2 / 0.513, f"{EXACT} 1.2 / 0.513"),
    Case("length_from_fibre", (2.0, 1000.0, (0.95, 0.90, 0.60)), 1026.0, f"{EXACT} 2000 * 0.513"),
    Case("grist_for_fibre", (1026.0, 2.0, (0.95, 0.90, 0.60)), 1000.0, f"{EXACT} 1026 / 1.026"),
    # moisture
    Case("regain", (116.0, 100.0), 0.16, f"{EXACT} 16 g of water to 100 g dry"),
    Case("regain_from_content", (0.12,), 3 / 22, f"{D2118}: scoured wool, 12/88"),
    Case("regain_from_content", (0.1304,), 163 / 1087, f"{D2118}: worsted yarn, 13.04/86.96"),
    Case("content_from_regain", (0.136,), 17 / 142, f"{EXACT} 13.6 / 113.6"),
    Case("dry_mass", (116.0, 0.16), 100.0, f"{EXACT} 116 / 1.16"),
    Case("dry_mass", (100.0, 1 / 24), 96.0, f"{EXACT} a content of 4 % leaves 96 dry of 100"),
    Case("mass_at_regain", (100.0, 0.09, 0.136), 11360 / 109, f"{EXACT} 100 * 113.6 / 109"),
    Case("mass_at_regain", (100.0, 1 / 24, 0.03073), 98.95008, f"{EXACT} 96 * 1.03073"),
    Case("grist_at_regain", (1000.0, 0.09, 0.16), 1000 * 109 / 116, f"{EXACT} 1000 * 1.09 / 1.16"),
    Case("blend_regain", ((0.5, 0.25, 0.25), (0.17, 0.11, 0.11)), 0.14,
         f"{APTITUDE_TEST} 2007, question 70: wool, silk and viscose"),
    Case("blend_regain", ((0.67, 0.33), (0.004, 0.085)), 0.03073, f"{EXACT} 0.00268 + 0.02805"),
    # diameter, as wrapped
    Case("wraps_per_inch", (24.0, 2.0), 12.0, f"{EXACT} 24 turns in 2 in"),
    Case("diameter_from_wraps", (12.5,), 0.08, f"{EXACT} 1 / 12.5"),
    Case("diameter_from_grist", (400.0, 1 / math.pi), 0.1, f"{EXACT} the root of 4 / 400"),
    Case("wraps_per_inch_from_grist", (400.0, 1 / math.pi), 10.0, f"{EXACT} the root of 400 / 4"),
    Case("grist_from_wraps", (10.0, 1 / math.pi), 400.0, f"{EXACT} 4 * 100"),
    Case("bulk_density_from_wraps", (10.0, 400.0), 1 / math.pi, f"{EXACT} 100 * 4 / (pi * 400)"),
    # diameter in cloth
    Case("ashenhurst_diameters", (3600.0, 0.9), 54.0, f"{EXACT} 0.9 * 60"),
    Case("grist_from_ashenhurst_diameters", (54.0, 0.9), 3600.0, f"{EXACT} 60 * 60"),
    Case("ashenhurst_factor", (4 / math.pi,), 1.0, f"{EXACT} a rod of unit diameter"),
    Case("bulk_density_from_ashenhurst_factor", (0.9,), 3.24 / math.pi, f"{EXACT} 4 * 0.81 / pi"),
    Case("sett_maximum", (156.0, 4.0, 2.0), 104.0, f"{TAYLOR}: 32s cotton in a 2/2 twill"),
    Case("sett_maximum", (54.0, 2.0, 2.0), 27.0, f"{EXACT} half the diameters in plain weave"),
    Case("cloth_cover", (28.0, 0.015, 28.0, 0.015), 0.6636, f"{APTITUDE_TEST} 2007, question 85"),
    # planning
    Case("share_left", (0.05,), 0.95, f"{EXACT} 1 - 0.05"),
    Case("noil_share", (9.4,), 5 / 52, f"{WORSTED_TEAR}: 9.4 to 1, share exact"),
    Case("noil_share", (13.5,), 2 / 29, f"{WORSTED_TEAR}: 13.5 to 1, share exact"),
    Case("washed_grist", (1200.0, 0.92, 0.95), 22080 / 19, f"{EXACT} 1200 * 0.92 / 0.95"),
    Case("unwashed_grist", (22080 / 19, 0.92, 0.95), 1200.0, f"{EXACT} 1200 * 0.92 / 0.95, back"),
    Case("length_before_loss", (920.0, 0.08), 1000.0, f"{EXACT} 920 / 0.92"),
    Case("hours", (2060.0, 100.0), 20.6, f"{EXACT} 2060 / 100"),
    Case("cost", (6.0, 12.5), 75.0, f"{EXACT} 6 * 12.50"),
    Case("cost_per_length", (75.0, 1200.0), 0.0625, f"{EXACT} 75 / 1200"),
    # weaving
    Case("length_before_loss", (10.0, 0.2), 12.5, "published: an article of a regional"
         " handweavers' conference, 10 in with 20 % shrinkage"),
    Case("warp_length", (72.0, 0.1, 2.0, 6.0, 24.0), 190.0, f"{EXACT} 2 * 80 + 6 + 24"),
    Case("thread_count", (24.0, 22.0), 528.0, f"{WEAVER}: 22 in at 24 to the inch"),
    Case("thread_count", (48.0, 48.0), 2304.0, f"{WEAVER}: 48 in at 48 to the inch"),
    Case("yarn_in_threads", (528.0, 4.0), 2112.0, f"{WEAVER}: 528 ends of 4 yd"),
    Case("yarn_in_threads", (2304.0, 7.5), 17280.0, f"{WEAVER}: 2304 ends of 7 1/2 yd"),
    Case("crimp", (12.5, 10.0), 0.25, f"{EXACT} 12.5 / 10 - 1"),
    Case("cloth_mass_per_area", (4000.0, 1000 / 30, 0.10, 3000.0, 1000 / 20, 0.10), 198.0,
         f"{APTITUDE_TEST} 2009, question 37: 132 and 66 g to the square metre"),
    # section
    Case("fibre_linear_density", (2.0, 1.0, 0.5), 1.25 * math.pi, f"{EXACT} pi * 4 / 4 * 1.25"),
    Case("fibres_in_section", (20.0, 0.0005), 100.0,
         f"{APTITUDE_TEST} 2021, question 53: 50 tex of 4.5 denier, in kilometres to the gram"),
    Case("finest_grist", (40.0, 0.0005), 50.0, f"{EXACT} 1 / (40 * 0.0005)"),
    Case("limit_irregularity", (125.0, 0.25), 0.1, f"{EXACT} the root of 1.25 / 125"),
    Case("irregularity_index", (0.125, 0.1), 1.25, f"{APTITUDE_TEST} 2021, question 53"),
    # dyeing
    Case("lot_weight", (1000.0, 0.1, 4.0), 275.0, f"{EXACT} 1100 / 4"),
    Case("mass_on_fibre", (454.0, 0.02), 9.08, f"{EXACT} 2 % of 454 g"),
    Case("stock_volume", (454.0, 0.01, 0.01), 454.0, f"{DYER}: 454 g, 1 % depth, 1 % stock"),
    Case("stock_volume", (454.0, 0.02, 0.01), 908.0, f"{DYER}: 454 g, 2 % depth, 1 % stock"),
    Case("stock_volume", (100.0, 0.05, 0.01), 500.0, f"{DYER}: 100 g, 5 % depth, 1 % stock"),
    Case("bath_volume", (250.0, 40.0), 10000.0, f"{EXACT} 40 mL to the gram"),
    # shapes
    Case("share_made", (0.5, 10.0, 10.0), 0.5, f"{EXACT} a rectangle"),
    Case("share_made", (0.5, 1.0, 3.0), 0.375, f"{EXACT} 0.5 * (2 + 2 * 0.5) / 4"),
    Case("rows_done", (0.375, 1.0, 3.0), 0.5, f"{EXACT} share_made, back"),
    Case("stitches_in_rows", (7.0, 2.0, 10.0), 160.0, f"{EXACT} 7 + 9 + 11 and so on to 25"),
    Case("stitches_in_rows", (6.0, 6.0, 20.0), 1260.0, f"{EXACT} 6 + 12 and so on to 120"),
    Case("similar_size", (96.0, 300 / 900), 96 / math.sqrt(3), f"{EXACT} 96 over the root of 3"),
    # twist
    Case("twist_tangent", (0.02, 25 / math.pi), 0.5, f"{EXACT} a turn is pi * 0.02 round"),
    Case("twist_for_tangent", (0.5, 0.02), 25 / math.pi, f"{EXACT} a turn is pi * 0.02 round"),
    Case("twist_multiplier", (15.0, 36.0), 2.5, "published: an examination question, 36s cotton"),
    Case("twist_from_multiplier", (2.5, 36.0), 15.0, f"{EXACT} 2.5 * 6"),
    Case("length_per_treadle", (10.0, 4.0), 2.5, f"{EXACT} 10 / 4"),
    Case("treadles_for_twist", (4.0, 30.0, 10.0), 12.0, f"{EXACT} 120 turns at 10 to a treadle"),
    Case("twist_from_treadles", (12.0, 10.0, 30.0), 4.0, f"{EXACT} 120 turns in 30 in"),
    # plied_twist
    Case("twist_take_up", (3**-0.5,), 0.5 + 3**-0.5, f"{EXACT} 30 degrees, secant 2 / root of 3"),
    Case("helix_take_up", (1.0,), 2**0.5, f"{EXACT} 45 degrees"),
    Case("residual_twist", (6.0, 4.0, 1.0), 4.0, f"{EXACT} 45 degrees, half of the ply twist"),
    Case("plying_take_up", (1.0625, 1.025, 1.0625), 1.025, f"{EXACT} one undoes the other"),
    Case("plying_take_up", (1.0, 1.0, 1.06), 1.06,
         f"{APTITUDE_TEST} 2014, question 37: contraction by 1.06 alone"),
    Case("ply_twist_same_multiplier", (9.0, 9.0), 3.0, f"{EXACT} 9 / 3"),
    # knitting
    Case("loop_length", (4.0, 6.0, 24.0), 1.0, f"{EXACT} the root of 24 / 24"),
    Case("loops_per_area", (5.5, 4.2, 0.5), 92.4, f"{APTITUDE_TEST} 2015, question 54; exact"),
    Case("yarn_per_area", (4.0, 9.0, 25.0), 30.0, f"{EXACT} the root of 25 * 36"),
    Case("yarn_per_area_by_one_gauge", (5.0, 6.0), 30.0,
         "common practice: length times width times stitches to the inch over 6 yd, 36 / 6"),
    Case("tightness_factor", (1 / 400, 2.0), 10.0, f"{EXACT} the root of 400 tex over 2 cm"),
    Case("stitch_factor", (36.0, 24.0), 1.5, f"{EXACT} 36 / 24"),
    Case("mass_from_swatch", (0.05, 25.0, 1000.0), 2.0, f"{EXACT} 0.05 * 1000 / 25"),
    Case("knitting_mass", (28.0, 48.0, 200.0, 1.75, 20 * 560.0), 42.0, f"{DAVIS} 14"),
    Case("knitting_mass", (24.0, 60.0, 320.0, 1.75, 40 * 840.0), 24.0, f"{DAVIS} 16: silk"),
    Case("knitting_mass", (18.0, 56.0, 72.0, 2.5, 9 * 840.0), 24.0, f"{DAVIS} 17, backwards"),
    # outline
    Case("trapezoid_area", (13.0, 8.0, 18.0), 189.0, f"{EXACT} 10.5 * 18"),
    Case("circle_area", (2.0,), math.pi, f"{EXACT} a circle of radius 1"),
]
# fmt: on

"""The folded answers of the worksheets, each with the inputs that its exercise has the reader set.

An answer is held to its sheet by slots: each, filled by the sheet with those inputs, must stand in
the answer's text. `beside` are the numbers in the text that are not the sheet's: of the question,
or of a sum spelt out. So every number of every answer is in this table. `claim` is what the answer
says in words of the sheets, in the order of the cases. An answer that has neither says in `words`
why.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from yarnsheets.shelf.invented import SHELF

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

OZ = 1 / 16
G = 1 / 453.59237  # NIST Handbook 44

ODDMENT = [dict(skein) for skein in SHELF]
ODDMENT[8] |= {"weight": 3.4 * OZ, "wraps": 16}
MARSH_4 = [dict(skein) for skein in SHELF]
MARSH_4[3] |= {"cuts": [11.2]}
METRIC = {"measure": "metres, grams"}
MORE_CUTS = [12.1, 12.6, 12.3, 12.8, 12.2, 12.5, 12.4, 12.2, 12.6, 12.3]
SPUN_CUTS = [
    *(10.6, 10.2, 10.9, 10.4, 10.7, 10.3, 10.5, 10.1, 10.4, 9.9, 10.6, 10.2),
    *(9.8, 10.3, 9.7, 10.0, 9.9, 10.0, 9.9, 9.4, 9.8, 9.5, 9.7, 9.3),
]
WILD_CUTS = [*SPUN_CUTS[:-1], 12]
FIVE_CUTS = [9.6, 10.1, 10.4, 9.8, 10.6]
OUR_CUTS = [
    *[(1, 9.6), (2, 10.2), (3, 10.9), (4, 9.9), (1, 10.1), (2, 9.8), (3, 11.2), (4, 10.0)],
    *[(1, 9.9), (2, 10.4), (3, 10.7), (4, 10.4), (1, 10.3), (2, 9.7), (3, 11.0), (4, 9.6)],
]
SEVERAL = {
    "first": [120, 215, 340, 410, 560, 800, 1150, 1620],
    "second": [126, 222, 351, 430, 570, 846, 1180, 1715],
}
SKEIN_DRAWN = {"kind": "skein", "draw": 3}
FLEECE_DRAWN = {"kind": "fleece", "draw": 3}
ROWS_DRAWN = {"kind": "last", "draw": 3}
TRIANGLE = {"made_width": 96, "made_depth": 42, "made_weight": 9 * OZ, "reserve": 0}
SCARF = {
    "shape": "steady",
    "made_width": 8,
    "made_depth": 40,
    "made_weight": 4 * OZ,
    "weight": 6 * OZ,
}
BLANKET = {
    "outline": "rectangle",
    "around": 25,
    "piece_length": 40,
    "gauge_stitches": 5,
    "gauge_rows": 7,
    "reserve": 0,
}
GARTER = {**BLANKET, "stitch": "garter"}
SWATCH = {"known_by": "swatch", "swatch_width": 6, "swatch_length": 6, "swatch_weight": 0.5 * OZ}
DYE = {**METRIC, "weight": 454 * G, "pot_holds": 500 * G, "depth": 0.01, "strength": 1}
TO_DYE = {**DYE, "weight": 1100 * G, "pot_holds": 1200 * G, "depth": 0.02, "strength": 1.5}


@dataclass(frozen=True)
class Case:
    """A sheet with some inputs, and what of it stands in the answer."""

    given: Mapping[str, Any]
    slots: tuple[str, ...] = ()
    holds: tuple[str, ...] = ()


@dataclass(frozen=True)
class Answer:
    """An answer of a worksheet, by its number."""

    cases: tuple[Case, ...] = ()
    beside: tuple[str, ...] = ()
    claim: Callable[..., bool] | None = None
    words: str = ""


def case(given: Mapping[str, Any], *slots: str, holds: str = "") -> Case:
    """Write a case: inputs, slots, and the flags that hold, "not" before one that must not."""
    return Case(given, slots, tuple(filter(None, holds.split(", "))))


def answer(*cases: Case, beside: str = "", claim: Callable[..., bool] | None = None) -> Answer:
    """Write an answer that is held to its sheet."""
    return Answer(cases, tuple(beside.split()), claim)


def in_words(why: str) -> Answer:
    """Write an answer that cannot be."""
    return Answer(words=why)


ANSWERS: Mapping[str, tuple[Answer, ...]] = {
    "can-i-work-it-out": (
        answer(
            case({**SKEIN_DRAWN, "answer_length": 1920}, "{answer_length}", holds="is_wrong"),
            case({**SKEIN_DRAWN, "answer_length": 120}, "{right_length}", holds="is_right"),
            beside="3.2 0.2",
        ),
        answer(
            case({**FLEECE_DRAWN, "answer_mass": 38.2 * OZ}, "{answer_mass}", holds="is_wrong"),
            case({**FLEECE_DRAWN, "answer_mass": 35.3 * OZ}, "{right_mass}", holds="is_right"),
            beside="15% 0.7 0.85 0.595",
        ),
        answer(
            case({**ROWS_DRAWN, "answer_rows": 186}, "{right_rows}", holds="is_right"),
            case({**ROWS_DRAWN, "answer_rows": 238}, "{answer_rows}", holds="is_wrong"),
            beside="52",
        ),
    ),
    "what-is-grist": (
        answer(
            case({"grist": 600}, "{found_length}"),
            case({"grist": 1200}, "{found_length}"),
            beside="1.4",
            claim=lambda half, all_of_it: (
                1.4 < half.strands[1]["thick"] / all_of_it.strands[1]["thick"] < 1.42
            ),
        ),
        answer(
            case(
                {"step": "skein", "cut": 9, "weight": 4 * OZ, "shown": "yes"},
                "{found_grist}",
                "{weight}",
                "{found_length}",
            )
        ),
        answer(case({"step": "wraps", "shown": "yes"}, "{found_length}"), beside="800"),
    ),
    "do-two-methods-agree": (
        answer(
            case({}),
            case({"second": [398, 410, 402, 394, 425]}, "{chance}", holds="not is_apart"),
            claim=lambda before, after: (
                float(after.difference.split("%")[0]) < float(before.difference.split("%")[0])
            ),
        ),
        answer(case({"first": [412, 405], "second": [398, 410]}, "{difference_range}")),
        answer(
            case({**SEVERAL, "situation": "share"}, "{difference}", "{next_range}"),
        ),
        answer(
            case({**SEVERAL, "situation": "plain"}),
            beside="104 48",
            claim=lambda sheet: sheet.next_range == "104 less and 48 more",
        ),
    ),
    "how-far-off-is-my-counter": (
        answer(
            case({"known": [100, 200, 300], "shown": [95, 190, 285]}, "{factor:4}", "{off:1}"),
            beside="100 95",
        ),
        answer(
            case(
                {"reading": 400},
                "{yards}",
                "{yards_low!} and {yards_high!}",
                "{reading!}",
                "{longest}",
                holds="not is_beyond",
            ),
            case({"reading": 450}, "{reading!}", holds="is_beyond"),
        ),
        answer(
            case({"shown": [482, 95.1, 144, 190.5, 288]}),
            claim=lambda sheet: "decimal point" in sheet.sentence and bool(sheet.warnings),
        ),
        answer(
            case({"known_within": 0.03}),
            case(
                {
                    "known_within": 0.03,
                    "known": 2 * [50, 100, 150, 200, 300],
                    "shown": 2 * [48.2, 95.1, 144, 190.5, 288],
                }
            ),
            claim=lambda five, ten: (
                0.8 < (ten.factor_high - ten.factor_low) / (five.factor_high - five.factor_low) < 1
            ),
        ),
    ),
    "how-many-yards": (
        answer(
            case(
                {"grist": 1200, "weight": 3 * OZ, "project": 200},
                "{grist} and {weight} make {yards}",
                "{spare} to spare",
                holds="is_enough",
            )
        ),
        answer(
            case({"grist": 1200, "weight": 3 * OZ}, "{yards}"),
            case({"grist": 1200, "weight": 3 * OZ, "plies": 2}, "{yards}", "{take_up}"),
            beside="5",
            claim=lambda single, plied: plied.yards * 2 * 1.05 == single.yards,
        ),
        answer(
            case(
                {"weight": 8 * OZ, "project": 600, "plies": 3},
                "{project} from {weight} is a yarn of {grist_needed}",
                "{take_up}",
                "{strand_needed}",
            )
        ),
    ),
    "how-much-twist-does-it-want": (
        answer(
            case(
                {"grist": 600, "twist": 3},
                "{twist}",
                "{grist!}",
                "twist {twist!}",
                "{slant:2} degrees",
            )
        ),
        answer(case({}, "{take_up:4}", "{helix:4}"), beside="1"),
        answer(
            case(
                {"ratio": 9, "treadles": 5, "draft": 15},
                "{counted}",
                "{treadles} × {ratio} ÷ {draft!}",
            )
        ),
        answer(case({"plies": 3}, "{take_up:4}")),
    ),
    "how-sure-is-the-grist": (
        answer(
            case({}),
            case({"cuts": [*FIVE_CUTS, 10.2]}),
            claim=lambda five, six: six.half_width < five.half_width and six.student < five.student,
        ),
        answer(
            *(case({"stretch": 0.03, "cuts": times * FIVE_CUTS}) for times in (1, 2, 4)),
            claim=lambda few, more, many: (
                few.half_width - more.half_width > more.half_width - many.half_width > 0
                and many.half_width > 0.03
            ),
        ),
        answer(case({"wanted": 0.1}, "{wanted}", holds="is_reached")),
        answer(
            case({"cuts": [9.6]}, "{usual_spread}", "{grist_low!} and {grist_high}", holds="is_one")
        ),
    ),
    "is-my-balance-right": (
        answer(
            case(
                {"weighings": [0.126]},
                "{balance_factor!}",
                "{factor_low!} and {factor_high!}",
                holds="is_within",
            )
        ),
        answer(
            case({}),
            case({"way": "yarn"}),
            claim=lambda weighed, tried: 2 < tried.half_width / weighed.half_width < 3,
        ),
        answer(
            case({"way": "yarn", "cuts": MORE_CUTS}),
            claim=lambda sheet: "grist" in sheet.worst,
        ),
        answer(
            case({"balance_factor": 97}, "{balance_factor!}", holds="is_within"),
            case({"balance_factor": 97, "way": "yarn"}, holds="is_within"),
        ),
    ),
    "is-my-grist-drifting": (
        answer(
            case({}, "{tolerance}"),
            beside="1 5.1",
            claim=lambda sheet: sheet.off_target.startswith("bobbin 1 is 5.1% finer"),
        ),
        answer(
            case({}, holds="is_drifting"),
            case({"cuts": WILD_CUTS}, holds="not is_drifting"),
            claim=lambda steady, wild: (
                steady.finer_limit < 0 < wild.finer_limit
                and wild.signals.count("24") == 2
                and wild.signals.endswith("cuts 15 to 23 are thicker than the mean")
            ),
        ),
        answer(
            case({"cuts": [*SPUN_CUTS, 10, 10.1, 9.9, 10.2, 9.8, 10], "bobbins": [6] * 5}),
            beside="5",
            claim=lambda sheet: sheet.pairing.endswith(" and 5 with itself"),
        ),
    ),
    "is-this-enough": (
        answer(
            case({}, "{chance:2!}"),
            case({"grist_range": 0.03}, "{times}"),
            case({"project_range": 0.05}, "{project_range}", "{chance:2!}"),
        ),
        answer(
            case({"safety": 0.99}, "{more:2^}", "{more_weight:2^}"),
            case({}, "{more:2^} for {safe_times} times of 100"),
            claim=lambda surer, sure: surer.more > 2 * sure.more,
        ),
        answer(
            case({"need_by": "swatch", "project_area": 1500}, "{times}"),
            case({"need_by": "swatch", "project_area": 1500, "grist_range": 0.12}, "{times}"),
            claim=lambda before, after: (
                after.at_hand_high - after.at_hand_low > before.at_hand_high - before.at_hand_low
            ),
        ),
    ),
    "what-do-our-cuts-say": (
        answer(
            case({}, "{odd_by:2}", "{odd}", holds="is_odd_high"),
            case({"left_out": 3}, "{grist}", holds="is_alike"),
        ),
        answer(case({"tolerance": 0.05}, "{from_balances}")),
        answer(
            case({"cuts": [(1, 96), *OUR_CUTS[1:]]}, "{far}", "{count}", holds="has_far"),
        ),
    ),
    "what-do-wraps-tell-of-grist": (
        answer(
            case({"grist": 500}, "{density} g/cm³", holds="is_usual"),
            case({}, "{density}", holds="is_usual"),
            claim=lambda his, mine: his.density == 2 * mine.density,
        ),
        answer(case({"grist": 100}, "{density:2} g/cm³", holds="is_impossible")),
        answer(
            case({"wraps": 48, "grist": 4000}, "{grist}", "{wraps} wraps", "{covered}", "{grist!}"),
            case({}, "{density} g/cm³"),
            claim=lambda finer, mine: (
                abs(finer.density - mine.density) < 1e-9
                and finer.diameter == mine.diameter / 2
                and finer.grist == 4 * mine.grist
            ),
        ),
        answer(
            case({"stitches": [22]}, "{stitch_count} is {category} only"),
            case({"stitches": [24]}, "{stitch_count} is {category}"),
        ),
    ),
    "what-does-a-weighed-skein-say": (
        answer(
            case(
                {"turns": 20, "gross": 0.4 * OZ},
                "{half_width:1}",
                "{grist_low!} and {grist_high}",
            )
        ),
        answer(
            case({"weighing": "twice", "gross": 2.07 * OZ, "tare": 0.07 * OZ}, "{enough} turns"),
            case({}, "{enough}"),
        ),
        answer(
            case({"scale_step": 0.005 * OZ}, "{enough} turns", "{wanted}", "{turns} turns"),
            claim=lambda sheet: sheet.worst == "the circumference" and sheet.worst_share > 0.5,
        ),
        answer(
            case({"build_up": 1 / 16}, "{last_turn_longer}", "{yards:4}"),
            case({}, "{yards}"),
        ),
    ),
    "what-does-damp-air-change": (
        answer(
            case({"humidity_now": 0.3, "humidity_then": 0.8}, "{grist_then}"),
            claim=lambda sheet: 1.095 < sheet.weight_then / sheet.weight < 1.105,
        ),
        answer(
            case(
                {"now_by": "regain", "water_now": 0.09, "then_by": "regain", "water_then": 0.16},
                "{grist_then}",
            )
        ),
        answer(case({"now_by": "content", "water_now": 0.12}, "{regain_now}")),
        answer(
            *(
                case({"now_by": "regain", "water_now": 0.09, "invoice": by}, "{invoice_weight:4}")
                for by in ("astm", "combed")
            )
        ),
    ),
    "what-does-knitting-take": (
        answer(case(BLANKET, "{yards}")),
        answer(
            case(BLANKET, "{by_stitches}", "{by_rows}", "{own_rows}", "{usual_rows}"),
        ),
        answer(
            case(GARTER, "{yards_low!~} and {yards_high~}"),
            beside="1.35 1.46",
        ),
        answer(
            case({**GARTER, **SWATCH}, "{yards~}", "{swatch_factor}"),
        ),
    ),
    "what-does-the-dye-lot-take": (
        answer(
            case(DYE, "{all_stock}"),
            case({**DYE, "depth": 0.02}, "{all_stock}", "{depth}"),
        ),
        answer(case(TO_DYE, "{all_stock}")),
        answer(
            case({**TO_DYE, "pot_holds": 400 * G}, "{lots} lots of {lot_weight}"), beside="400 300"
        ),
        answer(case({**DYE, "parts": [60, 30, 10]}, "{stock_1!}, {stock_2!} and {stock_3}")),
        answer(
            case(
                {**DYE, "recipe_by": "own", "water_now": 0.09, "water_used": 0.16},
                "{lot_fibre}",
                "{wet_used} ÷ {wet_now}",
                "{all_stock}",
            ),
            beside="6.4",
            claim=lambda sheet: round(100 * (sheet.wet_used / sheet.wet_now - 1), 1) == 6.4,
        ),
    ),
    "what-does-this-ball-make": (
        answer(
            case({**TRIANGLE, "weight": 3 * OZ}, "{new_width!} by {new_depth}"),
            claim=lambda sheet: (
                abs(sheet.ratio - 1 / 3) < 1e-9 and sheet.growth == sheet.ratio**0.5
            ),
        ),
        answer(
            case({**TRIANGLE, "weight": 36 * OZ}, "{weight}"),
            claim=lambda sheet: sheet.growth == 2,
        ),
        answer(
            case({**SCARF, "reserve": 0}, "{new_depth}"),
            case({**SCARF, "reserve": 0.05}, "{new_depth}", "{reserve}"),
        ),
    ),
    "what-does-this-spin-take": (
        answer(
            case({}),
            case({"plies": 3}),
            claim=lambda two, three: (
                abs(three.spinning_hours / two.spinning_hours - 1.5) < 1e-9
                and three.needed == two.needed
                and three.singles_grist > two.singles_grist
            ),
        ),
        answer(
            case({}),
            case({"buying": "raw"}),
            claim=lambda prepared, raw: (
                raw.needed > 2 * prepared.needed
                and raw.scouring_yield == 0.5
                and raw.preparing_waste == 0.1
            ),
        ),
        answer(
            case(
                {
                    "buying": "raw",
                    "project": 1000,
                    "grist_wanted": 1000,
                    "reserve": 0,
                    "scouring_yield": 0.6,
                },
                "{needed@lb}",
            ),
            beside="1 0.95 0.90 0.60 2.22",
            claim=lambda sheet: (
                (sheet.spinning_waste, sheet.preparing_waste, sheet.scouring_yield)
                == (0.05, 0.1, 0.6)
                and round(1 / (1 - 0.05 - 0.1 - 0.4), 2) == 2.22
            ),
        ),
    ),
    "what-does-weaving-take": (
        answer(
            case(
                {"width_shrinkage": 0.2, "draw_in": 0},
                "{reed_width}",
                "{added_width}",
                "{added_finish}",
            )
        ),
        answer(
            case({}, "{warp_yards} for one"),
            case({"pieces": 2}, "{warp_yards} for two"),
            beside="333 856",
            claim=lambda one, two: (
                (f"{two.warp_yards - one.warp_yards:.0f}", f"{2 * one.warp_yards:.0f}")
                == ("333", "856")
            ),
        ),
        answer(
            case({}, "{weft_weight}"),
            case(
                {"weft_yarn": "other", "weft_grist": 2400},
                "{weft_stock}",
                "{weft_weight}",
                "{warp_weight}",
            ),
        ),
        answer(
            case({"ends_per_inch": 20}, "{closest_warp}", holds="is_close_warp"),
        ),
    ),
    "what-is-on-my-shelf": (
        answer(
            case({"project": 400}, "{chosen_names}", "{chosen_yards:4}", "{left}"),
            beside="97 100",
            claim=lambda sheet: sheet.times == "97 times of 100",
        ),
        answer(
            case({"skeins": ODDMENT}),
            beside="243 133 444",
            claim=lambda sheet: (
                [round(sheet.reckoned[8][each]) for each in ("yards", "low", "high")]
                == [243, 133, 444]
                and sheet.reckoned[8]["role"] == "not needed"
            ),
        ),
        answer(
            case({"project": 1200}, "{more:3^}"),
            case({"project": 1200, "skeins": MARSH_4}, "{more:3^}"),
            beside="4 44",
            claim=lambda before, after: round(before.more - after.more) == 44,
        ),
    ),
    "which-of-two-plans": (
        answer(
            case({"buying_2": "prepared", "price_2": 18, "put_up_2": 4 * OZ}),
            claim=lambda plans: (
                plans.needed_1 == plans.needed_2
                and plans.all_hours_2 > plans.all_hours_1
                and abs(plans.singles_yards_2 / plans.singles_yards_1 - 1.5) < 1e-9
            ),
        ),
        answer(
            case({}),
            case({"spinning_speed_2": 80}),
            claim=lambda before, after: (
                abs(
                    (after.all_hours_2 - before.all_hours_2)
                    / (before.singles_yards_2 / before.spinning_speed_2)
                    - 0.25
                )
                < 1e-9
            ),
        ),
        in_words("it tells how to try, and leaves the price to the reader"),
    ),
    "which-singles-make-this-yarn": (
        answer(case({}, "{asked_cut!} inches", "{asked}")),
        answer(case({"plies": 3, "take_up": 1.04}, "{asked}", "{asked_cut!} inches")),
        answer(
            case({"in_hand": [1545]}, "{asked}"),
            claim=lambda sheet: abs(sheet.asked / 1545 - 2) < 1e-9,
        ),
        answer(
            case(
                {"grist_wanted": 60000, "plies": 1, "micron": 21},
                "{micron} micron",
                "{fibres:2} fibres",
                "{least_fibres}",
                holds="is_too_fine",
            )
        ),
    ),
    "will-the-ball-last": (
        answer(
            case({}, "{halfway} of its rows"),
            case({"shape": "edge"}, "{halfway}"),
        ),
        answer(
            case({}),
            case({"weighings": [[48, 0.184375], [68, 0.15]]}),
            claim=lambda before, after: (
                after.rest_high - after.rest_low > before.rest_high - before.rest_low
            ),
        ),
        answer(case({}, "{edge_weight@g:2}")),
    ),
}

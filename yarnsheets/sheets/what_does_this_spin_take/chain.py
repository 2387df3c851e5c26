"""The chain of a spin: from the yarn that is wanted back to the fibre, the bobbins and the hours.

All follows from one plan, so that one sheet works a plan out and another two.
"""

from dataclasses import dataclass

from yarnsheets import formulas
from yarnsheets.page.text import slot
from yarnsheets.published.sources import GRIST
from yarnsheets.sheets.shared.whole import whole_up
from yarnsheets.units import convert

BUYING = {
    "prepared": "prepared fibre: top, roving or batts",
    "washed": "washed fleece",
    "raw": "raw fleece",
}
BOUGHT = {"prepared": "prepared fibre", "washed": "washed fleece", "raw": "raw fleece"}
SAMPLES = {"yarn": "the finished yarn, washed", "single": "the single, before plying"}


@dataclass(frozen=True)
class Plan:
    """What one plan of a spin rests on, as the reader gives it.

    The project is the pattern's own yards, and the reserve comes on top. Unless it says otherwise,
    the sample is of the finished yarn and the skeins keep their length and weight in the wash.
    """

    project: float
    reserve: float
    grist_wanted: float
    plies: float
    take_up: float
    spinning_waste: float
    preparing_waste: float
    scouring_yield: float
    buying: str
    put_up: float
    price: float
    spinning_speed: float
    plying_speed: float
    evening_hours: float
    bobbin_capacity: float
    sample_of: str = "yarn"
    wash_shrinkage: float = 0.0
    wash_loss: float = 0.0


def spin(plan: Plan) -> dict[str, float]:
    """Give all that a plan takes, by name."""
    at = _stages(plan)
    return {**at, **_purchase(plan, at), **_work(plan, at)}


def unlikely(what: str, grist: float) -> str | None:
    """Say what is odd about a grist that a plan asks for; None if yarn is spun so by hand.

    >>> unlikely("The single", 40000).split(", ")[:2]
    ['The single would be {40000 grist}', 'finer than handspun usually is']
    """
    end, side, cure = GRIST.high, "finer", "Take fewer plies or a thicker yarn"
    if grist < GRIST.low:
        end, side, cure = GRIST.low, "thicker", "Take more plies or a finer yarn"
    if GRIST.low <= grist <= GRIST.high:
        return None
    return (
        f"{what} would be {slot(grist, 'grist')}, {side} than handspun usually is, which ends at"
        f" {slot(end, 'grist')}. {cure}, or check the unit of the grist."
    )


def _stages(plan: Plan) -> dict[str, float]:
    """Give the grist, length and mass at each stage, from the yarn back to the raw fleece."""
    take_up = plan.take_up if plan.plies > 1 else 1
    length_left = formulas.share_left(plan.wash_shrinkage)
    mass_left = formulas.share_left(plan.wash_loss)
    if plan.sample_of == "single":
        unwashed = formulas.plied_grist(plan.grist_wanted, plan.plies, take_up)
    else:
        unwashed = formulas.unwashed_grist(plan.grist_wanted, length_left, mass_left)
    yarn_grist = formulas.washed_grist(unwashed, length_left, mass_left)
    yards_planned = plan.project * (1 + plan.reserve)
    yards_to_ply = formulas.length_before_loss(yards_planned, plan.wash_shrinkage)
    spinning = formulas.share_left(plan.spinning_waste)
    preparing = formulas.share_left(plan.preparing_waste)
    prepared = formulas.fibre_needed(yards_to_ply, unwashed, (spinning,))
    clean = formulas.fibre_needed(yards_to_ply, unwashed, (spinning, preparing))
    raw = formulas.fibre_needed(yards_to_ply, unwashed, (spinning, preparing, plan.scouring_yield))
    return {
        "take_up_used": take_up,
        "yards_planned": yards_planned,
        "yards_to_ply": yards_to_ply,
        "yarn_grist": yarn_grist,
        "unwashed_grist": unwashed,
        "singles_grist": formulas.singles_grist(unwashed, plan.plies, take_up),
        "yards_per_ply": formulas.singles_length(yards_to_ply, 1, take_up),
        "singles_yards": formulas.singles_length(yards_to_ply, plan.plies, take_up),
        "yarn": formulas.mass(yards_planned, yarn_grist),
        "spun": formulas.mass(yards_to_ply, unwashed),
        "prepared": prepared,
        "clean": clean,
        "raw": raw,
        "needed": {"prepared": prepared, "washed": clean, "raw": raw}[plan.buying],
    }


def _purchase(plan: Plan, at: dict[str, float]) -> dict[str, float]:
    """Give how many to buy for the stages of a plan, their cost, and the yarn they make."""
    put_ups = whole_up(at["needed"] / plan.put_up)
    yards_per_put_up = plan.put_up / at["needed"] * at["yards_planned"]
    cost = formulas.cost(put_ups, plan.price)
    cost_per_yard = formulas.cost_per_length(cost, at["yards_planned"])
    return {
        "put_ups": put_ups,
        "put_ups_weight": put_ups * plan.put_up,
        "left_over": max(put_ups * plan.put_up - at["needed"], 0.0),
        "yards_per_put_up": yards_per_put_up,
        "yards_made": put_ups * yards_per_put_up,
        "cost": cost,
        "cost_per_yard": cost_per_yard,
        "cost_per_100_yards": 100 * cost_per_yard,
        "cost_per_100_metres": convert(100, "m", "yd") * cost_per_yard,
    }


def _work(plan: Plan, at: dict[str, float]) -> dict[str, float]:
    """Give the hours, evenings and bobbins of the stages of a plan."""
    spinning = formulas.hours(at["singles_yards"], plan.spinning_speed)
    plying = formulas.hours(at["yards_to_ply"], plan.plying_speed) if plan.plies > 1 else 0
    bobbins_per_ply = whole_up(at["prepared"] / plan.plies / plan.bobbin_capacity)
    bobbins = bobbins_per_ply * plan.plies
    plied_bobbins = whole_up(at["spun"] / plan.bobbin_capacity) if plan.plies > 1 else 0
    return {
        "spinning_hours": spinning,
        "plying_hours": plying,
        "all_hours": spinning + plying,
        "evenings": whole_up((spinning + plying) / plan.evening_hours),
        "bobbins_per_ply": bobbins_per_ply,
        "bobbins": bobbins,
        "plied_bobbins": plied_bobbins,
        "all_bobbins": bobbins + plied_bobbins,
        "fibre_per_bobbin": at["prepared"] / bobbins,
        "yards_per_bobbin": at["yards_per_ply"] / bobbins_per_ply,
    }

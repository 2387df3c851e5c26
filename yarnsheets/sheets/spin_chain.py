"""The chain of a spin: from the yarn that is wanted back to the fibre, the bobbins and the hours.

Plain functions of the reader's numbers, so that one sheet uses them once and another twice. Each
gives numbers by name, for plain numbers and for chart parameters alike.
"""

from typing import Any

from yarnsheets import formulas
from yarnsheets.charts.expressions import choose, whole_up
from yarnsheets.units import convert

BUYING = {
    "prepared": "prepared fibre: top, roving or batts",
    "washed": "washed fleece",
    "raw": "raw fleece",
}
BOUGHT = {"prepared": "prepared fibre", "washed": "washed fleece", "raw": "raw fleece"}
SAMPLES = {"yarn": "the finished yarn, washed", "single": "the single, before plying"}

_HUNDRED_METRES = convert(100, "m", "yd")


def chain(v: Any) -> dict[str, Any]:
    """Give the grist, length and mass at each stage, from the yarn back to the raw fleece."""
    take_up = choose(v.plies > 1, v.take_up, 1)
    length_left = formulas.share_left(v.wash_shrinkage)
    mass_left = formulas.share_left(v.wash_loss)
    unwashed = choose(
        v.is_of_single,
        formulas.plied_grist(v.grist_wanted, v.plies, take_up),
        formulas.unwashed_grist(v.grist_wanted, length_left, mass_left),
    )
    yarn_grist = formulas.washed_grist(unwashed, length_left, mass_left)
    yards_planned = v.project * (1 + v.reserve)
    yards_to_ply = formulas.length_before_loss(yards_planned, v.wash_shrinkage)
    yarn = formulas.mass(yards_planned, yarn_grist)
    spun = formulas.mass(yards_to_ply, unwashed)
    spinning, preparing = (formulas.share_left(x) for x in (v.spinning_waste, v.preparing_waste))
    prepared = formulas.fibre_needed(yards_to_ply, unwashed, (spinning,))
    clean = formulas.fibre_needed(yards_to_ply, unwashed, (spinning, preparing))
    raw = formulas.fibre_needed(yards_to_ply, unwashed, (spinning, preparing, v.scouring_yield))
    return {
        "take_up_used": take_up,
        "yards_planned": yards_planned,
        "yards_to_ply": yards_to_ply,
        "yarn_grist": yarn_grist,
        "unwashed_grist": unwashed,
        "singles_grist": formulas.singles_grist(unwashed, v.plies, take_up),
        "yards_per_ply": formulas.singles_length(yards_to_ply, 1, take_up),
        "singles_yards": formulas.singles_length(yards_to_ply, v.plies, take_up),
        "yarn": yarn,
        "spun": spun,
        "prepared": prepared,
        "clean": clean,
        "raw": raw,
        "needed": choose(v.is_raw, raw, choose(v.is_washed, clean, prepared)),
    }


def work(v: Any, at: dict[str, Any]) -> dict[str, Any]:
    """Give the hours, evenings and bobbins of a chain."""
    spinning = formulas.hours(at["singles_yards"], v.spinning_speed)
    plying = choose(v.plies > 1, formulas.hours(at["yards_to_ply"], v.plying_speed), 0)
    bobbins_per_ply = whole_up(at["prepared"] / v.plies / v.bobbin_capacity)
    bobbins = bobbins_per_ply * v.plies
    return {
        "spinning_hours": spinning,
        "plying_hours": plying,
        "all_hours": spinning + plying,
        "evenings": whole_up((spinning + plying) / v.evening_hours),
        "bobbins_per_ply": bobbins_per_ply,
        "bobbins": bobbins,
        "fibre_per_bobbin": at["prepared"] / bobbins,
        "yards_per_bobbin": at["yards_per_ply"] / bobbins_per_ply,
    }


def purchase(v: Any, at: dict[str, Any]) -> dict[str, Any]:
    """Give the put-ups to buy for a chain, their cost, and the yarn that they make."""
    put_ups = whole_up(at["needed"] / v.put_up)
    yards_per_put_up = v.put_up / at["needed"] * at["yards_planned"]
    cost = formulas.cost(put_ups, v.price)
    cost_per_yard = formulas.cost_per_length(cost, at["yards_planned"])
    return {
        "put_ups": put_ups,
        "put_ups_weight": put_ups * v.put_up,
        "left_over": put_ups * v.put_up - at["needed"],
        "yards_per_put_up": yards_per_put_up,
        "yards_made": put_ups * yards_per_put_up,
        "cost": cost,
        "cost_per_yard": cost_per_yard,
        "cost_per_100_yards": 100 * cost_per_yard,
        "cost_per_100_metres": _HUNDRED_METRES * cost_per_yard,
    }

"""From a finished cloth back to the loom, and on to its weight: a weaving sheet's numbers."""

from collections.abc import Mapping
from typing import Any

from yarnsheets import formulas
from yarnsheets.published.sources import ASHENHURST_FIRM_1999
from yarnsheets.sheets.shared.whole import whole_up
from yarnsheets.units import convert


def finished_to_loom(v: Any) -> dict[str, Any]:
    """Go from the finished cloth that a sheet asks for back to the loom."""
    web = formulas.length_before_loss(v.finished_width, v.width_shrinkage)
    reed = formulas.length_before_loss(web, v.draw_in)
    woven = formulas.length_before_loss(v.finished_length, v.length_shrinkage)
    picks = whole_up(formulas.thread_count(v.picks_per_inch, woven))
    added = v.finished_width * (1 + v.width_shrinkage + v.draw_in)
    return {
        "web_width": web,
        "reed_width": reed,
        "woven_length": woven,
        "ends": whole_up(formulas.thread_count(v.ends_per_inch, reed)),
        "piece_warp": formulas.warp_length(woven, v.warp_take_up, 1, 0, 0),
        "warp_length": formulas.warp_length(
            woven, v.warp_take_up, v.pieces, v.between, v.loom_waste
        ),
        "piece_picks": picks,
        "picks": picks * v.pieces,
        "pick_length": formulas.length_before_loss(reed, v.weft_take_up),
        "shares_added": v.width_shrinkage + v.draw_in,
        "added_width": added,
        "added_finish": v.finished_width * added / reed,
    }


def finished_cloth(v: Any, n: Mapping[str, Any]) -> dict[str, Any]:
    """Work out the finished cloth: its setts, its weight, and the closest that is usual."""
    inches = convert(1.0, "yd", "in")
    ends, picks = n["ends"] / v.finished_width, n["piece_picks"] / v.finished_length
    area_mass = formulas.cloth_mass_per_area(
        ends * inches,
        v.grist,
        formulas.crimp(n["piece_warp"], v.finished_length),
        picks * inches,
        n["weft_grist_used"],
        formulas.crimp(n["pick_length"], v.finished_width),
    )
    warp, weft = (
        formulas.sett_maximum(
            formulas.ashenhurst_diameters(grist, ASHENHURST_FIRM_1999.value), 2, 2
        )
        for grist in (v.grist, n["weft_grist_used"])
    )
    return {
        "finished_ends": ends,
        "finished_picks": picks,
        "piece_weight": area_mass * v.finished_width * v.finished_length / inches**2,
        "cloth_ounces": convert(area_mass, "lb", "oz"),
        "cloth_grams": convert(area_mass, "lb/yd**2", "g/m**2"),
        "closest_warp": warp,
        "closest_weft": weft,
    }

"""What plying does to singles, for a sheet's numbers and for all the points of a curve alike."""

from typing import Any

from yarnsheets import formulas


def plied(diameter: Any, lay: Any, twist: Any, ply_twist: Any) -> dict[str, Any]:
    """Work out what plying does to singles; with a `ply_twist` and a `lay` of 0, nothing.

    `lay` is the circle that the singles' middles lie on, in diameters of a single; `slant` is a
    tangent.

    >>> round(plied(0.03, 1, 6.0, 4.0)["take_up"], 4)
    1.0083
    """
    slant = formulas.twist_tangent(diameter * lay, ply_twist)
    residual = formulas.residual_twist(twist, ply_twist, slant)
    spun = formulas.twist_take_up(formulas.twist_tangent(diameter, twist))
    after = formulas.twist_take_up(formulas.twist_tangent(diameter, residual))
    helix = formulas.helix_take_up(slant)
    return {
        "slant": slant,
        "residual": residual,
        "spun": spun,
        "spun_after": after,
        "helix": helix,
        "take_up": formulas.plying_take_up(spun, after, helix),
    }

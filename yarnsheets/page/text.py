"""Numbers and sentences as the reader sees them, in Python and on the page.

A template is text with slots. `{yards}` is the number in the unit chosen for the page,
`{weight@lb}` the same number in a unit of the template's own, `{yards:5}` shows five digits in
place of three, `{weight!}` leaves the unit out, `{weight^}` rounds up, for "at least", and
`{grist~}` rounds whole units too, for "about". `{yards*}` is the number wanted, which the page
sets large. `{cuts|cut|cuts}` puts the word behind the number, in the right one of its two forms.
`{9.5 short}` is a number of the template's own, of that dimension. The name of a template that was
found stands for that template. A line is a template with the
condition under which it is said.
"""

import math
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal
from typing import Any

DIGITS = 3
_ALL_DIGITS = Context(prec=400)  # more than the largest number has
_SLOT = re.compile(r"\{(\w+)(?:@([\w/*]+))?(?::(\d+))?([!^~*]*)(?:\|([^|{}]+)\|([^|{}]+))?\}")
_NAME = re.compile(r"\{(\w+)\}")
_QUANTITY = re.compile(r"\{(-?[\d.]+(?:e[+-]?\d+)?) (\w+)\}")

# A sentence and when it is said: the name of something true, "not" and the name of something
# false, or always.
Line = tuple[str | None, str]


@dataclass(frozen=True)
class Shown:
    """The units of a page.

    `units` has the one chosen for each dimension; `scales` for every unit of a dimension the
    factor and the power that take a number there, and `labels` what a unit is called.
    """

    units: Mapping[str, str]
    scales: Mapping[str, Mapping[str, tuple[float, int]]]
    labels: Mapping[str, str]


def show(value: float, digits: int = DIGITS, *, up: bool = False, about: bool = False) -> str:
    """Write a number to so many significant digits, rounding off whole units only if asked to.

    Parameters
    ----------
    value
        Any number.
    digits
        How many significant digits to keep.
    up
        Whether to round up rather than to the nearest.
    about
        Whether to round whole units too.

    Returns
    -------
    str
        The number with thousands commas and without trailing zeros.

    Examples
    --------
    >>> show(1142.857), show(10.6667), show(0.5), show(241.9088, 4)
    ('1,143', '10.7', '0.5', '241.9')
    >>> show(10.61, up=True), show(8.0000000001, up=True), show(26613, about=True)
    ('10.7', '8', '26,600')
    """
    if not math.isfinite(value):
        return "–"
    magnitude = math.floor(math.log10(abs(value))) if value else 0
    if about and magnitude >= digits:
        ten = 10.0 ** (magnitude + 1 - digits)
        value = math.floor(value / ten + 0.5) * ten
    decimals = min(max(digits - 1 - magnitude, 0), 6)
    if up:
        # The small allowance keeps a sum's last-bit noise from being rounded up to a whole step.
        steps = 10.0**decimals
        value = math.ceil(value * steps - 1e-6) / steps
    text = with_decimals(value, decimals)
    return text.rstrip("0").rstrip(".") if "." in text else text


def money(value: float) -> str:
    """Write a sum of money, always with its hundredths.

    >>> money(7.5), money(1234.567)
    ('7.50', '1,234.57')
    """
    return with_decimals(value, 2) if math.isfinite(value) else "–"


def with_decimals(value: float, decimals: int) -> str:
    """Write a number with thousands commas and so many decimals, a half rounded away from nought.

    The one rule of writing that the page has by hand: in runtime.js.

    >>> with_decimals(1234.5, 0), with_decimals(0.125, 2), with_decimals(-2.0, 1)
    ('1,235', '0.13', '−2.0')
    >>> len(with_decimals(1e300, 0))
    401
    """
    rounded = Decimal(value).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_UP, _ALL_DIGITS)
    rounded = rounded if rounded else abs(rounded)  # a nought has no sign
    return f"{rounded:,}".replace("-", "\N{MINUS SIGN}")


def counted(number: float, one: str, many: str) -> str:
    """Write a number with the word for what is counted.

    >>> counted(1, "cut", "cuts"), counted(1200, "cut", "cuts")
    ('1 cut', '1,200 cuts')
    """
    return in_number(show(number), one, many)


def in_number(written: str, one: str, many: str) -> str:
    """Put behind a number, as it is written, the form of a word that goes with it."""
    return f"{written} {one if written == '1' else many}"


def fill(
    template: str, known: Mapping[str, Any], dimensions: Mapping[str, str], shown: Shown
) -> str:
    r"""Fill a template's slots with what is known of a sheet, each number by its dimension.

    >>> shown = Shown({"mass": "oz"}, {"mass": {"oz": (16.0, 1)}}, {"oz": "oz"})
    >>> fill("{weight:2!} of wool", {"weight": 0.5}, {"weight": "mass"}, shown)
    '8 of wool'
    >>> fill("{0.25 mass}", {}, {}, shown)
    '4\xa0oz'
    >>> fill("{plies|ply|plies}", {"plies": 1}, {"plies": "number"}, shown)
    '1 ply'
    """
    with_quantities = _QUANTITY.sub(
        lambda found: _in_shown_unit(float(found[1]), found[2], shown),
        opened(template, known, dimensions),
    )
    return _SLOT.sub(
        lambda slot: _with_word(
            _write(slot[1], slot[2], int(slot[3] or DIGITS), slot[4], known, dimensions, shown),
            slot[5],
            slot[6],
        ),
        with_quantities,
    )


def opened(template: str, known: Mapping[str, Any], dimensions: Mapping[str, str]) -> str:
    """Put templates that were found in the place of their names.

    >>> opened("{told}", {"told": "{weight} of wool"}, {"told": "template"})
    '{weight} of wool'
    """
    return _NAME.sub(
        lambda found: known[found[1]] if dimensions.get(found[1]) == "template" else found[0],
        template,
    )


def slot(value: float, dimension: str) -> str:
    """Give the slot of a number that has no name, in the sheet's own unit.

    >>> slot(9.5, "short")
    '{9.5 short}'
    """
    return f"{{{value:.15g} {dimension}}}"


def _in_shown_unit(value: float, dimension: str, shown: Shown) -> str:
    if dimension not in shown.scales:
        return show(value)
    unit = shown.units[dimension]
    return show(to_shown(value, dimension, unit, shown)) + behind(unit, shown)


def _with_word(written: str, one: str | None, many: str | None) -> str:
    return written if one is None or many is None else in_number(written, one, many)


def _write(
    name: str,
    unit: str | None,
    digits: int,
    flags: str,
    known: Mapping[str, Any],
    dimensions: Mapping[str, str],
    shown: Shown,
) -> str:
    value = known[name]
    if isinstance(value, str):
        return value.strip(" ")  # a reader's own words have blanks around them at times
    dimension = dimensions[name]
    if dimension == "money":
        return money(value)
    up, about = "^" in flags, "~" in flags
    if dimension not in shown.scales:
        return show(value, digits, up=up, about=about)
    unit = unit or shown.units[dimension]
    text = show(in_unit(name, unit, known, dimensions, shown), digits, up=up, about=about)
    return text if "!" in flags else text + behind(unit, shown)


def in_unit(
    name: str, unit: str, known: Mapping[str, Any], dimensions: Mapping[str, str], shown: Shown
) -> float:
    """Give a number in a unit: of a range, where the unit runs the other way, the other end."""
    dimension = dimensions[name]
    runs_back = shown.scales[dimension][unit][1] < 0
    value = known[other_end(name, known) if runs_back else name]
    return to_shown(value, dimension, unit, shown)


def said(
    lines: Iterable[Line], known: Mapping[str, Any], dimensions: Mapping[str, str], shown: Shown
) -> list[str]:
    """Fill those lines whose condition holds.

    >>> lines = [("not is_short", "Enough."), ("is_short", "Too little."), (None, "Spin on.")]
    >>> said(lines, {"is_short": False}, {}, Shown({}, {}, {}))
    ['Enough.', 'Spin on.']
    """
    return [fill(text, known, dimensions, shown) for when, text in lines if holds(when, known)]


def holds(when: str | None, known: Mapping[str, Any]) -> bool:
    """Tell whether a line's condition holds."""
    if when is None:
        return True
    if when.startswith("not "):
        return not known[when.removeprefix("not ")]
    return bool(known[when])


def other_end(name: str, known: Mapping[str, Any]) -> str:
    """Give the other end of a range: in tex, the high end in yards per pound is the low one.

    >>> other_end("grist_low", {"grist_high": 1200}), other_end("grist", {})
    ('grist_high', 'grist')
    """
    for end, other in (("_low", "_high"), ("_high", "_low")):
        if name.endswith(end) and name.removesuffix(end) + other in known:
            return name.removesuffix(end) + other
    return name


def to_shown(value: float, dimension: str, unit: str, shown: Shown) -> float:
    """Turn a number in the sheet's own unit into a shown one."""
    factor, power = shown.scales[dimension][unit]
    if power > 0:
        return value * factor
    return factor / value if value else math.inf


def to_own(value: float, dimension: str, unit: str, shown: Shown) -> float:
    """Turn a shown number into the sheet's own unit."""
    factor, power = shown.scales[dimension][unit]
    if power > 0:
        return value / factor
    return factor / value if value else math.inf


def behind(unit: str, shown: Shown) -> str:
    r"""Say a unit with the space it keeps from its number, which a per cent sign does not.

    >>> behind("percent", Shown({}, {}, {})), behind("yd", Shown({}, {}, {"yd": "yd"}))
    ('%', '\xa0yd')
    """
    return "%" if unit == "percent" else f"\N{NO-BREAK SPACE}{shown.labels[unit]}"

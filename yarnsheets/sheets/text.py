"""Numbers and sentences as the reader sees them.

A template is text with slots. `{yards}` is the number in the unit chosen for the page,
`{weight@lb}` the same number in a unit of the template's own, `{yards:5}` shows five digits in
place of three, `{weight!}` leaves the unit out, and `{weight^}` rounds up, for "at least". The
page's `fill` and `show` in sheet.js follow the same rules; the browser test holds the two
together.
"""

import math
import re
from collections.abc import Callable
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_HALF_UP, Decimal

DIGITS = 3
_SLOT = re.compile(r"\{(\w+)(?:@([\w/*]+))?(?::(\d+))?([!^]*)\}")


@dataclass(frozen=True)
class Slot:
    """A place in a template: which number, in which unit, and how it is written."""

    name: str
    unit: str | None
    digits: int
    bare: bool
    up: bool


def show(value: float, digits: int = DIGITS, *, up: bool = False) -> str:
    """Write a number to so many significant digits, never rounding off whole units.

    Parameters
    ----------
    value
        Any number.
    digits
        How many significant digits to keep.
    up
        Whether to round up rather than to the nearest.

    Returns
    -------
    str
        The number with thousands commas and without trailing zeros.

    Examples
    --------
    >>> show(1142.857), show(10.6667), show(0.5), show(241.9088, 4)
    ('1,143', '10.7', '0.5', '241.9')
    >>> show(10.61, up=True), show(8.0000000001, up=True)
    ('10.7', '8')
    """
    if not math.isfinite(value):
        return "–"
    magnitude = math.floor(math.log10(abs(value))) if value else 0
    decimals = min(max(digits - 1 - magnitude, 0), 6)
    step = Decimal(1).scaleb(-decimals)
    # The small allowance keeps a sum's last-bit noise from being rounded up to a whole step.
    exact = Decimal(value) - step * Decimal("1e-6") if up else Decimal(value)
    rounded = exact.quantize(step, ROUND_CEILING if up else ROUND_HALF_UP)
    text = f"{rounded:,}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def money(value: float) -> str:
    """Write a sum of money, always with its hundredths.

    >>> money(7.5), money(1234.567)
    ('7.50', '1,234.57')
    """
    return f"{value:,.2f}" if math.isfinite(value) else "–"


def fill(template: str, write: Callable[[Slot], str]) -> str:
    """Fill a template's slots.

    Parameters
    ----------
    template
        Text with slots, as the module describes them.
    write
        Called with each slot for its text.

    Returns
    -------
    str
        The text with every slot written out.

    Examples
    --------
    >>> fill("{weight@g:2!} of wool", lambda slot: f"<{slot.name} {slot.unit} {slot.digits}>")
    '<weight g 2> of wool'
    """
    return _SLOT.sub(lambda found: write(_slot(*found.groups())), template)


def _slot(name: str, unit: str | None, digits: str | None, flags: str) -> Slot:
    return Slot(name, unit, int(digits or DIGITS), "!" in flags, "^" in flags)

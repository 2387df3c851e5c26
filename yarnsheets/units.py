"""Units of length, mass and yarn count, and numbers as a spinner writes them.

There is one pint registry, to which the definitions file adds the counts of the trade; it is
loaded when a conversion is first asked for, since a page that has been built needs none.
A conversion is worked out once as a single factor: the value it is applied to may then be a
number, a column, a number with its uncertainty or a chart parameter, and in a chart's text the
conversion stays one multiplication or one division.
"""

import math
import re
import unicodedata
from dataclasses import dataclass
from functools import cache, lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Any, Literal

if TYPE_CHECKING:
    import pint

_NAME = r"[A-Za-z_][A-Za-z_0-9]*(?:\*\*[2-9])?"
# only names, products and quotients reach pint, which would work out 9**9**9 if asked
_UNIT = re.compile(rf"\s*(?:1|{_NAME})(?:\s*[*/]\s*(?:100\s*)?{_NAME})*\s*", re.ASCII)

_THOUSANDS = r"[1-9][0-9]{0,2}(?:,[0-9]{3})+"
_WHOLE = rf"{_THOUSANDS}|[0-9]+"
_GROUPED = re.compile(rf"{_THOUSANDS}(?:\.[0-9]+)?")
_DECIMAL = re.compile(r"[0-9]+(?:\.[0-9]*)?|\.[0-9]+|0,[0-9]+|[0-9]+,(?![0-9]{3}$)[0-9]+")
_FRACTION = re.compile(rf"(?:({_WHOLE})(?:\s+|-))?([0-9]+)\s*/\s*([0-9]+)")
_FRACTION_SLASH = "\N{FRACTION SLASH}"
_KEYBOARD = {_FRACTION_SLASH: "/", "\N{MINUS SIGN}": "-", "\N{EN DASH}": "-"}


@dataclass(frozen=True)
class Scale:
    """The one operation that takes a value from one unit to another.

    The value wanted is ``factor * value**power``. `power` is 1 between units that measure the
    same way, and -1 between mass per length and length per mass, where more of one is less of
    the other.

    >>> Scale(16.0, 1).apply(62.5), Scale(1000.0, -1).apply(250)
    (1000.0, 4.0)
    """

    factor: float
    power: Literal[1, -1]

    def apply(self, value: Any) -> Any:
        """Return `value` in the other unit; a chart parameter gives the text to compute."""
        return value * self.factor if self.power == 1 else self.factor / value


@cache
def registry() -> "pint.UnitRegistry[Any]":
    """Return the registry of units, the counts of the trade among them."""
    import pint

    units: pint.UnitRegistry[Any] = pint.UnitRegistry(
        # left alone, pint reads "m/100 g" as a hundredth of a metre, times a gram
        preprocessors=[lambda text: re.sub(r"/\s*100\s*g\b", "/hectogram", text)]
    )
    definitions = files("yarnsheets").joinpath("units.txt").read_text("utf-8")
    units.load_definitions(definitions.splitlines())
    return units


@lru_cache
def scale(from_unit: str, to_unit: str) -> Scale:
    """Return the scale that takes a value from one unit to another.

    Parameters
    ----------
    from_unit, to_unit : str
        Units that measure the same thing, such as "in" and "yd", or any two yarn counts, direct
        or indirect: "yd/lb", "m/100g", "g/km", "tex", "worsted_count".

    Raises
    ------
    ValueError
        If a unit is not known, or the two do not measure the same thing.

    Source
    ------
    NIST Special Publication 811 (2008), section B.8, for the yard and the pound; the counts are
    in `units.txt`, each with its source.

    Examples
    --------
    >>> scale("worsted_count", "yd/lb")
    Scale(factor=560.0, power=1)
    >>> scale("metric_count", "tex")
    Scale(factor=1000.0, power=-1)
    """
    from pint.errors import PintError

    direct, indirect = (registry().get_dimensionality(unit) for unit in ("tex", "typp"))
    wish = f'"{from_unit[:40]}" cannot be turned into "{to_unit[:40]}"'
    given, wanted = _read_unit(from_unit, wish), _read_unit(to_unit, wish)
    try:
        crossed = {given.dimensionality, wanted.dimensionality} == {direct, indirect}
        ratio = 1 / (given * wanted) if crossed else given / wanted
        factor = (1.0 * ratio).to("").magnitude
    except PintError as error:
        msg = (
            f"{wish}: they do not measure the same thing. "
            "Choose two lengths, two masses or two yarn counts."
        )
        raise ValueError(msg) from error
    return Scale(float(factor), -1 if crossed else 1)


def convert(value: Any, from_unit: str, to_unit: str) -> Any:
    """Return `value`, given in one unit, in another.

    Parameters
    ----------
    value : Any
        A number, column, number with its uncertainty, or chart parameter. Not a pint quantity,
        which carries its own unit.
    from_unit, to_unit : str
        As for `scale`.

    Returns
    -------
    Any
        The value in `to_unit`, of the same kind as it was given.

    Raises
    ------
    ValueError
        If a unit is not known, or the two do not measure the same thing.

    Examples
    --------
    >>> convert(62.5, "yd/oz", "yd/lb")
    1000.0
    >>> convert(400, "m/100 g", "tex")
    250.0
    """
    return scale(from_unit, to_unit).apply(value)


def parse_number(text: str) -> float:
    """Return the number that a spinner wrote.

    A fraction is read with or without whole number, and with a space or a hyphen between. A comma
    before exactly three digits parts the thousands, any other comma is the decimal mark:
    "1,200" is twelve hundred and "1,2" is one and a fifth. Where that leaves two readings,
    as in "1200,500", the number is refused; nothing is guessed.

    Parameters
    ----------
    text : str
        The number as written, without its unit.

    Raises
    ------
    ValueError
        If the text is not a number, or can be read in two ways.

    Examples
    --------
    >>> parse_number("9 3/8"), parse_number("9-3/8"), parse_number("9½"), parse_number("1,200")
    (9.375, 9.375, 9.5, 1200.0)
    """
    number = number_in(text)
    if not math.isfinite(number):
        msg = (
            f'"{text[:40]}" is not a number that can be read in one way only. '
            "Write it like 9.375 or 9 3/8, and thousands like 1200 or 1,200."
        )
        raise ValueError(msg)
    return number


def number_in(text: str) -> float:
    """Return the number that `parse_number` reads; not a number where it refuses.

    >>> number_in("9 3/8"), number_in("nine")
    (9.375, nan)
    """
    plain = "".join(_spell_sign(sign) for sign in text).strip()
    size = plain.removeprefix("-").lstrip()
    number = math.nan
    if _GROUPED.fullmatch(size):
        number = float(size.replace(",", ""))
    elif _DECIMAL.fullmatch(size):
        number = float(size.replace(",", "."))
    elif match := _FRACTION.fullmatch(size):
        whole, top, bottom = (float((part or "0").replace(",", "")) for part in match.groups())
        if bottom > 0 and (match[1] is None or top < bottom):
            number = whole + top / bottom
    return -number if plain.startswith("-") else number


def _read_unit(text: str, wish: str) -> Any:
    from pint.errors import PintError

    try:
        if _UNIT.fullmatch(text):
            return registry().Unit(text)
    except PintError:
        pass
    msg = (
        f'{wish}: the unit "{text[:40]}" is not known. Use one such as "yd/lb", "m/100g", "g/km", '
        '"tex", "worsted_count", "yd", "m", "in", "oz" or "g", spelt just so.'
    )
    raise ValueError(msg)


def _spell_sign(sign: str) -> str:
    """Return a sign as a keyboard has it; a fraction set as one sign becomes like " 1/2"."""
    plain = unicodedata.normalize("NFKC", sign)
    if sign in _KEYBOARD:
        return _KEYBOARD[sign]
    return f" {plain.replace(_FRACTION_SLASH, '/')}" if _FRACTION_SLASH in plain else sign

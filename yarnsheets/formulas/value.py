"""What a formula takes and gives.

A formula is arithmetic and nothing else, so the same lines serve a plain number, a numpy array,
a pandas column, a pint quantity, a number with its uncertainty, and a chart parameter, for which
they give the text that the browser computes with. Python has no common type for those; `Value`
says that any of them will do, as long as the units of all the arguments belong together.
"""

from collections.abc import Iterable
from typing import Any

Value = Any
"""One number or column of any of the kinds above."""

Values = Iterable[Any]
"""Several of them, one for each single or each stage of the work."""

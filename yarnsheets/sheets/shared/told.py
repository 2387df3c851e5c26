"""What an exercise tells, as bars with their words; `bars.py` draws them."""

from collections.abc import Sequence
from typing import Any, NamedTuple


class Bar(NamedTuple):
    """A bar: its part of the longest, and its words; a question mark there is what is asked for."""

    share: float
    words: str


def told(bars: Sequence[Bar], found: str) -> dict[str, Any]:
    """Give what `bars.py` draws, with what was found, if it was, in the place of the mark.

    >>> told([Bar(1, "a pound: ?")], "{yards}")
    {'bar_1': 'a pound: {yards}', 'bars': [{'at': 0, 'share': 1, 'asked': 0}]}
    """
    said = {
        f"bar_{at + 1}": bar.words.replace("?", found) if found else bar.words
        for at, bar in enumerate(bars)
    }
    rows = [
        {"at": at, "share": bar.share, "asked": 1 if "?" in bar.words and not found else 0}
        for at, bar in enumerate(bars)
    ]
    return {**said, "bars": rows}

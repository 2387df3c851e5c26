"""Whether what was wanted is reached, by the numbers as the reader sees them."""

from yarnsheets.page.text import show


def is_within(found: float, wanted: float) -> bool:
    """Tell whether a share is no more than is wanted, both as they are written in per cent.

    >>> is_within(0.05003, 0.05), is_within(0.0504, 0.05)
    (True, False)
    """
    if found <= wanted:
        return True
    return found < 2 * wanted and show(found * 100) == show(wanted * 100)

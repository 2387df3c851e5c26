"""What a tag says of a skein, line by line; the same on the page as in Python."""

import math

from yarnsheets.page.text import slot
from yarnsheets.shelf.evidence import Reckoned, Skein

# The worksheet that a tag's code opens.
OPENS = "how-many-yards"

# The lines that are no templates.
OWN_WORDS = ("name", "kind", "link")


def tag(skein: Skein, found: Reckoned | None) -> dict[str, str]:
    """Give the lines of a skein's tag: the reader's own words, and templates of the numbers.

    `link` is what the code hands to the worksheet; without a weight or yards there is none.

    >>> lines = tag(Skein("Marsh", "wool", "grey", 0.25, 14), None)
    >>> lines["kind"], lines["holds"], lines["weighs"]
    ('wool, grey', 'yards not known yet', '{0.25 mass}')
    """
    grist = found.grist if found else math.nan
    weighs = [
        *([] if math.isnan(skein.weight) else [slot(skein.weight, "mass")]),
        *([] if math.isnan(grist) else [slot(grist, "grist")]),
    ]
    kind = [" ".join(word.split()) for word in (skein.fibre, skein.colour)]
    has_link = not math.isnan(grist)
    return {
        "name": " ".join(skein.name.split()),
        "kind": ", ".join([word for word in kind if word]),
        "holds": _holds(found) if found else "yards not known yet",
        "range": _range(found) if found else "",
        "weighs": ", ".join(weighs),
        "laid": "" if math.isnan(skein.wraps) else f"wraps {slot(skein.wraps, 'wraps')}",
        "link": f"grist={grist:.6g}&weight={skein.weight:.6g}" if has_link else "",
    }


def _holds(found: Reckoned) -> str:
    odd = f"; check its {found.disputed}" if found.disputed else ""
    return f"{slot(found.yards, 'length')} by {found.kind}{odd}"


def _range(found: Reckoned) -> str:
    return f"{slot(found.low, 'length')} to {slot(found.high, 'length')}, 95% sure"

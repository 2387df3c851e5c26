"""The shelf: many skeins at once, their yards, a choice among them, files in and out, and tags.

>>> from yarnsheets import shelf
>>> found = shelf.reckon(shelf.demo())
>>> round(found.yards.sum()), found.evidence.to_list()[:4]
(1559, ['turns', 'cuts', 'length', 'wraps'])
>>> chosen = shelf.choose(found, 600)
>>> chosen.skeins.name[chosen.skeins.for_project == "chosen"].to_list()
['Marsh 1', 'Marsh 2', 'Marsh 3']

A worksheet needs the rules alone; what works on pandas is loaded when it is asked for.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from yarnsheets.shelf.choosing import Wanted
    from yarnsheets.shelf.evidence import Doubts
    from yarnsheets.shelf.files import Shelf, demo, read, write
    from yarnsheets.shelf.frame import Chosen, choose, reckon
    from yarnsheets.shelf.on_paper import Paper, labels

__all__ = [
    "Chosen",
    "Doubts",
    "Paper",
    "Shelf",
    "Wanted",
    "choose",
    "demo",
    "labels",
    "read",
    "reckon",
    "write",
]

_MODULES = {
    **dict.fromkeys(("Shelf", "demo", "read", "write"), "files"),
    **dict.fromkeys(("Chosen", "choose", "reckon"), "frame"),
    "Wanted": "choosing",
    "Doubts": "evidence",
    **dict.fromkeys(("Paper", "labels"), "on_paper"),
}


def __getattr__(name: str) -> Any:
    if name not in _MODULES:
        msg = f"module {__name__!r} has no attribute {name!r}"
        raise AttributeError(msg)
    return getattr(import_module(f"{__name__}.{_MODULES[name]}"), name)

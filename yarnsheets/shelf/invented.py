"""An invented shelf, to try things on: nine skeins, each known in another way."""

from collections.abc import Mapping, Sequence
from typing import Any

_OZ = 1 / 16

SHELF: Sequence[Mapping[str, Any]] = (
    {
        "name": "Marsh 1",
        "fibre": "wool",
        "colour": "grey",
        "weight": 4.1 * _OZ,
        "wraps": 16,
        "turns": 190,
    },
    {
        "name": "Marsh 2",
        "fibre": "wool",
        "colour": "grey",
        "weight": 3.8 * _OZ,
        "wraps": 16,
        "cuts": [10.9, 11.3, 11.0, 11.6, 10.8],
    },
    {
        "name": "Marsh 3",
        "fibre": "wool",
        "colour": "grey",
        "weight": 2.2 * _OZ,
        "wraps": 17,
        "length": 155,
    },
    {
        "name": "Marsh 4",
        "fibre": "wool",
        "colour": "grey",
        "weight": 1.9 * _OZ,
        "wraps": 16,
    },
    {
        "name": "Heath 1",
        "fibre": "wool",
        "colour": "brown",
        "weight": 3.5 * _OZ,
        "wraps": 13,
        "counter": 180,
    },
    {
        "name": "Heath 2",
        "fibre": "wool",
        "colour": "brown",
        "weight": 3.6 * _OZ,
        "wraps": 13,
        "cuts": [8.4],
    },
    {
        "name": "Moonrise",
        "fibre": "silk",
        "colour": "white",
        "weight": 1.6 * _OZ,
        "wraps": 24,
        "sample_length": 10,
        "sample_weight": 0.08 * _OZ,
    },
    {
        "name": "Peat",
        "fibre": "wool",
        "colour": "grey",
        "weight": 4.4 * _OZ,
        "wraps": 10,
        "turns": 100,
    },
    {"name": "Oddment", "fibre": "wool", "colour": "grey", "weight": 1.2 * _OZ},
)

"""What helps a reader who has not measured so before, or does not know a word."""

from functools import cache
from pathlib import Path

_DRAWINGS = Path(__file__).parent / "drawings"

# Each is explained where a page says it first. Common practice, no source.
GLOSSARY = {
    "grist": "How much length a yarn has for its weight, as yards to the pound. The finer the yarn,"
    " the more yards; tex and denier count the other way round, as the weight of a length.",
    "singles": "The strands that are plied together, each spun by itself. A yarn that is not plied"
    " is one single.",
    "take-up": "What plying takes: a yard of plied yarn holds a little more than a yard of each"
    " single, since they wind around each other.",
    "regain": "The water that a fibre holds, as a part of its dry weight. It follows the damp of"
    " the air, so the same yarn weighs more on a wet day.",
}


@cache
def drawing(name: str) -> str:
    """Give a small drawing of how something is measured, as SVG; its file's name without ending."""
    return (_DRAWINGS / f"{name}.svg").read_text("utf-8").strip()

"""How long a large shelf takes, beside pint row by row.

Run by hand: `python -m tests.benchmark_shelf`. It asserts nothing: times differ by machine, so read
them as ratios of one run. Memory is the most that Python's own objects and columns took at once.
"""

from __future__ import annotations

import time
import tracemalloc
from typing import TYPE_CHECKING, Any

import numpy as np
import pandas as pd
import pint

from yarnsheets import shelf

if TYPE_CHECKING:
    from collections.abc import Callable

ROWS = (10_000, 100_000, 1_000_000)
BY_PINT = 2_000  # rows, from which the rest is scaled


def skeins(count: int) -> pd.DataFrame:
    """Invent a shelf: cells as a file has them, some with their unit, some missing."""
    rng = np.random.default_rng(14)
    grams = np.round(rng.uniform(20, 200, count), 1)
    weights = np.where(rng.random(count) < 0.2, [f"{g / 28.35:.2f} oz" for g in grams], grams)
    some = rng.random((4, count))
    return pd.DataFrame(
        {
            "Name": [f"skein {at}" for at in range(count)],
            "Fibre": rng.choice(["wool", "silk", "flax"], count),
            "Weight (g)": weights,
            "WPI": np.where(some[0] < 0.9, rng.integers(8, 30, count), np.nan),
            "Turns": np.where(some[1] < 0.3, rng.integers(40, 400, count), np.nan),
            "Length (m)": np.where(some[2] < 0.3, np.round(rng.uniform(40, 500, count)), np.nan),
            "Cuts": np.where(some[3] < 0.3, "9.6; 10.1; 10.4; 9.8; 10.6", ""),
        }
    )


def by_pint(table: pd.DataFrame) -> float:
    """Give the yards of all rows as one writes them with pint: a row at a time, wraps alone."""
    ureg: pint.UnitRegistry[Any] = pint.UnitRegistry()
    airy = 0.22 * ureg.gram / ureg.cm**3
    total = 0.0
    for row in table.itertuples():
        weight = ureg.Quantity(str(row[3]) if "oz" in str(row[3]) else f"{row[3]} g")
        diameter = 1 * ureg.inch / (row[4] if row[4] == row[4] else 14)
        length = weight / (airy * np.pi / 4 * diameter**2)
        total += length.to("yard").magnitude
    return total


def timed(run: Callable[[], Any]) -> tuple[float, Any]:
    """Give the best of three runs, in seconds, and what it gave."""
    times = []
    for _ in range(3):
        start = time.perf_counter()
        gave = run()
        times.append(time.perf_counter() - start)
    return min(times), gave


def main() -> None:
    """Print the times."""
    few = skeins(BY_PINT)
    pint_row = timed(lambda: by_pint(few))[0] / BY_PINT
    print(f"pint, row by row: {pint_row * 1e6:.0f} µs a row")
    print("rows        read, s   reckon, s   µs a row   times as fast as pint   MiB")
    for count in ROWS:
        table = skeins(count)
        reading, read = timed(lambda table=table: shelf.read(table))  # type: ignore[misc]
        reckoning, _ = timed(lambda read=read: shelf.reckon(read.skeins))  # type: ignore[misc]
        tracemalloc.start()
        shelf.reckon(shelf.read(table).skeins)
        most = tracemalloc.get_traced_memory()[1] / 2**20
        tracemalloc.stop()
        row = (reading + reckoning) / count
        print(
            f"{count:<11,} {reading:<9.2f} {reckoning:<11.2f} {row * 1e6:<10.1f}"
            f" {pint_row / row:<23.0f} {most:.0f}"
        )


if __name__ == "__main__":
    main()

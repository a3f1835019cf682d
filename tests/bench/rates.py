"""How often each way of naming a winner is wrong and right, cell by cell, at full size. Not a test: it prints the handbook's tables.

    .venv/bin/python -m tests.bench.rates [--campaigns 20000] [--processes 2]

Percentages of campaigns. Beside what an independent simulation of the published rules found, where there is one. The suite holds
some of the cells at a size that is quick (`tests/judgement/test_rates_beside_other_ways.py`).
"""

from __future__ import annotations

import argparse
import time
from multiprocessing import Pool

from tests.judgement.rates import CELLS, MATTERS, WAYS, Cell, Found, found, inside_margin, pairs_wrong, spread

SEED = 20261128


def _found(numbered: tuple[int, Cell, int]) -> dict[str, Found]:
    number, cell, campaigns = numbered
    return found(cell, campaigns, SEED + number, tuple(WAYS))


def main() -> None:
    """Draw everything and print it."""
    given = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    given.add_argument("--campaigns", type=int, default=20_000)
    given.add_argument("--processes", type=int, default=2)
    options = given.parse_args()
    began, n = time.perf_counter(), options.campaigns
    with Pool(options.processes) as pool:
        told = pool.map(_found, [(i, cell, n) for i, cell in enumerate(CELLS)], chunksize=1)
        margins = pool.map(inside_margin, [(m, n // 2) for m in MATTERS])
        wrong = pool.map(pairs_wrong, [(k, passes, scatter, n // 4) for k in (2, 4, 8) for passes in (2, 3, 5)
                                       for scatter in ("common", "own")])  # fmt: skip
    print("| campaign | " + " | ".join(WAYS) + " | published rules |\n| --- |" + " --- |" * (len(WAYS) + 1))
    for cell, by_way in zip(CELLS, told, strict=True):
        shown = [f"{100 * (f.right if cell.best is not None else f.false):.1f}" for f in by_way.values()]
        rate = cell.right if cell.best is not None else cell.false
        beside = f"{100 * rate:.1f}" if rate is not None else f"≤ {100 * cell.at_most:.1f}" if cell.at_most else ""
        print(f"| {'right' if cell.best is not None else 'false'}: {cell.name} | {' | '.join(shown)} | {beside} |")
        if cell.best is not None:
            also = " | ".join(f"{100 * f.false:.1f}" for f in by_way.values())
            print(f"|   another named | {also} | |")
    print("\nno difference that matters, four equal, 3 passes:")
    for m, share in zip(MATTERS, margins, strict=True):
        print(f"| {m:g} sd | {100 * share:.1f} |")
    print("\na pair called resolved though all are equal (k, passes, scatter):")
    for (k, passes, scatter), share in zip(
        [(k, p, s) for k in (2, 4, 8) for p in (2, 3, 5) for s in ("common", "own")], wrong, strict=True
    ):
        print(f"| {k}, {passes}, {scatter} | {100 * share:.1f} |")
    print(f"\nstandard error of a cell at most {100 * spread(0.5, n) / 3:.1f}; {time.perf_counter() - began:.0f} s")


if __name__ == "__main__":
    main()

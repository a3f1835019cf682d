"""How often 95 % intervals hold the truth, corner by corner, at full size. Not a test: it prints the handbook's tables.

    .venv/bin/python -m tests.bench.coverage [--campaigns 5000] [--processes 2]

Percentages; beside each table the largest standard error of a cell. Differences go through the whole `judge` and have half
the campaigns; products are drawn (Monte Carlo) for every interval and have a twentieth. The suite holds some of the corners, at a size that is quick (`tests/judgement/test_coverage.py`).
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import product
from multiprocessing import Pool

from tests.judgement.coverage import Corner, Covered, of_differences, of_singles

PASSES = (2, 3, 4, 5, 7, 10)
STEPS = (0.01, 0.1, 0.5, 1.0, 2.0, 5.0)
BESIDE = ((0.0, 0.01), (0.0, 0.05), (1.0, 0.0), (2.0, 0.0), (2.0, 0.05))  # offset in sd, gain in parts of the reading
SEED = 20261128


@dataclass(frozen=True)
class Asked:
    """One cell: the table and the row and column it belongs to, and what is drawn for it."""

    table: str
    row: str
    column: str
    corner: Corner
    campaigns: int
    differences: bool = False


def asked(campaigns: int) -> Iterator[Asked]:
    """All cells."""
    for scatter, n, step in product(("common", "own"), PASSES, STEPS):
        plain = Corner(n, step, scatter)
        column = f"{step:g} sd"
        yield Asked(f"results, {scatter}", str(n), column, plain, campaigns)
        yield Asked(f"differences, {scatter}", str(n), column, plain, campaigns // 2, differences=True)
    for scatter, n, step, (offset, gain) in product(("common", "own"), (2, 3, 10), (0.1, 1.0), BESIDE):
        beside, column = Corner(n, step, scatter, offset, gain), f"{offset:g} sd, {100 * gain:g} %"
        yield Asked(
            f"results beside an offset and a gain, {scatter}, step {step:g} sd", str(n), column, beside, campaigns
        )
    for n, level in product((2, 3, 5, 10), (20.0, 5.0)):
        relative = Corner(n, scatter="relative", level=level)
        column = f"{100 / level:g} %"
        yield Asked("results, relative", str(n), column, relative, campaigns)
        for apart in (1.0, 3.0, 10.0):
            column = f"{100 / level:g} %, 1 : {apart:g}"
            corner = replace(relative, apart=apart)
            yield Asked("differences, relative", str(n), column, corner, campaigns // 2, differences=True)
    for n, level, factors in product((3, 10), (20.0, 5.0), (0.05, 0.1, 0.2)):
        corner = Corner(n, level=level, factors=factors)
        column = f"{100 * factors:g} %, passes {100 / level:g} %"
        yield Asked("products of three", str(n), column, corner, campaigns // 20)


def found(numbered: tuple[int, Asked]) -> Covered:
    """What the program's own functions make of a cell, drawn from a stream of its own."""
    number, cell = numbered
    ask = of_differences if cell.differences else of_singles
    return ask(cell.corner, cell.campaigns, SEED + number)


def main() -> None:
    """Draw everything and print it."""
    given = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    given.add_argument("--campaigns", type=int, default=5_000)
    given.add_argument("--processes", type=int, default=2)
    options = given.parse_args()
    began = time.perf_counter()
    cells = list(asked(options.campaigns))
    with Pool(options.processes) as pool:
        told = dict(zip(cells, pool.map(found, list(enumerate(cells)), chunksize=4), strict=True))
    for table in dict.fromkeys(cell.table for cell in cells):
        show(table, {cell: covered for cell, covered in told.items() if cell.table == table})
    print(f"{sum(c.intervals for c in told.values())} intervals in {time.perf_counter() - began:.0f} s")


def show(table: str, told: Mapping[Asked, Covered]) -> None:
    """One table, in Markdown."""
    rows, columns = ([*dict.fromkeys(getattr(cell, name) for cell in told)] for name in ("row", "column"))
    worst = max(covered.error for covered in told.values())
    fewest = min(covered.intervals for covered in told.values())
    print(f"\n{table} (≥ {fewest} intervals a corner, standard error ≤ {100 * worst:.2f})\n")
    print(f"| passes | {' | '.join(columns)} |\n| --- |{' --- |' * len(columns)}")
    by_place = {(cell.row, cell.column): covered for cell, covered in told.items()}
    for row in rows:
        print(f"| {row} | {' | '.join(f'{100 * by_place[row, column].share:.1f}' for column in columns)} |")


if __name__ == "__main__":
    main()

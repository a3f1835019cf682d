"""How often exact tests name a winner though two are best alike, at full size. Not a test: it prints the handbook's table.

    .venv/bin/python -m tests.bench.counted_rates [runs]

The suite holds the same cells, smaller: `tests/judgement/test_counted_rates.py`.
"""

from __future__ import annotations

import sys

from tests.judgement.test_counted_rates import counts_named, false_shares

SHARES = (
    ((0.5, 0.5), 3), ((0.5, 0.5), 10), ((0.9, 0.9), 12), ((0.5,) * 4, 10), ((0.8, 0.8, 0.1, 0.1), 8),
    ((0.95, 0.95, 0.5), 20), ((0.7, 0.7), 30),
)  # fmt: skip
COUNTS = (
    ((2, 2), 1), ((10, 10), 1), ((5,) * 4, 1), ((10, 10, 40, 40), 1), ((0.5, 0.5), 3), ((1, 1, 6, 6), 3), ((3, 3), 3),
    ((10, 10, 30, 30), 3), ((3, 3), 6), ((20, 20), 2),
)  # fmt: skip


def main(runs: int = 5000) -> None:
    """Print a line a cell."""
    print(f"{runs} runs a row; a rate of .05 is known to ±{2 * (0.05 * 0.95 / runs) ** 0.5:.3f}")
    for shares, n in SHARES:
        print(f"{false_shares(shares, n, runs):.3f}  yes in {shares}, {n} tries each", flush=True)
    for means, n in COUNTS:
        named = counts_named(means, n, runs)
        print(f"{sum(w is not None for w in named) / runs:.3f}  {means} events a pass, {n} passes", flush=True)
    print(f"{sum(w == 'a' for w in counts_named((4, 12, 12, 12), 3, runs)) / runs:.3f}  right: 4 against 12, 3 passes")


if __name__ == "__main__":
    main(*(int(x) for x in sys.argv[1:]))

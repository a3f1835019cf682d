"""Rates of the weighed verdict at full size, through the program's own joint draws; some half an hour of a processor.

    .venv/bin/python -m tests.bench.verdict_rates [runs]

Each row: contenders, passes, criteria, how far their passes go together, the lead of the first in standard deviations of
a pass; then the shares of runs in which the first, and in which any other, is named. Below stand false winners in corners.
"""

from __future__ import annotations

import sys
from itertools import product
from math import sqrt

from reportgen.judgement.measured import Rules
from tests.evaluation.test_verdict_rates import CORNERS, RELATIVE, rate_in_corner, rate_of_winners


def main(runs: int = 4000) -> None:
    print(f"{runs} runs a row; a rate of .05 is known to ±{2 * sqrt(0.05 * 0.95 / runs):.3f}")
    print("scatter  k  n  criteria  together  lead  first  other")
    for scatter, (k, n), criteria, together, lead in product(
        ("common", "own"), ((2, 3), (4, 3), (4, 5)), (1, 2, 4), (0.0, 0.9), (0.0, 2.0)
    ):
        if criteria == 1 and together:
            continue
        first, other = rate_of_winners(k, n, criteria, together, lead, Rules("higher", scatter), runs)
        print(f"{scatter:7}  {k}  {n}  {criteria:8}  {together:8}  {lead:4}  {first:.3f}  {other:.3f}", flush=True)
    corners = {**CORNERS, "two alike, scatter grows with the level": (RELATIVE, [0.4] * 2, [0.0] * 2, 3)}
    for corner, told in corners.items():
        print(f"{rate_in_corner(*told, runs):.3f}  {corner}", flush=True)


if __name__ == "__main__":
    main(*(int(x) for x in sys.argv[1:]))

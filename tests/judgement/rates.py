"""Campaigns whose truth is known, judged by the program's own rules and by three usual ways beside them.

`found` counts how often a way names a sole winner that isn't ahead (false) and the one that is (right). The suite runs
a few cells small, `tests/bench/rates.py` all of them at full size.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from math import sqrt
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import DeclaredScatter, Measured, Rules
from reportgen.judgement.simultaneous import studentized_range
from reportgen.metrology.uncertain import Source

Runs = NDArray[np.float64]  # contenders × passes
LOWER = Rules("lower")
OWN = Rules("lower", scatter="own")


@dataclass(frozen=True)
class Cell:
    """k contenders, n passes; lower is better. `leads` are how far each lies below the common level of 20, `sds` the
    scatter of one pass of each, all in one unit. `step`: what the instrument reads in; `offset`, `accuracy`, `gain`:
    standard uncertainties shared by all, of each by itself, and of a factor shared by all. `rounds`: the scatter of
    rounds; `specimens`: of what was bought about its product; `drift`: what each run adds, in the order `runs`.
    """

    name: str
    leads: tuple[float, ...]
    sds: tuple[float, ...]
    n: int
    rules: Rules = LOWER
    step: float = 0.0
    offset: float = 0.0
    accuracy: float = 0.0
    gain: float = 0.0
    rounds: float = 0.0
    specimens: float = 0.0
    drift: float = 0.0
    order: str = "one after another"  # or "there and back"
    lognormal: bool = False
    false: float | None = None  # rates of the published rules, found by an independent simulation
    right: float | None = None
    at_most: float | None = None  # the bound on false

    @property
    def best(self) -> int | None:
        """The one that is truly ahead of all others."""
        order = sorted(range(len(self.leads)), key=lambda i: -self.leads[i])
        ahead = len(order) > 1 and self.leads[order[0]] > self.leads[order[1]]
        return order[0] if ahead else None


@dataclass
class Found:
    """Shares of campaigns in which a way named a winner."""

    false: float = 0.0
    right: float = 0.0
    campaigns: int = 0


def simulated(cell: Cell, campaigns: int, seed: int) -> Iterator[Runs]:
    """Passes of so many campaigns, as they would be read."""
    draw = np.random.default_rng(seed)
    k, n = len(cell.leads), cell.n
    level, sds = 20.0 - np.array(cell.leads)[:, None], np.array(cell.sds)[:, None]
    turns = _turns(cell.order, k, n)
    for _ in range(campaigns):
        drawn = draw.normal(0.0, sds, (k, n))
        passes = level * np.exp(drawn) if cell.lognormal else level + drawn
        passes += draw.normal(0.0, cell.rounds, (1, n)) + draw.normal(0.0, cell.specimens, (k, 1))
        passes += draw.normal(0.0, cell.offset) + draw.uniform(-1.0, 1.0, (k, 1)) * cell.accuracy * sqrt(3.0)
        passes *= 1.0 + draw.normal(0.0, cell.gain)
        passes += cell.drift * turns
        if cell.step:
            passes = np.round((passes + draw.uniform(0.0, cell.step)) / cell.step) * cell.step
        yield passes


def _turns(order: str, k: int, n: int) -> Runs:
    """When each pass was run, counted from 0: contender after contender, or in rounds there and back."""
    if order == "one after another":
        return np.arange(k * n, dtype=float).reshape(k, n)
    turns = np.empty((k, n))
    for r in range(n):
        row = np.arange(k) + r * k
        turns[:, r] = row if r % 2 == 0 else row[::-1]
    return turns


def measured(cell: Cell, passes: Runs) -> list[Measured]:
    """The same as judgement is told it, with what is known of the instrument."""
    n = cell.n
    told = []
    for i, values in enumerate(passes):
        mean = float(values.mean())
        known: dict[Source, float] = {}
        if cell.offset:
            known[Source("offset", "meter", "", "normal")] = cell.offset
        if cell.gain:
            known[Source("gain", "meter", "", "normal")] = cell.gain * mean
        if cell.accuracy:
            known[Source("accuracy", "meter", str(i))] = cell.accuracy
        steps = (cell.step,) if cell.step else ()
        rounds = tuple(map(str, range(n))) if cell.rules.rounds else ()
        told.append(Measured(str(i), mean, tuple(values.tolist()), known, steps, rounds))
    return told


def by_the_rules(cell: Cell, passes: Runs) -> int | None:
    """The sole winner the program names."""
    winner = judge(measured(cell, passes), cell.rules).first.winner
    return None if winner is None else int(winner)


def by_the_means(cell: Cell, passes: Runs) -> int | None:
    """Whoever has the lowest mean, as most tables of tests have it."""
    means = passes.mean(axis=1)
    order = np.argsort(means, kind="stable")
    return int(order[0]) if means[order[0]] < means[order[1]] else None


def by_ranges(cell: Cell, passes: Runs) -> int | None:
    """Whoever has every pass below every pass of all others."""
    highest, lowest = passes.max(axis=1), passes.min(axis=1)
    first = int(np.argmin(highest))
    return first if highest[first] < np.delete(lowest, first).min() else None


def by_tukey(cell: Cell, passes: Runs) -> int | None:
    """Whoever differs from every other by Tukey's method for all pairs, at 5 %."""
    k, n = passes.shape
    if n < 2:
        return None
    half = studentized_range(0.95, k, k * (n - 1)) * sqrt(float(passes.var(axis=1, ddof=1).mean()) / n)
    means = np.sort(passes.mean(axis=1))
    return int(np.argmin(passes.mean(axis=1))) if means[1] - means[0] > half else None


WAYS: Mapping[str, Callable[[Cell, Runs], int | None]] = {
    "the rules": by_the_rules,
    "lowest mean": by_the_means,
    "passes apart": by_ranges,
    "all pairs (Tukey)": by_tukey,
}


def found(cell: Cell, campaigns: int, seed: int = 2026, ways: tuple[str, ...] = ("the rules",)) -> dict[str, Found]:
    """What each way names over so many campaigns; all ways see the same ones."""
    told = {way: Found(campaigns=campaigns) for way in ways}
    for passes in simulated(cell, campaigns, seed):
        for way in ways:
            winner = WAYS[way](cell, passes)
            if winner is None:
                continue
            if winner == cell.best:
                told[way].right += 1.0 / campaigns
            else:
                told[way].false += 1.0 / campaigns
    return told


def spread(rate: float, campaigns: int) -> float:
    """Three binomial standard deviations."""
    return 3.0 * sqrt(rate * (1.0 - rate) / campaigns)


EQUAL, TIED, AHEAD = (0.0,) * 4, (9.0, 9.0, 0.0, 0.0), (2.0, 0.0, 0.0, 0.0)
ONE = (1.0,) * 4
ROUNDS = Rules("lower", rounds=True)
RELATIVE = Rules("lower", scatter="relative")

# Rates and bounds: 20,000 and more runs a cell of an independent simulation of the published rules (first place: Gutmann
# and Maymin 1987; pairs: Tukey and Kramer; own scatter: Welch, degrees truncated as JCGM 100, G.4.1 asks).
CELLS: tuple[Cell, ...] = (
    Cell("four equal, 3 passes", EQUAL, ONE, 3, false=0.011),
    Cell("two best equal, 3 passes", TIED, ONE, 3, false=0.050),
    Cell("one ahead by 2 sd, 2 passes", AHEAD, ONE, 2, right=0.18),
    Cell("one ahead by 2 sd, 3 passes", AHEAD, ONE, 3, right=0.36),
    Cell("one ahead by 2 sd, 5 passes", AHEAD, ONE, 5, right=0.69),
    Cell("two equal, 2 passes", (0.0, 0.0), (1.0, 1.0), 2, false=0.050),
    Cell("eight equal, 2 passes", (0.0,) * 8, (1.0,) * 8, 2, at_most=0.05),
    Cell("two best of eight equal, 2 passes", (9.0, 9.0, *(0.0,) * 6), (1.0,) * 8, 2, at_most=0.05),
    *(
        Cell(f"two best equal, 3 passes, step {step:g} sd", TIED, ONE, 3, step=step, at_most=0.053)
        for step in (0.5, 1.0, 2.0, 5.0)
    ),
    Cell("two best equal, 2 passes, step 1 sd", TIED, ONE, 2, step=1.0, at_most=0.053),
    Cell("one ahead by 2 sd, 3 passes, step 1 sd", AHEAD, ONE, 3, step=1.0, right=0.34),
    Cell("one ahead by 2 sd, 5 passes, step 1 sd", AHEAD, ONE, 5, step=1.0, right=0.65),
    Cell("own scatter: four equal, 3 passes", EQUAL, ONE, 3, OWN, at_most=0.051),
    *(
        Cell(f"own scatter 1:{r}: two best equal, {n} passes", TIED, (1.0, float(r), 1.0, 1.0), n, OWN, at_most=0.051)
        for r in (3, 10, 50)
        for n in (2, 3, 5)
    ),
    Cell("own scatter: one ahead by 2 sd, 2 passes", AHEAD, ONE, 2, OWN, right=0.001),
    Cell("own scatter: one ahead by 2 sd, 3 passes", AHEAD, ONE, 3, OWN, right=0.08),
    Cell("own scatter: one ahead by 2 sd, 5 passes", AHEAD, ONE, 5, OWN, right=0.54),
    *(
        Cell(f"called common, one scatters 1:{r}: four equal, 3 passes", EQUAL, (float(r), 1.0, 1.0, 1.0), 3, false=rate)
        for r, rate in ((3, 0.044), (10, 0.10), (50, 0.12))
    ),
    *(
        Cell(f"called common, of the two best, equal, one scatters 1:{r}, 3 passes", (99.0, 99.0, 0.0, 0.0),
             (1.0, float(r), 1.0, 1.0), 3, false=rate)
        for r, rate in ((3, 0.15), (10, 0.24))
    ),
    Cell("each meter off by 1 sd, known: two best equal, 3 passes", TIED, ONE, 3, accuracy=1.0, false=0.044),
    Cell("one meter off by 5 sd for all: two best equal, 3 passes", TIED, ONE, 3, offset=5.0, false=0.050),
    Cell("one meter off by 5 sd for all: one ahead by 2 sd", AHEAD, ONE, 3, offset=5.0, right=0.36),
    Cell("a gain known to 1 %: two best equal, 3 passes", TIED, ONE, 3, gain=0.01, at_most=0.053),
    Cell("a gain known to 1 %: one ahead by 2 sd, 3 passes", AHEAD, ONE, 3, gain=0.01, right=0.36),
    *(
        Cell(f"in rounds that scatter {r:g} sd: one ahead by 2 sd", AHEAD, ONE, 3, ROUNDS, rounds=r, right=0.33)
        for r in (0.0, 1.0, 2.0)
    ),
    *(
        Cell(f"rounds that scatter {r:g} sd, not used: one ahead by 2 sd", AHEAD, ONE, 3, rounds=r, right=rate)
        for r, rate in ((1.0, 0.17), (2.0, 0.07))
    ),
    Cell("scatter of 20 %, relative: four equal", EQUAL, (0.2,) * 4, 3, RELATIVE, lognormal=True, false=0.011),
    Cell("scatter of 20 %, relative: two best equal", TIED, (0.2,) * 4, 3, RELATIVE, lognormal=True, at_most=0.053),
    Cell("scatter of 20 %, called common: four equal", EQUAL, (0.2,) * 4, 3, lognormal=True, at_most=0.05),
    *(
        Cell(f"contender after contender, drift {d:g} sd a run: four equal, 6 passes", EQUAL, ONE, 6, drift=d)
        for d in (0.1, 0.3)
    ),
    Cell("there and back, drift 0.3 sd a run: four equal, 6 passes", EQUAL, ONE, 6, drift=0.3, order="there and back", at_most=0.052),
    *(
        Cell(f"one specimen each, which differ {r:g} sd: two best products equal", TIED, ONE, 3, specimens=r, false=rate)
        for r, rate in ((0.5, 0.12), (1.0, 0.28), (2.0, 0.54))
    ),
    *(
        Cell(f"one reading each, guessed scatter right (8 degrees): {what}", leads, ONE, 1,
             Rules("lower", declared=DeclaredScatter(1.0, 8)), at_most=bound)
        for what, leads, bound in (("two best equal", TIED, 0.05), ("one ahead by 2 sd", AHEAD, None))
    ),
)  # fmt: skip

MATTERS: tuple[float, ...] = (2.0, 3.0, 4.0)


def inside_margin(asked: tuple[float, int]) -> float:
    """How often two of four equals, 3 passes each, are said to be as good as equal within (margin in sd, campaigns)."""
    margin, campaigns = asked
    cell = Cell("", EQUAL, ONE, 3, Rules("lower", matters=margin))
    decided = [
        judge(measured(cell, passes), cell.rules).pairs[0].decision == "no difference that matters"
        for passes in simulated(cell, campaigns, 5)
    ]
    return sum(decided) / campaigns


def pairs_wrong(asked: tuple[int, int, Literal["common", "own"], int]) -> float:
    """How often some pair of (k, passes, scatter, campaigns) equals is resolved."""
    k, n, scatter, campaigns = asked
    cell = Cell("", (0.0,) * k, (1.0,) * k, n, Rules("lower", scatter=scatter))
    wrong = [any(p.resolved for p in judge(measured(cell, x), cell.rules).pairs) for x in simulated(cell, campaigns, 6)]
    return sum(wrong) / campaigns

"""Passes that were all read against one reading of another contender, by simulation.

Outside: the model alone (normal passes of equal true value; numpy's generator). The guarantee of the rules: a false
sole winner, and a false resolved pair among all, in one of twenty campaigns at most.
"""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Judged, Measured, Rules
from tests.campaigns import comparison_of, results_of

RUNS = 600
MOST = 0.05 + 3 * math.sqrt(0.05 * 0.95 / RUNS)


def alike(random: np.random.Generator, passes: int, differences: float) -> Judged:
    """Four contenders of one true value, passes of scatter 1: `ostler` read once, two against it, one by itself."""
    once = random.normal()
    measured = [Measured("ostler", once, (once,))]
    for name in ("corvane", "brindle"):
        values = once + random.normal(0, differences, passes)
        stands_on = {"ostler": 1 - 1 / passes}
        measured.append(Measured(name, float(values.mean()), tuple(values), stands_on=stands_on))
    own = random.normal(0, 1, passes)
    return judge([*measured, Measured("tamsin", float(own.mean()), tuple(own))], Rules("lower"))


@pytest.mark.parametrize("passes", [2, 3, 5])
@pytest.mark.parametrize("differences", [0.3, math.sqrt(2)])
def test_passes_that_stand_on_one_reading_are_no_repeats_of_it(passes: int, differences: float) -> None:
    """Without it a false winner came in 11 % (differences of scatter 0.3, 3 passes), a false pair in 27 to 37 %."""
    random = np.random.default_rng(passes)
    told = [alike(random, passes, differences) for _ in range(RUNS)]
    assert sum(j.first.winner is not None for j in told) / RUNS <= MOST
    assert sum(any(p.resolved for p in j.pairs) for j in told) / RUNS <= MOST


CASES = """\
title: Which case gets hottest?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II, brindle: Brindle Dart}
instruments:
  probe: 0.1 °C, accuracy ±1 °C
measure:
  case: one reading, °C, lower, probe
readings: readings.csv
"""


def test_the_scatter_of_a_reading_that_all_passes_stand_on_is_in_what_it_is_compared_with(tmp_path: Path) -> None:
    """Corvane's two passes stand on one reading: u² of the difference to Brindle is s²(½ + ½ + ½), to Ostler s²(½ + 1);
    s = 0.4243 is that of Brindle alone (statistics.stdev of 60.2 and 60.8), the instrument's share cancels but for steps
    under s/2."""
    rows = "contender,pass,case\nostler,1,55.2\ncorvane,1,ostler + 10.1\ncorvane,2,ostler + 10.5\n"
    told = results_of(tmp_path, CASES, readings=rows + "brindle,1,60.2\nbrindle,2,60.8\n")
    step = 0.1**2 / 12  # of Ostler's reading, which Corvane has and Brindle hasn't
    for other, weight, more in (("brindle", 1.5, step), ("ostler", 1.5, 0.0)):
        pair = comparison_of(told, "case", "corvane", other)
        assert pair["u"] == pytest.approx(math.sqrt(weight * 0.18 + more), rel=1e-6)


def test_a_reading_against_another_stands_in_the_session_of_that_one(tmp_path: Path) -> None:
    """Ostler was read on day a and Corvane against it: with Brindle, read on day b, neither can be ranked."""
    rows = "contender,session,pass,case\nostler,a,1,55.2\ncorvane,b,1,ostler + 10.1\ncorvane,b,2,ostler + 10.5\n"
    told = results_of(tmp_path, CASES, readings=rows + "brindle,b,1,60.2\nbrindle,b,2,61.0\n")
    for first in ("corvane", "ostler"):
        pair = comparison_of(told, "case", first, "brindle")
        assert (pair["resolved"], pair["reason"]["code"]) == (False, "sessions-apart")

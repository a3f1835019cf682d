"""How long the reckoning of a campaign takes beside its charts: ten tests, six contenders, five passes. Not a test.

    .venv/bin/python -m tests.bench.reckoning [--times 3]

To first order, then with joint draws (Monte Carlo) where they are asked for; imports and stored quantiles come before.
Every fourth formula bends so much that its intervals come from draws: the square of a few whole seconds below the stroke.
"""

from __future__ import annotations

import argparse
import random
import tempfile
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from statistics import median
from typing import Any
from unittest import mock

from reportgen.campaign.declared import Quantity
from reportgen.charts.draw import figures
from reportgen.evaluation import told
from reportgen.evaluation.evaluate import evaluate
from reportgen.evaluation.gathered import Gathered
from reportgen.evaluation.workings import Workings
from tests.evaluation.bench import all_stages

TESTS, CONTENDERS, PASSES = 10, 6, 5
FORMULAS = (
    "before - after",
    "(before - after) / time",
    "(hot - cold) * before / (before - after)",
    "energy / time ^ 2",
)
TEST = """\
title: Test {n}
readings:
  file: r{n}.csv
  columns:
    before: {{column: before, unit: g, instrument: scale}}
    after: {{column: after, unit: g, instrument: scale}}
    hot: {{column: hot, unit: °C, instrument: thermometer}}
    cold: {{column: cold, unit: °C, instrument: thermometer}}
    time: {{column: time, unit: s, instrument: watch}}
quantities:
  q{n}: {{formula: "{formula}", unit: "{unit}", better: lower}}
headline: q{n}
"""
UNITS = ("g", "g/s", "K", "J/s^2")
INSTRUMENTS = "scale: 0.1 g, accuracy ±0.3 g\nthermometer: 0.1 °C, accuracy ±0.5 °C\nwatch: 1 s, accuracy ±0.5 s\n"


def campaign() -> tuple[str, dict[str, str]]:
    """The campaign's own file and the others by path."""
    draw = random.Random(2026)
    names = [f"stove-{n}" for n in range(1, CONTENDERS + 1)]
    files = {
        "instruments.yaml": INSTRUMENTS,
        "constants.yaml": "energy: {value: 900 J, within: 9 J, source: a guess}\n",
    }
    for n in range(TESTS):
        at = n % len(FORMULAS)
        files[f"tests/t{n}.yaml"] = TEST.format(n=n, formula=FORMULAS[at], unit=UNITS[at])
        seconds = 7 if at == 3 else 37
        rows = ["contender,pass,before,after,hot,cold,time"]
        for c, name in enumerate(names):
            for p in range(1, PASSES + 1):
                numbers = (300 + draw.gauss(0, 1), 280 - c + draw.gauss(0, 0.3), 95.3, 15.1 + draw.gauss(0, 0.2))
                rows.append(
                    ",".join((name, str(p), *(f"{x:.1f}" for x in numbers), f"{seconds + c + draw.gauss(0, 0.5):.0f}"))
                )
        files[f"r{n}.csv"] = "\n".join(rows) + "\n"
    contenders = ", ".join(f"{name}: Stove {n}" for n, name in enumerate(names, 1))
    tests = ", ".join(f"t{n}" for n in range(TESTS))
    return f"title: T\ncontenders: {{{contenders}}}\ntests: [{tests}]\n", files


def straight(
    workings: Workings, quantity: Quantity, gathered: Mapping[str, Gathered], by_specimen: bool
) -> dict[str, Gathered]:
    """In place of draws: none are offered."""
    return dict(gathered)


def took(work: Callable[[], Any]) -> float:
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    asked.add_argument("--times", type=int, default=3)
    given = asked.parse_args()
    with tempfile.TemporaryDirectory() as place:
        written, files = campaign()
        declared, readings, evaluation = all_stages(Path(place), written, **files)

    def first_order() -> None:
        with mock.patch.object(told, "with_draws", straight):
            evaluate(declared, readings)

    first_order()
    seconds: dict[str, list[float]] = {}
    for _ in range(given.times):
        for name, work in (
            ("to first order", first_order),
            ("with draws", lambda: evaluate(declared, readings)),
            ("its charts", lambda: figures(declared, evaluation)),
        ):
            seconds.setdefault(name, []).append(took(work))
    drawn = [r.draws for r in (*evaluation.results, *evaluation.comparisons) if r.draws]
    results, pairs = len(evaluation.results), len(evaluation.comparisons)
    print(f"{results} results and {pairs} comparisons; {len(drawn)} drawn, {sum(d.needed for d in drawn)} of them used")
    charts = median(seconds["its charts"])
    for name, each in seconds.items():
        print(f"  {name:<16}{median(each):8.3f} s  {median(each) / charts:6.2f} of the charts")


if __name__ == "__main__":
    main()

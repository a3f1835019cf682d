"""How long the reckoning of a campaign takes beside its charts: ten tests, six contenders, five passes. Not a test.

    .venv/bin/python -m tests.bench.reckoning [--times 5]

Each time is a process of its own, imports done beforehand, and takes in turn: first order with every quantile worked
out, first order with those remembered (the least of three times), the same with first place judged again without each
pass, all with joint draws (Monte Carlo), all once more with everything from the store as the next compile has it, the
charts as a compile draws them, and the charts once more with their renderer running. Medians of processor time, and of the ratios within one process, which depend little on the machine.
Every fourth formula bends so much that its intervals come from draws: the square of a few whole seconds below the stroke.
"""

from __future__ import annotations

import argparse
import json
import random
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Mapping
from pathlib import Path
from statistics import median
from typing import Any
from unittest import mock

import altair  # noqa: F401  # imports are no part of the charts' time
import vl_convert  # noqa: F401  # nor is this one

from reportgen.build.reckoning_kept import evaluation
from reportgen.campaign.declared import Quantity
from reportgen.charts.draw import figures
from reportgen.evaluation import told
from reportgen.evaluation.evaluate import evaluate
from reportgen.evaluation.evaluated import Evaluation
from reportgen.evaluation.gathered import Gathered
from reportgen.evaluation.traces_read import no_samples
from reportgen.evaluation.workings import Workings
from reportgen.judgement.reach import remembered
from reportgen.store.kept import kept_in
from tests.evaluation.bench import read_in

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


def nothing_else(*asked: object) -> None:
    """In place of judging again with one thing otherwise: it is not asked."""


def took(work: Callable[[], Any]) -> float:
    """Processor seconds."""
    begun = time.process_time()
    work()
    return time.process_time() - begun


def once() -> dict[str, float]:
    """One process's times, and how many results, pairs and drawn intervals there were."""
    with tempfile.TemporaryDirectory() as place:
        written, files = campaign()
        declared, readings = read_in(Path(place), written, **files)
        kept = kept_in(Path(place, "kept"))

        def first_order() -> None:
            with mock.patch.object(told, "with_draws", straight), mock.patch.object(told, "hangs_on", nothing_else):
                evaluate(declared, readings)

        def again_and_again() -> None:
            with mock.patch.object(told, "with_draws", straight):
                evaluate(declared, readings)

        def with_store() -> Evaluation:
            return evaluation(declared, readings, no_samples, "a program", kept)

        exact, first = took(first_order), min(took(first_order) for _ in range(3))
        hanging, again_without = took(again_and_again), min(took(again_and_again) for _ in range(3))
        drawn = took(with_store)
        for known in remembered._all:
            known.clear()
        again = took(with_store)
        found = with_store()
        charts, charts_again = took(lambda: figures(declared, found)), took(lambda: figures(declared, found))
    draws = [r.draws for r in (*found.results, *found.comparisons) if r.draws]
    return {
        "results": len(found.results),
        "pairs": len(found.comparisons),
        "drawn": len(draws),
        "used": sum(d.needed for d in draws),
        "first order": first,
        "exact quantiles besides": exact - first,
        "judged again besides": again_without - first,
        "… its exact quantiles": hanging - again_without,
        "draws besides": drawn - again_without,
        "all from what was kept": again,
        "charts": charts,
        "charts, renderer running": charts_again,
    }


def main() -> None:
    """Measure and print."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    asked.add_argument("--times", type=int, default=5)
    asked.add_argument("--once", action="store_true", help="one process's times, as JSON")
    given = asked.parse_args()
    if given.once:
        print(json.dumps(once()))
        return
    words = [sys.executable, "-m", "tests.bench.reckoning", "--once"]
    runs = [
        json.loads(subprocess.run(words, capture_output=True, text=True, check=True).stdout) for _ in range(given.times)
    ]
    counts = "{results} results and {pairs} comparisons; {drawn} drawn, {used} of them used".format(**runs[0])
    print(f"{counts}; {given.times} processes, medians")
    for name in list(runs[0])[4:]:
        seconds = median(run[name] for run in runs)
        ratios = (median(run[name] / run[of] for run in runs) for of in ("charts", "charts, renderer running"))
        print(f"  {name:<26}{seconds:8.3f} s", *(f"{ratio:8.2f}" for ratio in ratios))
    print("the last two columns: parts of the charts, and of the charts with their renderer running")


if __name__ == "__main__":
    main()

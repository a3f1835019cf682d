"""Campaigns with a weighed verdict, the verdict made by hand: what pages and charts are told, without any draws.

`told_weighed(place, overall)` puts `overall` into a campaign of three stoves and three groups. Invented data: no expected
number comes from it.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations
from pathlib import Path
from typing import Any

from reportgen.charts.draw import figures
from reportgen.judgement.verdict.overall import (
    Cell,
    Lead,
    Overall,
    PairIndex,
    Reader,
    Turn,
    WeightMap,
    WithoutCriterion,
)
from reportgen.pages import Told
from tests.pages.stoves import told_of

THREE = ("corvane", "ostler", "brindle")
GROUPS = ("thrift", "speed", "carrying")
WORTH: Mapping[str, tuple[float, ...]] = {
    "corvane": (0.9, 0.2, 0.5),
    "ostler": (0.3, 0.9, 0.35),
    "brindle": (0.5, 0.45, 0.9),
}

YAML = """\
title: Which stove?
contenders:
  corvane: {title: Corvane Sol}
  ostler: {title: Ostler Mk II}
  brindle: {title: Brindle}
measure:
  gas burned: one reading, g, lower
  boil time: timed, s, lower
  packed weight: one reading, g, lower
readings: readings.csv
verdict:
  must:
    - quantity: boil time
      at most: 10 min
  groups:
    thrift: {title: Thrift, criteria: {gas burned: {worst: 25 g, best: 10 g}}}
    speed: {title: Speed, criteria: {boil time: {worst: 400 s, best: 120 s}}}
    carrying: {title: Carrying, criteria: {packed weight: {worst: 300 g, best: 90 g}}}
"""
READINGS = """\
contender,pass,gas burned,boil time,packed weight
corvane,1,14.2,301,210
ostler,1,18.4,152,240
brindle,1,17.1,244,86
corvane,2,14.0,305,
ostler,2,18.9,150,
brindle,2,17.3,249,
"""


def lead_at(weights: Sequence[float], worth: Mapping[str, Sequence[float]] = WORTH, sharp: float = 14.0) -> Lead:
    """Who is ahead by a plain weighted sum; the sharper, the firmer."""
    of = {c: sum(w * v for w, v in zip(weights, values, strict=True)) for c, values in worth.items()}
    best, second = sorted(of, key=lambda c: -of[c])[:2]
    index = 1 / (1 + math.exp(-sharp * (of[best] - of[second])))
    return Lead(best, index, index >= 0.975)


def weight_map(
    groups: Sequence[str] = GROUPS, steps: int = 20, worth: Mapping[str, Sequence[float]] = WORTH
) -> WeightMap:
    if len(groups) == 2:
        places = [(i / steps, 1 - i / steps) for i in range(steps + 1)]
    else:
        places = [  # type: ignore[misc]  # three of them
            (i / steps, j / steps, (steps - i - j) / steps) for i in range(steps + 1) for j in range(steps + 1 - i)
        ]
    return WeightMap(tuple(groups), steps, tuple(Cell(w, lead_at(w, worth)) for w in places))


def pairs(*index: float, of: Sequence[str] = THREE) -> tuple[PairIndex, ...]:
    """The indices of every pair in order; none for none."""
    return tuple(PairIndex(a, b, p) for (a, b), p in zip(combinations(of, 2), index, strict=True)) if index else ()


def overall(index: Sequence[float], lead: Lead, known: Sequence[float] | None = None, **changes: Any) -> Overall:
    """Three stoves, all weightings, two of three criteria with repeats; `known` as `index` where nothing is said."""
    made = Overall(
        contenders=THREE, out={}, groups=GROUPS, weights="all", given=(), index=pairs(*index),
        index_known=pairs(*(index if known is None else known)), places={
            "corvane": (0.3, 0.4, 0.3), "ostler": (0.25, 0.35, 0.4), "brindle": (0.45, 0.25, 0.3),
        }, equal_first={"corvane": 0.31, "ostler": 0.36, "brindle": 0.33}, with_repeats=2, criteria=3, lead=lead,
        winner=None, draws=10_000,
    )  # fmt: skip
    return replace(made, **changes)


def whole() -> Overall:
    """With everything the engine may give."""
    lead = Lead("brindle", 0.58, False)
    return overall(
        (0.61, 0.42, 0.37), lead,
        turns=(Turn("thrift", 0.43, "brindle", "corvane"), Turn("speed", 0.55, "brindle", "ostler")),
        without=(
            WithoutCriterion("gas-burned", Lead("brindle", 0.71, False)),
            WithoutCriterion("boil-time", Lead("corvane", 0.62, False)),
            WithoutCriterion("packed-weight", Lead("brindle", 0.52, False)),
        ),
        map=weight_map(), past={"packed-weight": ("brindle",)},
        readers=tuple(
            Reader(name, w, lead_at(w), ())
            for name, w in (("In a hurry", (0.2, 0.7, 0.1)), ("On foot for a week", (0.35, 0.05, 0.6)))
        ),
    )  # fmt: skip


def told_weighed(place: Path, of: Overall | None, yaml_text: str = YAML, readings: str = READINGS) -> Told:
    """Everything pages are told of the campaign, with this verdict and its charts."""
    told = told_of(place, yaml_text, readings, {})
    verdict = told.evaluation.verdict
    assert verdict is not None
    evaluation = replace(told.evaluation, verdict=replace(verdict, overall=of))
    return replace(told, evaluation=evaluation, figures=figures(told.declared, evaluation))

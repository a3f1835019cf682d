"""A campaign written down, read and evaluated, without a site: what tests of this room start from."""

from __future__ import annotations

import math
from pathlib import Path

from uncertainties import ufloat

from reportgen.campaign.declared import Declared
from reportgen.campaign.load import load_campaign, load_publication
from reportgen.evaluation.evaluate import evaluate
from reportgen.evaluation.evaluated import Comparison, Evaluation, Result
from reportgen.evaluation.observing import Observer
from reportgen.intake import Readings, read_readings, with_instruments
from reportgen.metrology.uncertain import Uncertain
from reportgen.sources import find_workspace
from tests.campaigns import write_campaign

THREE = (
    "contenders: {corvane: Corvane Sol, ostler: {title: Ostler Mk II, also called: [the red one]}, brindle: Brindle}\n"
)


def evaluated(place: Path, yaml_text: str, **files: str) -> Evaluation:
    """The campaign's evaluation; raises Refused as a compile would."""
    return all_stages(place, yaml_text, **files)[2]


def all_stages(place: Path, yaml_text: str, **files: str) -> tuple[Declared, Readings, Evaluation]:
    """Declared, readings and evaluation of one written campaign."""
    declared, readings = read_in(place, yaml_text, **files)
    return declared, readings, evaluate(declared, readings)


def read_in(place: Path, yaml_text: str, **files: str) -> tuple[Declared, Readings]:
    """Declared and readings of one written campaign."""
    folder = write_campaign(place, yaml_text, **files)
    ws = find_workspace(folder)
    declared = load_campaign(ws, "", load_publication(ws)[0])
    readings = read_readings(ws, declared)
    return with_instruments(declared, readings), readings


def result(evaluation: Evaluation, quantity: str, contender: str, part: str = "") -> Result:
    found = evaluation.of(quantity, contender, part)
    assert found is not None
    return found


def value(evaluation: Evaluation, quantity: str, contender: str) -> float:
    estimate = result(evaluation, quantity, contender).estimate
    assert estimate is not None
    assert estimate.value is not None
    return estimate.value


def pair(evaluation: Evaluation, quantity: str, first: str, second: str) -> Comparison:
    (found,) = [c for c in evaluation.comparisons if (c.quantity, c.first, c.second) == (quantity, first, second)]
    return found


def observer(place: Path, text: str, readings: str) -> tuple[Observer, dict[tuple[str, str], Uncertain]]:
    """Contender and name → the reading as it goes into formulas."""
    declared, read, _ = all_stages(place, text, readings=readings)
    bench = Observer(declared.campaign, read.readings)
    return bench, {(k.contender, k.name): bench.observed(r) for k, r in read.readings.items()}


def uniform(half: float):
    """An input of `uncertainties` with the standard uncertainty of a uniform ±half (JCGM 100, 4.3.7)."""
    return ufloat(0.0, half / math.sqrt(3))

"""Constants with the uncertainty their source gives: a width, a standard uncertainty, an expanded one with its factor."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, refusal, result_of, results_of

HEAT = """\
title: Heat from gas
contenders:
  corvane: Corvane Sol
constants:
  heating value: {{value: 46 kJ/g, source: a certificate{more}}}
measure:
  gas:
    kind: one reading
    unit: g
    instrument: fine
  heat:
    formula: gas * heating_value
    unit: kJ
instruments:
  fine: {{resolution: 0.0001 g, accuracy: unknown}}
readings: readings.csv
"""
GAS = "contender,pass,gas\ncorvane,1,10.0000\n"


@pytest.mark.parametrize(
    ("more", "u", "degrees"),
    [
        (", within: 0.6 kJ/g", 6 / math.sqrt(3), None),  # JCGM 100, 4.3.7: a/√3
        (", u: 0.3 kJ/g", 3.0, None),  # 4.3.2
        (", uncertainty: 0.6 kJ/g, k: 2", 3.0, None),  # 4.3.3: U/k
        (", uncertainty: 0.6 kJ/g, k: 2.0, degrees: 8", 3.0, 8),  # G.4.2
        (", within: 600 J/g, degrees: 2", 6 / math.sqrt(3), 2),  # H.1.3.6: a rectangular one known to a half
    ],
)
def test_a_constant_is_as_uncertain_as_its_source_says(
    tmp_path: Path, more: str, u: float, degrees: int | None
) -> None:
    heat = result_of(results_of(tmp_path, HEAT.format(more=more), readings=GAS), "heat", "corvane")
    (line,) = [b for b in heat["budget"] if b["of"] == "heating-value"]
    assert line["size"] == pytest.approx(u, rel=1e-9)
    assert line["degrees"] == degrees
    if degrees:
        assert heat["effective_degrees"] == degrees  # JCGM 100, G.4.1: nothing else is uncertain to speak of


@pytest.mark.parametrize(
    ("more", "rule", "says"),
    [
        (", u: 0.3 kJ/g, within: 0.6 kJ/g", "two-widths", "one uncertainty"),
        (", u: 0.3 kJ/g, uncertainty: 0.6 kJ/g, k: 2", "two-widths", "one uncertainty"),
        (", uncertainty: 0.6 kJ/g", "uncertainty-without-k", "no coverage factor"),
        (", u: 0.3 kJ/g, k: 2", "k-without-uncertainty", "factor of an expanded uncertainty"),
        (", uncertainty: 0.6 kJ/g, k: 0", "k-below-one", "coverage factor of 0"),
        (", uncertainty: 0.6 kJ/g, k: 0.5", "k-below-one", "smaller than the standard uncertainty"),
        (", degrees: 8", "degrees-without-u", "how well an uncertainty is known"),
        (", u: 0.3 kJ/g, degrees: 0", "wrong-value", "0"),
        (", u: 0.3 g", "unit", "kJ/g"),
    ],
)
def test_what_goes_together_badly_is_told_at_its_place(tmp_path: Path, more: str, rule: str, says: str) -> None:
    (finding,) = refusal(tmp_path, HEAT.format(more=more), readings=GAS)
    assert finding.rule == rule
    assert finding.place.line == 5
    assert says in finding.says
    assert finding.do


def test_the_page_says_how_well_a_constant_is_known(tmp_path: Path) -> None:
    compile_campaign(tmp_path, HEAT.format(more=", uncertainty: 0.6 kJ/g, k: 2"), readings=GAS)
    (page,) = (tmp_path / "stoves/.site").rglob("heat.html")
    text = " ".join(page.read_text(encoding="utf-8").replace("\u00a0", " ").split())
    assert "46 kJ/g, give or take 0.6 kJ/g (about 95 % sure, k = 2)" in text

"""Passes of several specimens: each specimen is one value, wherever passes are joined."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from tests.campaigns import compile_campaign, result_of

LEVELS = """\
title: How loud?
contenders:
  harl: {title: Harl, specimens: [A, B]}
  tolk: {title: Tolk, specimens: [A, B]}
instruments:
  meter: {accuracy: unknown}
measure:
  noise: {kind: one reading, unit: dB, instrument: meter, over passes: energy mean, better: lower}
readings: readings.csv
"""


def test_levels_of_specimens_are_joined_by_energy_as_those_of_passes_are(tmp_path: Path) -> None:
    """ISO 3745, equation of the mean level; by hand: A gives 80, B 90 and 90; (10⁸ + 10⁹)/2 is 87.4 dB, and the plain
    mean of 80 and 90 would be 85, that of all energies 88.4."""
    table = "contender,specimen,pass,noise\nharl,A,1,80.0\nharl,B,1,90.0\nharl,B,2,90.0\ntolk,A,1,70.0\ntolk,B,1,71.0\n"
    told = compile_campaign(tmp_path, LEVELS, readings=table)
    assert result_of(told, "noise", "harl")["value"] == pytest.approx(10 * math.log10((10**8 + 10**9) / 2), abs=1e-9)


SHARE = """\
title: How much of the gas is left?
contenders:
  harl: {title: Harl, specimens: [A, B]}
instruments:
  scale: {accuracy: unknown}
measure:
  gas: {kind: one reading, unit: g, instrument: scale, better: lower}
  share: {formula: gas / mean_of_passes(gas), unit: "%"}
  bent: {formula: gas * gas / mean_of_passes(gas), unit: g}
readings: readings.csv
"""
# A ran three times: its mean is 20, that of B 30, and theirs 25; all four readings together would give 22.5
UNEQUAL = "contender,specimen,pass,gas\nharl,A,1,19\nharl,A,2,20\nharl,A,3,21\nharl,B,1,30\n"


def test_a_mean_of_passes_counts_each_specimen_once_however_often_it_ran(tmp_path: Path) -> None:
    told = compile_campaign(tmp_path, SHARE, readings=UNEQUAL)
    passes = result_of(told, "share", "harl")["by_pass"]
    assert [p["value"] for p in passes] == pytest.approx([76, 80, 84, 120])


def test_what_is_drawn_is_what_was_worked_out(tmp_path: Path) -> None:
    """A formula that bends is worked out anew on draws; with passes that weigh unevenly the middle stays where it was."""
    told = compile_campaign(tmp_path, SHARE, readings=UNEQUAL)
    bent = result_of(told, "bent", "harl")
    assert bent["value"] == pytest.approx(((19**2 + 20**2 + 21**2) / 3 + 30**2) / 2 / 25)


def test_a_quantity_taken_as_a_whole_has_the_scatter_of_its_specimens(tmp_path: Path) -> None:
    """By hand: specimens give 20 and 30, so 25 ± 5 with one degree of freedom, not the 22.5 ± 2.5 of four passes."""
    yaml = """\
title: What a fill costs
contenders:
  harl: {title: Harl, specimens: [A, B]}
instruments:
  scale: {resolution: 0.001 g, accuracy: unknown}
constants:
  price: {value: 2 EUR/g, source: the shelf}
tests: [weighing, paying]
"""
    told = compile_campaign(
        tmp_path, yaml, **{
            "tests/weighing.yaml": "title: Weighing\nquantities:\n  gas: {kind: one reading, unit: g, instrument: scale, better: lower}\nreadings: readings/weighing.csv\n",
            "tests/paying.yaml": "title: Paying\nquantities:\n  fills: {kind: one reading, unit: points}\n  cost: {formula: gas * price * fills, unit: EUR*points, better: lower}\nheadline: cost\nreadings: readings/paying.csv\n",
            "readings/weighing.csv": UNEQUAL, "readings/paying.csv": "contender,specimen,pass,fills\nharl,A,1,0.9\nharl,A,2,1.1\n",
        },
    )  # fmt: skip
    cost = result_of(told, "cost", "harl")
    assert cost["value"] == pytest.approx(50.0)
    (scatter,) = [line for line in cost["budget"] if (line["sort"], line["of"]) == ("scatter", "gas")]
    assert (abs(scatter["size"]), scatter["degrees"]) == (pytest.approx(10.0), 1)

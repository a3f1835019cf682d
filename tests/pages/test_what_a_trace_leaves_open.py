"""What a trace itself leaves open is told in a budget as what it is, of which pass: nobody assumed it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from tests.campaigns import compile_campaign

YAML = """\
title: T
contenders: {corvane: Corvane Urn, ostler: Ostler Urn}
instruments: {probe: "0.1 °C, accuracy ±0.5 °C"}
tests: [holding]
"""
TEST = """\
title: Holding
readings: {logger: "raw/{contender}-{pass}.csv", columns: {temp: "T1, °C, probe"}}
quantities:
  found: {formula: "FORMULA", unit: °C, better: higher}
"""


@pytest.mark.parametrize(
    ("formula", "told"),
    [
        ("plateau(temp, 60, 0.9)", "How far temp still moved on its plateau, pass 1"),
        ("mean_level(temp)", "What the gap in temp leaves open, pass 1"),
    ],
)
def test_what_a_trace_leaves_open_is_told_with_its_pass(formula: str, told: str, tmp_path: Path) -> None:
    times = [t for t in range(0, 200, 5) if not 100 < t < 150]
    run = "Elapsed (s),T1 (°C)\n" + "".join(f"{t},{80 + 0.01 * t + 0.1 * (t % 3):.1f}\n" for t in times)
    files = {f"raw/{who}-1.csv": run for who in ("corvane", "ostler")}
    compile_campaign(tmp_path, YAML, **{"tests/holding.yaml": TEST.replace("FORMULA", formula), **files})
    page = next(tmp_path.glob("*/.site/*/tests/holding.html")).read_text(encoding="utf-8")
    text = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", "", page))
    assert told in text
    assert "is assumed of" not in text

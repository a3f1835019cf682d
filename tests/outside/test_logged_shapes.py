"""Smoothing, plateaus and times beyond a limit through compiled campaigns, against closed forms."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy.integrate import quad

from tests.campaigns import compile_folder, result_of, results_of, write_campaign

YAML = """\
title: How hot does the handle get?
contenders: {corvane: Corvane Sol, ostler: Ostler Mk II}
instruments:
  probe: {resolution: 0.01 °C, accuracy: ±0.5 °C, clock: ±50 ppm}
tests: [handle]
"""
TEST = """\
title: Handle
readings:
  logger: raw/handle-{contender}.csv
  time: Elapsed, s
  columns: {handle: "T1, °C, probe"}
quantities:
  found: {kind: logged, formula: "FORMULA", unit: UNIT, better: lower}
"""
T = np.arange(0, 3600, 2.0)
ENDS = {"corvane": 60.0, "ostler": 72.0}


def heat(top: float, s: float) -> float:
    return top - (top - 20) * math.exp(-s / 240)


def files(formula: str, unit: str, noise: float = 0.0) -> dict[str, str | bytes]:
    rng = np.random.default_rng(4)
    runs: dict[str, str | bytes] = {}
    for who, top in ENDS.items():
        read = [heat(top, s) + rng.normal(0, noise or 1e-9) for s in T]
        runs[f"raw/handle-{who}.csv"] = "Elapsed,T1\n" + "".join(
            f"{t:g},{x:.2f}\n" for t, x in zip(T, read, strict=True)
        )
    return {"tests/handle.yaml": TEST.replace("FORMULA", formula).replace("UNIT", unit), **runs}


def told(place: Path, formula: str, unit: str, noise: float = 0.0) -> dict[str, Any]:
    return results_of(place, YAML, **files(formula, unit, noise))


def test_a_smoothed_peak_is_that_of_the_heat_and_not_of_its_noise(tmp_path: Path) -> None:
    """The last mean over 60 s is that of the closed form; the highest raw sample stands 3 to 4 standard deviations of
    the noise above it (the largest of 1800 normal samples lies about 3.4 above their mean: Blom 1958)."""
    smooth = told(tmp_path / "1", "highest(smoothed(handle, 60))", "°C", noise=0.4)
    raw = told(tmp_path / "2", "highest(handle)", "°C", noise=0.4)
    for who, top in ENDS.items():
        last = quad(lambda s, top=top: heat(top, s), T[-1] - 60, T[-1])[0] / 60
        assert result_of(smooth, "found", who)["value"] == pytest.approx(last, abs=0.3)
        assert result_of(raw, "found", who)["value"] > last + 2 * 0.4


def test_a_plateau_through_a_campaign_says_where_it_began(tmp_path: Path) -> None:
    folder = write_campaign(tmp_path, YAML, **files("plateau(handle, 300, 0.5)", "°C", noise=0.1))
    results = compile_folder(folder)
    for who, top in ENDS.items():
        result = result_of(results, "found", who)
        assert top - 1.5 < result["value"] < top
        sorts = {c["sort"] for c in result["budget"]}
        assert {"offset", "step", "repeatability", "assumption"} <= sorts
    (page,) = folder.glob(".site/*/tests/handle.html")
    shown = page.read_text(encoding="utf-8")
    assert "begin of the plateau of handle" in shown
    assert "keeps time isn’t known" not in shown


def test_the_time_over_a_limit_ends_with_the_log(tmp_path: Path) -> None:
    """top − (top − 20)·exp(−t/τ) passes 50 °C at τ·ln((top − 20)/(top − 50)); from there on it stays over it."""
    results = told(tmp_path, "how_long(handle, over, 50)", "s")
    for who, top in ENDS.items():
        passed = 240 * math.log((top - 20) / (top - 50))
        result = result_of(results, "found", who)
        assert result["value"] == pytest.approx(T[-1] - passed, abs=0.3)
        slope = (top - 50) / 240
        offset = sum(c["size"] for c in result["budget"] if c["sort"] == "offset")
        assert abs(offset) == pytest.approx(0.5 / math.sqrt(3) / slope, rel=0.02)


def test_a_plateau_that_never_came_is_no_result_and_says_so(tmp_path: Path) -> None:
    results = told(tmp_path, "plateau(handle, 300, 0.0001)", "°C", noise=0.1)
    assert result_of(results, "found", "ostler")["value"] is None
    assert "never stayed within ±" in result_of(results, "found", "ostler")["missing"]


def test_passes_even_out_the_noise_of_a_peak_and_not_its_lift(tmp_path: Path) -> None:
    """Four passes of one flat level under noise of 0.5 °C: each highest of 400 samples lies about 3 standard deviations
    too high (order statistics, see tests/metrology/test_channels_noise.py), and so does their mean; the scatter between
    them is far smaller than that. The interval still holds the truth."""
    rng = np.random.default_rng(12)
    test = TEST.replace("{contender}", "{contender}-{pass}").replace("FORMULA", "highest(handle)").replace("UNIT", "°C")
    runs = {
        f"raw/handle-{who}-{n}.csv": "Elapsed,T1\n" + "".join(f"{t:g},{top + rng.normal(0, 0.5):.2f}\n" for t in T[:400])
        for who, top in ENDS.items() for n in (1, 2, 3, 4)
    }  # fmt: skip
    results = results_of(tmp_path, YAML, **{"tests/handle.yaml": test, **runs})
    for who, top in ENDS.items():
        result = result_of(results, "found", who)
        sizes = {c["sort"]: abs(c["size"]) for c in result["budget"]}
        lift = 0.5 * 2.97  # Blom 1958: of 400 normal samples 2.97
        assert sizes["assumption"] == pytest.approx(lift / math.sqrt(3), rel=0.12)
        assert "repeatability" not in sizes  # it is in the scatter between the passes
        assert result["value"] - top > 2 * 0.5
        assert result["low"] <= top <= result["high"]


def test_noise_of_a_trace_is_named_where_another_test_stands_on_its_peak(tmp_path: Path) -> None:
    """What stands on it in several passes doesn't show the noise in their scatter, so it keeps a line."""
    other = "quantities:\n  above the air: {formula: found - air, unit: K, better: lower}\n"
    other = f"title: Above the air\n{other}readings: air.csv\n"
    air = "contender,pass,air\n" + "".join(f"{who},{n},2{n}.0\n" for n in (1, 2, 3) for who in ENDS)
    more = {
        "tests/above.yaml": other.replace("readings: air.csv", "readings: {file: air.csv, columns: {air: {unit: °C}}}")
    }
    yaml = YAML.replace("[handle]", "[handle, above]")
    folder = write_campaign(tmp_path, yaml, **files("highest(handle)", "°C", noise=0.5), **more, **{"air.csv": air})
    results = compile_folder(folder)
    assert result_of(results, "above-the-air", "ostler")["value"] == pytest.approx(
        result_of(results, "found", "ostler")["value"] - 22
    )
    (page,) = folder.glob(".site/*/tests/above.html")
    assert "How its samples scatter from one to the next" in page.read_text(encoding="utf-8")

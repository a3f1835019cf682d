"""What the audit asks of traces: samples apart, limits passed to and fro, clocks nobody vouches for; and what a page
then shows."""

from __future__ import annotations

from pathlib import Path

import jsonschema
import numpy as np
import pytest

from reportgen.build.run import audit_path
from reportgen.finding import Finding
from reportgen.record.schema import results_schema
from tests.campaigns import compile_folder, write_campaign

YAML = """\
title: Which lamp lasts longest?
who pays: Readers.
contenders: {corvane: Corvane Sol}
instruments:
  lux-meter: {resolution: 0.1 lx, accuracy: ±3 %, range: 0 lx to 2000 lxCLOCK}
tests: [glow]
"""
TEST = """\
title: Glow
readings:
  logger: raw/{contender}.csv
  time: Elapsed, s
  columns: {light: "Ch1, lx, lux-meter"}
quantities:
  found: {kind: logged, formula: "FORMULA", unit: UNIT, better: higher}
"""
T = np.arange(0, 1200, 4.0)


def folder(place: Path, formula: str, unit: str, light: np.ndarray, clock: str = ", clock: ±50 ppm") -> Path:
    test = TEST.replace("FORMULA", formula).replace("UNIT", unit)
    raw = "Elapsed,Ch1\n" + "".join(f"{t:g},{x:.1f}\n" for t, x in zip(T, light, strict=True))
    return write_campaign(place, YAML.replace("CLOCK", clock), **{"tests/glow.yaml": test, "raw/corvane.csv": raw})


def asked(place: Path) -> list[Finding]:
    return list(audit_path(place))


FADING = 500 * np.exp(-T / 700)
SPIKED = np.where(np.arange(len(T)) == 40, FADING + 300, FADING)
NOISY = FADING + np.random.default_rng(3).normal(0, 4, len(T))


def test_an_even_trace_with_a_clock_leaves_nothing_to_ask(tmp_path: Path) -> None:
    assert asked(folder(tmp_path, "when(light, under, 200)", "s", FADING)) == []


def test_a_peak_that_is_one_sample_is_a_warning_at_its_line(tmp_path: Path) -> None:
    (seen,) = [f for f in asked(folder(tmp_path, "highest(light)", "lx", SPIKED)) if f.rule == "samples-apart"]
    assert (seen.severity, seen.place.file, seen.place.line) == ("warning", "raw/corvane.csv", 42)
    assert "a single sample, 300" in seen.says.replace("\u00a0", " ")


def test_a_sample_apart_that_decides_nothing_is_a_note(tmp_path: Path) -> None:
    seen = asked(folder(tmp_path, "mean_level(light)", "lx", SPIKED))
    assert [(f.rule, f.severity) for f in seen] == [("samples-apart", "note")]
    assert "2 min 40 s" in seen[0].says.replace("\u00a0", " ")


def test_noise_alone_stands_nowhere_apart(tmp_path: Path) -> None:
    for seed in range(5):
        light = FADING + 20 + np.random.default_rng(seed).normal(0, 4, len(T))
        assert asked(folder(tmp_path / str(seed), "mean_level(light)", "lx", light)) == []


def test_a_limit_passed_to_and_fro_is_told_with_how_often(tmp_path: Path) -> None:
    """Counted by numpy: how often the written samples go from 200 lx or more to under it."""
    read = np.round(NOISY, 1)
    times = int(np.sum((read[:-1] > 200) & (read[1:] <= 200)))
    assert times > 2
    place = folder(tmp_path, "when(light, under, 200)", "s", NOISY)
    (seen,) = asked(place)
    assert (seen.rule, seen.severity) == ("limit-passed-often", "note")
    assert f"under 200 lx {times} times" in seen.says.replace("\u00a0", " ")
    results = compile_folder(place)
    assert results["trace_list"][0]["passed"][0]["times"] == times
    (page,) = place.glob(".site/*/tests/glow.html")
    assert f"the first of {times} times" in page.read_text(encoding="utf-8")
    smooth = folder(tmp_path / "smooth", "when(smoothed(light, 60), under, 200)", "s", NOISY)
    assert asked(smooth) == []


@pytest.mark.parametrize(("formula", "unit", "asks"), [("area(light)", "lx·s", True), ("highest(light)", "lx", False)])
def test_a_clock_is_asked_for_where_time_counts(formula: str, unit: str, asks: bool, tmp_path: Path) -> None:
    place = folder(tmp_path, formula, unit, FADING, clock="")
    assert ("clock-not-stated" in {f.rule for f in asked(place)}) is asks
    compile_folder(place)
    (page,) = place.glob(".site/*/tests/glow.html")
    assert ("How well the lux-meter keeps time isn’t known" in page.read_text(encoding="utf-8")) is asks


def test_the_page_rings_a_sample_apart_and_the_record_keeps_it(tmp_path: Path) -> None:
    place = folder(tmp_path, "highest(light)", "lx", SPIKED)
    results = compile_folder(place)
    jsonschema.validate(results, results_schema())
    (apart,) = results["trace_list"][0]["apart"]
    assert (apart["seconds"], apart["value"]) == (160, pytest.approx(SPIKED[40], abs=0.05))
    (page,) = place.glob(".site/*/tests/glow.html")
    shown = page.read_text(encoding="utf-8").replace("\u00a0", " ")
    assert "a large thin ring is around a sample that stands apart from its neighbours" in shown
    assert "in a single sample, 300 lx from those beside it" in shown
    assert results["results"][0]["value"] == pytest.approx(SPIKED[40], abs=0.05)  # it counts

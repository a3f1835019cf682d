"""What the clock of a logger or a camera leaves open, through compiled campaigns, against closed forms.

A clock that is fast by a part ε makes every time it tells too long by that part: true time = its time · (1 − ε) to first
order. Limits ±a are uniform, u = a/√3 (JCGM 100, 4.3.7).
"""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from tests.campaigns import refusal, result_of, results_of
from tests.outside.lamp import RUN_TIME

YAML = """\
title: Which lamp lasts longest?
contenders: {corvane: Corvane Sol}
instruments:
  lux-meter: {resolution: 0.001 lx, accuracy: ±0.0001 %, clock: CLOCK}
tests: [run-time]
"""
TAU, STEP = 1800.0, 5.0
T = np.arange(0, 7200, STEP)
LOG = "Elapsed,Ch1\n" + "".join(f"{t:g},{800 * math.exp(-t / TAU):.6f}\n" for t in T)


def clock_of(place: Path, formula: str, unit: str, clock: str = "±2 s a day") -> tuple[dict[str, Any], float]:
    """The result and what the clock brings to it."""
    test = RUN_TIME.replace("FORMULA", formula).replace("UNIT", unit)
    told = results_of(
        place, YAML.replace("CLOCK", clock), **{"tests/run-time.yaml": test, "raw/run-corvane-1.csv": LOG}
    )
    result = result_of(told, "run-time", "corvane")
    return result, sum(c["size"] for c in result["budget"] if c["sort"] == "clock")


def test_run_time_to_a_tenth_of_the_light_at_30_s_of_a_light_that_fades_evenly(tmp_path: Path) -> None:
    """ANSI/PLATO FL 1 counts from 30 s after switching on to 10 % of the light then (rule from memory). For
    A·exp(−t/τ) that is 30 s + τ·ln 10 by arithmetic; a clock that is off by ε makes it τ·ln 10·ε longer, for 30 s are
    true seconds."""
    result, clock = clock_of(tmp_path, "when(light, under, 0.1 * at(light, 30))", "s")
    assert result["value"] == pytest.approx(30 + TAU * math.log(10), abs=0.01)  # the chord lies 0.003 s above
    assert abs(clock) == pytest.approx(TAU * math.log(10) * 2 / 86400 / math.sqrt(3), rel=2e-3)


def test_a_clock_reaches_areas_and_values_at_a_time(tmp_path: Path) -> None:
    """∫A·exp(−t/τ)dt over the whole trace grows by ε; the value at 600 s falls by its slope, A/τ·exp(−600/τ), times
    600 s·ε with the clock."""
    part = 50e-6 / math.sqrt(3)
    area, clock = clock_of(tmp_path / "1", "area(light)", "lx·s", "±50 ppm")
    whole = 800 * TAU * (1 - math.exp(-T[-1] / TAU))
    assert area["value"] == pytest.approx(whole, rel=1e-6)
    assert clock == pytest.approx(whole * part, rel=1e-5)
    _, clock = clock_of(tmp_path / "2", "at(light, 600)", "lx", "±50 ppm")
    assert abs(clock) == pytest.approx(800 / TAU * math.exp(-600 / TAU) * 600 * part, rel=3e-3)


def test_a_clock_leaves_what_is_no_matter_of_time(tmp_path: Path) -> None:
    """The peak and the mean of a whole trace are what they are at any pace. The mean of the first 1200 true seconds
    isn't: d/dε of ∫₀^b x(t/(1 + ε))dt/b is mean − x(b)."""
    assert clock_of(tmp_path / "1", "highest(light)", "lx")[1] == 0
    assert clock_of(tmp_path / "2", "mean_level(light)", "lx")[1] == 0
    mean, clock = clock_of(tmp_path / "3", "mean_level(during(light, 0, 1200))", "lx")
    left = mean["value"] - 800 * math.exp(-1200 / TAU)
    assert clock == pytest.approx(left * 2 / 86400 / math.sqrt(3), rel=2e-3)


@pytest.mark.parametrize(
    ("clock", "part"),
    [("±50 ppm", 50e-6), ("0.01 %", 1e-4), ("±2 s a day", 2 / 86400), ("±1 min per week", 60 / 604800)],
)
def test_a_clock_is_stated_as_its_maker_does(clock: str, part: float, tmp_path: Path) -> None:
    found = clock_of(tmp_path, "when(light, under, 80)", "s", clock)
    assert abs(found[1]) == pytest.approx(TAU * math.log(10) * part / math.sqrt(3), rel=1e-4)


@pytest.mark.parametrize("clock", ["good", "±50", "2 s", "0 ppm", "80 %", "±2 lx a day"])
def test_a_clock_that_is_none_is_refused_at_its_line(clock: str, tmp_path: Path) -> None:
    test = RUN_TIME.replace("FORMULA", "highest(light)").replace("UNIT", "lx")
    files = {"tests/run-time.yaml": test, "raw/run-corvane-1.csv": LOG}
    found = refusal(tmp_path, YAML.replace("CLOCK", clock), **files)
    (wrong,) = [f for f in found if f.severity == "error"]
    assert (wrong.place.file, wrong.place.line) == ("campaign.yaml", 4)
    assert "ppm" in f"{wrong.says} {wrong.do}"


def test_the_clock_of_a_camera_reaches_the_times_its_frames_make(tmp_path: Path) -> None:
    """240 frames at 60 a second are 4 s; ±100 ppm of that, uniform."""
    yaml = """\
title: Click to flame
contenders: {corvane: Corvane Sol}
instruments:
  camera: {frames: 60 frames a second, clock: ±100 ppm}
measure:
  click to flame: {kind: timed, unit: s, better: lower, instrument: camera}
readings: readings.csv
"""
    told = results_of(tmp_path, yaml, readings="contender,click to flame\ncorvane,240 frames\n")
    result = result_of(told, "click-to-flame", "corvane")
    (clock,) = [c["size"] for c in result["budget"] if c["sort"] == "clock"]
    assert (result["value"], clock) == (4.0, pytest.approx(4 * 1e-4 / math.sqrt(3)))

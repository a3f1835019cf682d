"""Fitted slopes through compiled campaigns: along a trace, and through the parts of a pass. Witness: scipy.stats.linregress."""

from __future__ import annotations

import math
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy import stats

from tests.campaigns import result_of, results_of

WARMING = """\
title: How fast does the plate warm up?
contenders: {harl: Harl, tolk: Tolk}
instruments:
  probe: {resolution: 0.01 °C, accuracy: ±(0.5 °C + 1 % of reading)}
tests: [warming]
"""
TEST = """\
title: Warming
readings:
  logger: raw/plate-{contender}-{pass}.csv
  time: t, s
  columns: {plate: "plate, °C, probe"}
quantities:
  warming: {formula: "slope(during(plate, 30, 150))", unit: °C/min, better: higher}
"""
T = np.arange(0, 200, 1.0)


def plate(rate: float, seed: int) -> np.ndarray:
    """°C: still for 20 s, then `rate` °C a second, with noise."""
    return np.round(20 + rate * np.maximum(0, T - 20) + np.random.default_rng(seed).normal(0, 0.1, len(T)), 2)


def log(values: np.ndarray) -> str:
    return "t,plate\n" + "".join(f"{t:g},{v:.2f}\n" for t, v in zip(T, values, strict=True))


def test_a_slope_of_a_logged_trace_with_its_uncertainty(tmp_path: Path) -> None:
    runs = {"harl": plate(0.25, 1), "tolk": plate(0.20, 2)}
    files = {f"raw/plate-{who}-1.csv": log(values) for who, values in runs.items()}
    told = results_of(tmp_path, WARMING, **{"tests/warming.yaml": TEST, **files})
    for who, values in runs.items():
        inside = (T >= 30) & (T <= 150)
        line = stats.linregress(T[inside], values[inside])
        found = result_of(told, "warming", who)
        assert found["value"] == pytest.approx(60 * line.slope, rel=1e-9)
        sizes = {b["sort"]: (abs(b["size"]), b["degrees"]) for b in found["budget"]}
        # 1 % of the reading is a gain, ±, uniform; 0.5 °C is an offset and drops out (JCGM 100, 4.3.7 and F.1.2.3)
        assert set(sizes) == {"fit", "gain"}
        assert sizes["gain"][0] == pytest.approx(0.01 / math.sqrt(3) * 60 * line.slope, rel=1e-6)
        size, degrees = sizes["fit"]
        assert size >= 60 * line.stderr * (1 - 1e-9)  # equal where left-overs don't follow each other
        assert size == pytest.approx(60 * line.stderr * math.sqrt(119 / degrees), rel=1e-6)
        half = (found["high"] - found["low"]) / 2
        assert stats.t.ppf(0.975, degrees) * size <= half <= 2.1 * math.hypot(size, sizes["gain"][0])


BENT = TEST.replace("slope(during(plate, 30, 150))", "slope(plate)")


def test_a_trace_that_bends_has_no_slope_and_the_page_says_why(tmp_path: Path) -> None:
    files = {f"raw/plate-{who}-1.csv": log(20 + 30 * (1 - np.exp(-T / 60))) for who in ("harl", "tolk")}
    told = results_of(tmp_path, WARMING, **{"tests/warming.yaml": BENT, **files})
    found = result_of(told, "warming", "harl")
    assert "doesn't run along a straight line" in found["missing"]


def bent(seed: int) -> np.ndarray:
    """°C: a plate that nears what it loses, its rate falling from 0.116 to 0.053 °C a second, with noise."""
    exact = 20 + 29.5 * (1 - np.exp(-T / 254))
    return np.round(exact + np.random.default_rng(seed).normal(0, 0.3, len(T)), 2)


@pytest.mark.parametrize("passes", [1, 2, 3])
def test_a_bend_stays_in_the_budget_whatever_the_number_of_passes(passes: int, tmp_path: Path) -> None:
    """Of passes that bend alike none tells the others apart: the range holds the slope of the exponential at any moment
    but the outermost, as uniformly distributed slopes would lie in 95 of 100 (JCGM 100, 4.3.7)."""
    files = {f"raw/plate-{who}-{n}.csv": log(bent(10 * n)) for who in ("harl", "tolk") for n in range(1, passes + 1)}
    told = results_of(tmp_path, WARMING, **{"tests/warming.yaml": BENT, **files})
    found = result_of(told, "warming", "harl")
    (bend,) = [b for b in found["budget"] if b["sort"] == "bend"]
    fastest, slowest = (60 * 29.5 / 254 * math.exp(-t / 254) for t in (T[0], T[-1]))
    assert abs(bend["size"]) * math.sqrt(3) == pytest.approx((fastest - slowest) / 2, rel=0.1)
    assert found["high"] - found["low"] > 0.9 * (fastest - slowest)


SPRINGS = """\
title: Which spring is softer?
contenders: {harl: Harl, tolk: Tolk}
instruments:
  balance: {resolution: 0.01 N, accuracy: ±0.5 %}
  ruler: {resolution: 0.1 mm, accuracy: ±0.3 mm}
tests: [springs]
"""
SPRING = """\
title: Springs
quantities:
  softness: {formula: "slope_of_parts(height, load)", unit: mm/N, better: higher}
readings:
  file: springs.csv
  columns: {load: "load, N, balance", height: "height, mm, ruler"}
"""
LOADS = [0.98, 1.96, 2.95, 3.92, 4.90]
HEIGHTS = {"harl": [9.8, 20.3, 29.4, 39.9, 49.1], "tolk": [11.9, 23.4, 35.8, 46.8, 59.2]}


def rows(loads: list[float] = LOADS, heights: dict[str, list[float]] = HEIGHTS, text: str = "") -> str:
    found = "contender,pass,part,load,height\n"
    for who, ys in heights.items():
        found += "".join(
            f"{who},1,step {n},{x:.2f},{y:.1f}\n" for n, (x, y) in enumerate(zip(loads, ys, strict=True), 1)
        )
    return found + text


def springs(tmp_path: Path, table: str, test: str = SPRING) -> dict[str, Any]:
    return results_of(tmp_path, SPRINGS, **{"tests/springs.yaml": test, "springs.csv": table})


def test_a_line_through_the_parts_of_a_pass(tmp_path: Path) -> None:
    told = springs(tmp_path, rows())
    for who, ys in HEIGHTS.items():
        line = stats.linregress(LOADS, ys)
        found = result_of(told, "softness", who)
        assert (found["value"], found["part"]) == (pytest.approx(line.slope, rel=1e-9), None)
        sizes = {b["sort"]: (b["size"], b["degrees"]) for b in found["budget"]}
        assert set(sizes) == {"fit", "gain"}  # the ruler's offset drops out; steps are in the scatter of the points
        assert (sizes["fit"][0], sizes["fit"][1]) == (pytest.approx(line.stderr, rel=1e-6), 3)
        # a balance that shows too much makes a spring softer than it is: −0.5 %, uniform
        assert sizes["gain"][0] == pytest.approx(-0.005 / math.sqrt(3) * line.slope, rel=1e-6)


def test_two_passes_scatter_and_the_points_about_their_lines_dont_count_again(tmp_path: Path) -> None:
    again = "".join(
        f"harl,2,step {n},{x:.2f},{y + 0.2:.1f}\n"
        for n, (x, y) in enumerate(zip(LOADS, HEIGHTS["harl"], strict=True), 1)
    )
    again = again.replace("step 5,4.90,49.3", "step 5,4.90,50.0")
    found = result_of(springs(tmp_path, rows(text=again)), "softness", "harl")
    assert {b["sort"] for b in found["budget"]} == {"scatter", "gain"}


@pytest.mark.parametrize(
    ("table", "says"),
    [
        pytest.param(rows(LOADS[:2], {"harl": [9.8, 20.3], "tolk": [11.9, 23.4]}), "2 points and 2 parameters", id="two"),
        pytest.param(rows([1.96] * 5), "too few apart", id="one load"),
        pytest.param(rows().replace("harl,1,step 2,1.96,20.3", "harl,1,step 2,1.96,over 20"), "only a bound", id="bound"),
        pytest.param(rows().replace("harl,1,step 2,1.96,20.3", "harl,1,step 2,1.96,"), "height of step 2", id="gap"),
    ],
)  # fmt: skip
def test_points_that_give_no_line_are_told(tmp_path: Path, table: str, says: str) -> None:
    found = result_of(springs(tmp_path, table), "softness", "harl")
    assert found["value"] is None
    assert says in found["missing"]


TOTAL = SPRING.replace("slope_of_parts(height, load)", "sum_of_parts(load) / 5").replace("mm/N", "N")


def test_a_formula_over_all_parts_gives_one_result_a_pass(tmp_path: Path) -> None:
    (found,) = [r for r in springs(tmp_path, rows(), TOTAL)["results"] if r["contender"] == "harl"]
    assert (found["part"], found["value"], found["passes"]) == (None, pytest.approx(sum(LOADS) / 5), 1)

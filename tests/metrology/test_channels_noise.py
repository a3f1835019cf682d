"""Noise in traces: how large it is, what it does to peaks and crossings, and instrument errors drawn many times."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import quad, trapezoid
from scipy.stats import norm

from reportgen.metrology.instrument import Instrument, Size
from reportgen.metrology.traces.noise import lift_of_highest
from reportgen.metrology.uncertain import Uncertain, combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit
from tests.metrology.test_channels import LUX, along, trace


def of_noise(found: Uncertain) -> list[float]:
    return [abs(c) for s, c in found.contributions.items() if s.sort == "repeatability"]


@pytest.mark.parametrize("sigma", [0.02, 1.0, 30.0])
def test_noise_is_told_from_the_shape_of_a_trace(sigma: float) -> None:
    """Known noise on a curve with a swing, a fall and single samples far off; over 3000 samples a standard deviation by
    medians is known to some 3 % (of a normal sample 1.17/√(2n): simulated here as a whole)."""
    rng = np.random.default_rng(5)
    t = np.arange(0, 3000.0)
    v = 500 * np.exp(-t / 900) + 20 * np.sin(t / 40) + rng.normal(0, sigma, len(t))
    v[[200, 900, 2500]] += 500
    assert trace(t, v, piece=1000).noise == pytest.approx(sigma, rel=0.1)


def test_a_smooth_trace_and_a_coarse_display_have_no_noise() -> None:
    t = np.arange(0, 2000, 5.0)
    assert trace(t, 800 * np.exp(-t / 900), piece=100).noise == 0
    assert trace(t, np.round(100 - t / 50), piece=100).noise == 0
    assert trace([0, 1, 2, 3], [5, 9, 4, 7]).noise == 0  # too few to tell


def test_noise_of_a_display_step_is_the_steps_alone() -> None:
    """A light that falls a third of a step a sample, rounded: its scatter is that of rounding, δ/√12, which counts
    already (JCGM 100, F.2.2.1)."""
    meter = Instrument("meter", resolution=Size(1.0, LUX), repeatability=Size(0.15, LUX))
    t = np.arange(0, 500.0)
    x = trace(t, np.round(1000 - 0.37 * t), instrument=meter, piece=100)
    found = along("when(x, under, 900)", x=x)
    assert {(s.sort, s.of) for s in found.contributions} == {
        ("step", "time between samples"), ("step", "meter"), ("repeatability", "meter"),
    }  # fmt: skip


@pytest.mark.parametrize("m", [2, 5, 10, 30, 100, 1000])
def test_the_highest_of_normal_samples_lies_so_far_above_their_mean(m: int) -> None:
    """E = ∫ x·m·φ(x)·Φ(x)^(m−1) dx by scipy; 0.564 19, 1.162 96, 1.538 75 and 2.507 59 of 2, 5, 10 and 100 in tables of
    normal order statistics (Harter 1961, from memory). Blom's is within 0.026 of it."""
    exact = quad(lambda x: x * m * norm.pdf(x) * norm.cdf(x) ** (m - 1), -9, 9, limit=400)[0]
    assert lift_of_highest(m) == pytest.approx(exact, abs=0.026)
    assert lift_of_highest(1) == 0


@pytest.mark.parametrize("flat", [1, 5, 40, 600])
def test_the_interval_of_a_noisy_peak_holds_the_true_height(flat: int) -> None:
    """200 simulated runs each: the noise lifts the highest sample, 1.96 combined uncertainties still hold the truth in
    94 % and more."""
    rng = np.random.default_rng(flat)
    t = np.arange(0, 1200.0)
    true = np.clip(50 - 0.8 * (np.abs(t - 600) - flat / 2), None, 50.0)
    held, lifted = 0, []
    for _ in range(200):
        found = along("highest(x)", x=trace(t, true + rng.normal(0, 1, len(t)), piece=1200))
        lifted.append((found.value or 0.0) - 50)
        held += abs(lifted[-1]) <= 1.96 * combined_standard_uncertainty(found)
    assert held >= 188
    if flat > 1:
        assert np.mean(lifted) > 0.8  # which is what has to be held


def test_a_smoothed_peak_is_lifted_by_what_noise_is_left() -> None:
    rng = np.random.default_rng(8)
    t, held = np.arange(0, 1000.0), 0
    for _ in range(100):
        x = trace(t, 20 + rng.normal(0, 1, len(t)), piece=1000)
        found = along("highest(smoothed(x, 25))", x=x)
        held += abs((found.value or 0.0) - 20) <= 1.96 * combined_standard_uncertainty(found)
        assert of_noise(found)[0] == pytest.approx(1 / 5, rel=0.35)
    assert held >= 94


def test_passes_share_the_lift_of_a_peak_and_not_the_noise_of_a_sample() -> None:
    rng = np.random.default_rng(1)
    t = np.arange(0, 300.0)
    x, y = (trace(t, 20 + rng.normal(0, 1, len(t)), piece=300) for _ in "xy")
    both = [along("highest(x)", x=one) for one in (x, y)]
    lifts = [s for one in both for s in one.contributions if s.sort == "assumption"]
    assert lifts[0] == lifts[1]


def test_the_noise_at_a_crossing_counts_over_the_slope_there() -> None:
    """200 runs of a line falling by 1 lx/s under noise of 0.2 lx: the crossing is the true one within 1.96 u in 94 % and
    more, and u is on the mean that of the noise and of half a sample interval together."""
    rng = np.random.default_rng(3)
    t, held, told = np.arange(0, 200.0), 0, []
    for _ in range(200):
        x = trace(t, 150.37 - t + rng.normal(0, 0.2, len(t)), piece=200)
        found = along("when(x, under, 50)", x=x)
        told.append(combined_standard_uncertainty(found))
        held += abs((found.value or 0.0) - 100.37) <= 1.96 * told[-1]
    assert held >= 188
    assert np.mean(told) == pytest.approx(math.hypot(1 / math.sqrt(12), 0.2), rel=0.1)


CURVE = np.arange(0, 3000, 4.0)
LIGHT = 800 * np.exp(-CURVE / 700) + 5


@pytest.mark.parametrize("formula", ["when(x, under, 90)", "when(x, under, 0.25 * at(x, 30))", "area(x)", "mean_level(x)",
                                     "how_long(x, over, 90)", "at(x, 501)", "area(during(x, 300, 900))"])  # fmt: skip
def test_offset_and_gain_of_the_instrument_agree_with_draws_of_them(formula: str) -> None:
    """Monte Carlo (JCGM 101, 7): 4000 draws of ±0.8 lx and ±2 %, each applied to the whole trace, each trace evaluated by
    numpy and scipy alone. The sd of 4000 uniform draws is known to about 1 %."""
    meter = Instrument("meter", absolute=Size(0.8, LUX), percent=2.0)
    found = along(formula, x=trace(CURVE, LIGHT, instrument=meter, piece=100))
    told = math.sqrt(sum(c * c for s, c in found.contributions.items() if s.sort in ("offset", "gain")))
    rng = np.random.default_rng(6)
    inside = np.arange(300, 900.5, 4)

    def work(v: np.ndarray) -> float:
        crossing = float(np.interp(-90, -v, CURVE))
        return {
            "when(x, under, 90)": crossing,
            "how_long(x, over, 90)": crossing,
            "when(x, under, 0.25 * at(x, 30))": float(np.interp(-0.25 * np.interp(30, CURVE, v), -v, CURVE)),
            "area(x)": float(trapezoid(v, CURVE)),
            "mean_level(x)": float(trapezoid(v, CURVE) / CURVE[-1]),
            "at(x, 501)": float(np.interp(501, CURVE, v)),
            "area(during(x, 300, 900))": float(trapezoid(np.interp(inside, CURVE, v), inside)),
        }[formula]

    draws = [work(LIGHT * (1 + rng.uniform(-0.02, 0.02)) + rng.uniform(-0.8, 0.8)) for _ in range(4000)]
    assert found.value == pytest.approx(work(LIGHT), rel=1e-9)
    assert told == pytest.approx(np.std(draws), rel=0.04)


def test_units_of_noise_are_those_of_the_trace() -> None:
    rng = np.random.default_rng(9)
    x = trace(np.arange(0, 400.0), 20 + rng.normal(0, 0.5, 400), unit="°C", piece=200)
    assert x.unit == parse_unit("°C")
    assert of_noise(along("lowest(x)", x=x))[0] == pytest.approx(0.5, rel=0.25)

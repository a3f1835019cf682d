"""The fitted slope of a trace, against SciPy, simulation and what an instrument's errors do to it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

import numpy as np
import pytest
from scipy import stats

from reportgen.metrology import Instrument, Size, Source, combined_standard_uncertainty, parse_unit
from reportgen.metrology.errors import FormulaError, NoValue
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Uncertain
from tests.metrology.test_channels import LUX, along, trace

SECONDS = np.arange(200) * 0.5


def noisy(seed: int, follow: float = 0.0, sd: float = 0.3, count: int = 200) -> np.ndarray:
    """Noise whose values follow each other with a correlation of `follow` (a first-order autoregression)."""
    draws = np.random.default_rng(seed).normal(0.0, sd, count)
    for i in range(1, count):
        draws[i] = follow * draws[i - 1] + math.sqrt(1 - follow**2) * draws[i]
    return draws


def fit_of(x: Uncertain) -> tuple[Source, float]:
    (found,) = [(s, size) for s, size in x.contributions.items() if s.sort == "fit"]
    return found


@pytest.mark.parametrize("piece", [1, 2, 7, 1000])
def test_a_slope_agrees_with_scipy(piece: int) -> None:
    values = 20 + 0.03 * SECONDS + noisy(1)
    found = along("slope(x)", x=trace(SECONDS, values, piece=piece))
    expected = stats.linregress(SECONDS, values)  # scipy.stats.linregress
    assert (found.value, found.unit.symbol) == (pytest.approx(expected.slope, rel=1e-11), "lx/s")
    source, size = fit_of(found)
    left = values - expected.intercept - expected.slope * SECONDS
    follow = max(0.0, float(left[1:] @ left[:-1] / (left @ left)))
    degrees = len(values) * (1 - follow) / (1 + follow) - 2
    assert source.degrees == pytest.approx(degrees, rel=1e-9)
    assert size == pytest.approx(expected.stderr * math.sqrt((len(values) - 2) / degrees), rel=1e-9)


def test_uneven_samples_are_one_line_too() -> None:
    times = np.cumsum(np.random.default_rng(2).uniform(0.1, 3.0, 80))
    times -= times[0]
    values = 5 - 0.2 * times + noisy(3, count=80)
    expected = stats.linregress(times, values)
    assert along("slope(x)", x=trace(times, values)).value == pytest.approx(expected.slope, rel=1e-10)


def test_a_stretch_has_a_slope_of_its_own() -> None:
    values = np.where(SECONDS < 50, 10.0, 10.0 + 2.0 * (SECONDS - 50))
    found = along("slope(during(x, 60, 90))", x=trace(SECONDS, values))
    assert found.value == pytest.approx(2.0, rel=1e-12)


@pytest.mark.parametrize("follow", [0.0, 0.5, 0.8])
def test_slopes_of_noise_that_follows_itself_are_covered_as_often_as_said(follow: float) -> None:
    """Simulation, seeded: 95 in 100 of true slopes lie within Student's t times u, whatever r₁ is. At r₁ 0.8 the 200
    samples are worth some 22, and what is found of r₁ itself is a little low: 92 are allowed there."""
    runs, hits, plain = 400, 0, 0
    for seed in range(runs):
        values = 1.0 + 0.01 * SECONDS + noisy(1000 + seed, follow)
        found = along("slope(x)", x=trace(SECONDS, values, piece=1000))
        source, size = fit_of(found)
        off = abs((found.value or 0.0) - 0.01)
        hits += off <= stats.t.ppf(0.975, source.degrees) * size
        plain += off <= stats.t.ppf(0.975, 198) * stats.linregress(SECONDS, values).stderr
    spare = 3 * math.sqrt(0.95 * 0.05 / runs)
    assert hits / runs >= (0.95 if follow < 0.8 else 0.92) - spare
    assert hits / runs <= 0.95 + spare
    if follow == 0.8:
        assert plain / runs < 0.6  # what samples taken for independent would have covered


METER = Instrument("meter", absolute=Size(2.0, LUX), resolution=Size(0.1, LUX))


def sizes(x: Uncertain) -> Mapping[str, float]:
    return {source.sort: size for source, size in x.contributions.items()}


def test_an_offset_of_all_samples_drops_out() -> None:
    found = along("slope(x)", x=trace(SECONDS, 20 + 0.03 * SECONDS + noisy(4), instrument=METER))
    assert set(sizes(found)) == {"fit"}


def with_gain(values: np.ndarray) -> Trace:
    """A trace whose instrument is off by a part of the reading, known to 2 % (a standard uncertainty)."""
    plain = trace(SECONDS, values)

    def observe(value: float | None, limit: object, which: str) -> Uncertain:
        return Uncertain(value, LUX, {Source("gain", "meter"): 0.02 * (value or 0.0), Source("offset", "meter"): 5.0})

    return replace(plain, observe=observe)


def test_a_gain_moves_the_slope_by_its_own_part() -> None:
    found = along("slope(x)", x=with_gain(20 + 0.03 * SECONDS + noisy(4)))
    assert sizes(found)["gain"] == pytest.approx(0.02 * (found.value or 0.0), rel=1e-9)
    assert "offset" not in sizes(found)


def test_a_clock_that_is_fast_makes_a_slope_too_small() -> None:
    clock = Source("clock", "logger")
    found = along("slope(x)", x=replace(trace(SECONDS, 20 + 0.03 * SECONDS + noisy(4)), clock={clock: 0.001}))
    assert found.contributions[clock] == pytest.approx(-0.001 * (found.value or 0.0))


def test_a_display_that_stands_still_may_hide_a_step_over_its_length() -> None:
    """±δ/T uniformly: 0.1 lx over 99.5 s, ÷ √3."""
    found = along("slope(x)", x=trace(SECONDS, [20.0] * 200, instrument=METER))
    assert found.value == 0.0
    assert sizes(found) == {"step": pytest.approx(0.1 / 99.5 / math.sqrt(3))}


def test_a_slope_read_in_coarse_steps_lies_within_its_uncertainty() -> None:
    """Simulation: slopes of a display that moves through 0.3 to 30 steps are never further off than 2u."""
    for steps in np.geomspace(0.3, 30, 25):
        true = steps * 0.1 / 99.5
        values = np.round((20.03 + true * SECONDS) / 0.1) * 0.1
        try:
            found = along("slope(x)", x=trace(SECONDS, values, instrument=METER))
        except NoValue:
            continue  # one step in all: its left-overs follow each other to the end
        assert abs((found.value or 0.0) - true) <= 2 * combined_standard_uncertainty(found), steps


def test_a_line_without_scatter_and_step_is_exact() -> None:
    found = along("slope(x)", x=trace(SECONDS, 3.0 + 0.25 * SECONDS))
    assert found.value == pytest.approx(0.25)
    assert not found.contributions


@pytest.mark.parametrize(("unit", "of_slope"), [("°C", "°C/s"), ("dB", "dB/s"), ("N", "N/s"), ("K", "K/s")])
def test_the_unit_of_a_slope_is_that_of_a_step_a_second(unit: str, of_slope: str) -> None:
    found = along("slope(x)", x=trace([0, 1, 2, 3], [1.0, 2.1, 2.9, 4.0], unit=unit))
    assert found.unit.symbol == of_slope


def test_a_slope_a_minute_comes_out_of_a_formula_by_its_unit() -> None:
    from reportgen.metrology import in_unit

    found = along("slope(x)", x=trace([0, 60, 120, 180], [20.0, 21.0, 22.0, 23.1], unit="°C"))
    assert in_unit(found, parse_unit("°C/min")).value == pytest.approx(1.03)


@pytest.mark.parametrize("bend", [2e-4, -1e-3])
def test_a_bend_counts_as_far_as_the_slope_at_either_end_lies_from_the_line_s(bend: float) -> None:
    """y = 20 + 0.3·t + bend·t²: the slope is 0.3 + 2·bend·t, at a moment taken at random uniform between its ends, so
    the half-width is |bend|·T and u is that over √3 (JCGM 100, 4.3.7)."""
    values = 20 + 0.3 * SECONDS + bend * SECONDS**2
    found = along("slope(x)", x=trace(SECONDS, values + noisy(7, sd=0.05)))
    assert found.value == pytest.approx(0.3 + bend * 99.5, rel=1e-2)
    (size,) = [size for source, size in found.contributions.items() if source.sort == "bend"]
    assert size == pytest.approx(bend * 99.5 / math.sqrt(3), rel=0.05)
    parabola = np.polyfit(SECONDS, values + noisy(7, sd=0.05), 2, cov="unscaled")
    source, scatter = fit_of(found)
    left = values + noisy(7, sd=0.05) - np.polyval(parabola[0], SECONDS)
    follow = max(0.0, float(left[1:] @ left[:-1] / (left @ left)))
    assert source.degrees == pytest.approx(200 * (1 - follow) / (1 + follow) - 3, rel=1e-6)
    line = float(((SECONDS - SECONDS.mean()) ** 2).sum())
    assert scatter == pytest.approx(math.sqrt(float(left @ left) / source.degrees / line), rel=1e-6)


@pytest.mark.parametrize("piece", [1, 7, 1000])
def test_a_parabola_without_noise_bends_to_the_last_digit(piece: int) -> None:
    found = along("slope(x)", x=trace([0, 1, 2, 3, 4], [0, 1, 4, 9, 16], piece=piece))
    assert (found.value, sizes(found)) == (pytest.approx(4.0), {"bend": pytest.approx(4 / math.sqrt(3))})


def test_noise_alone_bends_as_seldom_as_said() -> None:
    """Simulation, seeded: Student's t at 95 % finds a bend in 5 of 100 straight traces."""
    runs = 400
    found = [along("slope(x)", x=trace(SECONDS, 0.01 * SECONDS + noisy(s), piece=1000)) for s in range(runs)]
    bent = sum("bend" in sizes(x) for x in found)
    assert abs(bent / runs - 0.05) <= 3 * math.sqrt(0.05 * 0.95 / runs)


def test_a_trace_that_bends_more_than_a_parabola_has_no_slope_and_says_so() -> None:
    with pytest.raises(NoValue, match="doesn't run along a straight line"):
        along("slope(x)", x=trace(SECONDS, 20 * np.exp(-SECONDS / 40)))


def test_a_trace_off_its_scale_has_no_slope() -> None:
    with pytest.raises(NoValue, match="off its scale"):
        along("slope(x)", x=trace([0, 1, 2, 3], [1, 2, 3, 3], [0, 0, 0, 1]))


def test_two_samples_are_too_few() -> None:
    with pytest.raises(NoValue, match="has 2 there"):
        along("slope(x)", x=trace([0, 1], [1, 2]))


def test_a_slope_takes_one_channel() -> None:
    with pytest.raises(FormulaError, match="slope takes 1"):
        along("slope(x, 3)", x=trace([0, 1], [1, 2]))


def test_uncertain_ends_of_a_stretch_are_worth_what_the_ends_lie_off_the_line() -> None:
    """By differences of the slope with the end moved a little either way, in a trace of many samples."""
    times = np.arange(80000) * 0.0025
    values = np.cos(times * 12) * 0.2 + 0.1 * times
    x = trace(times, values, piece=100000)
    window = along("slope(during(x, 20, at(y, 0)))", x=x, y=_a_time(150.0)).contributions
    there, beyond = (along(f"slope(during(x, 20, {end}))", x=x).value or 0.0 for end in (149.9875, 150.0125))
    (size,) = [size for source, size in window.items() if source.sort == "assumption"]
    assert size == pytest.approx((beyond - there) / 0.025, rel=0.05)


def _a_time(seconds: float) -> Trace:
    plain = trace([0.0, 1.0], [seconds, seconds], unit="s")

    def observe(value: float | None, limit: object, which: str) -> Uncertain:
        return Uncertain(value, parse_unit("s"), {Source("assumption", "end"): 1.0})

    return replace(plain, observe=observe)

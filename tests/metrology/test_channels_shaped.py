"""Smoothed traces, plateaus and times beyond a limit, against closed forms, SciPy and NumPy."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import quad

from reportgen.metrology.errors import FormulaError, NoValue
from reportgen.metrology.instrument import Instrument, Size
from reportgen.metrology.uncertain import combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit
from tests.metrology.test_channels import along, trace

LUX = parse_unit("lx")
walks = st.lists(st.tuples(st.floats(0.05, 3), st.floats(-100, 100)), min_size=4, max_size=60)


@settings(max_examples=50)
@given(walks, st.integers(1, 9), st.floats(0.3, 0.9))
def test_a_smoothed_sample_is_the_mean_of_the_lines_around_it(
    steps: list[tuple[float, float]], piece: int, part: float
) -> None:
    """scipy.integrate.quad over numpy.interp, whatever the pace and wherever the pieces are cut."""
    t = np.cumsum([a for a, _ in steps])
    t -= t[0]
    v = np.array([b for _, b in steps])
    width = round(max(part * t[-1], 3.1), 4)
    if width >= t[-1] - 0.01:
        return
    at = round((t[-1] + 0.002) / 2, 4)
    if not width / 2 < at < t[-1] - width / 2:
        return
    x = trace(t, v, piece=piece)
    means = [
        quad(lambda s: float(np.interp(s, t, v)), c - width / 2, c + width / 2, points=t, limit=300)[0] / width
        for c in t[(t > width / 2) & (t < t[-1] - width / 2)]
    ]
    if means:
        assert along(f"highest(smoothed(x, {width}))", x=x).value >= max(means) - 1e-6
        assert along(f"lowest(smoothed(x, {width}))", x=x).value <= min(means) + 1e-6
    ends = [
        quad(lambda s: float(np.interp(s, t, v)), a, a + width, points=t, limit=300)[0] / width
        for a in (0.0, t[-1] - width)
    ]
    every = [*means, *ends]
    assert along(f"highest(smoothed(x, {width}))", x=x).value == pytest.approx(max(every), abs=1e-6)
    assert along(f"lowest(smoothed(x, {width}))", x=x).value == pytest.approx(min(every), abs=1e-6)


def test_smoothing_flattens_a_swing_as_a_moving_mean_does_and_leaves_a_slope() -> None:
    """A moving mean over w passes a swing of period T on with sin(πw/T)/(πw/T) of its height (the transform of a
    rectangle: closed form)."""
    t = np.arange(0, 600, 0.05)
    swing = trace(t, np.sin(2 * np.pi * t / 50), piece=1000)
    for width in (5, 20, 35):
        left = math.sin(math.pi * width / 50) / (math.pi * width / 50)
        assert along(f"highest(smoothed(x, {width}))", x=swing).value == pytest.approx(left, abs=2e-5)
    line = trace(t, 3 * t + 1, piece=777)
    assert along("at(smoothed(x, 30), 123.4)", x=line).value == pytest.approx(3 * 123.4 + 1)
    assert along("when(smoothed(x, 30), over, 500)", x=line).value == pytest.approx(499 / 3)


def test_a_smoothed_trace_has_nothing_near_its_ends_and_its_gaps() -> None:
    t = np.concatenate((np.arange(0, 100.0), np.arange(150, 260.0)))
    x = trace(t, 2 * t, gaps=((99.0, 150.0),))
    assert along("lowest(smoothed(x, 20))", x=x).value == pytest.approx(2 * 10)
    assert along("highest(smoothed(x, 20))", x=x).value == pytest.approx(2 * 249)
    with pytest.raises(NoValue, match="outside"):
        along("at(smoothed(x, 20), 4)", x=x)
    with pytest.raises(NoValue, match="nothing was logged"):
        along("at(smoothed(x, 20), 95)", x=x)
    assert along("at(smoothed(x, 20), 165)", x=x).value == pytest.approx(330)
    only_behind = along("lowest(smoothed(x, 105))", x=x)  # what lies before the gap is shorter than that
    assert only_behind.value == pytest.approx(2 * (150 + 52.5))


def test_a_bound_in_reach_leaves_a_bound() -> None:
    t = np.arange(0, 20.0)
    v, off = np.full(20, 10.0), [0] * 20
    v[9], off[9] = 99.0, 1
    x = trace(t, v, off)
    found = along("highest(smoothed(x, 4))", x=x)
    assert (found.value, found.limit) == (pytest.approx((99 + 3 * 10) / 4), "above")
    assert along("lowest(smoothed(x, 4))", x=x).limit is None
    off[11] = -1
    with pytest.raises(NoValue, match="both ends"):
        along("highest(smoothed(x, 4))", x=trace(t, v, off))
    v[9], off[11] = math.nan, 0
    unknown = along("highest(smoothed(x, 4))", x=trace(t, v, off))
    assert (unknown.value, unknown.limit) == (10, "above")


def test_levels_are_smoothed_as_energies() -> None:
    """Half of the time at 90 and half at 80 dB: 10 lg((10⁹ + 10⁸)/2) = 87.40 dB (ISO 3745)."""
    t = np.arange(0, 40, 0.01)
    x = trace(t, np.where(t < 20, 90.0, 80.0), unit="dB", piece=500)
    assert along("at(smoothed(x, 20), 20)", x=x).value == pytest.approx(87.40, abs=0.01)


def test_smoothing_evens_out_what_samples_have_of_their_own() -> None:
    """s/√n for the mean of n readings (JCGM 100, 4.2.3); an offset stays whole."""
    meter = Instrument("meter", absolute=Size(0.3, LUX), repeatability=Size(2.0, LUX))
    found = along("highest(smoothed(x, 25))", x=trace(np.arange(0, 100.0), np.full(100, 7.0), instrument=meter))
    sizes = {s.sort: abs(c) for s, c in found.contributions.items()}
    assert sizes["repeatability"] == pytest.approx(2 / math.sqrt(25), rel=0.01)
    assert sizes["offset"] == pytest.approx(0.3 / math.sqrt(3))
    mean = along("mean_level(x)", x=trace(np.arange(0, 101.0), np.full(101, 7.0), instrument=meter))
    own = [c for s, c in mean.contributions.items() if s.sort == "repeatability"]
    assert own == [pytest.approx(2 / math.sqrt(100), rel=0.01)]  # the two at its ends weigh half


def test_the_first_crossing_of_a_noisy_trace_comes_early_and_smoothing_mends_it() -> None:
    """A line falling by 0.01 lx/s under noise of 1 lx first dips under a limit some 100 s early; over 120 such runs the
    smoothed one is right on the mean. The truth is 600 s: the line is 6 lx above the limit at first."""
    rng = np.random.default_rng(11)
    t = np.arange(0, 1000.0)
    raw, smooth = [], []
    for _ in range(120):
        x = trace(t, 16 - 0.01 * t + rng.normal(0, 1, len(t)), piece=300)
        raw.append(along("when(x, under, 10)", x=x).value or 0.0)
        smooth.append(along("when(smoothed(x, 100), under, 10)", x=x).value or 0.0)
    assert np.mean(raw) < 500
    assert abs(np.mean(smooth) - 600) < 15


@pytest.mark.parametrize(
    ("formula", "says"),
    [
        ("highest(smoothed(x, 0.5))", "no two samples"),
        ("highest(smoothed(x, 500))", "as long as"),
        ("highest(smoothed(x, 0))", "plain time"),
        ("highest(smoothed(x, lowest(x)))", "not by lx"),
        ("smoothed(x, 5)", "no value"),
        ("highest(smoothed(x))", "takes 2"),
        ("highest(smoothed(x + 1, 5))", "one channel"),
    ],
)
def test_smoothing_that_means_nothing_is_refused_with_its_reason(formula: str, says: str) -> None:
    with pytest.raises((FormulaError, NoValue), match=says):
        along(formula, x=trace(np.arange(0, 50.0), np.arange(0, 50.0)))


def test_a_plateau_is_the_first_stretch_that_stays_level() -> None:
    """Warming up as 80 − 60·exp(−t/120) °C, held from 900 s on: the first minute within ±0.5 °C of its mean begins where
    the rise in it is near 1 °C; there the mean is that of the closed form, by scipy.integrate.quad."""
    t = np.arange(0, 1800, 2.0)

    def heat(s: float) -> float:
        return 80 - 60 * math.exp(-s / 120)

    x = trace(t, [heat(s) for s in t], unit="°C", piece=50)
    found = along("plateau(x, 60, 0.5)", x=x)

    def level(a: float) -> bool:
        mean = quad(heat, a, a + 60)[0] / 60
        return heat(a + 60) - mean <= 0.5 and mean - heat(a) <= 0.5

    begins = next(a for a in t if level(a))
    assert found.value == pytest.approx(quad(heat, begins, begins + 60)[0] / 60, abs=0.001)
    moved = [c for s, c in found.contributions.items() if "still moved" in s.of]
    assert moved == [pytest.approx((heat(begins + 60) - heat(begins)) / math.sqrt(12), rel=0.03)]
    assert along("plateau(x, 60, 0.05)", x=x).value == pytest.approx(80, abs=0.2)  # still creeping, by 0.1 °C a minute


def test_a_plateau_is_found_wherever_pieces_are_cut_and_never_across_a_gap() -> None:
    rng = np.random.default_rng(2)
    t = np.concatenate((np.arange(0, 300.0), np.arange(400, 700.0)))
    v = np.where(t < 200, t, 200.0) + rng.uniform(-0.2, 0.2, len(t))
    v[t >= 400] = 150 + rng.uniform(-0.2, 0.2, 300)
    found = {p: along("plateau(x, 120, 1)", x=trace(t, v, piece=p, gaps=((299.0, 400.0),))).value for p in (3, 64, 999)}
    assert len(set(found.values())) == 1
    assert found[3] == pytest.approx(150, abs=0.1)  # the first level ran 100 s only, then the gap


def test_a_plateau_knows_its_mean_as_well_as_its_samples_scatter() -> None:
    """JCGM 100, 4.2.3: s/√n for independent samples; for samples that follow each other with r₁ = 0.8 the sd of a mean
    of 400 over 300 simulated runs, (1 + r)/(1 − r) = 9 times the variance in theory."""
    rng = np.random.default_rng(7)
    t = np.arange(0, 400.0)
    told, means = [], []
    for _ in range(300):
        e = rng.normal(0, 1, 500)
        for i in range(1, 500):
            e[i] += 0.8 * e[i - 1]
        found = along("plateau(x, 399, 50)", x=trace(t, 20 + e[100:], piece=200))
        own = [c for s, c in found.contributions.items() if s.sort == "repeatability"]
        told.append(abs(own[0]))
        means.append(found.value or 0.0)
    assert np.sqrt(np.mean(np.square(told))) == pytest.approx(np.std(means), rel=0.15)


@pytest.mark.parametrize(
    ("formula", "says"),
    [
        ("plateau(x, 60, 0.001)", "never stayed within ±0.001 °C for 60 s"),
        ("plateau(x, 6000, 5)", "never stayed"),
        ("plateau(x, 3, 50)", "x has 4 in 3 s, one every 0.995 s, and a plateau takes 5"),
        ("plateau(x, 60, 0)", "plain"),
        ("plateau(x, 60, lowest(y))", "lx"),
        ("plateau(x, 60)", "takes 3"),
    ],
)
def test_a_plateau_that_isnt_there_has_no_value_and_says_why(formula: str, says: str) -> None:
    x, y = trace(np.arange(0, 200.0), np.arange(0, 200.0), unit="°C"), trace([0, 1], [1, 2])
    with pytest.raises((FormulaError, NoValue), match=says):
        along(formula, x=x, y=y)


def test_the_time_over_a_limit_is_that_of_the_lines() -> None:
    """|sin| over 0.5 for two thirds of the time; 3/4 of a triangle that rises and falls lies over a quarter of its height."""
    t = np.arange(0, 20 * np.pi, 0.001)
    found = along("how_long(x, over, 0.5)", x=trace(t, np.abs(np.sin(t)), piece=5000))
    assert found.value == pytest.approx(2 / 3 * 20 * np.pi, rel=1e-4)
    triangle = trace([0, 10, 20, 30, 40], [0, 8, 0, 8, 0])
    assert along("how_long(x, over, 2)", x=triangle).value == pytest.approx(0.75 * 40)
    assert along("how_long(x, under, 2)", x=triangle).value == pytest.approx(0.25 * 40)
    assert along("how_long(x, over, 9)", x=triangle).value == 0
    each = 10 / math.sqrt(12)  # four passings, each anywhere in its step, by itself
    assert combined_standard_uncertainty(along("how_long(x, over, 2)", x=triangle)) == pytest.approx(2 * each)


def test_an_offset_moves_every_passing_by_itself_over_the_slope_there() -> None:
    """Up at 0.8 lx/s and down at 0.4 lx/s: the limit 1 lx lower is one second and a quarter longer on one side, two and a
    half on the other (by hand)."""
    meter = Instrument("meter", absolute=Size(0.1, LUX))
    t = np.concatenate((np.arange(0, 10, 0.01), np.arange(10, 30.001, 0.01)))
    v = np.where(t < 10, 0.8 * t, 8 - 0.4 * (t - 10))
    found = along("how_long(x, over, 4)", x=trace(t, v, instrument=meter, piece=500))
    assert found.value == pytest.approx(15)
    offset = sum(c for s, c in found.contributions.items() if s.sort == "offset")
    assert abs(offset) == pytest.approx(0.1 / math.sqrt(3) * (1 / 0.8 + 1 / 0.4), rel=1e-3)


def test_a_trace_that_stays_just_short_of_a_limit_isnt_said_to_do_so_for_certain() -> None:
    """It comes to 5.8 lx and the meter is off by up to 1 lx (u = 0.58): two of these below, from 5 to 6.15 lx, it
    spent the part of the time that numpy counts; a limit of 3 lx is far."""
    meter = Instrument("meter", absolute=Size(1.0, LUX))
    t = np.arange(0, 1000, 1.0)
    v = 5.8 + 10 * np.exp(-t / 100)
    near = along("how_long(x, under, 5)", x=trace(t, v, instrument=meter, piece=200))
    u = 1 / math.sqrt(3)
    spent = float(np.mean(v < 5 + 2 * u)) * 1000
    assert near.value == 0
    assert combined_standard_uncertainty(near) == pytest.approx(spent / 4, rel=0.01)
    far = along("how_long(x, under, 3)", x=trace(t, v, instrument=meter, piece=200))
    assert (far.value, combined_standard_uncertainty(far)) == (0, 0)


def test_bounds_and_gaps_are_counted_as_far_as_they_are_known() -> None:
    over = trace([0, 10, 20, 30], [5, 99, 99, 5], [0, 1, 1, 0])
    assert along("how_long(x, over, 50)", x=over).value == pytest.approx(20)  # the middle of either step
    with pytest.raises(NoValue, match="off the scale"):
        along("how_long(x, over, 500)", x=over)
    gap = trace([0, 10, 70, 80], [0, 9, 9, 0], gaps=((10.0, 70.0),))
    found = along("how_long(x, over, 4.5)", x=gap)
    assert found.value == pytest.approx(70)
    of_gap = [c for s, c in found.contributions.items() if s.sort == "assumption"]
    assert of_gap == [pytest.approx(60 / math.sqrt(3))]  # from none of it to twice: ±60 s, uniform

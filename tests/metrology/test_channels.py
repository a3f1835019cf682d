"""What formulas find along a trace, against SciPy, NumPy and the formulas of the standards."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import trapezoid

from reportgen.metrology.errors import FormulaError, NoValue
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.instrument import Instrument, Size, observed
from reportgen.metrology.traces.piece import Piece
from reportgen.metrology.traces.thin import thinned
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Limit, Uncertain, combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit

LUX = parse_unit("lx")


def trace(
    times: Sequence[float],
    values: Sequence[float],
    sides: Sequence[int] = (),
    unit: str = "lx",
    instrument: Instrument | None = None,
    gaps: tuple[tuple[float, float], ...] = (),
    piece: int = 7,
) -> Trace:
    """Handed over in pieces of a few samples, so that every seam between two is crossed."""
    t, v = np.asarray(times, dtype=float), np.asarray(values, dtype=float)
    s = np.asarray(sides or [0] * len(t), dtype=np.int8)

    def pieces() -> Iterator[Piece]:
        for a in range(0, len(t), piece):
            yield Piece(t[a : a + piece], v[a : a + piece], s[a : a + piece])

    def observe(value: float | None, limit: Limit | None, which: str) -> Uncertain:
        return observed(value, parse_unit(unit), instrument, "day", f"x/{which}", limit)

    return Trace(
        "x", pieces, parse_unit(unit), observe, float(t[0]), float(t[-1]), float(t[-1] - t[0]) / len(t), gaps, None, "x"
    )


class Bench:
    """Hands the formula its traces."""

    def __init__(self, **traces: Trace) -> None:
        self.traces = traces

    def trace(self, name: str) -> Trace:
        return self.traces[name]

    def found(
        self, function: str, channel: str, value: Uncertain, limit: Uncertain | None = None, times: int = 1
    ) -> None:
        pass


def along(formula: str, **traces: Trace) -> Uncertain:
    return evaluate(parse(formula), Bench(**traces))  # type: ignore[arg-type]  # no other names are looked up


samples = st.lists(st.tuples(st.floats(0.01, 50), st.floats(-1000, 1000)), min_size=2, max_size=60)


@settings(max_examples=60)
@given(samples, st.integers(1, 9))
def test_peaks_means_and_areas_agree_with_numpy_and_scipy(steps: list[tuple[float, float]], piece: int) -> None:
    t = np.cumsum([a for a, _ in steps])
    v = np.array([b for _, b in steps])
    t = t - t[0]
    x = trace(t, v, piece=piece)
    area = float(trapezoid(v, t))  # scipy.integrate.trapezoid
    assert along("highest(x)", x=x).value == v.max()
    assert along("lowest(x)", x=x).value == v.min()
    assert along("area(x)", x=x).value == pytest.approx(area, rel=1e-12, abs=1e-9)
    assert along("mean_level(x)", x=x).value == pytest.approx(area / t[-1], rel=1e-12, abs=1e-9)


@settings(max_examples=60)
@given(samples, st.floats(0, 1), st.floats(0, 1))
def test_a_stretch_ends_on_the_line_between_samples(steps: list[tuple[float, float]], one: float, other: float) -> None:
    t = np.cumsum([a for a, _ in steps])
    v = np.array([b for _, b in steps])
    t = t - t[0]
    low, high = round(min(one, other) * t[-1], 3), round(max(one, other) * t[-1], 3)
    if not 0 <= low < high <= t[-1]:
        return
    inside = t[(t > low) & (t < high)]
    cut = np.concatenate(([low], inside, [high]))
    heights = np.interp(cut, t, v)  # numpy.interp
    x = trace(t, v)
    assert along(f"area(during(x, {low:.3f}, {high:.3f}))", x=x).value == pytest.approx(
        trapezoid(heights, cut), rel=1e-9, abs=1e-7
    )
    assert along(f"highest(during(x, {low:.3f}, {high:.3f}))", x=x).value == pytest.approx(heights.max(), abs=1e-9)
    assert along(f"at(x, {low:.3f})", x=x).value == pytest.approx(np.interp(low, t, v), abs=1e-9)


def test_a_falling_trace_passes_a_limit_where_interpolation_says() -> None:
    t = np.arange(0, 3000, 10.0)
    v = 800 * np.exp(-t / 900)
    expected = np.interp(-80.0, -v, t)  # numpy.interp on the rising −v
    found = along("when(x, under, 0.1 * highest(x))", x=trace(t, v))
    assert found.value == pytest.approx(float(expected), rel=1e-12)
    assert found.limit is None
    assert combined_standard_uncertainty(found) == pytest.approx(
        10 / math.sqrt(12)
    )  # half a sample interval either way, uniform: JCGM 100, 4.3.7


def test_a_plain_number_is_a_limit_in_the_channels_unit() -> None:
    heat = trace([0, 10, 20], [20, 50, 70], unit="°C")
    assert along("when(x, over, 60)", x=heat).value == 15
    with pytest.raises(FormulaError, match="lx"):
        along("when(x, over, highest(y))", x=heat, y=trace([0, 1], [5, 6]))


def test_a_crossing_must_be_seen_to_happen() -> None:
    switched_on = trace([0, 10, 20, 30, 40], [0, 0, 100, 50, 0])  # dark, on, dark again
    assert along("when(x, under, 10)", x=trace([0, 10, 20], [100, 50, 5], unit="")).value == pytest.approx(
        10 + 10 * 40 / 45
    )
    assert along("when(x, under, 0.1 * highest(x))", x=switched_on).value == pytest.approx(30 + 10 * 40 / 50)
    with pytest.raises(NoValue, match="from its first sample on"):
        along("when(x, under, highest(x) * 2)", x=switched_on)


def test_a_limit_never_passed_is_more_than_the_length_of_the_trace() -> None:
    found = along("when(x, under, 0.1 * highest(x))", x=trace([0, 60, 120], [100, 90, 80]))
    assert (found.value, found.limit, found.unit.symbol) == (120, "above", "s")


def test_a_gain_cancels_where_the_limit_is_a_part_of_the_same_traces_peak() -> None:
    meter = Instrument("meter", percent=5.0)
    t = np.arange(0, 3000, 10.0)
    x = trace(t, 800 * np.exp(-t / 900), instrument=meter)
    share = along("when(x, under, 0.1 * highest(x))", x=x)
    assert not [s for s in share.contributions if s.sort == "gain"]
    # a fixed limit keeps it: u(t) = τ·u(x)/x for an exponential, x = 80 (chain rule)
    fixed = along("when(x, under, 0.1 * highest(y))", x=x, y=trace([0, 1], [800, 800]))
    gain = sum(c for s, c in fixed.contributions.items() if s.sort == "gain")
    assert abs(gain) == pytest.approx(900 * 0.05 / math.sqrt(3), rel=0.01)


def test_an_offset_counts_whole_in_a_mean_and_times_the_duration_in_an_area() -> None:
    meter = Instrument("meter", absolute=Size(3.0, LUX))
    x = trace([0, 10, 20, 30], [5, 9, 4, 7], instrument=meter)
    u = 3 / math.sqrt(3)  # ±a, uniform: JCGM 100, 4.3.7
    assert [c for s, c in along("mean_level(x)", x=x).contributions.items() if s.sort == "offset"] == [pytest.approx(u)]
    assert [c for s, c in along("area(x)", x=x).contributions.items() if s.sort == "offset"] == [pytest.approx(30 * u)]
    rise = along("highest(x) - lowest(x)", x=x)
    assert not [s for s in rise.contributions if s.sort == "offset"]


def test_a_rise_keeps_both_steps_of_the_display() -> None:
    meter = Instrument("meter", resolution=Size(1.0, LUX))
    rise = along("highest(x) - lowest(x)", x=trace([0, 10, 20], [5, 9, 4], instrument=meter))
    assert combined_standard_uncertainty(rise) == pytest.approx(
        math.sqrt(2 / 12)
    )  # two readings of step 1: δ/√12 each, JCGM 100, F.2.2.1


def test_a_coarse_display_leaves_a_crossing_as_open_as_its_true_slope() -> None:
    """Between two samples a whole step falls at once; the light falls one step in 50 s."""
    meter = Instrument("meter", resolution=Size(1.0, LUX))
    t = np.arange(0, 2000, 5.0)
    found = along("when(x, under, 0.9 * highest(x))", x=trace(t, np.round(100 - t / 50), instrument=meter))
    steps = math.sqrt((50 / math.sqrt(12)) ** 2 + (0.9 * 50 / math.sqrt(12)) ** 2)
    assert found.limit is None
    assert steps < combined_standard_uncertainty(found) < 2 * steps


def test_levels_average_as_energies() -> None:
    """L_eqT = 10 lg(1/T ∫ 10^(L/10) dt), ISO 1996-1:2016, 3.6.4 (number from memory); trapezoid by SciPy."""
    t = np.arange(0, 60, 0.5)
    levels = 60 + 20 * np.sin(t / 7)
    expected = 10 * math.log10(trapezoid(10 ** (levels / 10), t) / t[-1])
    assert along("mean_level(x)", x=trace(t, levels, unit="dB")).value == pytest.approx(expected, rel=1e-12)


def test_half_the_time_at_90_and_half_at_80_decibels_is_87_4() -> None:
    """ISO 3745: 10 lg((10^9 + 10^8)/2) = 87.40 dB."""
    steps = trace([0, 10, 10.000001, 20], [90, 90, 80, 80], unit="dB")
    assert along("mean_level(x)", x=steps).value == pytest.approx(87.40, abs=0.005)


def test_an_area_under_levels_or_temperatures_is_refused() -> None:
    for unit, what in (("dB", "levels"), ("°C", "temperatures")):
        with pytest.raises(FormulaError, match=what):
            along("area(x)", x=trace([0, 1], [20, 30], unit=unit))


def test_the_highest_of_a_trace_off_the_scale_is_more_than_its_limit() -> None:
    x = trace([0, 1, 2, 3], [500, 999, 999, 400], sides=[0, 1, 1, 0])
    assert (along("highest(x)", x=x).value, along("highest(x)", x=x).limit) == (999, "above")
    assert (along("lowest(x)", x=x).value, along("lowest(x)", x=x).limit) == (400, None)
    assert along("mean_level(x)", x=x).limit == "above"
    unknown = trace([0, 1, 2], [500, math.nan, 400], sides=[0, 1, 0])
    assert (along("highest(x)", x=unknown).value, along("highest(x)", x=unknown).limit) == (500, "above")
    assert along("mean_level(x)", x=unknown).value is None


def test_a_crossing_stays_known_where_the_scale_ends_beyond_the_limit() -> None:
    x = trace([0, 10, 20, 30], [999, 999, 60, 40], sides=[1, 1, 0, 0])
    found = along("when(x, under, 100)", x=x)
    assert found.value == 15  # the middle: the line from a bound means nothing
    assert combined_standard_uncertainty(found) == pytest.approx(10 / math.sqrt(12))
    with pytest.raises(NoValue, match="off the scale"):
        along("when(x, under, 1500)", x=x)


def test_a_limit_that_is_a_bound_bounds_the_crossing() -> None:
    """Ten percent of more than 999 is more than 99.9: the light fell below that earlier than below 99.9."""
    x = trace([0, 10, 20, 30], [999, 999, 150, 40], sides=[1, 1, 0, 0])
    assert along("when(x, under, 0.1 * highest(x))", x=x).limit == "below"


def test_a_gap_is_bridged_with_all_the_room_the_trace_has() -> None:
    whole = trace([0, 10, 20, 30, 40], [0, 10, 20, 10, 0])
    broken = trace([0, 10, 30, 40], [0, 10, 10, 0], gaps=((10.0, 30.0),))
    assert combined_standard_uncertainty(along("area(x)", x=whole)) == 0
    assert combined_standard_uncertainty(along("area(x)", x=broken)) == pytest.approx(
        20 * (10 - 0) / 2 / math.sqrt(3)
    )  # uniform over the range
    crossing = along(
        "when(x, over, 5 * highest(y))",
        x=trace([0, 10, 70, 80], [0, 1, 9, 9], gaps=((10.0, 70.0),)),
        y=trace([0, 1], [1, 1]),
    )
    assert crossing.value == 40
    assert combined_standard_uncertainty(crossing) == pytest.approx(60 / math.sqrt(12))
    with pytest.raises(NoValue, match="nothing was logged"):
        along("at(x, 40)", x=trace([0, 10, 70, 80], [0, 1, 9, 9], gaps=((10.0, 70.0),)))


def test_a_time_outside_the_trace_is_refused() -> None:
    with pytest.raises(NoValue, match="outside"):
        along("highest(during(x, 0, 500))", x=trace([0, 10], [1, 2]))
    with pytest.raises(NoValue, match="before it begins"):
        along("highest(during(x, 8, 3))", x=trace([0, 10], [1, 2]))
    with pytest.raises(FormulaError, match="told by times"):
        along("highest(during(x, highest(x), 9))", x=trace([0, 10], [1, 2]))


def test_an_uncertain_end_of_a_stretch_reaches_its_area() -> None:
    """dA/dt = x(t) at the end: one source, of u = x(t)·u(t)."""
    x = trace([0, 10, 20, 30], [4, 4, 4, 4])
    clock = trace([0, 10, 20, 30], [9, 7, 3, 1])
    found = along("area(during(x, 0, when(c, under, 5 * lowest(c))))", x=x, c=clock)
    assert found.value == pytest.approx(60)
    assert combined_standard_uncertainty(found) == pytest.approx(4 * 10 / math.sqrt(12))


def test_a_thinned_trace_keeps_every_peak_and_breaks_at_gaps() -> None:
    rng = np.random.default_rng(3)
    t, v = np.arange(0, 50_000.0), rng.normal(0, 1, 50_000)
    v[31_234], v[4_321] = 40.0, -40.0
    shown = thinned(trace(t, v, piece=4096), bins=100)
    points = [p for stretch in shown for p in stretch]
    assert len(points) <= 2 * 100 + 2
    assert (31_234.0, 40.0) in points
    assert (4_321.0, -40.0) in points
    assert points[0][0] == 0
    assert points[-1][0] == 49_999
    broken = thinned(trace([0, 1, 2, 50, 51, 52], [1, 2, 3, 4, 5, 6], gaps=((2.0, 50.0),)))
    assert [len(stretch) for stretch in broken] == [3, 3]


def test_a_limit_that_rests_on_a_peak_off_the_scale_and_was_never_passed_says_nothing() -> None:
    """The peak is more than 999, so a tenth of it is more than 99.9. Were it 2000, 200 was passed after 30 s: the trace
    shows no “more than 40 s”. At three tenths it was passed at 300, so the truth is earlier."""
    x = trace([0, 10, 20, 30, 40], [999, 500, 300, 200, 150], [1, 0, 0, 0, 0])
    with pytest.raises(NoValue, match="may lie nearer"):
        along("when(x, under, 0.1 * highest(x))", x=x)
    assert along("when(x, under, 0.3 * highest(x))", x=x).limit == "below"
    rising = trace([0, 10, 20, 30], [1, 5, 9, 8], [-1, 0, 0, 0])  # under 1: five times it lies anywhere below 5
    with pytest.raises(NoValue, match="may lie nearer"):
        along("when(x, over, 10 * lowest(x))", x=rising)


def test_never_passed_by_less_than_the_error_is_no_sure_bound() -> None:
    """A plateau at 10.2 lx and a meter of ±0.6 lx: the light may have fallen below 10 lx long before the log ended.
    Its u is the time since it was u of the light above the limit, read off by numpy.interp."""
    meter = Instrument("m", absolute=Size(0.6, LUX))
    t, v = np.arange(0.0, 100, 10), np.array([100, 60, 12, 11, 10.5, 10.4, 10.3, 10.25, 10.22, 10.2])
    near = along("when(x, under, 10)", x=trace(t, v, instrument=meter))
    u = 0.6 / math.sqrt(3)
    assert (near.value, near.limit) == (90.0, "above")
    assert combined_standard_uncertainty(near) == pytest.approx(90.0 - float(np.interp(-(10 + u), -v, t)))
    far = along("when(x, under, 5)", x=trace(t, v, instrument=meter))
    assert (far.value, far.limit, combined_standard_uncertainty(far)) == (90.0, "above", 0.0)


def test_the_highest_may_lie_below_a_limit_and_above_every_number() -> None:
    """Read 3, under 5, read 3 (a meter switched over): the highest is somewhere from 3 to 5, so less than 5, never 3."""
    low = along("highest(x)", x=trace([0, 1, 2], [3, 5, 3], [0, -1, 0]))
    assert (low.value, low.limit) == (5.0, "below")
    high = along("lowest(x)", x=trace([0, 1, 2], [3, 2, 3], [0, 1, 0]))
    assert (high.value, high.limit) == (2.0, "above")


@pytest.mark.parametrize("formula", ["area(during(x, 10, 50))", "mean_level(during(x, 30, 90))"])
def test_a_mean_or_area_over_a_stretch_that_ends_in_a_gap_is_none(formula: str) -> None:
    """Samples to 20 s, then none until 90 s. An area from 10 to 50 s of what was read to 20 s alone would be a quarter of
    the truth; one sample at 90 s is no mean of a minute."""
    x = trace([0, 10, 20, 90], [20, 30, 25, 22], gaps=((20, 90),))
    with pytest.raises(NoValue, match="nothing was read"):
        along(formula, x=x)
    assert along("highest(during(x, 10, 50))", x=x).value == 30  # a peak of what there is; the gap is told beside it

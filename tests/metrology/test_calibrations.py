"""What a calibration makes of a reading: the correction, how well it is known, the drift since."""

import math

import pytest

from reportgen.metrology.arithmetic import subtract
from reportgen.metrology.calibration import fitted
from reportgen.metrology.errors import MetrologyError
from reportgen.metrology.instrument import (
    Calibration,
    Instrument,
    Points,
    Relative,
    Size,
    observed,
    observed_difference,
)
from reportgen.metrology.instrument_range import at_the_bottom, at_the_top, outside_points
from reportgen.metrology.uncertain import Source, combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit

G, C, F, BAR, DB = (parse_unit(unit) for unit in ("g", "°C", "°F", "bar", "dB"))

# JCGM 100:2008, H.3, table H.6 (from memory; b(30), s and both standard deviations below are printed in H.3.3 to H.3.4):
# readings of a thermometer in °C, and the corrections found beside a reference
READ = (21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511)
FOUND = (-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160)
LINE = Instrument("thermometer", calibration=Calibration(Points(C, READ, FOUND, line=True)))


def test_a_line_through_calibration_points_is_that_of_the_gum() -> None:
    line = fitted(Points(C, READ, FOUND, line=True))
    intercept = line.height + line.slope * (20 - line.middle)  # H.3.3: t0 = 20 °C
    u_intercept = math.hypot(line.u_height, (20 - line.middle) * line.u_slope)
    r = -(line.middle - 20) * line.u_slope / u_intercept  # of intercept and slope
    assert (f"{intercept:.4f}", f"{u_intercept:.4f}") == ("-0.1712", "0.0029")
    assert (f"{line.slope:.5f}", f"{line.u_slope:.5f}") == ("0.00218", "0.00067")
    assert f"{r:.3f}" == "-0.930"
    assert f"{line.u_height * math.sqrt(11):.4f}" == "0.0035"
    assert line.degrees == 9


def test_a_reading_beyond_the_points_has_the_correction_of_the_gum() -> None:
    # JCGM 100, H.3.4: b(30 °C) = -0.1494 °C, u 0.0041 °C, 9 degrees of freedom
    read = observed(30.0, C, LINE, "day 1", "1")
    assert read.value is not None
    assert f"{read.value - 30:.4f}" == "-0.1494"
    assert f"{combined_standard_uncertainty(read):.4f}" == "0.0041"
    assert {(s.sort, s.shape, s.degrees) for s in read.contributions} == {("calibration", "normal", 9)}


def test_the_same_holds_in_another_unit() -> None:
    # 30 °C is 86 °F; a step of 1 °C is 1.8 °F (NIST SP 811, B.8)
    read = observed(86.0, F, LINE, "day 1", "1")
    assert read.value == pytest.approx(86 - 0.1494 * 1.8, abs=0.0002)
    assert combined_standard_uncertainty(read) == pytest.approx(0.0041 * 1.8, abs=0.0001)


def test_two_corrected_readings_share_the_error_of_the_line() -> None:
    # JCGM 100, H.3.6: the two errors of a line are those of its parameters; at one reading they cancel
    same = subtract(observed(25.0, C, LINE, "day 1", "1"), observed(25.0, C, LINE, "day 2", "2"))
    assert (same.value, combined_standard_uncertainty(same)) == (0.0, 0.0)
    apart = subtract(observed(26.0, C, LINE, "day 1", "1"), observed(22.0, C, LINE, "day 2", "2"))
    line = fitted(Points(C, READ, FOUND))
    assert apart.value == pytest.approx(4 * (1 + line.slope))
    assert combined_standard_uncertainty(apart) == pytest.approx(4 * line.u_slope)


def scale(**found: object) -> Instrument:
    return Instrument("scale", calibration=Calibration(**found))  # type: ignore[arg-type]  # a slip fails the test


def test_an_amount_is_added_to_every_reading_and_its_error_cancels_between_sessions() -> None:
    heavy = scale(correction=Size(-0.12, G), u=Size(0.02, G))
    one, other = observed(231.4, G, heavy, "day 1", "1"), observed(217.1, G, heavy, "day 2", "2")
    assert one.value == pytest.approx(231.28)
    assert one.contributions == {Source("calibration", "scale", "", "normal"): pytest.approx(0.02)}
    assert combined_standard_uncertainty(subtract(one, other)) == 0.0


def test_a_correction_in_percent_leaves_its_share_of_a_difference() -> None:
    heavy = scale(correction=Relative(0.5), u=Relative(0.1))
    apart = subtract(observed(200.0, G, heavy, "1", "1"), observed(100.0, G, heavy, "1", "2"))
    assert apart.value == pytest.approx(100.5)
    assert combined_standard_uncertainty(apart) == pytest.approx(0.1)


def test_between_points_the_correction_goes_straight_and_beyond_them_it_stays() -> None:
    meter = scale(correction=Points(G, (100.0, 200.0, 400.0), (0.2, 0.4, 0.0)))
    found = [observed(grams, G, meter, "1", "1").value for grams in (50.0, 100.0, 150.0, 200.0, 300.0, 500.0)]
    assert found == pytest.approx([50.2, 100.2, 150.3, 200.4, 300.2, 500.0])
    assert [outside_points(grams, G, meter) for grams in (99.0, 100.0, 400.0, 401.0)] == [True, False, False, True]
    assert not outside_points(5.0, G, scale(correction=Size(0.1, G)))


def test_a_line_needs_three_points_apart() -> None:
    with pytest.raises(MetrologyError, match="line"):
        fitted(Points(G, (1.0, 2.0), (0.1, 0.1), line=True))
    with pytest.raises(MetrologyError, match="don't rise"):
        Points(G, (2.0, 2.0, 2.0), (0.1, 0.1, 0.1), line=True)


def test_decimals_on_one_line_leave_no_scatter_of_rounding_behind() -> None:
    # 0.1, 0.2, 0.3 lie on one line as they are written; as binary fractions they miss it by parts of 1e-17
    found = fitted(Points(G, (1.0, 2.0, 3.0), (0.1, 0.2, 0.3), line=True))
    assert (found.u_height, found.u_slope) == (0.0, 0.0)
    assert found.height == pytest.approx(0.2)


def test_drift_grows_with_time_and_is_one_error_at_all_times() -> None:
    # JCGM 100, 4.3.7: anywhere within ±0.1 g a year alike
    moving = scale(drift=Size(0.1, G))
    early, late = (observed(50.0, G, moving, day, day, years=years) for day, years in (("1", 0.5), ("2", 2.0)))
    assert [combined_standard_uncertainty(early), combined_standard_uncertainty(late)] == pytest.approx(
        [0.05 / 3**0.5, 0.2 / 3**0.5]
    )
    assert combined_standard_uncertainty(subtract(late, early)) == pytest.approx(0.15 / 3**0.5)
    with pytest.raises(MetrologyError, match="drifts"):
        observed(50.0, G, moving, "1", "1")


def test_a_difference_read_as_such_is_corrected_by_what_its_ends_do_not_share() -> None:
    points = scale(correction=Points(G, (100.0, 200.0), (0.2, 0.4)), u=Size(0.1, G), drift=Relative(1.0))
    apart = observed_difference(50.0, G, points, "1", "1", ends=(200.0, 150.0), years=1.0)
    assert apart.value == pytest.approx(50.1)
    assert apart.contributions == {Source("drift", "scale"): pytest.approx(0.5 / 3**0.5)}


def test_how_far_an_instrument_repeats_itself_is_each_readings_own() -> None:
    scattering = Instrument("scale", repeatability=Size(0.05, G), repeatability_degrees=9)
    one, other = observed(5.0, G, scattering, "1", "1"), observed(5.0, G, scattering, "1", "2")
    assert one.contributions == {Source("repeatability", "scale", "1", "normal", 9): 0.05}
    assert combined_standard_uncertainty(subtract(one, other)) == pytest.approx(0.05 * 2**0.5)
    (source,) = observed(5.0, G, scattering, "1", "1", leant_on=True).contributions
    assert source.sort == "shared"


def test_a_class_is_a_percentage_of_what_lies_between_the_ends_of_the_scale() -> None:
    # EN 837-1 (from memory): a gauge of class 1.6 from 0 to 10 bar errs by 0.16 bar at most, wherever it points
    gauge = Instrument("gauge", low=Size(0, BAR), high=Size(10, BAR), of_range=1.6)
    for bar in (0.5, 9.0):
        assert combined_standard_uncertainty(observed(bar, BAR, gauge, "1", "1")) == pytest.approx(0.16 / 3**0.5)
    vacuum = Instrument("gauge", low=Size(-1, BAR), high=Size(9, BAR), of_range=1.6)
    assert combined_standard_uncertainty(observed(0.5, BAR, vacuum, "1", "1")) == pytest.approx(0.16 / 3**0.5)
    with pytest.raises(MetrologyError, match="range isn't stated"):
        observed(0.5, BAR, Instrument("gauge", of_range=1.6), "1", "1")


@pytest.mark.parametrize("figures", [{"percent": 2.0}, {"of_range": 2.0, "high": Size(130.0, DB)}])
def test_a_percentage_of_a_level_is_refused(figures: dict[str, object]) -> None:
    meter = Instrument("meter", **figures)  # type: ignore[arg-type]  # a slip fails the test
    with pytest.raises(MetrologyError, match="percentage of"):
        observed(71.0, parse_unit("dB(A)"), meter, "1", "1")


def test_a_percentage_is_of_the_number_the_thermometer_showed() -> None:
    probe = Instrument("probe", resolution=Size(0.1, C), percent=1.0)
    shown, converted = observed(100.0, C, probe, "1", "1"), observed(212.0, F, probe, "1", "1")
    gains = [
        next(size for source, size in x.contributions.items() if source.sort == "gain") for x in (shown, converted)
    ]
    assert gains == pytest.approx([1 / 3**0.5, 1.8 / 3**0.5])


def test_a_reading_at_the_end_of_the_scale_is_noticed() -> None:
    meter = Instrument("meter", low=Size(30.0, DB), high=Size(130.0, DB))
    levels = (30.0, 30.1, 130.0)
    assert [at_the_top(x, parse_unit("dB(A)"), meter) for x in levels] == [False, False, True]
    assert [at_the_bottom(x, parse_unit("dB(A)"), meter) for x in levels] == [True, False, False]
    assert not at_the_bottom(0.0, G, Instrument("scale", low=Size(0.0, G), high=Size(2000.0, G)))


def test_a_hand_may_be_quicker_than_usual() -> None:
    watch = Instrument("watch", by_hand=True, reaction=Size(0.15, parse_unit("s")))
    assert combined_standard_uncertainty(observed(12.0, parse_unit("s"), watch, "1", "1")) == pytest.approx(
        0.15 / 3**0.5
    )

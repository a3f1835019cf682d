"""What an instrument's figures make of a reading."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology.arithmetic import add, subtract
from reportgen.metrology.combine import mean_of, sum_of
from reportgen.metrology.errors import MetrologyError, UnitError
from reportgen.metrology.instrument import Instrument, Shared, Size, observed
from reportgen.metrology.instrument_range import off_step, outside
from reportgen.metrology.uncertain import Source, Uncertain, combined_standard_uncertainty
from reportgen.metrology.unit import parse_unit

G = parse_unit("g")


def scale(**figures: object) -> Instrument:
    known: dict[str, object] = {"resolution": Size(0.1, G), "absolute": Size(0.3, G), "percent": 1.0}
    return Instrument("scale", **{**known, **figures})  # type: ignore[arg-type]  # a slip fails the test


def read(grams: float, reading: str = "1", session: str = "day 1", **figures: object) -> Uncertain:
    return observed(grams, G, scale(**figures), session, reading)


def sizes(x: Uncertain) -> dict[str, float]:
    return {source.sort: size for source, size in x.contributions.items()}


def test_half_widths_become_standard_uncertainties_of_uniform_distributions() -> None:
    # JCGM 100, 4.3.7: ±a gives a/√3; F.2.2.1: a step δ gives 0.29 δ
    found = sizes(read(200.0))
    assert found == pytest.approx({"step": 0.1 / math.sqrt(12), "offset": 0.3 / math.sqrt(3), "gain": 2 / math.sqrt(3)})
    assert f"{found['step'] / 0.1:.2f}" == "0.29"


def test_digits_count_steps_of_the_display() -> None:
    assert sizes(read(200.0, digits=2))["offset"] == pytest.approx((0.3 + 0.2) / math.sqrt(3))
    with pytest.raises(MetrologyError, match="digits"):
        read(200.0, digits=2, resolution=None)


GRAMS = st.floats(-2000, 2000)


@settings(max_examples=50, derandomize=True)
@given(before=GRAMS, after=GRAMS)
def test_an_offset_cancels_in_before_minus_after_and_a_gain_leaves_its_share_of_the_difference(
    before: float, after: float
) -> None:
    found = sizes(subtract(read(before, "1"), read(after, "2")))
    assert "offset" not in found
    assert found.get("gain", 0.0) == pytest.approx(0.01 * (before - after) / math.sqrt(3), abs=1e-12)


def test_an_offset_does_not_cancel_across_sessions() -> None:
    apart = subtract(read(5.0, "1", "day 1"), read(5.0, "2", "day 2"))
    offsets = [size for source, size in apart.contributions.items() if source.sort == "offset"]
    assert sorted(offsets) == pytest.approx([-0.3 / math.sqrt(3), 0.3 / math.sqrt(3)])


def test_an_offset_stays_whole_in_a_mean_and_steps_shrink() -> None:
    mean = mean_of([read(100.0, str(i), percent=None) for i in range(4)])
    offset = mean.contributions[Source("offset", "scale", "day 1")]
    assert offset == pytest.approx(0.3 / math.sqrt(3))
    steps = [size for source, size in mean.contributions.items() if source.sort == "step"]
    assert math.hypot(*steps) == pytest.approx(0.1 / math.sqrt(12) / 2)


def test_a_reading_that_is_after_and_before_cancels_in_the_total() -> None:
    weighed = [read(grams, str(i)) for i, grams in enumerate((231.4, 217.1, 202.6))]
    burned = sum_of([subtract(weighed[0], weighed[1]), subtract(weighed[1], weighed[2])])
    steps = {source.where for source in burned.contributions if source.sort == "step"}
    assert steps == {"0", "2"}
    separately = add(subtract(weighed[0], weighed[1]), subtract(read(217.1, "3"), weighed[2]))
    assert sum(source.sort == "step" for source in separately.contributions) == 4


def test_the_step_can_be_taken_back_out_of_a_contribution() -> None:
    total = mean_of([subtract(read(10.0, "1"), read(5.0, "2")), subtract(read(11.0, "3"), read(5.0, "4"))])
    found = [abs(size) * math.sqrt(12) for source, size in total.contributions.items() if source.sort == "step"]
    assert found == pytest.approx([0.05] * 4)  # c = ½, δ = 0.1


@pytest.mark.parametrize(
    ("shared", "sorts"),
    [
        ("both", {"offset", "gain"}),
        ("offset", {"offset", "accuracy"}),
        ("gain", {"gain", "accuracy"}),
        ("nothing", {"accuracy"}),
    ],
)
def test_what_is_not_shared_belongs_to_its_reading_alone(shared: Shared, sorts: set[str]) -> None:
    one, other = read(200.0, "1", shared=shared), read(200.0, "2", shared=shared)
    assert set(sizes(one)) - {"step"} == sorts
    together = set(one.contributions) & set(other.contributions)
    assert {source.sort for source in together} == sorts - {"accuracy"}


def test_an_unshared_accuracy_is_one_limit_of_both_parts() -> None:
    # JCGM 100, 4.3.7, of the whole stated limit ±(0.3 g + 1 %)
    assert sizes(read(-200.0, shared="nothing"))["accuracy"] == pytest.approx((0.3 + 2.0) / math.sqrt(3))


def test_an_unknown_accuracy_assumes_nothing() -> None:
    assert set(sizes(read(200.0, known=False))) == {"step"}


def test_a_hand_on_the_watch_adds_a_fifth_of_a_second_of_its_own() -> None:
    # ±0.2 s, from memory
    watch = Instrument("stopwatch", resolution=Size(0.01, parse_unit("s")), known=False, by_hand=True)
    seconds = observed(212.4, parse_unit("s"), watch, "1", "1")
    assert sizes(seconds)["reaction"] == pytest.approx(0.2 / math.sqrt(3))
    minutes = observed(3.54, parse_unit("min"), watch, "1", "2")
    assert sizes(minutes)["reaction"] == pytest.approx(0.2 / 60 / math.sqrt(3))
    assert {s.where for s in (*seconds.contributions, *minutes.contributions) if s.sort == "reaction"} == {"1", "2"}
    with pytest.raises(UnitError, match="timing"):
        observed(5.0, G, watch, "1", "1")


def test_figures_in_degrees_are_steps() -> None:
    # NIST SP 811, B.8: ±1 °C is ±1.8 °F
    probe = Instrument("probe", absolute=Size(1.0, parse_unit("°C")))
    assert sizes(observed(212.0, parse_unit("°F"), probe, "1", "1"))["offset"] == pytest.approx(1.8 / math.sqrt(3))


def test_without_an_instrument_the_step_that_was_written_counts() -> None:
    assert combined_standard_uncertainty(observed(14.2, G, None, "1", "1", step=0.1)) == pytest.approx(
        0.1 / math.sqrt(12)
    )
    assert observed(14.2, G, None, "1", "1").contributions == {}


def test_a_coarser_step_seen_counts_instead_of_the_declared_one() -> None:
    found = observed(14.5, G, scale(), "1", "1", step=0.5)
    assert sizes(found)["step"] == pytest.approx(0.5 / math.sqrt(12))


def test_a_reading_off_the_scale_stays_a_bound() -> None:
    beyond = observed(999.0, G, scale(), "1", "1", limit="above")
    assert (beyond.value, beyond.limit) == (999.0, "above")
    unknown = observed(None, G, scale(), "1", "1", limit="above")
    assert (unknown.value, unknown.limit, unknown.contributions) == (None, "above", {})


def test_readings_beyond_the_range_are_noticed() -> None:
    bounded = scale(low=Size(0, G), high=Size(2, parse_unit("kg")))
    assert [outside(grams, G, bounded) for grams in (-0.1, 0.0, 2000.0, 2000.1)] == [True, False, False, True]
    oven = Instrument("oven", high=Size(100.0, parse_unit("°C")))
    assert not outside(212.0, parse_unit("°F"), oven)
    assert outside(213.0, parse_unit("°F"), oven)
    meter = Instrument("meter", high=Size(130.0, parse_unit("dB")))
    assert outside(131.0, parse_unit("dB(A)"), meter)


def test_readings_between_two_steps_are_noticed() -> None:
    coarse = scale(resolution=Size(0.2, G))
    assert [off_step(grams, G, coarse) for grams in (0.4, 1234.6, 0.5)] == [False, False, True]
    assert not off_step(0.5, parse_unit("oz"), coarse)
    assert not off_step(0.5, G, scale(resolution=None))

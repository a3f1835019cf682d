"""A level freed from its background by the rule of ISO 3744:2010, 8.2.3 (clause and limits from memory)."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology.background import correction, less_background
from reportgen.metrology.combine import energy_sum
from reportgen.metrology.errors import NoValue, UnitError
from tests.metrology.formula_bench import value


def test_from_six_to_fifteen_decibels_the_energy_of_the_background_is_taken_off() -> None:
    """K₁ = −10·lg(1 − 10^(−0.1·ΔL)): 1.26 dB at 6, 0.46 dB at 10, 0.14 dB at 15."""
    assert [f"{correction(above):.2f}" for above in (6.0, 10.0, 15.0)] == ["1.26", "0.46", "0.14"]


def test_above_fifteen_decibels_nothing_is_taken_off() -> None:
    assert correction(15.001) == 0.0
    found = less_background(value(70.0, "dB", meter=1.0), value(50.0, "dB", room=1.0))
    assert (found.value, found.limit) == (70.0, None)
    assert {source.of for source in found.contributions} == {"meter"}


def test_under_six_decibels_no_more_than_1_3_are_taken_off_and_it_is_a_bound() -> None:
    found = less_background(value(70.0, "dB"), value(67.0, "dB"))
    assert (found.value, found.limit) == (pytest.approx(68.7), "below")
    loud = less_background(value(70.0, "dB"), value(70.4, "dB"))  # the room was louder than the product in it
    assert (loud.value, loud.limit) == (pytest.approx(68.7), "below")


@settings(max_examples=100, derandomize=True)
@given(st.floats(20, 120), st.floats(6.01, 14.99))
def test_source_and_background_together_are_what_was_read(level: float, above: float) -> None:
    background = value(level - above, "dB")
    source = less_background(value(level, "dB"), background)
    assert energy_sum([source, background]).value == pytest.approx(level, abs=1e-9)


@settings(max_examples=100, derandomize=True)
@given(st.floats(20, 120), st.floats(0.01, 5.99))
def test_the_bound_is_never_quieter_than_the_source(level: float, above: float) -> None:
    """Whatever the source, its level is the energy left over: 10·lg(10^(0.1·L) − 10^(0.1·B))."""
    found = less_background(value(level, "dB"), value(level - above, "dB"))
    true = level + 10 * math.log10(-math.expm1(-above * math.log(10) / 10))
    assert found.limit == "below"
    assert found.value is not None
    assert true <= found.value + 1e-9


@settings(max_examples=60, derandomize=True)
@given(st.floats(20, 120), st.floats(6.1, 14.9), st.floats(0.1, 3), st.floats(0.1, 3))
def test_slopes_are_those_found_by_small_changes_and_a_shared_offset_stays_whole(
    level: float, above: float, own: float, rooms: float
) -> None:
    def worked(change: float, background_change: float) -> float:
        found = less_background(value(level + change, "dB"), value(level - above + background_change, "dB"))
        assert found.value is not None
        return found.value

    found = less_background(
        value(level, "dB", meter=1.5, own=own), value(level - above, "dB", meter=1.5, rooms=rooms)
    ).contributions
    sizes = {source.of: size for source, size in found.items()}
    assert sizes["meter"] == pytest.approx(1.5)
    e = 1e-5
    assert sizes["own"] == pytest.approx(own * (worked(e, 0) - worked(-e, 0)) / (2 * e), rel=1e-5)
    assert sizes["rooms"] == pytest.approx(rooms * (worked(0, e) - worked(0, -e)) / (2 * e), rel=1e-5)


@pytest.mark.parametrize(
    ("level", "background", "expected"),
    [
        ((70.0, None), (30.0, "below"), (70.0, None)),  # quieter than the meter can show, and 40 dB down at least
        ((40.0, None), (30.0, "below"), (40.0, "below")),
        ((70.0, None), (60.0, "above"), (70.0 - 0.4576, "below")),
        ((70.0, None), (None, "above"), (70.0, "below")),
        ((70.0, "below"), (60.0, None), (70.0 - 0.4576, "below")),
        ((70.0, "below"), (30.0, None), (70.0, "below")),
        ((130.0, "above"), (60.0, None), (130.0, "above")),
        ((70.0, "above"), (60.0, None), (70.0 - 0.4576, "above")),
        ((None, "above"), (60.0, None), (None, "above")),
    ],
)
def test_a_bound_of_either_stays_one(
    level: tuple[float | None, str | None], background: tuple[float | None, str | None], expected: tuple[object, object]
) -> None:
    found = less_background(value(level[0], "dB", level[1]), value(background[0], "dB", background[1]))
    assert (found.value, found.limit) == (
        pytest.approx(expected[0], abs=1e-4) if expected[0] is not None else None,
        expected[1],
    )


@pytest.mark.parametrize(("level", "background", "limit"), [(70.0, 66.0, None), (70.0, 60.0, "above")])
def test_off_the_scale_over_a_background_as_loud_can_be_anything(
    level: float, background: float, limit: str | None
) -> None:
    with pytest.raises(NoValue, match="can be anything"):
        less_background(value(level, "dB", "above"), value(background, "dB", limit))


def test_only_levels_have_a_background() -> None:
    for wrong in (value(3.0, "g"), value(3.0, "")):
        with pytest.raises(UnitError, match="two levels in dB"):
            less_background(wrong, value(3.0, "dB"))
    with pytest.raises(UnitError):
        less_background(value(70.0, "dB(A)"), value(60.0, "dB(C)"))

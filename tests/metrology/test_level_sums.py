"""Levels in decibels as energies (ISO 1683, ISO 3745)."""

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from reportgen.metrology import combine, levels
from reportgen.metrology.arithmetic import subtract
from reportgen.metrology.errors import UnitError
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.parse import parse
from tests.metrology.formula_bench import Bench, value


def test_two_equal_levels_together_are_three_decibels_more() -> None:
    assert f"{levels.energy_sum([70.0, 70.0]) - 70.0:.2f}" == "3.01"  # 10 lg 2


def test_eighty_beside_ninety_decibels_adds_four_tenths() -> None:
    assert f"{levels.energy_sum([90.0, 80.0]):.2f}" == "90.41"
    assert f"{combine.energy_sum([value(90.0, 'dB'), value(80.0, 'dB')]).value:.2f}" == "90.41"


def test_ten_equal_levels_together_are_ten_decibels_more() -> None:
    assert levels.energy_sum([60.0] * 10) == pytest.approx(70.0, rel=1e-14)


LEVELS = st.lists(st.floats(-20, 140), min_size=1, max_size=6)


@settings(max_examples=60, derandomize=True)
@given(LEVELS)
def test_an_energy_mean_lies_between_the_plain_mean_and_the_loudest(found: list[float]) -> None:
    mean = levels.energy_mean(found)
    assert math.fsum(found) / len(found) - 1e-9 <= mean <= max(found) + 1e-9
    assert math.fsum(levels.energy_shares(found)) == pytest.approx(1.0)


def test_an_error_all_positions_share_stays_whole_and_others_count_by_their_energy() -> None:
    found = combine.energy_mean([value(90.0, "dB", meter=1.5, left=1.0), value(80.0, "dB", meter=1.5, right=1.0)])
    by_name = {source.of: size for source, size in found.contributions.items()}
    assert by_name["meter"] == pytest.approx(1.5)
    assert by_name["left"] == pytest.approx(10 / 11)  # 10⁹ of 10⁹ + 10⁸
    assert by_name["right"] == pytest.approx(1 / 11)
    step = 1e-5  # the slope by hand
    slope = (levels.energy_mean([90.0 + step, 80.0]) - levels.energy_mean([90.0 - step, 80.0])) / (2 * step)
    assert by_name["left"] == pytest.approx(slope, rel=1e-8)


def test_very_loud_and_very_quiet_levels_neither_overflow_nor_vanish() -> None:
    assert levels.energy_sum([5000.0, 5000.0]) == pytest.approx(5003.0103, abs=1e-4)
    assert levels.energy_sum([]) == -math.inf


def test_in_a_formula_an_energy_mean_is_over_parts_or_over_what_stands_in_its_brackets() -> None:
    bench = Bench(
        parts={"noise": [value(90.0, "dB(A)"), value(80.0, "dB(A)")]}, left=value(90.0, "dB"), right=value(80.0, "dB")
    )
    expected = levels.energy_mean([90.0, 80.0])
    assert evaluate(parse("energy_mean(noise)"), bench).value == expected
    assert evaluate(parse("energy_mean(left, right)"), bench).value == expected
    assert evaluate(parse("energy_mean(left, right)"), bench).unit.kind == "level"


def test_only_levels_have_an_energy_mean() -> None:
    difference = subtract(value(90.0, "dB"), value(80.0, "dB"))
    for wrong in (value(3.0, "g"), difference):
        with pytest.raises(UnitError, match="of levels in dB"):
            combine.energy_mean([wrong])

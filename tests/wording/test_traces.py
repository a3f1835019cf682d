"""Times along a trace, against Python's own timedelta."""

from __future__ import annotations

import datetime
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.wording.traces import clock_of, since, time_of, unit_of_times

SIZE = {"h": 3600, "min": 60, "s": 1}


def taken_apart(told: str) -> float:
    """The seconds that the words name."""
    return sum(float(n) * SIZE[unit] for n, unit in re.findall(r"([\d.]+)\u00a0(h|min|s)", told))


@given(st.integers(min_value=120, max_value=10**6))
def test_the_words_add_up_to_the_whole_seconds(seconds: int) -> None:
    assert taken_apart(time_of(seconds)) == seconds


@given(st.integers(min_value=0, max_value=10**6))
def test_a_clock_goes_round_with_the_day(seconds: int) -> None:
    expected = (datetime.datetime(2026, 5, 30) + datetime.timedelta(seconds=seconds)).time().isoformat()
    assert clock_of(seconds) == expected
    assert since(seconds, 0.0) == expected
    assert since(seconds, None) == time_of(seconds)


@pytest.mark.parametrize(
    ("seconds", "words"),
    [(0, "0 s"), (12.5, "12.5 s"), (85.3, "85.3 s"), (255, "4 min 15 s"), (11145, "3 h 5 min 45 s"), (10800, "3 h"),
     (10805, "3 h 5 s"), (119.96, "120 s"), (3599.7, "1 h")],
)  # fmt: skip
def test_short_times_keep_their_digits_and_long_ones_are_told_in_parts(seconds: float, words: str) -> None:
    assert time_of(seconds).replace("\u00a0", " ") == words


def test_an_axis_has_the_unit_that_suits_its_length() -> None:
    assert [unit_of_times(s)[0] for s in (30, 119, 120, 7199, 7200, 90000)] == ["s", "s", "min", "min", "h", "h"]

"""When something happened, in words, and degrees of freedom (counts and months of ISO 8601: 4.2.1, 2026-05 is May)."""

from __future__ import annotations

from reportgen.wording.count import degrees
from reportgen.wording.day import at_time


def test_a_time_with_its_day_is_told_with_the_day_in_words() -> None:
    assert at_time("2026-05-16 09:52") == "on 16 May 2026 at 09:52"
    assert at_time("2026-05-16T09:52") == "on 16 May 2026 at 09:52"


def test_any_other_time_stays_as_it_was_written() -> None:
    assert at_time("9:12") == "at 9:12"
    assert at_time("2026-13-45 09:52") == "at 2026-13-45 09:52"
    assert at_time("") == ""


def test_one_degree_of_freedom_is_one() -> None:
    assert degrees(1) == "1 degree of freedom"
    assert degrees(8) == "8 degrees of freedom"

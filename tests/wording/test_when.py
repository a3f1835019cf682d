"""When something happened, in words, and degrees of freedom (counts and months of ISO 8601: 4.2.1, 2026-05 is May)."""

from __future__ import annotations

import pytest

from reportgen.finding import Place
from reportgen.languages import load_language
from reportgen.wording.count import degrees
from reportgen.wording.day import at_time, day
from reportgen.wording.language import speaking


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


@pytest.mark.parametrize(
    ("first", "last", "typed", "told"),
    [
        ("2026-05-02", "2026-05-17", "2026-05-02 to 2026-05-17", "2 to 17 May 2026"),
        ("2026-04-30", "2026-05-05", "2026-04-30 to 2026-05-05", "30 April 2026 to 5 May 2026"),
        ("2025-12-30", "2026-01-02", "2025-12-30 to 2026-01-02", "30 December 2025 to 2 January 2026"),
        ("2026-05-02", "2026-05-02", "2026-05-02 to 2026-05-02", "2 May 2026"),
        ("2026-05-01", "2026-05-31", "2026-05", "May 2026"),
        ("2026-05-01", "2026-06-30", "2026-05 to 2026-06", "May 2026 to June 2026"),
        ("2026-01-01", "2026-12-31", "2026", "2026"),
        ("", "", "not noted", "not noted"),
    ],
)
def test_days_from_one_to_another_are_told_with_the_month_in_words(
    first: str, last: str, typed: str, told: str
) -> None:
    assert day(first, last, typed) == told


def test_days_are_told_in_the_language_of_the_page() -> None:
    """DIN 5008 writes 2. Mai 2026; the days of one month are joined by "bis"."""
    german, _ = load_language(None, "de", Place("content/publication.yaml"))
    with speaking(german):
        assert day("2026-05-02", "2026-05-17", "2026-05-02 to 2026-05-17") == "2. bis 17. Mai 2026"
        assert day("2026-04-30", "2026-05-05", "2026-04-30 to 2026-05-05") == "30. April 2026 bis 5. Mai 2026"
        assert day("2026-03-01", "2026-03-31", "2026-03") == "März 2026"
        assert day("", "", "not noted") == "nicht notiert"

"""Moments of films as text, and back."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.campaign.moments import TIME, length, moment
from reportgen.campaign.shape import NotThat
from reportgen.wording.moment import as_typed, in_seconds, spelled_out, whole_seconds


@pytest.mark.parametrize(
    ("typed", "seconds", "words"),
    [  # 60 seconds to the minute, 60 minutes to the hour (ISO 80000-3:2019, 3-9)
        ("4m20s", "260", "4\u00a0min 20\u00a0s"),
        ("1h02m03s", "3723", "1\u00a0h 2\u00a0min 3\u00a0s"),
        ("45.5s", "45.5", "45.5\u00a0s"),
        ("90m", "5400", "1\u00a0h 30\u00a0min"),
        ("4m 5s", "245", "4\u00a0min 5\u00a0s"),
        ("0s", "0", "0\u00a0s"),
    ],
)
def test_a_moment_is_read_and_said(typed: str, seconds: str, words: str) -> None:
    assert length(typed) == Decimal(seconds)
    assert spelled_out(length(typed)) == words
    assert moment(f"the main one {typed}").seconds == Decimal(seconds)


@given(st.decimals(0, 99_999, places=3))
def test_what_is_printed_as_typed_is_read_as_the_same(seconds: Decimal) -> None:
    assert length(as_typed(seconds)) == seconds
    assert Decimal(in_seconds(seconds)) == seconds
    assert int(whole_seconds(seconds)) == seconds // 1


@given(st.text(alphabet="0123456789hms: .-", max_size=8))
def test_only_what_the_pattern_takes_is_read(text: str) -> None:
    import re

    fits = re.fullmatch(TIME, text.strip()) is not None
    try:
        length(text)
        read = True
    except NotThat:
        read = False
    assert read == fits


@pytest.mark.parametrize("text", ["4:20", "04:20:00", "main 4:20", "4 min 20 s", "20", "", "main", "4m60s"])
def test_what_a_spreadsheet_would_change_is_refused(text: str) -> None:
    with pytest.raises(NotThat) as wrong:
        moment(text)
    assert "4m20s" in wrong.value.do

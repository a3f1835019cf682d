"""Every way of writing a reading, and every way that is refused."""

from __future__ import annotations

from contextlib import suppress
from decimal import Decimal

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from reportgen.intake.notations.notation import NO_REASON, Expected, UnreadableError, Written, read_cell

NUMBER = Expected(unit="g")
SECONDS = Expected("timed", "s")
COUNT = Expected("count")
YES_NO = Expected("yes/no")
GRADE = Expected("grade", grades=("poor", "fair", "very good"))
SEMICOLONS = Expected(unit="g", comma="decimal")
TABS = Expected(unit="g", comma="doubtful")


@pytest.mark.parametrize(
    ("text", "expected", "written"),
    [
        ("16.5", NUMBER, Written(Decimal("16.5"), decimals=1)),
        ("-0.50", NUMBER, Written(Decimal("-0.50"), decimals=2)),
        ("−3", NUMBER, Written(Decimal("-3"), decimals=0)),
        (" 7 ", NUMBER, Written(Decimal(7), decimals=0)),
        ("16.5 kg", NUMBER, Written(Decimal("16.5"), "kg", decimals=1)),
        ("16.5kg", NUMBER, Written(Decimal("16.5"), "kg", decimals=1)),
        ("5 %", NUMBER, Written(Decimal(5), "%", decimals=0)),
        ("20 °C", NUMBER, Written(Decimal(20), "°C", decimals=0)),
        ("71.2 dB(A)", NUMBER, Written(Decimal("71.2"), "dB(A)", decimals=1)),
        ("3 mm/s²", NUMBER, Written(Decimal(3), "mm/s²", decimals=0)),
        ("6.1 L/100 km", NUMBER, Written(Decimal("6.1"), "L/100 km", decimals=1)),
        ("1e3", NUMBER, Written(Decimal("1e3"), decimals=-3)),
        ("1.50E-2", NUMBER, Written(Decimal("0.0150"), decimals=4)),
        ("over 999", NUMBER, Written(Decimal(999), limit="above", decimals=0)),
        (">999", NUMBER, Written(Decimal(999), limit="above", decimals=0)),
        ("> 999 ppm", NUMBER, Written(Decimal(999), "ppm", limit="above", decimals=0)),
        ("Over 99.5", NUMBER, Written(Decimal("99.5"), limit="above", decimals=1)),
        ("under 1", NUMBER, Written(Decimal(1), limit="below", decimals=0)),
        ("<1", NUMBER, Written(Decimal(1), limit="below", decimals=0)),
        ("over unknown", NUMBER, Written(limit="above")),
        ("under unknown", NUMBER, Written(limit="below")),
        ("over 12", COUNT, Written(Decimal(12), limit="above", decimals=0)),
        ("none (spilled)", NUMBER, Written(absent_because="spilled")),
        ("none (dog, twice (!))", YES_NO, Written(absent_because="dog, twice (!)")),
        ("", NUMBER, Written(absent_because=NO_REASON)),
        ("none", GRADE, Written(absent_because=NO_REASON)),
        ("yes", YES_NO, Written(word="yes")),
        ("No", YES_NO, Written(word="no")),
        ("fair", GRADE, Written(word="fair")),
        ("Very_good", GRADE, Written(word="very good")),
        ("0", COUNT, Written(Decimal(0), decimals=0)),
        ("12.0", COUNT, Written(Decimal("12.0"), decimals=1)),
        ("5:31", SECONDS, Written(Decimal(331), "s", decimals=0)),
        ("5:31.4", Expected("timed", "min"), Written(Decimal("331.4"), "s", decimals=1)),
        ("0:59", Expected(unit="min"), Written(Decimal(59), "s", decimals=0)),
        ("1:02:03", Expected("run to a limit", "h"), Written(Decimal(3723), "s", decimals=0)),
        ("over 5:00", SECONDS, Written(Decimal(300), "s", limit="above", decimals=0)),
        ("12,5", SEMICOLONS, Written(Decimal("12.5"), decimals=1)),
        ("1,250 kg", SEMICOLONS, Written(Decimal("1.250"), "kg", decimals=3)),
        ("<0,5", SEMICOLONS, Written(Decimal("0.5"), limit="below", decimals=1)),
        ("12,5", TABS, Written(Decimal("12.5"), decimals=1)),
        ("0,125", TABS, Written(Decimal("0.125"), decimals=3)),
    ],
)
def test_a_notation_means_one_thing(text: str, expected: Expected, written: Written) -> None:
    assert read_cell(text, expected) == written


@pytest.mark.parametrize(
    ("text", "expected", "rule"),
    [
        ("1,234", NUMBER, "separator-in-number"),
        ("1,234.5", NUMBER, "separator-in-number"),
        ("1 234", NUMBER, "separator-in-number"),
        ("1'234", NUMBER, "separator-in-number"),
        ("1_234", NUMBER, "separator-in-number"),
        ("1.234.567", NUMBER, "separator-in-number"),
        ("1.234,5", SEMICOLONS, "separator-in-number"),
        ("1,234,567", SEMICOLONS, "separator-in-number"),
        ("12,5", NUMBER, "separator-in-number"),
        ("1,250", TABS, "separator-in-number"),
        ("12,5", Expected(unit="g", comma="mixed"), "separator-in-number"),
        ("nan", NUMBER, "not-a-number"),
        ("NaN", COUNT, "not-a-number"),
        ("inf", NUMBER, "not-a-number"),
        ("-Infinity", NUMBER, "not-a-number"),
        ("1e999", NUMBER, "not-a-number"),
        ("heavy", NUMBER, "not-a-number"),
        ("O.5", NUMBER, "not-a-number"),
        ("12..5", NUMBER, "not-a-number"),
        ("2-3", NUMBER, "rough-unclear"),
        ("16.5 or so, I think", NUMBER, "not-a-number"),
        ("=A1+B1", NUMBER, "not-a-number"),
        ("#REF!", NUMBER, "not-a-number"),
        ("-", NUMBER, "not-a-number"),
        ("n/a", NUMBER, "not-a-number"),
        (">=5", NUMBER, "not-a-number"),
        ("٣", NUMBER, "not-a-number"),
        ("5:31", NUMBER, "not-a-number"),
        ("5:75", SECONDS, "not-a-number"),
        ("5:31", COUNT, "not-a-number"),
        ("yes", NUMBER, "not-a-number"),
        ("2.5", COUNT, "not-a-count"),
        ("-1", COUNT, "not-a-count"),
        ("3 times", COUNT, "not-a-count"),
        ("y", YES_NO, "not-yes-or-no"),
        ("1", YES_NO, "not-yes-or-no"),
        ("true", YES_NO, "not-yes-or-no"),
        ("over 3", YES_NO, "not-yes-or-no"),
        ("good", GRADE, "not-a-grade"),
    ],
)
def test_what_could_mean_two_things_or_nothing_is_refused_with_a_remedy(
    text: str, expected: Expected, rule: str
) -> None:
    with pytest.raises(UnreadableError) as caught:
        read_cell(text, expected)
    assert caught.value.rule == rule
    assert text in caught.value.says
    assert caught.value.why
    assert caught.value.do


def test_a_thousands_separator_gets_both_readings_as_remedy() -> None:
    with pytest.raises(UnreadableError) as caught:
        read_cell("1,234", NUMBER)
    assert "1234 or 1.234" in caught.value.do


def test_a_misspelt_grade_gets_the_nearest() -> None:
    with pytest.raises(UnreadableError) as caught:
        read_cell("very god", GRADE)
    assert "“very good”" in caught.value.do


@given(st.decimals(allow_nan=False, allow_infinity=False, min_value=-(10**12), max_value=10**12, places=6))
def test_a_written_decimal_comes_back_exactly(number: Decimal) -> None:
    written = read_cell(f"{number:f}", NUMBER)
    assert written.value == number
    assert written.decimals == 6


@given(st.integers(0, 9), st.integers(0, 10**9))
def test_decimals_count_the_digits_as_written_zeros_included(places: int, digits: int) -> None:
    text = f"{Decimal(digits).scaleb(-places):.{places}f}"
    written = read_cell(text, NUMBER)
    assert written.decimals == places
    assert f"{written.value:f}" == text


PIECES = [
    "about ",
    "250",
    "5:30",
    "1",
    ".",
    ",",
    ":",
    " ",
    "-",
    "±",
    " to ",
    "over ",
    "some",
    "ostler + ",
    "g",
    "x:y",
    "e9",
    "%",
]


@given(st.text(max_size=12) | st.lists(st.sampled_from(PIECES), max_size=6).map("".join))
@example("about 25 x:y")
def test_no_text_breaks_the_reader(text: str) -> None:
    """Anything at all is either read or refused with a reason."""
    for expected in (NUMBER, SECONDS, COUNT, YES_NO, GRADE, SEMICOLONS, TABS):
        with suppress(UnreadableError):
            written = read_cell(text, expected)
            number = written.value is not None or written.limit is not None
            assert [number, bool(written.word), bool(written.absent_because)].count(True) == 1
            assert (written.width is not None) == bool(written.rough)


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("1,234", "1234 or 1.234"),
        ("1,234.5", "1234.5"),
        ("1.234,5", "1234.5"),
        ("1.234.567", "1234567"),
        ("1.234.567,8", "1234567.8"),
        ("1 234,5", "1234.5"),
        ("1'234.5", "1234.5"),
        ("1_000", "1000"),
    ],
)
def test_what_a_number_with_separators_may_mean_is_written_out_right(text: str, meant: str) -> None:
    with pytest.raises(UnreadableError) as refused:
        read_cell(text, NUMBER)
    assert refused.value.rule == "separator-in-number"
    assert f"Write {meant}, with" in refused.value.do

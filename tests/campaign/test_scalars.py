"""Texts stay what was written, and mean what their key says."""

from decimal import Decimal

import pytest

from reportgen.campaign.accuracy import accuracy
from reportgen.campaign.dates import day
from reportgen.campaign.ranges import money, span, times
from reportgen.campaign.scalar import amount, amount_or_guess, number
from reportgen.campaign.shape import NotThat
from reportgen.campaign.short import instrument


@pytest.mark.parametrize("text", ["14.20", "0.0", "1e3", "-5", "+3.50", ".5"])
def test_a_number_keeps_the_digits_it_was_written_with(text):
    assert number(text).as_tuple() == Decimal(text).as_tuple()


def test_the_minus_of_typesetters_is_a_minus():
    assert number("−5.0") == Decimal("-5.0")


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("25 g", "25", "g"), ("25g", "25", "g"), ("46.1 kJ/g", "46.1", "kJ/g"), ("10 %", "10", "%"),
        ("9.80665 m/s²", "9.80665", "m/s²"), ("9.8 m/s2", "9.8", "m/s2"), ("-20 °C", "-20", "°C"),
        ("3 fl oz", "3", "fl oz"), ("0.026 EUR/g", "0.026", "EUR/g"), ("3", "3", ""), ("1.50 kg*m^2", "1.50", "kg*m^2"),
        ("4182 J/(kg K)", "4182", "J/(kg K)"),
    ],
)  # fmt: skip
def test_an_amount_is_a_number_and_its_unit(text, value, unit):
    found = amount(text)
    assert (str(found.value), found.unit, found.text) == (value, unit, text)


@pytest.mark.parametrize(
    "text", ["much", "", "1,5 g", "2,000 g", "g 25", "25 to 30 g", "±3 g", "5:31", "3 g + 1 g", ">5 g"]
)
def test_what_is_no_amount_is_refused(text):
    with pytest.raises(NotThat):
        amount(text)


def test_a_guess_says_so():
    assert amount_or_guess("0.5 g, a guess").guess
    assert not amount_or_guess("0.5 g").guess
    assert amount_or_guess("0.5 g, a guess").unit == "g"


def test_an_accuracy_has_up_to_three_parts():
    found = accuracy("±(0.3 °C + 0.5 % of reading)")
    assert (found.absolute.value, found.absolute.unit, found.percent, found.digits) == (
        Decimal("0.3"), "°C", Decimal("0.5"), None,
    )  # fmt: skip
    found = accuracy("±0.5 % + 2 digits")
    assert (found.absolute, found.percent, found.digits) == (None, Decimal("0.5"), 2)
    assert accuracy("+/- 0.3 g").absolute.value == Decimal("0.3")
    assert accuracy("±1 digit").digits == 1
    assert not accuracy("unknown").known


@pytest.mark.parametrize("text", ["class 1.6", "±1.6 % of range", "±1.6 % of the span", "+/-1.6 % of full scale"])
def test_an_accuracy_may_be_a_percentage_of_the_range(text):
    found = accuracy(text)
    assert (found.of_range, found.percent, found.absolute, found.digits) == (Decimal("1.6"), None, None, None)
    assert accuracy("±(0.5 % of range + 1 digit + 0.2 %)").percent == Decimal("0.2")


@pytest.mark.parametrize(
    ("leaflet", "in_words"),
    [
        ("±0.5 % rdg + 2 dgt", "±0.5 % of reading + 2 digits"),
        ("±(0.5% rdg. + 2dgts)", "±(0.5% of reading + 2 digits)"),
        ("±1 % FS", "±1 % of range"),
        ("±1 % of F.S.", "±1 % of range"),
    ],
)
def test_what_leaflets_print_for_reading_range_and_digits_means_the_words(leaflet, in_words):
    """rdg, dgt, FS: common practice, no source."""
    short, long = accuracy(leaflet), accuracy(in_words)
    assert (short.percent, short.digits, short.of_range) == (long.percent, long.digits, long.of_range)
    assert "rdg" not in short.text
    assert "FS" not in short.text


@pytest.mark.parametrize("read", [accuracy, instrument])
def test_a_comma_in_a_class_is_told_as_one(read):
    with pytest.raises(NotThat, match="“class 1,6” has a comma in a number") as refusal:
        read("class 1,6")
    assert "class 1.6" in refusal.value.do


def test_a_line_of_an_instrument_takes_a_class_and_an_accuracy_by_its_sign():
    assert instrument("0.1 bar, up to 10 bar, class 1.6")["accuracy"] == "class 1.6"
    assert instrument("±1.5 dB, 0.1 dB") == {"accuracy": "±1.5 dB", "resolution": "0.1 dB"}
    assert instrument("0.1 °C, ±(0.3 % rdg + 2 dgt)")["accuracy"] == "±(0.3 % rdg + 2 dgt)"


@pytest.mark.parametrize(
    "text",
    [
        "0.3 g",
        "±",
        "±0.3",
        "±2.5 digits",
        "±1 % + 2 %",
        "±1 % of load",
        "±1 % of range + 1 % of span",
        "class II",
        "class 0",
        "± about 3 g",
        "±(0.3 g",
    ],
)
def test_an_accuracy_that_cannot_be_reckoned_with_is_refused(text):
    with pytest.raises(NotThat):
        accuracy(text)


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("2026-05-02", "2026-05-02", "2026-05-02"), ("2026-05", "2026-05-01", "2026-05-31"),
        ("2024-02", "2024-02-01", "2024-02-29"), ("2026", "2026-01-01", "2026-12-31"),
        ("2026-05-02 to 2026-05-09", "2026-05-02", "2026-05-09"), ("2026-05 to 2026-06", "2026-05-01", "2026-06-30"),
        ("not noted", "", ""),
    ],
)  # fmt: skip
def test_a_date_sorts_by_its_ends_and_shows_as_typed(text, first, last):
    found = day(text)
    assert (found.text, found.first, found.last) == (text, first, last)


@pytest.mark.parametrize(
    "text", ["2026-02-30", "2026-13", "02.05.2026", "2026-05-09 to 2026-05-02", "yesterday", "0000-01-01"]
)
def test_no_day_of_the_calendar_is_refused(text):
    with pytest.raises(NotThat):
        day(text)


def test_a_range_may_be_open_and_lends_its_unit():
    assert span("up to 130 dB").low is None
    assert span("from 30 dB").high is None
    assert (span("0 to 2000 g").low.unit, span("0 to 2000 g").high.value) == ("g", 2000)
    assert span("-50 °C to 300 °C").low.value == -50
    with pytest.raises(NotThat):
        span("2000 g to 0 g")


def test_a_price_has_a_currency_and_may_be_a_range():
    assert (str(money("89.00 EUR").low), money("89.00 EUR").currency) == ("89.00", "EUR")
    assert (money("90 to 120 USD").low, money("90 to 120 USD").high) == (90, 120)
    for text in ("89", "89 euros", "€89", "120 to 90 USD", "-5 EUR", "89,00 EUR"):
        with pytest.raises(NotThat):
            money(text)


def test_uses_go_upward():
    assert times("0 to 500") == (0, 500)
    for text in ("500", "500 to 0", "-3 to 5", "few to many"):
        with pytest.raises(NotThat):
            times(text)

"""Numbers in print."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.wording import interval, number

NB, NNB, MINUS = "\u00a0", "\u202f", "\u2212"


def read_back(text: str) -> Decimal:
    """A printed number read as a reader does."""
    plain = text.replace(NNB, "").replace(MINUS, "-").replace("+", "")
    raised = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")
    mantissa, _, power = plain.partition(f"{NB}×{NB}10")
    return Decimal(mantissa).scaleb(int(power.translate(raised) or 0) if power else 0)


# JCGM 100:2008 7.2.6: y = 10.057 62 Ω with u = 27 mΩ is rounded to 10.058 Ω; u(xᵢ) = 28.05 kHz to 28 kHz.
# JCGM 100:2008 7.2.2: m = 100.021 47 g with u = 0.35 mg keeps all its digits.
@pytest.mark.parametrize(
    ("value", "u", "printed", "printed_u"),
    [
        (10.05762, 0.027, "10.058", "0.027"),
        (100.02147, 0.00035, "100.02147", "0.00035"),
        (500.0, 28.05, "500", "28"),
    ],
)
def test_values_match_two_digits_of_their_uncertainty(value: float, u: float, printed: str, printed_u: str) -> None:
    assert number.with_u(value, u) == (printed, printed_u)


def test_an_uncertainty_that_rounds_up_a_place_keeps_two_digits() -> None:
    assert number.with_u(1.234, 0.0996) == ("1.23", "0.10")
    assert number.with_u(1.234, 0.0994) == ("1.234", "0.099")


def test_a_large_uncertainty_rounds_the_value_to_hundreds() -> None:
    assert number.with_u(15678.4, 1234) == (f"15{NNB}700", "1200")


# NIST SP 811 (2008), B.7.1: to even when exactly 5 follows. The decimal text counts, not the binary number behind it.
@pytest.mark.parametrize(
    ("value", "decimals", "printed"),
    [(6.974950, 3, "6.975"), (2.675, 2, "2.68"), (0.125, 2, "0.12"), (0.135, 2, "0.14"), (2.5, 0, "2"), (3.5, 0, "4")],
)
def test_halves_go_to_the_even_digit_of_the_decimal_number(value: float, decimals: int, printed: str) -> None:
    assert number.fixed(value, decimals) == printed


def test_a_sum_is_freed_of_binary_noise_before_it_is_rounded() -> None:
    noisy = 0.1 + 0.2 + 0.045  # 0.34500000000000003 in binary; half to even gives 0.34
    assert number.fixed(noisy, 2) == "0.34"
    assert number.plain(231.4 - 217.1) == "14.3"


# SI brochure, 9th edition, 5.4.4: four digits before the decimal sign need no space.
def test_groups_of_three_begin_at_ten_thousand() -> None:
    assert number.fixed(9999, 0) == "9999"
    assert number.fixed(10000, 0) == f"10{NNB}000"
    assert number.fixed(-1234567.5, 1) == f"{MINUS}1{NNB}234{NNB}567.5"


def test_what_rounds_to_zero_has_no_sign() -> None:
    assert number.fixed(-0.04, 1) == "0.0"
    assert number.fixed(0.04, 1, sign=True) == "0.0"
    assert number.fixed(-0.0, 0) == "0"


def test_a_number_without_uncertainty_keeps_its_readings_decimals() -> None:
    assert number.plain(71.2, 1) == "71.2"
    assert number.plain(71.0, 1) == "71.0"
    assert number.as_written(Decimal("0.50")) == "0.50"
    assert number.plain(71.23333) == "71.23"
    assert number.plain(12345.678) == f"12{NNB}346"


def test_what_is_no_number_is_not_known() -> None:
    assert {number.plain(x) for x in (None, float("nan"), float("inf"))} == {"not known"}
    with pytest.raises(ValueError, match="finite"):
        number.fixed(float("nan"), 1)
    with pytest.raises(ValueError, match="significant"):
        number.decimals_of(0.0)


values = st.floats(-1e9, 1e9, allow_nan=False)
uncertainties = st.floats(1e-6, 1e6, allow_nan=False, exclude_min=True)


@given(values, uncertainties)
def test_a_printed_value_is_within_half_its_last_digit(value: float, u: float) -> None:
    printed, printed_u = number.with_u(value, u)
    half = Decimal(5).scaleb(-number.decimals_of(u) - 1)
    assert abs(read_back(printed) - number.exact(value)) <= half
    assert abs(read_back(printed_u) - number.exact(u)) <= half
    assert Decimal("0.95") <= read_back(printed_u) / number.exact(u) <= Decimal("1.05")


@given(values, st.one_of(st.none(), uncertainties), st.text("gsdB", max_size=2))
def test_no_print_holds_a_word_of_the_machine(value: float, u: float | None, unit: str) -> None:
    low, high = (None, None) if u is None else (value - 2 * u, value + 2 * u)
    for text in (
        interval.printed(value, u, low, high, unit),
        interval.difference(value, u, low, high, unit),
        interval.value_only(value, u, unit),
        interval.uncertainty(u, unit),
        interval.clock(value),
    ):
        assert not re.search(r"nan|inf|None|-|\be[+-]?\d", text)
        assert not re.search(rf"{MINUS}0(?:\.0*)?(?![\d.:])", text)

"""Intervals, limits, differences, ranks, probabilities, durations and units in print."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.finding import Place
from reportgen.languages import load_language
from reportgen.wording import count, interval, listing
from reportgen.wording.language import speaking
from reportgen.wording.unit import joined, spelled

NB, MINUS = "\u00a0", "\u2212"


def spaced(text: str) -> str:
    return text.replace(NB, " ")


def test_a_result_is_a_value_a_unit_and_an_interval() -> None:
    assert interval.printed(14.2, 0.31, 13.58, 14.82, "g") == f"14.20{NB}g (13.58 to 14.82)"


def test_each_unit_family_is_rounded_for_itself() -> None:
    grams = (14.2, 0.31, 13.58, 14.82)
    ounces = tuple(x / 28.349523125 for x in grams)  # IEEE/ASTM SI 10: 1 oz = 28.349 523 125 g exactly
    assert spaced(interval.in_units([(*grams, "g"), (*ounces, "oz")])) == (
        "14.20 g (13.58 to 14.82); 0.501 oz (0.479 to 0.523)"
    )


def test_a_limit_stays_a_limit() -> None:
    assert spaced(interval.printed(999.0, None, 999.0, None, "g", "above")) == "more than 999 g"
    assert spaced(interval.printed(1.0, None, None, 1.0, "g", "below")) == "less than 1 g"
    assert interval.printed(None, None, None, None, "g", "above") == "more than the meter can show"


def test_a_value_without_uncertainty_says_why() -> None:
    text = interval.printed(71.2, None, None, None, "dB", why_no_u="no instrument was named", decimals=1)
    assert spaced(text) == "71.2 dB (uncertainty not known: no instrument was named)"
    assert spaced(interval.printed(71.2, None, None, None, "dB")) == "71.2 dB (uncertainty not known)"


def test_an_open_interval_is_open_in_words() -> None:
    assert spaced(interval.printed(14.2, 0.31, 13.58, float("inf"), "g")) == "14.20 g (13.58 or more)"


def test_a_difference_shows_its_sign() -> None:
    assert interval.difference(-1.1, 0.2, -1.5, -0.7, "g") == f"{MINUS}1.10{NB}g ({MINUS}1.50 to {MINUS}0.70)"
    assert interval.difference(2.04, None, None, None, "s", decimals=1) == f"+2.0{NB}s"
    assert interval.difference(0.0, 0.2, -0.4, 0.4, "s") == f"0.00{NB}s ({MINUS}0.40 to +0.40)"


def test_two_amounts_that_differ_never_read_alike() -> None:
    assert interval.side_by_side(7.96, 8.04, "s") == (f"7.96{NB}s", f"8.04{NB}s")
    assert interval.side_by_side(3.1, 8.2, "s") == (f"3.1{NB}s", f"8.2{NB}s")


@given(st.floats(0.001, 1e5), st.floats(0.001, 1e5))
def test_what_is_smaller_reads_smaller(first: float, second: float) -> None:
    one, other = interval.side_by_side(first, second, "")
    read = [float(t.replace("\u202f", "")) for t in (one, other)]
    assert (read[0] < read[1]) == (first < second) or float(f"{first:.12g}") == float(f"{second:.12g}")


def test_ranks_are_ranges() -> None:
    assert interval.rank_range((1, 2)) == "1–2"
    assert interval.rank_range((3, 3)) == "3"


@pytest.mark.parametrize(
    ("p", "printed"),
    [
        (0.98, "98 %"),
        (0.9951, "over 99 %"),
        (1.0, "over 99 %"),
        (0.0, "under 1 %"),
        (0.5, "50 %"),
        (0.99, "99 %"),
        (0.9496, "94.9 %"),  # not yet the 95 % a decision asks for, so never printed as if it were
        (0.0504, "5.1 %"),
        (0.9504, "95.1 %"),
    ],
)
def test_probabilities_never_promise_certainty_nor_cross_the_limit_of_a_decision(p: float, printed: str) -> None:
    assert spaced(interval.probability(p)) == printed


def test_durations_as_a_clock_shows_them() -> None:
    assert interval.clock(212.4) == "3:32"
    assert interval.clock(59.96, 1) == "1:00.0"
    assert interval.clock(3725) == "1:02:05"


# SI brochure, 9th edition, 5.4.3 (a space before the unit, °C too) and 5.4.7 (before % too).
def test_a_space_that_never_breaks_stands_before_every_unit() -> None:
    assert joined("20", "degC") == f"20{NB}°C"
    assert joined("5", "%") == f"5{NB}%"
    assert joined("3", "") == "3"


@pytest.mark.parametrize(
    ("typed", "printed"),
    [("mm/s^2", "mm/s²"), ("m*s**-1", "m·s⁻¹"), ("degF", "°F"), ("um", "µm"), ("l/min", "L/min"), ("kJ/g", "kJ/g")],
)
def test_units_are_spelled_for_print(typed: str, printed: str) -> None:
    assert spelled(typed) == printed


def test_lists_and_counts_read_as_a_sentence_does() -> None:
    assert listing.and_list(["a"]) == "a"
    assert listing.and_list(["a", "b", "c"]) == "a, b and c"
    assert count.counted("pass", 1) == "one pass"
    assert count.counted("pass", 4) == "four passes"
    assert count.counted("pass", 13) == "13 passes"
    assert count.roughly(47) == "50"
    assert count.roughly(8) == "eight"


def test_amounts_of_any_size_keep_digits_that_say_something() -> None:
    """A gap of 1.85 nm against 0.48 nm, read in steps of 0.1 nm: neither reads as nothing."""
    steps = interval.decimals_of_steps((1e-10, 1e-10), passes=2)
    printed = [text.replace("\N{NO-BREAK SPACE}", " ") for text in interval.side_by_side(1.85e-9, 4.81e-10, "m", steps)]
    assert printed == ["1.85 × 10⁻⁹ m", "4.8 × 10⁻¹⁰ m"]


@pytest.mark.parametrize(("mean", "decimals"), [(4.0, 0), (1 / 3, 2), (5 / 3, 2), (0.004, 4), (None, None)])
def test_a_mean_of_counts_has_two_decimals_or_none(mean: float | None, decimals: int | None) -> None:
    assert interval.decimals_of_mean(mean) == decimals


def test_two_grades_in_the_middle_are_joined_in_the_language_of_the_page() -> None:
    german, _ = load_language(None, "de", Place("content/publication.yaml"))
    given = {"fair": 1, "good": 1}
    assert interval.middle_grade("fair to good", given) == "fair to good"
    with speaking(german):
        assert interval.middle_grade("fair to good", given) == "fair bis good"
        assert interval.middle_grade("good", given) == "good"
        assert interval.middle_grade("good to go", {"good to go": 2}) == "good to go"

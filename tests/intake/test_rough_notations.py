"""Rough values, ranges, unweighed additions, differences to another contender, frames: what each text is taken for.

The meaning of `about` is the program's own convention (common practice, no source): one unit of the last figure that
isn't a trailing zero before the decimal point. A stated half-width and a range are taken as they stand (JCGM 100, 4.3.7).
"""

from __future__ import annotations

from contextlib import suppress
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.intake.notations.cell import Expected, UnreadableError, Written
from reportgen.intake.notations.notation import read_cell

NAMES = {
    "ostler": ("ostler",),
    "ostler-mk-ii": ("ostler",),
    "the-red-one": ("ostler",),
    "dart-2": ("dart-2",),
    "dart": ("dart",),
    "corvane": ("corvane",),
    "twin": ("corvane", "dart"),
}
NUMBER = Expected(unit="g", names=NAMES)
SECONDS = Expected("timed", "s", names=NAMES)
COUNT = Expected("count", names=NAMES)
YES_NO = Expected("yes/no", names=NAMES)
SEMICOLONS = Expected(unit="g", comma="decimal", names=NAMES)
FRAMES = Expected(unit="frames", names=NAMES)


@pytest.mark.parametrize(
    ("text", "value", "half"),
    [
        ("about 250", "250", "10"),
        ("about 70", "70", "10"),
        ("about 2.5", "2.5", "0.1"),
        ("About 200", "200", "100"),
        ("about 205", "205", "1"),
        ("about 250.0", "250.0", "0.1"),
        ("about 0.50", "0.50", "0.01"),
        ("about 7", "7", "1"),
        ("about 0", "0", "1"),
        ("about -40", "-40", "10"),
        ("about 2.5e3", "2500", "100"),
    ],
)
def test_about_is_one_unit_of_the_last_figure_that_is_no_trailing_zero(text: str, value: str, half: str) -> None:
    written = read_cell(text, NUMBER)
    assert (written.value, written.width, written.rough) == (Decimal(value), Decimal(half), "about")


@pytest.mark.parametrize(
    ("text", "seconds", "half"),
    [("about 5:31", 331, "1"), ("about 5:30", 330, "10"), ("about 5:00", 300, "60"), ("about 5:31.4", "331.4", "0.1"),
     ("about 10:00", 600, "600"), ("about 1:00:00", 3600, "3600"), ("about 1:30:00", 5400, "600")],
)  # fmt: skip
def test_about_a_clock_time_keeps_its_figures(text: str, seconds: int | str, half: str) -> None:
    written = read_cell(text, SECONDS)
    assert (written.value, written.width, written.unit) == (Decimal(seconds), Decimal(half), "s")


@pytest.mark.parametrize(
    ("text", "expected", "value", "half", "unit"),
    [
        ("250 ±10", NUMBER, "250", "10", ""),
        ("250 +/- 10", NUMBER, "250", "10", ""),
        ("250 ± 10 g", NUMBER, "250", "10", "g"),
        ("250 g ± 10", NUMBER, "250", "10", "g"),
        ("250 g ± 10 g", NUMBER, "250", "10", "g"),
        ("2,5 ±0,5", SEMICOLONS, "2.5", "0.5", ""),
        ("5 ±1 %", Expected(unit="%"), "5", "1", "%"),
        ("5:30 ±10 s", SECONDS, "330", "10", "s"),
        ("5:30 ±0:10", SECONDS, "330", "10", "s"),
    ],
)
def test_a_stated_half_width_is_taken_as_it_stands(
    text: str, expected: Expected, value: str, half: str, unit: str
) -> None:
    written = read_cell(text, expected)
    assert (written.value, written.width, written.unit, written.rough) == (
        Decimal(value), Decimal(half), unit, "stated",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("text", "expected", "middle", "half", "decimals"),
    [
        ("2 to 3", NUMBER, "2.5", "0.5", 1),
        ("2 to 4", NUMBER, "3", "1", 0),
        ("2 g to 3 g", NUMBER, "2.5", "0.5", 1),
        ("-3 to -1", NUMBER, "-2", "1", 0),
        ("2,5 to 3,5", SEMICOLONS, "3.0", "0.5", 1),
        ("5:30 to 6:00", SECONDS, "345", "15", 0),
    ],
)
def test_a_range_is_its_middle_and_half_of_it(
    text: str, expected: Expected, middle: str, half: str, decimals: int
) -> None:
    written = read_cell(text, expected)
    assert (written.value, written.width, written.decimals, written.rough) == (
        Decimal(middle), Decimal(half), decimals, "between",
    )  # fmt: skip


def test_some_is_more_than_nothing() -> None:
    assert read_cell("some", NUMBER) == Written(Decimal(0), limit="above", unweighed=True)
    assert read_cell("Some", COUNT).limit == "above"


def test_nothing_is_nought_that_nobody_read() -> None:
    assert read_cell("nothing", NUMBER) == Written(Decimal(0), unweighed=True)


@pytest.mark.parametrize(
    ("text", "who", "difference", "half", "limit"),
    [
        ("ostler + 72", "ostler", "72", None, None),
        ("ostler - 3.5 dB", "ostler", "-3.5", None, None),
        ("Ostler Mk II − 2", "ostler", "-2", None, None),
        ("the red one + about 70", "ostler", "70", "10", None),
        ("ostler + 70 ±5", "ostler", "70", "5", None),
        ("ostler + 2 to 3", "ostler", "2.5", "0.5", None),
        ("ostler - 2 to 3", "ostler", "-2.5", "0.5", None),
        ("ostler + over 50", "ostler", "50", None, "above"),
        ("ostler - over 50", "ostler", "-50", None, "below"),
        ("ostler - some", "ostler", "0", None, "below"),
        ("dart-2 + 5", "dart-2", "5", None, None),
        ("dart - 2", "dart", "-2", None, None),
    ],
)
def test_a_difference_to_another_contender(
    text: str, who: str, difference: str, half: str | None, limit: str | None
) -> None:
    written = read_cell(text, NUMBER)
    assert (written.beside, written.value, written.limit) == (who, Decimal(difference), limit)
    assert written.width == (Decimal(half) if half else None)


def test_frames_between_two_and_one_frame() -> None:
    assert read_cell("frames 1204 to 4820", SECONDS) == Written(
        Decimal(3616), "frames", decimals=0, frames=(1204, 4820)
    )
    assert read_cell("frame 1204", FRAMES) == Written(Decimal(1204), "frames", decimals=0)
    assert read_cell("1204 frames", SECONDS).unit == "frames"


@pytest.mark.parametrize(
    ("text", "expected", "rule"),
    [
        ("about over 5", NUMBER, "rough-unclear"),
        ("about 2 to 3", NUMBER, "rough-unclear"),
        ("about some", NUMBER, "rough-unclear"),
        ("over about 250", NUMBER, "rough-unclear"),
        ("over 2 to 3", NUMBER, "rough-unclear"),
        ("about 250 ±10", NUMBER, "rough-unclear"),
        ("250 ±-10", NUMBER, "rough-unclear"),
        ("250 ±0", NUMBER, "rough-unclear"),
        ("±10", NUMBER, "rough-unclear"),
        ("250 ±5 %", NUMBER, "rough-unclear"),
        ("250 g ±10 mg", NUMBER, "rough-unclear"),
        ("900 mg to 1 g", NUMBER, "rough-unclear"),
        ("3 to 2", NUMBER, "rough-unclear"),
        ("2 to 2", NUMBER, "rough-unclear"),
        ("2–3", NUMBER, "rough-unclear"),
        ("2-3 g", NUMBER, "rough-unclear"),
        ("~250", NUMBER, "rough-unclear"),
        ("ca. 250", NUMBER, "rough-unclear"),
        ("5:30 ±10", SECONDS, "rough-unclear"),
        ("about 12", COUNT, "rough-unclear"),
        ("about heavy", NUMBER, "not-a-number"),
        ("some fuel", NUMBER, "not-a-number"),
        ("some", YES_NO, "not-yes-or-no"),
        ("ostler + 72", YES_NO, "not-yes-or-no"),
        ("oster + 72", NUMBER, "unknown-contender"),
        ("twin + 72", NUMBER, "unknown-contender"),
        ("ostler+72", NUMBER, "against-unclear"),
        ("ostler + heavy", NUMBER, "not-a-number"),
        ("ostler", NUMBER, "not-a-number"),
        ("250 about", NUMBER, "not-a-number"),
        ("250 over", NUMBER, "not-a-number"),
        ("frames 4820 to 1204", SECONDS, "frames-unclear"),
        ("frames 12.5 to 14", SECONDS, "frames-unclear"),
        ("12.5 frames", SECONDS, "frames-unclear"),
        ("-3 frames", SECONDS, "frames-unclear"),
        ("3 frames", COUNT, "not-a-count"),
    ],
)  # fmt: skip
def test_what_says_two_things_or_none_is_refused_with_a_remedy(text: str, expected: Expected, rule: str) -> None:
    with pytest.raises(UnreadableError) as caught:
        read_cell(text, expected)
    assert caught.value.rule == rule
    assert text in caught.value.says
    assert caught.value.why
    assert caught.value.do


PIECES = st.sampled_from(
    ["about", "over", "under", "some", "none", "ostler", "dart-2", "+", "-", "±", "+/-", "to", "250", "2.5", "5:30",
     "g", "frames", "1204", "%", "dB", "~", "(", "unknown", ",", "−"]
)  # fmt: skip


@given(st.lists(PIECES, max_size=7), st.sampled_from([" ", ""]))
def test_no_mixture_of_notations_breaks_the_reader_or_becomes_a_bare_number(pieces: list[str], between: str) -> None:
    """Whatever says that it is rough, bounded or a difference keeps saying so, or is refused."""
    text = between.join(pieces)
    for expected in (NUMBER, SECONDS, COUNT, SEMICOLONS, FRAMES):
        with suppress(UnreadableError):
            written = read_cell(text, expected)
            if written.absent_because or written.word:
                continue
            words = set(text.replace("(", " ").split())
            assert ("about" in words or "±" in text) <= bool(written.rough)
            assert bool(words & {"over", "under", "some"}) <= (written.limit is not None)
            taken_for_unit = "ostler" in written.unit  # “250 ostler”: refused where units are known
            assert ("ostler" in words) <= (written.beside == "ostler" or taken_for_unit)


@given(st.integers(1, 9), st.integers(0, 6))
def test_about_a_round_number_is_as_wide_as_its_one_figure(figure: int, zeros: int) -> None:
    assert read_cell(f"about {figure * 10**zeros}", NUMBER).width == 10**zeros


@given(st.integers(-9999, 9999), st.integers(1, 9999), st.integers(0, 3))
def test_a_range_holds_both_its_ends_exactly(low: int, apart: int, places: int) -> None:
    first, last = (Decimal(n).scaleb(-places) for n in (low, low + apart))
    written = read_cell(f"{first:f} to {last:f}", NUMBER)
    assert written.value is not None
    assert written.width is not None
    assert (written.value - written.width, written.value + written.width) == (first, last)

"""Pieces that run their own way are isolated in text from right to left, and nowhere else (UAX 9, 2.4)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from reportgen.wording import interval, number
from reportgen.wording.apart import ISOLATE, POP, among_latin, formulas_apart, from_the_left, isolated, plain
from reportgen.wording.language import ENGLISH, say, speaking
from reportgen.wording.listing import and_list, commas
from reportgen.wording.sentence import paragraph, sentence
from reportgen.wording.unit import joined

HEBREW = replace(ENGLISH, tag="he", right_to_left=True, phrases={**ENGLISH.phrases, "quoted": "”{text}“"})


@pytest.mark.parametrize(
    ("text", "apart"),
    [
        ("Corvane", "\u2068Corvane\u2069"),
        ("12", "\u206812\u2069"),
        ("شعلة", "شعلة"),
        ("", ""),
        ("(…)", "(…)"),
        ("شعلة Mk II", "\u2068شعلة Mk II\u2069"),
        ("\u2068Mk II\u2069، شعلة", "\u2068Mk II\u2069، شعلة"),
    ],
)
def test_what_runs_from_left_to_right_is_isolated_once(text: str, apart: str) -> None:
    assert isolated(text) == apart
    assert isolated(apart) == apart
    assert plain(apart) == plain(text)


def test_every_gap_of_a_phrase_is_isolated() -> None:
    with speaking(HEBREW):
        assert say("quoted", text="Ostler Mk II") == "”\u2068Ostler Mk II\u2069“"
    assert say("quoted", text="Ostler Mk II") == "“Ostler Mk II”"


def test_a_number_keeps_its_sign_and_its_unit() -> None:
    with speaking(HEBREW):
        assert number.fixed(-2.3, 1) == "\u2068−2.3\u2069"
        assert number.fixed(2.3, 1) == "2.3"
        assert interval.bound(12.5, "g", "above") == "more than \u206812.5\u00a0g\u2069"
    assert number.fixed(-2.3, 1) == "−2.3"


def test_a_unit_stays_at_the_last_number_of_a_range() -> None:
    """As with one number: 5 °C reads the same alone and at the end of "from 3 to 5 °C"."""
    with speaking(HEBREW):
        assert joined(say("interval.range", low="3", high="5"), "degC") == "\u20683\u2069 to \u20685\u00a0°C\u2069"
    assert joined(say("interval.range", low="3", high="5"), "degC") == "3 to 5\u00a0°C"


def test_members_of_a_list_are_isolated_and_the_list_runs_as_the_language_does() -> None:
    with speaking(HEBREW):
        assert and_list(["A", "B"]) == "\u2068A\u2069 and \u2068B\u2069"
        assert commas(["1", "2"]) == "\u20681\u2069, \u20682\u2069"


def test_every_isolate_is_closed() -> None:
    with speaking(HEBREW):
        text = interval.difference(-1.1, 0.2, -1.5, -0.7, "g")
        assert text.count(ISOLATE) == text.count(POP) == 4  # value, value with unit, two ends


def test_words_of_english_on_such_a_page_run_from_left_to_right_whatever_fills_them() -> None:
    assert from_the_left("both of {names}") == "\u2066both of {names}\u2069"
    assert isolated("\u2066both\u2069") == "\u2066both\u2069"
    with speaking(HEBREW):
        assert sentence("\u2066both\u2069") == "\u2066Both\u2069."


@pytest.mark.parametrize(
    ("words", "apart"),
    [
        ("מדרגות 1–2", "מדרגות [1–2]"),
        ("רמה של 95%, לפחות", "רמה של [95%], לפחות"),
        ("(כ-{value} ± {half})", "(כ-[{value} ± {half}])"),
        ("הממוצע ({count}): ({values}) ÷ {n} = {value}.", "הממוצע ({count}): [({values}) ÷ {n} = {value}]."),
        ("לפי t = {t}, ולא 2 × u", "לפי [t = {t}], ולא [2 × u]"),
        ("חלקי √{n}", "חלקי [√{n}]"),
    ],
)
def test_formulas_and_percentages_of_a_phrase_run_from_left_to_right(words: str, apart: str) -> None:
    """As they are written in Hebrew and Arabic text with Western digits; a sign stays at its number."""
    marked = apart.replace("[", "\u2066").replace("]", "\u2069")
    assert formulas_apart(words) == marked
    assert formulas_apart(marked) == marked


def test_plain_numbers_and_gaps_of_a_phrase_are_left_alone() -> None:
    for words in ("{name}: {value}", "95 מתוך 100", "(ISO 3744:2010)", "{low}, {high}"):
        assert formulas_apart(words) == words


def test_words_from_right_to_left_are_one_piece_where_all_else_runs_from_left_to_right() -> None:
    assert among_latin("שעה 3") == "\u2068שעה 3\u2069"
    assert among_latin("Corvane, 3 s") == "Corvane, 3 s"


def test_a_sentence_in_latin_letters_is_one_piece_among_others() -> None:
    """Its full stop stays at its end, and what follows stands beyond it."""
    with speaking(HEBREW):
        assert paragraph("It was cold.", "בוקר 3.") == "\u2068It was cold.\u2069 בוקר 3."
        assert paragraph("\u2068Ostler\u2069 קר.") == "\u2068Ostler\u2069 קר."
        assert paragraph("12.") == "12."
    assert paragraph("It was cold.", "It rained.") == "It was cold. It rained."


def test_a_sentence_begins_and_ends_behind_such_marks() -> None:
    with speaking(HEBREW):
        assert sentence("\u2068less than 5 g\u2069") == "\u2068Less than 5 g\u2069."
        assert sentence("\u2068Is it so?\u2069") == "\u2068Is it so?\u2069"

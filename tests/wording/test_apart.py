"""Pieces that run their own way are isolated in text from right to left, and nowhere else (UAX 9, 2.4)."""

from __future__ import annotations

from dataclasses import replace

import pytest

from reportgen.wording import interval, number
from reportgen.wording.apart import ISOLATE, POP, from_the_left, isolated, plain
from reportgen.wording.language import ENGLISH, say, speaking
from reportgen.wording.listing import and_list, commas
from reportgen.wording.sentence import sentence

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


def test_a_sentence_begins_and_ends_behind_such_marks() -> None:
    with speaking(HEBREW):
        assert sentence("\u2068less than 5 g\u2069") == "\u2068Less than 5 g\u2069."
        assert sentence("\u2068Is it so?\u2069") == "\u2068Is it so?\u2069"

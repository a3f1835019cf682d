"""Ways inside a sentence: what they lead to, and that the words are the same without them."""

from __future__ import annotations

from reportgen.wording.lead import Piece, bare, led, pieces
from reportgen.wording.sentence import capital, paragraph, sentence


def test_a_led_sentence_comes_apart_into_stretches() -> None:
    text = f"Quill beats {led('Dunn', 'a.html#x')} and {led('Roe', 'b.html#y')}."
    assert pieces(text) == (
        Piece("Quill beats "),
        Piece("Dunn", "a.html#x"),
        Piece(" and "),
        Piece("Roe", "b.html#y"),
        Piece("."),
    )
    assert bare(text) == "Quill beats Dunn and Roe."
    assert "".join(p.text for p in pieces(text)) == bare(text)


def test_words_without_a_way_stay_as_they_are() -> None:
    assert led("Dunn", "") == "Dunn"
    assert led("", "a.html") == ""
    assert pieces("Dunn") == (Piece("Dunn"),)
    assert pieces("") == ()


def test_ways_do_not_nest() -> None:
    assert pieces(led(f"the {led('other', 'a')} two", "b")) == (Piece("the other two", "b"),)


def test_a_sentence_that_begins_or_ends_with_a_way_is_still_a_sentence() -> None:
    assert bare(capital(led("gas", "a"))) == "Gas"
    assert bare(sentence(led("gas", "a"))) == "Gas."
    assert bare(sentence(led("gas?", "a"))) == "Gas?"
    assert bare(paragraph(led("gas", "a"), "time")) == "Gas. Time."

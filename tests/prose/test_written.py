"""What the audit is told of an author's own text: wide sentences, stray numbers, links and pictures."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from reportgen.campaign.declared import ProseFile
from reportgen.prose.typed_number import agrees, typed_in
from reportgen.prose.written import link_places, picture_places, sentences_of, speaks_wide, typed_numbers
from reportgen.wording.number import fixed
from tests.prose.builder import told

NAMES = ["Corvane Sol", "Corvane", "Ostler Mk II"]


def prose(text: str) -> ProseFile:
    return ProseFile("conclusions", "conclusions.md", text)


@pytest.mark.parametrize(
    "text",
    [
        "Every Corvane boils fast.",
        "Corvanes are fast.",
        "Corvane stoves are fast.",
        "The Corvane Sol always wins.",
        "We like it. All Corvane Sols leak.",
    ],
)
def test_a_sentence_about_the_model_is_seen(text: str) -> None:
    assert len(speaks_wide(prose(text), NAMES)) == 1


@pytest.mark.parametrize(
    "text",
    [
        "The Corvane Sol we bought was faster in these runs.",
        "The Corvane burned 14 g.",
        "We always weigh twice.",
        "All four were bought at retail.",
        "> Every Corvane boils fast.",
        "`Every Corvane` is a phrase.",
        "Corvane and Ostler Mk II burned the least.",
    ],
)
def test_a_sentence_about_what_was_bought_passes(text: str) -> None:
    assert speaks_wide(prose(text), NAMES) == ()


def test_a_wide_sentence_has_the_line_it_begins_on() -> None:
    ((place, sentence),) = speaks_wide(prose("One.\n\nTwo is fine. Every\nCorvane leaks.\n"), NAMES)
    assert (place.line, sentence) == (3, "Every Corvane leaks.")


def test_a_typed_number_that_no_result_agrees_with_is_seen() -> None:
    t = told(corvane=14.4, ostler=17.0).pair("corvane", "ostler", "better", 1.2)
    text = "The Corvane Sol burned 14.4 g. The Corvane Sol burned 12.1 g. Ostler Mk II took 17 g, 2.6 g more."
    found = [words for _, words in typed_numbers(prose(text), *t.both)]
    assert found == ["12.1 g"]


def test_numbers_in_references_other_units_and_other_sentences_are_let_be() -> None:
    t = told(corvane=14.4, ostler=17.0)
    text = "Corvane Sol: [12.1 g](value:gas-burned/corvane), 3 days, bought on 2026-05-02. A litre weighs 1000 g."
    assert typed_numbers(prose(text), *t.both) == ()


def test_links_and_pictures_are_found_with_their_places() -> None:
    file = prose(
        "See [this](raw/gas.csv) and\n![](photo.jpg)\n\n- ![a *dent*](dent.jpg)\n\n[ref]\n\n[ref]: notes.pdf\n"
    )
    assert [(str(p), a) for p, a in link_places(file)] == [
        ("conclusions.md:1:5", "raw/gas.csv"),
        ("conclusions.md:6", "notes.pdf"),
    ]
    assert [(str(p), a, w) for p, a, w in picture_places(file)] == [
        ("conclusions.md:2:1", "photo.jpg", ""),
        ("conclusions.md:4:3", "dent.jpg", "a *dent*"),
    ]


def test_sentences_run_over_lines_and_stop_at_their_marks() -> None:
    found = [(p.line, s) for p, s in sentences_of(prose("A b\nc. D?\nE"))]
    assert found == [(1, "A b c."), (2, "D?"), (3, "E")]


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("14.2 g", "14.2", "g"),
        ("14,2 g", "14.2", "g"),
        ("−1.10 g", "-1.10", "g"),
        ("12 000 s", "12000", "s"),
        ("1,234 g", "1234", "g"),
        ("20\u00a0°C", "20", "°C"),
        ("97.5 %", "97.5", "%"),
        ("3", "3", ""),
    ],
)
def test_numbers_are_read_as_people_type_them(text: str, value: str, unit: str) -> None:
    (number,) = typed_in(text)
    assert (number.value, number.unit) == (Decimal(value), unit)


@pytest.mark.parametrize("text", ["2026-05-02", "Mk2", "4:20", "version 1.2.3", "no number"])
def test_dates_times_and_versions_are_no_numbers(text: str) -> None:
    assert list(typed_in(text)) == []


@given(st.floats(-1e6, 1e6), st.integers(0, 4))
def test_a_number_typed_as_it_was_printed_agrees_with_its_value(value: float, decimals: int) -> None:
    (number,) = typed_in(fixed(value, decimals))
    assert agrees(number, value)

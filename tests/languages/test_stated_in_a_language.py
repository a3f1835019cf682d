"""Prices and stated accuracies, typed in English, as a page in another language says them.

DIN 1333 and CLDR 44: a German number has a decimal comma; the words are the language file's own.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

import pytest

from reportgen.finding import Place
from reportgen.languages import load_language
from reportgen.prose.accuracy import accuracy_said
from reportgen.wording.apart import plain
from reportgen.wording.language import speaking
from reportgen.wording.money import amount_noted


@pytest.fixture
def german() -> Iterator[None]:
    with speaking(load_language(None, "de", Place("publication.yaml"))[0]):
        yield


TYPED = ("±0.3 g", "±5 % + 5 digits", "±(0.3 °C + 0.5 % of reading)", "±1 % of range", "class 1.6")


@pytest.mark.parametrize("typed", TYPED)
def test_in_english_an_accuracy_stands_as_it_was_typed(typed: str) -> None:
    assert accuracy_said(typed).replace("\u00a0", " ") == typed


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("±0.3 g", "±0,3 g"),
        ("±5 % + 5 digits", "±5 % + 5 Digits"),
        ("±(0.3 °C + 0.5 % of reading)", "±(0,3 °C + 0,5 % der Ablesung)"),
        ("±1 % of range", "±1 % des Messbereichs"),
        ("class 1.6", "Klasse 1,6"),
    ],
)
@pytest.mark.usefixtures("german")
def test_an_accuracy_takes_the_comma_and_the_words_of_the_language(typed: str, said: str) -> None:
    assert accuracy_said(typed).replace("\u00a0", " ") == said


@pytest.mark.usefixtures("german")
def test_a_price_keeps_its_digits_and_takes_the_comma_of_the_language() -> None:
    assert amount_noted(Decimal("38.00"), Decimal("38.00"), "EUR") == "38,00\u00a0EUR"
    assert amount_noted(Decimal("62"), Decimal("79"), "EUR") == "62 bis 79\u00a0EUR"


def test_from_right_to_left_a_price_is_one_piece() -> None:
    with speaking(load_language(None, "ar", Place("publication.yaml"))[0]):
        said = amount_noted(Decimal("38.00"), Decimal("38.00"), "EUR")
    assert said != plain(said) == "38.00\u00a0EUR"

"""Plural categories against the samples that Unicode prints beside each rule.

Source: Unicode CLDR, Language Plural Rules chart (cardinal), the @integer and @decimal samples of English, German and
Arabic, which have stood unchanged from CLDR 24 to 45; Polish from the same chart.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

import pytest

from reportgen.languages.by_cldr import known
from reportgen.wording.english import plural

SAMPLES = {
    ("en", "one"): "1",
    ("en", "other"): "0, 2~16, 100, 1000, 10000, 100000, 1000000, 0.0~1.5, 10.0, 100.0, 1000.0",
    ("de", "one"): "1",
    ("de", "other"): "0, 2~16, 100, 1000, 10000, 100000, 1000000, 0.0~1.5, 10.0, 100.0, 1000.0",
    ("ar", "zero"): "0, 0.0, 0.00",
    ("ar", "one"): "1, 1.0, 1.00",
    ("ar", "two"): "2, 2.0, 2.00",
    ("ar", "few"): "3~10, 103~110, 1003, 3.0, 4.0, 10.0, 103.0, 1003.0",
    ("ar", "many"): "11~26, 111, 1011, 11.0, 18.0, 111.0, 1011.0",
    ("ar", "other"): "100~102, 200~202, 300~302, 600, 1000, 10000, 0.1~0.9, 1.1~1.7, 10.1, 100.0",
    ("pl", "one"): "1",
    ("pl", "few"): "2~4, 22~24, 32~34, 42~44, 52~54, 62, 102, 1002",
    ("pl", "many"): "0, 5~19, 100, 1000, 10000, 100000, 1000000",
    ("pl", "other"): "0.0~1.5, 10.0, 100.0, 1000.0",
}


def numbers(samples: str) -> Iterator[Decimal]:
    """`2~4` stands for all from 2 to 4 in steps of the last digit (UTS 35, part 3, "Samples")."""
    for text in samples.split(", "):
        first, _, last = text.partition("~")
        step = Decimal(1).scaleb(int(Decimal(first).as_tuple().exponent))
        yield from (Decimal(first) + n * step for n in range(int((Decimal(last or first) - Decimal(first)) / step) + 1))


@pytest.mark.parametrize(("tag", "category"), SAMPLES)
def test_plural_categories_are_those_that_cldr_prints(tag: str, category: str) -> None:
    language = known(tag)
    assert language is not None
    found = {str(n): language.plural(n) for n in numbers(SAMPLES[tag, category])}
    assert found == dict.fromkeys(found, category)


@pytest.mark.parametrize("category", ["one", "other"])
def test_english_counts_without_cldr_as_it_would_with_it(category: str) -> None:
    assert {plural(n) for n in numbers(SAMPLES["en", category])} == {category}


def test_digits_are_western_ones_with_their_own_decimal_sign() -> None:
    signs = {tag: known(tag) for tag in ("de", "ar", "en")}
    # CLDR 45, numbering system latn, symbols: decimal
    assert {tag: k and k.decimal_sign for tag, k in signs.items()} == {"de": ",", "ar": ".", "en": "."}


def test_what_is_no_language_is_not_known() -> None:
    assert known("qx") is None
    assert known("x-private") is None

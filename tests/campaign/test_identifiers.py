"""GTIN and DOI as authors type them."""

from __future__ import annotations

import pytest

from reportgen.campaign.identifiers import doi, gtin
from reportgen.campaign.shape import NotThat


@pytest.mark.parametrize(
    "text",
    [
        "6291041500213",  # GS1's own worked example of a check digit (from memory)
        "629 104 150 0213",
        "0614141123452",
        "10614141543219",
    ],
)
def test_a_number_whose_last_digit_fits_is_taken(text: str) -> None:
    assert gtin(text) == text.replace(" ", "")


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("6291041500214", "last digit"),
        ("6291041500231", "last digit"),  # two neighbours exchanged
        ("12345", "not a GTIN"),
        ("629104150021X", "not a GTIN"),
    ],
)
def test_a_slip_in_a_number_is_found(text: str, says: str) -> None:
    with pytest.raises(NotThat) as raised:
        gtin(text)
    assert says in str(raised.value)


@pytest.mark.parametrize(
    "text", ["10.1234/abc", "doi:10.1234/abc", "https://doi.org/10.1234/abc", "http://dx.doi.org/10.1234/abc"]
)
def test_a_doi_is_taken_with_or_without_its_resolver(text: str) -> None:
    assert doi(text) == "10.1234/abc"


def test_the_prefix_of_a_doi_may_be_divided() -> None:
    """ISO 26324: the code of a registrant may have parts of its own, with full stops between (from memory)."""
    assert doi("10.1000.10/123456") == "10.1000.10/123456"


@pytest.mark.parametrize(
    "text", ["10.1234", "10.1234./abc", "abc/10.1234", "https://example.org/10.1234/abc", "10.1234/a b"]
)
def test_what_is_no_doi_is_refused(text: str) -> None:
    with pytest.raises(NotThat):
        doi(text)

"""Numbers by which others know a thing: a product's GTIN, a publication's DOI."""

from __future__ import annotations

import re
from typing import Annotated

from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar

_GTIN = r"(?:[0-9]{8}|[0-9]{12,14})"
_DOI = r"10\.[0-9]{4,9}(?:\.[0-9]+)*/[^\s\"<>\\^`{|}]+"
_BEFORE_DOI = r"(?:https?://(?:dx\.)?doi\.org/|doi:\s*)?"


def gtin(text: str) -> str:
    """The number under a product's bar code: 8, 12, 13 or 14 digits, the last of which checks the others (GS1 General
    Specifications, 7.9: weights 3 and 1 from the right, summed up to a multiple of ten). Spaces fall away."""
    said = re.sub(r"\s", "", text)
    if not re.fullmatch(_GTIN, said):
        do = "Type the 8, 12, 13 or 14 digits under the bar code."
        raise NotThat(f"“{text.strip()}” is not a GTIN", do)
    if sum(int(digit) * (3 if place % 2 else 1) for place, digit in enumerate(reversed(said))) % 10:
        do = "Compare it with the digits under the bar code: one is wrong, or two have changed places."
        raise NotThat(f"“{text.strip()}” is no GTIN: its last digit doesn't fit the others", do)
    return said


def doi(text: str) -> str:
    """A DOI (ISO 26324) without its resolver: `10.1234/abc`, from that or from `https://doi.org/10.1234/abc`."""
    found = re.fullmatch(rf"{_BEFORE_DOI}({_DOI})", text.strip(), re.IGNORECASE)
    if found is None:
        raise NotThat(
            f"“{text.strip()}” is not a DOI", "Write it like this: 10.1234/abc, or https://doi.org/10.1234/abc."
        )
    return found[1]


GtinOf = Annotated[
    Given[str],
    Scalar("a GTIN", gtin, r"^(?:\s*[0-9]){8,14}\s*$", "", ("4012345123456",), types=("string", "integer")),
]
DoiOf = Annotated[
    Given[str],
    Scalar("a DOI", doi, rf"^\s*(?:[hH][tT][tT][pP][sS]?://(?:[dD][xX]\.)?[dD][oO][iI]\.[oO][rR][gG]/|[dD][oO][iI]:\s*)?{_DOI}\s*$",
           "", ("10.1234/abc",)),
]  # fmt: skip

"""Titles as headings and links print them."""

from __future__ import annotations

from reportgen.campaign.declared import Quantity, Test
from reportgen.pages.words import words
from reportgen.wording.sentence import capital


def heading(of: Quantity | Test, part: str = "") -> str:
    """The title with its capital, and the part where parts stand apart: "Fuel used (second evening)"."""
    title = capital(of.title)
    return f"{title} ({part})" if part else title


def formula_of(quantity: Quantity) -> str:
    """The formula as written; of what counts incidents, what it counts."""
    if quantity.count_of:
        return words("formula.counted", event=quantity.count_of.replace("-", " "))
    return quantity.formula

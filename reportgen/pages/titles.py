"""Titles as headings and links print them."""

from __future__ import annotations

from reportgen.campaign.declared import Quantity, Test
from reportgen.pages.words import words
from reportgen.wording.listing import with_aside
from reportgen.wording.sentence import capital


def heading(of: Quantity | Test, part: str = "") -> str:
    """The title with its capital, and the part where parts stand apart: "Fuel used (second evening)"."""
    title = capital(of.title)
    return with_aside(title, part)


def formula_of(quantity: Quantity) -> str:
    """The formula as written; of what counts incidents, what it counts; of a reading shown as it is, that it is."""
    if quantity.count_of:
        return words("formula.counted", event=quantity.count_of.replace("-", " "))
    return words("formula.read") if quantity.formula in quantity.reads else quantity.formula


def told_in_words(quantity: Quantity) -> bool:
    """Whether that is words, and no formula."""
    return bool(quantity.count_of) or quantity.formula in quantity.reads

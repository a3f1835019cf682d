"""The grammars of single texts: amounts, dates, accuracies and the like. Numbers keep the digits they came with.

Each parser raises NotThat. Each pattern (ECMA 262, anchored) accepts what its parser accepts, for the schema.
"""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Annotated

from reportgen.addresses import as_id
from reportgen.campaign.declared import Amount
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar

NUMBER = r"[-+−]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+)?"
GUESS = r"(?:,\s*a guess)"
NO_AMOUNT = Amount(Decimal(0), "", "")


def number(text: str) -> Decimal:
    """A number with a decimal point, digits kept (`12.50` has four). Raises NotThat."""
    clean = text.strip().replace("−", "-")
    if re.fullmatch(r"[-+]?\d+,\d+", clean):
        raise NotThat(f"“{text}” has a decimal comma", f"Write {clean.replace(',', '.')}.")
    if not re.fullmatch(NUMBER, clean):
        raise NotThat(f"“{text}” is not a number")
    return Decimal(clean)


def amount(text: str) -> Amount:
    """A number with its unit: `25 g`, `46.1 kJ/g`, `0.5 g, a guess`."""
    said = text.strip()
    guess = re.search(rf"{GUESS}$", said)
    bare = said[: guess.start()].strip() if guess else said
    found = re.match(rf"({NUMBER})\s*(.*)$", bare, re.DOTALL)
    if found is None or "\n" in bare:
        raise NotThat(f"“{text}” is not a number with a unit")
    if re.match(r",\d", found[2]):
        raise NotThat(f"“{text}” has a decimal comma", f"Write {bare.replace(',', '.', 1)}.")
    if found[2] and not re.fullmatch(UNIT_TEXT, found[2].strip()):
        raise NotThat(f"“{found[2]}” is not a unit")
    return Amount(number(found[1]), found[2].strip(), said, guess=bool(guess))


UNIT_TEXT = r"(?:[^\d\s,;:|±(){}\[\]\"'][^,;:|±{}\[\]\"']*)"


def words(text: str) -> str:
    """Any text but an empty one, without the space around it."""
    if not text.strip():
        raise NotThat("there is nothing between the quotes", "Write it, or take the line out.")
    return text.strip()


def name(text: str) -> str:
    """A name that gives an id."""
    if not as_id(text):
        raise NotThat(f"“{text}” has no letter or digit of the plain alphabet", "Write the name as it stands elsewhere.")
    return text.strip()


Words = Annotated[Given[str], Scalar("a text", words, numeric=True, sentence=True)]
Name = Annotated[Given[str], Scalar("a name", name, pattern="[A-Za-z0-9]", numeric=True)]
FilePath = Annotated[Given[str], Scalar("a file", words, examples=("readings.csv",))]
AmountOf = Annotated[Given[Amount], Scalar("a number with its unit", amount, rf"^\s*{NUMBER}", NO_AMOUNT, ("25 g",), numeric=True)]


def choice(title: str, *choices: str) -> Scalar:
    """One of a few words."""

    def parse(text: str) -> str:
        said = text.strip()
        if said in choices:
            return said
        raise NotThat(f"“{said}” is not known here ({title})", did_you_mean(said, choices))

    return Scalar(title, parse, examples=choices, choices=choices)

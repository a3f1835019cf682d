"""The grammars of single texts: words, names, numbers, amounts. Numbers keep the digits they came with.

Each parser raises NotThat. Each pattern (ECMA 262, anchored) accepts what its parser accepts, for the schema.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from decimal import Decimal
from typing import Annotated

from reportgen.addresses import as_id
from reportgen.campaign.declared import Amount
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.campaign.given import Given
from reportgen.campaign.shape import NotThat, Scalar

NUMBER = r"[-+−]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?"
UNIT = r"[^0-9\s,;:|±(){}\[\]\"'+<>=~-](?:(?!\s[0-9])[^,;:|±{}\[\]\"'+<>=~\n])*"
AMOUNT = rf"{NUMBER}(?:\s*{UNIT})?"
_UNSEEN = r"\u200b-\u200f\u202a-\u202e\u2060-\u206f\ufeff"
_ADDRESS = rf"https?://[^\s/\"<>\\^`|{{}}\[\]@{_UNSEEN}]+(?:/[^\s\"<>\\^`|{_UNSEEN}]*)?"
GUESS = r",\s*a guess"
LARGEST_POWER = 60  # of ten: what a floating-point number of 64 bits holds, with room for fourth powers (IEEE 754)
NO_AMOUNT = Amount(Decimal(0), "", "")
ANY = ("string", "number", "boolean")
NUMERIC = ("string", "number")


def number(text: str) -> Decimal:
    """A number with a decimal point, digits kept (`12.50` has four). Raises NotThat."""
    said = text.strip()
    if re.match(r"[-+−]?[0-9]+,[0-9]", said):
        raise NotThat(f"“{said}” has a comma in its number", "Write a decimal point, and nothing between thousands.")
    if not re.fullmatch(NUMBER, said):
        raise NotThat(f"“{said}” is not a number")
    exponent = re.search(r"[eE]([-+]?[0-9]+)$", said)
    value = Decimal(0) if len(said) > 60 or (exponent and len(exponent[1]) > 4) else Decimal(said.replace("−", "-"))
    if (len(said) > 60 or (exponent and len(exponent[1]) > 4)) or (value and abs(value.adjusted()) > LARGEST_POWER):
        shown = said if len(said) <= 30 else f"{said[:30]}…"
        raise NotThat(f"“{shown}” is beyond what can be reckoned with", "Choose a unit that suits it.")
    return value


def weight(text: str) -> Decimal:
    """A number that is not negative."""
    value = number(text)
    if value < 0:
        raise NotThat(f"{text.strip()} is less than nothing", "Write a number of 0 or more.")
    return value


def whole(text: str) -> int:
    """A whole number of 1 or more."""
    if not re.fullmatch(r"0*[1-9][0-9]{0,8}", text.strip()):
        raise NotThat(f"“{text.strip()}” is not a whole number of 1 or more")
    return int(text)


def amount(text: str) -> Amount:
    """A number with its unit: `25 g`, `46.1 kJ/g`. Raises NotThat."""
    said = text.strip()
    if re.match(r"[-+−]?[0-9]+,[0-9]", said):
        raise NotThat(f"“{said}” has a comma in its number", "Write a decimal point, and nothing between thousands.")
    found = re.fullmatch(rf"({NUMBER})\s*({UNIT})?", said)
    if found is None:
        raise NotThat(f"“{said}” is not a number with a unit")
    return Amount(number(found[1]), (found[2] or "").strip(), said)


def size(text: str) -> Amount:
    """An amount above nothing: a step, a width, a difference. Raises NotThat."""
    found = amount(text)
    if found.value <= 0:
        raise NotThat(f"“{found.text}” is not above nothing", "Write how large it is, without a sign.")
    return found


def amount_or_guess(text: str) -> Amount:
    """An amount that may say it is a guess: `0.5 g, a guess`."""
    said = text.strip()
    guess = re.search(rf"\s*{GUESS}$", said)
    plain = amount(said[: guess.start()] if guess else said)
    if plain.value < 0:
        raise NotThat(f"“{said}” is less than nothing", "A standard deviation has no sign.")
    if not plain.value:
        do = "Where all came out alike, write the step that they were read in, or take the line out."
        raise NotThat(f"“{said}” says that no repeat ever differs, which no test can show", do)
    return Amount(plain.value, plain.unit, said, guess=guess is not None)


def amount_or_past(text: str) -> Amount | None:
    """An amount that may say it is a guess, or `past campaigns`, which gives None."""
    return None if text.strip() == "past campaigns" else amount_or_guess(text)


def without_control_characters(text: str) -> None:
    """Raises NotThat for what no page may hold: control characters written as escapes (Unicode, categories Cc, Cs)."""
    for character in text:
        if unicodedata.category(character) in ("Cc", "Cs") and character not in "\n\r\t":
            raise NotThat(f"there is a control character in this text (U+{ord(character):04X})", "Delete it.")


def words(text: str) -> str:
    """Any text but an empty one, without the space around it."""
    if not text.strip():
        raise NotThat("there is nothing between the quotes", "Write it, or take the line out.")
    return text.strip()


LONGEST_NAME = 120  # two of them and `-and-` still make the name of a file, which most disks end at 255 bytes


def name(text: str) -> str:
    """A name that gives an id, at most `LONGEST_NAME` letters long."""
    if not re.search("[A-Za-z0-9]", text) or not as_id(text):
        raise NotThat(
            f"“{text}” has no letter or digit of the plain alphabet",
            "Names become addresses, which are lower-case ASCII: choose a plain name and put this one in `title:`.",
        )
    if len(as_id(text)) > LONGEST_NAME:
        raise NotThat(
            f"“{text.strip()[:40]}…” is a name of more than {LONGEST_NAME} letters",
            "Names become addresses, two of them in one at times: choose a short one and put this one in `title:`.",
        )
    return text.strip()


def yes_no(text: str) -> bool:
    """`yes` or `no`."""
    if text.strip() not in ("yes", "no"):
        raise NotThat(f"“{text.strip()}” is neither yes nor no", "Write yes or no.")
    return text.strip() == "yes"


def web_address(text: str) -> str:
    """An address that begins with http:// or https://. Marks that would end it elsewhere aren't in it (RFC 3986, 2),
    nor characters that nobody sees, nor a name and password (3.2.1), which would be published."""
    if not re.fullmatch(_ADDRESS, text.strip()):
        raise NotThat(f"“{text.strip()}” is not a web address")
    return text.strip()


def choice(title: str, *choices: str, later: Sequence[str] = ()) -> Scalar:
    """One of a few words; `later` are words that a later version will know."""

    def parse(text: str) -> str:
        said = text.strip()
        if said in later:
            raise NotThat(f"“{said}” is not available in this version yet", f"There is: {', '.join(choices)}.")
        if said not in choices:
            raise NotThat(f"“{said}” is not {title}", did_you_mean(said, choices))
        return said

    return Scalar(title, parse, filler=choices[0], choices=choices)


_NAME = Scalar("a name", name, "[A-Za-z0-9]", types=ANY)
_WORDS = Scalar("a text", words, r"\S", types=ANY, sentence=True)
_TERM = Scalar("a word or two", words, r"\S", types=ANY)
_FILE = Scalar("a file", words, r"\S", examples=("readings.csv",))
_AMOUNT = Scalar("a number with its unit", amount, rf"^\s*{AMOUNT}\s*$", NO_AMOUNT, ("25 g",), types=NUMERIC)
_SIZE = Scalar(
    "a size with its unit", size, rf"^\s*{AMOUNT.removeprefix('[-+−]?')}\s*$", NO_AMOUNT, ("25 g",), types=NUMERIC
)
_GUESS = Scalar(
    "a number with its unit", amount_or_guess, rf"^\s*{AMOUNT}(?:\s*{GUESS})?\s*$", NO_AMOUNT,
    ("0.5 g", "0.5 g, a guess"), types=NUMERIC,
)  # fmt: skip
_PAST = Scalar(
    "a number with its unit, or `past campaigns`", amount_or_past,
    rf"^\s*(?:{AMOUNT}(?:\s*{GUESS})?|past campaigns)\s*$", NO_AMOUNT,
    ("0.5 g", "0.5 g, a guess", "past campaigns"), types=NUMERIC,
)  # fmt: skip
_WEIGHT = Scalar(
    "a number", weight, rf"^\s*{NUMBER.removeprefix('[-+−]?')}\s*$", Decimal(0), ("40",), types=NUMERIC, least=0
)
_WHOLE = Scalar("a whole number", whole, r"^\s*0*[1-9][0-9]{0,8}\s*$", 1, ("24",), types=("string", "integer"), least=1)
_YES_NO = Scalar("yes or no", yes_no, r"^\s*(?:yes|no)\s*$", False, ("yes", "no"))
_WEB = Scalar("a web address", web_address, rf"^\s*{_ADDRESS}\s*$", "", ("https://example.org/",))

Name = Annotated[Given[str], _NAME]
Words = Annotated[Given[str], _WORDS]
Term = Annotated[Given[str], _TERM]
FilePath = Annotated[Given[str], _FILE]
AmountOf = Annotated[Given[Amount], _AMOUNT]
SizeOf = Annotated[Given[Amount], _SIZE]
AmountOrGuess = Annotated[Given[Amount], _GUESS]
AmountOrPast = Annotated[Given[Amount | None], _PAST]
Weight = Annotated[Given[Decimal], _WEIGHT]
Whole = Annotated[Given[int], _WHOLE]
YesNo = Annotated[Given[bool], _YES_NO]
WebAddress = Annotated[Given[str], _WEB]
Cell = Annotated[Given[str], Scalar("a cell", str, types=(*ANY, "null"), may_be_empty=True)]

"""What is written in one cell → a value, a limit, a word or a stated absence. Never a guess.

The table of notations: `16.5`, `16.5 kg`, `1e3`, `over 999` or `>999`, `under 1` or `<1`, `over unknown`,
`none (spilled)`, `yes`, `no`, a grade, `5:31` for minutes and seconds, `some`; `about 250`, `250 ±10`, `2 to 3`
(`rough.py`), `ostler + 72` (`against.py`), `frames 1204 to 4820` (`frames.py`), `less than ostler` (`order_seen.py`),
`not found` (`laboratory.py`), `did not finish` (`unfinished.py`). Everything else is refused with the reason.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace
from decimal import Decimal

from reportgen.finding import unseen_characters
from reportgen.intake.notations.against import read_against
from reportgen.intake.notations.cell import Expected, UnreadableError, Written
from reportgen.intake.notations.frames import FRAMES, as_frames, is_frames, read_frames
from reportgen.intake.notations.laboratory import read_found
from reportgen.intake.notations.orders import read_order
from reportgen.intake.notations.rough import is_rough, mixed, read_rough
from reportgen.intake.notations.unfinished import read_unfinished
from reportgen.intake.reading import Limit
from reportgen.intake.table import did_you_mean, key, spelt

__all__ = ["NO_REASON", "Expected", "UnreadableError", "Written", "read_cell"]

NO_REASON = "no reason given"
LONGEST = 200  # characters; a reading is a number and a unit, a reason for none may be a paragraph
MOST_POWERS = 60  # of ten in a reading: the square of a product of two is still a number a computer holds
TIMES = frozenset({"s", "sec", "second", "seconds", "min", "minute", "minutes", "h", "hour", "hours"})

_NUMBER = r"[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?"
_UNIT = r"(?:[^\W\d_]|[%°‰])[^\s/*·]*(?:\s?[/*·]\s?(?:[0-9]+\s)?[^\s/*·]+)*|['\"]"
_MEASURED = re.compile(rf"(?P<number>{_NUMBER})\s*(?P<unit>{_UNIT})?")
_CLOCK = re.compile(r"(?:(?P<h>[0-9]+):(?P<m>[0-5]?[0-9])|(?P<mm>[0-9]+)):(?P<s>[0-5][0-9](?:\.[0-9]+)?)")
_LIMIT = re.compile(r"(?:(?P<word>over|under)\s+|(?P<sign>[<>])\s*)(?P<rest>[^=\s].*)", re.IGNORECASE)
_NONE = re.compile(r"none(?:\s*\((?P<reason>.*)\))?", re.IGNORECASE | re.DOTALL)
_THOUSANDS = re.compile(
    r"[+-]?[1-9][0-9]{0,2}(?:(?:,[0-9]{3})+(?:\.[0-9]+)?|(?:\.[0-9]{3})+,[0-9]+|(?:\.[0-9]{3}){2,}"
    r"|(?:[ '’\u00a0\u202f_][0-9]{3})+(?:[.,][0-9]+)?)"
)
_DECIMAL_COMMA = re.compile(r"[+-]?[0-9]+,[0-9]+(?:[eE][+-]?[0-9]+)?(?:\s*[^0-9\s,.].*)?")
_NO_UNITS = frozenset(  # words of notations
    {"about", "over", "under", "some", "nothing", "none", "unknown", "to", "yes", "no"}
)
_NOT_A_NUMBER = frozenset({"nan", "inf", "infinity", "-inf", "+inf", "-infinity", "+infinity"})


def read_cell(text: str, expected: Expected) -> Written:
    """The meaning of one cell; raises `UnreadableError`."""
    text = text.strip()
    if len(text) > LONGEST and not _NONE.fullmatch(text):
        raise UnreadableError(
            "not-a-number",
            f"“{text[:30]}…” is {len(text)} characters long.",
            "No reading is as long as that; a quotation mark may be missing, so that many cells became one.",
            "Look for the place where it should end.",
        )
    if not text:
        return Written(absent_because=NO_REASON)
    if none := _NONE.fullmatch(text):
        return Written(absent_because=(none["reason"] or "").strip() or NO_REASON)
    if unfinished := read_unfinished(text, expected):
        return unfinished
    if expected.kind == "yes/no":
        return _yes_or_no(text)
    if expected.kind == "grade":
        return _grade(text, expected.grades)
    if expected.kind == "order":
        return read_order(text, expected)
    if expected.kind == "laboratory" and (found := read_found(text, expected)):
        return found
    if against := read_against(text, expected, lambda rest: _amount(rest, expected, text)):
        return against
    return as_frames(_amount(text, expected, text), text)


def _amount(text: str, expected: Expected, whole: str) -> Written:
    """A number in any of its notations but one against another contender; `whole` is the cell, for the messages."""
    if text.lower() == "some":
        return Written(Decimal(0), limit="above", unweighed=True)
    if text.lower() == "nothing":
        return Written(Decimal(0), unweighed=True)
    if frames := read_frames(text):
        return frames
    if limit := _LIMIT.fullmatch(text):
        above = (limit["word"] or "").lower() == "over" or limit["sign"] == ">"
        side: Limit = "above" if above else "below"
        if limit["rest"].strip().lower() == "unknown":
            return Written(limit=side)
        if is_rough(limit["rest"].strip()):
            raise mixed(whole)
        return replace(_number(limit["rest"].strip(), expected, whole), limit=side)
    rough = read_rough(text, expected, lambda part: _number(part.strip(), expected, whole))
    return rough or _number(text, expected, whole)


def _yes_or_no(text: str) -> Written:
    if text.lower() not in ("yes", "no"):
        raise UnreadableError(
            "not-yes-or-no",
            f"“{text}” is neither yes nor no.",
            "Other signs (y, 1, true) mean different things on different benches.",
            "Write `yes` or `no`, or `none (reason)`.",
        )
    return Written(word=text.lower())


def _grade(text: str, grades: tuple[str, ...]) -> Written:
    for grade in grades:
        if key(grade) == key(text):
            return Written(word=grade)
    near = did_you_mean(text, grades)
    raise UnreadableError(
        "not-a-grade",
        f"“{text}” is not one of the grades: {spelt(grades)}.",
        "Grades are counted by name.",
        f"Did you mean “{near}”?" if near else "Write one of them, or add it to `grades:`.",
    )


def _number(text: str, expected: Expected, whole: str) -> Written:
    plain = text.replace("−", "-")
    if _DECIMAL_COMMA.fullmatch(plain) and (
        expected.comma == "decimal" or (expected.comma == "doubtful" and not _THOUSANDS.fullmatch(plain))
    ):
        plain = plain.replace(",", ".", 1)
    if clock := _CLOCK.fullmatch(plain):
        return _minutes(clock, expected, whole)
    found = _MEASURED.fullmatch(plain)
    if found is None or plain.lower() in _NOT_A_NUMBER or (found["unit"] or "").lower() in _NO_UNITS:
        raise _why_not(text, expected, whole)
    value = Decimal(found["number"])
    if value and abs(value.adjusted()) > MOST_POWERS:
        raise UnreadableError(
            "not-a-number",
            f"“{whole}” is too large or too small to work with.",
            f"Results are computed between 1e-{MOST_POWERS} and 1e{MOST_POWERS}.",
            "Check the exponent, or use a fitting unit.",
        )
    if expected.kind == "count":
        _must_be_whole(value, found["unit"], whole)
    unit = FRAMES if is_frames(found["unit"] or "") else found["unit"] or ""
    return Written(value, unit, decimals=-int(value.as_tuple().exponent))


def _must_be_whole(value: Decimal, unit: str | None, whole: str) -> None:
    if unit:
        raise UnreadableError(
            "not-a-count",
            f"“{whole}” has “{unit}” behind its number.",
            "A count has no unit.",
            "Write the number alone.",
        )
    if value < 0 or value != value.to_integral_value():
        raise UnreadableError(
            "not-a-count",
            f"“{whole}” is not a count.",
            "A count is a whole number, 0 or more.",
            "Correct the cell, or use the kind `one reading` for what is measured.",
        )


def _minutes(clock: re.Match[str], expected: Expected, whole: str) -> Written:
    timed = expected.unit in TIMES or (expected.kind == "timed" and not expected.unit)
    if expected.kind == "count" or not timed:
        raise UnreadableError(
            "not-a-number",
            f"“{whole}” looks like minutes and seconds.",
            f"This column is not a time: its unit is {expected.unit or 'not given'}.",
            "Write a plain number; a spreadsheet may have turned it into a clock time.",
        )
    minutes = int(clock["h"] or 0) * 60 + int(clock["m"] or clock["mm"])
    seconds = Decimal(clock["s"])
    return Written(minutes * 60 + seconds, "s", decimals=-int(seconds.as_tuple().exponent))


def _may_mean(number: str) -> str:
    """What a number with separators may mean, in plain digits: a single comma alone either way, else the last of its
    separators is the decimal sign where it stands once."""
    bare = re.sub(r"[ '’\u00a0\u202f_]", "", number)
    with_point = bare.replace(".", "").replace(",", ".")
    if bare.count(",") == 1 and ("." in bare[: bare.index(",")] or bare != number):
        return with_point
    plain = bare.replace(",", "")
    plain = plain.replace(".", "") if plain.count(".") > 1 else plain
    return f"{plain} or {with_point}" if bare.count(",") == 1 and "." not in bare else plain


def _why_not(text: str, expected: Expected, whole: str) -> UnreadableError:
    plain = text.replace("−", "-")
    if plain.lower() in _NOT_A_NUMBER:
        return UnreadableError(
            "not-a-number",
            f"“{whole}” is not a number.",
            "Nothing can be computed with it.",
            "Write `none (reason)` where nothing was read, `over …` where the scale ended.",
        )
    if expected.comma == "mixed" and re.fullmatch(r"[+-]?\d+,\d+.*", plain):
        return UnreadableError(
            "separator-in-number",
            f"“{whole}” has a comma, while other numbers of this table have a decimal point.",
            "One of the two may part thousands; that is never guessed.",
            "Write all numbers of the table with a decimal point.",
        )
    if _THOUSANDS.fullmatch(plain) or (re.fullmatch(r"[+-]?\d+,\d+.*", plain) and "." not in plain):
        return UnreadableError(
            "separator-in-number",
            f"“{whole}” has a separator inside the number.",
            "A comma can be a decimal sign or part a thousand from the rest; that is never guessed.",
            f"Write {_may_mean(plain)}, with a point as decimal sign.",
        )
    if unseen := unseen_characters(plain):
        return UnreadableError(
            "not-a-number",
            f"“{whole}” is no plain number. {unseen}",
            "It usually comes from copying out of a document or a web page.",
            "Delete the cell and type the number again.",
        )
    if any(unicodedata.category(c) in ("Nd", "No", "Nl") and c not in "0123456789" for c in plain):
        return UnreadableError(
            "not-a-number",
            f"“{whole}” is not written with the digits 0 to 9.",
            "Digits of other scripts, fractions and raised digits are never guessed at.",
            "Type the number again, with the digits 0 to 9 and a point.",
        )
    if re.match(r"[‐‑‒–—―﹘﹣－]", plain):
        return UnreadableError(
            "not-a-number",
            f"“{whole}” begins with a dash (U+{ord(plain[0]):04X}) that is no minus sign.",
            "A dash alone often means that nothing was read.",
            "Write - for minus, or `none (reason)`.",
        )
    return UnreadableError(
        "not-a-number",
        f"“{whole}” stands where a number belongs.",
        "Only numbers can be computed with.",
        "Write a number with a decimal point, `about …`, `2 to 3`, `over …`, `under …`, `some` or `none (reason)`.",
    )

"""The words and signs of a formula, and what a parsed one is made of. No more exists than what stands here.

Every node carries the column it begins at, from 1, so that a message can point.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from reportgen.metrology.errors import FormulaError

Sign = Literal["+", "-", "*", "/", "^"]

# the functions: how many arguments at least and at most, and whether each must be a plain name
FUNCTIONS: dict[str, tuple[int, int, bool]] = {
    "mean_of_passes": (1, 1, True),
    "sum_of_parts": (1, 1, True),
    "slope_of_parts": (2, 2, True),
    "of": (2, 2, True),
    "energy_mean": (1, 50, False),
    "energy_sum": (1, 50, False),
    "less_background": (2, 2, False),
    "log": (1, 1, False),
    "exp": (1, 1, False),
    "sqrt": (1, 1, False),
    "sin": (1, 1, False),
    "cos": (1, 1, False),
}
# functions that look along a logger's channel: how many arguments; the first is its name, or one of these of it that
# gives a trace again
OVER_CHANNELS: dict[str, int] = {
    "highest": 1, "lowest": 1, "mean_level": 1, "area": 1, "slope": 1, "at": 2, "when": 3, "during": 3,
    "smoothed": 2, "plateau": 3, "how_long": 3,
}  # fmt: skip
PARTS_OF_CHANNELS = ("during", "smoothed")  # those that give a trace again, and may stand in a channel's place
SIDED = ("when", "how_long")  # those whose second argument is a side
# what some of them take in their brackets, in words and in an example
TAKES: dict[str, tuple[str, str]] = {
    "at": ("the trace and the seconds from its first sample", "at(light, 30)"),
    "when": ("the trace, over or under, and the limit", "when(light, under, 0.1 * highest(light))"),
    "during": ("the trace, and from when to when in seconds", "highest(during(light, 0, 60))"),
    "smoothed": ("the trace and the seconds to smooth it over", "highest(smoothed(light, 10))"),
    "plateau": (
        "the trace, how many seconds it lasts, and how far its samples may lie from their mean",
        "plateau(temperature, 60, 0.5)",
    ),
    "how_long": ("the trace, over or under, and the limit", "how_long(light, over, 5)"),
}
# functions of a name over the parts of a pass; an energy sum or mean of one name is a third
OVER_PARTS = ("sum_of_parts", "slope_of_parts")
SIDES = ("over", "under")


@dataclass(frozen=True)
class Number:
    """A number as written; it has no unit."""

    column: int
    value: float


@dataclass(frozen=True)
class Name:
    """A reading, quantity or constant (or, first in `of`, a contender)."""

    column: int
    name: str


@dataclass(frozen=True)
class Negated:
    """Minus something."""

    column: int
    operand: Expression


@dataclass(frozen=True)
class Operation:
    """`left sign right`; the column is the sign's."""

    column: int
    sign: Sign
    left: Expression
    right: Expression


@dataclass(frozen=True)
class Call:
    """A function of its arguments."""

    column: int
    function: str
    arguments: tuple[Expression, ...]


Expression = Number | Name | Negated | Operation | Call


@dataclass(frozen=True)
class Token:
    """One piece of a formula; `sort` is number, name, sign, open, close, comma or end."""

    sort: Literal["number", "name", "sign", "open", "close", "comma", "end"]
    text: str
    column: int


_PIECE = re.compile(
    r"""(?P<number>(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][-+]?\d+(?![\w.]))?)
    | (?P<name>[a-z_][a-z0-9_]*)
    | (?P<sign>\*\*|[-+*/^])
    | (?P<open>\() | (?P<close>\)) | (?P<comma>,)""",
    re.VERBOSE | re.ASCII,
)
_SIGNS = {"−": "-", "–": "-", "×": "*", "·": "*", "÷": "/"}
_WORDS = frozenset({"and", "or", "not", "if", "else", "for", "while", "in", "is", "lambda", "def", "import", "return"})
PLAIN_NUMBERS = "write the number alone: seconds for a time, the channel's unit for what it shows"
_STRAY: tuple[tuple[str, str, str], ...] = (
    ("'\"“”‘’`", "quoted text has no place in a formula", "write names as they are, without quotes"),
    ("<>=!", "a formula works out a number and doesn't compare", "write a limit under `at most`, `at least` or `must`"),
    ("[]", "square brackets have no place in a formula", "write ( and ), or a name from the readings"),
    ("{}", "braces have no place in a formula", "write ( and )"),
    (";:", "a formula is one expression", "give a second one a quantity of its own"),
    (".", "a point follows no name: there is nothing inside a name", "write the whole name with underscores"),
    ("%", "% is no sign of a formula", "divide by 100, or give the quantity the unit %"),
    ("°", "a number in a formula has no unit beside it", PLAIN_NUMBERS),
    ("²³¹⁰⁴⁵⁶⁷⁸⁹", "raised digits can't be read here", "write ^2 for a square"),
)


def tokens_of(text: str) -> Iterator[Token]:
    """The pieces of a formula, the last of sort `end`. Raises FormulaError at the first that has no place in one."""
    for written, plain in _SIGNS.items():
        text = text.replace(written, plain)
    at = 0
    while at < len(text):
        if text[at].isspace():
            at += 1
            continue
        match = _PIECE.match(text, at)
        if not match:
            raise _stray(text, at)
        sort, piece = match.lastgroup, match[0]
        _check(sort, piece, text, match.end(), at + 1)
        yield Token(sort, "^" if piece == "**" else piece, at + 1)  # type: ignore[arg-type]  # the group's name
        at = match.end()
    yield Token("end", "", len(text) + 1)


def _check(sort: str | None, piece: str, text: str, end: int, column: int) -> None:
    after = text[end : end + 1]
    if sort == "number":
        if after == ",":
            return
        if after and (after.isalpha() or after in "_."):
            raise FormulaError(
                column, f"{piece}{after}… is neither a number nor a name", f"write {piece} * … to multiply"
            )
        if float(piece) == float("inf"):
            raise FormulaError(column, "a number too large to hold", "check its exponent")
    if sort == "name":
        if after and (after.isalpha() or (not after.isascii() and after.isalnum())):
            raise _stray(text, end)
        if piece.startswith("__"):
            raise FormulaError(column, f"{piece} begins with two underscores; no name does", "write the name itself")
        if piece in _WORDS:
            raise FormulaError(column, f"“{piece}” is no word of a formula", "use + - * / ^ and names")


def _stray(text: str, at: int) -> FormulaError:
    sign = text[at]
    for signs, says, do in _STRAY:
        if sign in signs:
            return FormulaError(at + 1, says, do)
    if sign.isalpha():
        if sign.isascii():
            return FormulaError(at + 1, f"“{sign}” is a capital", "names in formulas are in small letters")
        return FormulaError(
            at + 1, f"“{sign}” can't stand in a name", "names are written in a to z, digits and underscores"
        )
    return FormulaError(at + 1, f"{sign!r} has no place in a formula", "use + - * / ^, brackets, names and functions")

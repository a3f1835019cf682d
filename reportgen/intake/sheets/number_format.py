"""A number as a spreadsheet's number format shows it: how many digits, per cent, the signs beside it.

The codes are those of ECMA-376, part 1, 18.8.31 (numFmts): sections set apart by semicolons, `0`, `#` and `?` for
digits, quoted text, `_x` and `*x` for space.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Context, Decimal

SURE_DIGITS = 15  # of a binary64 number (IEEE 754): what spreadsheets show at most

_SECTION = re.compile(
    r'"(?P<quoted>[^"]*)"|\\(?P<escaped>.)|_.|\*.|\[\$(?P<money>[^\]-]*)[^\]]*\]|\[[^\]]*\]|(?P<code>.)'
)
_DIGITS = re.compile(r"(?P<whole>[#0?,]*)(?:\.(?P<decimals>[#0?]*))?")


@dataclass(frozen=True)
class NumberFormat:
    """How a number is shown. `least` and `most` decimals are None where the format fixes none (General, scientific,
    fractions). `times` is 100 for per cent. `before` and `behind` are texts shown beside the digits."""

    least: int | None = None
    most: int | None = None
    times: int = 1
    before: str = ""
    behind: str = ""


FREE = NumberFormat()


def held(value: float) -> Decimal:
    """What a cell holds: its binary number to the 15 digits that are sure, so that 231.4 − 217.1 is 14.3."""
    return Context(prec=SURE_DIGITS).create_decimal(repr(value)).normalize() + 0


def as_text(number: Decimal) -> str:
    """Its digits without an exponent, unless it has more zeros than anyone wants to count."""
    return f"{number:f}" if abs(number.adjusted()) <= 20 else f"{number:e}"


def format_of(code: str, value: Decimal) -> NumberFormat:
    """The part of a format code that serves this value."""
    if code in ("", "General"):
        return FREE
    sections = _sections(code)
    section = sections[_which(len(sections), value)]
    literal = {"before": "", "behind": ""}
    digits = ""
    times = 1
    for piece in _SECTION.finditer(section):
        said = piece["quoted"] or piece["escaped"] or piece["money"] or ""
        sign = piece["code"] or ""
        if sign == "%":
            times *= 100
        elif sign in ("#", "0", "?", ".", ",") and sign:
            digits += sign
        elif sign in ("E", "e", "/", "@") or (sign and sign.isalpha()):
            return FREE
        else:
            literal["behind" if digits else "before"] += said or sign
    found = _DIGITS.fullmatch(digits)
    if found is None or not digits or digits.rstrip(",") != digits:
        return FREE
    decimals = found["decimals"] or ""
    before, behind = (_without_sign(literal[side]) for side in ("before", "behind"))
    behind = f"{behind} %".strip() if times == 100 else behind
    return NumberFormat(decimals.count("0"), len(decimals), times, before, behind)


def shown(value: Decimal, form: NumberFormat) -> tuple[str, str]:
    """The number as its format writes it, twice: with all that the cell holds, and as it is shown.

    Both carry the text beside the digits; they are one where the format hides nothing.
    """
    scaled = (value * form.times).normalize()
    if form.least is None or form.most is None:
        return as_text(scaled), as_text(scaled)
    rounded = scaled.quantize(Decimal(1).scaleb(-form.most), ROUND_HALF_UP, Context(prec=400))
    digits = as_text(rounded)
    for _ in range(form.most - form.least):
        digits = digits[:-1] if digits.endswith("0") else digits
    seen = _beside(digits.rstrip("."), form)
    return (seen, seen) if rounded == scaled else (_beside(as_text(scaled), form), seen)


def _beside(digits: str, form: NumberFormat) -> str:
    return " ".join(filter(None, (form.before, digits, form.behind)))


def _sections(code: str) -> list[str]:
    found = [""]
    for piece in _SECTION.finditer(code):
        if piece["code"] == ";":
            found.append("")
        else:
            found[-1] += piece[0]
    return found


def _which(sections: int, value: Decimal) -> int:
    if value < 0 and sections > 1:
        return 1
    return 2 if not value and sections > 2 else 0


def _without_sign(beside: str) -> str:
    """Text beside a number, without what only says that it is negative."""
    return beside.strip().strip("()+-").strip()

"""Numbers as text. Nothing else in the program formats a number.

Rounding is decimal and exact: a float is read by its shortest text and freed of its last digits of binary noise
(12 significant digits), then rounded half to even (ISO 80000-1, annex B, rule A, from memory: of many numbers that lie
in the middle as many go up as down, where half up would push every mean up). An uncertainty is printed with two
significant digits and its value to the same place (JCGM 100, 7.2.6).
"""

from __future__ import annotations

import math
from decimal import ROUND_HALF_EVEN, Decimal, localcontext
from typing import TypeGuard

from reportgen.wording.language import as_one, say, spoken

Number = float | int | Decimal

MINUS = "\u2212"
NARROW_NO_BREAK = "\u202f"
_FREE_OF_NOISE = 12  # significant digits of a computed float that are taken at their word
_PLAIN_DIGITS = 4  # of a number that has neither an uncertainty nor written decimals
_MOST_DECIMALS, _SMALL, _LARGE = 9, -4, 15  # beyond these a power of ten reads better
_RAISED = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def exact(x: Number) -> Decimal:
    """The decimal number that is meant: `0.1 + 0.2` is 0.3. Raises ValueError for what is not a finite number."""
    number = x if isinstance(x, Decimal) else Decimal(repr(x))
    if not number.is_finite():
        raise ValueError(f"not a finite number: {x}")
    return _significant(number, _FREE_OF_NOISE) if isinstance(x, float) else number


def rounded(x: Number, decimals: int) -> Decimal:
    """`x` to that many decimals (negative: tens, hundreds), half to even."""
    with localcontext() as arithmetic:
        arithmetic.prec = 400
        return exact(x).quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_EVEN)


def decimals_of(u: Number) -> int:
    """The decimals at which `u` shows two significant digits: 2 for 0.31, 0 for 27, −2 for 1234, 2 for 0.0996.

    Raises ValueError where `u` is zero: it has no significant digit.
    """
    size = _significant(abs(exact(u)), 2)
    if not size:
        raise ValueError("an uncertainty of zero has no significant digits")
    return 1 - size.adjusted()


def with_u(value: Number, u: Number) -> tuple[str, str]:
    """Value and standard uncertainty as printed: `with_u(10.05762, 0.027)` is ("10.058", "0.027")."""
    decimals = decimals_of(u)
    return fixed(value, decimals), fixed(u, decimals)


def plain(value: Number | None, decimals: int | None = None) -> str:
    """A number that has no uncertainty: with the decimals its readings were written with, else four digits.

    None and what is no finite number read "not known".
    """
    if not known(value):
        return say("number.unknown")
    if decimals is not None:
        return fixed(value, decimals)
    number = exact(value)
    if number == number.to_integral_value():
        return fixed(number, 0)
    shortened = _significant(number, max(_PLAIN_DIGITS, number.adjusted() + 1)).normalize()
    return fixed(shortened, max(0, -int(shortened.as_tuple().exponent)))


def as_written(value: Decimal, *, sign: bool = False) -> str:
    """A number the author typed, with the digits it was typed with; `sign` as for `fixed`."""
    return fixed(value, max(0, -int(value.as_tuple().exponent)), sign=sign)


def fixed(value: Number, decimals: int, *, sign: bool = False) -> str:
    """`value` to that many decimals in print: U+2212 for minus, groups of three from 10 000 on, never minus zero.

    `sign` puts a plus before what is above zero, for differences.
    """
    number = rounded(value, decimals)
    before = MINUS if number < 0 else "+" if sign and number > 0 else ""
    number = abs(number)
    if number and (number.adjusted() >= _LARGE or (decimals > _MOST_DECIMALS and number.adjusted() < _SMALL)):
        return as_one(before + _with_power_of_ten(number))
    whole, _, part = f"{number:f}".partition(".")
    if decimals <= 0:
        part = ""
    if len(whole) > 4:
        whole = f"{int(whole):,}".replace(",", NARROW_NO_BREAK)
    digits = f"{whole}{spoken().decimal_sign}{part}" if part else whole
    return as_one(before + digits) if before else digits


def known(value: Number | None) -> TypeGuard[Number]:
    """Whether there is a finite number."""
    return value is not None and math.isfinite(value)


def _significant(number: Decimal, digits: int) -> Decimal:
    with localcontext() as arithmetic:
        arithmetic.prec = digits
        arithmetic.rounding = ROUND_HALF_EVEN
        return +number


def _with_power_of_ten(number: Decimal) -> str:
    number = _significant(number, _FREE_OF_NOISE)  # more digits than that nobody read
    power = number.adjusted()
    shown = number.scaleb(-power)
    decimals = max(0, -int(shown.as_tuple().exponent))
    digits = f"{shown:.{decimals}f}".replace(".", spoken().decimal_sign)
    return f"{digits} × 10{str(power).translate(_RAISED)}".replace(" ", "\u00a0")

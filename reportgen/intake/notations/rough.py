"""Readings that say themselves how well they are known: `about 250`, `250 ±10`, `2 to 3`.

`about` is our own convention: within one unit of the last figure that isn't a trailing zero before the decimal
point, so about 250 is 240 to 260 and about 2.5 is 2.4 to 2.6. A stated width and a range are taken as they stand.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal

from reportgen.intake.notations.cell import Expected, UnreadableError, Written
from reportgen.wording.number import as_written

Number = Callable[[str], Written]

_ABOUT = re.compile(r"about\s+(?P<rest>\S.*)", re.IGNORECASE)
_STATED = re.compile(r"(?P<value>.*?)\s*(?:±|\+/-|\+-)\s*(?P<width>.*)")
_BETWEEN = re.compile(r"(?P<low>\S.*?)\s+to\s+(?P<high>\S.*)", re.IGNORECASE)
_LIMITED = re.compile(r"(?:over|under)\b.*|[<>].*", re.IGNORECASE)
_LIKE_CLOCK = re.compile(r"[0-9]+(?::[0-9]+)+(?:[.,][0-9]+)?")
_OTHER_ABOUT = re.compile(r"(?P<sign>[~≈≃∼]|(?:ca|approx|circa|around|roughly)\b\.?)\s*(?P<rest>.*)", re.IGNORECASE)
_DASHED = re.compile(r"(?P<low>[0-9.,]+)\s*[‐‑‒–—―−-]\s*(?P<high>[0-9.,]+)(?P<unit>[^0-9]*)")


def read_rough(text: str, expected: Expected, number: Number) -> Written | None:
    """The reading with its half-width, or None where the text is no such notation. Raises `UnreadableError`.

    `number` reads a plain number of the cell, with its unit.
    """
    if other := _OTHER_ABOUT.fullmatch(text):
        raise _refused(
            text, f"“{other['sign']}” is no sign of ours for a rough reading.", f"Write `about {other['rest']}`."
        )
    about, stated, between = _ABOUT.fullmatch(text), _STATED.fullmatch(text), _BETWEEN.fullmatch(text)
    if not (about or stated or between):
        _refuse_dash(text)
        return None
    if expected.kind == "count":
        raise _refused(
            text,
            "A count is a whole number, and one that was not counted is no count.",
            "Write `over …` with what is sure, or use the kind `one reading`, whose readings may be rough.",
        )
    if about:
        return _about(text, about["rest"], number)
    if stated:
        return _stated(text, stated["value"], stated["width"], expected, number)
    assert between is not None
    return _between(text, between["low"], between["high"], number)


def is_rough(text: str) -> bool:
    """Whether a text says how rough it is: such a text can't stand behind another notation."""
    return any(p.fullmatch(text) for p in (_ABOUT, _STATED, _BETWEEN, _OTHER_ABOUT))


def unit_of_last_figure(text: str) -> Decimal:
    """One unit of the last figure of a plain decimal number that is no trailing zero before the decimal point."""
    _, digits, exponent = Decimal(text).as_tuple()
    assert isinstance(exponent, int)
    if exponent < 0 or not any(digits):
        return Decimal(1).scaleb(exponent)
    zeros = len(digits) - len("".join(map(str, digits)).rstrip("0"))
    return Decimal(1).scaleb(exponent + zeros)


def _about(text: str, rest: str, number: Number) -> Written:
    if _LIMITED.fullmatch(rest) or is_rough(rest) or rest.lower() in ("some", "unknown"):
        raise mixed(text)
    written = number(rest)
    assert written.value is not None
    width = _of_clock(rest) if _LIKE_CLOCK.fullmatch(rest) else unit_of_last_figure(str(written.value))
    return replace(written, width=width, rough="about")


def _of_clock(text: str) -> Decimal:
    """The same for `5:30`: ten seconds; for 5:00 a minute; for 5:31.4 a tenth of a second."""
    *before, seconds = text.replace(",", ".").split(":")
    if Decimal(seconds) or "." in seconds:
        return unit_of_last_figure(seconds)
    for turns, part in enumerate(reversed(before), 1):
        if int(part):
            return unit_of_last_figure(part) * Decimal(60) ** turns
    return Decimal(1)


def _stated(text: str, value: str, width: str, expected: Expected, number: Number) -> Written:
    if not value or not width:
        raise _refused(text, "± stands between a value and its half-width.", "Write it like this: `250 ±10`.")
    if _LIMITED.fullmatch(value) or is_rough(value) or is_rough(width) or width[0] in "+-−":
        raise mixed(text)
    middle, half = number(value), number(width)
    assert middle.value is not None
    assert half.value is not None
    if half.unit == "%" and (middle.unit or expected.unit) != "%":
        share = as_written((abs(middle.value * half.value) / 100).normalize())
        raise _refused(
            text,
            "A half-width in percent could be of the reading or of the scale.",
            f"Write it in the unit of the reading: `{value.strip()} ±{share}` if it is of the reading.",
        )
    unit = _one_unit(text, (value, middle), (width, half))
    if half.value <= 0:
        raise _refused(text, "A half-width of nothing says nothing.", "Write the number alone, or how wide it is.")
    decimals = max(middle.decimals or 0, half.decimals or 0)
    return Written(middle.value, unit, decimals=decimals, width=half.value, rough="stated")


def _between(text: str, low: str, high: str, number: Number) -> Written:
    if _LIMITED.fullmatch(low) or _LIMITED.fullmatch(high) or is_rough(low) or is_rough(high):
        raise mixed(text)
    first, last = number(low), number(high)
    assert first.value is not None
    assert last.value is not None
    unit = _one_unit(text, (low, first), (high, last))
    if first.value >= last.value:
        raise _refused(text, "It ends where it begins, or before.", "Write the smaller number first.")
    middle, half = (first.value + last.value) / 2, (last.value - first.value) / 2
    written = max(first.decimals or 0, last.decimals or 0)
    decimals = written if middle.scaleb(written) % 1 == 0 else written + 1
    return Written(middle, unit, decimals=decimals, width=half, rough="between")


def _one_unit(text: str, *sides: tuple[str, Written]) -> str:
    """The unit of both sides, which either may carry for both; a clock time needs its partner's unit said."""
    units = [side.unit for _, side in sides]
    clocks = [":" in said for said, _ in sides]
    if len({u for u in units if u}) > 1:
        raise _refused(text, f"Its two numbers are in {units[0]} and in {units[1]}.", "Write both in one unit.")
    if any(clocks) and not all(units):
        raise _refused(
            text, "One number is a clock time, and the other has no unit.", "Write both as times: `5:30 ±10 s`."
        )
    return next((u for u in units if u), "")


def _refuse_dash(text: str) -> None:
    dashed = _DASHED.fullmatch(text)
    if dashed:
        do = f"{dashed['low']} to {dashed['high']}{dashed['unit'].rstrip()}"
        raise _refused(text, "A dash between two numbers may be a range or a minus.", f"Write `{do}` for a range.")


def mixed(text: str) -> UnreadableError:
    """Two notations in one, which together say less than either."""
    return _refused(
        text,
        "It says twice how well it is known, and the two don't go together.",
        "Write one of them: `over 250` with what is sure, `2 to 3` with both ends, or `about 250`.",
    )


def _refused(text: str, why: str, do: str) -> UnreadableError:
    return UnreadableError("rough-unclear", f"“{text}” can't be taken as a rough reading.", why, do)

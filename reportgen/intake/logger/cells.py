"""Cells of a channel that are no plain numbers: ends of a scale, stated gaps, and what is refused."""

from __future__ import annotations

import re
from dataclasses import dataclass

from reportgen.finding import Finding, Place
from reportgen.intake.notations.notation import Expected, UnreadableError, read_cell

_OVERLOAD = re.compile(r"\+?(?:O\.?L\.?|O\.?F\.?L?\.?|over(?:load|range| range| scale)?|>+)", re.IGNORECASE)
_UNDERLOAD = re.compile(r"-(?:O\.?L\.?)|U\.?F\.?L?\.?|under(?:range| range| scale)?|<+", re.IGNORECASE)
_COMMA = re.compile(r"([<>]?\s*[+-]?[0-9]+),([0-9]+)(.*)", re.DOTALL)
QUOTED = 40  # characters of a cell that a message shows


@dataclass(frozen=True)
class Sample:
    """What such a cell is: a number or limit, `side` 0, 1 (over it), −1 (under it); None for nothing there."""

    value: float | None
    side: int


def sample_of(text: str, unit: str, at: Place, channel: str, separator: str = ";") -> Sample | Finding | None:
    """The sample that stands in a cell, None where it says that nothing was read, or what is wrong with it.

    `separator` parts the cells: where that is a comma, a comma inside a cell may part thousands, and isn't guessed at.
    """
    if _OVERLOAD.fullmatch(text):
        return Sample(None, 1)
    if _UNDERLOAD.fullmatch(text):
        return Sample(None, -1)
    decimal = separator != "," and text.count(",") == 1 and "." not in text
    plain = _COMMA.sub(r"\1.\2\3", text) if decimal else text
    try:
        written = read_cell(plain, Expected("", unit))
    except UnreadableError as wrong:
        return _text(text, at, channel, wrong.why)
    if written.absent_because:
        return None
    if written.unit and unit and written.unit != unit:
        return Finding(
            "error",
            "units-disagree",
            at,
            f"{channel}: “{text}” is in {written.unit}, and the channel is in {unit}.",
            "Which of the two holds can't be known.",
            "Correct the unit under `columns:`.",
        )
    side = {None: 0, "above": 1, "below": -1}[written.limit]
    if written.value is None and not side:
        return _text(text, at, channel, "Only numbers can be computed with.")
    return Sample(float(written.value) if written.value is not None else None, side)


def short(text: str) -> str:
    """A cell as messages quote it: of a very long one, its beginning."""
    return text if len(text) <= QUOTED else f"{text[:QUOTED]}…"


def _text(text: str, at: Place, channel: str, why: str) -> Finding:
    return Finding(
        "error",
        "text-in-a-channel",
        at,
        f"{channel}: “{short(text)}” stands where a sample belongs.",
        why,
        "Write `over 999` where the scale ended, `none` where nothing was read; or name another channel.",
    )

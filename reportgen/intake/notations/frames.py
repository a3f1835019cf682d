"""Readings taken off a film by counting its frames: `frames 1204 to 4820`, `frame 1204`, `3616 frames`.

How long a frame lasts is a matter of the instrument; here they stay frames.
"""

from __future__ import annotations

import re
from decimal import Decimal

from reportgen.intake.notations.cell import UnreadableError, Written

FRAMES = "frames"  # the unit, however it is written
_FROM_TO = re.compile(r"frames?\s+(?P<first>\S+)\s+to\s+(?P<last>\S+)", re.IGNORECASE)
_ONE = re.compile(r"frames?\s+(?P<number>\S+)", re.IGNORECASE)
_SPELT = ("frame", "frames")


def is_frames(unit: str) -> bool:
    """Whether a unit as written is frames of a film."""
    return unit.strip().lower() in _SPELT


def counts_frames(text: str) -> bool:
    """Whether a text says how many frames something took (`3616 frames`), which has two ends, and not which frame."""
    return re.fullmatch(r"[0-9]+\s*frames?", text.strip(), re.IGNORECASE) is not None


def read_frames(text: str) -> Written | None:
    """The frames between two, or the number of one; None where the text is no such notation."""
    if span := _FROM_TO.fullmatch(text):
        first, last = _number(span["first"], text), _number(span["last"], text)
        if last <= first:
            raise _refused(text, "It ends where it begins, or before.", "Write the earlier frame first.")
        return Written(Decimal(last - first), FRAMES, decimals=0, frames=(first, last))
    if one := _ONE.fullmatch(text):
        return Written(Decimal(_number(one["number"], text)), FRAMES, decimals=0)
    return None


def as_frames(written: Written, text: str) -> Written:
    """A number with the unit frame or frames, as the one unit; a plain one must be whole."""
    if not is_frames(written.unit):
        return written
    if written.value is None or written.rough or written.beside:
        return written
    if written.value < 0 or written.value != written.value.to_integral_value():
        raise _refused(text, "Frames are counted: a number of frames is whole.", "Write the frame that was seen.")
    return written


def _number(text: str, whole: str) -> int:
    if not re.fullmatch(r"[0-9]{1,9}", text):
        raise _refused(whole, f"“{text}” is no number of a frame.", "Write whole numbers: `frames 1204 to 4820`.")
    return int(text)


def _refused(text: str, why: str, do: str) -> UnreadableError:
    return UnreadableError("frames-unclear", f"“{text}” can't be taken as frames of a film.", why, do)

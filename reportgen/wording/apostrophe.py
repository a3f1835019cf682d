"""Apostrophes as a printer sets them."""

from __future__ import annotations

import re

_TYPED = re.compile(r"(?<=\w)'(?=\w)|(?<=[sS])'(?=\s)")


def typeset(text: str) -> str:
    """The text with its typed apostrophes inside words, and after a plural's s, as they are printed."""
    return _TYPED.sub("\u2019", text)

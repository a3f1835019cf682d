"""Words in a sentence that lead to their reason: marks that travel inside a text until a page sets them as links.

A led text is for pages; whoever wants plain words takes `bare` of it. An address is one of the site, with an anchor.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from reportgen.wording.apart import MARKS

OPENS, TURNS, CLOSES = "\ue000", "\ue001", "\ue002"  # private use (Unicode 16, 23.5): no author's text needs them
_LED = re.compile(f"{OPENS}([^{TURNS}]*){TURNS}([^{CLOSES}]*){CLOSES}")


@dataclass(frozen=True)
class Piece:
    """A stretch of a text; `to` is the address its words lead to, "" where they lead nowhere."""

    text: str
    to: str = ""


def led(text: str, to: str) -> str:
    """The words with the way to their reason; the bare words where there is no way. Ways don't nest."""
    return f"{OPENS}{to}{TURNS}{bare(text)}{CLOSES}" if to and text else text


def bare(text: str) -> str:
    """The text without its ways."""
    return _LED.sub(r"\2", text)


def pieces(text: str) -> tuple[Piece, ...]:
    """The text in stretches, those that lead somewhere each by itself."""
    found: list[Piece] = []
    end = 0
    for match in _LED.finditer(text):
        found += [Piece(text[end : match.start()]), Piece(match.group(2), match.group(1))]
        end = match.end()
    return tuple(p for p in (*found, Piece(text[end:])) if p.text)


def begins_at(text: str) -> int:
    """Where the first word of a text stands: after the way, and after marks of direction, where it begins with such."""
    at = len(text) - len(text.lstrip(MARKS))
    return text.index(TURNS) + 1 if text.startswith(OPENS, at) else at

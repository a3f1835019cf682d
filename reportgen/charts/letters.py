"""How long a text is before a browser has set it, and where it can be cut.

Widths are those of a wide face (in em), so that what fits here fits in whatever face a reader's system has. Nothing is
cut inside what a reader takes for one letter: accents stay with theirs, and so do the parts of a joined emoji.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator

from reportgen.wording.apart import plain

LETTER = 0.554  # em: what counts as one letter
_WIDE = {
    letter: em
    for letters, em in (
        ("ijlI'J", 0.3), (" .,:;|/-!’·", 0.38), ("frt()[]", 0.42), ("cszk", 0.58), ("mW", 0.99), ("w%", 0.9),
        ("EFLPSTYZ", 0.66), ("M@…", 1.0), ("DGHNOQ", 0.79),
    )
    for letter in letters
}  # fmt: skip
_LOWER, _UPPER, _FULL = 0.64, 0.72, 1.3  # em: other small letters and digits, other capitals, emoji; CJK is 1
_JOINER, _ELLIPSIS, _TO_THE_LEFT = "\u200d", "…", "\u200f"


def characters(text: str) -> int:
    """How many characters a reader sees: marks of direction take no room."""
    return len(plain(text))


def px_of(text: str, size: float) -> float:
    """About how many px a text of this type size needs, rather more than fewer."""
    return size * sum(map(_em, _clusters(plain(text))))


def length(text: str) -> float:
    """The same in letters."""
    return sum(map(_em, _clusters(plain(text)))) / LETTER


def cut(text: str, fits: float) -> str:
    """The text, or what stands in `fits` letters of it with an ellipsis, on the side where it reads on."""
    if length(text) <= fits:
        return text
    kept = ""
    for cluster in _clusters(text):
        if length(kept + cluster + _ELLIPSIS) > fits:
            break
        kept += cluster
    return f"{kept.rstrip()}{_ELLIPSIS}{_TO_THE_LEFT if _reads_left(kept) else ''}"


def _reads_left(text: str) -> bool:
    """Whether its last strong letter is of a script that runs to the left (Unicode Annex 9)."""
    strong = [kind for c in text if (kind := unicodedata.bidirectional(c)) in ("L", "R", "AL")]
    return bool(strong) and strong[-1] != "L"


def _clusters(text: str) -> Iterator[str]:
    """What a reader takes for one letter each (after Unicode Annex 29, in short)."""
    held = ""
    for c in text:
        if held and (_hangs(c) or held.endswith(_JOINER) or _flag(held, c)):
            held += c
        else:
            yield from [held] if held else []
            held = c
    yield from [held] if held else []


def _hangs(c: str) -> bool:
    return c == _JOINER or unicodedata.category(c) in ("Mn", "Me", "Mc") or "\U0001f3fb" <= c <= "\U0001f3ff"


def _flag(held: str, c: str) -> bool:
    """Two regional indicators are one flag."""
    return len(held) == 1 and all("\U0001f1e6" <= one <= "\U0001f1ff" for one in (held, c))


def _em(cluster: str) -> float:
    c = cluster[0]
    if c in _WIDE:
        return _WIDE[c]
    if c >= "\U0001f000" or (unicodedata.category(c) == "So" and c > "\u2000"):
        return _FULL
    if unicodedata.east_asian_width(c) in ("W", "F"):
        return 1.0
    return _UPPER if c.isupper() else _LOWER if c.isalnum() else 0.5 if c < "\u2000" else 0.8

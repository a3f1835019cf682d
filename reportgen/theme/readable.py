"""What a browser silently leaves out of a file of styles: what comes after a brace, quote or comment that never closes,
and what asks for a colour or measure that nothing sets."""

from __future__ import annotations

import re
from collections.abc import Iterator

_PIECE = re.compile(
    r"""(?P<comment>/\*.*?\*/)|(?P<string>"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*')|(?P<open>/\*|["'])|(?P<brace>[{}])""",
    re.DOTALL,
)
_SET = re.compile(r"(?<![\w-])(--[\w-]+)\s*:")
_ASKED = re.compile(r"var\(\s*(--[\w-]+)\s*\)")


def unclosed(style: str) -> Iterator[tuple[int, str]]:
    """Line and words for the first thing that doesn't close, or closes what isn't open."""
    open_braces: list[int] = []
    for piece in _PIECE.finditer(style):
        line = style.count("\n", 0, piece.start()) + 1
        if piece["open"]:
            yield (
                line,
                "a comment begins here and doesn’t end"
                if piece["open"] == "/*"
                else "a quote begins here and doesn’t end on its line",
            )
            return
        if piece["brace"] == "{":
            open_braces.append(line)
        elif piece["brace"] and not open_braces:
            yield line, "this brace closes nothing"
            return
        elif piece["brace"]:
            open_braces.pop()
    if open_braces:
        yield open_braces[-1], "the brace opened here isn’t closed"


def properties_set(style: str) -> frozenset[str]:
    """The custom properties that a file of styles gives a value."""
    return frozenset(_SET.findall(_bare(style)))


def properties_asked(style: str) -> Iterator[tuple[int, str]]:
    """Line and name of each custom property that is asked for without a value to fall back on."""
    bare = _bare(style)
    for piece in _ASKED.finditer(bare):
        yield bare.count("\n", 0, piece.start()) + 1, piece[1]


def _bare(style: str) -> str:
    """The same lines without what stands in comments and strings."""
    return _PIECE.sub(lambda piece: piece[0] if piece["brace"] else "\n" * piece[0].count("\n"), style)

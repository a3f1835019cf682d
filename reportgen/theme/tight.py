"""A style sheet without what only its author needs: comments, the space between rules, the nought before a point."""

from __future__ import annotations

import re
from functools import cache

_STRING = r""""(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'"""
_COMMENT = re.compile(rf"({_STRING})|/\*.*?\*/", re.DOTALL)
_SPACE = re.compile(rf"({_STRING})|\s*;?\s*(\}})\s*|\s*([{{;,>])\s*|(:)\s+|\s+", re.DOTALL)
_NOUGHT = re.compile(rf"({_STRING})|(?<![\w.#-])(-?)0(\.\d)", re.DOTALL)


@cache  # a process that compiles again has the same files
def tight(sheet: str) -> str:
    """The same rules in fewer characters: strings stand, and a space stays where it may part two words."""
    bare = _COMMENT.sub(lambda piece: piece[1] or " ", sheet)
    bare = _SPACE.sub(lambda piece: piece[1] or piece[2] or piece[3] or piece[4] or " ", bare).strip()
    return _NOUGHT.sub(lambda piece: piece[1] or piece[2] + piece[3], bare)

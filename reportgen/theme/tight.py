"""A style sheet without what only its author needs: comments and the space between rules."""

from __future__ import annotations

import re

_STRING = r""""(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'"""
_COMMENT = re.compile(rf"({_STRING})|/\*.*?\*/", re.DOTALL)
_SPACE = re.compile(rf"({_STRING})|\s*([{{}};,])\s*|(:)\s+|\s+", re.DOTALL)


def tight(sheet: str) -> str:
    """The same rules in fewer characters: strings stand, and a space stays where it may part two words."""
    bare = _COMMENT.sub(lambda piece: piece[1] or " ", sheet)
    return _SPACE.sub(lambda piece: piece[1] or piece[2] or piece[3] or " ", bare).strip()

"""What stands on every page where products and readings are invented."""

from __future__ import annotations

from reportgen.wording.language import say

_YES, _NO = ("yes", "true", "on", "y"), ("no", "false", "off", "n")


def invented(said: str) -> str:
    """The author's own sentence; for a bare yes the usual one, for a bare no none."""
    bare = said.strip().rstrip(".").casefold()
    if bare in _NO:
        return ""
    return say("invented") if bare in _YES else said

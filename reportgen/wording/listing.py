"""Lists in a sentence."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.wording.language import say


def and_list(items: Sequence[str]) -> str:
    """ "Corvane", "Corvane and Ostler", "Corvane, Ostler and Tamsin"; empty for nothing."""
    return _joined(items, "list.and")


def or_list(items: Sequence[str]) -> str:
    """ "Corvane or Ostler"."""
    return _joined(items, "list.or")


def commas(items: Sequence[str]) -> str:
    """ "81, 82, 84"."""
    return say("list.comma").join(items)


def _joined(items: Sequence[str], last: str) -> str:
    if len(items) < 2:
        return "".join(items)
    return say(last, before=commas(items[:-1]), last=items[-1])

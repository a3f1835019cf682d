"""Lists in a sentence."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from reportgen.wording.apart import isolated
from reportgen.wording.language import say, spoken


def and_list(items: Sequence[str]) -> str:
    """ "Corvane", "Corvane and Ostler", "Corvane, Ostler and Tamsin"; empty for nothing."""
    return _joined(items, "and")


def or_list(items: Sequence[str]) -> str:
    """ "Corvane or Ostler"."""
    return _joined(items, "or")


def commas(items: Sequence[str]) -> str:
    """ "81, 82, 84"."""
    return say("list.comma").join(_each(items))


def labelled(label: str, text: str) -> str:
    """ "first: Corvane"."""
    return say("labelled", label=label, text=text)


def with_aside(text: str, aside: str) -> str:
    """ "42 EUR (shop, 2 May 2026)"; the text alone where there is nothing beside it."""
    return say("aside", text=text, aside=aside) if aside else text


def semicolons(items: Sequence[str]) -> str:
    """ "82 g; 84 g": a list whose members may hold commas."""
    return say("list.semicolon").join(_each(items))


def _joined(items: Sequence[str], kind: Literal["and", "or"]) -> str:
    """By four patterns: of two, and of more their start, middle and end (UTS 35, part 2, "List Patterns")."""
    if len(items) < 2:
        return "".join(items)
    before, *others = _each(items)
    for n, item in enumerate(others, 1):
        last = n == len(others)
        place = "two" if len(items) == 2 else "start" if n == 1 else "end" if last else "middle"
        before = say(f"list.{kind}.{place}", before=before, last=item)
    return before


def _each(items: Sequence[str]) -> Sequence[str]:
    return [isolated(item) for item in items] if spoken().right_to_left else items

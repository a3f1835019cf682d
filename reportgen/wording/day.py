"""Days as text."""

from __future__ import annotations

from datetime import date

from reportgen.wording.language import say


def day(first: str, last: str, text: str) -> str:
    """ "2 May 2026" for one day (`first` and `last` in ISO 8601); anything else as it was typed."""
    if not first or first != last:
        return text
    one = date.fromisoformat(first)
    return say("day", day=str(one.day), month=say(f"month.{one.month}"), year=str(one.year))

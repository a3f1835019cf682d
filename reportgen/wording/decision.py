"""Decisions and outcomes ↔ words."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.wording.language import say
from reportgen.wording.listing import and_list


def decision(code: str) -> str:
    """A comparison's decision as pages print it: "too close to call"."""
    return say(f"decision.{code}".replace(" ", "-"))


def seen_from_first(code: str, favours_first: bool | None) -> str:
    """The same in a word or two from the first contender's side: "better", "worse", "too close"."""
    if code == "better" and favours_first is False:
        return say("pair.worse")
    return say(f"pair.{code}".replace(" ", "-"))


def outcome(code: str) -> str:
    """A claim's or condition's outcome: "supported", "contradicted", "undecided", "not tested"."""
    return say(f"outcome.{code}".replace(" ", "-"))


def direction(better: str) -> str:
    """Which way is better: "lower is better"."""
    return say(f"direction.{better}")


def covers(code: str, at_least: bool, what: Sequence[str] = ()) -> str:
    """What an interval holds, for the line below a table; `what` it allows for: instrument, constant, scatter."""
    allowed = and_list([say(f"covers.what.{one}") for one in what])
    return say(f"covers.{'at-least' if at_least else 'about'}.{code}".replace(" ", "-"), what=allowed)

"""Those outside the plain ranks: off the meter's scale, blocked by a caveat, not yet tested."""

from __future__ import annotations

from collections.abc import Callable

from reportgen.evaluation.evaluated import Result
from reportgen.evaluation.results import NEVER_COMPARED
from reportgen.prose.amounts import short
from reportgen.prose.standing import Standing, name, names
from reportgen.wording.language import say, say_of
from reportgen.wording.reason import why_blocked, why_missing


def off_scale(s: Standing) -> list[str]:
    """A sentence for each ranked result that is only a bound: last or first where that is decided, else open."""
    last = len(s.ranked)
    said = []
    for result in s.ranked:
        if result.estimate is None or result.estimate.limit is None or (s.first and s.first.winner == result.contender):
            continue
        worse = (result.estimate.limit == "above") == (s.quantity.better == "lower")
        key = "off.open"
        if worse and result.rank == (last, last):
            key = "off.last"
        elif not worse and result.rank == (1, 1):
            key = "off.first"
        elif _beyond_all(s, result):
            key = "off.last.this-run"
        if key == "off.open" and result.running:
            key = "off.running"
        place = s.led(say("place.higher" if result.estimate.limit == "above" else "place.lower"))
        said.append(say(key, name=name(s.campaign, result.contender), bound=short(result), place=place))
    return said


def _beyond_all(s: Standing, bound: Result) -> bool:
    """Whether a bound lay beyond every other reading of these runs by more than the instrument can hide."""
    others = [r.contender for r in s.ranked if r is not bound]
    return bool(others) and all((p := s.pair(bound.contender, other)) is not None and p.differed for other in others)


def unranked(s: Standing) -> list[str]:
    """Who isn't ranked and why; who has no result and why."""
    blocked = [r for r in s.results if r.blocked and not r.missing]
    return [*_by_reason(s, "unranked", blocked, lambda r: why_blocked(r.blocked)), *missing(s)]


def missing(s: Standing) -> list[str]:
    """Who has no result and why; nothing where everyone has one."""
    without = [r for r in s.results if r.missing and r.missing != NEVER_COMPARED]
    return _by_reason(s, "missing", without, lambda r: why_missing(r.missing))


def untouched(s: Standing) -> bool:
    """Whether no contender has been tested yet."""
    return all(r.missing == "not yet tested" for r in s.results)


def _by_reason(s: Standing, key: str, results: list[Result], why: Callable[[Result], str]) -> list[str]:
    reasons = dict.fromkeys(why(r) for r in results)
    said = []
    for reason in reasons:
        who = tuple(r.contender for r in results if why(r) == reason)
        said.append(say_of(len(who), key, names=names(s.campaign, who), why=reason.rstrip(".")))
    return said

"""Shared first places in words: the gap, what it was held against, whom they beat, what would settle it."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Comparison
from reportgen.prose import amounts
from reportgen.prose.standing import Standing, names
from reportgen.prose.within import within
from reportgen.prose.yardstick import several_specimens, yardstick
from reportgen.wording.count import in_words, roughly
from reportgen.wording.interval import value_only
from reportgen.wording.language import say, say_of
from reportgen.wording.percent import apart

_TOO_MANY_PASSES = 1000  # beyond these nobody would run them, so the number says nothing


def tied(s: Standing) -> tuple[str, ...]:
    """Those who may be first."""
    return s.first.may_be_first if s.first else ()


def widest(s: Standing) -> Comparison | None:
    """The pair with the largest gap among those who may be first; None where a gap isn't known."""
    first = tied(s)
    pairs = [s.pair(a, b) for n, a in enumerate(first) for b in first[n + 1 :]]
    known = [p for p in pairs if p is not None and p.difference is not None]
    return max(known, key=lambda p: abs(p.difference or 0.0)) if known and len(known) == len(pairs) else None


def tie(s: Standing) -> list[str]:
    """Who shares first place, and why."""
    who = names(s.campaign, tied(s))
    if len(tied(s)) == 1:
        return [say("first.tie.alone", names=who)]
    pair = widest(s)
    if pair is None:
        return [say("first.tie.plain", names=who)]
    first = tied(s)
    pairs = [s.pair(a, b) for n, a in enumerate(first) for b in first[n + 1 :]]
    if s.quantity.matters and all(p is not None and p.decision == "no difference that matters" for p in pairs):
        return [say("first.tie.nothing-matters", names=who, matters=amounts.typed_apart(s.quantity.matters))]
    gap = amounts.gap(pair, s.of_pair(pair))
    if not gap.half or pair.resolved:
        return [say("first.tie.plain", names=who)]
    if gap.by_steps:
        key = "first.tie.no-gap-by-steps" if gap.none else "first.tie.by-steps"
        return [say(key, names=who, gap=gap.size, half=gap.half)]
    key = "first.tie.no-gap" if gap.none else "first.tie"
    return [say(key, names=who, gap=gap.size, yardstick=yardstick(s, tied(s)), half=gap.half)]


def tied_within(s: Standing) -> list[str]:
    """Where the gap that `tie` speaks of isn't that of the means shown: which it is."""
    pair = widest(s)
    return [within(s, pair)] if pair is not None and len(tied(s)) > 1 and not pair.resolved else []


def beaten(s: Standing) -> list[str]:
    """Whom those who share first place beat: all of the others, or at least one of them each."""
    first = tied(s)
    others = tuple(r.contender for r in s.ranked if r.contender not in first)
    if not others or len(first) < 2:
        return []
    if not all((p := s.pair(a, b)) is not None and p.favours == a for a in first for b in others):
        return [say_of(len(others), "first.beat.some", others=names(s.campaign, others))]
    few = len(others) <= 2 or len(others) != len(s.ranked) - len(first)
    whom = names(s.campaign, others) if few else say("first.others", count=in_words(len(others)))
    both = "first.beat.both" if len(first) == 2 else "first.beat.all"
    return [say(both, count=in_words(len(first)), others=whom)]


def settle(s: Standing) -> list[str]:
    """How many passes would settle a shared first place, or that a finer instrument would do more."""
    pair = widest(s)
    if pair is None or pair.settle is None:
        return []
    if pair.settle.finer:
        return [say("first.settle.finer")]
    if pair.settle.passes is None or pair.settle.passes > _TOO_MANY_PASSES:
        return []
    gap = amounts.gap(pair, s.of_pair(pair))
    size = gap.size if pair.settle.at == "seen" else value_only(abs(pair.settle.difference), None, apart(pair.unit))
    if several_specimens(s):
        return [say("first.settle.specimens", count=roughly(pair.settle.passes), gap=size)]
    return [say("first.settle", passes=roughly(pair.settle.passes), gap=size)]

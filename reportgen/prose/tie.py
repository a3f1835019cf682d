"""Shared first places in words: the gap, what it was held against, whom they beat, what would settle it."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Comparison
from reportgen.prose import amounts
from reportgen.prose.known_of_ties import none_that_matters, ruled_out
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
    """Who shares first place, or that nobody is told apart from anybody; and why."""
    first, who = tied(s), names(s.campaign, tied(s))
    if len(first) == 1:
        return [say("first.tie.alone", names=s.led(who))]
    everyone = len(first) == len(s.ranked)
    key = "tie.all" if everyone else "first.tie"
    pair = widest(s)
    if pair is None:
        return [say(f"{key}.plain", names=who)]
    if none_that_matters(s, first) and s.quantity.matters is not None:
        return [say(f"{key}.nothing-matters", names=who, matters=amounts.typed_apart(s.quantity.matters))]
    gap = amounts.gap(pair, s.of_pair(pair))
    if not gap.half or pair.resolved:
        return [say(f"{key}.plain", names=who)]
    if gap.by_steps:
        key = "first.tie.no-gap-by-steps" if gap.none else "first.tie.by-steps"
        return [say(key, names=who, gap=gap.size, half=gap.half)]
    if gap.none:
        return [say(f"{key}.no-gap", names=who, yardstick=yardstick(s, first), half=gap.half)]
    key = "tie.all.two" if everyone and len(first) == 2 else key
    return [say(key, names=who, gap=gap.size, yardstick=yardstick(s, first), half=gap.half)]


def learned(s: Standing) -> list[str]:
    """Where nobody is told apart from anybody: what that rules out."""
    pair = widest(s)
    if len(tied(s)) != len(s.ranked) or pair is None or amounts.gap(pair).none:
        return []
    most = ruled_out(s)
    key = "tie.ruled-out.two" if len(s.ranked) == 2 else "tie.ruled-out"
    return [say(key, most=most)] if most else []


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
        return [_beaten_by_some(s, others)]
    few = len(others) <= 2 or len(others) != len(s.ranked) - len(first)
    whom = names(s.campaign, others) if few else say("first.others", count=in_words(len(others)))
    both = "first.beat.both" if len(first) == 2 else "first.beat.all"
    return [say(both, count=in_words(len(first)), others=s.led(whom))]


def _beaten_by_some(s: Standing, others: tuple[str, ...]) -> str:
    """Who of those that may be first beats the others; where that differs from one of these to the next, only that each
    is beaten."""
    whom = s.led(names(s.campaign, others))
    ahead = {tuple(a for a in tied(s) if (p := s.pair(a, b)) is not None and p.favours == a) for b in others}
    (by,) = ahead if len(ahead) == 1 else ((),)
    if not by:
        return say_of(len(others), "first.beat.some", others=whom)
    return say_of(len(by), "first.beat.named", ahead=names(s.campaign, by), others=whom)


def settle(s: Standing) -> list[str]:
    """How many passes would settle a shared first place, or that a finer instrument would do more."""
    pair = widest(s)
    if pair is None or pair.settle is None:
        return []
    if pair.settle.finer:
        return [say("first.settle.finer")]
    if pair.settle.specimens is not None and pair.settle.specimens <= _TOO_MANY_PASSES:
        return [say("first.settle.apart", count=roughly(pair.settle.specimens))]
    if pair.settle.calibration:
        return [say("first.settle.calibration")]
    if pair.settle.passes is None or pair.settle.passes > _TOO_MANY_PASSES:
        return []
    gap = amounts.gap(pair, s.of_pair(pair))
    size = gap.size if pair.settle.at == "seen" else value_only(abs(pair.settle.difference), None, apart(pair.unit))
    if several_specimens(s):
        return [say("first.settle.specimens", count=roughly(pair.settle.passes), gap=size)]
    return [say("first.settle", passes=roughly(pair.settle.passes), gap=size)]

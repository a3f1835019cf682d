"""What exact tests decided about yes and no, counts and grades, in sentences."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Comparison, Result
from reportgen.prose import amounts
from reportgen.prose.counting import yes_no
from reportgen.prose.standing import Standing, name, names
from reportgen.prose.tie import beaten
from reportgen.wording.count import in_words, roughly, whole
from reportgen.wording.interval import percent
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import commas

CODES = ("chance-excluded", "chance-open", "never-enough")
_TOO_MANY = 1000  # beyond these nobody would try them, so the number says nothing
_MOST_DECIMALS = 4


def is_by_chance(s: Standing) -> bool:
    """Whether exact tests decided first place."""
    return s.first is not None and s.first.reason.code in CODES


def first_by_chance(s: Standing) -> list[str]:
    """Who comes first by the exact test, how likely chance alone would be, and what would settle it."""
    assert s.first is not None
    if s.first.winner:
        return _winner(s, s.first.winner)
    if s.first.reason.code == "never-enough":
        enough = _each(s, in_words(round(s.first.reason.numbers["enough"])))
        return [say("chance.never", values=_values(s, s.ranked), now=_now(s, s.ranked), enough=enough), settle(s)]
    front = tuple(r for r in s.ranked if r.contender in s.first.may_be_first)
    who = names(s.campaign, [r.contender for r in front])
    if len(front) == 1:
        return [say("chance.tie.alone", names=who), *beaten(s), settle(s)]
    if len(front) < len(s.ranked):
        return [say("chance.tie", names=who, values=_values(s, front)), *beaten(s), settle(s)]
    if not any(c.differed for c in s.comparisons):
        return [_alike(s, who)]
    nearest = min(_open(s), key=lambda c: c.reason.numbers["p"])
    p, allowed = _chances(nearest)
    return [say("chance.tie.all", names=who, values=_values(s, front), p=p, allowed=allowed), settle(s)]


def by_chance_meaning(s: Standing, pair: Comparison, first: str) -> str:
    """What a decision of an exact test means, from `first`'s side and without a full stop."""
    second = pair.second if first == pair.first else pair.first
    one, other = s.result(first), s.result(second)
    gaps = {
        "first": name(s.campaign, first),
        "second": name(s.campaign, second),
        "one": _value(one),
        "other": _value(other),
    }
    if pair.reason.code == "never-enough":
        return say("chance.pair.never", now=_now(s, (one, other)), **gaps)
    p, allowed = _chances(pair)
    if pair.favours:
        key = "chance.pair.better.count" if one.kind == "count" else "chance.pair.better"
        return say(key, ahead=name(s.campaign, pair.favours), p=p, allowed=allowed, **gaps)
    if not pair.differed:
        return say("chance.pair.alike", **gaps)
    return say("chance.pair.open", p=p, allowed=allowed, **gaps)


def settle_by_chance(s: Standing, pair: Comparison) -> str:
    """How many of each would settle a pair, without a full stop; "" where that is settled or not known."""
    if pair.resolved:
        return ""
    if pair.settle is not None and pair.settle.passes is not None and pair.settle.passes <= _TOO_MANY:
        return say("chance.pair.settle", enough=_each(s, roughly(pair.settle.passes)))
    if pair.reason.code == "never-enough":
        return say("chance.pair.settle.least", enough=_each(s, in_words(round(pair.reason.numbers["enough"]))))
    return ""


def settle(s: Standing) -> str:
    """How many of each would settle the widest gap among those who may be first; "" where nobody would run so many."""
    front = s.first.may_be_first if s.first else ()
    among = [c for c in s.comparisons if {c.first, c.second} <= set(front) and c.settle is not None]
    found = [c.settle.passes for c in among if c.settle and c.settle.passes is not None]
    return say("chance.settle", enough=_each(s, roughly(min(found)))) if found and min(found) <= _TOO_MANY else ""


def _winner(s: Standing, best: str) -> list[str]:
    place = s.led(say("chance.place"))
    opening = say("chance.winner", winner=name(s.campaign, best), place=place, value=_value(s.result(best)))
    pairs = [(c, r) for r in s.ranked if (c := s.pair(best, r.contender)) is not None]
    pair, nearest = max(pairs, key=lambda found: found[0].reason.numbers["p"])
    p, allowed = _chances(pair)
    lead = say(
        "chance.winner.lead.count" if nearest.kind == "count" else "chance.winner.lead",
        next=s.led_to(name(s.campaign, nearest.contender), best, nearest.contender),
        other=_value(nearest),
        p=p,
        allowed=allowed,
    )
    return [opening, lead]


def _alike(s: Standing, who: str) -> str:
    read = list(s.ranked)
    if read[0].kind == "yes/no" and all(r.yes == r.of for r in read):
        return yes_no(s, read)
    return say("chance.alike", names=who, value=_value(read[0]))


def _open(s: Standing) -> list[Comparison]:
    return [c for c in s.comparisons if c.reason.code in CODES and c.differed]


def _values(s: Standing, results: tuple[Result, ...]) -> str:
    return commas([say("value-of", name=name(s.campaign, r.contender), value=_value(r)) for r in results])


def _now(s: Standing, results: tuple[Result, ...]) -> str:
    passes = {_tries(r) for r in results}
    if len(passes) != 1 or s.quantity.kind == "count":
        return say("chance.now.uneven")
    (n,) = passes
    return say_of(n, f"chance.now.{_kind(s)}", count=in_words(n))


def _each(s: Standing, count: str) -> str:
    return say(f"chance.enough.{_kind(s)}", count=count)


def _kind(s: Standing) -> str:
    return s.quantity.kind.replace("/", "-") if s.quantity.kind in ("yes/no", "grade", "count") else "run"


def _value(result: Result) -> str:
    """What was found; of runs that did not all finish, how many did."""
    if result.missing and result.of is not None and result.yes is not None:
        return say("chance.finished", yes=whole(result.yes), of=whole(result.of))
    return amounts.short(result)


def _tries(result: Result) -> int:
    return result.of if result.missing and result.of is not None else result.passes


def _chances(pair: Comparison) -> tuple[str, str]:
    """The chance found and the chance allowed, as percentages that tell which is greater."""
    p, allowed = pair.reason.numbers["p"], pair.reason.numbers["allowed"]
    places = 1 if allowed >= 0.01 else 2
    while places < _MOST_DECIMALS and percent(p, places) == percent(allowed, places) and p > allowed:
        places += 1
    said = percent(allowed, 1 if allowed >= 0.01 else places)
    least = 10.0 ** -(places + 2)
    if p < least:
        return say("chance.under", p=percent(least, places)), said
    return say("chance.up-to", p=percent(p, 0 if p >= 0.1 else places)), said

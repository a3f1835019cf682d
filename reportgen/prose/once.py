"""Single readings in words: what these runs showed, and that a repeat might differ."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Result
from reportgen.prose import amounts
from reportgen.prose.standing import Standing, name, names
from reportgen.prose.values import values
from reportgen.prose.yardstick import how_often
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list


def in_front(s: Standing) -> tuple[Result, ...]:
    """Whoever read best in these runs: more than one where their readings are equal.

    A bound on the good side counts where the limit itself is as good as every reading; other bounds are left out.
    """
    plain = [r for r in s.ranked if r.estimate and r.estimate.value is not None and r.estimate.limit is None]
    if not plain or s.quantity.better == "neither":
        return ()
    value = {r.contender: r.estimate.value or 0.0 for r in plain if r.estimate}
    best = min(value.values()) if s.quantity.better == "lower" else max(value.values())
    higher = s.quantity.better == "higher"
    good = "above" if higher else "below"
    limits = {r.contender: r.estimate.value for r in s.ranked if r.estimate and r.estimate.limit == good}
    beyond = {c for c, x in limits.items() if x is not None and (x >= best if higher else x <= best)}
    return tuple(r for r in s.ranked if r.contender in beyond) or tuple(r for r in plain if value[r.contender] == best)


def open_in_front(s: Standing, leader: str) -> tuple[str, ...]:
    """Those known from one side only who may have read better than `leader`, or as well."""
    good = "above" if s.quantity.better == "higher" else "below"
    bounds = [r.contender for r in s.ranked if r.estimate and r.estimate.limit == good and r.contender != leader]
    return tuple(c for c in bounds if (p := s.pair(leader, c)) and not (p.differed and p.favours in (None, leader)))


def not_told_apart(s: Standing, leader: str) -> tuple[str, ...]:
    """Those the instrument can't tell from whoever read best in this run, the leader among them."""
    alike = [r.contender for r in s.ranked if (p := s.pair(leader, r.contender)) and p.differed is False]
    return tuple(r.contender for r in s.ranked if r.contender == leader or r.contender in alike)


def once(s: Standing) -> list[str]:
    """What single readings say: who read best in this run, and that a repeat might differ."""
    front = in_front(s)
    if not front:
        return [how_often(s), say("first.once.repeat")]
    opening = how_often(s) if len(s.ranked) == 2 else say("first.once.values", ran=how_often(s), values=values(s))
    leader = front[0].contender
    pairs = [(p, r) for r in s.ranked if (p := s.pair(leader, r.contender)) and p.difference is not None]
    if not pairs:
        return [opening, say("first.once.repeat")]
    pair, nearest = min(pairs, key=lambda found: abs(found[0].difference or 0.0))
    place = s.led(say(f"place.{s.quantity.better}"))
    who = name(s.campaign, leader)
    if pair.differed is None:
        if len(front) > 1 or open_in_front(s, leader):
            return [opening, say("first.once.repeat")]
        return [opening, say("first.once.unknown", leader=who, place=place)]
    if pair.differed:
        than, beside = say(f"than.{s.quantity.better}"), say(f"beside.{s.quantity.better}")
        only = len(s.ranked) == 2 or open_in_front(s, leader)
        key = "first.once.leads" if only else "first.once.leads-all"
        runner_up = s.led_to(name(s.campaign, nearest.contender), leader, nearest.contender)
        gap = amounts.gap_alone(pair, s.of_pair(pair))
        return [opening, say(key, leader=who, place=place, gap=gap, than=than, beside=beside, next=runner_up)]
    alike = not_told_apart(s, leader)
    who, others = names(s.campaign, alike), _all_behind(s, alike)
    said = say("first.once.alike", names=who)
    if others:
        gaps = {"place": place, "beside": say(f"beside.{s.quantity.better}"), "others": names(s.campaign, others)}
        said = say("first.once.alike.ahead", names=who, **gaps)
    return [opening, said, *_gaps(s, leader), say("first.once.repeat")]


def _all_behind(s: Standing, alike: tuple[str, ...]) -> tuple[str, ...]:
    """The others, where each of them read worse in this run than every one of those not told apart; () where not."""
    others = tuple(r for r in s.ranked if r.contender not in alike)
    if any(r.estimate is None or r.estimate.limit is not None for r in others):
        return ()  # a bound may hide a value on either side
    behind = all(_read_worse(s, r.contender, a) for r in others for a in alike)
    return tuple(r.contender for r in others) if behind else ()


def _read_worse(s: Standing, one: str, than: str) -> bool:
    """Whether `one` read worse than another in this run, by more than the instrument leaves open."""
    pair = s.pair(one, than)
    if pair is None or not pair.differed or pair.difference is None:
        return False
    gap = pair.difference if pair.first == one else -pair.difference
    return gap > 0 if s.quantity.better == "lower" else gap < 0


def _gaps(s: Standing, leader: str) -> list[str]:
    pairs = [p for r in s.ranked if (p := s.pair(leader, r.contender)) and amounts.half(p)]
    if not pairs:
        return []
    widest = max(pairs, key=lambda p: amounts.half(p) or 0.0)
    return [say("first.once.gaps", half=amounts.gap(widest, s.of_pair(widest)).half)]


def single_reading(s: Standing) -> str:
    """For a table's foot: which contenders were run once, where a repeat isn't known."""
    lone = [
        name(s.campaign, r.contender)
        for r in s.results
        if r.kind == "measured" and r.passes == 1 and r.covers == "instrument"
    ]
    return say_of(len(lone), "single.line", name=and_list(lone)) if lone else ""

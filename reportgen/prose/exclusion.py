"""Passes left out: with and without, why, when that was decided, and whether the order changes."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Caveat, Evaluation, PairWithout, Result
from reportgen.evaluation.says import says_of
from reportgen.prose import amounts
from reportgen.prose.standing import Standing, name, standing
from reportgen.wording.count import in_words
from reportgen.wording.interval import rank_range, value_only
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import and_list
from reportgen.wording.reason import decided
from reportgen.wording.sentence import paragraph

_FEW = 4  # comparisons that are named one by one


def exclusion_line(campaign: Campaign, evaluation: Evaluation, caveat: Caveat, quantity: str, part: str = "") -> str:
    """What an exclusion left out of one quantity, its value with and without, and what that does to the order.

    One paragraph a contender concerned; empty where the exclusion touches nothing of this quantity.
    """
    s = standing(campaign, evaluation, quantity, part)
    touched = [
        r for r in s.results if r.excluded and any(frozenset(p.keys) & caveat.touches for p in r.by_pass if p.excluded)
    ]
    order = s.first.order_changes_without if s.first else None
    most = max((r.passes for r in s.results), default=0)
    said = [_left_out(campaign, caveat, r, r.passes < most) for r in touched]
    if touched and order is not None:
        said.append(_order(s, caveat) if order else say("exclusion.order-same"))
        said.append(_pairs(s, caveat))
    return paragraph(*said)


def _own(s: Standing, caveat: Caveat) -> bool:
    """Whether all that is left out of the quantity is this exclusion's."""
    return all(frozenset(p.keys) & caveat.touches for r in s.results for p in r.by_pass if p.excluded)


def _pairs(s: Standing, caveat: Caveat) -> str:
    """Which comparisons would be decided otherwise with what was left out; "" where none would."""
    turned = s.first.pairs_without if s.first else ()
    if not turned:
        return ""
    many = say("exclusion.pairs.many", count=in_words(len(turned)))
    told = and_list([_turned(s, p) for p in turned]) if len(turned) <= _FEW else many
    if not _own(s, caveat):
        return say("exclusion.pairs.all", pairs=told)
    return say_of(sum(1 for r in s.results for p in r.by_pass if p.excluded), "exclusion.pairs", pairs=told)


def _turned(s: Standing, pair: PairWithout) -> str:
    one, other = name(s.campaign, pair.first), name(s.campaign, pair.second)
    if pair.decision == "no difference that matters":
        return say("exclusion.pair.same", first=one, second=other)
    if pair.decision == "better" and pair.favours:
        ahead, behind = (one, other) if pair.favours == pair.first else (other, one)
        return say("exclusion.pair.ahead", name=ahead, other=behind)
    key = "exclusion.pair.close" if pair.decision == "too close to call" else "exclusion.pair.unknown"
    return say(key, first=one, second=other)


def _order(s: Standing, caveat: Caveat) -> str:
    """Whose place would be another with what was left out: this exclusion's passes, or those of all where there are
    several, for the places are worked out with all of them.
    """
    left_out = [p for r in s.results for p in r.by_pass if p.excluded]
    own = _own(s, caveat)
    ranks = s.first.ranks_without if s.first else {}
    moves = [
        say(
            "exclusion.move",
            name=name(s.campaign, r.contender),
            now=rank_range(r.rank),
            then=rank_range(ranks[r.contender]),
        )
        if r.rank
        else say("exclusion.move.new", name=name(s.campaign, r.contender), then=rank_range(ranks[r.contender]))
        for r in s.results
        if r.contender in ranks
    ]
    if not moves:
        return say("exclusion.order-changes")
    if not own:
        return say("exclusion.moves.all", moves=and_list(moves))
    return say_of(len(left_out), "exclusion.moves", moves=and_list(moves))


def _rest(result: Result) -> str:
    """What else there is of a contender without a result: nothing, or passes that give none."""
    return "exclusion.no-value" if any(p.keys and not p.excluded for p in result.by_pass) else "exclusion.alone"


def _left_out(campaign: Campaign, caveat: Caveat, result: Result, fewer: bool) -> str:
    n = sum(1 for p in result.by_pass if p.excluded and frozenset(p.keys) & caveat.touches)
    left = say_of(n, "exclusion.pass", count=in_words(n), name=name(campaign, result.contender))
    when = decided(caveat.decided or "not noted")
    line = say(
        "exclusion.because", left_out=left, because=(caveat.because or says_of(caveat)).rstrip("."), decided=when
    )
    if fewer and not result.missing:
        line = say("exclusion.not-repeated", left_out=line)
    if result.missing or result.estimate is None:
        return say(_rest(result), left_out=line) if result.missing else line
    if result.without is None:
        return line
    put_back = value_only(
        result.without,
        result.u,
        result.estimate.unit,
        result.without_limit,
        low=result.low,
        high=result.high,
        decimals=amounts.decimals(result),
    )
    key = "exclusion.with" if n == 1 else "exclusion.with-them"
    return say(key, left_out=line, value=amounts.short(result), put_back=put_back)

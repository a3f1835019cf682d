"""An order that was only seen, in sentences: the chain where there is one, else who stood how to whom."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from reportgen.evaluation.evaluated import Comparison
from reportgen.evaluation.results import NEVER_COMPARED
from reportgen.judgement.orders.partial_order import Between, circles, turned
from reportgen.prose.standing import Standing, name, names
from reportgen.wording.count import in_words
from reportgen.wording.language import say, say_of
from reportgen.wording.listing import commas
from reportgen.wording.order import Said, stood, stood_to_all
from reportgen.wording.sentence import capital, paragraph

NAMED_AT_MOST = 2  # pairs nobody compared; beyond these a count reads better


def ordering(s: Standing) -> str:
    """What was seen, what follows, who stayed uncompared, and that looks are no measure; sentences."""
    chain, said = chain_of(s), _stood(s)
    first = say("order.chain", title=capital(s.quantity.title), chain=chain) if chain else ""
    rest = say("order.several").join(said)
    if chain and rest:
        first = say("order.several").join((first, rest))
    elif rest:
        first = say("order.said", title=capital(s.quantity.title), said=rest)
    looks = {p.pass_ for r in s.results for p in r.by_pass if p.word and not p.excluded}
    return paragraph(
        first,
        *_rounds(s),
        _apart(s),
        _never(s),
        say_of(len(looks), "order.looks", count=in_words(len(looks))) if looks else "",
    )


def found(s: Standing) -> str:
    """The same in a few words, without a full stop."""
    chain = chain_of(s)
    return say("finding.order", chain=chain) if chain else say("finding.order.said")


def chain_of(s: Standing) -> str:
    """ "Corvane, then Ostler (much more), then Tamsin", where all who are more or less than another form one chain."""
    strict = [p for p in _pairs(s) if p.told in ("less", "more")]
    in_it = [r.contender for r in s.results if any(r.contender in (p.first, p.second) for p in strict)]
    if not in_it or len(strict) != len(in_it) * (len(in_it) - 1) // 2 or _circles(s):
        return ""
    below = {c: sum((p.second if p.told == "less" else p.first) == c for p in strict) for c in in_it}
    ordered = sorted(in_it, key=lambda c: below[c])
    steps = [name(s.campaign, ordered[0])]
    for lower, upper in pairwise(ordered):
        pair = next(p for p in strict if {p.first, p.second} == {lower, upper})
        who = name(s.campaign, upper)
        steps.append(say(f"order.chain.{'-'.join(pair.degree.split())}", name=who) if pair.degree else who)
    return say("order.chain.then").join(steps)


def pair_word(pair: Between) -> str:
    """A pair in a word or two, from its first's side."""
    return say(f"pair.order.{'-'.join(pair.told.split())}")


def pair_means(s: Standing, comparison: Comparison, first: str) -> str:
    """What was seen of a pair, from `first`'s side, without a full stop."""
    assert comparison.seen is not None
    p = comparison.seen if comparison.seen.first == first else turned(comparison.seen)
    who = {"first": name(s.campaign, p.first), "second": name(s.campaign, p.second)}
    gaps = {**who, "what": capital(s.quantity.title)}
    if p.told == "never":
        return say("pair.order.means.never")
    if p.told == "both ways":
        return say("pair.order.means.both-ways", **gaps)
    how = stood(p.told, p.degree, False, [gaps["second"]])
    if p.follows:
        return say("pair.order.means.follows", stood=how, through=names(s.campaign, p.through), **gaps)
    key = "pair.order.means.alike" if p.told == "alike" else "pair.order.means"
    return say(key, stood=how, **gaps)


def _pairs(s: Standing) -> list[Between]:
    return [c.seen for c in s.comparisons if c.seen is not None]


def _stood(s: Standing) -> list[str]:
    """Who stood how to whom, each pair once, less and more too where they form no chain; not what only follows."""
    kinds = ("alike", "both ways") if chain_of(s) else ("less", "alike", "both ways")
    said: dict[str, list[Said]] = {}
    for p in _pairs(s):
        p = turned(p) if p.told == "more" else p
        if p.told in kinds and not p.follows:
            said.setdefault(p.first, []).append((p.told, p.degree, False, name(s.campaign, p.second)))
    return [say("order.of", name=name(s.campaign, who), stood=stood_to_all(of, True)) for who, of in said.items()]


def _circles(s: Standing) -> list[tuple[str, ...]]:
    """Groups that several looks together lead round, each in the campaign's order."""
    return list(circles([r.contender for r in s.results], _pairs(s)))


def _rounds(s: Standing) -> Sequence[str]:
    return [say("order.round", names=names(s.campaign, each)) for each in _circles(s)]


def _never(s: Standing) -> str:
    """Who was compared with nobody."""
    who = [r.contender for r in s.results if r.missing == NEVER_COMPARED]
    return say_of(len(who), "order.never-compared", names=names(s.campaign, who)) if who else ""


def _apart(s: Standing) -> str:
    """Pairs among those compared that stayed uncompared."""
    compared = {r.contender for r in s.results if r.stands}
    pairs = [p for p in _pairs(s) if p.told == "never" and {p.first, p.second} <= compared]
    if not pairs:
        return ""
    named = [say("order.pair", first=name(s.campaign, p.first), second=name(s.campaign, p.second)) for p in pairs]
    few = len(pairs) <= NAMED_AT_MOST
    return say_of(1 if few else len(pairs), "order.apart", pairs=commas(named), count=in_words(len(pairs)))

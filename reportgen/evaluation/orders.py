"""An order that was only seen: what the readings say, look by look, as results and comparisons without a rank."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from reportgen.campaign.declared import Campaign, Quantity, Test
from reportgen.campaign.order_words import Saying, one_cell, sayings
from reportgen.evaluation.evaluated import Caveat, Comparison, Keys, Result, Stands, bears_on
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.results import NEVER_COMPARED, missing_result, order_result
from reportgen.evaluation.working import PassKey, Working
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.measured import Reason
from reportgen.judgement.orders.looks import TURNED, Look
from reportgen.judgement.orders.partial_order import Between, Ordered, order_of


@dataclass(frozen=True)
class Said:
    """One saying of one reading; `excluded` is the exclusion's id, "" where it counts."""

    reading: Reading
    saying: Saying
    excluded: str

    @property
    def look(self) -> Look:
        return Look(
            self.reading.key.contender, self.saying.other, self.saying.way, self.saying.degree, self.reading.key.pass_
        )


@dataclass(frozen=True)
class Seen:
    """One quantity of kind order, of one part: what was said of each contender, and what that makes together."""

    part: str
    passes: Mapping[str, tuple[Working, ...]]
    order: Ordered


def orders_seen(
    campaign: Campaign,
    test: Test,
    quantity: Quantity,
    readings: Mapping[ReadingKey, Reading],
    exclusions: Sequence[Caveat],
    feeds: Feeds,
) -> tuple[Seen, ...]:
    """What was seen, part by part: parts of a run are looks at different things and are never joined."""
    mine = [r for r in readings.values() if r.key.test == test.id and r.key.name in quantity.reads]
    mine.sort(key=lambda r: (r.at.file, r.order))
    parts = tuple(dict.fromkeys(r.key.part for r in mine)) or ("",)
    return tuple(
        _of_part(campaign, quantity, part, [r for r in mine if r.key.part == part], exclusions, feeds) for part in parts
    )


def order_results(
    campaign: Campaign, test: Test, quantity: Quantity, seen: Seen, blocked: Mapping[str, str]
) -> tuple[Result, ...]:
    """A result a contender: how it stood to each other one. Nobody has a rank."""
    title = {c.id: c.title for c in campaign.contenders}
    anything = any(w.word for ws in seen.passes.values() for w in ws)
    results = []
    for contender, passes in seen.passes.items():
        rests_on: Keys = frozenset(k for w in passes for k in w.keys)
        stands = _stands(seen.order, contender, title)
        if not stands:
            why = "" if passes or not anything or contender in test.not_yet_tested else NEVER_COMPARED
            results.append(missing_result(test, quantity, contender, seen.part, passes, rests_on, why))
            continue
        level = seen.order.levels.get(contender)
        results.append(
            order_result(test, quantity, contender, seen.part, passes, blocked[contender], stands, level, rests_on)
        )
    return tuple(results)


def order_comparisons(
    campaign: Campaign, quantity: Quantity, seen: Seen, blocked: Mapping[str, str]
) -> tuple[Comparison, ...]:
    """Every pair in the campaign's order: whether a repeat would agree is never known of looks."""
    rests = {c: frozenset(k for w in ws for k in w.keys) for c, ws in seen.passes.items()}
    return tuple(
        Comparison(
            test=quantity.test, quantity=quantity.id, part=seen.part, first=pair.first, second=pair.second,
            difference=None, u=None, low=None, high=None, unit="", decision="not enough to say", resolved=False,
            differed=None if away else _differed(pair), differed_low=None, differed_high=None, favours=None,
            beyond=None, reason=Reason("blocked" if away else _code(pair)), settle=None,
            rests_on=rests[pair.first] | rests[pair.second], seen=pair,
        )
        for pair in seen.order.pairs
        for away in (bool(blocked[pair.first] or blocked[pair.second]),)
    )  # fmt: skip


def _of_part(
    campaign: Campaign,
    quantity: Quantity,
    part: str,
    readings: Sequence[Reading],
    exclusions: Sequence[Caveat],
    feeds: Feeds,
) -> Seen:
    fed_by = feeds.upstream(quantity.id)

    def excluded(reading: Reading) -> str:
        return next((e.id for e in exclusions if bears_on(e, fed_by, frozenset({reading.key}))), "")

    said = [Said(r, saying, excluded(r)) for r in readings if r.word for saying in sayings(r.word)]
    names = tuple(c.id for c in campaign.contenders)
    order = order_of(names, [s.look for s in said if not s.excluded])
    return Seen(part, {c: _workings(c, readings, said) for c in names}, order)


def _workings(contender: str, readings: Sequence[Reading], said: Sequence[Said]) -> tuple[Working, ...]:
    """One working a look in which it was compared, whoever's row said so, seen from this contender's side."""
    by_look: dict[str, list[Said]] = {}
    for s in said:
        if contender in (s.reading.key.contender, s.saying.other):
            by_look.setdefault(s.reading.key.pass_, []).append(s)
    found = {look: _working(contender, each) for look, each in by_look.items()}
    for r in readings:
        if r.key.contender == contender and not r.word and r.key.pass_ not in found:
            key = PassKey(r.key.specimen, r.key.pass_, r.key.part)
            found[r.key.pass_] = Working(key, None, (r.key,), absent_because=r.absent_because)
    return tuple(found[look] for look in dict.fromkeys(r.key.pass_ for r in readings) if look in found)


def _working(contender: str, said: Sequence[Said]) -> Working:
    """Where some of it is left out, the rest of the look still counts."""
    look = said[0].reading.key
    key = PassKey(next((s for x in said if (s := _specimen(contender, x)) != "1"), "1"), look.pass_, look.part)
    kept = [s for s in said if not s.excluded] or said
    own = [s.saying if s.reading.key.contender == contender else _turned(s) for s in kept]
    keys = tuple(dict.fromkeys(s.reading.key for s in kept))
    return Working(key, None, keys, kept[0].excluded, word=one_cell(dict.fromkeys(own)))


def _specimen(contender: str, said: Said) -> str:
    """A row names the specimen of its own contender; which one of the other was used it doesn't say."""
    return said.reading.key.specimen if said.reading.key.contender == contender else "1"


def _turned(said: Said) -> Saying:
    return Saying(TURNED[said.saying.way], said.saying.degree, said.reading.key.contender)


def _stands(order: Ordered, contender: str, title: Mapping[str, str]) -> tuple[Stands, ...]:
    pairs = [order.of(contender, other) for other in title if other != contender]
    return tuple(Stands(p.second, title[p.second], p.told, p.degree, p.follows) for p in pairs if p.told != "never")


def _differed(pair: Between) -> bool | None:
    return {"less": True, "more": True, "alike": False}.get(pair.told)


def _code(pair: Between) -> str:
    if pair.told in ("never", "both ways"):
        return "order-never" if pair.told == "never" else "order-both-ways"
    return "order-follows" if pair.follows else "order-seen"


def all_said(readings: Iterable[Reading]) -> tuple[Said, ...]:
    """Every saying among readings of kind order, none left out."""
    return tuple(Said(r, saying, "") for r in readings if r.word for saying in sayings(r.word))

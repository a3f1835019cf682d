"""Declared caveats, incidents and exclusions made into what touches readings.

A caveat touches readings; what is computed rests on readings; `evaluated.bears_on` says where the two meet.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.addresses import apart, as_id
from reportgen.campaign.declared import Campaign, Declared, Incident, Narrowing, Test
from reportgen.evaluation.evaluated import Caveat, Keys
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.met.table import met_among
from reportgen.evaluation.met.where import met_where
from reportgen.finding import Place
from reportgen.intake.reading import Happened, Reading, ReadingKey


def caveats_of(
    declared: Declared,
    readings: Mapping[ReadingKey, Reading],
    feeds: Feeds,
    log: Sequence[Happened] = (),
) -> tuple[Caveat, ...]:
    """Every caveat, incident (those of bench logs too) and exclusion, numbered in the order a reader meets them.

    A reader meets them test by test; those of one test as they were declared, those that touch nothing last.
    """
    campaign = declared.campaign
    order = {t.id: n for n, t in enumerate(campaign.tests)}
    counts = {q.id: q for t in campaign.tests for q in t.quantities if q.count_of}
    counted = {k: r.incident for k, r in readings.items() if r.incident}

    def touched(about: Narrowing, test: Test | None) -> Keys:
        of_counts = {counts[q].test for q in about.quantities if q in counts}
        read = (k for k in readings if k not in counted and _is_about(k, about, test, feeds))
        told = (k for k in counted if k.test in of_counts and _is_about(k, replace(about, quantities=()), test, feeds))
        return frozenset((*read, *told))

    def incident(i: Incident, test: Test | None, at: Place) -> Caveat:
        """It touches the readings it is about, and the one that counts it, which may be of another test."""
        counting = tuple(q for q, quantity in counts.items() if quantity.count_of == i.event)
        happened = Caveat(
            f"incident-{i.id}", 0, "incident", i.what, i.pushes, i.blocks,
            touched(i.about, test) | {k for k, id in counted.items() if id == i.id},
            (*i.about.quantities, *counting) if i.about.quantities else (), i.about.contender, at,
            photos=i.photos, film=i.film, when=i.when, event=i.event, times=i.times, name=f"incident-{i.name}",
        )  # fmt: skip
        return _narrowed(happened, i.about)

    def told(test: Test | None) -> Iterable[Caveat]:
        holder: Test | Campaign = test or campaign
        for c in holder.caveats:
            of = Caveat(
                f"caveat-{c.id}", 0, "caveat", c.says, c.pushes, c.blocks,
                touched(c.about, test), c.about.quantities, c.about.contender, declared.at(f"caveat/{c.id}"),
                photos=c.photos, film=c.film, name=c.name,
            )  # fmt: skip
            yield _narrowed(of, c.about)
        for i in holder.incidents:
            yield incident(i, test, declared.at(f"incident/{i.id}"))
        for e in holder.exclusions:
            of = Caveat(
                f"exclusion-{e.id}", 0, "exclusion", e.because, "", False,
                touched(e.about, test), e.about.quantities, e.about.contender, declared.at(f"exclusion/{e.id}"),
                decided=e.decided, because=e.because, photos=e.photos, film=e.film, name=f"exclusion-{e.name}",
            )  # fmt: skip
            yield _narrowed(of, e.about)

    def met(caveat: Caveat) -> int:
        return min((order[k.test] for k in caveat.touches), default=len(order))

    found = [c for holder in (None, *campaign.tests) for c in told(holder)]
    found += [incident(h.incident, None, h.at) for h in log]
    found += (met_where(c, readings) for c in met_among(declared, readings))
    names = apart(c.name or as_id(c.id) for c in found)
    found = [replace(c, name=name) for c, name in zip(found, names, strict=True)]
    return tuple(replace(c, number=n) for n, c in enumerate(sorted(found, key=met), 1))


def _narrowed(caveat: Caveat, about: Narrowing) -> Caveat:
    return replace(caveat, specimen=about.specimen, pass_=about.pass_, part=about.part)


def _is_about(key: ReadingKey, about: Narrowing, test: Test | None, feeds: Feeds) -> bool:
    if test is not None and key.test != test.id:
        return False
    for wanted, found in (
        (about.contender, key.contender),
        (as_id(about.specimen), as_id(key.specimen)),
        (about.pass_, key.pass_),
        (about.part, key.part),
    ):
        if wanted and wanted != found:
            return False
    return not about.quantities or any((key.test, key.name) in feeds.readings_of(q) for q in about.quantities)

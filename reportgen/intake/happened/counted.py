"""Incidents that are counted: each becomes a reading of the quantity that counts it, at the line that tells it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from reportgen.campaign.declared import Campaign, Declared, Incident, Quantity, Test
from reportgen.campaign.did_you_mean import did_you_mean
from reportgen.finding import Finding, Place
from reportgen.intake.happened.incidents import counted_events
from reportgen.intake.reading import Happened, Reading, ReadingKey

By = Mapping[ReadingKey, Reading]
Told = tuple[Incident, Test | None, Place]  # an incident, the test it stands in, where


def told_of(declared: Declared, log: Sequence[Happened]) -> tuple[Told, ...]:
    """Every incident: the campaign's, its tests', those of the log."""
    campaign = declared.campaign
    found: list[Told] = []
    for test in (None, *campaign.tests):
        holder: Campaign | Test = test or campaign
        found += [(i, test, declared.at(f"incident/{i.id}")) for i in holder.incidents]
    return (*found, *((h.incident, None, h.at) for h in log))


def tests_counted_in(campaign: Campaign, quantity: Quantity, told: Iterable[Told]) -> tuple[str, ...]:
    """The tests in which a quantity's incidents are counted: those it names, else those the incidents are about."""
    if quantity.count_in:
        return quantity.count_in
    of_quantity = {q.id: t.id for t in campaign.tests for q in t.quantities}
    found: dict[str, None] = {}
    for incident, test, _ in told:
        if incident.event == quantity.count_of:
            found |= dict.fromkeys(of_quantity[q] for q in incident.about.quantities)
            if test is not None:
                found[test.id] = None
    return tuple(found)


def counting(declared: Declared, readings: By, told: Sequence[Told]) -> tuple[By, Mapping[str, tuple[str, ...]]]:
    """The readings of all counts, and for each counting quantity the contenders it counts for, from 0 on.

    A contender counts where a test concerned has seen it (something was read of it), or an incident names it. With no
    test to go by, being read in any test will do.
    """
    campaign = declared.campaign
    counted: dict[ReadingKey, Reading] = {}
    tested: dict[str, tuple[str, ...]] = {}
    for quantity in (q for t in campaign.tests for q in t.quantities if q.count_of):
        where = set(tests_counted_in(campaign, quantity, told)) or {t.id for t in campaign.tests}
        seen = {k.contender for k, r in readings.items() if k.test in where and not r.absent_because}
        mine = [one for one in told if one[0].event == quantity.count_of]
        seen |= {i.about.contender for i, _, _ in mine if i.about.contender}
        tested[quantity.id] = tuple(c.id for c in campaign.contenders if c.id in seen)
        for n, (incident, _, at) in enumerate(mine, 1):
            for contender in (incident.about.contender,) if incident.about.contender else tested[quantity.id]:
                reading = _reading(quantity, incident, contender, at, n)
                counted[reading.key] = reading
    return counted, tested


def misfits(declared: Declared, told: Sequence[Told]) -> Iterable[Finding]:
    """Events nobody counts that are much like one that is, and counts that have neither incidents nor tests."""
    campaign = declared.campaign
    counted = counted_events(campaign)
    for incident, _, at in told:
        if incident.event and incident.event not in counted:
            near = did_you_mean(incident.event, counted)
            if near.startswith("Did"):
                says = f"nothing counts “{incident.event}”"
                yield Finding("error", "unknown-event", at, says, "It would be left out of the count.", near)
    for quantity in (q for t in campaign.tests for q in t.quantities if q.count_of):
        if not tests_counted_in(campaign, quantity, told):
            yield Finding(
                "warning", "counted-nowhere", declared.at(f"quantity/{quantity.id}"),
                f"Nothing says in which tests “{quantity.count_of}” is counted, and no incident names it.",
                "Whether nought means that it never happened can't be told.",
                f"Add `in:` with the tests, or `event: {quantity.count_of}` to the incidents.",
                f"quantity/{quantity.id}",
            )  # fmt: skip


def _reading(quantity: Quantity, incident: Incident, contender: str, at: Place, n: int) -> Reading:
    about = incident.about
    name = f"{quantity.count_of.replace('-', ' ')} {n}"
    key = ReadingKey(quantity.test, contender, about.specimen or "1", about.pass_ or "1", about.part, name)
    return Reading(
        key, incident.what, Decimal(incident.times), "", "", at, order=n, time=incident.when, incident=incident.id,
        photos=incident.photos, film=incident.film,
    )  # fmt: skip

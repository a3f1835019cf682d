"""Rules on conditions: whether all contenders met the same instruments, days, weather, settings and samples."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from datetime import date
from itertools import combinations

from reportgen.audit.case import Case, Seen
from reportgen.audit.outcome import apart_named, grave, leads, rests_on_it
from reportgen.campaign.declared import Test
from reportgen.evaluation.conditions import conditions_of, met_apart
from reportgen.evaluation.reading_days import day_of
from reportgen.finding import Place
from reportgen.prose.standing import name, names
from reportgen.wording.day import days_long
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import capital

FIRMWARE = re.compile(r"\b(firmware|software)\b", re.IGNORECASE)
AS_SHIPPED = re.compile(r"^\s*(as shipped|as delivered|factory|default|out of the box|unchanged)\b", re.IGNORECASE)
Pairs = list[tuple[str, str]]


def sessions_apart(case: Case) -> Iterable[Seen]:
    """Contenders that never ran in one session."""
    for first in case.evaluation.firsts:
        mine = [c for c in case.evaluation.comparisons if (c.quantity, c.part) == (first.quantity, first.part)]
        apart = [c for c in mine if c.reason.code == "sessions-apart"]
        if apart:
            who = names(case.declared.campaign, (apart[0].first, apart[0].second))
            undecided = f"so {len(apart)} of {len(mine)} comparisons can't be decided"
            says = f"{first.quantity}: {who} never ran in one session, {undecided}."
            yield Seen(case.declared.at(f"quantity/{first.quantity}"), says, f"quantity/{first.quantity}")


def conditions_differ(case: Case) -> Iterable[Seen]:
    """Conditions written beside passes that weren't the same for all contenders: who met what can't be told from who
    is better. A warning where a lead lies between two that met it differently."""
    for test in case.declared.campaign.tests:
        passes = conditions_of(test, case.readings.of_test(test.id))
        for condition in test.conditions:
            pairs: Pairs = [] if FIRMWARE.search(condition) else list(met_apart(condition, passes))
            if pairs:
                says = f"{capital(condition)} was not the same in {test.title} for {apart_named(case, pairs)}."
                yield _of_pairs(case, test, says, pairs)


def conditions_missing(case: Case) -> Iterable[Seen]:
    """Conditions that were written down for some contenders and for others not at all."""
    for test in case.declared.campaign.tests:
        passes = conditions_of(test, case.readings.of_test(test.id))
        tested = {k.contender for k in case.readings.readings if k.test == test.id}
        for condition in test.conditions:
            said = {p.contender for p in passes if condition in p.said}
            if said and said < tested:
                lacking = [c.id for c in case.declared.campaign.contenders if c.id in tested - said]
                who = names(case.declared.campaign, lacking)
                says = f"{capital(condition)} was written down in {test.title}, but not for {who}."
                yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}")


def instruments_differ(case: Case) -> Iterable[Seen]:
    """Readings that were taken of one contender with one instrument, of another with another."""
    for test in case.declared.campaign.tests:
        used: dict[str, dict[str, set[str]]] = {}
        for r in case.readings.of_test(test.id):
            if r.instrument and not r.for_all:
                used.setdefault(r.key.name, {}).setdefault(r.key.contender, set()).add(r.instrument)
        for reading, by_contender in used.items():
            if pairs := _disjoint(by_contender):
                with_what = ((name(case.declared.campaign, c), and_list(sorted(i))) for c, i in by_contender.items())
                told = ", ".join(f"{who} with {what}" for who, what in with_what)
                says = f"{capital(reading.replace('_', ' '))} was read with different instruments: {told}."
                yield _of_pairs(case, test, says, pairs)
                break  # its other columns tell the same


def days_apart(case: Case) -> Iterable[Seen]:
    """Contenders of one test that never ran on one day, where days stand beside readings and no sessions do."""
    for test in case.declared.campaign.tests:
        days: dict[str, set[str]] = {}
        readings = [r for r in case.readings.of_test(test.id) if not r.absent_because and not r.incident]
        if any(r.session for r in readings):
            continue  # then sessions are what is compared
        for r in readings:
            if found := day_of(r, None):
                days.setdefault(r.key.contender, set()).add(found[0].isoformat())
        if pairs := _disjoint(days):
            says = f"{test.title}: {apart_named(case, pairs[:1])} never ran on the same day."
            yield _of_pairs(case, test, says, pairs)


def samples_unalike(case: Case) -> Iterable[Seen]:
    """Samples for a laboratory that weren't taken on one day, or weren't diluted alike."""
    for test in case.declared.campaign.tests:
        of = test.laboratory
        if of is None:
            continue
        place = case.declared.at(f"laboratory/{test.id}/taken" if of.taken else f"laboratory/{test.id}")
        days = {c: d for c, d in of.taken.items() if c and d.first}
        if len({d.first for d in days.values()}) > 1:
            early, late = min(days, key=lambda c: days[c].first), max(days, key=lambda c: days[c].last)
            apart = days_long(_days_between(days[early].first, days[late].first))
            who = name(case.declared.campaign, early), name(case.declared.campaign, late)
            says = f"{test.title}: the sample of {who[0]} was {apart} older than that of {who[1]}."
            pairs = [(a, b) for a, b in combinations(days, 2) if days[a].first != days[b].first]
            yield _of_pairs(case, test, says, pairs, place)
        if len(set(of.diluted.values())) > 1:
            told = (f"{name(case.declared.campaign, c)} {said}" for c, said in of.diluted.items() if c)
            says = f"{test.title}: samples were not diluted alike: {', '.join(told)}."
            pairs = [(a, b) for a, b in combinations(of.diluted, 2) if of.diluted[a] != of.diluted[b]]
            yield _of_pairs(case, test, says, pairs, case.declared.at(f"laboratory/{test.id}/diluted"))


def settings_unalike(case: Case) -> Iterable[Seen]:
    """Some contenders as shipped, others set or tuned."""
    campaign = case.declared.campaign
    said = [c for c in campaign.contenders if c.settings and c.settings != "not noted"]
    shipped = [c for c in said if AS_SHIPPED.match(c.settings)]
    tuned = [c for c in said if c not in shipped]
    for contender in tuned if shipped else ():
        others = names(campaign, [c.id for c in shipped])
        says = f"{contender.title} was set otherwise than shipped ({contender.settings}); {others} ran as shipped."
        yield Seen(case.declared.at(f"contender/{contender.id}/settings"), says, "", contender.id)


def said_of_some(case: Case) -> Iterable[Seen]:
    """Settings or firmware told of some contenders and not of others."""
    campaign = case.declared.campaign
    for key in ("settings", "firmware"):
        silent = [c.id for c in campaign.contenders if not getattr(c, key)]
        if silent and len(silent) < len(campaign.contenders):
            says = f"Nothing is said of the {key} of {names(campaign, silent)}; of others it is."
            yield Seen(case.declared.at(f"contender/{silent[0]}"), says, "", silent[0] if len(silent) == 1 else "")


def firmware_changed(case: Case) -> Iterable[Seen]:
    """Contenders whose firmware wasn't the same in all passes of a test."""
    for test in case.declared.campaign.tests:
        for condition in (c for c in test.conditions if FIRMWARE.search(c)):
            had: dict[str, dict[str, None]] = {}
            for p in conditions_of(test, case.readings.of_test(test.id)):
                if condition in p.said:
                    had.setdefault(p.contender, {})[p.said[condition]] = None
            for contender, versions in had.items():
                if len(versions) > 1:
                    who = name(case.declared.campaign, contender)
                    says = f"{who} did not run on one {condition} in {test.title}: {and_list(list(versions))}."
                    yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}", contender)


def _of_pairs(case: Case, test: Test, says: str, pairs: Pairs, place: Place | None = None) -> Seen:
    found = leads(case, test, [frozenset(pair) for pair in pairs])
    says = " ".join(filter(None, (says, rests_on_it(case, found))))
    at = place or case.declared.at(f"test/{test.id}")
    return Seen(at, says, f"test/{test.id}", severity=grave(found))


def _disjoint(by_contender: Mapping[str, set[str]]) -> Pairs:
    return [(a, b) for a, b in combinations(by_contender, 2) if not by_contender[a] & by_contender[b]]


def _days_between(first: str, last: str) -> int:
    return (date.fromisoformat(last) - date.fromisoformat(first)).days

"""Rules on choosing: tests, criteria and weights set once results were known, what counts twice, who judged."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

from reportgen.audit.case import Case, Seen
from reportgen.audit.outcome import leads
from reportgen.campaign.declared import Test, WhenDecided
from reportgen.evaluation.reading_days import day_of
from reportgen.finding import Severity
from reportgen.intake.reading import Reading
from reportgen.prose.standing import name
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import capital, inside


def chosen_after_seeing(case: Case) -> Iterable[Seen]:
    """Tests, and what matters in a quantity, that were decided on once results were known. A note where nothing is
    ranked by them."""
    campaign = case.declared.campaign
    for test in campaign.tests:
        readings = case.readings.of_test(test.id)
        ranked = [f for f in case.evaluation.firsts if f.test == test.id]
        severity: Severity = "warning" if ranked else "note"
        if how := _after(case, test.decided, readings):
            says = f"{test.title} was decided on {how}."
            won = [f"{name(campaign, f.winner)} is alone in first place on it." for f in ranked if f.winner]
            at = case.declared.at(f"test/{test.id}/decided")
            yield Seen(at, " ".join((says, *won[:1])), f"test/{test.id}", severity=severity)
        for quantity in test.quantities:
            if quantity.decided != test.decided and (how := _after(case, quantity.decided, readings)):
                says = f"What matters in {inside(quantity.title)} was decided on {how}."
                place = case.declared.at(f"quantity/{quantity.id}")
                yield Seen(place, says, f"quantity/{quantity.id}", severity=severity)


def weighed_after_seeing(case: Case) -> Iterable[Seen]:
    """Weights, criteria and conditions of the verdict that were decided on once results were known; what would be of
    the lead without a criterion, where that was worked out."""
    plan = case.declared.campaign.verdict
    if plan is None:
        return
    readings = tuple(case.readings.readings.values())
    if how := _after(case, plan.decided, readings):
        yield Seen(case.declared.at("verdict/decided"), f"What counts in the verdict was decided on {how}.")
    for criterion in (c for g in plan.groups for c in g.criteria):
        if how := _after(case, criterion.decided, readings):
            title = inside(case.declared.campaign.quantity(criterion.quantity).title)
            says = f"That {title} counts in the verdict was decided on {how}."
            says = " ".join(filter(None, (says, _without(case, criterion.quantity))))
            at = case.declared.at(f"verdict/criterion/{criterion.quantity}")
            yield Seen(at, says, f"quantity/{criterion.quantity}")
    for must in plan.must:
        if how := _after(case, must.decided, readings):
            title = inside(case.declared.campaign.quantity(must.quantity).title)
            out = [
                name(case.declared.campaign, m.contender)
                for m in (case.evaluation.verdict.conditions if case.evaluation.verdict else ())
                if m.quantity == must.quantity and m.outcome == "contradicted"
            ]
            says = f"The condition on {title} was decided on {how}."
            says = f"{says} It leaves out {and_list(out)}." if out else says
            at = case.declared.at(f"verdict/must/{must.quantity}")
            yield Seen(at, says, f"quantity/{must.quantity}", severity="warning" if out else "note")


def counted_twice(case: Case) -> Iterable[Seen]:
    """Criteria in different groups that come from the same readings, so that one property counts twice."""
    plan = case.declared.campaign.verdict
    criteria = [(g, c.quantity) for g in plan.groups for c in g.criteria] if plan else []
    read = {q: _read_for(case, q) for _, q in criteria}
    for (group, one), (other_group, other) in combinations(criteria, 2):
        shared = read[one] & read[other]
        if group.id != other_group.id and shared:
            title, other_title = (inside(case.declared.campaign.quantity(q).title) for q in (one, other))
            columns = and_list(sorted({column.replace("_", " ") for _, column in shared}))
            says = f"{title} ({group.title}) and {other_title} ({other_group.title}) both come from {columns}."
            at = case.declared.at(f"verdict/criterion/{other}")
            yield Seen(at, capital(says), f"quantity/{other}")


def judged_sighted(case: Case) -> Iterable[Seen]:
    """Grades and orders given by people who could see which contender it was, or of whom nobody says.

    A warning where one is said to be better by them.
    """
    for test in case.declared.campaign.tests:
        by_people = [q for q in test.quantities if q.kind in ("grade", "order")]
        if not by_people or test.judged == "blind" or not _was_read(case, test):
            continue
        could = test.judged == "could see"
        who = f"whoever judged {inside(by_people[0].title)}"
        says = (
            f"{capital(who)} could see which was which."
            if could
            else f"Nothing says whether {who} knew which was which."
        )
        ids = {q.id for q in by_people}
        led = [c for c in leads(case, test) if c.quantity in ids]
        severity: Severity = "warning" if could and led else "note"
        yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}", severity=severity)


def _was_read(case: Case, test: Test) -> bool:
    return any(not r.absent_because for r in case.readings.of_test(test.id))


def _after(case: Case, decided: WhenDecided | None, readings: tuple[Reading, ...]) -> str:
    """How it is known that something was decided after something was read; "" where it isn't."""
    if decided is None:
        return ""
    if decided.when == "after seeing results":
        return "after seeing results"
    day = decided.day
    read = [found[0].isoformat() for r in readings if (found := day_of(r, case.declared.campaign.tested))]
    if day is None or not day.first or not read or day.first <= min(read):
        return ""
    return f"{day.text}, when {min(read)} was the first day of reading"


def _read_for(case: Case, quantity: str) -> frozenset[tuple[str, str]]:
    """(test, column) of what a quantity's results rest on."""
    mine = (r for r in case.evaluation.results if r.quantity == quantity)
    return frozenset((k.test, k.name) for r in mine for k in r.rests_on)


def _without(case: Case, quantity: str) -> str:
    overall = case.evaluation.verdict.overall if case.evaluation.verdict else None
    lead = next((w.lead for w in overall.without if w.quantity == quantity), None) if overall else None
    if overall is None or lead is None:
        return ""
    if lead.leader == overall.lead.leader:
        return "Without it the same contender leads."
    who = name(case.declared.campaign, lead.leader) if lead.leader else "nobody"
    return f"Without it {who} would lead."

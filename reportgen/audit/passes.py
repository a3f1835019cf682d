"""Rules on passes: how many, which were left out and when, what happened in them, what hangs on a single one."""

from __future__ import annotations

import re
from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.audit.outcome import with_it_back
from reportgen.audit.runs import runs_of
from reportgen.campaign.declared import Test
from reportgen.evaluation.evaluated import Caveat, FirstPlace, bears_on
from reportgen.evaluation.hanging import WithoutPass
from reportgen.evaluation.says import says_of
from reportgen.finding import Place, Severity
from reportgen.prose.hanging import pass_named, then_first
from reportgen.prose.standing import name, names
from reportgen.wording.count import in_words
from reportgen.wording.sentence import capital, inside

REMARKS = ("caveat", "incident", "exclusion")  # sorts that authors narrow by hand
# Words by which authors tell such things; common practice, no source.
STOPPED = re.compile(
    r"\b(stopp\w*|interrupt\w*|paus\w*|restart\w*|relit|relight\w*|blew out|went out|blown out|ran (dry|out)|"
    r"power (failed|cut)|fell|spill\w*|leak\w*|burst|jamm\w*|stall\w*|(switched|turned) off|crash\w*|reset)\b",
    re.IGNORECASE,
)
CARED_FOR = re.compile(
    r"\b(warm(ed|ing)?[ -]up|preheat\w*|descal\w*|clean\w*|maintain\w*|maintenance|servic\w*|oil(ed|ing)|greas\w*|"
    r"topp(ed|ing)[ -]up|top-up|refill\w*|recharg\w*|tighten\w*|readjust\w*|replac\w*|resharpen\w*)\b",
    re.IGNORECASE,
)


def unequal_passes(case: Case) -> Iterable[Seen]:
    """Tests that gave one contender more passes than another; a note where that decides nothing."""
    for test in case.declared.campaign.tests:
        runs = runs_of(case, test)
        counts = {c.id: runs.count(c.id) for c in case.declared.campaign.contenders if c.id in runs}
        if len(set(counts.values())) > 1:
            told = ", ".join(f"{name(case.declared.campaign, c)} {n}" for c, n in counts.items())
            then, severity = _evened(case, test)
            says = " ".join(filter(None, (f"Unequal numbers of passes in {test.title}: {told}.", then)))
            yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}", severity=severity)


def _evened(case: Case, test: Test) -> tuple[str, Severity]:
    """What would be of first place with as many passes of each."""
    mine = [f for f in case.evaluation.firsts if f.test == test.id]
    for first in mine:
        evened = first.hangs_on.evened if first.hangs_on else None
        if evened and evened.winner != first.winner:
            then = then_first(case.declared.campaign, evened.winner)
            title = inside(case.declared.campaign.quantity(first.quantity).title)
            return f"On the first {in_words(evened.passes)} passes of each, {then} ({title}).", "warning"
    even = next((f.hangs_on.evened for f in mine if f.hangs_on and f.hangs_on.evened), None)
    if even:
        return f"On the first {in_words(even.passes)} passes of each, first place stays as it is.", "note"
    return "", "warning" if any(f.winner for f in mine) else "note"


def excluded_after_seeing(case: Case) -> Iterable[Seen]:
    """Passes left out once their value was known."""
    for caveat in _exclusions(case):
        if caveat.decided == "after seeing the value":
            says = f"A pass is left out and that was decided after seeing its value ({caveat.because})."
            yield _excluded(case, caveat, says)


def excluded_when_not_noted(case: Case) -> Iterable[Seen]:
    """Passes left out, nobody knows when."""
    for caveat in _exclusions(case):
        if caveat.decided == "not noted":
            yield _excluded(case, caveat, f"Nothing says when it was decided to leave this out ({caveat.because}).")


def excluded_for_one(case: Case) -> Iterable[Seen]:
    """Tests in which passes of one contender alone are left out."""
    for test in case.declared.campaign.tests:
        here = [c for c in _exclusions(case) if any(k.test == test.id for k in c.touches)]
        who = {k.contender for c in here for k in c.touches if k.test == test.id}
        if len(who) == 1 and len({k.contender for k in case.readings.readings if k.test == test.id}) > 1:
            contender = who.pop()
            says = f"In {test.title} passes are left out for {name(case.declared.campaign, contender)} alone."
            graver = sorted((with_it_back(case, c) for c in here), key=lambda each: each[1] != "warning")
            then, severity = graver[0]
            says = " ".join(filter(None, (says, then)))
            yield Seen(here[0].at, says, f"test/{test.id}", contender, severity)


def hangs_on_one_pass(case: Case) -> Iterable[Seen]:
    """First places that a single pass decides; a warning where somebody is alone in first place by it."""
    campaign = case.declared.campaign
    for first in case.evaluation.firsts:
        found = first.hangs_on
        alone = found.lone_pass if found else None
        if found is None or alone is None:
            continue
        then = then_first(campaign, alone.winner)
        says = f"{capital(campaign.quantity(first.quantity).title)}: without {pass_named(campaign, alone)} {then}."
        severity: Severity = "warning" if found.winner else "note"
        yield Seen(_at(case, first), says, f"quantity/{first.quantity}", alone.contender, severity)


def hangs_on_another(case: Case) -> Iterable[Seen]:
    """First places that would be otherwise, had one contender that isn't in the running for them not been tested."""
    campaign = case.declared.campaign
    for first in case.evaluation.firsts:
        found = first.hangs_on
        if found and found.winner and len(found.contenders) == 1:
            other = found.contenders[0]
            then = then_first(campaign, other.winner)
            title = capital(campaign.quantity(first.quantity).title)
            says = f"{title}: without {name(campaign, other.contender)}, {then}."
            yield Seen(_at(case, first), says, f"quantity/{first.quantity}", other.contender)


def remarks_on_nothing(case: Case) -> Iterable[Seen]:
    """Exclusions, incidents and caveats about a pass, part or contender that was never read."""
    tested = {(k.test, k.contender) for k in case.readings.readings}
    for caveat in case.evaluation.caveats:
        to_come = caveat.contender and all(c != caveat.contender for _, c in tested)
        if caveat.sort in REMARKS and not caveat.touches and tested and not to_come:
            about = f" of {caveat.contender}" if caveat.contender else ""
            says = f"This {caveat.sort} touches nothing: no such reading{about} is there ({says_of(caveat)})."
            yield Seen(caveat.at, says, _subject(caveat), caveat.contender)


def incidents_unweighed(case: Case) -> Iterable[Seen]:
    """Stops and interruptions of a ranked run of which nobody says which way they push the value.

    A warning where without that pass first place would be otherwise. Events that are counted are what is measured.
    """
    campaign = case.declared.campaign
    counted = {q.count_of for t in campaign.tests for q in t.quantities if q.count_of}
    answers = [c for c in case.evaluation.caveats if c.sort in ("caveat", "exclusion") or c.blocks]
    for caveat in case.evaluation.caveats:
        open_ = caveat.sort == "incident" and not (caveat.pushes or caveat.blocks or caveat.event in counted)
        if not open_ or not STOPPED.search(says_of(caveat)) or any(_answers(a, caveat) for a in answers):
            continue
        touched = [f for f in case.evaluation.firsts if _bears_on(case, caveat, f)]
        if not touched:
            continue
        says = f"“{says_of(caveat)}” changed what was measured, and nothing says which way it pushes the value."
        other = [
            (f, p) for f in touched for p in _hanging(f) if (p.contender, p.pass_) == (caveat.contender, caveat.pass_)
        ]
        if other:
            first, found = other[0]
            title = inside(campaign.quantity(first.quantity).title)
            says = f"{says} Without {pass_named(campaign, found)}, {then_first(campaign, found.winner)} on {title}."
        severity: Severity = "warning" if other else "note"
        yield Seen(caveat.at, says, f"quantity/{touched[0].quantity}", caveat.contender, severity)


def care_unequal(case: Case) -> Iterable[Seen]:
    """Warm-up, maintenance or a top-up that some contenders of a test had, and others hadn't."""
    campaign = case.declared.campaign
    for test in campaign.tests:
        tested = {k.contender for k in case.readings.readings if k.test == test.id}
        told = [
            c for c in case.evaluation.caveats
            if c.sort == "incident" and CARED_FOR.search(says_of(c)) and any(k.test == test.id for k in c.touches)
        ]  # fmt: skip
        had = {k.contender for c in told for k in c.touches if k.test == test.id}
        if told and had < tested:
            who = names(campaign, [c.id for c in campaign.contenders if c.id in had])
            says = f"In {inside(test.title)}, {who} had what the others hadn't: “{says_of(told[0])}”"
            yield Seen(told[0].at, says, f"test/{test.id}", had.pop() if len(had) == 1 else "")


def _exclusions(case: Case) -> list[Caveat]:
    return [c for c in case.evaluation.caveats if c.sort == "exclusion"]


def _excluded(case: Case, caveat: Caveat, says: str) -> Seen:
    then, severity = with_it_back(case, caveat)
    says = " ".join(filter(None, (says, then)))
    return Seen(caveat.at, says, _subject(caveat), caveat.contender, severity)


def _answers(other: Caveat, incident: Caveat) -> bool:
    """Whether a caveat or exclusion speaks of the readings an incident touches, and not just of the whole test."""
    same = not other.contender or other.contender == incident.contender
    return same and bool(other.contender) and incident.touches <= other.touches


def _bears_on(case: Case, caveat: Caveat, first: FirstPlace) -> bool:
    fed_by = case.evaluation.upstream.get(first.quantity, frozenset({first.quantity}))
    return bears_on(caveat, fed_by, first.rests_on)


def _hanging(first: FirstPlace) -> tuple[WithoutPass, ...]:
    return first.hangs_on.passes if first.hangs_on else ()


def _at(case: Case, first: FirstPlace) -> Place:
    return case.declared.at(f"quantity/{first.quantity}")


def _subject(caveat: Caveat) -> str:
    return f"quantity/{caveat.quantities[0]}" if caveat.quantities else ""

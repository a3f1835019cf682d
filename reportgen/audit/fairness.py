"""Rules on fairness: order of runs, passes, exclusions, sessions, who paid, what the author says of the outcome."""

from __future__ import annotations

import itertools
from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Test
from reportgen.evaluation.says import says_of
from reportgen.metrology.type_a import student
from reportgen.prose.standing import name, names
from reportgen.wording.count import degrees
from reportgen.wording.listing import and_list
from reportgen.wording.number import fixed

FEW = 3  # degrees of freedom; with two, t is 4.3, with three still 3.2 (JCGM 100, table G.2)
REMARKS = ("caveat", "incident", "exclusion")  # sorts that authors narrow by hand


def sequential_order(case: Case) -> Iterable[Seen]:
    """Tests run contender after contender."""
    for test in case.declared.campaign.tests:
        runs = _runs(case, test)
        if case.readings.order_recorded.get(test.id) and _one_after_another(runs):
            says = f"{test.title} ran contender after contender: whatever drifted meanwhile is counted as a difference."
            yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}")


def order_not_recorded(case: Case) -> Iterable[Seen]:
    """Tests with several passes whose order nothing records."""
    for test in case.declared.campaign.tests:
        runs = _runs(case, test)
        if not case.readings.order_recorded.get(test.id) and len(runs) > len(set(runs)) > 1:
            says = f"Nothing records the order in which {test.title} was run."
            yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}")


def unequal_passes(case: Case) -> Iterable[Seen]:
    """Tests that gave one contender more passes than another."""
    for test in case.declared.campaign.tests:
        runs = _runs(case, test)
        counts = {c.id: runs.count(c.id) for c in case.declared.campaign.contenders if c.id in runs}
        if len(set(counts.values())) > 1:
            told = ", ".join(f"{name(case.declared.campaign, c)} {n}" for c, n in counts.items())
            says = f"Unequal numbers of passes in {test.title}: {told}."
            yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}")


def excluded_after_seeing(case: Case) -> Iterable[Seen]:
    """Passes left out once their value was known."""
    for caveat in case.evaluation.caveats:
        if caveat.sort == "exclusion" and caveat.decided == "after seeing the value":
            says = f"A pass is left out and that was decided after seeing its value ({caveat.because})."
            yield Seen(caveat.at, says, _subject(caveat.quantities), caveat.contender)


def excluded_when_not_noted(case: Case) -> Iterable[Seen]:
    """Passes left out, nobody knows when."""
    for caveat in case.evaluation.caveats:
        if caveat.sort == "exclusion" and caveat.decided == "not noted":
            yield Seen(
                caveat.at, f"Nothing says when it was decided to leave this out ({caveat.because}).",
                _subject(caveat.quantities), caveat.contender,
            )  # fmt: skip


def remarks_on_nothing(case: Case) -> Iterable[Seen]:
    """Exclusions, incidents and caveats about a pass, part or contender that was never read."""
    tested = {(k.test, k.contender) for k in case.readings.readings}
    for caveat in case.evaluation.caveats:
        to_come = caveat.contender and all(c != caveat.contender for _, c in tested)
        if caveat.sort in REMARKS and not caveat.touches and tested and not to_come:
            about = f" of {caveat.contender}" if caveat.contender else ""
            says = f"This {caveat.sort} touches nothing: no such reading{about} is there ({says_of(caveat)})."
            yield Seen(caveat.at, says, _subject(caveat.quantities), caveat.contender)


def excluded_for_one(case: Case) -> Iterable[Seen]:
    """Tests in which passes of one contender alone are left out."""
    exclusions = [c for c in case.evaluation.caveats if c.sort == "exclusion"]
    for test in case.declared.campaign.tests:
        here = [c for c in exclusions if any(k.test == test.id for k in c.touches)]
        who = {k.contender for c in here for k in c.touches if k.test == test.id}
        if len(who) == 1 and len({k.contender for k in case.readings.readings if k.test == test.id}) > 1:
            contender = who.pop()
            says = f"In {test.title} passes are left out for {name(case.declared.campaign, contender)} alone."
            yield Seen(here[0].at, says, f"test/{test.id}", contender)


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


def nobody_says_who_paid(case: Case) -> Iterable[Seen]:
    """A campaign that says nothing of money."""
    if not case.declared.campaign.who_pays and not case.publication.who_pays:
        yield Seen(case.declared.at(""), "Nothing says who paid for the products and the testing.")


def supplied_by_the_maker(case: Case) -> Iterable[Seen]:
    """Contenders that were not bought."""
    for contender in case.declared.campaign.contenders:
        if contender.supplied_by:
            says = f"{contender.title} was supplied by {contender.supplied_by}, not bought."
            yield Seen(case.declared.at(f"contender/{contender.id}"), says, "", contender.id)


def few_specimens(case: Case) -> Iterable[Seen]:
    """Results whose only scatter is that between so few specimens that Student's t swallows them."""
    for used in case.evaluation.scatters:
        results = [r for r in case.evaluation.results if (r.quantity, r.part) == (used.quantity, used.part)]
        several = [r for r in results if r.by_specimens and len({p.specimen for p in r.by_pass if p.keys}) > 1]
        known = used.found.degrees
        if used.found.origin != "passes" or not known or known >= FEW or not several:
            continue
        quantity = next(q for t in case.declared.campaign.tests for q in t.quantities if q.id == used.quantity)
        who = and_list([name(case.declared.campaign, r.contender) for r in several])
        said = f"{degrees(known)}: t = {fixed(student(0.975, known), 1)}"
        says = f"{quantity.title}: how far specimens differ is known from those of {who} alone ({said})."
        yield Seen(case.declared.at(f"quantity/{quantity.id}"), says, f"quantity/{quantity.id}")


def verdict_not_borne_out(case: Case) -> Iterable[Seen]:
    """The author's verdict in words, held against what the readings support."""
    plan = case.declared.campaign.verdict
    if plan is None or plan.we_say is None or not plan.we_say.best:
        return
    best, because = plan.we_say.best, plan.we_say.because
    firsts = [f for f in case.evaluation.firsts if not because or f.quantity in because]
    worse = {
        f.quantity: c.favours
        for f in firsts
        for c in case.evaluation.comparisons
        if c.quantity == f.quantity and c.favours not in (None, best) and best in (c.first, c.second)
    }
    out = case.evaluation.verdict and [
        m for m in case.evaluation.verdict.conditions if m.contender == best and m.outcome == "contradicted"
    ]
    place = case.declared.at("verdict")
    if out:
        yield Seen(place, f"“best: {best}”, but {best} doesn't meet a condition ({out[0].quantity}).", severity="error")
    elif firsts and len(worse) == len(firsts):
        told = ", ".join(f"{q} ({name(case.declared.campaign, who)} is better)" for q, who in worse.items())
        yield Seen(place, f"“best: {best}” is contradicted by everything it rests on: {told}.", severity="error")
    elif worse:
        told = ", ".join(f"{q} ({name(case.declared.campaign, who)} is better)" for q, who in worse.items())
        yield Seen(place, f"“best: {best}”: the readings show another to be better on {told}.")
    elif open_ := [f.quantity for f in firsts if f.winner != best]:
        yield Seen(place, f"“best: {best}”: the readings don't decide first place on {', '.join(open_)}.")


def _runs(case: Case, test: Test) -> list[str]:
    """The contender of each pass in the order the file has them; a pass read in several columns counts once."""
    passes = dict.fromkeys(
        (r.key.contender, r.key.specimen, r.key.pass_)
        for r in case.readings.of_test(test.id)
        if not r.absent_because and not r.incident
    )
    return [contender for contender, _, _ in passes]


def _one_after_another(runs: list[str]) -> bool:
    """AAA BBB CCC: more than one contender, several passes each, none ever returned to."""
    changes = sum(a != b for a, b in itertools.pairwise(runs))
    return len(set(runs)) > 1 and len(runs) > len(set(runs)) and changes == len(set(runs)) - 1


def _subject(quantities: tuple[str, ...]) -> str:
    return f"quantity/{quantities[0]}" if quantities else ""

"""Rules on the order of runs: what drifts meanwhile must not favour anybody."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.audit.case import Case, Seen
from reportgen.audit.outcome import leads
from reportgen.audit.runs import mean_positions, one_after_another, rounds_of, runs_of
from reportgen.campaign.declared import Test
from reportgen.evaluation.evaluated import Comparison
from reportgen.finding import Severity
from reportgen.prose.standing import name
from reportgen.wording import interval
from reportgen.wording.sentence import inside


def sequential_order(case: Case) -> Iterable[Seen]:
    """Tests run contender after contender; what drift would explain a lead. A note where no lead rests on it."""
    for test in case.declared.campaign.tests:
        runs = runs_of(case, test)
        if case.readings.order_recorded.get(test.id) and one_after_another(runs):
            says = f"{test.title} ran contender after contender: whatever drifted meanwhile is counted as a difference."
            drift, _ = _drift(case, test, runs)
            without = "" if leads(case, test) else "No lead rests on it; drift may as well hide one."
            says = " ".join(filter(None, (says, drift, without)))
            severity: Severity = "warning" if leads(case, test) else "note"
            yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}", severity=severity)


def lopsided_order(case: Case) -> Iterable[Seen]:
    """Rounds all run in one order, or one contender first or last in each of them.

    A warning where a drift smaller than the scatter of a pass, a run, would explain a lead.
    """
    for test in case.declared.campaign.tests:
        runs = runs_of(case, test)
        rounds = rounds_of(runs) if case.readings.order_recorded.get(test.id) else []
        if not rounds or one_after_another(runs):
            continue
        campaign = case.declared.campaign
        if all(list(r) == list(rounds[0]) for r in rounds):
            begins, ends = name(campaign, rounds[0][0]), name(campaign, rounds[0][-1])
            says = f"Every round of {test.title} ran in the same order: {begins} first, {ends} last."
        elif len(rounds) > 2 and (place := _same_place(rounds)):
            says = f"In every round of {test.title}, {name(campaign, place[0])} ran {place[1]}."
        else:
            continue
        drift, small = _drift(case, test, runs)
        severity: Severity = "warning" if small else "note"
        says = " ".join(filter(None, (says, drift)))
        yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}", severity=severity)


def order_not_recorded(case: Case) -> Iterable[Seen]:
    """Tests with several passes whose order nothing records."""
    for test in case.declared.campaign.tests:
        runs = runs_of(case, test)
        if not case.readings.order_recorded.get(test.id) and len(runs) > len(set(runs)) > 1:
            says = f"Nothing records the order in which {test.title} was run."
            yield Seen(case.declared.at(f"test/{test.id}"), says, f"test/{test.id}")


def _same_place(rounds: list[Sequence[str]]) -> tuple[str, str] | None:
    for at, where in ((0, "first"), (-1, "last")):
        if len({r[at] for r in rounds}) == 1:
            return rounds[0][at], where
    return None


def _drift(case: Case, test: Test, runs: Sequence[str]) -> tuple[str, bool]:
    """The drift a run that would explain a whole lead, in a sentence; whether it is less than the scatter of a pass.

    Of a lead d between two that ran on the mean p runs apart, a steady drift of d/p a run makes all. The quantity that
    the test leads with goes first, in it the lead that the least drift explains.
    """
    at = mean_positions(runs)
    found = [
        (c.quantity != test.headline, abs(c.difference) / abs(at[c.first] - at[c.second]), c)
        for c in leads(case, test)
        if c.difference and not c.within and at.get(c.first, 0.0) != at.get(c.second, 0.0)
    ]
    if not found:
        return "", False
    _, drift, c = min(found, key=lambda each: each[:2])
    better, other = (c.first, c.second) if c.favours == c.first else (c.second, c.first)
    campaign = case.declared.campaign
    of = f"lead of {name(campaign, better)} over {name(campaign, other)}"
    title = inside(campaign.quantity(c.quantity).title)
    says = f"On {title}, a drift of {interval.uncertainty(drift, c.unit)} a run would explain the whole {of}."
    return says, drift < (_scatter(case, c) or 0.0)


def _scatter(case: Case, c: Comparison) -> float | None:
    used = (s.found for s in case.evaluation.scatters if (s.quantity, s.part) == (c.quantity, c.part))
    return next((found.sd for found in used), None)

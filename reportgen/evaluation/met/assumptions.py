"""Assumptions in formulas: each is told on every result whose formula names it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Assumption, Declared, Quantity
from reportgen.evaluation.evaluated import Caveat
from reportgen.evaluation.feeds import Feeds, feeds_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.formulas.names import names_in
from reportgen.metrology.formulas.parse import parse
from reportgen.wording.met import Met, amount
from reportgen.wording.sentence import capital


def assumptions(declared: Declared, readings: Mapping[ReadingKey, Reading]) -> Iterable[Caveat]:
    """One caveat an assumption; one of the campaign's is told once for all the tests that name it."""
    campaign = declared.campaign
    if not any(t.assumed for t in campaign.tests):
        return
    formulas = {q.id: names_in(parse(q.formula)) for t in campaign.tests for q in t.quantities if not q.count_of}
    feeds = feeds_of(campaign, {**{q.id: frozenset() for t in campaign.tests for q in t.quantities}, **formulas})
    told: set[str] = set()
    for test in campaign.tests:
        for a in test.assumed:
            own = f"assumption/{test.id}/{a.id}"
            path = own if own in declared.places else f"assumption/{a.id}"
            if path in told:
                continue
            told.add(path)
            where = [test] if path == own else [t for t in campaign.tests if a in t.assumed]
            naming = [q for t in where for q in t.quantities if in_formula(a.id) in formulas.get(q.id, ())]
            if not naming:
                continue  # it has no effect, which is told where it was written
            id = path.removeprefix("assumption/").replace("/", "-")
            yield Caveat(
                f"assumption-{id}", 0, "assumption", "", "", False, _touched(naming, feeds, readings),
                tuple(q.id for q in naming), "", declared.at(path), met=_met(a),
            )  # fmt: skip


def _touched(naming: list[Quantity], feeds: Feeds, readings: Mapping[ReadingKey, Reading]) -> frozenset[ReadingKey]:
    behind = {pair for q in naming for pair in feeds.readings_of(q.id)}
    return frozenset(k for k in readings if (k.test, k.name) in behind)


def _met(a: Assumption) -> Met:
    gaps = {
        "name": a.id.replace("-", " "),
        "value": amount(a.value.value, a.value.unit),
        "within": amount(a.within.value, a.within.unit),
        "why": capital(a.because.rstrip(".")),
    }
    return Met("assumed.alike" if a.alike else "assumed", gaps)

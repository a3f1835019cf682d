"""Two records of one reading disagree: what every result would be with the other one, worked out and not guessed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Campaign, Declared, TwoRecords
from reportgen.evaluation.claims_otherwise import claims_otherwise
from reportgen.evaluation.evaluated import Caveat, Otherwise, Result
from reportgen.evaluation.told import Bench, QuantityTold, tell
from reportgen.finding import Refused
from reportgen.intake.happened.two_records import as_said
from reportgen.intake.reading import Readings
from reportgen.metrology.errors import FormulaError, MetrologyError
from reportgen.metrology.unit import Unit
from reportgen.wording import interval
from reportgen.wording.language import say
from reportgen.wording.met import Met
from reportgen.wording.sentence import inside

By = dict[tuple[str, str, str], Result]  # quantity, contender, part


def with_other_records(
    declared: Declared,
    readings: Readings,
    caveats: Sequence[Caveat],
    told: Sequence[QuantityTold],
    units: Mapping[str, Unit],
    bench_of: Callable[[Readings], Bench],
) -> tuple[Caveat, ...]:
    """The caveats; those of two records say what would change. `bench_of` works with other readings."""
    by_id = {f"records-{r.id}": r for r in declared.campaign.two_records}
    return tuple(
        _told(declared, readings, c, by_id[c.id], told, units, bench_of) if c.sort == "records" else c for c in caveats
    )


def _told(
    declared: Declared,
    readings: Readings,
    caveat: Caveat,
    records: TwoRecords,
    told_now: Sequence[QuantityTold],
    units: Mapping[str, Unit],
    bench_of: Callable[[Readings], Bench],
) -> Caveat:
    now = _by(r for q in told_now for r in q.results)
    found: list[Otherwise] = []
    sentences: list[Met] = []
    for said in dict.fromkeys(s for s in records.said if s != records.used):
        again = _again(declared, _with(said, records, readings, declared.campaign), caveat, now, bench_of)
        changed = {k: r for k, r in _by(r for q in again for r in q.results).items() if k in now}
        moved = {k[0] for k, r in changed.items() if now[k].rank != r.rank}
        told = {k: r for k, r in changed.items() if _value(now[k]) != _value(r)}
        found += [_otherwise(said, k, r, k[0] in moved) for k, r in told.items()]
        sentences += [_sentence(declared.campaign, said, k, r, now[k]) for k, r in told.items()]
        if any(now[k].rank for k in changed):
            sentences.append(Met("records.moves" if moved else "records.stays"))
        worked = {q.quantity for q in again}
        whole = (*(q for q in told_now if q.quantity not in worked), *again)
        sentences += claims_otherwise(declared, said, told_now, whole, units)
    if caveat.met is None:
        return caveat
    return replace(caveat, otherwise=tuple(found), met=replace(caveat.met, then=tuple(sentences)))


def _with(said: str, records: TwoRecords, readings: Readings, campaign: Campaign) -> Readings:
    other = {k: as_said(said, r, campaign) if r.records == records.id else r for k, r in readings.readings.items()}
    return replace(readings, readings=other)


def _again(
    declared: Declared, readings: Readings, caveat: Caveat, now: By, bench_of: Callable[[Readings], Bench]
) -> list[QuantityTold]:
    """Every quantity that rests on the reading, worked out again; nothing where it can't be."""
    touched = {k[0] for k, r in now.items() if caveat.touches & r.rests_on}
    bench = bench_of(readings)
    found: list[QuantityTold] = []
    for test in declared.campaign.tests:
        for quantity in test.quantities:
            if quantity.id not in touched:
                continue
            try:
                found += tell(bench, test, quantity)
            except (FormulaError, MetrologyError, Refused):
                continue  # the other record can't be worked with: there is no result to tell of
    return found


def _otherwise(said: str, key: tuple[str, str, str], r: Result, moves: bool) -> Otherwise:
    e = r.estimate
    return Otherwise(
        said, *key, e.value if e else None, e.unit if e else "", e.limit if e else None, r.missing or r.grade, moves
    )


def _sentence(campaign: Campaign, said: str, key: tuple[str, str, str], then: Result, now: Result) -> Met:
    quantity, contender, part = key
    title = campaign.quantity(quantity).title
    gaps = {
        "other": said,
        "quantity": inside(f"{title}, {part}" if part else title),
        "name": campaign.contender(contender).title,
        "value": _printed(then),
        "now": _printed(now),
    }
    return Met("records.otherwise", gaps)


def _printed(r: Result) -> str:
    e = r.estimate
    if r.missing or e is None:
        return interval.middle_grade(r.grade, r.grades) or say("reference.no-result")
    if r.passes == 1 and r.covers == "instrument" and not e.limit and e.decimals is not None:
        return interval.value_only(e.value, None, e.unit, decimals=e.decimals)  # one reading keeps its own digits
    return interval.value_only(e.value, r.u, e.unit, e.limit, low=r.low, high=r.high, decimals=e.decimals)


def _value(r: Result) -> tuple[object, ...]:
    e = r.estimate
    return (e.value if e else None, e.limit if e else None, r.missing, r.grade, r.yes)


def _by(results: Iterable[Result]) -> By:
    return {(r.quantity, r.contender, r.part): r for r in results}

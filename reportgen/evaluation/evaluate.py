"""A campaign and its readings, worked out and decided: the stage's one entrance."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.campaign.declared import Declared, Instrument
from reportgen.evaluation.caveats import caveats_of
from reportgen.evaluation.claims import claim_outcomes
from reportgen.evaluation.cost import cost_of_use
from reportgen.evaluation.evaluated import Caveat, Evaluation
from reportgen.evaluation.feeds import Feeds, feeds_of
from reportgen.evaluation.fitting import misfits
from reportgen.evaluation.history import NO_HISTORY, History
from reportgen.evaluation.instruments_known import instrument_for_metrology
from reportgen.evaluation.looking_back import with_history
from reportgen.evaluation.observing import Observer, ReadingRefused
from reportgen.evaluation.otherwise import with_other_records
from reportgen.evaluation.prepared import Prepared, formula_finding, known_units, prepare
from reportgen.evaluation.prices_otherwise import with_money
from reportgen.evaluation.scatter_used import with_past
from reportgen.evaluation.told import Bench, QuantityTold, tell
from reportgen.evaluation.traces_read import Pieces, no_samples
from reportgen.evaluation.traces_shown import traces_shown
from reportgen.evaluation.verdict import verdict_of
from reportgen.evaluation.verdict_remarks import verdict_remarks
from reportgen.evaluation.workings import Workings
from reportgen.finding import Finding, Refused
from reportgen.intake.reading import Readings
from reportgen.judgement.drawn.found import Keep, kept_nowhere
from reportgen.metrology.errors import FormulaError, MetrologyError, UnitError


def evaluate(
    declared: Declared,
    readings: Readings,
    pieces: Pieces = no_samples,
    keep: Keep = kept_nowhere,
    history: History = NO_HISTORY,
) -> Evaluation:
    """Work out every quantity and decide what the readings support.

    `history` is what campaigns tested before showed of how far passes scatter, for methods that ask for it.
    `pieces` gives the samples of a series, where there are logger files; `keep` what draws found before. Raises
    `Refused` with every formula, unit or name that can't be used, each with its place.
    """
    declared, looked_back = with_history(declared, readings, history)
    campaign = declared.campaign
    prepared = _prepared(declared, readings)
    feeds = feeds_of(campaign, prepared.names)
    caveats = caveats_of(declared, readings.readings, feeds, readings.incidents)
    bench = _bench(declared, readings, prepared, feeds, caveats, pieces, keep)
    told = _tell_all(bench, misfits(declared, readings, prepared.units))
    results = tuple(r for quantity in told for r in quantity.results)
    comparisons = tuple(c for quantity in told for c in quantity.comparisons)
    firsts = tuple(quantity.first for quantity in told if quantity.first)
    units = {**prepared.units, **{q.quantity: q.unit for q in told if q.unit}}

    def bench_of(other: Readings) -> Bench:
        return _bench(declared, other, prepared, feeds, caveats, pieces, keep)

    def wider_bench(wider: Declared, read: Readings, more: Prepared) -> Bench:
        return _bench(wider, read, more, feeds_of(wider.campaign, more.names), caveats, pieces, keep)

    told_caveats = with_other_records(declared, readings, caveats, told, units, bench_of)
    claims = claim_outcomes(declared, told, units)
    verdict = verdict_of(declared, told, units, readings.readings)
    verdict = with_money(declared, told, verdict, cost_of_use(declared, readings, prepared, wider_bench))
    return Evaluation(
        campaign=campaign.id,
        results=results,
        comparisons=comparisons,
        firsts=firsts,
        claims=claims,
        verdict=verdict,
        caveats=told_caveats,
        scatters=with_past((quantity.scatter for quantity in told if quantity.scatter), looked_back),
        findings=tuple(verdict_remarks(declared, told, verdict)),
        upstream={q: feeds.upstream(q) for q in feeds.names},
        traces=traces_shown(bench.workings),
        looked_back=looked_back,
    )


def _bench(
    declared: Declared,
    readings: Readings,
    prepared: Prepared,
    feeds: Feeds,
    caveats: Sequence[Caveat],
    pieces: Pieces,
    keep: Keep,
) -> Bench:
    """All that a quantity is worked out with, from these readings."""
    workings = Workings(
        declared.campaign, readings.readings, _observer(declared, readings, pieces), feeds, prepared.expressions,
        prepared.units, prepared.constants, [c for c in caveats if c.sort == "exclusion"], prepared.assumed,
        readings.counted_for, keep,
    )  # fmt: skip
    return Bench(declared, readings, workings, feeds, caveats)


def _prepared(declared: Declared, readings: Readings) -> Prepared:
    """All made ready; where something can't be, what doesn't fit is told with it."""
    try:
        return prepare(declared)
    except Refused as refused:
        further = misfits(declared, readings, known_units(declared))
        raise Refused(dict.fromkeys((*refused.findings, *further))) from None


def _observer(declared: Declared, readings: Readings, pieces: Pieces) -> Observer:
    wrong = [f for i in declared.campaign.instruments.values() for f in _untranslatable(declared, i)]
    if wrong:
        raise Refused(wrong)
    return Observer(declared.campaign, readings.readings, pieces)


def _untranslatable(declared: Declared, instrument: Instrument) -> Iterable[Finding]:
    """An instrument with a unit nobody knows, or with points of a calibration in units of different things."""
    try:
        instrument_for_metrology(instrument)
    except UnitError as wrong:
        says, subject = f"The instrument {instrument.id}: {wrong.says}", f"instrument/{instrument.id}"
        yield Finding("error", "unit", declared.at(subject), says, do=wrong.do, subject=subject)


def _tell_all(bench: Bench, wrong_already: Iterable[Finding]) -> tuple[QuantityTold, ...]:
    """Every quantity in the campaign's order; one that can't be worked out is a finding, and the rest still run.

    What a formula says of units that are wrong already would be the same mistake told again.
    """
    told: list[QuantityTold] = []
    findings: dict[Finding, None] = dict.fromkeys(wrong_already)
    misfit = {f.subject.removeprefix("quantity/") for f in findings if f.subject}
    for test in bench.declared.campaign.tests:
        for quantity in test.quantities:
            try:
                told += tell(bench, test, quantity)
            except FormulaError as wrong:
                findings[formula_finding(wrong, bench.declared, quantity)] = None
            except ReadingRefused as wrong:
                if f"instrument/{wrong.instrument}" in misfit:
                    continue
                findings[wrong.finding] = None
            except MetrologyError as wrong:
                if isinstance(wrong, UnitError) and misfit & {quantity.id, *bench.feeds.upstream(quantity.id)}:
                    continue
                place = bench.declared.at(f"quantity/{quantity.id}/formula")
                says = f"{quantity.id} = `{quantity.formula}` can't be worked out: {wrong.says}"
                findings[Finding("error", "formula", place, says, do=wrong.do, subject=f"quantity/{quantity.id}")] = (
                    None
                )
    if findings:
        raise Refused(findings)
    return tuple(told)

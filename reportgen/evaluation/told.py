"""One quantity worked out for every contender and decided, part by part where parts stay apart."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from reportgen.campaign.declared import Declared, Quantity, Test
from reportgen.evaluation.decide import decide, is_ranked, rules_for
from reportgen.evaluation.declared_scatter import between_specimens
from reportgen.evaluation.drawn import with_draws
from reportgen.evaluation.evaluated import Caveat, Comparison, FirstPlace, Result, ScatterUsed, bears_on
from reportgen.evaluation.exposure import counted_over
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.gathered import Gathered, gather
from reportgen.evaluation.hangs_on import hangs_on
from reportgen.evaluation.inputs import inputs_of
from reportgen.evaluation.judged_exactly import comparison_of, first_place_of, judged_exactly
from reportgen.evaluation.nested import several_specimens
from reportgen.evaluation.orders import order_comparisons, order_results, orders_seen
from reportgen.evaluation.results import measured_result, missing_result, so_far, untested
from reportgen.evaluation.says import says_of
from reportgen.evaluation.scatter_used import scatter_used
from reportgen.evaluation.specimens_apart import with_specimens_apart
from reportgen.evaluation.unfinished import Finished, judged_by_place, unfinished_runs, with_finishes, without_a_mean
from reportgen.evaluation.words_read import word_workings
from reportgen.evaluation.working import JOINS, Working, doubt_of
from reportgen.evaluation.workings import Workings
from reportgen.intake.reading import Readings
from reportgen.judgement.measured import Judged, Measured, Rules
from reportgen.metrology.unit import Unit, has_true_zero

PLAIN = ("yes/no", "grade", "count")


@dataclass(frozen=True)
class QuantityTold:
    """One quantity (of one part, where parts stay apart): its results, and what judgement was told and answered."""

    quantity: str
    results: tuple[Result, ...]
    comparisons: tuple[Comparison, ...] = ()
    first: FirstPlace | None = None
    scatter: ScatterUsed | None = None
    judged: Judged | None = None
    measured: tuple[Measured, ...] = ()
    unit: Unit | None = None  # of the values worked out: a rise in °C is a difference, not a temperature
    rules: Rules | None = None  # a measured quantity's


@dataclass(frozen=True)
class Bench:
    """What every quantity of a campaign is worked out with."""

    declared: Declared
    readings: Readings
    workings: Workings
    feeds: Feeds
    caveats: Sequence[Caveat]

    def blocked(self, quantity: str, workings: Sequence[Working]) -> str:
        """Why a contender's result is not ranked, "" where nothing blocks it."""
        keys = frozenset(k for w in workings for k in w.keys)
        hits = (says_of(c) for c in self.caveats if c.blocks and bears_on(c, self.feeds.upstream(quantity), keys))
        return next(hits, "")


def tell(bench: Bench, test: Test, quantity: Quantity) -> tuple[QuantityTold, ...]:
    """The quantity's results and decisions: one entry, or one a part where parts stay apart."""
    told = _tell(bench, test, quantity)
    if not test.running:
        return told
    return tuple(replace(t, results=tuple(so_far(r, test.running) for r in t.results)) for t in told)


def _tell(bench: Bench, test: Test, quantity: Quantity) -> tuple[QuantityTold, ...]:
    if quantity.kind == "order":
        return _tell_order(bench, test, quantity)
    by_contender, parts = _passes(bench, test, quantity)
    if parts and quantity.over_parts not in JOINS:
        return tuple(
            _tell_part(bench, test, quantity, part, {c: _of_part(ws, part) for c, ws in by_contender.items()})
            for part in parts
        )
    return (_tell_part(bench, test, quantity, "", by_contender),)


def _passes(bench: Bench, test: Test, quantity: Quantity) -> tuple[Mapping[str, Sequence[Working]], tuple[str, ...]]:
    contenders = bench.declared.campaign.contenders
    if quantity.kind in ("yes/no", "grade"):
        exclusions = [c for c in bench.caveats if c.sort == "exclusion"]
        found = {
            c.id: word_workings(test, quantity, c.id, bench.readings.readings, exclusions, bench.feeds)
            for c in contenders
        }
        return found, tuple(dict.fromkeys(w.key.part for ws in found.values() for w in ws if w.key.part))
    parts = bench.workings.parts_of(quantity.id)
    return {c.id: bench.workings.by_pass(quantity.id, c.id, parts) for c in contenders}, parts


def _tell_order(bench: Bench, test: Test, quantity: Quantity) -> tuple[QuantityTold, ...]:
    campaign = bench.declared.campaign
    exclusions = [c for c in bench.caveats if c.sort == "exclusion"]
    told = []
    for seen in orders_seen(campaign, test, quantity, bench.readings.readings, exclusions, bench.feeds):
        blocked = {c: bench.blocked(quantity.id, ws) for c, ws in seen.passes.items()}
        results = order_results(campaign, test, quantity, seen, blocked)
        told.append(QuantityTold(quantity.id, results, order_comparisons(campaign, quantity, seen, blocked)))
    return tuple(told)


def _of_part(workings: Sequence[Working], part: str) -> Sequence[Working]:
    return [w for w in workings if w.key.part == part]


def _tell_part(
    bench: Bench, test: Test, quantity: Quantity, part: str, passes: Mapping[str, Sequence[Working]]
) -> QuantityTold:
    campaign = bench.declared.campaign
    blocked = {c: bench.blocked(quantity.id, ws) for c, ws in passes.items()}
    if quantity.kind in PLAIN:
        exactly = judged_exactly(
            campaign,
            test,
            quantity,
            part,
            passes,
            blocked,
            lambda c, ws: counted_over(bench.declared, bench.workings, quantity, c, ws),
        )
        return QuantityTold(quantity.id, exactly.results, exactly.comparisons, exactly.first)
    unit = bench.workings.units[quantity.id]
    rounds_recorded = bool(bench.readings.rounds_recorded.get(test.id) or bench.readings.order_recorded.get(test.id))
    rules = rules_for(campaign, test, quantity, unit, rounds_recorded)
    ranked = is_ranked(quantity)
    several = any(several_specimens(ws) for ws in passes.values())
    if ranked:
        blocked = {c: blocked[c] or doubt_of(ws) for c, ws in passes.items()}
    apart = between_specimens(campaign, test, unit)
    finished = unfinished_runs(test, quantity, passes, bench.readings.readings, bench.feeds)

    def join(contender: str, ws: Sequence[Working]) -> Gathered:
        found = gather(quantity, contender, ws, bench.readings.readings, blocked[contender], rules.rounds, several)
        found = without_a_mean(found, finished.get(contender))
        return found if several else with_specimens_apart(found, apart, test.scatter == "relative")

    joined = {c: join(c, ws) for c, ws in passes.items()}
    gathered = with_draws(bench.workings, quantity, joined, several)
    judgeable = [g for g in gathered.values() if g.mean is not None]
    if not judgeable:
        results = tuple(with_finishes(_missing(test, quantity, part, g), finished) for g in gathered.values())
        if finished and test.unfinished_last and ranked:
            return _told_by_place(bench, test, quantity, part, results, gathered.values(), finished)
        return QuantityTold(quantity.id, results)
    found_in = next(g.mean.unit for g in judgeable if g.mean)
    rules = replace(rules, ratio=has_true_zero(found_in))
    decided = decide(test, quantity, part, list(gathered.values()), rules)
    results = tuple(
        measured_result(
            campaign, test, quantity, part, g, decided.judged, ranked, bench.readings.readings,
            inputs_of(bench.workings, [w for w in g.passes if w.used], g.contender),
        )
        for g in gathered.values()
    )  # fmt: skip
    results = tuple(with_finishes(replace(r, by_specimens=several), finished) for r in results)
    if finished and test.unfinished_last and ranked:
        return _told_by_place(bench, test, quantity, part, results, gathered.values(), finished)
    absent = untested(campaign.contenders, results)
    first = decided.first and replace(
        decided.first,
        unranked=decided.first.unranked + absent,
        hangs_on=hangs_on(list(joined.values()), rules, decided.judged, join),
    )
    measured = tuple(g.measured for g in judgeable)
    used = scatter_used(quantity, part, decided.judged, measured, rules)
    return QuantityTold(
        quantity.id, results, decided.comparisons, first, used, decided.judged, measured, found_in, rules
    )


def _told_by_place(
    bench: Bench,
    test: Test,
    quantity: Quantity,
    part: str,
    results: tuple[Result, ...],
    gathered: Iterable[Gathered],
    finished: Mapping[str, Finished],
) -> QuantityTold:
    """Some runs did not finish, and the method said that these hold the worst place: the exact rank sum judges."""
    judged = judged_by_place(quantity, list(gathered), finished)
    results = tuple(replace(r, rank=judged.ranks.get(r.contender)) for r in results)
    rests_on = {r.contender: r.rests_on for r in results}
    first = first_place_of(bench.declared.campaign, test, quantity, part, results, judged, None)
    ranked = tuple(c for c in first.unranked if not judged.ranks.get(c))
    pairs = tuple(comparison_of(test, quantity, part, p, rests_on) for p in judged.pairs)
    return QuantityTold(quantity.id, results, pairs, replace(first, unranked=ranked))


def _missing(test: Test, quantity: Quantity, part: str, gathered: Gathered) -> Result:
    return missing_result(
        test, quantity, gathered.contender, part, gathered.passes, gathered.rests_on, gathered.why_none
    )

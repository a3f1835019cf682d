"""What the contenders cost over the use that the author states.

The cost of a use is worked out and judged as a quantity is, pass by pass where what it stands on was read so: shared
errors and constants cancel in a difference as they do there, and its scatter is that of passes.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from decimal import Decimal

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Amount, Campaign, Declared, Quantity, Repeatability, Use
from reportgen.evaluation.declared_scatter import of_passes
from reportgen.evaluation.evaluated import CostOfUse, Keys
from reportgen.evaluation.lookup import PassLookup
from reportgen.evaluation.money import price_of
from reportgen.evaluation.prepared import Prepared
from reportgen.evaluation.told import Bench, QuantityTold, tell
from reportgen.finding import Finding, Refused
from reportgen.intake.reading import Readings
from reportgen.judgement.measured import Measured, Pair
from reportgen.judgement.money.break_even import CostLine, Slope, break_evens, cheapest, slope_of
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.names import names_in
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit, parse_unit, what_of

COST = "cost-of-a-use:"  # no author's id holds a colon
BenchOf = Callable[[Declared, Readings, Prepared], Bench]


def cost_of_use(declared: Declared, readings: Readings, prepared: Prepared, bench_of: BenchOf) -> CostOfUse | None:
    """Lines, break-evens and who is cheapest where; None where no use is stated, or no contender has a cost of it.

    `bench_of` makes a bench of a campaign with one quantity more. Raises `Refused` where the formula doesn't come to
    money or can't be worked out.
    """
    use = declared.campaign.verdict.use if declared.campaign.verdict else None
    source = _stands_on(declared.campaign, use) if use else None
    if use is None or source is None:
        return None
    try:
        return _cost(declared, readings, prepared, bench_of, use, source)
    except MetrologyError as wrong:
        says = f"`cost: {use.cost}` can't be worked out: {wrong.says}"
        raise Refused([Finding("error", "formula", declared.at("verdict/use"), says, do=wrong.do)]) from None


def _cost(
    declared: Declared, readings: Readings, prepared: Prepared, bench_of: BenchOf, use: Use, source: Quantity
) -> CostOfUse | None:
    bench = _bench(declared, readings, prepared, bench_of, use, source, "")
    found = _unit(bench)
    if found is None:
        return None
    currency = _currency(declared, use, found)
    bench = _bench(declared, readings, prepared, bench_of, use, source, currency)
    bench = _with_declared_scatter(bench, source)
    test = bench.declared.campaign.test(COST)
    told = tell(bench, test, test.quantities[0])
    whole = told[0] if len(told) == 1 and not told[0].results[0].part else None
    low, high = float(use.low), float(use.high)
    if whole is None:
        return CostOfUse(use.per, use.cost, low, high, currency, (), {}, {}, (), (), frozenset(), why="parts-apart")
    lines, left_out = _lines(declared.campaign, whole, currency)
    names = {line.name for line in lines}
    pairs = [p for p in (whole.judged.pairs if whole.judged else ()) if {p.first, p.second} <= names]
    slopes: dict[tuple[str, str], Slope | None] = {(p.first, p.second): slope_of(p) for p in pairs}
    rests_on: Keys = frozenset().union(*(r.rests_on for r in whole.results))
    return CostOfUse(
        use.per, use.cost, low, high, currency, lines, left_out, slopes,
        break_evens(lines, slopes, (low, high)), cheapest(lines, slopes, (low, high)) if len(lines) > 1 else (),
        rests_on, bench.feeds.upstream(COST), once=any(_once(p) for p in pairs),
    )  # fmt: skip


def _once(pair: Pair) -> bool:
    return pair.low is None and pair.reason.code == "no-scatter-known"


def _stands_on(campaign: Campaign, use: Use) -> Quantity | None:
    """The first quantity that the formula names, whose test says how passes scatter and are joined."""
    names = names_in(parse(use.cost))
    return next((q for t in campaign.tests for q in t.quantities if in_formula(q.id) in names), None)


def _bench(
    declared: Declared, readings: Readings, prepared: Prepared, bench_of: BenchOf, use: Use, source: Quantity,
    currency: str,
) -> Bench:  # fmt: skip
    """A bench with one test more, which has no readings of its own and the cost for its one quantity."""
    campaign = declared.campaign
    quantity = Quantity(
        COST, COST, use.per, "", use.cost, currency, "lower", over_parts=source.over_parts,
        over_passes=source.over_passes,
    )  # fmt: skip
    of = campaign.test(source.test)
    test = replace(of, id=COST, title=use.per, quantities=(quantity,), headline=COST, columns=(), sources=())
    expression = parse(use.cost)
    more = replace(
        prepared,
        expressions={**prepared.expressions, COST: expression},
        names={**prepared.names, COST: names_in(expression)},
        units={**prepared.units, COST: parse_unit(currency)},
    )
    readings = replace(
        readings,
        order_recorded={**readings.order_recorded, COST: bool(readings.order_recorded.get(of.id))},
        rounds_recorded={**readings.rounds_recorded, COST: bool(readings.rounds_recorded.get(of.id))},
    )
    wider = replace(declared, campaign=replace(campaign, tests=(*campaign.tests, test)))
    return bench_of(wider, readings, more)


def _unit(bench: Bench) -> Unit | None:
    """What the formula comes to, by the first contender and pass that gives a value; None where none does."""
    workings = bench.workings
    quantity, test = workings.quantities[COST], bench.declared.campaign.test(COST)
    for contender in bench.declared.campaign.contenders:
        for key in workings.pass_keys(COST, contender.id):
            try:
                look_up = PassLookup(workings, quantity, test, contender.id, key)
                return evaluate(workings.expressions[COST], look_up).unit
            except NoValue:
                continue
    return None


def _currency(declared: Declared, use: Use, found: Unit) -> str:
    """The code of the money that a use costs. Raises `Refused` where the formula comes to something else."""
    if what_of(found) == "an amount of money" and found.dimension[0][1] == 1:
        return str(found.dimension[0][0])
    comes_to = f"to {found.symbol}" if found.symbol else "to a plain number"
    says = f"`cost: {use.cost}` comes {comes_to}, and one {use.per} costs an amount of money"
    do = "Multiply what a use needs by its price, such as `gas_burned * gas_price` with a price in EUR/g."
    raise Refused([Finding("error", "cost-not-money", declared.at("verdict/use"), says, do=do)])


def _with_declared_scatter(bench: Bench, source: Quantity) -> Bench:
    """The repeatability that a method declares of the one quantity that a cost stands on, put in money by how steeply
    the cost follows it; in parts of the value it is the same where the cost is so many times the quantity."""
    campaign = bench.declared.campaign
    test, of = campaign.test(COST), campaign.test(source.test)
    names = names_in(bench.workings.expressions[COST])
    others = [q for t in campaign.tests for q in t.quantities if in_formula(q.id) in names and q.id != source.id]
    declared = of_passes(campaign, of, source, bench.workings.units[source.id])
    slope = _slope(bench, source) if declared and not others else None
    if declared is None or slope is None:
        return bench
    relative = of.scatter == "relative"
    if relative and not slope[1]:
        return bench
    sd, unit = (declared.sd, "") if relative else (declared.sd * slope[0], test.quantities[0].unit)
    version = f"{test.method}.{test.method_version}"
    method = campaign.methods[version]
    found = Repeatability(Amount(Decimal(repr(sd)), unit, ""), declared.degrees, declared.source)
    methods = {**campaign.methods, version: replace(method, repeatability={**method.repeatability, COST: found})}
    return replace(bench, declared=replace(bench.declared, campaign=replace(campaign, methods=methods)))


def _slope(bench: Bench, source: Quantity) -> tuple[float, bool] | None:
    """By how much the cost rises with the quantity, and whether it is so many times it; told from the largest error
    that both share. None where they share none."""
    for contender in bench.declared.campaign.contenders:
        costs = [w.value for w in bench.workings.counted(COST, contender.id) if w.value]
        values = [w.value for w in bench.workings.counted(source.id, contender.id) if w.value]
        for cost, value in zip(costs, values, strict=False):
            slope = _shared(cost, value)
            if slope is not None and cost.value is not None and value.value is not None:
                return abs(slope), abs(cost.value - slope * value.value) <= 1e-6 * abs(cost.value)
    return None


def _shared(cost: Uncertain, value: Uncertain) -> float | None:
    both = [s for s in value.contributions if s in cost.contributions and value.contributions[s]]
    if not both:
        return None
    largest = max(both, key=lambda s: abs(value.contributions[s]))
    return cost.contributions[largest] / value.contributions[largest]


def _lines(campaign: Campaign, told: QuantityTold, currency: str) -> tuple[tuple[CostLine, ...], Mapping[str, str]]:
    """The line of every contender that has a price in the currency and a cost, and why the others have none."""
    lines: list[CostLine] = []
    left_out: dict[str, str] = {}
    measured: dict[str, Measured] = {m.name: m for m in told.measured}
    for contender in campaign.contenders:
        price, one = price_of(contender), measured.get(contender.id)
        result = next(r for r in told.results if r.contender == contender.id)
        single = told.judged.singles.get(contender.id) if told.judged else None
        if price is None:
            left_out[contender.id] = "no-price"
        elif price.currency != currency:
            left_out[contender.id] = "other-currency"
        elif one is None or one.value is None or single is None:
            left_out[contender.id] = "no-result"
        elif result.blocked:
            left_out[contender.id] = "blocked"
        else:
            lines.append(
                CostLine(
                    contender.id, float(price.low), float(price.high), one.value, single.low, single.high, one.limit
                )
            )
    return tuple(lines), left_out

"""Formulas met with readings: every quantity worked out for every contender, pass and part.

A name in a formula is a reading of the test, else a quantity of the campaign, else a constant; inside its own formula
a quantity's name is the reading.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import sqrt

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Quantity
from reportgen.evaluation.assumed import Assumed
from reportgen.evaluation.counted import TOTAL, counted_working
from reportgen.evaluation.declared_scatter import of_passes
from reportgen.evaluation.evaluated import Caveat, Keys, bears_on
from reportgen.evaluation.exact import COUNTED
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.lookup import PassLookup
from reportgen.evaluation.nested import over_passes, over_specimens, several_specimens, specimens
from reportgen.evaluation.observing import Observer
from reportgen.evaluation.working import JOINS, Heard, PassKey, Working, join_parts
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.judgement.drawn.found import Keep, kept_nowhere
from reportgen.judgement.measured import DeclaredScatter
from reportgen.judgement.pooling import standard_deviation
from reportgen.judgement.scatter import joined as joined_scatter
from reportgen.metrology.arithmetic import in_unit
from reportgen.metrology.draws import Draws
from reportgen.metrology.errors import NoValue
from reportgen.metrology.formulas.evaluate import evaluate_by
from reportgen.metrology.formulas.grammar import Expression
from reportgen.metrology.formulas.names import names_part_by_part
from reportgen.metrology.formulas.near_nothing import watching
from reportgen.metrology.stated import unseen
from reportgen.metrology.uncertain import OF_ONE_READING, Source, Uncertain
from reportgen.metrology.unit import Unit


class Workings:
    """Works quantities out on demand and remembers them (a quantity may feed several others).

    `expressions` and `units` are by quantity id, `constants` by name as formulas spell it; `keep` is where what draws
    found is kept.
    """

    def __init__(
        self,
        campaign: Campaign,
        readings: Mapping[ReadingKey, Reading],
        observer: Observer,
        feeds: Feeds,
        expressions: Mapping[str, Expression],
        units: Mapping[str, Unit],
        constants: Mapping[str, Uncertain],
        exclusions: Sequence[Caveat],
        assumed: Mapping[tuple[str, str], Assumed] | None = None,
        counted_for: Mapping[str, tuple[str, ...]] | None = None,
        keep: Keep = kept_nowhere,
    ) -> None:
        self.campaign, self.readings, self.observer, self.feeds = campaign, readings, observer, feeds
        self.expressions, self.units, self.constants, self.exclusions = expressions, units, constants, exclusions
        self.assumed, self.counted_for = assumed or {}, counted_for or {}
        self.quantities = {q.id: q for t in campaign.tests for q in t.quantities}
        self._tests = {q.id: t for t in campaign.tests for q in t.quantities}
        self._passes: dict[tuple[str, str], tuple[Working, ...]] = {}
        self.draws, self.keep = Draws(), keep
        self._readings_of: dict[tuple[str, str], list[Reading]] = {}
        for reading in readings.values():
            self._readings_of.setdefault((reading.key.test, reading.key.contender), []).append(reading)

    def by_part(self, quantity: str, contender: str) -> tuple[Working, ...]:
        """Each pass and part by itself, in the order of the readings."""
        wanted = (quantity, contender)
        if wanted not in self._passes and self.quantities[quantity].count_of:
            self._passes[wanted] = counted_working(
                self.quantities[quantity], contender, self.readings, self.counted_for
            )
        if wanted not in self._passes:
            self._passes[wanted] = tuple(
                self._work_out(self.quantities[quantity], contender, key)
                for key in self._pass_keys(quantity, contender)
            )
        return self._passes[wanted]

    def by_pass(self, quantity: str, contender: str, parts: Sequence[str]) -> tuple[Working, ...]:
        """The same with parts joined as the quantity says; unjoined (`each`, or nothing said) they stay apart."""
        how = self.quantities[quantity].over_parts
        workings = self.by_part(quantity, contender)
        if not parts or how not in JOINS:
            return workings
        return join_parts(workings, how, parts)

    def parts_of(self, quantity: str) -> tuple[str, ...]:
        """The parts any contender has, in order of appearance; empty where there are none."""
        found = [w.key.part for c in self.campaign.contenders for w in self.by_part(quantity, c.id)]
        return tuple(dict.fromkeys(p for p in found if p))

    def joined(self, quantity: str, contender: str) -> Uncertain:
        """The quantity over all its passes as one value, its scatter a source of its own, Student's t times s/√n.

        Of several specimens each is one value, and theirs is the scatter. A repeatability that the method declares
        stands in for passes, or joins them, as it does in the quantity's own results.
        """
        rule, counted = self.quantities[quantity], self.counted(quantity, contender)
        nested = several_specimens(counted)
        used = specimens(rule, counted) if nested else [w.value for w in counted if w.value]
        if not used:
            raise NoValue(f"{quantity} of {contender} was not read")
        mean = over_specimens(rule, used) if nested else over_passes(rule, used)
        known = [u.value for u in used if u.value is not None]
        if mean.value is None:
            return stood_on(mean)
        declared = None if nested else self._declared(quantity, mean.value)
        scatter = joined_scatter(*standard_deviation(known), declared)
        if scatter.sd is None or scatter.degrees is None:
            return stood_on(mean)
        source = Source("scatter", quantity, contender, "normal", scatter.degrees)
        return replace(mean, contributions={**mean.contributions, source: scatter.sd / sqrt(len(known))})

    def _declared(self, quantity: str, value: float) -> DeclaredScatter | None:
        """The repeatability that a method declares, in the quantity's unit."""
        test = self._tests[quantity]
        declared = of_passes(self.campaign, test, self.quantities[quantity], self.units[quantity])
        in_unit = abs(value) if test.scatter == "relative" else 1.0
        return replace(declared, sd=declared.sd * in_unit) if declared else None

    def counted(self, quantity: str, contender: str) -> Sequence[Working]:
        """The passes that count towards the quantity, parts joined."""
        return [w for w in self.by_pass(quantity, contender, self.parts_of(quantity)) if w.used]

    def _pass_keys(self, quantity: str, contender: str) -> tuple[PassKey, ...]:
        if self.quantities[quantity].count_of:
            return (TOTAL,) if contender in self.counted_for.get(quantity, ()) else ()
        test, names = self._tests[quantity], self.feeds.names[quantity]
        own = {c.name for c in test.columns} & names
        if own:
            mine = self._readings_of.get((test.id, contender), ())
            mine = sorted((r for r in mine if r.key.name in own), key=lambda r: (r.at.file, r.order))
            read = [PassKey(r.key.specimen, r.key.pass_, r.key.part) for r in mine]
            return tuple(dict.fromkeys(self._of_whole_passes(quantity, read)))
        through = [self._pass_keys(q, contender) for n in sorted(names) if (q := as_id(n)) in self.quantities]
        if through and all(set(keys) == set(through[0]) for keys in through):
            return tuple(dict.fromkeys(self._of_whole_passes(quantity, through[0])))
        runs = [self.runs(q, contender) for n in sorted(names) if (q := as_id(n)) in self.quantities]
        if runs and runs[0] and all(set(keys) == set(runs[0]) for keys in runs):
            return runs[0]
        return (PassKey("1", "1", ""),) if through and all(through) else ()

    def _of_whole_passes(self, quantity: str, keys: Sequence[PassKey]) -> Sequence[PassKey]:
        """The passes without their parts, where the formula looks nothing up in each part by itself."""
        return keys if self._part_by_part(quantity) else [replace(k, part="") for k in keys]

    def _part_by_part(self, quantity: str) -> bool:
        expression = self.expressions.get(quantity)
        if expression is None:
            return True
        columns = {c.name for c in self._tests[quantity].columns}
        return any(n in columns or as_id(n) in self.quantities for n in names_part_by_part(expression))

    def _work_out(self, quantity: Quantity, contender: str, key: PassKey) -> Working:
        bench = PassLookup(self, quantity, self._tests[quantity.id], contender, key)
        by = watching(bench.doubts)
        try:
            found = evaluate_by(by, self.expressions[quantity.id], bench, bench.along)
            value = in_unit(found, self.units[quantity.id])
        except NoValue as reason:
            return Working(key, None, tuple(bench.keys), absent_because=reason.says, steps=tuple(bench.steps))
        keys = tuple(dict.fromkeys(bench.keys))
        if keys and not value.contributions and self.observer.exact.issuperset(keys):
            value = replace(value, contributions={COUNTED: 0.0})
        own = {c.name for c in self._tests[quantity.id].columns} & self.feeds.names[quantity.id]
        excluded = self.excluded(quantity.id, frozenset(keys) - bench.settled)
        return Working(
            key, value, keys, excluded, steps=tuple(bench.steps), crossings=tuple(bench.crossings),
            together=bench.joined and not own, doubt=next(iter(bench.doubts), ""),
            heard=Heard(quantity.id, tuple(bench.answers)),
        )  # fmt: skip

    def excluded(self, quantity: str, keys: Keys) -> str:
        """The exclusion that leaves readings out of a quantity, by its id; "" where none does."""
        fed_by = self.feeds.upstream(quantity)
        return next((e.id for e in self.exclusions if bears_on(e, fed_by, keys)), "")

    def runs(self, quantity: str, contender: str) -> tuple[PassKey, ...]:
        """The passes a quantity counts, its parts joined: not those left out."""
        workings = self.by_pass(quantity, contender, self.parts_of(quantity))
        return tuple(dict.fromkeys(w.key for w in workings if not w.excluded))

    def pass_keys(self, quantity: str, contender: str) -> frozenset[PassKey]:
        """The passes (and parts) a quantity is worked out for."""
        return frozenset(self._pass_keys(quantity, contender))


def stood_on(value: Uncertain) -> Uncertain:
    """What was read once and is then stood on by every pass of something else: their scatter doesn't show how far its
    instrument repeats itself, which therefore counts like a step that several stand on."""
    found = {unseen(s) if s.sort in OF_ONE_READING else s: c for s, c in value.contributions.items()}
    return replace(value, contributions=found)

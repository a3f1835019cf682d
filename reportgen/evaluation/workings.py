"""Formulas met with readings: every quantity worked out for every contender, pass and part.

A name in a formula is a reading of the test, else a quantity of the campaign, else a constant; inside its own formula
a quantity's name is the reading.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from reportgen.addresses import as_id
from reportgen.campaign.declared import Campaign, Quantity, Test
from reportgen.evaluation.evaluated import Caveat, Keys, Step, bears_on
from reportgen.evaluation.feeds import Feeds
from reportgen.evaluation.observing import Observer
from reportgen.evaluation.working import JOINS, PassKey, Working, join_parts
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.arithmetic import in_unit
from reportgen.metrology.combine import energy_mean, mean_of
from reportgen.metrology.errors import NoValue, did_you_mean
from reportgen.metrology.evaluate import evaluate
from reportgen.metrology.grammar import Expression
from reportgen.metrology.type_a import uncertainty_of_mean
from reportgen.metrology.uncertain import Source, Uncertain
from reportgen.metrology.unit import Unit


class Workings:
    """Works quantities out on demand and remembers them (a quantity may feed several others).

    `expressions` and `units` are by quantity id, `constants` by name as formulas spell it.
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
    ) -> None:
        self.campaign, self.readings, self.observer, self.feeds = campaign, readings, observer, feeds
        self.expressions, self.units, self.constants, self.exclusions = expressions, units, constants, exclusions
        self.quantities = {q.id: q for t in campaign.tests for q in t.quantities}
        self._tests = {q.id: t for t in campaign.tests for q in t.quantities}
        self._passes: dict[tuple[str, str], tuple[Working, ...]] = {}

    def by_part(self, quantity: str, contender: str) -> tuple[Working, ...]:
        """Each pass and part by itself, in the order of the readings."""
        wanted = (quantity, contender)
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
        """The quantity over all its passes as one value, its scatter a source of its own.

        That is taken as normal further on, so it is as wide as reaches as far as Student's t would.
        """
        from scipy.special import stdtrit

        used = [w.value for w in self.by_pass(quantity, contender, self.parts_of(quantity)) if w.used and w.value]
        if not used:
            raise NoValue(f"{quantity} of {contender} was not read")
        mean = over_passes(self.quantities[quantity], used)
        known = [u.value for u in used if u.value is not None]
        u = uncertainty_of_mean(known)
        if u is None or mean.value is None:
            return mean
        scatter = Source("scatter", quantity, contender, "normal")
        wider = float(stdtrit(len(known) - 1, 0.975)) / 1.96
        return replace(mean, contributions={**mean.contributions, scatter: wider * u})

    def _pass_keys(self, quantity: str, contender: str) -> tuple[PassKey, ...]:
        test, names = self._tests[quantity], self.feeds.names[quantity]
        own = {c.name for c in test.columns} & names
        if own:
            mine = [r for r in self.readings.values() if r.key.test == test.id and r.key.contender == contender]
            mine = sorted((r for r in mine if r.key.name in own), key=lambda r: (r.at.file, r.order))
            return tuple(dict.fromkeys(PassKey(r.key.specimen, r.key.pass_, r.key.part) for r in mine))
        through = [self._pass_keys(q, contender) for n in sorted(names) if (q := as_id(n)) in self.quantities]
        if through and all(set(keys) == set(through[0]) for keys in through):
            return through[0]
        return (PassKey("1", "1", ""),) if through and all(through) else ()

    def _work_out(self, quantity: Quantity, contender: str, key: PassKey) -> Working:
        bench = _Bench(self, quantity, self._tests[quantity.id], contender, key)
        try:
            value = in_unit(evaluate(self.expressions[quantity.id], bench), self.units[quantity.id])
        except NoValue as reason:
            return Working(key, None, tuple(bench.keys), absent_because=reason.says, steps=tuple(bench.steps))
        keys = tuple(dict.fromkeys(bench.keys))
        excluded = self.excluded(quantity.id, frozenset(keys) - bench.settled)
        return Working(key, value, keys, excluded, steps=tuple(bench.steps))

    def excluded(self, quantity: str, keys: Keys) -> str:
        """The exclusion that leaves readings out of a quantity, by its id; "" where none does."""
        fed_by = self.feeds.upstream(quantity)
        return next((e.id for e in self.exclusions if bears_on(e, fed_by, keys)), "")

    def pass_keys(self, quantity: str, contender: str) -> frozenset[PassKey]:
        """The passes (and parts) a quantity is worked out for."""
        return frozenset(self._pass_keys(quantity, contender))


def over_passes(quantity: Quantity, values: Sequence[Uncertain]) -> Uncertain:
    """Passes joined as the quantity says. `least`, `most` and `middle` pick (the middle of an even count is a mean)."""
    if quantity.over_passes == "energy mean":
        return energy_mean(values)
    if quantity.over_passes in ("", "mean") or any(v.value is None for v in values):
        return mean_of(values)
    ordered = sorted(values, key=lambda v: v.value or 0.0)
    if quantity.over_passes == "least":
        return ordered[0]
    if quantity.over_passes == "most":
        return ordered[-1]
    return mean_of(ordered[(len(ordered) - 1) // 2 : len(ordered) // 2 + 1])


class _Bench:
    """What a formula sees on one pass: the lookup that metrology asks. Keeps what it was asked for."""

    def __init__(self, workings: Workings, quantity: Quantity, test: Test, contender: str, key: PassKey) -> None:
        self.workings, self.quantity, self.test, self.contender, self.key = workings, quantity, test, contender, key
        self.columns = {c.name for c in test.columns}
        self.keys: list[ReadingKey] = []
        self.settled: set[ReadingKey] = set()  # of values over several passes, which leave out what is left out
        self.steps: list[Step] = []

    def value(self, name: str) -> Uncertain:
        return self._noted(name, self._find(name, self.contender, self.key))

    def over_passes(self, name: str) -> Sequence[Uncertain]:
        keys = dict.fromkeys(replace(k, part=self.key.part) for k in self._all_keys(name))
        before = len(self.keys)
        found = [self._noted(name, self._find(name, self.contender, k)) for k in keys if self._counts(name, k)]
        self.settled.update(self.keys[before:])
        return found

    def _counts(self, name: str, key: PassKey) -> bool:
        """Is a pass of a name left in? Where none is, all are taken, and what rests on them is left out as well."""
        if name not in self.columns:
            return not any(w.excluded for w in self.workings.by_part(as_id(name), self.contender) if w.key == key)
        read = ReadingKey(self.test.id, self.contender, key.specimen, key.pass_, key.part, name)
        return not self.workings.excluded(self.quantity.id, frozenset((read, replace(read, part=""))))

    def over_parts(self, name: str) -> Sequence[Uncertain]:
        here = (self.key.specimen, self.key.pass_)
        keys = [k for k in self._all_keys(name) if (k.specimen, k.pass_) == here]
        return [self._noted(name, self._find(name, self.contender, k)) for k in dict.fromkeys(keys)]

    def of(self, contender: str, name: str) -> Uncertain:
        id = as_id(contender)
        if id not in {c.id for c in self.workings.campaign.contenders}:
            raise KeyError(f"no contender is called {contender}")
        return self._noted(f"{name} of {id}", self._find(name, id, self.key))

    def known(self) -> frozenset[str]:
        """Every name a formula of this test may use."""
        quantities = {q.replace("-", "_") for q in self.workings.quantities}
        return frozenset(self.columns | quantities | set(self.workings.constants))

    def _all_keys(self, name: str) -> Sequence[PassKey]:
        if name in self.columns:
            found = (
                k
                for k in self.workings.readings
                if (k.test, k.contender, k.name) == (self.test.id, self.contender, name)
            )
            return [PassKey(k.specimen, k.pass_, k.part) for k in found]
        return [w.key for w in self.workings.by_part(as_id(name), self.contender)]

    def _find(self, name: str, contender: str, key: PassKey) -> Uncertain:
        if name in self.columns:
            return self._reading(name, contender, key)
        quantity = as_id(name)
        if quantity in self.workings.quantities:
            return self._quantity(quantity, contender, key)
        if name in self.workings.constants:
            return self.workings.constants[name]
        near = did_you_mean(name, self.known())
        raise KeyError(f"nothing here is called {name}" + (f"; {near}" if near else ""))

    def _reading(self, name: str, contender: str, key: PassKey) -> Uncertain:
        for part in dict.fromkeys((key.part, "")):
            found = ReadingKey(self.test.id, contender, key.specimen, key.pass_, part, name)
            if found in self.workings.readings:
                reading = self.workings.readings[found]
                self.keys.append(found)
                if reading.absent_because:
                    raise NoValue(reading.absent_because)
                return self.workings.observer.observed(reading)
        raise NoValue("no reading")

    def _quantity(self, quantity: str, contender: str, key: PassKey) -> Uncertain:
        """Pass by pass within one test, and across tests with the same passes; else all passes of it as one value."""
        workings = self.workings.by_part(quantity, contender)
        if self._runs_beside(quantity, contender):
            for working in (
                w for part in dict.fromkeys((key.part, "")) for w in workings if w.key == replace(key, part=part)
            ):
                self.keys.extend(working.keys)
                if working.value is None:
                    raise NoValue(working.absent_because)
                return working.value
        behind = [k for w in workings for k in w.keys]
        self.keys.extend(behind)
        self.settled.update(behind)
        return self.workings.joined(quantity, contender)

    def _runs_beside(self, quantity: str, contender: str) -> bool:
        if any(q.id == quantity for q in self.test.quantities):
            return True
        mine = self.workings.pass_keys(self.quantity.id, self.contender)
        return mine == self.workings.pass_keys(quantity, contender)

    def _noted(self, name: str, value: Uncertain) -> Uncertain:
        keys = (self.keys[-1],) if self.keys and self.keys[-1].name == name else ()
        step = Step(name, value.value, value.unit.symbol, value.limit, keys)
        if step not in self.steps:
            self.steps.append(step)
        return value

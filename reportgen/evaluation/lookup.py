"""What a formula sees on one pass of one contender: the names in it, met with readings, quantities and constants."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING, Literal

from reportgen.addresses import as_id
from reportgen.campaign.declared import Quantity, Test
from reportgen.evaluation.evaluated import Crossing, Step
from reportgen.evaluation.working import Answer, OfSpecimen, PassKey, Whole, Working, doubt_of
from reportgen.intake.notations.against import chain_of
from reportgen.intake.reading import Reading, ReadingKey
from reportgen.metrology.combine import mean_of
from reportgen.metrology.errors import MetrologyError, NoValue, did_you_mean
from reportgen.metrology.formulas.along import along_channel
from reportgen.metrology.formulas.evaluate import evaluate
from reportgen.metrology.formulas.grammar import Call
from reportgen.metrology.formulas.near_nothing import Doubt
from reportgen.metrology.traces.crossing import Side
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Uncertain

if TYPE_CHECKING:
    from reportgen.evaluation.workings import Workings


NO_READING = "no reading"


class PassLookup:
    """What a formula sees on one pass: the lookup that metrology asks. Keeps what it was asked for."""

    def __init__(self, workings: Workings, quantity: Quantity, test: Test, contender: str, key: PassKey) -> None:
        self.workings, self.quantity, self.test, self.contender, self.key = workings, quantity, test, contender, key
        self.columns = {c.name for c in test.columns}
        self.keys: list[ReadingKey] = []
        self.settled: set[ReadingKey] = set()  # of values over several passes, which leave out what is left out
        self.joined = False  # whether some quantity was taken over all its passes, as these aren't the same
        self.steps: list[Step] = []
        self.crossings: list[Crossing] = []
        self.answers: list[tuple[Answer, ...]] = []  # one entry a question the formula asked
        self.behind: Working | Whole | None = None  # what the value found last was worked out from
        self.doubts: list[Doubt] = []  # where first derivatives say nothing, here or in a quantity behind

    def value(self, name: str) -> Uncertain:
        return self._ask(name, [(self.contender, self.key)])[0]

    def over_passes(self, name: str) -> Sequence[Uncertain]:
        keys = dict.fromkeys(replace(k, part=self.key.part) for k in self._all_keys(name))
        before = len(self.keys)
        counted = [k for k in keys if self._counts(name, k)]
        found = self._ask(name, [(self.contender, k) for k in counted])
        self.settled.update(self.keys[before:])
        return self._by_specimen(counted, found)

    def _by_specimen(self, keys: Sequence[PassKey], values: Sequence[Uncertain]) -> Sequence[Uncertain]:
        """One value a specimen, where there are several: one that ran more often doesn't weigh more."""
        groups: dict[str, list[int]] = {}
        for i, key in enumerate(keys):
            groups.setdefault(key.specimen, []).append(i)
        if len(groups) < 2:
            return values
        told = self.answers.pop()
        self.answers.append(tuple(OfSpecimen(tuple(told[i] for i in of)) for of in groups.values()))
        return [mean_of([values[i] for i in of]) for of in groups.values()]

    def _counts(self, name: str, key: PassKey) -> bool:
        """Is a pass of a name left in? Where none is, all are taken, and what rests on them is left out as well."""
        if name not in self.columns:
            return not any(w.excluded for w in self.workings.by_part(as_id(name), self.contender) if w.key == key)
        read = ReadingKey(self.test.id, self.contender, key.specimen, key.pass_, key.part, name)
        keys = {read, replace(read, part="")}
        stands_on = {r.key for k in keys & self.workings.readings.keys() for r in self._behind(k)}
        return not self.workings.excluded(self.quantity.id, frozenset(keys | stands_on))

    def _behind(self, key: ReadingKey) -> Sequence[Reading]:
        return chain_of(self.workings.readings[key], self.workings.readings)

    def over_parts(self, name: str) -> Sequence[Uncertain]:
        here = (self.key.specimen, self.key.pass_)
        keys = [k for k in self._all_keys(name) if (k.specimen, k.pass_) == here]
        keys = [k for k in keys if k.part] or keys  # a pass without parts is whole
        return self._ask(name, [(self.contender, k) for k in dict.fromkeys(keys)])

    def pairs(self, name: str, other: str) -> tuple[str, Sequence[tuple[Uncertain, Uncertain]]]:
        keys = [k for n in (name, other) for k in self._all_keys(n)]
        here = [k for k in keys if (k.specimen, k.pass_) == (self.key.specimen, self.key.pass_) and k.part]
        if not here:
            raise NoValue(f"{name} was not read in parts, and a line goes through several")
        place = "/".join((self.test.id, self.contender, self.key.specimen, self.key.pass_))
        return place, [(self._in_part(name, k), self._in_part(other, k)) for k in dict.fromkeys(here)]

    def _in_part(self, name: str, key: PassKey) -> Uncertain:
        try:
            return self._ask(name, [(self.contender, key)])[0]
        except NoValue as reason:
            raise NoValue(f"{name} of {key.part}: {reason.says}", reason.do) from None

    def of(self, contender: str, name: str) -> Uncertain:
        id = as_id(contender)
        if id not in {c.id for c in self.workings.campaign.contenders}:
            raise KeyError(f"no contender is called {contender}")
        return self._ask(name, [(id, self.key)], f"{name} of {id}")[0]

    def _ask(self, name: str, of: Iterable[tuple[str, PassKey]], noted_as: str = "") -> Sequence[Uncertain]:
        """A name for one contender and pass or several; what was told is kept as one answer to the formula."""
        found: list[Uncertain] = []
        told: list[Answer] = []
        for contender, key in of:
            self.behind = None
            value = self._find(name, contender, key)
            told.append(self.behind or value)
            found.append(self._noted(noted_as or name, value))
        self.answers.append(tuple(told))
        return found

    def along(self, call: Call) -> Uncertain:
        """What a function finds along a channel: one answer, whatever was asked for on the way."""
        before = len(self.answers)
        value = along_channel(call, self, partial(evaluate, lookup=self))
        self.answers[before:] = [(value,)]
        return value

    def trace(self, name: str) -> Trace:
        if name not in self.columns:
            raise KeyError(f"no channel of this test is called {name}")
        reading = self._reading(name, self.contender, self.key, trace=True)
        if reading.series is None:
            raise MetrologyError(
                f"{name} is one value and no trace", "name the logger's files under `readings:` with `logger:`"
            )
        return self.workings.observer.trace(reading)

    def found(
        self, function: str, channel: str, value: Uncertain, limit: Uncertain | None = None, times: int = 1
    ) -> None:
        keys = tuple(dict.fromkeys(k for k in self.keys if k.name == channel))
        which, _, side_of_it = function.rpartition("_") if limit is not None else (function, "", "")
        name = f"{which}({channel}, {side_of_it})" if side_of_it else f"{function}({channel})"
        self.steps.append(Step(name, value.value, value.unit.symbol, value.limit, keys))
        if which == "when" and limit is not None and limit.value is not None and value.value is not None:
            side: Side = "over" if function == "when_over" else "under"
            past = value.limit == "above" and limit.limit is None
            crossing = Crossing(keys[-1], self.quantity.id, side, limit.value, value.value, past, times)
            self.crossings.append(crossing)

    def known(self) -> frozenset[str]:
        """Every name a formula of this test may use."""
        quantities = {q.replace("-", "_") for q in self.workings.quantities}
        assumed = {name for test, name in self.workings.assumed if test == self.test.id}
        return frozenset(self.columns | quantities | set(self.workings.constants) | assumed)

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
            return self.workings.observer.observed(self._reading(name, contender, key))
        quantity = as_id(name)
        if quantity in self.workings.quantities:
            return self._quantity(quantity, contender, key)
        if name in self.workings.constants:
            return self.workings.constants[name]
        if (self.test.id, name) in self.workings.assumed:
            return self.workings.assumed[self.test.id, name].of(contender)
        near = did_you_mean(name, self.known())
        raise KeyError(f"nothing here is called {name}" + (f"; {near}" if near else ""))

    def _reading(self, name: str, contender: str, key: PassKey, trace: bool = False) -> Reading:
        for part in dict.fromkeys((key.part, "")):
            found = ReadingKey(self.test.id, contender, key.specimen, key.pass_, part, name)
            if found in self.workings.readings:
                reading = self.workings.readings[found]
                self.keys += [*(r.key for r in chain_of(reading, self.workings.readings)), found]
                if reading.absent_because:
                    raise NoValue(reading.absent_because)
                if reading.series is not None and not trace:
                    raise MetrologyError(f"{name} is a trace, not one value", f"say what of it: highest({name})")
                return reading
        raise NoValue(NO_READING)

    def _quantity(self, quantity: str, contender: str, key: PassKey) -> Uncertain:
        """Pass by pass within one test, and across tests that count the same passes; else all of it as one value."""
        workings = self.workings.by_part(quantity, contender)
        if self._runs_beside(quantity, contender):
            for working in (
                w for part in dict.fromkeys((key.part, "")) for w in workings if w.key == replace(key, part=part)
            ):
                self.keys.extend(working.keys)
                return self._value_of(working)
        if self._counts_the_same(quantity, contender):
            parts = self.workings.parts_of(quantity)
            for working in self.workings.by_pass(quantity, contender, parts):
                if working.key == self.key:
                    self.keys.extend(working.keys)
                    return self._value_of(working)
        behind = [k for w in workings for k in w.keys]
        self.keys.extend(behind)
        self.settled.update(behind)
        self.joined = True
        self._doubt(doubt_of(workings))
        value = self.workings.joined(quantity, contender)
        self.behind = Whole(quantity, contender, tuple(self.workings.counted(quantity, contender)), value)
        return value

    def _value_of(self, working: Working) -> Uncertain:
        if working.value is None:
            raise NoValue(working.absent_because)
        self.behind = working
        self._doubt(working.doubt)
        return working.value

    def _doubt(self, doubt: Doubt | Literal[""]) -> None:
        if doubt:
            self.doubts.append(doubt)

    def _runs_beside(self, quantity: str, contender: str) -> bool:
        if any(q.id == quantity for q in self.test.quantities):
            return True
        mine = self.workings.pass_keys(self.quantity.id, self.contender)
        theirs = self.workings.pass_keys(quantity, contender)
        return mine == theirs or mine == {replace(k, part="") for k in theirs}

    def _counts_the_same(self, quantity: str, contender: str) -> bool:
        """Whether both count the same passes, those left out apart and parts joined."""
        return self.workings.pass_keys(self.quantity.id, self.contender) == frozenset(
            self.workings.runs(quantity, contender)
        )

    def _noted(self, name: str, value: Uncertain) -> Uncertain:
        keys = (self.keys[-1],) if self.keys and self.keys[-1].name == name else ()
        step = Step(name, value.value, value.unit.symbol, value.limit, keys)
        if step not in self.steps:
            self.steps.append(step)
        return value

"""Passes worked out once more, by another engine, from what their formulas were told the first time.

Quantities that feed others are worked out anew as well: nothing that isn't straight is taken for straight on the way.
What a function found along a channel stays as it was found, to first order.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import Generic, TypeVar

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.nested import by_specimens, joined_by, several_specimens
from reportgen.evaluation.picking import places
from reportgen.evaluation.working import Answer, Heard, OfSpecimen, Whole, Working
from reportgen.evaluation.workings import stood_on
from reportgen.metrology.formulas.engine import Engine
from reportgen.metrology.formulas.evaluate import evaluate_by
from reportgen.metrology.formulas.grammar import Call, Expression
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import Unit
from reportgen.metrology.unit_algebra import step_of

V = TypeVar("V")


class Replayed(Generic[V]):
    """Works passes out by `engine`, each once. `expressions`, `units` and `quantities` are by quantity id."""

    def __init__(
        self,
        engine: Engine[V],
        expressions: Mapping[str, Expression],
        units: Mapping[str, Unit],
        quantities: Mapping[str, Quantity],
    ) -> None:
        self.engine, self.expressions, self.units, self.quantities = engine, expressions, units, quantities
        self._passes: dict[int, tuple[Working, V]] = {}

    def over_passes(self, quantity: str, passes: Sequence[Working]) -> V:
        """Passes joined as the quantity says. The least, most or middle is the one it was by its readings."""
        how = self.quantities[quantity].over_passes
        if how in ("least", "most", "middle"):
            at = [w.value.value or 0.0 for w in passes if w.value is not None]
            return self.engine.joins["mean"]([self.of(passes[i]) for i in places(how, at)])
        return self.engine.joins[how or "mean"]([self.of(w) for w in passes])

    def over_specimens(self, quantity: str, passes: Sequence[Working]) -> V:
        """The same where each specimen is one value, however many passes it had."""
        values = [self.over_passes(quantity, group) for group in by_specimens(passes)]
        return self.engine.joins[joined_by(self.quantities[quantity])](values) if len(values) > 1 else values[0]

    def of(self, working: Working) -> V:
        """One pass, its parts joined."""
        if id(working) not in self._passes:
            self._passes[id(working)] = (working, self._worked_out(working))
        return self._passes[id(working)][1]

    def _worked_out(self, working: Working) -> V:
        if working.of_parts:
            return self.engine.joins[working.joined_by]([self.of(w) for w in working.of_parts])
        if working.heard is None:
            assert working.value is not None
            return self.engine.leaf(working.value)
        told = _Told(self, working.heard)
        found = evaluate_by(self.engine, self.expressions[working.heard.quantity], told, told.along)
        return self.engine.in_unit(found, self.units[working.heard.quantity])

    def answer(self, answer: Answer) -> V:
        """What a formula was told, as this engine has it."""
        if isinstance(answer, Uncertain):
            return self.engine.leaf(answer)
        if isinstance(answer, Working):
            return self.of(answer)
        if isinstance(answer, OfSpecimen):
            return self.engine.joins["mean"]([self.answer(each) for each in answer.answers])
        return self._whole(answer)

    def _whole(self, whole: Whole) -> V:
        """All passes of a quantity, and beside them how far those scatter, which stays as it was found."""
        scatter = {s: c for s, c in whole.value.contributions.items() if s.sort == "scatter" and s.of == whole.quantity}
        by = self if scatter else self._stood_on()
        joined = by.over_specimens if several_specimens(whole.passes) else by.over_passes
        mean = joined(whole.quantity, whole.passes)
        if not scatter:
            return mean
        beside = Uncertain(0.0, step_of(self.engine.unit_of(mean)), scatter)
        return self.engine.signs["+"](mean, self.engine.leaf(beside))

    def _stood_on(self) -> Replayed[V]:
        """The same of one reading that several passes of something else stand on."""
        leaf = self.engine.leaf
        engine = replace(self.engine, leaf=lambda x: leaf(stood_on(x)))
        return Replayed(engine, self.expressions, self.units, self.quantities)


class _Told(Generic[V]):
    """The answers of one pass, in the order they were given."""

    def __init__(self, replayed: Replayed[V], heard: Heard) -> None:
        self.replayed = replayed
        self.answers: Iterator[tuple[Answer, ...]] = iter(heard.answers)

    def value(self, name: str) -> V:
        return self.over_passes(name)[0]

    def over_passes(self, name: str) -> Sequence[V]:
        return [self.replayed.answer(answer) for answer in next(self.answers)]

    over_parts = over_passes

    def of(self, contender: str, name: str) -> V:
        return self.value(name)

    def along(self, call: Call) -> Uncertain:
        (found,) = next(self.answers)
        assert isinstance(found, Uncertain)
        return found

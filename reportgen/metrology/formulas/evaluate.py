"""A formula's tree and the readings behind its names → one value, by whatever engine works it out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Generic, TypeVar, cast

from reportgen.metrology import arithmetic
from reportgen.metrology.errors import MetrologyError, NoValue
from reportgen.metrology.formulas.along import along_channel
from reportgen.metrology.formulas.engine import FIRST_ORDER, Engine
from reportgen.metrology.formulas.grammar import (
    OVER_CHANNELS,
    Call,
    Expression,
    Name,
    Negated,
    Number,
    Operation,
)
from reportgen.metrology.formulas.lookup import Lookup, Names
from reportgen.metrology.formulas.placed import at_column
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import NUMBER, alike, named

Along = Callable[[Call], Uncertain]
V = TypeVar("V")


def evaluate(expression: Expression, lookup: Lookup) -> Uncertain:
    """The formula's value to first order, in whatever unit it comes to.

    Derivatives are exact (JCGM 100, 5.1.3). Where all inputs stand by name, `output_estimate` is shorter.

    >>> from reportgen.metrology.formulas.parse import parse
    >>> class Bench:
    ...     def value(self, name):
    ...         return arithmetic.exact({"before": 231.4, "after": 217.1}[name])
    >>> round(evaluate(parse("before - after"), Bench()).value, 9)
    14.3

    Raises FormulaError with the column where names, units or functions don't fit, and NoValue with the column where
    the formula is sound but these readings give nothing.
    """
    inside = partial(evaluate, lookup=lookup)
    return evaluate_by(FIRST_ORDER, expression, lookup, partial(along_channel, lookup=lookup, value_of=inside))


def evaluate_by(engine: Engine[V], expression: Expression, names: Names[V], along: Along) -> V:
    """The formula's value as `engine` works it out; `along` gives what a function finds along a channel.

    Raises as `evaluate` does.
    """
    return _Formula(engine, names, along).value(expression)


ENERGIES = {"energy_mean": "energy mean", "energy_sum": "energy sum"}


class _Formula(Generic[V]):
    """A walk over the tree. Nothing is kept between two nodes but what the whole walk is given."""

    def __init__(self, engine: Engine[V], names: Names[V], along: Along) -> None:
        self.engine, self.names, self.along = engine, names, along

    def value(self, expression: Expression) -> V:
        spine: list[Operation] = []  # a long a + b + c … leans left; walking down it keeps the stack flat
        while isinstance(expression, Operation):
            spine.append(expression)
            expression = expression.left
        value = self._leaf(expression)
        for operation in reversed(spine):
            right = self.value(operation.right)
            value = at_column(operation.column, partial(self._operate, operation, value, right))
        return value

    def _leaf(self, expression: Expression) -> V:
        match expression:
            case Number(value=value):
                return self.engine.leaf(arithmetic.exact(value))
            case Name(column=column, name=name):
                return at_column(column, lambda: self.names.value(name), name)
            case Negated(column=column, operand=operand):
                inner = self.value(operand)
                return at_column(column, lambda: self.engine.negate(inner))
            case Call() as call:
                return self._call(call)
            case Operation():
                return self.value(expression)

    def _operate(self, operation: Operation, left: V, right: V) -> V:
        if operation.sign != "^":
            return self.engine.signs[operation.sign](left, right)
        plain, unit = self.engine.plain(right), self.engine.unit_of(right)
        if plain is None or not alike(unit, NUMBER):
            raise MetrologyError(
                f"the power is {named(unit) if unit.dimension else 'uncertain'}; it must be a plain number",
                "write a number such as 2 or 0.5",
            )
        return self.engine.power(left, arithmetic.in_unit(plain, NUMBER).value or 0.0)

    def _call(self, call: Call) -> V:
        if call.function in OVER_CHANNELS or call.function == "slope_of_parts":
            return self.engine.leaf(self.along(call))
        if call.function in self.engine.functions:
            inner = [self.value(argument) for argument in call.arguments]
            return at_column(call.column, lambda: self.engine.functions[call.function](*inner))
        if call.function == "of":
            contender, name = (cast(Name, argument) for argument in call.arguments)
            return at_column(contender.column, lambda: self.names.of(contender.name, name.name), name.name)
        if call.function in ENERGIES:
            return self._energies(call, ENERGIES[call.function])
        if call.function == "mean_of_passes":
            return self._over(call, self.names.over_passes, "mean")
        return self._over(call, self.names.over_parts, "sum")

    def _energies(self, call: Call, how: str) -> V:
        """Of one name over its parts; of several expressions, of those (microphone positions in columns)."""
        if len(call.arguments) == 1 and isinstance(call.arguments[0], Name):
            return self._over(call, self.names.over_parts, how)
        values = [self.value(argument) for argument in call.arguments]
        return at_column(call.column, lambda: self.engine.joins[how](values))

    def _over(self, call: Call, find: Callable[[str], Sequence[V]], how: str) -> V:
        argument = cast(Name, call.arguments[0])

        def work() -> V:
            values = find(argument.name)
            if not values:
                raise NoValue(f"{argument.name} was never read", "")
            return self.engine.joins[how](values)

        return at_column(argument.column, work, argument.name)

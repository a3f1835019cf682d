"""A formula's tree and the readings behind its names → one uncertain value."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Protocol, TypeVar, cast

from reportgen.metrology import arithmetic, channel_crossing, channel_during, channel_mean, channel_peak, combine
from reportgen.metrology.errors import FormulaError, MetrologyError, NoValue
from reportgen.metrology.grammar import OVER_CHANNELS, Call, Expression, Name, Negated, Number, Operation
from reportgen.metrology.trace import Trace
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import NUMBER, alike, named

Found = TypeVar("Found", Uncertain, Trace)


class Lookup(Protocol):
    """Where a formula's names get their values, for one contender, pass and part.

    Each raises KeyError for a name nobody knows; with a message as its argument, that is what the author is told
    (`KeyError("there is no gas; did you mean gas_burned?")`). Each may raise NoValue where nothing was read.
    """

    def value(self, name: str) -> Uncertain:
        """The reading of this pass and part, a quantity worked out for it, or a constant."""
        ...

    def over_passes(self, name: str) -> Sequence[Uncertain]:
        """The name in every pass that counts, for this contender and part."""
        ...

    def over_parts(self, name: str) -> Sequence[Uncertain]:
        """The name in every part of this pass; one value where there are no parts."""
        ...

    def of(self, contender: str, name: str) -> Uncertain:
        """The name for another contender (its spelling in formulas), same pass and part."""
        ...

    def trace(self, name: str) -> Trace:
        """The channel of a logger for this pass and part."""
        ...

    def found(self, function: str, channel: str, value: Uncertain, limit: Uncertain | None = None) -> None:
        """Told what a function found along a channel, for the working; with the limit of `when_over`, `when_under`."""
        ...


_OPERATIONS: dict[str, Callable[[Uncertain, Uncertain], Uncertain]] = {
    "+": arithmetic.add,
    "-": arithmetic.subtract,
    "*": arithmetic.multiply,
    "/": arithmetic.divide,
}
_PLAIN_FUNCTIONS: dict[str, Callable[[Uncertain], Uncertain]] = {
    "log": arithmetic.log,
    "exp": arithmetic.exp,
    "sqrt": arithmetic.sqrt,
}


def evaluate(expression: Expression, lookup: Lookup) -> Uncertain:
    """The formula's value in whatever unit it comes to.

    Raises FormulaError with the column where names, units or functions don't fit, and NoValue with the column where
    the formula is sound but these readings give nothing.
    """
    spine: list[Operation] = []  # a long a + b + c … leans left; walking down it keeps the stack flat
    while isinstance(expression, Operation):
        spine.append(expression)
        expression = expression.left
    value = _leaf(expression, lookup)
    for operation in reversed(spine):
        right = evaluate(operation.right, lookup)
        value = _at(operation.column, partial(_operate, operation, value, right))
    return value


def _leaf(expression: Expression, lookup: Lookup) -> Uncertain:
    match expression:
        case Number(value=value):
            return arithmetic.exact(value)
        case Name(column=column, name=name):
            return _at(column, lambda: lookup.value(name), name)
        case Negated(column=column, operand=operand):
            inner = evaluate(operand, lookup)
            return _at(column, lambda: arithmetic.negate(inner))
        case Call() as call:
            return _call(call, lookup)
        case Operation():
            return evaluate(expression, lookup)


def _operate(operation: Operation, left: Uncertain, right: Uncertain) -> Uncertain:
    if operation.sign != "^":
        return _OPERATIONS[operation.sign](left, right)
    if right.value is None or right.limit or right.contributions or not alike(right.unit, NUMBER):
        raise MetrologyError(
            f"the power is {named(right.unit) if right.unit.dimension else 'uncertain'}; it must be a plain number",
            "write a number such as 2 or 0.5",
        )
    return arithmetic.power(left, arithmetic.in_unit(right, NUMBER).value or 0.0)


def _call(call: Call, lookup: Lookup) -> Uncertain:
    if call.function in OVER_CHANNELS:
        return _along(call, lookup)
    first = call.arguments[0]
    if call.function in _PLAIN_FUNCTIONS:
        inner = evaluate(first, lookup)
        return _at(call.column, lambda: _PLAIN_FUNCTIONS[call.function](inner))
    if call.function == "of":
        contender, name = (cast(Name, argument) for argument in call.arguments)
        return _at(contender.column, lambda: lookup.of(contender.name, name.name), name.name)
    if call.function == "energy_mean":
        return _energy_mean(call, lookup)
    if call.function == "mean_of_passes":
        return _over(call, lookup.over_passes, combine.mean_of)
    return _over(call, lookup.over_parts, combine.sum_of)


_ALONG: dict[str, Callable[[Trace], Uncertain]] = {
    "highest": channel_peak.highest,
    "lowest": channel_peak.lowest,
    "mean_level": channel_mean.mean_level,
    "area": channel_mean.area,
}


def _along(call: Call, lookup: Lookup) -> Uncertain:
    """What a function finds along a channel."""
    trace = _trace(call.arguments[0], lookup)
    if call.function == "when":
        side: channel_crossing.Side = "over" if cast(Name, call.arguments[1]).name == "over" else "under"
        limit = evaluate(call.arguments[2], lookup)
        value = _at(call.column, lambda: channel_crossing.when(trace, side, limit))
        lookup.found(f"when_{side}", trace.name, value, limit)
        return value
    if call.function == "at":
        time = evaluate(call.arguments[1], lookup)
        value = _at(call.column, lambda: channel_during.value_at(trace, time))
    else:
        value = _at(call.column, lambda: _ALONG[call.function](trace))
    lookup.found(call.function, trace.name, value)
    return value


def _trace(argument: Expression, lookup: Lookup) -> Trace:
    if isinstance(argument, Name):
        return _at(argument.column, lambda: lookup.trace(argument.name), argument.name)
    stretch = cast(Call, argument)
    whole = _trace(stretch.arguments[0], lookup)
    begins, ends = (evaluate(time, lookup) for time in stretch.arguments[1:])
    return _at(stretch.column, lambda: channel_during.during(whole, begins, ends))


def _energy_mean(call: Call, lookup: Lookup) -> Uncertain:
    """Of one name over its parts; of several expressions, of those (microphone positions in columns)."""
    if len(call.arguments) == 1 and isinstance(call.arguments[0], Name):
        return _over(call, lookup.over_parts, combine.energy_mean)
    values = [evaluate(argument, lookup) for argument in call.arguments]
    return _at(call.column, lambda: combine.energy_mean(values))


def _over(
    call: Call, find: Callable[[str], Sequence[Uncertain]], join: Callable[[Sequence[Uncertain]], Uncertain]
) -> Uncertain:
    argument = cast(Name, call.arguments[0])
    values: list[Uncertain] = []

    def work() -> Uncertain:
        values.extend(find(argument.name))
        if not values:
            raise NoValue(f"{argument.name} was never read", "")
        return join(values)

    return _at(argument.column, work, argument.name)


def _at(column: int, work: Callable[[], Found], name: str = "") -> Found:
    """The work's value, its refusals given the column of the formula they belong to."""
    try:
        return work()
    except KeyError as unknown:
        told = str(unknown.args[0]) if unknown.args else ""
        says = told if told and told != name else f"nothing here is called {name}"
        raise FormulaError(column, says, "write the name of a reading, quantity or constant") from None
    except NoValue as nothing:
        raise NoValue(nothing.says, nothing.do, nothing.column or column) from None
    except FormulaError:
        raise
    except MetrologyError as refusal:
        raise FormulaError(column, refusal.says, refusal.do) from None

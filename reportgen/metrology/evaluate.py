"""A formula's tree and the readings behind its names → one value, by whatever engine works it out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Generic, Protocol, TypeVar, cast

from reportgen.metrology import (
    arithmetic,
    channel_crossing,
    channel_during,
    channel_mean,
    channel_peak,
    channel_plateau,
    channel_slope,
    channel_smooth,
    channel_state,
    fit,
)
from reportgen.metrology.engine import FIRST_ORDER, Engine
from reportgen.metrology.errors import FormulaError, MetrologyError, NoValue
from reportgen.metrology.grammar import OVER_CHANNELS, SIDED, Call, Expression, Name, Negated, Number, Operation
from reportgen.metrology.trace import Trace
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import NUMBER, alike, named, parse_unit

V = TypeVar("V")
Given = TypeVar("Given", covariant=True)
Found = TypeVar("Found")
Along = Callable[[Call], Uncertain]


class Names(Protocol[Given]):
    """Where a formula's names get their values, for one contender, pass and part.

    Each raises KeyError for a name nobody knows; with a message as its argument, that is what the author is told
    (`KeyError("there is no gas; did you mean gas_burned?")`). Each may raise NoValue where nothing was read.
    """

    def value(self, name: str) -> Given:
        """The reading of this pass and part, a quantity worked out for it, or a constant."""
        ...

    def over_passes(self, name: str) -> Sequence[Given]:
        """The name in every pass that counts, for this contender and part."""
        ...

    def over_parts(self, name: str) -> Sequence[Given]:
        """The name in every part of this pass; one value where there are no parts."""
        ...

    def of(self, contender: str, name: str) -> Given:
        """The name for another contender (its spelling in formulas), same pass and part."""
        ...


class Lookup(Names[Uncertain], Protocol):
    """The same with what is found to first order alone: along the channels of loggers, and lines through parts."""

    def pairs(self, name: str, other: str) -> tuple[str, Sequence[tuple[Uncertain, Uncertain]]]:
        """What this pass is called, and two names in each of its parts."""
        ...

    def trace(self, name: str) -> Trace:
        """The channel of a logger for this pass and part."""
        ...

    def found(
        self, function: str, channel: str, value: Uncertain, limit: Uncertain | None = None, times: int = 1
    ) -> None:
        """Told what a function found along a channel, for the working; one with a side (`when_over`) with its limit,
        and how often that was passed."""
        ...


def evaluate(expression: Expression, lookup: Lookup) -> Uncertain:
    """The formula's value to first order, in whatever unit it comes to.

    Derivatives are exact (JCGM 100, 5.1.3). Where all inputs stand by name, `output_estimate` is shorter.

    >>> from reportgen.metrology.formula import parse
    >>> class Bench:
    ...     def value(self, name):
    ...         return arithmetic.exact({"before": 231.4, "after": 217.1}[name])
    >>> round(evaluate(parse("before - after"), Bench()).value, 9)
    14.3

    Raises FormulaError with the column where names, units or functions don't fit, and NoValue with the column where
    the formula is sound but these readings give nothing.
    """
    return evaluate_by(FIRST_ORDER, expression, lookup, partial(along_channel, lookup=lookup))


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
            value = _at(operation.column, partial(self._operate, operation, value, right))
        return value

    def _leaf(self, expression: Expression) -> V:
        match expression:
            case Number(value=value):
                return self.engine.leaf(arithmetic.exact(value))
            case Name(column=column, name=name):
                return _at(column, lambda: self.names.value(name), name)
            case Negated(column=column, operand=operand):
                inner = self.value(operand)
                return _at(column, lambda: self.engine.negate(inner))
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
            return _at(call.column, lambda: self.engine.functions[call.function](*inner))
        if call.function == "of":
            contender, name = (cast(Name, argument) for argument in call.arguments)
            return _at(contender.column, lambda: self.names.of(contender.name, name.name), name.name)
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
        return _at(call.column, lambda: self.engine.joins[how](values))

    def _over(self, call: Call, find: Callable[[str], Sequence[V]], how: str) -> V:
        argument = cast(Name, call.arguments[0])

        def work() -> V:
            values = find(argument.name)
            if not values:
                raise NoValue(f"{argument.name} was never read", "")
            return self.engine.joins[how](values)

        return _at(argument.column, work, argument.name)


_ALONG: dict[str, Callable[[Trace], Uncertain]] = {
    "highest": channel_peak.highest,
    "lowest": channel_peak.lowest,
    "mean_level": channel_mean.mean_level,
    "area": channel_mean.area,
    "slope": channel_slope.slope,
}


def along_channel(call: Call, lookup: Lookup) -> Uncertain:
    """What a function finds along a channel or through parts, to first order. Raises as `evaluate` does."""
    if call.function == "slope_of_parts":
        return _through_parts(call, lookup)
    trace = _trace(call.arguments[0], lookup)
    if call.function in SIDED:
        side: channel_crossing.Side = "over" if cast(Name, call.arguments[1]).name == "over" else "under"
        limit = evaluate(call.arguments[2], lookup)
        work = channel_crossing.when if call.function == "when" else channel_state.how_long
        value = _at(call.column, lambda: work(trace, side, limit))
        times = channel_crossing.passings(trace, side, limit) if call.function == "when" else 1
        lookup.found(f"{call.function}_{side}", trace.name, value, limit, times)
        return value
    if call.function == "plateau":
        lasts, within = (evaluate(argument, lookup) for argument in call.arguments[1:])
        level = _at(call.column, lambda: channel_plateau.plateau(trace, lasts, within))
        lookup.found("plateau", trace.name, level.level)
        lookup.found("plateau_begins", trace.name, arithmetic.exact(level.begins, parse_unit("s")))
        return level.level
    if call.function == "at":
        time = evaluate(call.arguments[1], lookup)
        value = _at(call.column, lambda: channel_during.value_at(trace, time))
    else:
        value = _at(call.column, lambda: _ALONG[call.function](trace))
    lookup.found(call.function, trace.name, value)
    return value


def _through_parts(call: Call, lookup: Lookup) -> Uncertain:
    """The slope of the straight line through the parts of a pass, the first name against the second."""
    y, x = (cast(Name, argument).name for argument in call.arguments)

    def work() -> Uncertain:
        here, points = lookup.pairs(y, x)
        xs, ys = [at for _, at in points], [value for value, _ in points]
        return fit.line(xs, ys, name=f"{y} against {x}", where=here).slope

    value = _at(call.column, work)
    lookup.found(call.function, f"{y}, {x}", value)
    return value


def _trace(argument: Expression, lookup: Lookup) -> Trace:
    if isinstance(argument, Name):
        return _at(argument.column, lambda: lookup.trace(argument.name), argument.name)
    stretch = cast(Call, argument)
    whole = _trace(stretch.arguments[0], lookup)
    if stretch.function == "smoothed":
        over = evaluate(stretch.arguments[1], lookup)
        return _at(stretch.column, lambda: channel_smooth.smoothed(whole, over))
    begins, ends = (evaluate(time, lookup) for time in stretch.arguments[1:])
    return _at(stretch.column, lambda: channel_during.during(whole, begins, ends))


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

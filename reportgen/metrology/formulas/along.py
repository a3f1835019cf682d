"""Functions that look along a logger's channel, and the line through the parts of a pass, to first order."""

from __future__ import annotations

from collections.abc import Callable
from typing import cast

from reportgen.metrology import arithmetic, fit
from reportgen.metrology.formulas.grammar import SIDED, Call, Expression, Name
from reportgen.metrology.formulas.lookup import Lookup
from reportgen.metrology.formulas.placed import at_column
from reportgen.metrology.traces.crossing import Side, passings, when
from reportgen.metrology.traces.during import during, value_at
from reportgen.metrology.traces.mean import area, mean_level
from reportgen.metrology.traces.peak import highest, lowest
from reportgen.metrology.traces.plateau import plateau
from reportgen.metrology.traces.slope import slope
from reportgen.metrology.traces.smooth import smoothed
from reportgen.metrology.traces.state import how_long
from reportgen.metrology.traces.trace import Trace
from reportgen.metrology.uncertain import Uncertain
from reportgen.metrology.unit import parse_unit

ValueOf = Callable[[Expression], Uncertain]


_ALONG: dict[str, Callable[[Trace], Uncertain]] = {
    "highest": highest,
    "lowest": lowest,
    "mean_level": mean_level,
    "area": area,
    "slope": slope,
}


def along_channel(call: Call, lookup: Lookup, value_of: ValueOf) -> Uncertain:
    """What a function finds along a channel or through parts, to first order; `value_of` works out what stands inside.

    Raises as `evaluate` does.
    """
    if call.function == "slope_of_parts":
        return _through_parts(call, lookup)
    trace = _trace(call.arguments[0], lookup, value_of)
    if call.function in SIDED:
        side: Side = "over" if cast(Name, call.arguments[1]).name == "over" else "under"
        limit = value_of(call.arguments[2])
        work = when if call.function == "when" else how_long
        value = at_column(call.column, lambda: work(trace, side, limit))
        times = passings(trace, side, limit) if call.function == "when" else 1
        lookup.found(f"{call.function}_{side}", trace.name, value, limit, times)
        return value
    if call.function == "plateau":
        lasts, within = (value_of(argument) for argument in call.arguments[1:])
        level = at_column(call.column, lambda: plateau(trace, lasts, within))
        lookup.found("plateau", trace.name, level.level)
        lookup.found("plateau_begins", trace.name, arithmetic.exact(level.begins, parse_unit("s")))
        return level.level
    if call.function == "at":
        time = value_of(call.arguments[1])
        value = at_column(call.column, lambda: value_at(trace, time))
    else:
        value = at_column(call.column, lambda: _ALONG[call.function](trace))
    lookup.found(call.function, trace.name, value)
    return value


def _through_parts(call: Call, lookup: Lookup) -> Uncertain:
    """The slope of the straight line through the parts of a pass, the first name against the second."""
    y, x = (cast(Name, argument).name for argument in call.arguments)

    def work() -> Uncertain:
        here, points = lookup.pairs(y, x)
        xs, ys = [at for _, at in points], [value for value, _ in points]
        return fit.line(xs, ys, name=f"{y} against {x}", where=here).slope

    value = at_column(call.column, work)
    lookup.found(call.function, f"{y}, {x}", value)
    return value


def _trace(argument: Expression, lookup: Lookup, value_of: ValueOf) -> Trace:
    if isinstance(argument, Name):
        return at_column(argument.column, lambda: lookup.trace(argument.name), argument.name)
    stretch = cast(Call, argument)
    whole = _trace(stretch.arguments[0], lookup, value_of)
    if stretch.function == "smoothed":
        over = value_of(stretch.arguments[1])
        return at_column(stretch.column, lambda: smoothed(whole, over))
    begins, ends = (value_of(time) for time in stretch.arguments[1:])
    return at_column(stretch.column, lambda: during(whole, begins, ends))

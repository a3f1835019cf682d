"""A formula set as mathematics: with the names a reader knows, and with the values of one pass in their place."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from reportgen.addresses import as_id, in_formula
from reportgen.campaign.declared import Campaign, Quantity
from reportgen.evaluation.evaluated import Step
from reportgen.metrology.background import NOTHING_FROM, stands_above
from reportgen.metrology.errors import FormulaError
from reportgen.metrology.formulas.grammar import (
    OVER_CHANNELS,
    SIDED,
    Call,
    Expression,
    Name,
    Negated,
    Number,
    Operation,
)
from reportgen.metrology.formulas.parse import parse
from reportgen.pages.math_pieces import (
    MINUS,
    TIMES,
    Math,
    bracketed,
    energy_difference,
    energy_mean,
    energy_sum,
    over_parts,
    row,
)
from reportgen.pages.words import has_words, words
from reportgen.wording import budget, number
from reportgen.wording.sentence import inside
from reportgen.wording.unit import joined

GATHERS = ("mean_of_passes", "sum_of_parts", "energy_mean", "energy_sum")  # of one name: over what it was read in
ENERGY = {"energy_mean": energy_mean, "energy_sum": energy_sum}
LONGEST = 40  # beyond so many pieces a formula with its values is no longer read


Put = Callable[[Expression], Math | None]


class NotShown(Exception):
    """What stands for a name can't be told for sure, or is only a bound."""


def parsed(quantity: Quantity) -> Expression | None:
    """The formula's tree; None for what has none, or is one name alone."""
    if quantity.count_of or not quantity.formula:
        return None
    try:
        tree = parse(quantity.formula)
    except FormulaError:
        return None
    return None if isinstance(tree, Name) else tree


def names_of(campaign: Campaign, quantity: Quantity) -> Callable[[str], str]:
    """Readings by their heading, quantities by their title, constants and contenders by their name."""
    columns = {c.name: c.heading for c in campaign.test(quantity.test).columns}
    titles = {q.id: q.title for t in campaign.tests for q in t.quantities}
    titles = {id: inside(title) for id, title in titles.items()} | {c.id: c.title for c in campaign.contenders}
    if quantity.until is not None:
        columns[f"{in_formula(quantity.id)}_limit"] = words("formula.limit")

    def said(name: str) -> str:
        return columns.get(name) or titles.get(as_id(name)) or as_id(name).replace("-", " ")

    return said


def with_names(tree: Expression, said: Callable[[str], str]) -> Math:
    """The formula with every name as a reader knows it."""

    def put(part: Expression) -> Math | None:
        if isinstance(part, Call) and part.function == "of":
            who, name = (said(a.name) for a in part.arguments if isinstance(a, Name))
            return Math("name", words("reading.of", name=name, who=who))
        if isinstance(part, Call) and part.function in ENERGY and _gathers(part):
            return over_parts(part.function, _set(part.arguments[0], put))
        return Math("name", said(part.name)) if isinstance(part, Name) else None

    return _set(tree, put)


def with_values(tree: Expression, steps: Sequence[Step], decimals: Callable[[Step], int | None]) -> Math | None:
    """The formula with the value of each name in one pass; None where it can't be told, or is too long to be read.

    `decimals` are those a reading was written with, None for what is no reading in its own unit.
    """
    left: dict[str, list[Step]] = {}
    for step in steps:
        left.setdefault(step.name, []).append(step)

    def put(part: Expression) -> Math | None:
        if isinstance(part, Name):
            return _one(left.get(part.name, ()), decimals)
        if isinstance(part, Call) and part.function == "of":
            who, name = part.arguments
            key = f"{name.name} of {as_id(who.name)}" if isinstance(who, Name) and isinstance(name, Name) else ""
            return _one(left.get(key, ()), decimals)
        if isinstance(part, Call) and part.function in OVER_CHANNELS:
            return _one(left.get(_channel_step(part), ()), decimals)
        if isinstance(part, Call) and part.function in GATHERS and _gathers(part):
            (of,) = part.arguments
            gathered = left.get(of.name, ()) if isinstance(of, Name) else ()
            return _called(part.function, [_value(s, decimals) for s in gathered])
        if isinstance(part, Call) and part.function == "less_background":
            return _less_background(part, left, put)
        return None

    try:
        made = _set(tree, put)
    except NotShown:
        return None
    return made if made.sort != "value" and _pieces(made) <= LONGEST else None


def _gathers(call: Call) -> bool:
    return len(call.arguments) == 1 and isinstance(call.arguments[0], Name)


def _less_background(call: Call, left: Mapping[str, list[Step]], put: Put) -> Math | None:
    """A level its background takes nothing off is set so; what can't be told apart by its steps isn't set at all."""
    names = [a.name for a in call.arguments if isinstance(a, Name)]
    found = [left[n][0] for n in names if len(left.get(n, ())) == 1]
    values = [s.value for s in found if s.value is not None]
    if len(values) < 2 or len({s.unit for s in found}) > 1:
        raise NotShown
    if stands_above(values[0], values[1]) <= NOTHING_FROM:
        return None
    return row(_set(call.arguments[0], put), Math("sign", MINUS), Math("value", joined("0", found[0].unit)))


def _one(steps: Sequence[Step], decimals: Callable[[Step], int | None]) -> Math:
    if len(steps) != 1:
        raise NotShown
    return _value(steps[0], decimals)


def _value(step: Step, decimals: Callable[[Step], int | None]) -> Math:
    if step.value is None or step.limit:
        raise NotShown
    read = decimals(step)
    if read is not None:
        figure = number.fixed(step.value, read)
        return Math("value", joined(figure, step.unit), figure=figure)
    return Math("value", budget.worked(step.value, None, step.unit), figure=budget.worked(step.value, None, ""))


def _channel_step(call: Call) -> str:
    """The name its step bears in a working."""
    channel = call.arguments[0]
    while isinstance(channel, Call):
        channel = channel.arguments[0]
    name = channel.name if isinstance(channel, Name) else ""
    side = call.arguments[1] if call.function in SIDED else None
    return f"{call.function}({name}, {side.name})" if isinstance(side, Name) else f"{call.function}({name})"


def _set(part: Expression, put: Put) -> Math:
    instead = put(part)
    if instead is not None:
        return instead
    match part:
        case Number(value=value):
            return Math("number", number.plain(value))
        case Name(name=name):
            return Math("name", name)
        case Negated(operand=operand):
            return row(Math("sign", MINUS), _held(operand, put, 2))
        case Operation(sign="/", left=left, right=right):
            return Math("fraction", inside=(_set(left, put), _set(right, put)))
        case Operation(sign="^", left=left, right=right):
            return Math("power", inside=(_held(left, put, 4), _set(right, put)))
        case Operation(sign="*", left=left, right=right):
            return row(_held(left, put, 2), Math("sign", TIMES), _held(right, put, 3))
        case Operation(sign=sign, left=left, right=right):
            own = Math("sign", MINUS if sign == "-" else "+")
            return row(_held(left, put, 1), own, _held(right, put, 2))
        case Call(function="sqrt", arguments=arguments):
            return Math("root", inside=(_set(arguments[0], put),))
        case Call(function="exp", arguments=arguments):
            return Math("power", inside=(Math("name", "e"), _set(arguments[0], put)))
        case Call(function=function, arguments=arguments):
            return _called(function, [_set(a, put) for a in arguments])


def _called(function: str, arguments: Sequence[Math]) -> Math:
    if not arguments:
        raise NotShown
    if function in ENERGY:
        return ENERGY[function](arguments)
    if function == "less_background":
        return energy_difference(*arguments)
    between = [piece for a in arguments for piece in (Math("sign", ","), a)][1:]
    key = f"function.{function}"
    said = words(key) if has_words(key) else function.replace("_", " ")
    said = f"{said}\u00a0" if " " in said else said
    return row(Math("function", said), bracketed(row(*between)))


_BINDS = {"+": 1, "-": 1, "*": 2, "/": 3, "^": 4}


def _held(part: Expression, put: Put, least: int) -> Math:
    """A piece with brackets where it binds less than what stands around it, or is below zero."""
    made = _set(part, put)
    binds = _BINDS[part.sign] if isinstance(part, Operation) else 1 if isinstance(part, Negated) else 5
    below_zero = made.sort == "value" and made.text.startswith(MINUS)
    united = made.sort == "value" and least == 4
    return bracketed(made) if binds < least or below_zero or united else made


def _pieces(made: Math) -> int:
    return 1 + sum(_pieces(piece) for piece in made.inside)


def equals(made: Math, value: str) -> tuple[Math, Math]:
    """Both sides of an equation: they may stand on two lines."""
    return made, row(Math("sign", "="), Math("value", value))


def said_to_be(name: Math, made: Math) -> tuple[Math, Math]:
    """What a formula is of, and the formula."""
    return name, row(Math("sign", "="), *((made.inside) if made.sort == "row" else (made,)))

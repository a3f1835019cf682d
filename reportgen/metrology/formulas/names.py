"""What a formula's tree looks up and uses: names, contenders, functions, channels."""

from __future__ import annotations

from collections.abc import Iterator
from typing import cast

from reportgen.metrology.formulas.grammar import (
    OVER_PARTS,
    SIDED,
    Call,
    Expression,
    Name,
    Negated,
    Operation,
)


def names_in(expression: Expression) -> frozenset[str]:
    """The readings, quantities and constants it looks up, wherever they stand; contenders aren't among them.

    >>> from reportgen.metrology.formulas.parse import parse
    >>> sorted(names_in(parse("before - after + of(ostler, drift)")))
    ['after', 'before', 'drift']
    """
    return frozenset(part.name for part in parts_of(expression) if isinstance(part, Name))


def contenders_in(expression: Expression) -> frozenset[str]:
    """The contenders it reads from, by `of(contender, x)`.

    >>> from reportgen.metrology.formulas.parse import parse
    >>> contenders_in(parse("gas / of(ostler, gas)"))
    frozenset({'ostler'})
    """
    calls = (part for part in parts_of(expression) if isinstance(part, Call) and part.function == "of")
    return frozenset(cast(Name, call.arguments[0]).name for call in calls)


def functions_in(expression: Expression) -> frozenset[str]:
    """The functions it uses.

    >>> from reportgen.metrology.formulas.parse import parse
    >>> functions_in(parse("log(a) + log(b)"))
    frozenset({'log'})
    """
    return frozenset(part.function for part in parts_of(expression) if isinstance(part, Call))


def parts_of(expression: Expression) -> Iterator[Expression]:
    """Every part of the tree, itself first; the contender in `of`, over and under in `when` left out."""
    waiting = [expression]
    while waiting:
        part = waiting.pop()
        yield part
        match part:
            case Negated(operand=operand):
                waiting.append(operand)
            case Operation(left=left, right=right):
                waiting += (right, left)
            case Call(function=function, arguments=arguments):
                waiting += reversed(_looked_up(function, arguments))


def names_part_by_part(expression: Expression) -> frozenset[str]:
    """The names looked up in each part by itself; what stands in a function over all parts of a pass isn't.

    >>> from reportgen.metrology.formulas.parse import parse
    >>> names_part_by_part(parse("sum_of_parts(gas) / boil_time"))
    frozenset({'boil_time'})
    """
    waiting, found = [expression], set()
    while waiting:
        part = waiting.pop()
        if isinstance(part, Name):
            found.add(part.name)
        elif not isinstance(part, Call):
            waiting += list(_inside(part))
        elif not _over_parts(part):
            waiting += _looked_up(part.function, part.arguments)
    return frozenset(found)


def _over_parts(call: Call) -> bool:
    alone = len(call.arguments) == 1 and isinstance(call.arguments[0], Name)
    return call.function in OVER_PARTS or (call.function in ("energy_mean", "energy_sum") and alone)


def _inside(part: Expression) -> tuple[Expression, ...]:
    match part:
        case Negated(operand=operand):
            return (operand,)
        case Operation(left=left, right=right):
            return (left, right)
    return ()


def _looked_up(function: str, arguments: tuple[Expression, ...]) -> tuple[Expression, ...]:
    """The arguments that stand for values: not the contender in `of`, nor over and under."""
    if function == "of":
        return arguments[1:]
    return (arguments[0], *arguments[2:]) if function in SIDED else arguments

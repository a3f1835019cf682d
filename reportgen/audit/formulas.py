"""Rules on formulas that work out, and mean something else than their author may think."""

from __future__ import annotations

import re
from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Quantity
from reportgen.metrology.formulas.grammar import Expression, Name, Negated, Number, Operation
from reportgen.metrology.formulas.parse import parse
from reportgen.metrology.unit import parse_unit

_BACKGROUND = re.compile(r"background|ambient|quiet|silence|noise_floor")


def percent_twice(case: Case) -> Iterable[Seen]:
    """Quantities in % whose formula multiplies by 100."""
    for quantity, formula in _formulas(case):
        if quantity.unit.strip() == "%" and _times_100(formula):
            says = f"{quantity.id} is in %, and its formula, `{quantity.formula}`, multiplies by 100."
            yield _seen(case, quantity, says)


def background_subtracted(case: Case) -> Iterable[Seen]:
    """A background in decibels that is taken off with a minus."""
    for quantity, formula in _formulas(case):
        if not isinstance(formula, Operation) or formula.sign != "-" or not isinstance(formula.right, Name):
            continue
        if _BACKGROUND.search(formula.right.name) and parse_unit(quantity.unit).kind == "level":
            says = f"`{quantity.formula}` is a difference of levels; it doesn't take the background out."
            yield _seen(case, quantity, says)


def _formulas(case: Case) -> Iterable[tuple[Quantity, Expression]]:
    for quantity in (q for t in case.declared.campaign.tests for q in t.quantities):
        if not quantity.count_of:
            yield quantity, parse(quantity.formula)


def _seen(case: Case, quantity: Quantity, says: str) -> Seen:
    return Seen(case.declared.at(f"quantity/{quantity.id}/formula"), says, f"quantity/{quantity.id}")


def _times_100(formula: Expression) -> bool:
    """Whether the whole is 100 times something; over something, it still is."""
    match formula:
        case Number(value=value):
            return value == 100
        case Negated(operand=operand):
            return _times_100(operand)
        case Operation(sign="*", left=left, right=right):
            return _times_100(left) or _times_100(right)
        case Operation(sign="/", left=left):
            return _times_100(left)
    return False

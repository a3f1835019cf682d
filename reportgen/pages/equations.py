"""A quantity's formula on its page, and each pass's with the values in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from reportgen.addresses import as_id, from_to, quantity_anchor, test_page
from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import PassValue, Result, Step
from reportgen.metrology.background import BOUND_UNDER, MOST, NOTHING_FROM
from reportgen.metrology.formulas.grammar import Expression
from reportgen.metrology.formulas.names import names_in
from reportgen.pages.formula_shown import equals, names_of, parsed, said_to_be, with_names, with_values
from reportgen.pages.math_pieces import Math
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.theme import Link
from reportgen.wording import budget, number
from reportgen.wording.sentence import paragraph

WRITTEN_OUT = 24  # pieces of all passes together, beyond which the first pass stands for them


@dataclass(frozen=True)
class Equation:
    """A formula with values: its two `sides`; `part` where the pass is of several."""

    part: str
    sides: tuple[Math, ...]


def formula_set(told: Told, quantity: Quantity) -> tuple[Math, ...]:
    """What a quantity is worked out from; empty where it is a reading."""
    tree = parsed(quantity)
    if tree is None:
        return ()
    return said_to_be(Math("name", heading(quantity)), with_names(tree, names_of(told.campaign, quantity)))


def said_beside(quantity: Quantity) -> str:
    """What its formula leaves unsaid: when a background is taken off, what lg is, where a moving mean ends; mostly
    empty."""
    if "less_background(" in quantity.formula:
        least, none, most = (number.plain(x) for x in (BOUND_UNDER, NOTHING_FROM, MOST))
        return words("formula.background", least=least, none=none, most=most)
    return paragraph(
        words("formula.lg") if "energy_" in quantity.formula else "",
        words("formula.smoothed") if "smoothed(" in quantity.formula else "",
    )


def leads(told: Told, page: str, quantity: Quantity) -> tuple[Link, ...]:
    """The other quantities in the formula, and where each of them is worked out."""
    tree = parsed(quantity)
    of_ids = {q.id: q for t in told.campaign.tests for q in t.quantities}
    columns = {c.name for c in told.campaign.test(quantity.test).columns}
    found = []
    for id in sorted({as_id(named) for named in (names_in(tree) if tree else ()) if named not in columns}):
        each = {r.part for r in told.evaluation.results if r.quantity == id}
        if id in of_ids and id != quantity.id and each == {""}:
            other = of_ids[id]
            address = f"{test_page(told.campaign.id, other.test)}#{quantity_anchor(id)}"
            found.append(Link(heading(other), from_to(page, address)))
    return tuple(found)


def equations(told: Told, quantity: Quantity, result: Result, unit: str) -> tuple[tuple[Equation, ...], ...]:
    """By pass, in order: its formula with values. Of many or long ones the first used pass alone has them."""
    tree = parsed(quantity)
    if tree is None:
        return tuple(() for _ in result.by_pass)
    made = [tuple(_of(told, tree, result, p, unit)) for p in result.by_pass]
    if sum(len(side.inside) + 1 for of in made for one in of for side in one.sides) <= WRITTEN_OUT:
        return tuple(made)
    first = next((n for n, p in enumerate(result.by_pass) if made[n] and not p.excluded), -1)
    return tuple(of if n == first else () for n, of in enumerate(made))


def _of(told: Told, tree: Expression, result: Result, p: PassValue, unit: str) -> Sequence[Equation]:
    def decimals(step: Step) -> int | None:
        read = told.readings.readings.get(step.keys[0]) if len(step.keys) == 1 and step.name in columns else None
        return read.decimals if read and read.unit == step.unit else None

    columns = {c.name for c in told.campaign.test(result.test).columns}
    found = []
    for part in p.of_parts or (p,):
        if part.value is None or part.limit or part.word:
            return ()
        made = with_values(tree, part.steps, decimals)
        if made is None:
            return ()
        sides = equals(made, budget.worked(part.value, result.u, unit))
        found.append(Equation(part.part if p.of_parts else "", sides))
    return found

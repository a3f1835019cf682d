"""Whether the formula for what a use costs can be read, and names quantities that are numbers."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.addresses import in_formula
from reportgen.campaign.declared import Declared
from reportgen.finding import Finding, Place
from reportgen.metrology.errors import FormulaError, did_you_mean
from reportgen.metrology.formulas.names import names_in
from reportgen.metrology.formulas.parse import parse

NO_NUMBERS = ("yes/no", "grade", "order")


def cost_misfits(declared: Declared) -> Iterable[Finding]:
    """What is wrong with `use:`; its formula stands on quantities and constants alone."""
    campaign = declared.campaign
    use = campaign.verdict.use if campaign.verdict else None
    if use is None:
        return
    at, of = declared.at("verdict/use"), f"In `cost: {use.cost}`"
    try:
        names = names_in(parse(use.cost))
    except FormulaError as wrong:
        place = Place(at.file, at.line, at.column + wrong.column - 1) if at.column else at
        yield Finding("error", "formula", place, f"{of}: {wrong.says}", do=wrong.do)
        return
    quantities = {in_formula(q.id): q for t in campaign.tests for q in t.quantities}
    known = {*quantities, *(in_formula(c) for c in campaign.constants)}
    for name in sorted(names - known):
        near = did_you_mean(name, known)
        says = f"{of}: no quantity or constant is called {name}" + (f"; {near}" if near else "")
        yield Finding("error", "formula", at, says, do="Write the name of a quantity or constant.")
    for name in sorted(names & set(quantities)):
        if quantities[name].kind in NO_NUMBERS:
            says = f"{of}: {name} is of kind {quantities[name].kind}, which is no number to reckon with"
            yield Finding("error", "formula", at, says, do="Name a quantity that is measured or counted.")
    if not names & set(quantities) and names <= known:
        says = f"{of}: it names no quantity, so that a use would cost the same with every contender"
        yield Finding("error", "cost-alike", at, says, do="Name the quantity that a use takes, or take `use:` out.")

"""What using costs, on the campaign's page: who is cheapest where, break-evens, the lines."""

from __future__ import annotations

from dataclasses import dataclass, replace

from reportgen.charts.figure import Figure
from reportgen.evaluation.evaluated import CostOfUse, caveats_on_cost
from reportgen.pages.constants import ConstantShown, constants_in
from reportgen.pages.led import led_on
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.named import Named, named
from reportgen.pages.told import Told
from reportgen.prose.break_even import break_even_lines, differ_from_the_table
from reportgen.prose.cost import cheapest_line, in_all, left_out_lines, of_one_use, use_line
from reportgen.prose.out import out_by
from reportgen.theme import Link
from reportgen.wording.count import whole
from reportgen.wording.language import say


@dataclass(frozen=True)
class CostRow:
    """One contender: what a use costs, and what all the stated uses cost with the price; `out` by what it is out."""

    contender: Named
    out: str
    once: str
    in_all: str


@dataclass(frozen=True)
class CostShown:
    """`cheapest` says who is cheapest where, `break_evens` a sentence a pair; `in_all` heads that column.

    In `use` the quantities of the formula lead to where they are told; `constants` are the other names in it.
    """

    use: tuple[Link, ...]
    constants: tuple[ConstantShown, ...]
    marks: tuple[CaveatMark, ...]
    cheapest: str
    break_evens: tuple[str, ...]
    rows: tuple[CostRow, ...]
    in_all: str
    notes: tuple[str, ...]
    figure: Figure | None


def cost_of(told: Told, cost: CostOfUse, page: str) -> CostShown:
    """What `page` shows of it."""
    campaign = told.campaign
    rows = tuple(
        CostRow(
            named(campaign, line.name, page),
            out_by(campaign, told.evaluation, line.name),
            of_one_use(line, cost.currency),
            in_all(line, cost.high, cost.currency),
        )
        for line in cost.lines
    )
    return CostShown(
        use=led_on(page, use_line(campaign, cost)),
        constants=tuple(replace(c, name=c.name.replace("_", " ")) for c in constants_in(told, cost.formula, "use")),
        marks=marks(caveats_on_cost(told.evaluation, cost)),
        cheapest=cheapest_line(campaign, told.evaluation, cost),
        break_evens=break_even_lines(campaign, told.evaluation, cost),
        rows=rows,
        in_all=say("cost.in-all", uses=whole(round(cost.high))),
        notes=tuple(filter(None, (differ_from_the_table(cost), *left_out_lines(campaign, cost)))),
        figure=told.figures.get("cost-of-use"),
    )

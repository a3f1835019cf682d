"""What a spec sheet says of the thing itself: what was measured without a better or a worse, then what was typed."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.campaign.declared import Contender, Quantity, Test
from reportgen.evaluation.evaluated import Result
from reportgen.pages.figures_shown import Printed, printed
from reportgen.pages.limits import CaveatMark, marks
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.traces import working
from reportgen.wording.sentence import capital

IN_WORDS = ("yes/no", "grade", "count", "order")


@dataclass(frozen=True)
class Particular:
    """A line of the sheet. `figure` and `href` are there where it was measured; else `says` is the author's."""

    name: str
    says: str
    figure: Printed | None = None
    href: str = ""
    marks: tuple[CaveatMark, ...] = ()


def is_particular(test: Test) -> bool:
    """Whether a test tells of the thing itself (its weight, its length): nothing it measures is better or worse."""
    return all(_describes(q) for q in test.quantities)


def _describes(quantity: Quantity) -> bool:
    return quantity.better == "neither" and quantity.kind not in IN_WORDS


def particulars(told: Told, page: str, c: Contender, of: list[tuple[Test, Result]]) -> tuple[Particular, ...]:
    """`of`: the results of tests that tell of the thing itself."""
    measured = tuple(_measured(told, page, r) for _, r in of if not r.missing)
    return (*measured, *(Particular(capital(name), says) for name, says in c.facts.items()))


def _measured(told: Told, page: str, r: Result) -> Particular:
    return Particular(
        name=heading(told.campaign.quantity(r.quantity), r.part),
        says="",
        figure=printed([r])[0],
        href=working(told.campaign, page, r.test, r.quantity, r.contender, r.part),
        marks=marks(told.evaluation.caveats_on(r.quantity, r.rests_on)),
    )

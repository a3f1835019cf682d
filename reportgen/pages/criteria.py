"""What is weighed: groups, criteria, the worst and the best the author set, with or without repeats."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, quantity_anchor, test_page
from reportgen.campaign.declared import Criterion, Group, Quantity
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose import amounts
from reportgen.prose.criteria import criterion_lines
from reportgen.prose.rests import repeats_of
from reportgen.wording.interval import percent
from reportgen.wording.listing import commas
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class CriterionRow:
    """`about`: its part of its group where it isn't alone in it, and that ratios count where they do."""

    title: str
    href: str
    about: str
    worst: str
    best: str
    repeats: str


@dataclass(frozen=True)
class GroupRows:
    title: str
    weight: str
    rows: tuple[CriterionRow, ...]


@dataclass(frozen=True)
class CriteriaShown:
    """The groups in their order, and a sentence for each end that a value lies beyond, or for what isn't weighed."""

    groups: tuple[GroupRows, ...]
    notes: tuple[str, ...]


def criteria_of(told: Told, page: str) -> CriteriaShown:
    """The criteria as `page` shows them."""
    plan = told.campaign.verdict
    groups = plan.groups if plan else ()
    total = sum(float(g.weight) for g in groups if g.weight is not None)
    shown = []
    for g in groups:
        weight = percent(float(g.weight) / total) if g.weight is not None and total else words("weight.open")
        rows = tuple(_row(told, page, c, _share(c, g)) for c in g.criteria)
        shown.append(GroupRows(capital(g.title), weight, rows))
    notes = (line for g in groups for c in g.criteria for line in criterion_lines(told.campaign, told.evaluation, c))
    return CriteriaShown(tuple(shown), tuple(notes))


def _share(of: Criterion, group: Group) -> str:
    """How much of its group a criterion is; "" where it is alone in it."""
    weights = {c.quantity: float(c.weight if c.weight is not None else 1) for c in group.criteria}
    whole = sum(weights.values())
    alone = len(weights) == 1 or not whole
    return "" if alone else words("criterion.share", share=percent(weights[of.quantity] / whole))


def _row(told: Told, page: str, c: Criterion, share: str) -> CriterionRow:
    quantity = told.campaign.quantity(c.quantity)
    return CriterionRow(
        heading(quantity),
        f"{from_to(page, test_page(told.campaign.id, quantity.test))}#{quantity_anchor(quantity.id)}",
        commas([said for said in (share, words("criterion.ratio") if c.ratio else "") if said]),
        amounts.typed(c.worst),
        amounts.typed(c.best),
        _repeats(told, quantity),
    )


def _repeats(told: Told, quantity: Quantity) -> str:
    """Whether how far a repeat would differ is known, and from where: of those weighed, else of all."""
    verdict = told.evaluation.verdict
    overall = verdict.overall if verdict else None
    known = {use.quantity: use.known_scatter for use in verdict.criteria} if verdict else {}
    if not known.get(quantity.id):
        return words("repeats.count" if quantity.kind == "count" else "repeats.no")
    found = repeats_of(told.evaluation, quantity.id, overall.contenders if overall else ())
    return words({"some": "repeats.some", "stated": "repeats.stated"}.get(found, "repeats.yes"))

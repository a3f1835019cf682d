"""What is weighed: groups, criteria, the worst and the best the author set, with or without repeats."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, quantity_anchor, test_page
from reportgen.campaign.declared import Criterion
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose import amounts
from reportgen.prose.criteria import criterion_lines
from reportgen.wording.interval import percent
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class CriterionRow:
    """`share` is its part of its group, "" where it is alone in it; `scale` says that ratios count, where they do."""

    title: str
    href: str
    share: str
    scale: str
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
        whole = sum(float(c.weight if c.weight is not None else 1) for c in g.criteria)
        weight = percent(float(g.weight) / total) if g.weight is not None and total else words("weight.open")
        alone = len(g.criteria) == 1 or not whole
        rows = tuple(
            _row(told, page, c, "" if alone else percent(float(c.weight if c.weight is not None else 1) / whole))
            for c in g.criteria
        )
        shown.append(GroupRows(capital(g.title), weight, rows))
    notes = (line for g in groups for c in g.criteria for line in criterion_lines(told.campaign, told.evaluation, c))
    return CriteriaShown(tuple(shown), tuple(notes))


def _row(told: Told, page: str, c: Criterion, share: str) -> CriterionRow:
    quantity = told.campaign.quantity(c.quantity)
    verdict = told.evaluation.verdict
    known = {use.quantity: use.known_scatter for use in verdict.criteria} if verdict else {}
    return CriterionRow(
        heading(quantity),
        f"{from_to(page, test_page(told.campaign.id, quantity.test))}#{quantity_anchor(quantity.id)}",
        share,
        words("criterion.ratio") if c.ratio else "",
        amounts.typed(c.worst),
        amounts.typed(c.best),
        words("repeats.yes" if known.get(c.quantity) else "repeats.no"),
    )

"""Every pair on every headline quantity, for whoever wants the grid in full."""

from __future__ import annotations

from dataclasses import dataclass

from reportgen.addresses import from_to, test_page
from reportgen.pages.ahead import way_to
from reportgen.pages.beside import way_beside
from reportgen.pages.named import Named, named
from reportgen.pages.titles import heading
from reportgen.pages.told import Told
from reportgen.prose.sentences import pair_cell
from reportgen.theme import Link
from reportgen.wording.language import say

MOST_CONTENDERS = 12


@dataclass(frozen=True)
class MatrixCell:
    """`ahead` is the contender that is resolved better, None where nobody is; `word` is what is said of it, or of the
    pair; `means` says it as a sentence; `href` leads to the pair on the test's page, "" where they weren't compared."""

    ahead: Named | None
    word: str
    means: str
    href: str


@dataclass(frozen=True)
class MatrixRow:
    """A pair; `beside` leads to where the two stand side by side."""

    first: Named
    second: Named
    cells: tuple[MatrixCell, ...]
    beside: str


@dataclass(frozen=True)
class Matrix:
    """A row a pair, in the order of `headings`; `by_test`: it is laid out turned, since there are fewer pairs than
    tests, with `turned` holding the cells of each test.
    """

    headings: tuple[Link, ...]
    rows: tuple[MatrixRow, ...]
    by_test: bool = False
    turned: tuple[tuple[Link, tuple[MatrixCell, ...]], ...] = ()


def matrix_of(told: Told, page: str) -> Matrix:
    """Each pair on each headline quantity that has a direction; empty where pairs would fill pages."""
    campaign, evaluation = told.campaign, told.evaluation
    compared = {(c.quantity, c.part) for c in evaluation.comparisons}
    by_pair = {(c.quantity, c.part, c.first, c.second): c for c in evaluation.comparisons}
    columns = [
        (test, part) for test in campaign.tests for quantity, part in sorted(compared) if quantity == test.headline
    ]
    rows: list[MatrixRow] = []
    if len(campaign.contenders) > MOST_CONTENDERS:
        return Matrix((), ())
    for n, a in enumerate(campaign.contenders):
        for b in campaign.contenders[n + 1 :]:
            cells = []
            for test, part in columns:
                cell = pair_cell(campaign, evaluation, test.headline, a.id, b.id, part)
                pair = by_pair.get((test.headline, part, a.id, b.id))
                ahead = pair.favours if pair else None
                small = pair is not None and pair.decision == "no difference that matters"
                word = say("pair.ahead.small" if small else "pair.ahead") if ahead else cell.word
                who = named(campaign, ahead, page) if ahead else None
                cells.append(MatrixCell(who, word, cell.means, way_to(campaign, page, pair) if pair else ""))
            beside = way_beside(campaign, page, a.id, b.id)
            rows.append(MatrixRow(named(campaign, a.id, page), named(campaign, b.id, page), tuple(cells), beside))
    headings = tuple(
        Link(
            heading(campaign.quantity(test.headline), part),
            from_to(page, test_page(campaign.id, test.id)),
        )
        for test, part in columns
    )
    of_tests = tuple((h, tuple(row.cells[n] for row in rows)) for n, h in enumerate(headings))
    return Matrix(headings, tuple(rows), len(rows) < len(headings), of_tests)

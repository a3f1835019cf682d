"""Everything measured, laid out once so that any two contenders can be put beside each other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from reportgen.addresses import from_to, quantity_anchor, side_by_side_index, test_page
from reportgen.campaign.declared import Quantity, Test
from reportgen.evaluation.evaluated import Caveat, Comparison, Result
from reportgen.pages.beside import pairs_in
from reportgen.pages.figures_shown import Printed, printed
from reportgen.pages.pairs import PairShown, pairs_of
from reportgen.pages.told import Told
from reportgen.pages.traces import working


@dataclass(frozen=True)
class Value:
    """One result as it is printed, the way to its working, and the caveats that limit it."""

    result: Result
    figure: Printed
    href: str
    caveats: tuple[Caveat, ...]


@dataclass(frozen=True)
class Line:
    """One quantity (and part): `values` by contender, `pairs` by the two in the campaign's order.

    `href` leads to it on its test's page; every way begins in the folder of the pages side by side.
    """

    test: Test
    quantity: Quantity
    part: str
    href: str
    values: Mapping[str, Value]
    pairs: Mapping[tuple[str, str], tuple[Comparison, PairShown]]

    @property
    def is_headline(self) -> bool:
        return self.quantity.id == self.test.headline

    @property
    def has_direction(self) -> bool:
        return self.quantity.better != "neither"


@dataclass(frozen=True)
class Laid:
    """`lines` in the campaign's order, a test's headline first; `pairs` of contenders' ids in the campaign's order."""

    lines: tuple[Line, ...]
    pairs: tuple[tuple[str, str], ...]


def laid_out(told: Told) -> Laid:
    """The campaign laid out; nothing where there are no pairs."""
    pairs = pairs_in(told.campaign)
    lines = tuple(
        _line(told, test, quantity, part)
        for test in told.campaign.tests
        for quantity in sorted(test.quantities, key=lambda q: q.id != test.headline)
        for part in dict.fromkeys(r.part for r in told.evaluation.results if r.quantity == quantity.id)
    )
    return Laid(lines if pairs else (), pairs)


def _line(told: Told, test: Test, quantity: Quantity, part: str) -> Line:
    campaign = told.campaign
    page = side_by_side_index(campaign.id)
    results = [r for r in told.evaluation.results if (r.quantity, r.part) == (quantity.id, part)]
    compared = [c for c in told.evaluation.comparisons if (c.quantity, c.part) == (quantity.id, part)]
    shown = pairs_of(told, page, quantity, part)
    return Line(
        test=test,
        quantity=quantity,
        part=part,
        href=from_to(page, f"{test_page(campaign.id, test.id)}#{quantity_anchor(quantity.id, part)}"),
        values={
            r.contender: Value(
                r,
                figure,
                working(campaign, page, r.test, r.quantity, r.contender, r.part),
                told.evaluation.caveats_on(quantity.id, r.rests_on),
            )
            for r, figure in zip(results, printed(results), strict=True)
        },
        pairs={(c.first, c.second): (c, pair) for c, pair in zip(compared, shown, strict=True)},
    )

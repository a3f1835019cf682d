"""Places on a page that went by other names before: an old link ends at a line that leads on.

Which places a page has, only the page itself says; so these lines come after it is set.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, product
from typing import Literal

from reportgen.addresses import (
    caveat_anchor,
    claim_anchor,
    figure_anchor,
    pair_anchor,
    pairs_anchor,
    quantity_anchor,
    result_anchor,
    table_anchor,
)
from reportgen.campaign.declared import Campaign, Contender, Quantity
from reportgen.pages.limits import about_whom
from reportgen.pages.told import Page, Told
from reportgen.pages.words import words
from reportgen.theme import render
from reportgen.theme.render import way_to_root
from reportgen.wording.sentence import capital

PLACE = "<!-- formerly -->"  # where a page takes these lines
_ID = re.compile(r'\sid="([^"]+)"')


@dataclass(frozen=True)
class Was:
    """One place: its id before and now, and what is there: what `sort` says, or `text` where it is named."""

    old: str
    new: str
    sort: Literal["quantity", "table", "figure", "pairs", "claim", "named"]
    text: str


@dataclass(frozen=True)
class FormerView:
    """What `parts/formerly.html` is told: for each quantity its name before and now, and its places."""

    script: str
    lines: tuple[tuple[str, str, tuple[Was, ...]], ...]


def has_former_places(campaign: Campaign) -> bool:
    """Whether places on its pages may have had other names."""
    return bool(_renamed(campaign))


def with_former_places(told: Told, page: Page) -> Page:
    """The page with a line for each place on it that had another name."""
    if PLACE not in page.html:
        return page
    ids = frozenset(_ID.findall(page.html))
    lines = []
    for test in told.campaign.tests:
        for quantity in test.quantities:
            all_of_it = (*_places(told, quantity), *_claims(told, quantity))
            found = dict.fromkeys(w for w in all_of_it if w.new in ids and w.old not in ids)
            if found:
                before = quantity.formerly[0].replace("-", " ") if quantity.formerly else ""
                lines.append((capital(before), capital(quantity.title), tuple(found)))
    if of_caveats := tuple(dict.fromkeys(w for w in _caveats(told) if w.new in ids and w.old not in ids)):
        lines.append(("", words("formerly.caveats"), of_caveats))
    script = f"{way_to_root(page.address)}static/formerly.js"
    shown = render(told.theme, "parts/formerly.html", FormerView(script, tuple(lines)), page.address) if lines else ""
    return Page(page.address, page.html.replace(PLACE, shown.strip(), 1))


def _places(told: Told, q: Quantity) -> Iterator[Was]:
    """Every place that may bear a name of the quantity or of a contender, by each name it had."""
    people = told.campaign.contenders
    parts = dict.fromkeys(("", *(r.part for r in told.evaluation.results if r.quantity == q.id)))
    for name, part in product((q.id, *q.formerly), parts):
        if name != q.id:
            yield Was(quantity_anchor(name, part), quantity_anchor(q.id, part), "quantity", "")
            yield Was(table_anchor(name, part), table_anchor(q.id, part), "table", "")
            yield Was(figure_anchor(name, part), figure_anchor(q.id, part), "figure", "")
            yield Was(pairs_anchor(name, part), pairs_anchor(q.id, part), "pairs", "")
        for c in people:
            for other in _names(c):
                if (name, other) != (q.id, c.id):
                    yield Was(result_anchor(name, other, part), result_anchor(q.id, c.id, part), "named", c.title)
        for one, two in combinations(people, 2):
            for first, second in product(_names(one), _names(two)):
                if (name, first, second) != (q.id, one.id, two.id):
                    was, now = pair_anchor(name, first, second, part), pair_anchor(q.id, one.id, two.id, part)
                    yield Was(was, now, "named", words("formerly.pair", first=one.title, second=two.title))


def _claims(told: Told, q: Quantity) -> Iterator[Was]:
    """A claim is called by its quantity, unless its author gave it an id: by each name the quantity had."""
    for old, c in product(q.formerly, told.campaign.contenders):
        for claim in c.claims:
            if claim.quantity == q.id and claim.name.startswith(q.id):
                yield Was(claim_anchor(old + claim.name.removeprefix(q.id)), claim_anchor(claim.name), "claim", "")


def _caveats(told: Told) -> Iterator[Was]:
    """Caveats are called by what they are about: each by every name that had."""
    campaign = told.campaign
    for caveat in told.evaluation.caveats:
        about = about_whom(campaign, caveat)
        text = words("formerly.caveat", sort=words(f"sort.{caveat.sort}"), about=about) if about else ""
        for id, old in _renamed(campaign):
            was = re.sub(rf"(?<![a-z0-9]){re.escape(id)}(?![a-z0-9])", old, caveat.name)
            if was != caveat.name:
                new = caveat_anchor(caveat.name)
                yield Was(caveat_anchor(was), new, "named", text or words(f"sort.{caveat.sort}"))


def _renamed(campaign: Campaign) -> list[tuple[str, str]]:
    """Each id of a contender, test or quantity with each name it had."""
    now = [(c.id, old) for c in campaign.contenders for old in c.formerly]
    now += [(t.id, old) for t in campaign.tests for old in t.formerly]
    return [*now, *((q.id, old) for t in campaign.tests for q in t.quantities for old in q.formerly)]


def _names(c: Contender) -> tuple[str, ...]:
    return (c.id, *c.formerly)

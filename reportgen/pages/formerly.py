"""Places on a page that went by other names before: an old link ends at a line that leads on.

Which places a page has, only the page itself says; so these lines come after it is set.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
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
from reportgen.campaign.declared import Campaign, Contender, Quantity, Test
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
    """One place: its id before and now, and what is there: what `sort` says, or `text` where it is named. "itself" is
    the thing that a line is about."""

    old: str
    new: str
    sort: Literal["itself", "table", "figure", "pairs", "claim", "named"]
    text: str


@dataclass(frozen=True)
class FormerView:
    """What `parts/formerly.html` is told: for each test and quantity its name before and now, and its places."""

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
    taken = set(ids)
    lines = []
    for before, now, places in _by_line(told):
        found = []
        for was in places:
            if was.new in ids and was.old not in taken:
                taken.add(was.old)
                found.append(was)
        if found:
            lines.append((before, now, tuple(found)))
    script = f"{way_to_root(page.address)}static/formerly.js"
    shown = render(told.theme, "parts/formerly.html", FormerView(script, tuple(lines)), page.address) if lines else ""
    return Page(page.address, page.html.replace(PLACE, shown.strip(), 1))


def _by_line(told: Told) -> Iterator[tuple[str, str, Iterable[Was]]]:
    """What each line is about, by its name before ("" where that is the same) and now, and its places."""
    for test in told.campaign.tests:
        for quantity in test.quantities:
            yield _before(quantity), capital(quantity.title), (*_places(told, quantity), *_claims(told, quantity))
        yield _before(test), capital(test.title), _of_test(test)
    yield "", words("formerly.caveats"), _caveats(told)


def _before(of: Test | Quantity) -> str:
    return capital(of.formerly[0].replace("-", " ")) if of.formerly else ""


def _of_test(test: Test) -> Iterator[Was]:
    """Where the page of the method tells how the test was run."""
    for old in test.formerly:
        yield Was(old, test.id, "itself", "")


def _places(told: Told, q: Quantity) -> Iterator[Was]:
    """Every place that may bear a name of the quantity or of a contender, by each name it had."""
    people = told.campaign.contenders
    parts = dict.fromkeys(("", *(r.part for r in told.evaluation.results if r.quantity == q.id)))
    for name, part in product((q.id, *q.formerly), parts):
        if name != q.id:
            yield Was(quantity_anchor(name, part), quantity_anchor(q.id, part), "itself", "")
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
    renamed = _renamed(campaign)
    for caveat in told.evaluation.caveats:
        about = about_whom(campaign, caveat)
        text = words("formerly.caveat", sort=words(f"sort.{caveat.sort}"), about=about) if about else ""
        for was in _other_names(caveat.name, renamed):
            new = caveat_anchor(caveat.name)
            yield Was(caveat_anchor(was), new, "named", text or words(f"sort.{caveat.sort}"))


def _other_names(name: str, renamed: Mapping[str, tuple[str, ...]]) -> Iterator[str]:
    """The name by what each id in it was before, one of them or several at once."""
    if not renamed:
        return
    ids = "|".join(re.escape(id) for id in sorted(renamed, key=lambda id: (-len(id), id)))
    pieces = re.split(rf"(?<![a-z0-9])({ids})(?![a-z0-9])", name)
    for said in product(*((piece, *renamed.get(piece, ())) for piece in pieces)):
        if "".join(said) != name:
            yield "".join(said)


def _renamed(campaign: Campaign) -> Mapping[str, tuple[str, ...]]:
    """Each id of a contender, test or quantity that had other names, with these."""
    of: list[Contender | Test | Quantity] = [*campaign.contenders, *campaign.tests]
    of += [q for t in campaign.tests for q in t.quantities]
    found: dict[str, dict[str, None]] = {}
    for one in of:
        if one.formerly:
            found.setdefault(one.id, {}).update(dict.fromkeys(one.formerly))
    return {id: tuple(names) for id, names in found.items()}


def _names(c: Contender) -> tuple[str, ...]:
    return (c.id, *c.formerly)

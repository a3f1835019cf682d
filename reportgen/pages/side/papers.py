"""What two contenders are by their papers, beside each other: identity and prices, the box, facts, claims."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from reportgen.addresses import contender_page, from_to
from reportgen.campaign.declared import Contender
from reportgen.pages.claims import ClaimShown, claims_of
from reportgen.pages.identity import Fact, identity_of
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.box import received
from reportgen.wording.sentence import capital


@dataclass(frozen=True)
class SideFact:
    """A name and what there is to say of each; () where nobody noted it of one."""

    name: str
    says: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class SideClaims:
    """What each claims of one thing (`what`; for claims of nothing measured, that they are others)."""

    what: str
    claims: tuple[tuple[ClaimShown, ...], ...]


def facts_of(contenders: Sequence[Contender]) -> tuple[SideFact, ...]:
    """Each fact that is noted of any of them: those of `_ORDER` first, then further ones as they come."""
    by_name = [_by_name(c) for c in contenders]
    usual = [words(f"fact.{name}") for name in _ORDER]
    seen = dict.fromkeys(name for facts in by_name for name in facts)
    ordered = (*(n for n in usual if n in seen), *(n for n in seen if n not in usual))
    return tuple(SideFact(name, tuple(facts.get(name, ()) for facts in by_name)) for name in ordered)


_ORDER = ("maker", "model", "gtin", "called", "paid", "listed", "bought", "supplied", "box", "firmware", "settings")


def _by_name(c: Contender) -> dict[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {}
    as_it_came = [Fact(words("side.received"), line) for line in received(c)]
    typed = [Fact(capital(name), says) for name, says in c.facts.items()]
    for fact in (*identity_of(c), *as_it_came, *typed):
        found[fact.name] = (*found.get(fact.name, ()), fact.says)
    return found


def claims_beside(told: Told, page: str, contenders: Sequence[Contender]) -> tuple[SideClaims, ...]:
    """Claims about the same quantity in one row, in the order of the first who claims it; the rest in a last row."""
    of = [_leading_out(told, page, c) for c in contenders]
    titles = dict.fromkeys(claim.test.text for claims in of for claim in claims if claim.test)
    rows = [
        SideClaims(title, tuple(tuple(c for c in claims if c.test and c.test.text == title) for claims in of))
        for title in titles
    ]
    rest = tuple(tuple(c for c in claims if not c.test) for claims in of)
    return (*rows, SideClaims(words("side.claims.other"), rest)) if any(rest) else tuple(rows)


def _leading_out(told: Told, page: str, c: Contender) -> tuple[ClaimShown, ...]:
    """Its claims, each anchor made the way to where it stands on the contender's own sheet."""
    sheet = from_to(page, contender_page(told.campaign.id, c.id))
    return tuple(replace(claim, anchor=f"{sheet}#{claim.anchor}") for claim in claims_of(told, page, c))

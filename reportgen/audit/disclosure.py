"""Rules on disclosure: who paid, whether links earn money, whether makers gave samples."""

from __future__ import annotations

import re
from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Publication
from reportgen.finding import Place
from reportgen.prose.written import link_places
from reportgen.sources.workspace import PUBLICATION

# What addresses carry that pay for a click or a sale; common practice, no source.
EARNS = re.compile(
    r"[?&](tag|aff|affid|affiliate|aff_id|partner|ref|refid|awc|irclickid)=|/(aff|affiliate)/", re.IGNORECASE
)


def nobody_says_who_paid(case: Case) -> Iterable[Seen]:
    """A campaign that says nothing of money."""
    if not case.declared.campaign.who_pays and not case.publication.who_pays:
        yield Seen(case.declared.at(""), "Nothing says who paid for the products and the testing.")


def links_that_earn(case: Case) -> Iterable[Seen]:
    """Links whose addresses look as if they earned money, where nothing says so."""
    if case.declared.campaign.affiliate_links:
        return
    for file in case.declared.campaign.prose:
        for place, target in link_places(file):
            if EARNS.search(target):
                yield Seen(place, f"The link to `{target}` looks as if it earned money, and nothing says so.")


def interests_unsaid(case: Case) -> Iterable[Seen]:
    """A publication that says neither whether links earn money, nor whether makers give samples.

    A campaign by itself, without `content/publication.yaml`, isn't asked: it may be a draft on somebody's desk.
    """
    campaign = case.declared.campaign
    if case.publication == Publication():
        return
    silent = [
        what
        for what, said in (
            ("whether links earn money", campaign.affiliate_links),
            ("whether makers gave samples", campaign.samples),
        )
        if not said
    ]
    if silent:
        yield Seen(Place(PUBLICATION), f"Nothing says {', nor '.join(silent)}.")

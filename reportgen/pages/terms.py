"""Which terms the pages of a campaign explain where they say them first: those of the author's glossary, then ours."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from reportgen.campaign.declared import Campaign
from reportgen.pages.words import words
from reportgen.theme import Term
from reportgen.wording.sentence import capital

OURS = ("contender", "pass", "scatter", "standard-uncertainty", "degrees-of-freedom")


def terms_told(campaign: Campaign, glossary: Iterable[Term]) -> tuple[Term, ...]:
    """The terms for the campaign's pages. One that the author explains takes the place of ours; one that a title of the
    campaign's bears is left out, since a page could not tell the two apart."""
    by_author = tuple(glossary)
    taken = {form for term in by_author for form in term.forms} | {term.id for term in by_author}
    all_terms = (*by_author, *(term for term in _ours() if taken.isdisjoint({term.id, *term.forms})))
    titles = " / ".join(_titles(campaign)).lower()
    return tuple(term for term in all_terms if not any(_bears(titles, form) for form in term.forms))


def _ours() -> Iterator[Term]:
    for id in OURS:
        forms = tuple(words(f"term.{id}").split(" / "))
        yield Term(id, capital(forms[0]), forms, words(f"term.{id}.means"))


def _titles(campaign: Campaign) -> Iterator[str]:
    yield campaign.title
    yield from (contender.title for contender in campaign.contenders)
    for test in campaign.tests:
        yield test.title
        yield from (quantity.title for quantity in test.quantities)


def _bears(titles: str, form: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(form.lower())}(?!\w)", titles) is not None

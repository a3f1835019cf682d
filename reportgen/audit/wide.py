"""Rules on the author's sentences: those that speak wider than the readings reach."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.prose.praise import praise_beyond
from reportgen.prose.written import speaks_wide


def wide_prose(case: Case) -> Iterable[Seen]:
    """One specimen of each product was tested; nothing is known of the model, unless every method declares it."""
    if case.declared.campaign.of_products:
        return
    names = [name for c in case.declared.campaign.contenders for name in (c.title, c.maker) if name]
    for file in case.declared.campaign.prose:
        for place, words in speaks_wide(file, names):
            yield Seen(place, f"“{words}” speaks of more than the ones that were tested.")


def beyond_the_readings(case: Case) -> Iterable[Seen]:
    """Sentences that call a contender the best, or better than another, where no reading bears it out."""
    for file in case.declared.campaign.prose:
        for place, words, said in praise_beyond(file, case.declared.campaign, case.evaluation):
            yield Seen(place, f"“{words}” says “{said}”, and no first place or comparison here bears that out.")

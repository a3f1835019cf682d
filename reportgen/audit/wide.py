"""Rules on the author's sentences: those that speak wider than the readings reach."""

from __future__ import annotations

from collections.abc import Iterable

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import ProseFile
from reportgen.finding import Place
from reportgen.prose.praise import praise_beyond
from reportgen.prose.written import speaks_wide


def wide_prose(case: Case) -> Iterable[Seen]:
    """One specimen of each product was tested; nothing is known of the model, unless every method declares it."""
    if case.declared.campaign.of_products:
        return
    names = [name for c in case.declared.campaign.contenders for name in (c.title, c.maker) if name]
    for file, at in _texts(case):
        for place, words in speaks_wide(file, names):
            yield Seen(at or place, f"“{words}” speaks of more than the ones that were tested.")


def beyond_the_readings(case: Case) -> Iterable[Seen]:
    """Sentences that call a contender the best, or better than another, where no reading bears it out."""
    for file, at in _texts(case):
        for place, words, said in praise_beyond(file, case.declared.campaign, case.evaluation):
            yield Seen(at or place, f"“{words}” says “{said}”, and no first place or comparison here bears that out.")


def _texts(case: Case) -> Iterable[tuple[ProseFile, Place | None]]:
    """The author's files, and the words of the verdict with the place they stand at."""
    yield from ((file, None) for file in case.declared.campaign.prose)
    plan = case.declared.campaign.verdict
    if plan and plan.we_say and plan.we_say.words:
        at = case.declared.at("verdict/we-say")
        yield ProseFile("we-say", at.file, plan.we_say.words), at

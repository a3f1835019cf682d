"""What is compared or noted but doesn't stand in the grid, and where it stands instead."""

from __future__ import annotations

from collections.abc import Set

from reportgen.addresses import caveat_anchor, test_page
from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose.standing import standing
from reportgen.wording.count import in_words, whole
from reportgen.wording.language import say, say_of
from reportgen.wording.lead import led
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import inside, paragraph

_NAMED_AT_MOST = 8


def things_elsewhere(campaign: Campaign, evaluation: Evaluation) -> str:
    """Which of the things compared have no row in the grid, each leading to its pairs; "" where all have one."""
    headlines = {t.headline for t in campaign.tests}
    others = [f for f in evaluation.firsts if f.quantity not in headlines]
    if not others:
        return ""
    titles = []
    for first in others:
        s = standing(campaign, evaluation, first.quantity, first.part)
        title = inside(s.quantity.title)
        titles.append(s.led(say("part-of", title=title, part=s.part) if s.part else title))
    counts = {"count": in_words(len(others)), "all": in_words(len(evaluation.firsts))}
    many = len(others) > _NAMED_AT_MOST
    if many:
        return paragraph(say_of(len(others), "grid.elsewhere.many", **counts))
    return paragraph(say_of(len(others), "grid.elsewhere", titles=and_list(titles), **counts))


def notes_elsewhere(campaign: Campaign, evaluation: Evaluation, here: Set[int]) -> str:
    """Which numbers of notes don't occur in the grid, each leading to its note; "" where none is passed over.

    `here`: the numbers that do.
    """
    last = max(here, default=0)
    pages = {
        c.number: f"{test_page(campaign.id, r.test)}#{caveat_anchor(c.name)}"
        for r in reversed(evaluation.results)
        for c in evaluation.caveats_on(r.quantity, r.rests_on)
    }
    over = sorted(n for n in pages if n not in here and n < last)
    numbers = [led(whole(n), pages[n]) for n in over]
    if not over:
        return ""
    if len(over) > _NAMED_AT_MOST:
        return paragraph(say("grid.notes-elsewhere.many"))
    return paragraph(say_of(len(over), "grid.notes-elsewhere", numbers=and_list(numbers)))

"""Who is worth more as the verdict weighs, for pages that tell of one contender or of two."""

from __future__ import annotations

from reportgen.judgement.verdict.overall import PairIndex
from reportgen.pages.told import Told
from reportgen.pages.words import words
from reportgen.prose.overall import against, pair_firmness
from reportgen.wording.of_hundred import of_hundred


def worth_beside(told: Told, first: str, second: str) -> str:
    """Who of the two is worth more as the verdict weighs, and how firmly; "" where they weren't weighed."""
    overall = told.evaluation.verdict.overall if told.evaluation.verdict else None
    if overall is None or not {first, second} <= set(overall.contenders):
        return ""
    share = against(overall.index, first, second)
    ahead, behind = (first, second) if share >= 0.5 else (second, first)
    pair = PairIndex(ahead, behind, max(share, 1.0 - share))
    titles = {"ahead": told.campaign.contender(ahead).title, "behind": told.campaign.contender(behind).title}
    return words("side.weighed", draws=of_hundred(pair.index), firmness=pair_firmness(overall, pair), **titles)


def worth_of(told: Told, contender: str) -> str:
    """The same of a contender and the leader; of the leader itself and the nearest; "" where nobody leads."""
    overall = told.evaluation.verdict.overall if told.evaluation.verdict else None
    leader = overall.lead.leader if overall else None
    if overall is None or leader is None or contender not in overall.contenders or len(overall.contenders) < 2:
        return ""
    others = [c for c in overall.contenders if c != contender]
    nearest = min(others, key=lambda c: against(overall.index, contender, c))
    return worth_beside(told, contender, nearest if contender == leader else leader)

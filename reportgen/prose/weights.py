"""Weights of groups in words: "mostly speed (60 %), some thrift (30 %), a little quiet (10 %)"."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign
from reportgen.wording.interval import percent
from reportgen.wording.language import say
from reportgen.wording.listing import and_list, commas
from reportgen.wording.sentence import inside

_ALIKE = 1e-6  # weights nearer to each other than this are equal
_SOME = 0.2  # from this share on a group counts some, below it a little


def group_titles(campaign: Campaign, groups: Sequence[str]) -> tuple[str, ...]:
    """The groups as they read inside a sentence, in their order."""
    titles = {g.id: g.title for g in campaign.verdict.groups} if campaign.verdict else {}
    return tuple(inside(titles.get(g, g)) for g in groups)


def weights_in_words(titles: Sequence[str], weights: Sequence[float]) -> str:
    """What counts how much, the heaviest first; `weights` are 0 to 1 and together 1."""
    if len(titles) > 1 and max(weights) - min(weights) < _ALIKE:
        return say("weights.alike", groups=and_list(titles))
    if max(weights) > 1 - _ALIKE:
        return say("weights.only", group=titles[list(weights).index(max(weights))])
    heaviest_first = sorted(zip(titles, weights, strict=True), key=lambda pair: -pair[1])
    return commas([_one(title, weight) for title, weight in heaviest_first])


def _one(title: str, weight: float) -> str:
    if weight < _ALIKE:
        return say("weights.none", group=title)
    if abs(weight - 0.5) < _ALIKE:
        return say("weights.half", group=title, percent=percent(weight))
    how = "mostly" if weight > 0.5 else "some" if weight > _SOME - _ALIKE else "little"
    return say(f"weights.{how}", group=title, percent=percent(weight))

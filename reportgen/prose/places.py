"""What first place on one quantity comes to, in one word, for sentences that speak of several quantities at once."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, FirstPlace
from reportgen.prose.once import in_front, not_told_apart, open_in_front
from reportgen.prose.standing import Standing, standing
from reportgen.wording.count import in_words
from reportgen.wording.language import say

NOT_RANKED = (
    *("sessions-apart", "off-scale-both", "not-above-zero", "no-answer"),
    *("one-contender", "blocked", "no-result"),
)

Sort = Literal["winner", "shared", "tied", "once", "nothing"]


@dataclass(frozen=True)
class Place:
    """First place on one quantity. `sort`: a sole winner; shared, with others beaten to it; nobody told apart from
    anybody; readings without repeats; nothing that could be ranked.

    `ranked` is how many were ranked. `front`: the winner, those who share, or who read best in these runs.
    """

    s: Standing
    first: FirstPlace
    sort: Sort
    ranked: int
    front: tuple[str, ...]

    @property
    def title(self) -> str:
        """The quantity's, with its part."""
        title = self.s.quantity.title
        return say("part-of", title=title, part=self.s.part) if self.s.part else title

    @property
    def whom(self) -> str:
        """ "the four we bought"; fewer where some aren't ranked on it."""
        campaign, count = self.s.campaign, in_words(self.ranked)
        if self.ranked < len(campaign.contenders):
            return say("whom.ranked", count=count)
        if campaign.of_products:
            return say("whom.products", count=count)
        supplied = any(c.supplied_by for c in campaign.contenders)
        return say("whom.tested" if supplied else "whom.bought", count=count)

    @property
    def of_whom(self) -> str:
        """ "Of the four we bought, " with its comma."""
        return say("of-whom", whom=self.whom)


def placed(campaign: Campaign, evaluation: Evaluation, first: FirstPlace) -> Place:
    """First place on the quantity (and part) of `first`."""
    s = standing(campaign, evaluation, first.quantity, first.part)
    ranked = len(campaign.contenders) - len(first.unranked)
    sort = _sort(first, s, ranked)
    front = leader_once(s) if sort == "once" else first.may_be_first
    return Place(s, first, sort, ranked, front)


def _sort(first: FirstPlace, s: Standing, ranked: int) -> Sort:
    if first.winner:
        return "winner"
    if ranked < 2 or not first.may_be_first or first.reason.code in NOT_RANKED:
        return "nothing"
    known = [c for c in s.comparisons if c.decision != "not enough to say"]
    if first.reason.code == "never-enough":
        return "tied"
    if first.reason.code == "no-scatter-known" or (s.comparisons and not known):
        return "once"
    return "shared" if len(first.may_be_first) < ranked else "tied"


def leader_once(s: Standing) -> tuple[str, ...]:
    """Who read best in runs that weren't repeated, ahead of every other by more than the instrument can hide."""
    front = in_front(s)
    if len(front) != 1 or len(s.ranked) < 2:
        return ()
    leader = front[0].contender
    pairs = [s.pair(leader, r.contender) for r in s.ranked if r.contender != leader]
    if open_in_front(s, leader) or len(not_told_apart(s, leader)) > 1:
        return ()
    return (leader,) if all(p is not None and p.differed for p in pairs) else ()


def comes_first(p: Place) -> bool:
    """Is somebody its sole first?"""
    return p.sort == "winner"


def shares(p: Place) -> bool:
    """Do some share first place, ahead of others?"""
    return p.sort == "shared"


def read_best(p: Place) -> bool:
    """Did somebody read best, in runs that weren't repeated?"""
    return p.sort == "once" and bool(p.front)

"""Who comes first on a quantity, in a sentence or three: what a repeat would say first, these runs second."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation, FirstPlace
from reportgen.prose.amounts import full
from reportgen.prose.by_chance import first_by_chance, is_by_chance
from reportgen.prose.counting import counting
from reportgen.prose.once import once
from reportgen.prose.orders import ordering
from reportgen.prose.scatter_seen import two_passes
from reportgen.prose.standing import Standing, name, names, standing
from reportgen.prose.tie import beaten, learned, settle, tie, tied_within
from reportgen.prose.unranked import missing, off_scale, unranked, untouched
from reportgen.prose.values import values
from reportgen.prose.winner import winner
from reportgen.prose.yardstick import scatter_unknown
from reportgen.wording.language import say, say_of
from reportgen.wording.lead import bare
from reportgen.wording.sentence import paragraph


def first_place(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Who comes first on a quantity, how firm that is, and who stands outside the ranks; plain sentences."""
    return bare(first_place_led(campaign, evaluation, quantity, part))


def first_place_led(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """The same, its words about who is ahead leading to the pairs that are their reason."""
    s = standing(campaign, evaluation, quantity, part)
    said = paragraph(*_sentences(s))
    return say("of-part", part=part, says=said) if part else said


def _sentences(s: Standing) -> list[str]:
    if not any(not r.missing for r in s.results):
        return [say("first.not-tested")] if untouched(s) else missing(s)
    if s.first is None:
        return [_shown(s), *unranked(s)]
    return [*_ranked(s), _with_excluded(s, s.first), *off_scale(s), *unranked(s)]


def _with_excluded(s: Standing, first: FirstPlace) -> str:
    """Who else might be first, or no longer, if the passes left out counted; or that only lower places would change."""
    if not first.order_changes_without:
        return ""
    if not first.ranks_without:
        return say("first.with-excluded")
    return first_otherwise(s, first) or say("first.with-excluded.lower")


def first_otherwise(s: Standing, first: FirstPlace) -> str:
    """The same of first place alone: "" where nobody's would be another."""
    then = first.ranks_without
    more = [r.contender for r in s.results if then.get(r.contender, (0, 0))[0] == 1]
    more = [c for c in more if c not in first.may_be_first]
    fewer = [c for c in first.may_be_first if c in then and then[c][0] != 1]
    if more and fewer:
        gaps = {"more": names(s.campaign, more), "fewer": names(s.campaign, fewer)}
        return say_of(len(fewer), "first.with-excluded.other", **gaps)
    if more:
        return say("first.with-excluded.more", names=names(s.campaign, more))
    if fewer:
        return say("first.with-excluded.fewer", names=names(s.campaign, fewer))
    return ""


def _ranked(s: Standing) -> list[str]:
    assert s.first is not None
    code = s.first.reason.code
    if is_by_chance(s):
        return first_by_chance(s)
    if s.first.winner:
        return winner(s, s.first.winner)
    if not s.ranked:
        return [say("first.none")]
    if len(s.ranked) == 1:
        only = s.ranked[0]
        return [say("first.one", name=name(s.campaign, only.contender), value=full(only))]
    if code in ("sessions-apart", "off-scale-both", "not-above-zero", "no-answer"):
        return [say(f"first.{code}")]
    if scatter_unknown(s):
        return once(s)
    return [*tie(s), *tied_within(s), *learned(s), *beaten(s), two_passes(s), *settle(s)]


def _shown(s: Standing) -> str:
    if s.results and s.results[0].kind == "order":
        return ordering(s)
    if s.results and s.results[0].kind in ("yes/no", "count", "grade"):
        return counting(s)
    key = "first.no-direction" if s.quantity.better == "neither" else "first.shown-only"
    return say(key, values=values(s))

"""Ranges that overlap although a gap is resolved: why that is no contradiction, where an error is in both results."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Comparison, Contribution, Evaluation, Result
from reportgen.prose.budgets import ALIKE, name_of
from reportgen.prose.standing import Standing, standing
from reportgen.wording.language import say
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import sentence


def overlapping_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """That ranges overlap and a repeat should still keep the order; "" where no such pair has an error in common."""
    s = standing(campaign, evaluation, quantity, part)
    found = [c for pair in s.comparisons if _overlap(s, pair) for c in _in_both(*s.of_pair(pair))]
    names = dict.fromkeys(name_of(campaign, c) for c in found)
    return sentence(say("note.overlap", instruments=and_list(list(names)))) if names else ""


def _overlap(s: Standing, pair: Comparison) -> bool:
    first, second = s.of_pair(pair)
    if not pair.resolved or None in (first.low, first.high, second.low, second.high):
        return False
    return max(first.low or 0.0, second.low or 0.0) < min(first.high or 0.0, second.high or 0.0)


def _in_both(first: Result, second: Result) -> list[Contribution]:
    """Errors of instruments that move both results the same way."""
    if first.estimate is None or second.estimate is None:
        return []
    theirs = {c.source: c.size for c in second.estimate.contributions if c.source.sort in ALIKE}
    return [c for c in first.estimate.contributions if c.size * theirs.get(c.source, 0.0) > 0.0]

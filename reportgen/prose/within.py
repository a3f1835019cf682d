"""Where the gap of a pair isn't the difference of the two means shown: that it isn't, why, and what that would be."""

from __future__ import annotations

from reportgen.evaluation.evaluated import Comparison
from reportgen.prose import amounts
from reportgen.prose.standing import Standing, name
from reportgen.wording.interval import value_only
from reportgen.wording.language import say
from reportgen.wording.percent import apart


def within(s: Standing, pair: Comparison) -> str:
    """That a gap was taken within rounds or sessions which not all shared; empty where means were subtracted.

    A reader who subtracts the means shown gets another number, and is told which.
    """
    first, second = s.of_pair(pair)
    if not pair.within or first.estimate is None or second.estimate is None:
        return ""
    plain = abs((first.estimate.value or 0.0) - (second.estimate.value or 0.0))
    finest = max((d for r in (first, second) if (d := amounts.decimals(r)) is not None), default=None)
    most = max(r.passes for r in s.results)
    fewer = [name(s.campaign, r.contender) for r in (first, second) if r.passes < most]
    gaps = {"plain": value_only(plain, pair.u, apart(pair.unit), decimals=finest)}
    if pair.within == "ratios":
        return say("within.ratios", **gaps)
    if len(fewer) == 1:
        return say(f"within.{pair.within}", names=fewer[0], **gaps)
    return say(f"within.{pair.within}.some", **gaps)

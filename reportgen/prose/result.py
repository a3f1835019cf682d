"""One result in words: its value and passes, and why it has no uncertainty."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Result
from reportgen.prose import amounts
from reportgen.prose.standing import name
from reportgen.wording.count import in_words
from reportgen.wording.interval import between
from reportgen.wording.language import say, say_of
from reportgen.wording.reason import why_missing, why_no_u
from reportgen.wording.sentence import sentence
from reportgen.wording.share import share_limit


def result_line(campaign: Campaign, result: Result) -> str:
    """One contender's result: "Corvane Sol: 14.35 g (13.58 to 15.12), mean of two passes."."""
    who = name(campaign, result.contender)
    if result.missing:
        return sentence(say("result.none", name=who, why=why_missing(result.missing)))
    line = say("result.line", name=who, value=amounts.full(result))
    specimens = len({p.specimen for p in result.by_pass if not p.excluded and p.value is not None})
    if result.kind == "measured" and specimens > 1:
        line = say("result.specimens", line=line, count=in_words(specimens))
    elif result.kind == "measured" and result.passes > 1:
        line = say_of(result.passes, "result.passes", line=line, count=in_words(result.passes))
    if result.excluded:
        line = say_of(result.excluded, "result.excluded", line=line, count=in_words(result.excluded))
    if result.covers in ("tries", "events") and result.low is not None and result.high is not None:
        line = _in_the_long_run(line, result, result.low, result.high)
    if result.kind == "measured" and result.covers == "instrument" and result.estimate and not result.estimate.limit:
        line = say("result.this-run", line=line)
    return sentence(line)


def _in_the_long_run(line: str, result: Result, low: float, high: float) -> str:
    if result.covers == "tries":
        return say("result.share", line=line, low=share_limit(low), high=share_limit(high))
    return say("result.rate", line=line, range=between(low, high, ""))


def why_no_u_line(campaign: Campaign, result: Result) -> str:
    """Why a result has no uncertainty; empty where it has one, or no result at all."""
    if result.u is not None or not result.why_no_u or result.missing:
        return ""
    who = name(campaign, result.contender)
    return sentence(say("result.why-no-u", name=who, why=why_no_u(result.why_no_u)))

"""A pair's difference in percent, its base named: for pages, and for numbers typed into prose."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Comparison, Evaluation
from reportgen.judgement.measured import Percent
from reportgen.judgement.percent import turned
from reportgen.prose.standing import name
from reportgen.wording.language import say
from reportgen.wording.percent import less_or_more, size


def percent_line(campaign: Campaign, pair: Comparison) -> str:
    """First against second: "Corvane: 5.0 % less than Ostler (3.9 to 6.1 % less)"; "" where there is no percentage."""
    if pair.percent is None:
        return ""
    p = pair.percent
    said = less_or_more(p.value, p.low, p.high, name(campaign, pair.second))
    return say("percent.of", name=name(campaign, pair.first), said=said)


def percent_between(
    campaign: Campaign, evaluation: Evaluation, names: tuple[str, str, str, str]
) -> tuple[str, Percent]:
    """One in percent of the other, as printed ("5.0 %") and as it is. Raises LookupError where there is none.

    The other is the base: 5 % less than B is not the same as B's 5.3 % more.
    """
    quantity, one, other, part = names
    for pair in evaluation.comparisons:
        if (pair.quantity, pair.part) == (quantity, part) and {pair.first, pair.second} == {one, other}:
            found = pair.percent if pair.second == other or pair.percent is None else turned(pair.percent)
            if found is not None:
                return size(found.value, found.low, found.high), found
    raise LookupError(f"{name(campaign, one)} has no percentage of {name(campaign, other)} there")

"""What stands below a table of results: what its intervals hold, who was run once, who has no result."""

from __future__ import annotations

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import Evaluation
from reportgen.prose.counting import counting, yes_no
from reportgen.prose.once import single_reading
from reportgen.prose.standing import standing
from reportgen.prose.unranked import missing
from reportgen.wording.decision import covers
from reportgen.wording.sentence import paragraph, sentence


def covers_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """What the intervals of a quantity hold; empty where it has none."""
    s = standing(campaign, evaluation, quantity, part)
    kinds = dict.fromkeys((r.covers, r.at_least) for r in s.results if r.low is not None or r.high is not None)
    return paragraph(*(covers(code, at_least) for code, at_least in kinds))


def single_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Which contenders were run once; empty where none was."""
    return sentence(single_reading(standing(campaign, evaluation, quantity, part)))


def missing_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """Who has no result and why; empty where everyone has one."""
    return paragraph(*missing(standing(campaign, evaluation, quantity, part)))


def counting_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """A yes/no, count or grade quantity as one sentence."""
    return sentence(counting(standing(campaign, evaluation, quantity, part)))


def yes_no_line(campaign: Campaign, evaluation: Evaluation, quantity: str, part: str = "") -> str:
    """A yes/no quantity as one sentence, with what so few tries leave open."""
    s = standing(campaign, evaluation, quantity, part)
    return sentence(yes_no(s, [r for r in s.results if not r.missing]))

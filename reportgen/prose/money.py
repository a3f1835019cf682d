"""What a table of prices leaves out: contenders without a price, and currencies that aren't held against each other."""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import ValueForMoney
from reportgen.prose.standing import names
from reportgen.wording.language import say
from reportgen.wording.listing import and_list
from reportgen.wording.sentence import sentence


def currencies(value: Sequence[ValueForMoney]) -> tuple[str, ...]:
    """The currencies prices are given in, in their order."""
    return tuple(dict.fromkeys(v.currency for v in value))


def money_notes(campaign: Campaign, value: Sequence[ValueForMoney]) -> tuple[str, ...]:
    """A sentence for each thing the table of prices can't show."""
    used, priced = currencies(value), {v.contender for v in value}
    left = [c.id for c in campaign.contenders if c.id not in priced]
    several = [say("money.currencies", currencies=and_list(used))] if len(used) > 1 else []
    without = [say("money.no-price", names=names(campaign, left))] if left and priced else []
    return tuple(sentence(s) for s in (*several, *without))

"""The scatter each quantity was judged with, where it comes from, and what its passes show by themselves."""

from __future__ import annotations

from typing import Any

from reportgen.campaign.declared import Campaign
from reportgen.evaluation.evaluated import PastScatter, ScatterUsed
from reportgen.judgement.passes.seen import PassesSeen
from reportgen.judgement.passes.stood_apart import Apart
from reportgen.record.plain import number

Row = dict[str, Any]


def scatter_row(used: ScatterUsed, campaign: Campaign) -> Row:
    """One quantity (and part). `sd` is of one pass, in `unit`; under the rule `relative` all here are of logarithms."""
    quantity = campaign.quantity(used.quantity)
    test = campaign.test(quantity.test)
    relative = test.scatter == "relative"
    return {
        "test": test.id,
        "quantity": used.quantity,
        "part": used.part or None,
        "rule": test.scatter,
        "unit": "" if relative else quantity.unit,
        "sd": number(used.found.sd),
        "degrees": number(used.found.degrees),
        "origin": used.found.origin,
        "declared_by": used.found.declared_by or None,
        "past": [_past_row(p) for p in used.past],
        "seen": _seen_row(used.seen, used.winner_if_own) if used.seen else None,
    }


def _past_row(past: PastScatter) -> Row:
    return {
        "campaign": past.campaign,
        "title": past.title,
        "sd": number(past.sd),
        "degrees": number(past.degrees),
        "within_sd": number(past.within_sd),
        "within_degrees": number(past.within_degrees),
    }


def _seen_row(seen: PassesSeen, winner_if_own: str | None) -> Row:
    """What passes alone show; a test is there where it found something at 1 %."""
    uneven, trend, at_odds = seen.uneven, seen.trend, seen.at_odds
    return {
        "sd": number(seen.sd) if seen.degrees else None,
        "degrees": number(seen.degrees),
        "uneven": uneven
        and {
            "contender": uneven.name,
            "sd": number(uneven.sd),
            "others": number(uneven.others),
            "share": number(uneven.share),
            "p": number(uneven.p),
            "winner_if_own": winner_if_own,
        },
        "apart": seen.apart and _apart_row(seen.apart),
        "trend": trend
        and {"slope": number(trend.slope), "f": number(trend.f), "degrees": trend.degrees, "p": number(trend.p)},
        "at_odds": at_odds
        and {
            "sd": number(at_odds.sd),
            "declared": number(at_odds.declared),
            "f": number(at_odds.f),
            "p": number(at_odds.p),
        },
    }


def _apart_row(apart: Apart) -> Row:
    return {
        "contender": apart.name,
        "at": apart.at + 1,
        "value": number(apart.value),
        "off": number(apart.off),
        "ratio": number(apart.ratio),
        "p": number(apart.p),
    }

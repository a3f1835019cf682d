"""English, part of its table: what templates say about the verdict, weights and money."""

from __future__ import annotations

from collections.abc import Mapping

from reportgen.wording.phrase import Forms

TEMPLATES_MONEY: Mapping[str, str | Forms] = {
    "on.verdict.conditions": "Conditions",
    "on.verdict.we-say": "What we say",
    "on.verdict.best": "Best",
    "on.verdict.best-for-the-money": "Best for the money",
    "on.verdict.because": "Because of",
    "on.verdict.support": "What the readings support",
    "on.verdict.on": "{criterion}.",
    "on.pairs-weighed.ahead": "Worth more",
    "on.pairs-weighed.behind": "than",
    "on.pairs-weighed.draws": "in draws",
    "on.shares-first.title": "How often each comes first",
    "on.shares-first.first": "First in draws",
    "on.criteria.title": "What is weighed",
    "on.criteria.criterion": "Criterion",
    "on.criteria.worst": "No points at",
    "on.criteria.best": "Full points at",
    "on.criteria.runs": "Runs",
    "on.pairs-weighed.title": "One against one",
    "on.pairs-weighed.others": "The other pairs",
    "on.pairs-weighed.title-others": "One against one, the other pairs",
    "on.criteria.weight": "weight: {weight}",
    "on.pointing.title": "What if other things count?",
    "on.pointing.own-weights": "Your own weights",
    "on.pointing.hint": "What counts for you? Point into the picture, or move these.",
    "on.money.title": "What the money buys",
    "on.money.price": "Price",
    "on.money.against": "Against those that cost no more",
    "on.money.each": "Price against each thing by itself",
    "on.money.each-by-whom": "By whom each is beaten at no higher price",
    "on.cost.title": "What using it costs",
    "on.cost.each": "What each costs",
    "on.cost.one-use": "One use",
    "on.leads.without": "With each criterion left out",
    "on.leads.left-out": "Left out",
    "on.leads.leads": "Leads",
    "on.leads.readers": "Typical readers",
    "on.leads.counts": "What counts for them",
}

"""Contenders weighed from plain numbers, without files: passes by quantity go in, the overall judgement comes out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal
from types import SimpleNamespace
from typing import Any, cast

from reportgen.campaign.declared import Amount, Campaign, Contender, Criterion, Declared, Group, VerdictPlan
from reportgen.evaluation.evaluated import FirstPlace
from reportgen.evaluation.told import QuantityTold
from reportgen.evaluation.weighed import overall_of
from reportgen.judgement.judging import judge
from reportgen.judgement.measured import Measured, Rules
from reportgen.judgement.verdict.overall import Overall
from reportgen.metrology.uncertain import Source
from reportgen.metrology.unit import NUMBER

HIGHER = Rules("higher")
Passes = Mapping[str, Sequence[float]]


def told(
    quantity: str,
    passes: Passes,
    rules: Rules = HIGHER,
    test: str = "runs",
    contributions: Mapping[str, Mapping[Source, float]] | None = None,
) -> QuantityTold:
    """What evaluation tells of one quantity; `contributions` by contender."""
    errors = contributions or {}
    measured = [Measured(n, sum(v) / len(v), tuple(v), errors.get(n, {})) for n, v in passes.items()]
    judged = judge(measured, rules)
    results = tuple(
        SimpleNamespace(
            contender=name, part="", test=test, kind="measured", missing="", blocked="", by_specimens=False,
            estimate=SimpleNamespace(value=sum(values) / len(values), limit=None),
            by_pass=[
                SimpleNamespace(specimen="1", pass_=str(n), part="", value=v, limit=None, excluded="", keys=())
                for n, v in enumerate(values)
            ],
        )
        for name, values in passes.items()
    )  # fmt: skip
    f = judged.first
    first = FirstPlace(test, quantity, "", f.winner, f.may_be_first, f.unranked, f.reason, frozenset())
    return QuantityTold(
        quantity, cast(Any, results), first=first, judged=judged, measured=tuple(measured), unit=NUMBER, rules=rules
    )


def amount(x: float) -> Amount:
    return Amount(Decimal(str(x)), "", str(x))


def weighed(
    quantities: Sequence[QuantityTold],
    groups: Mapping[str, Sequence[str]] | None = None,
    weights: Mapping[str, float] | None = None,
    worst: float = 0.0,
    best: float = 1.0,
) -> Overall | None:
    """All quantities in one group, unless `groups` says which stand together; anchors 0 and 1."""
    groups = groups or {"all": [q.quantity for q in quantities]}
    plan = VerdictPlan(
        groups=tuple(
            Group(
                g, g, Decimal(str(weights[g])) if weights else None,
                tuple(Criterion(q, amount(worst), amount(best)) for q in names),
            )
            for g, names in groups.items()
        )
    )  # fmt: skip
    contenders = tuple(Contender(r.contender, r.contender) for r in quantities[0].results)
    campaign = Campaign("c", "c", "C", "", contenders, (), {}, {}, {}, verdict=plan)
    return overall_of(Declared(campaign, {}), quantities, {}, ())

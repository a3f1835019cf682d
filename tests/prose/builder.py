"""Evaluations made by hand: what a sentence is told, without anything worked out.

`told("gas burned", corvane=14.2, ostler=16.3)` is a campaign of those contenders with one quantity and its results;
`told.pair(…)`, `told.first(…)` add what was decided. Invented data: no expected number comes from it.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from decimal import Decimal
from typing import Any

from reportgen.addresses import as_id
from reportgen.campaign.declared import Amount, Campaign, Contender, Declared, Instrument, Quantity, Test
from reportgen.evaluation.evaluated import Comparison, Estimate, Evaluation, FirstPlace, Result, ScatterUsed
from reportgen.judgement.measured import Reason, ScatterFound

TITLES = {"corvane": "Corvane Sol", "ostler": "Ostler Mk II", "brindle": "Brindle", "tamsin": "Tamsin"}


def amount(text: str) -> Amount:
    number, _, unit = text.partition(" ")
    return Amount(Decimal(number), unit, text)


@dataclass(frozen=True)
class Told:
    """A campaign and its evaluation, and short ways to say what was decided."""

    campaign: Campaign
    evaluation: Evaluation

    @property
    def declared(self) -> Declared:
        return Declared(self.campaign, {})

    @property
    def both(self) -> tuple[Campaign, Evaluation]:
        return self.campaign, self.evaluation

    def with_results(self, **changes: Mapping[str, Any]) -> Told:
        """Changed fields of results, by contender."""
        results = tuple(replace(r, **changes.get(r.contender, {})) for r in self.evaluation.results)
        return replace(self, evaluation=replace(self.evaluation, results=results))

    def pair(self, first: str, second: str, decision: str, half: float | None = None, **changes: Any) -> Told:
        """A comparison: its difference from the two values, its interval ± `half`, of the instrument if single."""
        r = self.evaluation.results[0]
        one, other = (self.evaluation.of(r.quantity, c) for c in (first, second))
        values = [x.estimate.value if x and x.estimate and not x.estimate.limit else None for x in (one, other)]
        d = None if None in values else values[0] - values[1]  # type: ignore[operator]
        once = decision == "not enough to say"
        low, high = (None, None) if d is None or half is None else (d - half, d + half)
        resolved = decision == "better"
        ahead = first if d is None or (d < 0) == (self.campaign.quantity(r.quantity).better == "lower") else second
        made = Comparison(
            test=r.test, quantity=r.quantity, part=r.part, first=first, second=second, difference=d,
            u=None if once or half is None else half / 2, low=None if once else low, high=None if once else high,
            unit=self.campaign.quantity(r.quantity).unit, decision=decision, resolved=resolved,  # type: ignore[arg-type]
            differed=None if half is None else abs(d or 0) > half, differed_low=low, differed_high=high,
            favours=ahead if resolved else None, beyond=None,
            reason=Reason("no-scatter-known" if once else "lead-exceeds" if resolved else "lead-within"),
            settle=None, rests_on=frozenset(),
        )  # fmt: skip
        comparisons = (*self.evaluation.comparisons, replace(made, **changes))
        return replace(self, evaluation=replace(self.evaluation, comparisons=comparisons))

    def first(self, *may_be_first: str, code: str = "", scatter: str = "passes", **changes: Any) -> Told:
        """First place: a sole name is the winner, unless `winner=None`."""
        r = self.evaluation.results[0]
        winner = may_be_first[0] if len(may_be_first) == 1 else None
        code = code or ("lead-exceeds" if winner else "lead-within")
        made = FirstPlace(r.test, r.quantity, r.part, winner, may_be_first, (), Reason(code), frozenset())
        used = ScatterUsed(r.quantity, r.part, ScatterFound(1.0, 4.0, scatter))  # type: ignore[arg-type]
        evaluation = replace(
            self.evaluation, firsts=(replace(made, **changes),), scatters=(*self.evaluation.scatters, used)
        )
        return replace(self, evaluation=evaluation)

    def once(self, *may_be_first: str) -> Told:
        """First place where nothing was repeated."""
        told = self.first(*may_be_first, code="no-scatter-known", scatter="none", winner=None)
        changes = {r.contender: {"passes": 1, "covers": "instrument"} for r in self.evaluation.results}
        return told.with_results(**changes)


@dataclass(frozen=True)
class Asked:
    """What a quantity is like, beside its results."""

    unit: str = "g"
    better: str = "lower"
    matters: str = ""
    kind: str = "one reading"
    passes: int = 4
    half: float | None = 0.6
    scatter: str = "common"
    part: str = ""
    extra: Mapping[str, Any] = field(default_factory=dict)


def told(quantity: str = "gas burned", asked: Asked = Asked(), **values: float | str) -> Told:
    """One quantity; a value a contender, or text for what is no number: `over 999`, `over unknown`, `not read`."""
    id_ = as_id(quantity)
    q = Quantity(
        id=id_, test=id_, title=quantity, kind=asked.kind, formula=id_, unit=asked.unit, better=asked.better,  # type: ignore[arg-type]
        matters=amount(asked.matters) if asked.matters else None,
    )  # fmt: skip
    test = Test(id_, quantity, (q,), id_, (), (), False, scatter=asked.scatter)  # type: ignore[arg-type]
    contenders = tuple(Contender(c, TITLES[c]) for c in values)
    results = tuple(result(q, c, v, asked) for c, v in values.items())
    ranks = sum(1 for r in results if not r.missing)
    results = tuple(r if r.missing or asked.better == "neither" else replace(r, rank=(1, ranks)) for r in results)
    scale = Instrument("bench-scale", "Bench scale, 2 kg")
    campaign = Campaign("stoves", "", "Stoves", "Which?", contenders, (test,), {"bench-scale": scale}, {}, {})
    return Told(campaign, Evaluation("stoves", results, (), (), (), None, (), ()))


def result(q: Quantity, contender: str, value: float | str, asked: Asked) -> Result:
    limit = {"over": "above", "under": "below"}.get(str(value).partition(" ")[0])
    number: float | None = None
    if limit:
        text = str(value).partition(" ")[2]
        number = None if text == "unknown" else float(text)
    elif not isinstance(value, str):
        number = value
    missing = value if isinstance(value, str) and not limit else ""
    known = number is not None and not limit and asked.half is not None
    half = asked.half or 0.0
    return Result(
        test=q.test, quantity=q.id, contender=contender, part=asked.part, kind="measured",
        estimate=None if missing else Estimate(number, q.unit, 1.0, 3.0, (), (0.1,), limit),  # type: ignore[arg-type]
        u=half / 2 if known else None, low=number - half if known else None,  # type: ignore[operator]
        high=number + half if known else None,  # type: ignore[operator]
        covers="instrument and scatter", at_least=False, why_no_u="" if known else "limit" if limit else "no-result",
        by_pass=(), passes=asked.passes, excluded=0, without=None, rank=None, blocked="", yes=None, of=None, grade="",
        grades={}, missing=missing, rests_on=frozenset(),
    )  # fmt: skip

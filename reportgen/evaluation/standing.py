"""Who can be weighed on which criterion, and why not: conditions first, then what was measured.

A bound is no number, and a blocked result counts in nothing: neither is weighed. Whoever lacks a result on one
criterion is left out, as a sum without it would be another sum; but where fewer than two would be left, criteria go
instead, those first that most contenders lack.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from reportgen.evaluation.evaluated import MustOutcome, Result
from reportgen.evaluation.told import QuantityTold

Lacking = Mapping[str, str]  # contender → why it can't be weighed: no-value, bound, blocked, not-above-zero, by-place


@dataclass(frozen=True)
class Standing:
    """`contenders` are weighed on `quantities`; who and what is left out, with the reason's code."""

    contenders: tuple[str, ...]
    quantities: tuple[str, ...]
    out: Mapping[str, str]
    left_out: Mapping[str, str]


def standing_of(
    contenders: Sequence[str],
    conditions: Sequence[MustOutcome],
    told: Mapping[str, Sequence[QuantityTold]],
    ratios: frozenset[str],
) -> Standing:
    """`told`: by criterion, in the author's order, each part of it where parts stay apart; `ratios`: the criteria of
    which logarithms are taken."""
    missed = {m.contender for m in conditions if m.outcome == "contradicted"}
    left = [c for c in contenders if c not in missed]
    lacking = {q: _lacking(left, parts, q in ratios) for q, parts in told.items()}
    left_out = {q: _why_nobody(lack) for q, lack in lacking.items() if len(lack) == len(left)} if left else {}
    quantities = [q for q in told if q not in left_out]
    while quantities and len(_weighed(left, quantities, lacking)) < 2:
        most = max(len(lacking[q]) for q in quantities)
        if not most:
            break
        gone = [q for q in quantities if len(lacking[q]) == most][-1]
        left_out[gone] = "too-few"
        quantities.remove(gone)
    out = {c: "must" for c in contenders if c in missed}
    for quantity in quantities:
        for contender, why in lacking[quantity].items():
            out.setdefault(contender, why)
    return Standing(
        tuple(_weighed(left, quantities, lacking)),
        tuple(quantities),
        {c: out[c] for c in contenders if c in out},
        {q: left_out[q] for q in told if q in left_out},
    )


def _why_nobody(lacking: Lacking) -> str:
    """Why a criterion can be weighed for none: for want of any number, or because such as there are can't be used."""
    reasons = set(lacking.values())
    return reasons.pop() if reasons in ({"bound"}, {"blocked"}, {"not-above-zero"}, {"by-place"}) else "nobody-measured"


def _weighed(left: Sequence[str], quantities: Sequence[str], lacking: Mapping[str, Lacking]) -> list[str]:
    return [c for c in left if not any(c in lacking[q] for q in quantities)]


def _lacking(contenders: Sequence[str], parts: Sequence[QuantityTold], ratio: bool) -> Lacking:
    found = {}
    for contender in contenders:
        why = next((w for part in parts if (w := _why_not(part, contender, ratio))), "" if parts else "no-value")
        if why:
            found[contender] = why
    return found


def _why_not(told: QuantityTold, contender: str, ratio: bool) -> str:
    result = next((r for r in told.results if r.contender == contender), None)
    if told.first is not None and told.judged is None and any(r.kind == "measured" for r in told.results):
        return "by-place"  # some runs did not finish and hold the worst place, which is no number
    if result is None or result.missing:
        return "no-value"
    if result.blocked:
        return "blocked"
    if result.kind in ("yes/no", "count"):
        bound = result.estimate is not None and result.estimate.limit
        return "bound" if bound else "" if result_value(result) is not None else "no-value"
    measured = next((m for m in told.measured if m.name == contender), None)
    if measured is None or told.judged is None or told.rules is None:
        return "no-value"
    if measured.limit is not None:
        return "bound"
    if measured.value is None or told.judged.singles[contender].why_no_u == "no-answer":
        return "no-value"
    if told.judged.first.reason.code == "not-above-zero":
        return "not-above-zero"  # ratios decide, and somebody's has none: nobody can be set against that one
    needs_logarithm = ratio or told.rules.scatter == "relative"
    return "not-above-zero" if needs_logarithm and not min(measured.value, *measured.values) > 0.0 else ""


def result_value(result: Result) -> float | None:
    """The share of yes, or the events a pass."""
    if result.kind == "yes/no":
        return None if result.yes is None or not result.of else result.yes / result.of
    return None if result.estimate is None else result.estimate.value

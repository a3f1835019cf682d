"""A rule on counts: events that were said to come by themselves, and whose passes say otherwise."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from reportgen.audit.case import Case, Seen
from reportgen.campaign.declared import Quantity
from reportgen.evaluation.evaluated import PassValue, Result
from reportgen.judgement.exact.clusters import AT, in_clusters


def events_in_clusters(case: Case) -> Iterable[Seen]:
    """Counts declared independent whose passes scatter further than such events would (index of dispersion, 1 %)."""
    for quantity in (q for t in case.declared.campaign.tests for q in t.quantities if q.independent and not q.count_of):
        parts = dict.fromkeys(r.part for r in case.evaluation.results if r.quantity == quantity.id)
        for part in parts:
            chance = in_clusters(_counts(case, quantity, part))
            if chance is not None and chance < AT:
                where = f" ({part})" if part else ""
                says = (
                    f"The passes of {quantity.title}{where} differ further than events that come by themselves would; "
                    "they may come in clusters."
                )
                place = case.declared.at(f"quantity/{quantity.id}")
                yield Seen(place, says, f"quantity/{quantity.id}")


def _counts(case: Case, quantity: Quantity, part: str) -> Iterable[tuple[Sequence[int], Sequence[float]]]:
    for result in (r for r in case.evaluation.results if (r.quantity, r.part) == (quantity.id, part)):
        used = [p for p in result.by_pass if p.value is not None and not p.excluded and not p.limit]
        over = _over(case, quantity, result)
        known = [p for p in used if over is None or _key(p) in over]
        yield (
            [int(p.value or 0) for p in known],
            [1.0 if over is None else over[_key(p)] for p in known],
        )


def _over(case: Case, quantity: Quantity, result: Result) -> dict[tuple[str, str], float] | None:
    """Over how much each pass was counted; None where each counts as one."""
    if not quantity.counted_over:
        return None
    found = [r for r in case.evaluation.results if r.quantity == quantity.counted_over]
    passes = [p for r in found if r.contender == result.contender for p in r.by_pass]
    return {_key(p): p.value for p in passes if p.value and not p.limit and not p.excluded}


def _key(one: PassValue) -> tuple[str, str]:
    return one.specimen, one.pass_

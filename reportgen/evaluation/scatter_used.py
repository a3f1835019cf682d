"""The scatter a quantity was judged with, beside what its passes show of it."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from reportgen.campaign.declared import Quantity
from reportgen.evaluation.decide import is_ranked
from reportgen.evaluation.evaluated import LookedBack, ScatterUsed
from reportgen.judgement.judging import sole_winner
from reportgen.judgement.measured import Judged, Measured, Rules
from reportgen.judgement.passes.seen import passes_seen


def scatter_used(
    quantity: Quantity, part: str, judged: Judged, measured: Sequence[Measured], rules: Rules
) -> ScatterUsed:
    """With what its passes show, unless of several only one pass counts (least, most, middle).

    Where they contradict one scatter for all, first place is judged again by each contender's own: for a finding, never
    for the result, since a rule chosen by a look at the data names more false winners than either.
    """
    if quantity.over_passes in ("least", "most", "middle"):
        return ScatterUsed(quantity.id, part, judged.scatter)
    seen = passes_seen(measured, rules)
    if not is_ranked(quantity) and seen.uneven:
        seen = replace(seen, uneven=None)  # there is no first place to promise anything of
    again = seen.uneven is not None and rules.scatter == "common"
    winner = sole_winner(measured, replace(rules, scatter="own")) if again else None
    return ScatterUsed(quantity.id, part, judged.scatter, seen, winner)


def with_past(scatters: Iterable[ScatterUsed], looked_back: Iterable[LookedBack]) -> tuple[ScatterUsed, ...]:
    """The same, those that rest on past campaigns with these campaigns."""
    by = {found.quantity: found.campaigns for found in looked_back}
    return tuple(
        replace(s, past=by.get(s.quantity, ())) if s.found.declared_by == "past campaigns" else s for s in scatters
    )

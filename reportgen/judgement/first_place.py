"""First place: a sole winner only if its lead over every other exceeds the half-width of that pair.

Two-sided 5 % each, no factor for multiplicity: to be named falsely, one must beat even the best of the others (an
intersection of tests; Gutmann and Maymin 1987, Annals of Statistics 15:355; Hung and Fithian 2019, Annals of
Statistics 47:1).
"""

from __future__ import annotations

from collections.abc import Sequence

from reportgen.judgement.lead import Weighed, beats, half_at
from reportgen.judgement.measured import Measured, Reason
from reportgen.judgement.simultaneous import ALPHA


def find_winner(ranked: Sequence[Measured], weighed: Sequence[Weighed]) -> str | None:
    """The one that beats every other, or None; None too where there is no other."""
    if len(ranked) < 2:
        return None
    leads = dict.fromkeys((m.name for m in ranked), 0)
    for pair in weighed:
        if pair.ahead is not None:
            leads[pair.ahead] += 1
    front = next((name for name, over in leads.items() if over == len(ranked) - 1), None)
    if front is None:
        return None
    own = [pair for pair in weighed if front in (pair.first.name, pair.second.name)]
    return front if all(beats(pair, ALPHA) == front for pair in own) else None


def why(ranked: Sequence[Measured], weighed: Sequence[Weighed], winner: str | None) -> Reason:
    """What decided first place: the narrowest lead of a winner, else what stood in the way."""
    if len(ranked) < 2:
        return Reason("one-contender", {"contenders": float(len(ranked))})
    if winner is not None:
        own = [pair for pair in weighed if winner in (pair.first.name, pair.second.name)]
        margins = [(pair.lead - half_at(pair, ALPHA), pair.lead, half_at(pair, ALPHA)) for pair in own]
        _, lead, half = min(margins)
        return Reason("lead-exceeds", {"lead": lead, "half_width": half})
    if any(pair.apart for pair in weighed):
        return Reason("sessions-apart")
    if any(pair.spread is None for pair in weighed):
        return Reason("no-scatter-known")
    return _in_the_way(ranked, weighed)


def _in_the_way(ranked: Sequence[Measured], weighed: Sequence[Weighed]) -> Reason:
    front = {m.name for m in ranked}
    for pair in weighed:
        loser = {pair.first.name, pair.second.name} - {beats(pair, ALPHA)}
        if len(loser) == 1:
            front -= loser
    unsettled = [p for p in weighed if p.first.name in front and p.second.name in front] or list(weighed)
    if all(p.d is None for p in unsettled):
        return Reason(
            "off-scale-both" if all(p.first.limit and p.second.limit for p in unsettled) else "bound-too-close"
        )
    _, lead, half = min((half_at(p, ALPHA) - p.lead, p.lead, half_at(p, ALPHA)) for p in unsettled if p.d is not None)
    return Reason("lead-within", {"lead": lead, "half_width": half})

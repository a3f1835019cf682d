"""First place: a sole winner only if its lead over every other exceeds the half-width of that pair.

Two-sided 5 % each, no factor for multiplicity: to be named falsely, one must beat even the best of the others (an
intersection of tests; Gutmann and Maymin 1987, Annals of Statistics 15:355; Hung and Fithian 2019, Annals of
Statistics 47:1).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite

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
    """What decided first place: the narrowest lead of a winner, else what stood in the way. Numbers are in the unit."""
    if len(ranked) < 2:
        return Reason("one-contender", {"contenders": float(len(ranked))})
    if not weighed:
        return Reason("not-above-zero")
    if winner is not None:
        narrowest = min((p for p in weighed if winner in (p.first.name, p.second.name)), key=_margin)
        return Reason("lead-exceeds", _numbers(narrowest))
    if any(pair.apart for pair in weighed):
        return Reason("sessions-apart")
    if any(pair.spread is None and not pair.off_scale for pair in weighed):
        return Reason("no-scatter-known")
    return _in_the_way(ranked, weighed)


def _in_the_way(ranked: Sequence[Measured], weighed: Sequence[Weighed]) -> Reason:
    """The widest lead inside its half-width among those that nobody beats: what came nearest to deciding."""
    front = {m.name for m in ranked}
    for pair in weighed:
        favoured = beats(pair, ALPHA)
        if favoured is not None:
            front -= {pair.first.name, pair.second.name} - {favoured}
    unsettled = [p for p in weighed if p.first.name in front and p.second.name in front] or list(weighed)
    measured = [p for p in unsettled if p.d is not None]
    if not measured:
        return Reason(
            "off-scale-both" if all(p.first.limit and p.second.limit for p in unsettled) else "bound-too-close"
        )
    told = [p for p in measured if isfinite(half_at(p, ALPHA))]
    return Reason("lead-within", _numbers(max(told, key=_margin))) if told else Reason("no-answer")


def _margin(pair: Weighed) -> float:
    return pair.lead - half_at(pair, ALPHA)


def _numbers(pair: Weighed) -> dict[str, float]:
    return {"lead": pair.in_unit(pair.lead), "half_width": pair.width_in_unit(half_at(pair, ALPHA))}

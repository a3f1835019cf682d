"""Judge yes and no: so many yes of so many tries, contender against contender, by Boschloo's exact test."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

from reportgen.judgement.exact.boschloo import boschloo, extreme
from reportgen.judgement.exact.by_chance import ALLOWED, Against, JudgedByChance, exceeds_allowed, judge_by_chance
from reportgen.judgement.exact.planned import tries_for
from reportgen.judgement.measured import Better, Settle

ENOUGH = 3  # tries each: 3 of 3 against 0 of 3 is 1/64; 2 of 2 against 0 of 2 is 1/16


@dataclass(frozen=True)
class Tried:
    """One contender's tries. `blocked`: the reason's code for which it isn't ranked."""

    name: str
    yes: int
    of: int
    blocked: str = ""


def judge_shares(tried: Sequence[Tried], better: Better) -> JudgedByChance:
    """Pairs, ranks and first place; `better`: higher where more yes is better.

    Two tries each are never enough, three of three against none of three are:

    >>> judge_shares([Tried("a", 3, 3), Tried("b", 0, 3)], "higher").first.winner
    'a'
    >>> judge_shares([Tried("a", 2, 2), Tried("b", 0, 2)], "higher").pairs[0].decision
    'not enough to say'
    """
    set_aside = {t.name: t.blocked or "no-result" for t in tried if t.blocked or not t.of}
    ranked = [t for t in tried if t.name not in set_aside]
    against = {(a.name, b.name): _against(a, b, better) for a, b in combinations(ranked, 2)}
    return judge_by_chance([t.name for t in tried], against, set_aside)


def _against(a: Tried, b: Tried, better: Better) -> Against:
    more, less = boschloo(a.yes, a.of, b.yes, b.of), boschloo(b.yes, b.of, a.yes, a.of)
    share, other = a.yes / a.of, b.yes / b.of
    tries = min(a.of, b.of)
    least = extreme(a.of, b.of)
    passes = tries_for(share, other)
    needed = max(passes, ENOUGH, min(a.of, b.of) + 1) if passes is not None else None
    return Against(
        more if better == "higher" else less,
        less if better == "higher" else more,
        least=least,
        tries=tries,
        enough=max(ENOUGH, tries + 1) if exceeds_allowed(least, ALLOWED) else tries,
        differed=share != other,
        settle=Settle(abs(share - other), needed) if needed is not None else None,
    )

"""Judge grades: words in an order, a look each, contender against contender by the exact rank sum."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import comb

from reportgen.judgement.exact.by_chance import ALLOWED, Against, JudgedByChance, exceeds_allowed, judge_by_chance
from reportgen.judgement.exact.planned import grades_for
from reportgen.judgement.exact.rank_sum import rank_sum, superiority
from reportgen.judgement.measured import Better, Settle

ENOUGH = 4  # grades each: four above four are one of 70 ways to deal them out; three above three one of 20


@dataclass(frozen=True)
class Graded:
    """One contender's grades, each as its place in the order of grades. `blocked`: the code for why it isn't ranked."""

    name: str
    grades: tuple[float, ...]
    blocked: str = ""


def judge_grades(graded: Sequence[Graded], better: Better) -> JudgedByChance:
    """Pairs, ranks and first place; `better`: higher where a later grade is better.

    >>> judge_grades([Graded("a", (2, 2, 2, 2)), Graded("b", (0, 1, 1, 0))], "higher").first.winner
    'a'
    >>> judge_grades([Graded("a", (2, 2, 2)), Graded("b", (0, 0, 0))], "higher").first.reason.code
    'never-enough'
    """
    set_aside = {g.name: g.blocked or "no-result" for g in graded if g.blocked or not g.grades}
    ranked = [g for g in graded if g.name not in set_aside]
    against = {(a.name, b.name): _against(a, b, better) for a, b in combinations(ranked, 2)}
    return judge_by_chance([g.name for g in graded], against, set_aside)


def _against(a: Graded, b: Graded, better: Better) -> Against:
    more, less = rank_sum(a.grades, b.grades), rank_sum(b.grades, a.grades)
    n, m = len(a.grades), len(b.grades)
    least = 1.0 / comb(n + m, n)
    above = superiority(a.grades, b.grades)
    passes = grades_for(above)
    needed = max(passes, ENOUGH, min(n, m) + 1) if passes is not None else None
    return Against(
        more if better == "higher" else less,
        less if better == "higher" else more,
        least=least,
        tries=min(n, m),
        enough=max(ENOUGH, min(n, m) + 1) if exceeds_allowed(least, ALLOWED) else min(n, m),
        differed=sorted(a.grades) != sorted(b.grades),
        settle=Settle(abs(above - 0.5), needed) if needed is not None else None,
    )

"""Comparisons, ranks, first place, claims, a verdict, money: what readings support, and no more. A library of its own.

In and out: plain numbers in one unit. It never knows the program it serves. Passes of three, one of them really ahead:

>>> from reportgen.judgement import Rules, from_passes, judge
>>> passes = {"a": (212.4, 214.9, 213.1), "b": (230.1, 226.4, 229.8), "c": (229.0, 231.2, 227.5)}
>>> boil = [from_passes(name, *values) for name, values in passes.items()]
>>> found = judge(boil, Rules("lower", matters=5.0))
>>> found.first.winner, found.ranks
('a', {'a': (1, 1), 'b': (2, 3), 'c': (2, 3)})
>>> [(p.first, p.second, p.decision) for p in found.pairs]
[('a', 'b', 'better'), ('a', 'c', 'better'), ('b', 'c', 'no difference that matters')]

One reading each says nothing of a repeat, however far apart:

>>> judge([from_passes("a", 10.0, step=0.1), from_passes("b", 90.0, step=0.1)], Rules("lower")).pairs[0].decision
'not enough to say'

Names are looked up when they are asked for, so that nothing heavy loads before it is needed.
"""

from __future__ import annotations

from importlib import import_module
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from reportgen.judgement.claim import Conformance, acceptance, conformance
    from reportgen.judgement.claim_counted import count_conformance, rate_limits, share_conformance, share_limits
    from reportgen.judgement.equivalence import matters_beyond
    from reportgen.judgement.exact.boschloo import boschloo
    from reportgen.judgement.exact.counts import Counted, judge_counts
    from reportgen.judgement.exact.exact_limits import rate_interval, share_interval
    from reportgen.judgement.exact.grades import Graded, judge_grades
    from reportgen.judgement.exact.rank_sum import rank_sum
    from reportgen.judgement.exact.rates_compared import greater_rate
    from reportgen.judgement.exact.shares import Tried, judge_shares
    from reportgen.judgement.judging import judge, sole_winner
    from reportgen.judgement.measured import (
        DeclaredScatter,
        First,
        Judged,
        Measured,
        Pair,
        Reason,
        Rules,
        Settle,
        Single,
        from_passes,
    )
    from reportgen.judgement.money.break_even import CostLine, Slope, break_even, cheapest
    from reportgen.judgement.money.frontier import dominated, dominated_over_all
    from reportgen.judgement.orders.looks import Look, clashes
    from reportgen.judgement.orders.partial_order import order_of
    from reportgen.judgement.passes.seen import PassesSeen, at_odds, passes_seen
    from reportgen.judgement.passes.stood_apart import cochran_critical, grubbs_critical, uneven
    from reportgen.judgement.passes.trend import common_trend
    from reportgen.judgement.ranks import rank_ranges
    from reportgen.judgement.rounding_alone import least_lead
    from reportgen.judgement.simultaneous import studentized_range
    from reportgen.judgement.verdict.criteria import Criterion
    from reportgen.judgement.verdict.overall import Overall, PairIndex
    from reportgen.judgement.verdict.weighing import weigh_up
    from reportgen.judgement.verdict.worth import ValueFunction

WHERE = {
    "claim": ("Conformance", "acceptance", "conformance"),
    "claim_counted": ("count_conformance", "rate_limits", "share_conformance", "share_limits"),
    "equivalence": ("matters_beyond",),
    "exact.boschloo": ("boschloo",),
    "exact.counts": ("Counted", "judge_counts"),
    "exact.exact_limits": ("rate_interval", "share_interval"),
    "exact.grades": ("Graded", "judge_grades"),
    "exact.rank_sum": ("rank_sum",),
    "exact.rates_compared": ("greater_rate",),
    "exact.shares": ("Tried", "judge_shares"),
    "judging": ("judge", "sole_winner"),
    "rounding_alone": ("least_lead",),
    "measured": (
        "DeclaredScatter", "First", "Judged", "Measured", "Pair", "Reason", "Rules", "Settle", "Single", "from_passes",
    ),
    "money.break_even": ("CostLine", "Slope", "break_even", "cheapest"),
    "money.frontier": ("dominated", "dominated_over_all"),
    "orders.looks": ("Look", "clashes"),
    "orders.partial_order": ("order_of",),
    "passes.seen": ("PassesSeen", "at_odds", "passes_seen"),
    "passes.stood_apart": ("cochran_critical", "grubbs_critical", "uneven"),
    "passes.trend": ("common_trend",),
    "ranks": ("rank_ranges",),
    "simultaneous": ("studentized_range",),
    "verdict.criteria": ("Criterion",),
    "verdict.overall": ("Overall", "PairIndex"),
    "verdict.weighing": ("weigh_up",),
    "verdict.worth": ("ValueFunction",),
}  # fmt: skip
_FILE_OF = {name: file for file, names in WHERE.items() for name in names}

__all__ = [
    "Conformance",
    "CostLine",
    "Counted",
    "Criterion",
    "DeclaredScatter",
    "First",
    "Graded",
    "Judged",
    "Look",
    "Measured",
    "Overall",
    "Pair",
    "PairIndex",
    "PassesSeen",
    "Reason",
    "Rules",
    "Settle",
    "Single",
    "Slope",
    "Tried",
    "ValueFunction",
    "acceptance",
    "at_odds",
    "boschloo",
    "break_even",
    "cheapest",
    "clashes",
    "cochran_critical",
    "common_trend",
    "conformance",
    "count_conformance",
    "dominated",
    "dominated_over_all",
    "from_passes",
    "greater_rate",
    "grubbs_critical",
    "judge",
    "judge_counts",
    "judge_grades",
    "judge_shares",
    "least_lead",
    "matters_beyond",
    "order_of",
    "passes_seen",
    "rank_ranges",
    "rank_sum",
    "rate_interval",
    "rate_limits",
    "share_conformance",
    "share_interval",
    "share_limits",
    "sole_winner",
    "studentized_range",
    "uneven",
    "weigh_up",
]


def __getattr__(name: str) -> object:
    """A public name, from the file it stands in (Python's PEP 562)."""
    if name not in _FILE_OF:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    return getattr(import_module(f"{__name__}.{_FILE_OF[name]}"), name)

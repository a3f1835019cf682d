"""Judge numbers of events that come independently of each other: one total each, or a number a pass.

One total: given the total of two, each is binomial. A number a pass: Student on √(x + 3/8) (Anscombe 1948, Biometrika
35:246) must agree as well, so that events which come in clusters, against what was declared, name nobody.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import ceil, sqrt

from reportgen.judgement.exact.by_chance import Against, JudgedByChance, judge_by_chance
from reportgen.judgement.exact.exact_limits import rate_interval
from reportgen.judgement.exact.planned import MOST, exposure_for
from reportgen.judgement.exact.rates_compared import greater_rate
from reportgen.judgement.lead import weigh
from reportgen.judgement.measured import Better, Measured, Rules, ScatterRule, Settle
from reportgen.judgement.scatter import Scatter, find_scatter
from reportgen.judgement.single import interval_of

ANSCOMBE = 3.0 / 8.0


@dataclass(frozen=True)
class Counted:
    """One contender's numbers, a pass each, and over how much each was counted (hours, runs: one unit for all).

    `blocked`: the code for which it isn't ranked.
    """

    name: str
    events: tuple[int, ...]
    exposure: tuple[float, ...]
    rounds: tuple[str, ...] = ()
    blocked: str = ""

    @property
    def rate(self) -> float:
        """Events per unit of exposure."""
        return sum(self.events) / sum(self.exposure)


@dataclass(frozen=True)
class CountsJudged:
    """What was decided, and the 95 % interval of each one's rate."""

    judged: JudgedByChance
    intervals: Mapping[str, tuple[float, float]]


def judge_counts(
    counted: Sequence[Counted], better: Better, scatter: ScatterRule = "common", rounds: bool = False
) -> CountsJudged:
    """Pairs, ranks, first place and intervals. Passes that scatter further than chance would make them (events in
    clusters) widen what Student's test asks, and an interval is at least the wider of the two.

    >>> def found(*totals):
    ...     return judge_counts([Counted(n, (x,), (1.0,)) for n, x in zip("ab", totals)], "lower").judged.first.winner
    >>> found(0, 6), found(0, 5), found(1, 8)
    ('a', None, 'a')
    >>> [round(x, 3) for x in judge_counts([Counted("a", (10,), (1.0,))], "lower").intervals["a"]]
    [4.795, 18.39]
    """
    set_aside = {c.name: c.blocked or "no-result" for c in counted if c.blocked or not c.events}
    ranked = [c for c in counted if c.name not in set_aside]
    rules = Rules(better, scatter="own" if scatter == "own" else "common", rounds=rounds)
    rooted = {c.name: _rooted(c) for c in ranked}
    seen = find_scatter(list(rooted.values()), rules) if rooted else None
    against = {(a.name, b.name): _against(a, b, rooted, seen, rules) for a, b in combinations(ranked, 2)}
    intervals = {c.name: _interval(c, rooted[c.name], seen, rules) for c in ranked}
    return CountsJudged(judge_by_chance([c.name for c in counted], against, set_aside), intervals)


def _rooted(one: Counted) -> Measured:
    values = tuple(sqrt((x + ANSCOMBE) / over) for x, over in zip(one.events, one.exposure, strict=True))
    return Measured(one.name, sum(values) / len(values), values, rounds=one.rounds)


def _against(a: Counted, b: Counted, rooted: Mapping[str, Measured], scatter: Scatter | None, rules: Rules) -> Against:
    of_a, of_b = (sum(a.events), sum(a.exposure)), (sum(b.events), sum(b.exposure))
    more, less = greater_rate(*of_a, *of_b), greater_rate(*of_b, *of_a)
    if scatter is not None:
        student = _student(rooted[a.name], rooted[b.name], scatter, rules)
        if student is not None:
            more, less = max(more, student), max(less, 1.0 - student)
    return Against(
        more if rules.better == "higher" else less,
        less if rules.better == "higher" else more,
        tries=min(len(a.events), len(b.events)),
        differed=a.rate != b.rate,
        settle=_settle(a, b),
    )


def _student(a: Measured, b: Measured, scatter: Scatter, rules: Rules) -> float | None:
    """One-sided p that the first's roots stand higher; None where no pass was repeated, or none of them differ."""
    weighed = weigh(a, b, scatter, rules)
    if weighed.d is None or weighed.spread is None or weighed.spread.variance <= 0.0:
        return None
    from scipy.special import stdtr

    return float(stdtr(weighed.spread.degrees, -weighed.d / sqrt(weighed.spread.variance)))


def _interval(one: Counted, rooted: Measured, scatter: Scatter | None, rules: Rules) -> tuple[float, float]:
    low, high = rate_interval(sum(one.events), sum(one.exposure))
    if len(one.events) < 2 or scatter is None:
        return low, high
    single = interval_of(rooted, rooted, scatter, rules)
    if single.low is None or single.high is None or single.covers == "instrument":
        return low, high
    less = ANSCOMBE * len(one.events) / sum(one.exposure)
    return min(low, max(0.0, max(single.low, 0.0) ** 2 - less)), max(high, single.high**2 - less)


def _settle(a: Counted, b: Counted) -> Settle | None:
    """Passes each, as long as these on average, that would settle rates as far apart as these."""
    exposure = exposure_for(a.rate, b.rate)
    if exposure is None:
        return None
    of_one = (sum(a.exposure) + sum(b.exposure)) / (len(a.exposure) + len(b.exposure))
    passes = ceil(exposure / of_one)
    now = min(len(a.events), len(b.events))  # who ran more often already need not run again
    return Settle(abs(a.rate - b.rate), max(passes, now + 1)) if passes <= MOST else None

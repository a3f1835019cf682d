"""Claims held against what was counted: how many of so many, how many events in so many runs. All exact."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, isinf

from reportgen.judgement.claim import Conformance, Outcome
from reportgen.judgement.exact.exact_limits import rate_interval, share_interval
from reportgen.judgement.measured import Reason

CONFIDENCE = 0.95  # of each limit by itself: a claim is contradicted by chance once in twenty, as any other
TWO_SIDED = 2.0 * (1.0 - CONFIDENCE)  # the level at which both limits together leave as much out


def share_limits(yes: int, of: int) -> tuple[float, float]:
    """Lower and upper limit of a share, each with 95 % confidence by itself (Clopper and Pearson 1934, Biometrika
    26:404). Ten of ten leave a share of 0.05^(1/10):

    >>> [round(x, 4) for x in share_limits(10, 10)]
    [0.7411, 1.0]
    """
    return share_interval(yes, of, TWO_SIDED)


def rate_limits(events: int, runs: int) -> tuple[float, float]:
    """Lower and upper limit of the events a run, each with 95 % confidence by itself, where they come at random
    (Garwood 1936, Biometrika 28:437). None in three runs leaves up to one a run, 2.996/3:

    >>> [round(x, 3) for x in rate_limits(0, 3)]
    [0.0, 0.999]
    """
    return rate_interval(events, float(runs), TWO_SIDED)


def share_conformance(yes: int, of: int, *, at_least: float | None = None, at_most: float | None = None) -> Conformance:
    """A claim on how often: contradicted or supported where the exact limit lies beyond the bound claimed.

    That it never fails, no number of tries can show; one failure contradicts it.

    >>> share_conformance(10, 10, at_least=1.0).outcome, share_conformance(9, 10, at_least=1.0).outcome
    ('undecided', 'contradicted')
    >>> share_conformance(59, 59, at_least=0.95).outcome, share_conformance(58, 58, at_least=0.95).outcome
    ('supported', 'undecided')
    """
    lower, upper = share_limits(yes, of)
    least, most = -inf if at_least is None else at_least, inf if at_most is None else at_most
    outcome: Outcome = "undecided"
    if upper < least or lower > most:
        outcome = "contradicted"
    elif lower >= least and upper <= most:
        outcome = "supported"
    numbers = {"yes": float(yes), "of": float(of), "lower": lower, "upper": upper}
    return Conformance(outcome, None, "repeat", Reason("counted-share", numbers | _bounds(least, most)))


def count_conformance(
    counts: Sequence[int], *, at_least: float | None = None, at_most: float | None = None
) -> Conformance:
    """A claim on how many events a run has: what was counted is exact, and speaks of these runs alone.

    `upper` among the numbers of the reason is what a rate may still be, if events come at random.

    >>> count_conformance([0, 0, 1], at_most=0.0).outcome, count_conformance([0, 0], at_most=2.0).outcome
    ('contradicted', 'supported')
    """
    least, most = -inf if at_least is None else at_least, inf if at_most is None else at_most
    within = all(least <= n <= most for n in counts)
    lower, upper = rate_limits(sum(counts), len(counts))
    numbers = {"events": float(sum(counts)), "runs": float(len(counts)), "lower": lower, "upper": upper}
    outcome: Outcome = "supported" if within else "contradicted"
    return Conformance(outcome, None, "this run", Reason("counted-events", numbers | _bounds(least, most)))


def _bounds(least: float, most: float) -> dict[str, float]:
    return {k: x for k, x in (("at_least", least), ("at_most", most)) if not isinf(x)}

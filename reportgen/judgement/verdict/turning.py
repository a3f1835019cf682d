"""The space of weights walked through: in even steps for a picture, and to where one group's weight turns the lead."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from itertools import pairwise

from reportgen.judgement.verdict.overall import Turn

STEPS_OF_TWO, STEPS_OF_THREE = 100, 20
SCAN, SCAN_OF_MANY = 50, 20  # steps in which a group's weight is tried; of more than three groups
WITHIN = 1e-3  # how closely the weight is found at which the lead turns
LeaderAt = Callable[[Sequence[float]], str | None]


def steps_of(groups: int) -> int:
    """In how many steps the weights of two or three groups are walked."""
    return STEPS_OF_TWO if groups == 2 else STEPS_OF_THREE


def weights_in_steps(groups: int, steps: int) -> Iterable[tuple[float, ...]]:
    """All weights of two or three groups in steps of 1/steps, by the first group's from 0 on, then the second's.

    >>> list(weights_in_steps(2, 2))
    [(0.0, 1.0), (0.5, 0.5), (1.0, 0.0)]
    >>> len(list(weights_in_steps(3, 20)))
    231
    """
    for first in range(steps + 1):
        rest = steps - first
        for second in range(rest + 1) if groups == 3 else (rest,):
            counts = (first, second, rest - second) if groups == 3 else (first, second)
            yield tuple(n / steps for n in counts)


def turns_of(groups: Sequence[str], given: Sequence[float], leader_at: LeaderAt) -> tuple[Turn, ...]:
    """Where the leader changes as one group's weight goes from 0 to 1 and the others keep their proportions (weigh
    alike, where none are given or they weigh nothing)."""
    if len(groups) < 2:
        return ()
    found = []
    for at, group in enumerate(groups):
        others = [float(w) for i, w in enumerate(given) if i != at] if sum(given) - sum(given[at : at + 1]) > 0 else []
        others = others or [1.0] * (len(groups) - 1)
        along = _along(at, others, leader_at)
        steps = SCAN if len(groups) <= 3 else SCAN_OF_MANY
        scanned = [(n / steps, along(n / steps)) for n in range(steps + 1)]
        known = [(weight, leader) for weight, leader in scanned if leader is not None]
        for (low, before), (high, after) in pairwise(known):
            if before != after:
                found.append(_turn(group, low, high, before, along))
    return tuple(found)


def _along(at: int, others: Sequence[float], leader_at: LeaderAt) -> Callable[[float], str | None]:
    total = sum(others)

    def leader(weight: float) -> str | None:
        rest = [(1.0 - weight) * w / total for w in others]
        return leader_at([*rest[:at], weight, *rest[at:]])

    return leader


def _turn(group: str, low: float, high: float, before: str, along: Callable[[float], str | None]) -> Turn:
    """The first change between two weights, by halving."""
    after = along(high)
    while high - low > WITHIN:
        middle = (low + high) / 2.0
        leader = along(middle)
        if leader == before:
            low = middle
        else:
            high, after = middle, leader or after
    return Turn(group, round((low + high) / 2.0, 3), before, after or before)

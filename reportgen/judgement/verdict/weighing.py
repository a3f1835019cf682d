"""The overall judgement: contenders weighed on criteria, over weights and all that is uncertain, from one set of draws.

Pairwise index and shares of places after SMAA-2 (Lahdelma and Salminen 2001, Operations Research 49:444). A pairwise
index depends on no third contender, so nobody can turn two others round by joining.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import combinations
from typing import TYPE_CHECKING

from reportgen.judgement.verdict.contest import first_shares, indexes, leader_of, place_shares
from reportgen.judgement.verdict.criteria import Criterion, Stack, all_weightings, only_criterion, stack, weighted
from reportgen.judgement.verdict.overall import (
    FIRM_FROM,
    Cell,
    Lead,
    Overall,
    PairIndex,
    Reader,
    WeightMap,
    WithoutCriterion,
)
from reportgen.judgement.verdict.turning import steps_of, turns_of, weights_in_steps

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Numbers = NDArray[np.float64]
    Weights = Numbers | Sequence[float]

NOTHING_LEFT = Lead(None, 0.0, False)


@dataclass(frozen=True)
class Contest:
    """Some criteria: all of them, and those whose scatter is known; None where none has weight."""

    contenders: tuple[str, ...]
    whole: Stack | None
    known: Stack | None

    def lead(self, weights: Weights) -> Lead:
        """Who leads at these weights of the groups, and whether that is firm."""
        worth = weighted(self.whole, weights) if self.whole else None
        if worth is None or self.whole is None:
            return NOTHING_LEFT
        at = leader_of(worth)
        if at is None:
            return Lead(None, 0.5, False)
        index = least_index(worth, at)
        firm = index >= FIRM_FROM and self._is_first_alone(self.whole, weights, at) and self._stands(weights, at)
        return Lead(self.contenders[at], index, firm)

    def _stands(self, weights: Weights, at: int) -> bool:
        """Does the lead hold without the criteria of unknown scatter?"""
        if self.known is self.whole:
            return True
        if self.known is None:
            return False
        worth = weighted(self.known, weights)
        if worth is None or least_index(worth, at) < FIRM_FROM:
            return False
        return self._is_first_alone(self.known, weights, at)

    def _is_first_alone(self, found: Stack, weights: Weights, at: int) -> bool:
        single = only_criterion(found, weights)
        return single is None or single.first == self.contenders[at]


def least_index(worth: Numbers, at: int) -> float:
    """The least pairwise index of one contender against the others."""
    import numpy as np

    return float(np.delete(indexes(worth, at), at).min(initial=1.0))


def weigh_up(
    criteria: Sequence[Criterion],
    contenders: Sequence[str],
    groups: Sequence[str],
    given: Sequence[float] = (),
    readers: Mapping[str, Sequence[float]] | None = None,
    out: Mapping[str, str] | None = None,
) -> Overall | None:
    """Everything about the overall judgement of k contenders; None where fewer than two, or no criterion, is there.

    `given`: weights of `groups`, () for all weightings; `readers`: name → weights of the groups. Neither need add up to
    one. `out`: who was left out before, and why.

    Of two contenders worth (1, 0) and (0.4, 0.8) on two criteria the first leads where 1·w > 0.4·w + 0.8·(1 − w), that
    is for w > 4/7: in 3/7 of all weightings (SMAA-2, Lahdelma and Salminen 2001; derived).

    >>> import numpy as np
    >>> from reportgen.judgement import Criterion
    >>> def certain(group, **worth):
    ...     return Criterion(group, group, {n: np.full(10_000, x) for n, x in worth.items()}, worth)
    >>> found = weigh_up([certain("p", a=1.0, b=0.4), certain("q", a=0.0, b=0.8)], "ab", ["p", "q"])
    >>> round(found.places["a"][0], 2), found.winner
    (0.43, None)
    """
    names = tuple(contenders)
    contest = contest_of(criteria, names, groups)
    if len(names) < 2 or contest.whole is None:
        return None
    draws = contest.whole.worth.shape[2]
    weights: Weights = to_one(given) if given else all_weightings(groups, draws)
    worth = weighted(contest.whole, weights)
    if worth is None:
        return None
    known = weighted(contest.known, weights) if contest.known else None
    lead = contest.lead(weights)
    quantities = list(dict.fromkeys(c.quantity for c in criteria))
    unknown = {c.quantity for c in criteria if not c.known}
    places = place_shares(worth)
    equal = equal_first(criteria, names, groups, weights)
    map_ = map_of(contest, groups)
    return Overall(
        contenders=names,
        out=dict(out or {}),
        groups=tuple(groups),
        weights="given" if given else "all",
        given=tuple(to_one(given)) if given else (),
        index=pairs_of(names, worth),
        index_known=() if known is None else pairs_of(names, known),
        places={name: tuple(float(x) for x in places[i]) for i, name in enumerate(names)},
        equal_first={name: float(equal[i]) for i, name in enumerate(names)},
        with_repeats=len(quantities) - len(unknown),
        criteria=len(quantities),
        lead=lead,
        winner=lead.leader if lead.firm else None,
        without=tuple(_without(criteria, names, groups, weights, quantities)),
        turns=turns_of(groups, given, partial(_leader, contest)),
        map=map_,
        readers=tuple(_readers(contest, readers or {})),
        draws=draws,
        error=0.5 / draws**0.5,
    )


def contest_of(criteria: Sequence[Criterion], contenders: tuple[str, ...], groups: Sequence[str]) -> Contest:
    """These criteria, all of them and those whose scatter is known."""
    whole = stack(criteria, groups, contenders)
    unknown = {c.quantity for c in criteria if not c.known}
    if not unknown:
        return Contest(contenders, whole, whole)
    return Contest(contenders, whole, stack([c for c in criteria if c.quantity not in unknown], groups, contenders))


def to_one(weights: Sequence[float]) -> list[float]:
    """The same weights, together 1."""
    total = sum(weights)
    return [w / total for w in weights]


def pairs_of(names: Sequence[str], worth: Numbers) -> tuple[PairIndex, ...]:
    """The pairwise index of every pair, in the order given."""
    rows = [indexes(worth, i) for i in range(len(names))]
    return tuple(PairIndex(names[i], names[j], float(rows[i][j])) for i, j in combinations(range(len(names)), 2))


def equal_first(
    criteria: Sequence[Criterion], names: Sequence[str], groups: Sequence[str], weights: Weights
) -> Numbers:
    """The share of first places of each, were all worth the same on every criterion and as uncertain as they are."""
    found = stack(criteria, groups, names, estimate=True)
    worth = weighted(found, weights) if found else None
    assert worth is not None
    return first_shares(worth)


def map_of(contest: Contest, groups: Sequence[str]) -> WeightMap | None:
    """Who leads at every weight of two or three groups; None of one, and of more."""
    if len(groups) not in (2, 3):
        return None
    steps = steps_of(len(groups))
    cells = tuple(Cell(w, contest.lead(w)) for w in weights_in_steps(len(groups), steps))
    return WeightMap(tuple(groups), steps, cells)


def _without(
    criteria: Sequence[Criterion],
    names: tuple[str, ...],
    groups: Sequence[str],
    weights: Weights,
    quantities: Sequence[str],
) -> Iterable[WithoutCriterion]:
    for quantity in quantities:
        rest = [c for c in criteria if c.quantity != quantity]
        yield WithoutCriterion(quantity, contest_of(rest, names, groups).lead(weights))


def _leader(contest: Contest, weights: Sequence[float]) -> str | None:
    worth = weighted(contest.whole, weights) if contest.whole else None
    at = leader_of(worth) if worth is not None else None
    return None if at is None else contest.contenders[at]


def _readers(contest: Contest, readers: Mapping[str, Sequence[float]]) -> Iterable[Reader]:
    for name, given in readers.items():
        weights = tuple(to_one(given))
        worth = weighted(contest.whole, weights) if contest.whole else None
        index = () if worth is None else pairs_of(contest.contenders, worth)
        yield Reader(name, weights, contest.lead(weights), index)

"""The overall judgement as data: how often each contender is worth more than each other, over weights and uncertainty.

Worth lies on value functions that the author set before the data; a contender's worth is the weighted mean of its
values (Lahdelma and Salminen 2001, Operations Research 49:444, SMAA-2).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal


@dataclass(frozen=True)
class PairIndex:
    """`index` is the chance, 0 to 1, that `first` is worth more than `second`; equals count half."""

    first: str
    second: str
    index: float


@dataclass(frozen=True)
class Lead:
    """Who is ahead at some weights: `leader` has the largest share of first places, `index` its least pairwise one.

    `firm`: every pairwise index of it is at least `FIRM_FROM`, with and without the criteria of unknown scatter, and
    where a single criterion has weight it is first on that by itself. `leader` None: no criterion is left (`index` 0),
    or several share the largest share exactly (`index` .5).
    """

    leader: str | None
    index: float
    firm: bool


@dataclass(frozen=True)
class WithoutCriterion:
    """What one criterion left out does: who leads then."""

    quantity: str
    lead: Lead


@dataclass(frozen=True)
class Cell:
    """One choice of weights of the groups, in their order, 0 to 1, together 1, and who leads at it."""

    weights: tuple[float, ...]
    lead: Lead


@dataclass(frozen=True)
class WeightMap:
    """The whole space of weights of two or three groups, in steps of 1/`steps`: for three, (steps+1)(steps+2)/2 cells,
    by the first group's weight from 0 on, then the second's."""

    groups: tuple[str, ...]
    steps: int
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class Turn:
    """The weight of one group, the others keeping their proportions, at which the leader changes from `before` to
    `after`: below `weight` the one, above the other. Where no weights are given, the others weigh alike."""

    group: str
    weight: float
    before: str
    after: str


@dataclass(frozen=True)
class Reader:
    """A typical reader whom the author named, the weights of the groups that reader has, and who leads at them."""

    name: str
    weights: tuple[float, ...]
    lead: Lead
    index: tuple[PairIndex, ...]


@dataclass(frozen=True)
class Overall:
    """The verdict over weighed criteria.

    `contenders`: those weighed, in the campaign's order; `out`: those left out and why (a code: must, no-value, bound,
    not-above-zero, blocked). `left_out`: criteria (quantities) that are not weighed, and why (a code: nobody-measured,
    bound, not-above-zero, by-place, blocked, too-few).
    `index`: every pair i < j; `index_known` the same without criteria of unknown scatter, () where none is left.
    `places`: of each contender its shares of first, second … place; `equal_first`: the share of first places each would
    have, were all of them equal and only the uncertainty as it is. `weights`: the author's (`given`) or all weightings
    (`all`). `with_repeats` of `criteria` criteria have a known scatter. `winner` None unless firm. `past`: of each
    criterion the contenders whose value lies beyond its anchors, where any does. `error`: the standard error of an
    index of one half, from the number of draws.
    """

    contenders: tuple[str, ...]
    out: Mapping[str, str]
    groups: tuple[str, ...]
    weights: Literal["given", "all"]
    given: tuple[float, ...]  # of the groups, in order; () where none are given
    index: tuple[PairIndex, ...]
    index_known: tuple[PairIndex, ...]
    places: Mapping[str, tuple[float, ...]]
    equal_first: Mapping[str, float]
    with_repeats: int
    criteria: int
    lead: Lead
    winner: str | None
    without: tuple[WithoutCriterion, ...] = ()
    turns: tuple[Turn, ...] = ()
    map: WeightMap | None = None
    readers: tuple[Reader, ...] = ()
    draws: int = 0
    left_out: Mapping[str, str] = field(default_factory=dict)
    past: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    error: float = 0.0


FIRM_FROM = 0.975  # a pairwise index from which one is worth more; at .95 one winner in ten is false

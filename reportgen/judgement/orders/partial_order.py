"""An order that was only seen, heard or smelt → what was seen of each pair, and what follows from it.

Nothing here is a statistic: a look is a strict partial order, and a pair that no look compared stays uncompared.
"Less than" is transitive within one look, as a strict order is by definition (a < b and b < c give a < c); "about like"
is not, since differences too small to notice add up to one that is (Luce 1956, semiorders), so it is kept as it was
seen. Looks that disagree are told both ways.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from typing import Literal

from reportgen.judgement.orders.looks import Degree, Look, path_up

Told = Literal["less", "more", "alike", "both ways", "never"]
TOLD_TURNED: Mapping[Told, Told] = {"less": "more", "more": "less"}


@dataclass(frozen=True)
class Between:
    """What all looks say of a pair, from its first's side. `degree` is "" too where looks differ in it.

    `follows`: nobody compared the two; they are ordered through `through`, the contenders between. `looks` counts those
    in which the two were set against each other.
    """

    first: str
    second: str
    told: Told
    degree: Degree = ""
    follows: bool = False
    through: tuple[str, ...] = ()
    looks: int = 0


@dataclass(frozen=True)
class Ordered:
    """`pairs` are all i < j in the order given. `levels` say how many stand below on the longest chain, for a drawing:
    those never compared are in none."""

    pairs: tuple[Between, ...]
    levels: Mapping[str, int]

    def of(self, first: str, second: str) -> Between:
        """What is told of a pair, from `first`'s side."""
        for pair in self.pairs:
            if (pair.first, pair.second) == (first, second):
                return pair
            if (pair.first, pair.second) == (second, first):
                return turned(pair)
        raise KeyError((first, second))


def order_of(names: Sequence[str], said: Iterable[Look]) -> Ordered:
    """The partial order of k contenders from what was said of them, look by look. Looks hold no clash.

    >>> from reportgen.judgement import Look
    >>> found = order_of("abcd", [Look("a", "b", "less"), Look("b", "c", "less")])
    >>> found.of("a", "c").told, found.of("a", "c").through, found.of("a", "d").told
    ('less', ('b',), 'never')
    """
    by_look: dict[str, list[Look]] = {}
    for one in said:
        by_look.setdefault(one.look, []).append(one)
    closures = {look: _closure(each) for look, each in by_look.items()}
    pairs = tuple(_between(a, b, by_look, closures) for a, b in combinations(names, 2))
    return Ordered(pairs, _levels(names, pairs, _together(pairs)))


def circles(names: Sequence[str], pairs: Iterable[Between]) -> tuple[tuple[str, ...], ...]:
    """Groups that several looks together lead round in a circle, in the order of `names`; within a look none is."""
    reach = _together(pairs)
    found = (tuple(n for n in names if n == a or {(a, n), (n, a)} <= reach) for a in names if (a, a) in reach)
    return tuple(dict.fromkeys(found))


def turned(pair: Between) -> Between:
    """The pair from its second's side."""
    told = TOLD_TURNED.get(pair.told, pair.told)
    return Between(pair.second, pair.first, told, pair.degree, pair.follows, pair.through[::-1], pair.looks)


def _together(pairs: Iterable[Between]) -> frozenset[tuple[str, str]]:
    """Every (lower, higher) that all looks together lead to."""
    strict = [p if p.told == "less" else turned(p) for p in pairs if p.told in ("less", "more")]
    return _reachable({(p.first, p.second) for p in strict})


def _between(
    a: str, b: str, by_look: Mapping[str, Sequence[Look]], closures: Mapping[str, frozenset[tuple[str, str]]]
) -> Between:
    seen = [
        s if s.first == a else s.turned() for each in by_look.values() for s in each if {s.first, s.second} == {a, b}
    ]
    looked = {s.look for s in seen}
    ways: set[Told] = {s.way for s in seen}
    degrees = {s.degree for s in seen}
    through: tuple[str, ...] = ()
    for look, closure in closures.items():
        for low, high, way in ((a, b, "less"), (b, a, "more")):
            if look not in looked and (low, high) in closure:
                looked.add(look)
                ways.add("less" if way == "less" else "more")
                through = through or path_up([s for s in by_look[look] if s.way != "alike"], low, high)[1:-1]
    if not ways:
        return Between(a, b, "never")
    told: Told = ways.pop() if len(ways) == 1 else "both ways"
    degree = degrees.pop() if told != "both ways" and len(degrees) == 1 else ""
    return Between(a, b, told, degree, not seen, through if not seen else (), len(looked))


def _closure(said: Iterable[Look]) -> frozenset[tuple[str, str]]:
    """Every (lower, higher) that one look says or that follows from it."""
    return _reachable(
        {(s.first, s.second) if s.way == "less" else (s.second, s.first) for s in said if s.way != "alike"}
    )


def _reachable(edges: Iterable[tuple[str, str]]) -> frozenset[tuple[str, str]]:
    """The transitive closure of a relation (Warshall 1962)."""
    found = set(edges)
    names = sorted({n for edge in found for n in edge})
    for middle in names:
        into = [a for a in names if (a, middle) in found]
        out = [b for b in names if (middle, b) in found]
        found |= {(a, b) for a in into for b in out}
    return frozenset(found)


def _levels(names: Sequence[str], pairs: Sequence[Between], reach: frozenset[tuple[str, str]]) -> Mapping[str, int]:
    """Each compared contender's place on the longest chain below it; one known only to be about like another stands
    with it. Contenders in a circle share a level."""
    compared = {n for p in pairs if p.told != "never" for n in (p.first, p.second)}
    strict = {n for edge in reach for n in edge}
    level: dict[str, int] = {}

    def of(name: str) -> int:
        if name not in level:
            below = [b for b in strict if (b, name) in reach and (name, b) not in reach]
            level[name] = 1 + max((of(b) for b in below), default=-1)
        return level[name]

    for name in names:
        if name in strict:
            of(name)
    for _ in names:  # "about like" hands a level on, as far as it reaches
        for p in pairs:
            for one, other in ((p.first, p.second), (p.second, p.first)):
                if p.told == "alike" and one in level and other not in level and other not in strict:
                    level[other] = level[one]
    return {n: level.get(n, 0) for n in names if n in compared}

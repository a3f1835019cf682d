"""What can be said where only an order is seen: one contender less than, more than or about like another, look by look.

Two things said in one look must be able to hold together; what can't is found here, before anything is made of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

Degree = Literal["", "a little", "much"]
Way = Literal["less", "more", "alike"]
TURNED: Mapping[Way, Way] = {"less": "more", "more": "less", "alike": "alike"}


@dataclass(frozen=True)
class Look:
    """One thing said: `first` is `way` (less than, more than, about like) `second`, in the look of that name."""

    first: str
    second: str
    way: Way
    degree: Degree = ""
    look: str = "1"

    def turned(self) -> Look:
        """The same said of the second."""
        return Look(self.second, self.first, TURNED[self.way], self.degree, self.look)


@dataclass(frozen=True)
class Clash:
    """Two things said in one look that can't both hold. `round_`: names from the least on, back to the first; of two
    things said of one pair only these two."""

    one: Look
    other: Look
    round_: tuple[str, ...]


def clashes(said: Iterable[Look]) -> tuple[Clash, ...]:
    """What can't both hold within one look: a pair said two ways, a circle, alike what a chain sets apart.

    >>> said = [Look("a", "b", "less"), Look("b", "c", "less"), Look("c", "a", "less")]
    >>> clashes(said)[0].round_
    ('a', 'b', 'c')
    """
    by_look: dict[str, list[Look]] = {}
    for one in said:
        by_look.setdefault(one.look, []).append(one)
    return tuple(clash for each in by_look.values() for clash in _clashes(each))


def _clashes(said: Sequence[Look]) -> Iterable[Clash]:
    found: dict[frozenset[str], Look] = {}
    for n, one in enumerate(said):
        first = found.setdefault(frozenset((one.first, one.second)), one)
        if first is not one:
            same = one if one.first == first.first else one.turned()
            if (same.way, same.degree) != (first.way, first.degree):
                yield Clash(first, one, (first.first, first.second))
            continue
        before = [s for s in (said if one.way == "alike" else said[:n]) if s.way != "alike"]
        for low, high in _ends(one):
            path = path_up(before, low, high)
            if path:
                last = next(s for s in reversed(before) if {s.first, s.second} == set(path[-2:]))
                yield Clash(last, one, path)
                break


def _ends(one: Look) -> tuple[tuple[str, str], ...]:
    """The chains that would contradict it: from what it sets above to what it sets below, either way for alike."""
    if one.way == "alike":
        return (one.first, one.second), (one.second, one.first)
    return ((one.second, one.first),) if one.way == "less" else ((one.first, one.second),)


def path_up(said: Sequence[Look], low: str, high: str) -> tuple[str, ...]:
    """The shortest chain upward from `low` to `high`, both in it; () where there is none."""
    above: dict[str, list[str]] = {}
    for s in said:
        lower, upper = (s.first, s.second) if s.way == "less" else (s.second, s.first)
        above.setdefault(lower, []).append(upper)
    waiting: list[tuple[str, ...]] = [(low,)]
    seen = {low}
    for path in waiting:
        for one in above.get(path[-1], ()):
            if one == high:
                return (*path, one)
            if one not in seen:
                seen.add(one)
                waiting.append((*path, one))
    return ()

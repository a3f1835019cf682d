"""What draws found, kept by what they were made of: asked a second time, nothing is drawn again.

Judgement knows neither where it is kept nor for how long: whoever has a place for it gives a `Keep`.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from hashlib import sha256
from math import isnan
from typing import Protocol

from reportgen.metrology.monte_carlo import MOST_BLOCKS, Settled

Figures = tuple[float, ...]
AVERAGES = 6  # of a block: what `draws.by_draws` asks of it


class Keep(Protocol):
    """Gives what is kept under `made_of`, if it `fits`; else does the work and keeps what came out."""

    def __call__(self, made_of: str, work: Callable[[], Figures], fits: Callable[[Figures], bool]) -> Figures:
        """The figures; those of the work and those that were kept are the same to the last bit."""
        ...


def kept_nowhere(made_of: str, work: Callable[[], Figures], fits: Callable[[Figures], bool]) -> Figures:
    """In place of a place: the work is done each time."""
    return work()


@dataclass(frozen=True)
class Found:
    """`made_of`: one digest of everything the draws of a result depend on, worked out when it is asked for."""

    made_of: Callable[[], str]
    keep: Keep

    def settled(self, asked: tuple[object, ...], draw: Callable[[], Settled]) -> Settled:
        """What `draw` settles at; `asked` is all that it depends on beside the draws."""
        found = self.keep(digest("ends", self.made_of(), asked), lambda: _as_figures(draw()), _is_settled)
        return Settled(found[:AVERAGES], found[AVERAGES:-2], int(found[-2]), bool(found[-1]))

    def probability(self, asked: tuple[object, ...], count: Callable[[], float]) -> float:
        """The share that `count` finds among the draws."""
        (found,) = self.keep(digest("below", self.made_of(), asked), lambda: (count(),), _is_probability)
        return found


def of_difference(first: Found | None, second: Found | None) -> Found | None:
    """Of the draws of first minus second, which are joint."""
    if first is None or second is None:
        return None
    one, other = first.made_of, second.made_of
    return Found(lambda: digest("apart", one(), other()), first.keep)


def of_logarithm(found: Found | None, value: float) -> Found | None:
    """Of the draws of the logarithm of a result of `value`."""
    if found is None:
        return None
    plain = found.made_of
    return Found(lambda: digest("logarithm", plain(), value), found.keep)


def digest(*parts: object) -> str:
    """One text of 32 hexadecimal digits for parts that are told apart by how they are written."""
    return sha256("\x1f".join(map(repr, parts)).encode()).hexdigest()[:32]


def _as_figures(settled: Settled) -> Figures:
    return (*settled.averages, *settled.within, float(settled.blocks), float(settled.stands))


def _is_settled(figures: Figures) -> bool:
    if len(figures) != 2 * AVERAGES + 2:
        return False
    within, (blocks, stands) = figures[AVERAGES:-2], figures[-2:]
    counts = blocks in range(1, MOST_BLOCKS + 1) and stands in (0.0, 1.0)
    return counts and all(w >= 0.0 for w in within) and not any(map(isnan, figures))


def _is_probability(figures: Figures) -> bool:
    return len(figures) == 1 and 0.0 <= figures[0] <= 1.0

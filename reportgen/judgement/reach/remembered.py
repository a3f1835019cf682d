"""Exact quantiles and chances, remembered while the program runs and told to whoever keeps them between runs.

They depend on their numbers alone, so a number found once is right for ever, as long as the program is the same.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from functools import wraps
from math import isfinite
from typing import ParamSpec

from reportgen.judgement.drawn.found import digest

P = ParamSpec("P")
MOST = 16384  # of one function; then all are let go, and found again


@dataclass
class _Number:
    value: float
    name: str
    asked: int  # when last


@dataclass
class _Open:
    """What is being noted: `turn` counts up; `kept` is looked through before anything is worked out."""

    turn: int
    kept: Mapping[str, float]


_now = _Open(0, {})
_all: list[dict[tuple[object, ...], _Number]] = []


def remembered(work: Callable[P, float]) -> Callable[P, float]:
    """`work`, done once for each set of arguments, all of them given by place."""
    known: dict[tuple[object, ...], _Number] = {}
    _all.append(known)

    @wraps(work)
    def found(*args: P.args, **by_name: P.kwargs) -> float:
        number = known.get(args)
        if number is None:
            if len(known) >= MOST:
                known.clear()
            name = digest(work.__qualname__, args)
            kept = _now.kept.get(name)
            number = known[args] = _Number(work(*args, **by_name) if kept is None else kept, name, 0)
        number.asked = _now.turn
        return number.value

    return found


@contextmanager
def remembering(kept: Mapping[str, float]) -> Iterator[dict[str, float]]:
    """While it is open, numbers come from `kept` where they are there. What it gives holds, once it is closed, every
    number that was asked for meanwhile."""
    asked: dict[str, float] = {}
    _now.turn, _now.kept = _now.turn + 1, {n: x for n, x in kept.items() if isinstance(x, float) and isfinite(x)}
    try:
        yield asked
    finally:
        _now.kept = {}
        found = (number for known in _all for number in known.values() if number.asked == _now.turn)
        asked.update({number.name: number.value for number in found})
